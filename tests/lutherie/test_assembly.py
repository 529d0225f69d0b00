"""Assembly: parts that belong together, and parts that do not."""

import dataclasses
import math

import numpy as np
import pytest

from scalewright.lutherie.assembly import TOLERANCE, AssemblyQuestion, assemble, assemble_all
from scalewright.lutherie.errors import ContradictoryPartError, ToleranceError, TooFewPitchesError, UndefinedPartError
from scalewright.lutherie.estimate import mixture_interval
from scalewright.lutherie.fingerboard import draw_up
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.label import Label
from scalewright.lutherie.layout import layout_scale_of
from scalewright.lutherie.measure import NutOffset
from scalewright.lutherie.part import FanScale, Part, Travel
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Listed
from tests.drawing.boards import FAN_BOARD
from tests.lutherie.parts_of_boards import FOUR, INCH, board, template

TAPE = 0.5
"""Standard uncertainty of a tape. [mm]"""
ALL = tuple(range(1, 23))
STANDARD_ERRORS = 2.0
MICRON = 0.001
CENT = 0.05
STRETCHED = (*(100.0 * fret for fret in range(1, 13)), 1300.0, 1420.0)
"""Pitches of an invented board whose 14th fret is set 20 cents sharp. [cent]"""
COSTLY = "common practice, no source: a board of 25.4 in and a bridge template made for 25.34 in cost a bridge"


def ask(*parts, **known):
    """The answer for some parts."""
    return assemble(AssemblyQuestion(tuple(parts), **known))


@pytest.mark.source(COSTLY)
@pytest.mark.parametrize("frets", [FOUR, (1, 3, 5, 7, 9, 12, 15, 17), ALL])
def test_the_costly_case_is_caught_before_glue(frets):
    """Calipers at frets 1, 5, 12 and 17 or more find 0.06 in, and the parts do not belong together."""
    found = ask(board(25.4 * INCH, frets), template(25.34 * INCH, frets))
    (pair,) = found.pairs
    assert (found.decision, pair.decision) == ("apart", "apart")
    assert pair.mismatch.value / INCH == pytest.approx(-0.06, abs=0.0005)
    assert abs(pair.mismatch.value) - TOLERANCE >= pair.guard_band
    assert "do not belong together" in found.statement
    assert "0.060 in" in found.statement
    assert "do not glue" in found.statement
    assert any("25.4 in" in text and "rounded up" in text for text in found.explanations)
    assert found.notes[-1].slug == "before-gluing"


@pytest.mark.source(COSTLY)
@pytest.mark.parametrize("frets", [FOUR, ALL])
def test_a_tape_cannot_decide_it(frets):
    """A standard uncertainty of half a millimetre leaves it open, and caliper readings are named that decide."""
    found = ask(board(25.4 * INCH, frets, TAPE), template(25.34 * INCH, frets, TAPE))
    (pair,) = found.pairs
    assert found.decision == "undecided"
    assert "can't be decided" in found.statement
    assert pair.deciding.readings
    assert all(reading.uncertainty == 0.05 for reading in pair.deciding.readings)
    assert pair.deciding.expected_uncertainty <= pair.deciding.needed_uncertainty


@pytest.mark.source(COSTLY)
@pytest.mark.parametrize(
    "other", [template(25.34 * INCH, (12,)), template(25.34 * INCH), Part("t", "bridge", true_scale=25.34 * INCH)]
)
def test_a_lone_reading_at_fret_12_cannot_decide_it_and_the_next_reading_does(other):
    """With the nut free a lone octave reading leaves it open; taking the readings that are advised decides it."""
    found = ask(board(25.4 * INCH, (12,)), other)
    (pair,) = found.pairs
    assert found.decision == "undecided"
    advised = pair.deciding.readings
    assert 1 <= len(advised) <= 2
    more = {"board": [12], other.id: [] if other.survey is None else list(other.survey.procedure.end)}
    for reading in advised:
        more[reading.part].append(reading.fret)
    after = other if other.survey is None else template(25.34 * INCH, more[other.id], name=other.id)
    assert ask(board(25.4 * INCH, more["board"]), after).decision == "apart"


