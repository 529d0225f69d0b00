"""Asking for pages of labels."""

from collections.abc import Iterable
from typing import Literal, Unpack

from scalewright_client._protocol import Call, DocumentCall, call, document_call
from scalewright_client._requests import (
    LabelOnPage,
    LabelPagesMedia,
    LabelPagesQuestion,
    LabelSize,
    LabelSizeName,
    Length,
    Unit,
)
from scalewright_client._results import LabelPages

__all__ = ["label_pages", "label_pages_drawing"]

_PATH = "/v1/label/pages"


def label_pages(
    *,
    labels: Iterable[LabelOnPage],
    unit: Unit = "mm",
    size: LabelSizeName | LabelSize | None = None,
    dpi: int | None = None,
    paper: Literal["A4", "letter"] | None = None,
    start: int | None = None,
    column_gap: Length | None = None,
    row_gap: Length | None = None,
    left: Length | None = None,
    top: Length | None = None,
) -> Call[LabelPages]:
    """Ask how labels lie on pages of label paper; ``label_pages_drawing`` gives them to print.

    Parameters
    ----------
    labels : iterable of LabelOnPage
        Up to 500 labels, in the order of their places.
    unit : {"mm", "in"}
        Unit of plain numbers and of the letters on the labels.
    size : str or LabelSize, optional
        Size of every label; "70x36mm" unless given.
    dpi : int, optional
        Dots per inch of the printer; 300 unless given.
    paper : {"A4", "letter"}, optional
        The paper, upright; A4 unless given.
    start : int, optional
        Place of the first label on the first page, counted along the rows; 1 unless given.
    column_gap : float or str, optional
        Between neighbours in a row; none unless given. [unit, or its own]
    row_gap : float or str, optional
        Between rows; none unless given. [unit, or its own]
    left : float or str, optional
        From the left edge of the paper to the first column; centred unless given. [unit, or its own]
    top : float or str, optional
        From the upper edge of the paper to the first row; centred unless given. [unit, or its own]

    Returns
    -------
    LabelPages
        Columns, rows, and what the codes carry.
    """
    body = {
        "unit": unit,
        "labels": labels,
        "size": size,
        "dpi": dpi,
        "paper": paper,
        "start": start,
        "column_gap": column_gap,
        "row_gap": row_gap,
        "left": left,
        "top": top,
    }
    return call("POST", _PATH, LabelPages, body)


def label_pages_drawing(
    *, media: LabelPagesMedia = "application/pdf", **question: Unpack[LabelPagesQuestion]
) -> DocumentCall:
    """Ask for pages of labels to print at 100 %.

    Parameters
    ----------
    media : {"application/pdf"}
        What to make.
    **question : LabelPagesQuestion
        The keywords of ``label_pages``.

    Returns
    -------
    bytes
        The file.
    """
    return document_call(_PATH, media, question)
