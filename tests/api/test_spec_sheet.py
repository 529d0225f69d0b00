"""Spec sheets over HTTP: as data, as a page, and as part of one."""

import json
from pathlib import Path

import pytest

QUESTION = json.loads(
    (Path(__file__).parents[2] / "openapi_examples/spec-sheet/rule-of-18-board.request.json").read_text("utf-8")
)


def test_the_figures_agree_with_other_operations(send):
    """True scale, frets and setbacks are those of identification's rule, the layout and the compensation."""
    sheet = send("POST", "/v1/spec-sheet", json=QUESTION).json()
    layout = send(
        "POST", "/v1/layout", json={"scale": sheet["layout_scale"], "rule": sheet["rule"], "frets": 22}
    ).json()
    strung = QUESTION["stringing"]
    question = {"scale": sheet["layout_scale"], "rule": sheet["rule"], "frets": 22, "strings": strung["strings"]}
    compensation = send("POST", "/v1/compensation", json=question | {"heights": strung["heights"]}).json()

    assert [row["from_nut"] for row in sheet["frets"]] == [row["from_nut"] for row in layout["frets"]]
    assert [row["saddle_setback"] for row in sheet["setbacks"]] == pytest.approx(
        [row["saddle_setback"] for row in compensation["strings"]], abs=1e-6
    )
    assert sheet["true_scale"]["value"] == pytest.approx(layout["true_scale"], abs=0.01)


def test_lengths_are_in_the_unit_asked_for(send):
    """Inches are millimetres by 25.4; the columns that name their unit stay."""
    part = {"id": "b", "kind": "board", "layout_scale": "24.75 in", "rule": "eighteenth", "frets": 3}
    metric, inch = (send("POST", "/v1/spec-sheet", json={"part": part, "unit": unit}).json() for unit in ("mm", "in"))

    assert inch["layout_scale"] == pytest.approx(24.75)
    for a, b in zip(metric["frets"], inch["frets"], strict=True):
        assert a["from_nut"] == pytest.approx(25.4 * b["from_nut"])
        assert (a["millimetres"], a["inches"], a["fraction"]) == (b["millimetres"], b["inches"], b["fraction"])


@pytest.mark.parametrize(("form", "start"), [("page", "<!DOCTYPE html>"), ("fragment", "<style>")])
def test_a_sheet_comes_as_a_page_or_a_fragment(send, form, start):
    """HTML is chosen by Accept; its policy lets nothing be fetched and no script run."""
    answer = send("POST", "/v1/spec-sheet", json=QUESTION | {"html": form}, headers={"Accept": "text/html"})

    assert answer.headers["content-type"] == "text/html; charset=utf-8"
    assert answer.text.startswith(start)
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    assert answer.headers["content-disposition"] == 'inline; filename="spec-sheet-BD-17.html"'


@pytest.mark.parametrize(
    ("asked", "language", "word"), [("de", "de", "Achtzehntelregel"), ("fr-CA", "fr", "dix-huitième")]
)
def test_sentences_are_in_the_language_asked_for(send, asked, language, word):
    """The statement has the language's trade terms and its decimal comma; the figures stay numbers."""
    answer = send("POST", "/v1/spec-sheet", json=QUESTION, headers={"Accept-Language": asked})

    assert answer.headers["content-language"] == answer.json()["language"] == language
    assert word in answer.json()["sentences"]["statement"]
    assert "628,66 mm" in answer.json()["sentences"]["statement"]


@pytest.mark.parametrize(
    ("change", "slug", "pointer"),
    [
        ({"part": {"id": "b", "kind": "board", "label": "25.5 in"}}, "undefined-part", "/part/label"),
        ({"outline": {"strings": 6, "widths": {"nut": 10, "last_fret": 10}, "margins": 6}}, "impossible-board", None),
        ({"title": "x" * 121}, "invalid-request", "/title"),
        ({"html": "pdf"}, "invalid-request", "/html"),
    ],
)
def test_what_makes_no_sheet_is_a_problem(send, change, slug, pointer):
    """A problem says what is missing, and where."""
    answer = send("POST", "/v1/spec-sheet", json=QUESTION | change)

    assert answer.status_code == 422
    assert answer.json()["type"] == f"/problems/{slug}"
    assert pointer is None or answer.json()["errors"][0]["pointer"] == pointer


