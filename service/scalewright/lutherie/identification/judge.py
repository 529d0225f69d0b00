"""From fits to probabilities: which rule leads, what it explains, and which reading it cannot."""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie import spacing
from scalewright.lutherie.estimate import Floats, chi_square_quantile, coverage_factor, normal_survival
from scalewright.lutherie.identification.candidates import (
    SCATTER_SCALE,
    SCATTER_SHAPE,
    SCATTER_UPPER,
    Beliefs,
    FreeDivisor,
)
from scalewright.lutherie.identification.fit import Fits, deleted_residuals, deleted_residuals_of_divisor, fit
from scalewright.lutherie.identification.plan import Ints, Pattern, Plan, make_plan, rule_table
from scalewright.lutherie.spacing import Listed, Rule

__all__ = ["ESTABLISHED", "NONE", "UNDECIDED", "Findings", "judge", "scatter_nodes"]

ESTABLISHED, UNDECIDED, NONE = 0, 1, 2
"""The three verdicts, as the columns of a batch carry them."""

_BLUNDER_WIDTH = 2.0
"""Half of all misreadings are believed to be smaller than this. [mm]"""

_NOTABLE = 6.0
"""Squared deviations below this make no difference to the probabilities, whatever a blunder's prior."""

_SCATTER_NODES = 7

_SHOP_SCALE, _SHOP_FRETS, _CLOSE = 650.0, 24, 0.1
"""Rules are of one family only if on such a board [mm] with so many frets they come this close [mm]."""

_APART = 0.5
"""And if the readings tell them apart by less than this. [standard deviations]"""


@lru_cache(maxsize=1)
def scatter_nodes() -> tuple[Floats, Floats]:
    """Scatter of an unknown tool as a few values with weights, the last the upper bound with weight zero.

    Returns
    -------
    scatter, weight : ndarray, shape (T,)
        Gauss and Legendre's abscissae in the probability of the prior. [mm], [-]
    """
    at, weight = np.polynomial.legendre.leggauss(_SCATTER_NODES)
    whole = 1.0 - normal_survival(np.array(math.log(SCATTER_UPPER / SCATTER_SCALE) / SCATTER_SHAPE))
    normal = np.array([coverage_factor(2.0 * p - 1.0) for p in 0.5 * (at + 1.0) * whole])
    scatter = SCATTER_SCALE * np.exp(SCATTER_SHAPE * normal)
    return np.append(scatter, SCATTER_UPPER), np.append(0.5 * weight, 0.0)


@dataclass(frozen=True, slots=True)
class Findings:
    """What was found for P patterns of M boards.

    C candidates, the fixed rules first, then a free divisor; T values of the tool's scatter, one if it was given.
    """

    plan: Plan
    """Of T x P patterns."""
    fits: Fits
    """Of T x P patterns."""
    weight: Floats
    """Joint probability of candidate and scatter. shape (C, T, P, M) [-]"""
    probability: Floats
    """Probability of every candidate. shape (C, P, M) [-]"""
    family: NDArray[np.bool_]
    """Which candidates cannot be told from the leading one. shape (C, P, M)"""
    leader: Ints
    """The most probable member of the most probable family. shape (P, M)"""
    verdict: Ints
    """ESTABLISHED, UNDECIDED or NONE. shape (P, M)"""
    chi_square: Floats
    """At the given scatter, or at its upper bound. shape (C, P, M) [-]"""
    degrees_of_freedom: Ints
    """Of every candidate. shape (C, P) [-]"""
    pulls: list[tuple[Floats, Floats]]
    """Weighted residuals of every candidate and their diagonal (:func:`deleted_residuals`). shape (T P, M, N)"""
    suspect: Ints
    """The reading that the leading rule cannot explain though it explains the others, or -1. shape (P, M)"""


