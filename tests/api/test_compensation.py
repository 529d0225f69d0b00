"""Compensation over HTTP: the published strings go in, the published setbacks come out."""

import asyncio
import copy
import json
import math
from pathlib import Path

import httpx
import pytest

from scalewright.api.app import create_app
from scalewright.api.settings import Settings

ROOT = Path(__file__).parents[2]
STRINGS = json.loads((ROOT / "tests" / "reference" / "intonation.json").read_text(encoding="utf-8"))
EXAMPLES = sorted((ROOT / "openapi_examples" / "compensation").glob("*.request.json"))

ANDERSON = "Anderson and Beausoleil, J. Acoust. Soc. Am. 156(1), 683 (2024)"
DEFAULT = STRINGS["default_string"]
POUND_PER_INCH = 453.59237 / 0.0254
"""g/m, from the exact definitions of pound and inch."""
MM_OF_TABLE = 0.01
CENT_OF_RMS = 0.001
CENT_OF_TABLE = 0.005
NEWTON_OF_TABLE = 0.1


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
            return await client.post("/v1/compensation", json=question)

    return lambda question: asyncio.run(post(question))


def question(strings, finger=None):
    """Put strings on the paper's board."""
    geometry = STRINGS["geometry"]
    return {
        "unit": "mm",
        "scale": geometry["scale_mm"],
        "rule": "equal",
        "frets": geometry["frets"],
        "heights": {
            "nut": geometry["nut_height_above_fret_b_mm"],
            "saddle_above_nut": geometry["saddle_height_above_nut_c_mm"],
        },
        "finger_behind_fret": geometry["finger_distance_d_mm"] if finger is None else finger,
        "nut": "free",
        "strings": strings,
    }


@pytest.mark.source(ANDERSON, "string specifications, derived constants and RMS setbacks")
@pytest.mark.parametrize("rows", [pytest.param(rows, id=name) for name, rows in STRINGS["sets"].items()])
def test_the_published_sets(ask, rows):
    """Tension, setbacks and rms of all the strings of a set, asked as the contract shows."""
    answer = ask(
        question(
            [
                {
                    "pitch": row["pitch"],
                    "diameter": 2.0 * row["radius_mm"],
                    "unit_mass": row["unit_mass_lb_per_in"] * POUND_PER_INCH,
                    "R": row["R"],
                }
                for row in rows
            ]
        )
    )

    assert answer.status_code == 200
    for row, string in zip(rows, answer.json()["strings"], strict=True):
        assert string["tension_n"] == pytest.approx(row["tension_N"], abs=NEWTON_OF_TABLE)
        assert string["saddle_setback"] == pytest.approx(row["saddle_setback_mm"], abs=MM_OF_TABLE)
        assert string["nut_setback"] == pytest.approx(row["nut_setback_mm"], abs=MM_OF_TABLE)
        assert string["rms_cents"] == pytest.approx(row["rms_cents_13"] * math.sqrt(13 / 12), abs=CENT_OF_RMS)


@pytest.mark.source(ANDERSON, "default string, errors at frets 1 to 12, recomputed from the model")
@pytest.mark.parametrize("finger", [0, 10])
def test_the_default_string(ask, finger):
    """The paper's default string by R or by kappa, pressed on the fret and behind it."""
    described = {"pitch": "E4", "diameter": 2.0 * DEFAULT["radius_mm"], "unit_mass": 0.4}
    strings = [{**described, "R": DEFAULT["R"]}, {**described, "kappa": DEFAULT["kappa"]}]

    for string in ask(question(strings, finger)).json()["strings"]:
        cents = [row["uncompensated"] for row in string["cents"]]
        assert cents == pytest.approx(DEFAULT[f"uncompensated_cents_frets_1_to_12_d{finger}"], abs=CENT_OF_TABLE)
        assert string["saddle_setback"] == pytest.approx(DEFAULT[f"optimum_d{finger}"]["saddle_setback_mm"], abs=0.005)
        assert string["nut_setback"] == pytest.approx(DEFAULT[f"optimum_d{finger}"]["nut_setback_mm"], abs=0.005)


