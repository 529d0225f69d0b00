"""Fingerboards, against closed forms and against shapely, a general-purpose library of plane geometry."""

import itertools
import math
import random
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon
from shapely import Point as ShapelyPoint

from scalewright.lutherie.errors import (
    FretsCollideError,
    ImpossibleBoardError,
    OutsideScaleError,
    TooFewPitchesError,
)
from scalewright.lutherie.fingerboard import (
    BoardMargins,
    BoardWidths,
    Fingerboard,
    PartialFret,
    Plan,
    Side,
    SlotPlan,
    StringPlan,
    SurfaceRadius,
    draw_up,
)
from scalewright.lutherie.layout import lay_out
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal, Listed, Rule

DRAWN = 1e-9
"""How near a line has to be to where it belongs. [mm]"""

FAR = 1e4
"""Longer than any board. [mm]"""

MARGINS = BoardMargins(3.0, 3.2, 3.5, 4.0)
CLASSICAL = Plan(
    bass=Side(EQUAL, 650.0),
    treble=Side(EQUAL, 650.0),
    frets=19,
    strings=StringPlan(6, 43.0, 58.0),
    margins=MARGINS,
    slots=SlotPlan(tang_depth=1.8),
)
FAN = replace(CLASSICAL, bass=Side(EQUAL, 686.0), treble=Side(EQUAL, 648.0), frets=24, square_fret=8)


RULES: list[Rule] = [EQUAL, EIGHTEENTH, Equal(19), Equal(24)]
TWO_RULES: list[Rule] = [EQUAL, EIGHTEENTH]


def random_plan(draw: random.Random) -> Plan:
    """Draw a board that a maker might ask for, seeded."""
    rule = draw.choice([*RULES, Divisor(draw.uniform(17.5, 18.2))])
    scale = draw.uniform(350.0, 900.0)
    fan = draw.choice([0.0, draw.uniform(-0.05, 0.05)])
    other = rule if draw.random() < 0.7 else draw.choice(TWO_RULES)
    if other != rule:
        rule = draw.choice(TWO_RULES)
    count = draw.randint(2, 12)
    spread = draw.uniform(25.0, 60.0)
    gauges = None if draw.random() < 0.5 else tuple(draw.uniform(0.2, 1.5) for _ in range(count))
    return Plan(
        bass=Side(rule, scale),
        treble=Side(other, scale * (1.0 + fan)),
        frets=draw.randint(5, 24),
        strings=StringPlan(count, spread, spread * draw.uniform(1.05, 1.6), gauges),
        margins=BoardMargins(*(draw.uniform(2.0, 5.0) for _ in range(4))),
        measured=draw.choice(["centre_line", "string"]),
        square_fret=draw.randint(0, 12),
        handedness=draw.choice(["right", "left"]),
        nut_setback=draw.choice([0.0, -0.4, 0.3]),
        slots=SlotPlan(kerf=0.5, inset=draw.choice([0.0, 1.5]), tang_depth=1.8),
        end=draw.choice(["square", "parallel"]),
        extension=draw.uniform(0.0, 12.0),
    )


SEEDED = random.Random(20261125)
PLANS = [random_plan(SEEDED) for _ in range(500)]
BOARDS = [draw_up(plan) for plan in PLANS]


def shape(*points) -> LineString:
    """Return the line through points as shapely has it."""
    return LineString([tuple(point) for point in points])


def along(board: Fingerboard, point, number: int) -> float:
    """Return the distance of a point from a string's start, measured as the plan says."""
    start = board.strings[number].at_zero
    return point.x - start.x if board.measured == "centre_line" else math.dist(point, start)


def test_outer_strings_have_every_fret_at_their_own_scales_position():
    """On 500 random boards the layout of either outer string is found along it again."""
    for plan, board in zip(PLANS, BOARDS, strict=True):
        for side, end, number in ((plan.bass, "bass", -1), (plan.treble, "treble", 0)):
            layout = lay_out(side.rule, side.scale, plan.frets)
            for fret, expected in zip(board.frets, layout.from_nut, strict=True):
                assert along(board, getattr(fret.line, end), number) == pytest.approx(expected, abs=DRAWN)
            assert board.strings[number].scale == pytest.approx(layout.true_scale, abs=DRAWN)


