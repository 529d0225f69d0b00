"""The fits of all candidates to many boards at once, and how well each explains them."""

import math
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import FreeDivisor
from scalewright.lutherie.identification.plan import Plan

__all__ = ["Fits", "deleted_residuals", "deleted_residuals_of_divisor", "fit"]

_NEWTON_STEPS = 12
_CONCENTRATED = 0.03
"""Below this deviation of a divisor on the series' axis its likelihood is a bell to a part in a thousand."""
_MARGIN = 6.0
"""Deviations that must lie between such a bell and the bounds of the prior."""
_REACH = 8.0
"""Deviations beyond which a likelihood is not integrated."""
_TOLD = 1e-9
"""Share of its own weight that the other readings must leave a reading to say anything of it."""
_ABSCISSAE, _WEIGHTS = np.polynomial.legendre.leggauss(32)


@dataclass(frozen=True, slots=True)
class Fits:
    """Fits of F fixed rules and, last, of a free divisor: C = F + 1 candidates, P patterns, M boards each."""

    chi_square: Floats
    """Weighted squares of the residuals, with the nut's. shape (C, P, M) [-]"""
    scale: Floats
    """Layout scale. shape (C, P, M) [mm]"""
    scale_deviation: Floats
    """Its standard deviation. shape (C, P, M) [mm]"""
    nut: Floats
    """Nut offset, against its expected value. shape (C, P, M) [mm]"""
    nut_deviation: Floats
    """Its standard deviation. shape (C, P, M) [mm]"""
    log_evidence: Floats
    """Logarithm of the marginal likelihood, up to a constant that candidates and patterns share. shape (C, P, M)"""
    position: Floats
    """Least-squares divisor, as a position on the series' axis. shape (P, M)"""
    position_deviation: Floats
    """Its standard deviation; infinite where the readings cannot tell. shape (P, M)"""
    expected_position: Floats
    """Position of the divisor expected: the least-squares one, or the posterior mean where the readings
    hardly determine it. shape (P, M)"""
    true_scale: Floats
    """True scale under the least-squares divisor. shape (P, M) [mm]"""
    true_deviation: Floats
    """Its standard deviation. shape (P, M) [mm]"""
    expected: tuple[tuple[Floats, Floats], ...]
    """Posterior mean and standard deviation of layout scale, true scale and nut offset under a free
    divisor within the prior's bounds; the least-squares ones where its likelihood is a bell well
    within them. Each of shape (P, M) [mm]"""
    amplitude: Floats
    """Length of the readings along the reference shape. shape (P, M) [-]"""
    remainder: Floats
    """What is left of the whitened readings at right angles to it. shape (P, M, R) [-]"""


