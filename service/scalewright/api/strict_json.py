"""Strict JSON: what pydantic's reader lets pass and RFC 8259 advises against."""

import json
import sys

from scalewright.api.problems import Refusal, pointer_to

__all__ = ["check_body", "check_lists"]


def _members(pairs: list[tuple[str, object]]) -> dict[str, object]:
    members = dict(pairs)
    if len(members) != len(pairs):
        message = "The body names a member of an object twice, and which is meant cannot be known; send each once."
        raise Refusal("malformed-request", message)
    return members


def _no_number(_: str) -> object:
    message = "The body holds NaN or Infinity, which are not JSON; leave out what is not known."
    raise Refusal("malformed-request", message)


_DECODER = json.JSONDecoder(object_pairs_hook=_members, parse_constant=_no_number)


def check_body(raw: bytes, max_list_items: int = sys.maxsize) -> None:
    """Refuse members that are given twice, NaN and Infinity, and lists that are too long.

    The bytes have passed pydantic's reader, which refuses all but UTF-8, byte order marks, lone
    surrogates, numbers of thousands of digits and deep nesting; so this cannot fail otherwise.

    Raises
    ------
    Refusal
        400, or 422 for a list that is too long.
    """
    body = _DECODER.decode(raw.decode())
    if raw.count(b",") >= max_list_items:
        check_lists(body, max_list_items, [])


def check_lists(value: object, most: int, path: list[str | int]) -> None:
    """Refuse a list with more than so many entries, wherever it stands."""
    if isinstance(value, dict):
        for name, member in value.items():
            check_lists(member, most, [*path, name])
    elif isinstance(value, list):
        if len(value) > most:
            detail = f"A list may have at most {most} entries; send less at once."
            fault = {"pointer": pointer_to(path), "code": "too_long", "detail": detail}
            raise Refusal("invalid-request", detail, faults=[fault])
        for index, item in enumerate(value):
            check_lists(item, most, [*path, index])
