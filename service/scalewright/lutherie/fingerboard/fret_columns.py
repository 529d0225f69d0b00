"""Fret columns: the lines and slots of all frets of a board at once, a column for each quantity."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.errors import FretsCollideError, ImpossibleBoardError
from scalewright.lutherie.fingerboard.fret_lines import BoardFret, FretSlot, Surface
from scalewright.lutherie.fingerboard.places import FretCents, FretDistances, FretPlaces
from scalewright.lutherie.fingerboard.plan import Plan, SlotPlan
from scalewright.lutherie.fingerboard.points import AcrossLine, Edges, Point
from scalewright.lutherie.fingerboard.string_lines import StringLine

__all__ = ["Column", "FretColumns", "Places", "cut_slots", "line_at", "refuse_collisions"]

Column: TypeAlias = NDArray[np.float64]
"""A number of every fret, from the nut on."""

Places: TypeAlias = NDArray[np.complex128]
"""Places on a board as complex numbers: x along the board, y across it as the imaginary part. Of lines across the
board, shape (n, 2): their ends on the bass and on the treble side. [mm]"""


class _Bounds(NamedTuple):
    """Lines along the board that slots end at, on the bass and on the treble side: one for all slots, or for each."""

    at: Places
    """A place on each."""
    way: Places
    """The way that each runs."""
    is_edge: NDArray[np.bool_] | None
    """Whether it is an edge of the board, which a slot may run out of; None where all are."""


@dataclass(frozen=True, slots=True)
class FretColumns:
    """The frets of a board, from the nut on."""

    places: FretPlaces
    """What they are called, and where they stand by the rules."""
    lines: Places
    """Their crossings with the outer strings."""
    on_centre_line: Column
    """Where they cross the centre line, from the zero line there. [mm]"""
    slopes: Column
    """How far they run along the board as they run across it. [mm/mm]"""
    at_edges: Places
    """Where their lines, prolonged, leave the board."""
    slots: Places
    """Middle lines of their slots."""
    lengths: Column
    """Lengths of the slots. [mm]"""
    corners: Places
    """Corners of the kerfs, shape (n_frets, 4): on the nut's side bass and treble, on the bridge's treble and bass."""

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
                cents=FretCents(*cents[index].tolist()),
                from_zero=FretDistances(*distances[index].tolist()),
                first_string=crossed[index][0],
                last_string=crossed[index][1],
                on_centre_line=float(self.on_centre_line[index]),
                line=line_at(self.lines, index),
                slot=self._slot(index, plan, surface),
                strings=strings,
                share=shares[index],
            )
            for index in range(len(names))
        ]

    def _slot(self, index: int, plan: SlotPlan, surface: Surface | None) -> FretSlot:
        first, second, third, fourth = (Point(place.real, place.imag) for place in self.corners[index].tolist())
        bass, treble = line_at(self.slots, index)
        near, far = AcrossLine(first, second), AcrossLine(fourth, third)
        return FretSlot(bass, treble, near, far, float(self.lengths[index]), plan, surface)


def line_at(lines: Places, index: int) -> AcrossLine:
    """One of many lines."""
    bass, treble = lines[index].tolist()
    return AcrossLine(Point(bass.real, bass.imag), Point(treble.real, treble.imag))


def cut_slots(
    places: FretPlaces, lines: Places, edges: Edges, strings: Sequence[StringLine], plan: Plan
) -> FretColumns:
    """Lines and slots of all frets.

    Parameters
    ----------
    places : FretPlaces
        What the frets are called, and which strings they cross.
    lines : array, shape (n_frets, 2)
        Their crossings with the outer strings.
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
    bass, across = lines[:, 0], lines[:, 1] - lines[:, 0]
    slopes = across.real / across.imag
    on_centre_line = bass.real - bass.imag * slopes
    (ax, ay), (bx, by) = edges[0]
    (cx, cy), (dx, dy) = edges[1]
    bounds = _Bounds(
        np.array((complex(ax, ay), complex(cx, cy))),
        np.array((complex(bx - ax, by - ay), complex(dx - cx, dy - cy))),
        None,
    )
    at_edges = slots = _meetings(bass, across, bounds)
    if not places.whole:
        bounds = _cut_short(bounds, places, strings)
        slots = _meetings(bass, across, bounds)
    ways = slots[:, 1] - slots[:, 0]
    lengths = np.abs(ways)
    ways /= lengths
    if plan.slots.inset != 0.0:
        slots, lengths = _set_in(slots, ways, lengths, bounds, plan.slots.inset)
    corners = _corners(slots, ways, bounds, plan.slots)
    return FretColumns(places, lines, on_centre_line, slopes, at_edges, slots, lengths, corners)


def _meetings(start: Places, way: Places, bounds: _Bounds) -> Places:
    """Where lines across the board, prolonged, meet what bounds them on either side.

    As in :func:`~scalewright.lutherie.fingerboard.points.meeting`, a line whose two points have the same x keeps it
    to the last digit.
    """
    start, way = start[:, np.newaxis], way[:, np.newaxis]
    # The imaginary part of conj(a) b is the cross product of a and b.
    share = ((bounds.at - start).conj() * bounds.way).imag / (way.conj() * bounds.way).imag
    met: Places = start + share * way
    return met


