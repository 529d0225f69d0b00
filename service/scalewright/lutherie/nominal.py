"""Nominal scales: what a label can mean, and what readings leave of it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from scalewright.lutherie.estimate import Estimate, Floats, Note, mixture_quantile, normal_survival
from scalewright.lutherie.identification import (
    Beliefs,
    CandidateFit,
    FreeDivisor,
    Identification,
    identify_all,
)
from scalewright.lutherie.identification.words import length_in_words, rule_in_words
from scalewright.lutherie.label import SETBACK, SETBACK_UNCERTAINTY, Label, Meaning, meanings_of
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.measure import Survey
from scalewright.lutherie.precision import information_of, reading_information, true_scale_deviation
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Rule

__all__ = [
    "Nominal",
    "NominalQuestion",
    "NominalVerdict",
    "ReadingToTake",
    "WeighedMeaning",
    "nominal",
    "nominal_all",
]

NominalVerdict: TypeAlias = Literal["established", "undecided", "none"]
"""One rule is behind the label; more than one may be; or the readings fit no meaning of it."""

_REACH = 8.0
_STEPS = 401
_USUAL_FRETS = 19
_WORTH_A_WORD = 0.03


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
    beliefs: Beliefs = Beliefs()
    """Thresholds, and what identification reckons with."""


@dataclass(frozen=True, slots=True)
class WeighedMeaning:
    """One meaning of a label, and how it stands after the readings."""

    meaning: Meaning
    """The meaning."""
    probability: float
    """Its probability after the readings; before any, how likely it is. [-]"""
    survives: bool
    """Whether its probability is at least one minus the threshold; before any reading all stand."""

    @property
    def name(self) -> str:
        """What was done to the length to make a label of it."""
        return self.meaning.name

    @property
    def rule(self) -> Rule | None:
        """Spacing rule; None for any other meaning."""
        return self.meaning.rule

    @property
    def basis(self) -> str | None:
        """Which length the label names."""
        return self.meaning.basis

    @property
    def explanation(self) -> str:
        """What it would mean, in words."""
        return self.meaning.explanation

    @property
    def layout_scale(self) -> float | None:
        """Length that the rule was applied to. [mm]"""
        return self.meaning.layout_scale

    @property
    def true_scale(self) -> float | None:
        """True scale that it stands for, or the middle of the interval. [mm]"""
        return None if self.rule is None else self.meaning.true_scale

    @property
    def lower(self) -> float | None:
        """Smallest true scale that it stands for. [mm]"""
        return None if self.rule is None else self.meaning.lower

    @property
    def upper(self) -> float | None:
        """Largest true scale that it stands for. [mm]"""
        return None if self.rule is None else self.meaning.upper

    @property
    def octave_distance(self) -> float | None:
        """Distance from the nut to fret 12 to look for. [mm]"""
        return None if self.rule is None else self.meaning.octave_distance


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


@dataclass(frozen=True, slots=True)
class _Component:
    """What the readings say of the true scale under one rule."""

    rule: Rule
    evidence: float
    mean: float
    deviation: float


def _components(measured: Identification, beliefs: Beliefs) -> list[_Component]:
    """Evidence of the two main rules, relative to that of all candidates together."""
    if measured.verdict == "none":
        if measured.true_scale is None:
            return []
        octave = measured.true_scale
        return [_Component(rule, 1.0, octave.value, octave.standard_uncertainty) for rule in (EQUAL, EIGHTEENTH)]
    return [
        _Component(fit.rule, fit.probability / prior, fit.true_scale.value, fit.true_scale.standard_uncertainty)
        for fit in measured.candidates
        if (prior := _prior_of(fit, beliefs)) is not None and fit.true_scale is not None
    ]


def _prior_of(fit: CandidateFit, beliefs: Beliefs) -> float | None:
    """Prior of a fixed rule among the candidates; None for a free divisor."""
    total = sum(candidate.prior for candidate in beliefs.candidates)
    for candidate in beliefs.candidates:
        if not isinstance(candidate.rule, FreeDivisor) and candidate.rule == fit.rule:
            return candidate.prior / total
    return None


def _answer(question: NominalQuestion, measured: Identification | None) -> Nominal:
    """What one label can mean."""
    beliefs = question.beliefs
    meanings = meanings_of(question.label, question.setback, question.setback_uncertainty)
    other = Meaning(
        "other", None, None, beliefs.scale_lower, beliefs.scale_upper, 0.0,
        1.0 - sum(meaning.prior for meaning in meanings), "the label means something else",
    )  # fmt: skip
    components = [] if measured is None else _components(measured, beliefs)
    weights = [meaning.prior * _evidence(meaning, components) for meaning in meanings]
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
        true_scale = _combined(weighed, components, beliefs.coverage)
    return Nominal(
        label=question.label,
        verdict=verdict,
        rule=rule if established else None,
        meaning=leader if established else None,
        true_scale=true_scale,
        measured=measured,
        meanings=weighed,
        next_reading=None if verdict != "undecided" else _next(question, measured, weighed),
        statement=_statement(verdict, leader, true_scale, measured, weighed),
        coverage=beliefs.coverage,
        notes=_notes(question, measured),
    )


def _evidence(meaning: Meaning, components: Sequence[_Component]) -> float:
    """Density that the readings give to a meaning, times the evidence of its rule; 1 without readings. [1/mm]"""
    if not components:
        return 1.0
    return sum(part.evidence * _density(meaning, part) for part in components if part.rule == meaning.rule)


def _density(meaning: Meaning, part: _Component) -> float:
    """Overlap of what a meaning says of the true scale with what the readings say. [1/mm]"""
    # Bounds of a layout scale are as uncertain as the true scale in them, so one spread serves both.
    spread = math.hypot(part.deviation, meaning.spread)
    if meaning.upper == meaning.lower:
        z = (part.mean - meaning.lower) / spread
        return math.exp(-0.5 * z * z) / (spread * math.sqrt(2.0 * math.pi))
    ends = (np.array([meaning.lower, meaning.upper]) - part.mean) / spread
    above = normal_survival(ends)
    return float(above[0] - above[1]) / (meaning.upper - meaning.lower)


def _combined(weighed: Sequence[WeighedMeaning], components: Sequence[_Component], coverage: float) -> Estimate:
    """True scale by label and readings together, over all meanings."""
    parts = []
    for one in weighed:
        for part in components:
            if one.rule is None:
                share = part.evidence / sum(other.evidence for other in components)
                parts.append((one.probability * share, part.mean, part.deviation))
            elif part.rule == one.rule:
                parts.append((one.probability, *_moments(one.meaning, part)))
    table = np.array(parts).T
    weight = table[0] / np.sum(table[0])
    value = float(np.sum(weight * table[1]))
    deviation = math.sqrt(float(np.sum(weight * (table[2] ** 2 + (table[1] - value) ** 2))))
    tail = 0.5 * (1.0 - coverage)
    low, high = (
        float(mixture_quantile(weight[:, None], table[1][:, None], table[2][:, None], level)[0])
        for level in (tail, 1.0 - tail)
    )
    return Estimate(value, deviation, low, high)


def _moments(meaning: Meaning, part: _Component) -> tuple[float, float]:
    """Mean and standard deviation of the true scale under a meaning, given the readings."""
    if meaning.upper == meaning.lower:
        own, read = meaning.spread**-2, part.deviation**-2
        return (own * meaning.lower + read * part.mean) / (own + read), math.sqrt(1.0 / (own + read))
    low = max(meaning.lower - _REACH * meaning.spread, part.mean - _REACH * part.deviation)
    high = min(meaning.upper + _REACH * meaning.spread, part.mean + _REACH * part.deviation)
    if low >= high:
        return part.mean, part.deviation
    at = np.linspace(low, high, _STEPS)
    density: Floats = normal_survival((meaning.lower - at) / meaning.spread) - normal_survival(
        (meaning.upper - at) / meaning.spread
    )
    density = density * np.exp(-0.5 * ((at - part.mean) / part.deviation) ** 2)
    if not np.sum(density) > 0.0:
        return part.mean, part.deviation
    density /= np.sum(density)
    mean = float(np.sum(density * at))
    return mean, math.sqrt(float(np.sum(density * (at - mean) ** 2)))


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
    frets = list(range(1, max(_USUAL_FRETS, max(procedure.end)) + 1))
    uncertainty = math.sqrt(float(np.median(procedure.variance)))
    told = information_of(procedure, true_scale) + reading_information(frets, uncertainty, true_scale)
    fret = frets[int(np.argmin(true_scale_deviation(told)))]
    return ReadingToTake(fret, uncertainty, f"A reading to fret {fret} makes the true scale surest.")


def _statement(
    verdict: NominalVerdict,
    leader: WeighedMeaning,
    true_scale: Estimate | None,
    measured: Identification | None,
    weighed: Sequence[WeighedMeaning],
) -> str:
    """The sentence to print instead of the label."""
    if verdict == "established" and true_scale is not None and leader.rule is not None:
        half = 0.5 * (true_scale.upper - true_scale.lower)
        share = true_scale_of(leader.rule, 1.0) or 1.0
        laid = f", laid out from {length_in_words(true_scale.value / share, half)}" if leader.rule == EIGHTEENTH else ""
        words = rule_in_words(leader.rule)
        scale = length_in_words(true_scale.value, half)
        return f"{words[0].upper()}{words[1:]}{laid}: true scale {scale} ± {half:.{_digits(half)}f} mm."
    if verdict == "none":
        if measured is not None and measured.true_scale is not None:
            return f"The label does not say what this board is. {measured.statement}"
        return "The label does not say what this board is, and its true scale cannot be told from these readings."
    likely = [one for one in weighed if one.probability >= _WORTH_A_WORD]
    standing = [one for one in weighed if one in likely and one.true_scale is not None]
    shown = dict.fromkeys(length_in_words(one.true_scale, 0.05) for one in standing if one.true_scale is not None)
    listed = " or ".join(list(shown)[:3])
    who = "The label does" if measured is None else "Label and readings do"
    return f"{who} not decide the true scale; it may be {listed or 'another'}: measure before cutting or gluing."


def _digits(half: float) -> int:
    return min(3, max(0, 1 - math.floor(math.log10(max(half, 1e-4)))))


def _notes(question: NominalQuestion, measured: Identification | None) -> list[Note]:
    """Cautions."""
    notes = [] if measured is None else list(measured.notes)
    if not question.label.unit_given:
        unit = {"in": "inches", "mm": "millimetres", "cm": "centimetres"}[question.label.unit]
        notes.append(Note("label-unit-inferred", f"The label names no unit; its number fits {unit} alone."))
    notes.append(
        Note(
            "measure-before-gluing",
            "A label is a name. Place a bridge or cut a slot by a true scale that was measured on this board, and try "
            "it dry before glue; guard blades, and follow local codes and qualified practice.",
        )
    )
    return notes
