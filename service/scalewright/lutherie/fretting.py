"""Fretting: the model of a string pressed at every fret, its errors in cents and their slopes.

The model is that of Anderson and Beausoleil 2024, with the real positions of the frets and the pitches
they are meant for kept apart; the lengths come from :mod:`scalewright.lutherie.string_path`.
"""

import math
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.string_path import FrettedStrings, StringLengths, string_lengths

__all__ = ["Causes", "causes", "cents_errors", "cents_errors_and_slopes", "stiffness_factor"]

_CENTS = 1200.0 / math.log(2.0)
"""Cents to a natural logarithm. [cent]"""


@dataclass(frozen=True, slots=True)
class Causes:
    """What each cause contributes to the errors, every one of shape (n_strings, n_frets)."""

    spacing: Floats
    """Where the fret stands, for an ideal string that breaks at the ends of the scale. [cent]"""
    stretch: Floats
    """Tension and mass of the string, pressed down and thereby stretched. [cent]"""
    stiffness: Floats
    """Resistance to bending, which counts more the shorter the string. [cent]"""
    geometry: Floats
    """Lengths: setbacks of saddle and nut, and the slope of the string. [cent]"""


def stiffness_factor(B: Floats, boundary: float, partial: int = 1) -> Floats:
    r"""By what a partial of a stiff string lies above that of an ideal one.

    Parameters
    ----------
    B : ndarray
        Stiffness coefficient, sqrt(E A s²/(T L²)). [-]
    boundary : float
        Ends that are clamped, 0 to 2. [-]
    partial : int
        Number q of the partial.

    Returns
    -------
    ndarray, the shape of B
        :math:`1 + \beta B + (\beta^2 + q^2 \pi^2/2) B^2`. [-]

    Notes
    -----
    The start of a series: within 1e-6 at B = 0.00236 for the first two partials, and within 0.1 cents
    up to B = 0.02 for the first. Between whole boundary factors it is an interpolation.

    References
    ----------
    .. [fletcher-1964] H. Fletcher, "Normal vibration frequencies of a stiff piano string,"
       J. Acoust. Soc. Am., vol. 36, no. 1, pp. 203-209, 1964.
    """
    return 1.0 + B * (boundary + (boundary**2 + (partial * math.pi) ** 2 / 2.0) * B)


def cents_errors(strings: FrettedStrings, saddle: Floats, nut: Floats) -> Floats:
    """How sharp every fretted note is with the open string in tune.

    Parameters
    ----------
    strings : FrettedStrings
        The strings on their board.
    saddle : ndarray, shape (n_strings,)
        Saddle setbacks dS, positive away from the nut. [mm]
    nut : ndarray, shape (n_strings,)
        Nut setbacks dN, positive away from fret 1. [mm]

    Returns
    -------
    ndarray, shape (n_strings, n_frets)
        Errors, positive sharp. [cent]
    """
    return cents_errors_and_slopes(strings, saddle, nut)[0]


