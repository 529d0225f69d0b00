"""Batches: many questions in one request, answered line by line."""

import asyncio
import json
import tracemalloc
from typing import Any

import httpx
import pytest

import scalewright_client as sc
from scalewright_client._lines import RawLine, RawReader
from tests.client.service_double import Double

EXAMPLE: dict[str, Any] = {
    "unit": "mm",
    "verdict": "none",
    "statement": "No rule fits.",
    "rule": None,
    "family": [],
    "probability": 0.5,
    "layout_scale": None,
    "true_scale": {"value": 624.0, "standard_uncertainty": 0.1, "lower": 623.8, "upper": 624.2},
    "nut_offset": None,
    "divisor": None,
    "candidates": [],
    "suspect_readings": [],
    "next_reading": None,
    "coverage": 0.95,
    "notes": [],
}
"""An answer of the contract's shape, written by hand."""

QUESTION = {"from_nut": [34.95, 67.85], "instrument_uncertainty": 0.05}
REFUSED = {
    "type": "/problems/too-few-readings",
    "title": "Too few readings",
    "status": 422,
    "detail": "Measure more frets.",
    "instance": "urn:request:r-9",
    "errors": [{"pointer": "/from_nut", "code": "too_few_readings", "detail": "Measure more frets."}],
    "needed": 3,
}


def result(index, identifier=None, **members):
    """One line of the kind "result"."""
    return {"kind": "result", "index": index, "id": identifier, **EXAMPLE, **members}


def refusal(index, identifier=None, **members):
    """One line of the kind "problem"."""
    return {"kind": "problem", "index": index, "id": identifier, **REFUSED, **members}


def end(results, problems, *, complete=True):
    """The last line."""
    return {
        "kind": "end",
        "results": results,
        "problems": problems,
        "complete": complete,
        "verdicts": {"none": results},
    }


def answer(*lines, step=7, media_type="application/jsonl", fault=None):
    """An answer that arrives in small pieces, cut anywhere, and may end in a fault of the line."""
    text = "".join(json.dumps(line, ensure_ascii=False) + "\n" for line in lines).encode()
    pieces = [text[first : first + step] for first in range(0, len(text), step)]

    class Both(httpx.SyncByteStream, httpx.AsyncByteStream):
        def __iter__(self):
            yield from pieces
            if fault is not None:
                message = "scripted"
                raise fault(message)

        async def __aiter__(self):
            for piece in self:
                yield piece

    return httpx.Response(200, stream=Both(), headers={"Content-Type": media_type, "X-Request-ID": "r-9"})


class BatchDouble(Double):
    """Reads a request's body before it answers, as the service does."""

    def handle(self, request):
        """Give the next answer of the script."""
        self.requests.append(request)
        self.bodies = [*getattr(self, "bodies", []), request.read()]
        self.requests.pop()
        return super().handle(request)

    async def handle_async(self, request):
        """Give the next answer of the script."""
        await request.aread()
        return self.handle(request)

    def asynchronous(self, **options):
        """Make an asynchronous client that talks to this double."""
        return super().asynchronous(**{"transport": httpx.MockTransport(self.handle_async), **options})


def batch_sync(double, questions, **options):
    """All outcomes and the summary, through the blocking client."""
    with double.sync(**options) as client, client.identification_batch(questions) as batch:
        return list(batch), batch.summary


def batch_async(double, questions, **options):
    """All outcomes and the summary, through the asynchronous client."""

    async def conversation():
        async with double.asynchronous(**options) as client, client.identification_batch(questions) as batch:
            return [outcome async for outcome in batch], batch.summary

    return asyncio.run(conversation())


@pytest.fixture(params=[batch_sync, batch_async], ids=["sync", "async"])
def ask(request):
    """Puts a batch through a client: ``ask(double, questions)``."""
    return request.param


def test_each_question_gets_its_answer_or_its_problem(ask):
    """Order, ids and the summary arrive; a refused question is a value, and not raised."""
    double = BatchDouble(answer(result(0, "A-17"), refusal(1, 18), result(2), end(2, 1)))
    outcomes, summary = ask(double, [{"id": "A-17", **QUESTION}, {"id": 18, **QUESTION}, QUESTION])
    assert [(outcome.index, outcome.id) for outcome in outcomes] == [(0, "A-17"), (1, 18), (2, None)]
    assert outcomes[0].result.true_scale == sc.Estimate(624.0, 0.1, 623.8, 624.2)
    assert type(outcomes[1].error) is sc.TooFewReadingsError
    assert outcomes[1].error.pointers == ("/from_nut",)
    assert (outcomes[1].error.request_id, outcomes[1].error.extensions) == ("r-9", {"needed": 3})
    assert summary == sc.BatchSummary(2, 1, complete=True, verdicts={"none": 2})