@pytest.mark.source(COSTLY)
def test_the_costly_case_with_real_errors():
    """With errors of reading and tooling, and a nut that is off, calipers hardly ever fail to catch it."""
    rng = np.random.default_rng(254)
    questions = []
    for _ in range(120):
        parts = []
        for make, scale in ((board, 25.4), (template, 25.34)):
            errors = rng.normal(0.0, 0.3) + rng.normal(0.0, math.hypot(0.05, 0.05), len(FOUR))
            parts.append(make(scale * INCH, errors=errors.tolist()))
        questions.append(AssemblyQuestion(tuple(parts)))
    decisions = [answer.decision for answer in assemble_all(questions)]
    assert "together" not in decisions
    assert decisions.count("apart") > 0.9 * len(decisions)


@pytest.mark.parametrize("scale", [330.0, 25.5 * INCH, 864.0])
def test_parts_of_one_scale_belong_together(scale):
    """Two parts made alike and measured well are declared to belong together, with the caution to try them dry."""
    found = ask(board(scale, ALL), template(scale, ALL))
    assert found.decision == "together"
    assert found.pairs[0].conformance_probability > 0.97
    assert found.explanations == []
    assert "dry" in found.notes[-1].text


@pytest.mark.source("ISO 14253-1 and JCGM 106: conformity is proved a guard band inside the limits")
def test_the_decision_is_that_of_the_guard_band():
    """With one explanation each, parts are told apart exactly where the mismatch is U from the tolerance."""
    spread = math.sqrt(2.0) * 0.2
    for mismatch, decision in (
        (TOLERANCE - 2.0 * spread * 0.86, "undecided"),
        (TOLERANCE + 2.0 * spread * 0.99, "undecided"),
        (TOLERANCE + 2.0 * spread * 1.01, "apart"),
    ):
        parts = [
            Part(name, "bridge", true_scale=length, tolerance=0.2 * math.sqrt(3.0))
            for name, length in (("one", 650.0), ("other", 650.0 + mismatch))
        ]
        (pair,) = ask(*parts).pairs
        assert pair.guard_band == pytest.approx(2.0 * spread, rel=1e-9)
        assert pair.decision == decision
    small = [Part(name, "bridge", true_scale=650.0, tolerance=0.1) for name in ("one", "other")]
    assert ask(*small).decision == "together"
    assert ask(*small, guard_factor=9.0).decision == "undecided"


@pytest.mark.source("PHYSICS of the saddle: 1 mm too far out on 650 mm is 2.66 cents flat at fret 12 after retuning")
def test_cents_of_a_misplaced_saddle():
    """A bridge 1 mm too long on a 650 mm board makes fret 12 2.66 cents flat, fret 5 less, the last fret more."""
    found = ask(Part("b", "board", true_scale=650.0, rule=EQUAL, frets=24), Part("t", "bridge", true_scale=651.0))
    cents = {one.fret: one.cents.value for one in found.pairs[0].cents}
    assert list(cents) == [5, 12, 24]
    assert cents[12] == pytest.approx(-2.66, abs=CENT)
    assert cents[24] < cents[12] < cents[5] < 0.0
    # By the definition of a cent, for an ideal string.
    by_hand = 1200.0 * math.log2((651.0 / 163.5) / (650.0 / 162.5))
    assert cents[24] == pytest.approx(by_hand, abs=1e-9)


