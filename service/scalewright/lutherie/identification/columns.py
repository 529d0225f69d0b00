"""Findings as columns: all that is said of many boards, in millimetres, before it is put into words."""

import math
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie import spacing
from scalewright.lutherie.estimate import (
    Floats,
    chi_square_survival,
    coverage_factor,
    mixture_interval,
)
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import Beliefs
from scalewright.lutherie.identification.fit import Fits
from scalewright.lutherie.identification.judge import ESTABLISHED, Findings
from scalewright.lutherie.identification.plan import Ints, Pattern, rule_table

__all__ = ["WIDEST_COVERAGE", "Boards", "Columns", "Row", "tabulate"]

_DIVISOR_LIMIT = 10.0
"""A divisor less certain than this is not determined. [-]"""

_CERTAIN = 0.9999
"""A rule so probable leaves its intervals as they are."""

WIDEST_COVERAGE = 0.999
"""Coverage, given the rule, beyond which no interval is widened; a note then says that it assumes the rule."""

_WHOLE = 1.0 - 1e-12
"""A component with this share of a mixture is the mixture."""


@dataclass(frozen=True, slots=True)
class Boards:
    """P patterns of M boards with N readings each, as they are judged together."""

    pattern: Pattern
    """Where and how surely the readings were taken."""
    readings: Floats
    """Their values, less what is known to be too much in them and the nut's expected offset; unused ones 0.
    shape (P, N, M) [mm]"""
    nut_mean: Floats
    """The nut's expected offset. shape (P,) [mm]"""
    scale_error: Floats
    """Relative standard uncertainty that all readings of a board share. shape (P,) [-]"""
    scatter_known: bool
    """Whether the tool's scatter was given."""


class Row(NamedTuple):
    """What is said of one board, as plain numbers; an estimate is (value, deviation, lower, upper), NaN for none.

    Lists over candidates have the fixed rules first, then a free divisor.
    """

    verdict: int
    """ESTABLISHED, UNDECIDED or NONE."""
    leader: int
    """The most probable candidate."""
    family: list[bool]
    """Which candidates cannot be told from it."""
    probability: float
    """Of the leader, with its family. [-]"""
    candidate_probability: list[float]
    """Of each candidate. [-]"""
    layout_scale: list[list[float]]
    """Estimate by candidate. [mm]"""
    true_scale: list[list[float]]
    """Estimate by candidate. [mm]"""
    nut_offset: list[list[float]]
    """Estimate by candidate. [mm]"""
    chi_square: list[float]
    """By candidate. [-]"""
    degrees_of_freedom: list[int]
    """By candidate."""
    p_value: list[float]
    """By candidate; NaN without degrees of freedom. [-]"""
    residuals: list[list[float]]
    """By candidate and reading, padding included. [mm]"""
    divisor: float
    """The free divisor to show. [-]"""
    divisor_estimate: list[float]
    """The least-squares divisor, where it is determined. [-]"""
    believed_layout_scale: list[float]
    """Estimate over the leader's family, its interval wide enough for the chance that another rule is right. [mm]"""
    believed_true_scale: list[float]
    """Estimate over the leader's family with such an interval, or over all candidates where none is established.
    [mm]"""


