"""Batches: many questions as lines of JSON, answered as lines of JSON in the same order.

Each line is a complete single question and, if the caller likes, an ``id`` that comes back with its answer.
A bad line is answered by a problem line and spoils no other. After the first byte the status is 200 for
ever: the last line, of the kind "end", tells a whole answer from one that was cut off.
"""

import asyncio
import inspect
import logging
from collections import Counter, deque
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pickle import PickleBuffer  # nosec B403  (for a process of our own)
from typing import Any

import orjson
from fastapi import APIRouter
from fastapi.routing import APIRoute
from pydantic import ValidationError
from starlette.exceptions import HTTPException
from starlette.types import Receive, Scope, Send

from scalewright.api.batch_body import LINE_TYPES, is_array, question_of, texts_of_array
from scalewright.api.documentation import batch_documentation
from scalewright.api.faults import refuse_invalid
from scalewright.api.lines import read_lines
from scalewright.api.media import choose
from scalewright.api.problems import Refusal, document_of, request_id_of
from scalewright.api.settings import Settings
from scalewright.api.workshop import Workshop
from scalewright.lutherie.errors import LutherieError
from scalewright.wire.quantities import Question

__all__ = ["Batch", "BatchOperation", "add_batch", "disconnected", "refusal_of", "send_pieces"]

_LOG = logging.getLogger("scalewright.batch")

_CHUNK = 1024
"""Lines that are worked on at once."""

_PIECE = 131_072
"""Bytes after which a piece is sent."""

_Outcome = bytes | LutherieError | ValidationError
Solver = Callable[[Sequence[dict[str, Any]]], Sequence[_Outcome]]


@dataclass(frozen=True, slots=True)
class Batch:
    """What answers a batch; other processes find its parts by name."""

    question: type[Question]
    """Model of a single question."""
    solve: Solver
    """Answers questions, parsed from JSON: for each its answer as a JSON object, or what was wrong with it."""
    tally: Callable[[bytes], str] | None = None
    """What an answer counts as in the end line, under the name that :attr:`tallied` gives."""
    tallied: str = ""
    """Name of these counts."""


