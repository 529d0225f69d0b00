"""Decisions with a guard band about a quantity that may have more than one explanation."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist
from typing import Literal, TypeAlias

import numpy as np

from scalewright.lutherie.estimate import Estimate, Floats, mixture_interval, normal_survival
from scalewright.lutherie.ruling import Interval

__all__ = ["Decision", "Mixture", "Mixtures", "decide", "outside", "probability_within", "summed_up"]

Decision: TypeAlias = Literal["together", "apart", "undecided"]
"""Belongs together; does not; or cannot be decided with this uncertainty."""

_STANDARD_NORMAL = NormalDist()
_SEEN = 1e-13
"""An explanation that is less likely changes no interval that anybody asks for. [-]"""
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


@dataclass(frozen=True, slots=True)
class Mixtures:
    """Several quantities under the same explanations."""

    weight: Floats
    """Probabilities of the explanations; they sum to one. shape (n,) [-]"""
    mean: Floats
    """shape (n, m)"""
    deviation: Floats
    """shape (n, m)"""

    def quantity(self, index: int) -> Mixture:
        """One of the quantities."""
        return Mixture(self.weight, self.mean[:, index], self.deviation[:, index])


def summed_up(many: Sequence[Mixtures], coverage: float) -> list[list[Estimate]]:
    """Estimates of many mixtures, their intervals with equal tails, all at once.

    Parameters
    ----------
    many : sequence of Mixtures
        The quantities, each group under its own explanations.
    coverage : float
        Probability that the intervals hold.

    Returns
    -------
    list of list of Estimate
        For every group its quantities in order, in their unit.
    """
    if not many:
        return []
    widths = [group.mean.shape[1] for group in many]
    columns = _side_by_side(many, sum(widths))
    low, high = mixture_interval(*columns, coverage)
    found, at = [], 0
    for group, width in zip(many, widths, strict=True):
        weight = group.weight[:, None]
        value = np.sum(weight * group.mean, axis=0)
        spread = np.sqrt(np.sum(weight * (group.deviation**2 + (group.mean - value) ** 2), axis=0))
        lower, upper = low[at : at + width], high[at : at + width]
        if len(group.weight) == 1:
            exact = group.deviation[0] == 0.0
            lower, upper = np.where(exact, value, lower), np.where(exact, value, upper)
        found.append(list(map(Estimate, *(column.tolist() for column in (value, spread, lower, upper)))))
        at += width
    return found


def _side_by_side(many: Sequence[Mixtures], width: int) -> tuple[Floats, Floats, Floats]:
    """Weights, means and deviations of all quantities; what counts for nothing is left out. shape (n, width) each"""
    counted = [np.flatnonzero(group.weight > _SEEN) for group in many]
    shape = (max(map(len, counted)), width)
    weight, mean, deviation = np.zeros(shape), np.zeros(shape), np.ones(shape)
    at = 0
    for group, rows in zip(many, counted, strict=True):
        here = slice(at, at + group.mean.shape[1])
        weight[: len(rows), here] = group.weight[rows, None]
        mean[: len(rows), here] = group.mean[rows]
        deviation[: len(rows), here] = np.maximum(group.deviation[rows], _SURE)
        at = here.stop
    return weight, mean, deviation


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
