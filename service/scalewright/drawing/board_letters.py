"""Letters beside a board: numbers and distances of its frets, names of its ends, so that none stands on another."""

import itertools
import math
import operator
from collections.abc import Sequence
from functools import lru_cache
from typing import TypeVar

from scalewright.drawing.letters import text_width
from scalewright.drawing.page import Anchor, Drawing, Figure, Stamps, Texts
from scalewright.lutherie.fingerboard import Fingerboard
from scalewright.lutherie.fingerboard.plan import MOST_BOARD_STRINGS

__all__ = ["ROOM_BELOW", "draw_letters", "in_words", "room_above", "two_sided"]

_T = TypeVar("_T")

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


def in_words(lengths: Sequence[float], unit: str) -> list[str]:
    """Lengths as letters on a drawing: hundredths of a millimetre, or thousandths of an inch."""
    if unit == "mm":
        return [f"{length:.2f}" for length in lengths]
    return [f"{length / 25.4:.3f}" for length in lengths]


def two_sided(board: Fingerboard) -> bool:
    """Whether the two sides of a board have numbers of their own."""
    return board.bass.layout_scale != board.treble.layout_scale or board.bass.rule != board.treble.rule


def room_above(board: Fingerboard) -> float:
    """Room that the letters above a board take. [mm]"""
    room = _ROOM_ABOVE_BOTH if two_sided(board) else _ROOM_ABOVE
    return room + _ROW if None in board.columns.places.numbers else room


def draw_letters(drawing: Drawing, board: Fingerboard, unit: str) -> None:
    """Draw the numbers of the frets above a board, distances below it, on both sides where they differ.

    Parameters
    ----------
    drawing : Drawing
        To draw on.
    board : Fingerboard
        The board.
    unit : {"mm", "in"}
        Unit of the distances.
    """
    letters, ticks = drawing.layer("labels"), drawing.layer("ticks")
    columns, both = board.columns, two_sided(board)
    bass_xs, bass_ys, treble_xs, treble_ys = zip(*columns.at_edges, strict=True)
    sides = [
        (-1.0, bass_xs, bass_ys, columns.places.distances[0]),
        (1.0, treble_xs, treble_ys, columns.places.distances[1]),
    ]
    # The bass side lies below on a right-handed board, and above on a left-handed one.
    hand = 1.0 if board.handedness == "right" else -1.0
    for side, xs, ys, distances in sides:
        sign = hand * side
        ticks.append(Stamps(_TICKS[sign], list(itertools.chain.from_iterable(zip(xs, ys, strict=True)))))
        offset = _TICK + _ASIDE
        if sign > 0.0:
            rows = _names(board, xs, ys, offset)
            letters += rows
            offset += _ROW * len(rows)
        if both or sign < 0.0:
            letters += _distances(distances if both else columns.on_centre_line, xs, ys, sign * offset, unit)
    _name_ends(drawing, board)


def _names(board: Fingerboard, xs: Sequence[float], ys: Sequence[float], offset: float) -> list[Texts]:
    """Numbers of the frets in a row above where they end, and in one above it the names of extra frets."""
    names, numbers = board.columns.places.names, board.columns.places.numbers
    if None not in numbers:
        return [_row(names, xs, ys, offset, bold=True)]
    rows = []
    for extra, bold in ((False, True), (True, False)):
        chosen = [index for index, number in enumerate(numbers) if (number is None) == extra]
        row = tuple(_those(names, chosen))
        rows.append(_row(row, _those(xs, chosen), _those(ys, chosen), offset + _ROW * extra, bold=bold))
    return rows


def _row(names: tuple[str, ...], xs: Sequence[float], ys: Sequence[float], offset: float, *, bold: bool) -> Texts:
    """Names of frets, so far above where the frets end; those that would stand on others are left out."""
    widths = _widths(names)
    if _narrowest(xs) < max(widths):
        kept = _apart(xs, widths)
        names, xs, ys = tuple(_those(names, kept)), _those(xs, kept), _those(ys, kept)
    return Texts(
        [side for x, y in zip(xs, ys, strict=True) for side in (x, y + offset)], names, _NUMBER, "middle", bold=bold
    )


def _narrowest(xs: Sequence[float]) -> float:
    """The least gap between neighbours. [mm]"""
    return min(map(operator.sub, xs[1:], xs), default=math.inf)


def _distances(
    distances: Sequence[float], xs: Sequence[float], ys: Sequence[float], offset: float, unit: str
) -> list[Texts]:
    """Distances that stand upright, smaller where frets are near each other."""
    anchor: Anchor = "start" if offset > 0.0 else "end"

    def upright(distances: Sequence[float], xs: Sequence[float], ys: Sequence[float], size: float) -> Texts:
        aside = 0.35 * size
        places = [side for x, y in zip(xs, ys, strict=True) for side in (x + aside, y + offset)]
        return Texts(places, in_words(distances, unit), size, anchor, 90.0)

    least = 1.15 * _DISTANCE
    if _narrowest(xs) >= least:
        return [upright(distances, xs, ys, _DISTANCE)]
    gaps = [math.inf, *map(operator.sub, xs[1:], xs), math.inf]
    free = [min(before, after) for before, after in itertools.pairwise(gaps)]
    size = max(_SMALLEST, 0.85 * min(free))
    roomy = [index for index, room in enumerate(free) if room >= least]
    crowded = [index for index, room in enumerate(free) if room < least]
    kept = _those(crowded, _apart(_those(xs, crowded), [1.15 * size] * len(crowded)))
    return [
        upright(_those(distances, some), _those(xs, some), _those(ys, some), letters)
        for some, letters in ((roomy, _DISTANCE), (kept, size))
    ]


def _those(column: Sequence[_T], indices: Sequence[int]) -> list[_T]:
    """Some entries of a column."""
    return [column[index] for index in indices]


@lru_cache(maxsize=256)
def _widths(names: tuple[str, ...]) -> list[float]:
    """Room that the numbers of frets take; the same on every board. [mm]"""
    return [max(text_width(name, _NUMBER), 1.0) for name in names]


def _apart(xs: Sequence[float], widths: Sequence[float]) -> list[int]:
    """Which letters, centred at places of their own, leave one another free, from the nut on."""
    kept, taken = [], -math.inf
    for index, (x, width) in enumerate(zip(xs, widths, strict=True)):
        if x - 0.5 * width >= taken:
            kept.append(index)
            taken = x + 0.5 * width
    return kept


def _name_ends(drawing: Drawing, board: Fingerboard) -> None:
    """Names of nut and saddle, and numbers of the strings."""
    letters = drawing.layer("labels")
    bass, treble = board.nut
    left = min(bass.x, treble.x, board.outline[0].x, board.outline[1].x) - 2.5
    middle = 0.5 * (bass.y + treble.y)
    xs, ys = zip(*(string.at_saddle for string in board.strings), strict=True)
    gap = min(map(abs, map(operator.sub, ys[1:], ys)), default=4.0)
    size = min(_DISTANCE, 0.8 * gap)
    if size >= 1.2:
        lower = 0.35 * size
        beside = [side for x, y in zip(xs, ys, strict=True) for side in (x + 1.5, y - lower)]
        letters.append(Texts(beside, _STRINGS[: len(xs)], size))
    right = max(xs) + 1.5 + 2.0 * size + 3.0
    letters.append(Texts((left, middle, right, 0.0), ("nut end", "saddle"), _DISTANCE, "middle", 90.0))