def fit(plan: Plan, readings: Floats, prior: FreeDivisor) -> Fits:
    """Least-squares fits and marginal likelihoods of all candidates.

    Parameters
    ----------
    plan : Plan
        P patterns of N readings.
    readings : ndarray, shape (P, M, N)
        Readings of M boards of each pattern, less the nut's expected offset; unused ones 0. [mm]
    prior : FreeDivisor
        Bounds within which any divisor is equally likely.

    Returns
    -------
    Fits
        Of every fixed rule of the plan and of a free divisor.

    Notes
    -----
    With the scale and the nut offset linear, and the offset's prior one more reading, a fixed
    rule's fit is closed. A free divisor is the one parameter that is not linear: for each divisor
    the others are eliminated (variable projection), and what is left is minimised in it.
    With r the remainder, a the amplitude and t a rule's shape,
    chi-square = r.r + (a² t.t - 2 a t.r - (t.r)²) / (1 + t.t).

    The marginal likelihood integrates over the scale (uniform) and the nut offset (normal) in closed
    form and over a free divisor (uniform) by its bell, or by quadrature where it is none.

    References
    ----------
    .. [golub-1973] G. H. Golub and V. Pereyra, "The differentiation of pseudo-inverses and nonlinear
       least squares problems whose variables separate", SIAM J. Numer. Anal. 10, 413 (1973).
    """
    whitened = readings @ np.swapaxes(plan.whiten, 1, 2)
    along_nut = np.zeros(whitened.shape[:2])
    if plan.nut is not None:
        whitened = np.concatenate([whitened, np.zeros((*whitened.shape[:2], 1))], axis=2)
        along_nut = np.squeeze(whitened @ plan.nut[:, :, None], 2)
        whitened -= along_nut[:, :, None] * plan.nut[:, None, :]
    amplitude = np.squeeze(whitened @ plan.reference[:, :, None], 2)
    remainder = whitened - amplitude[:, :, None] * plan.reference[:, None, :]
    square = np.einsum("pmr,pmr->pm", remainder, remainder)

    # The fixed rules, in closed form. shape (F, P, M)
    overlap = np.moveaxis(remainder @ plan.shapes, 2, 0)
    shape_square = np.sum(plan.shapes * plan.shapes, axis=1).T[:, :, None]
    lengths = plan.lengths.T[:, :, None]
    chi_square, scale, scale_deviation = _profile(amplitude, square, overlap, shape_square, lengths)

    free = _FreeFit(plan, amplitude, square, remainder, prior)
    chi_squares = np.concatenate([chi_square, free.chi_square[None]])
    scales = np.concatenate([scale, free.scale[None]])
    deviations = np.concatenate([scale_deviation, free.scale_deviation[None]])
    evidence = np.concatenate([np.log(scale_deviation) - 0.5 * chi_square, free.log_evidence[None]])

    if plan.nut is None:
        nut = np.zeros(scales.shape)
        nut_deviation = np.zeros(scales.shape)
        expected_nut = (nut[-1], nut_deviation[-1])
    else:
        slopes = plan.nut_slope.T[:, :, None]
        inverse = 1.0 / plan.nut_norm[:, None]
        level = along_nut * inverse
        nut = level - np.concatenate([slopes * scale, free.nut_shift[None]])
        nut_deviation = np.hypot(inverse, np.concatenate([slopes * scale_deviation, free.nut_shift_deviation[None]]))
        shift, shift_deviation = free.expected_nut_shift
        expected_nut = (level - shift, np.hypot(inverse, shift_deviation))
    return Fits(
        chi_square=chi_squares,
        scale=scales,
        scale_deviation=deviations,
        nut=nut,
        nut_deviation=nut_deviation,
        log_evidence=evidence + plan.log_weight[:, None],
        position=free.position,
        position_deviation=free.position_deviation,
        expected_position=free.expected_position,
        true_scale=free.true_scale,
        true_deviation=free.true_deviation,
        expected=(free.expected_scale, free.expected_true_scale, expected_nut),
        amplitude=amplitude,
        remainder=remainder,
    )


def _profile(
    amplitude: Floats, square: Floats, overlap: Floats, shape_square: Floats, lengths: Floats
) -> tuple[Floats, Floats, Floats]:
    """Chi-square, scale and its standard deviation for shapes that are given."""
    stretch = 1.0 + shape_square
    numerator = amplitude * amplitude * shape_square - (2.0 * amplitude + overlap) * overlap
    # Rounding may leave a perfect fit a hair below zero.
    chi_square = np.maximum(square + numerator / stretch, 0.0)
    scale = (amplitude + overlap) / (stretch * lengths)
    deviation = np.broadcast_to(1.0 / (np.sqrt(stretch) * lengths), scale.shape)
    return chi_square, scale, deviation


