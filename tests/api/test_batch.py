"""Batches: lines in, lines out, one bad line spoils no other."""

import asyncio
import json
from pathlib import Path

import httpx
import numpy as np
import pytest

from scalewright.api.app import create_app
from scalewright.api.lines import read_lines
from scalewright.api.settings import Settings
from tests.lutherie.identification.boards import draw

ADDRESS = "/v1/identification/batch"
LINES = {"Content-Type": "application/jsonl"}
FRETS = [1, 2, 3, 5, 7, 9, 12, 15, 17, 19, 22]
TOLERANCE = 1e-5
"""Relative, with 1e-7 absolute: boards that are judged together take steps of other sizes to the same minimum."""


def service(**settings):
    """The application, answering batches in a thread unless told otherwise."""
    return create_app(Settings(**({"log_requests": False, "batch_processes": 0} | settings)))


def post(content, *, app=None, address=ADDRESS, headers=LINES):
    """Send a body."""

    async def send():
        transport = httpx.ASGITransport(app or service())
        async with httpx.AsyncClient(transport=transport, base_url="http://here") as client:
            return await client.post(address, content=content, headers=headers)

    return asyncio.run(send())


def answers(content, **how):
    """The lines of an answer."""
    answer = post(content, **how)
    assert answer.status_code == 200
    assert answer.headers["content-type"] == "application/jsonl"
    return [json.loads(line) for line in answer.text.splitlines()]


def question(identifier, readings, **more):
    """One question."""
    return {
        "id": identifier,
        "instrument_uncertainty": 0.05,
        "tooling_scatter": 0.02,
        "frets": FRETS,
        "from_nut": list(readings),
        **more,
    }


def lines(*questions):
    """Questions as lines of JSON."""
    return "\n".join(json.dumps(one) for one in questions)


def boards(count, deviation=0.05):
    """Readings of boards drawn from the priors."""
    readings, *_ = draw(np.random.default_rng(77), count, FRETS, deviation)
    return readings.tolist()


def agree(one, other, path=""):
    """Hold an answer of a batch against that of the single route, member for member."""
    if isinstance(one, dict):
        assert list(one) == list(other), path
        for name, member in one.items():
            agree(member, other[name], f"{path}/{name}")
    elif isinstance(one, list):
        assert len(one) == len(other), path
        for index, (a, b) in enumerate(zip(one, other, strict=True)):
            agree(a, b, f"{path}/{index}")
    elif isinstance(one, float):
        assert one == pytest.approx(other, rel=TOLERANCE, abs=1e-7), path
    else:
        assert one == other, path


@pytest.mark.parametrize(
    "more",
    [
        {},
        {"unit": "in"},
        {"origin": "zero_fret"},
        {"nut_offset": "none", "coverage": 0.9},
        {"candidates": [{"rule": "equal"}, {"rule": {"name": "divisor", "divisor": 17.817}}, {"rule": "eighteenth"}]},
    ],
)
def test_a_line_gets_the_answer_that_the_single_route_gives(more):
    """Fast or slow, established, undecided, misread or without a rule: member for member the same, to rounding."""
    rows = boards(12)
    rows[3][4] += 1.6
    rows[5] = [x + 1.5 * (-1) ** k for k, x in enumerate(rows[5])]
    inches = 25.4 if more.get("unit") == "in" else 1.0
    asked = [question(k, [x / inches for x in row], **more) for k, row in enumerate(rows)]
    asked.append(question("few", [rows[0][2]], **(more | {"frets": [3]})))
    for one in asked:
        one["instrument_uncertainty"] /= inches
        one["tooling_scatter"] /= inches
    together = answers(lines(*asked))
    for one, line in zip(asked, together, strict=False):
        assert line.pop("kind") == "result"
        line.pop("index")
        assert line.pop("id") == one.pop("id")
        alone = post(json.dumps(one), address="/v1/identification", headers={"Content-Type": "application/json"})
        agree(line, alone.json())


