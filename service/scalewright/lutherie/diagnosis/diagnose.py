"""Diagnosing: from cents that were heard to the moves that mend them, and what can't be told."""

import math
from collections.abc import Sequence

import numpy as np

from scalewright.lutherie.diagnosis import words
from scalewright.lutherie.diagnosis.answer import (
    Diagnosis,
    MendedReading,
    ReadNext,
    StringDiagnosis,
    StringVerdict,
    SuspectCents,
)
from scalewright.lutherie.diagnosis.complaint import Board, CentsReading, Complaint, board_of
from scalewright.lutherie.diagnosis.frets import diagnose_spacing
from scalewright.lutherie.diagnosis.moves import FittedString, MoveFit, fit_moves, fit_string, information_of
from scalewright.lutherie.errors import TooFewReadingsError
from scalewright.lutherie.estimate import (
    Estimate,
    Floats,
    chi_square_quantile,
    chi_square_survival,
    normal_estimate,
)

__all__ = ["diagnose"]

_CALLED_FOR = 0.05
"""Errors less probable than this by the tuner alone call for a move. [-]"""
_SUSPICION = 0.01
"""How improbable a deviation has to be, of all readings together, to be named. [-]"""
_SURE_ENOUGH = 0.25
"""Standard uncertainty of a move beyond which another reading is proposed; our choice. [mm]"""
_WIDE = np.array([100.0, 10.0, 10.0])
"""Standard deviations of offset, saddle and nut before anything is read: wide; our choice. [cent, mm, mm]"""


def diagnose(complaint: Complaint) -> Diagnosis:
    """Find the moves of saddle and nut that mend a board, string by string.

    Parameters
    ----------
    complaint : Complaint
        What was heard on which board.

    Returns
    -------
    Diagnosis
        Moves with their intervals where the readings tell them, what they leave, what is left for the frets
        to explain, and what can't be told.

    Raises
    ------
    TooFewReadingsError
        No note at any fret.
    LutherieError
        A board or readings that :func:`scalewright.lutherie.diagnosis.complaint.board_of` refuses.
    """
    board = board_of(complaint)
    by_string: dict[int, list[tuple[int, CentsReading]]] = {}
    for index, reading in enumerate(complaint.readings):
        by_string.setdefault(reading.string, []).append((index, reading))
    if all(reading.fret == 0 for reading in complaint.readings):
        message = "nothing was read at a fret; read each string open and at two frets or more, 1 and 12 for instance"
        raise TooFewReadingsError(message, field=("readings",), given=0, needed=1)
    fitted = [fit_string(complaint, board, number, by_string[number]) for number in sorted(by_string)]
    fitted = [string for string in fitted if (string.frets > 0).any()]
    strings = [_diagnosed(complaint, board, string) for string in fitted]
    spacing = diagnose_spacing(complaint, board, fitted)
    misplaced = {fret.fret for fret in spacing.frets if fret.misplaced}
    remaining = [reading.remaining for string in strings for reading in string.readings if reading.fret > 0]
    return Diagnosis(
        rule=complaint.rule,
        layout_scale=board.layout.layout_scale,
        true_scale=board.scale,
        coverage=complaint.coverage,
        strings=strings,
        spacing=spacing,
        suspect_readings=[one for one in _suspects(fitted) if one.fret not in misplaced],
        cannot_tell=words.cannot_tell(complaint, fitted, spacing),
        next_readings=[proposal for string in fitted if (proposal := _next(complaint, board, string)) is not None],
        remaining_rms_cents=_rms(np.array(remaining)),
        statement=words.statement(strings),
        notes=words.notes(complaint),
    )