def test_questions_go_out_as_lines(ask):
    """Each is one line of JSON, what is None is left out, and the types are named."""
    double = BatchDouble(answer(result(0), result(1), end(2, 0)))
    rule = sc.Rule("divisor", divisor=17.835)
    ask(double, iter([{"id": "é\u2028", **QUESTION, "frets": None}, {**QUESTION, "candidates": [{"rule": rule}]}]))
    (request,) = double.requests
    assert str(request.url) == "http://scalewright.test/v1/identification/batch"
    assert request.headers["Content-Type"] == request.headers["Accept"] == "application/jsonl"
    first, second, rest = double.bodies[0].split(b"\n")
    assert json.loads(first) == {"id": "é\u2028", **QUESTION}
    assert json.loads(second)["candidates"] == [{"rule": {"name": "divisor", "divisor": 17.835}}]
    assert rest == b""


def test_an_empty_batch_is_a_batch(ask):
    """Nothing asked, nothing answered, and the end is still there."""
    outcomes, summary = ask(BatchDouble(answer(end(0, 0))), [])
    assert outcomes == []
    assert summary.results == 0


def test_only_a_line_feed_ends_a_line(ask):
    """Other separators of Unicode may stand in a text of the answer as they are."""
    text = "one\u2028two\x85three\x0bfour"
    outcomes, _ = ask(BatchDouble(answer(result(0, text, statement=text), end(1, 0))), [QUESTION])
    assert (outcomes[0].id, outcomes[0].result.statement) == (text, text)


@pytest.mark.parametrize(
    ("lines", "words", "received"),
    [
        ([result(0), result(1)], "broke off; 2 lines came", 2),
        ([result(0), refusal(1), end(1, 1, complete=False)], "more questions than the service takes at once", 2),
        ([result(0), end(2, 0)], "lines of the answer were lost", 1),
        ([], "broke off; 0 lines came", 0),
    ],
    ids=["no end", "not complete", "line lost", "nothing"],
)
def test_an_answer_that_is_not_whole_is_never_taken_for_one(ask, lines, words, received):
    """What is missing raises an exception at the end, which says how much came."""
    with pytest.raises(sc.TruncatedError, match=words) as caught:
        ask(BatchDouble(answer(*lines)), [QUESTION] * 2)
    assert (caught.value.received, caught.value.request_id) == (received, "r-9")


def test_what_came_before_an_answer_broke_off_was_given():
    """The caller has every line that arrived before the exception."""
    double = BatchDouble(answer(result(0, "A"), result(1, "B")))
    seen = []
    with double.sync() as client:
        batch = client.identification_batch([QUESTION] * 3)
        seen += [next(batch).id, next(batch).id]
        with pytest.raises(sc.TruncatedError):
            next(batch)
    assert seen == ["A", "B"]


def test_a_line_that_breaks_in_the_middle_is_told_with_its_cause(ask):
    """Some answers came, so the questions are not put again behind the caller's back."""
    double = BatchDouble(answer(result(0), fault=httpx.ReadError))
    with pytest.raises(sc.TruncatedError, match="the connection broke; 1 lines came") as caught:
        ask(double, [QUESTION] * 2)
    assert isinstance(caught.value.__cause__, httpx.ReadError)


def test_a_line_that_breaks_before_the_first_answer_is_asked_again(ask):
    """What had begun to arrive is forgotten."""
    half = httpx.Response(
        200, headers={"Content-Type": "application/jsonl"}, stream=answer(fault=httpx.ReadError).stream
    )
    outcomes, _ = ask(BatchDouble(half, answer(result(0), end(1, 0))), [QUESTION])
    assert len(outcomes) == 1


def test_a_line_that_breaks_behind_the_end_does_no_harm(ask):
    """Everything had arrived."""
    outcomes, summary = ask(BatchDouble(answer(result(0), end(1, 0), fault=httpx.RemoteProtocolError)), [QUESTION])
    assert (len(outcomes), summary.complete) == (1, True)


def test_a_line_without_an_end_is_given_up(ask, monkeypatch):
    """Memory is not filled with an answer that has lost its line feeds."""
    monkeypatch.setattr("scalewright_client._lines._LONGEST_LINE", 100)
    with pytest.raises(sc.UnexpectedAnswerError, match="does not end"):
        ask(BatchDouble(answer(result(0))), [QUESTION])


def test_questions_may_still_be_to_come():
    """The asynchronous client takes them from an asynchronous generator, and packs them as the other does."""

    async def questions():
        for number in range(3000):
            yield {"id": number, **QUESTION}

    double = BatchDouble(answer(*[result(n, n) for n in range(3000)], end(3000, 0), step=10_000))
    outcomes, _ = batch_async(double, questions())
    assert [outcome.id for outcome in outcomes] == list(range(3000))
    assert [json.loads(line)["id"] for line in double.bodies[0].splitlines()] == list(range(3000))


