"""Intonation: the errors of a strung board, and the causes that add up to them."""

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from scalewright.lutherie.errors import ImpossibleSetupError, PitchCountError
from scalewright.lutherie.fretting import cents_errors
from scalewright.lutherie.intonation import Setbacks, intonate
from scalewright.lutherie.setup import Action, Heights, Relief, Setup
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Equal, Listed, cents
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.stringing import lay_strings

STRINGS = json.loads((Path(__file__).parents[1] / "reference" / "intonation.json").read_text(encoding="utf-8"))
ANDERSON = "Anderson and Beausoleil, J. Acoust. Soc. Am. 156(1), 683 (2024)"
TREBLE = StringSpec("E4", 0.712, unit_mass=0.374, R=23.6)
BASS = StringSpec("E2", 1.092, unit_mass=5.47, R=28.6)

CENT_OF_TABLE = 0.005
NOTHING = 1e-9
"""Rounding. [cent]"""


def board(**changes):
    """The paper's board with two strings, with changes."""
    paper = {"rule": EQUAL, "scale": 650.0, "frets": 12, "strings": [TREBLE, BASS], "heights": Heights(1.0, 4.0)}
    return Setup(**{**paper, **changes})


def played(setbacks=None, **changes):
    """Errors of the board's strings."""
    setup = board(**changes)
    return intonate(setup, setbacks or [Setbacks()] * len(setup.strings))


def total(answer, string=0):
    """Errors of one string."""
    return [note.cents for note in answer.strings[string].cents]


@pytest.mark.source(ANDERSON, "default string, errors at frets 1 to 12, recomputed from the model")
@pytest.mark.parametrize("finger", [0, 10])
def test_the_default_string(finger):
    """The paper's default string, pressed on the fret and 10 mm behind it."""
    default = STRINGS["default_string"]
    string = StringSpec("E4", 2.0 * default["radius_mm"], unit_mass=0.4, R=default["R"])
    answer = played(strings=[string], finger_behind_fret=float(finger))

    assert total(answer) == pytest.approx(default[f"uncompensated_cents_frets_1_to_12_d{finger}"], abs=CENT_OF_TABLE)


@pytest.mark.parametrize(
    "changes",
    [
        {},
        {"rule": EIGHTEENTH, "frets": 22},
        {"relief": Relief(0.3), "frets": 20},
        {"relief": Relief(0.3, "tilt")},
        {"finger_behind_fret": 6.0, "fret_height": 1.2, "frets": 19},
        {"sliding_length": 150.0},
        {"stiffness": "length_and_tension"},
        {"target": Equal(19)},
    ],
)
def test_the_causes_add_up_to_the_error(changes):
    """Spacing, stretch, stiffness and geometry, added in this order, are the error to the last digit."""
    setbacks = [Setbacks(1.9, -0.4), Setbacks(-0.7, 0.3)]
    answer = played(setbacks, **changes)
    errors = cents_errors(lay_strings(board(**changes)).fretted, np.array([1.9, -0.7]), np.array([-0.4, 0.3]))

    for string, row in zip(answer.strings, errors.tolist(), strict=True):
        for note in string.cents:
            assert note.spacing + note.stretch + note.stiffness + note.geometry == note.cents
        assert [note.cents for note in string.cents] == pytest.approx(row, abs=NOTHING)


def test_an_ideal_string_has_spacing_alone():
    """A limp string that does not stretch, at the height of the frets, is out by the spacing rule alone."""
    string = StringSpec("E4", 0.7, unit_mass=0.4, kappa=1e-12, B0=0.0)
    answer = played(rule=EIGHTEENTH, strings=[string], heights=Heights(1e-9, 0.0))
    # The rule of 18 with its saddle at the octave-true point.
    true = [
        1200.0 * np.log2(answer.true_scale / (answer.true_scale - x))
        for x in answer.layout_scale * (1.0 - (17.0 / 18.0) ** np.arange(1, 13))
    ]

    assert total(answer) == pytest.approx(np.array(true) - 100.0 * np.arange(1, 13), abs=1e-6)
    for note in answer.strings[0].cents:
        assert (note.stretch, note.stiffness, note.geometry) == pytest.approx((0.0, 0.0, 0.0), abs=1e-6)


