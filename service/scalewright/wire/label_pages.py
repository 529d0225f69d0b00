"""Pages of labels on the wire: many parts, one size of label, and the paper that they go on."""

from typing import Annotated, ClassVar, Literal

from pydantic import BaseModel, ConfigDict, Field

from scalewright.drawing.label_pages import MOST_LABELS, FilledPages, LabelPages, LabelPaper, print_pages
from scalewright.drawing.label_sheet import LabelOrder
from scalewright.drawing.language import FALLBACK, language_named
from scalewright.drawing.pdf import write_pdf_sheets
from scalewright.lutherie.errors import refused_within
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.identification import Beliefs
from scalewright.wire.label import LabelSizeLike, WebAddress, measures_of
from scalewright.wire.parts import PartIn
from scalewright.wire.quantities import AnswerContext, Distance, LengthOut, Question, Reply
from scalewright.wire.texts import DateText, ShortText

__all__ = ["LabelOnPageIn", "LabelPagesIn", "LabelPagesOut"]


class LabelOnPageIn(BaseModel):
    """One label of many."""

    model_config = ConfigDict(
        strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True
    )

    part: PartIn
    """The part; its id is the stock number that the label bears.
    Its `datum`, `body_joint_fret` and `saddle_travel` matter only where parts are put together."""
    title: ShortText = ""
    """A line of your own."""
    date: DateText | None = None
    """The day that the label bears."""
    url: WebAddress | None = None
    """An address for the code to carry."""


class LabelPagesIn(Question):
    """What labels do these parts get, on sheets of label paper?"""

    labels: Annotated[list[LabelOnPageIn], Field(min_length=1, max_length=MOST_LABELS)]
    """The labels, in the order of their places."""
    size: LabelSizeLike = "70x36mm"
    """Size of every label: a common one by its name, or a `width` and a `height`."""
    dpi: Annotated[int, Field(ge=100, le=600)] = 300
    """Dots per inch of the printer; the squares of the codes are whole numbers of dots."""
    paper: Literal["A4", "letter"] = "A4"
    """The paper, upright."""
    start: Annotated[int, Field(ge=1, le=10_000)] = 1
    """Place of the first label on the first page, counted along the rows from the upper left."""
    column_gap: Annotated[Distance, Field(examples=["2.5 mm"])] = 0.0
    """Between neighbours in a row. [unit]"""
    row_gap: Annotated[Distance, Field(examples=["0 mm"])] = 0.0
    """Between rows. [unit]"""
    left: Annotated[Distance | None, Field(examples=["7.2 mm"])] = None
    """From the left edge of the paper to the first column; left out, the labels are centred. [unit]"""
    top: Annotated[Distance | None, Field(examples=["15.1 mm"])] = None
    """From the upper edge of the paper to the first row; left out, the labels are centred. [unit]"""

    def to_domain(self) -> LabelPages:
        """Return what is wanted."""
        width, height = measures_of(self.size)
        orders = []
        for index, label in enumerate(self.labels):
            with refused_within(("labels", index)):
                part = label.part.to_domain()
            orders.append(
                LabelOrder(
                    part=part,
                    unit=self.unit,
                    beliefs=Beliefs(),
                    width=width,
                    height=height,
                    dpi=self.dpi,
                    title=label.title,
                    date=label.date,
                    url=label.url,
                )
            )
        paper = LabelPaper(
            width=width,
            height=height,
            paper=self.paper,
            start=self.start,
            column_gap=self.column_gap,
            row_gap=self.row_gap,
            left=self.left,
            top=self.top,
        )
        return LabelPages(orders, paper)


class LabelPagesOut(Reply):
    """Pages of labels; the pages themselves come as PDF."""

    speaks: ClassVar[bool] = True
    """The letters of the PDF are in the language that Accept-Language asks for."""

    pages: int
    """How many pages there are."""
    columns: int
    """Labels side by side on a page."""
    rows: int
    """Labels one below the other on a page."""
    left: LengthOut
    """From the left edge of the paper to the first column. [unit]"""
    top: LengthOut
    """From the upper edge of the paper to the first row. [unit]"""
    codes: list[str]
    """What the codes carry, label by label."""
    notes: list[Note]
    """Cautions; the pages do not show them."""

    @classmethod
    def to_json(cls, filled: FilledPages, context: AnswerContext) -> bytes:
        """Write how the labels lie, and what their codes carry."""
        grid = filled.grid
        reply = cls(
            pages=filled.pages,
            columns=grid.columns,
            rows=grid.rows,
            left=grid.left,
            top=grid.top,
            codes=filled.codes,
            notes=filled.notes,
        )
        return cls.__pydantic_serializer__.to_json(reply, context=dict(context))

    @classmethod
    def to_pdf(cls, filled: FilledPages, context: AnswerContext) -> bytes:
        """Write the pages."""
        return write_pdf_sheets(print_pages(filled, language_named(context.get("language", FALLBACK))))

    @classmethod
    def file_title(cls, _: FilledPages, __: AnswerContext) -> str:
        """What the file is called."""
        return "labels"
