"""Tags: what a label may state of a part."""

import pytest

from scalewright.lutherie.errors import ContradictoryPartError, LutherieError, UndefinedPartError
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.label import Label
from scalewright.lutherie.part import FanScale, Part
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Listed
from scalewright.lutherie.tag import tag_of, tags_of
from tests.lutherie.parts_of_boards import board

EXACT = 1e-9  # mm


def test_of_a_definition_all_is_stated():
    """A layout scale under the rule of 18 gives the true scale 2 S (1 - (17/18)^12), in exact rationals."""
    part = Part("b", "board", layout_scale=628.65, rule=EIGHTEENTH)
    tag, source = tag_of(part, "mm", Beliefs())

    assert source == "definition"
    assert tag.true_scale == pytest.approx(2.0 * 628.65 * (1.0 - (17.0 / 18.0) ** 12), abs=EXACT)
    assert (tag.uncertainty, tag.rule, tag.layout_scale) == (None, EIGHTEENTH, 628.65)


def test_the_layout_scale_follows_from_true_scale_and_rule():
    """Under equal spacing both are the same; listed pitches without an octave leave it open."""
    tag, _ = tag_of(Part("b", "board", true_scale=650.0, rule=EQUAL, tolerance=0.3), "mm", Beliefs())
    other, _ = tag_of(Part("b", "board", true_scale=650.0, rule=Listed((100.0,))), "mm", Beliefs())

    assert tag.layout_scale == pytest.approx(650.0, abs=EXACT)
    assert tag.uncertainty == pytest.approx(0.3 / 3.0**0.5)
    assert other.layout_scale is None


@pytest.mark.parametrize("rule", [None, EIGHTEENTH])
def test_a_label_alone_states_no_true_scale(rule):
    """24 3/4 in can mean scales 4.6 mm apart, under a stated rule too: their mean is none of them."""
    with pytest.raises(UndefinedPartError, match=r"624\.08") as refused:
        tag_of(Part("b", "board", label=Label(628.65, "in", 6.35), rule=rule), "in", Beliefs())
    assert refused.value.field == ("part", "label")


def test_many_tags_are_those_of_each_alone():
    """Parts whose readings are worked out together state what each states alone, and a refusal spoils no other."""
    parts = [board(600.0 + number, (1, 5, 7, 12, 17)) for number in range(3)]
    parts.insert(1, Part("nothing", "board"))
    parts.append(Part("stated", "bridge", true_scale=650.0, tolerance=0.1))
    together = tags_of([(part, "mm", Beliefs(coverage=0.9 if index else 0.95)) for index, part in enumerate(parts)])
    assert isinstance(together.pop(1), UndefinedPartError)
    del parts[1]
    for part, answer in zip(parts, together, strict=True):
        assert not isinstance(answer, LutherieError)
        tag, source = tag_of(part, "mm", Beliefs())
        assert answer[1] == source
        assert (answer[0].id, answer[0].rule) == (tag.id, tag.rule)
        assert answer[0].true_scale == pytest.approx(tag.true_scale, abs=0.001)  # mm; a label's own step
        assert answer[0].uncertainty == pytest.approx(tag.uncertainty, rel=0.001, abs=0.0)


@pytest.mark.parametrize(
    ("part", "refusal"),
    [
        (Part("b", "board"), UndefinedPartError),
        (Part("b", "board", true_scale=FanScale(686.0, 648.0), layout_scale=686.0, rule=EQUAL), ContradictoryPartError),
    ],
)
def test_what_has_not_one_true_scale_gets_no_tag(part, refusal):
    """A part without a true scale is refused, and a fan board with one layout scale."""
    with pytest.raises(refusal):
        tag_of(part, "mm", Beliefs())