@pytest.mark.parametrize(("towards", "away", "absorbs", "left"), [(2.0, 1.0, "no", -0.524), (0.0, 2.0, "yes", 0.0)])
def test_a_saddle_with_enough_travel_absorbs_the_mismatch(towards, away, absorbs, left):
    """A saddle line 1.524 mm too near the nut is made good by as much travel away from it."""
    travel = Travel(towards_nut=towards, away_from_nut=away)
    found = ask(Part("b", "board", true_scale=25.4 * INCH), Part("t", "bridge", true_scale=25.34 * INCH, travel=travel))
    (pair,) = found.pairs
    assert pair.absorption.needed == pytest.approx(1.524, abs=1e-9)
    assert pair.absorption.absorbs == absorbs
    assert pair.absorption.left == pytest.approx(left, abs=1e-9)
    assert found.decision == "apart"
    assert ("travel-used-up" in [note.slug for note in found.notes]) == (absorbs == "yes")


def test_a_template_that_is_placed_from_a_fret_carries_less_of_the_mismatch():
    """Placed from the octave fret, half of the mismatch is left at the saddle line."""
    bridge = Part("t", "bridge", true_scale=25.34 * INCH, datum="fret", datum_fret=12)
    (pair,) = ask(Part("b", "board", true_scale=25.4 * INCH), bridge).pairs
    assert pair.mismatch.value == pytest.approx(-1.524, abs=1e-9)
    assert pair.saddle_mismatch.value == pytest.approx(-0.762, abs=1e-9)


def test_a_nut_off_its_pattern_is_named():
    """A nut moved forward by 1 mm leaves the true scale alone and shifts what is placed from it."""
    moved = [-1.0] * len(ALL)
    part = board(650.0, ALL, errors=moved, nut_offset=NutOffset(0.0, 1.0))
    found = ask(part, Part("t", "bridge", true_scale=650.0))
    (pair,) = found.pairs
    assert pair.mismatch.value == pytest.approx(0.0, abs=0.05)
    assert pair.saddle_mismatch.value == pytest.approx(1.0, abs=0.1)
    assert "nut-off-its-pattern" in [note.slug for note in found.notes]


def test_a_rule_of_18_board_and_a_bridge_made_to_its_label():
    """The layout scale taken for the true scale is recognised as what it is."""
    found = ask(board(25.5 * INCH, ALL, rule=EIGHTEENTH), Part("bridge", "bridge", true_scale=25.5 * INCH))
    assert found.decision == "apart"
    assert any("rule of 18" in text for text in found.explanations)
    assert found.parts[0].rule == EIGHTEENTH


def test_a_bridge_made_to_the_string_length_is_suspected():
    """A bridge that is longer by a usual setback may have the setback in it; saying so mends it."""
    longer = Part("bridge", "bridge", true_scale=652.6)
    found = ask(Part("board", "board", true_scale=650.0), longer)
    assert any("setback" in text for text in found.explanations)
    said = dataclasses.replace(longer, made_to="string_length", setback=2.6)
    assert ask(Part("board", "board", true_scale=650.0), said).decision == "together"


def test_a_label_alone_is_no_measure():
    """Two parts that bear one label are not declared to belong together by it."""
    label = Label(25.4 * INCH, "in", 0.1 * INCH)
    found = ask(Part("b", "board", label=label), Part("t", "bridge", label=label))
    assert found.decision == "undecided"
    assert [part.source for part in found.parts] == ["label", "label"]
    assert {reading.part for reading in found.pairs[0].deciding.readings} == {"b", "t"}


def test_a_label_that_is_not_what_was_measured_is_noted():
    """Readings stand before the label, and the difference is named."""
    part = dataclasses.replace(board(24.57 * INCH, ALL), label=Label(24.75 * INCH, "in", 0.01 * INCH))
    found = ask(part, Part("t", "bridge", true_scale=24.57 * INCH))
    assert found.decision == "together"
    assert "label-is-not-true-scale" in [note.slug for note in found.notes]


def test_fan_boards_are_compared_side_by_side():
    """A bridge that fits the bass side and not the treble side does not belong to the board."""
    found = ask(
        Part("fan", "board", true_scale=FanScale(686.0, 648.0)),
        Part("bridge", "bridge", true_scale=FanScale(686.1, 645.0)),
    )
    assert [(pair.side, pair.decision) for pair in found.pairs] == [("bass", "together"), ("treble", "apart")]
    assert found.decision == "apart"
    assert "treble side" in found.statement
    straight = ask(Part("fan", "board", true_scale=FanScale(686.0, 648.0)), Part("bridge", "bridge", true_scale=648.0))
    assert [pair.decision for pair in straight.pairs] == ["apart", "together"]


