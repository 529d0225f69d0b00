"""A free divisor: its least-squares fit by variable projection, and the integral over it."""

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import FreeDivisor
from scalewright.lutherie.identification.plan import Plan

__all__ = ["FreeFit", "Integral", "bounded_chi_square", "fit_free", "integrate", "profile"]

_NEWTON_STEPS = 12
_LONGEST_STEP = 0.4
"""Farther from where it was taken a quadratic says too little."""
_SMALL_STEP = 1e-5
"""A step on the series' axis after which the next would be of no account, as each squares the error."""
_STARTS = tuple(curve.position_of(divisor) for divisor in (14.5, 16.0, 17.2, 17.817, 18.0, 18.7, 20.0, 22.0))
"""Where Newton's method may start: close together where boards are."""
_CONCENTRATED = 0.05
"""Below this deviation of a divisor on the series' axis its likelihood is a bell to a part in a thousand."""
_FLAT = 1e-300
"""Stands for the curvature of a likelihood that has no peak."""
_MARGIN = 6.0
"""Deviations that must lie between such a bell and the bounds of the prior."""
_REACH = 7.0
"""Deviations beyond which a likelihood is not integrated."""
_ABSCISSAE, _WEIGHTS = np.polynomial.legendre.leggauss(24)


def profile(
    amplitude: Floats, square: Floats, overlap: Floats, shape_square: Floats, lengths: Floats
) -> tuple[Floats, Floats, Floats]:
    """Chi-square, scale and its standard deviation for shapes that are given.

    Parameters
    ----------
    amplitude, square : ndarray
        Length a of the readings along the reference shape, and the square r.r of the remainder. [-]
    overlap, shape_square : ndarray
        t.r and t.t of the shape. [-]
    lengths : ndarray
        How long the shape is along the reference. [1/mm]

    Returns
    -------
    chi_square, scale, deviation : ndarray
        All shapes broadcast. [-], [mm], [mm]
    """
    stretch = 1.0 + shape_square
    height = amplitude + overlap
    # (1 + t.t) a² - (a + t.r)² without the difference of two large numbers.
    gain = amplitude * amplitude * shape_square - (2.0 * amplitude + overlap) * overlap
    # Rounding may leave a perfect fit a hair below zero.
    chi_square = np.maximum(square + gain / stretch, 0.0)
    return chi_square, height / (stretch * lengths), 1.0 / (np.sqrt(stretch) * lengths)


@dataclass(frozen=True, slots=True)
class FreeFit:
    """The fit of a free divisor. All but the first two of shape (P, M), lengths in millimetres."""

    plan: Plan
    """The patterns."""
    overlap: Floats
    """Series of t.r by board, with its first two derivatives. shape (P, 3, J, M)"""
    amplitude: Floats
    """Length of the readings along the reference shape."""
    square: Floats
    """Square of the remainder."""
    position: Floats
    """The divisor, as a position on the series' axis."""
    divisor: Floats
    """The divisor itself."""
    divisor_slope: Floats
    """Its derivative by the position."""
    position_deviation: Floats
    """Standard deviation of the position; infinite where the readings cannot tell."""
    curvature: Floats
    """Half the second derivative of chi-square by the position."""
    chi_square: Floats
    """At the minimum."""
    scale: Floats
    """Layout scale."""
    scale_deviation: Floats
    """Its standard deviation."""
    scale_given: Floats
    """The same if the divisor were known."""
    true_scale: Floats
    """True scale."""
    true_deviation: Floats
    """Its standard deviation."""
    nut_shift: Floats
    """What the nut offset loses to the scale."""
    nut_shift_deviation: Floats
    """Its standard deviation."""