def test_inner_strings_have_theirs_where_the_strings_spread_alike():
    """With one rule and centres evenly spread at both ends, fret n of every string stands at the rule's share of it."""
    alike = [board for board in BOARDS if board.bass.rule == board.treble.rule and board.plan.strings.gauges is None]

    assert len(alike) > 100
    for board in alike:
        shares = [
            x / board.bass.speaking
            for x in lay_out(board.bass.rule, board.bass.layout_scale, board.plan.frets).from_nut
        ]
        for fret, share in zip(board.frets, shares, strict=True):
            for cross, string in zip(fret.crossings, board.strings, strict=True):
                # Along the centre line the pencil of strings is cut in one ratio; along a string as well.
                assert cross.from_zero == pytest.approx(share * string.scale, abs=DRAWN)
                assert cross.off_own_rule == pytest.approx(0.0, abs=DRAWN)


def test_frets_of_one_scale_are_parallel_and_those_of_a_fan_concurrent():
    """Equal scales: all frets at right angles. One rule on two scales: all fret lines meet in one point, by shapely."""
    parallel = concurrent = 0
    for plan, board in zip(PLANS, BOARDS, strict=True):
        if plan.bass == plan.treble:
            parallel += 1
            assert all(fret.line.bass.x == fret.line.treble.x for fret in board.frets)
            assert all(fret.angle_degrees == 0.0 for fret in board.frets)
        elif plan.bass.rule == plan.treble.rule and plan.measured == "centre_line":
            concurrent += 1
            # Joining shares t of two segments, the lines touch a parabola; they meet in one point only where the
            # strings are parallel. What always holds: the lean grows evenly from fret to fret along the scale.
            lean = [fret.line.bass.x - fret.line.treble.x for fret in board.frets]
            shares = [fret.from_zero.bass for fret in board.frets]
            ratios = {
                (b - a) / (y - x)
                for (a, b), (x, y) in zip(itertools.pairwise(lean), itertools.pairwise(shares), strict=True)
            }
            assert max(ratios) - min(ratios) < DRAWN
    assert parallel > 50
    assert concurrent > 50


def test_a_fan_of_parallel_strings_has_one_centre():
    """Where the strings run parallel, shapely finds all fret lines of a fan crossing at one point."""
    board = draw_up(replace(FAN, strings=StringPlan(6, 40.0, 40.0)))
    far = []
    for fret in board.frets:
        (ax, ay), (bx, by) = fret.line
        far.append(
            LineString([(ax + 60.0 * (ax - bx), ay + 60.0 * (ay - by)), (bx + 60.0 * (bx - ax), by + 60.0 * (by - ay))])
        )
    meetings = [far[0].intersection(line) for line in far[1:]]

    assert all(isinstance(point, ShapelyPoint) for point in meetings)
    assert max(meetings[0].distance(point) for point in meetings) < 1e-6  # the crossing angles are small


def test_the_square_fret_is_exactly_square():
    """Its two ends have the same x to the last digit."""
    for plan, board in zip(PLANS, BOARDS, strict=True):
        line = board.zero_line if plan.square_fret == 0 else None
        for fret in board.frets:
            line = fret.line if fret.fret == plan.square_fret else line
        if line is not None:
            assert line.bass.x == line.treble.x


def test_a_left_handed_board_is_the_mirror_image():
    """Every point of it has the other sign across, to the last digit."""
    for plan, board in zip(PLANS, BOARDS, strict=True):
        other = draw_up(replace(plan, handedness="left" if plan.handedness == "right" else "right"))

        assert [(x, -y) for x, y in other.outline] == board.outline
        for fret, mirrored in zip(board.frets, other.frets, strict=True):
            for line, image in (
                (fret.line, mirrored.line),
                ((fret.slot.bass, fret.slot.treble), (mirrored.slot.bass, mirrored.slot.treble)),
            ):
                for point, reflected in zip(line, image, strict=True):
                    assert (reflected.x, -reflected.y) == pytest.approx(point, abs=DRAWN)