@pytest.mark.source("common knowledge of the ideal string: 1200 log2(2 x 325/651 x 651/652)")
def test_a_saddle_too_far_out_is_flat():
    """On 650 mm a saddle 1 mm too far out is 2.66 cents flat at fret 12, which geometry shows."""
    before, after = played(), played([Setbacks(1.0), Setbacks(1.0)])

    moved = after.strings[0].cents[11].geometry - before.strings[0].cents[11].geometry
    assert moved == pytest.approx(-2.66, abs=0.005)
    assert after.strings[0].saddle_from_nut == pytest.approx(651.0)


def test_each_cause_answers_to_its_own():
    """A thicker string changes stiffness, a stretchier one stretch, another rule spacing, and each only that."""
    plain = played(strings=[TREBLE]).strings[0].cents[6]
    thick = played(strings=[replace(TREBLE, diameter=1.0)]).strings[0].cents[6]
    old = played(strings=[TREBLE], rule=EIGHTEENTH).strings[0].cents[6]

    assert thick.stiffness > plain.stiffness
    assert (thick.spacing, thick.stretch, thick.geometry) == (plain.spacing, plain.stretch, plain.geometry)
    assert abs(old.spacing) > 1.0 > abs(plain.spacing) + 0.9
    assert old.stretch == pytest.approx(plain.stretch, rel=0.1)


def test_relief_lifts_the_strings_over_the_middle():
    """Relief adds to the stretch where the fret tops lie low, and nothing at the first and the last fret."""
    flat, hollow = played(frets=20), played(frets=20, relief=Relief(0.4))
    more = np.array(
        [b.stretch - a.stretch for a, b in zip(flat.strings[0].cents, hollow.strings[0].cents, strict=True)]
    )

    assert more[[0, -1]] == pytest.approx([0.0, 0.0], abs=NOTHING)
    assert (more[1:-1] > 0.0).all()
    assert "relief-parabola" in {note.slug for note in hollow.notes}
    assert played(relief=Relief(0.0)).strings[0].cents == played().strings[0].cents


@pytest.mark.source(ANDERSON, "relief as a tilt: b replaced by b + m (X0 - X_n)")
def test_a_tilt_is_a_higher_nut_fret_by_fret():
    """With the tilt each fret sounds as on a board whose nut is higher by m (X0 - X_n)."""
    tilted = played(relief=Relief(0.25, "tilt"))
    slope = 2.0 * 0.25 / 650.0

    for fret in (1, 7, 12):
        lift = slope * 650.0 * (1.0 - 2.0 ** (-fret / 12.0))
        raised = played(heights=Heights(1.0 + lift, 4.0))
        assert total(tilted)[fret - 1] == pytest.approx(total(raised)[fret - 1], abs=NOTHING)


def test_action_is_measured_over_the_fret():
    """With relief the action at fret 12 is the gap over that fret's own top."""
    answer = played(heights=Heights(1.0, action=Action(12, 3.0)), frets=20, relief=Relief(0.4))
    x = 650.0 * 2.0 ** (-np.arange(1, 21) / 12.0)
    along = (x[0] - x[11]) / (x[0] - x[-1])
    over = 1.0 + answer.heights.saddle_above_nut * 0.5 + 4.0 * 0.4 * along * (1.0 - along)

    assert over == pytest.approx(3.0)


def pressed_path(fret, depth, behind, b, c):
    """Speaking length and length behind the fret, of a string pressed to the board, by hypotenuses."""
    x0, x = 650.0, 650.0 * 2.0 ** (-np.arange(0, 13) / 12.0)
    here, previous = x[fret], x[fret - 1]
    nut, finger, before = (x0 - here, b), (behind, -depth), (previous - here, 0.0)
    speaking = np.hypot(here, b + c)
    straight = np.hypot(nut[0] - finger[0], nut[1] - finger[1])
    level = finger[1] + (nut[1] - finger[1]) * (before[0] - finger[0]) / (nut[0] - finger[0])
    if fret > 1 and before[0] > finger[0] and level < 0.0:
        straight = np.hypot(before[0] - finger[0], depth) + np.hypot(nut[0] - before[0], nut[1])
    return speaking, np.hypot(*finger) + straight


