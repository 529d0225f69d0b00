"""Layouts on the wire: the query says what the body says, and the quick writer writes what the model does."""

import csv
import io
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from scalewright.lutherie.layout import lay_out
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal, Listed
from scalewright.wire.layout import LayoutIn, LayoutOut, LayoutQuery

RULES = st.sampled_from([EQUAL, Equal(19), EIGHTEENTH, Divisor(17.817), Listed((204.0, 702.0, 1200.0), repeat=True)])
NO_OCTAVE = Listed(tuple(100.0 * n for n in range(1, 8)))


@pytest.mark.parametrize(
    ("query", "body"),
    [
        ({"scale": "24.75", "rule": "eighteenth", "frets": "22", "unit": "in"},
         {"scale": 24.75, "rule": "eighteenth", "frets": 22, "unit": "in"}),
        ({"scale": "24 3/4in", "rule": "equal", "frets": "1", "repeat": "false"},
         {"scale": "24 3/4 in", "rule": "equal", "frets": 1}),
        ({"scale": "650", "rule": "equal", "steps": "19", "frets": "60"},
         {"scale": 650, "rule": {"name": "equal", "steps": 19}, "frets": 60}),
        ({"scale": "650", "rule": "divisor", "divisor": "17.835", "frets": "12", "scale_basis": "true"},
         {"scale": 650, "rule": {"name": "divisor", "divisor": 17.835}, "frets": 12, "scale_basis": "true"}),
        ({"scale": "650", "rule": "listed", "cents": "204,702,1200", "repeat": "true", "frets": "9"},
         {"scale": 650, "rule": {"name": "listed", "cents": [204, 702, 1200], "repeat": True}, "frets": 9}),
        ({"scale": "650", "rule": "listed", "cents": "204,702", "repeat": "false", "frets": "2", "fractions": "64"},
         {"scale": 650, "rule": {"name": "listed", "cents": [204, 702]}, "frets": 2, "fractions": 64}),
    ],
)  # fmt: skip
def test_a_query_says_what_a_body_says(query, body):
    """The same question, by address and by body, comes to the same arguments and the same form of answer."""
    by_query, by_body = LayoutQuery.read_query(query), LayoutIn.read(json.dumps(body).encode())

    assert by_query.to_domain() == by_body.to_domain()
    assert by_query.answer_context == by_body.answer_context


BASE = {"scale": "650", "rule": "equal", "frets": "12"}


@pytest.mark.parametrize(
    ("changes", "where", "code"),
    [
        ({"frets": "0"}, ("frets",), "greater_than_equal"),
        ({"frets": "61"}, ("frets",), "less_than_equal"),
        ({"frets": "-1"}, ("frets",), "int_type"),
        ({"frets": "12.0"}, ("frets",), "int_type"),
        ({"frets": "1e1"}, ("frets",), "int_type"),
        ({"frets": "1_2"}, ("frets",), "int_type"),
        ({"frets": "١٢"}, ("frets",), "int_type"),
        ({"frets": ""}, ("frets",), "int_type"),
        ({"scale": ""}, ("scale",), "length_unreadable"),
        ({"scale": "nan"}, ("scale",), "length_unreadable"),
        ({"scale": "0"}, ("scale",), "length_out_of_range"),
        ({"unit": "cm"}, ("unit",), "literal_error"),
        ({"rule": "Equal"}, ("rule",), "literal_error"),
        ({"lenght": "650"}, ("lenght",), "extra_forbidden"),
        ({"fractions": "48"}, ("fractions",), "literal_error"),
        ({"scale_basis": "label"}, ("scale_basis",), "literal_error"),
        ({"divisor": "18"}, ("divisor",), "other_rule"),
        ({"rule": "eighteenth", "steps": "12"}, ("steps",), "other_rule"),
        ({"cents": "100,200"}, ("cents",), "other_rule"),
        ({"repeat": "true"}, ("repeat",), "other_rule"),
        ({"rule": "divisor"}, ("divisor",), "missing_for_rule"),
        ({"rule": "listed"}, ("cents",), "missing_for_rule"),
        ({"rule": "divisor", "divisor": "inf"}, ("divisor",), "number_unreadable"),
        ({"rule": "divisor", "divisor": "1.5"}, ("divisor",), "greater_than_equal"),
        ({"rule": "listed", "cents": "100,,200"}, ("cents",), "number_unreadable"),
        ({"rule": "listed", "cents": "200,100"}, ("cents", 1), "not_ascending"),
        ({"rule": "listed", "cents": ",".join(map(str, range(1, 200)))}, ("cents",), "too_long"),
        ({"rule": "listed", "cents": ",".join(map(str, range(1, 62)))}, ("cents",), "too_long"),
        ({"rule": "listed", "cents": "100,1300", "repeat": "true"}, (), "not_repeatable"),
        ({"rule": "listed", "cents": "100", "repeat": "1"}, ("repeat",), "bool_type"),
    ],
)
def test_what_a_query_may_not_say(changes, where, code):
    """Parameters are read as strictly as a body, and those of another rule are refused."""
    with pytest.raises(ValidationError) as refused:
        LayoutQuery.read_query(BASE | changes)

    (error,) = refused.value.errors(include_url=False)
    assert (error["loc"], error["type"]) == (where, code)


