"""SVG: a drawing as text that web pages show and laser cutters read, in millimetres (W3C SVG 1.1)."""

from collections.abc import Sequence
from functools import cache

from scalewright.drawing.letters import FONT_FAMILY
from scalewright.drawing.page import Drawing, Item, Line, Path, Strokes, Text
from scalewright.drawing.styles import STYLES

__all__ = ["escape", "write_svg"]

_ESCAPES = {ord("&"): "&amp;", ord("<"): "&lt;", ord(">"): "&gt;", ord('"'): "&quot;", ord("'"): "&#39;"}


_TEXT = '<text x="%.3f" y="%.3f" font-size="%g"%s>%s</text>\n'
_ANCHORS = {"start": "", "middle": ' text-anchor="middle"', "end": ' text-anchor="end"'}
_STROKE = "M%.4f,%.4fL%.4f,%.4f"
_LINE = '<line%s x1="%.4f" y1="%.4f" x2="%.4f" y2="%.4f"/>\n'


def escape(text: str) -> str:
    """Text as it may stand in an element or between quotes."""
    return text.translate(_ESCAPES)


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
    parts = [head]
    for name, items in drawing.layers.items():
        if items:
            parts.append(f'<g id="{name}" {_look(name)}>\n')
            parts.extend(_items(items, height))
            parts.append("</g>\n")
    parts.append("</svg>\n")
    return "".join(parts).encode()


@cache
def _look(name: str) -> str:
    """Attributes of a layer."""
    style = STYLES[name]
    if style.width == 0.0:
        return f'fill="{style.colour}" stroke="none"'
    fill = style.colour if style.filled else "none"
    dashes = f' stroke-dasharray="{" ".join(f"{length:g}" for length in style.dashes)}"' if style.dashes else ""
    return f'fill="{fill}" stroke="{style.colour}" stroke-width="{style.width:g}"{dashes}'


def _items(items: Sequence[Item], height: float) -> list[str]:
    """Elements of a layer."""
    parts = []
    for item in items:
        if isinstance(item, Line):
            x1, y1, x2, y2, name = item
            named = f' id="{name}"' if name else ""
            parts.append(_LINE % (named, x1, height - y1, x2, height - y2))
        elif isinstance(item, Text):
            parts.append(_text(item, height))
        elif isinstance(item, Strokes):
            path = "".join([_STROKE % (x1, height - y1, x2, height - y2) for x1, y1, x2, y2 in item.lines])
            parts.append(f'<path d="{path}"/>\n')
        elif isinstance(item, Path):
            points = " ".join(["%.4f,%.4f" % (x, height - y) for x, y in item.points])  # noqa: UP031  (twice as fast)
            named = f' id="{item.name}"' if item.name else ""
            parts.append(f'<{"polygon" if item.closed else "polyline"}{named} points="{points}"/>\n')
        else:
            named = f' id="{item.name}"' if item.name else ""
            parts.append(f'<circle{named} cx="{item.x:.4f}" cy="{height - item.y:.4f}" r="{item.radius:.4f}"/>\n')
    return parts


def _text(item: Text, height: float) -> str:
    x, y, text, size, anchor, turn, bold = item
    y = height - y
    more = _ANCHORS[anchor]
    if turn:
        more += f' transform="rotate({-turn:g} {x:.3f} {y:.3f})"'
    if bold:
        more += ' font-weight="bold"'
    return _TEXT % (x, y, size, more, text if text.isalnum() else text.translate(_ESCAPES))
