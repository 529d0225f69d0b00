"""Asking what a tool does to its boards, and which tool a board came from."""

from collections.abc import Iterable, Sequence

from scalewright_client._protocol import Call, call
from scalewright_client._requests import LaidOut, Length, SignatureLike, Unit
from scalewright_client._results import Tooling, ToolOrigin

__all__ = ["tooling", "tooling_origin"]


def tooling(
    *,
    boards: Iterable[Sequence[Length]],
    unit: Unit = "mm",
    id: str | None = None,  # noqa: A002 - the contract's word
    layout: LaidOut | None = None,
    commanded: Iterable[Length] | None = None,
    true_scale: Length | None = None,
    frets: Iterable[int] | None = None,
    instrument_uncertainty: Length | None = None,
    tolerance: Length | None = None,
    significance: float | None = None,
    unknown: Iterable[Length] | None = None,
    signatures: Iterable[SignatureLike] | None = None,
    coverage: float | None = None,
) -> Call[Tooling]:
    """Ask what a tool does to its boards: bias by slot, repeatability, capability, drift.

    Where it was told to cut is ``layout``, or ``commanded`` with ``true_scale``.

    Parameters
    ----------
    boards : iterable of sequence of float or str
        For each board, in the order of making, positions of its slots from the tool's own zero.
        [unit, or their own]
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    id : str, optional
        The caller's name for the tool.
    layout : LaidOut, optional
        Where the tool was told to cut, as a layout.
    commanded : iterable of float or str, optional
        Instead: positions of the slots from the tool's zero, ascending. [unit, or their own]
    true_scale : float or str, optional
        With ``commanded``: the true scale that they were laid out for. [unit, or its own]
    frets : iterable of int, optional
        With ``commanded``: fret of each slot; 1, 2, 3, ... unless given.
    instrument_uncertainty : float or str, optional
        Of one reading (k = 1). [unit, or its own]
    tolerance : float or str, optional
        How far a slot may lie from its commanded place; 0.1 mm unless given. [unit, or its own]
    significance : float, optional
        Probability of calling a drift where there is none; 0.01 unless given. [-]
    unknown : iterable of float or str, optional
        A board of unknown origin, to be held against this tool and those of ``signatures``.
        [unit, or their own]
    signatures : iterable of SignatureRequest or Signature, optional
        With ``unknown``: other tools that it may have come from.
    coverage : float, optional
        Probability that the intervals of the answer cover; 0.95 unless given. [-]

    Returns
    -------
    Tooling
        The tool slot by slot, its drifts, the slots to be set again, and its signature.
    """
    body = {
        "unit": unit,
        "id": id,
        "layout": layout,
        "commanded": commanded,
        "true_scale": true_scale,
        "frets": frets,
        "boards": boards,
        "instrument_uncertainty": instrument_uncertainty,
        "tolerance": tolerance,
        "significance": significance,
        "unknown": unknown,
        "signatures": signatures,
        "coverage": coverage,
    }
    return call("POST", "/v1/tooling", Tooling, body)


def tooling_origin(
    *,
    board: Iterable[Length],
    signatures: Iterable[SignatureLike],
    unit: Unit = "mm",
    layout: LaidOut | None = None,
    commanded: Iterable[Length] | None = None,
    true_scale: Length | None = None,
    frets: Iterable[int] | None = None,
) -> Call[ToolOrigin]:
    """Ask which of several tools a board came from.

    Where they were told to cut is ``layout``, or ``commanded`` with ``true_scale``.

    Parameters
    ----------
    board : iterable of float or str
        Positions of its slots from the tools' zero. [unit, or their own]
    signatures : iterable of SignatureRequest or Signature
        The tools.
    unit : {"mm", "in"}
        Unit of plain numbers here.
    layout : LaidOut, optional
        Where the tools were told to cut, as a layout.
    commanded : iterable of float or str, optional
        Instead: positions of the slots from the tools' zero, ascending. [unit, or their own]
    true_scale : float or str, optional
        With ``commanded``: the true scale that they were laid out for. [unit, or its own]
    frets : iterable of int, optional
        With ``commanded``: fret of each slot; 1, 2, 3, ... unless given.

    Returns
    -------
    ToolOrigin
        The tool where one is established, and the probability of each.
    """
    body = {
        "unit": unit,
        "layout": layout,
        "commanded": commanded,
        "true_scale": true_scale,
        "frets": frets,
        "board": board,
        "signatures": signatures,
    }
    return call("POST", "/v1/tooling/origin", ToolOrigin, body)
