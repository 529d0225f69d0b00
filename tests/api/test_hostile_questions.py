"""Hostile questions: whatever takes a part's place in a question, the answer is one, or a refusal with its reason."""

import contextlib
import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from scalewright.lutherie.errors import UnreadableLengthError
from scalewright.wire.length_text import LONGEST_TEXT, read_length
from tests.api.replay import address, cases, question_of

ASKED = sorted({(word, body) for word, name in cases() if (body := question_of(word, name)) is not None})
"""Addresses' words and the questions of the examples."""

JSON = {"Content-Type": "application/json"}
LENGTHS = st.text(alphabet="0123456789 .,/-+\"'′″⅝½eEinmc\u0660\u200b\t", max_size=LONGEST_TEXT + 2)
NUMBERS = (
    st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.sampled_from([0, -1, 1e-308, 1e308, 2**63])
)
ANYTHING = st.recursive(
    st.none() | st.booleans() | NUMBERS | st.text(max_size=40) | LENGTHS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=12), inner, max_size=4),
    max_leaves=8,
)


def places(value, path=()):
    """Paths to every part of a JSON value."""
    yield path
    parts = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for name, part in parts:
        yield from places(part, (*path, name))


def replaced(value, path, other):
    """Return a JSON value with another one at a path."""
    if not path:
        return other
    copy = dict(value) if isinstance(value, dict) else list(value)
    copy[path[0]] = replaced(value[path[0]], path[1:], other)
    return copy


@pytest.mark.slow
@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck), derandomize=True)
@given(data=st.data())
def test_a_part_that_is_replaced_never_breaks_the_service(send, data):
    """Any JSON in any place of any example is answered, or refused with 400 or 422 (slow: 150 requests)."""
    word, body = data.draw(st.sampled_from(ASKED))
    question = json.loads(body)
    for _ in range(data.draw(st.integers(1, 3))):
        path = data.draw(st.sampled_from(sorted(places(question), key=repr)))
        question = replaced(question, path, data.draw(ANYTHING))
    answer = send("POST", address(word), content=json.dumps(question), headers=JSON)

    assert answer.status_code in {200, 400, 422}, (word, question)
    if answer.status_code != 200:
        assert answer.json()["detail"]


@given(raw=st.binary(max_size=200))
@settings(max_examples=100, deadline=None, suppress_health_check=list(HealthCheck), derandomize=True)
def test_bytes_that_mean_nothing_are_refused(send, raw):
    """No bytes that are no question get anything but 400 or 422."""
    assert send("POST", "/v1/layout", content=raw, headers=JSON).status_code in {400, 422}


@given(text=LENGTHS | st.text(max_size=LONGEST_TEXT + 2), unit=st.sampled_from([None, "mm", "in"]))
@settings(max_examples=500, deadline=None)
def test_a_text_is_a_length_or_is_refused(text, unit):
    """The reader of lengths gives a finite number or its one refusal."""
    length = None
    with contextlib.suppress(UnreadableLengthError):
        length = read_length(text, unit)

    assert length is None or abs(length) < 1e15