def drawn_slant(board):
    """How much farther the bass end of the line where a drawn board's scales end lies along it. [mm]"""
    return board.strings[-1].at_scale_end.x - board.strings[0].at_scale_end.x


@pytest.mark.parametrize("frets", [(0, 7), (8, 5), (12, 0)])
def test_fan_parts_of_unlike_square_frets_do_not_belong_together(frets):
    """The ends of the saddle lines are off by what two drawn boards show, though scales and pairs agree."""
    scales = FanScale(686.0, 648.0)
    one, other = (Part(f"square {fret}", "board", true_scale=scales, rule=EQUAL, square_fret=fret) for fret in frets)
    found = ask(dataclasses.replace(one, kind="bridge", rule=None), other)
    (slant,) = found.slants
    drawn = [
        draw_up(dataclasses.replace(FAN_BOARD.plan, partial_frets=(), saddle_setbacks=(), square_fret=fret))
        for fret in frets
    ]
    off = 0.5 * (drawn_slant(drawn[0]) - drawn_slant(drawn[1]))
    assert slant.offset.value == pytest.approx(off, abs=MICRON)
    assert [pair.decision for pair in found.pairs] == ["together", "together"]
    assert (slant.first, slant.first_square_fret, slant.second_square_fret) == (other.id, *frets[::-1])
    assert (slant.decision, found.decision) == ("apart", "apart")
    words = ["the nut" if fret == 0 else f"fret {fret}" for fret in frets[::-1]]
    assert f"{words[0]} of the one is square, and {words[1]} of the other" in found.statement
    assert f"both ends lie {abs(off):.3f} mm" in found.statement


def test_a_square_fret_that_is_nearly_the_same_is_within_the_tolerance():
    """A fan of little spread forgives the next fret; of a wide one whose scales are uncertain it cannot be told."""
    parts = [Part(f"p{fret}", "board", true_scale=FanScale(653.0, 648.0), square_fret=fret) for fret in (7, 8)]
    found = ask(*parts)
    assert (found.decision, found.slants[0].decision) == ("together", "together")
    assert "slant-not-compared" not in [note.slug for note in found.notes]
    wide = [dataclasses.replace(part, true_scale=FanScale(686.0, 648.0), tolerance=0.3) for part in parts]
    found = ask(*wide)
    assert [pair.decision for pair in found.pairs] == ["together", "together"]
    assert found.decision == found.slants[0].decision == "undecided"
    assert "p7 and p8 can't be told to belong together" in found.statement


def test_the_same_square_fret_never_decides():
    """Where the square frets are one and the scales agree, so do the slants."""
    one = Part("fan", "board", true_scale=FanScale(686.0, 648.0), square_fret=0)
    other = Part("bridge", "bridge", true_scale=FanScale(686.45, 647.55), square_fret=0)
    found = ask(one, other)
    assert found.decision == "together"
    assert found.slants[0].offset.value == pytest.approx(0.45, abs=MICRON)


@pytest.mark.parametrize("square_fret", [None, 7])
def test_a_slant_that_is_not_known_is_told(square_fret):
    """Where a part of a fan names no square fret, a note names it, and nothing is said of slants."""
    fan = FanScale(686.0, 648.0)
    found = ask(
        Part("fan", "board", true_scale=fan, square_fret=square_fret),
        Part("bridge", "bridge", true_scale=fan),
    )
    assert (found.decision, found.slants) == ("together", [])
    (note,) = [note for note in found.notes if note.slug == "slant-not-compared"]
    assert ("not known of bridge:" if square_fret else "not known of fan and bridge:") in note.text


