"""Compensation: best setbacks, against the published tables and a general optimiser."""

import json
import math
from dataclasses import fields, replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import least_squares

from scalewright.lutherie.compensation import Preference, best_setbacks, compensate
from scalewright.lutherie.errors import (
    ImpossibleSetupError,
    ImpossibleStringError,
    NoSaddlePositionError,
    OutsideScaleError,
    TooFewPitchesError,
    UnknownPitchError,
)
from scalewright.lutherie.fretting import cents_errors, cents_errors_and_slopes
from scalewright.lutherie.layout import lay_out
from scalewright.lutherie.setup import Action, Heights, Relief, Setup
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal, Listed
from scalewright.lutherie.string_path import FrettedStrings
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.stringing import lay_strings

STRINGS = json.loads((Path(__file__).parents[2] / "reference" / "intonation.json").read_text(encoding="utf-8"))
ANDERSON = "Anderson and Beausoleil, J. Acoust. Soc. Am. 156(1), 683 (2024), tables of RMS setbacks"
PUBLISHED = [pytest.param(rows, id=name) for name, rows in STRINGS["sets"].items()]
POUND_PER_INCH = 453.59237 / 0.0254
"""g/m, from the exact definitions of pound and inch."""

MM_OF_TABLE = 0.01
"""One unit in the last place of the published setbacks. [mm]"""
CENT_OF_TABLE = 0.001
"""One unit in the last place of the published rms. [cent]"""
MM_OF_ANOTHER_OPTIMISER = 1e-6
FLAT = 1e-9
"""What is left of the gradient of half the sum of squares at a minimum. [cent2/mm]"""
MM_OF_FIRST_ORDER = 0.02
"""What terms of second order do to the setbacks. [mm]"""
MM_OF_A_CLOSED_FORM = 0.08
"""The paper's closed form keeps some terms of second order and not others. [mm]"""
MM_OF_A_MAKER = 0.9
"""Another geometry and other strings, set by ear. [mm]"""
MM_OF_A_TENTH = 0.05
"""The rule-of-18 saddle was computed to a tenth of a millimetre. [mm]"""

HEIGHTS = Heights(nut=1.0, saddle_above_nut=4.0)
TREBLE = StringSpec("E4", 0.712, unit_mass=0.374, R=23.6)


def setup(**changes):
    """The paper's board with one nylon treble, with changes."""
    paper = {"rule": EQUAL, "scale": 650.0, "frets": 12, "strings": [TREBLE], "heights": HEIGHTS}
    return Setup(**{**paper, **changes})


def published(rows):
    """Describe a published set as its tables do."""
    return [
        StringSpec(
            pitch=row["pitch"],
            diameter=2.0 * row["radius_mm"],
            unit_mass=row["unit_mass_lb_per_in"] * POUND_PER_INCH,
            R=row["R"],
        )
        for row in rows
    ]


@pytest.mark.source(ANDERSON)
@pytest.mark.parametrize("rows", PUBLISHED)
def test_the_published_setbacks(rows):
    """Saddle and nut setbacks of all 24 strings, and what they leave, with no option set but a free nut."""
    result = compensate(setup(strings=published(rows)), "free")

    for row, string in zip(rows, result.strings, strict=True):
        assert string.saddle_setback == pytest.approx(row["saddle_setback_mm"], abs=MM_OF_TABLE)
        assert string.nut_setback == pytest.approx(row["nut_setback_mm"], abs=MM_OF_TABLE)
        # The table divides by thirteen notes, the open string among them; a fretted string has twelve.
        assert string.rms_cents == pytest.approx(row["rms_cents_13"] * math.sqrt(13.0 / 12.0), abs=CENT_OF_TABLE)


@pytest.mark.source(ANDERSON, "the default string, radius 0.43 mm, R = 25")
@pytest.mark.parametrize("finger", [0, 10])
def test_the_default_string(finger):
    """The optimum of the paper's default string, pressed on the fret and 10 mm behind it."""
    default = STRINGS["default_string"]
    string = StringSpec("E4", 2.0 * default["radius_mm"], unit_mass=0.4, R=default["R"])
    (result,) = compensate(setup(strings=[string], finger_behind_fret=float(finger)), "free").strings
    expected = default[f"optimum_d{finger}"]

    assert result.kappa == default["kappa"]
    assert result.saddle_setback == pytest.approx(expected["saddle_setback_mm"], abs=MM_OF_TABLE)
    assert result.nut_setback == pytest.approx(expected["nut_setback_mm"], abs=MM_OF_TABLE)


