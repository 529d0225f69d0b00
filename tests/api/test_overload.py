"""Overload: what is above the bounds is told to come again, and health is answered all the same."""

import asyncio
from typing import Any

import httpx
import pytest

from scalewright.api.app import create_app
from scalewright.api.overload import Overload
from scalewright.api.problems import KINDS
from scalewright.api.settings import Settings

LIGHT, HEAVY, THREADED = "/v1/layout", "/v1/identification/batch", "/v1/identification/plan"


class Busy:
    """An application whose answers wait until they are let go."""

    def __init__(self, **settings: Any) -> None:
        self.let_go = asyncio.Event()
        self.layer = Overload(self.answer, Settings(**settings), create_app(Settings()).router.routes)

    async def answer(self, scope, _receive, send):
        """Wait, but for health, and answer."""
        if scope["path"] in {LIGHT, HEAVY, THREADED}:
            await self.let_go.wait()
        await send({"type": "http.response.start", "status": 200, "headers": []})
        await send({"type": "http.response.body", "body": b"done"})


async def ask_all(busy, *paths):
    """Ask all at once; let the waiting ones go when the others are answered; gives the answers in order."""
    async with httpx.AsyncClient(transport=httpx.ASGITransport(busy.layer), base_url="http://service") as client:
        asked = [asyncio.ensure_future(client.get(path)) for path in paths]
        for _ in range(20):
            await asyncio.sleep(0)
        await asyncio.wait(asked, timeout=0.05, return_when=asyncio.FIRST_COMPLETED)
        busy.let_go.set()
        answers = await asyncio.gather(*asked)
        again = await client.get(paths[0])
    return answers, again


@pytest.mark.parametrize(
    ("paths", "statuses"),
    [
        ([HEAVY, HEAVY, HEAVY, LIGHT], [200, 200, 503, 200]),
        ([THREADED, THREADED, HEAVY, LIGHT], [200, 503, 200, 200]),
        ([LIGHT, LIGHT, LIGHT, LIGHT, LIGHT], [200, 200, 200, 200, 503]),
        ([LIGHT, LIGHT, LIGHT, LIGHT, "/livez", "/readyz", "/metrics"], [200] * 7),
    ],
    ids=["batches", "threads", "all", "health"],
)
def test_what_is_above_the_bounds_is_503(paths, statuses):
    """Above the bound of its kind or of all, one is told to come again; later there is room; health has no bound."""
    busy = Busy(max_requests=4, max_batches=2, max_threaded_requests=1)
    answers, again = asyncio.run(ask_all(busy, *paths))

    assert [answer.status_code for answer in answers] == statuses
    assert again.status_code == 200
    for answer in answers:
        if answer.status_code == 503:
            assert answer.headers["retry-after"] == "1"
            assert answer.json()["type"] == "/problems/overloaded"
    assert {places.taken for places in (busy.layer.all, *busy.layer.heavy.values())} == {0}


def test_batches_and_threads_are_heavy():
    """Heavy is every batch and every operation that leaves the event loop, each with places of its own."""
    heavy = Busy().layer.heavy

    assert {HEAVY, THREADED} <= set(heavy)
    assert heavy[HEAVY] is not heavy[THREADED]
    assert not {LIGHT, "/v1/rules"} & set(heavy)


def test_a_heavy_request_is_given_up_in_time():
    """What takes too long is answered with 503, and its place is free again."""
    busy = Busy(request_seconds=0.02)

    async def wait():
        async with httpx.AsyncClient(transport=httpx.ASGITransport(busy.layer), base_url="http://service") as client:
            return await client.get(HEAVY)

    answer = asyncio.run(wait())
    assert answer.status_code == KINDS["overloaded"].status == 503
    assert busy.layer.heavy[HEAVY].taken == 0
