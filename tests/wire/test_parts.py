"""Parts on the wire: what may be said of one, and what is refused."""

import json

import pytest
from pydantic import ValidationError

from scalewright.lutherie.errors import ImpossibleReadingError
from scalewright.lutherie.label import Label
from scalewright.lutherie.measure import Instrument, Reading, survey
from scalewright.lutherie.part import FanScale, Part, Travel
from scalewright.lutherie.spacing import EIGHTEENTH
from scalewright.wire.assembly import AssemblyIn

INCH = 25.4
BRIDGE = {"id": "bridge", "kind": "bridge", "true_scale": 25.34}


def first_part(members, unit="in"):
    """The part of the craft that a part's members become."""
    question = {"unit": unit, "parts": [{"id": "a part", "kind": "board"} | members, BRIDGE]}
    return AssemblyIn.read(json.dumps(question).encode()).to_domain().parts[0]


def refusal(members):
    """Place and sentence of the first thing that is refused about a part."""
    with pytest.raises(ValidationError) as refused:
        first_part(members)
    first = refused.value.errors()[0]
    path = [str(part) for part in first["loc"] if ":" not in str(part)]
    return "/".join(path), first["msg"]


def test_every_way_to_define_a_part():
    """Scales, rule, label, readings, tolerance, setback, datum and travel reach the craft in millimetres."""
    found = first_part(
        {
            "true_scale": 24.57,
            "layout_scale": "24 3/4 in",
            "rule": "eighteenth",
            "label": "24.75 in",
            "readings": {"instrument_uncertainty": "0.05 mm", "frets": [12], "from_nut": [12.285]},
            "tolerance": "0.1 mm",
            "made_to": "string_length",
            "setback": "2 mm",
            "datum": "fret",
            "datum_fret": 14,
            "frets": 20,
            "body_joint_fret": 14,
            "saddle_travel": {"towards_nut": "1 mm"},
        }
    )
    assert found == Part(
        id="a part",
        kind="board",
        true_scale=24.57 * 127 / 5,
        layout_scale=24.75 * INCH,
        rule=EIGHTEENTH,
        label=Label(24.75 * INCH, "in", 0.01 * INCH),
        survey=survey([Reading(0, 12, 12.285 * 127 / 5)], Instrument(0.05)),
        tolerance=0.1,
        made_to="string_length",
        setback=2.0,
        datum="fret",
        datum_fret=14,
        frets=20,
        body_joint_fret=14,
        travel=Travel(1.0, 0.0),
    )


def test_a_fan_board_has_two_true_scales():
    """Both sides are lengths of their own."""
    assert first_part({"true_scale": {"bass": "27 in", "treble": 25.5}}).true_scale == FanScale(
        27 * 127 / 5, 25.5 * 127 / 5
    )


def test_readings_between_frets_and_from_a_zero_fret():
    """Spans and a zero fret are taken as an identification takes them, and their lengths are not converted twice."""
    found = first_part(
        {
            "readings": {
                "readings": [{"from": 0, "to": 12, "distance": 12.5, "uncertainty": "0.1 mm"}],
                "origin": "zero_fret",
                "nut_offset": "none",
            }
        }
    ).survey
    assert found.distance == pytest.approx((12.5 * INCH,))
    assert found.procedure.zero_fret
    assert found.procedure.variance == pytest.approx((0.01,))


@pytest.mark.parametrize(
    ("members", "place", "words"),
    [
        ({"kind": "plank"}, "parts/0/kind", "board"),
        ({"id": ""}, "parts/0/id", "at least 1"),
        ({"id": "<b>"}, "parts/0/id", "pattern"),
        ({"id": "bridge"}, "parts/1/id", "used before"),
        ({"true_scale": 0}, "parts/0/true_scale", "at least 1 mm"),
        ({"true_scale": {"bass": 27}}, "parts/0/true_scale/treble", "required"),
        ({"tolerance": 0}, "parts/0/tolerance", "at least 0.000001 mm"),
        ({"datum": "fret"}, "parts/0", "datum_fret"),
        ({"datum_fret": 12}, "parts/0", "datum_fret"),
        ({"colour": "red"}, "parts/0/colour", "not permitted"),
        ({"readings": [1]}, "parts/0/readings", "object"),
        ({"readings": {"from_nut": [], "instrument_uncertainty": 0.1}}, "parts/0/readings/from_nut", "no reading"),
        ({"readings": {"from_nut": [12.3], "frets": [1, 2]}}, "parts/0/readings/frets", "do not match"),
        ({"readings": {"from_nut": [12.3]}}, "parts/0/readings/instrument_uncertainty", "missing"),
        ({"readings": {"unit": "mm", "from_nut": [12.3]}}, "parts/0/readings/unit", "not permitted"),
    ],
)
def test_refusals_name_the_place(members, place, words):
    """Each refusal points into the part and says what to change."""
    where, sentence = refusal(members)
    assert where == place
    assert words in sentence


def test_readings_without_any_uncertainty_are_refused_in_their_place():
    """What the craft refuses about readings points into the part."""
    with pytest.raises(ImpossibleReadingError) as refused:
        first_part({"readings": {"from_nut": [12.3], "instrument_uncertainty": 0}})
    assert refused.value.field == ("parts", 0, "readings", "instrument_uncertainty")
