"""SVG: a drawing as text that web pages show and laser cutters read, in millimetres (W3C SVG 1.1)."""

import itertools
import re
from collections.abc import Sequence
from functools import cache, lru_cache

from scalewright.drawing.letters import FONT_FAMILY
from scalewright.drawing.page import (
    Anchor,
    Circle,
    Circles,
    Drawing,
    Figure,
    Item,
    Line,
    Lines,
    Many,
    Path,
    Stamps,
    Strokes,
    Text,
    Texts,
)
from scalewright.drawing.styles import STYLES

__all__ = ["escape", "write_svg"]

_ESCAPES = {ord("&"): "&amp;", ord("<"): "&lt;", ord(">"): "&gt;", ord('"'): "&quot;", ord("'"): "&#39;"}
_MARKUP = re.compile("[&<>\"']")

_ANCHORS = {"start": "", "middle": ' text-anchor="middle"', "end": ' text-anchor="end"'}
_STROKE = "M%.4f,%.4fL%.4f,%.4f"
_LINE = ' x1="%.4f" y1="%.4f" x2="%.4f" y2="%.4f"/>\n'


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
    elements = _Elements()
    for name, items in drawing.layers.items():
        if items:
            elements.forms.append(f'<g id="{name}" {_look(name)}>\n')
            for item in items:
                elements.add(item)
            elements.forms.append("</g>\n")
    # All numbers are turned over and written at one go: that takes half as long as one after the other.
    places = elements.places
    places[1::2] = [height - y for y in places[1::2]]
    return f"{head}{''.join(elements.forms) % tuple(places)}</svg>\n".encode()


@cache
def _look(name: str) -> str:
    """Attributes of a layer."""
    style = STYLES[name]
    if style.width == 0.0:
        return f'fill="{style.colour}" stroke="none"'
    fill = style.colour if style.filled else "none"
    dashes = f' stroke-dasharray="{" ".join(f"{length:g}" for length in style.dashes)}"' if style.dashes else ""
    return f'fill="{fill}" stroke="{style.colour}" stroke-width="{style.width:g}"{dashes}'


class _Elements:
    """Elements with gaps for their places, and the places that go into the gaps, x and y in turn."""

    def __init__(self) -> None:
        self.forms: list[str] = []
        self.places: list[float] = []

    def add(self, item: Item) -> None:
        """Add an item."""
        # In the order in which they are frequent.
        if isinstance(item, Text):
            x, y, text, size, anchor, turn, bold = item
            self.forms.append(_text_form(text, size, anchor, turn, bold))
            self.places += (x, y)
        elif isinstance(item, Line):
            x1, y1, x2, y2, name = item
            self.forms.append(f"<line{_id(name)}{_LINE}")
            self.places += (x1, y1, x2, y2)
        elif isinstance(item, Circle):
            x, y, radius, name = item
            self.forms.append(_circles_form((name,), (radius,)))
            self.places += (x, y)
        elif isinstance(item, Path):
            points, name, closed = item
            self.forms.append(f"<{'polygon' if closed else 'polyline'}{_id(name)}{_points_form(len(points))}")
            for point in points:
                self.places += point
        elif isinstance(item, Strokes):
            self.forms.append(f'<path d="{_STROKE * len(item.lines)}"/>\n')
            for line in item.lines:
                self.places += line
        else:
            self._add_many(item)

    def _add_many(self, many: Many) -> None:
        """Add things of one kind."""
        if isinstance(many, Stamps):
            places = many.places
            self.forms.append(f'<path{_id(many.name)} d="{_stamp(many.figure) * (len(places) // 2)}"/>\n')
        elif isinstance(many, Texts):
            places, texts, size, anchor, turn, bold = many
            # Names come as a tuple, the same on many boards; distances are others on each.
            look = size, anchor, turn, bold
            form = _known_texts_form(texts, *look) if isinstance(texts, tuple) else _texts_form(texts, *look)
            self.forms.append(form)
        elif isinstance(many, Circles):
            places = many.middles
            self.forms.append(_circles_form(tuple(many.names), tuple(many.radii)))
        elif isinstance(many, Lines):
            places = many.ends
            self.forms.append(_lines_form(tuple(many.names)))
        else:
            places = many.corners
            self.forms.append(_shapes_form(tuple(many.names)))
        self.places += places


def _id(name: str) -> str:
    return f' id="{name}"' if name else ""


def _escaped(text: str) -> str:
    """Text between elements with gaps."""
    return escape(text).replace("%", "%%")


# Most names, and most texts, come again on the next drawing.


@cache
def _points_form(points: int) -> str:
    """Gaps for the points of a line."""
    return f' points="{" ".join(["%.4f,%.4f"] * points)}"/>\n'


@lru_cache(maxsize=256)
def _lines_form(names: tuple[str, ...]) -> str:
    """Lines, with gaps for their ends."""
    return "".join(f"<line{_id(name)}{_LINE}" for name in names)


@lru_cache(maxsize=256)
def _shapes_form(names: tuple[str, ...]) -> str:
    """Closed shapes, with gaps for their corners."""
    return "".join(f"<polygon{_id(name)}{_points_form(4)}" for name in names)


@lru_cache(maxsize=256)
def _circles_form(names: tuple[str, ...], radii: tuple[float, ...]) -> str:
    """Circles, with gaps for their middles."""
    circles = zip(names, radii, strict=True)
    return "".join(f'<circle{_id(name)} cx="%.4f" cy="%.4f" r="{radius:.4f}"/>\n' for name, radius in circles)


@lru_cache(maxsize=256)
def _stamp(figure: Figure) -> str:
    """A figure from its place on, as steps of a path; a gap for its place."""
    steps = ["M%.4f,%.4f"]
    at = (0.0, 0.0)
    for line in figure.lines:
        begin = line[0]
        for kind, point in zip(itertools.chain("m", itertools.repeat("l")), line, strict=False):
            # A step is from one written place to the next, so that what is rounded off does not add up.
            to = round(point[0], 4), round(point[1], 4)
            step = f"{kind}{to[0] - at[0]:.4f},{at[1] - to[1]:.4f}"
            steps.append(step)
            at = to
        if figure.closed:
            steps.append("z")
            at = round(begin[0], 4), round(begin[1], 4)
    return "".join(steps)


@lru_cache(maxsize=1024)
def _text_form(text: str, size: float, anchor: Anchor, turn: float, bold: bool) -> str:  # noqa: FBT001  (as a text has it)
    """A text, with a gap for its place."""
    return f"{_text_head(size, anchor, turn, bold)}{_escaped(text)}</text>\n"


def _texts_form(texts: Sequence[str], size: float, anchor: Anchor, turn: float, bold: bool) -> str:  # noqa: FBT001  (the same)
    """Texts, with gaps for their places."""
    head = _text_head(size, anchor, turn, bold)
    return head + f"</text>\n{head}".join(_escaped("\n".join(texts)).split("\n")) + "</text>\n"


_known_texts_form = lru_cache(maxsize=256)(_texts_form)


@lru_cache(maxsize=256)
def _text_head(size: float, anchor: Anchor, turn: float, bold: bool) -> str:  # noqa: FBT001  (the same)
    """Begin a text."""
    place = f' transform="translate(%.4f,%.4f) rotate({-turn:g})"' if turn else ' x="%.4f" y="%.4f"'
    weight = ' font-weight="bold"' if bold else ""
    return f'<text{place} font-size="{size:g}"{_ANCHORS[anchor]}{weight}>'
