"""Tooling: planted biases, steps and spreads are found, and agree with general statistics libraries."""

import math
import time
import tracemalloc

import numpy as np
import pytest
from scipy import stats

from scalewright.lutherie import spacing
from scalewright.lutherie.drift import drift_of
from scalewright.lutherie.errors import (
    ImpossibleReadingError,
    ToleranceError,
    TooFewBoardsError,
    UnequalSlotsError,
)
from scalewright.lutherie.signature import Signature, origin_of
from scalewright.lutherie.spacing import EQUAL
from scalewright.lutherie.tooling import Tool, study
from scalewright.lutherie.variance import moments_of, variances_of

SCALE = 645.16
FRETS = 22
PLACES = SCALE * np.array(spacing.fractions(EQUAL, FRETS))
TOOL = Tool(tuple(PLACES.tolist()), SCALE, tuple(range(1, FRETS + 1)))
BETWEEN, WITHIN = 0.02, 0.03
STANDARD_ERRORS = 3.0
"""Of a coverage: a test that is run for ever should not fail by chance."""
DIGITS = 1e-9


def boards(rng, count, bias=0.0):
    """Boards off a tool that scatters between and within boards. [mm]"""
    return PLACES + bias + rng.normal(0.0, BETWEEN, (count, 1)) + rng.normal(0.0, WITHIN, (count, FRETS))


def covers(found, share, count):
    """Whether a number of hits is as large as a coverage of 95 % makes it."""
    return abs(found / count - share) < STANDARD_ERRORS * math.sqrt(share * (1.0 - share) / count)


@pytest.mark.source("scipy.stats.f_oneway and f, and numpy's least squares: general-purpose libraries")
def test_the_analysis_of_variance_is_that_of_a_statistics_library():
    """Sums of squares, F and p agree with scipy's one-way analysis and with linear models of slots and boards."""
    count, slots = 9, 6
    readings = boards(np.random.default_rng(1), count, 0.05)[:, :slots]
    found = variances_of(moments_of(readings, PLACES[:slots]))
    off = (readings - PLACES[:slots]).ravel()
    board, slot = (
        np.eye(n)[index]
        for n, index in ((count, np.repeat(np.arange(count), slots)), (slots, np.tile(np.arange(slots), count)))
    )

    def left(*factors):
        design = np.hstack([np.ones((len(off), 1)), *factors])
        return float(np.sum((off - design @ np.linalg.lstsq(design, off, rcond=None)[0]) ** 2))

    assert found.residual_sum == pytest.approx(left(board, slot), rel=DIGITS)
    assert found.boards_sum == pytest.approx(left(slot) - left(board, slot), rel=DIGITS)
    assert found.slots_sum == pytest.approx(left(board) - left(board, slot), rel=DIGITS)
    assert (found.slots_freedom, found.boards_freedom, found.residual_freedom) == (5, 8, 40)
    # With the slots' means taken out, a one-way analysis has all but the right freedom of the residuals.
    one_way = stats.f_oneway(*(readings - np.mean(readings, axis=0)))
    assert found.f_ratio == pytest.approx(one_way.statistic * 40 / 45, rel=1e-8)
    assert found.p_value == pytest.approx(stats.f.sf(found.f_ratio, 8, 40), rel=1e-8)


@pytest.mark.source("scipy.stats.ttest_1samp: confidence interval of a mean, a general-purpose library")
def test_bias_and_its_interval_are_students():
    """Each slot's bias is the mean of its deviations, with Student's interval."""
    readings = boards(np.random.default_rng(2), 7, 0.1)
    found = study(TOOL, readings)
    for k, slot in enumerate(found.slots):
        mean = stats.ttest_1samp(readings[:, k] - PLACES[k], 0.0)
        low, high = mean.confidence_interval(0.95)
        assert (slot.bias.lower, slot.bias.upper) == pytest.approx((low, high), rel=1e-8)
        assert slot.bias.value == pytest.approx(np.mean(readings[:, k] - PLACES[k]), rel=DIGITS)


