"""Rows to the service and answers back, a chunk at a time, with the next chunk on its way meanwhile."""

import time
from collections import deque
from collections.abc import Callable, Generator, Iterable, Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from typing import Any, Final, NamedTuple, TypeAlias

from scalewright_client._batch import BatchCall, BatchSummary
from scalewright_client._clients import Client
from scalewright_client._errors import TruncatedError
from scalewright_client._lines import RawLine, RawReader
from scalewright_client.command.rows import Row

__all__ = ["Answered", "Ask", "Asked", "answers", "batches"]

_UNDER_WAY: Final = 2
"""Chunks that the service has at once: it reads one while it works on the other."""

_ATTEMPTS: Final = 3
"""How often a chunk is sent whose answer breaks off."""


class Asked(NamedTuple):
    """A row, and what is asked about it."""

    row: Row
    """The row."""
    question: bytes | None
    """The question as a line of JSON; None where there is none."""
    fault: str = ""
    """Why there is none, in a sentence."""


@dataclass(frozen=True, slots=True)
class Answered:
    """Some rows with their answers."""

    rows: Sequence[Asked]
    """The rows."""
    lines: Sequence[RawLine]
    """An answer for each row that has a question."""
    summary: BatchSummary
    """What the service counted."""


Ask: TypeAlias = Callable[[Sequence[Asked]], tuple[list[RawLine], BatchSummary]]
"""Asks about rows that have questions: an answer for each, and what was counted."""


@dataclass(slots=True)
class _WrittenCall(BatchCall[Any]):
    """A batch whose lines are written already."""

    content: bytes = b""

    def pieces(self) -> Iterator[bytes]:
        """The body, in one piece."""
        yield self.content


def answers(
    ask: Ask,
    rows: Iterable[Asked],
    at_once: int,
) -> Generator[Answered, None, None]:
    """Ask about rows.

    Parameters
    ----------
    ask : callable
        What asks about a chunk, in a thread of its own.
    rows : iterable of Asked
        The rows; they are taken as they are needed.
    at_once : int
        Rows in a chunk.

    Yields
    ------
    Answered
        The rows in their order, a chunk at a time.

    Raises
    ------
    ScalewrightError
        The service gives no answer to a chunk; those before it were given.
    """
    pool = ThreadPoolExecutor(_UNDER_WAY, thread_name_prefix="scalewright")
    waiting: deque[tuple[list[Asked], Future[tuple[list[RawLine], BatchSummary]]]] = deque()
    try:
        for chunk in _chunks(rows, at_once):
            questions = [asked for asked in chunk if asked.question is not None]
            waiting.append((chunk, pool.submit(ask, questions)))
            if len(waiting) > _UNDER_WAY:
                yield _answered(*waiting.popleft())
        while waiting:
            yield _answered(*waiting.popleft())
    finally:
        pool.shutdown(wait=False, cancel_futures=True)


def _answered(chunk: list[Asked], future: "Future[tuple[list[RawLine], BatchSummary]]") -> Answered:
    lines, summary = future.result()
    return Answered(chunk, lines, summary)


def _chunks(rows: Iterable[Asked], at_once: int) -> Iterator[list[Asked]]:
    chunk: list[Asked] = []
    for asked in rows:
        chunk.append(asked)
        if len(chunk) >= at_once:
            yield chunk
            chunk = []
    if chunk:
        yield chunk


def batches(client: Client, path: str) -> Ask:
    """Make a batch of each chunk.

    Parameters
    ----------
    client : Client
        Who asks.
    path : str
        Path of the batch.

    Returns
    -------
    callable
        What asks.
    """

    def ask(rows: Sequence[Asked]) -> tuple[list[RawLine], BatchSummary]:
        return _ask(client, path, b"".join(asked.question + b"\n" for asked in rows if asked.question is not None))

    return ask


def _ask(client: Client, path: str, content: bytes) -> tuple[list[RawLine], BatchSummary]:
    """Put a chunk, again if its answer breaks off: it is a pure calculation."""
    if not content:
        return [], BatchSummary(0, 0, complete=True, verdicts={})
    attempt = 1
    while True:
        reader = RawReader(path)
        lines: list[RawLine] = []
        try:
            lines += client.outcomes(_WrittenCall(path, object, (), content=content), reader)
        except TruncatedError:
            # What was read to its end and is still not whole stays so.
            if reader.summary is not None or attempt >= _ATTEMPTS:
                raise
        if reader.summary is not None:
            return lines, reader.summary
        time.sleep(float(attempt))
        attempt += 1
