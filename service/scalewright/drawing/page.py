"""The page: lines, shapes and letters in millimetres, recorded by layer, for any writer to write out."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal, NamedTuple, TypeAlias

__all__ = ["Anchor", "Circle", "Drawing", "Item", "Line", "Path", "Strokes", "Text"]

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


Item: TypeAlias = Line | Strokes | Path | Circle | Text


@dataclass(slots=True)
class Drawing:
    """What is drawn on a page, layer by layer; y upwards from the lower left corner, lengths in millimetres."""

    width: float
    """Width of the page. [mm]"""
    height: float
    """Height of the page. [mm]"""
    title: str = ""
    """What it is called."""
    description: str = ""
    """What it shows, in a sentence."""
    origin: tuple[float, float] = (0.0, 0.0)
    """Where the zero point of what is drawn lies on the page. [mm]"""
    layers: dict[str, list[Item]] = field(default_factory=dict)
    """Items of every layer, in the order in which the layers were begun."""

    def layer(self, name: str) -> list[Item]:
        """Items of a layer, to add to; begun if it is new."""
        return self.layers.setdefault(name, [])
