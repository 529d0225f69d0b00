"""Position markers: before which frets they stand, and where."""

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from scalewright.lutherie.errors import ImpossibleBoardError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.fingerboard.fret_columns import FretColumns, line_of
from scalewright.lutherie.fingerboard.plan import COMMON_DOUBLE_MARKERS, COMMON_MARKERS, Plan
from scalewright.lutherie.fingerboard.points import AcrossLine, Point, on_centre_line, point, slope_of
from scalewright.lutherie.fingerboard.string_lines import StringLine
from scalewright.lutherie.phrases import numbered

__all__ = ["Marker", "notes_on_markers", "place_markers"]


class Marker(NamedTuple):
    """A position marker."""

    fret: int
    """Fret that it stands before, on the side of the nut."""
    at: Point
    """Its centre."""
    room: float
    """From the fret before it to that fret, on the centre line. [mm]"""


def place_markers(
    plan: Plan, octave_fret: int | None, frets: FretColumns, zero: AcrossLine, strings: Sequence[StringLine]
) -> list[Marker]:
    """Position markers of a board, half way between two frets on the centre line.

    Parameters
    ----------
    plan : Plan
        Which are wanted.
    octave_fret : int or None
        Number of the fret that stands for the octave.
    frets : FretColumns
        The frets.
    zero : AcrossLine
        The zero line.
    strings : sequence of StringLine
        All strings, string 1 first.

    Returns
    -------
    list of Marker
        Two of one fret for a double marker; none beyond the last fret.

    Raises
    ------
    ImpossibleBoardError
        A double marker of a fret that bears none.
    """
    wanted: tuple[int, ...] = COMMON_MARKERS if octave_fret == 12 else ()
    if plan.markers is not None:
        wanted = plan.markers
    doubled: tuple[int, ...] = COMMON_DOUBLE_MARKERS
    if plan.double_markers is not None:
        doubled = plan.double_markers
        for index, fret in enumerate(doubled):
            if fret not in wanted:
                message = f"fret {fret} bears no marker that could be double; name it in `markers` as well"
                raise ImpossibleBoardError(message, field=("double_markers", index))
    places = _places_of(frets.places.numbers)
    lines = list(zip(frets.on_centre_line, frets.slopes, strict=True))
    at_zero = on_centre_line(zero), slope_of(zero)
    markers = []
    for number in wanted:
        if number > plan.frets:
            continue
        before, slope_before = lines[places[number - 1]] if number > 1 else at_zero
        behind, slope = lines[places[number]]
        x, room = 0.5 * (behind + before), behind - before
        if number in doubled:
            aside = _half_way(x, frets, strings)
            ahead = 0.5 * aside * (slope + slope_before)
            markers.append(Marker(number, Point(x + ahead, aside), room))
            markers.append(Marker(number, Point(x - ahead, -aside), room))
        else:
            markers.append(Marker(number, point((x, 0.0)), room))
    return markers


@lru_cache(maxsize=256)
def _places_of(numbers: tuple[int | None, ...]) -> dict[int | None, int]:
    """Where each fret of the rule stands among all; few boards have others."""
    return {number: index for index, number in enumerate(numbers)}


def _half_way(x: float, frets: FretColumns, strings: Sequence[StringLine]) -> float:
    """Middle of one half of the strings, from the centre line. [mm]"""
    if len(strings) == 1:
        return 0.25 * math.dist(*line_of(frets.slots[0]))
    outer = strings[0]
    share = x / outer.scale
    return 0.5 * (outer.at_zero.y + share * (outer.at_scale_end.y - outer.at_zero.y))


def notes_on_markers(plan: Plan) -> list[Note]:
    """What to mind about markers that were asked for."""
    beyond = [fret for fret in plan.markers or () if fret > plan.frets]
    if not beyond:
        return []
    text = (
        f"Markers were asked for before {numbered('fret', beyond)}, and this board ends with fret {plan.frets}: "
        "they are left out."
    )
    return [Note("markers_left_out", text)]
