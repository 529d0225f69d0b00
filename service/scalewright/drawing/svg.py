"""SVG: a drawing as text that web pages show and laser cutters read, in millimetres (W3C SVG 1.1)."""

import itertools
import re
import struct
from collections.abc import Callable, Mapping, Sequence
from functools import cache, lru_cache
from types import MappingProxyType
from typing import Any, TypeAlias

import numpy as np
import orjson

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
    Path,
    Places,
    Shapes,
    Stamps,
    Strokes,
    Text,
    Texts,
)
from scalewright.drawing.styles import STYLES

__all__ = ["escape", "write_svg"]

_GAP = "\0"
"""Stands in a form where a number goes; no XML may have this character."""

_NEXT = "\x1f"
"""ASCII's own sign between units, which is no character of XML either."""

_ESCAPES = {ord("&"): "&amp;", ord("<"): "&lt;", ord(">"): "&gt;", ord('"'): "&quot;", ord("'"): "&#39;", 0: None}
_MARKUP = re.compile("[&<>\"'\0]")

_ANCHORS = {"start": "", "middle": ' text-anchor="middle"', "end": ' text-anchor="end"'}
_PLACE = f"{_GAP},{_GAP}"
_STROKE = f"M{_PLACE}L{_PLACE}"
_LINE = f' x1="{_GAP}" y1="{_GAP}" x2="{_GAP}" y2="{_GAP}"/>\n'

