"""Identification on the wire: what may be said, and what is refused in which words."""

from typing import get_args

import pytest
from pydantic import ValidationError

from scalewright.lutherie.catalogue import CATALOGUE
from scalewright.lutherie.errors import ImpossibleReadingError
from scalewright.lutherie.identification import FreeDivisor
from scalewright.lutherie.measure import NutOffset
from scalewright.lutherie.spacing import EQUAL
from scalewright.wire.candidates import TemperamentName
from scalewright.wire.identification import IdentificationIn

BOARD = '"instrument_uncertainty": 0.05, "frets": [5, 12], "from_nut": [163.05, 325]'


def read(members):
    """The survey that a request's members become."""
    return IdentificationIn.read(f"{{{members}}}".encode()).to_domain().survey


def refusal(members):
    """Place and sentence of the first thing that is refused."""
    with pytest.raises(ValidationError) as refused:
        IdentificationIn.read(f"{{{members}}}".encode())
    first = refused.value.errors()[0]
    return "/".join(str(part) for part in first["loc"]), first["msg"]


def test_the_three_ways_to_give_readings_say_the_same():
    """Running readings, steps and spans from the nut are lists of distances between frets."""
    running = read(BOARD)
    assert (running.procedure.start, running.procedure.end, running.distance) == ((0, 0), (5, 12), (163.05, 325.0))
    steps = read('"instrument_uncertainty": 0.05, "frets": [5, 12], "fret_to_fret": [163.05, 161.95]')
    assert (steps.procedure.start, steps.procedure.end, steps.distance) == ((0, 5), (5, 12), (163.05, 161.95))
    spans = read(
        '"instrument_uncertainty": 0.05, "readings": [{"to": 5, "distance": 163.05}, {"to": 12, "distance": 325}]'
    )
    assert spans == running


def test_frets_left_out_are_one_two_three():
    """Without a list of frets the readings are those of frets 1, 2, 3."""
    assert read('"instrument_uncertainty": 0.05, "from_nut": [36, 71, 103]').procedure.end == (1, 2, 3)


def test_lengths_come_in_the_unit_or_with_their_own():
    """Inches, fractions and millimetres mix; all become millimetres, the uncertainty too."""
    board = read(
        '"from_nut": [1.375, "2 43/64 in", "98.9 mm"], "unit": "in", "instrument_uncertainty": "0.002 in",'
        '"nut_offset": "1/64 in"'
    )
    assert board.distance == pytest.approx((34.925, 67.865625, 98.9), rel=1e-15)
    assert board.procedure.variance[0] == pytest.approx(0.0508**2, rel=1e-12)
    assert board.procedure.nut == NutOffset(0.396875, 0.0)


def test_what_is_known_of_the_nut():
    """Free by default, none at all, or a known length."""
    assert read(BOARD).procedure.nut == NutOffset()
    assert read(BOARD + ', "nut_offset": "free"').procedure.nut == NutOffset(0.0, 0.3)
    assert read(BOARD + ', "nut_offset": "none"').procedure.nut == NutOffset(0.0, 0.0)
    assert read(BOARD + ', "nut_offset": -0.4').procedure.nut == NutOffset(-0.4, 0.0)


