"""Sentences: what the service says to people is English whatever the numbers in it are."""

import json
import re

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.api.replay import address, cases, question_of

ASKED = sorted({(word, body) for word, name in cases() if (body := question_of(word, name)) is not None})
JSON = {"Content-Type": "application/json", "Accept": "application/json"}

VERBS = "is|was|has|as|its|reads|stands|lies|sounds|calls|once|makes|tells|falls|passes|this|less|across"
SINGULAR = re.compile(
    r"(?<![\w.,/])(?<!fret )(?<!string )(?<!frets )(?<!strings )(?<!\d and )"
    rf"1 (?:(?!(?:{VERBS})\b)[a-z]+s\b|are\b|were\b)"
)
"""One of something that is called by its plural."""
EXPONENT = re.compile(r"\d[eE][+-]?\d")
"""A number as no person writes it."""
DOUBLED = re.compile(r"\b([a-z]+) \1\b|  |\.\.(?!\.)|,,| [,.;]")
"""Words and marks that stand twice, or apart."""


def sentences(value):
    """All texts of several words in an answer."""
    if isinstance(value, str) and value.count(" ") > 1:
        yield value
    elif isinstance(value, dict):
        for name, part in value.items():
            # What the caller has said himself is his own.
            if name not in {"example", "title_text"}:
                yield from sentences(part)
    elif isinstance(value, list):
        for part in value:
            yield from sentences(part)


def slips(answer):
    """What is no English in an answer."""
    return [
        (text, found.group())
        for text in sentences(answer)
        for slip in (SINGULAR, EXPONENT, DOUBLED)
        if (found := slip.search(text))
    ]


def numbers(value, path=()):
    """Paths to all numbers and lists of a JSON value."""
    parts = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for name, part in parts:
        if isinstance(part, int | float | list) and not isinstance(part, bool):
            yield (*path, name)
        yield from numbers(part, (*path, name))


def changed(value, path, number, length):
    """Return a JSON value with the number at a path replaced, or the list there cut to a length."""
    if not path:
        return value[:length] if isinstance(value, list) else number
    copy = dict(value) if isinstance(value, dict) else list(value)
    copy[path[0]] = changed(value[path[0]], path[1:], number, length)
    return copy


@pytest.mark.parametrize(
    "text",
    ["1 frets", "at least 1 entries", "and 1 were given", "2.024e+04 mm", "of of", "it is 3 , and", "give 1 readings"],
)
def test_a_slip_is_seen(text):
    """The tests below would see these."""
    assert slips({"detail": f"There, it says {text} here."})


@pytest.mark.parametrize(
    "text", ["frets 1 and 2", "fret 1 is", "0.1 cents", "1 mm", "string 1 calls", "1 fret", "11 frets"]
)
def test_english_is_no_slip(text):
    """The tests below do not stumble over these."""
    assert not slips({"detail": f"There, it says {text} here."})


@pytest.mark.slow
@settings(max_examples=250, deadline=None, suppress_health_check=list(HealthCheck), derandomize=True)
@given(data=st.data())
def test_sentences_are_english_whatever_the_numbers(send, data):
    """No answer and no refusal counts "1 frets" or writes "2e+04", however few or large things are (slow: 250)."""
    word, body = data.draw(st.sampled_from(ASKED))
    question = json.loads(body)
    for _ in range(data.draw(st.integers(1, 3))):
        places = sorted(numbers(question), key=repr)
        path = data.draw(st.sampled_from(places or [()]))
        number = data.draw(st.sampled_from([0, 1, 2, 1e-7, 20240.5, 1234567, 1e22, -1]))
        length = data.draw(st.integers(0, 2))
        if path:
            question = changed(question, path, number, length)
    answer = send("POST", address(word), content=json.dumps(question), headers=JSON)

    assert answer.status_code in {200, 400, 413, 422}
    assert not slips(answer.json()), question


@pytest.mark.parametrize(
    ("word", "question"),
    [
        ("layout", {"scale": 650, "rule": {"name": "listed", "cents": [100]}, "frets": 2}),
        ("layout", {"scale": 1e9, "rule": "equal", "frets": 1}),
        ("identification", {"instrument_uncertainty": 0.05, "frets": [1], "from_nut": [36, 70]}),
        ("identification", {"instrument_uncertainty": 0.05, "frets": [1], "from_nut": [36]}),
        ("identification", {"instrument_uncertainty": 0.05, "frets": [], "from_nut": [36]}),
        ("identification", {"unit": "in", "instrument_uncertainty": 0.05, "frets": [1, 12], "from_nut": [36, 325]}),
        ("identification", {"instrument_uncertainty": 0.05, "frets": [1, 2], "from_nut": [1000, 2000]}),
        ("diagnosis", {"scale": 650, "rule": "equal", "frets": 1, "readings": [{"string": 1, "fret": 2, "cents": 1}]}),
        ("diagnosis", {"scale": 650, "rule": "equal", "readings": [{"string": 1, "fret": 12, "cents": 6}]}),
        ("stretch-test", {"stretch": [1], "frequencies": [1], "length": 610, "frequency": 300}),
        ("tooling", {"commanded": [36], "true_scale": 650, "boards": [[36, 70], [36]]}),
        ("tooling", {"commanded": [36, 70], "true_scale": 650, "boards": [[36, 70], [36]]}),
        ("tooling", {"commanded": [36], "frets": [1, 2], "true_scale": 650, "boards": [[36], [36]]}),
        ("assembly", {"parts": [{"id": "a", "kind": "board", "true_scale": 650}]}),
        ("assembly", {"parts": []}),
    ],
)
def test_few_things_are_counted_right(send, word, question):
    """One fret, one reading, one slot, one part: each is told in the singular."""
    answer = send("POST", f"/v1/{word}", json=question).json()

    assert not slips(answer)


def test_a_string_beyond_its_breaking_load_is_said_to_break(send):
    """Plain steel at more than its breaking load is not said to be able to break, but to be expected to."""
    string = {"pitch": "E5", "core_material": "steel", "core_diameter": "0.010 in"}
    question = {
        "scale": 900,
        "rule": "equal",
        "frets": 12,
        "heights": {"nut": 1, "saddle_above_nut": 4},
        "strings": [string],
    }
    notes = [
        note["text"]
        for one in send("POST", "/v1/compensation", json=question).json()["strings"]
        for note in one.get("notes", ())
        if note["slug"] == "near-breaking"
    ]

    assert len(notes) == 1
    assert "Expect the string to break" in notes[0]
