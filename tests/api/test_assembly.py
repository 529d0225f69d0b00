"""Assembly over HTTP: parts go in, whether they belong together comes out."""

import copy
import json

import pytest

FRETS = [1, 5, 12, 17]
COSTLY = "common practice, no source: a board of 25.4 in and a bridge template made for 25.34 in cost a bridge"


def part(name, kind, scale, uncertainty="0.05 mm"):
    """A part that was measured at four frets. [in]"""
    from_nut = [scale * (1.0 - 2.0 ** (-fret / 12.0)) for fret in FRETS]
    readings = {"instrument_uncertainty": uncertainty, "frets": FRETS, "from_nut": from_nut}
    return {"id": name, "kind": kind, "readings": readings}


def costly(uncertainty="0.05 mm"):
    """The question of the costly case."""
    return {
        "unit": "in",
        "parts": [
            part("board", "board", 25.4, uncertainty),
            part("template", "saddle_template", 25.34, uncertainty),
        ],
    }


@pytest.mark.source(COSTLY)
def test_the_costly_case(send):
    """The mismatch of 0.06 in is found, explained and decided, in inches."""
    answer = send("POST", "/v1/assembly", json=costly()).json()
    (pair,) = answer["pairs"]
    assert (answer["decision"], answer["unit"]) == ("apart", "in")
    assert pair["mismatch"]["value"] == pytest.approx(-0.06, abs=0.0005)
    assert [one["fret"] for one in pair["cents"]] == [5, 12, 19]
    assert pair["tolerance"] == pytest.approx(0.5 / 25.4)
    assert answer["explanations"]
    assert "before-gluing" in [note["slug"] for note in answer["notes"]]


@pytest.mark.source(COSTLY)
def test_the_costly_case_by_tape(send):
    """A tape leaves it open, and the readings that would decide come in the unit of the question."""
    answer = send("POST", "/v1/assembly", json=costly("0.5 mm")).json()
    assert answer["decision"] == "undecided"
    deciding = answer["pairs"][0]["deciding"]
    assert deciding["readings"][0]["uncertainty"] == pytest.approx(0.05 / 25.4)
    assert deciding["expected_uncertainty"] <= deciding["needed_uncertainty"]


def test_millimetres_and_inches_say_the_same(send):
    """The same parts in the other unit differ by 25.4 in every length and in nothing else."""
    inches = costly()
    millimetres = copy.deepcopy(inches) | {"unit": "mm"}
    for one in millimetres["parts"]:
        one["readings"]["from_nut"] = [25.4 * distance for distance in one["readings"]["from_nut"]]
    a, b = (send("POST", "/v1/assembly", json=question).json() for question in (inches, millimetres))
    assert a["statement"] == b["statement"]
    assert 25.4 * a["pairs"][0]["mismatch"]["value"] == pytest.approx(b["pairs"][0]["mismatch"]["value"], rel=1e-6)
    assert a["pairs"][0]["cents"][1]["cents"]["value"] == pytest.approx(b["pairs"][0]["cents"][1]["cents"]["value"])


def test_a_scanned_fan_label_is_held_against_a_bridge(send):
    """The square fret that a label's code states tells a bridge of another slant, in the unit of the question."""
    board = {"id": "fan", "kind": "board", "true_scale": {"bass": 27, "treble": 25.5}, "rule": "equal"}
    label = {"unit": "in", "part": board | {"square_fret": 7}}
    code = send("POST", "/v1/label?format=json", json=label).json()["code"]
    scanned = send("POST", "/v1/label/read", json={"unit": "in", "text": code}).json()["part"]
    bridge = board | {"id": "bridge", "kind": "bridge", "square_fret": 0}
    answer = send("POST", "/v1/assembly", json={"unit": "in", "parts": [bridge, scanned]}).json()
    (slant,) = answer["slants"]
    assert (slant["first"], slant["first_square_fret"], slant["second_square_fret"]) == ("fan", 7, 0)
    assert slant["offset"]["value"] == pytest.approx(0.5 * 1.5 * (1.0 - 2.0 ** (-7 / 12)), abs=0.0001)
    assert (slant["decision"], answer["decision"]) == ("apart", "apart")


def changed(path, value):
    """The costly case with one thing changed."""
    question = copy.deepcopy(costly())
    at = question
    for name in path[:-1]:
        at = at[name]
    at[path[-1]] = value
    return question


@pytest.mark.parametrize(
    ("question", "slug", "pointer"),
    [
        (changed(("parts", 0, "true_scale"), 25.34), "contradictory-part", "/parts/0/true_scale"),
        (changed(("parts", 1), {"id": "t", "kind": "bridge"}), "undefined-part", "/parts/1"),
        (changed(("parts", 1, "layout_scale"), 25.34), "undefined-part", "/parts/1/rule"),
        (changed(("tolerance",), 0), "invalid-request", "/tolerance"),
        (changed(("tolerance",), "-0.5 mm"), "invalid-request", "/tolerance"),
        (changed(("parts",), costly()["parts"][:1]), "invalid-request", "/parts"),
        (changed(("parts", 1, "id"), "board"), "invalid-request", "/parts/1/id"),
        (changed(("parts", 0, "label"), "62.9"), "invalid-request", "/parts/0/label"),
        (changed(("parts", 0, "readings", "from_nut"), [1, 2]), "invalid-request", "/parts/0/readings/frets"),
        (changed(("parts", 0, "true_scale"), {"bass": 27}), "invalid-request", "/parts/0/true_scale/treble"),
    ],
)
def test_bad_parts_get_a_problem(send, question, slug, pointer):
    """Contradictions, gaps, tolerances of nothing and unequal lists are named in their places."""
    answer = send("POST", "/v1/assembly", json=question)
    assert answer.status_code == 422
    assert answer.json()["type"] == f"/problems/{slug}"
    assert pointer in [error["pointer"] for error in answer.json()["errors"]]


def test_a_contradiction_comes_with_both_numbers(send):
    """The problem document carries the stated and the measured scale."""
    answer = send("POST", "/v1/assembly", json=changed(("parts", 0, "true_scale"), 25.34)).json()
    assert answer["part"] == "board"
    assert answer["stated_mm"] == pytest.approx(25.34 * 25.4)
    assert answer["measured_mm"] == pytest.approx(25.4 * 25.4, abs=0.01)


def test_many_assemblies_at_once(send):
    """A contradiction in one line is a problem line, and the others are answered."""
    bad = changed(("parts", 0, "true_scale"), 25.34)
    body = "\n".join(json.dumps(question) for question in (costly(), bad, costly("0.5 mm") | {"id": 7}))
    answer = send("POST", "/v1/assembly/batch", content=body, headers={"Content-Type": "application/jsonl"})
    lines = [json.loads(line) for line in answer.text.splitlines()]
    assert [line["kind"] for line in lines] == ["result", "problem", "result", "end"]
    assert (lines[0]["decision"], lines[2]["decision"], lines[2]["id"]) == ("apart", "undecided", 7)
    assert lines[1]["type"] == "/problems/contradictory-part"
