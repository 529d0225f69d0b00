"""The picture of a label: a dot of the printer for each of its own, and its resolution said in the file."""

import struct
import zlib
from dataclasses import replace

from scalewright.drawing.page import Drawing
from scalewright.drawing.png import paint
from scalewright.drawing.svg import write_svg

__all__ = ["write_label_picture"]

_SIGNATURE_AND_HEADER = 33
"""Bytes before which nothing may stand: eight of the signature, 25 of IHDR (W3C PNG, sections 5.2 and 11.2.1)."""


def write_label_picture(drawing: Drawing, dpi: int) -> bytes:
    """Write a label as a picture on white.

    Parameters
    ----------
    drawing : Drawing
        The label.
    dpi : int
        Dots per inch.

    Returns
    -------
    bytes
        PNG with the chunk pHYs, so that it is printed at its size.
    """
    dots = max(1, int(drawing.width * dpi // 25.4))
    dot = drawing.width / dots
    whole = replace(drawing, height=max(1, round(drawing.height / dot)) * dot)
    # The painter rounds the sides of a page to whole pixels before it scales them, so they are given as such.
    size = f'width="{whole.width:.4f}mm" height="{whole.height:.4f}mm"'
    svg = write_svg(whole).decode().replace(size, f'width="{dots}" height="{round(whole.height / dot)}"', 1)
    picture = paint(svg, dots)
    per_metre = round(dpi / 0.0254)
    chunk = b"pHYs" + struct.pack(">IIB", per_metre, per_metre, 1)
    framed = struct.pack(">I", 9) + chunk + struct.pack(">I", zlib.crc32(chunk))
    return picture[:_SIGNATURE_AND_HEADER] + framed + picture[_SIGNATURE_AND_HEADER:]
