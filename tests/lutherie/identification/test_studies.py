"""Simulation studies: what is promised of identifications, held against many boards drawn from the stated priors.

They take about a minute and run by ``python3 -m tests --studies``. The seeds are fixed.
"""

import math

import numpy as np
import pytest

from scalewright.lutherie.identification.candidates import Beliefs
from scalewright.lutherie.identification.columns import Boards, tabulate
from scalewright.lutherie.identification.identify import judge_alike
from scalewright.lutherie.identification.inquiry import inquire
from scalewright.lutherie.identification.judge import ESTABLISHED, UNDECIDED, judge
from scalewright.lutherie.measure import Instrument, Reading, survey
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL
from tests.lutherie.identification.boards import draw, pattern, positions

pytestmark = pytest.mark.study

BELIEFS = Beliefs()
BOARDS = 100_000
AT_ONCE = 2048
INSTRUMENTS = {
    "0.02 mm caliper": 0.02,
    "0.1 mm": 0.1,
    "0.2 mm": 0.2,
    "half-millimetre rule": 0.5 / math.sqrt(12.0),
    "1/64 in rule": 25.4 / 64.0 / math.sqrt(12.0),
}
FRETS = {
    4: [1, 5, 12, 17],
    8: [1, 3, 5, 7, 9, 12, 15, 19],
    12: [1, 2, 3, 5, 7, 9, 12, 14, 15, 17, 19, 22],
    24: list(range(1, 25)),
}


def standard_error(share, count):
    """Of a share among so many."""
    return math.sqrt(max(share * (1.0 - share), 1.0 / count) / count)


def ideal_choice(readings, frets, deviation):
    """Choose between the two main rules by the likelihood ratio, from the dense density; true for the rule of 18.

    Scale uniform, nut offset normal: the covariance of the readings is the instrument's and the nut's, and the scale
    is integrated out in closed form. Nothing of the project's code takes part but the positions.
    """
    precision = np.linalg.inv(np.eye(len(frets)) * deviation**2 + 0.3**2)
    logs = []
    for rule in (EQUAL, EIGHTEENTH):
        shape = positions(rule, 1.0, frets)
        information = shape @ precision @ shape
        along = readings @ precision @ shape
        logs.append(0.5 * along**2 / information - 0.5 * math.log(information))
    return logs[1] > logs[0]


def study(rng, deviation, frets):
    """Judge boards of one cell; columns of a table by name."""
    inquiry = inquire(pattern(frets, deviation), BELIEFS, scatter_known=True)
    table = []
    for _ in range(0, BOARDS, AT_ONCE):
        readings, rule, scale, true_scale = draw(rng, AT_ONCE, frets, deviation)
        boards = Boards(inquiry, np.ascontiguousarray(readings.T)[None], np.zeros(1), np.zeros(1))
        findings = judge(inquiry, boards.readings)
        columns = tabulate(findings, boards)
        layout, true = columns.believed[:, 0, 0], columns.believed[:, 1, 0]
        table.append(
            {
                "rule": rule,
                "leader": findings.leader[0],
                "stated": np.max(findings.probability[:, 0], axis=0),
                "established": findings.verdict[0] == ESTABLISHED,
                "layout held": (layout[2] <= scale) & (scale <= layout[3]),
                "true held": (true[2] <= true_scale) & (true_scale <= true[3]),
                "choice": findings.probability[1, 0] > findings.probability[0, 0],
                "ideal": ideal_choice(readings, frets, deviation),
                "suspected": findings.suspect[0] >= 0,
            }
        )
    return {name: np.concatenate([part[name] for part in table]) for name in table[0]}


