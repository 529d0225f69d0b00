"""Texts of people on the wire: titles and names, without characters that are no writing."""

from typing import Annotated, TypeAlias

from pydantic import Field

__all__ = ["DateText", "LongText", "ShortText"]

_WRITING = (
    r"^[^\u0000-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff0-\uffff]*$"
)
"""No control characters, none that turn the direction of writing or that cannot be seen."""

ShortText: TypeAlias = Annotated[str, Field(max_length=60, pattern=_WRITING, examples=["Board 7"])]
"""A name: at most 60 characters."""

LongText: TypeAlias = Annotated[str, Field(max_length=120, pattern=_WRITING, examples=["Parlour guitar, second try"])]
"""A title: at most 120 characters."""

DateText: TypeAlias = Annotated[
    str, Field(pattern=r"^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$", examples=["2026-11-25"])
]
"""A date as ISO 8601 writes it."""
