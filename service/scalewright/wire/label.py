"""Labels to be printed on the wire, and the text of their codes read back."""

from collections.abc import Sequence
from typing import Annotated, Any, ClassVar, Literal, Self, TypeAlias

from pydantic import BaseModel, BeforeValidator, ConfigDict, Discriminator, Field, model_validator
from pydantic import Tag as Branch
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from scalewright.drawing.label_picture import write_label_picture
from scalewright.drawing.label_sheet import (
    LARGEST,
    PRESETS,
    FilledLabel,
    LabelOrder,
    draw_label,
    fill_labels,
    set_label,
)
from scalewright.drawing.language import FALLBACK, Language, language_named
from scalewright.drawing.pdf import write_pdf
from scalewright.drawing.png import MOST_POINTS
from scalewright.drawing.svg import write_svg
from scalewright.lutherie.errors import LutherieError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.part import Kind
from scalewright.lutherie.spacing import Divisor, Eighteenth, Equal, Listed
from scalewright.lutherie.tag import TagUnit
from scalewright.lutherie.tag_text import LONGEST_TAG
from scalewright.wire.many import answer_many
from scalewright.wire.parts import PartIn
from scalewright.wire.quantities import AnswerContext, LengthBetween, LengthOut, Question, Reply
from scalewright.wire.rules import RuleOut
from scalewright.wire.texts import DateText, ShortText

__all__ = [
    "FanScaleOut",
    "LabelSide",
    "LabelSizeIn",
    "LabelSizeLike",
    "PrintedLabelIn",
    "PrintedLabelOut",
    "SizeName",
    "StatedPartOut",
    "StatedRule",
    "TagIn",
    "TagOut",
    "WebAddress",
    "answer_labels",
    "measures_of",
]


class TagIn(Question):
    """What does the code on this label say?"""

    text: Annotated[
        str,
        Field(
            min_length=1,
            max_length=LONGEST_TAG,
            examples=[
                "TRUESCALE/1;id=BD-17;kind=board;true=624.079mm;u=0.05mm;rule=eighteenth;layout=628.65mm;crc=0F2E"
            ],
        ),
    ]
    """The text as a scanner gives it."""

    def to_domain(self) -> str:
        """Return the text."""
        return self.text


def _as_stated(rule: object) -> object:
    """A rule with what a question may say of it, and nothing that follows from that."""
    match rule:
        case Equal(steps):
            return {"name": "equal", "steps": steps}
        case Eighteenth():
            return {"name": "eighteenth"}
        case Divisor(divisor):
            return {"name": "divisor", "divisor": divisor}
        case Listed(cents, repeat):
            return {"name": "listed", "cents": list(cents), "repeat": repeat}
    return rule


def _none_for_nothing(value: object) -> object:
    return value or None


StatedRule: TypeAlias = Annotated[RuleOut | None, BeforeValidator(_as_stated)]
"""A spacing rule of an answer, as a question takes it."""


class FanScaleOut(BaseModel):
    """True scales of a fan board along its two outer strings."""

    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

    bass: LengthOut
    """Along the lowest string. [unit]"""
    treble: LengthOut
    """Along the highest string. [unit]"""


class StatedPartOut(BaseModel):
    """The part that a label is on, as other questions take it."""

    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

    id: str
    """Its name: the stock number."""
    kind: Kind
    """What it is."""
    true_scale: LengthOut | FanScaleOut
    """Its true scale; of a fan board {"bass", "treble"}. [unit]"""
    square_fret: int | None
    """The fret of a fan board that is square to its centre line, where the label states it; 0 for the nut."""
    layout_scale: LengthOut | None
    """The length that the rule was applied to, where the label states it. [unit]"""
    rule: StatedRule
    """Its spacing rule, where the label states it."""
    tolerance: Annotated[LengthOut | None, BeforeValidator(_none_for_nothing)]
    """Half the width of a rectangular distribution that is as uncertain as the label says; null where it is taken at
    its word. [unit]"""


class TagOut(Reply):
    """What the code on a label says."""

    part: StatedPartOut
    """The part, to be handed on to an assembly as it stands."""
    uncertainty: LengthOut | None
    """Standard uncertainty (k = 1) of the true scale; null where it is taken at its word. [unit]"""
    written_in: TagUnit
    """Unit that the label's lengths are written in."""


# ---- Labels to be printed -------------------------------------------------------------------------------

LabelSide: TypeAlias = Annotated[float, LengthBetween(10.0, LARGEST, "62 mm")]
"""A side of a label."""

SizeName: TypeAlias = Literal[
    "40x20mm", "50x25mm", "57x32mm", "62x29mm", "70x36mm", "100x50mm", "2x1in", "2.25x1.25in", "4x2in"
]
"""Names of common sizes, width first."""


class LabelSizeIn(BaseModel):
    """A label of a size of its own."""

    model_config = ConfigDict(
        strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True
    )

    width: Annotated[LabelSide, Field(examples=["62 mm"])]
    """Its width. [unit]"""
    height: Annotated[LabelSide, Field(examples=["29 mm"])]
    """Its height. [unit]"""


