"""From fits to probabilities: which rule leads, what it explains, and which reading it cannot."""

import itertools
import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie import spacing
from scalewright.lutherie.estimate import Floats, chi_square_quantile, normal_survival
from scalewright.lutherie.identification.candidates import (
    SCATTER_LOWER,
    SCATTER_SCALE,
    SCATTER_SHAPE,
    SCATTER_UPPER,
    Beliefs,
)
from scalewright.lutherie.identification.fit import Fits, deleted_residuals_of_divisor, fit
from scalewright.lutherie.identification.plan import Ints, Pattern, Plan, make_plan, rule_table
from scalewright.lutherie.spacing import Listed, Rule

__all__ = ["ESTABLISHED", "NONE", "UNDECIDED", "Findings", "judge", "plan_of", "scatter_nodes"]

ESTABLISHED, UNDECIDED, NONE = 0, 1, 2
"""The three verdicts, as the columns of a batch carry them."""

_BLUNDER_WIDTH = 2.0
"""Half of all misreadings are believed to be smaller than this. [mm]"""

_NOTABLE = 8.0
"""Squared deviations below this are no blunder, and make no difference to the probabilities worth the name."""

_NEGLIGIBLE = 40.0
"""A candidate whose marginal likelihood is smaller by this power of e cannot be seen in a double."""

_MAJORITY = 3
"""Of fewer readings nobody can tell which is the blunder."""

_SCATTER_NODES = 11

_SHOP_SCALE, _SHOP_FRETS, _CLOSE = 650.0, 24, 0.1
"""Rules are of one family only if on such a board [mm] with so many frets they come this close [mm]."""

_APART = 2.0
"""And if the readings tell them apart by less than this. [standard deviations]"""


@lru_cache(maxsize=1)
def scatter_nodes() -> tuple[Floats, Floats]:
    """Scatter of an unknown tool as a few values with weights, the last the upper bound with weight zero.

    Returns
    -------
    scatter, weight : ndarray, shape (T,)
        Gauss and Legendre's abscissae in the logarithm, with the density of the prior. [mm], [-]
    """
    at, weight = np.polynomial.legendre.leggauss(_SCATTER_NODES)
    low, high = math.log(SCATTER_LOWER), math.log(SCATTER_UPPER)
    logarithm = 0.5 * (high + low) + 0.5 * (high - low) * at
    weight = weight * np.exp(-0.5 * ((logarithm - math.log(SCATTER_SCALE)) / SCATTER_SHAPE) ** 2)
    return np.append(np.exp(logarithm), SCATTER_UPPER), np.append(weight / np.sum(weight), 0.0)


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
    suspect: Ints
    """The reading that the leading rule cannot explain though it explains the others, or -1. shape (P, M)"""


def plan_of(pattern: Pattern, beliefs: Beliefs, *, scatter_known: bool) -> Plan:
    """Make a pattern ready for :func:`judge`.

    Parameters
    ----------
    pattern : Pattern
        P patterns of N readings.
    beliefs : Beliefs
        Candidates and priors.
    scatter_known : bool
        Whether the pattern's scatter was given; otherwise there is a plan for each value that is integrated over.

    Returns
    -------
    Plan
        Of T x P patterns.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the highest fret read and do not repeat.
    """
    scatter = pattern.scatter[None, :]
    if not scatter_known:
        scatter = np.repeat(scatter_nodes()[0][:, None], len(pattern.start), axis=1)
    return make_plan(_repeat(pattern, scatter), rule_table(beliefs.fixed_rules, int(pattern.end.max())))