@pytest.mark.source("the path of the string by hypotenuses, over the fret before where that is in the way")
@pytest.mark.parametrize("fret", [1, 2, 5, 12])
@pytest.mark.parametrize("depth", [0.2, 1.2])
def test_a_string_pressed_to_the_board(fret, depth):
    """A string that the finger presses down to the board is stretched by its whole detour."""
    answer = played(strings=[TREBLE], finger_behind_fret=6.0, fret_height=depth)
    speaking, behind = pressed_path(fret, depth, 6.0, 1.0, 4.0)
    open_length = np.hypot(650.0, 4.0)
    Q = (speaking + behind - open_length) / open_length
    kappa = 2.0 * 23.6 + 1.0

    assert answer.strings[0].cents[fret - 1].stretch == pytest.approx(
        600.0 * np.log2((1.0 + kappa * Q) * (1.0 + Q)), abs=1e-6
    )
    assert "pressed-to-the-board" in {note.slug for note in answer.notes}


def test_a_string_that_slides_stretches_less():
    """Length beyond nut and saddle takes its share of the stretch."""
    held, sliding = played(), played(sliding_length=650.0)

    for a, b in zip(held.strings[0].cents, sliding.strings[0].cents, strict=True):
        assert b.stretch == pytest.approx(a.stretch / 2.0, rel=0.02)


def test_a_board_against_its_own_temperament():
    """Listed positions against the same list of pitches leave spacing without error."""
    pitches = (112.0, 204.0, 316.0, 386.0, 498.0, 590.0, 702.0, 814.0, 884.0, 1018.0, 1088.0, 1200.0)
    own = played(rule=Listed(pitches), target=Listed(pitches))
    equal = played(rule=Listed(pitches))

    assert [note.spacing for note in own.strings[0].cents] == pytest.approx([0.0] * 12, abs=NOTHING)
    assert [note.spacing for note in equal.strings[0].cents] == pytest.approx(
        np.array(pitches) - 100.0 * np.arange(1, 13), abs=NOTHING
    )
    assert own.target_cents == list(pitches)


def test_a_target_that_repeats():
    """Pitches of one octave that repeat serve a board of any length."""
    octave = tuple(cents(EQUAL, 12))
    answer = played(frets=20, target=Listed(octave, repeat=True))

    assert answer.target_cents == pytest.approx([100.0 * n for n in range(1, 21)])


def test_the_worst_note_is_named():
    """Each string says where it is furthest off, and its root mean square."""
    answer = played(rule=EIGHTEENTH, frets=22)
    errors = np.array(total(answer))

    assert answer.strings[0].worst_fret == int(np.argmax(np.abs(errors))) + 1
    assert answer.strings[0].worst_cents == errors[answer.strings[0].worst_fret - 1]
    assert answer.strings[0].rms_cents == pytest.approx(np.sqrt(np.mean(errors**2)))


@pytest.mark.parametrize(
    ("setbacks", "changes", "refusal", "field"),
    [
        ([Setbacks(), Setbacks(-330.0)], {}, ImpossibleSetupError, ("strings", 1, "saddle_setback")),
        ([Setbacks(), Setbacks(0.0, -40.0)], {}, ImpossibleSetupError, ("strings", 1, "nut_setback")),
        (None, {"target": Listed((100.0, 200.0))}, PitchCountError, ("target", "cents")),
        (None, {"target": Listed(tuple(100.0 * n for n in range(1, 14)))}, PitchCountError, ("target", "cents")),
        (None, {"fret_height": 1.0}, ImpossibleSetupError, ("finger_behind_fret",)),
        (None, {"relief": Relief(0.2), "frets": 2}, ImpossibleSetupError, ("relief",)),
        (None, {"heights": Heights(0.2, 0.0), "relief": Relief(-0.4)}, ImpossibleSetupError, None),
    ],
)
def test_what_cannot_be_played_is_refused(setbacks, changes, refusal, field):
    """A saddle in front of the last fret, a nut beyond fret 1, a wrong number of pitches: each is named."""
    with pytest.raises(refusal) as refused:
        played(setbacks, **changes)

    if field is not None:
        assert refused.value.field == field
