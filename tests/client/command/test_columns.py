"""Columns of a table to members of a question."""

import pytest

from scalewright.wire.length_text import read_length
from scalewright_client._requests import IdentificationQuestion
from scalewright_client.command.columns import UnusableColumnsError, read_columns
from scalewright_client.command.fields import READINGS


def question(header, row, unit=None, mapping=None, fixed=None):
    """The question of one row."""
    return read_columns(header, mapping=mapping or {}, fixed=fixed or {}, unit=unit).question(row)


@pytest.mark.parametrize("name", ["fret 12 [mm]", "Fret12 (MM)", "12 [mm]", "from_nut 12 [mm]", "from-nut-12(mm)"])
def test_a_reading_is_recognised_by_its_fret(name):
    """Names as people write them."""
    assert question([name], ["312.5"]) == {"unit": "mm", "frets": [12], "from_nut": [312.5]}


@pytest.mark.parametrize(
    ("unit", "cell", "sent", "millimetres"),
    [
        ("mm", "312.5", 312.5, 312.5),
        ("in", "12.3125", 12.3125, 312.7375),
        ("in", "12 5/16", "12 5/16 in", 312.7375),
        ("in", "12-5/16", "12-5/16 in", 312.7375),
        ("in", "5/16", "5/16 in", 7.9375),
        ("in", "12⅜", "12⅜ in", 314.325),
        ('"', "12 5/16", "12 5/16 in", 312.7375),
        ("inch", "12 5/16", "12 5/16 in", 312.7375),
        ("cm", "31.25", "31.25 cm", 312.5),
        ("mm", "312,5", "312,5 mm", 312.5),
        ("mm", "12 5/16 in", "12 5/16 in", 312.7375),
        ("mm", '12 5/16"', '12 5/16"', 312.7375),
        ("in", "312.5mm", "312.5mm", 312.5),
    ],
)
def test_lengths_have_the_unit_of_their_column_unless_they_carry_one(unit, cell, sent, millimetres):
    """What is sent means the length that a person reads in the cell (5/16 in = 7.9375 mm, by hand)."""
    asked = question([f"fret 12 [{unit}]"], [cell])
    assert asked["from_nut"] == [sent]
    assert read_length(str(sent), asked.get("unit", "mm")) == pytest.approx(millimetres, abs=1e-9)


def test_columns_of_two_units_go_together():
    """Each cell carries its own, and the answer is in the one asked for."""
    asked = question(["fret 1 [mm]", "fret 12 [in]"], ["35", "12.25"], unit="mm")
    assert asked == {"unit": "mm", "frets": [1, 12], "from_nut": [35.0, "12.25 in"]}


def test_a_row_may_say_its_unit():
    """A column "unit" counts before the lengths are read."""
    header = ["fret 12", "instrument_uncertainty", "unit"]
    assert question(header, ["12.25", "0.002", "in"]) == {
        "unit": "in", "instrument_uncertainty": 0.002, "frets": [12], "from_nut": [12.25]
    }  # fmt: skip


def test_columns_with_other_names_are_mapped():
    """By their whole name or the one without the unit, in any case of letters."""
    header = ["SKU", "Dist. to octave (in)", "u [mm]"]
    mapping = {"id": "sku", "fret 12": "dist. to octave", "instrument_uncertainty": "u [mm]"}
    assert question(header, ["A-1", "12 1/4", "0.05"], mapping=mapping) == {
        "unit": "in",
        "id": "A-1",
        "instrument_uncertainty": "0.05 mm",
        "frets": [12],
        "from_nut": ["12 1/4 in"],
    }


def test_lists_words_and_numbers_are_read_as_such():
    """Everything that a question may have can stand in a column or in an option."""
    header = ["frets", "fret_to_fret [mm]", "origin", "threshold", "nut_offset", "candidates"]
    row = ["1; 2;3", "35;33.1; 31.2", "zero_fret", "0.99", "none", '[{"rule": "equal"}]']
    assert question(header, row, fixed={"slot_width": "0.6 mm", "coverage": "0.9"}) == {
        "unit": "mm",
        "slot_width": "0.6 mm",
        "coverage": 0.9,
        "frets": [1, 2, 3],
        "fret_to_fret": [35.0, 33.1, 31.2],
        "origin": "zero_fret",
        "threshold": 0.99,
        "nut_offset": "none",
        "candidates": [{"rule": "equal"}],
    }


@pytest.mark.parametrize("cell", ["nan", "inf", "1e5", "1_000", "١٢", "twelve", "--3", "="])
def test_what_is_no_plain_number_is_left_to_the_service(cell):
    """Nothing is guessed here: it goes out as a text, and the service says what is wrong with it."""
    assert isinstance(question(["fret 12 [mm]"], [cell])["from_nut"][0], str)
    assert question(["fret 12 [mm]", "threshold"], ["3", cell])["threshold"] == cell


def test_a_fault_leads_to_its_column():
    """The pointer counts the readings that the row has, and not the columns."""
    header = ["id", "fret 1 [mm]", "fret 5 [mm]", "fret 12 [mm]", "threshold"]
    columns = read_columns(header, mapping={}, fixed={}, unit=None)
    row = ["A", "", "156", "x", "2"]
    assert columns.place(row, "/from_nut/1") == "fret 12 [mm]"
    assert columns.place(row, "/from_nut") == "fret 1 [mm] ... fret 12 [mm]"
    assert columns.place(row, "/threshold") == "threshold"
    assert columns.place(row, "/from_nut/9") == "/from_nut/9"
    assert columns.place(row, "/coverage") == "/coverage"
    assert read_columns(None, mapping={"id": "sku"}, fixed={}, unit=None).place({}, "/id") == "sku"


def test_a_column_may_be_mapped_once():
    """Two columns of one name are not told apart."""
    with pytest.raises(UnusableColumnsError, match="more than one column is"):
        question(["x", "x", "fret 12 [mm]"], [], mapping={"id": "x"})


def test_every_member_of_a_question_can_be_a_column():
    """What the service takes, a file can hold."""
    assert set(READINGS.names) == set(IdentificationQuestion.__annotations__)
    assert set(READINGS.lengths) | set(READINGS.numbers) <= set(READINGS.names)