def judge(plan: Plan, readings: Floats, beliefs: Beliefs, *, scatter_known: bool) -> Findings:
    """Weigh the candidates for many boards.

    Parameters
    ----------
    plan : Plan
        P patterns of N readings, as :func:`plan_of` makes them ready.
    readings : ndarray, shape (P, N, M)
        Readings of M boards of each, less the nut's expected offset; unused ones 0. [mm]
    beliefs : Beliefs
        Candidates, priors and thresholds.
    scatter_known : bool
        Whether the tool's scatter was given; otherwise it is integrated over its prior.

    Returns
    -------
    Findings
        Probabilities, verdicts and suspects.

    Notes
    -----
    A reading may be a blunder: with a small probability one of a board's readings comes not from
    the normal distribution of its errors but from a far wider one (Cauchy's). As the rest of the
    readings predicts each of them (its deleted residual e, with standard deviation s), that
    multiplies a candidate's marginal likelihood by
    (1 - p) + p/N sum_k wide(e_k) / normal(e_k; s_k): one blunder cannot carry a rule away.
    """
    patterns, count, boards = readings.shape
    scatter_weight = np.ones(1) if scatter_known else scatter_nodes()[1]
    scatters = len(scatter_weight)
    tiled = readings
    if scatters > 1:
        tiled = np.broadcast_to(readings, (scatters, *readings.shape)).reshape(scatters * patterns, count, boards)
    fits = fit(plan, tiled, beliefs.free_divisor)

    priors = beliefs.priors
    candidates = len(priors)
    with np.errstate(divide="ignore"):
        log_prior = np.log(priors)[:, None, None, None] + np.log(scatter_weight)[None, :, None, None]
    log_weight = fits.log_evidence.reshape(candidates, scatters, patterns, boards) + log_prior
    strains = _Strains(plan, fits, tiled) if beliefs.misreading > 0.0 else None
    if strains is not None:
        log_weight += _blunder_factor(log_weight, strains, beliefs.misreading, plan.readings)

    weight = np.exp(log_weight - log_weight.max(axis=(0, 1)))
    weight /= weight.sum(axis=(0, 1))
    probability = weight.sum(axis=1)
    family, leader = _families(probability, beliefs.fixed_rules, plan, fits, scatters)
    of_family = np.where(family, probability, 0.0).sum(axis=0)

    chi_square = fits.chi_square.reshape(candidates, scatters, patterns, boards)[:, -1].copy()
    chi_square[-1] = fits.bounded_chi_square.reshape(scatters, patterns, boards)[-1]
    # Where the readings say nothing of the divisor, it takes nothing from their freedom.
    parameters = np.ones((candidates, patterns), dtype=np.int64)
    parameters[-1] += plan.bends[:patterns]
    freedom = plan.readings[None, :patterns] - parameters
    limit = [_limit(beliefs.significance, k) for k in freedom.ravel().tolist()]
    explained = chi_square <= np.array(limit).reshape(candidates, patterns, 1)
    leads = np.any(explained & (np.arange(candidates)[:, None, None] == leader), axis=0)
    sure = of_family >= beliefs.threshold
    # What explains the readings keeps a rule possible only if it is itself in question.
    possible = np.any(explained & (probability >= 1.0 - beliefs.threshold), axis=0)
    scale = fits.scale.reshape(candidates, scatters, patterns, boards)[:, -1]
    own_scale = np.where(np.arange(candidates)[:, None, None] == leader, scale, 0.0).sum(axis=0)
    plausible = (own_scale >= beliefs.scale_lower) & (own_scale <= beliefs.scale_upper)
    verdict = np.where(sure & leads, ESTABLISHED, np.where(possible & ~(sure & ~leads), UNDECIDED, NONE))
    verdict = np.where(plausible, verdict, NONE)
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
        suspect=np.full(leader.shape, -1)
        if strains is None
        else _suspect(strains, weight, leader, plan.readings[:patterns], beliefs.false_alarm),
    )


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


class _Strains:
    """Deleted residuals of every candidate in units of their standard deviation."""

    def __init__(self, plan: Plan, fits: Fits, readings: Floats) -> None:
        self._plan = plan
        fixed = plan.pull @ readings
        self.most = np.zeros(fits.chi_square.shape)
        """Square of the largest, by candidate. shape (C, T P, M)"""
        self.most[:-1] = np.maximum(fixed.max(axis=2), -fixed.min(axis=2)) ** 2
        # A free divisor fits at least as well as any rule: where a rule has no reading that is notably off,
        # neither has the divisor.
        columns = np.nonzero(np.any(np.min(self.most[:-1], axis=0, initial=np.inf) > _NOTABLE, axis=0))[0]
        free = np.zeros(readings.shape)
        self._free_spread = np.ones(readings.shape)
        if columns.size:
            strain, spread = deleted_residuals_of_divisor(
                plan, fits.position[:, columns], fits.amplitude[:, columns], fits.remainder[:, :, columns]
            )
            free[:, :, columns], self._free_spread[:, :, columns] = strain, spread
            self.most[-1][:, columns] = np.max(strain * strain, axis=1)
        self.strains = [*fixed, free]
        """By candidate. each of shape (T P, N, M)"""

    def spread(self, candidate: int, rows: Ints, readings: Ints, boards: Ints) -> Floats:
        """Standard deviation of some deleted residuals. [mm]"""
        if candidate < len(self.strains) - 1:
            return self._plan.pull_spread[candidate, rows, readings]
        return self._free_spread[rows, readings, boards]