@pytest.mark.source(ANDERSON, "closed-form setbacks of the default string, from the model to first order")
def test_the_closed_form_is_near():
    """The paper's closed form and the one to first order in PHYSICS of moves are near the exact optimum."""
    default = STRINGS["default_string"]
    string = StringSpec("E4", 2.0 * default["radius_mm"], unit_mass=0.4, R=default["R"])
    (result,) = compensate(setup(strings=[string]), "free").strings
    # (gamma - 1)(B0 - dS/X0) + dN/X0 + kappa Q/2, Q to second order in the heights, by least squares.
    gamma = 2.0 ** (np.arange(1, 13) / 12.0)
    Q = (gamma * 5.0**2 + gamma / (gamma - 1.0) - 4.0**2) / (2.0 * 650.0**2)
    causes = (gamma - 1.0) * result.B0 + 0.5 * result.kappa * Q
    moves = np.stack([(gamma - 1.0) / 650.0, -np.ones(12) / 650.0], axis=1)
    first_order = np.linalg.lstsq(moves, causes, rcond=None)[0]

    assert [result.saddle_setback, result.nut_setback] == pytest.approx(first_order.tolist(), abs=MM_OF_FIRST_ORDER)
    closed = default["closed_form_d0"]
    assert result.saddle_setback == pytest.approx(closed["saddle_setback_mm"], abs=MM_OF_A_CLOSED_FORM)
    assert result.nut_setback == pytest.approx(closed["nut_setback_mm"], abs=MM_OF_A_CLOSED_FORM)


@pytest.mark.source("G. Byers, American Lutherie 47 (1996), as quoted by a secondary source; geometry unknown")
def test_a_maker_set_his_saddles_so():
    """Setbacks of a nylon set lie in the band of those that a maker published."""
    byers = STRINGS["byers_1996"]
    result = compensate(setup(strings=published(STRINGS["sets"]["nylon-normal"])), "free").strings

    assert [string.pitch for string in result] == byers["strings"]
    for string, saddle, nut in zip(result, byers["saddle_mm"], byers["nut_mm"], strict=True):
        assert string.saddle_setback == pytest.approx(saddle, abs=MM_OF_A_MAKER)
        assert string.nut_setback == pytest.approx(nut, abs=MM_OF_A_MAKER)


@pytest.mark.source(ANDERSON, "recomputed: the physical form of B moves setbacks by a few hundredths")
@pytest.mark.parametrize("rows", PUBLISHED)
def test_the_physical_form_of_stiffness_is_near(rows):
    """With stiffness from length and tension the setbacks move, by less than a tenth of a millimetre."""
    strings = published(rows)
    as_published = compensate(setup(strings=strings), "free").strings
    physical = compensate(setup(strings=strings, stiffness="length_and_tension"), "free").strings

    for one, other in zip(as_published, physical, strict=True):
        assert 0.001 < abs(one.saddle_setback - other.saddle_setback) < 0.065
        assert abs(one.nut_setback - other.nut_setback) < 0.01


@pytest.mark.source("computed independently: ideal string on 650 mm, nut fixed, against the octave-true point")
@pytest.mark.parametrize("basis", ["layout", "true"])
@pytest.mark.parametrize(("highest", "setback"), [(12, -0.4), (15, 0.0), (19, 0.5), (24, 1.0)])
def test_the_saddle_of_a_rule_of_18_board(highest, setback, basis):
    """An ideal string on a rule-of-18 board wants a saddle near the octave-true point, never at the layout end."""
    layout = lay_out(EIGHTEENTH, 650.0, 24, basis)
    none = np.zeros(1)
    ideal = FrettedStrings(
        scale=np.array([layout.true_scale]),
        remaining=np.array([[fret.to_true_end for fret in layout.frets]]),
        target=100.0 * np.arange(1.0, 25.0)[np.newaxis],
        nut_height=none,
        saddle_rise=none,
        finger=none,
        kappa=none,
        gyration=none,
    )
    weights = (np.arange(1, 25) <= highest).astype(float)

    best = best_setbacks(ideal, weights, nut="fixed")

    assert layout.true_scale is not None
    assert best.saddle[0] == pytest.approx(setback, abs=MM_OF_A_TENTH)
    assert best.saddle[0] < layout.layout_scale - layout.true_scale - 1.0
    # The effect is small low on the neck and grows at the upper frets (common practice, no source).
    errors = np.abs(best.uncompensated[0])
    assert errors[4] < errors[14] < errors[23]


