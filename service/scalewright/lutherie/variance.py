"""Analysis of variance of boards off one tool: what differs from board to board, and what within a board."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.errors import TooFewBoardsError, UnequalSlotsError
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.phrases import counted
from scalewright.lutherie.student import f_survival

__all__ = ["Moments", "Variances", "middle_of", "moments_of", "variances_of"]

_CHUNK = 16_384
"""Boards taken up at once: their deviations then stay in a processor's cache."""


@dataclass(frozen=True, slots=True)
class Moments:
    """All that a study needs of many boards, whatever their number."""

    boards: int
    """How many there are."""
    mean: Floats
    """Mean deviation of each slot. shape (slots,) [mm]"""
    products: Floats
    """Sum of the products of centred deviations. shape (slots, slots) [mm²]"""
    common: Floats
    """Median deviation of each board's slots: where the board as a whole lies. shape (boards,) [mm]"""

    @property
    def standard_deviation(self) -> Floats:
        """Standard deviation of each slot over the boards. shape (slots,) [mm]"""
        deviation: Floats = np.sqrt(np.diagonal(self.products) / (self.boards - 1))
        return deviation


@dataclass(frozen=True, slots=True)
class Variances:
    """Two-way analysis of variance, slots by boards, one reading each."""

    slots_sum: float
    """Sum of squares between slots. [mm²]"""
    boards_sum: float
    """Sum of squares between boards. [mm²]"""
    residual_sum: float
    """What is left. [mm²]"""
    slots_freedom: int
    """Degrees of freedom between slots."""
    boards_freedom: int
    """Degrees of freedom between boards."""
    residual_freedom: int
    """Degrees of freedom of what is left."""
    f_ratio: float | None
    """Mean square between boards over what is left; None with one slot. [-]"""
    p_value: float | None
    """Probability of a ratio as large if all boards lay alike. [-]"""
    within: float
    """Standard deviation of a slot against the other slots of its board, the instrument included. [mm]"""
    between: float
    """Standard deviation of a whole board against the others. [mm]"""


def moments_of(readings: Floats, commanded: Floats) -> Moments:
    """Moments of the deviations of boards from where their slots were commanded, in one pass.

    Parameters
    ----------
    readings : ndarray, shape (boards, slots)
        Positions from the tool's zero. [mm]
    commanded : ndarray, shape (slots,)
        Where they should be. [mm]

    Returns
    -------
    Moments
        Beside the readings themselves, memory for one number a board.

    Raises
    ------
    UnequalSlotsError
        Another number of slots than was commanded.
    TooFewBoardsError
        Fewer than two boards.
    """
    if readings.ndim != 2 or readings.shape[1] != len(commanded):
        given = readings.shape[-1] if readings.ndim else 0
        slots = counted(len(commanded), "slot")
        message = f"the boards have {counted(given, 'reading')} each for {slots}; give one for each slot"
        raise UnequalSlotsError(message, field=("boards",), given=given, needed=len(commanded))
    boards = len(readings)
    if boards < 2:
        message = (
            "one board alone cannot tell the tool's error from the board's own; measure two boards or more off the "
            "same tool, or have this one identified by itself"
        )
        raise TooFewBoardsError(message, field=("boards",), given=boards, needed=2)
    # Centred about a first guess, so that a tool zero far away costs no digits.
    guess = np.mean(readings[: min(boards, _CHUNK)] - commanded, axis=0)
    total = np.zeros(len(commanded))
    products = np.zeros((len(commanded), len(commanded)))
    common = np.empty(boards)
    for first in range(0, boards, _CHUNK):
        chunk = slice(first, first + _CHUNK)
        deviations = readings[chunk] - commanded
        common[chunk] = np.median(deviations, axis=1)
        deviations -= guess
        total += np.sum(deviations, axis=0)
        products += deviations.T @ deviations
    mean = total / boards
    products -= boards * np.outer(mean, mean)
    return Moments(boards, guess + mean, products, common)


def middle_of(readings: Floats, commanded: Floats, slots: Sequence[int]) -> Floats:
    """Median deviation of some slots of each board, where the board as a whole lies.

    Parameters
    ----------
    readings : ndarray, shape (boards, slots)
        Positions from the tool's zero. [mm]
    commanded : ndarray, shape (slots,)
        Where they should be. [mm]
    slots : sequence of int
        The columns to use.

    Returns
    -------
    ndarray, shape (boards,)
        [mm]
    """
    columns = list(slots)
    middle = np.empty(len(readings))
    for first in range(0, len(readings), _CHUNK):
        chunk = slice(first, first + _CHUNK)
        middle[chunk] = np.median(readings[chunk][:, columns] - commanded[columns], axis=1)
    return middle


def variances_of(moments: Moments) -> Variances:
    """Two-way analysis of variance from the moments.

    Parameters
    ----------
    moments : Moments
        Of two boards or more.

    Returns
    -------
    Variances
        With both components of variance.

    Notes
    -----
    The slots' means taken out, a board's mean over its slots has the sum of squares 1' S 1 / n, with S the matrix of
    products, and all that is left tr S less that. The component between boards is that mean square's excess over the
    residual one, divided by n; it is taken as 0 where there is none.
    """
    slots = len(moments.mean)
    boards_sum = float(np.sum(moments.products)) / slots
    residual_sum = max(float(np.trace(moments.products)) - boards_sum, 0.0)
    boards_freedom = moments.boards - 1
    residual_freedom = boards_freedom * (slots - 1)
    slots_sum = moments.boards * float(np.sum((moments.mean - np.mean(moments.mean)) ** 2))
    f_ratio = p_value = None
    boards_square = boards_sum / boards_freedom
    residual_square = 0.0
    if residual_freedom:
        residual_square = residual_sum / residual_freedom
        f_ratio = boards_square / residual_square if residual_square > 0.0 else math.inf
        p_value = f_survival(f_ratio, boards_freedom, residual_freedom)
    return Variances(
        slots_sum=slots_sum,
        boards_sum=boards_sum,
        residual_sum=residual_sum,
        slots_freedom=slots - 1,
        boards_freedom=boards_freedom,
        residual_freedom=residual_freedom,
        f_ratio=f_ratio if f_ratio is None or math.isfinite(f_ratio) else None,
        p_value=p_value,
        within=math.sqrt(residual_square),
        between=math.sqrt(max(boards_square - residual_square, 0.0) / slots),
    )