class _FreeFit:
    """The fit of a free divisor, and the integral over it. All results have the shape (P, M)."""

    def __init__(self, plan: Plan, amplitude: Floats, square: Floats, remainder: Floats, prior: FreeDivisor) -> None:
        self._amplitude = amplitude
        self._square = square
        terms = plan.shape_curve.shape[2]
        self._terms = terms
        slope = curve.derivative(terms)
        # Series of the overlap t.r, by board, and of what depends on the pattern alone; each with
        # its first two derivatives. shape (3, J, P, M) and (3, J, P)
        overlap = remainder @ plan.shape_curve
        self._overlap = np.stack([overlap, overlap @ slope, overlap @ slope @ slope]).transpose(0, 3, 1, 2)
        self._shape_square = np.stack(
            [plan.square_curve, plan.square_curve @ slope, plan.square_curve @ slope @ slope]
        ).transpose(0, 2, 1)
        self._length = np.stack([plan.length_curve, plan.length_curve @ slope]).transpose(0, 2, 1)
        self._speed = plan.speed_curve.T
        self._nut_slope = np.stack([plan.nut_slope_curve, plan.nut_slope_curve @ slope]).transpose(0, 2, 1)

        at_nodes = remainder @ plan.shape_at_nodes
        node_square = np.sum(plan.shape_at_nodes**2, axis=1)[:, None, :]
        loss = (amplitude[:, :, None] ** 2 * node_square - (2.0 * amplitude[:, :, None] + at_nodes) * at_nodes) / (
            1.0 + node_square
        )
        self.position = curve.nodes(terms)[np.argmin(loss, axis=2)]
        self._minimise()
        self._integrate(prior)

    def _minimise(self) -> None:
        """Newton's method for the divisor, kept within the axis; then the least-squares covariance."""
        position = self.position
        for _ in range(_NEWTON_STEPS):
            values = curve.basis(position, self._terms)
            b, db, ddb = np.einsum("djpm,jpm->dpm", self._overlap, values)
            s, ds, dds = np.einsum("djp,jpm->dpm", self._shape_square, values)
            speed = np.einsum("jp,jpm->pm", self._speed, values)
            a = self._amplitude
            stretch = 1.0 + s
            loss = (a * a * s - (2.0 * a + b) * b) / stretch
            first = (a * a * ds - 2.0 * (a + b) * db - loss * ds) / stretch
            second = (a * a * dds - 2.0 * db * db - 2.0 * (a + b) * ddb - 2.0 * first * ds - loss * dds) / stretch
            # Gauss and Newton's curvature, which cannot be negative, where the true one is.
            gauss = 2.0 * ((a + b) / stretch) ** 2 * np.maximum(speed - 0.25 * ds * ds / stretch, 0.0)
            curvature = np.where(second > 0.1 * gauss, second, gauss)
            with np.errstate(divide="ignore", invalid="ignore"):
                step = np.where(curvature > 0.0, -first / curvature, 0.0)
            moved = np.clip(position + np.clip(step, -0.3, 0.3), -1.0, 1.0)
            change = float(np.max(np.abs(moved - position), initial=0.0))
            position = moved
            if change < 1e-9:
                break
        values = curve.basis(position, self._terms)
        b = np.einsum("jpm,jpm->pm", self._overlap[0], values)
        s, ds = np.einsum("djp,jpm->dpm", self._shape_square[:2], values)
        length, dlength = np.einsum("djp,jpm->dpm", self._length, values)
        slope, dslope = np.einsum("djp,jpm->dpm", self._nut_slope, values)
        speed = np.einsum("jp,jpm->pm", self._speed, values)
        self.position = position
        self._curvature = 0.5 * second
        self.chi_square, self.scale, given = _profile(self._amplitude, self._square, b, s, length)
        height = self.scale * length
        across = np.maximum(speed - 0.25 * ds * ds / (1.0 + s), 0.0)
        inside = np.abs(position) < 1.0
        with np.errstate(divide="ignore"):
            self.position_deviation = np.where(inside, 1.0 / (np.abs(height) * np.sqrt(across)), np.inf)
        # How the scale follows when the divisor moves (the fit's own covariance, as from the normal matrix).
        follows = -self.scale * (0.5 * ds / (1.0 + s) + dlength / length)
        spread = np.where(np.isfinite(self.position_deviation), self.position_deviation, 0.0)
        self.scale_deviation = np.hypot(given, follows * spread)
        self.nut_shift = slope * self.scale
        self.nut_shift_deviation = np.hypot(slope * given, (dslope * self.scale + slope * follows) * spread)
        _, fraction, fraction_slope = _octave(position, position)
        self.true_scale = 2.0 * self.scale * fraction
        self.true_deviation = 2.0 * np.hypot(
            given * fraction, (follows * fraction + self.scale * fraction_slope) * spread
        )
        self._log_given = np.log(given)

    def _integrate(self, prior: FreeDivisor) -> None:
        """The marginal likelihood over the divisor, and moments where the likelihood is no bell."""
        upper, lower = curve.position_of(prior.lower), curve.position_of(prior.upper)
        with np.errstate(divide="ignore", invalid="ignore"):
            deviation = 1.0 / np.sqrt(self._curvature)
        deviation = np.where(np.isfinite(deviation), deviation, np.inf)
        bell = (
            (deviation < _CONCENTRATED)
            & (self.position - lower > _MARGIN * deviation)
            & (upper - self.position > _MARGIN * deviation)
        )
        density = -math.log(prior.upper - prior.lower)
        with np.errstate(invalid="ignore", over="ignore"):
            self.log_evidence = (
                density
                - 0.5 * self.chi_square
                + self._log_given
                + np.log(-curve.divisor_slope(self.position))
                + np.log(np.where(bell, deviation, 1.0) * math.sqrt(2.0 * math.pi))
            )
        self.expected_position = self.position.copy()
        self.expected_scale = (self.scale.copy(), self.scale_deviation.copy())
        self.expected_true_scale = (self.true_scale.copy(), self.true_deviation.copy())
        self.expected_nut_shift = (self.nut_shift.copy(), self.nut_shift_deviation.copy())
        wide = np.nonzero(~bell)
        if not wide[0].size:
            return
        centre = np.clip(self.position[wide], lower, upper)
        reach = np.minimum(_REACH * deviation[wide], upper - lower)
        low, high = np.maximum(centre - reach, lower), np.minimum(centre + reach, upper)
        half = 0.5 * (high - low)[:, None]
        at = 0.5 * (high + low)[:, None] + half * _ABSCISSAE
        values = curve.basis(at, self._terms)
        pattern = wide[0]
        b = np.einsum("jn,jnk->nk", self._overlap[0][:, wide[0], wide[1]], values)
        s = np.einsum("jn,jnk->nk", self._shape_square[0][:, pattern], values)
        length = np.einsum("jn,jnk->nk", self._length[0][:, pattern], values)
        slope = np.einsum("jn,jnk->nk", self._nut_slope[0][:, pattern], values)
        chi_square, scale, given = _profile(self._amplitude[wide][:, None], self._square[wide][:, None], b, s, length)
        log_density = np.log(half * _WEIGHTS * -curve.divisor_slope(at)) + np.log(given) - 0.5 * chi_square
        peak = np.max(log_density, axis=1, keepdims=True)
        weight = np.exp(log_density - peak)
        total = np.sum(weight, axis=1, keepdims=True)
        self.log_evidence[wide] = density + np.squeeze(peak + np.log(total), 1)
        weight /= total
        expected = np.sum(weight * at, axis=1)
        self.expected_position[wide] = expected
        _, fraction, _ = _octave(at, expected[:, None])
        for quantity, mean, spread in (
            (self.expected_scale, scale, given),
            (self.expected_true_scale, 2.0 * scale * fraction, 2.0 * given * fraction),
            (self.expected_nut_shift, slope * scale, slope * given),
        ):
            quantity[0][wide], quantity[1][wide] = _moments(weight, mean, spread)


