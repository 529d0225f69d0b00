"""Diagnosis: planted errors are found within the stated intervals, and what can't be told is said."""

import math

import numpy as np
import pytest

from scalewright.lutherie.diagnosis import CentsReading, Complaint, diagnose
from scalewright.lutherie.errors import (
    ImpossibleReadingError,
    ImpossibleSetupError,
    OutsideScaleError,
    PitchCountError,
    TooFewReadingsError,
)
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Listed
from tests.lutherie.diagnosis.complaints import SCALE, Instrument

LOW = [1, 3, 5, 7, 9, 12]
WIDE = [1, 2, 3, 5, 7, 9, 12, 15, 19]


def complaint(readings, **changes):
    """What was heard on the board that all these tests share."""
    return Complaint(**{"rule": EQUAL, "scale": SCALE, "readings": readings, "frets": 20, **changes})


def string_1(*cents, frets=LOW):
    """Readings of one string."""
    return [CentsReading(1, fret, value) for fret, value in zip(frets, cents, strict=True)]


def slugs(notes):
    """Names of notes."""
    return {note.slug for note in notes}


# ---- Planted errors ---------------------------------------------------------------------------------------


@pytest.mark.source(
    "simulation of real strings by the model of Anderson and Beausoleil 2024, errors planted, seeds fixed"
)
@pytest.mark.parametrize("absolute", [False, True], ids=["against the open string", "against the tuner"])
@pytest.mark.parametrize(("frets", "noise"), [(LOW, 1.0), ([3, 12], 1.0), (WIDE, 0.3), (WIDE, 2.0)])
def test_the_intervals_hold_the_planted_errors(frets, noise, absolute):
    """In 95 of a hundred the interval of the saddle's move holds what was planted, and so does that of the nut's."""
    rng = np.random.default_rng(20)
    instrument = Instrument(frets)
    trials, held = 60, np.zeros(2)
    for _ in range(trials):
        saddle, nut = rng.normal(0.0, 1.5, 3), rng.normal(0.0, 0.4, 3)
        readings = instrument.heard(rng, noise, saddle, nut, absolute=absolute)
        answer = diagnose(
            complaint(readings, tuner_uncertainty=noise, relative_to="tuner" if absolute else "open_string")
        )
        for string, dS, dN in zip(answer.strings, saddle, nut, strict=True):
            held += [
                string.saddle_move.lower <= -dS <= string.saddle_move.upper,
                string.nut_move.lower <= -dN <= string.nut_move.upper,
            ]

    spread = math.sqrt(0.95 * 0.05 / (3 * trials))
    assert (held / (3 * trials) > 0.95 - 3.0 * spread).all()


@pytest.mark.study
@pytest.mark.source(
    "simulation of real strings by the model of Anderson and Beausoleil 2024, errors planted, seeds fixed"
)
@pytest.mark.parametrize(("frets", "noise"), [(LOW, 1.0), ([5, 12], 1.0), (WIDE, 1.0)])
def test_the_intervals_are_neither_short_nor_long(frets, noise):
    """Over thousands of complaints the coverage is 95 % within its sampling error."""
    rng = np.random.default_rng(21)
    instrument = Instrument(frets)
    trials, held = 700, np.zeros(2)
    for _ in range(trials):
        saddle, nut = rng.normal(0.0, 1.5, 3), rng.normal(0.0, 0.4, 3)
        answer = diagnose(complaint(instrument.heard(rng, noise, saddle, nut), tuner_uncertainty=noise))
        for string, dS, dN in zip(answer.strings, saddle, nut, strict=True):
            held += [
                string.saddle_move.lower <= -dS <= string.saddle_move.upper,
                string.nut_move.lower <= -dN <= string.nut_move.upper,
            ]

    assert held / (3 * trials) == pytest.approx([0.95, 0.95], abs=3.0 * math.sqrt(0.95 * 0.05 / (3 * trials)))


