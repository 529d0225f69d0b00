"""Slots, travels, glued bridges, placements and reslotting, against a general optimiser and planted cases."""

import itertools
import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog, minimize

from scalewright.lutherie.compensation import (
    BridgeWork,
    GluedBridge,
    StraightSlot,
    StringSet,
    Travel,
    compensate,
)
from scalewright.lutherie.compensation.saddle_line import narrowest_line
from scalewright.lutherie.errors import ImpossibleSetupError, UnknownPitchError
from scalewright.lutherie.fretting import cents_errors
from scalewright.lutherie.layout import lay_out
from scalewright.lutherie.setup import Heights
from scalewright.lutherie.spacing import EIGHTEENTH, Listed
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.stringing import lay_strings
from tests.lutherie.compensation.boards import NYLON, setup

MM_OF_ANOTHER_OPTIMISER = 1e-4
"""A simplex search on a sum of squares stops about there. [mm]"""
NOTHING = 1e-9


def asked(nut="fixed", preference=None, **work):
    """Answer for the paper's board with work at its bridge."""
    changes = work.pop("changes", {})
    return compensate(setup(**changes), nut, preference, "free", BridgeWork(**work))


# ---- A straight slot ---------------------------------------------------------------------------------------


@pytest.mark.source("scipy.optimize.linprog: the least deviation of a line from points")
@settings(max_examples=30)
@given(st.lists(st.floats(-5.0, 5.0), min_size=1, max_size=12), st.randoms(use_true_random=False))
def test_the_narrowest_slot(points, random):
    """The narrowest slot that holds all break points is that of a linear programme."""
    across = np.cumsum([0.0] + [random.uniform(0.2, 2.0) for _ in points[1:]])
    across = across / (across[-1] or 1.0)
    ends, deviation = narrowest_line(np.array(points), across)
    # Unknown: both ends and the deviation, which is to be least.
    rows = np.stack([1.0 - across, across, np.full(len(points), -1.0)], axis=1)
    other = np.stack([across - 1.0, -across, np.full(len(points), -1.0)], axis=1)
    least = linprog(
        [0.0, 0.0, 1.0],
        A_ub=np.vstack([rows, other]),
        b_ub=np.concatenate([points, -np.array(points)]),
        bounds=[(None, None), (None, None), (0.0, None)],
    ).fun

    assert deviation == pytest.approx(least, abs=1e-7)
    line = (1.0 - across) * ends[0] + across * ends[1]
    assert np.abs(line - points).max() <= deviation + NOTHING


def test_a_thick_saddle_holds_every_break_point():
    """Where all fit, each string breaks at its best and the slot has the outermost ones equally near its edges."""
    answer = asked(slot=StraightSlot(3.0, 58.0))
    slot = answer.slot

    assert slot.fits
    assert slot.needed_thickness < 3.0
    assert [point.saddle_setback for point in slot.strings] == [string.saddle_setback for string in answer.strings]
    assert all(point.reached for point in slot.strings)
    assert slot.rms_cents == pytest.approx(answer.rms_cents)
    line = np.linspace(slot.setback_at_first, slot.setback_at_last, 6)
    off = np.array([point.saddle_setback for point in slot.strings]) - line
    assert off.max() == pytest.approx(slot.needed_thickness / 2.0)
    assert off.min() == pytest.approx(-slot.needed_thickness / 2.0)
    assert slot.from_nut_at_first == pytest.approx(650.0 + slot.setback_at_first)
    assert math.tan(math.radians(slot.angle_degrees)) == pytest.approx(
        (slot.setback_at_last - slot.setback_at_first) / 58.0
    )


