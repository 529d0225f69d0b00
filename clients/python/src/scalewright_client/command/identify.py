"""Which rule and true scale the boards of a file have."""

from collections.abc import Mapping, Sequence
from typing import ClassVar, Final

from scalewright_client._clients import Client
from scalewright_client.command.asking import Ask, batches
from scalewright_client.command.fields import READINGS, Fields
from scalewright_client.command.running import Word
from scalewright_client.command.writing import CsvWriter, JsonLinesWriter, Writer

__all__ = ["Identify"]

_WRITERS: Final[Mapping[str, type[Writer]]] = {"csv": CsvWriter, "jsonl": JsonLinesWriter}


class Identify(Word):
    """A row of rule and true scale for each row of readings."""

    name: ClassVar[str] = "identify"
    fields: ClassVar[Fields] = READINGS
    at_once: ClassVar[int] = 2048

    def asking(self, client: Client) -> Ask:
        """Ask by the batch route."""
        return batches(client, "/v1/identification/batch")

    def line(self, cells: Sequence[str] | Mapping[str, object]) -> bytes:
        """Make the question of a row; numbers that are JSON as they stand go in as they are."""
        return self.columns.line(cells) or super().line(cells)

    def writer(self) -> Writer:
        """Write lines of JSON, or what a stock list needs."""
        return _WRITERS[self.job.output_format]()
