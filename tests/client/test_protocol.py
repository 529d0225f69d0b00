"""What the client sends, and how it reads answers; no transport is involved."""

import json
import math
from typing import Any, cast

import httpx
import numpy as np
import pytest

import scalewright_client as sc
from scalewright_client import _operations as operations
from scalewright_client._protocol import call
from tests.client.service_double import LAYOUT


def body_of(prepared):
    return json.loads(prepared.content)


def test_a_question_says_what_was_given_and_nothing_else():
    """Defaults are the service's business, so what was not given is not sent."""
    prepared = operations.layout(scale="24 3/4 in", rule="eighteenth", frets=22, unit="in")
    assert (prepared.method, prepared.path) == ("POST", "/v1/layout")
    assert body_of(prepared) == {"unit": "in", "scale": "24 3/4 in", "rule": "eighteenth", "frets": 22}


def test_a_question_without_a_body_has_no_content():
    """The rules are read with a plain GET."""
    prepared = operations.rules()
    assert (prepared.method, prepared.path, prepared.content) == ("GET", "/v1/rules", None)
    assert prepared.headers == {"Accept": "application/json"}


@pytest.mark.parametrize(
    ("answered", "asked"),
    [
        (sc.Rule("equal", divisor=17.817, steps=12), {"name": "equal", "steps": 12}),
        (sc.Rule("eighteenth", divisor=18.0), {"name": "eighteenth"}),
        (sc.Rule("divisor", divisor=17.835), {"name": "divisor", "divisor": 17.835}),
        (
            sc.Rule("listed", cents=(90.0, 1200.0), repeat=True),
            {"name": "listed", "cents": [90.0, 1200.0], "repeat": True},
        ),
    ],
)
def test_an_answered_rule_can_be_asked_with(answered, asked):
    """The rule of an identification goes straight into a layout, without what only describes it."""
    assert body_of(operations.layout(scale=650, rule=answered, frets=2))["rule"] == asked


def test_lengths_may_be_numbers_texts_and_array_items():
    """What a maker's script holds goes in as it is: arrays, iterators, numpy's scalars, whole numbers."""
    prepared = operations.identification(
        frets=np.arange(1, 4), from_nut=iter((34.95, "2 11/16 in", np.float64(99.1))), instrument_uncertainty=0.05
    )
    assert body_of(prepared) == {
        "unit": "mm",
        "frets": [1, 2, 3],
        "from_nut": [34.95, "2 11/16 in", 99.1],
        "instrument_uncertainty": 0.05,
    }


def test_numbers_travel_in_full_precision():
    """The number that arrives is the number that was given, to the last bit."""
    third = 1.0 / 3.0
    assert body_of(operations.layout(scale=third, rule="equal", frets=1))["scale"] == third


def test_all_of_an_identification_is_sent():
    """Each option reaches the service under its own name."""
    reading = {"from": 0, "to": 12, "distance": 312.0, "uncertainty": 0.1, "point": "centre"}
    question: dict[str, Any] = {
        "unit": "mm",
        "readings": [reading],
        "fret_to_fret": [35.0],
        "resolution": 0.5,
        "scale_error": 1e-4,
        "tooling_scatter": 0.05,
        "origin": "zero_fret",
        "nut_offset": "none",
        "nut_offset_deviation": 0.2,
        "slot_width": "0.6 mm",
        "candidates": [{"rule": "equal"}, {"any_divisor": {}, "prior": 0.1}],
        "threshold": 0.99,
        "coverage": 0.99,
        "significance": 0.01,
        "misreading_probability": 0.0,
    }
    assert body_of(operations.identification(**question)) == question


def test_all_of_a_compensation_is_sent():
    """Each option reaches the service under its own name."""
    question: dict[str, Any] = {
        "unit": "mm",
        "scale": 650.0,
        "scale_basis": "true",
        "rule": "equal",
        "frets": 12,
        "heights": {"nut": 1.0, "action": {"fret": 12, "height": 3.0}},
        "finger_behind_fret": 2.0,
        "nut": "free",
        "optimise_for": {"frets": [1, 12], "weights": [1.0, 2.0]},
        "boundary_factor": 1.1,
        "stiffness": "length_and_tension",
        "strings": [{"pitch": "E4", "diameter": 0.71, "unit_mass": 0.41, "R": 24.0}],
    }
    assert body_of(operations.compensation(**question)) == question


@pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf])
def test_a_number_that_is_none_is_refused_before_it_is_sent(number):
    """What was not measured cannot be sent as a number."""
    with pytest.raises(ValueError, match="not finite"):
        operations.identification(from_nut=[34.9, number])


def test_what_has_no_place_in_json_is_refused_in_plain_words():
    """The message says what to give instead."""
    with pytest.raises(TypeError, match="object can't be sent; give a number or a text"):
        operations.layout(scale=cast("Any", object()), rule="equal", frets=12)


def answer(content, status=200, **headers):
    return httpx.Response(status, content=content, headers={"X-Request-ID": "r-7", **headers})


def test_an_answer_is_read_into_nested_values():
    """A maker writes ``layout.frets[0].from_nut``."""
    layout = call("POST", "/v1/layout", sc.Layout).read(answer(json.dumps(LAYOUT).encode()))
    assert layout.frets[0].from_nut == 1.375
    assert layout.rule == sc.Rule("eighteenth", divisor=18.0)


@pytest.mark.parametrize(
    ("content", "status", "words"),
    [
        (b"<html>Welcome</html>", 200, "not JSON"),
        (b"", 200, "not JSON"),
        (b"[" * 100_000, 200, "not JSON"),
        (b"\xff\xff", 200, "not JSON"),
        (b"[]", 200, "expected an object at the top"),
        (json.dumps({**LAYOUT, "frets": [{"fret": 1}]}).encode(), 200, "promises at /frets/0/from_nut"),
        (json.dumps({**LAYOUT, "layout_scale": "long"}).encode(), 200, "expected a number at /layout_scale"),
        (b"", 307, "status 307; check the base address"),
    ],
    ids=["page", "nothing", "deep", "no text", "list", "absent", "type", "redirect"],
)
def test_an_answer_that_breaks_the_contract_is_told_apart_from_a_refusal(content, status, words):
    """The exception says what was expected where, and which request to ask about."""
    with pytest.raises(sc.UnexpectedAnswerError) as caught:
        call("POST", "/v1/layout", sc.Layout).read(answer(content, status))
    assert words in str(caught.value)
    assert (caught.value.status, caught.value.request_id) == (status, "r-7")


@pytest.mark.parametrize(("status", "media"), [(200, "text/html"), (200, "application/json"), (302, "image/png")])
def test_a_file_of_another_kind_is_told(status, media):
    """A page of somebody else is not saved as a drawing."""
    prepared = operations.fingerboard_drawing(
        media="image/png", scale=650, rule="equal", frets=12, strings={"count": 1}, margins=20
    )
    assert prepared.headers["Accept"] == "image/png"
    with pytest.raises(sc.UnexpectedAnswerError, match="expected image/png"):
        prepared.read(answer(b"x", status, **{"Content-Type": media}))


def test_an_answered_signature_can_be_asked_with():
    """What a study says of a tool goes straight into the next question."""
    signature = sc.Signature("gang saw", bias=(0.01, -0.02), within=0.03, between=0.02, boards=40)
    asked = body_of(operations.tooling_origin(board=[36.4, 70.9], commanded=[36.5, 71.0], signatures=[signature]))
    assert asked["signatures"] == [
        {"id": "gang saw", "bias": [0.01, -0.02], "within": 0.03, "between": 0.02, "boards": 40}
    ]


def test_a_part_read_off_a_label_can_be_asked_with():
    """What the label does not state is left out, and its rule is one to ask with."""
    rule = sc.Rule("equal", divisor=17.8, steps=12)
    part = sc.StatedPart("BD-17", "board", 650.0, layout_scale=None, rule=rule, tolerance=0.1)
    assert body_of(operations.assembly(parts=[part, {"id": "B", "kind": "bridge", "label": "650 mm"}]))["parts"] == [
        {"id": "BD-17", "kind": "board", "true_scale": 650.0, "rule": {"name": "equal", "steps": 12}, "tolerance": 0.1},
        {"id": "B", "kind": "bridge", "label": "650 mm"},
    ]