@dataclass(frozen=True, slots=True)
class Columns:
    """What is said of P patterns of M boards, as arrays.

    Estimates are (value, deviation, lower, upper), NaN for none.
    """

    verdict: Ints
    """ESTABLISHED, UNDECIDED or NONE. shape (P, M)"""
    leader: Ints
    """The most probable candidate. shape (P, M)"""
    family: NDArray[np.bool_]
    """Which candidates cannot be told from it. shape (C, P, M)"""
    probability: Floats
    """Of the leader, with its family. shape (P, M) [-]"""
    candidate_probability: Floats
    """Of each candidate. shape (C, P, M) [-]"""
    lengths: Floats
    """Estimates of layout scale, true scale and nut offset. shape (4, 3, C, P, M) [mm]"""
    chi_square: Floats
    """By candidate. shape (C, P, M) [-]"""
    degrees_of_freedom: Ints
    """By candidate. shape (C, P)"""
    p_value: Floats
    """By candidate; NaN without degrees of freedom. shape (C, P, M) [-]"""
    residuals: Floats
    """By candidate and reading, padding included. shape (C, P, N, M) [mm]"""
    divisor: Floats
    """The free divisor to show. shape (P, M) [-]"""
    divisor_estimate: Floats
    """Estimate of the least-squares divisor, where it is determined. shape (4, P, M) [-]"""
    believed: Floats
    """Estimates of layout scale and true scale as in :class:`Row`. shape (4, 2, P, M) [mm]"""

    def row(self, p: int, m: int) -> Row:
        """Everything about one board."""
        layout, true, nut = self.lengths[:, :, :, p, m].transpose(1, 2, 0).tolist()
        return Row(
            int(self.verdict[p, m]),
            int(self.leader[p, m]),
            self.family[:, p, m].tolist(),
            float(self.probability[p, m]),
            self.candidate_probability[:, p, m].tolist(),
            layout,
            true,
            nut,
            self.chi_square[:, p, m].tolist(),
            self.degrees_of_freedom[:, p].tolist(),
            self.p_value[:, p, m].tolist(),
            self.residuals[:, p, :, m].tolist(),
            float(self.divisor[p, m]),
            self.divisor_estimate[:, p, m].tolist(),
            *self.believed[:, :, p, m].T.tolist(),
        )


def tabulate(findings: Findings, boards: Boards, beliefs: Beliefs) -> Columns:
    """Put findings into columns.

    Parameters
    ----------
    findings : Findings
        What was found.
    boards : Boards
        The boards that were judged.
    beliefs : Beliefs
        Candidates, priors and thresholds.

    Returns
    -------
    Columns
        By pattern and board.
    """
    fits = findings.fits
    shape = findings.weight.shape
    position, spread = fits.position.reshape(shape[1:]), fits.position_deviation.reshape(shape[1:])
    share = _shares(findings.weight)
    with np.errstate(invalid="ignore"):
        divisor_spread = np.sum(share[:, -1] * -curve.divisor_slope(position) * spread, axis=0)
    told = np.isfinite(divisor_spread) & (divisor_spread < _DIVISOR_LIMIT)
    expected = fits.expected_position.reshape(shape[1:])
    deviation = np.where(told, -curve.divisor_slope(position) * np.where(told, spread, 1.0), np.nan)
    divisor = np.where(told, curve.divisor_at(position), np.nan)

    own = told & _within(beliefs, position)
    lengths, believed_true = _lengths(fits, boards, beliefs, shape, own)
    by_candidate = _by_candidate(share, lengths, beliefs)
    # (2, T, 3, C, P, M) to the layout scales (2, C, T, P, M)
    believed = _believed(findings, by_candidate, lengths[:, :, 0].swapaxes(1, 2), believed_true, beliefs.coverage)
    probability = np.where(findings.family, findings.probability, 0.0).sum(axis=0)
    _allow_for_other_rules(believed, probability, findings.verdict == ESTABLISHED, beliefs.coverage)
    return Columns(
        verdict=findings.verdict,
        leader=findings.leader,
        family=findings.family,
        probability=probability,
        candidate_probability=findings.probability,
        lengths=by_candidate,
        chi_square=findings.chi_square,
        degrees_of_freedom=findings.degrees_of_freedom,
        p_value=_p_values(findings),
        residuals=_residuals(fits, boards, beliefs, shape, own),
        divisor=np.sum(share[:, -1] * curve.divisor_at(np.where(own, position, expected)), axis=0),
        divisor_estimate=_estimates(share[:, -1], divisor, deviation, beliefs.coverage),
        believed=believed,
    )


def _allow_for_other_rules(
    estimates: Floats, probability: Floats, established: NDArray[np.bool_], coverage: float
) -> None:
    """Widen the intervals under an established rule, so that they hold as often as stated though it may be another.

    An interval that holds with the probability q if the rule is right holds with q P(rule) in all: q = coverage / P.
    """
    unsure = established & (probability < _CERTAIN)
    chances = probability[unsure].tolist()
    if chances:
        wanted = [coverage_factor(max(min(coverage / chance, WIDEST_COVERAGE), coverage)) for chance in chances]
        stretch = np.array(wanted) / coverage_factor(coverage)
        centre = estimates[0][:, unsure]
        estimates[2:, :, unsure] = centre + stretch * (estimates[2:, :, unsure] - centre)