def _blunder_factor(log_weight: Floats, strains: _Strains, misreading: float, readings: Ints) -> Floats:
    """Logarithm of what the chance of one blunder adds to every marginal likelihood. shape (C, T, P, M)

    Only where it can matter: for candidates that a blunder could bring back into the comparison, and for
    readings that are notably off.
    """
    most = strains.most
    flat = log_weight.reshape(most.shape)
    factor = np.full(most.shape, math.log1p(-misreading))
    best = np.max(log_weight, axis=(0, 1))
    bar = np.broadcast_to(best - _NEGLIGIBLE, log_weight.shape).reshape(most.shape)
    matters = (most > _NOTABLE) & (flat + 0.5 * most > bar)
    if not matters.any():
        return factor.reshape(log_weight.shape)
    for candidate, strain in enumerate(strains.strains):
        rows, boards = np.nonzero(matters[candidate])
        if not rows.size:
            continue
        own = strain[rows, :, boards]
        board, reading = np.nonzero(own * own > _NOTABLE)
        spread = strains.spread(candidate, rows[board], reading, boards[board])
        off = own[board, reading]
        wide = 1.0 / (_BLUNDER_WIDTH * math.pi * (1.0 + (off * spread / _BLUNDER_WIDTH) ** 2))
        peak = 0.5 * most[candidate, rows, boards]
        gain = wide * spread * math.sqrt(2.0 * math.pi) * np.exp(0.5 * off * off - peak[board])
        share = np.bincount(board, gain, len(rows)) * misreading / readings[rows]
        factor[candidate, rows, boards] = peak + np.log((1.0 - misreading) * np.exp(-peak) + share)
    return factor.reshape(log_weight.shape)


def _families(
    probability: Floats, rules: tuple[Rule, ...], plan: Plan, fits: Fits, scatters: int
) -> tuple[NDArray[np.bool_], Ints]:
    """The leading candidate and those whose frets cannot be told from its own."""
    close = _close_pairs(rules)
    leader = np.argmax(probability, axis=0)
    candidates, patterns, boards = probability.shape
    if not close:
        return np.arange(candidates)[:, None, None] == leader, leader
    alike = np.zeros((candidates, *probability.shape), dtype=np.bool_)
    alike[np.arange(candidates), np.arange(candidates)] = True
    amplitude = fits.amplitude.reshape(scatters, patterns, boards)[0]
    for one, other in close:
        apart = np.linalg.norm(plan.shapes[:patterns, one] - plan.shapes[:patterns, other], axis=1)
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


def _suspect(strains: _Strains, weight: Floats, leader: Ints, readings: Ints, false_alarm: float) -> Ints:
    """Reading with the largest deleted residual under the leading rule, where chance does not explain it.

    The largest of n standard normal deviations exceeds z with a probability of at most
    n erfc(z / sqrt 2) (Bonferroni); with an unknown scatter that is averaged over its posterior.
    """
    candidates, scatters, patterns, boards = weight.shape
    suspect = np.full(leader.shape, -1)
    most = strains.most.reshape(candidates, scatters, patterns, boards).max(axis=1)
    notable = (most > _NOTABLE) & (np.arange(candidates)[:, None, None] == leader)
    if not notable.any():
        return suspect
    for candidate, strain in enumerate(strains.strains):
        p, m = np.nonzero(notable[candidate])
        if not p.size:
            continue
        own = strain.reshape(scatters, patterns, -1, boards)[:, p, :, m].swapaxes(0, 1)
        share = weight[candidate][:, p, m]
        share = share / np.maximum(np.sum(share, axis=0), 1e-300)
        largest = np.argmax(np.einsum("tn,tnk->nk", share, own * own), axis=1)
        off = np.abs(own[:, np.arange(len(p)), largest])
        chance = 2.0 * np.sum(share * normal_survival(off), axis=0)
        named = (chance * readings[p] < false_alarm) & (readings[p] >= _MAJORITY)
        suspect[p, m] = np.where(named, largest, -1)
    return suspect
