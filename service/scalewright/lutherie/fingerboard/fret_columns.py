"""Fret columns: the lines and slots of all frets of a board, a column for each quantity.

The columns hold plain numbers that are worked out fret by fret: for some tens of frets that takes less time than
arrays, whose operations take longer to begin than to run.
"""

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

from scalewright.lutherie.errors import FretsCollideError, ImpossibleBoardError
from scalewright.lutherie.fingerboard.fret_lines import BoardFret, FretSlot, Surface
from scalewright.lutherie.fingerboard.places import FretCents, FretDistances, FretPlaces
from scalewright.lutherie.fingerboard.plan import Plan, SlotPlan
from scalewright.lutherie.fingerboard.points import AcrossLine, Edges, Point, on_centre_line, slope_of
from scalewright.lutherie.fingerboard.string_lines import StringLine

__all__ = ["Ends", "FretColumns", "cut_slots", "line_of", "refuse_collisions"]

Ends: TypeAlias = tuple[float, float, float, float]
"""A line across the board: x and y of its end on the bass side, and of its end on the treble side. [mm]"""

_Corners: TypeAlias = tuple[float, float, float, float, float, float, float, float]


class _Bound(NamedTuple):
    """A line along the board that slots end at."""

    beside_zero: float
    """How far from the centre line it is beside the zero point. [mm]"""
    slope: float
    """How far it runs across the board as it runs along. [mm/mm]"""
    is_edge: bool
    """Whether it is an edge of the board, which a slot may run out of."""


_Bounds: TypeAlias = tuple[_Bound, _Bound]
"""On the bass and on the treble side."""


@dataclass(frozen=True, slots=True)
class FretColumns:
    """The frets of a board, from the nut on."""

    places: FretPlaces
    """What they are called, and where they stand by the rules."""
    lines: Sequence[Ends]
    """Their lines between the outer strings."""
    on_centre_line: Sequence[float]
    """Where they cross the centre line, from the zero line there. [mm]"""
    slopes: Sequence[float]
    """How far they run along the board as they run across it. [mm/mm]"""
    at_edges: Sequence[Ends]
    """Their lines, prolonged to the edges of the board."""
    slots: Sequence[Ends]
    """Middle lines of their slots."""
    corners: Sequence[_Corners]
    """Corners of the kerfs, x and y of each: on the nut's side bass and treble, on the bridge's treble and bass."""

    def frets(
        self, plan: SlotPlan, surface: Surface | None, strings: Sequence[StringLine], shares: Sequence[float | None]
    ) -> list[BoardFret]:
        """The same one by one.

        Parameters
        ----------
        plan : SlotPlan
            How slots are cut.
        surface : Surface or None
            How the surface is rounded.
        strings : sequence of StringLine
            All strings, string 1 first.
        shares : sequence of float or None
            Where the rule puts each fret on every string's own scale; None where the outer strings' rules differ. [-]

        Returns
        -------
        list of BoardFret
            From the nut on.
        """
        names, numbers, cents, distances, crossed, _ = self.places
        return [
            BoardFret(
                name=names[index],
                fret=numbers[index],
                cents=FretCents(cents[0][index], cents[1][index]),
                from_zero=FretDistances(distances[0][index], distances[1][index]),
                first_string=crossed[index][0],
                last_string=crossed[index][1],
                on_centre_line=self.on_centre_line[index],
                line=line_of(self.lines[index]),
                slot=self._slot(index, plan, surface),
                strings=strings,
                share=shares[index],
            )
            for index in range(len(names))
        ]

    def _slot(self, index: int, plan: SlotPlan, surface: Surface | None) -> FretSlot:
        bass, treble = line_of(self.slots[index])
        near = line_of(self.corners[index][:4])
        far_treble, far_bass = line_of(self.corners[index][4:])
        length = math.dist(bass, treble)
        return FretSlot(bass, treble, near, AcrossLine(far_bass, far_treble), length, plan, surface)


def line_of(ends: Ends) -> AcrossLine:
    """Line of its two ends."""
    x, y, other_x, other_y = ends
    return AcrossLine(Point(x, y), Point(other_x, other_y))


