"""Labels and spec sheets through both clients: what they say, and the files to print, from the service itself."""

import asyncio

import httpx
import pytest

import scalewright_client as sc
from scalewright.api.app import create_app
from tests.client.live_service import live_service

PART: sc.Part = {"id": "BD-17", "kind": "board", "layout_scale": "24.75 in", "rule": "eighteenth", "frets": 22}
"""An invented board."""

TRUE = 2.0 * 628.65 * (1.0 - (17.0 / 18.0) ** 12)
"""Its true scale: twelve frets by the rule of 18, and as much again. [mm]"""

FILES = [
    ("label_drawing", "image/svg+xml", b"<", {"part": PART}),
    ("label_drawing", "application/pdf", b"%PDF-", {"part": PART}),
    ("label_drawing", "image/png", b"\x89PNG\r\n\x1a\n", {"part": PART}),
    ("label_pages_drawing", "application/pdf", b"%PDF-", {"labels": [{"part": PART}]}),
    ("spec_sheet_drawing", "text/html", b"<!doctype html>", {"part": PART}),
    ("spec_sheet_drawing", "application/pdf", b"%PDF-", {"part": PART}),
]
"""Method, media type, how such files begin (their own standards say so), and the question."""


@pytest.fixture(scope="module")
def address():
    """Address of a service."""
    with live_service() as where:
        yield where


def ask_sync(address, name, **question):
    """Ask through the blocking client; a batch comes as a list."""
    with sc.Client(address) as client:
        answer = getattr(client, name)(**question)
        return list(answer) if name.endswith("_batch") else answer


def ask_async(address, name, **question):
    """Ask through the asynchronous client, in process."""
    del address

    async def conversation():
        transport = httpx.ASGITransport(create_app())
        async with sc.AsyncClient("http://scalewright.test", transport=transport) as client:
            answer = getattr(client, name)(**question)
            return [outcome async for outcome in answer] if name.endswith("_batch") else await answer

    return asyncio.run(conversation())


ASKS = pytest.mark.parametrize("ask", [ask_sync, ask_async], ids=["sync", "async"])


@ASKS
@pytest.mark.parametrize(("name", "media", "start", "question"), FILES)
def test_a_file_comes_as_it_is(address, ask, name, media, start, question):
    """Its first bytes are those of its kind."""
    assert ask(address, name, media=media, **question)[: len(start)].lower() == start.lower()


@ASKS
def test_a_label_says_the_true_scale_and_is_read_back(address, ask):
    """The text of its code gives the part again."""
    label = ask(address, "label", part=PART)
    assert f"{TRUE:.3f}mm" in label.code
    part = ask(address, "label_read", text=label.code).part
    assert part.id == "BD-17"
    assert part.true_scale == pytest.approx(TRUE, abs=0.001)


@ASKS
def test_many_labels_come_in_their_order_and_a_bad_one_spoils_none(address, ask):
    """Each has its own id, and what it would have alone."""
    bad = {**PART, "layout_scale": "25 furlongs"}
    questions = [{"id": 1, "part": PART}, {"id": 2, "part": bad}, {"id": 3, "part": {**PART, "id": "BD-18"}}]
    first, second, third = ask(address, "label_batch", questions=questions)
    assert [one.id for one in (first, second, third)] == [1, 2, 3]
    assert first.result == ask(address, "label", part=PART)
    assert second.error.pointers == ("/part/layout_scale",)
    assert "id=BD-18;" in third.result.code


@ASKS
def test_a_spec_sheet_tells_figures_and_sentences(address, ask):
    """The true scale of a board that is defined by its layout scale and rule, and all its frets."""
    sheet = ask(address, "spec_sheet", part=PART)
    assert sheet.id == "BD-17"
    assert sheet.true_scale.value == pytest.approx(TRUE, abs=1e-9)
    assert len(sheet.frets) == 22


@ASKS
def test_pages_say_how_the_labels_lie(address, ask):
    """Three columns of 70 mm are as wide as A4 (ISO 216: 210 mm)."""
    pages = ask(address, "label_pages", labels=[{"part": PART}] * 2, size="70x36mm")
    assert (pages.pages, pages.columns) == (1, 3)
    assert len(pages.codes) == 2
