"""The batch of labels as one PDF: all lines are looked over first, then pages are sent as they are set.

Lines and pages are worked on in the workshop, a few at a time; what is kept meanwhile are the lines themselves, and of
those with readings what these tell.
"""

import asyncio
import inspect
import itertools
from collections import deque
from collections.abc import AsyncIterator, Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Annotated, Any, TypeVar

from fastapi import APIRouter, Query
from pydantic import ValidationError
from starlette.exceptions import HTTPException
from starlette.types import Receive, Scope, Send

from scalewright.api.batch import Batch, BatchOperation, disconnected, refusal_of, send_pieces
from scalewright.api.batch_body import LINE_TYPES, is_array, question_of, texts_of_array
from scalewright.api.documentation import OTHER_FORMS, batch_documentation
from scalewright.api.faults import refuse_invalid
from scalewright.api.file_names import content_disposition
from scalewright.api.languages import choose_language
from scalewright.api.lines import read_lines
from scalewright.api.media import PDF, choose
from scalewright.api.operations import parameters_of
from scalewright.api.problems import Refusal
from scalewright.api.settings import Settings
from scalewright.api.workshop import Workshop
from scalewright.drawing.joined_pdf import JoinedPdf
from scalewright.drawing.label_list import list_pages
from scalewright.drawing.label_pages import LabelPaper, grid_of, set_on_pages
from scalewright.drawing.label_sheet import FilledLabel, LabelOrder, fill_label, fill_labels, set_label
from scalewright.drawing.language import language_named
from scalewright.drawing.pdf import write_pdf_sheets
from scalewright.lutherie.errors import LutherieError
from scalewright.lutherie.part import Source
from scalewright.lutherie.phrases import counted
from scalewright.lutherie.tag import Tag
from scalewright.wire.label_stock import LabelPaperQuery, order_of

__all__ = ["LabelBatchOperation", "add_label_batch"]

_R = TypeVar("_R")

_Told = tuple[Tag, Source]
"""What the readings of a line tell; worked out once, when all are looked over."""

_AT_ONCE = 240
"""Labels, or lines of the list of bad ones, that are worked on at once, about."""

_MOST_TOLD = 100
"""Bad lines that a problem names one by one."""


@dataclass(frozen=True, slots=True)
class _Wanted:
    """What is the same for all labels; other processes get it with their work."""

    batch: Batch
    paper: LabelPaper
    dpi: int
    language: str
    max_list_items: int
    letters: str = ""


@dataclass(frozen=True, slots=True)
class _BadLine:
    """A line that makes no label."""

    index: int
    identifier: object
    detail: str
    faults: Sequence[Any]