def _within(beliefs: Beliefs, position: Floats) -> NDArray[np.bool_]:
    """Whether least-squares divisors lie within the bounds of the prior."""
    free = beliefs.free_divisor
    return (position >= curve.position_of(free.upper)) & (position <= curve.position_of(free.lower))


def _shares(weight: Floats) -> Floats:
    """Posterior of the scatter under each candidate; its upper bound where the candidate is impossible. (T, C, P, M)"""
    weight = np.swapaxes(weight, 0, 1)
    total = np.sum(weight, axis=0)
    share = weight / np.where(total > 0.0, total, 1.0)
    share[-1] += total == 0.0
    return share


def _lengths(
    fits: Fits, boards: Boards, beliefs: Beliefs, shape: tuple[int, ...], own_fit: NDArray[np.bool_]
) -> tuple[Floats, Floats]:
    """Mean and deviation of the lengths that candidates stand for.

    Returns
    -------
    shown : ndarray, shape (2, T, 3, C, P, M)
        Layout scale, true scale and nut offset. A divisor that is determined, and within the prior's bounds, is shown
        with its own fit.
    believed : ndarray, shape (2, C, T, P, M)
        True scale, of a free divisor with the prior's bounds taken into account.
    """
    lengths = np.empty((2, 3, *shape))
    lengths[0, 0], lengths[1, 0] = fits.scale.reshape(shape), fits.scale_deviation.reshape(shape)
    lengths[0, 2], lengths[1, 2] = fits.nut.reshape(shape), fits.nut_deviation.reshape(shape)
    lengths[:, 1, :-1] = _true_scales(beliefs)[:, None, None, None] * lengths[:, 0, :-1]
    lengths[0, 1, -1], lengths[1, 1, -1] = fits.true_scale.reshape(shape[1:]), fits.true_deviation.reshape(shape[1:])
    believed = lengths[:, 1].copy()
    for which, moments in enumerate(fits.expected):
        for part, expected in enumerate(moments):
            own = lengths[part, which, -1]
            lengths[part, which, -1] = np.where(own_fit, own, expected.reshape(shape[1:]))
    believed[0, -1], believed[1, -1] = (part.reshape(shape[1:]) for part in fits.expected[1])
    lengths[0, 2] += boards.nut_mean[:, None]
    if boards.scale_error.any():
        # An error that all readings share stretches the whole board by it.
        for quantity in (lengths, believed):
            quantity[1] = np.hypot(quantity[1], boards.scale_error[:, None] * quantity[0])
    return lengths.transpose(0, 3, 1, 2, 4, 5), believed


def _true_scales(beliefs: Beliefs) -> Floats:
    """True scales of the fixed rules for a layout scale of one, NaN without an octave fret. shape (C - 1,)"""
    halves = [spacing.octave_fraction(rule) for rule in beliefs.fixed_rules]
    return np.array([math.nan if half is None else 2.0 * half for half in halves])


def _by_candidate(share: Floats, lengths: Floats, beliefs: Beliefs) -> Floats:
    """Estimates of the lengths that candidates stand for. shape (4, 3, C, P, M)"""
    estimates = np.empty((4, *lengths.shape[2:]))
    layout_and_nut, layout_and_nut_deviation = lengths[:, :, ::2]
    estimates[:, ::2] = _estimates(share[:, None], layout_and_nut, layout_and_nut_deviation, beliefs.coverage)
    # A fixed rule's true scale is its layout scale times a number.
    estimates[:, 1, :-1] = _true_scales(beliefs)[:, None, None] * estimates[:, 0, :-1]
    free, free_deviation = lengths[:, :, 1, -1]
    estimates[:, 1, -1] = _estimates(share[:, -1], free, free_deviation, beliefs.coverage)
    return estimates