def test_slots_lie_on_the_board_and_end_where_they_should():
    """By shapely, slots that go through end on the outline, and blind ones stop short of it by their inset."""
    for plan, board in zip(PLANS, BOARDS, strict=True):
        outline = Polygon([tuple(corner) for corner in board.outline])
        sides = [shape(board.outline[0], board.outline[3]), shape(board.outline[1], board.outline[2])]
        assert outline.is_valid
        outline = outline.buffer(DRAWN)
        for fret in board.frets:
            middle = shape(fret.slot.bass, fret.slot.treble)
            assert middle.length == pytest.approx(fret.slot.length, abs=DRAWN)
            assert outline.covers(middle)
            whole = shape(*fret.line)
            for end, side in zip((fret.slot.bass, fret.slot.treble), sides, strict=True):
                gap = ShapelyPoint(end).distance(side)
                if plan.slots.inset == 0.0:
                    assert gap < DRAWN
                else:
                    assert 0.8 * plan.slots.inset < gap <= plan.slots.inset + DRAWN
            for edge in (fret.slot.near_edge, fret.slot.far_edge):
                for point in edge:
                    ux, uy = (
                        (fret.line.treble.x - fret.line.bass.x) / whole.length,
                        (fret.line.treble.y - fret.line.bass.y) / whole.length,
                    )
                    off = abs((point.x - fret.line.bass.x) * uy - (point.y - fret.line.bass.y) * ux)
                    assert off == pytest.approx(0.5 * plan.slots.kerf, abs=DRAWN)


def test_kerfs_are_apart_and_in_order():
    """By shapely, no two kerfs of a board share wood, and each lies farther from the nut than the one before."""
    for board in BOARDS[:200]:
        kerfs = [Polygon([tuple(p) for p in (*f.slot.near_edge, *reversed(f.slot.far_edge))]) for f in board.frets]
        assert all(a.distance(b) > 0.0 for a, b in itertools.pairwise(kerfs))
        assert all(a.centroid.x < b.centroid.x for a, b in itertools.pairwise(kerfs))


def test_nut_and_saddle_stand_at_their_setbacks():
    """A nut set back lies before the zero line by that much, and a saddle behind the scale's end along its string."""
    setbacks = (1.0, 1.5, 2.0, 2.0, 2.5, 3.0)
    board = draw_up(replace(FAN, nut_setback=0.5, saddle_setbacks=setbacks))

    assert board.zero_line.bass.x - board.nut.bass.x == pytest.approx(0.5, abs=0.01)
    for string, setback in zip(board.strings, setbacks, strict=True):
        assert string.at_saddle.x - string.at_scale_end.x == pytest.approx(setback, abs=DRAWN)
        assert shape(string.at_nut, string.at_saddle).distance(ShapelyPoint(string.at_scale_end)) < DRAWN
        assert shape(board.nut.bass, board.nut.treble).distance(ShapelyPoint(string.at_nut)) < DRAWN


def test_gaps_between_strings_of_unequal_gauges_are_equal():
    """The free room between neighbours is the same everywhere, and the outer centres keep the spread."""
    gauges = (0.25, 0.33, 0.43, 0.66, 0.91, 1.17)
    board = draw_up(replace(CLASSICAL, strings=StringPlan(6, 36.0, 52.0, gauges)))
    for places, spread in (
        ([s.at_zero.y for s in board.strings], 36.0),
        ([s.at_scale_end.y for s in board.strings], 52.0),
    ):
        gaps = [
            a - b - 0.5 * (g + h)
            for (a, b), (g, h) in zip(itertools.pairwise(places), itertools.pairwise(gauges), strict=True)
        ]

        assert gaps == pytest.approx([gaps[0]] * 5, abs=DRAWN)
        assert places[0] - places[-1] == pytest.approx(spread, abs=DRAWN)


def test_two_of_spreads_margins_and_widths_make_the_third():
    """A board by spreads and widths is the board by the margins that follow, and by margins and widths as well."""
    by_widths = draw_up(replace(CLASSICAL, margins=None, widths=BoardWidths(50.0, 62.0)))
    x = by_widths.frets[-1].on_centre_line
    last = 43.0 + 15.0 * x / 650.0
    same = BoardMargins(3.5, 3.5, 0.5 * (62.0 - last), 0.5 * (62.0 - last))
    by_margins = draw_up(replace(CLASSICAL, margins=same))
    by_both = draw_up(replace(CLASSICAL, margins=same, widths=BoardWidths(50.0, 62.0), strings=StringPlan(6)))

    for other in (by_margins, by_both):
        for corner, expected in zip(other.outline, by_widths.outline, strict=True):
            assert corner == pytest.approx(expected, abs=DRAWN)
    assert by_both.strings[0].at_scale_end.y == pytest.approx(29.0, abs=DRAWN)


