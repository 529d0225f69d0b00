"""The answer for one board: verdict, rule, scales, candidates, suspects and what to read next."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

import numpy as np

from scalewright.lutherie import spacing
from scalewright.lutherie.estimate import Estimate, Floats, Note, chi_square_survival, mixture_quantile, normal_estimate
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import Beliefs, FreeDivisor
from scalewright.lutherie.identification.judge import ESTABLISHED, NONE, Findings
from scalewright.lutherie.identification.next_reading import NextReading, advise
from scalewright.lutherie.identification.octave import octave_alone
from scalewright.lutherie.identification.words import deviation_in_words, statement_of
from scalewright.lutherie.measure import Survey
from scalewright.lutherie.spacing import Divisor, Rule

__all__ = ["CandidateFit", "Identification", "SuspectReading", "Verdict", "answer"]

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


_Quantity: TypeAlias = tuple[Floats, Floats]
"""Mean and standard deviation over candidates and scatters, each of shape (C, T); NaN where there is none."""


class _Lengths(NamedTuple):
    """What every candidate says of a board. [mm]"""

    scale: _Quantity
    true: _Quantity
    nut: _Quantity


@dataclass(frozen=True, slots=True)
class _Board:
    """One board's slice of the findings."""

    findings: Findings
    p: int
    m: int
    survey: Survey
    beliefs: Beliefs
    rules: list[Rule | FreeDivisor]

    def slices(self, values: Floats) -> Floats:
        """One board's values over candidates and scatters. shape (C, T)"""
        scatters, patterns, boards = self.findings.weight.shape[1:]
        return values.reshape(-1, scatters, patterns, boards)[:, :, self.p, self.m]

    def column(self, values: Floats) -> Floats:
        """One board's values over scatters. shape (T,)"""
        return self.slices(values[None])[0]


def answer(
    findings: Findings, place: tuple[int, int], survey: Survey, aside: Sequence[int], beliefs: Beliefs
) -> Identification:
    """The answer for one of the boards judged.

    Parameters
    ----------
    findings : Findings
        What was found for many boards.
    place : tuple of int
        Pattern and board.
    survey : Survey
        The board's readings.
    aside : sequence of int
        Readings that were set aside before judging.
    beliefs : Beliefs
        Candidates, priors and thresholds.

    Returns
    -------
    Identification
        Everything that is said about the board.
    """
    p, m = place
    fixed: list[Rule | FreeDivisor] = [c.rule for c in beliefs.candidates if not isinstance(c.rule, FreeDivisor)]
    free = [c.rule for c in beliefs.candidates if isinstance(c.rule, FreeDivisor)]
    board = _Board(findings, p, m, survey, beliefs, [*fixed, *(free or [FreeDivisor()])])
    weight = findings.weight[:, :, p, m]
    divisor, divisor_estimate = _divisor(board)
    # A divisor that is determined is shown with the scales of its own fit; what is believed of the true
    # scale over all candidates takes the prior's bounds into account.
    shown = _lengths(board, expected=divisor_estimate is None)
    believed = _lengths(board, expected=True).true

    candidates = [_candidate(board, index, shown, divisor) for index in range(len(weight) if free else len(weight) - 1)]
    order = sorted(range(len(candidates)), key=lambda index: -candidates[index].probability)
    leader = int(findings.leader[p, m])
    family = findings.family[:, p, m]
    probability = float(np.sum(findings.probability[family, p, m]))
    verdict = int(findings.verdict[p, m])
    notes = _notes(survey)

    if verdict == ESTABLISHED:
        word: Verdict = "established"
        rule: Rule | None = candidates[leader].rule
        layout_scale: Estimate | None = candidates[leader].layout_scale
        nut_offset = candidates[leader].nut_offset
        true_scale = _mixture(weight * family[:, None], believed, beliefs.coverage)
    else:
        rule = layout_scale = nut_offset = None
        word = "none" if verdict == NONE else "undecided"
        true_scale = _mixture(weight, believed, beliefs.coverage)
    if verdict == NONE:
        octave = _octave_of(board.rules[:-1], findings.probability[:, p, m])
        true_scale, note = octave_alone(survey, octave, aside, beliefs.coverage)
        notes.append(note)
    elif true_scale is None:
        notes.append(
            Note(
                "no-octave-fret",
                "The leading rule has no octave fret, so the board has no true scale; its layout scale stands for it.",
            )
        )
    suspects = [_suspect(board, index, leader, divisor) for index in aside]
    advice = advise(findings, place, survey, aside, beliefs) if word == "undecided" else None
    return Identification(
        verdict=word,
        rule=rule,
        family=[candidates[i].rule for i in order if family[i]] if verdict == ESTABLISHED else [],
        probability=probability,
        layout_scale=layout_scale,
        true_scale=true_scale,
        nut_offset=nut_offset,
        divisor=divisor_estimate,
        candidates=[candidates[index] for index in order],
        suspect_readings=suspects,
        next_reading=advice,
        statement=statement_of(word, rule, layout_scale, true_scale, probability, [candidates[i].rule for i in order]),
        coverage=beliefs.coverage,
        notes=notes,
    )


