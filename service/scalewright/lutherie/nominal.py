"""Nominal scales: what a label can mean, and what readings leave of it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

import numpy as np

from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.identification import Beliefs, Identification, identify_all
from scalewright.lutherie.identification.words import length_in_words, rule_in_words
from scalewright.lutherie.label import SETBACK, SETBACK_UNCERTAINTY, Label, Meaning, meanings_of
from scalewright.lutherie.measure import Survey
from scalewright.lutherie.nominal_words import notes_of, statement_of
from scalewright.lutherie.precision import information_of, reading_information, true_scale_deviation
from scalewright.lutherie.spacing import Rule
from scalewright.lutherie.weighing import WeighedMeaning, combined, components_of, evidence_of

__all__ = ["Nominal", "NominalQuestion", "NominalVerdict", "ReadingToTake", "nominal", "nominal_all"]

NominalVerdict: TypeAlias = Literal["established", "undecided", "none"]
"""One rule is behind the label; more than one may be; or the readings fit no meaning of it."""

_USUAL_FRETS = 19


@dataclass(frozen=True, slots=True)
class NominalQuestion:
    """A label, and what was measured on the board that bears it."""

    label: Label
    """As written."""
    survey: Survey | None = None
    """The board's readings."""
    setback: float = SETBACK
    """Setback that a string length includes. [mm]"""
    setback_uncertainty: float = SETBACK_UNCERTAINTY
    """Its standard uncertainty. [mm]"""
    beliefs: Beliefs = field(default_factory=Beliefs)
    """Thresholds, and what identification reckons with."""


@dataclass(frozen=True, slots=True)
class ReadingToTake:
    """A reading that would tell more."""

    fret: int
    """Fret to measure to, from the nut."""
    uncertainty: float | None
    """Standard uncertainty it should have; None for any good instrument. [mm]"""
    reason: str
    """What it would tell."""


@dataclass(frozen=True, slots=True)
class Nominal:
    """What a label can mean."""

    label: Label
    """The label."""
    verdict: NominalVerdict
    """Whether one rule is behind it."""
    rule: Rule | None
    """The rule behind it, where one is established."""
    meaning: WeighedMeaning | None
    """The most probable meaning, where a rule is established."""
    true_scale: Estimate | None
    """True scale by label and readings together, by the readings alone where no meaning fits; None before any. [mm]"""
    measured: Identification | None
    """What the readings alone say."""
    meanings: list[WeighedMeaning]
    """All meanings, the most probable first; the last resort, any other, among them."""
    next_reading: ReadingToTake | None
    """What to measure next."""
    statement: str
    """The sentence to print instead of the label."""
    coverage: float
    """Probability that the interval of the true scale holds. [-]"""
    notes: list[Note]
    """Cautions."""


def nominal(question: NominalQuestion) -> Nominal:
    """What one label can mean; see :func:`nominal_all`."""
    return nominal_all([question])[0]


def nominal_all(questions: Sequence[NominalQuestion]) -> list[Nominal]:
    """What labels can mean, and which meanings their readings leave standing.

    Parameters
    ----------
    questions : sequence of NominalQuestion
        Labels with or without readings.

    Returns
    -------
    list of Nominal
        In the same order.

    Raises
    ------
    TooFewPitchesError
        Listed pitches among the candidates that end before the highest fret read.

    Notes
    -----
    Identification gives each rule's evidence e_r, for a scale that may be anything, and the scale's
    distribution under it. A meaning m with rule r says more: the scale is about what the label
    names. Its evidence is e_r times the density that the readings give to it,

        e_m = e_r integral N(S; S_r, u_r) p(S | m) dS,

    (the Savage and Dickey ratio, Dickey 1971), and that of any other meaning is the evidence over
    all rules and scales. The label's own priors do the rest.
    """
    found: dict[int, Identification] = {}
    by_beliefs: dict[Beliefs, list[int]] = {}
    for index, question in enumerate(questions):
        if question.survey is not None:
            by_beliefs.setdefault(question.beliefs, []).append(index)
    for beliefs, members in by_beliefs.items():
        surveys = [survey for member in members if (survey := questions[member].survey) is not None]
        found.update(zip(members, identify_all(surveys, beliefs), strict=True))
    return [_answer(question, found.get(index)) for index, question in enumerate(questions)]


