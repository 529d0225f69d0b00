"""Conformity over HTTP: a part and its tolerance go in, a ruling comes out."""

import pytest

FRETS = list(range(1, 21))
BOARD = {
    "id": "board",
    "kind": "board",
    "label": "24.75 in",
    "readings": {
        "instrument_uncertainty": 0.05,
        "frets": FRETS,
        "from_nut": [24.75 * 25.4 * (1.0 - (17.0 / 18.0) ** fret) for fret in FRETS],
    },
}


@pytest.mark.source("common practice, no source: 24.75 in under the rule of 18 is 24.57 in of true scale")
@pytest.mark.parametrize(
    ("means", "decision", "agrees"), [("true_scale", "reject", "no"), ("layout_scale", "accept", "yes")]
)
def test_an_old_board_against_its_label(send, means, decision, agrees):
    """A rule-of-18 board is what its label says only where the label names the layout scale."""
    answer = send("POST", "/v1/conformity", json={"part": BOARD, "label_means": means}).json()
    assert (answer["decision"], answer["rule_agrees"]) == (decision, agrees)
    assert answer["tolerance"] == 0.5
    assert answer["true_scale"]["value"] == pytest.approx(24.57 * 25.4, abs=0.1)


def test_risks_over_a_process(send):
    """With a process there are global risks; the acceptance interval lies a guard band inside the tolerance."""
    question = {"part": BOARD, "label_means": "layout_scale", "process": {"standard_deviation": "0.3 mm"}}
    answer = send("POST", "/v1/conformity", json=question).json()
    assert 0.0 < answer["global_risks"]["consumer"] < answer["global_risks"]["producer"] < 0.5
    assert answer["acceptance"]["upper"] == pytest.approx(0.5 - answer["guard_band"])


@pytest.mark.parametrize(
    ("change", "pointer"),
    [
        ({"tolerance": 0}, "/tolerance"),
        ({"tolerance": -1}, "/tolerance"),
        ({"decision_rule": "kind"}, "/decision_rule"),
        ({"process": {"standard_deviation": 0}}, "/process/standard_deviation"),
        ({"part": {"id": "b", "kind": "board", "true_scale": 650}}, "/part/readings"),
        ({"part": {name: BOARD[name] for name in ("id", "kind", "readings")}}, "/part/label"),
    ],
)
def test_bad_questions_get_a_problem(send, change, pointer):
    """Each refusal points at what is wrong or missing."""
    answer = send("POST", "/v1/conformity", json={"part": BOARD} | change)
    assert answer.status_code == 422
    assert pointer in [error["pointer"] for error in answer.json()["errors"]]
