"""Nominal scales over HTTP: a label goes in, what it can mean comes out."""

import json

import pytest

OLD = {"unit": "in", "label": "24.75 in"}
HUNDREDTH = 0.005
"""Half of the last digit of a number of inches with two decimals. [in]"""


def read_at_12(distance):
    """The question of a board whose 12th fret was measured. [in]"""
    return OLD | {"readings": {"instrument_uncertainty": "0.05 mm", "frets": [12], "from_nut": [distance]}}


@pytest.mark.source("common practice, no source: 24.75 in, 12th fret at 12.285 in or at 12.375 in")
@pytest.mark.parametrize(("distance", "rule", "scale"), [(12.285, "eighteenth", 24.57), (12.375, "equal", 24.75)])
def test_an_old_label_is_read_by_its_twelfth_fret(send, distance, rule, scale):
    """12.285 in tells the rule of 18, 12.375 in equal spacing, and the answer is in inches."""
    answer = send("POST", "/v1/nominal", json=read_at_12(distance)).json()
    assert (answer["verdict"], answer["rule"]["name"]) == ("established", rule)
    assert answer["true_scale"]["value"] == pytest.approx(scale, abs=HUNDREDTH)
    assert answer["meaning"]["octave_distance"] == pytest.approx(distance, abs=0.0005)
    assert answer["label"] == {"length": 24.75, "unit": "in", "grain": pytest.approx(0.01), "unit_given": True}


def test_a_label_alone_lists_its_meanings(send):
    """Each meaning comes with its true scale and the distance to look for."""
    answer = send("POST", "/v1/nominal", json=OLD).json()
    assert (answer["verdict"], answer["true_scale"], answer["measured"]) == ("undecided", None, None)
    exact = {one["rule"]["name"]: one for one in answer["meanings"] if one["name"] == "exact"}
    assert exact["equal"]["octave_distance"] == pytest.approx(12.375)
    assert exact["eighteenth"]["true_scale"] == pytest.approx(24.57, abs=HUNDREDTH)
    assert answer["next_reading"]["fret"] == 12
    assert answer["meanings"][2]["name"] == "other" or answer["meanings"][-1]["rule"] is not None


def test_a_label_without_a_unit_is_noted(send):
    """The unit that was inferred is said."""
    answer = send("POST", "/v1/nominal", json={"label": 650}).json()
    assert "label-unit-inferred" in [note["slug"] for note in answer["notes"]]


@pytest.mark.parametrize(
    ("question", "pointer"),
    [
        ({"label": "62.9"}, "/label"),
        ({"label": 120}, "/label"),
        ({}, "/label"),
        (OLD | {"setback": "far"}, "/setback"),
        (OLD | {"readings": {"from_nut": [12.3]}}, "/readings/instrument_uncertainty"),
        (OLD | {"readings": {"from_nut": [12.3], "instrument_uncertainty": 0}}, "/readings/instrument_uncertainty"),
        (OLD | {"reading": 12}, "/reading"),
    ],
)
def test_bad_labels_get_a_problem(send, question, pointer):
    """Every refusal is a problem document that points at the field."""
    answer = send("POST", "/v1/nominal", json=question)
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
    assert pointer in [error["pointer"] for error in answer.json()["errors"]]


def test_many_labels_at_once(send):
    """Lines are answered in order, one bad line spoils no other, and answers are those of single questions."""
    questions = [read_at_12(12.285) | {"id": "a"}, {"label": "62.9", "id": "b"}, OLD]
    body = "\n".join(json.dumps(question) for question in questions)
    answer = send("POST", "/v1/nominal/batch", content=body, headers={"Content-Type": "application/jsonl"})
    first, bad, last, end = (json.loads(line) for line in answer.text.splitlines())
    assert [first["kind"], bad["kind"], last["kind"]] == ["result", "problem", "result"]
    assert (first["id"], bad["id"], last["id"]) == ("a", "b", None)
    alone = send("POST", "/v1/nominal", json=OLD).json()
    assert {name: last[name] for name in alone} == alone
    assert (end["results"], end["problems"], end["complete"]) == (2, 1, True)