def test_three_parts_make_three_pairs():
    """Each is held against each, and the worst decides."""
    parts = [
        Part("board", "board", true_scale=650.0),
        Part("bridge", "bridge", true_scale=650.1),
        Part("template", "saddle_template", true_scale=652.0),
    ]
    found = ask(*parts)
    decisions = {(pair.first, pair.second): pair.decision for pair in found.pairs}
    assert decisions == {
        ("board", "bridge"): "together",
        ("board", "template"): "apart",
        ("bridge", "template"): "apart",
    }


def test_a_part_whose_true_scale_cannot_be_told_is_undecided():
    """Frets set by ear and no octave reading: no mismatch, no decision, and what to read."""
    ear = board(650.0, (1, 2, 3, 4, 5), errors=[2.0, -2.0, 2.0, -2.0, 2.0])
    found = ask(ear, Part("t", "bridge", true_scale=650.0))
    (pair,) = found.pairs
    assert (found.decision, pair.mismatch, pair.cents, pair.guard_band) == ("undecided", None, [], None)
    assert "not known" in found.statement


@pytest.mark.source("hand calculation from the definitions of the two rules")
def test_a_replacement_board_fret_by_fret():
    """An equal board of 25.5 in on an old one laid out from 25.5 in by the rule of 18, in line at fret 14."""
    old = Part("old", "board", layout_scale=25.5 * INCH, rule=EIGHTEENTH, frets=20, body_joint_fret=14)
    new = Part("new", "board", true_scale=25.5 * INCH, rule=EQUAL, frets=20, datum="fret", datum_fret=14)
    (found,) = ask(old, new).replacements
    scale = 25.5 * INCH
    old_at, new_at = (lambda n: scale * (1.0 - (17 / 18) ** n)), (lambda n: scale * (1.0 - 2 ** (-n / 12)))
    by_hand = [(new_at(n) - new_at(14)) - (old_at(n) - old_at(14)) for n in range(1, 21)]
    assert [one.offset.value for one in found.offsets] == pytest.approx(by_hand, abs=1e-9)
    assert (found.datum_fret, found.largest.fret) == (14, 1)
    old_end = 2.0 * old_at(12)
    assert found.body_joint.offset.value == pytest.approx(0.0, abs=1e-9)
    assert found.body_joint.joint_to_bridge.value == pytest.approx(
        (scale - new_at(14)) - (old_end - old_at(14)), abs=1e-9
    )
    assert found.body_joint.decision == "apart"


def test_a_joint_that_is_off_outweighs_a_true_scale_that_agrees():
    """Boards of one true scale whose joint frets lie apart do not belong together once the joint is in line."""
    old = Part("old", "board", true_scale=650.0, rule=Listed(STRETCHED), frets=14, body_joint_fret=14)
    new = Part("new", "board", true_scale=650.0, rule=EQUAL, frets=14, datum="fret", datum_fret=14)
    found = ask(old, new)
    assert found.pairs[0].decision == "together"
    assert found.decision == "apart"
    assert "fret 14" in found.statement


def test_a_label_that_is_the_true_scale_is_not_remarked_on():
    """Where label and readings agree there is nothing to say."""
    part = dataclasses.replace(board(25.4 * INCH, ALL), label=Label(25.4 * INCH, "in", 0.1 * INCH))
    notes = ask(part, Part("t", "bridge", true_scale=25.4 * INCH)).notes
    assert "label-is-not-true-scale" not in [note.slug for note in notes]


def test_a_part_read_from_a_zero_fret_has_no_nut_to_be_off():
    """With a zero fret the saddle line is as sure as the true scale."""
    (pair,) = ask(board(650.0, ALL, origin="zero_fret"), Part("t", "bridge", true_scale=650.0)).pairs
    assert pair.saddle_mismatch.standard_uncertainty == pytest.approx(pair.mismatch.standard_uncertainty, rel=1e-9)


