"""From fits to probabilities: which rule leads, what it explains, and which reading it cannot."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.estimate import Floats, normal_survival
from scalewright.lutherie.identification.fit import Fits, deleted_residuals_of_divisor, fit
from scalewright.lutherie.identification.inquiry import Inquiry
from scalewright.lutherie.identification.plan import Ints, Plan

__all__ = ["ESTABLISHED", "NONE", "UNDECIDED", "Findings", "judge"]

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

_APART = 2.0
"""Rules are of one family if the readings tell them apart by less than this. [standard deviations]"""


@dataclass(frozen=True, slots=True)
class Findings:
    """What was found for P patterns of M boards.

    C candidates, the fixed rules first, then a free divisor; T values of the tool's scatter, one if it was given.
    """

    fits: Fits
    """Of T x P patterns."""
    weight: Floats
    """Joint probability of candidate and scatter. shape (C, T, P, M) [-]"""
    probability: Floats
    """Probability of every candidate. shape (C, P, M) [-]"""
    family: NDArray[np.bool_]
    """Which candidates cannot be told from the leading one. shape (C, P, M)"""
    of_family: Floats
    """Probability of that family. shape (P, M) [-]"""
    leader: Ints
    """The most probable member of the most probable family. shape (P, M)"""
    verdict: Ints
    """ESTABLISHED, UNDECIDED or NONE. shape (P, M)"""
    chi_square: Floats
    """At the given scatter, or at its upper bound. shape (C, P, M) [-]"""
    suspect: Ints
    """The reading that the leading rule cannot explain though it explains the others, or -1. shape (P, M)"""


def judge(inquiry: Inquiry, readings: Floats) -> Findings:
    """Weigh the candidates for many boards.

    Parameters
    ----------
    inquiry : Inquiry
        What is asked of boards of P patterns with N readings each.
    readings : ndarray, shape (P, N, M)
        Readings of M boards of each, less the nut's expected offset; unused ones 0. [mm]

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
    plan, beliefs = inquiry.plan, inquiry.beliefs
    patterns, count, boards = readings.shape
    scatters, candidates = inquiry.scatters, len(inquiry.log_prior)
    tiled = readings
    if scatters > 1:
        tiled = np.broadcast_to(readings, (scatters, *readings.shape)).reshape(scatters * patterns, count, boards)
    fits = fit(plan, tiled, beliefs.free_divisor)
    log_weight = fits.log_evidence.reshape(candidates, scatters, patterns, boards) + inquiry.log_prior
    strains = _Strains(plan, fits, tiled) if beliefs.misreading > 0.0 else None
    if strains is not None:
        _allow_for_a_blunder(log_weight, strains, beliefs.misreading, plan.readings)

    weight = np.exp(log_weight - log_weight.max(axis=(0, 1)))
    weight /= weight.sum(axis=(0, 1))
    probability = weight.sum(axis=1)
    family, leader = _families(probability, inquiry, fits)
    of_family = np.where(family, probability, 0.0).sum(axis=0)
    leads = np.arange(candidates)[:, None, None] == leader

    chi_square = fits.chi_square.reshape(candidates, scatters, patterns, boards)[:, -1].copy()
    chi_square[-1] = fits.bounded_chi_square.reshape(scatters, patterns, boards)[-1]
    explained = chi_square <= inquiry.limit
    explains = (explained & leads).any(axis=0)
    sure = of_family >= beliefs.threshold
    # What explains the readings keeps a rule possible only if it leads or is itself in question.
    possible = explains | (explained & (probability >= 1.0 - beliefs.threshold)).any(axis=0)
    scale = fits.scale.reshape(candidates, scatters, patterns, boards)[:, -1]
    own_scale = np.where(leads, scale, 0.0).sum(axis=0)
    plausible = (own_scale >= beliefs.scale_lower) & (own_scale <= beliefs.scale_upper)
    verdict = np.full(leader.shape, NONE)
    verdict[plausible & possible & (explains | ~sure)] = UNDECIDED
    verdict[plausible & explains & sure] = ESTABLISHED
    return Findings(
        fits=fits,
        weight=weight,
        probability=probability,
        family=family,
        of_family=of_family,
        leader=leader,
        verdict=verdict,
        chi_square=chi_square,
        suspect=np.full(leader.shape, -1)
        if strains is None
        else _suspect(strains, weight, leads, plan.readings[:patterns], beliefs.false_alarm),
    )