# ---- A general optimiser, on a model written out again ------------------------------------------------------


def plain_errors(strings, row, saddle, nut):
    """The model of the paper as it stands there, for one string."""
    # This form of the stretch loses digits, and the optimiser wants them.
    saddle, nut = np.longdouble(saddle), np.longdouble(nut)
    X0, X, b, c, d = (
        getattr(strings, name)[row] for name in ("scale", "remaining", "nut_height", "saddle_rise", "finger")
    )
    kappa, s, beta = strings.kappa[row], strings.gyration[row], strings.boundary
    L0 = np.sqrt((X0 + saddle + nut) ** 2 + c**2)
    b = b if strings.fall is None else b + strings.fall[row]
    L = np.sqrt((X + saddle) ** 2 + (b + c) ** 2)
    behind = L * d / (X + saddle) + np.sqrt((X0 - X + nut - d) ** 2 + (b + (b + c) * d / (X + saddle)) ** 2)
    Q = (L + behind - L0) / (L0 + (0.0 if strings.beyond is None else strings.beyond[row]))
    if strings.stiffness == "position":
        B0, B = np.sqrt(kappa) * s / X0, np.sqrt(kappa) * s / X0 * (X0 / X)
    else:
        B0, B = np.sqrt(kappa) * s / L0, np.sqrt(kappa) * s / (L * np.sqrt(1.0 + kappa * Q))
    f0 = 0.5 / L0 * (1.0 + beta * B0 + (beta**2 + np.pi**2 / 2.0) * B0**2)
    f = 0.5 / L * np.sqrt((1.0 + kappa * Q) * (1.0 + Q)) * (1.0 + beta * B + (beta**2 + np.pi**2 / 2.0) * B**2)
    return (1200.0 * np.log2(f / f0) - strings.target[row]).astype(float)


def random_rule(rng):
    """Draw a rule that a board may have."""
    kind = rng.integers(5)
    rules = (EQUAL, EIGHTEENTH, Divisor(rng.uniform(17.5, 18.2)), Equal(19))
    listed = Listed(tuple(100.0 * np.arange(1, 25) + rng.normal(0.0, 10.0, 24)))
    return rules[kind] if kind < 4 else listed


def random_strings(rng, n):
    """Draw strings that a board may carry, all alike to the last by pitch, gauge and tension."""
    return [
        StringSpec(
            pitch=f"{rng.uniform(60.0, 400.0):.3f} Hz",
            diameter=rng.uniform(0.5, 1.3),
            unit_mass=rng.uniform(0.2, 4.0),
            R=rng.uniform(10.0, 80.0),
        )
        for _ in range(n)
    ]


def general_optimum(strings, row, weights, start):
    """Setbacks that a general optimiser finds from a start, for as many unknowns as the start has."""

    def residuals(moves):
        return np.sqrt(weights) * plain_errors(strings, row, moves[0], moves[1] if len(moves) > 1 else 0.0)

    return least_squares(residuals, start, jac="3-point", xtol=1e-15, ftol=1e-15, gtol=1e-15).x


@pytest.mark.source("scipy.optimize.least_squares, from several starts, on the model written out again")
@pytest.mark.parametrize("seed", range(20))
def test_setbacks_are_those_of_a_general_optimiser(seed):
    """Random strings, five hundred in all, on boards of every rule: the same minimum from any start, and a flat one."""
    rng = np.random.default_rng(seed)
    for _ in range(5):
        frets = int(rng.integers(8, 25))
        board = setup(
            rule=random_rule(rng),
            scale=rng.uniform(330.0, 900.0),
            frets=frets,
            strings=random_strings(rng, 5),
            heights=Heights(rng.uniform(0.1, 1.5), rng.uniform(1.0, 8.0)),
            finger_behind_fret=rng.uniform(0.0, 5.0),
            boundary_factor=rng.uniform(0.0, 2.0),
            stiffness=str(rng.choice(["position", "length_and_tension"])),
            relief=[None, Relief(rng.uniform(0.0, 0.5)), Relief(rng.uniform(0.0, 0.5), "tilt")][rng.integers(3)],
            sliding_length=rng.uniform(0.0, 300.0) * rng.integers(2),
        )
        nut_free = bool(rng.integers(2))
        weights = rng.uniform(0.2, 2.0, frets)
        strings = lay_strings(board).fretted
        best = best_setbacks(strings, weights, nut="free" if nut_free else "fixed")
        errors, by_saddle, by_nut = cents_errors_and_slopes(strings, best.saddle, best.nut)

        assert np.abs((weights * errors * by_saddle).sum(axis=1)).max() < FLAT
        if nut_free:
            assert np.abs((weights * errors * by_nut).sum(axis=1)).max() < FLAT
        for row in range(5):
            ours = [best.saddle[row], best.nut[row]] if nut_free else [best.saddle[row]]
            for start in rng.normal(0.0, 3.0, (2, len(ours))):
                assert ours == pytest.approx(general_optimum(strings, row, weights, start), abs=MM_OF_ANOTHER_OPTIMISER)


