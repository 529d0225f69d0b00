"""Diagnosis on the wire: what a complaint may say, and its moves in the unit asked for."""

import json

import pytest
from pydantic import ValidationError

from scalewright.lutherie.diagnosis import CentsReading, Complaint, diagnose
from scalewright.lutherie.spacing import EQUAL
from scalewright.wire.diagnosis import DiagnosisIn, DiagnosisOut

READINGS = [{"string": 1, "fret": 3, "cents": 3}, {"string": 1, "fret": 12, "cents": 9.5, "uncertainty": 0.5}]
COMPLAINT = {"scale": "25.5 in", "rule": "equal", "readings": READINGS}


def read(**changes):
    """Read a complaint with changes."""
    return DiagnosisIn.read(json.dumps({**COMPLAINT, **changes}).encode())


def test_a_complaint():
    """Each member reaches the craft under its own meaning, and what is left out has its stated default."""
    assert read().to_domain() == Complaint(
        EQUAL, 25.5 * 127 / 5, [CentsReading(1, 3, 3.0), CentsReading(1, 12, 9.5, 0.5)]
    )


def test_what_is_no_contradiction_is_told_where_readings_are_given():
    """Whoever reads a note twice learns how far the two may differ."""
    assert "Half a cent between readings of one\nfretted note is no contradiction" in str(
        DiagnosisIn.model_fields["readings"].description
    )


def test_moves_are_lengths():
    """Moves are written in the unit asked for, cents stay cents."""
    answers = []
    for unit in ("mm", "in"):
        question = read(unit=unit)
        answer = DiagnosisOut.model_validate(diagnose(question.to_domain()))
        answers.append(json.loads(answer.model_dump_json(context=dict(question.answer_context))))
    metric, imperial = answers

    for name in ("saddle_move", "nut_move", "saddle_alone", "nut_alone"):
        for part in ("value", "standard_uncertainty", "lower", "upper"):
            assert imperial["strings"][0][name][part] * 25.4 == pytest.approx(metric["strings"][0][name][part])
    assert imperial["strings"][0]["rms_cents"] == metric["strings"][0]["rms_cents"]
    assert imperial["true_scale"] * 25.4 == pytest.approx(metric["true_scale"])
    assert imperial["strings"][0]["tuning_offset"] == metric["strings"][0]["tuning_offset"]


@pytest.mark.parametrize(
    ("changes", "place"),
    [
        ({"readings": []}, ("readings",)),
        ({"readings": [{"string": 1, "cents": 3}]}, ("readings", 0, "fret")),
        ({"readings": [{"fret": 1, "cents": 3}]}, ("readings", 0, "string")),
        ({"readings": [{"string": 0, "fret": 1, "cents": 3}]}, ("readings", 0, "string")),
        ({"readings": [{"string": 1, "fret": -1, "cents": 3}]}, ("readings", 0, "fret")),
        ({"readings": [{"string": 1, "fret": 1.5, "cents": 3}]}, ("readings", 0, "fret")),
        ({"readings": [{"string": 1, "fret": 1, "cents": "3"}]}, ("readings", 0, "cents")),
        ({"readings": [{"string": 1, "fret": 1, "cents": 3, "uncertainty": 0}]}, ("readings", 0, "uncertainty")),
        ({"tuner_uncertainty": 0}, ("tuner_uncertainty",)),
        ({"relative_to": "piano"}, ("relative_to",)),
        ({"coverage": 1}, ("coverage",)),
        ({"strings": []}, ("strings",)),
    ],
)
def test_what_a_complaint_may_not_say(changes, place):
    """Cents without a fret, frets that are none, a tuner without uncertainty: each is refused at its place."""
    with pytest.raises(ValidationError) as refused:
        read(**changes)

    assert refused.value.errors()[0]["loc"][: len(place)] == place
