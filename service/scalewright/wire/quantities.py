"""Lengths on the wire: what requests may say becomes millimetres, what answers say is in the unit asked for."""

import math
from dataclasses import dataclass
from typing import Annotated, ClassVar, Final, Literal, Self, TypeAlias, TypedDict

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    PlainSerializer,
    SerializationInfo,
    ValidationInfo,
)
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from scalewright.drawing.sheet import Sheet
from scalewright.lutherie.errors import UnreadableLengthError
from scalewright.lutherie.estimate import Estimate
from scalewright.lutherie.phrases import plain
from scalewright.wire.length_text import LONGEST_TEXT, MOST_PLAUSIBLE, read_length, shop_fraction

__all__ = [
    "AnswerContext",
    "AnyLength",
    "Denominator",
    "Distance",
    "Length",
    "LengthBetween",
    "LengthEstimate",
    "LengthOut",
    "LengthsOut",
    "Question",
    "Reply",
    "Scale",
    "ShopFraction",
    "Uncertainty",
    "Unit",
    "UnitOut",
    "as_sentence",
    "from_millimetres",
    "to_millimetres",
    "to_shop_fraction",
]

_NO_LENGTH: Final = 10**15
"""A whole number that is no length in any unit."""

Unit: TypeAlias = Literal["mm", "in"]
"""The unit of the bare numbers of a request and of every length of its answer."""


class AnswerContext(TypedDict, total=False):
    """What a question says about how its answer is to be written."""

    unit: Unit
    """The unit of every length."""
    fractions: int | None
    """The finest graduation of an inch rule, where shop fractions are asked for."""
    sheet: Sheet
    """What stands on a drawing, and what paper it goes on."""
    paper: Literal["A4", "letter"]
    """Paper that a page is printed on."""
    whole: bool
    """Whether a web page is written whole, or as a fragment."""
    language: str
    """Language of the answer's sentences, where it has a choice."""
    language_known: bool
    """Whether that is one that was asked for, where any was."""
    frets: list[int]
    """Fret at which every reading ends, for a picture of them."""


def to_millimetres(value: float, unit: Unit) -> float:
    """Length in a unit as millimetres; for inches 127/5 of it, which keeps 64ths of an inch exact. [mm]"""
    return value if unit == "mm" else value * 127.0 / 5.0


def from_millimetres(value: float, unit: Unit) -> float:
    """Length in millimetres in a unit; the reverse of :func:`to_millimetres`. [unit]"""
    return value if unit == "mm" else value * 5.0 / 127.0


@dataclass(frozen=True, slots=True)
class ShopFraction:
    """The nearest mark of an inch rule."""

    text: str
    """The mark, such as "1 3/8 in"."""
    error: float
    """The mark minus the exact length, in `unit`."""


def to_shop_fraction(value: float, unit: Unit, denominator: int) -> ShopFraction:
    """Nearest mark of an inch rule to a length in millimetres, its error in the unit of the answer."""
    text, inches = shop_fraction(from_millimetres(value, "in"), denominator)
    return ShopFraction(text, from_millimetres(to_millimetres(inches, "in") - value, unit))


# ---- Questions ------------------------------------------------------------------------------------------


def _remember(unit: Unit, info: ValidationInfo) -> Unit:
    """Keep the unit where the length validators of all the fields behind it, nested ones too, find it."""
    if info.context is not None:
        info.context["unit"] = unit
    elif unit != "mm":
        message = "a question in another unit than mm is read by Question.read, which lends it a context"
        raise TypeError(message)
    return unit


class Question(BaseModel):
    """What every request has: strict fields, and the unit of its bare numbers.

    ``unit`` comes first, as fields are validated in the order in which they are declared.
    After validation all lengths are millimetres.
    """

    model_config = ConfigDict(
        strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True
    )

    repeatable: ClassVar[frozenset[str]] = frozenset()
    """Parameters of a query that may be given repeatedly."""

    unit: Annotated[Unit, AfterValidator(_remember)] = "mm"
    """Unit of the bare numbers in this request and of every length in the answer."""

    @classmethod
    def read(cls, raw: bytes) -> Self:
        """Validate the bytes of a JSON text."""
        question: Self = cls.__pydantic_validator__.validate_json(raw, context={})
        return question

    @classmethod
    def read_query(cls, parameters: dict[str, str]) -> Self:
        """Validate the parameters of a query, in which a bare number is in ``unit``."""
        question: Self = cls.__pydantic_validator__.validate_python(parameters, context={"query": True})
        return question

    @property
    def light(self) -> bool:
        """Whether it can be answered at once, though others of its kind are worked out beside the event loop."""
        return False

    @property
    def answer_context(self) -> AnswerContext:
        """How the answer is to be written."""
        return {"unit": self.unit}


