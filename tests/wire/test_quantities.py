"""Lengths in questions and answers: numbers in the unit asked for, texts with their own."""

import json
from fractions import Fraction
from typing import Annotated

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import Field, ValidationError

from scalewright.lutherie.estimate import Estimate
from scalewright.wire.quantities import (
    AnyLength,
    Distance,
    Length,
    LengthBetween,
    LengthEstimate,
    LengthOut,
    Question,
    Reply,
    Scale,
    Uncertainty,
    from_millimetres,
    to_millimetres,
    to_shop_fraction,
)

TWO_UNITS = 4.5e-16
"""Relative; two units in the last place."""


class Nut(Question):
    """A part of a board, one level down."""

    height: Length
    """Height."""


class Board(Question):
    """A question with every kind of length."""

    scale: Scale
    """Scale."""
    nut: Nut | None = None
    """Nut."""
    distances: list[Distance] = Field(default_factory=list)
    """Distances."""
    shift: AnyLength = 0.0
    """Shift."""
    uncertainty: Uncertainty = 0.0
    """Uncertainty."""


class BoardOut(Reply):
    """An answer with lengths."""

    scale: LengthOut
    """Scale."""
    octave: LengthOut | None
    """Octave."""
    measured: LengthEstimate
    """Measured."""


def read(**members):
    """Read a question from its JSON text."""
    return Board.read(json.dumps(members).encode())


def fault(**members):
    """Return the only fault of a question."""
    with pytest.raises(ValidationError) as refused:
        read(**members)
    (error,) = refused.value.errors(include_url=False)
    return error["loc"], error["type"], error["msg"]


def test_numbers_are_in_the_unit_of_the_question():
    """A bare number in inches becomes millimetres on every level, wherever the unit stands in the text."""
    board = read(scale=24.75, nut={"height": 0.25}, distances=[1, 1.375], shift=-0.5, uncertainty=0.002, unit="in")

    assert board.scale == 628.65
    assert board.distances == [25.4, 34.925]
    assert board.shift == -12.7
    assert board.uncertainty == pytest.approx(0.0508, rel=TWO_UNITS)


def test_a_nested_number_is_in_the_unit_of_the_question():
    """A part of a question has no unit of its own: a bare number there is in the unit of the whole."""
    board = read(scale=24.75, nut={"height": 0.25}, unit="in")

    assert board.nut is not None
    assert board.nut.height == 6.35


def test_a_text_brings_its_own_unit():
    """A length with a unit is that, whatever the unit of the question."""
    assert read(scale="628.65 mm", unit="in").scale == 628.65
    assert read(scale="24 3/4 in", unit="mm").scale == 628.65


def test_a_bare_text_is_refused_in_a_body_and_read_in_a_query():
    """In JSON a number has no quotes; in a query everything is text."""
    assert fault(scale="24.75", unit="in")[:2] == (("scale",), "length_unreadable")
    assert Board.read_query({"scale": "24.75", "unit": "in"}).scale == 628.65


@pytest.mark.parametrize("value", [True, None, [650], {"mm": 650}])
def test_what_is_no_length_at_all(value):
    """Neither true nor null nor a list is taken for a number."""
    assert fault(scale=value)[:2] == (("scale",), "length_type")


@pytest.mark.parametrize("value", [0, -1, 0.999, 10_000.1, 1e308, 10**400, -(10**400), 5e-324, "0 mm", "-650 mm"])
def test_scales_that_nobody_builds(value):
    """A scale lies between 1 mm and 10 m; the refusal says so in both units."""
    where, code, words = fault(scale=value)

    assert (where, code) == (("scale",), "length_out_of_range")
    assert "1 mm (0.03937 in)" in words
    assert "10000 mm (393.7 in)" in words


@pytest.mark.parametrize("value", ["NaN", "Infinity", "-Infinity", "1e309"])
def test_numbers_that_are_none(value):
    """Not-a-numbers and infinities, which the JSON reader lets pass, are no lengths."""
    with pytest.raises(ValidationError) as refused:
        Board.read(f'{{"scale": {value}}}'.encode())

    assert refused.value.errors()[0]["type"] == "length_out_of_range"


