"""Rulings: the examples of the standards, and that stated risks come true."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from scalewright.lutherie.errors import ToleranceError
from scalewright.lutherie.ruling import (
    DECISION_RULES,
    Interval,
    Process,
    acceptance_interval,
    conformance_probability,
    global_risks,
    rule_on,
    with_process,
)

PRINTED = 1e-9
"""The reference values have ten digits."""
STANDARD_ERRORS = 2.0

RESISTOR = Interval(1499.8, 1500.2)
MAKING = Process(1500.0, 0.12)
MEASURING = 0.04


@pytest.mark.source("JCGM 106:2012, Zener diode: from memory, recomputed (metrology.json)")
def test_the_zener_diode():
    """A breakdown voltage of -5.47 V with 0.05 V conforms to at most -5.40 V with a probability of 0.9192."""
    found = conformance_probability(-5.47, 0.05, Interval(-math.inf, -5.4))
    assert found == pytest.approx(0.919243340766, abs=PRINTED)


@pytest.mark.source("JCGM 106:2012, resistors: from memory, recomputed (metrology.json)")
@pytest.mark.parametrize(
    ("acceptance", "consumer", "producer"),
    [
        (Interval(1499.82, 1500.18), 0.00987829152, 0.06902651046),
        (RESISTOR, 0.01894220672, 0.03720780018),
    ],
)
def test_the_resistors(acceptance, consumer, producer):
    """Global risks of guarded and of simple acceptance are those of the standard's example."""
    risks = global_risks(MAKING, MEASURING, RESISTOR, acceptance)
    assert risks.consumer == pytest.approx(consumer, abs=PRINTED)
    assert risks.producer == pytest.approx(producer, abs=PRINTED)


@pytest.mark.source("ISO 14253-1: from memory (metrology.json): 20 +/- 0.05 with U = 0.01")
@pytest.mark.parametrize(("factor", "lower", "upper"), [(2.0, 19.96, 20.04), (1.645, 19.958225, 20.041775)])
def test_guard_bands(factor, lower, upper):
    """With U = 0.01 the acceptance zone of 20 +/- 0.05 is 19.96 to 20.04, and a little wider for 95 % on one side."""
    ruling = rule_on(20.0, 0.005, Interval(19.95, 20.05), guard_factor=factor)
    assert ruling.acceptance.lower == pytest.approx(lower, abs=1e-9)
    assert ruling.acceptance.upper == pytest.approx(upper, abs=1e-9)


@pytest.mark.source("JCGM 106:2012, section 8: the three decision rules")
@pytest.mark.parametrize(
    ("value", "simple", "accepting", "rejecting", "conformance"),
    [
        (20.00, "accept", "accept", "accept", "conforming"),
        (20.045, "accept", "reject", "accept", "undecided"),
        (20.055, "reject", "reject", "accept", "undecided"),
        (20.07, "reject", "reject", "reject", "nonconforming"),
    ],
)
def test_the_three_rules_differ_between_the_guard_bands(value, simple, accepting, rejecting, conformance):
    """Far inside and far outside all agree; at the limit the guard band is given to one side or the other."""
    tolerance = Interval(19.95, 20.05)
    for rule, decision in zip(DECISION_RULES, (simple, accepting, rejecting), strict=True):
        ruling = rule_on(value, 0.005, tolerance, rule)
        assert (ruling.decision, ruling.conformance) == (decision, conformance)
        assert (ruling.consumer_risk is None) == (decision == "reject")
        assert (ruling.producer_risk is None) == (decision == "accept")


def test_guard_bands_that_meet_accept_nothing():
    """A tolerance smaller than twice the guard band leaves no value that proves conformance."""
    assert acceptance_interval(Interval(-1.0, 1.0), 1.5, "guarded_acceptance").empty
    assert rule_on(0.0, 0.75, Interval(-1.0, 1.0)).decision == "reject"
    assert rule_on(0.0, 0.75, Interval(-1.0, 1.0)).conformance == "undecided"


@given(value=st.floats(-3.0, 3.0), spread=st.floats(0.01, 2.0))
@pytest.mark.source("scipy.stats.norm, a general-purpose library")
def test_conformance_is_the_normal_distribution_between_the_limits(value, spread):
    """The probability is the difference of two normal distribution functions."""
    expected = stats.norm.cdf(1.0, value, spread) - stats.norm.cdf(-0.5, value, spread)
    assert conformance_probability(value, spread, Interval(-0.5, 1.0)) == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize("value", [-60.0, -8.0, 9.0, 1e6])
def test_far_outside_conformance_is_no_less_than_impossible(value):
    """Rounding leaves no probability below zero."""
    assert 0.0 <= conformance_probability(value, 0.5, Interval(-0.5, 1.0)) < 1e-30


def test_an_exact_value_conforms_or_does_not():
    """Without uncertainty the probability is one or nought, the limits included."""
    limits = Interval(0.0, 1.0)
    assert [conformance_probability(value, 0.0, limits) for value in (-0.1, 0.0, 0.5, 1.0, 1.1)] == [0, 1, 1, 1, 0]


def test_what_is_known_of_the_process_pulls_the_value_towards_its_mean():
    """Equal uncertainties meet in the middle, with the uncertainty over the root of two."""
    mean, deviation = with_process(2.0, 1.0, Process(0.0, 1.0))
    assert [mean, deviation] == pytest.approx([1.0, math.sqrt(0.5)])


@pytest.mark.parametrize("rule", ["simple_acceptance", "guarded_acceptance", "guarded_rejection"])
def test_stated_risks_come_true(rule):
    """In a simulated production, wrong decisions are as frequent as the risks say, over all and one by one."""
    rng = np.random.default_rng(106)
    count = 200_000
    made = rng.normal(MAKING.mean, MAKING.standard_deviation, count)
    read = made + rng.normal(0.0, MEASURING, count)
    acceptance = acceptance_interval(RESISTOR, 2.0 * MEASURING, rule)
    accepted = (read >= acceptance.lower) & (read <= acceptance.upper)
    good = (made >= RESISTOR.lower) & (made <= RESISTOR.upper)
    risks = global_risks(MAKING, MEASURING, RESISTOR, acceptance)
    for wrong, stated in ((accepted & ~good, risks.consumer), (~accepted & good, risks.producer)):
        error = math.sqrt(stated * (1.0 - stated) / count)
        assert abs(np.mean(wrong) - stated) < STANDARD_ERRORS * error
    # Specific risks, averaged over a few of those that were accepted, against what they really are.
    chosen = np.nonzero(accepted)[0][:4000]
    rulings = [rule_on(float(read[k]), MEASURING, RESISTOR, rule, process=MAKING) for k in chosen[:3]]
    risk = np.array(
        [1.0 - conformance_probability(*with_process(float(read[k]), MEASURING, MAKING), RESISTOR) for k in chosen]
    )
    assert [ruling.consumer_risk for ruling in rulings] == pytest.approx(risk[:3].tolist())
    error = math.sqrt(float(np.sum(risk * (1.0 - risk)))) / len(chosen)
    assert abs(np.mean(~good[chosen]) - np.mean(risk)) < STANDARD_ERRORS * error


@pytest.mark.parametrize(("lower", "upper"), [(0.0, 0.0), (1.0, -1.0)])
def test_a_tolerance_without_width_is_refused(lower, upper):
    """Zero and negative tolerances are no tolerances."""
    with pytest.raises(ToleranceError) as refused:
        rule_on(0.0, 0.1, Interval(lower, upper))
    assert refused.value.field == ("tolerance",)