def fit_free(plan: Plan, amplitude: Floats, square: Floats, remainder: Floats) -> FreeFit:
    """Minimise chi-square over the divisor, with the covariance of least squares at the minimum.

    Parameters
    ----------
    plan : Plan
        P patterns of N readings.
    amplitude, square : ndarray, shape (P, M)
        As in :func:`profile`.
    remainder : ndarray, shape (P, R, M)
        What is left of the whitened readings at right angles to the reference shape. [-]

    Returns
    -------
    FreeFit
        Of M boards of each pattern.
    """
    patterns, _, terms, rows = plan.shape_curves.shape
    curves = plan.shape_curves.reshape(patterns, 3 * terms, rows)
    overlap = (curves @ remainder).reshape(patterns, 3, terms, -1)
    position, curvature, state = _minimise(plan, amplitude, overlap)
    b, _, _, s, ds, _, speed, length, dlength, slope, dslope = state.swapaxes(0, 1)
    chi_square, scale, given = profile(amplitude, square, b, s, length)
    across = speed - 0.25 * ds * ds / (1.0 + s)
    told = (across > 0.0) & (np.abs(position) < 1.0)
    spread = 1.0 / (np.abs(scale * length) * np.sqrt(np.where(told, across, 1.0)))
    deviation = np.where(told, spread, np.inf)
    spread = np.where(told, spread, 0.0)
    # How the scale follows when the divisor moves (the fit's own covariance, as from the normal matrix).
    follows = -scale * (0.5 * ds / (1.0 + s) + dlength / length)
    fraction, fraction_slope = _octave(position, position)
    divisor = curve.divisor_at(position)
    return FreeFit(
        plan=plan,
        overlap=overlap,
        amplitude=amplitude,
        square=square,
        position=position,
        divisor=divisor,
        divisor_slope=curve.divisor_slope(divisor),
        position_deviation=deviation,
        curvature=curvature,
        chi_square=chi_square,
        scale=scale,
        scale_deviation=np.sqrt(given**2 + (follows * spread) ** 2),
        scale_given=given,
        true_scale=2.0 * scale * fraction,
        true_deviation=2.0
        * np.sqrt((given * fraction) ** 2 + ((follows * fraction + scale * fraction_slope) * spread) ** 2),
        nut_shift=slope * scale,
        nut_shift_deviation=np.sqrt((slope * given) ** 2 + ((dslope * scale + slope * follows) * spread) ** 2),
    )


def _minimise(plan: Plan, amplitude: Floats, overlap: Floats) -> tuple[Floats, Floats, Floats]:
    """Position of the least chi-square, half its second derivative there, and what depends on the position.

    Newton's method from the best of a few fixed positions, and then only for the boards that are not there
    yet. The last, tiny step is taken in the values too, by their derivatives. The state has the shape
    (P, 11, M): b = t.r and its first two derivatives, then :attr:`Plan.scalar_curves`.
    """
    boards = overlap.shape[3]
    position, state = _start(plan, amplitude, overlap)
    step, curvature = _newton(amplitude, position, state)
    position += step
    active = np.arange(boards)
    for _ in range(_NEWTON_STEPS):
        if len(active) == boards:
            state = _state_at(plan, overlap, position)
            step, curvature = _newton(amplitude, position, state)
            position += step
        else:
            at = position[:, active]
            now = _state_at(plan, overlap[:, :, :, active], at)
            step_now, curvature[:, active] = _newton(amplitude[:, active], at, now)
            state[:, :, active], step[:, active], position[:, active] = now, step_now, at + step_now
        moving = (np.abs(step) > _SMALL_STEP).any(axis=0)
        if not moving.any():
            break
        active = np.nonzero(moving)[0]
    # The derivatives that each of these has behind it are enough for a step so small.
    step = step[:, None]
    slope, bend = state[:, 1:6:3], step * state[:, 2:6:3]
    state[:, 0:6:3] += step * (slope + 0.5 * bend)
    slope += bend
    state[:, 7:11:2] += step * state[:, 8:11:2]
    return position, curvature, state


def _start(plan: Plan, amplitude: Floats, overlap: Floats) -> tuple[Floats, Floats]:
    """The best of :data:`_STARTS` for each board, and the state there."""
    patterns, _, terms, boards = overlap.shape
    axis, starts, values = _starts(terms)
    own = (values @ overlap[:, 0]).reshape(patterns, 3, len(_STARTS), boards)
    scalars = plan.scalar_curves @ starts
    s = scalars[:, 0, :, None]
    a = amplitude[:, None, :]
    b = own[:, 0]
    best = ((a * a * s - (2.0 * a + b) * b) / (1.0 + s)).argmin(axis=1)
    state = np.empty((patterns, 11, boards))
    row, column = np.arange(patterns)[:, None], np.arange(boards)
    state[:, :3] = own[row, :, best, column].transpose(0, 2, 1)
    state[:, 3:] = scalars[row, :, best].transpose(0, 2, 1)
    return axis[best], state


