"""Decisions with a guard band about a quantity that may have more than one explanation."""

import math
from dataclasses import dataclass
from statistics import NormalDist
from typing import Literal, TypeAlias

import numpy as np

from scalewright.lutherie.estimate import Estimate, Floats, mixture_quantile, normal_survival
from scalewright.lutherie.ruling import Interval

__all__ = ["Decision", "Mixture", "decide", "outside", "probability_within", "summed_up"]

Decision: TypeAlias = Literal["together", "apart", "undecided"]
"""Belongs together; does not; or cannot be decided with this uncertainty."""

_STANDARD_NORMAL = NormalDist()
_SURE = 1e-9
"""An exact quantity is taken as this uncertain, so that one formula serves. [mm]"""


@dataclass(frozen=True, slots=True)
class Mixture:
    """A quantity as a mixture of normal distributions, one for each explanation."""

    weight: Floats
    """Probabilities of the explanations; they sum to one. shape (n,) [-]"""
    mean: Floats
    """shape (n,)"""
    deviation: Floats
    """shape (n,)"""

    @property
    def value(self) -> float:
        """Its expected value."""
        return float(np.sum(self.weight * self.mean))

    @property
    def standard_uncertainty(self) -> float:
        """Its standard deviation, the explanations' differences included."""
        return math.sqrt(float(np.sum(self.weight * (self.deviation**2 + (self.mean - self.value) ** 2))))


def summed_up(mixture: Mixture, coverage: float) -> Estimate:
    """Estimate of a mixture, its interval with equal tails.

    Parameters
    ----------
    mixture : Mixture
        The quantity.
    coverage : float
        Probability that the interval holds.

    Returns
    -------
    Estimate
        In the mixture's unit.
    """
    tail = 0.5 * (1.0 - coverage)
    columns = (mixture.weight[:, None], mixture.mean[:, None], np.maximum(mixture.deviation, _SURE)[:, None])
    exact = len(mixture.weight) == 1 and mixture.deviation[0] == 0.0
    low, high = (
        (mixture.value, mixture.value)
        if exact
        else (float(mixture_quantile(*columns, level)[0]) for level in (tail, 1.0 - tail))
    )
    return Estimate(mixture.value, mixture.standard_uncertainty, low, high)


def outside(mixture: Mixture, allowed: Interval) -> float:
    """How surely a quantity lies beyond a limit, each explanation beyond the one that it is nearer to crossing. [-]"""
    spread = np.maximum(mixture.deviation, _SURE)
    above = normal_survival((allowed.upper - mixture.mean) / spread)
    below = normal_survival((mixture.mean - allowed.lower) / spread)
    return float(np.sum(mixture.weight * np.maximum(above, below)))


def probability_within(mixture: Mixture, allowed: Interval) -> float:
    """Probability that a quantity lies between two limits (JCGM 106, equation 7, over the explanations). [-]"""
    spread = np.maximum(mixture.deviation, _SURE)
    above = normal_survival((allowed.upper - mixture.mean) / spread)
    below = normal_survival((mixture.mean - allowed.lower) / spread)
    return float(np.clip(np.sum(mixture.weight * (1.0 - above - below)), 0.0, 1.0))


def decide(mixture: Mixture, allowed: Interval, guard_factor: float) -> Decision:
    """Whether a quantity lies between two limits, beyond them, or cannot be told.

    Parameters
    ----------
    mixture : Mixture
        The quantity.
    allowed : Interval
        The limits, in the same unit.
    guard_factor : float
        Guard band in standard uncertainties. [-]

    Returns
    -------
    {"together", "apart", "undecided"}
        For one explanation with the value y and the standard uncertainty u that is: together where y lies at least
        the guard band g = guard_factor u inside both limits, apart where it lies at least g outside one of them, and
        undecided between (ISO 14253-1).

    Notes
    -----
    An explanation is beyond a limit with the probability of its tail there; at the edge of the guard band that is
    the tail of guard_factor standard deviations. With several explanations their mean tail is compared to it, so that
    an unlikely explanation that speaks against the others is not averaged into the middle.
    """
    risk = 1.0 - _STANDARD_NORMAL.cdf(guard_factor)
    beyond = outside(mixture, allowed)
    # Rounding: a value exactly at the edge of the guard band is decided.
    edge = 1e-12
    if beyond <= risk + edge:
        return "together"
    return "apart" if beyond >= 1.0 - risk - edge else "undecided"
