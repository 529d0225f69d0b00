"""PNG: a preview of a drawing, not to scale."""

from scalewright.drawing.fonts import font_file, with_known_letters
from scalewright.drawing.page import Drawing
from scalewright.drawing.svg import write_svg

__all__ = ["MOST_POINTS", "paint", "write_png"]

MOST_POINTS = 4_000_000
"""The most points that a picture may have; a tall one is made narrower."""


def write_png(drawing: Drawing, pixels: int) -> bytes:
    """Write a drawing as a picture on white.

    Parameters
    ----------
    drawing : Drawing
        What is drawn.
    pixels : int
        Width of the picture in points.

    Returns
    -------
    bytes
        The same for the same drawing.
    """
    tallest = drawing.height / drawing.width
    width = min(pixels, max(1, int((MOST_POINTS / tallest) ** 0.5)))
    return paint(write_svg(drawing).decode(), width)


def paint(svg: str, width: int) -> bytes:
    """Paint an SVG as a picture on white, so many points wide."""
    import resvg_py  # noqa: PLC0415  (loaded when first used)

    picture: bytes = resvg_py.svg_to_bytes(
        svg_string=with_known_letters(svg),
        width=width,
        dpi=96.0,
        background="white",
        skip_system_fonts=True,
        font_files=[font_file()],
        font_family="Open Sans",
        sans_serif_family="Open Sans",
    )
    return bytes(picture)