def test_a_replacement_that_was_measured():
    """Two boards cut alike agree fret by fret within what the readings tell, at the joint and at the bridge."""
    old = dataclasses.replace(board(650.0, ALL), id="old", body_joint_fret=12)
    new = dataclasses.replace(board(650.0, ALL), id="new")
    found = ask(old, new)
    (replacement,) = found.replacements
    assert len(replacement.offsets) == 22
    assert all(abs(one.offset.value) < MICRON for one in replacement.offsets)
    assert replacement.body_joint.decision == "together"
    assert found.decision == "together"


def test_a_replacement_of_unknown_rule_has_no_offsets():
    """A true scale without a rule says nothing of the frets."""
    (found,) = ask(Part("old", "board", true_scale=650.0), Part("new", "board", true_scale=650.0)).replacements
    assert (found.offsets, found.largest, found.body_joint) == ([], None, None)


def drawn_rule(rng):
    """A spacing rule, drawn from what identification believes beforehand."""
    return (EQUAL, EIGHTEENTH, Divisor(float(rng.uniform(16.5, 19.5))))[rng.choice(3, p=[0.45, 0.45, 0.10])]


@pytest.mark.source("simulation from the priors of identification, with any mismatch equally likely; seed fixed")
def test_conformance_probabilities_and_decisions_keep_their_word():
    """Of simulated pairs as many agree as is stated, and wrong decisions are as rare as stated."""
    rng = np.random.default_rng(14253)
    frets = (1, 5, 9, 12, 17, 20)
    questions, truth = [], []
    for _ in range(200):
        mismatch = float(rng.uniform(-3.0, 3.0))
        parts = []
        for make, scale in ((board, 650.0), (template, 650.0 + mismatch)):
            rule = drawn_rule(rng)
            errors = rng.normal(0.0, 0.3) + rng.normal(0.0, math.hypot(0.1, 0.05), len(frets))
            layout = layout_scale_of(rule, scale, "true")
            parts.append(make(layout, frets, 0.1, rule=rule, errors=errors.tolist(), tooling_scatter=0.05))
        questions.append(AssemblyQuestion(tuple(parts), guard_factor=1.0))
        truth.append(abs(mismatch) <= TOLERANCE)
    answers = assemble_all(questions)
    stated = np.array([answer.pairs[0].conformance_probability for answer in answers])
    agree = np.array(truth)
    error = np.sqrt(np.sum(stated * (1.0 - stated))) / len(stated)
    assert abs(np.mean(agree) - np.mean(stated)) < STANDARD_ERRORS * error
    for decision, wrong in (("together", ~agree), ("apart", agree)):
        chosen = np.array([answer.decision == decision for answer in answers])
        risk = 1.0 - stated[chosen] if decision == "together" else stated[chosen]
        error = math.sqrt(float(np.sum(risk * (1.0 - risk)))) / np.sum(chosen)
        assert abs(np.mean(wrong[chosen]) - np.mean(risk)) < STANDARD_ERRORS * error
        # One part in six lies beyond one standard deviation: no single risk is above it.
        assert np.max(risk) < 0.35


# ---- Refusals -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("part", "field", "words"),
    [
        (dataclasses.replace(board(25.34 * INCH), true_scale=25.4 * INCH), "true_scale", "1.52 mm"),
        (Part("b", "board", true_scale=650.0, layout_scale=650.0, rule=EIGHTEENTH), "true_scale", "4.73 mm"),
        (dataclasses.replace(board(640.0, ALL), layout_scale=650.0, rule=EQUAL), "layout_scale", "10.00 mm"),
        (
            dataclasses.replace(board(25.5 * INCH, ALL), layout_scale=25.5 * INCH / 0.992727468, rule=EIGHTEENTH),
            "rule",
            "spacing rule",
        ),
        (dataclasses.replace(board(650.0, ALL), rule=EIGHTEENTH), "rule", "spacing rule"),
        (dataclasses.replace(board(650.0), true_scale=FanScale(686.0, 650.0)), "true_scale", "each side"),
    ],
)
def test_contradictions_are_named_and_not_averaged(part, field, words):
    """A part that is defined twice and differently is refused with both numbers and the place."""
    with pytest.raises(ContradictoryPartError, match=words) as refused:
        ask(Part("t", "bridge", true_scale=650.0), part)
    assert refused.value.field == ("parts", 1, field)