@pytest.mark.source("numpy.polyfit, a general-purpose library")
def test_scale_and_origin_are_taken_out():
    """A tool with a wrong scale and zero has aligned biases of nothing, and both errors are found."""
    readings = boards(np.random.default_rng(3), 40) + 1.5 + 0.001 * PLACES
    found = study(TOOL, readings)
    slope, shift = np.polyfit(PLACES, np.mean(readings - PLACES, axis=0), 1)
    assert (found.scale_error.value, found.origin_shift.value) == pytest.approx((slope, shift), rel=1e-8)
    left = np.mean(readings - PLACES, axis=0) - slope * PLACES - shift
    assert [slot.aligned_bias.value for slot in found.slots] == pytest.approx(left.tolist(), abs=1e-9)
    assert found.scale_error.lower < 0.001 < found.scale_error.upper


def test_planted_biases_lie_in_their_intervals():
    """Intervals hold the planted bias of a slot in 95 % of studies, before and after scale and origin are taken out."""
    rng = np.random.default_rng(4)
    bias = rng.normal(0.0, 0.05, FRETS)
    design = np.stack([np.ones(FRETS), PLACES], axis=1)
    aligned = bias - design @ np.linalg.lstsq(design, bias, rcond=None)[0]
    raw_hits = aligned_hits = repeats = 0
    for _ in range(60):
        found = study(TOOL, boards(rng, 6, bias))
        # Slots of one study share its boards: one slot of each study keeps the hits independent.
        slot = repeats % FRETS
        raw_hits += found.slots[slot].bias.lower <= bias[slot] <= found.slots[slot].bias.upper
        other = found.slots[slot].aligned_bias
        aligned_hits += other.lower <= aligned[slot] <= other.upper
        repeats += 1
    assert covers(raw_hits, 0.95, repeats)
    assert covers(aligned_hits, 0.95, repeats)


def test_spread_within_and_between_boards():
    """Both components of variance are found, and the instrument's share can be taken out."""
    found = study(TOOL, boards(np.random.default_rng(5), 2000), instrument_uncertainty=0.02)
    assert found.variances.within == pytest.approx(WITHIN, rel=0.02)
    assert found.variances.between == pytest.approx(BETWEEN, rel=0.06)
    assert found.tool_within == pytest.approx(math.sqrt(WITHIN**2 - 0.02**2), rel=0.04)
    assert found.expanded_uncertainty == pytest.approx(2.0 * math.hypot(WITHIN, BETWEEN), rel=0.05)


def test_capability_of_each_slot_and_of_the_worst():
    """Cp is the tolerance over six standard deviations; a bias takes its share from Cpk."""
    bias = np.zeros(FRETS)
    bias[6] = 0.06
    found = study(TOOL, boards(np.random.default_rng(6), 400, bias), tolerance=0.15)
    spread = math.hypot(WITHIN, BETWEEN)
    assert found.slots[6].cp == pytest.approx(0.30 / (6.0 * spread), rel=0.1)
    assert found.slots[6].cpk == pytest.approx(0.09 / (3.0 * spread), rel=0.1)
    assert found.worst_cpk == found.slots[6].cpk


@pytest.mark.source("PHYSICS of a fret: on 650 mm fret 12 set 1 mm towards the saddle is 5.335 cents sharp")
def test_what_a_bias_costs():
    """A slot 1 mm off costs what the definition of a cent says."""
    tool = Tool((325.0,), 650.0, (12,))
    found = study(tool, [[326.0], [326.0]])
    assert found.slots[0].cents == pytest.approx(5.335, abs=0.001)
    assert (found.slots[0].cp, found.worst_cpk, found.slots[0].aligned_bias, found.scale_error) == (None,) * 4


