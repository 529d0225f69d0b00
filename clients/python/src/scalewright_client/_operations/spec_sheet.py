"""Asking for spec sheets."""

from collections.abc import Iterable
from typing import Literal, Unpack

from scalewright_client._protocol import Call, DocumentCall, call, document_call
from scalewright_client._requests import Length, Outline, Part, SheetMedia, SpecSheetQuestion, Stringing, Unit
from scalewright_client._results import SpecSheet

__all__ = ["spec_sheet", "spec_sheet_drawing"]

_PATH = "/v1/spec-sheet"


def spec_sheet(
    *,
    part: Part,
    unit: Unit = "mm",
    stringing: Stringing | None = None,
    outline: Outline | None = None,
    tolerance: Length | None = None,
    coverage: float | None = None,
    title: str | None = None,
    identifiers: Iterable[str] | None = None,
    revision: str | None = None,
    date: str | None = None,
    paper: Literal["A4", "letter"] | None = None,
    html: Literal["page", "fragment"] | None = None,
) -> Call[SpecSheet]:
    """Ask what a buyer of a part has to know of its scale; ``spec_sheet_drawing`` gives it to show and print.

    Parameters
    ----------
    part : Part
        The part.
    unit : {"mm", "in"}
        Unit of plain numbers and of the sheet.
    stringing : Stringing, optional
        A string set to recommend setbacks for.
    outline : Outline, optional
        The outline of the board, to draw it to scale.
    tolerance : float or str, optional
        How far true scales of parts that are put together may differ; 0.5 mm unless given. [unit, or its own]
    coverage : float, optional
        Probability that the intervals of the answer cover; 0.95 unless given. [-]
    title : str, optional
        What the part is called.
    identifiers : iterable of str, optional
        Other numbers that it goes by.
    revision : str, optional
        Revision of the sheet.
    date : str, optional
        The day that the sheet bears, as ISO 8601 writes it.
    paper : {"A4", "letter"}, optional
        Paper of a PDF; no matter here.
    html : {"page", "fragment"}, optional
        How HTML is written; no matter here.

    Returns
    -------
    SpecSheet
        Figures, and the same in sentences.
    """
    body = {
        "unit": unit,
        "part": part,
        "stringing": stringing,
        "outline": outline,
        "tolerance": tolerance,
        "coverage": coverage,
        "title": title,
        "identifiers": identifiers,
        "revision": revision,
        "date": date,
        "paper": paper,
        "html": html,
    }
    return call("POST", _PATH, SpecSheet, body)


def spec_sheet_drawing(*, media: SheetMedia = "text/html", **question: Unpack[SpecSheetQuestion]) -> DocumentCall:
    """Ask for a spec sheet to show and print.

    Parameters
    ----------
    media : {"text/html", "application/pdf"}
        What to make.
    **question : SpecSheetQuestion
        The keywords of ``spec_sheet``.

    Returns
    -------
    bytes
        The file.
    """
    return document_call(_PATH, media, question)
