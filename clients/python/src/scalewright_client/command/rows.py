"""Rows of a file, CSV or JSON Lines, each with its line number and the place behind it."""

import codecs
import csv
import io
import json
from collections.abc import Iterator
from typing import BinaryIO, Final, Literal, NamedTuple, TypeAlias, cast

__all__ = ["DELIMITERS", "Row", "RowFormat", "Table", "UnusableFileError"]

RowFormat: TypeAlias = Literal["csv", "jsonl"]

DELIMITERS: Final = ",;\t|"
"""What may part the cells of a CSV file; the one that its header has most of does."""

_MOST_LINES = 50
"""A row that is longer has a quotation mark that was never closed, and would swallow the rows behind it."""

_BOM = codecs.BOM_UTF8


class UnusableFileError(Exception):
    """A file that cannot be read as a table at all."""


class Row(NamedTuple):
    """One row of a file."""

    line: int
    """Number of its first line, counted from 1."""
    end: int
    """Where the next row begins in the file. [byte]"""
    end_line: int
    """Number of the line that the next row begins with."""
    text: str
    """As it stands in the file, for people."""
    cells: list[str] | dict[str, object] | None
    """Its cells, by column for CSV and by name for JSON Lines; None where it cannot be read."""
    fault: str = ""
    """Why it cannot be read, in a sentence."""


class _NeverClosedError(Exception):
    """A quotation mark that is not closed within a reasonable number of lines."""


class Table:
    """A file of rows, read from any place on.

    Parameters
    ----------
    file : BinaryIO
        The file.
    row_format : {"csv", "jsonl"}
        What it is made of.
    delimiter : str, optional
        What parts the cells of CSV; found out unless given.
    encoding : str
        Of the characters.

    Raises
    ------
    UnusableFileError
        No header, or an encoding whose lines don't end with a line feed.
    """

    def __init__(
        self, file: BinaryIO, row_format: RowFormat, *, delimiter: str | None = None, encoding: str = "utf-8"
    ) -> None:
        self._file = file
        self._format = row_format
        try:
            self._encoding = codecs.lookup(encoding).name
            plain = "a\n".encode(self._encoding) == b"a\n"
        except LookupError:
            plain = False
        if not plain:
            message = f"files in {encoding} can't be read line by line; save the file as UTF-8"
            raise UnusableFileError(message)
        file.seek(0)
        if file.read(len(_BOM)) != _BOM:
            file.seek(0)
        self._delimiter = ","
        self.start = (file.tell(), 1)
        """Where the first row begins: place in the file [byte] and number of its line."""
        self.header: tuple[str, ...] | None = self._read_header(delimiter) if row_format == "csv" else None
        """Names of the columns of CSV."""

    def rows(self, place: int, line: int) -> Iterator[Row]:
        """Read the rows from a place on; blank ones are passed over.

        Parameters
        ----------
        place : int
            Where a row begins. [byte]
        line : int
            Number of the line that begins there.

        Yields
        ------
        Row
            Each row, readable or not.
        """
        self._file.seek(place)
        lines = _Lines(self._file, place, line)
        while True:
            first = lines.line
            raw = lines.take()
            if not raw:
                return
            if raw.isspace():
                continue
            text, fault = self._decoded(raw)
            if self._format == "jsonl":
                cells: list[str] | dict[str, object] | None
                cells, fault = (None, fault) if fault else _members(text)
            else:
                cells, text, fault = self._cells(raw, text, fault, lines)
                if cells is not None and not any(cells):
                    continue
            yield Row(first, lines.place, lines.line, text, cells, fault)

    def _decoded(self, raw: bytes) -> tuple[str, str]:
        try:
            return raw.decode(self._encoding).rstrip("\r\n"), ""
        except UnicodeDecodeError as error:
            text = raw.decode(self._encoding, "replace").rstrip("\r\n")
            return text, f"byte {error.start + 1} of this line is no text in {self._encoding}; save the file as UTF-8"

    def _cells(self, raw: bytes, text: str, fault: str, lines: "_Lines") -> tuple[list[str] | None, str, str]:
        """Cells of a row of CSV, its whole text, and why it cannot be read."""
        if fault:
            return None, text, fault
        if b'"' not in raw:
            cells = text.split(self._delimiter)
        else:
            try:
                cells, text = self._quoted(text, lines)
            except _NeverClosedError:
                return None, text, "a quotation mark is not closed; put inch marks as in, or double them inside quotes"
            except (csv.Error, UnicodeDecodeError) as error:
                return None, text, f"no row of CSV: {error}"
        if len(text.split(maxsplit=1)) > 1 or text != text.strip():
            cells = [cell.strip() for cell in cells]
        width = len(self.header or ())
        if len(cells) > width and any(cells[width:]):
            return None, text, f"{len(cells)} cells, and the header names {width}"
        return cells, text, ""

    def _quoted(self, text: str, lines: "_Lines") -> tuple[list[str], str]:
        """Cells of a row with quotation marks, which may go on over lines, and its whole text."""
        kept = lines.mark()
        taken = [text]

        def feed() -> Iterator[str]:
            yield f"{text}\n"
            while True:
                more = lines.take()
                if not more or len(taken) >= _MOST_LINES:
                    raise _NeverClosedError
                taken.append(more.decode(self._encoding).rstrip("\r\n"))
                yield f"{taken[-1]}\n"

        try:
            cells = next(csv.reader(feed(), delimiter=self._delimiter, strict=True))
        except (csv.Error, UnicodeDecodeError, _NeverClosedError):
            # Only the first line is given up: the rows behind it are not to blame.
            lines.back_to(kept)
            raise
        return cells, "\n".join(taken)

    def _read_header(self, delimiter: str | None) -> tuple[str, ...]:
        lines = _Lines(self._file, *self.start)
        raw = lines.take()
        while raw and not raw.strip():
            raw = lines.take()
        if not raw:
            message = "the file is empty; its first line has to name the columns"
            raise UnusableFileError(message)
        text, fault = self._decoded(raw)
        if fault:
            raise UnusableFileError(fault)
        self._delimiter = delimiter or max(DELIMITERS, key=text.count)
        self.start = lines.mark()
        names = next(csv.reader(io.StringIO(text), delimiter=self._delimiter))
        return tuple(name.strip() for name in names)


class _Lines:
    """Lines of a file, with the place and the number of the next one."""

    def __init__(self, file: BinaryIO, place: int, line: int) -> None:
        self._file = file
        self.place = place
        self.line = line

    def take(self) -> bytes:
        """The next line with its end; empty at the end of the file."""
        raw = self._file.readline()
        self.place += len(raw)
        self.line += bool(raw)
        return raw

    def mark(self) -> tuple[int, int]:
        """Where the next line begins."""
        return self.place, self.line

    def back_to(self, mark: tuple[int, int]) -> None:
        """Go back to where a line began."""
        self.place, self.line = mark
        self._file.seek(self.place)


def _members(text: str) -> tuple[dict[str, object] | None, str]:
    """Members of a line of JSON, and why there are none."""
    try:
        value = json.loads(text)
    except (ValueError, RecursionError):
        return None, "no JSON; each line is one object in braces"
    if not isinstance(value, dict):
        return None, "no object; each line is one object in braces"
    return cast("dict[str, object]", value), ""