# ---- What an answer says ------------------------------------------------------------------------------------


def test_setbacks_count_from_the_true_scale():
    """On a rule-of-18 board the saddle is measured from twice the octave fret, not from the layout scale."""
    result = compensate(setup(rule=EIGHTEENTH, frets=22), "free")
    layout = lay_out(EIGHTEENTH, 650.0, 22)
    (string,) = result.strings

    assert layout.true_scale is not None
    assert (result.setback_from, result.true_scale) == ("true_scale", layout.true_scale)
    assert string.saddle_from_nut == pytest.approx(layout.true_scale + string.saddle_setback + string.nut_setback)
    assert string.saddle_from_fret_12 == pytest.approx(layout.true_scale / 2.0 + string.saddle_setback)


def test_layout_and_true_scale_say_the_same():
    """A board given by its true scale is the board given by its layout scale."""
    by_layout = compensate(setup(rule=EIGHTEENTH), "free")
    by_true = compensate(setup(rule=EIGHTEENTH, scale=by_layout.true_scale, scale_basis="true"), "free")

    assert by_true.strings[0].saddle_setback == pytest.approx(by_layout.strings[0].saddle_setback, abs=1e-9)
    assert by_true.layout_scale == pytest.approx(650.0, rel=1e-14)


def test_without_an_octave_the_layout_scale_is_the_end():
    """Listed pitches that reach no octave have setbacks from the layout scale, and a note that says so."""
    result = compensate(setup(rule=Listed((100.0, 200.0, 300.0, 400.0)), frets=4), "free")

    assert (result.setback_from, result.true_scale, result.octave_fret) == ("layout_scale", None, None)
    assert "no-octave-fret" in {note.slug for note in result.notes}
    assert result.strings[0].saddle_from_fret_12 is None
    assert result.strings[0].saddle_from_nut == pytest.approx(
        650.0 + result.strings[0].saddle_setback + result.strings[0].nut_setback
    )


def test_an_equal_board_and_its_list_are_one():
    """Twelve equal steps listed by hand give the setbacks of the rule."""
    by_rule = compensate(setup(frets=15), "free").strings[0]
    by_list = compensate(setup(rule=Listed(tuple(100.0 * n for n in range(1, 16))), frets=15), "free").strings[0]

    assert by_list.saddle_setback == pytest.approx(by_rule.saddle_setback, abs=1e-9)


def test_a_fixed_nut_stays_and_leaves_more():
    """By default the nut stays where it is; a free one leaves less error, or as much."""
    fixed, free = compensate(setup()).strings[0], compensate(setup(), "free").strings[0]

    assert fixed.nut_setback == 0.0
    assert free.rms_cents < fixed.rms_cents


def test_one_fret_alone_is_made_perfect():
    """Optimised for the twelfth fret alone, that fret is in tune and the answer says what it was for."""
    result = compensate(setup(), "fixed", Preference([12], [1.0]))

    assert result.optimised_for == Preference([12], [1.0])
    assert abs(result.strings[0].cents[11].compensated) < 1e-9
    assert result.strings[0].rms_cents < 1e-9


def test_all_frets_count_alike_unless_asked_otherwise():
    """Without a preference the answer says that every fret of the board counted once."""
    result = compensate(setup(frets=5))

    assert list(result.optimised_for.frets) == [1, 2, 3, 4, 5]
    assert list(result.optimised_for.weights) == [1.0] * 5
    assert result.target_cents == pytest.approx([100.0, 200.0, 300.0, 400.0, 500.0])


def test_weights_are_proportions():
    """Twice all the weights change nothing; weight on the low frets lowers their error."""
    frets = list(range(1, 13))
    alike = compensate(setup(), "fixed", Preference(frets, [1.0] * 12)).strings[0]
    doubled = compensate(setup(), "fixed", Preference(frets, [2.0] * 12)).strings[0]
    low = compensate(setup(), "fixed", Preference(frets, [10.0] * 3 + [1.0] * 9)).strings[0]

    assert doubled.saddle_setback == pytest.approx(alike.saddle_setback, abs=1e-9)
    assert doubled.rms_cents == pytest.approx(alike.rms_cents)
    assert sum(note.compensated**2 for note in low.cents[:3]) < sum(note.compensated**2 for note in alike.cents[:3])