@pytest.mark.source("scipy.optimize.minimize, Nelder-Mead, on the sum of squares over all strings")
@pytest.mark.parametrize("nut", ["fixed", "free"])
@pytest.mark.parametrize("thickness", [0.01, 0.6])
def test_a_thin_saddle_is_placed_best(nut, thickness):
    """Where not all fit, no other straight slot of that thickness leaves less."""
    answer = asked(nut, slot=StraightSlot(thickness, 58.0))
    strings = lay_strings(setup()).fretted
    best = np.array([string.saddle_setback for string in answer.strings])
    across = np.linspace(0.0, 1.0, 6)

    def total(ends):
        centre = (1.0 - across) * ends[0] + across * ends[1]
        saddle = np.clip(best, centre - thickness / 2.0, centre + thickness / 2.0)
        nuts = np.zeros(6)
        if nut == "free":
            for _ in range(3):  # errors are almost linear in the nut
                h = 1e-3
                errors = cents_errors(strings, saddle, nuts)
                slope = (cents_errors(strings, saddle, nuts + h) - cents_errors(strings, saddle, nuts - h)) / (2.0 * h)
                nuts = nuts - (errors * slope).sum(axis=1) / (slope**2).sum(axis=1)
        return (cents_errors(strings, saddle, nuts) ** 2).sum()

    slot = answer.slot
    ours = np.array([slot.setback_at_first, slot.setback_at_last])
    found = minimize(
        total, [ours[0] + 0.4, ours[1] - 0.3], method="Nelder-Mead", options={"xatol": 1e-7, "fatol": 1e-12}
    )

    assert not slot.fits
    assert not all(point.reached for point in slot.strings)
    assert total(ours) <= found.fun * (1.0 + 1e-9)
    assert ours == pytest.approx(found.x, abs=MM_OF_ANOTHER_OPTIMISER)
    assert slot.rms_cents == pytest.approx(math.sqrt(total(ours) / 72.0), rel=1e-6)


def test_a_break_point_that_is_not_reached_says_by_how_much():
    """What a string gets and what it is short by add up to its best, and it keeps more than its least."""
    answer = asked(slot=StraightSlot(0.2, 58.0))

    for point, string in zip(answer.slot.strings, answer.strings, strict=True):
        assert point.saddle_setback + point.short_by == pytest.approx(string.saddle_setback)
        assert point.reached == (point.short_by == pytest.approx(0.0, abs=1e-6))
        assert point.rms_cents >= point.least_rms_cents - NOTHING


def test_places_across_the_bridge():
    """Even places and the spread say the same; uneven ones another line."""
    even = asked(slot=StraightSlot(0.2, 50.0)).slot
    listed = asked(slot=StraightSlot(0.2, across=[10.0, 20.0, 30.0, 40.0, 50.0, 60.0])).slot
    uneven = asked(slot=StraightSlot(0.2, across=[0.0, 5.0, 25.0, 27.0, 45.0, 50.0])).slot

    assert listed == even
    assert uneven.needed_thickness != pytest.approx(even.needed_thickness, rel=1e-3)


def test_a_slot_is_cut_for_what_each_string_wants():
    """Where one setback for all was asked, the slot is still the one for every string's own best."""
    each = asked(slot=StraightSlot(3.0, 58.0))
    common = compensate(setup(), "fixed", None, "uniform", BridgeWork(slot=StraightSlot(3.0, 58.0)))

    assert len({string.saddle_setback for string in common.strings}) == 1
    assert common.slot.setback_at_first == pytest.approx(each.slot.setback_at_first, abs=1e-9)
    assert common.slot.rms_cents == pytest.approx(each.rms_cents)


def test_one_string_and_two_fit_any_slot():
    """A line goes through one break point, and through two."""
    for n in (1, 2):
        slot = asked(changes={"strings": NYLON[:n]}, slot=StraightSlot(0.1, 8.0)).slot
        assert slot.fits
        assert slot.needed_thickness == 0.0


# ---- Saddles of limited travel --------------------------------------------------------------------------


def test_travel_that_is_long_enough():
    """Within the travel every saddle is at its best."""
    answer = asked(travel=Travel(0.0, 10.0))

    assert answer.travel.all_reached
    assert answer.travel.rms_cents == pytest.approx(answer.rms_cents)


def test_travel_that_is_too_short():
    """A saddle whose best lies beyond its travel stands at the end of it, and keeps more."""
    answer = asked(travel=Travel(0.0, 1.5))
    wanted = [string.saddle_setback for string in answer.strings]
    beyond = [setback > 1.5 for setback in wanted]

    assert any(beyond)
    assert [not point.reached for point in answer.travel.strings] == beyond
    for point, far in zip(answer.travel.strings, beyond, strict=True):
        assert point.saddle_setback == pytest.approx(1.5) if far else point.saddle_setback < 1.5
        assert (point.rms_cents > point.least_rms_cents) == far


