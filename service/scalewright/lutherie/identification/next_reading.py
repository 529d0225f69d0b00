"""What to measure next on a board whose rule is undecided."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie import spacing
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import Beliefs, FreeDivisor
from scalewright.lutherie.identification.judge import Findings
from scalewright.lutherie.measure import Survey
from scalewright.lutherie.spacing import MOST_FRETS

__all__ = ["USUAL_FRETS", "NextReading", "advise"]

USUAL_FRETS = 19
"""How many frets a board is taken to have where none was read beyond: common practice, no source."""

_STEPS = 161
_REACH = 6.0
"""Points and standard deviations of the integral over what the next reading may show."""

_TIE = 0.01
"""Differences of the chance to decide that are no reason to prefer a fret."""


@dataclass(frozen=True, slots=True)
class NextReading:
    """The reading that is expected to tell the leading rules apart best."""

    fret: int
    """Fret to measure to, from the nut; one that was read already means a repeat."""
    expected_probability: float
    """Probability that the family leading after that reading will have, on average. [-]"""
    chance_to_decide: float
    """Probability that it will then be above the threshold. [-]"""


def advise(
    findings: Findings, place: tuple[int, int], survey: Survey, aside: Sequence[int], beliefs: Beliefs
) -> NextReading | None:
    """The next fret to measure.

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
    NextReading or None
        None where only one rule was compared.

    Notes
    -----
    Each candidate predicts a normally distributed reading at each fret, and Bayes' rule says what
    its probability would be after it. Of the frets with about the best chance to bring one family
    above the threshold, the one with the highest expected probability is advised. (The expected
    probability of a family that is fixed beforehand is the one it has now: no reading can be
    expected to confirm it. That of the family which will lead is higher.)
    """
    p, m = place
    probability = findings.probability[:, p, m]
    frets = np.arange(1, min(MOST_FRETS, max(USUAL_FRETS, *survey.end)) + 1)
    free = [c.rule for c in beliefs.candidates if isinstance(c.rule, FreeDivisor)]
    compared = np.nonzero(probability > 0.0)[0]
    if len(compared) < 2:
        return None
    mean, deviation = _predictions(findings, place, survey, aside, beliefs, frets, free[0] if free else FreeDivisor())
    mean, deviation, prior = mean[compared], deviation[compared], probability[compared]
    low = np.min(mean - _REACH * deviation, axis=0)
    high = np.max(mean + _REACH * deviation, axis=0)
    at = np.linspace(low, high, _STEPS)
    joint = (
        prior[:, None, None]
        / deviation[:, None, :]
        * np.exp(-0.5 * ((at - mean[:, None, :]) / deviation[:, None, :]) ** 2)
    )
    total = np.sum(joint, axis=0)
    best = np.max(joint, axis=0)
    norm = np.sum(total, axis=0)
    expected = np.sum(best, axis=0) / norm
    decided = np.sum(np.where(best >= beliefs.threshold * total, total, 0.0), axis=0) / norm
    near = decided >= np.max(decided) - _TIE
    pick = int(np.argmax(np.where(near, expected, -1.0)))
    return NextReading(int(frets[pick]), min(float(expected[pick]), 1.0), min(float(decided[pick]), 1.0))


def _predictions(
    findings: Findings,
    place: tuple[int, int],
    survey: Survey,
    aside: Sequence[int],
    beliefs: Beliefs,
    frets: np.ndarray[tuple[int], np.dtype[np.int64]],
    free: FreeDivisor,
) -> tuple[Floats, Floats]:
    """Mean and standard deviation of the next reading at every fret, by candidate. shape (C, frets) [mm]"""
    p, m = place
    fits, plan = findings.fits, findings.plan
    candidates, _, patterns, _ = findings.weight.shape
    row = int(np.argmax(np.sum(findings.weight[:, :, p, m], axis=0))) * patterns + p
    count = len(survey.distance)
    whiten = plan.whiten[row][:count, :count]
    start, end = np.array(survey.start), np.array(survey.end)
    scatter_square = (
        float(plan.covariance[row][0, 0] - survey.variance[0]) if survey.scatter is None else survey.scatter**2
    )
    used = np.isin(np.arange(count), aside, invert=True)
    # What a fret's own misplacement has in common with the readings. shape (frets, N)
    common = (end == frets[:, None]) * 1.0 - (start == frets[:, None]) + (start == 0) * float(survey.zero_fret)
    common *= scatter_square * used
    told = common @ whiten.T
    instrument = float(np.median(np.array(survey.variance)[used]))
    noise = instrument + scatter_square * (1 + survey.zero_fret) - np.sum(told * told, axis=1)
    nut_variance = survey.nut.standard_deviation**2

    means, deviations = np.empty((candidates, len(frets))), np.empty((candidates, len(frets)))
    highest = int(max(frets[-1], end.max()))
    rules = [c.rule for c in beliefs.candidates if not isinstance(c.rule, FreeDivisor)]
    for index in range(candidates):
        scale = float(fits.scale[index, row, m])
        columns = []
        if index < candidates - 1:
            fractions = np.array([0.0, *spacing.fractions(rules[index], highest)])
        else:
            position = np.clip(fits.position[row, m], curve.position_of(free.upper), curve.position_of(free.lower))
            step = float(curve.step_at(position))
            fractions = -np.expm1(-step * np.arange(highest + 1))
            columns.append(
                (scale * np.arange(highest + 1) * np.exp(-step * np.arange(highest + 1)), (0.25 * step / 3.0) ** 2)
            )
        columns.append((fractions, math.inf))
        design = [column[end] - column[start] for column, _ in columns]
        fresh = [column[frets] for column, _ in columns]
        priors = [variance for _, variance in columns]
        if nut_variance > 0.0:
            design.append((start == 0) * 1.0)
            fresh.append(np.ones(len(frets)))
            priors.append(nut_variance)
        rows = whiten @ np.array(design).T
        information = rows.T @ rows + np.diag([0.0 if math.isinf(v) else 1.0 / v for v in priors])
        gap = np.array(fresh).T - told @ rows
        pull = findings.pulls[index][0][row, m][:count]
        means[index] = scale * fractions[frets] + float(fits.nut[index, row, m]) + common @ pull
        deviations[index] = np.sqrt(noise + np.einsum("fi,ij,fj->f", gap, np.linalg.pinv(information), gap))
    return means, deviations