def test_a_fret_without_weight_is_reported_but_does_not_count():
    """Every fret of the board has its cents; only those with weight steer."""
    short = compensate(setup(frets=7), "free").strings[0]
    long = compensate(setup(frets=12), "free", Preference(list(range(1, 8)), [1.0] * 7)).strings[0]

    assert long.saddle_setback == pytest.approx(short.saddle_setback, abs=1e-9)
    assert [note.fret for note in long.cents] == list(range(1, 13))


def test_action_and_height_at_the_saddle_say_the_same():
    """The string stands b + c/2 above fret 12 of an equal board: 1 and 4 mm are an action of 3 mm."""
    by_saddle = compensate(setup(), "free")
    by_action = compensate(setup(heights=Heights(nut=1.0, action=Action(12, 3.0))), "free")

    assert by_action.heights.saddle_above_nut == pytest.approx(4.0)
    assert by_action.strings[0].saddle_setback == pytest.approx(by_saddle.strings[0].saddle_setback, abs=1e-9)


@given(st.floats(0.5, 3.0), st.floats(0.05, 1.0))
def test_lower_action_needs_less_setback(action, less):
    """A string that lies lower needs its saddle less far out (common practice, no source)."""
    heights = [Heights(0.3, action=Action(12, height)) for height in (action, action + less)]
    low, high = (compensate(setup(heights=height)).strings[0].saddle_setback for height in heights)

    assert low < high


@pytest.mark.parametrize("nut", ["fixed", "free"])
def test_thicker_plain_strings_need_more_setback(nut):
    """Of plain steel at one pitch, the thicker needs the saddle further out (common practice, no source)."""
    gauges = [StringSpec("G3", inches * 25.4, core_material="steel") for inches in (0.014, 0.016, 0.018, 0.020)]
    found = [string.saddle_setback for string in compensate(setup(strings=gauges, scale=647.7), nut).strings]

    assert found == sorted(found)
    assert found[0] > 0.5


def test_strings_are_independent():
    """A set gives what each string gives alone, in the order given."""
    strings = published(STRINGS["sets"]["nylon-normal"])
    together = compensate(setup(strings=strings), "free").strings
    alone = [compensate(setup(strings=[string]), "free").strings[0] for string in strings]

    for one, other in zip(together, alone, strict=True):
        assert (one.pitch, one.notes) == (other.pitch, other.notes)
        assert one.saddle_setback == pytest.approx(other.saddle_setback, abs=1e-9)


def test_what_is_left_is_what_the_model_gives():
    """The cents of the answer are the errors of the string at the setbacks of the answer."""
    result = compensate(setup(frets=20), "free").strings[0]
    strings = lay_strings(setup(frets=20)).fretted
    before = cents_errors(strings, np.zeros(1), np.zeros(1))[0]
    after = cents_errors(strings, np.array([result.saddle_setback]), np.array([result.nut_setback]))[0]

    assert [note.uncompensated for note in result.cents] == pytest.approx(before)
    assert [note.compensated for note in result.cents] == pytest.approx(after)
    assert result.rms_cents == pytest.approx(math.sqrt(np.mean(after**2)))


@pytest.mark.parametrize(
    ("changes", "slug"),
    [
        ({}, "boundary"),
        ({}, "stiffness-by-position"),
        ({"rule": Listed(tuple(100.0 * n for n in range(1, 13)))}, "nearest-equal-step"),
        ({"frets": 24, "finger_behind_fret": 12.0}, "finger-behind-previous-fret"),
    ],
)
def test_assumptions_are_stated(changes, slug):
    """What the model takes for granted comes with the answer."""
    assert slug in {note.slug for note in compensate(setup(**changes)).notes}


def test_a_string_too_stiff_for_the_model_is_pointed_out():
    """Where the series of the frequency no longer holds to 0.1 cents, the string says so."""
    rod = StringSpec("C4", 1.5, core_material="steel")
    (string,) = compensate(setup(strings=[rod], scale=330.0)).strings

    assert "stiff-beyond-model" in {note.slug for note in string.notes}


