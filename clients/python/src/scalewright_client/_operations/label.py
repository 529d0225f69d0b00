"""Asking for labels, and what their codes say."""

from typing import Unpack

from scalewright_client._batch import BatchCall, Questions
from scalewright_client._protocol import Call, DocumentCall, call, document_call
from scalewright_client._requests import (
    LabelBatchQuestion,
    LabelMedia,
    LabelQuestion,
    LabelSize,
    LabelSizeName,
    Part,
    Unit,
)
from scalewright_client._results import PrintedLabel, Tag

__all__ = ["label", "label_batch", "label_drawing", "label_read"]

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
    coverage: float | None = None,
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
    coverage : float, optional
        Probability that the intervals of the answer cover; 0.95 unless given. [-]

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
        "coverage": coverage,
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
