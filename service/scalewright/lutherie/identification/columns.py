"""Findings as columns: all that is said of many boards, in millimetres, before it is put into words."""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.estimate import (
    Floats,
    coverage_factor,
    mixture_interval,
)
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.fit import Fits
from scalewright.lutherie.identification.inquiry import Inquiry
from scalewright.lutherie.identification.judge import ESTABLISHED, Findings
from scalewright.lutherie.identification.plan import Ints

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

    inquiry: Inquiry
    """Where and how surely the readings were taken, and what is asked."""
    readings: Floats
    """Their values, less what is known to be too much in them and the nut's expected offset; unused ones 0.
    shape (P, N, M) [mm]"""
    nut_mean: Floats
    """The nut's expected offset. shape (P,) [mm]"""
    scale_error: Floats
    """Relative standard uncertainty that all readings of a board share. shape (P,) [-]"""


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


def tabulate(findings: Findings, boards: Boards) -> Columns:
    """Put findings into columns.

    Parameters
    ----------
    findings : Findings
        What was found.
    boards : Boards
        The boards that were judged.

    Returns
    -------
    Columns
        By pattern and board.
    """
    fits, inquiry = findings.fits, boards.inquiry
    shape, coverage = findings.weight.shape, inquiry.beliefs.coverage
    position, divisor = fits.position.reshape(shape[1:]), fits.divisor.reshape(shape[1:])
    share = _shares(findings.weight)
    deviation = fits.divisor_deviation.reshape(shape[1:])
    # NaN where the readings cannot tell, and the scatter has no share.
    with np.errstate(invalid="ignore"):
        told = (share[:, -1] * deviation).sum(axis=0) < _DIVISOR_LIMIT
    estimate = _estimates(share[:, -1], np.where(told, divisor, np.nan), np.where(told, deviation, np.nan), coverage)
    low, high = inquiry.bounds
    within = (position >= low) & (position <= high)
    own = told & within
    shown = divisor
    if not own.all():
        shown = np.where(own, divisor, curve.divisor_at(fits.expected_position.reshape(shape[1:])))
    lengths, believed_true = _lengths(fits, boards, shape, own)
    by_candidate = _by_candidate(share, lengths, inquiry)
    # (2, T, 3, C, P, M) to the layout scales (2, C, T, P, M)
    believed = _believed(findings, by_candidate, lengths[:, :, 0].swapaxes(1, 2), believed_true, coverage)
    _allow_for_other_rules(believed, findings.of_family, findings.verdict == ESTABLISHED, coverage)
    return Columns(
        verdict=findings.verdict,
        leader=findings.leader,
        family=findings.family,
        probability=findings.of_family,
        candidate_probability=findings.probability,
        lengths=by_candidate,
        chi_square=findings.chi_square,
        degrees_of_freedom=inquiry.degrees_of_freedom,
        p_value=_p_values(findings.chi_square, inquiry),
        residuals=_residuals(fits, boards, shape, within[-1]),
        divisor=(share[:, -1] * shown).sum(axis=0),
        divisor_estimate=estimate,
        believed=believed,
    )


def _allow_for_other_rules(
    estimates: Floats, probability: Floats, established: NDArray[np.bool_], coverage: float
) -> None:
    """Widen the intervals under an established rule, so that they hold as often as stated though it may be another.

    An interval that holds with the probability q if the rule is right holds with q P(rule) in all: q = coverage / P.
    """
    unsure = established & (probability < _CERTAIN)
    if unsure.any():
        wanted = np.minimum(coverage / probability[unsure], max(WIDEST_COVERAGE, coverage)).tolist()
        stretch = np.ones(unsure.shape)
        stretch[unsure] = [coverage_factor(share) / coverage_factor(coverage) for share in wanted]
        estimates[2:] += (stretch - 1.0) * (estimates[2:] - estimates[0])


def _shares(weight: Floats) -> Floats:
    """Posterior of the scatter under each candidate; its upper bound where the candidate is impossible. (T, C, P, M)"""
    weight = weight.swapaxes(0, 1)
    if len(weight) == 1:
        return np.ones(weight.shape)
    total = weight.sum(axis=0)
    share = weight / np.where(total > 0.0, total, 1.0)
    share[-1] += total == 0.0
    return share


