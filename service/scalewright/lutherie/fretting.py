"""Fretting: the model of a string pressed at every fret, its errors in cents and their slopes.

Side view of one string pressed behind fret n; the fret tops lie on a line, heights are exaggerated::

    nut                                                                      saddle
     o-.._                                                          __..---''o
     |    ``--..__                                         __..---''         |
     | b          ``--..__                        __..---''                  | b + c
    -+-------------------``--..__--------__..---''---------------------------+-- fret tops
                                 ``o---'A
                                finger  fret n
     |<------- X0 - X_n + dN - d ->|<- d ->|<------------ X_n + dS ---------->|

The model is that of Anderson and Beausoleil 2024, with the real positions of the frets and the pitches
they are meant for kept apart. Where the fret tops do not lie on a line, each stands g_n below it.
"""

import math
from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

import numpy as np

from scalewright.lutherie.estimate import Floats

__all__ = [
    "ALONG_THE_SCALE",
    "Causes",
    "FrettedStrings",
    "StiffnessModel",
    "causes",
    "cents_errors",
    "cents_errors_and_slopes",
    "stiffness_factor",
]

StiffnessModel: TypeAlias = Literal["position", "length_and_tension"]
"""What the stiffness coefficient of a fretted note follows: the fret's position alone, B0 X0/X_n, or the
speaking length and the tension of the stretched string."""

ALONG_THE_SCALE: StiffnessModel = "position"
"""The form that the published setbacks were computed with; the default.

The paper prints B with the square root of the tension the wrong way up, while its tables follow
B_n = gamma_n B_0. The physical form, in which B goes as 1/(L sqrt(T)), moves the best setbacks of the
published strings by up to 0.06 mm and leaves the rest of the model as it is.
"""

_CENTS = 1200.0 / math.log(2.0)
"""Cents to a natural logarithm. [cent]"""


@dataclass(frozen=True, slots=True)
class FrettedStrings:
    """Strings on a board, one row each; boards may differ from row to row."""

    scale: Floats
    """X0, from the nut to the point that setbacks are counted from, shape (n_strings,). [mm]"""
    remaining: Floats
    """X_n, from every fret to the same point, shape (n_strings, n_frets). [mm]"""
    target: Floats
    """Pitch above the open string that every fret should give, shape (n_strings, n_frets). [cent]"""
    nut_height: Floats
    """b, underside of the string above the fret tops at the nut, shape (n_strings,). [mm]"""
    saddle_rise: Floats
    """c, how much higher it is at the saddle, shape (n_strings,). [mm]"""
    finger: Floats
    """d, how far behind the fret the finger makes the string's corner, shape (n_strings,). [mm]"""
    kappa: Floats
    """Relative change of tension with length, shape (n_strings,). [-]"""
    gyration: Floats
    """s, radius of gyration of the section that bends, shape (n_strings,). [mm]"""
    boundary: float = 1.0
    """Ends that are clamped: 0 pinned at both, 1 clamped at the fret, 2 clamped at both.

    A choice of model by a factor of two; measured in the paper as 1.1 with a standard uncertainty of 0.2.
    """
    stiffness: StiffnessModel = ALONG_THE_SCALE
    """What the stiffness coefficient of a fretted note follows."""
    fall: Floats | None = None
    """g_n, how far every fret top lies below the line, shape (n_strings, n_frets); None for a straight board. [mm]"""
    pressed: Floats | None = None
    """How far below the fret's top the finger presses the string, shape (n_strings,); None where the string goes
    straight on behind the fret. [mm]"""
    beyond: Floats | None = None
    """Length beyond nut and saddle that slides and stretches too, shape (n_strings,); None where none does. [mm]"""


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


class _Lengths(NamedTuple):
    """Lengths of the open and of the pressed string."""

    open_run: Floats
    """X0 + dS + dN, shape (n_strings, 1). [mm]"""
    L0: Floats
    """Open length, shape (n_strings, 1). [mm]"""
    run: Floats
    """X_n + dS, shape (n_strings, n_frets). [mm]"""
    L: Floats
    """Speaking lengths, the same shape. [mm]"""
    Q: Floats
    """Relative stretch, the same shape. [-]"""
    by_saddle: Floats
    """Its derivative with respect to dS. [1/mm]"""
    by_nut: Floats
    """Its derivative with respect to dN. [1/mm]"""


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
    lengths = _lengths(strings, saddle, nut)
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
    lengths = _lengths(strings, saddle, nut)
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


