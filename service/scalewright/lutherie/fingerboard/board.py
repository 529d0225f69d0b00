"""The fingerboard: every line of it, drawn up from a plan."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from scalewright.lutherie.cut_list import Blank, CutList, MarkedSlot, list_cuts
from scalewright.lutherie.errors import ImpossibleBoardError, OutsideScaleError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.fingerboard.fret_lines import (
    BoardFret,
    Surface,
    cut_slot,
    on_line_at,
    refuse_collisions,
)
from scalewright.lutherie.fingerboard.places import BoardSide, FretPlace, fret_places, refuse_beyond_scale, side_of
from scalewright.lutherie.fingerboard.plan import COMMON_MARKERS, Handedness, Measured, Plan
from scalewright.lutherie.fingerboard.points import (
    AcrossLine,
    Point,
    Segment,
    crossing,
    on_centre_line,
    shifted_along,
)
from scalewright.lutherie.fingerboard.statement import statement_of
from scalewright.lutherie.fingerboard.string_lines import StringLine, spread_of
from scalewright.lutherie.fingerboard.ways import Edges, Ways, between_edges

__all__ = ["CUTTING_CAUTION", "BoardSide", "Fingerboard", "Marker", "TrueScales", "draw_up"]

CUTTING_CAUTION = Note(
    "cutting",
    "Before cutting: compare the bars of a printed sheet with a steel rule; guard the blade and keep hands clear of "
    "it; wear eye and ear protection; the dust of hard woods harms lungs and skin, so catch it at the saw "
    "and wear a mask. The machine's own instructions, local codes and qualified practice come first.",
)
"""What to mind at the saw: common practice, no source."""


class TrueScales(NamedTuple):
    """True scales of the outer strings."""

    bass: float | None
    """Of the lowest string; None where its rule has no octave fret. [mm]"""
    treble: float | None
    """Of string 1; None where its rule has no octave fret. [mm]"""


class Marker(NamedTuple):
    """A position marker."""

    fret: int
    """Fret that it stands before, on the side of the nut."""
    at: Point
    """Its centre."""


@dataclass(frozen=True)
class Fingerboard:
    """A board with all its lines. Its x axis is the centre line, its zero where the zero line crosses it."""

    plan: Plan
    """What it was drawn up from."""
    bass: BoardSide
    """Rule and scales of the lowest string."""
    treble: BoardSide
    """Rule and scales of string 1."""
    strings: list[StringLine]
    """The strings, string 1 first."""
    frets: list[BoardFret]
    """The frets, from the nut on."""
    zero_line: AcrossLine
    """Where the rule puts the nut, from edge to edge."""
    nut: AcrossLine
    """Front edge of the nut, from edge to edge."""
    scale_end: AcrossLine
    """Where the scales of the outer strings end."""
    saddle: AcrossLine
    """Where the outer strings break over the saddle."""
    outline: list[Point]
    """Corners of the board: nut end bass and treble, far end treble and bass."""
    centre_line: Segment
    """From one end of the board to the other."""
    markers: list[Marker]
    """Position markers."""

    @property
    def handedness(self) -> Handedness:
        """Which hand plucks."""
        return self.plan.handedness

    @property
    def measured(self) -> Measured:
        """What the scales are measured along."""
        return self.plan.measured

    @property
    def square_fret(self) -> int:
        """The fret that is square to the centre line."""
        return self.plan.square_fret

    @property
    def zero_fret(self) -> bool:
        """Whether a fret stands on the zero line."""
        return self.plan.zero_fret

    @property
    def true_scale(self) -> TrueScales:
        """True scales of the outer strings."""
        return TrueScales(self.bass.true_scale, self.treble.true_scale)

    @property
    def statement(self) -> str:
        """One sentence for a drawing or a work order."""
        return statement_of(self.plan, self.bass.rule, self.treble.rule, self.layout_scales, self.true_scale)

    @property
    def layout_scales(self) -> tuple[float, float]:
        """Layout scales of the lowest string and of string 1. [mm]"""
        return self.bass.layout_scale, self.treble.layout_scale

    @property
    def notes(self) -> list[Note]:
        """What to mind."""
        return [CUTTING_CAUTION]

    @property
    def cut_list(self) -> CutList:
        """Settings of a saw for every slot."""
        end = on_centre_line(self.scale_end)
        slots = [
            MarkedSlot(
                fret.name,
                fret.on_centre_line,
                end - fret.on_centre_line,
                fret.slot.length,
                fret.angle_degrees,
                fret.slot.depth,
            )
            for fret in self.frets
        ]
        xs, ys = [point.x for point in self.outline], [point.y for point in self.outline]
        blank = Blank(max(xs) - min(xs), max(ys) - min(ys))
        ends = (self.centre_line.start.x, self.centre_line.end.x)
        return list_cuts(slots, self.plan.saw, self.plan.slots.kerf, ends, blank)


def draw_up(plan: Plan) -> Fingerboard:
    """Every line of a fingerboard.

    Parameters
    ----------
    plan : Plan
        What the maker decides.

    Returns
    -------
    Fingerboard
        Its lines, in full double precision.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret and do not repeat.
    OutsideScaleError
        A true scale together with a rule that has no octave fret, or frets beyond the end of the scale.
    FretsCollideError
        Frets that cross on the board, or whose slots run into one another.
    ImpossibleBoardError
        Strings, edges or a surface that contradict one another.

    Notes
    -----
    One way for all boards: a board with one scale is a fan whose two scales are equal. Each outer string is a
    straight line; fret n stands on it at the rule's share of its scale, and the fret is the straight line through
    the two places. The sides are moved against one another along the centre line until the square fret is square.
    """
    bass, treble = side_of(plan.bass, plan), side_of(plan.treble, plan)
    places = fret_places(plan, bass, treble)
    last = max((place for place in places if place.fret == plan.frets), key=lambda place: place.distances.bass)
    if plan.strings.count == 1 and (bass.rule, bass.layout_scale) != (treble.rule, treble.layout_scale):
        message = "a board with one string has one rule and one scale"
        raise ImpossibleBoardError(message, field=("scale",))
    refuse_beyond_scale(places, bass, treble)
    spread = spread_of(plan, 0.5 * (last.distances.bass / bass.speaking + last.distances.treble / treble.speaking))
    ways = Ways(plan, spread, bass, treble)
    edges = ways.edges(last.distances)
    zero = between_edges(ways.zero, edges)
    last_centre = on_centre_line(ways.line(last.distances, square=plan.frets == plan.square_fret))
    surface = None if plan.radius is None else Surface(plan.radius, last_centre)
    nut = shifted_along(ways.zero, -plan.nut_setback)
    strings = ways.strings(nut)
    frets = [_fret(place, ways, strings, edges, surface) for place in places]
    nut_edge = between_edges(nut, edges)
    refuse_collisions([fret for fret in frets if fret.fret != 0], zero if plan.zero_fret else nut_edge, plan.slots.kerf)
    outline = _outline(plan, ways, edges, frets)
    _refuse_end_behind_saddle(outline, strings)
    if surface is not None:
        for corner in outline:
            surface.drop_at(corner)
    saddle = AcrossLine(strings[-1].at_saddle, strings[0].at_saddle)
    if plan.strings.count == 1:
        saddle = shifted_along(ways.end, saddle.bass.x - on_centre_line(ways.end))
    return Fingerboard(
        plan=plan,
        bass=bass,
        treble=treble,
        strings=strings,
        frets=frets,
        zero_line=zero,
        nut=nut_edge,
        scale_end=ways.end,
        saddle=saddle,
        outline=outline,
        centre_line=Segment(
            Point(on_centre_line((outline[0], outline[1])), 0.0), Point(on_centre_line((outline[3], outline[2])), 0.0)
        ),
        markers=_markers(plan, frets, ways.zero, bass, strings),
    )


def _fret(
    place: FretPlace, ways: Ways, strings: Sequence[StringLine], edges: Edges, surface: Surface | None
) -> BoardFret:
    """Draw one fret."""
    plan = ways.plan
    _, number, _, distances, first, last = place
    line = ways.zero if number == 0 else ways.line(distances, square=number == plan.square_fret)
    open_ends = (last == plan.strings.count, first == 1)
    bounds = edges
    if not all(open_ends):
        bounds = (
            edges[0] if open_ends[0] else _between_strings(strings[last - 1], strings[last]),
            edges[1] if open_ends[1] else _between_strings(strings[first - 2], strings[first - 1]),
        )
    slot = cut_slot(line, bounds, open_ends, plan.slots, surface)
    share = distances.bass / ways.bass.speaking if ways.one_rule else None
    return BoardFret(place, on_centre_line(line), line, slot, strings, share)


def _between_strings(string: StringLine, other: StringLine) -> tuple[Point, Point]:
    """Line half way between two strings."""
    a, b, c, d = string.at_zero, other.at_zero, string.at_scale_end, other.at_scale_end
    return Point(0.5 * (a.x + b.x), 0.5 * (a.y + b.y)), Point(0.5 * (c.x + d.x), 0.5 * (c.y + d.y))


def _outline(plan: Plan, ways: Ways, edges: Edges, frets: Sequence[BoardFret]) -> list[Point]:
    """Corners of the board."""
    begin = shifted_along(ways.zero, -(plan.behind_zero_fret if plan.zero_fret else plan.nut_setback))
    last = frets[-1].line
    if plan.end == "parallel":
        end = shifted_along(last, plan.extension)
    else:
        x = max(frets[-1].slot.bass.x, frets[-1].slot.treble.x) + plan.extension
        end = AcrossLine(Point(x, last.bass.y), Point(x, last.treble.y))
    nut_end, far_end = between_edges(begin, edges), between_edges(end, edges)
    if (far_end.treble.y - far_end.bass.y) * ways.sign <= 0.0 or (nut_end.treble.y - nut_end.bass.y) * ways.sign <= 0.0:
        message = "the edges of the board cross before its end; make it wider or shorter"
        raise ImpossibleBoardError(message, field=("margins" if plan.margins else "widths",))
    return [nut_end.bass, nut_end.treble, far_end.treble, far_end.bass]


def _refuse_end_behind_saddle(outline: Sequence[Point], strings: Sequence[StringLine]) -> None:
    """Refuse a board that goes on past the saddle, or a nut at fret 1."""
    end = AcrossLine(outline[3], outline[2])
    for string in strings:
        if crossing(end, (string.at_zero, string.at_saddle)) >= 1.0:
            message = (
                f"the board would end beyond the saddle of string {string.string}; "
                "choose fewer frets, a shorter extension or another setback"
            )
            raise OutsideScaleError(message, field=("extension",))


def _markers(
    plan: Plan, frets: Sequence[BoardFret], zero: AcrossLine, bass: BoardSide, strings: Sequence[StringLine]
) -> list[Marker]:
    """Position markers, half way between two frets on the centre line."""
    wanted = plan.markers
    if wanted is None:
        wanted = COMMON_MARKERS if bass.octave_fret == 12 else ()
    lines = {fret.place.fret: (fret.line, fret.on_centre_line) for fret in frets if fret.place.fret}
    lines[0] = zero, on_centre_line(zero)
    markers = []
    for number in wanted:
        if not 0 < number <= plan.frets:
            continue
        (line, at), (before, at_before) = lines[number], lines[number - 1]
        x = 0.5 * (at + at_before)
        if number in plan.double_markers:
            # Through the middle of either half of the strings.
            share = x / strings[0].scale
            aside = 0.5 * (strings[0].at_zero.y + share * (strings[0].at_scale_end.y - strings[0].at_zero.y))
            if len(strings) == 1:
                aside = 0.25 * abs(frets[0].slot.length)
            markers.append(Marker(number, _between_frets(before, line, aside)))
            markers.append(Marker(number, _between_frets(before, line, -aside)))
        else:
            markers.append(Marker(number, Point(x, 0.0)))
    return markers


def _between_frets(line: AcrossLine, other: AcrossLine, y: float) -> Point:
    """Place half way between two frets at a distance from the centre line."""
    return Point(0.5 * (on_line_at(line, y) + on_line_at(other, y)), y)
