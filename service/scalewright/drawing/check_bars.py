"""Check bars: 100 mm and 4 in, to be held against a rule before anybody trusts a printed sheet (ISO 5457, 4.5)."""

import itertools

from scalewright.drawing.page import Drawing, Figure, Stamps, Texts

__all__ = ["BARS_HEIGHT", "BARS_WIDTH", "draw_check_bars"]

BARS_WIDTH = 101.6
"""Length of the longer bar. [mm]"""

BARS_HEIGHT = 13.0
"""What both take with their letters. [mm]"""

_LETTERS = 2.2
_UPPER = 6.8
"""From the bar of 4 in to the one of 100 mm. [mm]"""
_WORDS = tuple(f"{length}: print at 100 %, then check this bar with a steel rule" for length in ("100 mm", "4 in"))


def draw_check_bars(drawing: Drawing, x: float, y: float) -> None:
    """Draw both bars with their lower left corner at a place.

    Parameters
    ----------
    drawing : Drawing
        To draw on.
    x, y : float
        The place. [mm]
    """
    lower, upper = (x, y), (x, y + _UPPER)
    drawing.layer("bars").extend(
        (Stamps(_MILLIMETRES, upper, "bar-100-mm"), Stamps(_INCHES, lower, "bar-4-in"), Stamps(_MARKS, lower))
    )
    drawing.layer("bar-fills").append(Stamps(_HALVES, lower))
    drawing.layer("text").append(Texts((x, y + _UPPER + 3.1, x, y + 3.1), _WORDS, _LETTERS))


def _rectangle(left: float, right: float, low: float, height: float) -> tuple[tuple[float, float], ...]:
    return (left, low), (right, low), (right, low + height), (left, low + height)


def _parts(length: float, parts: int) -> list[float]:
    """Ends of the parts of a bar. [mm]"""
    return [part * length / parts for part in range(parts + 1)]


_BARS = ((_parts(100.0, 10), _UPPER), (_parts(101.6, 4), 0.0))
_MILLIMETRES, _INCHES = (Figure((_rectangle(0.0, ends[-1], 0.0, 2.0),), closed=True) for ends, _ in _BARS)
"""Outlines of the two."""
_MARKS = Figure(tuple(((x, low), (x, low + 2.0)) for ends, low in _BARS for x in ends[1:-1]))
_HALVES = Figure(
    tuple(
        _rectangle(left, right, low, 1.0) for ends, low in _BARS for left, right in list(itertools.pairwise(ends))[::2]
    ),
    closed=True,
)
"""Filled halves of every other part."""
