"""Moves: how far saddle and nut have to go so that one string's readings come right."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.diagnosis.complaint import Board, CentsReading, Complaint
from scalewright.lutherie.estimate import Floats

__all__ = ["FittedString", "MoveFit", "determined", "fit_moves", "fit_string", "information_of"]

_CENTS = 1200.0 / math.log(2.0)
"""Cents to a natural logarithm. [cent]"""

_MOST_STEPS = 20
_STILL = 1e-12
"""Moves that change by less than this share of the scale have been found. [-]"""


@dataclass(frozen=True, slots=True)
class MoveFit:
    """A fit of some of offset, saddle and nut; what is not fitted is zero."""

    free: NDArray[np.bool_]
    """Which of offset, saddle and nut were fitted, shape (3,)."""
    values: Floats
    """Tuning offset [cent], saddle move and nut move [mm], shape (3,)."""
    covariance: Floats
    """Their covariance, zero for what was not fitted, shape (3, 3)."""
    design: Floats
    """How the readings answer to the three, shape (n_readings, 3)."""
    residuals: Floats
    """Readings minus what the fit predicts: what remains after the moves, shape (n_readings,). [cent]"""
    chi_square: float
    """Weighted sum of squared residuals. [-]"""

    def sigma(self, index: int) -> float:
        """Standard uncertainty of offset, saddle or nut."""
        return math.sqrt(max(0.0, float(self.covariance[index, index])))


@dataclass(frozen=True, slots=True)
class FittedString:
    """The readings of one string and the moves that mend them."""

    number: int
    """Number of the string."""
    frets: NDArray[np.intp]
    """Frets of the rows, 0 for the open string, shape (n_readings,)."""
    cents: Floats
    """The readings, the same shape. [cent]"""
    weights: Floats
    """One over the variance of each, zero for one that is left out, the same shape. [1/cent²]"""
    given: NDArray[np.intp]
    """Place of each in the list that was given; -1 for the open string that was tuned to."""
    open_known: bool
    """Whether the open string is among the rows."""
    told: bool
    """Whether saddle and nut, or the saddle where the nut may not move, can be told apart here."""
    fit: MoveFit
    """The fit of all that can be told."""

    @property
    def counted(self) -> int:
        """Number of readings that are not left out."""
        return int(np.count_nonzero(self.weights))


def information_of(board: Board, frets: Sequence[int], moves: Floats) -> Floats:
    """How readings answer to a tuning offset, a saddle error and a nut error.

    Parameters
    ----------
    board : Board
        Where the frets stand.
    frets : sequence of int
        Frets of the readings, 0 for the open string.
    moves : ndarray, shape (2,)
        Saddle and nut move at which the slopes are taken. [mm]

    Returns
    -------
    ndarray, shape (n_readings, 3)
        Columns in cents per cent, and twice in cents per millimetre of the move that mends the reading.
    """
    at = np.array(frets, dtype=np.intp)
    saddle, nut = float(moves[0]), float(moves[1])
    X = np.concatenate([[board.scale], board.remaining])[at]
    fretted = at > 0
    open_slope = _CENTS / (board.scale + saddle + nut)
    return np.stack(
        [
            np.ones(len(at)),
            np.where(fretted, _CENTS / (X + saddle) - open_slope, 0.0),
            np.where(fretted, -open_slope, 0.0),
        ],
        axis=1,
    )


def _mended(board: Board, frets: NDArray[np.intp], moves: Floats) -> Floats:
    """Cents by which the moves flatten every reading, with the open string tuned again. [cent]"""
    saddle, nut = float(moves[0]), float(moves[1])
    X = np.concatenate([[board.scale], board.remaining])[frets]
    change = _CENTS * (np.log1p(saddle / X) - math.log1p((saddle + nut) / board.scale))
    return np.where(frets > 0, change, 0.0)


def fit_moves(
    board: Board, frets: NDArray[np.intp], cents: Floats, weights: Floats, free: NDArray[np.bool_]
) -> MoveFit:
    """Fit some of offset, saddle and nut to the readings of one string.

    Parameters
    ----------
    board : Board
        Where the frets stand.
    frets : ndarray of int, shape (n_readings,)
        Frets of the readings, 0 for the open string.
    cents, weights : ndarray, shape (n_readings,)
        Readings and one over their variances. [cent, 1/cent²]
    free : ndarray of bool, shape (3,)
        Which of offset, saddle and nut to fit; the readings have to determine them.

    Returns
    -------
    MoveFit
        The weighted least-squares fit.

    Notes
    -----
    A string of length X0 that breaks s further out at the saddle and v at the nut sounds fret n flatter by
    1200/ln 2 [ln(1 + s/X_n) - ln(1 + (s + v)/X0)] cents once its open note is tuned again. That holds for
    an ideal string; stretch and stiffness change these slopes by parts in a hundred only, and what they do
    to the notes themselves lies within 0.15 cents rms of a move over frets 1 to 12, which the model
    uncertainty covers. So what is fitted is the move that mends, whatever the cause.
    """
    values, moves = np.zeros(3), np.zeros(2)
    rooted = np.sqrt(weights)
    # Neither the saddle nor the nut comes nearer to the frets than half the way; cents that want it are no move's.
    floor = np.array([-np.inf, -0.5 * board.remaining[-1], -0.5 * (board.scale - board.remaining[0])])
    for _ in range(_MOST_STEPS):
        design = information_of(board, frets.tolist(), moves)
        left = cents - values[0] - _mended(board, frets, moves)
        step = np.zeros(3)
        step[free] = np.linalg.lstsq(design[:, free] * rooted[:, np.newaxis], left * rooted, rcond=None)[0]
        # A move never takes more than a tenth of what lies between the saddle and the last fret at once.
        share = min(1.0, 0.1 * float(board.remaining[-1]) / max(1e-300, float(np.abs(step[1:]).max())))
        values = np.maximum(values + share * step, floor)
        moves = values[1:]
        if np.abs(step[1:]).max() < _STILL * board.scale:
            break
    design = information_of(board, frets.tolist(), moves)
    residuals = cents - values[0] - _mended(board, frets, moves)
    covariance = np.zeros((3, 3))
    if free.any():
        information = design[:, free].T @ (design[:, free] * weights[:, np.newaxis])
        covariance[np.ix_(free, free)] = np.linalg.inv(information)
    return MoveFit(free, values, covariance, design, residuals, float(weights @ residuals**2))


def fit_string(
    complaint: Complaint, board: Board, number: int, readings: Sequence[tuple[int, CentsReading]]
) -> FittedString:
    """Fit what the readings of one string can tell.

    Parameters
    ----------
    complaint : Complaint
        What was heard.
    board : Board
        Where the frets stand.
    number : int
        Number of the string.
    readings : sequence of (int, CentsReading)
        Its readings, each with its place in the list that was given.

    Returns
    -------
    FittedString
        With a tuning offset where the open string is known, with the nut where that and two frets are.
    """
    frets = [reading.fret for _, reading in readings]
    cents = [reading.cents for _, reading in readings]
    given = [index for index, _ in readings]
    variances = [_variance(complaint, reading) for _, reading in readings]
    if complaint.relative_to == "open_string" and 0 not in frets:
        # The open string was tuned to its note with the same tuner.
        frets, cents, given = [0, *frets], [0.0, *cents], [-1, *given]
        variances = [_variance(complaint, CentsReading(number, 0, 0.0)), *variances]
    open_known = 0 in frets
    free, told = determined(complaint, frets)
    at, heard, weights = np.array(frets, dtype=np.intp), np.array(cents), 1.0 / np.array(variances)
    fit = fit_moves(board, at, heard, weights, free)
    return FittedString(number, at, heard, weights, np.array(given, dtype=np.intp), open_known, told, fit)


def determined(complaint: Complaint, frets: Sequence[int]) -> tuple[NDArray[np.bool_], bool]:
    """What the readings of one string determine.

    Parameters
    ----------
    complaint : Complaint
        What was heard.
    frets : sequence of int
        Frets of the readings, 0 for the open string.

    Returns
    -------
    free : ndarray of bool, shape (3,)
        Which of offset, saddle and nut can be fitted.
    told : bool
        Whether the moves can be told apart.
    """
    stopped, open_known = len(set(frets) - {0}), 0 in frets
    told = stopped >= 2 or (stopped == 1 and open_known and not complaint.nut_may_move)
    return np.array([open_known or stopped >= 2, told, told and open_known and complaint.nut_may_move]), told


def _variance(complaint: Complaint, reading: CentsReading) -> float:
    """Variance of a reading about what moves of saddle and nut can explain. [cent²]"""
    tuner = complaint.tuner_uncertainty if reading.uncertainty is None else reading.uncertainty
    model = complaint.model_uncertainty if reading.fret else 0.0
    return tuner**2 + complaint.resolution**2 / 12.0 + model**2
