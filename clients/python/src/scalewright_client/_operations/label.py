"""Asking for labels, and what their codes say."""

from collections.abc import Iterable, Mapping
from typing import Literal, Unpack

import httpx

from scalewright_client._batch import JSON_LINES, BatchCall, Questions
from scalewright_client._protocol import Call, DocumentCall, call, document_call, encode
from scalewright_client._requests import (
    LabelBatchQuestion,
    LabelMedia,
    LabelPagesMedia,
    LabelQuestion,
    LabelSize,
    LabelSizeName,
    Length,
    Part,
    Unit,
)
from scalewright_client._results import PrintedLabel, Tag

__all__ = ["label", "label_batch", "label_batch_drawing", "label_drawing", "label_read"]

_PATH = "/v1/label"


def label(
    *,
    part: Part,
    unit: Unit = "mm",
    size: LabelSizeName | LabelSize | None = None,
    dpi: int | None = None,
    title: str | None = None,
    date: str | None = None,
    url: str | None = None,
) -> Call[PrintedLabel]:
    """Ask what the label of a part says; ``label_drawing`` gives it to print.

    Parameters
    ----------
    part : Part
        The part; its id is the stock number.
    unit : {"mm", "in"}
        Unit of plain numbers and of the letters on the label.
    size : str or LabelSize, optional
        A common size by its name, or a width and a height; "62x29mm" unless given.
    dpi : int, optional
        Dots per inch of the printer; 300 unless given.
    title : str, optional
        A line of your own.
    date : str, optional
        The day that it bears, as ISO 8601 writes it.
    url : str, optional
        An address for the code to carry, instead of the text that ``label_read`` takes.

    Returns
    -------
    PrintedLabel
        Its letters, and the text of its code.
    """
    body = {
        "unit": unit,
        "part": part,
        "size": size,
        "dpi": dpi,
        "title": title,
        "date": date,
        "url": url,
    }
    return call("POST", _PATH, PrintedLabel, body)


def label_batch(questions: Questions[LabelBatchQuestion]) -> BatchCall[PrintedLabel]:
    """Ask what many labels say.

    Parameters
    ----------
    questions : iterable of LabelBatchQuestion
        The keywords of ``label`` for each, and the caller's own ``id``; taken as they are sent.

    Returns
    -------
    Batch or AsyncBatch
        Iterates over a ``BatchResult`` or a ``BatchProblem`` for each question, in their order.
    """
    return BatchCall("/v1/label/batch", PrintedLabel, questions)


def label_batch_drawing(
    questions: Iterable[LabelBatchQuestion],
    *,
    media: LabelPagesMedia = "application/pdf",
    unit: Unit = "mm",
    size: LabelSizeName | LabelSize | None = None,
    dpi: int | None = None,
    paper: Literal["A4", "letter"] | None = None,
    start: int | None = None,
    column_gap: Length | None = None,
    row_gap: Length | None = None,
    left: Length | None = None,
    top: Length | None = None,
    bad_lines: Literal["refuse", "list"] | None = None,
) -> DocumentCall:
    """Ask for the labels of a whole stock on sheets of label paper, to print at 100 %.

    All are looked over before the first byte comes: for 10,000 labels give the client a timeout of a minute.

    Parameters
    ----------
    questions : iterable of LabelBatchQuestion
        The keywords of ``label`` for each, of the size and printer that are given here.
    media : {"application/pdf"}
        What to make.
    unit : {"mm", "in"}
        Unit of plain numbers among these options.
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
    bad_lines : {"refuse", "list"}, optional
        Whether questions that make no label are refused with all others, or listed on pages at the end.

    Returns
    -------
    bytes
        The file.
    """
    sizes = dict(size) if isinstance(size, Mapping) else {"size": size}
    options = {
        "unit": unit,
        **sizes,
        "dpi": dpi,
        "paper": paper,
        "start": start,
        "column_gap": column_gap,
        "row_gap": row_gap,
        "left": left,
        "top": top,
        "bad_lines": bad_lines,
    }
    query = httpx.QueryParams({name: str(value) for name, value in options.items() if value is not None})
    lines = b"".join(encode(question) + b"\n" for question in questions)
    return DocumentCall("POST", f"{_PATH}/batch?{query}", bytes, lines, media, JSON_LINES)


def label_drawing(*, media: LabelMedia = "application/pdf", **question: Unpack[LabelQuestion]) -> DocumentCall:
    """Ask for a label to print: PDF or SVG at full size, or PNG with the dots of the printer.

    Parameters
    ----------
    media : {"application/pdf", "image/svg+xml", "image/png"}
        What to make.
    **question : LabelQuestion
        The keywords of ``label``.

    Returns
    -------
    bytes
        The file.
    """
    return document_call(_PATH, media, question)


def label_read(*, text: str, unit: Unit = "mm") -> Call[Tag]:
    """Ask what the code on a label says.

    Parameters
    ----------
    text : str
        The text as a scanner gives it.
    unit : {"mm", "in"}
        Unit of every length in the answer.

    Returns
    -------
    Tag
        The part, for an assembly to take.
    """
    return call("POST", "/v1/label/read", Tag, {"unit": unit, "text": text})