@lru_cache(maxsize=8)
def _starts(terms: int) -> tuple[Floats, Floats, Floats]:
    """The starts, shape (S,); the polynomials there, (J, S); and these with their derivatives, by start, (3 S, J)."""
    axis = np.array(_STARTS)
    starts = curve.basis(axis, terms)
    slope = curve.derivative(terms)
    return axis, starts, np.concatenate([starts.T, (slope @ starts).T, (slope @ slope @ starts).T])


def _state_at(plan: Plan, overlap: Floats, position: Floats) -> Floats:
    """The state at any position. shape (P, 11, M)"""
    values = curve.basis(position, overlap.shape[2])
    state = np.empty((len(position), 11, position.shape[1]))
    np.einsum("pdjm,pjm->pdm", overlap, values, out=state[:, :3])
    np.matmul(plan.scalar_curves, values, out=state[:, 3:])
    return state


def _newton(a: Floats, position: Floats, state: Floats) -> tuple[Floats, Floats]:
    """Newton's step, kept on the axis, and half the second derivative of chi-square."""
    b, db, ddb, s, ds, dds, speed = state.swapaxes(0, 1)[:7]
    stretch = 1.0 + s
    height = a + b
    square = a * a
    loss = (square * s - (a + height) * b) / stretch
    first = (square * ds - 2.0 * height * db - loss * ds) / stretch
    second = (square * dds - 2.0 * (db * db + height * ddb + first * ds) - loss * dds) / stretch
    # Gauss and Newton's curvature cannot be negative, where the true one is.
    gauss = 2.0 * (height / stretch) ** 2 * np.maximum(speed - 0.25 * ds * ds / stretch, 0.0)
    slope = np.where(second > 0.1 * gauss, second, gauss)
    step = -first / np.where(slope > 0.0, slope, np.inf)
    reached = position + np.minimum(np.maximum(step, -_LONGEST_STEP), _LONGEST_STEP)
    return np.minimum(np.maximum(reached, -1.0), 1.0) - position, 0.5 * second


@dataclass(frozen=True, slots=True)
class Integral:
    """The marginal likelihood over a free divisor, and moments of the posterior. Each of shape (P, M)."""

    log_evidence: Floats
    """Its logarithm."""
    position: Floats
    """The divisor expected, as a position on the series' axis."""
    scale: tuple[Floats, Floats]
    """Mean and standard deviation of the layout scale. [mm]"""
    true_scale: tuple[Floats, Floats]
    """Of the true scale. [mm]"""
    nut_shift: tuple[Floats, Floats]
    """Of what the nut offset loses to the scale. [mm]"""