def near(value):
    """Numbers of an example to twelve digits, as the last ones depend on the machine; all else as it is."""
    if isinstance(value, dict):
        return {name: near(item) for name, item in value.items()}
    if isinstance(value, list):
        return [near(item) for item in value]
    return pytest.approx(value, rel=1e-9, abs=1e-9) if isinstance(value, float) else value


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.name.split(".")[0])
def test_examples_are_answered_as_they_say(ask, path):
    """Every committed question has its committed answer."""
    answer = ask(json.loads(path.read_text(encoding="utf-8")))
    expected = json.loads(path.with_name(path.name.replace("request", "response")).read_text(encoding="utf-8"))

    assert answer.status_code == 200
    assert answer.json() == near(expected)


TREBLE = {"pitch": "E4", "diameter": 0.712, "unit_mass": 0.374, "R": 23.6}


@pytest.mark.parametrize(
    ("changes", "slug", "pointer"),
    [
        ({"strings": [TREBLE, {**TREBLE, "unit_mass": 0}]}, "invalid-request", "/strings/1/unit_mass"),
        ({"strings": [TREBLE, {**TREBLE, "unit_mass": -1}]}, "invalid-request", "/strings/1/unit_mass"),
        ({"strings": [{**TREBLE, "core_diameter": 0.8}]}, "impossible-string", "/strings/0/core_diameter"),
        ({"strings": [TREBLE, {**TREBLE, "pitch": "H#9"}]}, "unknown-pitch", "/strings/1/pitch"),
        ({"strings": [{**TREBLE, "pitch": 1}]}, "invalid-request", "/strings/0/pitch"),
        ({"strings": [{**TREBLE, "unit_mass": 400}]}, "impossible-string", "/strings/0/unit_mass"),
        ({"strings": [{"pitch": "E4", "diameter": 0.7}]}, "string-description", "/strings/0/unit_mass"),
        ({"strings": [{**TREBLE, "kappa": 48.2}]}, "string-description", "/strings/0/kappa"),
        ({"strings": [TREBLE] * 25}, "invalid-request", "/strings"),
        ({"strings": []}, "invalid-request", "/strings"),
        ({"heights": {"nut": 1.0}}, "impossible-setup", "/heights"),
        ({"heights": {"nut": 1.0, "saddle_above_nut": -3.0}}, "impossible-setup", "/heights/saddle_above_nut"),
        (
            {"heights": {"nut": 1.0, "action": {"fret": 12, "height": 0.0}}},
            "impossible-setup",
            "/heights/action/height",
        ),
        ({"rule": {"name": "divisor", "divisor": 2.5}}, "impossible-setup", "/frets"),
        ({"finger_behind_fret": 50}, "impossible-setup", "/finger_behind_fret"),
        ({"optimise_for": {"frets": [13]}}, "impossible-setup", "/optimise_for/frets"),
        ({"optimise_for": {"frets": [12]}}, "impossible-setup", "/optimise_for/frets"),
        ({"frets": 0}, "invalid-request", "/frets"),
        ({"frets": 61}, "invalid-request", "/frets"),
        ({"scale": 1, "frets": 60}, "no-saddle-position", "/strings/0"),
    ],
)
def test_bad_questions_get_a_clear_problem(ask, changes, slug, pointer):
    """What cannot be computed is a problem document that names the place and says what to change."""
    answer = ask({**question([TREBLE]), **changes})
    problem = answer.json()

    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
    assert problem["type"] == f"/problems/{slug}"
    assert problem["errors"][0]["pointer"] == pointer
    assert len(problem["errors"][0]["detail"]) > 20
    assert "H#9" not in answer.text


def test_the_example_of_a_problem_works(ask):
    """The example that comes with a problem can be put in its place."""
    asked = question([copy.deepcopy(TREBLE)])
    del asked["heights"]
    asked["heights"] = ask(asked).json()["errors"][0]["example"]
    asked["strings"][0]["pitch"] = "H#9"
    asked["strings"][0]["pitch"] = ask(asked).json()["errors"][0]["example"]

    assert ask(asked).status_code == 200
