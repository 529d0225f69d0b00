"""SVG: a drawing as text that web pages show and laser cutters read, in millimetres (W3C SVG 1.1)."""

import re
from collections.abc import Sequence
from functools import cache, lru_cache

from scalewright.drawing.letters import FONT_FAMILY
from scalewright.drawing.page import Anchor, Drawing, Item, Line, Path, Strokes, Text
from scalewright.drawing.styles import STYLES

__all__ = ["escape", "write_svg"]

_ESCAPES = {ord("&"): "&amp;", ord("<"): "&lt;", ord(">"): "&gt;", ord('"'): "&quot;", ord("'"): "&#39;"}
_MARKUP = re.compile("[&<>\"']")

_ANCHORS = {"start": "", "middle": ' text-anchor="middle"', "end": ' text-anchor="end"'}
_STROKE = "M%.4f,%.4fL%.4f,%.4f"
_LINE = '<line%s x1="%.4f" y1="%.4f" x2="%.4f" y2="%.4f"/>\n'
_CIRCLE = '<circle%s cx="%.4f" cy="%.4f" r="%.4f"/>\n'


def escape(text: str) -> str:
    """Text as it may stand in an element or between quotes."""
    return text.translate(_ESCAPES) if _MARKUP.search(text) else text


def write_svg(drawing: Drawing) -> bytes:
    """Write a drawing.

    Parameters
    ----------
    drawing : Drawing
        What is drawn.

    Returns
    -------
    bytes
        UTF-8, the same for the same drawing; its user unit is the millimetre, each layer is a group with an id.

    Notes
    -----
    Coordinates have four decimals: a ten-thousandth of a millimetre.
    """
    width, height = drawing.width, drawing.height
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.4f}mm" height="{height:.4f}mm" '
        f'viewBox="0 0 {width:.4f} {height:.4f}" font-family="{FONT_FAMILY}">\n'
        f"<title>{escape(drawing.title)}</title>\n<desc>{escape(drawing.description)}</desc>\n"
    )
    forms: list[str] = []
    values: list[float | str] = []
    for name, items in drawing.layers.items():
        if items:
            forms.append(f'<g id="{name}" {_look(name)}>\n')
            _add_items(items, height, forms, values)
            forms.append("</g>\n")
    # All numbers are written at one go: that takes half as long as one after the other.
    return f"{head}{''.join(forms) % tuple(values)}</svg>\n".encode()


@cache
def _look(name: str) -> str:
    """Attributes of a layer."""
    style = STYLES[name]
    if style.width == 0.0:
        return f'fill="{style.colour}" stroke="none"'
    fill = style.colour if style.filled else "none"
    dashes = f' stroke-dasharray="{" ".join(f"{length:g}" for length in style.dashes)}"' if style.dashes else ""
    return f'fill="{fill}" stroke="{style.colour}" stroke-width="{style.width:g}"{dashes}'


def _add_items(items: Sequence[Item], height: float, forms: list[str], values: list[float | str]) -> None:
    """Add the elements of a layer: forms with gaps, and what goes into the gaps."""
    for item in items:
        if isinstance(item, Line):
            x1, y1, x2, y2, name = item
            forms.append(_LINE)
            values += (f' id="{name}"' if name else "", x1, height - y1, x2, height - y2)
        elif isinstance(item, Text):
            x, y, text, size, anchor, turn, bold = item
            y = height - y
            forms.append(_text_form(size, anchor, turn, bold))
            values += (x, y, x, y, escape(text)) if turn else (x, y, escape(text))
        elif isinstance(item, Strokes):
            forms.append(f'<path d="{_STROKE * len(item.lines)}"/>\n')
            for x1, y1, x2, y2 in item.lines:
                values += (x1, height - y1, x2, height - y2)
        elif isinstance(item, Path):
            forms.append(_path_form(len(item.points), item.closed))
            values.append(f' id="{item.name}"' if item.name else "")
            for x, y in item.points:
                values += (x, height - y)
        else:
            forms.append(_CIRCLE)
            values += (f' id="{item.name}"' if item.name else "", item.x, height - item.y, item.radius)


@lru_cache(maxsize=256)
def _path_form(points: int, closed: bool) -> str:  # noqa: FBT001  (as a path has it)
    """Element of a path: gaps for its id and for its points."""
    places = " ".join(["%.4f,%.4f"] * points)
    return f'<{"polygon" if closed else "polyline"}%s points="{places}"/>\n'


@lru_cache(maxsize=256)
def _text_form(size: float, anchor: Anchor, turn: float, bold: bool) -> str:  # noqa: FBT001  (as a text has it)
    """Element of a text: gaps for its place, once more for the place that it is turned about, and for its letters."""
    turned = f' transform="rotate({-turn:g} %.3f %.3f)"' if turn else ""
    weight = ' font-weight="bold"' if bold else ""
    return f'<text x="%.3f" y="%.3f" font-size="{size:g}"{_ANCHORS[anchor]}{turned}{weight}>%s</text>\n'
