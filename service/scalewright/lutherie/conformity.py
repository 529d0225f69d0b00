"""Conformity: whether a part is what its label or its definition says, within a tolerance."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from scalewright.lutherie.errors import ContradictoryPartError, LutherieError, UndefinedPartError
from scalewright.lutherie.estimate import Estimate, Note, normal_estimate
from scalewright.lutherie.identification import Beliefs, Identification
from scalewright.lutherie.identification.words import length_in_words, rule_in_words
from scalewright.lutherie.known import identify_parts
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.part import FanScale, Part
from scalewright.lutherie.ruling import (
    GUARD_FACTOR,
    Conformance,
    DecisionRule,
    GlobalRisks,
    Interval,
    Process,
    refuse_without_width,
    rule_on,
)
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Rule
from scalewright.lutherie.stated import stated_scale, without_setback

__all__ = ["Conformity", "ConformityQuestion", "LabelMeans", "RuleAgrees", "conform", "conform_all"]

LabelMeans: TypeAlias = Literal["true_scale", "layout_scale"]
"""What a label claims: the true scale under equal spacing, or the layout scale of a rule-of-18 board."""

RuleAgrees: TypeAlias = Literal["yes", "no", "undecided"]
"""Whether the readings show the spacing rule that is claimed."""


@dataclass(frozen=True, slots=True)
class ConformityQuestion:
    """A part, what it claims to be, and how well it has to be that."""

    part: Part
    """The part, with readings."""
    tolerance: float
    """How far its true scale may be from the claimed one. [mm]"""
    decision_rule: DecisionRule = "guarded_acceptance"
    """Which measured values are accepted."""
    guard_factor: float = GUARD_FACTOR
    """Guard band in standard uncertainties. [-]"""
    label_means: LabelMeans | None = None
    """What the label claims, where no scale is stated; None for the layout scale where a rule is stated beside it, as
    that is what a rule is applied to, and else for the true scale."""
    process: Process | None = None
    """How far true scales of parts like this are from the claimed one, where that is known. [mm]"""
    beliefs: Beliefs = field(default_factory=Beliefs)
    """What identification reckons with."""


@dataclass(frozen=True, slots=True)
class Conformity:
    """Whether a part is what it claims to be."""

    part: str
    """The caller's name for it."""
    decision: Literal["accept", "reject"]
    """By the decision rule and the measured value."""
    conformance: Conformance
    """What the readings prove, whatever the rule."""
    statement: str
    """One sentence for a work order."""
    claimed_true_scale: float
    """The true scale that it claims. [mm]"""
    claimed_rule: Rule | None
    """The spacing rule that it claims."""
    true_scale: Estimate
    """The true scale that was measured. [mm]"""
    deviation: Estimate
    """Measured minus claimed true scale. [mm]"""
    rule_agrees: RuleAgrees
    """Whether the readings show the claimed spacing rule."""
    decision_rule: DecisionRule
    """The decision rule."""
    tolerance: float
    """How far the true scale may be from the claimed one. [mm]"""
    guard_band: float
    """Distance between tolerance limits and acceptance limits under a guarded rule. [mm]"""
    acceptance: Interval | None
    """Measured deviations that are accepted; None where the guard bands leave none. [mm]"""
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
    notes: list[Note]
    """Cautions."""


def conform(question: ConformityQuestion) -> Conformity:
    """Whether a part is what it claims to be.

    Parameters
    ----------
    question : ConformityQuestion
        The part and its tolerance.

    Returns
    -------
    Conformity
        Decision and risks.

    Raises
    ------
    ToleranceError
        A tolerance of zero or less.
    UndefinedPartError
        A part without readings, without a claim, or whose true scale its readings do not tell.
    ContradictoryPartError
        A claim that is stated twice, differently.
    """
    (answer,) = conform_all([question])
    if isinstance(answer, LutherieError):
        raise answer
    return answer


def conform_all(questions: Sequence[ConformityQuestion]) -> list[Conformity | LutherieError]:
    """Whether many parts are what they claim to be.

    Parameters
    ----------
    questions : sequence of ConformityQuestion
        Parts and tolerances.

    Returns
    -------
    list of Conformity or LutherieError
        In the same order; a refusal stands where :func:`conform` would raise it.
    """
    by_beliefs: dict[Beliefs, list[int]] = {}
    for index, question in enumerate(questions):
        by_beliefs.setdefault(question.beliefs, []).append(index)
    answers: dict[int, Conformity | LutherieError] = {}
    for beliefs, members in by_beliefs.items():
        found = identify_parts([questions[member].part for member in members], beliefs)
        for member, identification in zip(members, found, strict=True):
            try:
                answers[member] = _answer(questions[member], identification)
            except LutherieError as refusal:
                answers[member] = refusal
    return [answers[index] for index in range(len(questions))]