_DECIMALS = 4


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
    Coordinates have four decimals at most: a ten-thousandth of a millimetre.
    """
    width, height, (ox, oy) = drawing.width, drawing.height, drawing.origin
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.4f}mm" height="{height:.4f}mm" '
        f'viewBox="0 0 {width:.4f} {height:.4f}" font-family="{FONT_FAMILY}">\n'
        f"<title>{escape(drawing.title)}</title>\n<desc>{escape(drawing.description)}</desc>\n"
    )
    pieces = [head.encode()]
    places: list[float] = []
    for name, items in drawing.layers.items():
        if items:
            pieces[-1] += _group(name)
            for item in items:
                (before, after), at = _FORMS[type(item)](item)
                pieces[-1] += before
                pieces += after
                places += at
            pieces[-1] += b"</g>\n"
    pieces[-1] += b"</svg>\n"
    woven = [b""] * (2 * len(places) + 1)
    woven[::2] = pieces
    woven[1::2] = _numbers(places, ox, height - oy)
    return b"".join(woven)


def _numbers(places: Places, x: float, y: float) -> Sequence[bytes]:
    """Places as they are written, seen from a corner that lies so far to the left of the zero point and above it."""
    if not places:
        return ()
    # All at one go: one after the other they would take longer than all else.
    packed = np.frombuffer(struct.pack(f"{len(places)}d", *places), np.complex128)
    # Upwards turns into downwards as complex numbers are conjugated.
    seen = np.conjugate(packed) + complex(x, y)
    row: bytes = orjson.dumps(seen.view(np.float64).round(_DECIMALS), option=orjson.OPT_SERIALIZE_NUMPY)
    return row[1:-1].split(b",")


_Form: TypeAlias = tuple[bytes, Sequence[bytes]]
"""What is written before the first number, and what comes after each number."""


def _form(text: str) -> _Form:
    """Form of a text with gaps."""
    before, *after = text.encode().split(_GAP.encode())
    return before, after


@cache
def _group(name: str) -> bytes:
    """Begin a layer."""
    style = STYLES[name]
    fill = style.colour if style.filled or style.width == 0.0 else "none"
    look = f'fill="{fill}" stroke="none"'
    if style.width > 0.0:
        dashes = f' stroke-dasharray="{" ".join(f"{length:g}" for length in style.dashes)}"' if style.dashes else ""
        look = f'fill="{fill}" stroke="{style.colour}" stroke-width="{style.width:g}"{dashes}'
    return f'<g id="{name}" {look}>\n'.encode()


# Form and places of an item.


def _line(line: Line) -> tuple[_Form, Places]:
    x1, y1, x2, y2, name = line
    return _lines_form((name,)), (x1, y1, x2, y2)


def _lines(lines: Lines) -> tuple[_Form, Places]:
    return _lines_form(tuple(lines.names)), lines.ends


def _path(path: Path) -> tuple[_Form, Places]:
    points, name, closed = path
    return _path_form(len(points), name, closed), list(itertools.chain.from_iterable(points))


def _strokes(strokes: Strokes) -> tuple[_Form, Places]:
    return _strokes_form(len(strokes.lines)), list(itertools.chain.from_iterable(strokes.lines))


def _shapes(shapes: Shapes) -> tuple[_Form, Places]:
    return _shapes_form(tuple(shapes.names)), shapes.corners


def _circle(circle: Circle) -> tuple[_Form, Places]:
    x, y, radius, name = circle
    return _circles_form((name,), (radius,)), (x, y)


def _circles(circles: Circles) -> tuple[_Form, Places]:
    return _circles_form(tuple(circles.names), tuple(circles.radii)), circles.middles


def _stamps(stamps: Stamps) -> tuple[_Form, Places]:
    figure, places, name = stamps
    return _stamps_form(figure, len(places) // 2, name), places


def _text(text: Text) -> tuple[_Form, Places]:
    x, y, letters, size, anchor, turn, bold = text
    return _known_texts_form((letters,), size, anchor, turn, bold), (x, y)


def _texts(texts: Texts) -> tuple[_Form, Places]:
    places, letters, size, anchor, turn, bold = texts
    # Names come as a tuple, the same on many boards; distances are others on each.
    form = _known_texts_form if isinstance(letters, tuple) else _texts_form
    return form(letters, size, anchor, turn, bold), places


_FORMS: Mapping[type[Item], Callable[[Any], tuple[_Form, Places]]] = MappingProxyType(
    {
        Circle: _circle,
        Circles: _circles,
        Line: _line,
        Lines: _lines,
        Path: _path,
        Shapes: _shapes,
        Stamps: _stamps,
        Strokes: _strokes,
        Text: _text,
        Texts: _texts,
    }
)


def _id(name: str) -> str:
    return f' id="{name}"' if name else ""


# Most names, and most texts, come again on the next drawing.


@lru_cache(maxsize=256)
def _path_form(points: int, name: str, closed: bool) -> _Form:  # noqa: FBT001  (as a path has it)
    """A line, with gaps for its points."""
    return _form(f"<{'polygon' if closed else 'polyline'}{_id(name)}{_points(points)}")


def _points(number: int) -> str:
    return f' points="{" ".join([_PLACE] * number)}"/>\n'


@lru_cache(maxsize=256)
def _lines_form(names: tuple[str, ...]) -> _Form:
    """Lines, with gaps for their ends."""
    return _form("".join(f"<line{_id(name)}{_LINE}" for name in names))


@lru_cache(maxsize=256)
def _strokes_form(lines: int) -> _Form:
    """Lines without names, with gaps for their ends."""
    return _form(f'<path d="{_STROKE * lines}"/>\n')


@lru_cache(maxsize=256)
def _shapes_form(names: tuple[str, ...]) -> _Form:
    """Closed shapes, with gaps for their corners."""
    return _form("".join(f"<polygon{_id(name)}{_points(4)}" for name in names))


@lru_cache(maxsize=256)
def _circles_form(names: tuple[str, ...], radii: tuple[float, ...]) -> _Form:
    """Circles, with gaps for their middles."""
    circles = zip(names, radii, strict=True)
    return _form(
        "".join(f'<circle{_id(name)} cx="{_GAP}" cy="{_GAP}" r="{_short(radius)}"/>\n' for name, radius in circles)
    )


@lru_cache(maxsize=256)
def _stamps_form(figure: Figure, places: int, name: str) -> _Form:
    """A figure at so many places, with gaps for them."""
    return _form(f'<path{_id(name)} d="{f"M{_PLACE}{_steps(figure)}" * places}"/>\n')


@lru_cache(maxsize=256)
def _steps(figure: Figure) -> str:
    """A figure from its place on, as steps of a path."""
    steps = []
    at = (0.0, 0.0)
    for line in figure.lines:
        begin = line[0]
        for kind, point in zip(itertools.chain("m", itertools.repeat("l")), line, strict=False):
            # A step is from one written place to the next, so that what is rounded off does not add up.
            to = round(point[0], _DECIMALS), round(point[1], _DECIMALS)
            steps.append(f"{kind}{_short(to[0] - at[0])},{_short(at[1] - to[1])}")
            at = to
        if figure.closed:
            steps.append("z")
            at = round(begin[0], _DECIMALS), round(begin[1], _DECIMALS)
    return "".join(steps)


def _short(length: float) -> str:
    """Length with no more decimals than it needs."""
    return f"{length:.{_DECIMALS}f}".rstrip("0").rstrip(".")


def _texts_form(texts: Sequence[str], size: float, anchor: Anchor, turn: float, bold: bool) -> _Form:  # noqa: FBT001  (as a text has it)
    """Texts, with gaps for their places."""
    if not texts:
        return b"", ()
    before, (between, behind) = _text_head(size, anchor, turn, bold)
    after = [between] * (2 * len(texts))
    after[1::2] = [
        behind + text + b"</text>\n" + before for text in escape(_NEXT.join(texts)).encode().split(_NEXT.encode())
    ]
    after[-1] = after[-1].removesuffix(before)
    return before, after


_known_texts_form = lru_cache(maxsize=1024)(_texts_form)


@lru_cache(maxsize=256)
def _text_head(size: float, anchor: Anchor, turn: float, bold: bool) -> _Form:  # noqa: FBT001  (the same)
    """Begin a text, with gaps for its place."""
    place = f' transform="translate({_PLACE}) rotate({-turn:g})"' if turn else f' x="{_GAP}" y="{_GAP}"'
    weight = ' font-weight="bold"' if bold else ""
    return _form(f'<text{place} font-size="{size:g}"{_ANCHORS[anchor]}{weight}>')
