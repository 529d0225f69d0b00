"""Measured quantities: a value, how sure it is, and the distributions that say so."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

__all__ = [
    "Estimate",
    "Floats",
    "Note",
    "chi_square_quantile",
    "chi_square_survival",
    "coverage_factor",
    "mixture_quantile",
    "normal_estimate",
    "normal_survival",
]

Floats = NDArray[np.float64]
"""An array of double-precision numbers."""

_STANDARD_NORMAL = NormalDist()


@dataclass(frozen=True, slots=True)
class Estimate:
    """A measured quantity, in the unit of the answer, with its coverage interval (JCGM 100)."""

    value: float
    """The best estimate."""
    standard_uncertainty: float
    """Its standard uncertainty (k = 1)."""
    lower: float
    """Lower end of the interval at the stated coverage."""
    upper: float
    """Upper end of the interval at the stated coverage."""


@dataclass(frozen=True, slots=True)
class Note:
    """A caution that comes with a valid answer."""

    slug: str
    """A short name that stays the same, for programs."""
    text: str
    """One sentence, for people."""


@lru_cache(maxsize=256)
def coverage_factor(coverage: float) -> float:
    """Half width of a normal distribution's central interval. [standard deviations]

    Parameters
    ----------
    coverage : float
        Probability that the interval holds, between 0 and 1.

    Returns
    -------
    float
        1.96 for a coverage of 0.95.
    """
    return _STANDARD_NORMAL.inv_cdf(0.5 + 0.5 * coverage)


def normal_estimate(value: float, standard_uncertainty: float, coverage: float) -> Estimate:
    """Estimate of a normally distributed quantity.

    Parameters
    ----------
    value, standard_uncertainty : float
        Its mean and standard deviation, in one unit.
    coverage : float
        Probability that the interval holds.

    Returns
    -------
    Estimate
        In the same unit.
    """
    half = coverage_factor(coverage) * standard_uncertainty
    return Estimate(value, standard_uncertainty, value - half, value + half)


_erfc: Callable[[Floats], Floats] = np.frompyfunc(math.erfc, 1, 1)
"""The standard library's complementary error function, number by number: numpy has none."""


def normal_survival(z: Floats) -> Floats:
    """Probability that a standard normal quantity exceeds each of the numbers given.

    Parameters
    ----------
    z : ndarray
        Any shape. [-]

    Returns
    -------
    ndarray
        The same shape. [-]
    """
    return np.asarray(0.5 * _erfc(z / math.sqrt(2.0)), dtype=float)


def chi_square_survival(chi_square: Floats, degrees_of_freedom: int) -> Floats:
    """Probability that chi-square exceeds each of the numbers given by chance.

    Parameters
    ----------
    chi_square : ndarray
        Any shape, not negative. [-]
    degrees_of_freedom : int
        At least 1.

    Returns
    -------
    ndarray
        The same shape. [-]

    Notes
    -----
    The finite series for whole degrees of freedom, all terms positive.

    References
    ----------
    .. [as-26.4] M. Abramowitz and I. A. Stegun, "Handbook of Mathematical Functions", 1964,
       equations 26.4.4 (odd) and 26.4.5 (even).
    """
    half = 0.5 * chi_square
    if degrees_of_freedom % 2:
        term = np.sqrt(half / math.pi) * 2.0 * np.exp(-half)
        total = 2.0 * normal_survival(np.sqrt(chi_square))
        order = 1.5
    else:
        term = np.exp(-half)
        total = np.zeros_like(half)
        order = 1.0
    for _ in range(degrees_of_freedom // 2):
        total = total + term
        term = term * half / order
        order += 1.0
    return np.minimum(total, 1.0)


@lru_cache(maxsize=4096)
def chi_square_quantile(survival: float, degrees_of_freedom: int) -> float:
    """Value of chi-square that is exceeded by chance with the probability given. [-]

    Parameters
    ----------
    survival : float
        The probability, between 0 and 1.
    degrees_of_freedom : int
        At least 1.

    Returns
    -------
    float
        By bisection, to the last digits.
    """
    low, high = 0.0, 10.0 * degrees_of_freedom + 20.0
    while chi_square_survival(np.array(high), degrees_of_freedom) > survival:
        high *= 2.0
    for _ in range(80):
        middle = 0.5 * (low + high)
        if chi_square_survival(np.array(middle), degrees_of_freedom) > survival:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def mixture_quantile(weights: Floats, means: Floats, deviations: Floats, level: float) -> Floats:
    """Quantile of mixtures of normal distributions, many mixtures at once.

    Parameters
    ----------
    weights : ndarray, shape (n_components, ...)
        Weights; those of a mixture sum to one. [-]
    means, deviations : ndarray, shape (n_components, ...)
        Mean and standard deviation of each component, in one unit; where the weight is zero they
        may be anything finite.
    level : float
        Probability below the quantile.

    Returns
    -------
    ndarray, shape (...)
        In the same unit, to about 1e-13 of the mixture's width.
    """
    z = _STANDARD_NORMAL.inv_cdf(level)
    single = means + z * deviations
    counted = weights > 1e-12  # what a probability in double precision can still notice
    low = np.min(np.where(counted, single, np.inf), axis=0)
    high = np.max(np.where(counted, single, -np.inf), axis=0)
    # The quantile of a mixture lies between those of its components: bisection cannot fail.
    for _ in range(46):
        middle = 0.5 * (low + high)
        below = np.sum(weights * normal_survival((means - middle) / deviations), axis=0)
        low = np.where(below < level, middle, low)
        high = np.where(below < level, high, middle)
    return 0.5 * (low + high)
