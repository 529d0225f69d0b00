"""JSON to frozen dataclasses: unknown fields are ignored, contracted ones are required."""

import functools
import types
from collections.abc import Callable, Mapping, Sequence
from dataclasses import MISSING, Field, fields, is_dataclass
from typing import Any, Literal, TypeAlias, TypeVar, Union, cast, get_args, get_origin, get_type_hints

__all__ = ["Mismatch", "decode"]

T = TypeVar("T")

Decoder: TypeAlias = Callable[[object], Any]


class Mismatch(Exception):  # noqa: N818 - never leaves the client; it becomes an UnexpectedAnswerError
    """A value that is not what the contract says; ``pointer`` is a JSON pointer to it."""

    def __init__(self, *, expected: str) -> None:
        super().__init__(expected)
        self.expected = expected
        self.pointer = ""

    def below(self, key: str | int) -> "Mismatch":
        """Note that the value lies below ``key``."""
        self.pointer = f"/{key}{self.pointer}"
        return self


def decode(kind: type[T], value: object) -> T:
    """Turn parsed JSON into a dataclass of the client.

    Parameters
    ----------
    kind : type
        A frozen dataclass whose fields are numbers, texts, tuples, optionals or dataclasses.
    value : object
        Parsed JSON.

    Returns
    -------
    T
        The dataclass.

    Raises
    ------
    Mismatch
        A field that the contract promises is absent or of another type.
    """
    hint: Any = kind
    return cast("T", _decoder(hint)(value))


@functools.cache
def _decoder(kind: Any) -> Decoder:
    """Build the decoder of one annotation, once: the hints of a class are slow to read."""
    origin = get_origin(kind)
    if kind is float:
        return _number
    if kind in (int, str, bool):
        return _exactly(kind)
    if origin is Literal:
        # A word that a newer server has added is passed on rather than refused.
        return _exactly(str)
    if origin in (Union, types.UnionType):
        return _optional([_decoder(option) for option in get_args(kind) if option is not type(None)])
    if origin in (tuple, Mapping):
        return _list(_decoder(get_args(kind)[0])) if origin is tuple else _table(_decoder(get_args(kind)[1]))
    if is_dataclass(kind):
        return _record(cast("type[Any]", kind))
    message = f"no decoder for {kind!r}"
    raise TypeError(message)


def _number(value: object) -> float:
    if isinstance(value, float):
        return value
    if isinstance(value, int) and not isinstance(value, bool):
        return float(value)
    raise Mismatch(expected="a number")


def _exactly(kind: type) -> Decoder:
    def read(value: object) -> object:
        if type(value) is not kind:
            raise Mismatch(expected={int: "a whole number", str: "a text", bool: "true or false"}[kind])
        return value

    return read


def _optional(some: Sequence[Decoder]) -> Decoder:
    """Read nothing, or one of a few kinds of value; of several only objects have something inside."""
    first, *others = some
    if not others:
        return lambda value: None if value is None else first(value)
    (other,) = others
    return lambda value: None if value is None else (other if isinstance(value, dict) else first)(value)


def _list(item: Decoder) -> Decoder:
    def read(value: object) -> tuple[object, ...]:
        if not isinstance(value, list):
            raise Mismatch(expected="a list")
        done: list[object] = []
        try:
            for one in value:
                done.append(item(one))  # noqa: PERF401 - the index of a faulty item is the length so far
        except Mismatch as mismatch:
            raise mismatch.below(len(done)) from None
        return tuple(done)

    return read


def _table(item: Decoder) -> Decoder:
    def read(value: object) -> dict[str, object]:
        if not isinstance(value, dict):
            raise Mismatch(expected="an object")
        done: dict[str, object] = {}
        for name, one in value.items():
            try:
                done[name] = item(one)
            except Mismatch as mismatch:
                raise mismatch.below(name) from None
        return done

    return read


def _default(field: Field[Any]) -> object:
    return field.default


def _record(kind: type[Any]) -> Decoder:
    hints = get_type_hints(kind)
    plan = [(field.name, _decoder(hints[field.name]), _default(field)) for field in fields(kind)]

    def read(value: object) -> object:
        if not isinstance(value, dict):
            raise Mismatch(expected="an object")
        found: list[object] = []
        for name, item, default in plan:
            if name in value:
                try:
                    found.append(item(value[name]))
                except Mismatch as mismatch:
                    raise mismatch.below(name) from None
            elif default is MISSING:
                raise Mismatch(expected="a field that the contract promises").below(name)
            else:
                found.append(default)
        return kind(*found)

    return read