def _octave_of(rules: Sequence[Rule | FreeDivisor], probability: Floats) -> int | None:
    """Octave fret of the most probable fixed rule that has one."""
    for index in np.argsort(-probability[: len(rules)]):
        rule = rules[index]
        octave = None if isinstance(rule, FreeDivisor) else spacing.octave_fret(rule)
        if octave is not None:
            return octave
    return None


def _lengths(board: _Board, *, expected: bool) -> _Lengths:
    """Scales and nut offset of every candidate; of a free divisor as fitted or as expected under its prior."""
    fits, survey = board.findings.fits, board.survey
    scale = (board.slices(fits.scale), board.slices(fits.scale_deviation))
    nut = (board.slices(fits.nut) + survey.nut.mean, board.slices(fits.nut_deviation))
    free_true = (fits.true_scale, fits.true_deviation)
    if expected:
        own_scale, free_true, own_nut = fits.expected
        scale = _with_last(scale, [board.column(part) for part in own_scale])
        nut = _with_last(nut, [board.column(own_nut[0]) + survey.nut.mean, board.column(own_nut[1])])
    factor = np.full(len(board.rules), math.nan)
    for index, rule in enumerate(board.rules):
        half = None if isinstance(rule, FreeDivisor) else spacing.octave_fraction(rule)
        factor[index] = math.nan if half is None else 2.0 * half
    true = (factor[:, None] * scale[0], factor[:, None] * scale[1])
    true = _with_last(true, [board.column(part) for part in free_true])
    if survey.scale_error:
        # An error that all readings share stretches the whole board by it.
        scale, true, nut = (
            (mean, np.hypot(deviation, survey.scale_error * mean)) for mean, deviation in (scale, true, nut)
        )
    return _Lengths(scale, true, nut)


def _with_last(quantity: _Quantity, last: list[Floats]) -> _Quantity:
    """The same with another last candidate."""
    mean, deviation = quantity
    return np.concatenate([mean[:-1], last[0][None]]), np.concatenate([deviation[:-1], last[1][None]])


def _mixture(weight: Floats, quantity: _Quantity, coverage: float) -> Estimate | None:
    """A quantity over candidates and scatters, with equal tails; None where too much of it is not there."""
    mean, deviation = quantity
    there = np.isfinite(mean) & (weight > 0.0)
    total = float(np.sum(weight))
    if not there.any() or float(np.sum(weight[there])) < coverage * total:
        return None
    share = weight[there] / np.sum(weight[there])
    mean, deviation = mean[there], deviation[there]
    value = float(share @ mean)
    spread = math.sqrt(float(share @ (deviation**2 + (mean - value) ** 2)))
    if len(share) == 1:
        return normal_estimate(value, spread, coverage)
    tail = 0.5 * (1.0 - coverage)
    return Estimate(
        value,
        spread,
        float(mixture_quantile(share, mean, deviation, tail)),
        float(mixture_quantile(share, mean, deviation, 1.0 - tail)),
    )


def _share(board: _Board, index: int) -> Floats:
    """Posterior of the scatter under one candidate; its upper bound where the candidate is impossible."""
    weight = board.findings.weight[index, :, board.p, board.m]
    total = np.sum(weight)
    if total > 0.0:
        return weight / total
    return np.eye(len(weight))[-1]