def _answer(question: ConformityQuestion, found: Identification | None) -> Conformity:
    """Answer for one part."""
    limits = Interval(-question.tolerance, question.tolerance)
    refuse_without_width(limits)
    claimed, rule = _claim(question)
    if found is None:
        message = "nothing was measured on this part; add readings, of fret 12 and the highest fret at least"
        raise UndefinedPartError(message, field=("part", "readings"))
    if found.true_scale is None:
        message = "these readings do not tell the true scale; measure from the nut to fret 12 as well"
        raise UndefinedPartError(message, field=("part", "readings"))
    measured = found.true_scale
    coverage = question.beliefs.coverage
    deviation = measured.value - claimed
    ruling = rule_on(
        deviation,
        measured.standard_uncertainty,
        limits,
        question.decision_rule,
        guard_factor=question.guard_factor,
        process=question.process,
    )
    agrees: RuleAgrees = "undecided"
    if rule is not None and found.verdict != "undecided":
        agrees = "yes" if rule in found.family else "no"
    shown = normal_estimate(deviation, measured.standard_uncertainty, coverage)
    return Conformity(
        part=question.part.id,
        decision=ruling.decision,
        conformance=ruling.conformance,
        statement=_statement(question, claimed, measured, ruling.decision, ruling.conformance, agrees, rule),
        claimed_true_scale=claimed,
        claimed_rule=rule,
        true_scale=measured,
        deviation=shown,
        rule_agrees=agrees,
        decision_rule=question.decision_rule,
        tolerance=question.tolerance,
        guard_band=ruling.guard_band,
        acceptance=None if ruling.acceptance.empty else ruling.acceptance,
        conformance_probability=ruling.conformance_probability,
        consumer_risk=ruling.consumer_risk,
        producer_risk=ruling.producer_risk,
        global_risks=ruling.global_risks,
        coverage=coverage,
        notes=_notes(question, found, agrees),
    )


def _claim(question: ConformityQuestion) -> tuple[float, Rule | None]:
    """True scale and rule that a part claims."""
    part = question.part
    stated = stated_scale(part, ("part",))
    if isinstance(stated, FanScale):
        message = "one line of readings cannot be held against two scales; ask for each side as a part of its own"
        raise ContradictoryPartError(message, field=("part", "true_scale"))
    if stated is not None:
        if question.label_means is not None:
            message = "the part is held against its stated scale and not against a label; leave label_means out"
            raise ContradictoryPartError(message, field=("label_means",))
        return stated, part.rule
    if part.label is None:
        message = "the part claims nothing to be held against; add its label, true_scale or layout_scale and rule"
        raise UndefinedPartError(message, field=("part", "label"), example="25.4 in")
    means = _label_means(question)
    rule = part.rule or (EQUAL if means == "true_scale" else EIGHTEENTH)
    length = without_setback(part.label.length, part, ("part",))
    if means == "layout_scale":
        length = true_scale_of(rule, length) or length
    return length, rule


def _label_means(question: ConformityQuestion) -> LabelMeans:
    """What the label of a part claims."""
    return question.label_means or ("true_scale" if question.part.rule is None else "layout_scale")


def _statement(
    question: ConformityQuestion,
    claimed: float,
    measured: Estimate,
    decision: str,
    conformance: Conformance,
    agrees: RuleAgrees,
    rule: Rule | None,
) -> str:
    """One sentence for a work order."""
    half = 0.5 * (measured.upper - measured.lower)
    proved = {
        "conforming": "this proves that it is what it claims to be",
        "undecided": "this proves neither that it is what it claims to be nor that it is not",
        "nonconforming": "this proves that it is not what it claims to be",
    }[conformance]
    other = ""
    if agrees == "no" and rule is not None:
        other = f", and the readings are not those of {rule_in_words(rule)}"
    verb = "Accept" if decision == "accept" else "Reject"
    allowed = length_in_words(question.tolerance, 0.4 * question.tolerance)
    return (
        f"{verb} {question.part.id}: true scale {length_in_words(measured.value, half)} measured against "
        f"{length_in_words(claimed, half)} claimed, with {allowed} allowed; "
        f"{proved}{other}."
    )


def _notes(question: ConformityQuestion, found: Identification, agrees: RuleAgrees) -> list[Note]:
    """Cautions."""
    notes = list(found.notes)
    part = question.part
    if part.true_scale is None and part.layout_scale is None:
        read = {"true_scale": "true scale", "layout_scale": "layout scale"}[_label_means(question)]
        text = f"The label was read as naming the {read}; a label alone does not say which of the two it names."
        notes.append(Note("label-reading", text))
    else:
        notes += _set_aside(part)
    if agrees == "no":
        text = "The frets do not stand where the claimed rule puts them, whatever the true scale; hold them against it."
        notes.append(Note("other-rule", text))
    text = (
        "The ruling is about the true scale; before cutting or gluing, try the parts dry, guard blades, and follow "
        "local codes and qualified practice."
    )
    notes.append(Note("before-gluing", text))
    return notes


def _set_aside(part: Part) -> list[Note]:
    """Say what of a part that states its scale the ruling does not rest on."""
    notes = []
    if part.label is not None:
        text = "The part was held against its stated scale, and not against its label; leave the scale out for that."
        notes.append(Note("label-set-aside", text))
    if part.tolerance:
        text = "How far the part may be off is the tolerance of the question; that of the part was not used."
        notes.append(Note("part-tolerance-set-aside", text))
    return notes