def cents_errors_and_slopes(strings: FrettedStrings, saddle: Floats, nut: Floats) -> tuple[Floats, Floats, Floats]:
    r"""How sharp every fretted note is, and how that answers to a move of the saddle and of the nut.

    Parameters
    ----------
    strings : FrettedStrings
        The strings on their board.
    saddle : ndarray, shape (n_strings,)
        Saddle setbacks dS, positive away from the nut. [mm]
    nut : ndarray, shape (n_strings,)
        Nut setbacks dN, positive away from fret 1. [mm]

    Returns
    -------
    errors : ndarray, shape (n_strings, n_frets)
        Errors, positive sharp. [cent]
    saddle_slopes, nut_slopes : ndarray, shape (n_strings, n_frets)
        Their exact derivatives with respect to dS and dN. [cent/mm]

    Notes
    -----
    With the string pressed at fret n,

    .. math::

        L_0 &= \sqrt{(X_0 + dS + dN)^2 + c^2}, \qquad L_n = \sqrt{(X_n + dS)^2 + (b_n + c)^2} \\
        L'_n &= L_n \frac{d}{X_n + dS}
                + \sqrt{(X_0 - X_n + dN - d)^2 + \left(b_n + (b_n + c)\frac{d}{X_n + dS}\right)^2} \\
        Q_n &= (L_n + L'_n - L_0)/(L_0 + a), \qquad \mu_n = \mu_0/(1 + Q_n), \qquad T_n = T_0 (1 + \kappa Q_n) \\
        f &= \frac{1}{2 L}\sqrt{\frac{T}{\mu}} \left[1 + \beta B + (\beta^2 + \pi^2/2) B^2\right]

    with :math:`b_n = b + g_n`, a the length beyond nut and saddle that slides (none unless given) and beta
    the boundary factor; the error is 1200 log2(f_n/f_0) less the target. Each length is split into its
    run along the board and what its slope adds; the runs cancel in Q_n exactly, so that no digits are lost.

    References
    ----------
    .. [anderson-2024] M. B. Anderson and R. G. Beausoleil, "Classical guitar intonation and compensation:
       The well-tempered guitar," J. Acoust. Soc. Am., vol. 156, no. 1, p. 683, 2024.
    """
    lengths = string_lengths(strings, saddle, nut)
    open_run, L0, run, L, Q, dQ_saddle, dQ_nut = lengths
    kappa = strings.kappa[:, np.newaxis]
    stretched = 1.0 + kappa * Q
    per_Q = 0.5 * kappa / stretched + 0.5 / (1.0 + Q)
    B0, B = _stiffness_coefficients(strings, lengths, stretched)
    raised, raised_open = stiffness_factor(B, strings.boundary), stiffness_factor(B0, strings.boundary)

    errors = _CENTS * np.log(L0 / L * np.sqrt(stretched * (1.0 + Q)) * (raised / raised_open)) - strings.target
    dL0 = open_run / L0**2  # d ln L0, the same for both moves
    by_length = run / L**2
    saddle_slopes = dL0 - by_length + per_Q * dQ_saddle
    nut_slopes = dL0 + per_Q * dQ_nut
    if strings.stiffness != "position":
        # d ln(1 + beta B + ...) = weight d ln B
        linear, square = strings.boundary, strings.boundary**2 + math.pi**2 / 2.0
        weight = B * (linear + 2.0 * square * B) / raised
        weight_open = B0 * (linear + 2.0 * square * B0) / raised_open
        tension_part = 0.5 * kappa / stretched
        saddle_slopes += weight_open * dL0 - weight * (by_length + tension_part * dQ_saddle)
        nut_slopes += weight_open * dL0 - weight * tension_part * dQ_nut
    return errors, _CENTS * saddle_slopes, _CENTS * nut_slopes


def causes(strings: FrettedStrings, saddle: Floats, nut: Floats) -> Causes:
    """Split every error into what spacing, stretch, stiffness and geometry contribute.

    Parameters
    ----------
    strings : FrettedStrings
        The strings on their board.
    saddle, nut : ndarray, shape (n_strings,)
        Setbacks, positive away from the nut and from fret 1. [mm]

    Returns
    -------
    Causes
        The factors of f_n/f_0 one by one, so that their sum is the error.
    """
    lengths = string_lengths(strings, saddle, nut)
    _, L0, _, L, Q, _, _ = lengths
    stretched = 1.0 + strings.kappa[:, np.newaxis] * Q
    B0, B = _stiffness_coefficients(strings, lengths, stretched)
    ideal = strings.scale[:, np.newaxis] / strings.remaining
    return Causes(
        spacing=_CENTS * np.log(ideal) - strings.target,
        stretch=0.5 * _CENTS * np.log(stretched * (1.0 + Q)),
        stiffness=_CENTS * np.log(stiffness_factor(B, strings.boundary) / stiffness_factor(B0, strings.boundary)),
        geometry=_CENTS * np.log(L0 / L / ideal),
    )


def _stiffness_coefficients(
    strings: FrettedStrings, lengths: StringLengths, stretched: Floats
) -> tuple[Floats, Floats]:
    """Stiffness coefficients of the open string and of every fretted one. [-]"""
    bending = (np.sqrt(strings.kappa) * strings.gyration)[:, np.newaxis]
    if strings.stiffness == "position":
        return bending / strings.scale[:, np.newaxis], bending / strings.remaining
    return bending / lengths.L0, bending / (lengths.L * np.sqrt(stretched))
