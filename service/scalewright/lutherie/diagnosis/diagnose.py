"""Diagnosing: from cents that were heard to the moves that mend them, and what can't be told."""

import math
from collections.abc import Sequence

import numpy as np

from scalewright.lutherie.diagnosis import words
from scalewright.lutherie.diagnosis.answer import (
    Diagnosis,
    MendedReading,
    SpacingDiagnosis,
    StringDiagnosis,
    StringVerdict,
)
from scalewright.lutherie.diagnosis.complaint import Board, CentsReading, Complaint, board_of
from scalewright.lutherie.diagnosis.frets import candidate_errors, diagnose_spacing
from scalewright.lutherie.diagnosis.moves import FittedString, MoveFit, fit_moves, fit_string
from scalewright.lutherie.diagnosis.readings import next_readings, suspects_of
from scalewright.lutherie.diagnosis.trust import Disagreement, disagreement_of, without_frets
from scalewright.lutherie.errors import TooFewReadingsError
from scalewright.lutherie.estimate import (
    Estimate,
    Floats,
    chi_square_survival,
    normal_estimate,
)

__all__ = ["diagnose"]

_CALLED_FOR = 0.05
"""Errors less probable than this by the tuner alone call for a move. [-]"""


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
    spacing, fitted, disagreements = _settled(complaint, board, fitted)
    strings = [_diagnosed(complaint, board, string, disagreements.get(string.number)) for string in fitted]
    misplaced = {fret.fret for fret in spacing.frets if fret.misplaced}
    remaining = [reading.remaining for string in strings for reading in string.readings if reading.fret > 0]
    return Diagnosis(
        rule=complaint.rule,
        layout_scale=board.layout.layout_scale,
        true_scale=board.scale,
        coverage=complaint.coverage,
        strings=strings,
        spacing=spacing,
        suspect_readings=[one for one in suspects_of(fitted) if one.fret not in misplaced],
        cannot_tell=words.cannot_tell(complaint, fitted, spacing, sorted(disagreements)),
        next_readings=next_readings(complaint, board, fitted, disagreements),
        remaining_rms_cents=_rms(np.array(remaining)),
        statement=words.statement(strings, sorted(disagreements)),
        notes=words.notes(complaint),
    )


def _settled(
    complaint: Complaint, board: Board, fitted: Sequence[FittedString]
) -> tuple[SpacingDiagnosis, list[FittedString], dict[int, Disagreement]]:
    """What the frets are off, the strings fitted beside it, and those of them whose readings contradict one another."""
    rules = [errors for _, errors in candidate_errors(complaint, board)]
    spacing, settled, disagreements = diagnose_spacing(complaint, board, fitted), [*fitted], dict[int, Disagreement]()
    # Twice, for strings that contradict themselves say nothing of the frets.
    for _ in range(2):
        misplaced = [fret.fret for fret in spacing.frets if fret.misplaced]
        settled = [without_frets(complaint, board, string, misplaced) for string in fitted]
        looked = {string.number: disagreement_of(board, string, rules) for string in settled}
        disagreements = {number: found for number, found in looked.items() if found is not None}
        believed = [string for string in fitted if string.number not in disagreements]
        if not disagreements or not believed:
            break
        spacing = diagnose_spacing(complaint, board, believed)
    return spacing, settled, disagreements


def _diagnosed(
    complaint: Complaint, board: Board, string: FittedString, disagreement: Disagreement | None
) -> StringDiagnosis:
    """Answer for one string."""
    fit, coverage = string.fit, complaint.coverage
    nothing = _fit(board, string, offset=string.open_known)
    saddle_alone, nut_alone = _alone(complaint, board, string) if disagreement is None else (None, None)
    degrees = string.counted - int(fit.free.sum())
    p_value = float(chi_square_survival(np.array(fit.chi_square), degrees)) if degrees > 0 else None
    # Readings that contradict one another tell of no move, so that none of the answer mends them.
    mended = fit if disagreement is None else nothing
    known = [disagreement is None and bool(free) for free in fit.free]
    offset, saddle, nut = (_estimate(fit if told else None, index, coverage) for index, told in enumerate(known))
    fretted = string.frets > 0
    # Without a known open string the readings themselves are all there is.
    heard = string.cents - (nothing.values[0] if string.open_known else 0.0)
    verdict = _verdict(string, nothing, disagreement)
    order = np.argsort(string.frets, kind="stable")
    own = [index for index in order.tolist() if string.given[index] >= 0]
    return StringDiagnosis(
        string=string.number,
        verdict=verdict,
        saddle_move=saddle,
        nut_move=nut,
        saddle_alone=_estimate(saddle_alone, 1, coverage),
        nut_alone=_estimate(nut_alone, 2, coverage),
        tuning_offset=offset if string.open_known else None,
        rms_cents=_rms(heard[fretted]),
        remaining_rms_cents=_rms(mended.residuals[fretted]),
        saddle_alone_rms_cents=None if saddle_alone is None else _rms(saddle_alone.residuals[fretted]),
        nut_alone_rms_cents=None if nut_alone is None else _rms(nut_alone.residuals[fretted]),
        chi_square=fit.chi_square,
        degrees_of_freedom=degrees,
        p_value=p_value,
        readings=[
            MendedReading(int(string.frets[index]), float(string.cents[index]), float(mended.residuals[index]))
            for index in own
        ],
        statement=words.contradiction(string, disagreement)
        if disagreement is not None
        else words.of_string(string, verdict, saddle, nut, (saddle_alone, nut_alone)),
    )


def _verdict(string: FittedString, nothing: MoveFit, disagreement: Disagreement | None) -> StringVerdict:
    """Whether anything has to move, and whether the readings tell what."""
    if disagreement is not None:
        return "undecided"
    beyond = string.counted - int(nothing.free.sum())
    if beyond > 0 and float(chi_square_survival(np.array(nothing.chi_square), beyond)) > _CALLED_FOR:
        return "in_tune" if string.open_known else "undecided"
    return "move" if string.told else "undecided"


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
