"""Ways: the lines of the two outer strings, and every line across the board that is hung on them."""

import math

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import ImpossibleBoardError, TooFewPitchesError
from scalewright.lutherie.fingerboard.fret_columns import Ends
from scalewright.lutherie.fingerboard.fret_lines import on_line_at
from scalewright.lutherie.fingerboard.places import BoardSide, FretDistances, FretPlaces
from scalewright.lutherie.fingerboard.plan import Plan
from scalewright.lutherie.fingerboard.points import AcrossLine, Edges, Point, across, meeting, point
from scalewright.lutherie.fingerboard.string_lines import Spread, StringLine

__all__ = ["Ways", "between_edges"]


def between_edges(line: AcrossLine, edges: Edges) -> AcrossLine:
    """Line across a board, from edge to edge."""
    return AcrossLine(meeting(line, edges[0]), meeting(line, edges[1]))


class Ways:
    """The lines of the two outer strings, on which all else is hung."""

    def __init__(self, plan: Plan, spread: Spread, bass: BoardSide, treble: BoardSide) -> None:
        self.plan, self.spread, self.bass, self.treble = plan, spread, bass, treble
        self.one_rule = bass.rule == treble.rule
        sign = 1.0 if plan.handedness == "right" else -1.0
        self.sign = sign
        self.across_nut = [sign * y for y in spread.nut]
        self.across_saddle = [sign * y for y in spread.saddle]
        # A single string has no outer neighbours: its frets are hung on two lines beside it.
        beside = 0.0 if plan.strings.count > 1 else sign
        nut_y = (self.across_nut[-1] - beside, self.across_nut[0] + beside)
        slopes = (
            (self.across_saddle[-1] - self.across_nut[-1]) / bass.speaking,
            (self.across_saddle[0] - self.across_nut[0]) / treble.speaking,
        )
        paces: tuple[float, ...] = (1.0, 1.0)
        if plan.measured == "string":
            if max(abs(slope) for slope in slopes) >= 1.0:
                message = "the strings spread wider than they are long"
                raise ImpossibleBoardError(message, field=("strings", "saddle_spread"))
            paces = tuple(math.sqrt(1.0 - slope * slope) for slope in slopes)
        square = self._square(plan.square_fret)
        ahead = square[0] * paces[0] - square[1] * paces[1]
        # Of either outer string: where it begins along and across the board, and how both grow along it.
        self.outer = tuple(zip((-0.5 * ahead, 0.5 * ahead), paces, nut_y, slopes, strict=True))
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
        bass, treble = distances
        (start, pace, nut_y, slope), (other_start, other_pace, other_nut_y, other_slope) = self.outer
        x = start + bass * pace
        # The square fret is so by definition, not but for rounding.
        other_x = x if square else other_start + treble * other_pace
        return across((point((x, nut_y + bass * slope)), point((other_x, other_nut_y + treble * other_slope))))

    def lines(self, places: FretPlaces) -> list[Ends]:
        """Lines of all frets."""
        (x, pace, y, slope), (other_x, other_pace, other_y, other_slope) = self.outer
        lines = [
            (x + bass * pace, y + bass * slope, other_x + treble * other_pace, other_y + treble * other_slope)
            for bass, treble in zip(*places.distances, strict=True)
        ]
        if self.plan.square_fret in places.numbers:
            square = places.numbers.index(self.plan.square_fret)
            begin, low, _, high = lines[square]
            lines[square] = (begin, low, begin, high)
        return lines

    def edges(self, last: FretDistances) -> Edges:
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
        along, moved = self.plan.measured == "string", self.plan.nut_setback != 0.0
        lines = []
        rows = zip(self.across_nut, self.across_saddle, setbacks, strict=True)
        for number, (nut_y, end_y, setback) in enumerate(rows, 1):
            x, end_x = on_line_at(self.zero, nut_y), on_line_at(self.end, end_y)
            ahead, aside = end_x - x, end_y - nut_y
            scale = math.hypot(ahead, aside) if along else ahead
            zero, end = point((x, nut_y)), point((end_x, end_y))
            saddle = end
            if setback:
                beyond = 1.0 + setback / scale
                saddle = point((x + beyond * ahead, nut_y + beyond * aside))
            at_nut = meeting((zero, end), nut) if moved else zero
            lines.append(StringLine(number, zero, at_nut, end, saddle, scale, setback))
        return lines