def test_the_drop_of_a_rounded_surface_is_the_sagitta():
    """At a slot's end a cylinder of radius R lies R - sqrt(R^2 - y^2) lower; a flat-bottomed slot is deeper by that."""
    slot = draw_up(replace(CLASSICAL, radius=SurfaceRadius(304.8, 304.8))).frets[11].slot
    y = max(abs(slot.bass.y), abs(slot.treble.y))

    assert slot.drop == pytest.approx(304.8 - math.sqrt(304.8**2 - y * y), abs=DRAWN)
    assert slot.flat_depth == pytest.approx(1.8 + slot.drop, abs=DRAWN)


def test_a_cone_opens_evenly():
    """The radius runs straight from the nut's to the last fret's; a leaning fret is bent less."""
    board = draw_up(replace(FAN, radius=SurfaceRadius(254.0, 406.4)))

    assert board.frets[-1].radius == pytest.approx(406.4 / math.cos(math.radians(board.frets[-1].angle_degrees)) ** 2)
    share = board.frets[7].on_centre_line / board.frets[-1].on_centre_line
    assert board.frets[7].radius == pytest.approx(254.0 + 152.4 * share, abs=DRAWN)


def test_partial_and_extra_frets_end_half_way_between_strings():
    """A half fret at 650 cents divides the scale as a listed pitch does, and ends half way to the next string."""
    plan = replace(CLASSICAL, partial_frets=(PartialFret(1, 3, cents=650.0, name="6 1/2"), PartialFret(4, 6, fret=5)))
    board = draw_up(plan)
    names = [fret.name for fret in board.frets]
    half, short = board.frets[names.index("6 1/2")], board.frets[names.index("5")]

    assert names[5:8] == ["6", "6 1/2", "7"]
    assert half.on_centre_line == pytest.approx(650.0 * (1.0 - 2.0 ** (-650.0 / 1200.0)), abs=DRAWN)
    assert [cross.string for cross in half.crossings] == [1, 2, 3]
    assert half.crossings[0].cents == pytest.approx(650.0, abs=1e-9)
    assert half.slot.bass.y == pytest.approx(0.0, abs=DRAWN)  # the middle of six strings
    assert [cross.string for cross in short.crossings] == [4, 5, 6]
    assert short.slot.treble.y == pytest.approx(0.0, abs=DRAWN)


def test_markers_stand_half_way_between_frets():
    """Common practice, no source: 3, 5, 7 ... bear one, 12 and 24 two; scales of other steps bear none unasked."""
    board = draw_up(FAN)
    x = [fret.on_centre_line for fret in board.frets]

    assert [marker.fret for marker in board.markers] == [3, 5, 7, 9, 12, 12, 15, 17, 19, 21, 24, 24]
    assert board.markers[0].at.x == pytest.approx(0.5 * (x[1] + x[2]), abs=DRAWN)
    assert board.markers[4].at.y == -board.markers[5].at.y != 0.0
    other = replace(CLASSICAL, bass=Side(Equal(19), 650.0), treble=Side(Equal(19), 650.0))
    assert draw_up(other).markers == []
    assert [marker.fret for marker in draw_up(replace(other, markers=(19, 11))).markers] == [19, 11]


def test_a_zero_fret_is_the_first_of_the_frets():
    """It stands on the zero line, and the board goes on behind it."""
    board = draw_up(replace(CLASSICAL, zero_fret=True, behind_zero_fret=6.0))

    assert (board.frets[0].name, board.frets[0].on_centre_line, len(board.frets)) == ("0", 0.0, 20)
    assert board.centre_line.start.x == -6.0


def test_one_string_has_a_board_too():
    """Its frets are square, and its edges stand at their margins."""
    board = draw_up(replace(CLASSICAL, strings=StringPlan(1), margins=BoardMargins(9.0, 9.0, 12.0, 12.0)))

    assert board.frets[11].on_centre_line == pytest.approx(325.0, abs=DRAWN)
    assert [cross.from_zero for cross in board.frets[11].crossings] == pytest.approx([325.0], abs=DRAWN)
    assert (board.outline[0].y, board.outline[1].y) == (-9.0, 9.0)
    assert len(board.markers) == 9


