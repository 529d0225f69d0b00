"""Identification over HTTP: readings go in, rule and true scale come out."""

import asyncio
import json
from pathlib import Path
from typing import Any

import httpx
import pytest

from scalewright.api.app import create_app
from scalewright.api.settings import Settings

SPACING = json.loads((Path(__file__).parents[1] / "reference" / "spacing.json").read_text(encoding="utf-8"))
LENGTHS = {"layout_scale", "true_scale", "nut_offset"}
FRETS = [1, 2, 3, 5, 7, 9, 12, 15, 17, 19, 22]
OLD_BOARD: dict[str, Any] = {
    "unit": "in",
    "instrument_uncertainty": "0.05 mm",
    "tooling_scatter": 0,
    "frets": FRETS,
}


@pytest.fixture(scope="module")
def app():
    """One application for all these tests; it keeps no state."""
    return create_app(Settings())


@pytest.fixture
def ask(app):
    """Post a question in process."""

    async def post(question):
        transport = httpx.ASGITransport(app)
        async with httpx.AsyncClient(transport=transport, base_url="http://here") as client:
            return await client.post("/v1/identification", json=question)

    return lambda question: asyncio.run(post(question))


def old_board():
    """The rule of 18 on 24.75 in, in inches."""
    return OLD_BOARD | {"from_nut": [24.75 * (1.0 - (17.0 / 18.0) ** fret) for fret in FRETS]}


@pytest.mark.source("common practice, no source: 24.75 in under the rule of 18 gives 24.57 in doubled")
def test_the_old_rule_in_inches(ask):
    """A board in inches is answered in inches: rule, both scales and the statement."""
    answer = ask(old_board()).json()
    assert (answer["verdict"], answer["unit"]) == ("established", "in")
    assert answer["rule"] == {"name": "eighteenth", "divisor": 18.0}
    assert answer["layout_scale"]["value"] == pytest.approx(24.75, rel=1e-9)
    assert answer["true_scale"]["value"] == pytest.approx(24.57, abs=0.0005)
    assert answer["true_scale"]["lower"] < 24.57 < answer["true_scale"]["upper"]
    assert answer["divisor"]["value"] == pytest.approx(18.0, rel=1e-6)
    assert "24.570 in" in answer["statement"]


def test_millimetres_and_inches_say_the_same(ask):
    """The same board in the other unit differs by 25.4 in every length and in nothing else."""
    inches = old_board()
    millimetres = inches | {"unit": "mm", "from_nut": [25.4 * x for x in inches["from_nut"]]}
    a, b = ask(inches).json(), ask(millimetres).json()
    assert a["statement"] == b["statement"]
    for one, other in zip([a, *a["candidates"]], [b, *b["candidates"]], strict=True):
        assert one["probability"] == pytest.approx(other["probability"], rel=1e-6)
        for name in LENGTHS:
            for part, value in one[name].items():
                assert 25.4 * value == pytest.approx(other[name][part], rel=1e-9, abs=1e-7), (name, part)
    assert a["divisor"]["value"] == pytest.approx(b["divisor"]["value"], rel=1e-9)


@pytest.mark.source("spacing.json: S. Ganassi 1543, a measured lute, 2008")
def test_boards_without_a_rule(ask):
    """The verdict "none" has null for rule, layout scale and nut, and a true scale only if the octave was read."""
    for name, uncertainty in (("ganassi-1543", 0.5), ("lute-550", 0.144)):
        case = SPACING["cases"][name]
        question = {
            "instrument_uncertainty": uncertainty,
            "tooling_scatter": 0,
            "frets": case["fret"],
            "from_nut": case["from_nut"],
        }
        answer = ask(question).json()
        assert answer["verdict"] == "none"
        assert (answer["rule"], answer["layout_scale"], answer["nut_offset"], answer["next_reading"]) == (None,) * 4
        assert (answer["true_scale"] is None) == (12 not in case["fret"])
        assert answer["divisor"] is not None


def test_an_undecided_board_gets_advice(ask):
    """Few readings leave rule and layout scale null and say what to measure next."""
    answer = ask({"instrument_uncertainty": 0.1, "frets": [1, 3, 5], "from_nut": [36.0, 101.8, 160.5]}).json()
    assert answer["verdict"] == "undecided"
    assert (answer["rule"], answer["layout_scale"]) == (None, None)
    assert answer["true_scale"]["lower"] < answer["true_scale"]["value"] < answer["true_scale"]["upper"]
    assert 1 <= answer["next_reading"]["fret"] <= 60
    assert 0.0 <= answer["next_reading"]["expected_probability"] <= 1.0


def test_a_misread_fret_is_named_in_the_unit_of_the_question(ask):
    """One sixteenth of an inch too much at fret 7 is 0.0625 in, and the words say so."""
    question = old_board()
    question["from_nut"][4] += 0.0625
    answer = ask(question).json()
    (suspect,) = answer["suspect_readings"]
    assert (suspect["fret"], suspect["reading"]) == (7, 4)
    assert suspect["deviation"] == pytest.approx(0.0625, abs=1e-6)
    assert "1/16 in" in suspect["explanation"]
    assert answer["verdict"] == "established"


@pytest.mark.parametrize(
    ("change", "pointer"),
    [
        ({"from_nut": []}, "/from_nut"),
        ({"frets": [1, 2]}, "/frets"),
        ({"frets": [0, *FRETS[1:]]}, "/frets/0"),
        ({"from_nut": [-1.0] * 11}, "/from_nut/0"),
        ({"from_nut": [1e308] * 11}, "/from_nut/0"),
        ({"from_nut": ["12 3/0 in"] * 11}, "/from_nut/0"),
        ({"instrument_uncertainty": 0}, "/instrument_uncertainty"),
        ({"nut_offset": {}}, "/nut_offset"),
        ({"readings": [{"from": 5, "to": 5, "distance": 3}], "from_nut": None, "frets": None}, "/readings/0"),
        ({"scale": 650}, "/scale"),
    ],
)
def test_bad_questions_get_a_problem_that_points_at_the_field(ask, change, pointer):
    """Every refusal is a problem document with a pointer, a sentence, and nothing of the input."""
    question = {name: value for name, value in (old_board() | change).items() if value is not None}
    answer = ask(question)
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
    assert pointer in [error["pointer"] for error in answer.json()["errors"]]
    assert "1e+308" not in answer.text
    assert "3/0" not in answer.text
