"""String paths: how long strings on a board are, open and pressed at every fret, and how much that stretches them.

Side view of one string pressed behind fret n; the fret tops lie on a line, heights are exaggerated::

    nut                                                                      saddle
     o-.._                                                          __..---''o
     |    ``--..__                                         __..---''         |
     | b          ``--..__                        __..---''                  | b + c
    -+-------------------``--..__--------__..---''---------------------------+-- fret tops
                                 ``o---'A
                                finger  fret n
     |<------- X0 - X_n + dN - d ->|<- d ->|<------------ X_n + dS ---------->|

Heights and places are those of Anderson and Beausoleil 2024. Where the fret tops do not lie on a line,
each stands g_n below it.
"""

from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

import numpy as np

from scalewright.lutherie.estimate import Floats

__all__ = ["ALONG_THE_SCALE", "FrettedStrings", "StiffnessModel", "StringLengths", "string_lengths"]

StiffnessModel: TypeAlias = Literal["position", "length_and_tension"]
"""What the stiffness coefficient of a fretted note follows: the fret's position alone, B0 X0/X_n, or the
speaking length and the tension of the stretched string."""

ALONG_THE_SCALE: StiffnessModel = "position"
"""The form that the published setbacks were computed with; the default.

The paper prints B with the square root of the tension the wrong way up, while its tables follow
B_n = gamma_n B_0. The physical form, in which B goes as 1/(L sqrt(T)), moves the best setbacks of the
published strings by up to 0.06 mm and leaves the rest of the model as it is.
"""


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


class StringLengths(NamedTuple):
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


def string_lengths(strings: FrettedStrings, saddle: Floats, nut: Floats) -> StringLengths:
    """Lengths of the open and of the pressed strings, and how the stretch answers to both moves.

    Parameters
    ----------
    strings : FrettedStrings
        The strings on their board.
    saddle, nut : ndarray, shape (n_strings,)
        Setbacks, positive away from the nut and from fret 1. [mm]

    Returns
    -------
    StringLengths
        By the equations of :func:`scalewright.lutherie.fretting.cents_errors_and_slopes`.
    """
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
    if strings.pressed is None and not strings.finger.any():
        behind = np.sqrt(to_nut**2 + b**2)
        behind_rise = b**2 / (behind + to_nut)
        rises, by_saddle, by_nut = rise + behind_rise, -rise / L, -behind_rise / behind
    elif strings.pressed is None:
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
    return StringLengths(
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
