"""A file of rows in, an answer for each out: every row in its place, the bad ones named, whatever is asked."""

import contextlib
import json
from abc import ABC, abstractmethod
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, ClassVar, TextIO

from scalewright_client._clients import Client
from scalewright_client._protocol import encode
from scalewright_client._requests import Unit
from scalewright_client.command.asking import Answered, Ask, Asked, answers
from scalewright_client.command.columns import Columns, read_columns
from scalewright_client.command.fields import Fields
from scalewright_client.command.journal import CannotResumeError, Growing, Journal, Output, Standing
from scalewright_client.command.progress import Progress
from scalewright_client.command.rows import Row, RowFormat, Table
from scalewright_client.command.writing import BAD_ROW_COLUMNS, Writer, csv_row

__all__ = ["Job", "Word", "run_word"]


@dataclass(frozen=True, slots=True)
class Job:
    """What is to be done."""

    source: Path
    """The file of rows."""
    output: Path
    """The file of answers."""
    bad_rows: Path
    """The file of rows without an answer; it is there only if there are any."""
    row_format: RowFormat
    """What the file of rows is made of."""
    output_format: str
    """What the answers are to be made of."""
    delimiter: str | None = None
    """What parts the cells of CSV; found out unless given."""
    encoding: str = "utf-8"
    """Of the file of rows."""
    unit: Unit | None = None
    """Unit of bare numbers whose column names none, and of the answers."""
    mapping: Mapping[str, str] = field(default_factory=dict)
    """Names of columns by the field that they are."""
    fixed: Mapping[str, str] = field(default_factory=dict)
    """Values of fields that are the same for all rows."""
    at_once: int | None = None
    """Rows in one request; as many as suit what is asked unless given."""
    restart: bool = False
    """Whether to start afresh, and to replace what is there."""


class Word(ABC):
    """What is asked about each row, and what becomes of the answers.

    Parameters
    ----------
    job : Job
        What is to be done.
    """

    name: ClassVar[str]
    """As it is typed."""
    fields: ClassVar[Fields]
    """What columns can be."""
    at_once: ClassVar[int]
    """Rows in one request, unless the caller says otherwise."""

    def __init__(self, job: Job) -> None:
        self.job = job
        self.columns = Columns(None)

    def begin(self, columns: Columns) -> None:
        """Learn which column is what."""
        self.columns = columns

    @property
    def order(self) -> dict[str, object]:
        """What the answers depend on, beside the rows."""
        job = self.job
        return {
            "operation": self.name,
            "formats": (job.row_format, job.output_format),
            "reading": (job.delimiter, job.encoding),
            "unit": job.unit,
            "columns": dict(job.mapping),
            "fixed": dict(job.fixed),
        }

    @property
    def in_the_way(self) -> Iterator[Path]:
        """Files that a fresh run would write over."""
        yield from (path for path in (self.job.output, self.job.bad_rows) if path.exists())

    def question(self, members: dict[str, object]) -> dict[str, object]:
        """Make the last changes to a question.

        Raises
        ------
        ValueError
            It cannot be asked here; why, in a sentence.
        """
        return members

    def line(self, cells: Sequence[str] | Mapping[str, object]) -> bytes:
        """Make the question of a row, as a line of JSON.

        Raises
        ------
        ValueError
            It cannot be asked here; why, in a sentence.
        """
        return encode(self.question(self.columns.question(cells)))

    @abstractmethod
    def asking(self, client: Client) -> Ask:
        """Return what asks about a chunk of rows."""

    @abstractmethod
    def writer(self) -> Writer:
        """Return what writes the answers."""

    def publish(self, client: Client, output: Output) -> None:
        """Give the output its name, now that it is whole."""
        del client
        output.publish()


def run_word(word: Word, client: Client, terminal: TextIO, *, quiet: bool = False) -> Standing:
    """Ask about all rows of a file, or about those that an earlier run has left.

    Parameters
    ----------
    word : Word
        What is to be asked, and of what.
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
        The file cannot be read as a table of what is asked about.
    ScalewrightError
        The service does not answer; what was done is kept, and the same call goes on there.
    """
    job = word.job
    with job.source.open("rb") as file:
        table = Table(file, job.row_format, delimiter=job.delimiter, encoding=job.encoding)
        columns = read_columns(table.header, mapping=job.mapping, fixed=job.fixed, unit=job.unit, fields=word.fields)
        word.begin(columns)
        journal = Journal(job.output.with_name(f"{job.output.name}.progress"), job.source, word.order)
        output, bad = Output(job.output), Output(job.bad_rows)
        standing = _standing(word, journal, table)
        if not quiet:
            _say_what_is_read(columns, standing, terminal)
        progress = Progress(terminal, job.source.stat().st_size, job.source.name, quiet=quiet)
        if not standing.finished:
            with (
                contextlib.closing(output.grow(standing.output)) as growing,
                contextlib.closing(bad.grow(standing.bad_output)) as growing_bad,
            ):
                _Run(word, columns, journal, growing, growing_bad, standing, progress).go(client, table)
        if standing.bad_rows:
            bad.publish()
        else:
            bad.discard()
        word.publish(client, output)
        journal.discard()
        return standing


def _standing(word: Word, journal: Journal, table: Table) -> Standing:
    """Where to begin."""
    if word.job.restart:
        journal.discard()
    left = journal.standing()
    if left is not None:
        return left
    if not word.job.restart:
        for path in word.in_the_way:
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

    word: Word
    columns: Columns
    journal: Journal
    output: Growing
    bad: Growing
    standing: Standing
    progress: Progress

    def go(self, client: Client, table: Table) -> None:
        """Answer the rows."""
        standing = self.standing
        writer = self.word.writer()
        if not standing.bad_output:
            self.output.write(writer.head())
            self.bad.write(csv_row(BAD_ROW_COLUMNS))
            # From here on what is there is this run's own.
            self._settle()
        at_once = self.word.job.at_once or self.word.at_once
        asked = self._asked(table.rows(standing.place, standing.line))
        self.progress.show(standing.place, standing.rows, standing.bad_rows)
        try:
            with contextlib.closing(answers(self.word.asking(client), asked, at_once)) as parts:
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
                yield Asked(row, self.word.line(row.cells))
            except ValueError as error:
                yield Asked(row, None, str(error))

    def _write(self, writer: Writer, part: Answered) -> None:
        """Write some rows."""
        standing = self.standing
        lines = iter(part.lines)
        written: list[bytes] = []
        for index, (row, question, fault) in enumerate(part.rows, standing.rows):
            kind, rest = ("problem", b"") if question is None else next(lines)
            if kind == "result":
                written.append(writer.result(index, row.line, rest))
                continue
            problem = _unreadable(fault) if question is None else json.loads(b"{" + rest)
            written.append(writer.problem(index, row.line, problem, self._write_bad(row, problem)))
            standing.bad_rows += 1
        self.output.write(b"".join(written))
        last = part.rows[-1].row
        standing.rows += len(part.rows)
        standing.place, standing.line = last.end, last.end_line
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