# ---- A bridge that is glued already ------------------------------------------------------------------------

WELL_PLACED = GluedBridge(slot_at_first=652.3, slot_at_last=652.6, thickness=2.5, spread=58.0)


def remedies(bridge, **changes):
    """Remedies by their names, and the suggestion."""
    advice = asked(bridge=bridge, changes=changes).bridge
    return {remedy.remedy: remedy for remedy in advice.remedies}, advice.suggestion


def test_a_bridge_that_is_right_is_left_alone():
    """Where the strings may break over the middle of the saddle, nothing is to be done."""
    _, suggestion = remedies(replace(WELL_PLACED, good_enough=1.5))

    assert suggestion == "as_it_is"


def test_a_saddle_that_needs_filing():
    """Where the best break points lie on the saddle, shaping its top is enough."""
    found, suggestion = remedies(replace(WELL_PLACED, good_enough=0.01))

    assert suggestion == "within_saddle"
    assert found["within_saddle"].all_reached
    assert not found["as_it_is"].good_enough


def test_a_slot_that_needs_widening():
    """A bridge 2 mm too far forward is mended by a slot no wider than the break points need."""
    forward = replace(WELL_PLACED, slot_at_first=650.3, slot_at_last=650.6, widest_slot=6.0, good_enough=0.01)
    found, suggestion = remedies(forward)
    wider = found["wider_slot"]

    assert suggestion == "wider_slot"
    assert wider.all_reached
    assert 2.5 < wider.slot_width < 6.0
    # The front stays, what is cut away lies behind it.
    assert wider.shift_at_first - wider.slot_width / 2.0 == pytest.approx(-1.25)


def test_a_slot_that_needs_a_slant():
    """A slot that is askew is mended by a slanted one that swallows it, where a parallel one leaves more."""
    askew = replace(WELL_PLACED, slot_at_first=654.2, slot_at_last=650.4, widest_slot=4.6, good_enough=0.01)
    found, suggestion = remedies(askew)
    slanted = found["slanted_slot"]

    assert suggestion == "slanted_slot"
    assert not found["wider_slot"].all_reached
    assert slanted.all_reached
    room = (4.6 - 2.5) / 2.0
    for shift in (slanted.shift_at_first, slanted.shift_at_last):
        assert abs(shift) <= room + NOTHING


def test_a_slot_that_needs_plugging():
    """Where neither filing nor widening reaches, a new slot within the bridge does."""
    far = replace(WELL_PLACED, slot_at_first=645.0, slot_at_last=645.0, widest_slot=4.0, front=640.0, back=656.0)
    found, suggestion = remedies(far)

    assert suggestion == "new_slot"
    assert found["new_slot"].all_reached
    assert not found["slanted_slot"].good_enough
    assert "Plug" in found["new_slot"].advice
    for remedy in ("wider_slot", "slanted_slot", "new_slot"):
        assert "lungs" in found[remedy].advice


def test_a_bridge_that_has_to_move():
    """Where the bridge has no room for a new slot, it has to move, and the answer says how far."""
    far = replace(WELL_PLACED, slot_at_first=641.0, slot_at_last=641.0, widest_slot=4.0, front=636.0, back=646.0)
    found, suggestion = remedies(far)
    moved = found["moved_bridge"]

    assert suggestion == "moved_bridge"
    assert moved.all_reached
    assert moved.shift_at_first == moved.shift_at_last
    assert moved.shift_at_first == pytest.approx(11.0, abs=0.6)
    assert "qualified" in moved.advice


def test_a_bridge_that_has_to_move_and_to_be_cut():
    """Where even a moved bridge has the wrong slant, the last remedy reaches all."""
    askew = replace(WELL_PLACED, slot_at_first=648.0, slot_at_last=636.0, front=634.0, back=640.0)
    found, suggestion = remedies(askew)

    assert suggestion == "moved_bridge_and_new_slot"
    assert not found["moved_bridge"].all_reached
    assert found["moved_bridge_and_new_slot"].all_reached
    assert found["new_slot"].rms_cents > found["moved_bridge_and_new_slot"].rms_cents