def test_a_board_whose_divisor_cannot_be_told_takes_it_from_no_other():
    """Readings that run backwards determine no divisor, first or last; the boards beside them keep theirs."""
    row = boards(1)[0]
    got = answers(lines(*(question(k, one) for k, one in enumerate([row[::-1], row, row[::-1], row]))))
    assert [line["divisor"] is None for line in got[:4]] == [True, False, True, False]
    assert got[1]["divisor"] == got[3]["divisor"]


def test_order_ids_and_the_end():
    """Answers come in order with the ids of any kind that a caller has, and the end line counts them."""
    rows = boards(4)
    got = answers(lines(*(question(k, row) for k, row in zip(["a-1", 17, None, 2.5], rows, strict=True))))
    assert [line["kind"] for line in got] == ["result"] * 4 + ["end"]
    assert [line["index"] for line in got[:4]] == [0, 1, 2, 3]
    assert [line["id"] for line in got[:4]] == ["a-1", 17, None, 2.5]
    assert (got[4]["results"], got[4]["problems"], got[4]["complete"]) == (4, 0, True)
    assert sum(got[4]["verdicts"].values()) == 4


def test_empty_lines_do_not_count_and_the_last_needs_no_line_feed():
    """Blank lines, carriage returns and a missing last line feed make no difference to index and order."""
    a, b = (json.dumps(question(k, row)) for k, row in enumerate(boards(2)))
    got = answers(f"\n{a}\r\n\n   \n{b}")
    assert [(line["kind"], line.get("index")) for line in got] == [("result", 0), ("result", 1), ("end", None)]


def test_problem_lines_count_as_the_others_do():
    """The index of a bad line, or of one too many, leaves blank lines out too."""
    a, b = (json.dumps(question(k, row)) for k, row in enumerate(boards(2)))
    got = answers(f"\n{a}\n \t\n{{broken\n\n{b}\n\n")
    assert [(line["kind"], line.get("index")) for line in got[:-1]] == [("result", 0), ("problem", 1), ("result", 2)]
    got = answers(f"\n\n{a}\n\n{b}\n", app=service(max_batch_lines=1))
    assert [(line["kind"], line.get("index")) for line in got[:-1]] == [("result", 0), ("problem", 1)]
    assert got[1]["type"] == "/problems/too-many-lines"


BAD_LINES = [
    ("{broken", "malformed-request", None),
    ("[1, 2]", "invalid-request", None),
    ('"text"', "invalid-request", None),
    ('{"id": 5, "from_nut": [NaN]}', "malformed-request", None),
    ('{"id": "d", "instrument_uncertainty": 0.05, "from_nut": [36], "from_nut": [37]}', "malformed-request", "d"),
    ('{"id": {"a": 1}, "from_nut": [36]}', "invalid-request", None),
    ('{"id": "u", "instrument_uncertainty": 0.05, "from_nut": [36], "colour": "red"}', "invalid-request", "u"),
    ('{"id": "n", "instrument_uncertainty": 0.05, "from_nut": [-36]}', "invalid-request", "n"),
    ('{"id": "t", "instrument_uncertainty": 0.05, "from_nut": ["25 furlongs"]}', "invalid-request", "t"),
    ('{"id": "z", "instrument_uncertainty": 0, "from_nut": [36]}', "impossible-reading", "z"),
    ('{"id": "b", "instrument_uncertainty": 0.05, "from_nut": [true, 71]}', "invalid-request", "b"),
    ('{"id": "e", "instrument_uncertainty": 0.05, "from_nut": [1e999]}', "malformed-request", None),
    ("{}", "invalid-request", None),
]


