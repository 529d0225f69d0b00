"""Student's t and Fisher's F against a general statistics library."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from scalewright.lutherie.student import f_survival, incomplete_beta, student_quantile, student_survival

DIGITS = 1e-10
"""Relative, or absolute near nothing; what is left is the rounding of the logarithm of the gamma function."""

freedoms = st.floats(1.0, 1e5)


@pytest.mark.source("scipy.stats.t and scipy.stats.f, a general-purpose library")
@given(t=st.floats(-30.0, 30.0), freedom=freedoms)
def test_survival_of_t(t, freedom):
    """The chance to exceed a number agrees with scipy's on both sides and in the tails."""
    assert student_survival(t, freedom) == pytest.approx(stats.t.sf(t, freedom), rel=1e-8, abs=DIGITS)


@pytest.mark.source("scipy.stats.t, a general-purpose library")
@pytest.mark.parametrize("t", [0.5, 2.0, 6.0])
def test_a_million_degrees_of_freedom(t):
    """Many values are no harder than few."""
    assert student_survival(t, 1e6) == pytest.approx(stats.t.sf(t, 1e6), rel=1e-7)


@pytest.mark.source("scipy.stats.f, a general-purpose library")
@given(ratio=st.floats(0.0, 50.0), a=st.integers(1, 500), b=st.integers(1, 5000))
def test_survival_of_f(ratio, a, b):
    """The chance that a ratio of variances exceeds a number agrees with scipy's."""
    assert f_survival(ratio, a, b) == pytest.approx(stats.f.sf(ratio, a, b), rel=1e-8, abs=DIGITS)


@pytest.mark.source("W. S. Gosset's table as printed in textbooks: 12.706, 2.228 and 1.960 at 95 %, from memory")
@pytest.mark.parametrize(("freedom", "factor"), [(1, 12.706), (10, 2.228), (1e9, 1.960)])
def test_the_factors_of_the_printed_table(freedom, factor):
    """Two and a half per cent lie beyond the factors that everybody knows."""
    assert student_quantile(0.025, freedom) == pytest.approx(factor, abs=0.0005)


@given(survival=st.floats(1e-6, 0.5), freedom=freedoms)
def test_quantile_and_survival_are_each_others_reverse(survival, freedom):
    """What is exceeded with a probability has that probability to be exceeded."""
    assert student_survival(student_quantile(survival, freedom), freedom) == pytest.approx(survival, rel=1e-7)


@pytest.mark.parametrize(("x", "value"), [(-1.0, 0.0), (0.0, 0.0), (1.0, 1.0), (2.0, 1.0)])
def test_the_ends_of_the_incomplete_beta_function(x, value):
    """At the ends of its range, and beyond them, the function is exact."""
    assert incomplete_beta(2.0, 3.0, x) == value


def test_infinite_ratios():
    """What is infinite is exceeded never, and minus infinity always."""
    infinity = float("inf")
    assert (student_survival(infinity, 3), student_survival(-infinity, 3), f_survival(infinity, 2, 3)) == (
        0.0,
        1.0,
        0.0,
    )
