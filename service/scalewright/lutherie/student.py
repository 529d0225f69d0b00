"""Student's t and Fisher's F: the distributions of means and variances that are known from few values."""

import math
from functools import lru_cache

__all__ = ["f_survival", "incomplete_beta", "student_quantile", "student_survival"]

_MOST_TERMS = 10_000
_PRECISION = 1e-16
_TINY = 1e-300


def incomplete_beta(a: float, b: float, x: float) -> float:
    """Regularised incomplete beta function I_x(a, b). [-]

    Parameters
    ----------
    a, b : float
        Above zero.
    x : float
        0 to 1.

    Returns
    -------
    float
        0 to 1.

    References
    ----------
    .. [as-26.5] M. Abramowitz and I. A. Stegun, "Handbook of Mathematical Functions", 1964,
       equation 26.5.8: the continued fraction, here by Lentz's method.
    """
    if x <= 0.0 or x >= 1.0:
        return 0.0 if x <= 0.0 else 1.0
    if x > (a + 1.0) / (a + b + 2.0):
        # The fraction converges fast on this side only.
        return 1.0 - incomplete_beta(b, a, 1.0 - x)
    log_front = math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x)
    c, d = 1.0, 1.0 / _not_zero(1.0 - (a + b) * x / (a + 1.0))
    value = d
    for m in range(1, _MOST_TERMS):
        even = m * (b - m) * x / ((a + 2 * m - 1.0) * (a + 2 * m))
        d, c = 1.0 / _not_zero(1.0 + even * d), _not_zero(1.0 + even / c)
        value *= d * c
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1.0))
        d, c = 1.0 / _not_zero(1.0 + odd * d), _not_zero(1.0 + odd / c)
        value *= d * c
        if abs(d * c - 1.0) < _PRECISION:
            break
    return math.exp(log_front) * value / a


def _not_zero(number: float) -> float:
    return number if abs(number) > _TINY else _TINY


def student_survival(t: float, degrees_of_freedom: float) -> float:
    """Probability that Student's t exceeds a number by chance.

    Parameters
    ----------
    t : float
        The number. [-]
    degrees_of_freedom : float
        Above zero.

    Returns
    -------
    float
        0 to 1 (Abramowitz and Stegun, equation 26.7.1).
    """
    if math.isinf(t):
        return 0.0 if t > 0.0 else 1.0
    square = t * t
    total = degrees_of_freedom + square
    if square < degrees_of_freedom:
        # Near the middle, what is missing from one half keeps its digits.
        tail = 0.5 - 0.5 * incomplete_beta(0.5, 0.5 * degrees_of_freedom, square / total)
    else:
        tail = 0.5 * incomplete_beta(0.5 * degrees_of_freedom, 0.5, degrees_of_freedom / total)
    return tail if t >= 0.0 else 1.0 - tail


@lru_cache(maxsize=1024)
def student_quantile(survival: float, degrees_of_freedom: float) -> float:
    """Number that Student's t exceeds with the probability given. [-]

    Parameters
    ----------
    survival : float
        The probability, above 0 and at most 0.5.
    degrees_of_freedom : float
        Above zero.

    Returns
    -------
    float
        By bisection, to the last digits.
    """
    low, high = 0.0, 2.0
    while student_survival(high, degrees_of_freedom) > survival:
        high *= 2.0
    for _ in range(80):
        middle = 0.5 * (low + high)
        if student_survival(middle, degrees_of_freedom) > survival:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def f_survival(ratio: float, numerator: float, denominator: float) -> float:
    """Probability that a ratio of two variances exceeds a number by chance.

    Parameters
    ----------
    ratio : float
        The number, not negative. [-]
    numerator, denominator : float
        Degrees of freedom of the two variances.

    Returns
    -------
    float
        0 to 1 (Abramowitz and Stegun, equation 26.6.2).
    """
    if math.isinf(ratio):
        return 0.0
    explained = numerator * ratio
    total = denominator + explained
    if explained < denominator:
        return 1.0 - incomplete_beta(0.5 * numerator, 0.5 * denominator, explained / total)
    return incomplete_beta(0.5 * denominator, 0.5 * numerator, denominator / total)