@pytest.mark.parametrize(("bad", "slug", "identifier"), BAD_LINES)
def test_a_bad_line_is_a_problem_line_and_spoils_no_other(bad, slug, identifier):
    """In the middle of good ones it is answered by a problem with its index and, where it can be read, its id."""
    a, b = (json.dumps(question(k, row)) for k, row in enumerate(boards(2)))
    got = answers(f"{a}\n{bad}\n{b}")
    assert [line["kind"] for line in got] == ["result", "problem", "result", "end"]
    problem = got[1]
    assert problem["type"] == f"/problems/{slug}"
    assert (problem["index"], problem["id"]) == (1, identifier)
    assert problem["detail"].endswith(".")
    assert (got[3]["results"], got[3]["problems"]) == (2, 1)


def test_a_line_of_ten_megabytes():
    """A line over the limit is refused as a line; the next is answered."""
    good = json.dumps(question("ok", boards(1)[0]))
    got = answers(b'{"id": "' + b"x" * 10_000_000 + b'"}\n' + good.encode())
    assert [(line["kind"], line["index"]) for line in got[:2]] == [("problem", 0), ("result", 1)]
    assert got[0]["type"] == "/problems/line-too-long"


def test_one_line_too_many():
    """Past the limit there is one problem line, and the end says that the answer is not complete."""
    asked = [question(k, row) for k, row in enumerate(boards(4))]
    got = answers(lines(*asked), app=service(max_batch_lines=3))
    assert [line["kind"] for line in got] == ["result"] * 3 + ["problem", "end"]
    assert got[3]["type"] == "/problems/too-many-lines"
    assert (got[4]["complete"], got[4]["results"], got[4]["problems"]) == (False, 3, 1)


def test_mixed_units_instruments_and_ways_to_measure():
    """Every line is a question of its own; neighbours need not be alike."""
    row = boards(1)[0]
    steps = [b - a for a, b in zip([0.0, *row], row, strict=False)]
    spans = [{"from": 0, "to": fret, "distance": x} for fret, x in zip(FRETS, row, strict=True)]
    asked = [
        question("mm", row),
        question("in", [x / 25.4 for x in row], unit="in", instrument_uncertainty="0.05 mm", tooling_scatter="0.02 mm"),
        {"id": "steps", "instrument_uncertainty": 0.05, "frets": FRETS, "fret_to_fret": steps},
        {"id": "spans", "instrument_uncertainty": 0.05, "tooling_scatter": 0.02, "readings": spans},
    ]
    got = answers(lines(*asked))
    assert [line["kind"] for line in got] == ["result"] * 4 + ["end"]
    assert 25.4 * got[1]["true_scale"]["value"] == pytest.approx(got[0]["true_scale"]["value"], rel=1e-9)
    assert got[3]["true_scale"]["value"] == pytest.approx(got[0]["true_scale"]["value"], rel=1e-9)


def test_an_array_is_taken_too():
    """A batch as one JSON array is answered line by line like any other."""
    asked = [question(k, row) for k, row in enumerate(boards(3))]
    got = answers(json.dumps(asked), headers={"Content-Type": "application/json"})
    assert [line["kind"] for line in got] == ["result"] * 3 + ["end"]
    assert post("{}", headers={"Content-Type": "application/json"}).status_code == 422


def test_an_empty_batch():
    """Nothing asked, nothing answered: only the end line."""
    assert answers("") == [{"kind": "end", "results": 0, "problems": 0, "complete": True, "verdicts": {}}]


@pytest.mark.parametrize(
    ("how", "status"),
    [
        ({"headers": {"Content-Type": "text/plain"}}, 415),
        ({"headers": {}}, 415),
        ({"headers": LINES | {"Content-Encoding": "gzip"}}, 415),
        ({"headers": LINES | {"Accept": "text/csv"}}, 406),
        ({"address": f"{ADDRESS}?format=csv"}, 422),
    ],
)
def test_a_batch_that_cannot_begin_is_refused_whole(how, status):
    """What is wrong with the request as a whole is a problem document, before any line."""
    answer = post(lines(question("a", boards(1)[0])), **how)
    assert answer.status_code == status
    assert answer.headers["content-type"] == "application/problem+json"