def _divisor(board: _Board) -> tuple[float, Estimate | None]:
    """The divisor to show, and the least-squares estimate where it is determined."""
    fits = board.findings.fits
    position, deviation = board.column(fits.position), board.column(fits.position_deviation)
    share = _share(board, len(board.rules) - 1)
    value = curve.divisor_at(position)
    spread = -curve.divisor_slope(position) * deviation
    if np.isfinite(spread).all() and float(share @ spread) < _DIVISOR_LIMIT:
        return float(share @ value), _mixture(share[None], (value[None], spread[None]), board.beliefs.coverage)
    return float(share @ curve.divisor_at(board.column(fits.expected_position))), None


_DIVISOR_LIMIT = 10.0
"""A divisor less certain than this is not determined. [-]"""


def _candidate(board: _Board, index: int, lengths: _Lengths, divisor: float) -> CandidateFit:
    """How one candidate fits."""
    findings, coverage = board.findings, board.beliefs.coverage
    share = _share(board, index)[None]
    layout, true, nut = (_mixture(share, (mean[[index]], deviation[[index]]), coverage) for mean, deviation in lengths)
    assert layout is not None  # noqa: S101 - a scale is always finite
    chi_square = float(findings.chi_square[index, board.p, board.m])
    freedom = int(findings.degrees_of_freedom[index, board.p])
    rule = board.rules[index]
    return CandidateFit(
        rule=Divisor(divisor) if isinstance(rule, FreeDivisor) else rule,
        probability=float(findings.probability[index, board.p, board.m]),
        layout_scale=layout,
        true_scale=true,
        nut_offset=None if board.survey.zero_fret else nut,
        chi_square=chi_square,
        degrees_of_freedom=max(freedom, 0),
        p_value=float(chi_square_survival(np.array(chi_square), freedom)) if freedom > 0 else None,
        residuals=_residuals(board, index, divisor),
    )


def _prediction(board: _Board, index: int, divisor: float) -> Floats:
    """What a candidate's fit predicts for every reading. shape (N,) [mm]"""
    survey = board.survey
    scale = float(board.slices(board.findings.fits.scale)[index, -1])
    rule = board.rules[index]
    fractions = np.array(
        [0.0, *spacing.fractions(Divisor(divisor) if isinstance(rule, FreeDivisor) else rule, max(survey.end))]
    )
    start, end = np.array(survey.start), np.array(survey.end)
    nut = float(board.slices(board.findings.fits.nut)[index, -1]) + survey.nut.mean
    return scale * (fractions[end] - fractions[start]) + np.where(start == 0, 0.0 if survey.zero_fret else nut, 0.0)


def _residuals(board: _Board, index: int, divisor: float) -> list[float]:
    """Reading minus prediction, also of readings set aside. [mm]"""
    findings, count = board.findings, len(board.survey.distance)
    scatters, patterns = findings.weight.shape[1:3]
    row = (scatters - 1) * patterns + board.p
    pull = findings.pulls[index][0][row, board.m]
    fitted = (findings.plan.covariance[row] @ pull)[:count]
    predicted = _prediction(board, index, divisor)
    used = np.any(findings.plan.whiten[row][:count] != 0.0, axis=1)
    return [float(v) for v in np.where(used, fitted, np.array(board.survey.distance) - predicted)]


def _suspect(board: _Board, index: int, leader: int, divisor: float) -> SuspectReading:
    """What is said about a reading that was set aside."""
    survey = board.survey
    predicted = _prediction(board, leader, divisor)
    deviation = survey.distance[index] - float(predicted[index])
    own = math.sqrt(survey.variance[index] + (survey.scatter or 0.0) ** 2)
    return SuspectReading(
        fret=survey.end[index],
        reading=index,
        deviation=deviation,
        explanation=deviation_in_words(survey.start[index], survey.end[index], deviation, own),
    )


def _notes(survey: Survey) -> list[Note]:
    """Cautions that follow from how the board was measured."""
    notes = []
    if survey.scatter is None:
        notes.append(
            Note(
                "tooling-scatter-unknown",
                "The tool's scatter was not given and was integrated over what tools do (median 0.05 mm, at most "
                "0.25 mm); chi-square and p-value use that bound.",
            )
        )
    if any(survey.edge):
        notes.append(
            Note(
                "slot-width-unknown",
                "Readings were taken at an edge of slots or crowns of unknown width: half of it was taken as "
                "0.7 mm with a standard uncertainty of 0.4 mm; give slot_width to do better.",
            )
        )
    return notes