def _stiffness_coefficients(strings: FrettedStrings, lengths: _Lengths, stretched: Floats) -> tuple[Floats, Floats]:
    """Stiffness coefficients of the open string and of every fretted one. [-]"""
    bending = (np.sqrt(strings.kappa) * strings.gyration)[:, np.newaxis]
    if strings.stiffness == "position":
        return bending / strings.scale[:, np.newaxis], bending / strings.remaining
    return bending / lengths.L0, bending / (lengths.L * np.sqrt(stretched))


def _lengths(strings: FrettedStrings, saddle: Floats, nut: Floats) -> _Lengths:
    """Lengths of the open and of the pressed strings, and how the stretch answers to both moves."""
    c, d = strings.saddle_rise[:, np.newaxis], strings.finger[:, np.newaxis]
    b = strings.nut_height[:, np.newaxis]
    if strings.fall is not None:
        b = b + strings.fall
    h = b + c

    open_run = (strings.scale + saddle + nut)[:, np.newaxis]
    L0 = np.sqrt(open_run**2 + c**2)
    open_rise = c**2 / (L0 + open_run)  # L0 less its run
    d_open_rise = open_rise / L0  # the rises lose d(L - run) = -(L - run)/L d(run)
    run = strings.remaining + saddle[:, np.newaxis]
    L = np.sqrt(run**2 + h**2)
    rise = h**2 / (L + run)  # L_n less its run
    to_nut = (strings.scale + nut)[:, np.newaxis] - strings.remaining
    if strings.pressed is None:
        t = d / run
        behind_run = to_nut - d
        drop = b + h * t
        behind = np.sqrt(behind_run**2 + drop**2)
        behind_rise = drop**2 / (behind + behind_run)
        rises = rise * (1.0 + t) + behind_rise
        by_saddle = -rise * ((1.0 + t) / L + t / run) - drop * h * t / (run * behind)
        by_nut = -behind_rise / behind
    else:
        pressed_rises, by_nut = _behind_a_finger(strings, to_nut, b, d)
        rises, by_saddle = rise + pressed_rises, -rise / L

    slides = L0 if strings.beyond is None else L0 + strings.beyond[:, np.newaxis]
    Q = (rises - open_rise) / slides
    dL0 = open_run / L0
    return _Lengths(
        open_run=open_run,
        L0=L0,
        run=run,
        L=L,
        Q=Q,
        by_saddle=(by_saddle + d_open_rise - Q * dL0) / slides,
        by_nut=(by_nut + d_open_rise - Q * dL0) / slides,
    )


def _behind_a_finger(strings: FrettedStrings, to_nut: Floats, b: Floats, d: Floats) -> tuple[Floats, Floats]:
    """What slopes add behind the fret where the finger presses the string down, and its derivative by dN.

    From the fret's top down to the finger, and from there to the nut, over the top of the fret before it
    where the straight line would pass below that.
    """
    assert strings.pressed is not None  # noqa: S101  (the caller has asked)
    f = strings.pressed[:, np.newaxis]
    finger_rise = f**2 / (np.sqrt(d**2 + f**2) + d)
    straight_run = to_nut - d
    straight = np.sqrt(straight_run**2 + (b + f) ** 2)
    straight_rise = (b + f) ** 2 / (straight + straight_run)
    # The fret before: how far from the fret, and how high above it. Fret 1 has the nut before it.
    gap = np.diff(-strings.remaining, axis=1, prepend=-strings.scale[:, np.newaxis])
    step = np.zeros_like(gap) if strings.fall is None else np.diff(strings.fall, axis=1, prepend=strings.fall[:, :1])
    line = -f + (b + f) * (gap - d) / straight_run
    over = (gap > d) & (line < step)
    over[:, 0] = False
    first_run, second_run = np.where(over, gap - d, 1.0), np.where(over, to_nut - gap, 1.0)
    first_drop, second_drop = step + f, b - step
    first = np.sqrt(first_run**2 + first_drop**2)
    second = np.sqrt(second_run**2 + second_drop**2)
    bent_rise = second_drop**2 / (second + second_run)
    rises = np.where(over, first_drop**2 / (first + first_run) + bent_rise, straight_rise)
    return finger_rise + rises, np.where(over, -bent_rise / second, -straight_rise / straight)
