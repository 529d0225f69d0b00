"""Sheets on the wire: what stands on a drawing, and what paper it goes on."""

from typing import Annotated, Literal, LiteralString, Self, TypeAlias

from pydantic import BaseModel, ConfigDict, Field, model_validator
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from scalewright.drawing.sheet import LEAST_STEP, PAPERS, Sheet
from scalewright.wire.quantities import LengthBetween
from scalewright.wire.texts import DateText, LongText, ShortText

__all__ = ["PageIn", "SheetIn"]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)

_PageWidth: TypeAlias = Annotated[float, LengthBetween(200.0, 2000.0, "420 mm")]
_PageHeight: TypeAlias = Annotated[float, LengthBetween(140.0, 2000.0, "297 mm")]
_Overlap: TypeAlias = Annotated[float, LengthBetween(0.0, 500.0, "10 mm")]


class PageIn(BaseModel):
    """A page of a size of its own."""

    model_config = _STRICT

    width: Annotated[_PageWidth, Field(examples=["420 mm"])]
    """Along the board. [unit]"""
    height: Annotated[_PageHeight, Field(examples=["297 mm"])]
    """Across the board. [unit]"""


class SheetIn(BaseModel):
    """What stands on a drawing, and what paper it goes on."""

    model_config = _STRICT

    title: LongText = ""
    """What the drawing is called."""
    identifiers: Annotated[list[ShortText], Field(max_length=4, examples=[["order 1042", "board 7"]])] | None = None
    """Numbers of orders, parts or drawings."""
    date: DateText | None = None
    """The day that the drawing bears; the service has no clock of its own."""
    paper: Literal["long", "A4", "letter", "custom"] = "long"
    """Paper of a PDF: one "long" sheet, or pages of A4, letter or a "custom" size that are glued together."""
    page: PageIn | None = None
    """Size of a page, for paper of a custom size."""
    overlap: _Overlap = 15.0
    """How far pages that are glued together overlap; 15 mm if left out. [unit]"""
    pixels: Annotated[int, Field(ge=200, le=4000)] = 1600
    """Width of a PNG preview."""

    @model_validator(mode="after")
    def _fits(self) -> Self:
        if (self.page is not None) != (self.paper == "custom"):
            field = "page" if self.paper == "custom" else "paper"
            message = 'A page of a size of its own goes with "paper": "custom"; give both or neither.'
            raise _fault(field, "page_given", message)
        if self.paper != "long":
            sheet = self.to_domain()
            if sheet.least_step < LEAST_STEP:
                message = (
                    "Of a page this size its overlap leaves too little; make the overlap smaller or the page larger."
                )
                raise _fault("overlap", "overlap_too_wide", message)
        return self

    def to_domain(self) -> Sheet:
        """Return the sheet."""
        size = (self.page.width, self.page.height) if self.page is not None else PAPERS.get(self.paper)
        return Sheet(
            title=self.title,
            identifiers=tuple(self.identifiers or ()),
            date=self.date,
            page=size,
            overlap=self.overlap,
            pixels=self.pixels,
        )


def _fault(field: str, code: LiteralString, message: str) -> ValidationError:
    problem = PydanticCustomError(code, "{reason}", {"reason": message})
    return ValidationError.from_exception_data("sheet", [InitErrorDetails(type=problem, loc=(field,), input=None)])
