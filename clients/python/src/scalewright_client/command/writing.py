"""Answers to files: one row for each row of the input, and the bad ones in a file of their own."""

import csv
import json
import re
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

_FORMULA: Final = re.compile(r" *[=+\-@\t\r\n＝＋－＠]")  # noqa: RUF001 - as they are
"""What a spreadsheet takes for the beginning of a formula."""


class _Echo:
    """A file that gives what is written to it back to whoever writes."""

    def write(self, text: str) -> str:
        """Give back the text."""
        return text


_ROWS: Final = csv.writer(_Echo(), lineterminator="\n")
"""Makes rows of CSV; it keeps nothing between them."""


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
        # As a text: from bytes the reader would first find out how they are encoded.
        found = json.loads((b"{" + _without_candidates(rest)).decode())
        return csv_row((line, found.get("id"), *self._cells(found), None))

    def problem(self, index: int, line: int, members: Mapping[str, Any], words: str) -> bytes:
        """Write why a row has no answer; see :meth:`Writer.problem`."""
        del index
        return csv_row((line, members.get("id"), *[None] * len(self._columns), words))


class CsvWriter(CsvTable):
    """CSV with the numbers that a stock list needs."""

    def __init__(self) -> None:
        super().__init__(_COLUMNS, _identified)

    def result(self, index: int, line: int, rest: bytes) -> bytes:
        """Write an answer; what is written as services of our day write it is copied without being parsed."""
        return _copied(line, rest) or super().result(index, line, rest)


_NUMBER: Final = r"-?(?!0\.0000)[0-9]{1,15}\.[0-9]+"
"""A number that this language writes alike; one with an exponent it may not."""
_TEXT: Final = r'"([^"\\]*)"'
_ESTIMATE: Final = (
    rf'(?:null|\{{"value":({_NUMBER}),"standard_uncertainty":{_NUMBER},"lower":({_NUMBER}),"upper":({_NUMBER})\}})'
)
_FIRST: Final = re.compile(
    rf'"id":(?:null|{_TEXT}),"unit":"(\w+)","verdict":"(\w+)","statement":{_TEXT},'
    rf'"rule":(?:null|\{{"name":"(\w+)"(?:,"divisor":({_NUMBER}))?(?:,"steps":(\d+))?\}}),"family":\[[^]]*\],'
    rf'"probability":(?:null|({_NUMBER})),"layout_scale":{_ESTIMATE},"true_scale":{_ESTIMATE},"nut_offset":{_ESTIMATE},',
    re.ASCII,
)
_CANDIDATES: Final = b',"candidates":['
_MARK: Final = b'],"suspect_readings":[],"next_reading":'
"""What stands between the candidates and the advice where no reading is suspect. No text can look like these: in a text
of JSON a quotation mark has a backslash before it."""
_LAST: Final = re.compile(rb'null|\{"fret":(\d+)[,}]')


def _copied(line: int, rest: bytes) -> bytes | None:
    """Write what a stock list says of a board straight from the bytes of its answer.

    Parameters
    ----------
    line : int
        Number of the row's line in the input.
    rest : bytes
        Members of the answer, as for :meth:`Writer.result`.

    Returns
    -------
    bytes or None
        The row that parsing the answer gives too; None where that needs more than copying.
    """
    end, behind = rest.find(_CANDIDATES), rest.rfind(_MARK)
    if end < 0 or behind < 0:
        return None
    first = _FIRST.match(rest[:end].decode())
    last = _LAST.match(rest, behind + len(_MARK))
    if first is None or last is None:
        return None
    identifier, unit, verdict, statement, name, divisor, steps, probability, *estimates = first.groups("")
    layout, _, _, true, lower, upper, nut, _, _ = estimates
    own = steps if name == "equal" else "" if name == "eighteenth" else divisor
    rule = f"{name} {own}" if own else name
    following = b"" if last[1] is None else last[1]
    return (
        f"{line},{_cell(identifier)},{_cell(verdict)},{_cell(rule)},{unit},{true},{lower},{upper},{layout},{nut},"
        f"{probability},,{following.decode()},{_cell(statement)},\n"
    ).encode()


def _cell(text: str) -> str:
    """Write a text without quotation marks and line feeds as :func:`csv_row` writes it."""
    harmless = f"'{text}" if _FORMULA.match(text) else text
    return f'"{harmless}"' if "," in harmless else harmless


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
    harmless = [f"'{cell}" if isinstance(cell, str) and _FORMULA.match(cell) else cell for cell in cells]
    return str(_ROWS.writerow(harmless)).encode()