def judge(pattern: Pattern, readings: Floats, beliefs: Beliefs, *, scatter_known: bool) -> Findings:
    """Weigh the candidates for many boards.

    Parameters
    ----------
    pattern : Pattern
        P patterns of N readings.
    readings : ndarray, shape (P, M, N)
        Readings of M boards of each, less the nut's expected offset; unused ones 0. [mm]
    beliefs : Beliefs
        Candidates, priors and thresholds.
    scatter_known : bool
        Whether the pattern's scatter was given; otherwise it is integrated over its prior.

    Returns
    -------
    Findings
        Probabilities, verdicts and suspects.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the highest fret read and do not repeat.

    Notes
    -----
    A reading may be a blunder: with a small probability one of a board's readings comes not from
    the normal distribution of its errors but from a far wider one (Cauchy's). As the rest of the
    readings predicts each of them (its deleted residual e, with standard deviation s), that
    multiplies a candidate's marginal likelihood by
    (1 - p) + p/N sum_k wide(e_k) / normal(e_k; s_k): one blunder cannot carry a rule away.
    """
    fixed = [candidate for candidate in beliefs.candidates if not isinstance(candidate.rule, FreeDivisor)]
    free = [candidate for candidate in beliefs.candidates if isinstance(candidate.rule, FreeDivisor)]
    bounds = free[0].rule if free and isinstance(free[0].rule, FreeDivisor) else FreeDivisor()
    priors = np.array([candidate.prior for candidate in fixed] + [free[0].prior if free else 0.0])
    rules = [candidate.rule for candidate in fixed if not isinstance(candidate.rule, FreeDivisor)]

    patterns, boards, count = readings.shape
    scatter, scatter_weight = (pattern.scatter[None, :], np.ones(1)) if scatter_known else _unknown(patterns)
    scatters = len(scatter_weight)
    plan = make_plan(_repeat(pattern, scatter), rule_table(rules, int(pattern.end.max())))
    tiled = np.broadcast_to(readings, (scatters, *readings.shape)).reshape(scatters * patterns, boards, count)
    fits = fit(plan, tiled, bounds)

    with np.errstate(divide="ignore"):
        log_weight = fits.log_evidence.reshape(-1, scatters, patterns, boards) + (
            np.log(priors / priors.sum())[:, None, None, None] + np.log(scatter_weight)[None, :, None, None]
        )
    candidates = len(log_weight)
    pulls = [deleted_residuals(plan, tiled, rule) for rule in range(candidates - 1)]
    pulls.append(deleted_residuals_of_divisor(plan, fits))
    strain = np.stack([_strain(*pull) for pull in pulls]).reshape(candidates, scatters, patterns, boards, count)
    log_weight += _blunder_factor(strain, pulls, beliefs.misreading, plan.readings).reshape(log_weight.shape)

    peak = np.max(log_weight, axis=(0, 1))
    weight = np.exp(log_weight - peak)
    weight /= np.sum(weight, axis=(0, 1))
    probability = np.sum(weight, axis=1)
    family, leader = _families(probability, rules, plan, fits, scatters)
    of_family = np.sum(probability * family, axis=0)

    chi_square = fits.chi_square.reshape(candidates, scatters, patterns, boards)[:, -1]
    freedom = plan.readings[None, :patterns] - np.where(np.arange(candidates) < candidates - 1, 1, 2)[:, None]
    limit = np.array([[_limit(beliefs.significance, k) for k in row] for row in freedom])
    explained = chi_square <= limit[:, :, None]
    leads = np.take_along_axis(explained, leader[None], axis=0)[0]
    sure = of_family >= beliefs.threshold
    possible = np.any(explained & (priors > 0.0)[:, None, None], axis=0)
    verdict = np.where(sure & leads, ESTABLISHED, np.where(possible & ~(sure & ~leads), UNDECIDED, NONE))
    return Findings(
        plan=plan,
        fits=fits,
        weight=weight,
        probability=probability,
        family=family,
        leader=leader,
        verdict=verdict,
        chi_square=chi_square,
        degrees_of_freedom=freedom,
        pulls=pulls,
        suspect=_suspect(strain, weight, leader, plan.readings[:patterns], beliefs.false_alarm),
    )


def _unknown(patterns: int) -> tuple[Floats, Floats]:
    scatter, weight = scatter_nodes()
    return np.repeat(scatter[:, None], patterns, axis=1), weight


def _repeat(pattern: Pattern, scatter: Floats) -> Pattern:
    """The pattern once for every scatter. scatter has the shape (T, P)."""
    times = (len(scatter), 1)
    return Pattern(
        start=np.tile(pattern.start, times),
        end=np.tile(pattern.end, times),
        used=np.tile(pattern.used, times),
        variance=np.tile(pattern.variance, times),
        edge=np.tile(pattern.edge, times),
        scatter=scatter.ravel(),
        nut_deviation=pattern.nut_deviation,
        zero_fret=pattern.zero_fret,
    )


def _limit(significance: float, freedom: int) -> float:
    """Chi-square that residuals may not exceed; with no freedom there are none to judge by."""
    return chi_square_quantile(significance, int(freedom)) if freedom > 0 else math.inf


def _strain(pull: Floats, diagonal: Floats) -> Floats:
    """Squared deleted residuals in units of their variance, any shape. [-]"""
    square = pull * pull
    return np.divide(square, diagonal, out=np.zeros_like(square), where=diagonal > 0.0)


