"""What to measure next on a board whose rule is undecided."""

from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import Beliefs
from scalewright.lutherie.identification.columns import Boards
from scalewright.lutherie.identification.judge import Findings
from scalewright.lutherie.identification.plan import Ints, rule_table
from scalewright.lutherie.spacing import MOST_FRETS

__all__ = ["USUAL_FRETS", "NextReading", "advise"]

USUAL_FRETS = 19
"""How many frets a board is taken to have where none was read beyond: common practice, no source."""

_AT_ONCE = 64
"""Boards advised at once, so that their integrals stay in a processor's cache."""

_STEPS = 121
_REACH = 6.0
"""Points and standard deviations of the integral over what the next reading may show."""

_STEP_DEVIATION = 0.0028
"""Standard deviation of ln(1 - 1/d) for divisors spread evenly over the default prior. [-]"""

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


def advise(findings: Findings, boards: Boards, pattern: int, members: Ints, beliefs: Beliefs) -> list[NextReading]:
    """The next fret to measure on undecided boards of one pattern.

    Parameters
    ----------
    findings : Findings
        What was found for many boards.
    boards : Boards
        The boards that were judged.
    pattern : int
        One of their patterns.
    members : ndarray, shape (n,)
        Which of its boards.
    beliefs : Beliefs
        Candidates, priors and thresholds.

    Returns
    -------
    list of NextReading
        For each of the boards.

    Notes
    -----
    Each candidate predicts a normally distributed reading at each fret, and Bayes' rule says what
    its probability would be after it. Of the frets with about the best chance to bring one family
    above the threshold, the one with the highest expected probability is advised. (The expected
    probability of a family that is fixed beforehand is the one it has now: no reading can be
    expected to confirm it. That of the family which will lead is higher.)
    """
    used = boards.pattern.used[pattern]
    highest = int(np.max(boards.pattern.end[pattern][used]))
    frets = np.arange(1, min(MOST_FRETS, max(USUAL_FRETS, highest)) + 1)
    # Each board at the scatter that is most probable for it.
    scatter = np.argmax(np.sum(findings.weight[:, :, pattern, members], axis=0), axis=0)
    advice: dict[int, NextReading] = {}
    for own in np.unique(scatter):
        of_scatter = members[scatter == own]
        for first in range(0, len(of_scatter), _AT_ONCE):
            chunk = of_scatter[first : first + _AT_ONCE]
            mean, deviation = _predictions(findings, boards, (int(own), pattern), chunk, beliefs, frets)
            expected, decided = _after(findings.probability[:, pattern, chunk], mean, deviation, beliefs.threshold)
            near = decided >= np.max(decided, axis=0) - _TIE
            pick = np.argmax(np.where(near, expected, -1.0), axis=0)
            for k, (board, fret) in enumerate(zip(chunk.tolist(), pick.tolist(), strict=True)):
                chances = min(float(expected[fret, k]), 1.0), min(float(decided[fret, k]), 1.0)
                advice[board] = NextReading(int(frets[fret]), *chances)
    return [advice[board] for board in members.tolist()]


def _after(prior: Floats, mean: Floats, deviation: Floats, threshold: float) -> tuple[Floats, Floats]:
    """Probability of the family that will lead, on average, and the chance that it will be above the threshold.

    prior has the shape (C, n), mean and deviation (C, frets, n), the results (frets, n).
    """
    low = np.min(mean - _REACH * deviation, axis=0)
    high = np.max(mean + _REACH * deviation, axis=0)
    at = np.linspace(low, high, _STEPS)[:, None]
    joint = (prior[:, None, :] / deviation) * np.exp(-0.5 * ((at - mean) / deviation) ** 2)
    total = np.sum(joint, axis=1)
    best = np.max(joint, axis=1)
    norm = np.sum(total, axis=0)
    return np.sum(best, axis=0) / norm, np.sum(np.where(best >= threshold * total, total, 0.0), axis=0) / norm


def _predictions(
    findings: Findings, boards: Boards, place: tuple[int, int], members: Ints, beliefs: Beliefs, frets: Ints
) -> tuple[Floats, Floats]:
    """Mean and standard deviation of the next reading at every fret, by candidate. shape (C, frets, n) [mm]

    At one scatter of one pattern, which ``place`` names in this order.
    """
    fits, plan = findings.fits, findings.plan
    candidates, _, patterns, _ = findings.weight.shape
    scatter_index, pattern = place
    row = scatter_index * patterns + pattern
    whiten, scatter = plan.whiten[row], plan.scatter[row]
    start, end, used = boards.pattern.start[pattern], boards.pattern.end[pattern], boards.pattern.used[pattern]
    # What a fret's own misplacement has in common with the readings. shape (frets, N)
    common = (end == frets[:, None]) * 1.0 - (start == frets[:, None]) + (start == 0) * float(boards.pattern.zero_fret)
    common *= scatter**2 * used
    told = common @ whiten.T
    instrument = float(np.median(boards.pattern.variance[pattern][used]))
    noise = instrument + scatter**2 * (1 + boards.pattern.zero_fret) - np.sum(told * told, axis=1)

    steps = np.arange(max(int(frets[-1]), int(np.max(end))) + 1)[:, None]
    fixed = rule_table(beliefs.fixed_rules, len(steps) - 1)
    bounds = beliefs.free_divisor
    expected = fits.expected_position[row, members]
    theta = curve.step_at(np.clip(expected, curve.position_of(bounds.upper), curve.position_of(bounds.lower)))
    readings = boards.readings[pattern][:, members]
    means = np.empty((candidates, len(frets), len(members)))
    deviations = np.empty(means.shape)
    for candidate in range(candidates):
        scale, nut = fits.scale[candidate, row, members], fits.nut[candidate, row, members]
        prior = [0.0]
        if candidate < candidates - 1:
            columns = [np.broadcast_to(fixed[:, candidate, None], (len(steps), len(members)))]
        else:
            scale, nut = fits.expected[0][0][row, members], fits.expected[2][0][row, members]
            columns = [-np.expm1(-theta * steps), scale * steps * np.exp(-theta * steps)]
            prior.append(1.0 / _STEP_DEVIATION**2)
        design = [column[end] - column[start] for column in columns]
        fresh = [column[frets] for column in columns]
        nut_column = (start == 0) * 1.0
        if boards.pattern.nut_deviation > 0.0:
            design.append(np.broadcast_to(nut_column[:, None], design[0].shape))
            fresh.append(np.ones(fresh[0].shape))
            prior.append(1.0 / boards.pattern.nut_deviation**2)
        rows = whiten @ np.stack(design).transpose(2, 1, 0)
        gap = np.stack(fresh).transpose(2, 1, 0) - told @ rows
        covariance = np.linalg.pinv(np.swapaxes(rows, 1, 2) @ rows + np.diag(prior), hermitian=True)
        deviations[candidate] = np.sqrt(noise + np.einsum("nfi,nij,nfj->nf", gap, covariance, gap)).T
        residual = readings - scale * design[0] - nut * nut_column[:, None]
        means[candidate] = scale * fresh[0] + nut + told @ (whiten @ residual)
    return means, deviations
