"""The page: lines, shapes and letters in millimetres, recorded by layer, for any writer to write out."""

import itertools
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal, NamedTuple, TypeAlias

__all__ = [
    "Anchor",
    "Circle",
    "Circles",
    "Drawing",
    "Figure",
    "Item",
    "Line",
    "Lines",
    "Many",
    "Path",
    "Places",
    "Shapes",
    "Single",
    "Stamps",
    "Strokes",
    "Text",
    "Texts",
    "singly",
]

Places: TypeAlias = Sequence[float]
"""Places one after the other, x and y in turn. [mm]"""

Anchor: TypeAlias = Literal["start", "middle", "end"]
"""Which part of a text stands at its place."""


class Line(NamedTuple):
    """A straight line."""

    x1: float
    y1: float
    x2: float
    y2: float
    name: str = ""


class Path(NamedTuple):
    """A line through several points."""

    points: Sequence[tuple[float, float]]
    name: str = ""
    closed: bool = True


class Strokes(NamedTuple):
    """Many straight lines that need no names of their own, each by its two ends."""

    lines: Sequence[tuple[float, float, float, float]]
    name: str = ""


class Circle(NamedTuple):
    """A circle."""

    x: float
    y: float
    radius: float
    name: str = ""


class Text(NamedTuple):
    """One line of letters; its place is on the line that they stand on."""

    x: float
    y: float
    text: str
    size: float
    anchor: Anchor = "start"
    turn: float = 0.0
    bold: bool = False


Single: TypeAlias = Line | Strokes | Path | Circle | Text
"""One thing."""


class Lines(NamedTuple):
    """Many straight lines, each with a name."""

    ends: Places
    names: Sequence[str]


class Shapes(NamedTuple):
    """Many closed shapes with four corners, each with a name."""

    corners: Places
    names: Sequence[str]


@dataclass(frozen=True, eq=False, slots=True)
class Figure:
    """Lines that belong together, each through several points, from a place of their own; equal to itself alone."""

    lines: tuple[tuple[tuple[float, float], ...], ...]
    closed: bool = False


class Stamps(NamedTuple):
    """A figure that stands at many places."""

    figure: Figure
    places: Places
    name: str = ""


class Texts(NamedTuple):
    """Many texts of one look."""

    places: Places
    texts: Sequence[str]
    size: float
    anchor: Anchor = "start"
    turn: float = 0.0
    bold: bool = False


class Circles(NamedTuple):
    """Many circles, each with a name."""

    middles: Places
    radii: Sequence[float]
    names: Sequence[str]


Many: TypeAlias = Lines | Shapes | Stamps | Texts | Circles
"""Things of one kind, column by column."""

Item: TypeAlias = Single | Many


def _groups(sides: Sequence[float], size: int) -> list[tuple[float, ...]]:
    return list(zip(*(sides[index::size] for index in range(size)), strict=True))


def singly(items: Iterable[Item]) -> Iterator[Single]:
    """Items one by one, for writers that take no more at once."""
    for item in items:
        if isinstance(item, Lines | Shapes | Stamps | Texts | Circles):
            yield from _singled(item)
        else:
            yield item


def _singled(many: Many) -> Iterator[Single]:
    """Things of one kind one by one."""
    match many:
        case Lines(ends, names):
            for (x1, y1, x2, y2), name in zip(_groups(ends, 4), names, strict=True):
                yield Line(x1, y1, x2, y2, name)
        case Shapes(corners, names):
            for sides, name in zip(_groups(corners, 8), names, strict=True):
                yield Path(list(zip(sides[::2], sides[1::2], strict=True)), name)
        case Stamps(figure, places, name):
            for (x, y), line in itertools.product(_groups(places, 2), figure.lines):
                yield Path([(x + px, y + py) for px, py in line], name, figure.closed)
        case Texts(places, texts):
            look = many[2:]
            yield from (Text(x, y, text, *look) for (x, y), text in zip(_groups(places, 2), texts, strict=True))
        case Circles(middles, radii, names):
            yield from map(Circle, middles[::2], middles[1::2], radii, names)


@dataclass(slots=True)
class Drawing:
    """What is drawn on a page, layer by layer, from a zero point of its own; y upwards, lengths in millimetres."""

    width: float
    """Width of the page. [mm]"""
    height: float
    """Height of the page. [mm]"""
    title: str = ""
    """What it is called."""
    description: str = ""
    """What it shows, in a sentence."""
    origin: tuple[float, float] = (0.0, 0.0)
    """Where the zero point lies on the page, from its lower left corner. [mm]"""
    layers: dict[str, list[Item]] = field(default_factory=dict)
    """Items of every layer, in the order in which the layers were begun."""

    def layer(self, name: str) -> list[Item]:
        """Items of a layer, to add to; begun if it is new."""
        return self.layers.setdefault(name, [])
