"""From JSON to dataclasses."""

from dataclasses import FrozenInstanceError, dataclass
from typing import Literal

import pytest

from scalewright_client._decode import Mismatch, decode


@dataclass(frozen=True, slots=True)
class Slot:
    """A result with a default."""

    fret: int
    depth: float
    tool: str | None = None


@dataclass(frozen=True, slots=True)
class Board:
    """A result of results."""

    verdict: Literal["good", "bad"]
    slots: tuple[Slot, ...]
    glued: bool
    width: float | None


BOARD = {"verdict": "good", "glued": True, "width": None, "slots": [{"fret": 1, "depth": 2}, {"fret": 2, "depth": 1.5}]}


def test_nested_answers_become_dataclasses():
    """Lists, optionals and nested objects arrive as tuples, None and dataclasses."""
    board = decode(Board, BOARD)
    assert board == Board("good", (Slot(1, 2.0), Slot(2, 1.5)), glued=True, width=None)
    assert isinstance(board.slots[0].depth, float)


def test_answers_are_frozen():
    """An answer cannot be changed by accident."""
    with pytest.raises(FrozenInstanceError):
        setattr(decode(Board, BOARD).slots[0], "fret", 3)  # noqa: B010 - a plain assignment is already a type error


def test_unknown_fields_are_ignored():
    """An old client meets a newer service that says more."""
    slots = [{"fret": 1, "depth": 2, "saw": "new"}]
    assert decode(Board, {**BOARD, "colour": "new", "slots": slots}).slots == (Slot(1, 2.0),)


def test_a_word_added_by_a_newer_service_is_passed_on():
    """A verdict this client has never heard of is still given to the caller."""
    verdict: str = decode(Board, {**BOARD, "verdict": "splendid"}).verdict
    assert verdict == "splendid"


def test_a_field_with_a_default_may_be_absent_and_one_without_may_not():
    """Only what the contract calls nullable may be missing."""
    assert decode(Slot, {"fret": 1, "depth": 2.0}).tool is None
    with pytest.raises(Mismatch) as caught:
        decode(Board, {name: value for name, value in BOARD.items() if name != "width"})
    assert caught.value.pointer == "/width"


@pytest.mark.parametrize(
    ("change", "pointer", "expected"),
    [
        ({"slots": [{"fret": 1, "depth": 2}, {"fret": 2, "depth": "deep"}]}, "/slots/1/depth", "a number"),
        ({"slots": [{"fret": 1.5, "depth": 2}]}, "/slots/0/fret", "a whole number"),
        ({"slots": [{"fret": True, "depth": 2}]}, "/slots/0/fret", "a whole number"),
        ({"slots": [{"fret": 1, "depth": True}]}, "/slots/0/depth", "a number"),
        ({"slots": [{"fret": 1, "depth": None}]}, "/slots/0/depth", "a number"),
        ({"slots": {}}, "/slots", "a list"),
        ({"slots": [[]]}, "/slots/0", "an object"),
        ({"verdict": 3}, "/verdict", "a text"),
        ({"glued": "yes"}, "/glued", "true or false"),
    ],
)
def test_a_mismatch_says_where_and_what(change, pointer, expected):
    """A value of another type is refused with a JSON pointer to it."""
    with pytest.raises(Mismatch) as caught:
        decode(Board, {**BOARD, **change})
    assert (caught.value.pointer, caught.value.expected) == (pointer, expected)


def test_an_annotation_without_a_decoder_is_a_mistake_of_ours():
    """A result class with a field that cannot be read fails loudly, before any answer."""

    @dataclass(frozen=True)
    class Odd:
        when: complex

    with pytest.raises(TypeError, match="no decoder for"):
        decode(Odd, {"when": 1})