class BatchOperation(APIRoute):
    """Many calculations behind an address."""

    def __init__(self, path: str, endpoint: Callable[..., Any], batch: Batch, **options: Any) -> None:
        super().__init__(path, endpoint, **options)
        self.method = "POST"
        self.batch = batch

    async def handle(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request."""
        if scope["method"] != self.method:
            raise HTTPException(405)
        settings: Settings = scope["app"].state.settings
        workshop: Workshop = scope["app"].state.workshop
        headers: dict[bytes, bytes] = dict(scope["headers"])
        media_type = choose(LINE_TYPES, headers.get(b"accept"))
        if scope["query_string"]:
            raise Refusal("invalid-request", "This address takes no parameters; use the lines of the body.")
        as_array = is_array(headers)
        lines = await read_lines(receive, settings.max_batch_lines, settings.max_line_bytes, whole=as_array)
        if lines is None:
            return
        texts = texts_of_array(lines.texts, settings) if as_array else lines.texts
        begin = [(b"content-type", media_type.encode()), (b"cache-control", b"no-store")]
        await send({"type": "http.response.start", "status": 200, "headers": begin})
        gone = asyncio.ensure_future(disconnected(receive))
        try:
            counts = scope["state"]["batch_lines"] = {"result": 0, "problem": 0}  # for the metrics
            request_id = request_id_of(scope)
            await self._answer(texts, workshop, request_id, send, gone, settings, counts, complete=lines.complete)
        finally:
            gone.cancel()

    async def _answer(
        self,
        texts: Sequence[bytes | None],
        workshop: Workshop,
        request_id: str,
        send: Send,
        gone: "asyncio.Future[None]",
        settings: Settings,
        counts: dict[str, int],
        *,
        complete: bool,
    ) -> None:
        """Send the answers a chunk at a time while the next ones are worked on; stop when the client has gone."""
        end = _End()
        waiting: deque[asyncio.Task[_Part]] = deque()
        first = 0
        try:
            while waiting or first < len(texts):
                while first < len(texts) and len(waiting) <= workshop.places:
                    chunk = texts[first : first + _CHUNK]
                    work = workshop.run(answer_lines, self.batch, first, chunk, request_id, settings.max_list_items)
                    waiting.append(asyncio.ensure_future(work))
                    first += _CHUNK
                part = await waiting.popleft()
                end.add(part)
                counts.update(result=end.results, problem=end.problems)
                await send_pieces(send, part.pieces, gone)
                if gone.done():
                    return
        finally:
            for task in waiting:
                task.cancel()
        if not complete:
            message = f"A batch may have at most {settings.max_batch_lines} lines; send the rest in another."
            end.problems += 1
            refusal = Refusal("too-many-lines", message, facts={"max_batch_lines": settings.max_batch_lines})
            line = _problem_line(len(texts), None, refusal, request_id)
            await send({"type": "http.response.body", "body": line, "more_body": True})
        last = end.line(self.batch, complete=complete)
        await send({"type": "http.response.body", "body": last, "more_body": False})


@dataclass(slots=True)
class _Part:
    """Answers to some of the lines."""

    pieces: list[bytes | memoryview]
    """The lines, in pieces to send."""
    results: int
    problems: int
    tally: Counter[str]

    def __reduce__(self) -> tuple[object, ...]:
        """Let another process have the pieces without a copy of them in between."""
        return _Part, ([*map(PickleBuffer, self.pieces)], self.results, self.problems, self.tally)


class _End:
    """What the end line says."""

    def __init__(self) -> None:
        self.results, self.problems = 0, 0
        self.tally: Counter[str] = Counter()

    def add(self, part: _Part) -> None:
        """Count a part in."""
        self.results += part.results
        self.problems += part.problems
        self.tally += part.tally

    def line(self, batch: Batch, *, complete: bool) -> bytes:
        """The end line."""
        members: dict[str, object] = {
            "kind": "end",
            "results": self.results,
            "problems": self.problems,
            "complete": complete,
        }
        if batch.tally is not None:
            members[batch.tallied] = dict(sorted(self.tally.items()))
        return orjson.dumps(members, option=orjson.OPT_APPEND_NEWLINE)


def answer_lines(
    batch: Batch, first: int, lines: Sequence[bytes | None], request_id: str, max_list_items: int
) -> _Part:
    """Answer some lines of a batch, in whatever process this is.

    Parameters
    ----------
    batch : Batch
        What answers them.
    first : int
        Index of the first of the lines.
    lines : sequence of bytes or None
        The lines; None for one that was too long.
    request_id : str
        For the problem documents.
    max_list_items : int
        Longest list in a question.

    Returns
    -------
    _Part
        A line for each.
    """
    ids: list[object] = [None] * len(lines)
    outcomes: list[_Outcome | Refusal | None] = [None] * len(lines)
    questions: list[dict[str, Any]] = []
    places: list[int] = []
    for place, line in enumerate(lines):
        try:
            ids[place], question = question_of(line, max_list_items)
        except Refusal as refusal:
            outcomes[place] = refusal
            ids[place] = refusal.facts.pop("id", None) if isinstance(refusal.facts, dict) else None
        else:
            questions.append(question)
            places.append(place)
    for place, answered in zip(places, _solve(batch, questions), strict=True):
        outcomes[place] = answered
    part = _Part([], 0, 0, Counter())
    answers: list[bytes] = []
    length = 0
    for place, outcome in enumerate(outcomes):
        if isinstance(outcome, bytes):
            start = b'{"kind":"result","index":%d,"id":%b,' % (first + place, orjson.dumps(ids[place]))
            answers += (start, outcome[1:], b"\n")
            part.results += 1
            if batch.tally is not None:
                part.tally[batch.tally(outcome)] += 1
        else:
            answers.append(_problem_line(first + place, ids[place], refusal_of(outcome, batch), request_id))
            part.problems += 1
        length += len(answers[-2]) if isinstance(outcome, bytes) else len(answers[-1])
        if length >= _PIECE:
            part.pieces.append(b"".join(answers))
            answers.clear()
            length = 0
    part.pieces.append(b"".join(answers))
    return part


def _solve(batch: Batch, questions: Sequence[dict[str, Any]]) -> Sequence[_Outcome | Refusal]:
    """Answer questions; where one of them brings down all, halve them until it stands alone."""
    if not questions:
        return []
    try:
        return batch.solve(questions)
    except LutherieError as refusal:
        if len(questions) == 1:
            return [refusal]
    except Exception:  # noqa: BLE001 - whatever one line does, the others are to be answered
        if len(questions) == 1:
            _LOG.exception("a line of a batch could not be answered")
            return [Refusal.of_status(500)]
    middle = len(questions) // 2
    return [*_solve(batch, questions[:middle]), *_solve(batch, questions[middle:])]


def refusal_of(outcome: _Outcome | Refusal | None, batch: Batch) -> Refusal:
    """The refusal that an outcome becomes."""
    if isinstance(outcome, Refusal):
        return outcome
    if isinstance(outcome, LutherieError):
        return Refusal.of_craft(outcome)
    if isinstance(outcome, ValidationError):
        return refuse_invalid(outcome, batch.question)
    return Refusal.of_status(500)


def _problem_line(index: int, identifier: object, refusal: Refusal, request_id: str) -> bytes:
    """A problem line."""
    line = {"kind": "problem", "index": index, "id": identifier, **document_of(refusal, request_id)}
    return orjson.dumps(line, option=orjson.OPT_APPEND_NEWLINE)


async def send_pieces(send: Send, pieces: Sequence[bytes | memoryview], gone: "asyncio.Future[None]") -> None:
    """Send some lines, a piece at a time, and let small requests pass in between; stop when the client has gone."""
    for piece in pieces:
        if gone.done():
            return
        await send({"type": "http.response.body", "body": bytes(piece), "more_body": True})
        await asyncio.sleep(0)


async def disconnected(receive: Receive) -> None:
    """Wait until the client has gone."""
    while (await receive())["type"] != "http.disconnect":
        pass


def add_batch(router: APIRouter, path: str, batch: Batch, *, operation_id: str, summary: str, about: str) -> None:
    """Add an operation that answers many questions; the single one is described where it is.

    Parameters
    ----------
    router : APIRouter
        The router of the word.
    path : str
        Such as "/identification/batch".
    batch : Batch
        What answers the questions.
    operation_id, summary, about : str
        For the OpenAPI document.
    """

    async def endpoint() -> None:
        """Stand in for the route's function, which the framework wants to see."""

    endpoint.__name__ = operation_id
    endpoint.__doc__ = inspect.cleandoc(about)
    route = BatchOperation(
        f"{router.prefix}{path}",
        endpoint,
        batch,
        methods=["POST"],
        tags=router.tags,
        operation_id=operation_id,
        summary=summary,
        response_model=None,
        **batch_documentation(
            LINE_TYPES,
            batch.question,
            path.split("/")[1],
            batch.tallied,
            (Settings().max_batch_lines, Settings().max_line_bytes),
        ),
    )
    router.routes.append(route)