@pytest.mark.source("numpy.linalg.lstsq on the moves to first order")
def test_small_errors_are_a_linear_fit():
    """Moves, uncertainties and chi-square of small errors are those of a general library."""
    cents = [0.02, -0.01, 0.03, 0.05, 0.02, 0.06]
    answer = diagnose(complaint(string_1(*cents), tuner_uncertainty=1.0, model_uncertainty=0.0)).strings[0]
    frets = np.array([0, *LOW])
    X = SCALE / 2.0 ** (frets / 12.0)
    per_mm = 1200.0 / math.log(2.0)
    design = np.stack([np.ones(7), per_mm / X - per_mm / SCALE, np.where(frets > 0, -per_mm / SCALE, 0.0)], axis=1)
    fit, chi_square, _, _ = np.linalg.lstsq(design, [0.0, *cents])
    sigmas = np.sqrt(np.diag(np.linalg.inv(design.T @ design)))

    assert [answer.tuning_offset.value, answer.saddle_move.value, answer.nut_move.value] == pytest.approx(
        fit.tolist(), abs=1e-4
    )
    assert answer.saddle_move.standard_uncertainty == pytest.approx(sigmas[1], rel=1e-3)
    assert answer.nut_move.standard_uncertainty == pytest.approx(sigmas[2], rel=1e-3)
    assert answer.chi_square == pytest.approx(float(chi_square[0]), rel=1e-2)
    assert answer.degrees_of_freedom == 4


@pytest.mark.source("common knowledge of the ideal string: a saddle 1 mm too far out is 2.66 cents flat at fret 12")
def test_a_saddle_alone():
    """A string 2.66 cents flat at fret 12 and flat in proportion elsewhere wants its saddle 1 mm forward."""
    X = SCALE / 2.0 ** (np.array(LOW) / 12.0)
    flat = 1200.0 * np.log2((X / (X + 1.0)) * (SCALE + 1.0) / SCALE)
    answer = diagnose(complaint(string_1(*flat.tolist()), tuner_uncertainty=0.2)).strings[0]

    assert flat[-1] == pytest.approx(-2.66, abs=0.005)
    assert answer.verdict == "move"
    assert answer.saddle_move.value == pytest.approx(-1.0, abs=0.01)
    assert answer.nut_move.value == pytest.approx(0.0, abs=0.01)
    assert answer.saddle_alone.value == pytest.approx(-1.0, abs=0.01)
    assert answer.saddle_alone_rms_cents == pytest.approx(0.0, abs=0.01)
    assert answer.nut_alone_rms_cents is not None
    assert answer.nut_alone_rms_cents > 0.3
    assert answer.remaining_rms_cents < 0.01 < answer.rms_cents
    assert "forward" in answer.statement


@pytest.mark.parametrize("shift", [-0.6, 0.6])
def test_a_nut_alone(shift):
    """A nut that is too far forward makes all frets flat alike, one too far back sharp; it is told which way to go."""
    cents = 1200.0 * math.log2((SCALE + shift) / SCALE)
    answer = diagnose(complaint(string_1(*[cents] * 6), tuner_uncertainty=0.1)).strings[0]

    assert answer.nut_move.value == pytest.approx(-shift, abs=0.01)
    assert answer.saddle_move.value == pytest.approx(0.0, abs=0.01)
    assert ("towards fret 1" if shift > 0.0 else "away from fret 1") in answer.statement


def test_what_is_in_tune_is_left_alone():
    """Errors that the tuner makes by itself call for nothing."""
    answer = diagnose(complaint(string_1(0.5, -0.7, 0.3, 0.9, -0.4, 0.2)))

    assert answer.strings[0].verdict == "in_tune"
    assert "leave it" in answer.strings[0].statement
    assert "as near to tune" in answer.statement


def test_a_nut_that_may_not_move():
    """Where the nut stays, one fret and the open string tell the saddle."""
    answer = diagnose(complaint(string_1(6.0, frets=[12]), nut_may_move=False)).strings[0]

    assert answer.verdict == "move"
    assert answer.saddle_move.value == pytest.approx(2.26, abs=0.05)
    assert answer.nut_move is answer.nut_alone is None


# ---- What can't be told -----------------------------------------------------------------------------------


def test_one_fret_a_string_cannot_tell():
    """Where one fret per string is all there is, saddle and nut can't be told apart, and what to read next is said."""
    readings = [CentsReading(string, 12, cents) for string, cents in enumerate([6.0, 9.0, -5.0, 4.5, 7.0, 8.0], 1)]
    answer = diagnose(complaint(readings))

    assert [string.verdict for string in answer.strings] == ["undecided"] * 6
    for string in answer.strings:
        assert string.saddle_move is string.nut_move is None
        assert string.saddle_alone is not None
        assert string.nut_alone is not None
        assert "can't tell which" in string.statement
    assert "saddle-or-nut" in slugs(answer.cannot_tell)
    assert answer.spacing.verdict == "undecided"
    assert [(one.string, one.fret) for one in answer.next_readings] == [(n, 1) for n in range(1, 7)]
    assert all(one.saddle_uncertainty is not None for one in answer.next_readings)