@pytest.mark.source("the likelihood-ratio (Bayes) limit, from the dense normal density with numpy")
@pytest.mark.parametrize("readings", FRETS)
@pytest.mark.parametrize("instrument", INSTRUMENTS)
def test_a_cell_of_the_grid(instrument, readings):
    """At the limit of what can be told, with honest probabilities, intervals that hold, and few false alarms."""
    rng = np.random.default_rng([readings, round(1000 * INSTRUMENTS[instrument])])
    found = study(rng, INSTRUMENTS[instrument], FRETS[readings])
    count = len(found["rule"])

    main = found["rule"] < 2
    errors = np.mean(found["choice"][main] != found["rule"][main])
    limit = np.mean(found["ideal"][main] != found["rule"][main])
    assert errors <= limit + max(0.05 * limit, 2.0 * standard_error(limit, count))

    right = found["leader"] == found["rule"]
    assert np.mean(found["stated"]) == pytest.approx(np.mean(right), abs=0.02)
    for low, high in ((0.4, 0.6), (0.6, 0.8), (0.8, 0.9), (0.9, 0.95), (0.95, 1.01)):
        inside = (found["stated"] >= low) & (found["stated"] < high)
        if np.sum(inside) >= 2000:
            assert np.mean(found["stated"][inside]) == pytest.approx(np.mean(right[inside]), abs=0.02), (low, high)

    established = found["established"]
    wrong = np.mean(~right[established]) if established.any() else 0.0
    assert wrong <= 1.0 - BELIEFS.threshold

    assert 0.94 <= np.mean(found["true held"]) <= 0.96
    if np.sum(established) >= 2000:
        assert 0.94 <= np.mean(found["layout held"][established]) <= 0.96
    assert np.mean(found["suspected"]) <= 0.01


def judged(readings, frets, deviation):
    """Verdict, leading rule and suspect of many boards, after readings were set aside."""
    surveyed = survey([Reading(0, fret, 1.0) for fret in frets], Instrument(deviation), tooling_scatter=0.0)
    verdicts, leaders, suspects = [], [], []
    for part in judge_alike(surveyed.procedure, readings, BELIEFS):
        verdict, leader = part.columns.verdict[0].copy(), part.columns.leader[0].copy()
        suspect = np.full(verdict.shape, -1)
        for (_, board), (row, aside, _) in part.mended.items():
            verdict[board], leader[board], suspect[board] = row.verdict, row.leader, aside[0]
        verdicts.append(verdict)
        leaders.append(leader)
        suspects.append(suspect)
    return np.concatenate(verdicts), np.concatenate(leaders), np.concatenate(suspects)


@pytest.mark.parametrize("deviation", [0.02, 0.05, 0.1])
@pytest.mark.parametrize("frets", [[1, 2, 3, 5, 7, 9, 12, 15, 17, 19], FRETS[12], list(range(1, 23))], ids=len)
@pytest.mark.parametrize("slip", [1.0, 25.4 / 16.0, 10.0])
def test_misreadings_are_named_and_flip_nothing(deviation, frets, slip):
    """A misreading of 1 mm, 1/16 in or a digit is named in 99 % of boards and flips at most 1 % of the verdicts."""
    rng = np.random.default_rng([len(frets), round(1000 * deviation), round(100 * slip)])
    readings, *_ = draw(rng, 20_000, frets, deviation)
    clean = judged(readings, frets, deviation)
    where = rng.integers(0, len(frets), len(readings))
    readings[np.arange(len(readings)), where] += slip * rng.choice([-1.0, 1.0], len(readings))
    verdict, leader, suspect = judged(readings, frets, deviation)
    assert np.mean(suspect == where) >= 0.99
    settled = (clean[0] == ESTABLISHED) & (verdict != UNDECIDED)
    flipped = settled & ((verdict != ESTABLISHED) | (leader != clean[1]))
    assert np.mean(flipped) <= 0.01


