"""Tooling: what a tool does to many boards, how well it repeats, and whether it drifts."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.capability import capability
from scalewright.lutherie.errors import ImpossibleReadingError, UnequalSlotsError
from scalewright.lutherie.estimate import Estimate, Floats, Note
from scalewright.lutherie.phrases import counted
from scalewright.lutherie.ruling import Interval, refuse_without_width
from scalewright.lutherie.signature import Signature, ToolOrigin, origin_of
from scalewright.lutherie.spacing import CENTS_PER_OCTAVE
from scalewright.lutherie.student import student_quantile
from scalewright.lutherie.tool_drift import Reset, ToolingDrift, drifts_of, resets_of
from scalewright.lutherie.tooling_words import notes_of, statement_of
from scalewright.lutherie.variance import Moments, Variances, moments_of, variances_of

__all__ = ["SLOT_TOLERANCE", "SlotStudy", "Tool", "Tooling", "came_from", "study"]

SLOT_TOLERANCE = 0.1
"""How far a slot may lie from where it was commanded, where nothing else was asked for: 0.3 cents at fret 1 and about
one at fret 20 of 650 mm; common practice, no source. [mm]"""


@dataclass(frozen=True, slots=True)
class Tool:
    """Where a tool was told to cut."""

    commanded: tuple[float, ...]
    """Positions of the slots from the tool's zero, ascending. [mm]"""
    true_scale: float
    """True scale that they were laid out for. [mm]"""
    frets: tuple[int, ...]
    """Number of each slot's fret."""


@dataclass(frozen=True, slots=True)
class SlotStudy:
    """What a tool does at one slot."""

    fret: int
    """Its fret."""
    commanded: float
    """Where it should be, from the tool's zero. [mm]"""
    bias: Estimate
    """How far it lies from there on average, positive away from the nut. [mm]"""
    aligned_bias: Estimate | None
    """The same with the tool's scale and origin taken out; None with fewer than three slots. [mm]"""
    standard_deviation: float
    """Of the slot over the boards. [mm]"""
    expanded_uncertainty: float
    """Of a board's slot against its commanded place (k = 2), the bias included as it stands. [mm]"""
    cp: float | None
    """Tolerance over six standard deviations; None without spread. [-]"""
    cpk: float | None
    """The same, on the side with less room. [-]"""
    cents: float
    """What the bias does to the pitch of the note, positive sharp. [cent]"""


@dataclass(frozen=True, slots=True)
class Tooling:
    """What a tool does to many boards."""

    boards: int
    """How many were measured."""
    statement: str
    """One sentence for a work order."""
    slots: list[SlotStudy]
    """Slot by slot."""
    scale_error: Estimate | None
    """Relative error of the tool's scale; None with fewer than three slots. [-]"""
    origin_shift: Estimate | None
    """How far its zero is off, positive away from the nut; None with fewer than three slots. [mm]"""
    variances: Variances
    """Analysis of variance: repeatability within and between boards."""
    instrument_uncertainty: float
    """Standard uncertainty of one reading. [mm]"""
    tool_within: float
    """Standard deviation within boards with the instrument's share taken out. [mm]"""
    expanded_uncertainty: float
    """Of the product: twice the root mean square of all slots' deviations from their commanded places. [mm]"""
    tolerance: float
    """How far a slot may lie from its commanded place. [mm]"""
    worst_cpk: float | None
    """The smallest Cpk of all slots; None where no slot has any spread. [-]"""
    drifts: list[ToolingDrift]
    """What moved over the sequence."""
    resets: list[Reset]
    """Slots that should be set again."""
    signature: Signature
    """What identifies this tool, for later questions."""
    origin: ToolOrigin | None
    """Which tool an unknown board came from, where one was given."""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: list[Note]
    """Cautions."""


