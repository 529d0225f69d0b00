"""What is stated of a part beside what was measured: used, compared or refused, and never passed over."""

import dataclasses

import pytest

from scalewright.lutherie.assembly import AssemblyQuestion, assemble
from scalewright.lutherie.conformity import ConformityQuestion, conform
from scalewright.lutherie.errors import ContradictoryPartError, TooFewPitchesError, UndefinedPartError
from scalewright.lutherie.identification import Beliefs, identify
from scalewright.lutherie.label import Label
from scalewright.lutherie.measure import NutOffset
from scalewright.lutherie.part import FanScale, Part, Travel
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal, Listed
from scalewright.lutherie.tag import notes_on, tag_of
from tests.lutherie.parts_of_boards import INCH, board, measured

EXACT = 1e-9  # mm
HUNDREDTH = 0.01  # mm
BRIDGE = Part("bridge", "bridge", true_scale=650.0)
LATER = Part("later", "board", true_scale=650.0, rule=EQUAL)


def slugs(*parts):
    """Slugs of the notes on an assembly."""
    return {note.slug for note in assemble(AssemblyQuestion(parts)).notes}


def scales(part):
    """True scales that an assembly takes a part to have. [mm]"""
    found = assemble(AssemblyQuestion((part, BRIDGE))).parts
    return [one.true_scale.value for one in found if one.id == part.id]


def test_the_setback_is_in_both_string_lengths_of_a_fan():
    """String lengths of 690 and 650 mm with 2.5 mm of setback in them are true scales of 687.5 and 647.5 mm."""
    fan = Part("fan", "board", true_scale=FanScale(690.0, 650.0), made_to="string_length", setback=2.5)
    assert scales(fan) == pytest.approx([687.5, 647.5], abs=EXACT)


def test_a_label_that_ends_at_the_break_point_has_the_setback_in_it():
    """Of what 650 mm can mean, only the string length is left, and its true scale is shorter by the setback."""
    part = Part("labelled", "bridge", label=Label(650.0, "mm", 1.0), made_to="string_length", setback=3.0)
    assert scales(part) == pytest.approx([647.0], abs=HUNDREDTH)


@pytest.mark.parametrize("rule", [EQUAL, EIGHTEENTH])
def test_a_stated_rule_decides_what_readings_leave_open(rule):
    """One reading at fret 7 fits every rule; under the stated one it gives the true scale of a board of that rule."""
    scale = 640.0
    part = dataclasses.replace(board(scale, (7,), rule=rule, uncertainty=0.05), rule=rule)
    octave = 0.5 if rule is EQUAL else 1.0 - (17.0 / 18.0) ** 12
    tag, source = tag_of(part, "mm", Beliefs())
    assert source == "readings"
    assert tag.rule == rule
    assert tag.layout_scale == pytest.approx(scale, abs=0.1)
    assert tag.true_scale == pytest.approx(2.0 * octave * scale, abs=0.1)
    assert scales(part) == pytest.approx([tag.true_scale], abs=EXACT)
    assert tag_of(dataclasses.replace(part, rule=None), "mm", Beliefs())[0].rule is None


@pytest.mark.parametrize("rule", [Equal(19), Divisor(17.3)])
def test_a_rule_that_readings_are_not_usually_compared_with_is_compared_where_it_is_stated(rule):
    """A board of 19 steps is one of 19 steps, and its true scale is what it was laid out by."""
    part = dataclasses.replace(board(650.0, (1, 5, 12, 17, 19), rule=rule), rule=rule)
    found = conform(ConformityQuestion(dataclasses.replace(part, layout_scale=650.0), 0.5))
    tag, _ = tag_of(part, "mm", Beliefs())
    assert (found.rule_agrees, found.decision) == ("yes", "accept")
    assert tag.rule == rule
    assert tag.layout_scale == pytest.approx(650.0, abs=HUNDREDTH)


@pytest.mark.parametrize(
    ("part", "verdict"),
    [
        (board(650.0, errors=[3.0, -3.0, 3.0, -3.0]), "none"),
        (board(650.0, rule=Divisor(17.0)), "established"),
        (board(650.0, (5, 12, 17), rule=Divisor(17.65)), "undecided"),
    ],
)
def test_a_stated_rule_that_readings_do_not_leave_is_refused(part, verdict):
    """Frets that no rule explains, those of another, and those that hardly can be of the stated one."""
    assert identify(part.survey, Beliefs()).verdict == verdict
    with pytest.raises(ContradictoryPartError) as refused:
        tag_of(dataclasses.replace(part, rule=EIGHTEENTH), "mm", Beliefs())
    assert refused.value.field == ("part", "rule")


@pytest.mark.parametrize(
    ("rule", "frets", "error", "field"),
    [
        (Listed((100.0, 200.0, 300.0, 400.0)), (1, 2, 3, 4), UndefinedPartError, ("part", "rule")),
        (
            Listed(tuple(100.0 * fret for fret in range(1, 13))),
            (1, 12, 17),
            TooFewPitchesError,
            ("part", "rule", "cents"),
        ),
    ],
)
def test_a_stated_list_of_pitches_has_an_octave_and_reaches_the_readings(rule, frets, error, field):
    """Without either a list says nothing of the true scale, and it is not passed over."""
    with pytest.raises(error) as refused:
        tag_of(dataclasses.replace(board(650.0, frets), rule=rule), "mm", Beliefs())
    assert refused.value.field == field