class _Strains:
    """Deleted residuals of every candidate in units of their standard deviation."""

    def __init__(self, plan: Plan, fits: Fits, readings: Floats) -> None:
        self._plan = plan
        fixed = plan.pull @ readings
        self.strains = list(fixed)
        """By candidate, a free divisor's where any are notable. each of shape (T P, N, M)"""
        self.most = np.zeros(fits.chi_square.shape)
        """Square of the largest, by candidate. shape (C, T P, M)"""
        self.most[:-1] = np.maximum(fixed.max(axis=2), -fixed.min(axis=2)) ** 2
        # A free divisor fits at least as well as any rule: where a rule has no reading that is notably off,
        # neither has the divisor.
        notable = (self.most[:-1] > _NOTABLE).all(axis=0).any(axis=0)
        if notable.any():
            columns = np.nonzero(notable)[0]
            strain, spread = deleted_residuals_of_divisor(
                plan, fits.position[:, columns], fits.amplitude[:, columns], fits.remainder[:, :, columns]
            )
            free = np.zeros(readings.shape)
            self._free_spread = np.ones(readings.shape)
            free[:, :, columns], self._free_spread[:, :, columns] = strain, spread
            self.strains.append(free)
            self.most[-1][:, columns] = np.max(strain * strain, axis=1)

    def spread(self, candidate: int, rows: Ints, readings: Ints, boards: Ints) -> Floats:
        """Standard deviation of some deleted residuals. [mm]"""
        if candidate < len(self.most) - 1:
            return self._plan.pull_spread[candidate, rows, readings]
        return self._free_spread[rows, readings, boards]


def _allow_for_a_blunder(log_weight: Floats, strains: _Strains, misreading: float, readings: Ints) -> None:
    """Add to the logarithm of every marginal likelihood, of shape (C, T, P, M), what the chance of one blunder adds.

    Only where it can matter: for candidates that a blunder could bring back into the comparison, and for
    readings that are notably off.
    """
    most = strains.most
    bar = log_weight.max(axis=(0, 1)) - _NEGLIGIBLE
    strain = most.reshape(log_weight.shape)
    matters = ((strain > _NOTABLE) & (log_weight + 0.5 * strain > bar)).reshape(most.shape)
    flat = log_weight.reshape(most.shape)
    flat += math.log1p(-misreading)
    if not matters.any():
        return
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
        share = np.bincount(board, gain, len(rows)) * misreading / readings[rows] / (1.0 - misreading)
        flat[candidate, rows, boards] += peak + np.log(np.exp(-peak) + share)


def _families(probability: Floats, inquiry: Inquiry, fits: Fits) -> tuple[NDArray[np.bool_], Ints]:
    """The leading candidate and those whose frets cannot be told from its own."""
    leader = probability.argmax(axis=0)
    candidates, patterns, boards = probability.shape
    if not inquiry.apart:
        return np.arange(candidates)[:, None, None] == leader, leader
    alike = np.zeros((candidates, *probability.shape), dtype=np.bool_)
    alike[np.arange(candidates), np.arange(candidates)] = True
    amplitude = np.abs(fits.amplitude.reshape(inquiry.scatters, patterns, boards)[0])
    for one, other, apart in inquiry.apart:
        alike[one, other] = alike[other, one] = amplitude * apart < _APART
    best = np.argmax(np.einsum("cdpm,dpm->cpm", alike, probability), axis=0)
    family = np.take_along_axis(alike, best[None, None], axis=0)[0]
    return family, np.argmax(np.where(family, probability, -1.0), axis=0)


def _suspect(strains: _Strains, weight: Floats, leads: NDArray[np.bool_], readings: Ints, false_alarm: float) -> Ints:
    """Reading with the largest deleted residual under the leading rule, where chance does not explain it.

    The largest of n standard normal deviations exceeds z with a probability of at most
    n erfc(z / sqrt 2) (Bonferroni); with an unknown scatter that is averaged over its posterior.
    """
    _, scatters, patterns, boards = weight.shape
    suspect = np.full((patterns, boards), -1)
    most = strains.most.reshape(weight.shape).max(axis=1)
    notable = (most > _NOTABLE) & leads
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
