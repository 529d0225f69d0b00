"""Check bars: 100 mm and 4 in, to be held against a rule before anybody trusts a printed sheet (ISO 5457, 4.5)."""

import itertools

from scalewright.drawing.page import Drawing, Figure, Stamps, Text

__all__ = ["BARS_HEIGHT", "BARS_WIDTH", "draw_check_bars"]

BARS_WIDTH = 101.6
"""Length of the longer bar. [mm]"""

BARS_HEIGHT = 13.0
"""What both take with their letters. [mm]"""

_LETTERS = 2.2


def draw_check_bars(drawing: Drawing, x: float, y: float) -> None:
    """Draw both bars with their lower left corner at a place.

    Parameters
    ----------
    drawing : Drawing
        To draw on.
    x, y : float
        The place. [mm]
    """
    lines, fills, letters = drawing.layer("bars"), drawing.layer("bar-fills"), drawing.layer("text")
    for words, low, outline, marks, halves in _BARS:
        place = (x, y + low)
        lines += (Stamps(outline, place, f"bar-{words.replace(' ', '-')}"), Stamps(marks, place))
        fills.append(Stamps(halves, place))
        letters.append(
            Text(x, y + low + 3.1, f"{words}: print at 100 %, then check this bar with a steel rule", _LETTERS)
        )


def _rectangle(left: float, right: float, height: float) -> tuple[tuple[float, float], ...]:
    return (left, 0.0), (right, 0.0), (right, height), (left, height)


def _bar(length: float, parts: int) -> tuple[Figure, Figure, Figure]:
    """Outline, marks, and the filled halves of every other part of a bar."""
    marks = [part * length / parts for part in range(parts + 1)]
    return (
        Figure((_rectangle(0.0, length, 2.0),), closed=True),
        Figure(tuple(((x, 0.0), (x, 2.0)) for x in marks[1:-1])),
        Figure(
            tuple(_rectangle(left, right, 1.0) for left, right in list(itertools.pairwise(marks))[::2]), closed=True
        ),
    )


_BARS = (("100 mm", 6.8, *_bar(100.0, 10)), ("4 in", 0.0, *_bar(101.6, 4)))