def _diagnosed(complaint: Complaint, board: Board, string: FittedString) -> StringDiagnosis:
    """Answer for one string."""
    fit, coverage = string.fit, complaint.coverage
    nothing = _fit(board, string, offset=string.open_known)
    saddle_alone, nut_alone = _alone(complaint, board, string)
    verdict: StringVerdict = "move" if string.told else "undecided"
    beyond = len(string.frets) - int(nothing.free.sum())
    if beyond > 0 and float(chi_square_survival(np.array(nothing.chi_square), beyond)) > _CALLED_FOR:
        verdict = "in_tune" if string.open_known else "undecided"
    fretted = string.frets > 0
    degrees = len(string.frets) - int(fit.free.sum())
    # Without a known open string the readings themselves are all there is.
    heard = string.cents - (nothing.values[0] if string.open_known else 0.0)
    saddle = normal_estimate(float(fit.values[1]), fit.sigma(1), coverage) if fit.free[1] else None
    nut = normal_estimate(float(fit.values[2]), fit.sigma(2), coverage) if fit.free[2] else None
    order = np.argsort(string.frets, kind="stable")
    own = [index for index in order.tolist() if string.given[index] >= 0]
    return StringDiagnosis(
        string=string.number,
        verdict=verdict,
        saddle_move=saddle,
        nut_move=nut,
        saddle_alone=_estimate(saddle_alone, 1, coverage),
        nut_alone=_estimate(nut_alone, 2, coverage),
        tuning_offset=normal_estimate(float(fit.values[0]), fit.sigma(0), coverage)
        if fit.free[0] and string.open_known
        else None,
        rms_cents=_rms(heard[fretted]),
        remaining_rms_cents=_rms(fit.residuals[fretted]),
        saddle_alone_rms_cents=None if saddle_alone is None else _rms(saddle_alone.residuals[fretted]),
        nut_alone_rms_cents=None if nut_alone is None else _rms(nut_alone.residuals[fretted]),
        chi_square=fit.chi_square,
        degrees_of_freedom=degrees,
        p_value=float(chi_square_survival(np.array(fit.chi_square), degrees)) if degrees > 0 else None,
        readings=[
            MendedReading(int(string.frets[index]), float(string.cents[index]), float(fit.residuals[index]))
            for index in own
        ],
        statement=words.of_string(string, verdict, saddle, nut, (saddle_alone, nut_alone)),
    )


def _fit(board: Board, string: FittedString, *, offset: bool, saddle: bool = False, nut: bool = False) -> MoveFit:
    """Fit some of the three."""
    return fit_moves(board, string.frets, string.cents, string.weights, np.array([offset, saddle, nut]))


def _alone(complaint: Complaint, board: Board, string: FittedString) -> tuple[MoveFit | None, MoveFit | None]:
    """Fits of the saddle alone and of the nut alone, where the open string is known."""
    if not string.open_known:
        return None, None
    saddle = _fit(board, string, offset=True, saddle=True)
    nut = _fit(board, string, offset=True, nut=True) if complaint.nut_may_move else None
    return saddle, nut


def _estimate(fit: MoveFit | None, index: int, coverage: float) -> Estimate | None:
    return None if fit is None else normal_estimate(float(fit.values[index]), fit.sigma(index), coverage)


def _rms(values: Floats) -> float:
    return math.sqrt(float(np.mean(values**2)))


def _suspects(strings: Sequence[FittedString]) -> list[SuspectCents]:
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
    # A single wrong reading drags its neighbours along: of each string the worst is named, as it is mended first.
    worst: dict[int, SuspectCents] = {}
    for one in found:
        if one.string not in worst or abs(one.deviation) > abs(worst[one.string].deviation):
            worst[one.string] = one
    return list(worst.values())


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
    frets_after = set(string.frets.tolist()) | {fret}
    stopped, open_after = len(frets_after - {0}), 0 in frets_after
    told = stopped >= 2 or (stopped == 1 and open_after and not complaint.nut_may_move)
    return ReadNext(
        string=string.number,
        fret=fret,
        saddle_uncertainty=float(after[1]) if told else None,
        nut_uncertainty=float(after[2]) if told and open_after and complaint.nut_may_move else None,
    )
