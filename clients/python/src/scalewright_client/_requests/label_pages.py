"""Pages of labels in a request."""

from collections.abc import Iterable
from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._requests.label import LabelSize, LabelSizeName
from scalewright_client._requests.parts import PartLike
from scalewright_client._requests.quantities import Length, Unit

__all__ = ["LabelOnPage", "LabelPagesMedia", "LabelPagesQuestion"]

LabelPagesMedia: TypeAlias = Literal["application/pdf"]
"""Media types of pages of labels."""


class LabelOnPage(TypedDict, total=False):
    """One label of many."""

    part: Required[PartLike]
    """The part; its id is the stock number."""
    title: str
    """A line of your own."""
    date: str
    """The day that it bears, as ISO 8601 writes it."""
    url: str
    """An address for the code to carry."""


class LabelPagesQuestion(TypedDict, total=False):
    """The keywords of ``label_pages``, for ``label_pages_drawing``."""

    labels: Required[Iterable[LabelOnPage]]
    """The labels, in the order of their places."""
    unit: Unit
    """Unit of plain numbers and of the letters on the labels; "mm" unless given."""
    size: LabelSizeName | LabelSize
    """Size of every label; "70x36mm" unless given."""
    dpi: int
    """Dots per inch of the printer; 300 unless given."""
    paper: Literal["A4", "letter"]
    """The paper, upright; A4 unless given."""
    start: int
    """Place of the first label on the first page; 1 unless given."""
    column_gap: Length
    """Between neighbours in a row. [unit, or its own]"""
    row_gap: Length
    """Between rows. [unit, or its own]"""
    left: Length
    """From the left edge of the paper to the first column; centred unless given. [unit, or its own]"""
    top: Length
    """From the upper edge of the paper to the first row; centred unless given. [unit, or its own]"""