def _octave(position: Floats, expected: Floats) -> tuple[Floats, Floats, Floats]:
    """Octave fret of the divisors expected, the share of the scale up to it, and that share's derivative.

    While a divisor is all but unknown its octave fret is that of the divisor expected, so that the
    definition's jump from one fret to the next does not count as doubt about a fret that was read.
    """
    octave = np.rint(math.log(2.0) / curve.step_at(expected))
    remainder = np.exp(-octave * curve.step_at(position))
    return octave, 1.0 - remainder, octave * remainder * curve.STEP_SLOPE


def _moments(weight: Floats, mean: Floats, deviation: Floats) -> tuple[Floats, Floats]:
    """Mean and standard deviation of mixtures along the last axis."""
    centre = np.sum(weight * mean, axis=-1)
    variance = np.sum(weight * (deviation * deviation + (mean - centre[..., None]) ** 2), axis=-1)
    return centre, np.sqrt(variance)


def deleted_residuals(plan: Plan, readings: Floats, rule: int) -> tuple[Floats, Floats]:
    """How far every reading lies from what the others predict under one fixed rule.

    Parameters
    ----------
    plan : Plan
        P patterns of N readings.
    readings : ndarray, shape (P, M, N)
        Readings, less the nut's expected offset; unused ones 0. [mm]
    rule : int
        Which of the plan's fixed rules.

    Returns
    -------
    pull : ndarray, shape (P, M, N)
        Covariance-weighted residuals z of the fit to all readings. [1/mm]
    diagonal : ndarray, shape (P, 1, N)
        What z is divided by to give the deviation: reading minus the prediction of the others,
        positive where it reads long; its variance is 1 / diagonal. Zero where the others predict
        nothing or the reading is not used. [1/mm²]

    Notes
    -----
    With Q the matrix of :attr:`Plan.influence`, z = Q y: no board is fitted again.
    """
    influence = plan.influence[:, rule]
    diagonal = np.diagonal(influence, axis1=1, axis2=2)[:, None, :]
    return readings @ influence, np.where(diagonal > _TOLD * plan.own[:, None, :], diagonal, 0.0)


