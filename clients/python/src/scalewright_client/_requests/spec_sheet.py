"""Spec sheets in a request."""

from collections.abc import Iterable
from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._requests.fingerboard import BoardMargins, BoardWidths
from scalewright_client._requests.parts import Part
from scalewright_client._requests.quantities import Length, Unit
from scalewright_client._requests.stringing import Heights
from scalewright_client._requests.strings import StringRequest

__all__ = ["Outline", "SheetMedia", "SpecSheetQuestion", "Stringing"]

SheetMedia: TypeAlias = Literal["text/html", "application/pdf"]
"""Media types of a spec sheet."""


class Stringing(TypedDict, total=False):
    """A string set, and how it lies over the board."""

    name: str
    """What the set is called."""
    strings: Required[Iterable[StringRequest]]
    """The strings, each with its pitch."""
    heights: Required[Heights]
    """Underside of the strings above the plane of the fret tops."""


class Outline(TypedDict):
    """The board as it is drawn."""

    strings: int
    """Number of strings."""
    widths: BoardWidths
    """Widths of the board at the zero line and at the last fret."""
    margins: Length | BoardMargins
    """From the centre of an outer string to the edge beside it. [unit, or its own]"""


class SpecSheetQuestion(TypedDict, total=False):
    """The keywords of ``spec_sheet``, for ``spec_sheet_drawing``."""

    part: Required[Part]
    """The part."""
    unit: Unit
    """Unit of plain numbers and of the sheet; "mm" unless given."""
    stringing: Stringing
    """A string set to recommend setbacks for."""
    outline: Outline
    """The outline of the board, to draw it to scale."""
    tolerance: Length
    """How far true scales of parts that are put together may differ; 0.5 mm unless given. [unit, or its own]"""
    coverage: float
    """Probability that the intervals of the answer cover; 0.95 unless given. [-]"""
    title: str
    """What the part is called."""
    identifiers: list[str]
    """Other numbers that it goes by."""
    revision: str
    """Revision of the sheet."""
    date: str
    """The day that the sheet bears, as ISO 8601 writes it."""
    paper: Literal["A4", "letter"]
    """Paper of a PDF; A4 unless given."""
    html: Literal["page", "fragment"]
    """Whether HTML is a page of its own (unless given) or a fragment to be put into one."""