def test_without_the_open_string_the_nut_cannot_be_told():
    """Readings against the tuner without fret 0 give the saddle, and leave nut and tuning one."""
    answer = diagnose(complaint(string_1(3.0, 4.0, 5.0, 6.0, 7.0, 9.0), relative_to="tuner"))
    string = answer.strings[0]

    assert string.saddle_move is not None
    assert string.nut_move is string.tuning_offset is None
    assert "nut-or-tuning" in slugs(answer.cannot_tell)
    assert answer.next_readings[0].fret == 0
    assert answer.next_readings[0].nut_uncertainty is not None


def test_one_fret_against_the_tuner_tells_nothing():
    """A single note without its open string tells neither saddle, nor nut, nor tuning."""
    answer = diagnose(complaint(string_1(4.0, frets=[12]), relative_to="tuner"))

    assert answer.strings[0].verdict == "undecided"
    assert answer.strings[0].saddle_move is None
    assert answer.strings[0].saddle_alone is None
    assert "can't tell what is wrong" in answer.strings[0].statement


def test_an_open_string_that_was_read():
    """Against the tuner the open string's own reading is the tuning, and the moves are what they are without it."""
    relative = diagnose(complaint(string_1(3.0, 4.0, 5.0, 6.0, 7.0, 9.0))).strings[0]
    shifted = [CentsReading(1, 0, 2.0), *string_1(5.0, 6.0, 7.0, 8.0, 9.0, 11.0)]
    absolute = diagnose(complaint(shifted, relative_to="tuner")).strings[0]

    assert absolute.tuning_offset.value == pytest.approx(relative.tuning_offset.value + 2.0)
    assert absolute.saddle_move.value == pytest.approx(relative.saddle_move.value)
    assert absolute.nut_move.value == pytest.approx(relative.nut_move.value)
    assert [reading.fret for reading in absolute.readings] == [0, *LOW]


def test_a_coarse_tuner_is_pointed_out():
    """With a tuner of three cents the moves are rough, which is said."""
    answer = diagnose(complaint(string_1(9.0, 10.0, 12.0, 14.0, 15.0, 19.0), tuner_uncertainty=3.0))

    assert "tuner-too-coarse" in slugs(answer.cannot_tell)
    assert answer.next_readings


def test_reading_what_is_proposed_helps():
    """After the proposed reading the uncertainties are what was promised."""
    first = complaint(string_1(6.0, frets=[12]))
    (proposal,) = diagnose(first).next_readings
    after = diagnose(complaint([*first.readings, CentsReading(1, proposal.fret, 1.0)])).strings[0]

    assert after.saddle_move.standard_uncertainty == pytest.approx(proposal.saddle_uncertainty, rel=0.05)
    assert after.nut_move.standard_uncertainty == pytest.approx(proposal.nut_uncertainty, rel=0.05)


def test_the_cause_is_never_named():
    """Whatever was read, the answer says that it is the move and not its cause."""
    assert "cause" in slugs(diagnose(complaint(string_1(3.0, 4.0, 5.0, 6.0, 7.0, 9.0))).cannot_tell)


# ---- Frets and readings that are wrong -------------------------------------------------------------------


@pytest.mark.source("simulation of real strings, the board planted in another rule than the one that was given")
def test_another_rule_is_told_by_a_fine_tuner_only():
    """A rule-of-18 board said to be equal is found out by a tuner of 0.1 cents, and not by one of a cent to fret 12."""
    rng = np.random.default_rng(5)
    instrument = Instrument([*WIDE, 22], EIGHTEENTH)
    fine = diagnose(
        complaint(instrument.heard(rng, 0.1, 0.0, 0.0), frets=22, tuner_uncertainty=0.1, model_uncertainty=0.2)
    )
    coarse = diagnose(complaint(Instrument(LOW, EIGHTEENTH).heard(rng, 1.0, 0.0, 0.0)))

    assert fine.spacing.rules[0].rule == EIGHTEENTH
    assert fine.spacing.rules[0].probability > 0.99
    assert coarse.spacing.verdict == "undecided"
    assert "spacing-rule" in slugs(coarse.cannot_tell)


