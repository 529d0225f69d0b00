"""The batch of labels as one PDF: every label in its place, and no bad line lost."""

import asyncio
import io
import json
import re
from functools import partial

import pdfplumber
import pypdfium2
import pytest
import zxingcpp

from scalewright.api.app import create_app
from scalewright.api.settings import Settings
from scalewright.lutherie.known import identify_parts
from scalewright.lutherie.tag_text import read_tag


@pytest.fixture
def send(send):
    """Send to an application that works in threads: the workshop's processes would belong to one event loop."""
    return partial(send, app=create_app(Settings(log_requests=False, batch_processes=0)))


PDF = {"Content-Type": "application/jsonl", "Accept": "application/pdf"}


def board(number, **members):
    """A line for a board of its own, with a title beyond ASCII."""
    part = {"id": f"B{number}", "kind": "board", "layout_scale": 600 + number / 100, "rule": "eighteenth"}
    return {"id": number, "part": part, "title": f"Bœard Ж{number}"} | members


def lines(*questions):
    """The body of a batch."""
    return "\n".join(map(json.dumps, questions)).encode()


@pytest.mark.slow
def test_a_stock_is_one_file_with_every_label(send):
    """260 labels stand on 11 pages in their order from place 2 on, with one font; slow, as all are read back."""
    answer = send("POST", "/v1/label/batch?start=2", content=lines(*map(board, range(260))), headers=PDF)
    drawn = pypdfium2.PdfDocument(answer.content)
    words = [word for page in drawn for word in page.get_textpage().get_text_range().split()]
    with pdfplumber.open(io.BytesIO(answer.content)) as pdf:
        fonts = {char["fontname"] for page in (pdf.pages[0], pdf.pages[-1]) for char in page.chars}
        first = pdf.pages[0].extract_words()[0]["x0"]

    assert answer.headers["content-type"] == "application/pdf"
    assert len(pdf.pages) == 11  # 24 places on A4, the first left out
    assert [int(word[1:]) for word in words if re.fullmatch(r"B\d+", word)] == list(range(260))
    assert "Ж259" in words
    assert len(fonts) == 1
    assert answer.content.count(b"/FontFile2") == 1
    assert first > 70.0 * 72.0 / 25.4


@pytest.mark.source("independent readers: PDFium draws the page, zxing-cpp reads it")
def test_codes_of_the_last_page_are_read(send):
    """Codes on a page that was added to the first ones give back their parts."""
    body = lines(*map(board, range(242)))
    answer = send("POST", "/v1/label/batch?size=100x50mm", content=body, headers=PDF)
    document = pypdfium2.PdfDocument(answer.content)
    picture = document[len(document) - 1].render(scale=200 / 72).to_pil()
    tags = [read_tag(code.text) for code in zxingcpp.read_barcodes(picture)]

    assert {tag.id: tag.layout_scale for tag in tags} == {"B240": 602.4, "B241": 602.41}


def test_bad_lines_are_named_and_nothing_is_printed(send):
    """The problem points at each bad line as an entry of an array; blank lines are none."""
    small = board(3) | {"part": board(3)["part"] | {"id": "W" * 60}}
    body = (
        b"\n \n" + lines(board(0), {"part": {"id": "x", "kind": "board"}}, board(2, size="40x20mm"), small) + b"\n\r\n{"
    )
    answer = send("POST", "/v1/label/batch?size=50x25mm", content=body, headers=PDF)
    pointers = [fault["pointer"] for fault in answer.json()["errors"]]

    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
    assert pointers == ["/1/part", "/2/size", "/3/size", "/4"]
    assert answer.json()["bad_lines"] == 4
    assert "bad_lines=list" in answer.json()["detail"]


def test_bad_lines_are_listed_behind_the_labels(send):
    """With bad_lines=list the good ones are printed, and the last page says what is wrong with the others."""
    body = lines(board(0), {"id": "Ж=1", "part": {"id": "x", "kind": "board"}}, board(2))
    headers = PDF | {"Accept-Language": "fr"}
    answer = send("POST", "/v1/label/batch?bad_lines=list&paper=letter", content=body, headers=headers)
    with pdfplumber.open(io.BytesIO(answer.content)) as pdf:
        labels, listed = (page.extract_text() for page in pdf.pages)

    assert "B0" in labels
    assert "B2" in labels
    assert listed.startswith("Lignes sans étiquette")
    assert "Ж=1" in listed
    assert "nothing says what this part's scale is" in listed.lower().replace("\n", " ")


def measured(number):
    """A line for a board that is known from readings alone."""
    from_nut = [(600 + number / 10) * (1.0 - (17.0 / 18.0) ** fret) for fret in (1, 5, 7, 12, 17)]
    readings = {"instrument_uncertainty": 0.05, "frets": [1, 5, 7, 12, 17], "from_nut": from_nut}
    return {"part": {"id": f"M{number}", "kind": "board", "readings": readings}}


