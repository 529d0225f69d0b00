"""The fingerboard: every line of it, drawn up from a plan."""

from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from scalewright.lutherie.cut_list import Blank, CutList, MarkedSlot, list_cuts
from scalewright.lutherie.errors import ImpossibleBoardError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.fingerboard.fret_columns import FretColumns, cut_slots, refuse_collisions
from scalewright.lutherie.fingerboard.fret_lines import BoardFret, Surface
from scalewright.lutherie.fingerboard.markers import Marker, notes_on_markers, place_markers
from scalewright.lutherie.fingerboard.outline import draw_outline
from scalewright.lutherie.fingerboard.places import BoardSide, FretDistances, fret_places, refuse_beyond_scale, side_of
from scalewright.lutherie.fingerboard.plan import Handedness, Measured, Plan
from scalewright.lutherie.fingerboard.points import (
    AcrossLine,
    Point,
    Segment,
    on_centre_line,
    shifted_along,
)
from scalewright.lutherie.fingerboard.statement import statement_of
from scalewright.lutherie.fingerboard.string_lines import StringLine, spread_of
from scalewright.lutherie.fingerboard.ways import Ways, between_edges

__all__ = ["CUTTING_CAUTION", "BoardSide", "Fingerboard", "TrueScales", "draw_up"]

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
    columns: FretColumns
    """The frets, from the nut on, column by column."""
    surface: Surface | None
    """How the surface is rounded; None for a flat board."""
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

    @cached_property
    def frets(self) -> list[BoardFret]:
        """The frets, from the nut on."""
        places, end = self.columns.places, self.bass.speaking
        one_rule = self.bass.rule == self.treble.rule
        shares = [distance / end for distance in places.distances[0]] if one_rule else [None] * len(places.names)
        return self.columns.frets(self.plan.slots, self.surface, self.strings, shares)

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
        return [CUTTING_CAUTION, *notes_on_markers(self.plan)]

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
    if plan.strings.count == 1 and (bass.rule, bass.layout_scale) != (treble.rule, treble.layout_scale):
        message = "a board with one string has one rule and one scale"
        raise ImpossibleBoardError(message, field=("scale",))
    refuse_beyond_scale(places, bass, treble)
    number = places.numbers.index(plan.frets)
    last = FretDistances(places.distances[0][number], places.distances[1][number])
    spread = spread_of(plan, 0.5 * (last.bass / bass.speaking + last.treble / treble.speaking))
    ways = Ways(plan, spread, bass, treble)
    edges = ways.edges(last)
    zero = between_edges(ways.zero, edges)
    last_centre = on_centre_line(ways.line(last, square=plan.frets == plan.square_fret))
    surface = None if plan.radius is None else Surface(plan.radius, last_centre)
    nut = shifted_along(ways.zero, -plan.nut_setback)
    strings = ways.strings(nut)
    nut_edge = between_edges(nut, edges)
    columns = cut_slots(places, ways.lines(places), edges, strings, plan)
    refuse_collisions(columns, zero if plan.zero_fret else nut_edge, plan)
    outline = draw_outline(plan, ways, edges, columns, strings)
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
        columns=columns,
        surface=surface,
        zero_line=zero,
        nut=nut_edge,
        scale_end=ways.end,
        saddle=saddle,
        outline=outline,
        centre_line=Segment(
            Point(on_centre_line((outline[0], outline[1])), 0.0), Point(on_centre_line((outline[3], outline[2])), 0.0)
        ),
        markers=place_markers(plan, bass.octave_fret, columns, ways.zero, strings),
    )
