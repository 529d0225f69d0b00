"""Asking for every line of a fingerboard, and for its drawing."""

from collections.abc import Iterable
from typing import Literal, Unpack

from scalewright_client._protocol import Call, DocumentCall, call, document_call
from scalewright_client._requests import (
    BoardMargins,
    BoardRules,
    BoardStrings,
    BoardWidths,
    DrawingMedia,
    FanScale,
    FingerboardQuestion,
    Length,
    PartialFret,
    RuleLike,
    Saw,
    ScaleBasis,
    Sheet,
    Slots,
    SurfaceRadius,
    Unit,
)
from scalewright_client._results import Fingerboard

__all__ = ["fingerboard", "fingerboard_drawing"]

_PATH = "/v1/fingerboard"


def fingerboard(
    *,
    scale: Length | FanScale,
    rule: RuleLike | BoardRules,
    frets: int,
    strings: BoardStrings,
    unit: Unit = "mm",
    margins: Length | BoardMargins | None = None,
    widths: BoardWidths | None = None,
    scale_basis: ScaleBasis | None = None,
    scale_along: Literal["centre_line", "string"] | None = None,
    square_fret: int | None = None,
    handedness: Literal["right", "left"] | None = None,
    extension: Length | None = None,
    far_end: Literal["square", "parallel"] | None = None,
    zero_fret: bool | None = None,
    behind_zero_fret: Length | None = None,
    nut_setback: Length | None = None,
    saddle_setbacks: Iterable[Length] | None = None,
    slots: Slots | None = None,
    radius: Length | SurfaceRadius | None = None,
    partial_frets: Iterable[PartialFret] | None = None,
    markers: Iterable[int] | None = None,
    double_markers: Iterable[int] | None = None,
    saw: Saw | None = None,
    sheet: Sheet | None = None,
) -> Call[Fingerboard]:
    """Ask for every line of a board: outline, strings, slots with their kerf, nut, saddle, cut list.

    Of the strings' spreads, ``margins`` and ``widths`` two are given, and the third follows.

    Parameters
    ----------
    scale : float, str or FanScale
        The scale, or bass and treble scales of a fan board. [unit, or its own]
    rule : str, RuleRequest, Rule or BoardRules
        The spacing rule, or one for either outer string.
    frets : int
        Number of frets, 1 to 60.
    strings : BoardStrings
        How many strings, and how they are spread.
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    margins : float, str or BoardMargins, optional
        From an outer string to the edge beside it: one length, or four. [unit, or its own]
    widths : BoardWidths, optional
        Widths of the board at the zero line and at the last fret.
    scale_basis : {"layout", "true"}, optional
        Which of the two scales ``scale`` is; "layout" unless given.
    scale_along : {"centre_line", "string"}, optional
        What the scale is measured along; the centre line unless given.
    square_fret : int, optional
        The fret of a fan board that stays square, 0 for the nut; needed where the sides differ.
    handedness : {"right", "left"}, optional
        Which hand plucks; "right" unless given.
    extension : float or str, optional
        How far the board goes on past the last fret; 10 mm unless given. [unit, or its own]
    far_end : {"square", "parallel"}, optional
        How the far end is cut: square, or parallel to the last fret.
    zero_fret : bool, optional
        Whether a fret stands on the zero line.
    behind_zero_fret : float or str, optional
        How far the board goes on behind a zero fret; 5 mm unless given. [unit, or its own]
    nut_setback : float or str, optional
        From the zero line to the nut's front edge, positive away from fret 1. [unit, or its own]
    saddle_setbacks : iterable of float or str, optional
        From the end of each string's scale to its break point, string 1 first. [unit, or their own]
    slots : Slots, optional
        The slots that the frets go into.
    radius : float, str or SurfaceRadius, optional
        Radius of the surface, or both radii of a cone; flat unless given. [unit, or its own]
    partial_frets : iterable of PartialFret, optional
        Frets that cross some strings only, and extra frets.
    markers : iterable of int, optional
        Frets with a position marker before them; the usual ones unless given.
    double_markers : iterable of int, optional
        Those of them that bear two; 12 and 24 unless given.
    saw : Saw, optional
        How the slots are cut; the cut list is written for it.
    sheet : Sheet, optional
        What stands on a drawing; no part of this answer.

    Returns
    -------
    Fingerboard
        The board with all its lines, its zero where the zero line crosses the centre line. Guard the
        blade, wear eye and ear protection, and catch the dust when you cut by it.
    """
    body = {
        "unit": unit,
        "scale": scale,
        "rule": rule,
        "frets": frets,
        "strings": strings,
        "margins": margins,
        "widths": widths,
        "scale_basis": scale_basis,
        "scale_along": scale_along,
        "square_fret": square_fret,
        "handedness": handedness,
        "extension": extension,
        "far_end": far_end,
        "zero_fret": zero_fret,
        "behind_zero_fret": behind_zero_fret,
        "nut_setback": nut_setback,
        "saddle_setbacks": saddle_setbacks,
        "slots": slots,
        "radius": radius,
        "partial_frets": partial_frets,
        "markers": markers,
        "double_markers": double_markers,
        "saw": saw,
        "sheet": sheet,
    }
    return call("POST", _PATH, Fingerboard, body)


def fingerboard_drawing(*, media: DrawingMedia = "image/svg+xml", **board: Unpack[FingerboardQuestion]) -> DocumentCall:
    """Ask for the drawing of a board: SVG or DXF in millimetres, PDF at full size, a PNG preview, or a cut list.

    Parameters
    ----------
    media : {"image/svg+xml", "image/vnd.dxf", "application/pdf", "image/png", "text/csv"}
        What to make.
    **board : FingerboardQuestion
        The keywords of ``fingerboard``; ``sheet`` says what stands on the drawing.

    Returns
    -------
    bytes
        The file. Measure the check bars of a print before you cut by it.
    """
    return document_call(_PATH, media, board)