def test_the_given_rule_is_established_by_many_readings():
    """An equal board read with a fine tuner is established as one."""
    instrument = Instrument([*WIDE, 22])
    readings = instrument.heard(np.random.default_rng(6), 0.1, 0.5, 0.1)
    answer = diagnose(complaint(readings, frets=22, tuner_uncertainty=0.1, model_uncertainty=0.3)).spacing

    assert answer.verdict == "established"
    assert answer.rules[0].rule == EQUAL
    assert "rule that was given" in answer.statement


def test_probabilities_of_the_rules_sum_to_one():
    """The rules that are compared share what there is, the one that was given among them."""
    answer = diagnose(complaint(string_1(3.0, 4.0, 5.0, 6.0, 7.0, 9.0), rule=Divisor(17.9))).spacing

    assert sum(rule.probability for rule in answer.rules) == pytest.approx(1.0)
    assert {rule.rule for rule in answer.rules} == {Divisor(17.9), EQUAL, EIGHTEENTH}


@pytest.mark.source("1200 log2(X/(X - x)): the pitch of a fret that stands x nearer to the saddle")
def test_a_fret_that_is_misplaced():
    """A fret that all strings find sharp is named, with how far it stands from its place."""
    frets = [1, 2, 3, 5, 7, 9, 10, 12]
    off = 1200.0 * math.log2(1.0 / (1.0 - 0.8 / (SCALE / 2.0 ** (7.0 / 12.0))))
    bent = np.where(np.array(frets) == 7, off, 0.0)
    readings = Instrument(frets).heard(np.random.default_rng(8), 0.3, 0.7, -0.1, more=bent)
    answer = diagnose(complaint(readings, tuner_uncertainty=0.3)).spacing
    (found,) = [fret for fret in answer.frets if fret.misplaced]

    assert found.fret == 7
    assert found.displacement.lower <= 0.8 <= found.displacement.upper
    assert found.error.lower <= off <= found.error.upper
    assert "fret 7" in answer.statement


def test_frets_need_strings_to_agree():
    """One string alone, or three strings that share too few frets, say nothing of the frets."""
    alone = diagnose(complaint(string_1(3.0, 4.0, 5.0, 6.0, 7.0, 9.0)))
    few = diagnose(complaint([CentsReading(n, fret, 3.0) for n in (1, 2, 3) for fret in (5, 12)]))

    assert alone.spacing.frets == few.spacing.frets == []


def test_a_wrong_reading_is_named():
    """A note read eight cents wrong is named with its string and fret."""
    readings = Instrument(WIDE).heard(np.random.default_rng(9), 0.5, 0.5, 0.0)
    place = next(i for i, one in enumerate(readings) if (one.string, one.fret) == (2, 5))
    readings[place] = CentsReading(2, 5, readings[place].cents + 8.0)
    (suspect,) = diagnose(complaint(readings, tuner_uncertainty=0.5)).suspect_readings

    assert (suspect.string, suspect.fret) == (2, 5)
    assert suspect.deviation == pytest.approx(8.0, abs=2.5)
    assert "read it again" in suspect.explanation


@pytest.mark.parametrize(
    ("readings", "changes"),
    [
        ([(12, 6.0), (12, -60.0)], {}),
        ([(12, 6.0), (12, -60.0), (5, 2.0)], {}),
        ([(12, 6.0), (12, -60.0), (1, 0.5), (3, 1.0), (5, 2.0), (7, 3.0), (9, 4.0)], {}),
        ([(12, 6.0), (12, -60.0), (5, 2.0)], {"nut_may_move": False}),
        ([(12, 6.0), (12, -60.0), (5, 2.0)], {"relative_to": "tuner"}),
        ([(12, 6.0), (12, -60.0)], {"relative_to": "tuner"}),
        ([(0, 40.0), (0, -40.0), (5, 2.0), (12, 6.0)], {"relative_to": "tuner"}),
        ([(12, 6.0), (12, -60.0), (12, 7.0), (12, -61.0)], {"frets": 12}),
    ],
)
def test_readings_that_contradict_one_another_call_for_no_move(readings, changes):
    """Where one note was read twice, 66 cents apart, no move is told: it is to be read again before any."""
    answer = diagnose(complaint([CentsReading(1, *one) for one in readings], **changes))
    (string,) = answer.strings
    fret = readings[0][0]

    assert string.verdict == "undecided"
    assert string.saddle_move is string.nut_move is string.saddle_alone is string.nut_alone is None
    assert string.tuning_offset is None
    assert "contradict one another" in string.statement
    assert "again before anything is moved" in string.statement
    assert "move the" not in string.statement
    assert "measure again before anything is moved" in answer.statement
    assert "contradictory-readings" in slugs(answer.cannot_tell)
    assert [(one.string, one.fret) for one in answer.next_readings] == [(1, fret)]
    assert "call for a move" not in answer.statement