def cut_slots(
    places: FretPlaces, lines: Sequence[Ends], edges: Edges, strings: Sequence[StringLine], plan: Plan
) -> FretColumns:
    """Lines and slots of all frets.

    Parameters
    ----------
    places : FretPlaces
        What the frets are called, and which strings they cross.
    lines : sequence of Ends
        Their lines between the outer strings.
    edges : pair of pairs of Point
        Edges of the board on the bass and on the treble side, two points of each.
    strings : sequence of StringLine
        All strings, string 1 first.
    plan : Plan
        Kerf and inset of the slots.

    Returns
    -------
    FretColumns
        All of them.

    Raises
    ------
    ImpossibleBoardError
        An inset that leaves no slot.
    """
    board_edges = _edge(*edges[0]), _edge(*edges[1])
    kerf, inset = plan.slots.kerf, plan.slots.inset
    rows, shortest = [], (math.inf, math.inf)
    for (x, y, other_x, other_y), crossed in zip(lines, places.crossed, strict=True):
        slope = (other_x - x) / (other_y - y)
        start = x - y * slope
        # Half a kerf, along the centre line.
        half = 0.5 * kerf * math.sqrt(1.0 + slope * slope)
        at_edges, corners = _cut(start, slope, half, board_edges)
        slot = at_edges
        if inset != 0.0 or not places.whole:
            bounds = _cut_short(board_edges, crossed, strings)
            slot, corners = _cut(start, slope, half, bounds)
            slot, left, length = _set_in(slot, bounds, inset)
            shortest = min(shortest, (left, length))
            corners = _square_off(slot, slope, half, corners, [bound.is_edge and inset == 0.0 for bound in bounds])
        rows.append((start, slope, at_edges, slot, corners))
    if shortest[0] <= 0.0:
        message = f"blind slots that end {inset:g} mm before either edge leave nothing of {shortest[1]:.2f} mm"
        raise ImpossibleBoardError(message, field=("slots", "blind_inset"))
    return FretColumns(places, lines, *zip(*rows, strict=True))


def _edge(one: Point, other: Point) -> _Bound:
    """Edge of the board through two points."""
    slope = (other.y - one.y) / (other.x - one.x)
    return _Bound(one.y - slope * one.x, slope, is_edge=True)


def _cut_short(edges: _Bounds, crossed: tuple[int, int], strings: Sequence[StringLine]) -> _Bounds:
    """Bounds of a fret: half way to the next string where it does not cross all."""
    first, last = crossed
    bass = edges[0] if last == len(strings) else _half_way(strings[last - 1], strings[last])
    return bass, edges[1] if first == 1 else _half_way(strings[first - 1], strings[first - 2])


def _half_way(one: StringLine, other: StringLine) -> _Bound:
    """Line half way between two strings."""
    a, b, c, d = one.at_zero, other.at_zero, one.at_scale_end, other.at_scale_end
    slope = (c.y + d.y - a.y - b.y) / (c.x + d.x - a.x - b.x)
    return _Bound(0.5 * (a.y + b.y - slope * (a.x + b.x)), slope, is_edge=False)


def _cut(start: float, slope: float, half: float, bounds: _Bounds) -> tuple[Ends, _Corners]:
    """Slot that runs out over its bounds, and the corners of its kerf, which lie on them.

    As in :func:`~scalewright.lutherie.fingerboard.points.meeting`, a line that is square to the centre line keeps its
    x to the last digit.
    """
    (beside, along, _), (other_beside, other_along, _) = bounds
    share, other_share = 1.0 - along * slope, 1.0 - other_along * slope
    y, other_y = (beside + along * start) / share, (other_beside + other_along * start) / other_share
    x, other_x = start + slope * y, start + slope * other_y
    dx, other_dx = half / share, half / other_share
    dy, other_dy = along * dx, other_along * other_dx
    near = x - dx, y - dy, other_x - other_dx, other_y - other_dy
    far = other_x + other_dx, other_y + other_dy, x + dx, y + dy
    return (x, y, other_x, other_y), near + far