@pytest.mark.parametrize("first", [640.0, 648.0, 651.0, 655.0])
@pytest.mark.parametrize("askew", [-4.0, 0.0, 2.0])
def test_more_work_leaves_less(first, askew):
    """From remedy to remedy, as far as one contains the other, what remains never grows."""
    bridge = replace(
        WELL_PLACED, slot_at_first=first, slot_at_last=first + askew, widest_slot=5.0, front=638.0, back=658.0
    )
    found, _ = remedies(bridge)
    left = {name: remedy.rms_cents for name, remedy in found.items()}
    best = asked().rms_cents

    order = ["as_it_is", "within_saddle", "wider_slot", "slanted_slot"]
    for more, less in itertools.pairwise(order):
        assert left[less] <= left[more] + 1e-6
    assert left["moved_bridge"] <= left["within_saddle"] + 1e-6
    assert left["moved_bridge_and_new_slot"] <= min(left.values()) + 1e-6
    assert left["moved_bridge_and_new_slot"] >= best - NOTHING


def test_what_the_bridge_does_not_allow_is_left_out():
    """Without the widest slot neither a wider nor a slanted one is considered."""
    found, _ = remedies(WELL_PLACED)

    assert {"wider_slot", "slanted_slot"}.isdisjoint(found)


# ---- A bridge that is to be glued -----------------------------------------------------------------------

LOWER = [
    replace(string, pitch=pitch) for string, pitch in zip(NYLON, ("D4", "A3", "F3", "C3", "G2", "D2"), strict=True)
]


def test_a_placement_that_serves_two_sets():
    """With reach enough, one placement serves two tunings, and the middle of those that do is given."""
    answer = asked(other_sets=[StringSet("a tone lower", LOWER)], reach=6.0).placement
    alone = compensate(setup(strings=LOWER))
    wanted = [point.saddle_setback for one in answer.sets for point in one.strings]

    assert answer.all_reached
    assert answer.needed_reach == pytest.approx(max(wanted) - min(wanted))
    assert answer.least <= min(wanted)
    assert max(wanted) <= answer.most
    assert answer.least == pytest.approx((answer.earliest + answer.latest) / 2.0)
    assert (answer.earliest + 6.0, answer.latest) == pytest.approx((max(wanted), min(wanted)))
    assert [p.saddle_setback for p in answer.sets[1].strings] == pytest.approx(
        [string.saddle_setback for string in alone.strings]
    )
    assert answer.least_from_nut == pytest.approx(650.0 + answer.least)


@pytest.mark.source("planted: a plain string and the same far higher above the frets want setbacks millimetres apart")
def test_a_planted_case_that_no_placement_serves():
    """Where two sets are further apart than the reach, the answer says what the best placement does not reach."""
    steep = [StringSet("slide", NYLON, Heights(6.0, 4.0))]
    answer = asked(other_sets=steep, reach=2.0).placement
    low, high = answer.sets

    assert not answer.all_reached
    assert answer.needed_reach > 2.0
    assert not (low.all_reached and high.all_reached)
    assert answer.earliest == answer.latest == answer.least
    assert answer.most - answer.least == pytest.approx(2.0)
    short = [point for one in answer.sets for point in one.strings if not point.reached]
    assert short
    assert all(point.rms_cents > point.least_rms_cents for point in short)


@pytest.mark.source("scipy.optimize.minimize over the one unknown, on the sum of squares over all strings of all sets")
def test_the_best_placement_where_none_serves():
    """Of all placements the one given leaves the least over all strings of all sets."""
    heights = Heights(6.0, 4.0)
    answer = asked(other_sets=[StringSet("slide", NYLON, heights)], reach=1.0).placement
    boards = [setup(), setup(heights=heights)]
    strings = [lay_strings(board).fretted for board in boards]
    best = [np.array([s.saddle_setback for s in compensate(board).strings]) for board in boards]

    def total(front):
        return sum(
            (cents_errors(one, np.clip(wanted, front[0], front[0] + 1.0), np.zeros(6)) ** 2).sum()
            for one, wanted in zip(strings, best, strict=True)
        )

    found = minimize(total, [2.0], method="Nelder-Mead", options={"xatol": 1e-8, "fatol": 1e-12})
    assert answer.least == pytest.approx(found.x[0], abs=MM_OF_ANOTHER_OPTIMISER)