def study(
    tool: Tool,
    readings: Floats | Sequence[Sequence[float]],
    *,
    name: str = "this tool",
    instrument_uncertainty: float = 0.0,
    tolerance: float = SLOT_TOLERANCE,
    significance: float = 0.01,
    coverage: float = 0.95,
    unknown: Sequence[float] | None = None,
    others: Sequence[Signature] = (),
) -> Tooling:
    """Study boards off one tool.

    Parameters
    ----------
    tool : Tool
        Where it was told to cut.
    readings : ndarray or sequence of sequences, shape (boards, slots)
        Positions from the tool's own zero, board by board in the order of their making. [mm]
    name : str
        What the tool is called in answers.
    instrument_uncertainty : float
        Standard uncertainty of one reading. [mm]
    tolerance : float
        How far a slot may lie from its commanded place. [mm]
    significance : float
        Probability of calling a drift or a bias where there is none, over all slots. [-]
    coverage : float
        Probability that a stated interval holds.
    unknown : sequence of float, optional
        A board of unknown origin, to be held against this tool and the others. [mm]
    others : sequence of Signature
        With ``unknown``: other tools that it may have come from.

    Returns
    -------
    Tooling
        Bias, repeatability, capability, drift and what to re-set.

    Raises
    ------
    TooFewBoardsError
        Fewer than two boards.
    UnequalSlotsError
        A board with more or fewer readings than slots were commanded.
    ToleranceError
        A tolerance of zero or less.
    ImpossibleReadingError
        Positions of a board, or commanded ones, that do not ascend, or commanded ones that reach the end of the scale.

    Notes
    -----
    Means over boards have Student's t distribution with one degree of freedom less than there are boards, so that
    their intervals hold whatever part of the spread is common to a board. Boards that agree better than the
    instrument reads agree by chance: the instrument's share of a mean's uncertainty is its least.
    """
    refuse_without_width(Interval(-tolerance, tolerance))
    commanded = _checked(tool)
    table = _table(readings, len(commanded))
    moments = moments_of(table, commanded)
    variances = variances_of(moments)
    student = student_quantile(0.5 * (1.0 - coverage), moments.boards - 1)
    drifts = drifts_of(table, commanded, moments, tool.frets, significance, coverage)
    slots = _slots(tool, commanded, moments, tolerance, student, instrument_uncertainty)
    scale_error, origin_shift = _scale_and_origin(commanded, moments, student, instrument_uncertainty)
    # A few boards may agree by chance; nothing that was read is known better than the instrument reads.
    within = max(variances.within, instrument_uncertainty)
    signature = Signature(name, tuple(moments.mean.tolist()), within, variances.between, moments.boards)
    cpks = [slot.cpk for slot in slots if slot.cpk is not None]
    resets = resets_of(table, commanded, tool.frets, drifts, tolerance, significance, instrument_uncertainty)
    squares = moments.standard_deviation**2 + moments.mean**2
    origin = None
    if unknown is not None:
        origin = origin_of(_deviations(unknown, commanded, "unknown"), [signature, *others], first_given=1)
    worst = min(cpks, default=None)
    return Tooling(
        boards=moments.boards,
        statement=statement_of(moments.boards, worst, resets, drifts),
        slots=slots,
        scale_error=scale_error,
        origin_shift=origin_shift,
        variances=variances,
        instrument_uncertainty=instrument_uncertainty,
        tool_within=math.sqrt(max(variances.within**2 - instrument_uncertainty**2, 0.0)),
        expanded_uncertainty=2.0 * math.sqrt(float(np.mean(squares))),
        tolerance=tolerance,
        worst_cpk=worst,
        drifts=drifts,
        resets=resets,
        signature=signature,
        origin=origin,
        coverage=coverage,
        notes=notes_of(moments.boards, drifts, variances, instrument_uncertainty),
    )


def came_from(tool: Tool, board: Sequence[float], signatures: Sequence[Signature]) -> ToolOrigin:
    """Which of several tools a board came from, all of them told to cut at the same places.

    Parameters
    ----------
    tool : Tool
        Where they were told to cut.
    board : sequence of float, shape (slots,)
        Positions of the board's slots from the tools' zero. [mm]
    signatures : sequence of Signature
        The tools, as studies of them found.

    Returns
    -------
    ToolOrigin
        The tools by probability.

    Raises
    ------
    UnequalSlotsError
        A board or a signature with more or fewer slots than were commanded.
    ImpossibleReadingError
        Positions of a board, or commanded ones, that do not ascend, or commanded ones that reach the end of the scale.
    """
    return origin_of(_deviations(board, _checked(tool), "board"), signatures)


def _deviations(board: Sequence[float], commanded: Floats, name: str) -> list[float]:
    """How far each slot of a board lies from where it was commanded. [mm]"""
    if len(board) != len(commanded):
        message = (
            f"this board has {counted(len(board), 'slot')} for {len(commanded)} that were commanded; give one for each"
        )
        raise UnequalSlotsError(message, field=(name,), given=len(board), needed=len(commanded))
    positions = np.array(board)
    _refuse_descent(positions[None], ((name,),))
    deviations: list[float] = (positions - commanded).tolist()
    return deviations


def _refuse_descent(boards: Floats, places: Sequence[tuple[str | int, ...]]) -> None:
    """Refuse boards whose slots are out of order: deviations given for positions, or numbers that changed places."""
    down = np.argwhere(np.diff(boards) <= 0.0)
    if down.size:
        board, slot = down[0].tolist()
        message = (
            f"slot {slot + 2} of this board does not lie beyond slot {slot + 1}; give positions from the tool's own "
            "zero, in ascending order"
        )
        raise ImpossibleReadingError(message, field=(*places[board], slot + 1))


