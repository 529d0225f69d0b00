"""Rulings: whether a measured quantity lies within its tolerance, and the risks of saying so."""

import itertools
import math
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from scalewright.lutherie.errors import ToleranceError
from scalewright.lutherie.estimate import Floats, normal_survival

__all__ = [
    "DECISION_RULES",
    "GUARD_FACTOR",
    "Conformance",
    "DecisionRule",
    "GlobalRisks",
    "Interval",
    "Process",
    "Ruling",
    "acceptance_interval",
    "conformance_probability",
    "global_risks",
    "refuse_without_width",
    "rule_on",
    "with_process",
]

GUARD_FACTOR = 2.0
"""Guard band in standard uncertainties: the expanded uncertainty U = 2u (ISO 14253-1; JCGM 106, 8.3.2). [-]"""

DecisionRule: TypeAlias = Literal["simple_acceptance", "guarded_acceptance", "guarded_rejection"]
"""Accept within the tolerance; within the tolerance less the guard band; within the tolerance and the guard band."""

DECISION_RULES: dict[DecisionRule, float] = {
    "simple_acceptance": 0.0,
    "guarded_acceptance": 1.0,
    "guarded_rejection": -1.0,
}
"""How many guard bands the acceptance limits lie inside the tolerance limits (JCGM 106, 8)."""

Conformance: TypeAlias = Literal["conforming", "undecided", "nonconforming"]
"""Proved to lie within the tolerance, neither, or proved to lie outside it."""

_REACH = 10.0
_PIECES = 64


@dataclass(frozen=True, slots=True)
class Interval:
    """From one limit to another; a one-sided one reaches to infinity."""

    lower: float
    """The lower limit."""
    upper: float
    """The upper limit."""

    @property
    def empty(self) -> bool:
        """Whether nothing lies in it."""
        return self.lower > self.upper

    def holds(self, value: float) -> bool:
        """Whether a value lies in it, the limits included."""
        return self.lower <= value <= self.upper


@dataclass(frozen=True, slots=True)
class Process:
    """What is known of a quantity before it is measured: how the things that are made are spread."""

    mean: float
    """Mean of what is made."""
    standard_deviation: float
    """Standard deviation of what is made."""


@dataclass(frozen=True, slots=True)
class GlobalRisks:
    """Shares of all that is made and measured (JCGM 106, 9.5)."""

    consumer: float
    """Accepted though it does not conform. [-]"""
    producer: float
    """Rejected though it conforms. [-]"""


@dataclass(frozen=True, slots=True)
class Ruling:
    """What a decision rule makes of one measured value."""

    decision: Literal["accept", "reject"]
    """By the rule and the measured value."""
    conformance: Conformance
    """What the value proves, whatever the rule."""
    conformance_probability: float
    """Probability that the quantity lies within its tolerance. [-]"""
    consumer_risk: float | None
    """Probability that the accepted thing does not conform; None where it was rejected. [-]"""
    producer_risk: float | None
    """Probability that the rejected thing conforms; None where it was accepted. [-]"""
    guard_band: float
    """Distance between tolerance limits and acceptance limits under a guarded rule."""
    acceptance: Interval
    """Where a measured value is accepted; empty where the guard bands meet."""
    global_risks: GlobalRisks | None
    """Risks over all that is made; None without a process."""


def acceptance_interval(tolerance: Interval, guard_band: float, rule: DecisionRule) -> Interval:
    """Measured values that a decision rule accepts.

    Parameters
    ----------
    tolerance : Interval
        Where the quantity has to lie.
    guard_band : float
        Width of the guard band, not negative, in the unit of the tolerance.
    rule : {"simple_acceptance", "guarded_acceptance", "guarded_rejection"}
        Which values are accepted.

    Returns
    -------
    Interval
        The tolerance limits moved inwards, or outwards for a guarded rejection (JCGM 106, 8.2 and 8.3).
    """
    inwards = DECISION_RULES[rule] * guard_band
    return Interval(tolerance.lower + inwards, tolerance.upper - inwards)


def conformance_probability(value: float, standard_uncertainty: float, tolerance: Interval) -> float:
    """Probability that a normally distributed quantity lies within its tolerance.

    Parameters
    ----------
    value, standard_uncertainty : float
        Its mean and standard deviation; the latter may be 0.
    tolerance : Interval
        Where it has to lie, in the same unit.

    Returns
    -------
    float
        JCGM 106, equation 7.
    """
    if standard_uncertainty == 0.0:
        return float(tolerance.holds(value))
    z = np.array([tolerance.lower - value, value - tolerance.upper]) / standard_uncertainty
    below, above = normal_survival(-z)
    # Far outside nothing is left but rounding, on either side of zero.
    return float(np.clip(1.0 - below - above, 0.0, 1.0))