def test_readings_are_worked_out_once_for_each_line(send, monkeypatch):
    """What readings tell is found when the lines are looked over, and is printed as the same label alone has it."""
    worked_out: list[str] = []

    def counting(parts, beliefs):
        worked_out.extend(part.id for part in parts if part.survey is not None)
        return identify_parts(parts, beliefs)

    monkeypatch.setattr("scalewright.lutherie.tag.identify_parts", counting)
    bad = {"part": measured(8)["part"] | {"true_scale": 700}}
    body = lines(measured(0), board(1), bad, *map(measured, range(2, 7)))
    answer = send("POST", "/v1/label/batch?bad_lines=list", content=body, headers=PDF)
    assert sorted(worked_out) == ["M0", *(f"M{number}" for number in range(2, 7)), "M8"]
    with pdfplumber.open(io.BytesIO(answer.content)) as pdf:
        labels, listed = (page.extract_text() for page in pdf.pages)
    alone = send("POST", "/v1/label?format=json", json={"part": measured(4)["part"]}).json()["lines"]
    assert f"{alone[0]} " in labels.replace("\n", " ")
    assert "measured, u = " in " ".join(alone)
    assert "2 " in listed
    assert "they differ by" in listed.replace("\n", " ")


@pytest.mark.parametrize(
    ("query", "body", "slug", "pointer"),
    [
        ("?start=25", board(0), "too-much-paper", "/start"),
        ("?width=63.5mm", board(0), "invalid-request", "/size"),
        ("?width=63.5mm&height=2000mm", board(0), "invalid-request", "/height"),
        ("?paper=A3", board(0), "invalid-request", "/paper"),
        ("?pages=2", board(0), "invalid-request", "/pages"),
        ("", None, "invalid-request", None),
        ("?bad_lines=list", {"part": {}}, "invalid-request", "/0/part/id"),
        ("?dpi=203", board(0, dpi=300), "invalid-request", "/0/dpi"),
    ],
)
def test_what_makes_no_file_is_a_problem(send, query, body, slug, pointer):
    """Options that cannot be, no line at all, and no good one are refused before anything is sent."""
    content = b"" if body is None else lines(body)
    answer = send("POST", f"/v1/label/batch{query}", content=content, headers=PDF)

    assert answer.status_code == 422
    assert answer.json()["type"] == f"/problems/{slug}"
    assert [fault["pointer"] for fault in answer.json()["errors"]][:1] == ([pointer] if pointer else [])
    assert "bad_lines=list" not in answer.json()["detail"]  # there are no other labels to be had so


def test_an_array_and_another_size_and_language_do_as_well(send):
    """A JSON array is taken too; a size of one's own and the language are kept, and the bytes are the same again."""
    ask = {"json": [board(0), board(1)], "headers": {"Accept": "application/pdf", "Accept-Language": "de"}}
    first, second = (send("POST", "/v1/label/batch?unit=in&width=3&height=2", **ask) for _ in range(2))
    with pdfplumber.open(io.BytesIO(first.content)) as pdf:
        text = pdf.pages[0].extract_text()

    assert first.content == second.content
    assert first.headers["content-language"] == "de"
    assert "Wahre Mensur" in text


def test_lines_of_json_still_take_no_parameters(send):
    """The parameters belong to the PDF."""
    headers = {"Content-Type": "application/jsonl"}
    answer = send("POST", "/v1/label/batch?start=2", content=lines(board(0)), headers=headers)

    assert answer.status_code == 422


def test_a_client_that_hangs_up_frees_its_work(monkeypatch):
    """When the client goes at the first pages, no more are set than were under way, and the file gets no end."""
    body = lines(*({"part": {"id": f"B{number}", "kind": "board", "true_scale": 650}} for number in range(2_000)))
    app = create_app(Settings(log_requests=False, batch_processes=0))
    sent, begun = [], []
    run_work = app.state.workshop.run

    async def counted(work, *arguments):
        begun.append(work.func.__name__)
        return await run_work(work, *arguments)

    monkeypatch.setattr(app.state.workshop, "run", counted)

    async def run():
        gone = asyncio.Event()
        queue = [{"type": "http.request", "body": body, "more_body": False}]

        async def receive():
            if queue:
                return queue.pop()
            await gone.wait()
            return {"type": "http.disconnect"}

        async def send(message):
            sent.append(message)
            if message.get("body"):
                gone.set()
                await asyncio.sleep(0)

        address = "/v1/label/batch"
        headers = [(name.lower().encode(), value.encode()) for name, value in PDF.items()]
        scope = {
            "type": "http", "method": "POST", "path": address, "raw_path": address.encode(), "query_string": b"",
            "headers": [*headers, (b"content-length", b"%d" % len(body))], "http_version": "1.1", "scheme": "http",
            "client": ("127.0.0.1", 1), "server": ("here", 80), "root_path": "", "asgi": {"version": "3.0"},
        }  # fmt: skip
        await app(scope, receive, send)

    asyncio.run(run())
    files = begun.count("_set_labels")
    assert 1 <= files <= app.state.workshop.places + 2
    assert len([message for message in sent if message.get("body")]) == 1
    assert all(message.get("more_body", True) for message in sent)
