"""The answer for one board: verdict, rule, scales, candidates, suspects and what to read next."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from scalewright.lutherie import spacing
from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.identification.candidates import Beliefs
from scalewright.lutherie.identification.columns import WIDEST_COVERAGE, Row
from scalewright.lutherie.identification.judge import ESTABLISHED, NONE
from scalewright.lutherie.identification.next_reading import NextReading
from scalewright.lutherie.identification.octave import octave_alone
from scalewright.lutherie.identification.words import Interval, deviation_in_words, statement_of
from scalewright.lutherie.measure import Procedure, Survey
from scalewright.lutherie.phrases import plain
from scalewright.lutherie.spacing import Divisor, Rule

__all__ = [
    "CONTRADICTION",
    "NO_OCTAVE_FRET",
    "VERDICTS",
    "CandidateFit",
    "Identification",
    "SuspectReading",
    "Verdict",
    "advice_notes",
    "answer",
    "divisor_out_of_bounds",
    "named_in_statement",
    "octave_frets",
    "procedure_notes",
    "rules_of",
]

Verdict: TypeAlias = Literal["established", "undecided", "none"]
"""One rule is established; the readings cannot tell the rules apart; or no rule explains them."""


@dataclass(frozen=True, slots=True)
class CandidateFit:
    """How one rule fits the readings."""

    rule: Rule
    """The rule; a free divisor appears with its least-squares value."""
    probability: float
    """Its probability among the candidates. [-]"""
    layout_scale: Estimate
    """Layout scale under this rule. [mm]"""
    true_scale: Estimate | None
    """True scale of the fret pattern under this rule; None without an octave fret. [mm]"""
    nut_offset: Estimate | None
    """Nut offset under this rule; None where the nut plays no part. [mm]"""
    chi_square: float
    """Squared residuals in units of their variance, the nut's prior included. [-]"""
    degrees_of_freedom: int
    """Readings used less parameters fitted (a free nut offset brings its prior with it)."""
    p_value: float | None
    """Probability of a chi-square as large by chance; None without degrees of freedom. [-]"""
    residuals: list[float]
    """Reading minus prediction, positive where it reads long, in the order of the readings. [mm]"""


@dataclass(frozen=True, slots=True)
class SuspectReading:
    """A reading that the rule cannot explain though it explains all the others; it was set aside."""

    fret: int
    """Fret that the reading ends at."""
    reading: int
    """Its place in the list of readings, counted from 0."""
    deviation: float
    """Reading minus the prediction of the others, positive where it reads long. [mm]"""
    explanation: str
    """What it looks like, in words."""


