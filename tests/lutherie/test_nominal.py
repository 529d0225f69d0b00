"""Nominal scales: which meanings of a label readings leave standing."""

import numpy as np
import pytest

from scalewright.lutherie import spacing
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.label import MADE_TO, Label
from scalewright.lutherie.measure import Instrument, NutOffset, Reading, survey
from scalewright.lutherie.nominal import NominalQuestion, nominal, nominal_all
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL

INCH = 25.4
CALIPER = 0.05
STANDARD_ERRORS = 2.0
HUNDREDTH = 0.005
"""Half of the last digit of a number of inches with two decimals. [in]"""
OLD = Label(24.75 * INCH, "in", 0.01 * INCH)


def read(frets, distances, uncertainty=CALIPER, **known):
    """A survey of readings from the nut. [mm]"""
    readings = [Reading(0, fret, distance) for fret, distance in zip(frets, distances, strict=True)]
    return survey(readings, Instrument(uncertainty), **known)


@pytest.mark.source("common practice, no source: 24.75 in, 12th fret at 12.285 in or at 12.375 in")
@pytest.mark.parametrize("uncertainty", [0.02, 0.05, 0.1, 0.25])
def test_the_twelfth_fret_tells_the_old_rule_from_the_new(uncertainty):
    """12.285 in is the rule of 18 with a true scale of 24.57 in, 12.375 in is equal spacing."""
    old = nominal(NominalQuestion(OLD, read([12], [12.285 * INCH], uncertainty)))
    new = nominal(NominalQuestion(OLD, read([12], [12.375 * INCH], uncertainty)))
    assert (old.verdict, old.rule, old.meaning.name) == ("established", EIGHTEENTH, "exact")
    assert old.true_scale.value / INCH == pytest.approx(24.57, abs=HUNDREDTH)
    assert "24.57" in old.statement
    assert (new.verdict, new.rule, new.meaning.name) == ("established", EQUAL, "exact")
    assert new.true_scale.value / INCH == pytest.approx(24.75, abs=HUNDREDTH)
    assert [one.rule for one in old.meanings if one.survives] == [EIGHTEENTH] * 2


def test_a_label_alone_decides_nothing():
    """Without readings all meanings stand with their priors, and the two distances to look for are named."""
    found = nominal(NominalQuestion(OLD))
    assert (found.verdict, found.rule, found.true_scale, found.measured) == ("undecided", None, None, None)
    assert sum(one.probability for one in found.meanings) == pytest.approx(1.0)
    assert all(one.survives for one in found.meanings)
    assert found.next_reading.fret == 12
    assert "12.375" in found.next_reading.reason
    assert "12.285" in found.next_reading.reason
    assert "measure before" in found.statement


def test_a_board_that_was_rounded_up():
    """25.34 in under the label 25.4 in is not the label's number: rounding up and a string length are what stands."""
    frets = [1, 5, 9, 12, 17, 20]
    distances = [25.34 * INCH * spacing.fractions(EQUAL, 20)[fret - 1] for fret in frets]
    found = nominal(NominalQuestion(Label(25.4 * INCH, "in", 0.1 * INCH), read(frets, distances)))
    assert (found.verdict, found.rule) == ("established", EQUAL)
    assert found.meanings[0].name == "rounded_up"
    assert "exact" not in [one.name for one in found.meanings if one.survives]
    assert found.true_scale.lower < 25.34 * INCH < found.true_scale.upper


def test_a_label_that_fits_nothing():
    """A 12th fret a whole inch off leaves no meaning; the readings' own true scale is given."""
    found = nominal(NominalQuestion(OLD, read([12], [11.8 * INCH])))
    assert (found.verdict, found.rule, found.meaning) == ("none", None, None)
    assert found.meanings[0].name == "other"
    assert found.true_scale == found.measured.true_scale
    assert "does not say" in found.statement


def test_readings_that_no_rule_explains():
    """Frets set by ear establish no rule, whatever the label says."""
    frets = [1, 2, 3, 4, 5, 12]
    shares = np.array(spacing.fractions(EQUAL, 12))[np.array(frets) - 1]
    distances = 24.75 * INCH * shares + np.array([2.0, -2.0, 2.0, -2.0, 2.0, 0.0])
    found = nominal(NominalQuestion(OLD, read(frets, distances.tolist())))
    assert (found.verdict, found.measured.verdict) == ("none", "none")
    without = nominal(NominalQuestion(OLD, read(frets[:-1], distances.tolist()[:-1])))
    assert (without.verdict, without.true_scale) == ("none", None)


def test_a_half_read_board_is_told_what_to_read():
    """Low frets read with a tape cannot decide, and a fret is named that would."""
    frets = [1, 2, 3]
    distances = [24.66 * INCH * spacing.fractions(EQUAL, 3)[fret - 1] for fret in frets]
    found = nominal(NominalQuestion(OLD, read(frets, distances, 0.5)))
    assert found.verdict == "undecided"
    assert found.next_reading.fret >= 5
    assert found.true_scale.lower < found.true_scale.value < found.true_scale.upper


def test_many_labels_are_answered_as_each_is_alone():
    """Order and answers are those of single questions, with thresholds of their own."""
    questions = [
        NominalQuestion(OLD),
        NominalQuestion(OLD, read([12], [12.285 * INCH])),
        NominalQuestion(OLD, read([12], [12.375 * INCH]), beliefs=Beliefs(threshold=0.9999)),
    ]
    together = nominal_all(questions)
    for found, alone in zip(together, map(nominal, questions), strict=True):
        assert found.statement == alone.statement
        assert [one.probability for one in found.meanings] == pytest.approx(
            [one.probability for one in alone.meanings], rel=1e-9
        )
    assert [found.verdict for found in together] == ["undecided", "established", "undecided"]


@pytest.mark.source("simulation from the label's own priors, seed fixed")
def test_probabilities_of_meanings_are_calibrated():
    """Of boards made to the exact label under either rule, the rule named has the probability that is stated."""
    rng = np.random.default_rng(5)
    questions, truth = [], []
    frets = [5, 12]
    for _ in range(150):
        rule = EQUAL if rng.random() < 0.5 else EIGHTEENTH
        share = 1.0 if rule == EQUAL else 2.0 * spacing.fractions(EIGHTEENTH, 12)[-1]
        layout = OLD.length + rng.normal(0.0, MADE_TO) / share
        places = layout * np.array(spacing.fractions(rule, 12))[[4, 11]]
        distances = places + rng.normal(0.0, 0.3) + rng.normal(0.0, 2.0, 2)
        known = {"tooling_scatter": 0.0, "nut_offset": NutOffset()}
        questions.append(NominalQuestion(OLD, read(frets, distances.tolist(), 2.0, **known)))
        truth.append(rule)
    probability, right = [], []
    for found, rule in zip(nominal_all(questions), truth, strict=True):
        exact = [one for one in found.meanings if one.name == "exact"]
        probability.append(exact[0].probability / sum(one.probability for one in exact))
        right.append(exact[0].rule == rule)
    stated = np.array(probability)
    error = np.sqrt(np.sum(stated * (1.0 - stated))) / len(stated)
    assert 0.6 < np.mean(stated) < 0.99
    assert abs(np.mean(right) - np.mean(stated)) < STANDARD_ERRORS * error
