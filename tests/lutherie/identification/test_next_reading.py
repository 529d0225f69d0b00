"""What to measure next on a board that is undecided."""

import numpy as np
import pytest

from scalewright.lutherie.identification import Beliefs, Candidate, identify, identify_all
from scalewright.lutherie.measure import Instrument, Reading, survey
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL
from tests.lutherie.identification.boards import board, positions

FEW = [1, 3, 5, 7]


def undecided(rule=EIGHTEENTH, frets=FEW, deviation=0.1):
    """An undecided board."""
    found = identify(board(frets, positions(rule, 640.0, frets), deviation))
    assert found.verdict == "undecided"
    return found


def test_high_frets_are_worth_more_than_low_ones():
    """The rules part company high on the neck, so that is where to measure."""
    assert undecided().next_reading.fret >= 15


def test_advice_is_expected_to_help():
    """The probability expected after the reading is higher than now and the chance to decide is a probability."""
    found = undecided()
    assert found.probability < found.next_reading.expected_probability <= 1.0
    assert 0.0 <= found.next_reading.chance_to_decide <= 1.0


def test_no_advice_where_nothing_is_open():
    """An established rule needs no further reading."""
    frets = list(range(1, 23))
    assert identify(board(frets, positions(EQUAL, 640.0, frets), 0.05)).next_reading is None


@pytest.mark.slow
@pytest.mark.source("simulation: boards drawn from the posterior of two rules by numpy's normal equations")
def test_the_expected_probability_is_what_follows_on_average():
    """Taking the advised reading 600 times over gives the promised probability, and the promised chance to decide."""
    rng = np.random.default_rng(41)
    beliefs = Beliefs(candidates=(Candidate(EQUAL, 0.5), Candidate(EIGHTEENTH, 0.5)), misreading=0.0)
    first = positions(EIGHTEENTH, 640.0, FEW) + rng.normal(0.0, 0.1, 4)
    found = identify(board(FEW, first, 0.1), beliefs)
    fret = found.next_reading.fret
    surveys = []
    for _ in range(600):
        rule = found.candidates[rng.choice(2, p=[c.probability for c in found.candidates])].rule
        design = np.array([positions(rule, 1.0, FEW), np.ones(4)]).T / 0.1
        covariance = np.linalg.inv(design.T @ design + np.diag([0.0, 1.0 / 0.3**2]))
        scale, offset = rng.multivariate_normal(covariance @ design.T @ (first / 0.1), covariance)
        reading = offset + positions(rule, scale, [fret])[0] + rng.normal(0.0, 0.1)
        surveys.append(board([*FEW, fret], [*first, reading], 0.1))
    after = np.array([f.probability for f in identify_all(surveys, beliefs)])
    # Three standard errors of a mean over 600 boards.
    assert np.mean(after) == pytest.approx(found.next_reading.expected_probability, abs=3.0 * np.std(after) / 600**0.5)
    assert np.mean(after >= 0.95) == pytest.approx(found.next_reading.chance_to_decide, abs=3.0 * (0.25 / 600) ** 0.5)


def test_a_repeat_tells_nothing_of_the_misplacement_of_its_fret():
    """With a perfect instrument and a tool that scatters, a new fret is advised, never one that was read."""
    frets = [1, 2, 3, 4, 5, 6, 8]
    readings = [Reading(0, f, x) for f, x in zip(frets, positions(EIGHTEENTH, 640.0, frets), strict=True)]
    found = identify(survey(readings, Instrument(0.001), tooling_scatter=0.1))
    assert found.verdict == "undecided"
    assert found.next_reading.fret not in frets


def test_a_reading_that_will_hardly_do_is_said_to():
    """Where no single reading is likely to decide, the note asks for more frets or a finer instrument."""
    hopeless = undecided(frets=[1, 2, 3], deviation=0.5)
    assert hopeless.next_reading.chance_to_decide < 0.2
    assert "finer-instrument" in [note.slug for note in hopeless.notes]
    assert "finer-instrument" not in [note.slug for note in undecided(deviation=0.03).notes]
