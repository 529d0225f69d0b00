"""Tooling on the wire: where a tool was told to cut, and what it did."""

import json

import pytest
from pydantic import ValidationError

from scalewright.lutherie.signature import Signature
from scalewright.lutherie.tooling import Tool
from scalewright.wire.signature import ToolOriginIn
from scalewright.wire.tooling import ToolingIn

LAYOUT = {"layout": {"scale": 650, "rule": "equal", "frets": 2}}
SIGNATURE = {"id": "old saw", "bias": [0.01, -0.02], "within": 0.03, "between": 0.02, "boards": 40}


def read(members, model=ToolingIn):
    """What a question's members become."""
    return model.read(json.dumps(members).encode()).to_domain()


def test_a_layout_and_the_positions_it_has_are_the_same_tool():
    """Positions may be commanded as a layout or one by one."""
    laid = read(LAYOUT | {"boards": []})["tool"]
    by_hand = read({"commanded": list(laid.commanded), "true_scale": 650, "boards": []})["tool"]
    assert laid == by_hand == Tool(laid.commanded, 650.0, (1, 2))
    assert read({"commanded": [325], "frets": [12], "true_scale": 650, "boards": []})["tool"].frets == (12,)


def test_inches_become_millimetres():
    """Boards, signatures, tolerance and uncertainty are lengths."""
    found = read(
        {
            "unit": "in",
            "commanded": [1, 2],
            "true_scale": 25,
            "boards": [[1, 2], ["1 1/64 in", "50.8 mm"]],
            "tolerance": 0.01,
            "instrument_uncertainty": "0.02 mm",
            "unknown": [1, 2],
            "signatures": [SIGNATURE],
        }
    )
    assert found["readings"][0] == pytest.approx([25.4, 50.8])
    assert found["readings"][1] == pytest.approx([25.796875, 50.8])
    assert (found["tolerance"], found["instrument_uncertainty"]) == (pytest.approx(0.254), 0.02)
    assert found["unknown"] == pytest.approx([25.4, 50.8])
    assert found["others"][0].bias == pytest.approx((0.254, -0.508))


def test_a_board_of_unknown_origin():
    """The board's deviations and the tools' signatures reach the craft."""
    found = read(
        {"commanded": [36, 70], "true_scale": 650, "board": [36.01, 69.98], "signatures": [SIGNATURE]}, ToolOriginIn
    )
    assert found.tool == Tool((36.0, 70.0), 650.0, (1, 2))
    assert found.board == [36.01, 69.98]
    assert found.signatures == [Signature("old saw", (0.01, -0.02), 0.03, 0.02, 40)]


@pytest.mark.parametrize(
    ("members", "place", "words"),
    [
        ({"boards": []}, "", "Say where"),
        (LAYOUT | {"boards": [], "commanded": [1], "true_scale": 650}, "", "Say where"),
        ({"boards": [], "commanded": [1]}, "", "Say where"),
        (LAYOUT | {"boards": [], "tolerance": 0}, "tolerance", "at least 0.000001 mm"),
        (LAYOUT | {"boards": [], "tolerance": -0.1}, "tolerance", "at least 0.000001 mm"),
        (LAYOUT | {"boards": [["x"]]}, "boards/0/0", "No number"),
        (LAYOUT | {"boards": [[None]]}, "boards/0/0", "A length is"),
        (LAYOUT, "boards", "required"),
        (LAYOUT | {"boards": [], "signatures": [SIGNATURE | {"boards": 1}]}, "signatures/0/boards", "2"),
        (LAYOUT | {"boards": [], "signatures": [SIGNATURE]}, "signatures", "give its slots as unknown too"),
        (LAYOUT | {"boards": [], "frets": []}, "", "Say where"),
    ],
)
def test_refusals_name_the_place(members, place, words):
    """Each refusal points at the field and says what to change."""
    with pytest.raises(ValidationError) as refused:
        read(members)
    first = refused.value.errors()[0]
    assert "/".join(str(part) for part in first["loc"]) == place
    assert words in first["msg"]