def test_a_string_that_stays_out_of_tune_is_pointed_out():
    """Where even the best saddle leaves a string far out of tune, the string says so."""
    (string,) = compensate(setup(frets=24, heights=Heights(20.0, 100.0))).strings

    assert "still-out-of-tune" in {note.slug for note in string.notes}
    assert string.rms_cents > 100.0


# ---- What is refused ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("changes", "refusal", "field"),
    [
        ({"heights": Heights(1.0)}, ImpossibleSetupError, ("heights",)),
        ({"heights": Heights(1.0, 4.0, Action(12, 3.0))}, ImpossibleSetupError, ("heights",)),
        ({"heights": Heights(0.0, 0.0)}, ImpossibleSetupError, ("heights", "saddle_above_nut")),
        ({"heights": Heights(1.0, -3.0)}, ImpossibleSetupError, ("heights", "saddle_above_nut")),
        ({"heights": Heights(1.0, action=Action(12, 0.0))}, ImpossibleSetupError, ("heights", "action", "height")),
        ({"heights": Heights(1.0, action=Action(13, 3.0))}, ImpossibleSetupError, ("heights", "action", "fret")),
        ({"heights": Heights(1.0, action=Action(0, 3.0))}, ImpossibleSetupError, ("heights", "action", "fret")),
        ({"finger_behind_fret": 40.0}, ImpossibleSetupError, ("finger_behind_fret",)),
        ({"rule": Divisor(2.5), "frets": 4}, ImpossibleSetupError, ("frets",)),
        ({"rule": Listed((100.0, 200.0))}, TooFewPitchesError, ("rule", "cents")),
        ({"rule": Listed((100.0,)), "frets": 1, "scale_basis": "true"}, OutsideScaleError, ("scale_basis",)),
        ({"strings": [TREBLE, replace(TREBLE, pitch="H#9")]}, UnknownPitchError, ("strings", 1, "pitch")),
        ({"strings": [replace(TREBLE, core_diameter=0.8)]}, ImpossibleStringError, ("strings", 0, "core_diameter")),
        ({"strings": [TREBLE, replace(TREBLE, R=1e6)], "scale": 5.0}, NoSaddlePositionError, None),
        ({"strings": [TREBLE, replace(TREBLE, R=1e8)]}, NoSaddlePositionError, ("strings", 1)),
    ],
)
def test_impossible_setups_are_refused(changes, refusal, field):
    """What cannot be strung is refused, and the part at fault is named."""
    with pytest.raises(refusal) as refused:
        compensate(setup(**changes), "free" if refusal is NoSaddlePositionError and field is None else "fixed")

    if field is not None:
        assert refused.value.field == field


@pytest.mark.parametrize(
    ("preference", "nut", "field"),
    [
        (Preference([13], [1.0]), "fixed", ("optimise_for", "frets")),
        (Preference([0], [1.0]), "fixed", ("optimise_for", "frets")),
        (Preference([3, 3], [1.0, 1.0]), "fixed", ("optimise_for", "frets")),
        (Preference([3, 4], [1.0]), "fixed", ("optimise_for", "weights")),
        (Preference([3], [0.0]), "fixed", ("optimise_for", "frets")),
        (Preference([12], [1.0]), "free", ("optimise_for", "frets")),
        (Preference([11, 12], [0.0, 1.0]), "free", ("optimise_for", "frets")),
    ],
)
def test_frets_that_cannot_place_a_saddle_are_refused(preference, nut, field):
    """Frets off the board, twice, without weights or too few for the unknowns are refused."""
    with pytest.raises(ImpossibleSetupError) as refused:
        compensate(setup(), nut, preference)

    assert refused.value.field == field


def test_one_fret_cannot_place_saddle_and_nut():
    """A board of one fret has one reading for two unknowns; the number of frets is at fault."""
    with pytest.raises(ImpossibleSetupError) as refused:
        compensate(setup(frets=1), "free")

    assert refused.value.field == ("frets",)


def test_every_array_of_strings_has_a_row_for_each():
    """What the model takes is of one shape: a row for each string, a column for each fret."""
    strings = lay_strings(setup(strings=published(STRINGS["sets"]["nylon-light"]), frets=20)).fretted
    shapes = {field.name: np.shape(getattr(strings, field.name)) for field in fields(strings)}

    assert shapes.pop("boundary") == shapes.pop("stiffness") == ()
    # What no string of the board has is None.
    assert [shapes.pop(name) for name in ("fall", "pressed", "beyond")] == [(), (), ()]
    assert {shapes.pop("remaining"), shapes.pop("target")} == {(6, 20)}
    assert set(shapes.values()) == {(6,)}
