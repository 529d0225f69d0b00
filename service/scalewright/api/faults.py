"""Faults: what a validator found wrong, said in plain words with a pointer and an example that works."""

import difflib
import re
import unicodedata
from collections.abc import Callable, Mapping
from typing import Any, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails
from pydantic_core.core_schema import ErrorType

from scalewright.api.accepted import example_at, names_at, range_at, without_branches
from scalewright.api.problems import Refusal, is_plain, pointer_to
from scalewright.lutherie.phrases import counted, plain

__all__ = ["refuse_invalid", "refuse_parameter", "refuse_unreadable"]

_MOST_FAULTS = 20
_LONGEST_NAME = 40
_WITHOUT_RANGE = {"int_type", "int_from_float", "int_parsing", "float_type", "missing"}
"""Errors that do not say between which numbers a value may lie."""
_OURS = "A value is not accepted here."
_KNOWN_TO_PYDANTIC = frozenset(get_args(ErrorType))


def _bound(words: str, name: str) -> Callable[[Mapping[str, Any]], str]:
    return lambda facts: f"This has to be {words} {plain(facts[name])}."


def _count(words: str, name: str) -> Callable[[Mapping[str, Any]], str]:
    return lambda facts: f"This has to have {words} {_entries(facts[name])}, and it has {facts['actual_length']}."


def _entries(number: int) -> str:
    return counted(number, "entry", "entries")


_SENTENCES: Mapping[str, str | Callable[[Mapping[str, Any]], str]] = {
    "missing": "This field is needed and was not given.",
    "int_type": "This has to be a whole number, written in digits alone.",
    "int_from_float": "This has to be a whole number, written in digits alone.",
    "int_parsing": "This has to be a whole number, written in digits alone.",
    "int_parsing_size": "This has to be a whole number of fewer digits.",
    "float_type": "This has to be a number.",
    "float_parsing": "This has to be a number.",
    "finite_number": "This has to be a finite number.",
    "bool_type": "This has to be true or false.",
    "bool_parsing": "This has to be true or false.",
    "string_type": "This has to be a text in quotes.",
    "string_unicode": "This text is not valid Unicode.",
    "string_too_long": lambda facts: f"This text may have at most {counted(facts['max_length'], 'character')}.",
    "string_too_short": lambda facts: f"This text has to have at least {counted(facts['min_length'], 'character')}.",
    "list_type": "This has to be a list in square brackets.",
    "too_long": _count("at most", "max_length"),
    "too_short": _count("at least", "min_length"),
    "dict_type": "This has to be an object in braces.",
    "model_type": "This has to be an object in braces.",
    "model_attributes_type": "This has to be an object in braces.",
    "dataclass_type": "This has to be an object in braces.",
    "none_required": "This has to be null or be left out.",
    "greater_than": _bound("more than", "gt"),
    "greater_than_equal": _bound("at least", "ge"),
    "less_than": _bound("less than", "lt"),
    "less_than_equal": _bound("at most", "le"),
    "literal_error": lambda facts: f"This has to be {facts['expected'].replace(chr(39), chr(34))}.",
}
"""What pydantic's errors mean to a person; none of them repeats what was sent."""


def refuse_unreadable(error: ValidationError) -> Refusal | None:
    """Return the refusal of a body that is no JSON, or None where it is."""
    # What is no JSON has this one fault; thousands of others are listed once, not twice.
    if error.error_count() > 1:
        return None
    first = error.errors(include_input=False, include_url=False)[0]
    if first["type"] != "json_invalid":
        return None
    reason = str(first.get("ctx", {}).get("error", "it cannot be parsed"))
    if reason.startswith("recursion limit exceeded"):
        return Refusal(
            "malformed-request", "The body is nested too deep: brackets and braces may stand 200 deep at most."
        )
    if reason.startswith("EOF while parsing a value at line 1 column 0"):
        return Refusal("malformed-request", "The body is empty; send a JSON object.")
    return Refusal("malformed-request", f"The body is not JSON that can be read: {reason}.")


def refuse_invalid(error: ValidationError, model: type[BaseModel]) -> Refusal:
    """Return the refusal of a request that can be read but breaks its model's rules."""
    details = error.errors(include_url=False)
    faults = [_fault(detail, model) for detail in details[:_MOST_FAULTS]]
    first = faults[0]
    place = f"At {first['pointer']}: " if first["pointer"] else ""
    more = f" ({len(details) - 1} more in `errors`)" if len(details) > 1 else ""
    return Refusal("invalid-request", f"{place}{first['detail']}{more}", faults=faults)


def _fault(error: ErrorDetails, model: type[BaseModel]) -> dict[str, object]:
    """One entry of ``errors``."""
    path = without_branches(error["loc"])
    if error["type"] == "extra_forbidden":
        known = names_at(model, error["loc"][:-1])
        near = difflib.get_close_matches(str(path[-1])[:_LONGEST_NAME], known, n=1)
        hint = f'perhaps "{near[0]}" was meant' if near else f"the fields are {', '.join(known)}"
        sentence = f"There is no field of this name here; {hint}."
    else:
        sentence = _sentence(error)
        between = range_at(model, error["loc"]) if error["type"] in _WITHOUT_RANGE else None
        if between is not None:
            sentence += f" It may be from {plain(between[0])} to {plain(between[1])}."
    echoed = [part for part in path if is_plain(part)]
    fault: dict[str, object] = {"pointer": pointer_to(echoed), "code": error["type"], "detail": sentence}
    example = example_at(model, error["loc"])
    if example is not None:
        fault["example"] = example
    return fault


def refuse_parameter(name: str, code: str, detail: str) -> Refusal:
    """Return the refusal of a parameter of a query for its name."""
    pointer = pointer_to([name]) if is_plain(name) else ""
    fault = {"pointer": pointer, "code": code, "detail": detail}
    return Refusal("invalid-request", f"At {pointer}: {detail}" if pointer else detail, faults=[fault])


def _sentence(error: ErrorDetails) -> str:
    if error["type"] == "string_pattern_mismatch":
        return _unaccepted(str(error["input"]), error["ctx"]["pattern"])
    words = _SENTENCES.get(error["type"])
    if words is None:
        # Errors of our own validators are sentences already; an unforeseen one of pydantic's may quote the input.
        return _OURS if error["type"] in _KNOWN_TO_PYDANTIC else error["msg"]
    return words if isinstance(words, str) else words(error.get("ctx", {}))


def _unaccepted(text: str, pattern: str) -> str:
    """Say which character of a text a pattern does not take, by its number and name alone."""
    form = re.compile(pattern)
    for place, character in enumerate(text, 1):
        # What it takes neither at the beginning nor behind a letter it takes nowhere.
        if form.match("a") and not (form.match(character) or form.match(f"a{character}")):
            name = unicodedata.name(character, "a control character").lower()
            return f"Character {place} of this text, U+{ord(character):04X} ({name}), is not accepted here."
    return "This text does not have the form that is needed here."
