"""Many questions at once: as one by one, with refusals in their places."""

import json

import pytest

from scalewright.lutherie.assembly import assemble
from scalewright.lutherie.errors import (
    ContradictoryPartError,
    ImpossibleReadingError,
    LabelSizeError,
    UndefinedPartError,
)
from scalewright.wire.assembly import AssemblyIn, answer_assemblies
from scalewright.wire.label import answer_labels
from scalewright.wire.nominal import answer_nominals

LABEL = {"label": "24.75 in", "unit": "in"}
PARTS = [{"id": "b", "kind": "board", "true_scale": 25.4}, {"id": "t", "kind": "bridge", "true_scale": 25.34}]


def test_answers_come_in_order_and_in_the_unit_of_each_question():
    """Each label is answered in its own unit; a text that is no label is refused in its place."""
    good, bad, other = answer_nominals([LABEL, {"label": "x"}, LABEL | {"unit": "mm"}])
    assert isinstance(good, bytes)
    assert isinstance(other, bytes)
    assert json.loads(good)["label"]["length"] == pytest.approx(24.75)
    assert json.loads(other)["label"]["length"] == pytest.approx(628.65)
    assert not isinstance(bad, bytes)


def test_refusals_of_the_craft_stand_in_their_places():
    """Readings without uncertainty are refused before the craft is asked, contradictions by it."""
    question = {"unit": "in", "parts": PARTS}
    unsure = {"from_nut": [12.3], "instrument_uncertainty": 0}
    twice = {"unit": "in", "parts": [PARTS[0] | {"layout_scale": 24, "rule": "equal"}, PARTS[1]]}
    answers = answer_assemblies(
        [question, twice, {"parts": [PARTS[1], {"id": "b", "kind": "board", "readings": unsure}]}]
    )
    alone = assemble(AssemblyIn.read(json.dumps(question).encode()).to_domain())
    assert isinstance(answers[0], bytes)
    assert json.loads(answers[0])["statement"] == alone.statement
    assert isinstance(answers[1], ContradictoryPartError)
    assert isinstance(answers[2], ImpossibleReadingError)


def test_a_label_that_is_too_small_spoils_no_other():
    """What is refused only when the answer is written stands in its place as well."""
    good, small, undefined, other = answer_labels(
        [
            {"part": PARTS[0], "unit": "in"},
            {"part": PARTS[0] | {"id": "W" * 60}, "unit": "in", "size": "40x20mm"},
            {"part": {"id": "x", "kind": "board"}},
            {"part": PARTS[1]},
        ]
    )
    assert isinstance(small, LabelSizeError)
    assert isinstance(undefined, UndefinedPartError)
    assert [json.loads(one)["lines"][0] for one in (good, other) if isinstance(one, bytes)] == ["25.400 in", "25.34 mm"]