@given(RULES, st.floats(1.0, 10_000.0), st.integers(1, 24), st.sampled_from(["mm", "in"]))
def test_the_quick_writer_writes_what_the_model_would(rule, scale, frets, unit):
    """Bytes straight from the columns are those that the documented model gives, to the last one."""
    layout = lay_out(rule, scale, frets)
    slow = LayoutOut.model_validate(layout).model_dump_json(context={"unit": unit}).encode()

    assert json.loads(LayoutOut.to_json(layout, {"unit": unit})) == json.loads(slow)
    assert list(json.loads(slow)) == list(json.loads(LayoutOut.to_json(layout, {"unit": unit})))


def test_a_board_without_an_octave_is_written_with_nulls():
    """Without an octave fret there is no true scale, and the answer says so."""
    layout = lay_out(NO_OCTAVE, 650.0, 7)
    written = json.loads(LayoutOut.to_json(layout, {"unit": "mm"}))

    assert (written["true_scale"], written["octave_fret"]) == (None, None)
    assert [note["slug"] for note in written["notes"]] == ["no-octave-fret"]
    assert written["frets"][0]["to_true_end"] is None
    assert written == json.loads(LayoutOut.model_validate(layout).model_dump_json())
    assert ",,100.0,mm\r\n" in LayoutOut.to_csv(layout, {"unit": "mm"}).decode()


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_shop_fractions_are_an_addition(unit):
    """Asked for, each row has the nearest mark beside its exact number; every other member stays as it was."""
    layout = lay_out(EIGHTEENTH, 628.65, 22)
    plain = json.loads(LayoutOut.to_json(layout, {"unit": unit}))
    with_marks = json.loads(LayoutOut.to_json(layout, {"unit": unit, "fractions": 64}))

    assert with_marks["frets"][0]["from_nut_fraction"]["text"] == "1 3/8 in"
    for row, marked in zip(plain["frets"], with_marks["frets"], strict=True):
        mark = marked.pop("from_nut_fraction")
        assert abs(mark["error"]) <= (25.4 if unit == "mm" else 1.0) / 128
        assert marked == row


@pytest.mark.parametrize("fractions", [None, 32])
def test_csv_has_the_rows_of_the_json(fractions):
    """A table reader finds the same names and the same numbers, digit for digit, and the unit in every row."""
    layout = lay_out(EIGHTEENTH, 628.65, 22)
    text = LayoutOut.to_csv(layout, {"unit": "in", "fractions": fractions}).decode()
    rows = list(csv.DictReader(io.StringIO(text, newline="")))

    assert len(rows) == 22
    for row, fret in zip(rows, json.loads(LayoutOut.to_json(layout, {"unit": "in"}))["frets"], strict=True):
        assert row.pop("unit") == "in"
        assert (row.pop("from_nut_fraction", None) is None) == (fractions is None)
        assert {name: float(cell) for name, cell in row.items()} == fret