def test_lines_can_be_passed_on_unread():
    """Whatever the order of their members, kind and index are taken off and nothing else is touched."""
    reader = RawReader("/v1/identification/batch")
    text = b'{"kind":"result","index":0,"id":"A","x":1.50}\n{"index":1,"id":2,"kind":"problem","y":"\xc3\xa9"}\n'
    assert list(reader.feed(text)) == [
        RawLine("result", b'"id":"A","x":1.50}'),
        RawLine("problem", '"id":2,"y":"é"}'.encode()),
    ]
    assert reader.read == 2


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        ([{"kind": "end", "results": 0, "problems": 0, "complete": True, "verdicts": []}], "an object at /verdicts"),
        ([{**end(0, 0), "verdicts": {"none": "x"}}], "a whole number at /verdicts/none"),
        ([result(1), end(1, 0)], "expected the answer to question 0, and not to 1"),
        ([["result"], end(0, 0)], "no object with a kind"),
        ([{**result(0), "verdict": 3}, end(1, 0)], "expected a text at /verdict of the answer to question 0"),
        ([{"kind": "end", "results": 0}], "expected a field that the contract promises at /problems"),
    ],
    ids=["no counts", "no count", "order", "no object", "type", "end"],
)
def test_a_line_that_breaks_the_contract_is_told(ask, lines, words):
    """Which line, and what was expected."""
    with pytest.raises(sc.UnexpectedAnswerError, match=words):
        ask(BatchDouble(answer(*lines)), [QUESTION])


def test_lines_of_a_kind_that_is_not_known_are_passed_over(ask):
    """A newer service may say more between the lines."""
    double = BatchDouble(answer({"kind": "progress", "index": 0}, result(0), end(1, 0)))
    assert len(ask(double, [QUESTION])[0]) == 1


def test_an_answer_that_is_no_lines_is_told(ask):
    """A page of somebody else is not read as an answer."""
    with pytest.raises(sc.UnexpectedAnswerError, match="no lines of JSON"):
        ask(BatchDouble(answer(end(0, 0), media_type="text/html")), [])


def test_a_refused_batch_raises_its_problem(ask):
    """What is wrong with the whole request is raised, as for a single question."""
    document = {**REFUSED, "type": "/problems/unsupported-media-type", "status": 415}
    kind = {"Content-Type": "application/problem+json"}
    with pytest.raises(sc.UnsupportedMediaTypeError):
        ask(BatchDouble(httpx.Response(415, json=document, headers=kind)), [QUESTION])


def test_questions_of_a_list_are_put_again(ask):
    """After a passing trouble the same lines are sent once more."""
    double = BatchDouble(httpx.Response(503), httpx.ReadError, answer(result(0, "A"), end(1, 0)))
    outcomes, _ = ask(double, [{"id": "A", **QUESTION}])
    assert [outcome.id for outcome in outcomes] == ["A"]
    assert double.waits == [0.5, 1.0]
    assert len(set(double.bodies)) == 1


@pytest.mark.parametrize("trouble", [lambda: httpx.Response(503), lambda: httpx.ReadError], ids=["refusal", "fault"])
def test_questions_of_an_iterator_are_put_once(ask, trouble):
    """They are gone, and half a batch would look like a whole one."""
    double = BatchDouble(trouble())
    with pytest.raises((sc.UnavailableError, sc.ConnectionFaultError)):
        ask(double, iter([QUESTION]))
    assert double.waits == []


def test_a_question_that_cannot_be_sent_is_named(ask):
    """The message leads to the board in the caller's own list."""
    questions = [QUESTION, {"id": "A-2", "from_nut": [float("nan")]}]
    with pytest.raises(ValueError, match="question 1 of the batch, id 'A-2': a number of the request is not finite"):
        ask(BatchDouble(answer(end(0, 0))), questions)


def test_a_batch_can_be_left_early():
    """Who has seen enough hangs up, and the client can be used again."""
    double = BatchDouble(answer(result(0), result(1), end(2, 0)), answer(result(0), end(1, 0)))
    with double.sync() as client:
        with client.identification_batch([QUESTION] * 2) as batch:
            assert next(batch).index == 0
        assert batch.summary is None
        assert list(batch) == []
        assert len(list(client.identification_batch([QUESTION]))) == 1


def test_a_large_batch_needs_little_memory_on_its_way_in():
    """Of an answer of 4 MB some 64 KiB are held at once, and what is made of a line."""

    class Long(httpx.SyncByteStream):
        def __iter__(self):
            for number in range(1000):
                yield json.dumps(result(number, statement="x" * 4000)).encode() + b"\n"
            yield json.dumps(end(1000, 0)).encode() + b"\n"

    kind = {"Content-Type": "application/jsonl"}
    with BatchDouble(httpx.Response(200, stream=Long(), headers=kind)).sync() as client:
        batch = client.identification_batch([])
        next(batch)
        tracemalloc.start()
        try:
            assert sum(1 for _ in batch) == 999
            assert tracemalloc.get_traced_memory()[1] < 400_000
        finally:
            tracemalloc.stop()


def test_a_large_batch_needs_little_memory_on_its_way_out():
    """Questions are taken from the iterator as pieces of some 64 KiB are sent."""
    taken = 0

    def questions():
        nonlocal taken
        for taken in range(20_000):  # noqa: B007 - counts what was taken
            yield QUESTION

    call = sc._batch.BatchCall("/v1/identification/batch", sc.Identification, questions())
    for count, piece in enumerate(call.pieces(), 1):
        assert len(piece) < 80_000
        assert taken <= count * 65_536 / len(json.dumps(QUESTION).replace(" ", "")) + 1
