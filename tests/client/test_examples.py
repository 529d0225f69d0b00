"""The client replays the examples of the OpenAPI document."""

import json
from dataclasses import asdict
from pathlib import Path

import httpx
import pytest

import scalewright_client as sc
from tests.client.operations import OPERATIONS
from tests.client.service_double import Double

EXAMPLES = Path(__file__).parents[2] / "openapi_examples"


def cases():
    """Operation and answer file of every example of an operation that the client knows."""
    folders = {name: path.removeprefix("/v1/").replace("/", "_") for name, (_, path, _) in OPERATIONS.items()}
    return [
        (name, answer) for name, word in folders.items() for answer in sorted((EXAMPLES / word).glob("*.response.json"))
    ]


def trimmed(value):
    """Without the members that are None: what an answer may leave out, the client shows as None."""
    if isinstance(value, dict):
        return {name: trimmed(inner) for name, inner in value.items() if inner is not None}
    if isinstance(value, (list, tuple)):
        return [trimmed(inner) for inner in value]
    return value


def test_every_operation_has_an_example():
    """The replay below leaves none out."""
    assert {word for word, _ in cases()} == set(OPERATIONS)


@pytest.mark.parametrize(("word", "file"), cases(), ids=lambda part: getattr(part, "stem", part))
def test_an_example_is_sent_and_read_as_it_stands(ask, word, file):
    """The question goes out word for word, and every member of the answer arrives."""
    answer = json.loads(file.read_bytes())
    asked = file.with_name(file.name.replace(".response.", ".request."))
    question = json.loads(asked.read_bytes()) if asked.exists() else {}
    if "title" in answer and "status" in answer:
        kind = {"Content-Type": "application/problem+json"}
        double = Double(httpx.Response(answer["status"], json=answer, headers=kind))
        with pytest.raises(sc.ProblemError) as caught:
            ask(double, word, **question)
        assert [fault.pointer for fault in caught.value.errors] == [fault["pointer"] for fault in answer["errors"]]
    else:
        double = Double(httpx.Response(200, json=answer))
        assert trimmed(asdict(ask(double, word, **question))) == trimmed(answer)
    if question:
        assert json.loads(double.requests[0].content) == {"unit": "mm", **question}