def test_a_sheet_comes_as_a_pdf(send):
    """PDF is the same each time, and is saved under the stock number."""
    first, second = (send("POST", "/v1/spec-sheet?format=pdf", json=QUESTION | {"paper": "letter"}) for _ in range(2))

    assert first.content.startswith(b"%PDF-1.")
    assert first.content == second.content
    assert first.headers["content-disposition"] == 'attachment; filename="spec-sheet-BD-17.pdf"'


FAN = {"id": "F", "kind": "board", "true_scale": {"bass": 686, "treble": 648}, "rule": "equal", "frets": 24}
OUTLINE = {"strings": 7, "widths": {"nut": 50, "last_fret": 66}, "margins": 3}
STRING = {"pitch": "E4", "diameter": 0.25, "unit_mass": 0.4, "R": 23}


def test_a_fan_board_has_both_sides(send):
    """By equal spacing fret 12 is at half of each true scale; sentences have both, bass first."""
    question = {"part": FAN | {"square_fret": 7}, "outline": OUTLINE}
    sheet = send("POST", "/v1/spec-sheet", json=question).json()

    assert sheet["frets"][11]["from_nut"] == pytest.approx(343.0)
    assert sheet["treble"]["frets"][11]["from_nut"] == pytest.approx(324.0)
    assert sheet["treble"]["true_scale"]["value"] == pytest.approx(648.0)
    assert "686.00 / 648.00 mm" in sheet["sentences"]["statement"]
    assert "square at fret 7" in sheet["sentences"]["rule"]
    for form in ("html", "pdf"):
        assert send("POST", f"/v1/spec-sheet?format={form}", json=question).status_code == 200


@pytest.mark.parametrize(
    ("members", "pointer"),
    [
        ({"stringing": {"strings": [STRING | {"pitch": "H9"}], "heights": {"nut": 1, "saddle_above_nut": 3}}},
         "/stringing/strings/0/pitch"),
        ({"stringing": {"strings": [STRING], "heights": {"nut": 1, "saddle_above_nut": -5}}},
         "/stringing/heights/saddle_above_nut"),
        ({"outline": OUTLINE | {"margins": 30}}, "/outline/margins"),
        ({"outline": OUTLINE, "part": FAN}, "/part/square_fret"),
        ({"part": FAN, "stringing": {"strings": [STRING], "heights": {"nut": 1, "saddle_above_nut": 3}}},
         "/stringing"),
    ],
)  # fmt: skip
def test_a_refusal_points_into_the_question(send, members, pointer):
    """What other operations refuse is named where it stands in the question of a sheet."""
    part = {"id": "b", "kind": "board", "layout_scale": 650, "rule": "equal"}
    answer = send("POST", "/v1/spec-sheet", json={"part": part} | members)

    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == pointer


def test_a_label_is_shown_as_it_was_written(send):
    """The sentence has the label's own letters, not the number that they make."""
    part = {"id": "b", "kind": "board", "layout_scale": "24.75 in", "rule": "eighteenth", "label": "24 3/4 in"}
    sheet = send("POST", "/v1/spec-sheet", json={"part": part}).json()

    assert sheet["label"]["text"] == "24 3/4 in"
    assert sheet["sentences"]["label"].startswith("The label says 24 3/4 in.")


def test_listed_pitches_are_all_the_frets_there_are(send):
    """Where the number of frets is left out; one that is beyond them is refused at the list."""
    rule = {"name": "listed", "cents": [100.0 * fret for fret in range(1, 15)]}
    part = {"id": "b", "kind": "board", "layout_scale": 650, "rule": rule}
    sheet = send("POST", "/v1/spec-sheet", json={"part": part}).json()
    refused = send("POST", "/v1/spec-sheet", json={"part": part | {"frets": 15}}).json()

    assert [row["fret"] for row in sheet["frets"]] == list(range(1, 15))
    assert refused["errors"][0]["pointer"] == "/part/rule/cents"