@pytest.mark.parametrize(
    ("members", "code"),
    [
        ({"scale": 650, "nut": {"height": 0}}, "length_out_of_range"),
        ({"scale": 650, "distances": [0, -0.001]}, "length_out_of_range"),
        ({"scale": 650, "uncertainty": 100.1}, "length_out_of_range"),
        ({"scale": 650, "uncertainty": -0.1}, "length_out_of_range"),
        ({"scale": 650, "shift": 10_001}, "length_out_of_range"),
        ({"scale": 650, "scael": 1}, "extra_forbidden"),
        ({"scale": 650, "unit": "cm"}, "literal_error"),
    ],
)
def test_each_kind_of_length_has_its_bounds(members, code):
    """Lengths are above zero, distances not below, uncertainties up to 100 mm; unknown fields are refused."""
    assert fault(**members)[1] == code


def test_a_question_in_inches_needs_its_context():
    """Validating inches behind the back of Question.read fails loudly instead of taking them for millimetres."""
    assert Board.model_validate({"scale": 650.0}).scale == 650.0
    with pytest.raises(TypeError, match=r"Question\.read"):
        Board.model_validate({"scale": 25.5, "unit": "in"})


@given(st.integers(1, 128 * 390))
def test_shop_fractions_survive_the_way_there_and_back(parts):
    """Any number of 128ths of an inch, sent as a number, comes back as the same number."""
    inches = parts / 128

    assert from_millimetres(to_millimetres(inches, "in"), "in") == inches


@given(st.floats(0.001, 400.0))
def test_conversion_is_exact_to_two_units_in_the_last_place(inches):
    """25.4 mm to the inch, both ways (International yard and pound agreement, 1959)."""
    exact = Fraction(inches) * Fraction(254, 10)

    assert to_millimetres(inches, "in") == pytest.approx(float(exact), rel=TWO_UNITS)
    assert from_millimetres(to_millimetres(inches, "in"), "in") == pytest.approx(inches, rel=2 * TWO_UNITS)
    assert to_millimetres(inches, "mm") == from_millimetres(inches, "mm") == inches


@pytest.mark.parametrize(("unit", "per"), [("mm", 1.0), ("in", 25.4)])
def test_answers_are_written_in_the_unit_asked_for(unit, per):
    """Lengths, optional ones and measured ones are divided; the unit is said."""
    reply = BoardOut(scale=628.65, octave=None, measured=Estimate(635.0, 0.254, 634.492, 635.508))
    written = reply.model_dump(mode="json", context={"unit": unit})

    assert written["unit"] == unit
    assert written["octave"] is None
    assert written["scale"] == pytest.approx(628.65 / per, rel=TWO_UNITS)
    assert written["measured"] == {
        "value": pytest.approx(635.0 / per, rel=TWO_UNITS),
        "standard_uncertainty": pytest.approx(0.254 / per, rel=TWO_UNITS),
        "lower": pytest.approx(634.492 / per, rel=TWO_UNITS),
        "upper": pytest.approx(635.508 / per, rel=TWO_UNITS),
    }


def test_answers_without_a_context_are_millimetres():
    """A reply that is dumped by itself shows what it holds."""
    reply = BoardOut(scale=628.65, octave=314.325, measured=Estimate(1.0, 1.0, 1.0, 1.0))

    assert reply.model_dump()["scale"] == 628.65


@pytest.mark.parametrize(("unit", "per"), [("mm", 1.0), ("in", 25.4)])
def test_a_shop_fraction_says_its_error_in_the_unit_of_the_answer(unit, per):
    """The error is the mark minus the exact length: 12 9/32 in is 0.00375 in short of 12.285 in."""
    mark = to_shop_fraction(12.285 * 25.4, unit, 64)

    assert mark.text == "12 9/32 in"
    assert mark.error == pytest.approx((12.28125 - 12.285) * 25.4 / per, abs=1e-12)


@pytest.mark.parametrize("kind", [Scale, Length, Distance, AnyLength, Uncertainty], ids=str)
def test_the_schema_of_a_length_says_both_forms_and_shows_one_that_works(kind):
    """OpenAPI shows a number or a text, and an example that is accepted."""
    (rule,) = kind.__metadata__

    class One(Question):
        """A length."""

        length: Annotated[float, LengthBetween(rule.low, rule.high, rule.example, rule.above)]

    schema = One.model_json_schema()["properties"]["length"]
    number, text = schema["anyOf"]

    assert (number["type"], text["type"], text["maxLength"]) == ("number", "string", 32)
    assert One.read(json.dumps({"length": schema["examples"][0]}).encode()).length > 0.0
