"""Cut lists, against decimal arithmetic and the sums that a maker would do by hand."""

import itertools
import math
import statistics
from dataclasses import replace
from decimal import ROUND_FLOOR, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.lutherie.cut_list import SIXTY_FOURTH, MarkedSlot, Saw, list_cuts, set_to_step
from scalewright.lutherie.fingerboard import BoardMargins, PartialFret, Plan, Side, SlotPlan, StringPlan, draw_up
from scalewright.lutherie.spacing import EQUAL

SET = 1e-9
"""How near a setting has to be to the right one. [mm]"""

PLAN = Plan(
    bass=Side(EQUAL, 650.0),
    treble=Side(EQUAL, 650.0),
    frets=20,
    strings=StringPlan(6, 43.0, 58.0),
    margins=BoardMargins(4.0, 4.0, 4.0, 4.0),
    slots=SlotPlan(kerf=0.6, tang_depth=1.8, clearance=0.2),
)
FAN = replace(PLAN, bass=Side(EQUAL, 686.0), treble=Side(EQUAL, 648.0), square_fret=8)


def cuts(plan: Plan, saw: Saw):
    """Return the cut list of a board."""
    return draw_up(replace(plan, saw=saw)).cut_list


def test_distances_run_from_one_origin():
    """From the zero line they are those of the layout, from the nut's end of the board and from its far end shifted."""
    layout = [650.0 * (1.0 - 2.0 ** (-n / 12.0)) for n in range(1, 21)]
    plan = replace(PLAN, nut_setback=0.5, extension=12.0)

    assert [cut.running for cut in cuts(plan, Saw()).cuts] == pytest.approx(layout, abs=SET)
    assert [cut.running for cut in cuts(plan, Saw(origin="nut_end")).cuts] == pytest.approx(
        [x + 0.5 for x in layout], abs=SET
    )
    back = [cut.running for cut in cuts(plan, Saw(origin="far_end")).cuts]
    assert back == pytest.approx([layout[-1] + 12.0 - x for x in layout], abs=SET)


def test_edges_of_the_blade_lie_half_a_kerf_to_either_side():
    """Square slots by half the kerf; a slot that leans by an angle by that over its cosine, along the centre line."""
    for cut in cuts(FAN, Saw()).cuts:
        half = 0.3 / math.cos(math.radians(cut.angle_degrees))
        assert cut.running - cut.near_edge == pytest.approx(half, abs=SET)
        assert cut.far_edge - cut.running == pytest.approx(half, abs=SET)


@pytest.mark.parametrize(
    ("origin", "blade", "edge"),
    [
        ("zero_line", "centre", "running"),
        ("zero_line", "nut_side", "near_edge"),
        ("zero_line", "bridge_side", "far_edge"),
        ("far_end", "nut_side", "far_edge"),
        ("far_end", "bridge_side", "near_edge"),
    ],
)
def test_the_part_of_the_blade_that_is_set_meets_its_line(origin, blade, edge):
    """Without a step the setting is the exact place of that part, and nothing is off."""
    for cut in cuts(FAN, Saw(origin=origin, blade=blade)).cuts:
        assert cut.set_to == pytest.approx(getattr(cut, edge), abs=SET)
        assert (cut.error, cut.error_cents) == (0.0, 0.0)


@given(st.decimals(0, 1000, places=6), st.decimals("0.001", 2, places=4))
def test_a_setting_is_the_nearest_step(distance, step):
    """Against decimal arithmetic: the nearest multiple, the higher of two as near."""
    nearest = (distance / step + Decimal("0.5")).to_integral_value(ROUND_FLOOR) * step

    setting = set_to_step(float(distance), float(step))
    assert abs(setting - float(distance)) <= 0.5 * float(step) + SET
    if abs(abs(nearest - distance) - step / 2) > Decimal("1e-9"):
        assert setting == pytest.approx(float(nearest), abs=SET)


@pytest.mark.parametrize("origin", ["zero_line", "far_end"])
def test_an_error_is_told_in_cents(origin):
    """A slot moved towards the bridge by e sounds 1200 log2(L / (L - e)) sharp, L what is left of the string."""
    for cut in cuts(PLAN, Saw(step=0.5, origin=origin)).cuts:
        exact = 650.0 * (1.0 - 2.0 ** (-int(cut.name) / 12.0))
        left = 650.0 - exact
        assert abs(cut.error) <= 0.25 + SET
        assert cut.error_cents == pytest.approx(1200.0 * math.log2(left / (left - cut.error)), abs=1e-9)
        sign = 1.0 if origin == "zero_line" else -1.0
        assert cut.set_to - cut.running == pytest.approx(sign * cut.error, abs=SET)
    assert any(cut.error > 0.0 for cut in cuts(PLAN, Saw(step=0.5, origin=origin)).cuts)


