"""Labels of a whole stock on the wire: lines of JSON that become the pages of one PDF, and the options of its paper."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Annotated, Any, Literal, LiteralString, Self

import orjson
from pydantic import BeforeValidator, Field, model_validator
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from scalewright.drawing.label_pages import LabelPaper
from scalewright.drawing.label_sheet import PRESETS, LabelOrder
from scalewright.wire.label import LabelSide, PrintedLabelIn, SizeName, measures_of
from scalewright.wire.quantities import Distance, Question

__all__ = ["LabelPaperQuery", "order_of"]


def _whole(value: object) -> object:
    """A whole number that is written in a query."""
    plain = isinstance(value, str) and value.isascii() and value.isdigit() and len(value) <= _LONGEST_NUMBER
    return int(str(value)) if plain else value


_LONGEST_NUMBER = 9


class LabelPaperQuery(Question):
    """What paper do the labels of a batch go on?"""

    size: SizeName | None = None
    """Size of every label: a common one by its name; 70x36mm if left out."""
    width: Annotated[LabelSide | None, Field(examples=["63.5mm"])] = None
    """Width of every label, where its size is no common one; with `height`."""
    height: Annotated[LabelSide | None, Field(examples=["38.1mm"])] = None
    """Height of every label, with `width`."""
    dpi: Annotated[int, BeforeValidator(_whole), Field(ge=100, le=600)] = 300
    """Dots per inch of the printer; the squares of the codes are whole numbers of dots."""
    paper: Literal["A4", "letter"] = "A4"
    """The paper, upright."""
    start: Annotated[int, BeforeValidator(_whole), Field(ge=1, le=10_000)] = 1
    """Place of the first label on the first page, counted along the rows from the upper left."""
    column_gap: Annotated[Distance, Field(examples=["2.5mm"])] = 0.0
    """Between neighbours in a row. [unit]"""
    row_gap: Annotated[Distance, Field(examples=["0mm"])] = 0.0
    """Between rows. [unit]"""
    left: Annotated[Distance | None, Field(examples=["7.2mm"])] = None
    """From the left edge of the paper to the first column; left out, the labels are centred. [unit]"""
    top: Annotated[Distance | None, Field(examples=["15.1mm"])] = None
    """From the upper edge of the paper to the first row; left out, the labels are centred. [unit]"""
    bad_lines: Literal["refuse", "list"] = "refuse"
    """What becomes of lines that make no label: "refuse" all with a problem that names them, or print the others and
    "list" those on pages at the end."""

    @model_validator(mode="after")
    def _has_one_size(self) -> Self:
        if (self.width is None) != (self.height is None) or (self.width is not None and self.size is not None):
            message = "A size is a common one by its name, or a width and a height; give one of the two."
            raise _fault("size", "size_given_once", message)
        return self

    def to_domain(self) -> LabelPaper:
        """Return the paper."""
        if self.width is not None and self.height is not None:
            width, height = self.width, self.height
        else:
            width, height = PRESETS[self.size or "70x36mm"]
        return LabelPaper(
            width=width,
            height=height,
            paper=self.paper,
            start=self.start,
            column_gap=self.column_gap,
            row_gap=self.row_gap,
            left=self.left,
            top=self.top,
        )


def order_of(members: Mapping[str, Any], paper: LabelPaper, dpi: int) -> LabelOrder:
    """Label that a line asks for.

    Parameters
    ----------
    members : mapping
        As :class:`scalewright.wire.label.PrintedLabelIn` takes them, parsed from JSON.
    paper : LabelPaper
        What the labels go on.
    dpi : int
        Dots per inch of the printer.

    Returns
    -------
    LabelOrder
        Of the paper's size.

    Raises
    ------
    ValidationError
        The line breaks the rules of a label, or names another size or printer than that of all.
    LutherieError
        Readings or a rule that cannot be.
    """
    question = PrintedLabelIn.read(orjson.dumps(members))
    given = question.model_fields_set
    if "size" in given and measures_of(question.size) != (paper.width, paper.height):
        message = "All labels on the same paper have one size; give it once, as a parameter of the address."
        raise _fault("size", "other_size", message)
    if "dpi" in given and question.dpi != dpi:
        message = "All labels of one file are for the same printer; give its dpi once, as a parameter of the address."
        raise _fault("dpi", "other_dpi", message)
    return replace(question.to_domain(), width=paper.width, height=paper.height, dpi=dpi)


def _fault(field: str, code: LiteralString, message: str) -> ValidationError:
    problem = PydanticCustomError(code, "{reason}", {"reason": message})
    return ValidationError.from_exception_data("label", [InitErrorDetails(type=problem, loc=(field,), input=None)])