def _blunder_factor(strain: Floats, pulls: list[tuple[Floats, Floats]], misreading: float, readings: Ints) -> Floats:
    """Logarithm of what the chance of one blunder adds to every marginal likelihood. shape (C, T P, M)"""
    candidates, *_, boards, count = strain.shape
    strain = strain.reshape(candidates, -1, boards, count)
    factor = np.zeros(strain.shape[:3])
    if misreading <= 0.0:
        return factor
    notable = np.any(np.max(strain, axis=3) > _NOTABLE, axis=0)
    where = np.nonzero(notable)
    log_none = math.log1p(-misreading)
    factor += log_none
    if where[0].size:
        for candidate, (pull, diagonal) in enumerate(pulls):
            weight = np.broadcast_to(diagonal, pull.shape)[where]
            told = weight > 0.0
            safe = np.where(told, weight, 1.0)
            deviation = pull[where] / safe
            wide = 1.0 / (math.pi * _BLUNDER_WIDTH * (1.0 + (deviation / _BLUNDER_WIDTH) ** 2))
            with np.errstate(over="ignore", divide="ignore"):
                gain = np.where(
                    told,
                    np.log(wide * math.sqrt(2.0 * math.pi) / np.sqrt(safe)) + 0.5 * strain[candidate][where],
                    -np.inf,
                )
            peak = np.maximum(np.max(gain, axis=1), 0.0)
            share = misreading / readings[where[0]]
            total = (1.0 - misreading) * np.exp(-peak) + share * np.sum(np.exp(gain - peak[:, None]), axis=1)
            factor[candidate][where] = peak + np.log(total)
    return factor


def _families(
    probability: Floats, rules: Sequence[Rule], plan: Plan, fits: Fits, scatters: int
) -> tuple[NDArray[np.bool_], Ints]:
    """The leading candidate and those whose frets cannot be told from its own."""
    candidates, patterns, boards = probability.shape
    alike = np.broadcast_to(np.eye(candidates, dtype=np.bool_)[:, :, None, None], (candidates, *probability.shape))
    close = _close_pairs(tuple(rules))
    if close:
        alike = alike.copy()
        amplitude = fits.amplitude.reshape(scatters, patterns, boards)[0]
        for one, other in close:
            apart = np.linalg.norm(plan.shapes[:patterns, :, one] - plan.shapes[:patterns, :, other], axis=1)
            alike[one, other] = alike[other, one] = np.abs(amplitude) * apart[:, None] < _APART
    best = np.argmax(np.einsum("cdpm,dpm->cpm", alike, probability), axis=0)
    family = np.take_along_axis(alike, best[None, None], axis=0)[0]
    return family, np.argmax(np.where(family, probability, -1.0), axis=0)


@lru_cache(maxsize=64)
def _close_pairs(rules: tuple[Rule, ...]) -> list[tuple[int, int]]:
    """Pairs of rules whose frets fall within a tenth of a millimetre when scale and nut are fitted."""
    pairs = []
    for one, other in itertools.combinations(range(len(rules)), 2):
        count = min(_frets_of(rules[one]), _frets_of(rules[other]))
        target = _SHOP_SCALE * np.array(spacing.fractions(rules[one], count))
        design = np.array([spacing.fractions(rules[other], count), np.ones(count)]).T
        missed = target - design @ np.linalg.lstsq(design, target, rcond=None)[0]
        if count > design.shape[1] and np.max(np.abs(missed)) < _CLOSE:
            pairs.append((one, other))
    return pairs


def _frets_of(rule: Rule) -> int:
    """How many frets a comparison of rules can use."""
    return min(len(rule.cents), _SHOP_FRETS) if isinstance(rule, Listed) and not rule.repeat else _SHOP_FRETS


def _suspect(strain: Floats, weight: Floats, leader: Ints, readings: Ints, false_alarm: float) -> Ints:
    """Reading with the largest deleted residual under the leading rule, where chance does not explain it.

    The largest of n standard normal deviations exceeds z with a probability of at most
    n erfc(z / sqrt 2) (Bonferroni); with an unknown scatter that is averaged over its posterior.
    """
    pick = leader[None, None, :, :]
    own = np.take_along_axis(strain, pick[..., None], axis=0)[0]
    share = np.take_along_axis(weight, pick, axis=0)[0]
    share = share / np.maximum(np.sum(share, axis=0), 1e-300)
    largest = np.argmax(np.einsum("tpm,tpmn->pmn", share, own), axis=2)
    strained = np.take_along_axis(own, largest[None, ..., None], axis=3)[..., 0]
    suspect = np.full(leader.shape, -1)
    where = np.nonzero(np.max(strained, axis=0) > _NOTABLE)
    if where[0].size:
        chance = 2.0 * normal_survival(np.sqrt(strained[:, where[0], where[1]]))
        chance = np.sum(share[:, where[0], where[1]] * chance, axis=0) * readings[where[0]]
        suspect[where] = np.where(chance < false_alarm, largest[where], -1)
    return suspect
