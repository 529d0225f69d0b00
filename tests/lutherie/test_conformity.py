"""Conformity: whether a part is what it claims to be."""

import dataclasses

import pytest

from scalewright.lutherie.conformity import ConformityQuestion, conform, conform_all
from scalewright.lutherie.errors import ContradictoryPartError, ToleranceError, UndefinedPartError
from scalewright.lutherie.label import Label
from scalewright.lutherie.part import FanScale, Part
from scalewright.lutherie.ruling import Interval, Process, global_risks
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL
from tests.lutherie.parts_of_boards import INCH, board

ALL = tuple(range(1, 23))
LABEL = Label(24.75 * INCH, "in", 0.01 * INCH)
HUNDREDTH = 0.01
"""Of a millimetre."""


def labelled(scale, rule=EQUAL, label=LABEL):
    """A board that bears a label and was measured all over."""
    return dataclasses.replace(board(scale, ALL, rule=rule), label=label)


@pytest.mark.source("common practice, no source: 24.75 in under the rule of 18 is 24.57 in of true scale")
def test_a_rule_of_18_board_is_what_its_label_says_only_if_that_is_a_layout_scale():
    """The same board is rejected as a true scale of 24.75 in and accepted as a layout scale of 24.75 in."""
    part = labelled(24.75 * INCH, EIGHTEENTH)
    as_true = conform(ConformityQuestion(part, 0.5))
    as_layout = conform(ConformityQuestion(part, 0.5, label_means="layout_scale"))
    assert (as_true.decision, as_true.conformance, as_true.rule_agrees) == ("reject", "nonconforming", "no")
    assert as_true.deviation.value == pytest.approx(-0.18 * INCH, abs=HUNDREDTH)
    assert "other-rule" in [note.slug for note in as_true.notes]
    assert "not those of equal spacing" in as_true.statement
    assert (as_layout.decision, as_layout.conformance, as_layout.rule_agrees) == ("accept", "conforming", "yes")
    assert as_layout.claimed_rule == EIGHTEENTH


@pytest.mark.source("common practice, no source: 24.75 in under the rule of 18 is 24.57 in of true scale")
@pytest.mark.parametrize(
    ("rule", "means", "claimed"),
    [
        (None, None, 24.75),
        (EQUAL, None, 24.75),
        (EIGHTEENTH, None, 24.57),
        (EIGHTEENTH, "layout_scale", 24.57),
        (EIGHTEENTH, "true_scale", 24.75),
        (None, "layout_scale", 24.57),
    ],
)
def test_a_label_beside_a_rule_names_what_the_rule_is_applied_to(rule, means, claimed):
    """A label of 24.75 in beside the rule of 18 claims 24.57 in, unless it is said to name the true scale; which
    of the two was meant is said in a note.
    """
    part = dataclasses.replace(labelled(24.75 * INCH, EIGHTEENTH), rule=rule)
    found = conform(ConformityQuestion(part, 0.5, label_means=means))
    (note,) = [note.text for note in found.notes if note.slug == "label-reading"]

    assert found.claimed_true_scale == pytest.approx(claimed * INCH, abs=HUNDREDTH)
    assert found.decision == ("accept" if claimed == 24.57 else "reject")
    assert ("layout scale" in note) == (means == "layout_scale" or (means is None and rule is not None))


def test_a_board_that_conforms():
    """A board cut to its label is accepted, with a small consumer's risk and no producer's."""
    found = conform(ConformityQuestion(labelled(24.75 * INCH), 0.5))
    assert (found.decision, found.conformance) == ("accept", "conforming")
    assert found.consumer_risk == pytest.approx(1.0 - found.conformance_probability)
    assert (found.producer_risk, found.global_risks) == (None, None)
    assert found.acceptance.upper == pytest.approx(0.5 - found.guard_band)
    assert "what it claims to be" in found.statement


@pytest.mark.parametrize(
    ("rule", "decision"),
    [("simple_acceptance", "accept"), ("guarded_acceptance", "reject"), ("guarded_rejection", "accept")],
)
def test_the_decision_rule_decides_within_the_guard_band(rule, decision):
    """A board just inside its tolerance is accepted or not, as the rule says; nothing is proved."""
    found = conform(ConformityQuestion(labelled(24.75 * INCH + 0.18), 0.2, rule))
    assert (found.decision, found.conformance) == (decision, "undecided")
    assert "neither" in found.statement


def test_a_process_gives_global_risks():
    """What is known of parts like this enters the probability and gives risks over all of them."""
    process = Process(0.0, 0.3)
    found = conform(ConformityQuestion(labelled(24.75 * INCH + 0.2), 0.5, process=process))
    uncertainty = found.deviation.standard_uncertainty
    limits = Interval(-0.5, 0.5)
    assert found.acceptance is not None
    assert found.global_risks == global_risks(process, uncertainty, limits, found.acceptance)
    assert (
        found.conformance_probability
        > conform(ConformityQuestion(labelled(24.75 * INCH + 0.2), 0.5)).conformance_probability
    )


def test_what_is_stated_goes_before_the_label():
    """A stated true scale or layout scale is the claim; the label only where nothing else is stated."""
    stated = dataclasses.replace(labelled(648.0), true_scale=648.0)
    assert conform(ConformityQuestion(stated, 0.5)).claimed_true_scale == 648.0
    laid = dataclasses.replace(labelled(648.0), layout_scale=648.0, rule=EIGHTEENTH)
    assert conform(ConformityQuestion(laid, 0.5)).claimed_true_scale == pytest.approx(643.287, abs=0.001)
    string = dataclasses.replace(labelled(648.0), made_to="string_length", setback=2.0)
    assert conform(ConformityQuestion(string, 0.5)).claimed_true_scale == pytest.approx(24.75 * INCH - 2.0)


def test_guard_bands_that_meet_leave_no_acceptance():
    """A tolerance tighter than the measurement accepts nothing under guarded acceptance."""
    found = conform(ConformityQuestion(labelled(24.75 * INCH), 0.05))
    assert (found.decision, found.conformance, found.acceptance) == ("reject", "undecided", None)


@pytest.mark.parametrize(
    ("part", "field"),
    [
        (Part("b", "board", true_scale=650.0), ("part", "readings")),
        (board(650.0), ("part", "label")),
        (
            dataclasses.replace(board(650.0, (1, 2, 3, 4, 5), errors=[2.0, -2.0, 2.0, -2.0, 2.0]), true_scale=650.0),
            ("part", "readings"),
        ),
    ],
)
def test_what_is_missing_is_named(part, field):
    """A claim and readings that tell the true scale are needed."""
    with pytest.raises(UndefinedPartError) as refused:
        conform(ConformityQuestion(part, 0.5))
    assert refused.value.field == field


def test_other_refusals_spoil_nothing():
    """No tolerance and two scales at once are refused in their places."""
    good = ConformityQuestion(labelled(24.75 * INCH), 0.5)
    none = ConformityQuestion(labelled(24.75 * INCH), 0.0)
    fan = ConformityQuestion(Part("f", "board", true_scale=FanScale(686.0, 648.0)), 0.5)
    first, second, third = conform_all([good, none, fan])
    assert first.statement == conform(good).statement
    assert isinstance(second, ToleranceError)
    assert isinstance(third, ContradictoryPartError)