def test_a_slot_to_be_re_set():
    """A slot that lies 0.08 mm off is to be moved back by as much; the others are left alone."""
    bias = np.zeros(FRETS)
    bias[6] = 0.08
    found = study(TOOL, boards(np.random.default_rng(7), 40, bias))
    (reset,) = found.resets
    assert (reset.fret, reset.since) == (7, 0)
    assert reset.move == pytest.approx(-0.08, abs=0.02)
    assert "fret 7" in found.statement
    assert found.notes[-1].slug == "before-setting"


def test_a_changed_blade_is_found_with_its_board_and_size():
    """All slots jump at board 26 of 40: one drift, a step, and re-setting rests on what came after."""
    readings = boards(np.random.default_rng(8), 40)
    readings[25:] += 0.15
    found = study(TOOL, readings)
    (moved,) = found.drifts
    assert (moved.fret, moved.drift.kind, moved.drift.step.at) == (None, "step", 25)
    assert moved.drift.step.size.lower < 0.15 < moved.drift.step.size.upper
    assert {reset.since for reset in found.resets} == {25}
    assert "board 26" in found.statement
    assert "two-states" in [note.slug for note in found.notes]


def test_one_saw_of_a_gang_that_moves():
    """A single slot that jumps is told from all the others."""
    readings = boards(np.random.default_rng(9), 40)
    readings[15:, 3] -= 0.15
    found = study(TOOL, readings)
    (moved,) = found.drifts
    assert (moved.fret, moved.drift.kind, moved.drift.step.at) == (4, "step", 15)
    assert moved.drift.step.size.lower < -0.15 < moved.drift.step.size.upper


def test_a_tool_that_wanders():
    """A steady drift is a trend, with its rate in the interval and where it now stands."""
    readings = boards(np.random.default_rng(10), 60) + 0.002 * np.arange(60)[:, None]
    (moved,) = study(TOOL, readings).drifts
    assert (moved.fret, moved.drift.kind, moved.drift.step) == (None, "trend", None)
    assert moved.drift.trend.lower < 0.002 < moved.drift.trend.upper
    assert moved.drift.present.lower < 0.002 * 59 < moved.drift.present.upper


def test_planted_steps_lie_in_their_intervals():
    """Intervals hold the planted size and place of a step in 95 % of sequences, small steps among them."""
    rng = np.random.default_rng(11)
    sizes = places = seen = 0
    for _ in range(200):
        at, size = int(rng.integers(8, 32)), float(rng.uniform(1.5, 4.0))
        values = rng.normal(0.0, 1.0, 40)
        values[at:] += size
        drift = drift_of(values, 0.2, 0.95)
        if drift is None or drift.step is None:
            continue
        seen += 1
        sizes += drift.step.size.lower <= size <= drift.step.size.upper
        places += drift.step.earliest <= at <= drift.step.latest
    assert seen > 150
    assert covers(sizes, 0.95, seen) or sizes / seen > 0.95
    assert covers(places, 0.95, seen) or places / seen > 0.95


def test_a_steady_tool_seldom_raises_an_alarm():
    """In sequences of pure chance drift is seen no more often than the significance says."""
    rng = np.random.default_rng(12)
    alarms = sum(drift_of(rng.normal(0.0, 1.0, 30), 0.05, 0.95) is not None for _ in range(400))
    assert alarms / 400 < 0.05 + STANDARD_ERRORS * math.sqrt(0.05 * 0.95 / 400)


@pytest.mark.source("scipy.stats.linregress and ttest_ind, a general-purpose library")
def test_trend_and_step_are_the_usual_tests():
    """The trend's p-value is that of a regression, the step's that of a t test times the number of places."""
    rng = np.random.default_rng(13)
    wander = 0.1 * np.arange(30) + rng.normal(0.0, 0.4, 30)
    line = stats.linregress(np.arange(30), wander)
    drift = drift_of(wander, 0.05, 0.95)
    assert (drift.kind, drift.p_value) == ("trend", pytest.approx(line.pvalue, rel=1e-7))
    assert drift.trend.standard_uncertainty == pytest.approx(line.stderr, rel=1e-9)
    jump = rng.normal(0.0, 1.0, 30)
    jump[12:] += 4.0
    test = stats.ttest_ind(jump[:12], jump[12:])
    drift = drift_of(jump, 0.05, 0.95)
    assert (drift.kind, drift.p_value) == ("step", pytest.approx(29 * test.pvalue, rel=1e-6))


