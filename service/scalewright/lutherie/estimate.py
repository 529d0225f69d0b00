"""Measured quantities: a value, how sure it is, and the distributions that say so."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

__all__ = [
    "ChiSquareTail",
    "Estimate",
    "Floats",
    "Note",
    "chi_square_quantile",
    "chi_square_survival",
    "coverage_factor",
    "mixture_interval",
    "normal_estimate",
    "normal_survival",
]

Floats = NDArray[np.float64]
"""An array of double-precision numbers."""

_STANDARD_NORMAL = NormalDist()
_SQRT_TWO_PI = math.sqrt(2.0 * math.pi)
_FAR_OUT = 700.0
"""Half a chi-square of which nothing is left."""
_SEEN = 1e-12
"""A smaller weight changes no quantile that anybody asks for."""
_MOST_STEPS = 100
_ROUGH_TAIL = (0.319381530, -0.356563782, 1.781477937, -1.821255978, 1.330274429)
_CLOSE = 1e-4
"""Step after which the rough tail is left for the exact one, in deviations."""
_FEW = 100
"""So many tails are worked out exactly before a rough one would have been set up."""
_SQUARE_OF_NO_ACCOUNT = 1e-5
"""Step after which Newton's method is done, as its square is what is left, in deviations."""


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
    # Number by number, as numpy has no error function; the standard library's is right to the last digits.
    scaled = z * math.sqrt(0.5)
    return 0.5 * np.fromiter(map(math.erfc, scaled.ravel().tolist()), float, scaled.size).reshape(scaled.shape)


class ChiSquareTail:
    """Probability that chi-square exceeds numbers by chance, for degrees of freedom that are known before they are.

    Parameters
    ----------
    degrees_of_freedom : ndarray
        At least 1, any shape.

    Notes
    -----
    The finite series for whole degrees of freedom, all terms positive.

    References
    ----------
    .. [as-26.4] M. Abramowitz and I. A. Stegun, "Handbook of Mathematical Functions", 1964,
       equations 26.4.4 (odd) and 26.4.5 (even).
    """

    def __init__(self, degrees_of_freedom: NDArray[np.int64]) -> None:
        freedom = np.asarray(degrees_of_freedom)
        self._odd = freedom % 2 == 1
        self._any_odd = bool(self._odd.any())
        self._more_than_one = freedom > 1
        last = freedom[..., None] // 2
        orders = np.arange(1, max(int(last.max()), 1))
        # An infinite order ends a series that is shorter than the others.
        self._orders = np.where(orders < last, orders + 0.5 * self._odd[..., None], np.inf)

    def beyond(self, chi_square: Floats) -> Floats:
        """The probability for each of some numbers.

        Parameters
        ----------
        chi_square : ndarray
            Not negative, of a shape that the degrees of freedom broadcast to. [-]

        Returns
        -------
        ndarray
            The same shape. [-]
        """
        # Beyond this the probability is nothing that anybody can tell from zero, and powers would overflow.
        half = np.minimum(0.5 * chi_square, _FAR_OUT)
        # Each term is the one before it times half over its order.
        terms = 1.0 + np.multiply.accumulate(half[..., None] / self._orders, axis=-1).sum(axis=-1)
        total = np.exp(-half) * self._more_than_one * terms
        if self._any_odd:
            root = np.sqrt(half)
            odd = 2.0 * normal_survival(math.sqrt(2.0) * root) + (2.0 / math.sqrt(math.pi)) * root * total
            total = np.where(self._odd, odd, total)
        return np.where(half < _FAR_OUT, np.minimum(total, 1.0), 0.0)


def chi_square_survival(chi_square: Floats, degrees_of_freedom: int) -> Floats:
    """Probability that chi-square exceeds each of the numbers given by chance: :class:`ChiSquareTail`.

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
    """
    return ChiSquareTail(np.array(degrees_of_freedom)).beyond(chi_square)


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