def test_definitions_that_agree_are_no_contradiction():
    """A stated scale that the readings bear out, or the same scale stated twice, is taken."""
    part = dataclasses.replace(board(25.4 * INCH, ALL), true_scale=25.4 * INCH, layout_scale=25.4 * INCH, rule=EQUAL)
    assert ask(part, Part("t", "bridge", true_scale=25.4 * INCH)).decision == "together"
    weak = dataclasses.replace(board(25.34 * INCH, FOUR, TAPE), true_scale=25.4 * INCH)
    assert ask(weak, Part("t", "bridge", true_scale=25.4 * INCH)).decision == "undecided"


@pytest.mark.parametrize(
    ("part", "field"),
    [
        (Part("b", "board"), ()),
        (Part("b", "board", layout_scale=650.0), ("rule",)),
        (Part("b", "board", layout_scale=650.0, rule=Listed((100.0, 200.0))), ("rule",)),
        (Part("b", "bridge", true_scale=650.0, made_to="string_length"), ("setback",)),
    ],
)
def test_parts_that_nothing_defines(part, field):
    """What is missing is named."""
    with pytest.raises(UndefinedPartError) as refused:
        ask(part, Part("t", "bridge", true_scale=650.0))
    assert refused.value.field == ("parts", 0, *field)


def test_tolerances_and_numbers_of_parts():
    """A tolerance above zero and two parts are needed."""
    parts = (Part("b", "board", true_scale=650.0), Part("t", "bridge", true_scale=650.0))
    for tolerance in (0.0, -1.0):
        with pytest.raises(ToleranceError):
            ask(*parts, tolerance=tolerance)
    with pytest.raises(UndefinedPartError):
        ask(parts[0])


def test_many_assemblies_are_answered_as_each_is_alone():
    """A refusal stands in its place and spoils no other."""
    good = AssemblyQuestion((board(650.0), template(650.0)))
    other = AssemblyQuestion((board(650.0), template(653.0)), beliefs=Beliefs(coverage=0.99))
    bad = AssemblyQuestion((Part("b", "board"), template(650.0)))
    first, refused, last = assemble_all([good, bad, other])
    assert (first.statement, last.statement) == (assemble(good).statement, assemble(other).statement)
    assert (first.decision, last.coverage) == (assemble(good).decision, 0.99)
    assert isinstance(refused, UndefinedPartError)


def test_a_mismatch_at_the_tolerance_cannot_be_decided_by_any_caliper():
    """On the edge the answer says so instead of asking for readings without end."""
    (pair,) = ask(board(650.0, ALL), template(650.0 + TOLERANCE, ALL)).pairs
    assert pair.decision == "undecided"
    assert pair.deciding.readings == []
    assert "no caliper" in pair.deciding.text


def test_ten_parts_ask_for_their_quantiles_at_once(monkeypatch):
    """However many pairs and frets there are, the interval ends of all of them are sought together, at one go; and
    what is said of two of the parts is what is said of them alone.
    """
    sought = []

    def counting(*columns):
        sought.append(columns)
        return mixture_interval(*columns)

    monkeypatch.setattr("scalewright.lutherie.decision.mixture_interval", counting)
    parts = [board(650.0 + 0.2 * number, name=f"board {number}") for number in range(10)]
    whole = assemble(AssemblyQuestion(tuple(parts)))

    assert len(whole.pairs) == len(whole.replacements) == 45
    assert len(sought) == 1
    alone = assemble(AssemblyQuestion((parts[3], parts[7])))
    pair = next(pair for pair in whole.pairs if (pair.first, pair.second) == ("board 3", "board 7"))
    replacement = next(one for one in whole.replacements if (one.old, one.new) == ("board 3", "board 7"))
    assert pair.decision == alone.pairs[0].decision
    for one, other in zip(
        [pair.mismatch, pair.saddle_mismatch, *(fret.offset for fret in replacement.offsets)],
        [alone.pairs[0].mismatch, alone.pairs[0].saddle_mismatch, *(f.offset for f in alone.replacements[0].offsets)],
        strict=True,
    ):
        assert [one.value, one.standard_uncertainty, one.lower, one.upper] == pytest.approx(
            [other.value, other.standard_uncertainty, other.lower, other.upper], abs=1e-9
        )
    assert pair.deciding.text == alone.pairs[0].deciding.text
    assert pair.deciding.readings == alone.pairs[0].deciding.readings


