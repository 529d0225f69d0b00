"""Letters beside a board: numbers and distances of its frets, names of its ends, so that none stands on another."""

import itertools
import math
from collections.abc import Sequence
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from scalewright.drawing.letters import text_width
from scalewright.drawing.page import Anchor, Drawing, Figure, Stamps, Text, Texts
from scalewright.lutherie.fingerboard import Fingerboard
from scalewright.lutherie.fingerboard.fret_columns import Column, Places
from scalewright.lutherie.fingerboard.plan import MOST_BOARD_STRINGS

__all__ = ["ROOM_BELOW", "draw_letters", "in_words", "one_by_one", "room_above", "two_sided"]

_NUMBER, _DISTANCE = 3.6, 2.8
_SMALLEST = 1.4
"""Sizes of letters; distances are made smaller where frets are near each other, down to the smallest. [mm]"""
_ASIDE = 2.0
"""From an edge of the board to the letters beside it. [mm]"""
_TICK = 1.4
_ROW = _NUMBER + 0.8
"""From one row of names to the next. [mm]"""
ROOM_BELOW = 19.0
"""Room that the letters below a board take. [mm]"""

_ROOM_ABOVE, _ROOM_ABOVE_BOTH = 11.0, 24.0
"""Room above it where they are the numbers of the frets, or distances as well. [mm]"""
_TICKS = {sign: Figure((((0.0, sign * 0.4), (0.0, sign * (0.4 + _TICK))),)) for sign in (-1.0, 1.0)}
_STRINGS = tuple(str(number) for number in range(1, MOST_BOARD_STRINGS + 1))


def in_words(length: float, unit: str) -> str:
    """Length as letters on a drawing: hundredths of a millimetre, or thousandths of an inch."""
    return f"{length:.2f}" if unit == "mm" else f"{length / 25.4:.3f}"


def two_sided(board: Fingerboard) -> bool:
    """Whether the two sides of a board have numbers of their own."""
    return board.bass.layout_scale != board.treble.layout_scale or board.bass.rule != board.treble.rule


def room_above(board: Fingerboard) -> float:
    """Room that the letters above a board take. [mm]"""
    room = _ROOM_ABOVE_BOTH if two_sided(board) else _ROOM_ABOVE
    return room + _ROW if None in board.columns.places.numbers else room


def one_by_one(places: Places) -> list[float]:
    """Places as x and y in turn."""
    sides: list[float] = places.view(np.float64).ravel().tolist()
    return sides


def draw_letters(drawing: Drawing, board: Fingerboard, unit: str) -> None:
    """Draw the numbers of the frets above a board, distances below it, on both sides where they differ.

    Parameters
    ----------
    drawing : Drawing
        To draw on, at its origin.
    board : Fingerboard
        The board.
    unit : {"mm", "in"}
        Unit of the distances.
    """
    ox, oy = drawing.origin
    letters, ticks = drawing.layer("labels"), drawing.layer("ticks")
    columns, both = board.columns, two_sided(board)
    # The bass side lies below on a right-handed board, and above on a left-handed one.
    for side, sign in ((0, -1.0), (1, 1.0)) if board.handedness == "right" else ((0, 1.0), (1, -1.0)):
        ends = columns.at_edges[:, side] + complex(ox, oy)
        ticks.append(Stamps(_TICKS[sign], one_by_one(ends)))
        xs = ends.real
        gaps = xs[1:] - xs[:-1]
        offset = _TICK + _ASIDE
        if sign > 0.0:
            rows = _names(board, ends, gaps, offset)
            letters += rows
            offset += _ROW * len(rows)
        if both or sign < 0.0:
            distances = columns.places.distances[:, side] if both else columns.on_centre_line
            letters += _distances(distances, ends, gaps, sign * offset, unit)
    _name_ends(drawing, board)


