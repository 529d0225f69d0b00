"""The outline of a board: where it begins and ends, and what may be in the way of that."""

from collections.abc import Sequence

from scalewright.lutherie.errors import ImpossibleBoardError, OutsideScaleError
from scalewright.lutherie.fingerboard.fret_columns import FretColumns, line_of
from scalewright.lutherie.fingerboard.plan import Plan
from scalewright.lutherie.fingerboard.points import AcrossLine, Edges, Point, crossing, shifted_along
from scalewright.lutherie.fingerboard.string_lines import StringLine
from scalewright.lutherie.fingerboard.ways import Ways, between_edges

__all__ = ["draw_outline"]


def draw_outline(
    plan: Plan, ways: Ways, edges: Edges, frets: FretColumns, strings: Sequence[StringLine]
) -> list[Point]:
    """Corners of a board.

    Parameters
    ----------
    plan : Plan
        How far it goes on before and behind its frets.
    ways : Ways
        Lines of its outer strings.
    edges : pair of pairs of Point
        Its edges on the bass and on the treble side, two points of each.
    frets : FretColumns
        Its frets.
    strings : sequence of StringLine
        All strings, string 1 first.

    Returns
    -------
    list of Point
        Nut end bass and treble, far end treble and bass.

    Raises
    ------
    OutsideScaleError
        A board that goes on past its saddle.
    ImpossibleBoardError
        Edges that cross before an end of the board.
    """
    begin = shifted_along(ways.zero, -(plan.behind_zero_fret if plan.zero_fret else plan.nut_setback))
    last = line_of(frets.lines[-1])
    if plan.end == "parallel":
        end = shifted_along(last, plan.extension)
    else:
        x = max(frets.slots[-1][::2]) + plan.extension
        end = AcrossLine(Point(x, last.bass.y), Point(x, last.treble.y))
    _refuse_end_behind_saddle(plan, last, end, strings)
    nut_end, far_end = between_edges(begin, edges), between_edges(end, edges)
    if (far_end.treble.y - far_end.bass.y) * ways.sign <= 0.0:
        _, bass, _, treble = frets.at_edges[-1]
        if (treble - bass) * ways.sign > 0.0:
            message = "the edges of the board cross before its end; make the extension shorter or the board wider"
            raise ImpossibleBoardError(message, field=("extension",))
        message = "the edges of the board cross before the last fret; make the board wider there"
        raise ImpossibleBoardError(message, field=("margins" if plan.margins else "widths",))
    if (nut_end.treble.y - nut_end.bass.y) * ways.sign <= 0.0:
        field = "behind_zero_fret" if plan.zero_fret else "nut_setback"
        message = "the edges of the board cross behind the nut; let it go on less far there, or make it wider"
        raise ImpossibleBoardError(message, field=(field,))
    return [nut_end.bass, nut_end.treble, far_end.treble, far_end.bass]


def _refuse_end_behind_saddle(plan: Plan, last: AcrossLine, end: AcrossLine, strings: Sequence[StringLine]) -> None:
    """Refuse a board that goes on past its saddle; its frets, a setback or its extension are at fault."""
    for string in strings:
        if crossing(end, (string.at_zero, string.at_saddle)) < 1.0:
            continue
        fields: tuple[str | int, ...] = ("extension",)
        fix = "make the extension shorter"
        if string.saddle_setback < 0.0 and crossing(end, (string.at_zero, string.at_scale_end)) < 1.0:
            fields, fix = ("saddle_setbacks", string.string - 1), "choose a setback nearer to zero"
        elif crossing(last, (string.at_zero, string.at_saddle)) >= 1.0:
            fields, fix = ("frets",), "choose fewer frets"
        elif crossing(shifted_along(end, -plan.extension), (string.at_zero, string.at_saddle)) >= 1.0:
            fields, fix = ("far_end",), "make it parallel to the last fret, or choose scales that differ less"
        message = f"the board would end beyond the saddle of string {string.string}; {fix}"
        raise OutsideScaleError(message, field=fields)
