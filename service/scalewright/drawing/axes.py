"""Axes: a frame for a plot of values by fret, and lines in it that black and white tells apart."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from scalewright.drawing.letters import clip_text, text_width, wrap
from scalewright.drawing.page import Circle, Drawing, Item, Line, Path, Text

__all__ = ["LOOKS", "Axes", "Series", "nice_step", "numbers_of", "room_for", "signed"]

LOOKS = 6
"""How many kinds of lines, and of signs, there are."""

_LETTERS = 3.0
_GAP = 1.5
_SIGN = 1.1
_RING = 1.9
_LEGEND = 5.5
"""From one line of the legend to the next. [mm]"""


class Series(NamedTuple):
    """Values by fret that belong together."""

    name: str
    """What the legend says."""
    values: Sequence[tuple[float, float]]
    """Fret and value."""
    joined: bool = True
    """Whether a line joins them."""


def nice_step(span: float, most: int) -> float:
    """Step of 1, 2 or 5 times a power of ten that divides a span into so many parts at most.

    Parameters
    ----------
    span : float
        Length to divide, greater than 0.
    most : int
        The most parts.

    Returns
    -------
    float
        The step, in the unit of the span.
    """
    rough = span / most
    power = 10.0 ** math.floor(math.log10(rough))
    return next(step * power for step in (1.0, 2.0, 5.0, 10.0) if step * power >= rough * (1.0 - 1e-9))


def signed(text: str) -> str:
    """A number as people write it, with a minus sign instead of a hyphen."""
    return text.replace("-", "\N{MINUS SIGN}")


def numbers_of(values: tuple[float, float]) -> list[tuple[float, str]]:
    """Round values from one value to another, eight at most or so, and how they are written beside an axis."""
    low, high = values
    step = nice_step(high - low, 8)
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    indices = range(math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9) + 1)
    return [
        (index * step, signed(f"{index * step:.{decimals}f}") if index else f"{0.0:.{decimals}f}") for index in indices
    ]


def room_for(values: tuple[float, float]) -> float:
    """Room to the left of a frame for the numbers of its axis and the words beside them. [mm]"""
    return _GAP + max(text_width(number, _LETTERS) for _, number in numbers_of(values)) + 2.0 * _LETTERS


@dataclass(frozen=True, slots=True)
class Axes:
    """A frame on a drawing: frets from left to right, values upwards."""

    drawing: Drawing
    """To draw on."""
    left: float
    """Left side of the frame. [mm]"""
    low: float
    """Lower side. [mm]"""
    width: float
    """Width of the frame. [mm]"""
    height: float
    """Height of the frame. [mm]"""
    frets: tuple[float, float]
    """Fret at the left and at the right side."""
    values: tuple[float, float]
    """Value at the lower and at the upper side."""

    def x(self, fret: float) -> float:
        """Place of a fret. [mm]"""
        first, last = self.frets
        return self.left + self.width * (fret - first) / (last - first)

    def y(self, value: float) -> float:
        """Place of a value, at a side of the frame where it lies beyond. [mm]"""
        lowest, highest = self.values
        share = (min(max(value, lowest), highest) - lowest) / (highest - lowest)
        return self.low + self.height * share

    def draw_frame(self, across: str, upwards: str) -> None:
        """Draw frame, grid and scales, with the words that say what they are of."""
        grid, axis, letters = (self.drawing.layer(name) for name in ("grid", "axis", "labels"))
        for value, number in numbers_of(self.values):
            y = self.y(value)
            (axis if value == 0.0 else grid).append(Line(self.left, y, self.left + self.width, y))
            letters.append(Text(self.left - _GAP, y - 1.0, number, _LETTERS, "end"))
        every = max(1, math.ceil((self.frets[1] - self.frets[0]) / 24.0))
        for fret in range(math.ceil(self.frets[0]), math.floor(self.frets[1]) + 1):
            if fret % every == 0:
                x = self.x(fret)
                grid.append(Line(x, self.low, x, self.low + self.height))
                letters.append(Text(x, self.low - 4.0, str(fret), _LETTERS, "middle"))
        frame = ((self.left, self.low), (self.left + self.width, self.low))
        upper = self.low + self.height
        axis.append(Path((*frame, (self.left + self.width, upper), (self.left, upper)), "frame-of-plot"))
        letters.append(Text(self.left + 0.5 * self.width, self.low - 9.0, across, _LETTERS, "middle"))
        beside = self.left - room_for(self.values) + _LETTERS
        letters.append(Text(beside, self.low + 0.5 * self.height, upwards, _LETTERS, "middle", 90.0))

    def draw_series(self, series: Sequence[Series]) -> None:
        """Draw lines and signs, and the legend to the right of the frame."""
        x = self.left + self.width + 4.0
        room = self.drawing.width - x - 12.0
        leading = min(_LEGEND, self.height / max(len(series), 1))
        size = min(_LETTERS, 0.8 * leading)
        for index, one in enumerate(series):
            layer = self.drawing.layer(f"plot-{index % LOOKS}")
            places = [(self.x(fret), self.y(value)) for fret, value in one.values]
            if one.joined and len(places) > 1:
                layer.append(Path(places, f"line-{index + 1}", closed=False))
            shape = (index + index // LOOKS) % LOOKS
            for place in places:
                self._sign(shape, place)
            y = self.low + self.height - (index + 0.5) * leading
            if one.joined:
                layer.append(Line(x, y, x + 8.0, y))
            self._sign(shape, (x + 4.0, y))
            self.drawing.layer("labels").append(Text(x + 10.0, y - 0.35 * size, clip_text(one.name, size, room), size))

    def _sign(self, shape: int, place: tuple[float, float]) -> None:
        """Draw one of six signs at a place."""
        self.drawing.layer("axis").extend(_signs(shape, *place))

    def ring(self, fret: float, value: float, words: str, line: int) -> None:
        """Draw a ring around a value, at a side of the frame where it lies beyond, and say why in the legend."""
        x, y = self.left + self.width + 4.0, self.low + self.height - (line + 0.5) * _LEGEND
        rings = self.drawing.layer("axis")
        rings += (Circle(self.x(fret), self.y(value), _RING), Circle(x + 4.0, y, _RING))
        size = 0.8 * _LETTERS
        room = self.drawing.width - x - 12.0
        for index, text in enumerate(wrap(words, size, room)[:2]):
            self.drawing.layer("labels").append(Text(x + 10.0, y - (0.35 + 1.2 * index) * size, text, size))


def _signs(shape: int, x: float, y: float) -> list[Item]:
    r = _SIGN
    match shape:
        case 0:
            return [Circle(x, y, 0.9 * r)]
        case 1:
            return [Path(((x - r, y - r), (x + r, y - r), (x + r, y + r), (x - r, y + r)))]
        case 2:
            return [Path(((x - r, y - 0.8 * r), (x + r, y - 0.8 * r), (x, y + 1.1 * r)))]
        case 3:
            return [Line(x - r, y - r, x + r, y + r), Line(x - r, y + r, x + r, y - r)]
        case 4:
            return [Path(((x - 1.2 * r, y), (x, y - 1.2 * r), (x + 1.2 * r, y), (x, y + 1.2 * r)))]
        case _:
            return [Line(x - r, y, x + r, y), Line(x, y - r, x, y + r)]