class LabelBatchOperation(BatchOperation):
    """Many labels behind an address: as lines of JSON like every batch, or as one PDF."""

    async def handle(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request."""
        headers: dict[bytes, bytes] = dict(scope["headers"])
        if scope["method"] != self.method:
            raise HTTPException(405)
        if choose((*LINE_TYPES, PDF), headers.get(b"accept")) != PDF:
            await super().handle(scope, receive, send)
            return
        settings: Settings = scope["app"].state.settings
        workshop: Workshop = scope["app"].state.workshop
        query = _query(scope["query_string"])
        language, _ = choose_language(headers.get(b"accept-language"))
        texts = await _texts(headers, receive, settings)
        if texts is None:
            return
        paper = query.to_domain()
        wanted = _Wanted(self.batch, paper, query.dpi, language, settings.max_list_items)
        grid_of(paper)  # refuses what fits no paper before anything is worked on
        gone = asyncio.ensure_future(disconnected(receive))
        try:
            counts = scope["state"]["batch_lines"] = {"result": 0, "problem": 0}  # for the metrics
            document = _Document(wanted, texts, workshop, gone)
            bad = await document.look_over()
            counts.update(result=len(texts) - len(bad), problem=len(bad))
            if query.bad_lines == "refuse" or len(bad) == len(texts):
                _refuse_bad(bad, len(texts))
            await document.send_pages(send, bad)
        finally:
            gone.cancel()


class _Document:
    """One PDF of many labels."""

    def __init__(
        self,
        wanted: _Wanted,
        texts: Sequence[bytes | None],
        workshop: Workshop,
        gone: "asyncio.Future[None]",
    ) -> None:
        self.wanted, self.texts, self.workshop, self.gone = wanted, texts, workshop, gone
        self.told: dict[int, _Told] = {}

    async def look_over(self) -> list[_BadLine]:
        """Look over all lines: which are bad, which letters the others have, and what their readings tell."""
        letters: set[str] = set()
        bad: list[_BadLine] = []
        calls = (
            partial(_look_over, self.wanted, first, self.texts[first : first + _AT_ONCE])
            for first in range(0, len(self.texts), _AT_ONCE)
        )
        async for some, wrong, told in self._in_turn(calls):
            letters.update(some)
            bad += wrong
            self.told.update(told)
        self.wanted = replace(self.wanted, letters="".join(sorted(letters)))
        return bad

    async def send_pages(self, send: Send, bad: Sequence[_BadLine]) -> None:
        """Send the pages of the good lines, and those that list the bad ones."""
        if self.gone.done():
            return
        wrong = {one.index for one in bad}
        good = [
            (text, self.told.get(index))
            for index, text in enumerate(self.texts)
            if index not in wrong and text is not None
        ]
        listed = [f"{one.index}  {'' if one.identifier is None else one.identifier}  {one.detail}" for one in bad]
        # Whatever is set in any part of the file: the numbers of letters in the font have to be the same in all.
        heading = language_named(self.wanted.language).say("not_printed")
        letters = {letter for line in (heading, *listed) for letter in line if not letter.isascii()}
        wanted = replace(self.wanted, letters="".join(sorted(letters.union(self.wanted.letters))))
        begin = [
            (b"content-type", PDF.encode()),
            (b"content-disposition", content_disposition("labels", PDF)),
            (b"content-language", wanted.language.encode()),
            (b"vary", b"Accept, Accept-Language"),
            (b"cache-control", b"no-store"),
        ]
        await send({"type": "http.response.start", "status": 200, "headers": begin})
        joined = JoinedPdf()
        async for file in self._in_turn(_pages(wanted, good, listed)):
            await send_pieces(send, [joined.add(file)], self.gone)
        if not self.gone.done():
            await send({"type": "http.response.body", "body": joined.end(), "more_body": False})

    async def _in_turn(self, calls: Iterator[Callable[[], _R]]) -> AsyncIterator[_R]:
        """Results of work in its order, the next ones under way meanwhile, until the client has gone."""
        waiting: deque[asyncio.Task[_R]] = deque()
        try:
            while not self.gone.done():
                for call in itertools.islice(calls, self.workshop.places + 1 - len(waiting)):
                    waiting.append(asyncio.ensure_future(self.workshop.run(call)))
                if not waiting:
                    return
                yield await waiting.popleft()
        finally:
            for task in waiting:
                task.cancel()


def _pages(
    wanted: _Wanted, good: Sequence[tuple[bytes, _Told | None]], listed: Sequence[str]
) -> Iterator[Callable[[], bytes]]:
    """Work that makes the pages, some at a time, each piece a file of its own."""
    places = grid_of(wanted.paper).places
    whole = max(1, _AT_ONCE // places) * places
    taken = wanted.paper.start - 1
    first = 0
    while first < len(good):
        some = good[first : first + whole - taken]
        yield partial(_set_labels, wanted, some, taken)
        first += len(some)
        taken = 0
    for first in range(0, len(listed), _AT_ONCE):
        yield partial(_set_list, wanted, listed[first : first + _AT_ONCE])


def _look_over(
    wanted: _Wanted, first: int, lines: Sequence[bytes | None]
) -> tuple[set[str], list[_BadLine], dict[int, _Told]]:
    """Letters beyond ASCII of some lines' labels, those lines that make none, and what the readings of the others tell.

    In whatever process this is.
    """
    letters: set[str] = set()
    bad: list[_BadLine] = []
    told: dict[int, _Told] = {}
    identifiers: dict[int, object] = {}
    language = language_named(wanted.language)
    orders: dict[int, LabelOrder] = {}
    for index, line in enumerate(lines, first):
        try:
            identifiers[index], members = question_of(line, wanted.max_list_items)
            orders[index] = order_of(members, wanted.paper, wanted.dpi)
        except (Refusal, LutherieError, ValidationError) as error:
            bad.append(_bad_line(wanted, index, identifiers.get(index), error))
    for index, label in zip(orders, fill_labels([*orders.values()]), strict=True):
        try:
            if isinstance(label, LutherieError):
                raise label
            printed = set_label(label, language)
        except LutherieError as error:
            bad.append(_bad_line(wanted, index, identifiers[index], error))
            continue
        letters.update(letter for text in printed.lines for letter in text if not letter.isascii())
        if label.source == "readings":
            told[index] = label.tag, label.source
    return letters, sorted(bad, key=lambda one: one.index), told


def _bad_line(
    wanted: _Wanted, index: int, identifier: object, error: Refusal | LutherieError | ValidationError
) -> _BadLine:
    """What is said of a line that makes no label."""
    refusal = refusal_of(error, wanted.batch)
    return _BadLine(index, identifier, refusal.detail, refusal.faults)


def _set_labels(wanted: _Wanted, lines: Sequence[tuple[bytes, _Told | None]], taken: int) -> bytes:
    """Set the labels of good lines on pages; in whatever process this is."""
    labels = []
    for line, told in lines:
        _, members = question_of(line, wanted.max_list_items)
        order = order_of(members, wanted.paper, wanted.dpi)
        labels.append(fill_label(order) if told is None else FilledLabel(order, *told))
    pages = set_on_pages(labels, wanted.paper, language_named(wanted.language), taken)
    return write_pdf_sheets(pages, wanted.letters)


def _set_list(wanted: _Wanted, lines: Sequence[str]) -> bytes:
    """Set a list of bad lines; in whatever process this is."""
    heading = language_named(wanted.language).say("not_printed")
    return write_pdf_sheets(list_pages(heading, lines, wanted.paper.paper), wanted.letters)


def _refuse_bad(bad: Sequence[_BadLine], lines: int) -> None:
    """Refuse a batch for its bad lines, if there are any, and one without any line.

    Raises
    ------
    Refusal
        With a pointer into the batch, as if it were one array, for each of the first bad lines.
    """
    if not lines:
        raise Refusal("invalid-request", "There is no line, and so no label; send a line of JSON for each.")
    if not bad:
        return
    faults = [
        {**fault, "pointer": f"/{one.index}{fault['pointer']}"}
        for one in bad[:_MOST_TOLD]
        for fault in one.faults or ({"pointer": "", "code": "bad_line", "detail": one.detail},)
    ]
    # Where no line is good there are no other labels, whatever was asked for.
    rest = ", or ask with bad_lines=list for the other labels and a list of these" if len(bad) < lines else ""
    message = (
        f"No label can be made of {counted(len(bad), 'line')} of {lines}, the first of them at /{bad[0].index}: "
        f"{bad[0].detail} Mend them{rest}."
    )
    raise Refusal("invalid-request", message, faults=faults, facts={"bad_lines": len(bad), "lines": lines})


async def _texts(headers: dict[bytes, bytes], receive: Receive, settings: Settings) -> Sequence[bytes | None] | None:
    """Lines of a body; None where the client has gone."""
    as_array = is_array(headers)
    lines = await read_lines(receive, settings.max_batch_lines, settings.max_line_bytes, whole=as_array)
    if lines is None:
        return None
    if not lines.complete:
        message = f"A batch may have at most {settings.max_batch_lines} lines; send the rest in another."
        raise Refusal("too-many-lines", message, facts={"max_batch_lines": settings.max_batch_lines})
    return texts_of_array(lines.texts, settings) if as_array else lines.texts


def _query(query: bytes) -> LabelPaperQuery:
    """Options of the paper."""
    parameters = parameters_of(query, LabelPaperQuery.repeatable) if query else {}
    try:
        return LabelPaperQuery.read_query(parameters)
    except ValidationError as error:
        raise refuse_invalid(error, LabelPaperQuery) from None


def add_label_batch(router: APIRouter, batch: Batch, *, about: str) -> None:
    """Add the operation that answers many questions about labels.

    Parameters
    ----------
    router : APIRouter
        The router of labels.
    batch : Batch
        What answers the questions as lines.
    about : str
        For the OpenAPI document.
    """

    async def label_batch(_: Annotated[LabelPaperQuery, Query()]) -> None:
        """Stand in for the route's function, whose signature the framework reads the parameters off."""

    label_batch.__doc__ = inspect.cleandoc(about)
    settings = Settings()
    limits = settings.max_batch_lines, settings.max_line_bytes
    documented = batch_documentation(LINE_TYPES, batch.question, "label", batch.tallied, limits)
    documented["responses"][200]["content"][PDF] = OTHER_FORMS[PDF]
    route = LabelBatchOperation(
        f"{router.prefix}/label/batch",
        label_batch,
        batch,
        methods=["POST"],
        tags=router.tags,
        operation_id="label_batch",
        summary="Print many labels, or say what they say",
        response_model=None,
        **documented,
    )
    router.routes.append(route)
