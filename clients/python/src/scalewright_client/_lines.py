"""Batches coming in: lines of JSON to answers, and none of them lost."""

import json
import re
from abc import ABC, abstractmethod
from collections.abc import Iterator
from typing import Any, Final, Generic, NamedTuple, TypeVar

import httpx

from scalewright_client._batch import JSON_LINES, BatchCall, BatchProblem, BatchResult, BatchSummary
from scalewright_client._decode import Mismatch, decode
from scalewright_client._errors import TruncatedError, UnexpectedAnswerError
from scalewright_client._problems import problem_from, request_id_of

__all__ = ["AnswerReader", "LineCutter", "LineReader", "RawLine", "RawReader"]

Result = TypeVar("Result")
Outcome = TypeVar("Outcome")

_MEDIA_TYPES: Final = (JSON_LINES, "application/x-ndjson")

_LONGEST_LINE: Final = 16_777_216
"""No answer is as long; what is has lost its line feeds. [byte]"""


class LineCutter:
    """Cuts the pieces of a body into lines; only a line feed ends one, as JSON may hold any other separator."""

    def __init__(self) -> None:
        self._open: list[bytes] = []
        self._length = 0

    def feed(self, piece: bytes) -> list[bytes]:
        """Take a piece; returns the lines that it completes.

        Raises
        ------
        ValueError
            A line that does not end.
        """
        *whole, rest = piece.split(b"\n")
        if whole:
            whole[0] = b"".join((*self._open, whole[0]))
            self._open.clear()
            self._length = 0
        if rest:
            self._open.append(rest)
            self._length += len(rest)
        if self._length > _LONGEST_LINE:
            message = "a line of the answer does not end"
            raise ValueError(message)
        return [line for line in whole if line]


class LineReader(ABC, Generic[Outcome]):
    """Reads the lines of an answer and holds them against the promises: none is lost, and there is an end."""

    def __init__(self, path: str) -> None:
        self._path = path
        self._cutter = LineCutter()
        self._status = 200
        self._request_id: str | None = None
        self.summary: BatchSummary | None = None
        """What the last line says; None until it was read."""
        self.read = 0
        """Questions whose answers were read."""

    def begin(self, response: httpx.Response) -> None:
        """Look at the head of an answer.

        Raises
        ------
        UnexpectedAnswerError
            It is not made of lines of JSON.
        """
        # What a broken connection has left of an earlier attempt is of no use.
        self._cutter = LineCutter()
        self._status = response.status_code
        self._request_id = request_id_of(response)
        media_type = response.headers.get("Content-Type", "").partition(";")[0].strip().lower()
        if not response.is_success or media_type not in _MEDIA_TYPES:
            raise self._unexpected("the answer is no lines of JSON; check the base address")

    def feed(self, piece: bytes) -> Iterator[Outcome]:
        """Take a piece of the body.

        Yields
        ------
        Outcome
            What the lines that it completes say, in the order of the questions.

        Raises
        ------
        UnexpectedAnswerError
            A line that breaks the contract.
        """
        try:
            lines = self._cutter.feed(piece)
        except ValueError as error:
            raise self._unexpected(str(error)) from None
        yield from filter(None, map(self._outcome, lines))

    def finish(self) -> None:
        """Look back when the body has ended.

        Raises
        ------
        TruncatedError
            The answer broke off, or not all questions were looked at.
        """
        if self.summary is None:
            raise self.truncated("the answer broke off")
        if not self.summary.complete:
            raise self.truncated("the batch has more questions than the service takes at once")
        if self.summary.results + self.summary.problems != self.read:
            raise self.truncated("lines of the answer were lost")

    def truncated(self, why: str) -> TruncatedError:
        """Return the exception for an answer that is not whole."""
        message = f"{self._path}: {why}; {self.read} lines came"
        return TruncatedError(message, received=self.read, request_id=self._request_id)

    def _outcome(self, line: bytes) -> Outcome | None:
        try:
            members = json.loads(line)
            kind, index = members["kind"], members.get("index")
        except (ValueError, RecursionError, KeyError, TypeError, AttributeError):
            raise self._unexpected(f"line {self.read} of the answer is no object with a kind") from None
        if kind == "end":
            self.summary = self._decoded(BatchSummary, {"verdicts": {}, **members})
            return None
        if kind not in {"result", "problem"}:
            # What a newer service adds for the eye is not for us.
            return None
        self._count(index)
        return self._made(kind, members)

    @abstractmethod
    def _made(self, kind: str, members: dict[str, Any]) -> Outcome:
        """Make an outcome of a line."""

    def _count(self, index: object) -> None:
        """Count an answer, which has to be the one to the next question."""
        if index != self.read:
            raise self._unexpected(f"expected the answer to question {self.read}, and not to {index!r}")
        self.read += 1

    def _decoded(self, kind: type[Any], members: object) -> Any:
        try:
            return decode(kind, members)
        except Mismatch as mismatch:
            where = f"{mismatch.pointer or 'the top'} of the answer to question {max(self.read - 1, 0)}"
            raise self._unexpected(f"expected {mismatch.expected} at {where}") from None

    def _unexpected(self, why: str) -> UnexpectedAnswerError:
        return UnexpectedAnswerError(f"{self._path}: {why}", status=self._status, request_id=self._request_id)


class AnswerReader(LineReader[BatchResult[Result] | BatchProblem]):
    """Reads each line into what it says."""

    def __init__(self, call: BatchCall[Result]) -> None:
        super().__init__(call.path)
        self._result = call.result

    def _made(self, kind: str, members: dict[str, Any]) -> BatchResult[Result] | BatchProblem:
        index, identifier = members["index"], members.get("id")
        if kind == "result":
            return BatchResult(index, identifier, self._decoded(self._result, members))
        status = members.get("status")
        known = {name: value for name, value in members.items() if name not in {"kind", "index", "id"}}
        problem = problem_from(known, status if isinstance(status, int) else 422, request_id=self._request_id)
        return BatchProblem(index, identifier, problem)


class RawLine(NamedTuple):
    """A line of an answer as it came."""

    kind: str
    """ "result" or "problem"."""
    rest: bytes
    """What follows the kind and the index, up to the closing brace."""


_KINDS: Final = {b"result": "result", b"problem": "problem"}
_HEAD: Final = re.compile(rb'\{"kind":"(result|problem)","index":(0|[1-9][0-9]{0,14}),')


class RawReader(LineReader[RawLine]):
    """Reads lines only as far as it takes to see that none is lost, for those who pass them on."""

    def _outcome(self, line: bytes) -> RawLine | None:
        head = _HEAD.match(line)
        if head is None:
            # The end line, or a server that orders its members otherwise.
            return super()._outcome(line)
        kind, index = head.groups()
        if int(index) != self.read:
            self._count(int(index))
        self.read += 1
        return RawLine(_KINDS[kind], line[head.end() :])

    def _made(self, kind: str, members: dict[str, Any]) -> RawLine:
        rest = {name: value for name, value in members.items() if name not in {"kind", "index"}}
        return RawLine(kind, json.dumps(rest, ensure_ascii=False, separators=(",", ":")).encode()[1:])
