"""Decisions: many quantities are summed up together as each would be alone."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import optimize, stats

from scalewright.lutherie.decision import Mixture, Mixtures, summed_up

LAST_DIGITS = 1e-9
"""Of a millimetre."""

PLACES = st.floats(-5.0, 5.0)
SPREADS = st.sampled_from([0.0, 1e-9, 0.02, 0.3, 2.0])


@st.composite
def groups(draw):
    """Some quantities under one to four explanations, one of which may be all but impossible."""
    n, m = draw(st.integers(1, 4)), draw(st.integers(1, 3))
    weight = np.array(draw(st.lists(st.sampled_from([1e-20, 1e-9, 0.2, 1.0]), min_size=n, max_size=n)))
    mean = np.array([[draw(PLACES) for _ in range(m)] for _ in range(n)])
    deviation = np.array([[draw(SPREADS) for _ in range(m)] for _ in range(n)])
    return Mixtures(weight / weight.sum(), mean, deviation)


@settings(max_examples=60, deadline=None)
@given(st.lists(groups(), min_size=1, max_size=4), st.sampled_from([0.5, 0.95, 0.999]))
def test_together_is_as_alone(many, coverage):
    """Each quantity's estimate is the one that it has by itself, whatever stands beside it."""
    together = summed_up(many, coverage)

    for group, estimates in zip(many, together, strict=True):
        assert len(estimates) == group.mean.shape[1]
        for index, estimate in enumerate(estimates):
            single = Mixtures(group.weight, group.mean[:, [index]], group.deviation[:, [index]])
            ((alone,),) = summed_up([single], coverage)
            quantity = group.quantity(index)
            assert [estimate.value, estimate.lower, estimate.upper] == pytest.approx(
                [alone.value, alone.lower, alone.upper], abs=LAST_DIGITS
            )
            assert estimate.value == pytest.approx(quantity.value, abs=LAST_DIGITS)
            assert estimate.standard_uncertainty == pytest.approx(quantity.standard_uncertainty, abs=LAST_DIGITS)


@pytest.mark.source("scipy.stats.norm and scipy.optimize.brentq on the distribution function of a mixture")
def test_intervals_have_equal_tails():
    """Below the lower end lies half of what the coverage leaves, above the upper end the other half."""
    group = Mixtures(np.array([0.7, 0.3]), np.array([[0.0, 1.0], [0.5, -2.0]]), np.array([[0.1, 0.2], [0.3, 0.05]]))
    for index, estimate in enumerate(summed_up([group], 0.95)[0]):
        quantity: Mixture = group.quantity(index)

        def below(x, quantity=quantity):
            return float(quantity.weight @ stats.norm.cdf(x, quantity.mean, quantity.deviation))

        for end, level in ((estimate.lower, 0.025), (estimate.upper, 0.975)):
            expected = optimize.brentq(lambda x, level=level: below(x) - level, -10.0, 10.0, xtol=1e-12)
            assert end == pytest.approx(expected, abs=LAST_DIGITS)


def test_nothing_is_summed_up_to_nothing():
    """No quantities, no estimates; what is exactly known has an interval of no width."""
    assert summed_up([], 0.95) == []
    ((exact,),) = summed_up([Mixtures(np.array([1.0]), np.array([[3.0]]), np.array([[0.0]]))], 0.95)
    assert (exact.lower, exact.value, exact.upper, exact.standard_uncertainty) == (3.0, 3.0, 3.0, 0.0)