@pytest.mark.parametrize(("fret", "apart", "contradict"), [(12, 0.5, False), (12, 3.0, True), (0, 0.05, True)])
def test_half_a_cent_between_readings_of_a_fretted_note_is_no_contradiction(fret, apart, contradict):
    """However fine the tuner, a finger does not press twice alike; the open string is nobody's finger's."""
    heard = {0: 0.0, 3: 1.0, 12: 4.0}
    readings = [CentsReading(1, one, cents) for one, cents in heard.items()]
    readings.append(CentsReading(1, fret, heard[fret] + apart))
    fine = {"tuner_uncertainty": 0.001, "model_uncertainty": 0.0, "relative_to": "tuner"}
    answer = diagnose(complaint(readings, **fine))

    assert ("contradict one another" in answer.strings[0].statement) is contradict
    assert ("contradictory-readings" in slugs(answer.cannot_tell)) is contradict


@pytest.mark.parametrize("cents", [(6.0, 6.0, 6.0, 6.0, 6.0, -60.0), (40.0, -40.0, 40.0, -40.0, 40.0, -40.0)])
def test_readings_that_no_move_brings_together_call_for_none(cents):
    """Notes that lie nowhere near any move are to be read again, even where each was read once."""
    answer = diagnose(complaint(string_1(*cents)))

    assert answer.strings[0].verdict == "undecided"
    assert answer.strings[0].saddle_move is None
    assert "scatter" in answer.strings[0].statement
    assert "before anything is moved" in answer.statement


def test_both_of_two_readings_of_a_note_are_suspect():
    """Of two readings of one note that differ, neither is said to be the right one."""
    readings = [CentsReading(1, 12, 6.0), CentsReading(1, 12, -60.0), CentsReading(1, 5, 2.0)]
    answer = diagnose(complaint(readings))

    assert [(one.fret, math.copysign(1.0, one.deviation)) for one in answer.suspect_readings] == [(12, 1.0), (12, -1.0)]


def test_a_string_that_contradicts_itself_spoils_no_other():
    """The other strings keep their moves, and what they say of the spacing, to the last digit."""
    good = Instrument(WIDE).heard(np.random.default_rng(6), 0.2, 0.5, 0.1)
    wrong = [CentsReading(9, 12, 6.0), CentsReading(9, 12, -60.0), CentsReading(9, 5, 2.0)]
    alone = diagnose(complaint(good, tuner_uncertainty=0.2))
    beside = diagnose(complaint([*good, *wrong], tuner_uncertainty=0.2))

    assert beside.strings[:3] == alone.strings
    assert beside.spacing == alone.spacing
    assert "string 9" in beside.statement


@pytest.mark.source("simulation of real strings by the model of Anderson and Beausoleil 2024, seeds fixed")
@pytest.mark.parametrize("rule", [EQUAL, EIGHTEENTH])
@pytest.mark.parametrize("noise", [0.1, 1.0])
def test_honest_readings_are_not_said_to_contradict_one_another(rule, noise):
    """Real strings on boards of either rule, read by an honest tuner, are given moves, all of them."""
    instrument, rng = Instrument([*WIDE, 22], rule), np.random.default_rng(30)
    for _ in range(20):
        readings = instrument.heard(rng, noise, rng.normal(0.0, 1.5, 3), rng.normal(0.0, 0.4, 3))
        answer = diagnose(complaint(readings, rule=rule, frets=22, tuner_uncertainty=noise))
        assert all(string.saddle_move is not None for string in answer.strings)


