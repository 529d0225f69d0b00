"""Spec sheets on the wire: a part, its strings and its board; the sheet as data, as a web page, or as part of one."""

from typing import Annotated, ClassVar, Literal

from pydantic import BaseModel, ConfigDict, Field

from scalewright.drawing.language import FALLBACK, language_named
from scalewright.drawing.spec_page import write_spec_page
from scalewright.drawing.spec_pdf import write_spec_pdf
from scalewright.drawing.spec_words import sentences_of
from scalewright.lutherie.assembly import TOLERANCE
from scalewright.lutherie.errors import refused_within
from scalewright.lutherie.fingerboard.plan import BoardMargins, BoardWidths
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.part import Kind, Source
from scalewright.lutherie.ruling import Conformance
from scalewright.lutherie.spec_sheet import SheetPlan, SpecSheet, Stringing
from scalewright.lutherie.tag import LabelNames
from scalewright.wire.fingerboard_parts import OneOrFourMargins, WidthsIn, margins_of
from scalewright.wire.identification import Share
from scalewright.wire.label import StatedRule
from scalewright.wire.parts import PartIn
from scalewright.wire.quantities import AnswerContext, Length, LengthEstimate, LengthOut, Question, Reply
from scalewright.wire.stringing import HeightsIn
from scalewright.wire.strings import Strings
from scalewright.wire.texts import DateText, LongText, ShortText

__all__ = [
    "OutlineIn",
    "SheetConformityOut",
    "SheetFretOut",
    "SheetLabelOut",
    "SheetSentencesOut",
    "SheetSetbackOut",
    "SheetTrebleOut",
    "SpecSheetIn",
    "SpecSheetOut",
    "StringingIn",
]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class StringingIn(BaseModel):
    """A string set, and how it lies over the board."""

    model_config = _STRICT

    name: ShortText = ""
    """What the set is called."""
    strings: Strings
    """The strings, each with its pitch."""
    heights: HeightsIn
    """How high they lie above the plane of the fret tops."""

    def to_domain(self) -> Stringing:
        """Return the string set."""
        strings = []
        for index, string in enumerate(self.strings):
            with refused_within(("stringing", "strings", index)):
                strings.append(string.to_domain())
        return Stringing(self.name, strings, self.heights.to_domain())


class OutlineIn(BaseModel):
    """The board as it is drawn."""

    model_config = _STRICT

    strings: Annotated[int, Field(ge=1, le=24, examples=[6])]
    """Number of strings."""
    widths: WidthsIn
    """Widths of the board at the zero line and at the last fret."""
    margins: Annotated[OneOrFourMargins, Field(examples=["3 mm"])]
    """From the centre of an outer string to the edge beside it: one length, or four. [unit]"""

    def to_domain(self) -> tuple[int, BoardMargins, BoardWidths]:
        """Return number of strings, margins and widths."""
        margins = margins_of(self.margins)
        assert margins is not None  # noqa: S101  (there are some, so they are margins)
        return self.strings, margins, self.widths.to_domain()


class SpecSheetIn(Question):
    """What does a buyer of this part have to know of its scale?"""

    part: PartIn
    """The part; with `readings` what was measured, with `label` what its label says, with `frets` how many it has.
    Its `datum`, `body_joint_fret` and `saddle_travel` matter only where parts are put together."""
    stringing: StringingIn | None = None
    """A string set to recommend setbacks for."""
    outline: OutlineIn | None = None
    """The outline of the board, to draw it to scale."""
    tolerance: Annotated[Length, Field(examples=["0.5 mm"])] = TOLERANCE
    """How far true scales of parts that are put together may differ; 0.5 mm if left out."""
    coverage: Share = 0.95
    """Probability that a stated interval holds."""
    title: LongText = ""
    """What the part is called."""
    identifiers: Annotated[list[ShortText], Field(max_length=4, examples=[["order 1042"]])] | None = None
    """Other numbers that it goes by."""
    revision: ShortText = ""
    """Revision of the sheet."""
    date: DateText | None = None
    """The day that the sheet bears; the service has no clock of its own."""
    paper: Literal["A4", "letter"] = "A4"
    """Paper of a PDF, upright; one sheet."""
    html: Literal["page", "fragment"] = "page"
    """Whether HTML is a page of its own or a fragment to be put into one."""

    @property
    def answer_context(self) -> AnswerContext:
        """How the answer is to be written."""
        return {"unit": self.unit, "whole": self.html == "page", "paper": self.paper}

    def to_domain(self) -> SheetPlan:
        """Return what goes into the sheet."""
        return SheetPlan(
            part=self.part.to_domain(),
            unit=self.unit,
            tolerance=self.tolerance,
            beliefs=Beliefs(coverage=self.coverage),
            stringing=None if self.stringing is None else self.stringing.to_domain(),
            outline=None if self.outline is None else self.outline.to_domain(),
            title=self.title,
            identifiers=tuple(self.identifiers or ()),
            revision=self.revision,
            date=self.date,
        )


# ---- The answer -----------------------------------------------------------------------------------------


class SheetFretOut(BaseModel):
    """Where one fret goes."""

    model_config = _READ_OFF

    fret: int
    """Its number."""
    from_nut: LengthOut
    """Distance from the nut. [unit]"""
    to_true_end: LengthOut | None
    """Distance to the end of the true scale. [unit]"""
    millimetres: float
    """Distance from the nut in millimetres. [mm]"""
    inches: float
    """Distance from the nut in inches. [in]"""
    fraction: str
    """Nearest sixty-fourth of an inch, as a rule shows it."""