def _answer(question: NominalQuestion, measured: Identification | None) -> Nominal:
    """What one label can mean."""
    beliefs = question.beliefs
    meanings = meanings_of(question.label, question.setback, question.setback_uncertainty)
    other = Meaning(
        "other", None, None, beliefs.scale_lower, beliefs.scale_upper, 0.0,
        1.0 - sum(meaning.prior for meaning in meanings), "the label means something else",
    )  # fmt: skip
    components = [] if measured is None else components_of(measured, beliefs)
    weights = [meaning.prior * evidence_of(meaning, components) for meaning in meanings]
    weights.append(other.prior / (beliefs.scale_upper - beliefs.scale_lower) if components else other.prior)
    total = sum(weights)
    weighed = [
        WeighedMeaning(meaning, weight / total, not components or weight / total >= 1.0 - beliefs.threshold)
        for meaning, weight in zip([*meanings, other], weights, strict=True)
    ]
    weighed.sort(key=lambda one: -one.probability)
    by_rule: dict[Rule | None, float] = {}
    for one in weighed:
        by_rule[one.rule] = by_rule.get(one.rule, 0.0) + one.probability
    rule, probability = max(by_rule.items(), key=lambda item: item[1])
    verdict: NominalVerdict = "undecided"
    if components and probability >= beliefs.threshold:
        verdict = "none" if rule is None else "established"
    if measured is not None and measured.verdict == "none":
        verdict = "none"
    leader = next((one for one in weighed if one.rule == rule), weighed[0])
    established = verdict == "established"
    true_scale = None if measured is None else measured.true_scale
    if components and verdict != "none":
        true_scale = combined(weighed, components, beliefs.coverage)
    return Nominal(
        label=question.label,
        verdict=verdict,
        rule=rule if established else None,
        meaning=leader if established else None,
        true_scale=true_scale,
        measured=measured,
        meanings=weighed,
        next_reading=None if verdict != "undecided" else _next(question, measured, weighed),
        statement=statement_of(verdict, leader, true_scale, measured, weighed),
        coverage=beliefs.coverage,
        notes=notes_of(question.label, measured),
    )


def _next(
    question: NominalQuestion, measured: Identification | None, weighed: Sequence[WeighedMeaning]
) -> ReadingToTake:
    """The reading that would separate the leading meanings."""
    if measured is None or question.survey is None:
        look = [one for one in weighed if one.name == "exact"]
        places = " or ".join(
            f"{length_in_words(one.meaning.octave_distance, 0.05)} for {rule_in_words(one.rule)}"
            for one in look
            if one.rule is not None
        )
        return ReadingToTake(12, None, f"Measure from the nut to fret 12 and look for {places}.")
    first, second = weighed[0], weighed[1]
    if first.rule != second.rule and measured.next_reading is not None:
        fret = measured.next_reading.fret
        return ReadingToTake(fret, None, f"A reading to fret {fret} tells the spacing rules apart best.")
    procedure = question.survey.procedure
    true_scale = question.label.length if measured.true_scale is None else measured.true_scale.value
    frets = list(range(1, max((_USUAL_FRETS, *procedure.end)) + 1))
    uncertainty = math.sqrt(float(np.median(procedure.variance)))
    told = information_of(procedure, true_scale) + reading_information(frets, uncertainty, true_scale)
    fret = frets[int(np.argmin(true_scale_deviation(told)))]
    return ReadingToTake(fret, uncertainty, f"A reading to fret {fret} makes the true scale surest.")