@dataclass(frozen=True, slots=True)
class LengthBetween:
    """Annotation of a length in a question: validates a number in ``unit``, or a text, into millimetres."""

    low: float
    """The least. [mm]"""
    high: float
    """The most. [mm]"""
    example: str
    """A text that is accepted."""
    above: bool = False
    """Whether ``low`` itself is excluded."""

    def read(self, value: object, info: ValidationInfo) -> float:
        """Length in millimetres."""
        context = info.context or {}
        unit: Unit = context.get("unit", "mm")
        if type(value) is float:
            length = to_millimetres(value, unit)
        elif isinstance(value, str):
            try:
                length = read_length(value, unit if context.get("query") else None)
            except UnreadableLengthError as error:
                raise PydanticCustomError("length_unreadable", "{reason}", {"reason": as_sentence(error)}) from None
        elif type(value) is int:
            # A whole number of a thousand digits is no double; it is out of every range as well.
            length = to_millimetres(float(value), unit) if abs(value) < _NO_LENGTH else math.inf
        else:
            message = "A length is a number, or a text with its unit."
            raise PydanticCustomError("length_type", message)
        if not self.low <= length <= self.high or (self.above and length == self.low):
            raise PydanticCustomError("length_out_of_range", "{reason}", {"reason": self.sentence()})
        return length

    def sentence(self) -> str:
        """Say the range in both units."""
        least, most = from_millimetres(self.low, "in"), from_millimetres(self.high, "in")
        edge = "more than" if self.above else "at least"
        return (
            f"This length has to be {edge} {plain(self.low)} mm ({plain(least, 4)} in) "
            f"and at most {plain(self.high)} mm ({plain(most, 4)} in)."
        )

    def __get_pydantic_core_schema__(self, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.with_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        number = {"type": "number", "description": "A number in `unit`.", "minimum": self.low, "maximum": self.high}
        if self.low > 0.0 or (self.above and self.low == 0.0):
            # The least number depends on the unit; what can be said of both is that it is above zero.
            del number["minimum"]
            number["exclusiveMinimum"] = 0.0
        text = {"type": "string", "description": "A length with its unit: mm, cm, m or in.", "minLength": 1}
        return {"anyOf": [number, text | {"maxLength": LONGEST_TEXT}], "examples": [self.example]}


Scale: TypeAlias = Annotated[float, LengthBetween(1.0, MOST_PLAUSIBLE, "24 3/4 in")]
"""A scale: 1 to 10 000 mm."""

Length: TypeAlias = Annotated[float, LengthBetween(1e-6, MOST_PLAUSIBLE, "1 3/8 in")]
"""A length above zero."""

Distance: TypeAlias = Annotated[float, LengthBetween(0.0, MOST_PLAUSIBLE, "34.9 mm")]
"""A length of zero or more."""

AnyLength: TypeAlias = Annotated[float, LengthBetween(-MOST_PLAUSIBLE, MOST_PLAUSIBLE, "0.5 mm")]
"""A length of either sign."""

Uncertainty: TypeAlias = Annotated[float, LengthBetween(0.0, 100.0, "0.05 mm")]
"""A standard uncertainty (k = 1): 0 to 100 mm."""


def _no_truth(value: object) -> object:
    """Refuse true and false, which Python takes for 1 and 0."""
    if isinstance(value, bool):
        message = "A graduation is the number 1, 2, 4, 8, 16, 32, 64 or 128."
        raise PydanticCustomError("graduation_type", message)
    return value


Denominator: TypeAlias = Annotated[Literal[1, 2, 4, 8, 16, 32, 64, 128], BeforeValidator(_no_truth)]
"""The finest graduation of an inch rule."""


def as_sentence(error: Exception) -> str:
    """Message of an error as a sentence: a capital at its start, a full stop at its end."""
    text = str(error)
    return f"{text[0].upper()}{text[1:]}."


# ---- Answers --------------------------------------------------------------------------------------------


def _unit_of(info: SerializationInfo) -> Unit:
    unit: Unit = (info.context or {}).get("unit", "mm")
    return unit


def _write_length(value: float | None, info: SerializationInfo) -> float | None:
    return None if value is None else from_millimetres(value, _unit_of(info))


def _write_lengths(values: list[float], info: SerializationInfo) -> list[float]:
    unit = _unit_of(info)
    return values if unit == "mm" else [from_millimetres(value, unit) for value in values]


def _write_estimate(value: Estimate, info: SerializationInfo) -> Estimate:
    unit = _unit_of(info)
    if unit == "mm":
        return value
    numbers = (value.value, value.standard_uncertainty, value.lower, value.upper)
    return Estimate(*(from_millimetres(number, unit) for number in numbers))


def _write_unit(_: Unit, info: SerializationInfo) -> Unit:
    return _unit_of(info)


LengthOut: TypeAlias = Annotated[float, PlainSerializer(_write_length, return_type=float)]
"""A length of an answer: millimetres in the model, in ``unit`` when written."""

LengthsOut: TypeAlias = Annotated[list[float], PlainSerializer(_write_lengths, return_type=list[float])]
"""Many lengths of an answer, written at once: millimetres in the model, in ``unit`` when written."""

LengthEstimate: TypeAlias = Annotated[Estimate, PlainSerializer(_write_estimate, return_type=Estimate)]
"""A measured length of an answer: millimetres in the model, in ``unit`` when written."""

UnitOut: TypeAlias = Annotated[Unit, PlainSerializer(_write_unit, return_type=Unit)]
"""The unit of an answer, taken from the question."""


class Reply(BaseModel):
    """What every answer has: fields that are read off a domain object, and the unit of its lengths."""

    model_config = ConfigDict(
        from_attributes=True,
        frozen=True,
        use_attribute_docstrings=True,
        extra="ignore",
        json_schema_serialization_defaults_required=True,  # an answer always has its unit
    )

    unit: UnitOut = "mm"
    """Unit of every length in this answer."""
