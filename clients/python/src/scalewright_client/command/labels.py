"""Labels for the parts of a file: what stands on them as lines, or pages of label paper to print."""

import itertools
import json
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, ClassVar, Final, cast

from scalewright_client._batch import BatchSummary
from scalewright_client._clients import Client
from scalewright_client._errors import InvalidRequestError
from scalewright_client._lines import RawLine
from scalewright_client._protocol import encode
from scalewright_client._requests import LabelBatchQuestion
from scalewright_client.command.asking import Ask, Asked, batches
from scalewright_client.command.fields import LABEL, Fields
from scalewright_client.command.journal import Output
from scalewright_client.command.rows import UnusableFileError
from scalewright_client.command.running import Word
from scalewright_client.command.whole import write_whole
from scalewright_client.command.writing import CsvTable, JsonLinesWriter, Writer

__all__ = ["Labels"]

_IN_ONE_FILE: Final = 10_000
"""Labels in one document: so many are looked over before a caller's patience ends."""

_OF_THE_PAGES: Final = ("paper", "start", "column_gap", "row_gap", "left", "top")
_SAME_FOR_ALL: Final = ("unit", "size", "dpi", *_OF_THE_PAGES)
_SAME_IN_EACH: Final = ("unit",)
"""What is the same for all labels and yet said of each."""
_OF_EACH: Final = ("part", "title", "date", "url")


class Labels(Word):
    """A label for each part."""

    name: ClassVar[str] = "labels"
    fields: ClassVar[Fields] = LABEL
    at_once: ClassVar[int] = 256

    @property
    def in_the_way(self) -> Iterator[Path]:
        """Files that a fresh run would write over, the further documents of a large stock among them."""
        yield from super().in_the_way
        if self._pages:
            yield from self._further_documents()

    def question(self, members: dict[str, object]) -> dict[str, object]:
        """Name the label after its part; on pages, leave to the pages what is the same for all labels.

        Raises
        ------
        ValueError
            A label wants what is not that of the pages.
        """
        part = members.get("part")
        if isinstance(part, Mapping):
            members.setdefault("id", part.get("id"))
        if not self._pages:
            return members
        common = self._common
        for name in _SAME_FOR_ALL:
            if name in members and members[name] != common.get(name):
                message = f"{name} is the same for all labels of a PDF; give it once, with --set or --unit"
                raise ValueError(message)
        kept = {name: value for name, value in members.items() if name not in _OF_THE_PAGES}
        return {**kept, "size": common["size"]}

    def asking(self, client: Client) -> Ask:
        """Ask by the batch route; for pages it tells which labels can be printed."""
        ask = batches(client, "/v1/label/batch")
        if not self._pages:
            return ask

        def ask_and_keep(rows: Sequence[Asked]) -> tuple[list[RawLine], BatchSummary]:
            lines, summary = ask(rows)
            return [_kept(asked, line) for asked, line in zip(rows, lines, strict=True)], summary

        return ask_and_keep

    def writer(self) -> Writer:
        """Write lines of JSON, or a table; what is to go on pages is gathered as lines first."""
        return CsvTable(("code", "letters"), _cells) if self.job.output_format == "csv" else JsonLinesWriter()

    def publish(self, client: Client, output: Output) -> None:
        """Give the lines their name, or have the pages made.

        Raises
        ------
        UnusableFileError
            The labels do not go on the paper.
        """
        if not self._pages:
            output.publish()
            return
        if not output.part.exists():
            return
        with output.part.open("rb") as gathered:
            labels = (_on_page(line) for line in gathered)
            good = (label for label in labels if label is not None)
            common = self._common
            same: dict[str, Any] = {name: common.pop(name) for name in _SAME_IN_EACH if name in common}
            common["unit"] = same["unit"]
            written: set[Path] = set()
            for number in itertools.count(1):
                few = list(itertools.islice(good, _IN_ONE_FILE))
                if not few:
                    break
                try:
                    content = client.label_batch_drawing(_questions(few, same), **common)
                except InvalidRequestError as refusal:
                    message = f"The labels can't be set: {refusal}\nGive other options, and --restart."
                    raise UnusableFileError(message) from None
                write_whole(self._document(number), content)
                written.add(self._document(number))
                # Only the first sheet of the first document may have been begun before.
                common = {name: value for name, value in common.items() if name != "start"}
        output.part.unlink()
        # Further ones are those of an earlier, larger stock that was to be replaced.
        for path in self._further_documents():
            if path not in written:
                path.unlink()

    def _further_documents(self) -> list[Path]:
        """Documents beside the first, numbered from 2 on."""
        output = self.job.output
        return [
            path
            for path in output.parent.iterdir()
            if path.suffix == output.suffix
            and path.stem.startswith(f"{output.stem}-")
            and path.stem[len(output.stem) + 1 :].isdecimal()
        ]

    @property
    def _pages(self) -> bool:
        return self.job.output_format == "pdf"

    @property
    def _common(self) -> dict[str, Any]:
        """What is the same for all labels of the pages."""
        columns = self.columns
        fixed = {name: value for name, value in columns.fixed.items() if name in _SAME_FOR_ALL}
        unit = {} if columns.unit is None else {"unit": columns.unit}
        return {"unit": "mm", "size": "70x36mm", **unit, **fixed}

    def _document(self, number: int) -> Path:
        output = self.job.output
        return output if number == 1 else output.with_name(f"{output.stem}-{number}{output.suffix}")


def _cells(found: Mapping[str, Any]) -> Sequence[object]:
    """What a table says of a label."""
    return found.get("code"), " | ".join(found.get("lines") or ())


def _kept(asked: Asked, line: RawLine) -> RawLine:
    """The label as it goes on a page, in the place of what stands on it."""
    if line.kind != "result":
        return line
    question = json.loads(asked.question or b"{}")
    label = {name: question[name] for name in _OF_EACH if name in question}
    return RawLine(line.kind, encode({"label": label})[1:])


def _questions(labels: Sequence[Mapping[str, Any]], same: Mapping[str, Any]) -> list[LabelBatchQuestion]:
    """Labels with what is the same for all of them."""
    return [cast("LabelBatchQuestion", {**same, **label}) for label in labels]


def _on_page(line: bytes) -> dict[str, Any] | None:
    label: dict[str, Any] | None = json.loads(line).get("label")
    return label