def test_both_names_of_lines_of_json():
    """A client that knows the other name gets it back."""
    headers = {"Content-Type": "application/x-ndjson", "Accept": "application/x-ndjson"}
    answer = post(lines(question("a", boards(1)[0])), headers=headers)
    assert (answer.status_code, answer.headers["content-type"]) == (200, "application/x-ndjson")


def test_a_batch_over_the_size_limit():
    """More bytes than a batch may have are refused, declared or not."""
    app = service(max_batch_bytes=1000)
    assert post(b"x" * 1001, app=app).status_code == 413

    async def pieces():
        for _ in range(11):
            yield b"x" * 100

    assert post(pieces(), app=app).status_code == 413


def test_lines_are_cut_wherever_the_pieces_end():
    """However a body is cut into pieces, its lines are the same."""
    body = b'{"a": 1}\r\n\n{"b": 2}\n' + b"y" * 40 + b'\n{"c": 3}'

    async def cut(size):
        pieces = [body[k : k + size] for k in range(0, len(body), size)]
        messages = [{"type": "http.request", "body": piece, "more_body": True} for piece in pieces]
        messages.append({"type": "http.request", "body": b"", "more_body": False})
        queue = iter(messages)

        async def receive():
            return next(queue)

        return await read_lines(receive, 10, 30)

    for size in (1, 2, 7, 100):
        found = asyncio.run(cut(size))
        assert found.texts == [b'{"a": 1}', b'{"b": 2}', None, b'{"c": 3}'], size


def test_a_client_that_hangs_up_frees_its_work():
    """When the client goes after the first chunk, no further chunk is worked on."""
    rows = boards(200)
    body = "\n".join(json.dumps(question(k, rows[k % 200])) for k in range(20_000)).encode()
    app = service(max_batch_lines=20_000)
    sent = []

    async def run():
        gone = asyncio.Event()
        queue = [{"type": "http.request", "body": body, "more_body": False}]

        async def receive():
            if queue:
                return queue.pop()
            await gone.wait()
            return {"type": "http.disconnect"}

        async def send(message):
            sent.append(len(message.get("body", b"")))
            if len(sent) == 2:
                gone.set()
                await asyncio.sleep(0)

        headers = [(b"content-type", b"application/jsonl"), (b"content-length", b"%d" % len(body))]
        scope = {
            "type": "http", "method": "POST", "path": ADDRESS, "raw_path": ADDRESS.encode(), "query_string": b"",
            "headers": headers, "http_version": "1.1", "scheme": "http", "client": ("127.0.0.1", 1),
            "server": ("here", 80), "root_path": "", "asgi": {"version": "3.0"},
        }  # fmt: skip
        await app(scope, receive, send)

    asyncio.run(run())
    assert len(sent) <= 3


@pytest.mark.parametrize(
    ("word", "case"),
    [
        ("layout", "shop-fractions"),
        ("compensation", "nylon-normal"),
        ("nominal", "label-alone"),
        ("assembly", "replacement-board"),
    ],
)
def test_every_batch_answers_like_its_single_route(word, case):
    """A line of any batch gets what the single route gives, and a bad neighbour spoils nothing."""
    folder = Path(__file__).parents[2] / "openapi_examples" / word
    one = json.loads((folder / f"{case}.request.json").read_text(encoding="utf-8"))
    got = answers(lines(one, {"nonsense": 1}, one), address=f"/v1/{word}/batch")
    assert [line["kind"] for line in got] == ["result", "problem", "result", "end"]
    headers = {"Content-Type": "application/json"}
    alone = post(json.dumps(one), address=f"/v1/{word}", headers=headers).json()
    for line in (got[0], got[2]):
        agree({name: member for name, member in line.items() if name not in {"kind", "index", "id"}}, alone)