def test_a_fret_to_be_read_repeatedly_is_named_once():
    """What decides is told fret by fret, with how often to read it."""
    parts = (board(650.0, (1, 12), TAPE), template(650.1, (1, 12), TAPE))
    deciding = assemble(AssemblyQuestion(parts)).pairs[0].deciding
    frets = [reading.fret for reading in deciding.readings if reading.part == "board"]
    once = sorted(set(frets))
    often = [fret for fret in once if frets.count(fret) == 3]

    assert len(once) < len(frets)
    assert f"on board from the nut to frets {', '.join(map(str, once[:-1]))} and {once[-1]} (" in deciding.text
    assert often
    assert all(f"fret {fret} three times" in deciding.text for fret in often)


@pytest.mark.parametrize(
    ("parts", "field"),
    [
        ((Part("a", "board", true_scale=650.0, rule=Listed((100.0, 200.0)), frets=14),), ("parts", 0, "rule", "cents")),
        (
            (Part("a", "board", true_scale=650.0, rule=Listed((100.0, 200.0)), body_joint_fret=14),),
            ("parts", 0, "rule", "cents"),
        ),
        (
            (
                Part("a", "board", true_scale=FanScale(686.0, 648.0), rule=Listed((100.0, 1200.0)), square_fret=1),
                Part("b", "bridge", true_scale=FanScale(686.0, 648.0), square_fret=7),
            ),
            ("parts", 1, "square_fret"),
        ),
        (
            (
                Part("a", "board", true_scale=650.0, rule=Listed((100.0, 1200.0))),
                Part("b", "bridge", true_scale=650.0, datum="fret", datum_fret=14),
            ),
            ("parts", 1, "datum_fret"),
        ),
        (
            (
                Part("a", "board", true_scale=650.0, rule=Listed((100.0, 1200.0))),
                Part("b", "board", true_scale=650.0, rule=EQUAL, body_joint_fret=14),
            ),
            ("parts", 1, "body_joint_fret"),
        ),
    ],
)
def test_a_fret_beyond_the_listed_pitches_is_pointed_at(parts, field):
    """Pitches that end before a fret of the same part are at fault, or else the part that names the fret."""
    others = (Part("z", "bridge", true_scale=650.0),) if len(parts) == 1 else ()
    with pytest.raises(TooFewPitchesError) as refused:
        assemble(AssemblyQuestion((*parts, *others)))

    assert refused.value.field == field


def test_without_a_guard_band_any_uncertainty_will_do():
    """A part whose scale cannot be told leaves it open without a guard band too, and all numbers are finite."""
    crooked = board(650.0, (1, 2, 3, 4, 5, 6), errors=[0.0, 12.0, -8.0, 22.0, 7.0, 9.0])
    (pair,) = ask(crooked, Part("t", "bridge", true_scale=650.0), guard_factor=0.0).pairs
    assert (pair.decision, pair.mismatch) == ("undecided", None)
    assert math.isfinite(pair.deciding.needed_uncertainty)


def test_a_stated_tolerance_that_leaves_it_open_is_named():
    """A scale stated to 2 mm cannot be told to agree within 0.5 mm; which part's readings would tell is said."""
    rough = Part("rough", "board", true_scale=650.0, tolerance=2.0)
    found = ask(rough, Part("t", "bridge", true_scale=650.0))
    assert found.decision == "undecided"
    assert "What is stated of rough is too rough" in found.statement