def _cut_short(whole: _Bounds, places: FretPlaces, strings: Sequence[StringLine]) -> _Bounds:
    """Bounds of every fret: half way to the next string for a fret that crosses some strings only."""
    count, last_string = len(places.names), len(strings)
    at, way = np.tile(whole.at, (count, 1)), np.tile(whole.way, (count, 1))
    is_edge = np.ones((count, 2), bool)
    for index, (first, last) in enumerate(places.crossed):
        for side, inner, outer in ((0, last, last + 1), (1, first, first - 1)):
            if 1 <= outer <= last_string:
                one, other = strings[inner - 1], strings[outer - 1]
                a, b, c, d = one.at_zero, other.at_zero, one.at_scale_end, other.at_scale_end
                at[index, side] = complex(0.5 * (a.x + b.x), 0.5 * (a.y + b.y))
                way[index, side] = complex(0.5 * (c.x + d.x), 0.5 * (c.y + d.y)) - at[index, side]
                is_edge[index, side] = False
    return _Bounds(at, way, is_edge)


def _set_in(slots: Places, ways: Places, lengths: Column, bounds: _Bounds, inset: float) -> tuple[Places, Column]:
    """Slots that end before the edges of the board, and their lengths; `ways` are as long as 1."""
    insets = np.full(slots.shape, inset)
    if bounds.is_edge is not None:
        insets[~bounds.is_edge] = 0.0
    left = lengths - insets.sum(axis=1)
    if left.min() <= 0.0:
        length = float(lengths[left.argmin()])
        message = f"blind slots that end {inset:g} mm before either edge leave nothing of {length:.2f} mm"
        raise ImpossibleBoardError(message, field=("slots", "blind_inset"))
    return slots + insets * (1.0, -1.0) * ways[:, np.newaxis], left


def _corners(slots: Places, ways: Places, bounds: _Bounds, plan: SlotPlan) -> Places:
    """Corners of kerfs; where a slot runs out of the board, they lie on its edge."""
    # Square to the slot, half a kerf towards the bridge.
    square = (np.copysign(0.5 * plan.kerf, ways.imag) * -1j * ways)[:, np.newaxis]
    if plan.inset == 0.0:
        # Along the edge, as far as the kerf is wide: half a kerf over the cosine of the angle between the two.
        towards = (0.25 * plan.kerf * plan.kerf / (bounds.way.conj() * square).real) * bounds.way
        square = towards if bounds.is_edge is None else np.where(bounds.is_edge, towards, square)
    corners: Places = np.empty((len(slots), 4), complex)
    corners[:, :2] = slots - square
    corners[:, 3:1:-1] = slots + square
    return corners


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
    lines = np.empty((len(frets.slots) + 1 - begin, 2), complex)
    lines[0] = complex(*nut.bass), complex(*nut.treble)
    lines[1:] = frets.slots[begin:]
    pairs = None if frets.places.whole else _neighbours([(1, plan.strings.count), *frets.places.crossed[begin:]])
    earlier, later = (lines[:-1], lines[1:]) if pairs is None else (lines[pairs[0]], lines[pairs[1]])
    # What is free square to the earlier one, at either end of the later one.
    start = earlier[:, :1]
    way = earlier[:, 1:] - start
    free = ((later - start).conj() * way).imag / np.copysign(np.abs(way), way.imag)
    if free.min() <= plan.slots.kerf:
        pair = int((free.min(axis=1) <= plan.slots.kerf).argmax())
        names = ("nut", *frets.places.names[begin:])
        one, other = (pair, pair + 1) if pairs is None else (pairs[0][pair], pairs[1][pair])
        neighbour = "the nut" if one == 0 else f"fret {names[one]}"
        field, fix = _fault(plan, frets.places, one + begin - 1, other + begin - 1)
        gap = float(free[pair].min())
        what = "cross" if gap < 0.0 else "run into one another"
        message = f"{neighbour} and fret {names[other]} {what} on this board; {fix}"
        raise FretsCollideError(message, field=field, between=[neighbour, f"fret {names[other]}"], gap_mm=gap)


def _neighbours(crossed: Sequence[tuple[int, int]]) -> tuple[list[int], list[int]]:
    """Pairs of slots that may touch: each with those before it on strings of its own, up to one across all."""
    earlier, later = [], []
    whole = crossed[0]
    for index, (first, last) in enumerate(crossed):
        for other in range(index - 1, -1, -1):
            other_first, other_last = crossed[other]
            if first <= other_last and last >= other_first:
                earlier.append(other)
                later.append(index)
            if (other_first, other_last) == whole:
                break
    return earlier, later


def _fault(plan: Plan, places: FretPlaces, one: int, other: int) -> tuple[tuple[str | int, ...], str]:
    """Field at fault for two frets that touch, by their places among all, and what mends it."""
    if one < 0 and plan.nut_setback < 0.0 and not plan.zero_fret:
        return ("nut_setback",), "choose a nut setback nearer to zero"
    extras = [index for index in (other, one) if index >= 0 and places.numbers[index] is None]
    if extras:
        pitch = float(places.cents[extras[0], 0])
        where = [partial.cents for partial in plan.partial_frets].index(pitch)
        return ("partial_frets", where), "move the extra fret by some cents, or let it cross other strings"
    if (plan.bass.rule, plan.bass.scale) != (plan.treble.rule, plan.treble.scale):
        return ("frets",), "choose scales that differ less, another square fret, fewer frets or a thinner saw"
    return ("frets",), "choose fewer frets or a thinner saw"
