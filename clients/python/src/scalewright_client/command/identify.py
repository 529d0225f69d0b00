"""A file of boards in, rules and true scales out: every row in its place, the bad ones named."""

import contextlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final, Literal, TextIO, TypeAlias

from scalewright_client._clients import Client
from scalewright_client._protocol import encode
from scalewright_client._requests import Unit
from scalewright_client.command.asking import Answered, Asked, answers
from scalewright_client.command.columns import Columns, read_columns
from scalewright_client.command.journal import CannotResumeError, Growing, Journal, Output, Standing
from scalewright_client.command.progress import Progress
from scalewright_client.command.rows import Row, RowFormat, Table
from scalewright_client.command.writing import BAD_ROW_COLUMNS, CsvWriter, JsonLinesWriter, Writer, csv_row

__all__ = ["IdentifyJob", "OutputFormat", "identify"]

OutputFormat: TypeAlias = Literal["csv", "jsonl"]

_PATH: Final = "/v1/identification/batch"
_WRITERS: Final[Mapping[OutputFormat, type[Writer]]] = {"csv": CsvWriter, "jsonl": JsonLinesWriter}


@dataclass(frozen=True, slots=True)
class IdentifyJob:
    """What is to be done."""

    source: Path
    """The file of boards."""
    output: Path
    """The file of answers."""
    bad_rows: Path
    """The file of rows without an answer; it is there only if there are any."""
    row_format: RowFormat
    """What the file of boards is made of."""
    output_format: OutputFormat
    """What the file of answers is to be made of."""
    delimiter: str | None = None
    """What parts the cells of CSV; found out unless given."""
    encoding: str = "utf-8"
    """Of the file of boards."""
    unit: Unit | None = None
    """Unit of bare numbers whose column names none, and of the answers."""
    mapping: Mapping[str, str] = field(default_factory=dict)
    """Names of columns by the field that they are."""
    fixed: Mapping[str, str] = field(default_factory=dict)
    """Values of fields that are the same for all rows."""
    at_once: int = 2048
    """Rows in one request."""
    restart: bool = False
    """Whether to start afresh, and to replace what is there."""

    @property
    def order(self) -> dict[str, object]:
        """What the answers depend on, beside the rows."""
        return {
            "operation": "identify",
            "formats": (self.row_format, self.output_format),
            "reading": (self.delimiter, self.encoding),
            "unit": self.unit,
            "columns": dict(self.mapping),
            "fixed": dict(self.fixed),
        }


def identify(job: IdentifyJob, client: Client, terminal: TextIO, *, quiet: bool = False) -> Standing:
    """Identify all boards of a file, or those that an earlier run has left.

    Parameters
    ----------
    job : IdentifyJob
        What is to be done.
    client : Client
        Who asks the service.
    terminal : TextIO
        Where to say how far it has come.
    quiet : bool
        Whether to say nothing.

    Returns
    -------
    Standing
        Rows, bad rows and verdicts, those of earlier runs counted in.

    Raises
    ------
    CannotResumeError
        Files stand in the way.
    UnusableFileError, UnusableColumnsError
        The file cannot be read as a table of boards.
    ScalewrightError
        The service does not answer; what was done is kept, and the same call goes on there.
    """
    with job.source.open("rb") as file:
        table = Table(file, job.row_format, delimiter=job.delimiter, encoding=job.encoding)
        columns = read_columns(table.header, mapping=job.mapping, fixed=job.fixed, unit=job.unit)
        journal = Journal(job.output.with_name(f"{job.output.name}.progress"), job.source, job.order)
        output, bad = Output(job.output), Output(job.bad_rows)
        standing = _standing(job, journal, table)
        if not quiet:
            _say_what_is_read(columns, standing, terminal)
        progress = Progress(terminal, job.source.stat().st_size, job.source.name, quiet=quiet)
        if not standing.finished:
            with (
                contextlib.closing(output.grow(standing.output)) as growing,
                contextlib.closing(bad.grow(standing.bad_output)) as growing_bad,
            ):
                _Run(job, columns, journal, growing, growing_bad, standing, progress).go(client, table)
        if standing.bad_rows:
            bad.publish()
        else:
            bad.discard()
        output.publish()
        journal.discard()
        return standing


