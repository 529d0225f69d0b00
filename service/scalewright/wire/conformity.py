"""Conformity on the wire: a part and its tolerance in, a ruling with its risks out."""

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from scalewright.lutherie.assembly import TOLERANCE
from scalewright.lutherie.conformity import ConformityQuestion, LabelMeans, RuleAgrees
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.ruling import GUARD_FACTOR, Conformance, DecisionRule, Process
from scalewright.wire.assembly import GuardFactor
from scalewright.wire.identification import Share
from scalewright.wire.parts import PartIn
from scalewright.wire.quantities import AnyLength, Length, LengthBetween, LengthEstimate, LengthOut, Question, Reply
from scalewright.wire.rules import RuleOut

__all__ = ["ConformityIn", "ConformityOut", "GlobalRisksOut", "IntervalOut", "ProcessIn"]

_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class ProcessIn(BaseModel):
    """How far the true scales of parts like this are from the claimed one."""

    model_config = ConfigDict(
        strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True
    )

    mean_deviation: AnyLength = 0.0
    """Mean of made minus claimed true scale."""
    standard_deviation: Annotated[float, LengthBetween(0.0, 100.0, "0.2 mm", above=True), Field(examples=["0.2 mm"])]
    """Standard deviation of what is made."""

    def to_domain(self) -> Process:
        """Return the process."""
        return Process(self.mean_deviation, self.standard_deviation)


class ConformityIn(Question):
    """Is this part what its label or its definition says, within this tolerance?"""

    part: PartIn
    """The part: what it claims (`true_scale`, `layout_scale` with `rule`, or `label`), and `readings`.
    Its `datum`, `body_joint_fret` and `saddle_travel` matter only where parts are put together."""
    tolerance: Annotated[Length, Field(examples=["0.5 mm"])] = TOLERANCE
    """How far its true scale may be from the claimed one; 0.5 mm if left out."""
    decision_rule: DecisionRule = "guarded_acceptance"
    """"simple_acceptance": accept within the tolerance; "guarded_acceptance": within the tolerance less the guard band;
    "guarded_rejection": reject beyond the tolerance plus the guard band alone (JCGM 106)."""
    guard_factor: GuardFactor = GUARD_FACTOR
    """Guard band in standard uncertainties: 2 (default) is U of ISO 14253-1, 1.645 a one-sided 95 %."""
    label_means: LabelMeans | None = None
    """What the label claims, where no scale is stated: "true_scale", or "layout_scale" of the `rule` stated (the rule
    of 18 without one). Left out: the layout scale where the part states a rule, the true scale under equal spacing
    where it does not."""
    process: ProcessIn | None = None
    """What is known of parts like this; it enters the probabilities, and gives global risks."""
    coverage: Share = 0.95
    """Probability that a stated interval holds."""

    def to_domain(self) -> ConformityQuestion:
        """Return the question."""
        return ConformityQuestion(
            part=self.part.to_domain(),
            tolerance=self.tolerance,
            decision_rule=self.decision_rule,
            guard_factor=self.guard_factor,
            label_means=self.label_means,
            process=None if self.process is None else self.process.to_domain(),
            beliefs=Beliefs(coverage=self.coverage),
        )


# ---- The answer -----------------------------------------------------------------------------------------


class IntervalOut(BaseModel):
    """From one limit to another."""

    model_config = _READ_OFF

    lower: LengthOut
    """The lower limit. [unit]"""
    upper: LengthOut
    """The upper limit. [unit]"""


class GlobalRisksOut(BaseModel):
    """Shares of all that a process makes and an instrument measures."""

    model_config = _READ_OFF

    consumer: float
    """Accepted though it does not conform. [-]"""
    producer: float
    """Rejected though it conforms. [-]"""


class ConformityOut(Reply):
    """Whether a part is what it claims to be."""

    decision: Literal["accept", "reject"]
    """By the decision rule and the measured value."""
    conformance: Conformance
    """What the readings prove, whatever the rule: "conforming", "undecided" or "nonconforming" (ISO 14253-1)."""
    statement: str
    """One sentence for a work order."""
    part: str
    """Your name for it."""
    claimed_true_scale: LengthOut
    """The true scale that it claims. [unit]"""
    claimed_rule: RuleOut | None
    """The spacing rule that it claims."""
    true_scale: LengthEstimate
    """The true scale that was measured. [unit]"""
    deviation: LengthEstimate
    """Measured minus claimed true scale. [unit]"""
    rule_agrees: RuleAgrees
    """Whether the readings show the claimed spacing rule: "yes", "no" or "undecided"."""
    decision_rule: DecisionRule
    """The decision rule."""
    tolerance: LengthOut
    """How far the true scale may be from the claimed one. [unit]"""
    guard_band: LengthOut
    """Distance between tolerance limits and acceptance limits under a guarded rule. [unit]"""
    acceptance: IntervalOut | None
    """Measured deviations that are accepted; null where the guard bands leave none. [unit]"""
    conformance_probability: float
    """Probability that the true scale lies within the tolerance. [-]"""
    consumer_risk: float | None
    """Probability that the accepted part does not conform; null where it was rejected. [-]"""
    producer_risk: float | None
    """Probability that the rejected part conforms; null where it was accepted. [-]"""
    global_risks: GlobalRisksOut | None
    """Risks over all parts of a process; null without one."""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: list[Note]
    """Cautions."""