def _believed(findings: Findings, by_candidate: Floats, layout: Floats, true: Floats, coverage: float) -> Floats:
    """Layout scale over the leader's family, and true scale over it or, where no rule is established, over all.

    Parameters
    ----------
    findings : Findings
        What was found.
    by_candidate : ndarray, shape (4, 3, C, P, M)
        Estimates under each candidate. [mm]
    layout, true : ndarray, shape (2, C, T, P, M)
        Mean and deviation of the two scales. [mm]
    coverage : float
        Probability that an interval holds.

    Returns
    -------
    ndarray, shape (4, 2, P, M)
        Estimates. [mm]
    """
    leader = findings.leader
    believed: Floats = np.take_along_axis(by_candidate[:, :2], leader[None, None, None], axis=2)[:, :, 0]
    established = findings.verdict == ESTABLISHED
    # Alone in its family, a fixed rule says all there is to say.
    alone = (findings.family.sum(axis=0) == 1) & (leader < len(findings.family) - 1)
    among = findings.family | ~established
    for which, (others, chosen, scale) in enumerate(
        ((~alone, findings.family, layout), (~(alone & established), among, true))
    ):
        if others.any():
            weight = (findings.weight * chosen[:, None])[:, :, others].reshape(-1, np.count_nonzero(others))
            mean, deviation = scale[:, :, :, others].reshape(2, *weight.shape)
            believed[:, which, others] = _estimates(weight / weight.sum(axis=0), mean, deviation, coverage)
    return believed


def _estimates(weight: Floats, mean: Floats, deviation: Floats, coverage: float) -> Floats:
    """Mixtures along the first axis as value, deviation, lower and upper. shape (4, ...)

    NaN where components that are not there (NaN themselves) have too large a share. Tails are equal.
    """
    there = np.isfinite(mean)
    if not there.all():
        known = np.sum(np.where(there, weight, 0.0), axis=0)
        enough = known >= coverage
        weight = np.where(there, weight, 0.0) / np.where(enough, known, np.nan)
        mean, deviation = np.where(there, mean, 0.0), np.where(there, deviation, 1.0)
    estimate = np.empty((4, *mean.shape[1:]))
    value = (weight * mean).sum(axis=0)
    spread = np.sqrt((weight * (deviation**2 + (mean - value) ** 2)).sum(axis=0))
    half = coverage_factor(coverage) * spread
    estimate[0], estimate[1], estimate[2], estimate[3] = value, spread, value - half, value + half
    if len(weight) == 1:
        return estimate
    weight = np.broadcast_to(weight, mean.shape)
    mixed = (np.max(weight, axis=0) < _WHOLE) & np.isfinite(value)
    if mixed.any():
        estimate[2:, mixed] = mixture_interval(weight[:, mixed], mean[:, mixed], deviation[:, mixed], coverage)
    return estimate


def _p_values(findings: Findings) -> Floats:
    """Probability of a chi-square as large by chance. shape (C, P, M)"""
    p_value = np.full(findings.chi_square.shape, np.nan)
    for freedom in set(findings.degrees_of_freedom.ravel().tolist()):
        if freedom > 0:
            where = findings.degrees_of_freedom == freedom
            p_value[where] = chi_square_survival(findings.chi_square[where], freedom)
    return p_value


def _residuals(
    fits: Fits, boards: Boards, beliefs: Beliefs, shape: tuple[int, ...], own_fit: NDArray[np.bool_]
) -> Floats:
    """Reading minus prediction under every candidate, of readings set aside too. shape (C, P, N, M)

    At the scatter given, or at its upper bound, like chi-square.
    """
    start, end = boards.pattern.start, boards.pattern.end
    scale, nut = fits.scale.reshape(shape)[:, -1].copy(), fits.nut.reshape(shape)[:, -1].copy()
    position = fits.position.reshape(shape[1:])[-1]
    beyond = ~_within(beliefs, position) & ~own_fit[-1]
    if beyond.any():
        position = np.where(beyond, fits.expected_position.reshape(shape[1:])[-1], position)
        for fitted, (expected, _) in ((scale, fits.expected[0]), (nut, fits.expected[2])):
            fitted[-1] = np.where(beyond, expected.reshape(shape[1:])[-1], fitted[-1])
    table = rule_table(beliefs.fixed_rules, int(end.max()))
    step = curve.step_at(position)[:, None, :]
    residuals = boards.readings - nut[:, :, None] * (start == 0)[:, :, None]
    residuals[:-1] -= scale[:-1, :, None] * (table[end] - table[start]).transpose(2, 0, 1)[..., None]
    residuals[-1] -= scale[-1, :, None] * (np.exp(-step * start[:, :, None]) - np.exp(-step * end[:, :, None]))
    return residuals
