"""Copying: numbers that need not be parsed are copied, and what comes of it is what parsing gives, byte for byte."""

import json

import numpy as np
import orjson
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.wire.identification_batch import identify_questions
from scalewright_client.command.columns import read_columns
from scalewright_client.command.writing import CsvTable, CsvWriter, _copied

FRETS = [1, 3, 5, 7, 9, 12, 15, 19]
NUMBER = st.from_regex(r"-?[0-9]{1,16}(\.[0-9]{0,19})?", fullmatch=True)
CELL = NUMBER | st.sampled_from(
    ["", "12 5/16", "12⅜", "312,5", "0312.5", ".5", "+3", "1e3", "12 in", "x", "NaN", "-0", "1.", "٣"]
)
NAME = st.text(st.characters(categories=["L", "N", "P", "S", "Zs"]), max_size=8).map(str.strip)


@given(
    cells=st.lists(CELL, min_size=3, max_size=3),
    name=NAME,
    sigma=st.sampled_from(["0.05", "", "0.05 mm", "?"]),
    unit=st.sampled_from([None, "mm", "in"]),
    header=st.sampled_from(["[mm]", "[in]", ""]),
)
def test_a_copied_question_is_the_question(cells, name, sigma, unit, header):
    """A line is copied only where it says the same as the question that is put together from its values."""
    names = ["id", f"fret 1 {header}", f"fret 12 {header}", "instrument_uncertainty", f"fret 5 {header}", "unused"]
    fixed = {"tooling_scatter": "0.05 mm", "coverage": "0.9"}
    columns = read_columns(names, mapping={}, fixed=fixed, unit=unit or ("mm" if not header else None))
    row = [name, cells[0], cells[1], sigma, cells[2], "7"]
    line = columns.line(row)

    if line is not None:
        assert json.loads(line, parse_int=float) == json.loads(json.dumps(columns.question(row)), parse_int=float)


@pytest.mark.parametrize(
    ("header", "fixed"),
    [
        (["fret 1 [mm]", "fret 12 [in]"], {}),
        (["fret 1", "fret 12", "unit"], {}),
        (["fret 1 [mm]", "fret 12 [mm]", "frets"], {}),
        (["fret 1 [mm]", "fret 12 [mm]", "coverage"], {"coverage": "0.9"}),
        (["fret 1 [cm]", "fret 12 [cm]"], {}),
    ],
)
def test_what_takes_more_than_copying_is_not_copied(header, fixed):
    """Two units, a unit in the row, a member that is there twice: such questions are put together."""
    columns = read_columns(header, mapping={}, fixed=fixed, unit=None)

    assert columns.line(["35.5", "325.5", "0.8"][: len(header)]) is None


def test_most_questions_are_copied():
    """A plain row is, readings that were not taken left out; one that lacks cells, and a row of JSON, are not."""
    columns = read_columns(["id", "fret 1 [mm]", "fret 12 [mm]"], mapping={}, fixed={}, unit=None)

    assert columns.line(["A", "35.5", "325"]) == b'{"unit":"mm","id":"A","frets":[1,12],"from_nut":[35.5,325]}'
    assert columns.line(["", "", "325"]) == b'{"unit":"mm","frets":[12],"from_nut":[325]}'
    assert columns.line(["A", "", ""]) is None
    assert columns.line(["A", "35.5"]) is None
    assert columns.line({"id": "A"}) is None


def boards(count):
    """Questions about boards of every kind: of either rule, of none, with blunders, with few readings, shifted nuts."""
    source = np.random.default_rng(3)
    n = np.array(FRETS)
    shapes = [1.0 - 2.0 ** (-n / 12.0), 1.0 - (17.0 / 18.0) ** n, 1.0 - (1.0 - 1.0 / 17.6) ** n, n / 30.0]
    for number in range(count):
        places = 640.0 * shapes[source.integers(4)] + source.normal(0.0, [0.02, 0.5][number % 2], len(n))
        places += source.choice([0.0, 0.6])
        if number % 5 == 0:
            places[3] += 1.6
        used = len(n) if number % 3 else 3
        identifier = [f"B, {number}", number, None, "=x", 'a "b"', "ü"][number % 6]
        yield {
            "id": identifier,
            "unit": ["mm", "in"][number % 2],
            "frets": FRETS[:used],
            "from_nut": np.round(places[:used] / [1.0, 25.4][number % 2], 4).tolist(),
            "instrument_uncertainty": "0.05 mm",
            "tooling_scatter": "0.02 mm",
        }


def test_a_copied_answer_is_the_answer():
    """Rows that are copied from answers of the service are those that parsing the answers gives."""
    questions = list(boards(120))
    identifiers = [question.pop("id") for question in questions]
    parsed, copied = CsvTable.result, 0
    for line, (identifier, answer) in enumerate(zip(identifiers, identify_questions(questions), strict=True), start=2):
        assert isinstance(answer, bytes)
        rest = b'"id":%b,%b' % (orjson.dumps(identifier), answer[1:])
        copied += _copied(line, rest) is not None
        assert CsvWriter().result(0, line, rest) == parsed(CsvWriter(), 0, line, rest)

    # The others have a blunder, an identifier that is no plain text, or a number near nothing.
    assert 30 < copied < 120
