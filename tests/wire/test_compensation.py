"""Compensation on the wire: what a question may say, and how an answer is written."""

import json

import pytest
from pydantic import ValidationError

from scalewright.lutherie.compensation import Preference, compensate
from scalewright.lutherie.setup import Action, Heights
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.temperament import frequency_of
from scalewright.wire.compensation import CompensationIn, CompensationOut

TREBLE = {"pitch": "E4", "diameter": 0.712, "unit_mass": 0.374, "R": 23.6}

CONTRACT = {
    "unit": "mm",
    "scale": 650,
    "rule": "equal",
    "frets": 12,
    "heights": {"nut": 1.0, "saddle_above_nut": 4.0},
    "finger_behind_fret": 0.0,
    "nut": "free",
    "strings": [TREBLE],
}
"""The question that the contract fixes to the letter."""

ROUNDING = 1e-13


def read(**changes):
    """Read the question of the contract, with changes; what is None is left out."""
    document = {name: value for name, value in {**CONTRACT, **changes}.items() if value is not None}
    return CompensationIn.read(json.dumps(document).encode())


def written(question):
    """Write the answer to a question and read it as a stranger would."""
    answer = CompensationOut.model_validate(compensate(*question.to_domain()))
    return json.loads(answer.model_dump_json(context=dict(question.answer_context)))


def test_the_question_of_the_contract():
    """Each member reaches the craft under its own meaning."""
    setup, nut, preference, *_ = read().to_domain()

    assert (setup.rule, setup.scale, setup.frets, setup.scale_basis) == (EQUAL, 650.0, 12, "layout")
    assert setup.heights == Heights(1.0, 4.0)
    assert setup.strings == [StringSpec("E4", 0.712, unit_mass=0.374, R=23.6)]
    assert (setup.finger_behind_fret, nut, preference) == (0.0, "free", None)


def test_what_is_left_out():
    """The nut is fixed, the board has twelve frets, the finger is on the fret, and all frets count alike."""
    setup, nut, preference, *_ = read(nut=None, frets=None, finger_behind_fret=None).to_domain()

    assert (setup.frets, setup.finger_behind_fret, nut, preference) == (12, 0.0, "fixed", None)
    assert (setup.boundary_factor, setup.stiffness) == (1.0, "position")


def test_every_option():
    """Weights, action, core, tension and model choices come through."""
    setup, _, preference, *_ = read(
        unit="in",
        scale="24 3/4 in",
        rule={"name": "eighteenth"},
        scale_basis="true",
        heights={"nut": 0.02, "action": {"fret": 12, "height": "5/64 in"}},
        optimise_for={"frets": [1, 12], "weights": [2, 0.5]},
        boundary_factor=1.1,
        stiffness="length_and_tension",
        strings=[{"pitch": 330, "tension": 70, "kappa": 150, "core_material": "steel", "core_diameter": "0.010 in"}],
    ).to_domain()

    assert (setup.rule, setup.scale, setup.scale_basis) == (EIGHTEENTH, 24.75 * 25.4, "true")
    assert setup.heights == Heights(0.02 * 127 / 5, action=Action(12, 5 / 64 * 25.4))
    assert preference == Preference([1, 12], [2.0, 0.5])
    assert (setup.boundary_factor, setup.stiffness) == (1.1, "length_and_tension")
    (string,) = setup.strings
    assert (string.tension, string.kappa, string.core_material, string.core_diameter) == (70.0, 150.0, "steel", 0.254)
    assert frequency_of(string.pitch) == 330.0


def test_weights_left_out_are_all_one():
    """Frets without weights count alike."""
    assert read(optimise_for={"frets": [3, 5]}).to_domain().preference == Preference([3, 5], [1.0, 1.0])


def test_the_answer_of_the_contract():
    """Names and, to the digits shown there, values of the answer that the contract fixes."""
    answer = written(read())
    (string,) = answer["strings"]

    assert answer["unit"] == "mm"
    assert list(string["cents"][0]) == ["fret", "uncompensated", "compensated"]
    assert round(string["frequency_hz"], 4) == 329.6276
    assert round(string["tension_n"], 1) == 68.7
    assert round(string["kappa"], 1) == 48.2
    assert round(string["B0"], 4) == 0.0019
    assert round(string["saddle_setback"], 2) == 1.48
    assert round(string["nut_setback"], 2) == -0.36
    assert round(string["rms_cents"], 3) == 0.149
    assert round(string["cents"][0]["uncompensated"], 2) == 1.60
    assert string["saddle_from_nut"] == pytest.approx(650.0 + string["saddle_setback"] + string["nut_setback"])
    assert string["saddle_from_fret_12"] == pytest.approx(325.0 + string["saddle_setback"])