def mixture_interval(weights: Floats, means: Floats, deviations: Floats, coverage: float) -> Floats:
    """Interval of mixtures of normal distributions with equal tails, many mixtures at once.

    Parameters
    ----------
    weights : ndarray, shape (n_components, ...)
        Weights; those of a mixture sum to one. [-]
    means, deviations : ndarray, shape (n_components, ...)
        Mean and standard deviation of each component, in one unit; where the weight is zero they
        may be anything finite.
    coverage : float
        Probability that the interval holds.

    Returns
    -------
    ndarray, shape (2, ...)
        Lower and upper ends, in the same unit.
    """
    shape = np.broadcast_shapes(weights.shape, means.shape, deviations.shape)
    w, m, d = (np.broadcast_to(part, shape).reshape(shape[0], -1) for part in (weights, means, deviations))
    count = w.shape[1]
    # Lower ends first, then upper ones.
    w, m, d = (np.concatenate((part, part), axis=1) for part in (w, m, d))
    tail, factor = 0.5 * (1.0 - coverage), coverage_factor(coverage)
    level, factors = np.repeat((tail, 1.0 - tail), count), np.repeat((-factor, factor), count)
    counted = w > _SEEN
    single = np.where(counted, m + factors * d, 0.0)
    # The quantile of a mixture lies between those of its components, so that bisection cannot fail;
    # where Newton's step stays between the bounds it is faster.
    low = np.where(counted, single, np.inf).min(axis=0)
    high = np.where(counted, single, -np.inf).max(axis=0)
    # Where nothing is uncertain, the bounds meet and the width does not matter.
    inverse = 1.0 / np.where(counted & (d > 0.0), d, 1.0)
    w, m = np.where(counted, w, 0.0), np.where(counted, m, 0.0)
    at = np.minimum(np.maximum((w * single).sum(axis=0), low), high)
    if w.size > _FEW:
        # The rough tail first, for it costs a fraction of the exact one; then the exact one from close by.
        _approach(at, low.copy(), high.copy(), (w, m, inverse), level, _rough_survival, _CLOSE)
    _approach(at, low, high, (w, m, inverse), level, lambda z, _: normal_survival(z), _SQUARE_OF_NO_ACCOUNT)
    return at.reshape(2, *shape[1:])


def _approach(
    at: Floats,
    low: Floats,
    high: Floats,
    components: tuple[Floats, Floats, Floats],
    level: Floats,
    survival: Callable[[Floats, Floats], Floats],
    settled: float,
) -> None:
    """Move the quantiles in place by Newton's method within bounds, each until its step is small enough.

    Parameters
    ----------
    at, low, high : ndarray, shape (n,)
        Quantiles so far and what bounds them.
    components : tuple of ndarray, each of shape (n_components, n)
        Weights, means and inverse deviations.
    level : ndarray, shape (n,)
        Probability below each quantile.
    survival : callable
        Normal tail of numbers and their density.
    settled : float
        Step after which one is done, in units of the narrowest deviation.
    """
    active = np.arange(at.size)
    weight, mean, inverse = components
    for _ in range(_MOST_STEPS):
        x = at[active]
        z = (mean - x) * inverse
        density = np.exp(-0.5 * z * z) / _SQRT_TWO_PI
        excess = (weight * survival(z, density)).sum(axis=0) - level
        slope = (weight * density * inverse).sum(axis=0)
        low[active] = np.where(excess < 0.0, x, low[active])
        high[active] = np.where(excess < 0.0, high[active], x)
        newton = x - excess / np.maximum(slope, 1e-300)
        # Rounding may put a quantile that is found a hair outside of its bounds.
        inside = (newton > low[active]) & (newton < high[active]) | (newton == x)
        moved = np.where(inside, newton, 0.5 * (low[active] + high[active]))
        at[active] = moved
        moving = np.abs(moved - x) > np.maximum(settled / inverse.max(axis=0), 1e-15 * np.abs(x))
        if not moving.any():
            return
        active, level = active[moving], level[moving]
        weight, mean, inverse = weight[:, moving], mean[:, moving], inverse[:, moving]


def _rough_survival(z: Floats, density: Floats) -> Floats:
    """Probability that a standard normal quantity exceeds numbers whose density is known, to 8e-8.

    References
    ----------
    .. [abramowitz] M. Abramowitz and I. A. Stegun, "Handbook of Mathematical Functions", National Bureau of
       Standards (1964), 26.2.17.
    """
    t = 1.0 / (1.0 + 0.2316419 * np.abs(z))
    tail = density * t * np.polynomial.polynomial.polyval(t, _ROUGH_TAIL)
    return np.where(z > 0.0, tail, 1.0 - tail)
