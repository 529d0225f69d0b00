"""Answers to files: one row for each row of the input, and the bad ones in a file of their own."""

import csv
import io
import json
from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final, Protocol

__all__ = ["BAD_ROW_COLUMNS", "CsvTable", "CsvWriter", "JsonLinesWriter", "Writer", "csv_row"]

_COLUMNS: Final = (
    "verdict",
    "rule",
    "unit",
    "true_scale",
    "true_scale_lower",
    "true_scale_upper",
    "layout_scale",
    "nut_offset",
    "probability",
    "measure_again",
    "measure_next",
    "statement",
)

BAD_ROW_COLUMNS: Final = ("line", "id", "column", "problem", "detail", "row")
"""Columns of the file of bad rows."""

_STARTS_A_FORMULA: Final = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")  # noqa: RUF001 - as they are


class Writer(Protocol):
    """Writes one row of output for each row of input."""

    def head(self) -> bytes:
        """What stands before the first row."""

    def result(self, index: int, line: int, rest: bytes) -> bytes:
        """Write an answer.

        Parameters
        ----------
        index, line : int
            Which row of the input, from 0, and the number of its line.
        rest : bytes
            Members of the answer's line behind kind and index, up to the closing brace.
        """

    def problem(self, index: int, line: int, members: Mapping[str, Any], words: str) -> bytes:
        """Write why a row has no answer.

        Parameters
        ----------
        index, line : int
            Which row of the input, from 0, and the number of its line.
        members : mapping
            Those of the problem document, and the id.
        words : str
            The same for people, with names of columns.
        """


class JsonLinesWriter:
    """Lines of JSON, as the service writes them, with the line of the input."""

    def head(self) -> bytes:
        """Nothing stands before the first row."""
        return b""

    def result(self, index: int, line: int, rest: bytes) -> bytes:
        """Write an answer; see :meth:`Writer.result`."""
        return b'{"kind":"result","index":%d,"line":%d,%b\n' % (index, line, rest)

    def problem(self, index: int, line: int, members: Mapping[str, Any], words: str) -> bytes:
        """Write why a row has no answer; see :meth:`Writer.problem`."""
        del words
        # The number of the request is left out: it would differ whenever a run is repeated.
        known = {name: value for name, value in members.items() if name != "instance"}
        row = {"kind": "problem", "index": index, "line": line, **known}
        return json.dumps(row, ensure_ascii=False, separators=(",", ":")).encode() + b"\n"


class CsvTable:
    """CSV: the line and the id of a row, what there is to say of it, and why there is nothing.

    Parameters
    ----------
    columns : sequence of str
        Names of the columns between.
    cells : callable
        Makes their cells of the members of an answer.
    """

    def __init__(self, columns: Sequence[str], cells: Callable[[Mapping[str, Any]], Sequence[object]]) -> None:
        self._columns = columns
        self._cells = cells

    def head(self) -> bytes:
        """Names of the columns."""
        return csv_row(("line", "id", *self._columns, "problem"))

    def result(self, index: int, line: int, rest: bytes) -> bytes:
        """Write an answer; see :meth:`Writer.result`."""
        del index
        found = json.loads(b"{" + _without_candidates(rest))
        return csv_row((line, found.get("id"), *self._cells(found), None))

    def problem(self, index: int, line: int, members: Mapping[str, Any], words: str) -> bytes:
        """Write why a row has no answer; see :meth:`Writer.problem`."""
        del index
        return csv_row((line, members.get("id"), *[None] * len(self._columns), words))


class CsvWriter(CsvTable):
    """CSV with the numbers that a stock list needs."""

    def __init__(self) -> None:
        super().__init__(_COLUMNS, _identified)


def _identified(found: Mapping[str, Any]) -> Sequence[object]:
    """What a stock list says of a board."""
    true, layout, nut = (found.get(name) or {} for name in ("true_scale", "layout_scale", "nut_offset"))
    following = found.get("next_reading") or {}
    return (
        found.get("verdict"),
        _rule(found.get("rule")),
        found.get("unit"),
        true.get("value"),
        true.get("lower"),
        true.get("upper"),
        layout.get("value"),
        nut.get("value"),
        found.get("probability"),
        ";".join(str(suspect.get("fret")) for suspect in found.get("suspect_readings") or ()),
        following.get("fret"),
        found.get("statement"),
    )


def _without_candidates(rest: bytes) -> bytes:
    """Members of an answer without the longest of them, which has no column and takes most of the time to read.

    No text can look like the marks: in a text of JSON a quotation mark has a backslash before it.
    """
    first = rest.find(b',"candidates":[')
    behind = rest.find(b'],"suspect_readings":', first)
    return rest if first < 0 or behind < 0 else rest[:first] + rest[behind + 1 :]


def _rule(rule: Mapping[str, Any] | None) -> str | None:
    """Name of a rule with what it takes: "eighteenth", "equal 12", "divisor 17.835"."""
    if rule is None:
        return None
    own = rule.get("steps") if rule.get("name") == "equal" else rule.get("divisor")
    return str(rule.get("name")) if own is None or rule.get("name") == "eighteenth" else f"{rule.get('name')} {own}"


def csv_row(cells: Sequence[object]) -> bytes:
    """Write a row of CSV that a spreadsheet takes for nothing but text and numbers.

    Parameters
    ----------
    cells : sequence
        Numbers stay numbers, None is empty, and a text that a spreadsheet would take for a formula gets an
        apostrophe before it.

    Returns
    -------
    bytes
        The row with its line feed, in UTF-8.
    """
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerow([_harmless(cell) for cell in cells])
    return out.getvalue().encode()


def _harmless(cell: object) -> object:
    return f"'{cell}" if isinstance(cell, str) and cell.lstrip(" ").startswith(_STARTS_A_FORMULA) else cell