@pytest.mark.parametrize(
    ("members", "place", "words"),
    [
        ('"instrument_uncertainty": 0.05', "from_nut", "Give the readings once"),
        (BOARD + ', "fret_to_fret": [1, 2]', "fret_to_fret", "Give the readings once"),
        ('"instrument_uncertainty": 0.05, "from_nut": []', "from_nut", "measure from the nut to fret 12"),
        ('"instrument_uncertainty": 0.05, "readings": []', "readings", "measure from the nut to fret 12"),
        ('"instrument_uncertainty": 0.05, "frets": [1], "from_nut": [36, 71]', "frets", "1 fret and 2 readings"),
        ('"instrument_uncertainty": 0.05, "frets": [0], "from_nut": [36]', "frets/0", "greater than or equal to 1"),
        ('"instrument_uncertainty": 0.05, "frets": [61], "from_nut": [36]', "frets/0", "less than or equal to 60"),
        ('"instrument_uncertainty": 0.05, "frets": [1e9], "from_nut": [36]', "frets/0", "valid integer"),
        ('"instrument_uncertainty": 0.05, "from_nut": [-36]', "from_nut/0", "at least 0.1 mm"),
        ('"instrument_uncertainty": 0.05, "from_nut": [3000.1]', "from_nut/0", "at most 3000 mm"),
        ('"instrument_uncertainty": 0.05, "from_nut": ["25 furlongs"]', "from_nut/0", "unit"),
        ('"instrument_uncertainty": 0.05, "from_nut": [true]', "from_nut/0", "number"),
        ('"from_nut": [36, 71]', "instrument_uncertainty", "0.05 mm for a caliper"),
        ('"instrument_uncertainty": -1, "from_nut": [36, 71]', "instrument_uncertainty", "at least 0 mm"),
        ('"instrument_uncertainty": 0.05, "frets": [5, 3], "fret_to_fret": [36, 71]', "frets", "ascending"),
        ('"instrument_uncertainty": 0.05, "frets": [5], "readings": [{"to": 1, "distance": 36}]', "frets", "leave"),
        (BOARD + ', "nut_offset": "loose"', "nut_offset", '"free"'),
        (BOARD + ', "origin": "bridge"', "origin", "nut"),
        (BOARD + ', "threshold": 0.3', "threshold", "0.5"),
        (BOARD + ', "colour": "red"', "colour", "not permitted"),
        (f'"instrument_uncertainty": 0.05, "from_nut": {[36.0 + k for k in range(61)]}', "from_nut", "60"),
        (f'"instrument_uncertainty": 0.05, "from_nut": {[36.0] * 201}', "from_nut", "200"),
    ],
)
def test_refusals_name_the_field_and_the_fix(members, place, words):
    """Each refusal points at one field and says in plain words what to change."""
    where, sentence = refusal(members)
    assert where == place
    assert words in sentence


def test_a_reading_without_any_uncertainty_is_refused_by_the_craft():
    """Zero is a number and no uncertainty."""
    with pytest.raises(ImpossibleReadingError) as refused:
        read('"instrument_uncertainty": 0, "from_nut": [36, 71]')
    assert refused.value.field == ("instrument_uncertainty",)


def test_candidates_and_priors():
    """Rules, any divisor and temperaments of the catalogue become candidates with their priors."""
    members = (
        '"candidates": [{"rule": "equal", "prior": 0.5}, {"any_divisor": {"lower": 17}, "prior": 0.2},'
        ' {"temperament": "pythagorean"}], "misreading_probability": 0, "significance": 0.01'
    )
    beliefs = IdentificationIn.read(f"{{{BOARD}, {members}}}".encode()).to_domain().beliefs
    assert [candidate.prior for candidate in beliefs.candidates] == [0.5, 0.2, 1.0]
    assert beliefs.fixed_rules == (EQUAL, CATALOGUE["pythagorean"].rule)
    assert beliefs.free_divisor == FreeDivisor(17.0, 19.5)
    assert (beliefs.misreading, beliefs.significance) == (0.0, 0.01)


@pytest.mark.parametrize(
    ("candidates", "place", "words"),
    [
        ("[]", "candidates", "at least 1"),
        ('[{"rule": "equal", "temperament": "pythagorean"}]', "candidates/0", "one of"),
        ('[{"prior": 1}]', "candidates/0", "one of"),
        ('[{"rule": "equal"}, {"rule": "equal"}]', "candidates", "once"),
        ('[{"any_divisor": {}}, {"any_divisor": {"lower": 17}}, {"rule": "equal"}]', "candidates", "once"),
        ('[{"any_divisor": {}}]', "candidates", "At least one"),
        ('[{"rule": "equal"}, {"any_divisor": {"lower": 19, "upper": 17}}]', "candidates/1", "below"),
        ('[{"rule": "equal"}, {"temperament": "dowland_1610"}]', "candidates/1", "10 pitches"),
        ('[{"rule": "equal", "prior": 0}]', "candidates/0/prior", "greater than 0"),
    ],
)
def test_candidates_that_cannot_be_compared(candidates, place, words):
    """Each refusal points at the candidate and says what to change."""
    where, sentence = refusal(f'{BOARD}, "candidates": {candidates}')
    assert where == place
    assert words in sentence


def test_the_names_on_the_wire_are_those_of_the_catalogue():
    """Every temperament of the catalogue can be named, and no other."""
    assert set(get_args(TemperamentName)) == set(CATALOGUE)