@dataclass(frozen=True, slots=True)
class Identification:
    """What a board's readings say about its spacing rule and scale."""

    verdict: Verdict
    """Whether a rule is established."""
    rule: Rule | None
    """The established rule."""
    family: list[Rule]
    """The established rule and any other candidates whose frets lie in the same places here."""
    probability: float
    """Probability of the leading rule, with its family. [-]"""
    layout_scale: Estimate | None
    """Length that the rule was applied to. [mm]"""
    true_scale: Estimate | None
    """Twice nut to octave fret: what every other part must agree with. [mm]"""
    nut_offset: Estimate | None
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [mm]"""
    divisor: Estimate | None
    """The least-squares divisor, whatever the verdict; None where the readings do not determine it. [-]"""
    candidates: list[CandidateFit]
    """Every rule compared, the most probable first."""
    suspect_readings: list[SuspectReading]
    """Readings set aside as blunders."""
    next_reading: NextReading | None
    """What to measure next, where the rule is undecided."""
    statement: str
    """One sentence for a label or a work order."""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: list[Note]
    """Cautions."""


def answer(
    row: Row,
    survey: Survey,
    aside: Sequence[int],
    beliefs: Beliefs,
    next_reading: NextReading | None,
    remarks: Sequence[Note],
) -> Identification:
    """Put what was found for a board into words and objects.

    Parameters
    ----------
    row : Row
        What was found.
    survey : Survey
        The board's readings.
    aside : sequence of int
        Readings that were set aside before judging.
    beliefs : Beliefs
        Candidates, priors and thresholds.
    next_reading : NextReading or None
        What to measure next.
    remarks : sequence of Note
        Cautions beside those that follow from the row and the survey.

    Returns
    -------
    Identification
        Everything that is said about the board.
    """
    rules = rules_of(row, beliefs)
    candidates = [
        CandidateFit(
            rule=rule,
            probability=row.candidate_probability[index],
            layout_scale=Estimate(*row.layout_scale[index]),
            true_scale=_estimate(row.true_scale[index]),
            nut_offset=None if survey.procedure.without_nut else Estimate(*row.nut_offset[index]),
            chi_square=row.chi_square[index],
            degrees_of_freedom=max(row.degrees_of_freedom[index], 0),
            p_value=None if row.degrees_of_freedom[index] < 1 else row.p_value[index],
            residuals=row.residuals[index][: len(survey.distance)],
        )
        for index, rule in enumerate(rules)
    ]
    ranked = sorted(range(len(rules)), key=lambda index: -row.candidate_probability[index])
    leader = candidates[row.leader]
    established = row.verdict == ESTABLISHED
    true_scale = _estimate(row.believed_true_scale)
    notes = [*procedure_notes(survey.procedure), *advice_notes(next_reading), *remarks]
    if established:
        notes += _established_notes(row, leader, beliefs.coverage)
    if divisor_out_of_bounds(row.divisor_estimate, row.verdict, beliefs):
        notes.append(_out_of_bounds(row.divisor_estimate[0], beliefs))
    if row.verdict == NONE:
        if len(survey.distance) == 2:
            true_scale, note = None, CONTRADICTION
        else:
            true_scale, note = octave_alone(survey, _octave_of(rules, ranked), aside, beliefs.coverage)
        notes.append(note)
        if not beliefs.scale_lower <= leader.layout_scale.value <= beliefs.scale_upper:
            notes.append(_no_such_scale(leader.layout_scale.value, beliefs))
    elif true_scale is None:
        notes.append(NO_OCTAVE_FRET)
    verdict: Verdict = VERDICTS[row.verdict]
    return Identification(
        verdict=verdict,
        rule=leader.rule if established else None,
        family=[rules[index] for index in ranked if row.family[index]] if established else [],
        probability=row.probability,
        layout_scale=Estimate(*row.believed_layout_scale) if established else None,
        true_scale=true_scale,
        nut_offset=leader.nut_offset if established else None,
        divisor=_estimate(row.divisor_estimate),
        candidates=[candidates[index] for index in ranked],
        suspect_readings=[_suspect(index, leader, survey) for index in aside],
        next_reading=next_reading,
        statement=statement_of(
            verdict,
            [rules[index] for index in named_in_statement(row.verdict, row.leader, row.family, ranked)],
            tuple(row.believed_layout_scale) if established else None,
            _interval(true_scale),
            row.probability,
            beliefs.coverage,
        ),
        coverage=beliefs.coverage,
        notes=notes,
    )


def _established_notes(row: Row, leader: CandidateFit, coverage: float) -> list[Note]:
    """Cautions about an established rule."""
    notes = []
    if coverage > WIDEST_COVERAGE * row.probability:
        text = (
            f"The rule is right with a probability of {row.probability:.4f}, which leaves no room for the coverage "
            "that was asked for: the intervals hold if it is right."
        )
        notes.append(Note("interval-assumes-the-rule", text))
    if isinstance(leader.rule, Divisor):
        low, high = octave_frets(row.divisor_estimate)
        if low != high:
            text = (
                f"The divisor lies where the octave fret changes from {low} to {high}, and the true scale with it by "
                f"far more than its interval: it is stated for fret {spacing.octave_fret(leader.rule)}."
            )
            notes.append(Note("octave-fret-unsure", text))
    return notes


def divisor_out_of_bounds(divisor: Sequence[float], verdict: int, beliefs: Beliefs) -> bool:
    """Whether the readings of a board without an established rule speak of a divisor that is not compared.

    Parameters
    ----------
    divisor : sequence of float
        The least-squares divisor: value, deviation, lower and upper; NaN for none. [-]
    verdict : int
        What was concluded.
    beliefs : Beliefs
        With the bounds of the divisors that are compared.

    Returns
    -------
    bool
        True where any divisor is a candidate, and the whole interval lies beyond a bound.
    """
    if verdict == ESTABLISHED or len(beliefs.fixed_rules) == len(beliefs.candidates):
        return False
    bounds = beliefs.free_divisor
    return divisor[3] < bounds.lower or divisor[2] > bounds.upper


def _out_of_bounds(divisor: float, beliefs: Beliefs) -> Note:
    bounds = beliefs.free_divisor
    text = (
        f"The readings follow a divisor of {divisor:.3f} best, and only those from {bounds.lower:g} to "
        f"{bounds.upper:g} are compared; widen these bounds if it is meant."
    )
    return Note("divisor-out-of-bounds", text)


def octave_frets(divisor: Sequence[float]) -> tuple[int | None, int | None]:
    """Octave frets of the ends of a divisor's interval.

    Parameters
    ----------
    divisor : sequence of float
        An estimate: value, deviation, lower and upper; NaN for none. [-]

    Returns
    -------
    tuple of int or None
        Of the lower and the upper end; None for a divisor that is not determined.
    """
    if math.isnan(divisor[0]):
        return None, None
    return spacing.octave_fret(Divisor(divisor[2])), spacing.octave_fret(Divisor(divisor[3]))


VERDICTS: tuple[Verdict, ...] = ("established", "undecided", "none")
"""In the order of ESTABLISHED, UNDECIDED and NONE."""

CONTRADICTION = Note(
    "readings-contradict",
    "The two readings contradict each other whatever the rule, and nothing tells which of them is wrong; "
    "measure both again, and a third fret.",
)
"""Said where there is no majority."""


def _no_such_scale(scale: float, beliefs: Beliefs) -> Note:
    text = (
        f"The readings speak of a layout scale of {plain(scale, 4)} mm, and none outside {plain(beliefs.scale_lower)} "
        f"to {plain(beliefs.scale_upper)} mm is thought possible; check unit, frets and readings."
    )
    return Note("no-such-scale", text)


NO_OCTAVE_FRET = Note(
    "no-octave-fret",
    "The leading rule has no octave fret, so the board has no true scale; its layout scale stands for it.",
)
"""Said where a true scale cannot be defined."""


def named_in_statement(verdict: int, leader: int, family: Sequence[int], ranked: Sequence[int]) -> list[int]:
    """The candidates that a statement names: the leader and its family, or its strongest rival outside it."""
    if verdict == ESTABLISHED:
        return [leader, *(index for index in ranked if family[index] and index != leader)]
    return [leader, *[index for index in ranked if not family[index]][:1]]


def rules_of(row: Row, beliefs: Beliefs) -> list[Rule]:
    """The rules compared, a free divisor with the value that was found."""
    fixed = beliefs.fixed_rules
    return [*fixed, Divisor(row.divisor)] if len(fixed) < len(beliefs.candidates) else [*fixed]


def _estimate(numbers: Sequence[float]) -> Estimate | None:
    """An estimate from its four numbers; None where there is none."""
    return None if math.isnan(numbers[0]) else Estimate(*numbers)


def _interval(estimate: Estimate | None) -> Interval | None:
    """The numbers of an estimate."""
    if estimate is None:
        return None
    return estimate.value, estimate.standard_uncertainty, estimate.lower, estimate.upper


def _octave_of(rules: Sequence[Rule], ranked: Sequence[int]) -> int | None:
    """Octave fret of the most probable fixed rule that has one."""
    octaves = [spacing.octave_fret(rules[index]) for index in ranked if not isinstance(rules[index], Divisor)]
    return next((octave for octave in octaves if octave is not None), None)


def _suspect(index: int, leader: CandidateFit, survey: Survey) -> SuspectReading:
    """What is said about a reading that was set aside."""
    procedure = survey.procedure
    own = math.sqrt(procedure.variance[index] + (procedure.scatter or 0.0) ** 2)
    deviation = leader.residuals[index]
    words = deviation_in_words(procedure.start[index], procedure.end[index], deviation, own)
    return SuspectReading(procedure.end[index], index, deviation, words)


def advice_notes(advice: NextReading | None) -> list[Note]:
    """Say that one more reading will not do, where it will hardly decide."""
    if advice is None or advice.chance_to_decide >= _WORTH_A_TRY:
        return []
    text = (
        "One more reading with this instrument will hardly decide, the one that is advised in "
        f"{100.0 * advice.chance_to_decide:.0f} cases of 100; read several more frets, or use a finer instrument."
    )
    return [Note("finer-instrument", text)]


_WORTH_A_TRY = 0.2
"""Chance to decide below which a single reading is not worth its while."""


def procedure_notes(procedure: Procedure) -> list[Note]:
    """Cautions that follow from how the board was measured."""
    notes = []
    if procedure.scatter is None:
        notes.append(
            Note(
                "tooling-scatter-unknown",
                "The tool's scatter was not given and was integrated over what tools do (median 0.05 mm, at most "
                "0.25 mm); chi-square and p-value use that bound.",
            )
        )
    if any(procedure.edge):
        notes.append(
            Note(
                "slot-width-unknown",
                "Readings were taken at an edge of slots or crowns of unknown width: half of it was taken as "
                "0.7 mm with a standard uncertainty of 0.4 mm; give slot_width to do better.",
            )
        )
    return notes