def deleted_residuals_of_divisor(plan: Plan, fits: Fits) -> tuple[Floats, Floats]:
    """The same as :func:`deleted_residuals` under each board's own least-squares divisor.

    Parameters
    ----------
    plan : Plan
        P patterns of N readings.
    fits : Fits
        The fits of M boards each.

    Returns
    -------
    pull, diagonal : ndarray, shape (P, M, N)
        As above, the divisor's part linearised. [1/mm], [1/mm²]
    """
    readings = plan.whiten.shape[1]
    terms = plan.shape_curve.shape[2]
    values = np.moveaxis(curve.basis(fits.position, terms), 0, 2)
    shape = values @ np.swapaxes(plan.shape_curve, 1, 2)
    slope = values @ np.swapaxes(plan.shape_curve @ curve.derivative(terms), 1, 2)
    unit = plan.reference[:, None, :] + shape
    unit /= np.linalg.norm(unit, axis=2)[:, :, None]
    slope -= np.einsum("pmr,pmr->pm", slope, unit)[:, :, None] * unit
    length = np.linalg.norm(slope, axis=2)[:, :, None]
    slope = np.divide(slope, length, out=np.zeros_like(slope), where=length > 0.0)
    whitened = fits.amplitude[:, :, None] * plan.reference[:, None, :] + fits.remainder
    whitened -= np.einsum("pmr,pmr->pm", whitened, unit)[:, :, None] * unit
    whitened -= np.einsum("pmr,pmr->pm", whitened, slope)[:, :, None] * slope
    diagonal = (
        plan.own[:, None, :] - (unit[:, :, :readings] @ plan.whiten) ** 2 - (slope[:, :, :readings] @ plan.whiten) ** 2
    )
    if plan.nut is not None:
        diagonal -= (plan.nut[:, None, :readings] @ plan.whiten) ** 2
    return whitened[:, :, :readings] @ plan.whiten, np.where(diagonal > _TOLD * plan.own[:, None, :], diagonal, 0.0)