def _set_in(slot: Ends, bounds: _Bounds, inset: float) -> tuple[Ends, float, float]:
    """Slot that ends before the edges of the board, what is left of its length, and its whole length. [mm]"""
    x, y, other_x, other_y = slot
    dx, dy = other_x - x, other_y - y
    length = math.hypot(dx, dy)
    one, other = (inset if bound.is_edge else 0.0 for bound in bounds)
    share, other_share = one / length, other / length
    ends = x + share * dx, y + share * dy, other_x - other_share * dx, other_y - other_share * dy
    return ends, length - one - other, length


def _square_off(slot: Ends, slope: float, half: float, corners: _Corners, open_ends: Sequence[bool]) -> _Corners:
    """Corners of a kerf, square to its slot but where it runs out of the board."""
    x, y, other_x, other_y = slot
    dx = half / (1.0 + slope * slope)
    dy = -slope * dx
    near, other_near, other_far, far = corners[:2], corners[2:4], corners[4:6], corners[6:]
    if not open_ends[0]:
        near, far = (x - dx, y - dy), (x + dx, y + dy)
    if not open_ends[1]:
        other_near, other_far = (other_x - dx, other_y - dy), (other_x + dx, other_y + dy)
    return near + other_near + other_far + far


def refuse_collisions(frets: FretColumns, nut: AcrossLine, plan: Plan) -> None:
    """Refuse frets that cross on the board, or whose slots run into one another.

    Parameters
    ----------
    frets : FretColumns
        All frets.
    nut : AcrossLine
        Front edge of the nut, or the zero fret, between the edges of the board.
    plan : Plan
        What the board was drawn up from.

    Raises
    ------
    FretsCollideError
        Names the two, and the field that is at fault.
    """
    begin = 1 if plan.zero_fret else 0
    starts = [on_centre_line(nut), *frets.on_centre_line[begin:]]
    slopes = [slope_of(nut), *frets.slopes[begin:]]
    crossed = [(1, plan.strings.count), *frets.places.crossed[begin:]]
    pairs = itertools.pairwise(range(len(starts))) if frets.places.whole else _neighbours(crossed)
    for one, other in pairs:
        x, y, other_x, other_y = frets.slots[begin + other - 1]
        slope = slopes[one]
        # What is free square to the earlier one, at either end of the later one.
        gap = (min(x - y * slope, other_x - other_y * slope) - starts[one]) / math.sqrt(1.0 + slope * slope)
        if gap <= plan.slots.kerf:
            names = ("nut", *frets.places.names[begin:])
            neighbour = "the nut" if one == 0 else f"fret {names[one]}"
            field, fix = _fault(plan, frets.places, one + begin - 1, other + begin - 1)
            what = "cross" if gap < 0.0 else "run into one another"
            message = f"{neighbour} and fret {names[other]} {what} on this board; {fix}"
            raise FretsCollideError(message, field=field, between=[neighbour, f"fret {names[other]}"], gap_mm=gap)


def _neighbours(crossed: Sequence[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    """Pairs of slots that may touch: each with those before it on strings of its own, up to one across all."""
    whole = crossed[0]
    for index, (first, last) in enumerate(crossed):
        for other in range(index - 1, -1, -1):
            other_first, other_last = crossed[other]
            if first <= other_last and last >= other_first:
                yield other, index
            if (other_first, other_last) == whole:
                break


def _fault(plan: Plan, places: FretPlaces, one: int, other: int) -> tuple[tuple[str | int, ...], str]:
    """Field at fault for two frets that touch, by their places among all, and what mends it."""
    if one < 0 and plan.nut_setback < 0.0 and not plan.zero_fret:
        return ("nut_setback",), "choose a nut setback nearer to zero"
    extras = [index for index in (other, one) if index >= 0 and places.numbers[index] is None]
    if extras:
        pitch = places.cents[0][extras[0]]
        where = [partial.cents for partial in plan.partial_frets].index(pitch)
        return ("partial_frets", where), "move the extra fret by some cents, or let it cross other strings"
    if (plan.bass.rule, plan.bass.scale) != (plan.treble.rule, plan.treble.scale):
        return ("frets",), "choose scales that differ less, another square fret, fewer frets or a thinner saw"
    return ("frets",), "choose fewer frets or a thinner saw"
