"""Answers to a batch, as they arrive."""

from collections.abc import AsyncGenerator, Generator
from types import TracebackType
from typing import Generic, Self, TypeAlias, TypeVar

from scalewright_client._batch import BatchProblem, BatchResult, BatchSummary
from scalewright_client._lines import AnswerReader

__all__ = ["AsyncBatch", "Batch"]

Result = TypeVar("Result")
_Outcome: TypeAlias = BatchResult[Result] | BatchProblem


class Batch(Generic[Result]):
    """Answers to a batch, one for each question and in their order, as they arrive.

    The questions are sent when the first answer is asked for. Iterate to the end: an answer that broke off
    raises ``TruncatedError`` there. Who stops early closes the batch, or uses it as a context manager.
    """

    def __init__(self, outcomes: "Generator[_Outcome[Result], None, None]", reader: AnswerReader[Result]) -> None:
        self._outcomes = outcomes
        self._reader = reader

    @property
    def summary(self) -> BatchSummary | None:
        """What the last line of the answer says; None until it was read."""
        return self._reader.summary

    def __iter__(self) -> Self:
        """Give the batch itself."""
        return self

    def __next__(self) -> "_Outcome[Result]":
        """Wait for the next answer."""
        return next(self._outcomes)

    def close(self) -> None:
        """Stop, and hang up if the answer is not all there."""
        self._outcomes.close()

    def __enter__(self) -> Self:
        """Give the batch itself."""
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, traceback: TracebackType | None
    ) -> None:
        """Stop."""
        self.close()


class AsyncBatch(Generic[Result]):
    """Answers to a batch, one for each question and in their order, as they arrive; for ``async for``.

    The questions are sent when the first answer is asked for. Iterate to the end: an answer that broke off
    raises ``TruncatedError`` there. Who stops early closes the batch, or uses it in ``async with``.
    """

    def __init__(self, outcomes: "AsyncGenerator[_Outcome[Result], None]", reader: AnswerReader[Result]) -> None:
        self._outcomes = outcomes
        self._reader = reader

    @property
    def summary(self) -> BatchSummary | None:
        """What the last line of the answer says; None until it was read."""
        return self._reader.summary

    def __aiter__(self) -> Self:
        """Give the batch itself."""
        return self

    async def __anext__(self) -> "_Outcome[Result]":
        """Wait for the next answer."""
        return await anext(self._outcomes)

    async def aclose(self) -> None:
        """Stop, and hang up if the answer is not all there."""
        await self._outcomes.aclose()

    async def __aenter__(self) -> Self:
        """Give the batch itself."""
        return self

    async def __aexit__(
        self, kind: type[BaseException] | None, error: BaseException | None, traceback: TracebackType | None
    ) -> None:
        """Stop."""
        await self.aclose()