def test_a_datum_counts_only_for_what_is_put_on():
    """A bridge is placed on a board and a new board in place of the old one, each from its own datum."""
    old = dataclasses.replace(LATER, id="old", datum="fret", datum_fret=12)
    placed = dataclasses.replace(BRIDGE, datum="fret", datum_fret=12)
    assert "datum-not-used" in slugs(old, BRIDGE)
    assert "datum-not-used" in slugs(old, LATER)
    assert "datum-not-used" not in slugs(LATER, old)
    assert "datum-not-used" not in slugs(LATER, placed)


def test_travel_is_that_of_the_part_with_the_saddle_line():
    """That of a board counts where the bridge says nothing of its own."""
    travel = Travel(1.0, 1.0)
    moved = dataclasses.replace(LATER, travel=travel)
    assert "travel-not-used" in slugs(moved, dataclasses.replace(BRIDGE, travel=travel))
    assert "travel-not-used" not in slugs(moved, BRIDGE)


def test_a_body_joint_is_compared_between_two_boards():
    """With a bridge alone nothing comes of it, and that is said."""
    joined = dataclasses.replace(LATER, id="joined", body_joint_fret=14)
    assert "body-joint-not-used" in slugs(joined, BRIDGE)
    assert "body-joint-not-used" not in slugs(joined, LATER)
    assert "body-joint-not-used" in slugs(joined, dataclasses.replace(LATER, rule=None))


def test_the_nut_is_warned_of_where_something_is_placed_from_it():
    """A nut that is 2 mm off its pattern does not matter to a bridge that is placed from fret 12."""
    off = board(650.0, (1, 3, 5, 7, 9, 12, 17, 20), errors=[2.0] * 8, nut_offset=NutOffset(0.0, 2.0))
    assert "nut-off-its-pattern" in slugs(off, BRIDGE)
    assert "nut-off-its-pattern" not in slugs(off, dataclasses.replace(BRIDGE, datum="fret", datum_fret=12))


@pytest.mark.parametrize(
    ("part", "noted"),
    [
        (Part("b", "board", true_scale=624.0, label=Label(25.5 * INCH, "in", 2.54)), True),
        (Part("b", "board", true_scale=25.5 * INCH, label=Label(25.5 * INCH, "in", 2.54)), False),
        (Part("b", "board", true_scale=FanScale(686.0, 25.5 * INCH), label=Label(25.5 * INCH, "in", 2.54)), False),
        (Part("b", "board", true_scale=FanScale(686.0, 630.0), label=Label(25.5 * INCH, "in", 2.54)), True),
        (
            Part("b", "board", true_scale=653.0, label=Label(653.0, "mm", 1.0), made_to="string_length", setback=3.0),
            False,
        ),
    ],
)
def test_a_label_that_is_no_true_scale_of_a_stated_part_is_noted(part, noted):
    """Of a fan board either side will do, and of a string length what is left without the setback."""
    assert ("label-is-not-true-scale" in slugs(part, BRIDGE)) == noted


@pytest.mark.parametrize(("label", "noted"), [(24.75, False), (24.57, False), (25.0, True)])
@pytest.mark.parametrize("setback", [None, 3.0])
def test_a_new_label_has_a_word_on_an_old_one_that_is_neither_scale(label, noted, setback):
    """A rule-of-18 board of 24.75 in has a true scale of 24.57 in; 25 in is neither, and as string lengths all are
    longer by their setback.
    """
    old = Label(label * INCH + (setback or 0.0), "in", 0.254)
    part = Part("b", "board", layout_scale=24.75 * INCH, rule=EIGHTEENTH, label=old, setback=setback)
    part = dataclasses.replace(part, made_to="true_scale" if setback is None else "string_length")
    assert bool(notes_on(part, *tag_of(part, "in", Beliefs()))) == noted


def test_a_ruling_says_what_it_does_not_rest_on():
    """Beside a stated scale neither the label nor the part's own tolerance counts."""
    survey = measured(650.0, (1, 5, 12, 17))
    part = Part("b", "board", survey=survey, true_scale=650.0, label=Label(25.5 * INCH, "in", 2.54), tolerance=0.2)
    found = {note.slug for note in conform(ConformityQuestion(part, 0.5)).notes}
    assert {"label-set-aside", "part-tolerance-set-aside"} <= found


@pytest.mark.parametrize(("label", "noted"), [(25.5, False), (27.0, False), (26.0, True)])
def test_an_old_label_of_a_fan_board_names_either_side(label, noted):
    """Of 27 in and 25.5 in each is a true scale, and what lies between is neither."""
    sides = FanScale(27.0 * INCH, 25.5 * INCH)
    part = Part("fan", "board", true_scale=sides, rule=EQUAL, label=Label(label * INCH, "in", 2.54))
    assert bool(notes_on(part, *tag_of(part, "in", Beliefs()))) == noted