def test_nothing_moves_in_constant_or_short_sequences():
    """A constant is no drift, and of a few boards none is claimed."""
    assert drift_of(np.full(20, 3.0), 0.05, 0.95) is None
    assert drift_of(np.array([0.0, 0.0, 9.0, 9.0, 9.0]), 0.05, 0.95) is None


# ---- Which tool -----------------------------------------------------------------------------------------


def signatures():
    """Two invented tools with biases of their own."""
    rng = np.random.default_rng(14)
    return [
        Signature(name, tuple(rng.normal(0.0, 0.05, FRETS).tolist()), WITHIN, BETWEEN, 50) for name in ("old", "new")
    ]


def test_a_board_is_traced_to_its_tool():
    """A board off one of two tools is given to it; one off neither to none."""
    rng = np.random.default_rng(15)
    old, new = signatures()
    for tool in (old, new):
        found = origin_of((boards(rng, 1, np.array(tool.bias))[0] - PLACES).tolist(), [old, new])
        assert (found.verdict, found.tool, found.matches[0].id) == ("established", tool.id, tool.id)
    stranger = origin_of(rng.normal(0.0, 0.2, FRETS).tolist(), [old, new])
    assert (stranger.verdict, stranger.tool) == ("none", None)


def test_tools_that_are_alike_are_not_told_apart():
    """Two signatures of one tool leave it open."""
    old, _ = signatures()
    twin = Signature("twin", old.bias, old.within, old.between, old.boards)
    found = origin_of(list(old.bias), [old, twin])
    assert (found.verdict, found.tool) == ("undecided", None)
    assert found.matches[0].probability == pytest.approx(0.5)


@pytest.mark.source("scipy.stats.multivariate_normal, a general-purpose library")
def test_the_likelihood_of_a_tool_is_that_of_a_normal_distribution():
    """Probabilities and chi-square agree with the covariance written out in full."""
    tools = signatures()
    board = (boards(np.random.default_rng(16), 1, np.array(tools[0].bias) * 0.5)[0] - PLACES).tolist()
    covariance = 1.02 * (WITHIN**2 * np.eye(FRETS) + BETWEEN**2 * np.ones((FRETS, FRETS)))
    density = [stats.multivariate_normal(tool.bias, covariance).pdf(board) for tool in tools]
    found = {match.id: match for match in origin_of(board, tools).matches}
    assert found["old"].probability == pytest.approx(density[0] / sum(density), rel=1e-9)
    off = np.array(board) - np.array(tools[0].bias)
    assert found["old"].chi_square == pytest.approx(off @ np.linalg.solve(covariance, off), rel=1e-9)
    assert found["old"].p_value == pytest.approx(stats.chi2.sf(found["old"].chi_square, FRETS), rel=1e-9)


def test_a_study_traces_an_unknown_board():
    """A study's own signature is among the tools an unknown board is held against."""
    rng = np.random.default_rng(17)
    _, other = signatures()
    found = study(TOOL, boards(rng, 30), name="here", unknown=boards(rng, 1)[0].tolist(), others=[other])
    assert found.origin.tool == "here"
    assert found.signature.boards == 30


def test_readings_that_agree_with_a_likelier_tool_too_badly_are_of_none():
    """A board that a wide tool could have made and its likelier tool could not is not forced on either."""
    narrow = Signature("narrow", (0.0, 0.0), 0.01, 0.0, 10)
    wide = Signature("wide", (0.0, 0.0), 100.0, 0.0, 10)
    found = origin_of([0.03, -0.03], [narrow, wide])
    assert found.verdict == "none"


# ---- Size and refusals ----------------------------------------------------------------------------------


