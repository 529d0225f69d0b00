"""Labels on the wire: a nominal scale as a number or a text, read for what it says and how it was rounded."""

import math
from dataclasses import dataclass, replace
from typing import Annotated, TypeAlias

from pydantic import BaseModel, ConfigDict, GetCoreSchemaHandler, GetJsonSchemaHandler, ValidationInfo
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from scalewright.lutherie.errors import UnplaceableLabelError, UnreadableLengthError
from scalewright.lutherie.label import Label, LabelUnit, label_without_unit
from scalewright.wire.length_text import LONGEST_TEXT, MOST_PLAUSIBLE, read_written
from scalewright.wire.quantities import LengthOut, as_sentence

__all__ = ["LabelIn", "LabelOut"]

_INCH = 25.4
_CENTIMETRE = 10.0
_LEAST_PLAUSIBLE = 1.0
_MOST_DECIMALS = 6


@dataclass(frozen=True, slots=True)
class _LabelIn:
    """Annotation of a label in a question: validates a number or a text into a label of the craft."""

    def read(self, value: object, _: ValidationInfo) -> Label:
        """Label that a number or a text is."""
        try:
            if isinstance(value, str):
                return replace(_from_text(value), text=value.strip())
            if isinstance(value, int | float) and not isinstance(value, bool) and abs(value) < MOST_PLAUSIBLE:
                text = _plain(float(value))
                return replace(_from_text(text), text=text)
        except UnreadableLengthError as error:
            raise PydanticCustomError("label_unreadable", "{reason}", {"reason": as_sentence(error)}) from None
        except UnplaceableLabelError as error:
            raise PydanticCustomError("label_unplaceable", "{reason}", {"reason": as_sentence(error)}) from None
        message = 'A label is a text such as "24 3/4 in" or "628 mm", or a bare number of inches or millimetres.'
        raise PydanticCustomError("label_type", message)

    def __get_pydantic_core_schema__(self, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.with_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        text = "As it is written, its unit included: its digits say how it was rounded."
        bare = "Inches or millimetres, whichever the number fits, whatever `unit` is."
        return {
            "anyOf": [
                {"type": "string", "description": text, "minLength": 1, "maxLength": LONGEST_TEXT},
                {"type": "number", "description": bare, "exclusiveMinimum": 0.0},
            ],
            "examples": ["24 3/4 in"],
        }


def _plain(number: float) -> str:
    """A number with the digits it was most likely written with, never with an exponent."""
    return f"{number:.{_MOST_DECIMALS}f}".rstrip("0").rstrip(".")


def _from_text(text: str) -> Label:
    written = read_written(text)
    if written.millimetres is None:
        return label_without_unit(written.value, (written.grain, written.grain))
    length = written.value * written.millimetres
    if not _LEAST_PLAUSIBLE <= length <= MOST_PLAUSIBLE:
        message = "A label has to name a length from 1 mm to 10 000 mm."
        raise PydanticCustomError("label_out_of_range", message)
    unit: LabelUnit = "mm"
    if math.isclose(written.millimetres, _INCH):
        unit = "in"
    elif written.millimetres == _CENTIMETRE:
        unit = "cm"
    return Label(length, unit, written.grain * written.millimetres)


LabelIn: TypeAlias = Annotated[Label, _LabelIn()]
"""A label in a question."""


class LabelOut(BaseModel):
    """A label as it was read."""

    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

    length: LengthOut
    """Its number, taken at its word. [unit]"""
    unit: LabelUnit
    """The unit that the label is written in."""
    grain: LengthOut
    """The smallest step of numbers written like it: 0.1 in for 25.4 in, 1/4 in for 24 3/4 in. [unit]"""
    unit_given: bool
    """Whether the label names its unit."""