def test_inches_in_and_out():
    """The same board asked in inches has the same answer, its lengths divided by 25.4 and nothing else."""
    inches = {
        "unit": "in",
        "scale": 650 / 25.4,
        "heights": {"nut": 1 / 25.4, "saddle_above_nut": 4 / 25.4},
        "strings": [{"pitch": "E4", "diameter": 0.712 / 25.4, "unit_mass": 0.374, "R": 23.6}],
    }
    metric, imperial = written(read()), written(read(**inches))
    lengths = {"saddle_setback", "nut_setback", "saddle_from_nut", "saddle_from_fret_12"}

    assert imperial["unit"] == "in"
    for name in ("layout_scale", "true_scale"):
        assert imperial[name] * 25.4 == pytest.approx(metric[name], rel=ROUNDING)
    assert imperial["heights"]["saddle_above_nut"] * 25.4 == pytest.approx(4.0, rel=ROUNDING)
    for name, value in metric["strings"][0].items():
        other = imperial["strings"][0][name]
        if name in lengths:
            assert other * 25.4 == pytest.approx(value, rel=1e-9)
        elif isinstance(value, float):
            assert other == pytest.approx(value, rel=1e-9)


def test_the_answer_states_what_it_was_optimised_for():
    """Frets, weights, targets and where setbacks count from stand in every answer."""
    answer = written(read(optimise_for={"frets": [5, 7, 12]}))

    assert answer["optimised_for"] == {"frets": [5, 7, 12], "weights": [1.0, 1.0, 1.0]}
    assert answer["target_cents"] == pytest.approx([100.0 * n for n in range(1, 13)])
    assert answer["setback_from"] == "true_scale"
    assert all(set(note) == {"slug", "text"} for note in answer["notes"])


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("scale",), 0),
        (("scale",), True),
        (("frets",), 0),
        (("frets",), 61),
        (("frets",), 12.0),
        (("heights",), None),
        (("heights",), {"saddle_above_nut": 4}),
        (("heights", "nut"), -1),
        (("heights", "below"), 1),
        (("nut",), "loose"),
        (("finger_behind_fret",), -1),
        (("optimise_for",), {"frets": []}),
        (("optimise_for",), {"frets": [1], "weights": [-1]}),
        (("optimise_for",), {"frets": [61]}),
        (("boundary_factor",), 3),
        (("stiffness",), "none"),
        (("strings",), []),
        (("strings",), [TREBLE] * 25),
        (("strings", 0, "pitch"), None),
        (("strings", 0, "pitch"), True),
        (("strings", 0, "pitch"), 5),
        (("strings", 0, "pitch"), 1e9),
        (("strings", 0, "pitch"), "E" * 33),
        (("strings", 0, "pitch"), {}),
        (("strings", 0, "unit_mass"), 0),
        (("strings", 0, "unit_mass"), -0.374),
        (("strings", 0, "unit_mass"), "0.374"),
        (("strings", 0, "diameter"), 0),
        (("strings", 0, "diameter"), "thick"),
        (("strings", 0, "R"), 0),
        (("strings", 0, "kappa"), 1e9),
        (("strings", 0, "tension"), -1),
        (("strings", 0, "core_material"), "unobtainium"),
        (("strings", 0, "colour"), "red"),
    ],
)
def test_what_a_question_may_not_say(path, value):
    """A value that cannot be is refused, at the place where it stands."""
    document = json.loads(json.dumps(CONTRACT))
    place = document
    for part in path[:-1]:
        place = place[part]
    place[path[-1]] = value

    with pytest.raises(ValidationError) as refused:
        CompensationIn.read(json.dumps(document).encode())

    assert all(error["loc"][: len(path)] == path for error in refused.value.errors())


@pytest.mark.parametrize("number", ["NaN", "Infinity", "-Infinity", "1e400"])
def test_what_is_no_number_is_refused(number):
    """Neither NaN nor infinity comes in, however it is written."""
    raw = json.dumps(CONTRACT).replace("0.374", number).encode()

    with pytest.raises(ValidationError):
        CompensationIn.read(raw)