def test_without_a_reach_the_sets_are_only_compared():
    """Other sets alone ask for the range of setbacks; one set with a reach asks for its place."""
    compared = asked(other_sets=[StringSet("a tone lower", LOWER)]).placement
    placed = asked(reach=3.0).placement

    assert compared.reach == 0.0
    assert not compared.all_reached
    assert [one.name for one in compared.sets] == ["strings", "a tone lower"]
    assert placed.all_reached
    assert [one.name for one in placed.sets] == ["strings"]
    assert asked().placement is None


# ---- The same board in equal steps ------------------------------------------------------------------------


def test_what_the_rule_of_18_costs():
    """The board in equal steps has the same true scale, leaves less, and the cost is the difference fret by fret."""
    answer = asked(changes={"rule": EIGHTEENTH, "frets": 19}, reslotted=True)
    equal = compensate(setup(scale=lay_out(EIGHTEENTH, 650.0, 12).true_scale, frets=19))
    other = answer.reslotted

    assert other.true_scale == answer.true_scale
    assert other.steps == 12
    assert other.rms_cents_equal < other.rms_cents_here == pytest.approx(answer.rms_cents)
    for string, here, there in zip(other.strings, answer.strings, equal.strings, strict=True):
        assert string.saddle_setback == pytest.approx(there.saddle_setback, abs=1e-9)
        for row, a, b in zip(string.cents, here.cents, there.cents, strict=True):
            assert row.here == a.compensated
            assert row.equal == pytest.approx(b.compensated, abs=1e-9)
            assert row.cost == pytest.approx(row.here - row.equal)


def test_an_equal_board_costs_nothing():
    """Compared with itself a board in equal steps has no cost."""
    other = asked(reslotted=True).reslotted

    assert all(abs(row.cost) < NOTHING for string in other.strings for row in string.cents)


# ---- What is refused --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("work", "field"),
    [
        ({"slot": StraightSlot(3.0)}, ("slot", "spread")),
        ({"slot": StraightSlot(3.0, 58.0, [0.0] * 6)}, ("slot", "across")),
        ({"slot": StraightSlot(3.0, across=[0.0, 1.0])}, ("slot", "across")),
        ({"slot": StraightSlot(3.0, across=[0.0, 1.0, 1.0, 2.0, 3.0, 4.0])}, ("slot", "across")),
        ({"travel": Travel(2.0, 1.0)}, ("travel", "most")),
        ({"travel": Travel(-400.0, 1.0)}, ("travel", "least")),
        ({"bridge": replace(WELL_PLACED, slot_at_first=320.0)}, ("bridge", "slot_at_first")),
        ({"bridge": replace(WELL_PLACED, slot_at_last=320.0)}, ("bridge", "slot_at_last")),
        ({"bridge": replace(WELL_PLACED, slot_at_first=900.0)}, ("bridge", "slot_at_first")),
        ({"bridge": replace(WELL_PLACED, back=300.0)}, ("bridge", "back")),
        ({"bridge": replace(WELL_PLACED, widest_slot=2.0)}, ("bridge", "widest_slot")),
        ({"bridge": replace(WELL_PLACED, front=650.0, back=651.0)}, ("bridge", "back")),
        ({"bridge": replace(WELL_PLACED, spread=None)}, ("bridge", "spread")),
        (
            {"other_sets": [StringSet("heights", NYLON, Heights(1.0))]},
            ("other_sets", 0, "heights"),
        ),
        (
            {"reslotted": True, "changes": {"rule": Listed((100.0, 200.0, 300.0)), "frets": 3}},
            ("compare_with_equal",),
        ),
    ],
)
def test_work_that_cannot_be_is_refused(work, field):
    """What is missing, out of order or impossible is named."""
    with pytest.raises(ImpossibleSetupError) as refused:
        asked(**work)

    assert refused.value.field == field


def test_a_fault_in_another_set_is_found_there():
    """An unknown pitch in another set is named by its set and string."""
    wrong = [NYLON[0], StringSpec("H#9", 0.7, unit_mass=0.4, R=20.0)]

    with pytest.raises(UnknownPitchError) as refused:
        asked(other_sets=[StringSet("first", NYLON), StringSet("second", wrong)])

    assert refused.value.field == ("other_sets", 1, "strings", 1, "pitch")
