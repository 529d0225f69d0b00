"""What to measure next on a board whose rule is undecided."""

from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import FreeDivisor
from scalewright.lutherie.identification.columns import Boards
from scalewright.lutherie.identification.fit import Fits
from scalewright.lutherie.identification.judge import Findings
from scalewright.lutherie.identification.plan import Ints, Plan, rule_table

__all__ = ["USUAL_FRETS", "NextReading", "advise"]

USUAL_FRETS = 19
"""How many frets a board is taken to have where none was read beyond: common practice, no source."""

_AT_ONCE = 64
"""Boards advised at once, so that their integrals stay in a processor's cache."""

_STEPS = 161
_REACH = 6.0
"""Points and standard deviations of the integral over what the next reading may show."""

_DIVISORS = 9
"""Values that stand for a free divisor."""

_ABSCISSAE, _WEIGHTS = np.polynomial.legendre.leggauss(_DIVISORS)

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


def advise(findings: Findings, boards: Boards, pattern: int, members: Ints) -> list[NextReading]:
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
    kind, beliefs = boards.inquiry.pattern, boards.inquiry.beliefs
    highest = int(np.max(kind.end[pattern][kind.used[pattern]]))
    frets = np.arange(1, min(beliefs.most_frets, max(USUAL_FRETS, highest)) + 1)
    advice: list[NextReading] = []
    for first in range(0, len(members), _AT_ONCE):
        chunk = members[first : first + _AT_ONCE]
        expected, decided = _after(_predictions(findings, boards, pattern, chunk, frets), beliefs.threshold)
        near = decided >= np.max(decided, axis=0) - _TIE
        pick = np.argmax(np.where(near, expected, -1.0), axis=0)
        for board, fret in enumerate(pick.tolist()):
            chances = min(float(expected[fret, board]), 1.0), min(float(decided[fret, board]), 1.0)
            advice.append(NextReading(int(frets[fret]), *chances))
    return advice


@dataclass(frozen=True, slots=True)
class _Predictions:
    """What the next reading may show at every fret: for each candidate a mixture of normal distributions."""

    weight: Floats
    """Joint probability of candidate and part. shape (C, K, n)"""
    mean: Floats
    """Expected reading. shape (C, K, frets, n) [mm]"""
    deviation: Floats
    """Its standard deviation. shape (C, K, frets, n) [mm]"""


def _after(predictions: _Predictions, threshold: float) -> tuple[Floats, Floats]:
    """Probability of the family that will lead, on average, and the chance that it will be above the threshold.

    Both of shape (frets, n).
    """
    weight, mean, deviation = predictions.weight, predictions.mean, predictions.deviation
    told = weight[:, :, None, :] > 1e-6 * weight.max(axis=(0, 1))
    low = np.min(np.where(told, mean - _REACH * deviation, np.inf), axis=(0, 1))
    high = np.max(np.where(told, mean + _REACH * deviation, -np.inf), axis=(0, 1))
    at = np.linspace(low, high, _STEPS)
    joint = np.zeros((len(weight), *at.shape))
    for candidate, (share, middle, spread) in enumerate(zip(weight, mean, deviation, strict=True)):
        for part in np.nonzero(np.any(share > 1e-6 * weight.max(axis=(0, 1)), axis=1))[0]:
            z = (at - middle[part]) / spread[part]
            joint[candidate] += share[part] / spread[part] * np.exp(-0.5 * z * z)
    total, best = joint.sum(axis=0), joint.max(axis=0)
    norm = total.sum(axis=0)
    return best.sum(axis=0) / norm, np.where(best >= threshold * total, total, 0.0).sum(axis=0) / norm


