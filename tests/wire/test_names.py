"""Names on the wire: two things of one name are refused at the second of them."""

import json

import pytest
from pydantic import ValidationError

from scalewright.wire.assembly import AssemblyIn
from scalewright.wire.signature import ToolOriginIn
from scalewright.wire.tooling import ToolingIn

COMMANDED = {"commanded": [36, 70], "true_scale": 650}


def tool(name):
    """A tool's signature."""
    return {"id": name, "bias": [0.01, -0.02], "within": 0.03, "between": 0.02, "boards": 40}


def part(name):
    """A part."""
    return {"id": name, "kind": "board", "true_scale": 650}


@pytest.mark.parametrize(
    ("model", "members", "place"),
    [
        (AssemblyIn, {"parts": [part("a"), part("b"), part("a")]}, ("parts", 2, "id")),
        (ToolOriginIn, COMMANDED | {"board": [36, 70], "signatures": [tool("a"), tool("a")]}, ("signatures", 1, "id")),
        (ToolingIn, COMMANDED | {"boards": [], "signatures": [tool("b"), tool("b")]}, ("signatures", 1, "id")),
        (
            ToolingIn,
            COMMANDED | {"boards": [], "id": "c", "signatures": [tool("b"), tool("c")]},
            ("signatures", 1, "id"),
        ),
        (ToolingIn, COMMANDED | {"boards": [], "signatures": [tool("this tool")]}, ("signatures", 0, "id")),
    ],
)
def test_a_name_that_was_used_before_is_refused(model, members, place):
    """An answer that says "a or a" would say nothing, so the second "a" is refused where it stands."""
    with pytest.raises(ValidationError) as refused:
        model.read(json.dumps(members).encode())
    (error,) = refused.value.errors()

    assert error["loc"] == place
    assert error["type"] == "id_repeated"


def test_names_of_their_own_are_taken():
    """Different names pass, in every list."""
    assert len(AssemblyIn.read(json.dumps({"parts": [part("a"), part("b")]}).encode()).parts) == 2
    held = COMMANDED | {"boards": [], "unknown": [36, 70], "signatures": [tool("a")]}
    assert len(ToolingIn.read(json.dumps(held).encode()).signatures) == 1
