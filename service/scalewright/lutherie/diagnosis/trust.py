"""Trust: whether moves of saddle and nut can explain a string's readings, or whether these contradict one another."""

import math
from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.diagnosis.complaint import Board, Complaint
from scalewright.lutherie.diagnosis.frets import beyond_moves
from scalewright.lutherie.diagnosis.moves import FittedString, determined, fit_moves
from scalewright.lutherie.estimate import Floats, chi_square_survival

__all__ = ["Disagreement", "disagreement_of", "without_frets"]

_IMPOSSIBLE = 0.001
"""Readings less probable than this contradict one another. [-]"""
_OF_NO_ACCOUNT = 0.5
"""What real strings, and fingers that do not press twice alike, may leave beside every move and every rule without a
reading being wrong; our choice. [cent]"""
_FAR_APART = 3.0
"""Two readings of one note differ by more than so many standard deviations of their difference. [-]"""


class Disagreement(NamedTuple):
    """Readings of one string that no move, nut and saddle together, brings together."""

    fret: int
    """Where it is worst."""
    between: tuple[float, float] | None
    """The lowest and the highest of the readings of that one note, where these differ among themselves. [cent]"""
    scatter: float
    """Standard deviation of all readings about the best moves. [cent]"""


def without_frets(complaint: Complaint, board: Board, string: FittedString, frets: Collection[int]) -> FittedString:
    """Fit a string again with the readings at some frets left out, where the others still determine the moves.

    Parameters
    ----------
    complaint : Complaint
        What was heard.
    board : Board
        Where the frets stand.
    string : FittedString
        The string.
    frets : collection of int
        Frets that are known to be off themselves.

    Returns
    -------
    FittedString
        The readings that were left out have no weight; the string as it was where too few would be left.
    """
    out = np.isin(string.frets, list(frets))
    if not out.any():
        return string
    free, told = determined(complaint, string.frets[~out].tolist())
    if not told:
        return string
    weights = np.where(out, 0.0, string.weights)
    fit = fit_moves(board, string.frets, string.cents, weights, free)
    return replace(string, weights=weights, fit=fit)


def disagreement_of(board: Board, string: FittedString, rules: Sequence[Floats]) -> Disagreement | None:
    """Look whether a string's readings contradict one another.

    Parameters
    ----------
    board : Board
        Where the frets stand.
    string : FittedString
        The string.
    rules : sequence of ndarray, each of shape (n_frets,)
        Errors that the spacing rules which were compared would give the frets. [cent]

    Returns
    -------
    Disagreement or None
        None where moves of saddle and nut, with one of the rules or without, explain what was read.
    """
    counted = string.weights > 0.0
    frets = string.frets[counted]
    free = _freedom(string, frets)
    beyond = len(frets) - int(free.sum())
    if beyond < 1:
        return None
    judged = replace(string, fit=fit_moves(board, string.frets, string.cents, string.weights, free))
    spread = np.where(string.frets > 0, _OF_NO_ACCOUNT, 0.0)
    tolerant = counted / (1.0 / np.where(counted, string.weights, 1.0) + spread**2)
    lefts = [judged.fit.residuals]
    for errors in rules:
        own = np.concatenate([[0.0], errors])[string.frets]
        lefts.append(judged.fit.residuals - beyond_moves(judged, own))
    left = min(lefts, key=lambda one: float(tolerant @ one**2))
    if float(chi_square_survival(np.array(tolerant @ left**2), beyond)) >= _IMPOSSIBLE:
        return None
    misfit = np.where(string.given >= 0, tolerant * left**2, 0.0)
    fret = int(string.frets[int(np.argmax(misfit))])
    same = (string.frets == fret) & counted & (string.given >= 0)
    low, high = float(string.cents[same].min()), float(string.cents[same].max())
    differ = high - low > _FAR_APART * math.sqrt(2.0 / float(string.weights[same].min()))
    scatter = math.sqrt(float(np.sum(left[counted] ** 2)) / beyond)
    return Disagreement(fret, (low, high) if differ else None, scatter)


def _freedom(string: FittedString, frets: NDArray[np.intp]) -> NDArray[np.bool_]:
    """What moves of saddle and nut could do at best: a nut that has to stay is no contradiction of the readings."""
    several = len(set(frets.tolist()) - {0}) > 1
    return np.array([True, several or string.open_known, several and string.open_known])