@pytest.mark.source("the generalised likelihood-ratio test for one outlier with the rule known, with numpy")
@pytest.mark.parametrize("slip", [0.3, 0.4, 0.5])
def test_small_misreadings_are_found_as_often_as_can_be(slip):
    """Where a misreading is a few standard deviations, the power is that of the likelihood-ratio test.

    The test is told the rule, and has the same share of false alarms. A misread end fret has leverage and hides
    better; both see it less often.
    """
    frets, deviation = list(range(1, 23)), 0.1
    rng = np.random.default_rng(round(100 * slip))
    clean, rule, *_ = draw(rng, 40_000, frets, deviation)
    main = rule < 2
    clean, rule = clean[main], rule[main]
    misread = clean.copy()
    where = rng.integers(0, len(frets), len(clean))
    misread[np.arange(len(clean)), where] += slip

    def largest(readings):
        """The reading that stands out most under the true rule, and by how much."""
        strain = np.empty(readings.shape)
        for index, known in enumerate((EQUAL, EIGHTEENTH)):
            shape = positions(known, 1.0, frets)
            precision = np.linalg.inv(np.eye(len(frets)) * deviation**2 + 0.3**2)
            pull = precision - np.outer(precision @ shape, precision @ shape) / (shape @ precision @ shape)
            own = rule == index
            strain[own] = np.abs(readings[own] @ pull) / np.sqrt(np.diag(pull))
        return np.argmax(strain, axis=1), np.max(strain, axis=1)

    alarm = np.mean(judged(clean, frets, deviation)[2] >= 0)
    threshold = np.quantile(largest(clean)[1], 1.0 - alarm)
    place, size = largest(misread)
    power = np.mean((place == where) & (size > threshold))
    ours = np.mean(judged(misread, frets, deviation)[2] == where)
    assert ours >= power - 0.02


def test_the_advised_reading_decides_more_boards_than_any_fixed_one():
    """Of 10,000 undecided boards, measuring the fret that is advised decides more than any one fret for all of them."""
    rng = np.random.default_rng(2026)
    deviation = 0.1
    board_frets = [[1, 3, 5, 7], [12], [5, 12], [2, 4, 7, 9, 12], [1, 2, 3, 12, 13], [15, 17, 19]]
    decided = dict.fromkeys(range(1, 20), 0)
    by_advice = total = 0
    for frets in board_frets:
        readings, rule, scale, _ = draw(rng, 6000, frets, deviation)
        surveyed = survey([Reading(0, fret, 1.0) for fret in frets], Instrument(deviation), tooling_scatter=0.0)
        offset_draw = rng.normal(0.0, deviation, (6000, 20))
        # The same board measured once more: its own scale, nut and rule, with new errors of the instrument.
        truth = _noiseless(rng, rule, scale)
        readings = truth[:, frets] + rng.normal(0.0, deviation, (6000, len(frets)))
        advice = np.zeros(6000, dtype=int)
        first = 0
        for part in judge_alike(surveyed.procedure, readings, BELIEFS):
            for (_, board), advised in part.advice.items():
                if (0, board) not in part.mended:
                    advice[first + board] = advised.fret
            first += part.columns.verdict.shape[1]
        open_boards = np.nonzero(advice)[0]
        total += len(open_boards)
        for fret in range(1, 20):
            again = np.column_stack([readings[open_boards], truth[open_boards, fret] + offset_draw[open_boards, fret]])
            verdict = judged(again, [*frets, fret], deviation)[0]
            decided[fret] += int(np.sum(verdict == ESTABLISHED))
            by_advice += int(np.sum((verdict == ESTABLISHED) & (advice[open_boards] == fret)))
    assert total >= 10_000
    assert by_advice > max(decided.values())


def _noiseless(rng, rule, scale):
    """True distances of all frets up to 19 on boards of the default priors. shape (boards, 20)"""
    divisor = np.where(rule == 0, EQUAL.divisor, np.where(rule == 1, 18.0, rng.uniform(16.5, 19.5, len(rule))))
    step = -np.log1p(-1.0 / divisor)[:, None]
    distances = -scale[:, None] * np.expm1(-step * np.arange(20)) + rng.normal(0.0, 0.3, len(rule))[:, None]
    distances[:, 0] = 0.0
    return distances
