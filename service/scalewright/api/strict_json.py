"""Strict JSON: what pydantic's reader lets pass and RFC 8259 advises against."""

import json
import sys
from collections import Counter
from collections.abc import Iterable, Iterator

from scalewright.api.problems import Refusal, is_plain, pointer_to
from scalewright.lutherie.phrases import counted

__all__ = ["check_body", "check_lists"]


class _RepeatedError(Exception):
    """An object names a member twice."""


def _members(pairs: list[tuple[str, object]]) -> dict[str, object]:
    members = dict(pairs)
    if len(members) != len(pairs):
        raise _RepeatedError
    return members


class _Ambiguous(dict[str, object]):
    """An object that names a member twice."""

    def __init__(self, pairs: list[tuple[str, object]]) -> None:
        super().__init__(pairs)
        counts = Counter(name for name, _ in pairs)
        self.repeated = next((name for name, count in counts.items() if count > 1), None)


def _no_number(_: str) -> object:
    message = "The body holds NaN or Infinity, which are not JSON; leave out what is not known."
    raise Refusal("malformed-request", message)


_DECODER = json.JSONDecoder(object_pairs_hook=_members, parse_constant=_no_number)
_FINDER = json.JSONDecoder(object_pairs_hook=_Ambiguous)


def check_body(raw: bytes, max_list_items: int = sys.maxsize) -> None:
    """Refuse members that are given twice, NaN and Infinity, and lists that are too long.

    The bytes have passed pydantic's reader, which refuses all but UTF-8, byte order marks, lone
    surrogates, numbers of thousands of digits and deep nesting; so this cannot fail otherwise.

    Raises
    ------
    Refusal
        400, or 422 for a list that is too long.
    """
    try:
        body = _DECODER.decode(raw.decode())
    except _RepeatedError:
        raise _refuse_repeated(_FINDER.decode(raw.decode())) from None
    if raw.count(b",") >= max_list_items:
        check_lists(body, max_list_items, [])


def _refuse_repeated(body: object) -> Refusal:
    """Return the refusal of a body with a member that is given twice, which it points at."""
    path = next(_repeated(body, ()), ())
    # A name that is not plain is the sender's own, and is not sent back.
    plain = is_plain(path[-1]) if path else False
    named = f'"{path[-1]}"' if plain else "a member"
    detail = f"The body names {named} twice in one object, and which is meant cannot be known; send each once."
    pointer = pointer_to(path if plain else path[:-1])
    place = f"At {pointer}: " if pointer else ""
    fault = {"pointer": pointer, "code": "member_repeated", "detail": detail}
    return Refusal("malformed-request", f"{place}{detail}", faults=[fault])


def _repeated(value: object, path: tuple[str | int, ...]) -> Iterator[tuple[str | int, ...]]:
    """Paths to members that are given twice, from the outside in."""
    if isinstance(value, _Ambiguous) and value.repeated is not None:
        yield (*path, value.repeated)
    parts: Iterable[tuple[str | int, object]] = ()
    if isinstance(value, dict):
        parts = value.items()
    elif isinstance(value, list):
        parts = enumerate(value)
    for name, part in parts:
        yield from _repeated(part, (*path, name))


def check_lists(value: object, most: int, path: list[str | int]) -> None:
    """Refuse a list with more than so many entries, wherever it stands."""
    if isinstance(value, dict):
        for name, member in value.items():
            check_lists(member, most, [*path, name])
    elif isinstance(value, list):
        if len(value) > most:
            detail = f"A list may have at most {counted(most, 'entry', 'entries')}; send less at once."
            fault = {"pointer": pointer_to(path), "code": "too_long", "detail": detail}
            raise Refusal("invalid-request", detail, faults=[fault])
        for index, item in enumerate(value):
            check_lists(item, most, [*path, index])