@given(st.floats(300.0, 900.0), st.floats(30.0, 60.0), st.floats(30.0, 90.0))
def test_a_scale_measured_along_the_strings_is_their_length(scale, nut, saddle):
    """The outer strings then measure the scale itself, and the centre line less."""
    plan = replace(
        CLASSICAL,
        bass=Side(EQUAL, scale),
        treble=Side(EQUAL, scale),
        measured="string",
        frets=12,
        strings=StringPlan(4, nut, saddle),
        margins=BoardMargins(9.0, 9.0, 9.0, 9.0),
    )
    board = draw_up(plan)

    assert math.dist(board.strings[0].at_zero, board.strings[0].at_scale_end) == pytest.approx(scale, abs=DRAWN)
    half = 0.5 * (saddle - nut)
    assert board.strings[0].at_scale_end.x == pytest.approx(math.sqrt(scale**2 - half**2), abs=DRAWN)


REFUSED = [
    (
        replace(FAN, treble=Side(EQUAL, 90.0), square_fret=24, margins=BoardMargins(9.0, 9.0, 9.0, 9.0)),
        FretsCollideError,
    ),
    (replace(CLASSICAL, frets=60, slots=SlotPlan(kerf=2.0)), FretsCollideError),
    (replace(CLASSICAL, nut_setback=-40.0), FretsCollideError),
    (replace(CLASSICAL, extension=300.0), OutsideScaleError),
    (replace(CLASSICAL, saddle_setbacks=(-250.0,) * 6), OutsideScaleError),
    (replace(CLASSICAL, bass=Side(Divisor(2.0), 650.0), treble=Side(Divisor(2.0), 650.0)), FretsCollideError),
    (replace(CLASSICAL, bass=Side(Divisor(2.7), 650.0), treble=Side(Divisor(2.7), 650.0), frets=4), OutsideScaleError),
    (replace(CLASSICAL, margins=None, widths=BoardWidths(40.0, 62.0)), ImpossibleBoardError),
    (replace(CLASSICAL, margins=None, widths=BoardWidths(50.0, 40.0)), ImpossibleBoardError),
    (replace(CLASSICAL, strings=StringPlan(6), widths=BoardWidths(50.0, 7.0)), ImpossibleBoardError),
    (replace(CLASSICAL, strings=StringPlan(6), widths=BoardWidths(50.0, 20.0)), ImpossibleBoardError),
    (replace(CLASSICAL, strings=StringPlan(6)), ImpossibleBoardError),
    (replace(CLASSICAL, margins=None), ImpossibleBoardError),
    (replace(CLASSICAL, strings=StringPlan(6, 20.0, 30.0, (5.0,) * 6)), ImpossibleBoardError),
    (replace(CLASSICAL, slots=SlotPlan(inset=40.0)), ImpossibleBoardError),
    (replace(CLASSICAL, radius=SurfaceRadius(20.0, 20.0)), ImpossibleBoardError),
    (replace(CLASSICAL, measured="string", strings=StringPlan(6, 43.0, 1500.0)), ImpossibleBoardError),
    (replace(FAN, strings=StringPlan(1)), ImpossibleBoardError),
    (replace(CLASSICAL, bass=Side(Listed((100.0,)), 650.0)), TooFewPitchesError),
    (
        replace(
            CLASSICAL,
            bass=Side(Listed((100.0, 200.0)), 650.0),
            treble=Side(Listed((100.0, 200.0)), 640.0),
            frets=2,
            square_fret=3,
        ),
        TooFewPitchesError,
    ),
    (
        replace(CLASSICAL, partial_frets=(PartialFret(1, 3, cents=705.0), PartialFret(3, 6, cents=702.0))),
        FretsCollideError,
    ),
    (
        replace(CLASSICAL, margins=BoardMargins(3.0, 3.0, -24.0, -24.0), end="parallel", extension=150.0),
        ImpossibleBoardError,
    ),
]


@pytest.mark.parametrize(("plan", "error"), REFUSED)
def test_a_board_that_cannot_be_is_refused(plan, error):
    """The refusal is of the right kind and says what to change."""
    with pytest.raises(error) as refused:
        draw_up(plan)

    assert refused.value.field


def test_frets_beside_each_other_on_different_strings_do_not_collide():
    """A movable-fret gauge may have two frets at almost one place, each under its own strings."""
    extra = (
        PartialFret(1, 3, cents=705.0, name="a"),
        PartialFret(4, 6, cents=702.0, name="b"),
        PartialFret(1, 1, fret=7),
    )
    plan = replace(
        CLASSICAL,
        partial_frets=extra[:2],
        bass=Side(Listed((100.0, 1200.0)), 650.0),
        treble=Side(Listed((100.0, 1200.0)), 650.0),
        frets=2,
    )

    assert [fret.name for fret in draw_up(plan).frets] == ["1", "b", "a", "2"]
