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
