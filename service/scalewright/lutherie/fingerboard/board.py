"""The fingerboard: every line of it, drawn up from a plan."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from scalewright.lutherie import spacing
from scalewright.lutherie.cut_list import Blank, CutList, MarkedSlot, list_cuts
from scalewright.lutherie.errors import ImpossibleBoardError, OutsideScaleError, TooFewPitchesError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.fingerboard.fret_lines import (
    BoardFret,
    FretCents,
    FretDistances,
    Surface,
    cut_slot,
    on_line_at,
    refuse_collisions,
)
from scalewright.lutherie.fingerboard.plan import COMMON_MARKERS, Handedness, Measured, PartialFret, Plan, Side
from scalewright.lutherie.fingerboard.points import (
    AcrossLine,
    Point,
    Segment,
    crossing,
    meeting,
    on_centre_line,
    shifted_along,
    turned_by,
)
from scalewright.lutherie.fingerboard.statement import statement_of
from scalewright.lutherie.fingerboard.string_lines import Spread, StringLine, spread_of
from scalewright.lutherie.layout import lay_out, layout_scale_of, true_scale_of
from scalewright.lutherie.spacing import Listed, Rule

__all__ = ["CUTTING_CAUTION", "BoardSide", "Fingerboard", "Marker", "TrueScales", "draw_up"]

CUTTING_CAUTION = Note(
    "cutting",
    "Before cutting: compare the bars of a printed sheet with a steel rule; guard the blade and keep hands clear of it; "
    "wear eye and ear protection; the dust of hard woods harms lungs and skin, so catch it at the saw and wear a mask. "
    "The machine's own instructions, local codes and qualified practice come first.",
)
"""What to mind at the saw: common practice, no source."""


class TrueScales(NamedTuple):
    """True scales of the outer strings."""

    bass: float | None
    """Of the lowest string; None where its rule has no octave fret. [mm]"""
    treble: float | None
    """Of string 1; None where its rule has no octave fret. [mm]"""


@dataclass(frozen=True, slots=True)
class BoardSide:
    """Rule and scales of one outer string."""

    rule: Rule
    """Its spacing rule."""
    layout_scale: float
    """The length that the rule was applied to. [mm]"""
    true_scale: float | None
    """Twice the distance from the zero line to the octave fret; None without one. [mm]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave."""

    @property
    def speaking(self) -> float:
        """Where the scale ends: the true one, or the layout scale where there is no octave fret. [mm]"""
        return self.layout_scale if self.true_scale is None else self.true_scale


@dataclass(frozen=True, slots=True)
class Marker:
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


class _Place(NamedTuple):
    """A fret before it is a line."""

    name: str
    fret: int | None
    cents: FretCents
    distances: FretDistances
    first: int
    last: int


def _side(side: Side, plan: Plan) -> BoardSide:
    layout_scale = layout_scale_of(side.rule, side.scale, plan.basis)
    true_scale = side.scale if plan.basis == "true" else true_scale_of(side.rule, layout_scale)
    return BoardSide(side.rule, layout_scale, true_scale, spacing.octave_fret(side.rule))


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
    bass, treble = _side(plan.bass, plan), _side(plan.treble, plan)
    places = _places(plan, bass, treble)
    last = max((place for place in places if place.fret == plan.frets), key=lambda place: place.distances.bass)
    if plan.strings.count == 1 and (bass.rule, bass.layout_scale) != (treble.rule, treble.layout_scale):
        message = "a board with one string has one rule and one scale"
        raise ImpossibleBoardError(message, field=("scale",))
    _refuse_beyond_scale(places, bass, treble)
    spread = spread_of(plan, 0.5 * (last.distances.bass / bass.speaking + last.distances.treble / treble.speaking))
    ways = _Ways(plan, spread, bass, treble)
    edges = ways.edges(last.distances)
    zero = _between_edges(ways.zero, edges)
    last_centre = on_centre_line(ways.line(last.distances, square=plan.frets == plan.square_fret))
    surface = None if plan.radius is None else Surface(plan.radius, last_centre)
    nut = shifted_along(ways.zero, -plan.nut_setback)
    strings = ways.strings(nut)
    frets = [_fret(place, ways, strings, edges, surface) for place in places]
    nut_edge = _between_edges(nut, edges)
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


def _places(plan: Plan, bass: BoardSide, treble: BoardSide) -> list[_Place]:
    """Frets in the order in which they stand, with what each crosses."""
    low, high = (lay_out(side.rule, side.layout_scale, plan.frets) for side in (bass, treble))
    cut_short = {partial.fret: partial for partial in plan.partial_frets if partial.fret is not None}
    count = plan.strings.count
    places = [_Place("0", 0, FretCents(0.0, 0.0), FretDistances(0.0, 0.0), 1, count)] if plan.zero_fret else []
    for number in range(1, plan.frets + 1):
        partial = cut_short.get(number)
        places.append(
            _Place(
                str(number),
                number,
                FretCents(low.cents[number - 1], high.cents[number - 1]),
                FretDistances(low.from_nut[number - 1], high.from_nut[number - 1]),
                1 if partial is None else partial.first_string,
                count if partial is None else partial.last_string,
            )
        )
    extras = [_extra(partial, bass, treble) for partial in plan.partial_frets if partial.cents is not None]
    return sorted([*places, *extras], key=lambda place: sum(place.distances)) if extras else places


def _extra(partial: PartialFret, bass: BoardSide, treble: BoardSide) -> _Place:
    """Place of an extra fret, by its pitch on the layout scales."""
    cents = partial.cents or 0.0
    share = spacing.fractions(Listed((cents,)), 1)[0]
    return _Place(
        partial.name or f"{cents:g} ct",
        None,
        FretCents(cents, cents),
        FretDistances(share * bass.layout_scale, share * treble.layout_scale),
        partial.first_string,
        partial.last_string,
    )


def _refuse_beyond_scale(places: Sequence[_Place], bass: BoardSide, treble: BoardSide) -> None:
    for place in places:
        for side, distance in zip((bass, treble), place.distances, strict=True):
            if distance >= side.speaking:
                message = (
                    f"fret {place.name} would stand {distance:.2f} mm from the nut, and the scale ends at "
                    f"{side.speaking:.2f} mm; choose fewer frets"
                )
                raise OutsideScaleError(message, field=("frets",))


class _Ways:
    """The lines of the two outer strings, on which all else is hung."""

    def __init__(self, plan: Plan, spread: Spread, bass: BoardSide, treble: BoardSide) -> None:
        self.plan, self.spread, self.bass, self.treble = plan, spread, bass, treble
        sign = 1.0 if plan.handedness == "right" else -1.0
        self.sign = sign
        self.across_nut = [sign * y for y in spread.nut]
        self.across_saddle = [sign * y for y in spread.saddle]
        # A single string has no outer neighbours: its frets are hung on two lines beside it.
        beside = 0.0 if plan.strings.count > 1 else sign
        self.nut_y = (self.across_nut[-1] - beside, self.across_nut[0] + beside)
        self.slope = (
            (self.across_saddle[-1] - self.across_nut[-1]) / bass.speaking,
            (self.across_saddle[0] - self.across_nut[0]) / treble.speaking,
        )
        self.pace = (1.0, 1.0)
        if plan.measured == "string":
            if max(abs(slope) for slope in self.slope) >= 1.0:
                message = "the strings spread wider than they are long"
                raise ImpossibleBoardError(message, field=("strings", "saddle_spread"))
            self.pace = tuple(math.sqrt(1.0 - slope * slope) for slope in self.slope)  # type: ignore[assignment]
        square = self._square(plan.square_fret)
        ahead = square[0] * self.pace[0] - square[1] * self.pace[1]
        self.start = (-0.5 * ahead, 0.5 * ahead)
        self.zero = self.line(FretDistances(0.0, 0.0), square=plan.square_fret == 0)
        self.end = self.line(FretDistances(bass.speaking, treble.speaking))

    def _square(self, fret: int) -> tuple[float, float]:
        """Distances of the square fret along the two."""
        if fret == 0:
            return 0.0, 0.0
        try:
            return tuple(  # type: ignore[return-value]  # two sides
                side.layout_scale * spacing.fractions(side.rule, fret)[-1] for side in (self.bass, self.treble)
            )
        except TooFewPitchesError as error:
            message = f"the square fret is number {fret}, and the listed pitches end before it"
            raise TooFewPitchesError(message, field=("square_fret",), **error.facts) from None

    def line(self, distances: FretDistances, *, square: bool = False) -> AcrossLine:
        """Line through a place on either outer string."""
        x = self.start[0] + distances.bass * self.pace[0]
        # The square fret is so by definition, not but for rounding.
        other = x if square else self.start[1] + distances.treble * self.pace[1]
        return AcrossLine(
            Point(x, self.nut_y[0] + distances.bass * self.slope[0]),
            Point(other, self.nut_y[1] + distances.treble * self.slope[1]),
        )

    def edges(self, last: FretDistances) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
        """Edges of the board: points beside the zero line and the last fret, on the bass and the treble side."""
        margins = self.spread.margins
        zero, line = self.zero, self.line(last, square=self.plan.frets == self.plan.square_fret)
        beside = 0.0 if self.plan.strings.count > 1 else 1.0
        return (
            (
                Point(zero.bass.x, zero.bass.y - self.sign * (margins.nut_bass - beside)),
                Point(line.bass.x, line.bass.y - self.sign * (margins.last_bass - beside)),
            ),
            (
                Point(zero.treble.x, zero.treble.y + self.sign * (margins.nut_treble - beside)),
                Point(line.treble.x, line.treble.y + self.sign * (margins.last_treble - beside)),
            ),
        )

    def strings(self, nut: AcrossLine) -> list[StringLine]:
        """Lines of all strings, string 1 first."""
        setbacks = self.plan.saddle_setbacks or (0.0,) * self.plan.strings.count
        lines = []
        rows = zip(self.across_nut, self.across_saddle, setbacks, strict=True)
        for number, (nut_y, end_y, setback) in enumerate(rows, 1):
            zero = Point(on_line_at(self.zero, nut_y), nut_y)
            end = Point(on_line_at(self.end, end_y), end_y)
            scale = math.hypot(end.x - zero.x, end.y - zero.y) if self.plan.measured == "string" else end.x - zero.x
            beyond = 1.0 + setback / scale
            lines.append(
                StringLine(
                    string=number,
                    at_zero=zero,
                    at_nut=meeting((zero, end), nut) if self.plan.nut_setback else zero,
                    at_scale_end=end,
                    at_saddle=Point(zero.x + beyond * (end.x - zero.x), zero.y + beyond * (end.y - zero.y)),
                    scale=scale,
                    saddle_setback=setback,
                )
            )
        return lines


_Edges = tuple[tuple[Point, Point], tuple[Point, Point]]


def _between_edges(line: AcrossLine, edges: _Edges) -> AcrossLine:
    return AcrossLine(meeting(line, edges[0]), meeting(line, edges[1]))


def _fret(
    place: _Place, ways: _Ways, strings: Sequence[StringLine], edges: _Edges, surface: Surface | None
) -> BoardFret:
    """Draw one fret."""
    plan = ways.plan
    line = ways.zero if place.fret == 0 else ways.line(place.distances, square=place.fret == plan.square_fret)
    open_ends = (place.last == plan.strings.count, place.first == 1)
    bounds = (
        edges[0] if open_ends[0] else _between_strings(strings[place.last - 1], strings[place.last]),
        edges[1] if open_ends[1] else _between_strings(strings[place.first - 2], strings[place.first - 1]),
    )
    slot = cut_slot(line, bounds, open_ends, plan.slots, surface)
    angle = turned_by(line)
    centre = on_centre_line(line)
    # Along a line that leans by an angle, a cylinder of radius R is as round as a circle of R / cos^2.
    radius = None if surface is None else surface.radius_at(centre) / math.cos(math.radians(angle)) ** 2
    share = place.distances.bass / ways.bass.speaking
    return BoardFret(
        name=place.name,
        fret=place.fret,
        cents=place.cents,
        from_zero=place.distances,
        on_centre_line=centre,
        angle_degrees=angle,
        line=line,
        slot=slot,
        radius=radius,
        first_string=place.first,
        last_string=place.last,
        crossed=list(strings[place.first - 1 : place.last]),
        share=share if ways.bass.rule == ways.treble.rule else None,
    )


def _between_strings(string: StringLine, other: StringLine) -> tuple[Point, Point]:
    """Line half way between two strings."""
    a, b, c, d = string.at_zero, other.at_zero, string.at_scale_end, other.at_scale_end
    return Point(0.5 * (a.x + b.x), 0.5 * (a.y + b.y)), Point(0.5 * (c.x + d.x), 0.5 * (c.y + d.y))


def _outline(plan: Plan, ways: _Ways, edges: _Edges, frets: Sequence[BoardFret]) -> list[Point]:
    """Corners of the board."""
    begin = shifted_along(ways.zero, -(plan.behind_zero_fret if plan.zero_fret else plan.nut_setback))
    last = frets[-1].line
    if plan.end == "parallel":
        end = shifted_along(last, plan.extension)
    else:
        x = max(frets[-1].slot.bass.x, frets[-1].slot.treble.x) + plan.extension
        end = AcrossLine(Point(x, last.bass.y), Point(x, last.treble.y))
    nut_end, far_end = _between_edges(begin, edges), _between_edges(end, edges)
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
    lines = {fret.fret: fret.line for fret in frets if fret.fret} | {0: zero}
    markers = []
    for number in wanted:
        if not 0 < number <= plan.frets:
            continue
        x = 0.5 * (on_centre_line(lines[number]) + on_centre_line(lines[number - 1]))
        if number in plan.double_markers:
            # Through the middle of either half of the strings.
            share = x / strings[0].scale
            aside = 0.5 * (strings[0].at_zero.y + share * (strings[0].at_scale_end.y - strings[0].at_zero.y))
            if len(strings) == 1:
                aside = 0.25 * abs(frets[0].slot.length)
            markers.append(Marker(number, _between_frets(lines[number - 1], lines[number], aside)))
            markers.append(Marker(number, _between_frets(lines[number - 1], lines[number], -aside)))
        else:
            markers.append(Marker(number, Point(x, 0.0)))
    return markers


def _between_frets(line: AcrossLine, other: AcrossLine, y: float) -> Point:
    """Place half way between two frets at a distance from the centre line."""
    return Point(0.5 * (on_line_at(line, y) + on_line_at(other, y)), y)