def with_process(value: float, standard_uncertainty: float, process: Process) -> tuple[float, float]:
    """Mean and standard deviation of a quantity from its measured value and what is known of the process.

    Parameters
    ----------
    value, standard_uncertainty : float
        What was measured.
    process : Process
        Normally distributed.

    Returns
    -------
    mean, standard_deviation : float
        JCGM 106, equations 15 and 16.
    """
    spread = process.standard_deviation
    total = spread * spread + standard_uncertainty * standard_uncertainty
    weight = spread * spread / total
    mean = weight * value + (1.0 - weight) * process.mean
    return mean, spread * standard_uncertainty / math.sqrt(total)


def rule_on(
    value: float,
    standard_uncertainty: float,
    tolerance: Interval,
    rule: DecisionRule = "guarded_acceptance",
    *,
    guard_factor: float = GUARD_FACTOR,
    process: Process | None = None,
) -> Ruling:
    """Decide whether a measured quantity conforms.

    Parameters
    ----------
    value, standard_uncertainty : float
        What was measured.
    tolerance : Interval
        Where the quantity has to lie, in the same unit.
    rule : {"simple_acceptance", "guarded_acceptance", "guarded_rejection"}
        Which measured values are accepted.
    guard_factor : float
        Guard band in standard uncertainties. [-]
    process : Process, optional
        What is known beforehand; it enters the probabilities and gives global risks.

    Returns
    -------
    Ruling
        Decision, probabilities and risks.

    Raises
    ------
    ToleranceError
        A tolerance without width.

    Notes
    -----
    What a value proves follows ISO 14253-1: conforming at least a guard band inside the tolerance
    limits, nonconforming at least a guard band outside, undecided between. The specific risks are
    those of this one thing (JCGM 106, 9.3.2): consumer's 1 - p of what is accepted, producer's p of
    what is rejected.
    """
    refuse_without_width(tolerance)
    band = guard_factor * standard_uncertainty
    acceptance = acceptance_interval(tolerance, band, rule)
    accepted = acceptance.holds(value)
    mean, deviation = value, standard_uncertainty
    if process is not None:
        mean, deviation = with_process(value, standard_uncertainty, process)
    probability = conformance_probability(mean, deviation, tolerance)
    if acceptance_interval(tolerance, band, "guarded_acceptance").holds(value):
        conformance: Conformance = "conforming"
    elif acceptance_interval(tolerance, band, "guarded_rejection").holds(value):
        conformance = "undecided"
    else:
        conformance = "nonconforming"
    return Ruling(
        decision="accept" if accepted else "reject",
        conformance=conformance,
        conformance_probability=probability,
        consumer_risk=1.0 - probability if accepted else None,
        producer_risk=None if accepted else probability,
        guard_band=band,
        acceptance=acceptance,
        global_risks=None if process is None else global_risks(process, standard_uncertainty, tolerance, acceptance),
    )


def global_risks(
    process: Process, standard_uncertainty: float, tolerance: Interval, acceptance: Interval
) -> GlobalRisks:
    """Risks over all that a process makes and an instrument measures.

    Parameters
    ----------
    process : Process
        How the things made are spread, normally.
    standard_uncertainty : float
        Of the measurement; above zero.
    tolerance, acceptance : Interval
        Where a thing has to lie, and where a measured value is accepted.

    Returns
    -------
    GlobalRisks
        JCGM 106, equations 17 and 19, by Gauss and Legendre's rule piece by piece.
    """
    mean, spread = process.mean, process.standard_deviation
    ends = (mean - _REACH * spread, mean + _REACH * spread)
    limits = sorted({*ends, *(limit for limit in (tolerance.lower, tolerance.upper) if ends[0] < limit < ends[1])})
    consumer = producer = 0.0
    for low, high in itertools.pairwise(limits):
        made, weight = _nodes(low, high)
        density = weight * np.exp(-0.5 * ((made - mean) / spread) ** 2) / (spread * math.sqrt(2.0 * math.pi))
        accepted = np.maximum(
            normal_survival((acceptance.lower - made) / standard_uncertainty)
            - normal_survival((acceptance.upper - made) / standard_uncertainty),
            0.0,
        )
        if tolerance.holds(0.5 * (low + high)):
            producer += float(np.sum(density * (1.0 - accepted)))
        else:
            consumer += float(np.sum(density * accepted))
    return GlobalRisks(consumer, producer)


def refuse_without_width(tolerance: Interval) -> None:
    """Refuse a tolerance of zero or less.

    Raises
    ------
    ToleranceError
        Carries the ``lower`` and the ``upper`` limit.
    """
    if not tolerance.lower < tolerance.upper:
        message = "a tolerance has to be greater than zero; give how far the thing may be off, 0.5 mm for instance"
        raise ToleranceError(message, field=("tolerance",), lower=tolerance.lower, upper=tolerance.upper)


def _nodes(low: float, high: float) -> tuple[Floats, Floats]:
    """Abscissae and weights of an integral from one number to another."""
    at, weight = np.polynomial.legendre.leggauss(16)
    edges = np.linspace(low, high, _PIECES + 1)
    half = 0.5 * (edges[1] - edges[0])
    middles = 0.5 * (edges[1:] + edges[:-1])
    return (middles[:, None] + half * at).ravel(), np.tile(half * weight, _PIECES)