def _names(board: Fingerboard, ends: Places, gaps: Column, offset: float) -> list[Texts]:
    """Numbers of the frets in a row above where they end, and in one above it the names of extra frets."""
    names, numbers = board.columns.places.names, board.columns.places.numbers
    if None not in numbers:
        return [_row(names, ends, gaps, offset, bold=True)]
    rows = []
    for extra, bold in ((False, True), (True, False)):
        which = [index for index, number in enumerate(numbers) if (number is None) == extra]
        xs = ends[which].real
        row = tuple(names[index] for index in which)
        rows.append(_row(row, ends[which], xs[1:] - xs[:-1], offset + _ROW * extra, bold=bold))
    return rows


def _row(names: tuple[str, ...], ends: Places, gaps: Column, offset: float, *, bold: bool) -> Texts:
    """Names of frets, so far above where the frets end; those that would stand on others are left out."""
    widths = _widths(names)
    if len(gaps) and gaps.min() < max(widths):
        kept = _apart(ends.real, widths)
        names, ends = tuple(names[index] for index in kept), ends[kept]
    return Texts(one_by_one(ends + 1j * offset), names, _NUMBER, "middle", bold=bold)


def _distances(distances: Column, ends: Places, gaps: Column, offset: float, unit: str) -> list[Texts]:
    """Distances that stand upright, smaller where frets are near each other."""
    anchor: Anchor = "start" if offset > 0.0 else "end"

    def upright(chosen: slice | NDArray[np.intp], size: float) -> Texts:
        words = [in_words(distance, unit) for distance in distances[chosen].tolist()]
        return Texts(one_by_one(ends[chosen] + complex(0.35 * size, offset)), words, size, anchor, 90.0)

    if not len(gaps) or gaps.min() >= 1.15 * _DISTANCE:
        return [upright(slice(None), _DISTANCE)]
    free = np.minimum(np.append(gaps, math.inf), np.insert(gaps, 0, math.inf))
    crowded = np.flatnonzero(free < 1.15 * _DISTANCE)
    size = max(_SMALLEST, 0.85 * float(free[crowded].min()))
    kept = crowded[_apart(ends.real[crowded], [1.15 * size] * len(crowded))]
    return [upright(np.flatnonzero(free >= 1.15 * _DISTANCE), _DISTANCE), upright(kept, size)]


@lru_cache(maxsize=256)
def _widths(names: tuple[str, ...]) -> list[float]:
    """Room that the numbers of frets take; the same on every board. [mm]"""
    return [max(text_width(name, _NUMBER), 1.0) for name in names]


def _apart(xs: Column, widths: Sequence[float]) -> list[int]:
    """Which letters, centred at places of their own, leave one another free, from the nut on."""
    kept, taken = [], -math.inf
    for index, (x, width) in enumerate(zip(xs.tolist(), widths, strict=True)):
        if x - 0.5 * width >= taken:
            kept.append(index)
            taken = x + 0.5 * width
    return kept


def _name_ends(drawing: Drawing, board: Fingerboard) -> None:
    """Names of nut and saddle, and numbers of the strings."""
    ox, oy = drawing.origin
    letters = drawing.layer("labels")
    left = min(point.x for point in (*board.nut, *board.outline)) + ox
    middle = 0.5 * (board.nut.bass.y + board.nut.treble.y) + oy
    letters.append(Text(left - 2.5, middle, "nut end", _DISTANCE, "middle", 90.0))
    places = [string.at_saddle for string in board.strings]
    gap = min((abs(a.y - b.y) for a, b in itertools.pairwise(places)), default=4.0)
    size = min(_DISTANCE, 0.8 * gap)
    if size >= 1.2:
        beside = [side for x, y in places for side in (x + ox + 1.5, y + oy - 0.35 * size)]
        letters.append(Texts(beside, _STRINGS[: len(places)], size))
    right = max(place.x for place in places) + ox + 1.5 + 2.0 * size + 3.0
    letters.append(Text(right, oy, "saddle", _DISTANCE, "middle", 90.0))