class SheetTrebleOut(BaseModel):
    """The side of the highest string of a fan board."""

    model_config = _READ_OFF

    true_scale: LengthEstimate
    """The true scale along it. [unit]"""
    layout_scale: LengthOut | None
    """The length that the rule was applied to there. [unit]"""
    frets: list[SheetFretOut]
    """Its frets; none where the rule is not known."""


class SheetLabelOut(BaseModel):
    """What the label of the part says, and what that is."""

    model_config = _READ_OFF

    text: str
    """Its letters, as they were given."""
    length: LengthOut
    """Its number, taken at its word. [unit]"""
    written_in: Literal["in", "mm", "cm"]
    """Unit that the label is written in."""
    names: LabelNames
    """Which length it is: "true_scale", "layout_scale" or "neither"."""
    excess: LengthOut
    """Label minus true scale. [unit]"""


class SheetSetbackOut(BaseModel):
    """Where one string breaks over the saddle, the nut on the zero line."""

    model_config = _READ_OFF

    string: int
    """Number of the string, 1 first."""
    pitch: str
    """Its open pitch."""
    saddle_setback: LengthOut
    """From the end of the true scale to the break point on the saddle, positive away from the nut. [unit]"""
    saddle_from_nut: LengthOut
    """From the nut's front edge to the break point. [unit]"""


class SheetConformityOut(BaseModel):
    """Whether the part is what it claims to be."""

    model_config = _READ_OFF

    decision: Literal["accept", "reject"]
    """By guarded acceptance (JCGM 106)."""
    conformance: Conformance
    """What the readings prove: "conforming", "undecided" or "nonconforming" (ISO 14253-1)."""
    deviation: LengthEstimate
    """Measured minus claimed true scale. [unit]"""
    tolerance: LengthOut
    """How far it may be from the claimed one. [unit]"""
    conformance_probability: float
    """Probability that the true scale lies within the tolerance. [-]"""


class SheetSentencesOut(BaseModel):
    """Sentences of the sheet, in its language, lengths in both units."""

    model_config = _READ_OFF

    statement: str
    """Rule, layout scale and true scale in one sentence."""
    true_scale: str
    """The true scale with its uncertainty."""
    layout_scale: str
    """The layout scale, or that it is not established."""
    rule: str
    """The spacing rule, or that it is not established."""
    obtained: str
    """How the true scale is known."""
    label: str | None
    """What the label says and what it means."""
    conformity: str | None
    """Whether the part is what it claims to be."""
    not_with: list[str]
    """What it must not be combined with."""
    cautions: list[str]
    """What to mind."""


class SpecSheetOut(Reply):
    """All that a buyer of a part has to know of its scale."""

    speaks: ClassVar[bool] = True
    """Its sentences are in the language that Accept-Language asks for."""

    id: str
    """Your name for the part."""
    kind: Kind
    """What it is."""
    source: Source
    """What the true scale is known from: "readings", "definition" or "label"."""
    rule: StatedRule
    """Its spacing rule, where that is established or stated."""
    layout_scale: LengthOut | None
    """The length that the rule was applied to. [unit]"""
    true_scale: LengthEstimate
    """Its true scale. [unit]"""
    tolerance: LengthOut
    """How far true scales of parts that are put together may differ. [unit]"""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    label: SheetLabelOut | None
    """What its label says; null without one."""
    frets: list[SheetFretOut]
    """Its frets; none where the rule is not known."""
    setbacks: list[SheetSetbackOut]
    """Recommended setbacks, string by string."""
    treble: SheetTrebleOut | None
    """The side of the highest string of a fan board, whose other figures are those of the lowest string's; null for a
    board of one scale."""
    square_fret: int | None
    """The fret of a fan board that is square to its centre line, where that is stated; 0 for the nut."""
    conformity: SheetConformityOut | None
    """Whether it is what it claims to be; null unless it claims a scale and was measured."""
    sentences: SheetSentencesOut
    """The same in words."""
    language: str
    """Language of the sentences, by its tag."""
    language_known: bool
    """False where languages were asked for and none of them is known; the sentences are in English then."""

    @classmethod
    def to_json(cls, sheet: SpecSheet, context: AnswerContext) -> bytes:
        """Write the data and the sentences."""
        language = language_named(context.get("language", FALLBACK))
        written = {"sentences", "language", "language_known", "unit"}
        members: dict[str, object] = {name: getattr(sheet, name) for name in cls.model_fields if name not in written}
        members |= {
            "sentences": sentences_of(sheet, language),
            "language": language.tag,
            "language_known": context.get("language_known", True),
        }
        reply = cls.__pydantic_validator__.validate_python(members, from_attributes=True)
        return cls.__pydantic_serializer__.to_json(reply, context=dict(context))

    @classmethod
    def to_html(cls, sheet: SpecSheet, context: AnswerContext) -> bytes:
        """Write the sheet as a web page or as a part of one."""
        language = language_named(context.get("language", FALLBACK))
        return write_spec_page(sheet, language, whole=context.get("whole", True))

    @classmethod
    def to_pdf(cls, sheet: SpecSheet, context: AnswerContext) -> bytes:
        """Write the sheet on one page of paper."""
        return write_spec_pdf(sheet, language_named(context.get("language", FALLBACK)), context.get("paper", "A4"))

    @classmethod
    def file_title(cls, sheet: SpecSheet, _: AnswerContext) -> str:
        """What its file is called."""
        return f"spec sheet {sheet.id}"
