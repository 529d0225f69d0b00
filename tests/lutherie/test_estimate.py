"""Estimates and the distributions behind them."""

import numpy as np
import pytest
from scipy import optimize, stats

from scalewright.lutherie.estimate import (
    chi_square_quantile,
    chi_square_survival,
    coverage_factor,
    mixture_interval,
    normal_estimate,
    normal_survival,
)

ROUNDING = 1e-12
"""Relative; the last digits of two ways to the same function."""


@pytest.mark.source("scipy.stats.chi2, a general-purpose library")
@pytest.mark.parametrize("freedom", [1, 2, 3, 8, 21, 22, 59, 200])
def test_chi_square_is_exceeded_as_often_as_a_general_library_says(freedom):
    """Tail probabilities agree from the middle to far out."""
    at = np.array([0.0, 0.01, 0.5, 1.0, 5.0, 20.0, 60.0, 300.0])
    assert chi_square_survival(at, freedom) == pytest.approx(stats.chi2.sf(at, freedom), rel=ROUNDING)


@pytest.mark.source("scipy.stats.chi2, a general-purpose library")
@pytest.mark.parametrize("freedom", [1, 7, 22])
@pytest.mark.parametrize("survival", [0.5, 0.05, 0.001, 1e-9])
def test_the_quantile_of_chi_square(freedom, survival):
    """The value exceeded with a given probability is the library's."""
    assert chi_square_quantile(survival, freedom) == pytest.approx(stats.chi2.isf(survival, freedom), rel=ROUNDING)


@pytest.mark.source(
    "JCGM 100:2008, table G.1: k = 1.960 for a level of confidence of 95 %, 1.645 for 90 %, 2.576 for 99 %"
)
@pytest.mark.parametrize(("coverage", "k"), [(0.90, 1.645), (0.95, 1.960), (0.99, 2.576)])
def test_coverage_factors_are_those_of_the_guide(coverage, k):
    """The factors agree with the table to its last digit."""
    assert coverage_factor(coverage) == pytest.approx(k, abs=0.0005)


@pytest.mark.source("scipy.stats.norm, a general-purpose library")
def test_the_tail_of_the_normal_distribution():
    """Both tails agree, far out too."""
    at = np.array([-9.0, -1.0, 0.0, 1.0, 4.0, 12.0])
    assert normal_survival(at) == pytest.approx(stats.norm.sf(at), rel=ROUNDING)


@pytest.mark.source("scipy.optimize.brentq on the mixture's distribution function, a general-purpose library")
@pytest.mark.parametrize("coverage", [0.5, 0.95, 0.999])
def test_intervals_of_mixtures(coverage):
    """A mixture's interval ends where its distribution function reaches the tails, of many at once as of one."""
    rng = np.random.default_rng(7)
    weights = rng.dirichlet(np.ones(4), size=20).T
    means, deviations = rng.normal(650.0, 3.0, (4, 20)), rng.uniform(0.05, 2.0, (4, 20))
    found = mixture_interval(weights, means, deviations, coverage)
    for end, level in enumerate((0.5 - 0.5 * coverage, 0.5 + 0.5 * coverage)):
        for at in range(20):
            columns = (weights[:, at], means[:, at], deviations[:, at])

            def below(x, columns=columns, level=level):
                return columns[0] @ stats.norm.cdf(x, columns[1], columns[2]) - level

            assert found[end, at] == pytest.approx(optimize.brentq(below, 600.0, 700.0, xtol=1e-12), abs=1e-9)


def test_the_interval_of_a_normal_quantity_is_centred():
    """Value and standard uncertainty come back, with the interval about the value."""
    estimate = normal_estimate(650.0, 0.1, 0.95)
    assert (estimate.value, estimate.standard_uncertainty) == (650.0, 0.1)
    assert estimate.value - estimate.lower == pytest.approx(0.1 * 1.959964, abs=1e-6)
    assert estimate.upper - estimate.value == pytest.approx(estimate.value - estimate.lower, rel=ROUNDING)
