"""Intonation, diagnosis and stretch tests over HTTP: asked as a stranger would."""

import json
from pathlib import Path

import pytest

TABLES = json.loads((Path(__file__).parents[1] / "reference" / "intonation.json").read_text(encoding="utf-8"))
ANDERSON = "Anderson and Beausoleil, J. Acoust. Soc. Am. 156(1), 683 (2024)"
DEFAULT = TABLES["default_string"]

TREBLE = {"pitch": "E4", "diameter": 0.712, "unit_mass": 0.374, "R": 23.6}
BOARD = {
    "scale": 650,
    "rule": "equal",
    "frets": 12,
    "heights": {"nut": 1.0, "saddle_above_nut": 4.0},
    "strings": [TREBLE],
}
COMPLAINT = {"scale": 650, "rule": "equal", "readings": [{"string": 1, "fret": 12, "cents": 8}]}
STRETCH = {"length": 613.518, "stretch": [0, 1, 2, 3], "frequencies": [326, 337.5, 352, 363]}

CENT_OF_TABLE = 0.005


@pytest.mark.source(ANDERSON, "default string, errors at frets 1 to 12, recomputed from the model")
def test_the_default_string(send):
    """The paper's default string at its twelve frets, and the parts that add up to each error."""
    string = {"pitch": "E4", "diameter": 2.0 * DEFAULT["radius_mm"], "unit_mass": 0.4, "R": DEFAULT["R"]}
    answer = send("POST", "/v1/intonation", json={**BOARD, "strings": [string]})
    rows = answer.json()["strings"][0]["cents"]

    assert answer.status_code == 200
    assert [row["cents"] for row in rows] == pytest.approx(
        DEFAULT["uncompensated_cents_frets_1_to_12_d0"], abs=CENT_OF_TABLE
    )
    for row in rows:
        assert row["spacing"] + row["stretch"] + row["stiffness"] + row["geometry"] == row["cents"]


@pytest.mark.source(ANDERSON, "the setbacks of compensation leave what intonation hears")
def test_intonation_hears_what_compensation_leaves(send):
    """The setbacks that compensation answers with leave, asked of intonation, the very cents that it stated."""
    compensated = send("POST", "/v1/compensation", json={**BOARD, "nut": "free"}).json()["strings"][0]
    placed = {**TREBLE, "saddle_setback": compensated["saddle_setback"], "nut_setback": compensated["nut_setback"]}
    played = send("POST", "/v1/intonation", json={**BOARD, "strings": [placed]}).json()["strings"][0]

    assert [row["cents"] for row in played["cents"]] == pytest.approx(
        [row["compensated"] for row in compensated["cents"]], abs=1e-9
    )


def test_diagnosis_mends_what_intonation_hears(send):
    """Cents of a board with its saddle 1.5 mm too far forward lead to a move of 1.5 mm back."""
    right = send("POST", "/v1/compensation", json={**BOARD, "nut": "free"}).json()["strings"][0]
    placed = {**TREBLE, "saddle_setback": right["saddle_setback"] - 1.5, "nut_setback": right["nut_setback"]}
    played = send("POST", "/v1/intonation", json={**BOARD, "strings": [placed]}).json()["strings"][0]["cents"]
    readings = [{"string": 1, "fret": row["fret"], "cents": row["cents"]} for row in played]
    question = {**COMPLAINT, "frets": 12, "tuner_uncertainty": 0.1, "readings": readings}
    answer = send("POST", "/v1/diagnosis", json=question)
    (string,) = answer.json()["strings"]

    assert answer.status_code == 200
    assert string["saddle_move"]["value"] == pytest.approx(1.5, abs=0.02)
    assert string["nut_move"]["value"] == pytest.approx(0.0, abs=0.03)


@pytest.mark.source(ANDERSON, "raw stretch tests, R of the nylon-light set by ordinary least squares")
@pytest.mark.parametrize("row", TABLES["sets"]["nylon-light"], ids=lambda row: row["pitch"])
def test_the_published_stretch_tests(send, row):
    """R of a published set from its raw readings."""
    question = {
        "length": 613.518,
        "stretch": row["stretch_test"]["stretch_mm"],
        "frequencies": row["stretch_test"]["frequency_Hz"],
        "pitch": row["pitch"],
    }
    answer = send("POST", "/v1/stretch-test", json=question).json()

    assert answer["R"]["value"] == pytest.approx(row["R"], abs=0.05 + 1e-9)
    assert answer["R"]["standard_uncertainty"] == pytest.approx(row["R_standard_uncertainty"], abs=0.05 + 1e-9)


def with_string(**changes):
    """Put one string on the board."""
    return {**BOARD, "strings": [{**TREBLE, **changes}]}


def heard(**reading):
    """Hear one note."""
    return {**COMPLAINT, "readings": [{"string": 1, "fret": 3, "cents": 3, **reading}]}


LOW = {"nut": 0.1, "saddle_above_nut": -2}
THIN = {"pitch": "E9", "core_material": "steel", "core_diameter": 0.25}


@pytest.mark.parametrize(
    ("path", "question", "slug", "pointer"),
    [
        ("intonation", with_string(saddle_setback=-330), "impossible-setup", "/strings/0/saddle_setback"),
        ("intonation", with_string(pitch="H#9"), "unknown-pitch", "/strings/0/pitch"),
        ("intonation", {**BOARD, "strings": [THIN]}, "impossible-string", "/strings/0/core_diameter"),
        ("intonation", {**BOARD, "strings": [{"diameter": 0.7}]}, "invalid-request", "/strings/0/pitch"),
        ("intonation", {**BOARD, "tuning": "mandolin"}, "invalid-request", "/tuning"),
        ("intonation", {**BOARD, "target": {"name": "listed", "cents": [100]}}, "wrong-pitch-count", "/target/cents"),
        ("intonation", {**BOARD, "heights": LOW}, "impossible-setup", "/heights/saddle_above_nut"),
        ("compensation", with_string(core_diameter=0.8), "impossible-string", "/strings/0/core_diameter"),
        ("compensation", {**BOARD, "slot": {"thickness": 3}}, "impossible-setup", "/slot/spread"),
        ("diagnosis", {**COMPLAINT, "readings": [{"string": 1, "cents": 3}]}, "invalid-request", "/readings/0/fret"),
        ("diagnosis", heard(fret=0), "too-few-readings", "/readings"),
        ("diagnosis", heard(fret=30), "impossible-reading", "/readings/0/fret"),
        ("diagnosis", heard(cents=500), "impossible-reading", "/readings/0/cents"),
        ("stretch-test", {**STRETCH, "stretch": [0, 1]}, "impossible-reading", "/frequencies"),
        ("stretch-test", {**STRETCH, "frequencies": [363, 352, 337.5, 326]}, "impossible-reading", "/frequencies"),
        ("stretch-test", {**STRETCH, "stretch": [0, 1], "frequencies": [326, 330]}, "too-few-readings", "/stretch"),
        ("stretch-test", {**STRETCH, "pitch": "H#9"}, "unknown-pitch", "/pitch"),
    ],
)
def test_bad_questions_get_a_clear_problem(send, path, question, slug, pointer):
    """What cannot be computed is a problem document that names the place and says what would work."""
    answer = send("POST", f"/v1/{path}", json=question)
    problem = answer.json()

    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
    assert problem["type"] == f"/problems/{slug}"
    assert problem["errors"][0]["pointer"] == pointer
    assert len(problem["errors"][0]["detail"]) > 20
    assert "H#9" not in answer.text
