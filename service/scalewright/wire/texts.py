"""Texts of people on the wire: titles and names, without characters that are no writing."""

import datetime as dt
from typing import Annotated, TypeAlias

from pydantic import AfterValidator, Field
from pydantic_core import PydanticCustomError

__all__ = ["DateText", "LongText", "ShortText"]

_UNSEEN = (
    (0x0000, 0x001F), (0x007F, 0x009F),  # controls
    (0x00AD, 0x00AD), (0x0600, 0x0605), (0x061C, 0x061C), (0x06DD, 0x06DD), (0x070F, 0x070F), (0x0890, 0x0891),
    (0x08E2, 0x08E2), (0x180E, 0x180E), (0x200B, 0x200B), (0x200E, 0x200F),  # formats, but for U+200C and U+200D
    (0x115F, 0x1160), (0x3164, 0x3164), (0xFFA0, 0xFFA0),  # letters that fill a place and show nothing
    (0x2028, 0x202E), (0x2060, 0x206F), (0xFEFF, 0xFEFF), (0xFFF0, 0xFFFF),  # separators, formats, none
    (0xE000, 0xF8FF),  # private: everyone means something else by them
    (0x110BD, 0x110BD), (0x110CD, 0x110CD), (0x13430, 0x1343F), (0x1BCA0, 0x1BCA3), (0x1D173, 0x1D17A),  # formats
    (0xE0000, 0xE0FFF),  # tags and selectors
    (0xF0000, 0x10FFFF),  # private again
)  # fmt: skip
"""First and last of what is no writing: controls, formats and separators (the categories Cc, Cf, Zl and Zp of Unicode),
private characters. The joiners U+200C and U+200D are writing: some scripts cannot be spelled without."""


def _written(code: int) -> str:
    """A character in a pattern; beyond four digits as it is, as no two readers of patterns escape it alike."""
    return f"\\u{code:04x}" if code <= 0xFFFF else chr(code)


_WRITING = f"^[^{''.join(f'{_written(first)}-{_written(last)}' for first, last in _UNSEEN)}]*$"
"""No characters that cannot be seen, that control, or that turn the direction of writing."""

ShortText: TypeAlias = Annotated[str, Field(max_length=60, pattern=_WRITING, examples=["Board 7"])]
"""A name: at most 60 characters."""

LongText: TypeAlias = Annotated[str, Field(max_length=120, pattern=_WRITING, examples=["Parlour guitar, second try"])]
"""A title: at most 120 characters."""


def _in_the_calendar(text: str) -> str:
    try:
        dt.date.fromisoformat(text)
    except ValueError:
        message = "There is no such day in the calendar."
        raise PydanticCustomError("no_such_day", message) from None
    return text


DateText: TypeAlias = Annotated[
    str,
    Field(pattern=r"^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$", examples=["2026-11-25"]),
    AfterValidator(_in_the_calendar),
]
"""A date as ISO 8601 writes it."""