@pytest.mark.slow
def test_a_million_boards():
    """A million boards of 22 slots are studied in seconds, with memory a small multiple of the data's.

    Slow: the data alone are 176 MB.
    """
    rng = np.random.default_rng(18)
    readings = np.tile(PLACES, (1_000_000, 1))
    for first in range(0, len(readings), 50_000):
        readings[first : first + 50_000] += rng.normal(0.0, WITHIN, (50_000, FRETS))
    readings[500_000:] += 0.01
    began = time.process_time()
    study(TOOL, readings)
    assert time.process_time() - began < 10.0
    tracemalloc.start()
    found = study(TOOL, readings)
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert peak < readings.nbytes
    assert abs(found.drifts[0].drift.step.at - 500_000) < 1000


@pytest.mark.parametrize("count", [0, 1])
def test_one_board_is_no_study(count):
    """A single board cannot tell the tool's error from its own."""
    with pytest.raises(TooFewBoardsError) as refused:
        study(TOOL, boards(np.random.default_rng(0), count))
    assert refused.value.facts == {"given": count, "needed": 2}


def test_unequal_slots_are_refused():
    """A board with more or fewer readings than slots is named, and so are frets, unknown boards and signatures."""
    rows = boards(np.random.default_rng(0), 3).tolist()
    with pytest.raises(UnequalSlotsError) as refused:
        study(TOOL, [*rows, rows[0][:-1]])
    assert refused.value.field == ("boards", 3)
    with pytest.raises(UnequalSlotsError):
        study(TOOL, np.zeros((3, 5)))
    with pytest.raises(UnequalSlotsError):
        study(Tool(TOOL.commanded, SCALE, (1, 2)), rows)
    with pytest.raises(UnequalSlotsError):
        study(TOOL, rows, unknown=[1.0])
    with pytest.raises(UnequalSlotsError) as refused:
        origin_of([0.0], signatures())
    assert refused.value.field == ("signatures", 0, "bias")


@pytest.mark.parametrize("tolerance", [0.0, -0.1])
def test_a_tolerance_of_nothing_is_refused(tolerance):
    """Zero and negative tolerances are no tolerances."""
    with pytest.raises(ToleranceError):
        study(TOOL, boards(np.random.default_rng(0), 3), tolerance=tolerance)


@pytest.mark.parametrize(
    "tool", [Tool((40.0, 36.0), 650.0, (1, 2)), Tool((36.0, 700.0), 650.0, (1, 2)), Tool((36.0, 70.0), 650.0, (2, 1))]
)
def test_commanded_positions_that_cannot_be(tool):
    """Positions ascend and lie on the board."""
    with pytest.raises(ImpossibleReadingError):
        study(tool, [[36.0, 70.0], [36.0, 70.0]])


def test_a_few_boards_and_an_overstated_instrument_are_noted():
    """Drift is not looked for in a few boards, and boards that repeat better than the instrument say so."""
    found = study(TOOL, boards(np.random.default_rng(0), 3), instrument_uncertainty=0.1)
    assert {"too-few-for-drift", "instrument-overstated"} <= {note.slug for note in found.notes}
    assert found.tool_within == 0.0


def test_boards_that_agree_better_than_the_instrument_reads_prove_nothing():
    """Three equal readings by a rule good to half a millimetre call no slot biased and tell no tool."""
    tool = Tool(tuple(float(place) for place in PLACES[:3]), 650.0, (1, 2, 3))
    readings = [[place + 0.1 for place in tool.commanded]] * 3
    found = study(tool, readings, instrument_uncertainty=0.5)
    assert found.resets == []
    assert all(slot.bias.standard_uncertainty == pytest.approx(0.5 / math.sqrt(3.0)) for slot in found.slots)
    assert found.signature.within == 0.5
    assert found.scale_error is not None
    assert found.scale_error.standard_uncertainty > 0.0
    # The same by a calliper that is good to 0.001 mm is a bias.
    assert len(study(tool, readings, instrument_uncertainty=0.001, tolerance=0.1).resets) == 3
