"""Readings to come: which to take again, and which would tell most next."""

import math
from collections.abc import Mapping, Sequence

import numpy as np

from scalewright.lutherie.diagnosis import words
from scalewright.lutherie.diagnosis.answer import ReadNext, SuspectCents
from scalewright.lutherie.diagnosis.complaint import Board, Complaint
from scalewright.lutherie.diagnosis.moves import FittedString, determined, information_of
from scalewright.lutherie.diagnosis.trust import Disagreement
from scalewright.lutherie.estimate import Floats, chi_square_quantile

__all__ = ["next_readings", "suspects_of"]

_SUSPICION = 0.01
"""How improbable a deviation has to be, of all readings together, to be named. [-]"""
_AS_FAR = 0.9
"""Share of the largest deviation from which on another reading is as suspect. [-]"""
_SURE_ENOUGH = 0.25
"""Standard uncertainty of a move beyond which another reading is proposed; our choice. [mm]"""
_WIDE = np.array([100.0, 10.0, 10.0])
"""Standard deviations of offset, saddle and nut before anything is read: wide; our choice. [cent, mm, mm]"""


def suspects_of(strings: Sequence[FittedString]) -> list[SuspectCents]:
    """Readings that the others of their strings contradict, each judged without itself."""
    count = sum(len(string.frets) for string in strings)
    threshold = math.sqrt(chi_square_quantile(_SUSPICION / count, 1))
    found = []
    for string in strings:
        fit = string.fit
        leverage = string.weights * np.einsum("ij,jk,ik->i", fit.design, fit.covariance, fit.design)
        rest = 1.0 - leverage
        for index in np.flatnonzero((rest > 0.05) & (string.given >= 0)).tolist():
            deviation = float(fit.residuals[index] / rest[index])
            if abs(deviation) * math.sqrt(float(rest[index] * string.weights[index])) > threshold:
                found.append(
                    SuspectCents(
                        string.number, int(string.frets[index]), deviation, words.suspicion(string, index, deviation)
                    )
                )
    # A single wrong reading drags its neighbours along: of each string the worst is named, as it is mended first, and
    # with it what else was read of the same note and is as far off, for either may be the wrong one.
    worst: dict[int, SuspectCents] = {}
    for one in found:
        if one.string not in worst or abs(one.deviation) > abs(worst[one.string].deviation):
            worst[one.string] = one
    return [
        one
        for one in found
        if one.fret == worst[one.string].fret and abs(one.deviation) > _AS_FAR * abs(worst[one.string].deviation)
    ]


def next_readings(
    complaint: Complaint, board: Board, strings: Sequence[FittedString], disagreements: Mapping[int, Disagreement]
) -> list[ReadNext]:
    """What to read next, string by string; what contradicts the others is read again before anything else."""
    found = []
    for string in strings:
        disagreement = disagreements.get(string.number)
        if disagreement is not None:
            found.append(ReadNext(string.number, disagreement.fret, None, None))
        elif (proposal := _next(complaint, board, string)) is not None:
            found.append(proposal)
    return found


def _next(complaint: Complaint, board: Board, string: FittedString) -> ReadNext | None:
    """The reading that would narrow the moves of a string most; None where they are sure enough."""
    wanted = np.array([True, True, complaint.nut_may_move])
    sigmas = [string.fit.sigma(index) for index in (1, 2) if wanted[index]]
    known = string.told and (string.open_known or not complaint.nut_may_move)
    if known and max(sigmas) <= _SURE_ENOUGH:
        return None
    frets = list(range(complaint.frets + 1))
    moves = string.fit.values[1:]
    rows = information_of(board, frets, moves)[:, wanted]
    read = information_of(board, string.frets.tolist(), moves)[:, wanted]
    prior = np.diag(1.0 / _WIDE[wanted] ** 2)
    information = prior + read.T @ (read * string.weights[:, np.newaxis])
    tuner = complaint.tuner_uncertainty**2 + complaint.resolution**2 / 12.0
    best: tuple[float, int, Floats] | None = None
    for fret, row in zip(frets, rows, strict=True):
        weight = 1.0 / (tuner + (complaint.model_uncertainty**2 if fret else 0.0))
        after = np.diag(np.linalg.inv(information + weight * np.outer(row, row)))
        badness = float(after[1:].sum())
        if best is None or badness < best[0] * (1.0 - 1e-9):
            best = (badness, fret, np.sqrt(after))
    assert best is not None  # noqa: S101  (there is a fret 0 at least)
    _, fret, after = best
    free, told = determined(complaint, [*string.frets.tolist(), fret])
    return ReadNext(
        string=string.number,
        fret=fret,
        saddle_uncertainty=float(after[1]) if told else None,
        nut_uncertainty=float(after[2]) if free[2] else None,
    )