def _predictions(findings: Findings, boards: Boards, pattern: int, members: Ints, frets: Ints) -> _Predictions:
    """What every candidate predicts of the next reading: for every scatter, and a free divisor at several values."""
    fits, plan, beliefs = findings.fits, boards.inquiry.plan, boards.inquiry.beliefs
    candidates, scatters, patterns, _ = findings.weight.shape
    weights = findings.weight[:, :, pattern, members]
    fixed = rule_table(beliefs.fixed_rules, max(int(frets[-1]), int(boards.inquiry.pattern.end[pattern].max())))
    steps = np.arange(len(fixed))
    parts = _DIVISORS
    shape = (candidates, scatters * parts, len(frets), len(members))
    weight, mean, deviation = np.zeros((*shape[:2], shape[3])), np.zeros(shape), np.ones(shape)
    for scatter in range(scatters):
        if not np.any(weights[:, scatter] > 1e-6):
            continue
        row = scatter * patterns + pattern
        # Fixed rules are one shape for all boards, (1, frets + 1) each; a free divisor has its own for each board.
        for candidate in range(candidates - 1):
            shapes = fixed[:, candidate][None, None]
            _, middle, spread = _predict(plan, row, boards, pattern, members, frets, shapes)
            place = scatter * parts
            weight[candidate, place] = weights[candidate, scatter]
            mean[candidate, place], deviation[candidate, place] = middle[0].T, spread[0].T
        if beliefs.priors[-1] > 0.0:
            theta, inside = _divisors(fits, row, members, beliefs.free_divisor)
            shapes = -np.expm1(-theta[:, :, None] * steps)
            evidence, middle, spread = _predict(plan, row, boards, pattern, members, frets, shapes)
            share = inside * np.exp(evidence - evidence.max(axis=0))
            block = slice(scatter * parts, scatter * parts + parts)
            weight[-1, block] = weights[-1, scatter] * share / share.sum(axis=0)
            mean[-1, block], deviation[-1, block] = middle.transpose(0, 2, 1), spread.transpose(0, 2, 1)
    return _Predictions(weight, mean, deviation)


def _divisors(fits: Fits, row: int, members: Ints, prior: FreeDivisor) -> tuple[Floats, Floats]:
    """Divisors that stand for what is believed of a free one, as ln(d / (d - 1)), and their share of the prior.

    Both of shape (K, n).
    """
    upper, lower = curve.position_of(prior.lower), curve.position_of(prior.upper)
    position = fits.expected_position[row, members]
    reach = np.minimum(4.0 * fits.position_deviation[row, members], upper - lower)
    low, high = np.clip(position - reach, lower, upper), np.clip(position + reach, lower, upper)
    at = 0.5 * (high + low) + 0.5 * np.maximum(high - low, 1e-9) * _ABSCISSAE[:, None]
    return curve.step_at(at), _WEIGHTS[:, None] * -curve.divisor_slope(curve.divisor_at(at))


def _predict(
    plan: Plan, row: int, boards: Boards, pattern: int, members: Ints, frets: Ints, shapes: Floats
) -> tuple[Floats, Floats, Floats]:
    """Fit shapes, and predict the next reading at every fret with its standard deviation.

    shapes has the shape (K, n or 1, frets + 1); the results are the logarithm of the evidence, (K, n), and mean and
    deviation, (K, n, frets).
    """
    kind = boards.inquiry.pattern
    start, end, used = kind.start[pattern], kind.end[pattern], kind.used[pattern]
    whiten, scatter = plan.whiten[row], plan.scatter[row]
    # What a fret's own misplacement has in common with the readings. shape (frets, N)
    common = (end == frets[:, None]) * 1.0 - (start == frets[:, None]) + (start == 0) * float(kind.zero_fret)
    told = (common * scatter**2 * used) @ whiten.T
    instrument = float(np.median(kind.variance[pattern][used]))
    noise = instrument + scatter**2 * (1 + kind.zero_fret) - np.sum(told * told, axis=1)

    known = (whiten @ boards.readings[pattern][:, members]).T
    g = (shapes[..., end] - shapes[..., start]) @ whiten.T
    nut = whiten @ ((start == 0) * 1.0)
    free = kind.nut_deviation > 0.0
    aa = np.sum(g * g, axis=-1)
    ab = g @ nut if free else np.zeros(aa.shape)
    bb = float(nut @ nut) + 1.0 / kind.nut_deviation**2 if free else 1.0
    ay, by = np.sum(g * known, axis=-1), known @ nut if free else np.zeros(len(known))
    determinant = aa * bb - ab * ab
    scale, offset = (bb * ay - ab * by) / determinant, (aa * by - ab * ay) / determinant
    evidence = 0.5 * (scale * ay + offset * by) - 0.5 * np.log(determinant)
    rest = known - scale[..., None] * g - offset[..., None] * nut * free
    mean = scale[..., None] * shapes[..., frets] + offset[..., None] * free + rest @ told.T
    own = shapes[..., frets] - g @ told.T
    other = (1.0 - told @ nut) * free
    variance = (bb * own**2 - 2.0 * ab[..., None] * own * other + aa[..., None] * other**2) / determinant[..., None]
    return evidence, mean, np.broadcast_to(np.sqrt(noise + variance), mean.shape)
