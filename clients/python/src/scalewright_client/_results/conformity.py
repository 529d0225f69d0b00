"""Whether a part is what it claims to be."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Estimate, Note
from scalewright_client._results.rules import Rule

__all__ = ["Conformity", "GlobalRisks", "Interval"]


@dataclass(frozen=True, slots=True)
class Interval:
    """From one limit to another."""

    lower: float
    """The lower limit. [unit]"""
    upper: float
    """The upper limit. [unit]"""


@dataclass(frozen=True, slots=True)
class GlobalRisks:
    """Shares of all that a process makes and an instrument measures."""

    consumer: float
    """Accepted though it does not conform. [-]"""
    producer: float
    """Rejected though it conforms. [-]"""


@dataclass(frozen=True, slots=True)
class Conformity:
    """Whether a part is what it claims to be."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    decision: str
    """By the decision rule and the measured value."""
    conformance: str
    """What the readings prove, whatever the rule: "conforming", "undecided" or "nonconforming" (ISO 14253-1)."""
    statement: str
    """One sentence for a work order."""
    part: str
    """Your name for it."""
    claimed_true_scale: float
    """The true scale that it claims. [unit]"""
    claimed_rule: Rule | None
    """The spacing rule that it claims."""
    true_scale: Estimate
    """The true scale that was measured. [unit]"""
    deviation: Estimate
    """Measured minus claimed true scale. [unit]"""
    rule_agrees: str
    """Whether the readings show the claimed spacing rule: "yes", "no" or "undecided"."""
    decision_rule: str
    """The decision rule."""
    tolerance: float
    """How far the true scale may be from the claimed one. [unit]"""
    guard_band: float
    """Distance between tolerance limits and acceptance limits under a guarded rule. [unit]"""
    acceptance: Interval | None
    """Measured deviations that are accepted; None where the guard bands leave none. [unit]"""
    conformance_probability: float
    """Probability that the true scale lies within the tolerance. [-]"""
    consumer_risk: float | None
    """Probability that the accepted part does not conform; None where it was rejected. [-]"""
    producer_risk: float | None
    """Probability that the rejected part conforms; None where it was accepted. [-]"""
    global_risks: GlobalRisks | None
    """Risks over all parts of a process; None without one."""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: tuple[Note, ...]
    """Cautions."""