def _standing(job: IdentifyJob, journal: Journal, table: Table) -> Standing:
    """Where to begin."""
    if job.restart:
        journal.discard()
    left = journal.standing()
    if left is not None:
        return left
    for path in (job.output, job.bad_rows):
        if path.exists() and not job.restart:
            message = f"{path} is there already; give another name, or --restart to replace it"
            raise CannotResumeError(message)
    return Standing(*table.start)


def _say_what_is_read(columns: Columns, standing: Standing, terminal: TextIO) -> None:
    if columns.readings:
        frets = ", ".join(str(fret) for fret, _ in columns.readings)
        terminal.write(f"readings of frets {frets}\n")
    if columns.unused:
        terminal.write(f"columns not used: {', '.join(columns.unused)}\n")
    if standing.rows:
        terminal.write(f"going on after {standing.rows} rows, at line {standing.line}\n")


@dataclass(slots=True)
class _Run:
    """A run over the rows that are left."""

    job: IdentifyJob
    columns: Columns
    journal: Journal
    output: Growing
    bad: Growing
    standing: Standing
    progress: Progress

    def go(self, client: Client, table: Table) -> None:
        """Answer the rows."""
        standing = self.standing
        writer = _WRITERS[self.job.output_format]()
        if not standing.rows:
            self.output.write(writer.head())
            self.bad.write(csv_row(BAD_ROW_COLUMNS))
        asked = self._asked(table.rows(standing.place, standing.line))
        self.progress.show(standing.place, standing.rows, standing.bad_rows)
        try:
            with contextlib.closing(answers(client, _PATH, asked, self.job.at_once)) as parts:
                for part in parts:
                    self._write(writer, part)
                    self._settle()
                    self.progress.show(standing.place, standing.rows, standing.bad_rows)
        finally:
            self.progress.end()
        standing.finished = True
        self._settle()

    def _asked(self, rows: Iterator[Row]) -> Iterator[Asked]:
        """Rows with their questions."""
        for row in rows:
            if row.cells is None:
                yield Asked(row, None, row.fault)
                continue
            try:
                yield Asked(row, encode(self.columns.question(row.cells)))
            except ValueError as error:
                yield Asked(row, None, str(error))

    def _write(self, writer: Writer, part: Answered) -> None:
        """Write some rows."""
        standing = self.standing
        lines = iter(part.lines)
        for asked in part.rows:
            row, index = asked.row, standing.rows
            kind, rest = ("problem", b"") if asked.question is None else next(lines)
            if kind == "result":
                self.output.write(writer.result(index, row.line, rest))
            else:
                problem = _unreadable(asked.fault) if asked.question is None else json.loads(b"{" + rest)
                words = self._write_bad(row, problem)
                self.output.write(writer.problem(index, row.line, problem, words))
                standing.bad_rows += 1
            standing.rows += 1
            standing.place, standing.line = row.end, row.end_line
        for verdict, count in part.summary.verdicts.items():
            standing.verdicts[verdict] = standing.verdicts.get(verdict, 0) + count

    def _write_bad(self, row: Row, problem: Mapping[str, Any]) -> str:
        """Name the columns at fault, in the file of bad rows and in words."""
        slug = str(problem.get("type", "unreadable-row")).rpartition("/")[2]
        words = []
        for fault in problem.get("errors") or [{"detail": problem.get("detail") or problem.get("title")}]:
            pointer, detail = str(fault.get("pointer", "")), str(fault.get("detail", ""))
            column = self.columns.place(row.cells, pointer) if pointer and row.cells is not None else ""
            self.bad.write(csv_row((row.line, problem.get("id"), column, slug, detail, row.text)))
            words.append(f"{column}: {detail}" if column else detail)
        return " ".join(words)

    def _settle(self) -> None:
        """Bring what is done to the disk, and then say so."""
        self.standing.output = self.output.settle()
        self.standing.bad_output = self.bad.settle()
        self.journal.keep(self.standing)


def _unreadable(fault: str) -> dict[str, Any]:
    """The problem of a row that makes no question."""
    return {"id": None, "title": "Unreadable row", "detail": f"{fault[:1].upper()}{fault[1:]}.", "errors": []}
