"""The fits of all candidates to many boards at once, and how well each explains them."""

from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import FreeDivisor
from scalewright.lutherie.identification.free_divisor import bounded_chi_square, fit_free, integrate, profile
from scalewright.lutherie.identification.plan import Plan

__all__ = ["Fits", "deleted_residuals_of_divisor", "fit"]

_TOLD = 1e-9
"""Share of its own weight that the other readings must leave a reading to say anything of it."""


@dataclass(frozen=True, slots=True)
class Fits:
    """Fits of F fixed rules and, last, of a free divisor: C = F + 1 candidates, P patterns, M boards each."""

    chi_square: Floats
    """Weighted squares of the residuals, with the nut's. shape (C, P, M) [-]"""
    bounded_chi_square: Floats
    """The same of a free divisor that keeps within the prior's bounds. shape (P, M) [-]"""
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
    """Least-squares divisor, as a position on the series' axis, wherever it lies. shape (P, M)"""
    position_deviation: Floats
    """Its standard deviation; infinite where the readings cannot tell. shape (P, M)"""
    divisor: Floats
    """That divisor itself. shape (P, M) [-]"""
    divisor_deviation: Floats
    """Its standard deviation; infinite where the readings cannot tell. shape (P, M) [-]"""
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
    """What is left of the whitened readings at right angles to it. shape (P, R, M) [-]"""


def fit(plan: Plan, readings: Floats, prior: FreeDivisor) -> Fits:
    """Least-squares fits and marginal likelihoods of all candidates.

    Parameters
    ----------
    plan : Plan
        P patterns of N readings.
    readings : ndarray, shape (P, N, M)
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
    rows = plan.reference.shape[1]
    split = plan.split @ readings
    remainder, amplitude, level = split[:, :rows], split[:, rows], split[:, rows + 1]
    square = np.einsum("prm,prm->pm", remainder, remainder)

    # The fixed rules, in closed form. shape (F, P, M)
    overlap = np.swapaxes(plan.shapes @ remainder, 0, 1)
    chi_square, scale, given = profile(amplitude, square, overlap, plan.shape_squares, plan.lengths)

    free = fit_free(plan, amplitude, square, remainder)
    integral = integrate(free, prior)
    candidates = len(chi_square) + 1
    scales = np.concatenate([scale, free.scale[None]])
    deviations = np.empty(scales.shape)
    deviations[:-1], deviations[-1] = given, free.scale_deviation
    nut, nut_deviation = np.zeros(scales.shape), np.zeros(scales.shape)
    expected_nut = (nut[-1], nut_deviation[-1])
    if plan.nut is not None:
        slopes = plan.nut_slope
        own = (1.0 / plan.nut_norm[:, None]) ** 2
        nut[:-1], nut[-1] = level - slopes * scale, level - free.nut_shift
        nut_deviation[:-1] = np.sqrt(own + (slopes * given) ** 2)
        nut_deviation[-1] = np.sqrt(own + free.nut_shift_deviation**2)
        shift, shift_deviation = integral.nut_shift
        expected_nut = (level - shift, np.sqrt(own + shift_deviation**2))
    evidence = np.empty((candidates, *amplitude.shape))
    evidence[:-1] = -0.5 * chi_square + (np.log(given) + plan.log_weight[:, None])
    evidence[-1] = integral.log_evidence + plan.log_weight[:, None]
    return Fits(
        chi_square=np.concatenate([chi_square, free.chi_square[None]]),
        bounded_chi_square=bounded_chi_square(free, prior),
        scale=scales,
        scale_deviation=deviations,
        nut=nut,
        nut_deviation=nut_deviation,
        log_evidence=evidence,
        position=free.position,
        position_deviation=free.position_deviation,
        divisor=free.divisor,
        divisor_deviation=-free.divisor_slope * free.position_deviation,
        expected_position=integral.position,
        true_scale=free.true_scale,
        true_deviation=free.true_deviation,
        expected=(integral.scale, integral.true_scale, expected_nut),
        amplitude=amplitude,
        remainder=remainder,
    )


def deleted_residuals_of_divisor(
    plan: Plan, position: Floats, amplitude: Floats, remainder: Floats
) -> tuple[Floats, Floats]:
    """How far every reading lies from what the others predict under a board's own least-squares divisor.

    Parameters
    ----------
    plan : Plan
        P patterns of N readings.
    position, amplitude : ndarray, shape (P, M)
        From the fits of M boards each.
    remainder : ndarray, shape (P, R, M)
        The same.

    Returns
    -------
    strain : ndarray, shape (P, N, M)
        Deleted residuals in units of their standard deviation; 0 where the others predict nothing. [-]
    spread : ndarray, shape (P, N, M)
        That standard deviation. [mm]

    Notes
    -----
    As :attr:`Plan.pull` for a fixed rule, with the divisor's part linearised.
    """
    readings = plan.whiten.shape[1]
    values = curve.basis(position, plan.shape_curves.shape[2])
    shape, bent = (np.swapaxes(plan.shape_curves[:, k], 1, 2) for k in (0, 1))
    unit, slope = shape @ values, bent @ values
    unit += plan.reference[:, :, None]
    unit /= np.sqrt(np.einsum("prm,prm->pm", unit, unit))[:, None, :]
    # Readings of one fret alone say nothing of the divisor: what is left of its part, beside the reference's 1, is
    # rounding.
    slope -= np.einsum("prm,prm->pm", slope, unit)[:, None, :] * unit
    length = np.sqrt(np.einsum("prm,prm->pm", slope, slope))[:, None, :]
    slope *= np.where(length > _TOLD, 1.0 / np.where(length > _TOLD, length, 1.0), 0.0)
    whitened = amplitude[:, None, :] * plan.reference[:, :, None] + remainder
    whitened -= np.einsum("prm,prm->pm", whitened, unit)[:, None, :] * unit
    whitened -= np.einsum("prm,prm->pm", whitened, slope)[:, None, :] * slope
    own = plan.own[:, :, None]
    back = np.swapaxes(plan.whiten, 1, 2)
    weight = own - (back @ unit[:, :readings]) ** 2 - (back @ slope[:, :readings]) ** 2
    if plan.nut is not None:
        weight -= (back @ plan.nut[:, :readings, None]) ** 2
    told = weight > _TOLD * own
    spread = 1.0 / np.sqrt(np.where(told, weight, 1.0))
    return (back @ whitened[:, :readings]) * spread * told, spread