def test_sixty_fourths_from_one_origin_stay_within_half_of_one_and_from_fret_to_fret_do_not():
    """Summed by hand: running marks are off by a 128th at most; gaps rounded one by one add up."""
    running, stepped = cuts(PLAN, Saw()).what_if
    exact = [650.0 * (1.0 - 2.0 ** (-n / 12.0)) for n in range(1, 21)]
    marks = [round(x / SIXTY_FOURTH) * SIXTY_FOURTH for x in exact]
    gaps = [round((b - a) / SIXTY_FOURTH) * SIXTY_FOURTH for a, b in itertools.pairwise([0.0, *exact])]
    added = list(itertools.accumulate(gaps))

    def worst(places):
        errors = [1200.0 * math.log2((650.0 - x) / (650.0 - at)) for at, x in zip(places, exact, strict=True)]
        return max(errors, key=abs)

    assert (running.method, stepped.method) == ("running", "fret_to_fret")
    assert running.step == stepped.step == SIXTY_FOURTH
    assert abs(running.worst_error) <= 0.5 * SIXTY_FOURTH
    assert running.worst_cents == pytest.approx(worst(marks), abs=1e-9)
    assert stepped.worst_cents == pytest.approx(worst(added), abs=1e-9)


@pytest.mark.source("JCGM 100:2008, 4.3.7: a rectangular distribution of half width a has the variance a^2 / 3")
def test_what_is_to_be_expected_grows_with_the_root_of_the_number_of_settings():
    """Twenty settings in a row scatter the last slot sqrt(20) times as much as one does; simulated on many scales."""
    running, stepped = cuts(PLAN, Saw()).what_if

    assert running.expected_at_last == pytest.approx(0.5 * SIXTY_FOURTH / math.sqrt(3.0))
    assert stepped.expected_at_last == pytest.approx(math.sqrt(20.0) * running.expected_at_last)
    ends = []
    for index in range(2000):
        scale = 600.0 + 0.05 * index
        exact = [scale * (1.0 - 2.0 ** (-n / 12.0)) for n in range(21)]
        gaps = [b - a for a, b in itertools.pairwise(exact)]
        ends.append(sum(round(gap / SIXTY_FOURTH) * SIXTY_FOURTH - gap for gap in gaps))
    assert statistics.pstdev(ends) == pytest.approx(stepped.expected_at_last, rel=0.15)


def test_a_machines_own_step_is_compared_with_sixty_fourths():
    """Both ways are told for the step first; for a step of a 64th once is enough."""
    assert [(w.step, w.method) for w in cuts(PLAN, Saw(step=0.01)).what_if] == [
        (0.01, "running"),
        (0.01, "fret_to_fret"),
        (SIXTY_FOURTH, "running"),
        (SIXTY_FOURTH, "fret_to_fret"),
    ]
    assert len(cuts(PLAN, Saw(step=SIXTY_FOURTH)).what_if) == 2


def test_a_fret_rounded_past_the_end_of_the_scale_has_no_pitch():
    """It is the worst of all, and no number is made up for it."""
    slots = [MarkedSlot(str(n), 36.0 * n, 0.1, 50.0, 0.0, None) for n in (1, 2, 3)]
    answer = list_cuts(slots, Saw(step=5.0), 0.6, (0.0, 500.0), draw_up(PLAN).cut_list.smallest_blank)

    assert answer.what_if[0].worst_cents is None
    assert any(cut.error_cents is None for cut in answer.cuts)


def test_the_smallest_blank_holds_the_board():
    """Its sides are those of the box around the outline; depth and length are those of the slots."""
    board = draw_up(replace(FAN, partial_frets=(PartialFret(1, 3, fret=20),)))
    xs, ys = zip(*board.outline, strict=True)

    assert board.cut_list.smallest_blank.length == max(xs) - min(xs)
    assert board.cut_list.smallest_blank.width == max(ys) - min(ys)
    assert [cut.depth for cut in board.cut_list.cuts] == [2.0] * 20
    assert [cut.length for cut in board.cut_list.cuts] == [fret.slot.length for fret in board.frets]
