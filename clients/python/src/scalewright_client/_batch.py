"""Batches going out: many questions as lines of JSON, and what comes back for each."""

from collections.abc import AsyncIterable, AsyncIterator, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final, Generic, TypeAlias, TypeVar, cast

from scalewright_client._errors import ProblemError
from scalewright_client._protocol import encode
from scalewright_client._requests import BatchId

__all__ = ["JSON_LINES", "BatchCall", "BatchProblem", "BatchResult", "BatchSummary", "Questions"]

Question = TypeVar("Question")
Result = TypeVar("Result")

Questions: TypeAlias = Iterable[Question] | AsyncIterable[Question]
"""Questions, all there or still to come."""

JSON_LINES: Final = "application/jsonl"
"""Media type of lines of JSON."""

_PIECE: Final = 65_536
"""Lines are sent together up to so many bytes: a packet for each would be slow."""


@dataclass(frozen=True, slots=True)
class BatchResult(Generic[Result]):
    """The answer to one question of a batch."""

    index: int
    """Place of the question in the batch, counted from 0."""
    id: BatchId
    """The caller's own, as it was given; None where there was none."""
    result: Result
    """The answer."""


@dataclass(frozen=True, slots=True)
class BatchProblem:
    """Why one question of a batch has no answer; the others have theirs."""

    index: int
    """Place of the question in the batch, counted from 0."""
    id: BatchId
    """The caller's own, as it was given; None where there was none or it could not be read."""
    error: ProblemError
    """What the same question alone would have raised."""


@dataclass(frozen=True, slots=True)
class BatchSummary:
    """What the last line of a batch says."""

    results: int
    """Questions that were answered."""
    problems: int
    """Questions that were refused."""
    complete: bool
    """Whether all questions were looked at; there is a limit on how many one batch may have."""
    verdicts: Mapping[str, int]
    """How many answers have which verdict, of batches that are counted so."""


@dataclass(slots=True)
class BatchCall(Generic[Result]):
    """One batch, ready to be sent by any transport."""

    path: str
    """Path below the base address."""
    result: type[Result]
    """What each answer is."""
    questions: Questions[Mapping[str, Any]]
    """The questions."""
    begun: bool = False
    """Whether questions have been taken."""

    @property
    def headers(self) -> dict[str, str]:
        """Headers of this call."""
        return {"Accept": JSON_LINES, "Content-Type": JSON_LINES}

    @property
    def repeatable(self) -> bool:
        """Whether the questions can be put again; those of an iterator are gone once they are taken."""
        return not (self.begun and isinstance(self.questions, Iterator | AsyncIterator))

    def pieces(self) -> Iterator[bytes]:
        """Pieces of the body, made as they are sent.

        Raises
        ------
        ValueError, TypeError
            A question that cannot be sent; the message says which.
        """
        self.begun = True
        writer = _LineWriter()
        for question in cast("Iterable[Mapping[str, Any]]", self.questions):
            piece = writer.add(question)
            if piece:
                yield piece
        yield writer.rest()

    async def pieces_async(self) -> AsyncIterator[bytes]:
        """Pieces of the body, made as they are sent; see :meth:`pieces`."""
        if not isinstance(self.questions, AsyncIterable):
            for piece in self.pieces():
                yield piece
            return
        self.begun = True
        writer = _LineWriter()
        async for question in self.questions:
            piece = writer.add(question)
            if piece:
                yield piece
        yield writer.rest()


class _LineWriter:
    """Writes questions as lines, and gives them out in pieces of a good size."""

    def __init__(self) -> None:
        self._lines: list[bytes] = []
        self._length = 0
        self._index = 0

    def add(self, question: Mapping[str, Any]) -> bytes:
        """Write a question; returns a piece where one is full, else nothing."""
        try:
            line = encode(question)
        except (ValueError, TypeError) as error:
            message = f"question {self._index} of the batch, id {question.get('id')!r}: {error}"
            raise type(error)(message) from None
        self._index += 1
        self._lines += (line, b"\n")
        self._length += len(line) + 1
        return self.rest() if self._length >= _PIECE else b""

    def rest(self) -> bytes:
        """All that was not given out."""
        piece = b"".join(self._lines)
        self._lines.clear()
        self._length = 0
        return piece