def integrate(free: FreeFit, prior: FreeDivisor) -> Integral:
    """Integrate over the divisor: by the bell of its likelihood, or by quadrature where that is no bell.

    Parameters
    ----------
    free : FreeFit
        The fit of M boards of each of P patterns.
    prior : FreeDivisor
        Bounds within which any divisor is equally likely.

    Returns
    -------
    Integral
        With the moments of the fit itself where its likelihood is a bell well within the bounds.
    """
    upper, lower = curve.position_of(prior.lower), curve.position_of(prior.upper)
    deviation = 1.0 / np.sqrt(np.maximum(free.curvature, _FLAT))
    room = np.minimum(free.position - lower, upper - free.position)
    bell = (deviation < _CONCENTRATED) & (room > _MARGIN * deviation)
    density = -math.log(prior.upper - prior.lower)
    width = np.where(bell, deviation, 1.0) * math.sqrt(2.0 * math.pi) * free.scale_given
    evidence = density - 0.5 * free.chi_square + np.log(-width * free.divisor_slope)
    fitted = Integral(
        evidence,
        free.position,
        (free.scale, free.scale_deviation),
        (free.true_scale, free.true_deviation),
        (free.nut_shift, free.nut_shift_deviation),
    )
    if bell.all():
        return fitted

    wide = np.nonzero(~bell)
    centre = np.clip(free.position[wide], lower, upper)
    reach = np.minimum(_REACH * deviation[wide], upper - lower)
    low, high = np.maximum(centre - reach, lower), np.minimum(centre + reach, upper)
    half = 0.5 * (high - low)[:, None]
    at = 0.5 * (high + low)[:, None] + half * _ABSCISSAE
    values = curve.basis(at, free.overlap.shape[2])
    b = np.einsum("nj,njk->nk", free.overlap[wide[0], 0, :, wide[1]], values)
    s, _, _, _, length, _, slope, _ = np.swapaxes(free.plan.scalar_curves[wide[0]] @ values, 0, 1)
    chi_square, scale, given = profile(free.amplitude[wide][:, None], free.square[wide][:, None], b, s, length)
    slopes = curve.divisor_slope(curve.divisor_at(at))
    log_density = np.log(half * _WEIGHTS * -slopes * given) - 0.5 * chi_square
    peak = np.max(log_density, axis=1, keepdims=True)
    weight = np.exp(log_density - peak)
    total = np.sum(weight, axis=1, keepdims=True)
    evidence[wide] = density + np.squeeze(peak + np.log(total), 1)
    weight /= total
    expected = np.sum(weight * at, axis=1)
    position = free.position.copy()
    position[wide] = expected
    fraction, _ = _octave(at, expected[:, None])

    def with_wide(quantity: tuple[Floats, Floats], mean: Floats, spread: Floats) -> tuple[Floats, Floats]:
        """Moments of the posterior where the likelihood is no bell."""
        middle, around = quantity[0].copy(), quantity[1].copy()
        centre = np.sum(weight * mean, axis=1)
        middle[wide] = centre
        around[wide] = np.sqrt(np.sum(weight * (spread * spread + (mean - centre[:, None]) ** 2), axis=1))
        return middle, around

    return Integral(
        evidence,
        position,
        with_wide(fitted.scale, scale, given),
        with_wide(fitted.true_scale, 2.0 * scale * fraction, 2.0 * given * fraction),
        with_wide(fitted.nut_shift, slope * scale, slope * given),
    )


def bounded_chi_square(free: FreeFit, prior: FreeDivisor) -> Floats:
    """Least chi-square of a divisor within the prior's bounds: at the nearer bound where the least-squares one is not.

    Parameters
    ----------
    free : FreeFit
        The fit of M boards of each of P patterns.
    prior : FreeDivisor
        The bounds.

    Returns
    -------
    ndarray, shape (P, M)
        Weighted squares of the residuals, with the nut's. [-]
    """
    upper, lower = curve.position_of(prior.lower), curve.position_of(prior.upper)
    bound = np.minimum(np.maximum(free.position, lower), upper)
    beyond = bound != free.position
    if not beyond.any():
        return free.chi_square
    outside = np.nonzero(beyond)
    values = curve.basis(bound[outside], free.overlap.shape[2])
    b = np.einsum("nj,jn->n", free.overlap[outside[0], 0, :, outside[1]], values)
    scalars = np.einsum("nsj,jn->sn", free.plan.scalar_curves[outside[0]], values)
    chi_square = free.chi_square.copy()
    chi_square[outside], _, _ = profile(free.amplitude[outside], free.square[outside], b, scalars[0], scalars[4])
    return chi_square


def _octave(position: Floats, expected: Floats) -> tuple[Floats, Floats]:
    """Share of the scale up to the octave fret of the divisors expected, and its derivative by the position.

    While a divisor is all but unknown its octave fret is that of the divisor expected, so that the
    definition's jump from one fret to the next does not count as doubt about a fret that was read.
    """
    octave = np.rint(math.log(2.0) / curve.step_at(expected))
    remainder = np.exp(-octave * curve.step_at(position))
    return 1.0 - remainder, octave * remainder * curve.STEP_SLOPE
