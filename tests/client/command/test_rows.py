"""Rows of a file, with their lines and places."""

import io

import pytest

from scalewright_client.command.rows import Table, UnusableFileError


def read(text, row_format="csv", **options):
    """All rows of a file."""
    table = Table(io.BytesIO(text if isinstance(text, bytes) else text.encode()), row_format, **options)
    return list(table.rows(*table.start))


def cells(text, **options):
    """Cells and lines of all rows."""
    return [(row.line, row.cells) for row in read(text, **options)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a,b\n1,2\n3,4\n", [(2, ["1", "2"]), (3, ["3", "4"])]),
        ("a,b\n1,2\n3,4", [(2, ["1", "2"]), (3, ["3", "4"])]),
        ("a,b\r\n1,2\r\n", [(2, ["1", "2"])]),
        ("\ufeffa,b\n1,2\n", [(2, ["1", "2"])]),
        ("a;b\n1,5;2\n", [(2, ["1,5", "2"])]),
        ("a\tb\n1\t2\n", [(2, ["1", "2"])]),
        ("a,b\n\n1,2\n,\n , \n3,4\n", [(3, ["1", "2"]), (6, ["3", "4"])]),
        ('a,b\n"1, one","24 9/16"""\n', [(2, ["1, one", '24 9/16"'])]),
        ('a,b\n24 9/16",2\n3,4\n', [(2, ['24 9/16"', "2"]), (3, ["3", "4"])]),
        ('a,b\n"two\nlines",2\n3,4\n', [(2, ["two\nlines", "2"]), (4, ["3", "4"])]),
        ("a,b\n1\n", [(2, ["1"])]),
        ("a,b\n1,2,,\n", [(2, ["1", "2", "", ""])]),
    ],
)
def test_cells_are_those_of_a_spreadsheet(text, expected):
    """Quotation marks, inch marks, blank rows, line ends and delimiters as spreadsheets write them."""
    assert cells(text) == expected


def test_a_quotation_mark_that_is_never_closed_costs_one_row():
    """The rows behind it are not swallowed."""
    text = "a,b\n" + '"1,2\n' + "".join(f"{n},{n}\n" for n in range(200))
    rows = read(text)
    assert (rows[0].cells, rows[0].line, "not closed" in rows[0].fault) == (None, 2, True)
    assert [row.cells for row in rows[1:]] == [[str(n), str(n)] for n in range(200)]
    assert [row.line for row in rows] == list(range(2, 203))


def test_a_quotation_mark_that_another_one_closes_costs_one_row():
    """A later row with quotation marks of its own does not end the bad one."""
    rows = read('a,b\n"1,2\n3,4\n"5, five","6"\n7,8\n')
    assert [row.cells for row in rows] == [None, ["3", "4"], ["5, five", "6"], ["7", "8"]]


def test_bytes_that_are_no_text_cost_one_row():
    """The row is named, and shown as well as it can be."""
    rows = read(b"a,b\n\xe9,2\n3,4\n")
    assert (rows[0].cells, rows[0].text) == (None, "\N{REPLACEMENT CHARACTER},2")
    assert "byte 1" in rows[0].fault
    assert rows[1].cells == ["3", "4"]
    assert cells(b"a,b\n\xe9,2\n", encoding="cp1252") == [(2, ["é", "2"])]


@pytest.mark.parametrize("row_format", ["csv", "jsonl"])
def test_reading_can_go_on_behind_any_row(row_format):
    """Places and lines lead to the same rows as reading from the start."""
    text = {
        "csv": 'a,b\n1,2\n\n"x\ny",4\n"never,6\n7,"8"\n',
        "jsonl": '{"a": 1}\n\n{"a": 2}\nbroken\n{"a": 3}',
    }[row_format]
    whole = read(text, row_format)
    table = Table(io.BytesIO(text.encode()), row_format)
    for number, row in enumerate(whole):
        assert list(table.rows(row.end, row.end_line)) == whole[number + 1 :]


@pytest.mark.parametrize("text", ["", "\n\n", "\ufeff"])
def test_a_table_needs_a_header(text):
    """An empty file is told as such."""
    with pytest.raises(UnusableFileError, match="empty"):
        read(text)


def test_a_header_has_to_be_a_text():
    """What the columns are called cannot be guessed."""
    with pytest.raises(UnusableFileError, match="byte 1"):
        read(b"\xe9,b\n1,2\n")