def _lengths(fits: Fits, boards: Boards, shape: tuple[int, ...], own_fit: NDArray[np.bool_]) -> tuple[Floats, Floats]:
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
    lengths[:, 1, :-1] = boards.inquiry.true_scale * lengths[:, 0, :-1]
    lengths[0, 1, -1], lengths[1, 1, -1] = fits.true_scale.reshape(shape[1:]), fits.true_deviation.reshape(shape[1:])
    believed = lengths[:, 1].copy()
    believed[0, -1], believed[1, -1] = (part.reshape(shape[1:]) for part in fits.expected[1])
    if not own_fit.all():
        for which, moments in enumerate(fits.expected):
            for part, expected in enumerate(moments):
                own = lengths[part, which, -1]
                lengths[part, which, -1] = np.where(own_fit, own, expected.reshape(shape[1:]))
    lengths[0, 2] += boards.nut_mean[:, None]
    if boards.scale_error.any():
        # An error that all readings share stretches the whole board by it.
        for quantity in (lengths, believed):
            quantity[1] = np.hypot(quantity[1], boards.scale_error[:, None] * quantity[0])
    return lengths.transpose(0, 3, 1, 2, 4, 5), believed


def _by_candidate(share: Floats, lengths: Floats, inquiry: Inquiry) -> Floats:
    """Estimates of the lengths that candidates stand for. shape (4, 3, C, P, M)"""
    coverage = inquiry.beliefs.coverage
    mean, deviation = lengths
    estimates = np.empty((4, *mean.shape[1:]))
    estimates[:, ::2] = _estimates(share[:, None], mean[:, ::2], deviation[:, ::2], coverage)
    # A fixed rule's true scale is its layout scale times a number.
    estimates[:, 1, :-1] = inquiry.true_scale[:, 0] * estimates[:, 0, :-1]
    estimates[:, 1, -1] = _estimates(share[:, -1], mean[:, 1, -1], deviation[:, 1, -1], coverage)
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
    patterns, boards = leader.shape
    row, column = np.arange(patterns)[:, None], np.arange(boards)
    believed: Floats = by_candidate[:, :2, leader, row, column]
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
    if len(mean) == 1:
        return _normal(mean[0], deviation[0], coverage)
    there = np.isfinite(mean)
    if not there.all():
        known = np.where(there, weight, 0.0).sum(axis=0)
        enough = known >= coverage
        weight = np.where(there, weight, 0.0) / np.where(enough, known, np.nan)
        mean, deviation = np.where(there, mean, 0.0), np.where(there, deviation, 1.0)
    value = (weight * mean).sum(axis=0)
    spread = np.sqrt((weight * (deviation**2 + (mean - value) ** 2)).sum(axis=0))
    estimate = _normal(value, spread, coverage)
    weight = np.broadcast_to(weight, mean.shape)
    mixed = (weight.max(axis=0) < _WHOLE) & np.isfinite(value)
    if mixed.any():
        estimate[2:, mixed] = mixture_interval(weight[:, mixed], mean[:, mixed], deviation[:, mixed], coverage)
    return estimate


def _normal(value: Floats, deviation: Floats, coverage: float) -> Floats:
    """Estimates of quantities that are normally distributed. shape (4, ...)"""
    estimate = np.empty((4, *value.shape))
    half = coverage_factor(coverage) * deviation
    estimate[0], estimate[1], estimate[2], estimate[3] = value, deviation, value - half, value + half
    return estimate


def _p_values(chi_square: Floats, inquiry: Inquiry) -> Floats:
    """Probability of a chi-square as large by chance, NaN without degrees of freedom. shape (C, P, M)"""
    p_value = inquiry.tail.beyond(chi_square)
    p_value[inquiry.degrees_of_freedom < 1] = np.nan
    return p_value


def _residuals(fits: Fits, boards: Boards, shape: tuple[int, ...], within: NDArray[np.bool_]) -> Floats:
    """Reading minus prediction under every candidate, of readings set aside too. shape (C, P, N, M)

    At the scatter given, or at its upper bound, like chi-square; a free divisor as it is expected to be where its fit
    is not within the prior's bounds.
    """
    inquiry = boards.inquiry
    start, end = inquiry.pattern.start[:, :, None], inquiry.pattern.end[:, :, None]
    scale, nut = fits.scale.reshape(shape)[:, -1], fits.nut.reshape(shape)[:, -1]
    position = fits.position.reshape(shape[1:])[-1]
    if not within.all():
        scale, nut = scale.copy(), nut.copy()
        position = np.where(within, position, fits.expected_position.reshape(shape[1:])[-1])
        for quantity, (expected, _) in ((scale, fits.expected[0]), (nut, fits.expected[2])):
            quantity[-1] = np.where(within, quantity[-1], expected.reshape(shape[1:])[-1])
    residuals = boards.readings - nut[:, :, None] * inquiry.from_nut
    residuals[:-1] -= scale[:-1, :, None] * inquiry.span
    step = curve.step_at(position)[:, None]
    residuals[-1] -= scale[-1, :, None] * (np.exp(-step * start) - np.exp(-step * end))
    return residuals