def _checked(tool: Tool) -> Floats:
    """Commanded positions, in order and on the board. [mm]"""
    commanded = np.array(tool.commanded)
    if len(commanded) != len(tool.frets):
        message = (
            f"{counted(len(tool.frets), 'fret')} and {counted(len(commanded), 'commanded position')} do not match; "
            "give one fret for each"
        )
        raise UnequalSlotsError(message, field=("frets",), given=len(tool.frets), needed=len(commanded))
    for field, numbers in (("commanded", commanded), ("frets", np.array(tool.frets))):
        if not np.all(np.diff(numbers) > 0):
            message = "commanded positions go up the board; give each slot once, in ascending order"
            raise ImpossibleReadingError(message, field=(field,))
    if commanded[-1] >= tool.true_scale:
        message = "a commanded position lies beyond the end of the true scale; check the scale and the positions"
        raise ImpossibleReadingError(message, field=("commanded", len(commanded) - 1))
    return commanded


def _table(readings: Floats | Sequence[Sequence[float]], slots: int) -> Floats:
    """Readings as an array; an array is taken as it is."""
    if isinstance(readings, np.ndarray):
        return readings
    for index, row in enumerate(readings):
        if len(row) != slots:
            message = (
                f"this board has {counted(len(row), 'reading')} for {counted(slots, 'slot')}; give one for each slot"
            )
            raise UnequalSlotsError(message, field=("boards", index), given=len(row), needed=slots)
    table = np.array(readings, dtype=float).reshape(len(readings), slots)
    _refuse_descent(table, [("boards", index) for index in range(len(table))])
    return table


def _slots(
    tool: Tool, commanded: Floats, moments: Moments, tolerance: float, student: float, instrument: float
) -> list[SlotStudy]:
    """What the tool does at every slot."""
    spread = moments.standard_deviation
    deviation = np.maximum(spread, instrument) / math.sqrt(moments.boards)
    indices = capability(moments.mean, spread, Interval(-tolerance, tolerance), 0.0)
    aligned: list[Estimate | None] = [None] * len(commanded)
    if len(commanded) > 2:
        design = np.stack([np.ones(len(commanded)), commanded], axis=1)
        hat = design @ np.linalg.pinv(design)
        keep = np.eye(len(commanded)) - hat
        means = keep @ moments.mean
        variance = np.einsum("ij,jk,ik->i", keep, moments.products, keep) / (moments.boards - 1) / moments.boards
        least = instrument**2 / moments.boards * np.diagonal(keep)
        deviations = np.sqrt(np.maximum(variance, least))
        aligned = [_estimate(m, d, student) for m, d in zip(means.tolist(), deviations.tolist(), strict=True)]
    left = tool.true_scale - commanded
    cents = -CENTS_PER_OCTAVE * np.log1p(-moments.mean / left) / math.log(2.0)
    return [
        SlotStudy(
            fret=fret,
            commanded=place,
            bias=_estimate(float(moments.mean[k]), float(deviation[k]), student),
            aligned_bias=aligned[k],
            standard_deviation=float(spread[k]),
            expanded_uncertainty=2.0 * math.hypot(float(spread[k]), float(moments.mean[k])),
            cp=_finite(float(indices.cp[k])),
            cpk=_finite(float(indices.cpk[k])),
            cents=float(cents[k]),
        )
        for k, (fret, place) in enumerate(zip(tool.frets, tool.commanded, strict=True))
    ]


def _finite(number: float) -> float | None:
    return number if math.isfinite(number) else None


def _estimate(value: float, deviation: float, factor: float) -> Estimate:
    return Estimate(value, deviation, value - factor * deviation, value + factor * deviation)


def _scale_and_origin(
    commanded: Floats, moments: Moments, student: float, instrument: float
) -> tuple[Estimate | None, Estimate | None]:
    """Relative error of the tool's scale, and how far its zero is off."""
    if len(commanded) < 3:
        return None, None
    design = np.stack([commanded, np.ones(len(commanded))], axis=1)
    solve = np.linalg.pinv(design)
    found = solve @ moments.mean
    variance = np.einsum("ij,jk,ik->i", solve, moments.products, solve) / (moments.boards - 1) / moments.boards
    least = instrument**2 / moments.boards * np.einsum("ij,ij->i", solve, solve)
    deviations = np.sqrt(np.maximum(variance, least))
    scale, shift = (_estimate(float(v), float(d), student) for v, d in zip(found, deviations, strict=True))
    return scale, shift