def test_a_fret_that_is_off_itself_does_not_spoil_the_moves():
    """Where all strings find fret 7 misplaced, the moves are those of the readings without it."""
    frets = [1, 2, 3, 5, 7, 9, 10, 12]
    bent = np.where(np.array(frets) == 7, 12.0, 0.0)
    readings = Instrument(frets).heard(np.random.default_rng(8), 0.3, 0.7, -0.1, more=bent)
    answer = diagnose(complaint(readings, tuner_uncertainty=0.3))
    without = diagnose(complaint([one for one in readings if one.fret != 7], tuner_uncertainty=0.3))

    for string, other in zip(answer.strings, without.strings, strict=True):
        assert string.verdict == "move"
        assert string.saddle_move.value == pytest.approx(other.saddle_move.value, abs=1e-9)
        assert string.saddle_move.standard_uncertainty == pytest.approx(other.saddle_move.standard_uncertainty)
        assert string.p_value == pytest.approx(other.p_value)
        assert "fret 7" in string.statement
        assert next(one for one in string.readings if one.fret == 7).remaining == pytest.approx(12.0, abs=2.0)


def test_a_move_that_is_too_large_is_doubted():
    """Cents that want the saddle a hand's breadth elsewhere are doubted before anything is moved."""
    answer = diagnose(complaint(string_1(100.0, 110.0, frets=[3, 12])))
    single = diagnose(complaint(string_1(140.0, frets=[12])))

    assert "wrong scale, tuning or fret" in answer.strings[0].statement
    assert "wrong scale, tuning or fret" in single.strings[0].statement


def test_readings_may_be_repeated_and_weighed():
    """A note read four times, or once with half the uncertainty, counts alike."""
    model = {"model_uncertainty": 0.0}
    once = diagnose(complaint([*string_1(3.0, frets=[3]), CentsReading(1, 12, 8.0, 0.5)], **model)).strings[0]
    often = diagnose(complaint([*string_1(3.0, frets=[3]), *[CentsReading(1, 12, 8.0)] * 4], **model)).strings[0]

    assert once.saddle_move.value == pytest.approx(often.saddle_move.value)
    assert once.saddle_move.standard_uncertainty == pytest.approx(often.saddle_move.standard_uncertainty)


def test_resolution_adds_to_the_uncertainty():
    """A display in steps of two cents adds its square over twelve (JCGM 100)."""
    fine = diagnose(complaint(string_1(3.0, 8.0, frets=[3, 12]), model_uncertainty=0.0)).strings[0]
    stepped = diagnose(complaint(string_1(3.0, 8.0, frets=[3, 12]), model_uncertainty=0.0, resolution=2.0)).strings[0]

    assert stepped.saddle_move.standard_uncertainty / fine.saddle_move.standard_uncertainty == pytest.approx(
        math.sqrt(1.0 + 4.0 / 12.0)
    )


def test_a_scale_given_either_way():
    """A board named by its true scale has the moves of the same board named by its layout scale."""
    by_layout = diagnose(complaint(string_1(3.0, 4.0, 5.0, 6.0, 7.0, 9.0), rule=EIGHTEENTH))
    by_true = diagnose(
        complaint(
            string_1(3.0, 4.0, 5.0, 6.0, 7.0, 9.0), rule=EIGHTEENTH, scale=by_layout.true_scale, scale_basis="true"
        )
    )

    assert by_true.layout_scale == pytest.approx(SCALE)
    assert by_true.strings[0].saddle_move.value == pytest.approx(by_layout.strings[0].saddle_move.value, abs=1e-9)


@pytest.mark.parametrize(
    ("changes", "refusal", "field"),
    [
        ({"readings": [CentsReading(1, 21, 3.0)]}, ImpossibleReadingError, ("readings", 0, "fret")),
        (
            {"readings": [CentsReading(1, 3, 1.0), CentsReading(1, 5, 700.0)]},
            ImpossibleReadingError,
            ("readings", 1, "cents"),
        ),
        ({"readings": [CentsReading(1, 0, 3.0)]}, TooFewReadingsError, ("readings",)),
        (
            {"rule": Listed((100.0, 200.0)), "frets": 2, "readings": [CentsReading(1, 1, 1.0)]},
            OutsideScaleError,
            ("rule", "cents"),
        ),
        ({"rule": Divisor(2.5), "frets": 20}, ImpossibleSetupError, ("frets",)),
        ({"target": Listed((100.0, 200.0))}, PitchCountError, ("target", "cents")),
    ],
)
def test_what_cannot_have_been_heard_is_refused(changes, refusal, field):
    """A fret off the board, a note a fifth off, no fret at all, a rule without an octave: each is named."""
    with pytest.raises(refusal) as refused:
        diagnose(complaint(**{"readings": string_1(3.0, 4.0, 5.0, 6.0, 7.0, 9.0), **changes}))

    assert refused.value.field == field
