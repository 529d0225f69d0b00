"""A spec sheet for each part of a file, each a file of its own in a folder."""

import csv
import json
import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, ClassVar, Final

from scalewright_client._batch import BatchSummary
from scalewright_client._clients import Client
from scalewright_client._errors import InvalidRequestError, MalformedRequestError, ProblemError, TooLargeError
from scalewright_client._lines import RawLine
from scalewright_client._protocol import encode
from scalewright_client._requests import SheetMedia
from scalewright_client.command.asking import Ask, Asked
from scalewright_client.command.columns import Columns
from scalewright_client.command.fields import SHEET, Fields
from scalewright_client.command.journal import Output
from scalewright_client.command.running import Word
from scalewright_client.command.whole import write_whole
from scalewright_client.command.writing import CsvTable, Writer

__all__ = ["SpecSheets", "file_name"]

_MEDIA: Final[Mapping[str, SheetMedia]] = {"html": "text/html", "pdf": "application/pdf"}
_LONGEST: Final = 60
_SHEET: Final = re.compile(r"[A-Za-z0-9_][A-Za-z0-9._-]*-[0-9]+\.(?:html|pdf)", re.ASCII)


class SpecSheets(Word):
    """A file for each part, and a table that says which is whose."""

    name: ClassVar[str] = "spec-sheets"
    fields: ClassVar[Fields] = SHEET
    at_once: ClassVar[int] = 8

    @property
    def in_the_way(self) -> Iterator[Path]:
        """Whatever is in the folder already: it may be somebody else's."""
        yield from self.job.output.parent.iterdir()

    def begin(self, columns: Columns) -> None:
        """Make the folder."""
        super().begin(columns)
        self.job.output.parent.mkdir(parents=True, exist_ok=True)

    def question(self, members: dict[str, object]) -> dict[str, object]:
        """Leave the kind of file to the command.

        Raises
        ------
        ValueError
            A row wants to say it.
        """
        if "media" in members:
            message = "there is no member media; --output-format says what to write"
            raise ValueError(message)
        return members

    def asking(self, client: Client) -> Ask:
        """Ask for one sheet after another, and put each into the folder."""

        def ask(rows: Sequence[Asked]) -> tuple[list[RawLine], BatchSummary]:
            lines = [self._sheet(client, asked) for asked in rows]
            good = sum(line.kind == "result" for line in lines)
            return lines, BatchSummary(good, len(lines) - good, complete=True, verdicts={})

        return ask

    def writer(self) -> Writer:
        """Write which file is whose."""
        return CsvTable(("file",), lambda found: (found.get("file"),))

    def publish(self, client: Client, output: Output) -> None:
        """Give the table its name, and take away the sheets of an earlier one that are none of this one's."""
        earlier = _files_of(self.job.output)
        super().publish(client, output)
        for name in earlier - _files_of(self.job.output):
            self.job.output.with_name(name).unlink(missing_ok=True)

    def _sheet(self, client: Client, asked: Asked) -> RawLine:
        """Put one sheet into the folder; a refusal is an answer too."""
        question = json.loads(asked.question or b"{}")
        part = question.get("part")
        identifier = part.get("id") if isinstance(part, Mapping) else None
        try:
            content = client.spec_sheet_drawing(media=_MEDIA[self.job.output_format], **question)
        except (InvalidRequestError, MalformedRequestError, TooLargeError) as refusal:
            return RawLine("problem", encode({"id": identifier, **_told(refusal)})[1:])
        name = file_name(identifier, asked.row.line, self.job.output_format)
        write_whole(self.job.output.with_name(name), content)
        return RawLine("result", encode({"id": identifier, "file": name})[1:])


def file_name(identifier: object, line: int, suffix: str) -> str:
    """Name the file of a row.

    The number of its line makes the name different from every other row's, whatever their ids are and
    whether or not the disk tells small letters from capitals.

    Parameters
    ----------
    identifier : object
        Id of the row's part.
    line : int
        Number of the row's line.
    suffix : str
        "html" or "pdf".

    Returns
    -------
    str
        Letters, digits, hyphens, underscores and full stops, the first no full stop.
    """
    safe = re.sub(r"[^A-Za-z0-9._-]+", "_", str(identifier or "part")).lstrip(".-")[:_LONGEST] or "part"
    return f"{safe}-{line}.{suffix}"


def _files_of(table: Path) -> set[str]:
    """Names of the sheets that a table tells of; none that a sheet would not be given."""
    if not table.exists():
        return set()
    with table.open(encoding="utf-8", errors="replace", newline="") as rows:
        names = {row.get("file") or "" for row in csv.DictReader(rows)}
    return {name for name in names if _SHEET.fullmatch(name)}


def _told(refusal: ProblemError) -> dict[str, Any]:
    """Members of a problem document that a file of bad rows needs."""
    faults = [{"pointer": fault.pointer, "code": fault.code, "detail": fault.detail} for fault in refusal.errors]
    return {
        "type": f"/problems/{refusal.slug}",
        "title": refusal.title,
        "detail": refusal.detail or refusal.title,
        "errors": faults,
    }