def _which_size(value: object) -> str:
    return "size:own" if isinstance(value, dict | LabelSizeIn) else "size:name"


LabelSizeLike: TypeAlias = Annotated[
    Annotated[SizeName, Branch("size:name")] | Annotated[LabelSizeIn, Branch("size:own")], Discriminator(_which_size)
]


def measures_of(size: "SizeName | LabelSizeIn") -> tuple[float, float]:
    """Width and height of a label. [mm]"""
    return (size.width, size.height) if isinstance(size, LabelSizeIn) else PRESETS[size]


WebAddress: TypeAlias = Annotated[
    str, Field(max_length=300, pattern=r"^https?://[!-~]+$", examples=["https://shop.example/boards/17"])
]


class PrintedLabelIn(Question):
    """What label does this part get?"""

    part: PartIn
    """The part; its id is the stock number that the label bears.
    Its `datum`, `body_joint_fret` and `saddle_travel` matter only where parts are put together."""
    size: LabelSizeLike = "62x29mm"
    """Size of the label: a common one by its name, or a `width` and a `height`."""
    dpi: Annotated[int, Field(ge=100, le=600)] = 300
    """Dots per inch of the printer and of a PNG; the squares of the code are whole numbers of dots."""
    title: ShortText = ""
    """A line of your own."""
    date: DateText | None = None
    """The day that the label bears; the service has no clock of its own."""
    url: WebAddress | None = None
    """An address for the code to carry, instead of the text that /v1/label/read takes."""

    @model_validator(mode="after")
    def _fits_a_picture(self) -> Self:
        width, height = measures_of(self.size)
        if width * height * (self.dpi / 25.4) ** 2 > MOST_POINTS:
            message = f"A label may have at most {MOST_POINTS} dots; make it smaller, or its dots per inch fewer."
            problem = PydanticCustomError("too_many_dots", "{reason}", {"reason": message})
            fault = InitErrorDetails(type=problem, loc=("dpi",), input=None)
            raise ValidationError.from_exception_data("label", [fault])
        return self

    def to_domain(self) -> LabelOrder:
        """Return what is wanted."""
        width, height = measures_of(self.size)
        return LabelOrder(
            part=self.part.to_domain(),
            unit=self.unit,
            beliefs=Beliefs(),
            width=width,
            height=height,
            dpi=self.dpi,
            title=self.title,
            date=self.date,
            url=self.url,
        )


class PrintedLabelOut(Reply):
    """A label as it is printed; the drawing itself comes as SVG, PNG or PDF."""

    speaks: ClassVar[bool] = True
    """Its letters are in the language that Accept-Language asks for."""

    code: str
    """What its code carries."""
    lines: list[str]
    """Its letters, line by line, the true scale first."""
    width: LengthOut
    """Its width. [unit]"""
    height: LengthOut
    """Its height. [unit]"""
    module: LengthOut
    """Side of one square of the code. [unit]"""
    language: str
    """Language of its letters, by its tag."""
    language_known: bool
    """False where languages were asked for and none of them is known; it is in English then."""
    notes: list[Note]
    """Cautions, in English; a drawing does not show them."""

    @classmethod
    def to_json(cls, label: FilledLabel, context: AnswerContext) -> bytes:
        """Write what stands on it."""
        printed = set_label(label, _language(context))
        reply = cls(
            code=printed.code,
            lines=printed.lines,
            width=printed.width,
            height=printed.height,
            module=printed.module,
            language=printed.language,
            language_known=context.get("language_known", True),
            notes=label.notes,
        )
        return cls.__pydantic_serializer__.to_json(reply, context=dict(context))

    @classmethod
    def to_svg(cls, label: FilledLabel, context: AnswerContext) -> bytes:
        """Write the label as SVG."""
        return write_svg(draw_label(label, _language(context)))

    @classmethod
    def to_png(cls, label: FilledLabel, context: AnswerContext) -> bytes:
        """Write the label as PNG, a dot of the printer for each of its own."""
        return write_label_picture(draw_label(label, _language(context)), label.order.dpi)

    @classmethod
    def to_pdf(cls, label: FilledLabel, context: AnswerContext) -> bytes:
        """Write the label as a page of its own size."""
        return write_pdf(draw_label(label, _language(context)))

    @classmethod
    def file_title(cls, label: FilledLabel, _: AnswerContext) -> str:
        """What its file is called."""
        return f"label {label.tag.id}"


def _language(context: AnswerContext) -> Language:
    return language_named(context.get("language", FALLBACK))


# ---- Many at once ---------------------------------------------------------------------------------------


def answer_labels(questions: Sequence[dict[str, Any]]) -> list[bytes | LutherieError | ValidationError]:
    """Answer many questions, in English.

    Parameters
    ----------
    questions : sequence of dict
        As :class:`PrintedLabelIn` takes them, parsed from JSON.

    Returns
    -------
    list of bytes, LutherieError or ValidationError
        For each question its answer as a JSON object, or what was wrong with it.
    """
    return answer_many(questions, PrintedLabelIn, PrintedLabelOut, fill_labels)
