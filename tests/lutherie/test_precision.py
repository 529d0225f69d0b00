"""Planned readings: what they will tell is what identification then finds."""

import numpy as np
import pytest

from scalewright.lutherie.identification import Beliefs, Candidate, identify
from scalewright.lutherie.precision import information_of, reading_information, true_scale_deviation
from scalewright.lutherie.spacing import EQUAL
from tests.lutherie.parts_of_boards import measured

AS_FOUND = 0.02
"""Relative; a plan reckons roughly."""


@pytest.mark.parametrize("frets", [(12,), (1, 12), (1, 5, 12, 17), tuple(range(1, 23))])
@pytest.mark.parametrize("uncertainty", [0.05, 0.5])
def test_the_plan_for_a_known_rule_is_what_identification_finds(frets, uncertainty):
    """With equal spacing the only candidate, the planned uncertainty is that of the fit."""
    survey = measured(650.0, frets, uncertainty, tooling_scatter=0.05)
    found = identify(survey, Beliefs(candidates=(Candidate(EQUAL, 1.0),))).true_scale.standard_uncertainty
    information = information_of(survey.procedure, 650.0, 0.0)
    # Without the doubt about the rule.
    information[1, 1] += 1e12
    assert true_scale_deviation(information) == pytest.approx(found, rel=AS_FOUND)


def test_a_reading_taken_is_a_reading_planned():
    """Adding a planned reading tells the same as a board on which it was taken."""
    before = information_of(measured(650.0, (12,), tooling_scatter=0.05).procedure, 650.0)
    after = information_of(measured(650.0, (12, 19), tooling_scatter=0.05).procedure, 650.0)
    assert np.allclose(before + reading_information([19], 0.05, 650.0)[0], after, rtol=1e-12)


def test_nothing_measured_tells_nothing():
    """Without readings the true scale may be anything."""
    assert true_scale_deviation(information_of(None, 650.0)) > 1000.0
