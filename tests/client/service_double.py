"""A double of the service for the client's tests: answers from a script, and remembers what it was asked."""

import asyncio

import httpx

from scalewright_client import AsyncClient, Client, Retry

BASE_URL = "http://scalewright.test"

STEADY = Retry(attempts=3, first_wait=0.5, longest_wait=8.0, jitter=lambda: 1.0)
"""Waits 0.5 s, then 1 s: no chance in it."""

LAYOUT = {
    "unit": "in",
    "rule": {"name": "eighteenth", "divisor": 18.0},
    "layout_scale": 24.75,
    "true_scale": 24.570004837421855,
    "octave_fret": 12,
    "frets": [
        {
            "fret": 1,
            "from_nut": 1.375,
            "from_previous": 1.375,
            "to_layout_end": 23.375,
            "to_true_end": 23.195004837421855,
            "cents": 98.95459223036827,
        }
    ],
    "notes": [],
}
"""The first row of the contract's own example (positions by hand: 24.75 / 18 = 1.375)."""


class Double:
    """Answers one scripted answer after another; a scripted fault is raised instead."""

    def __init__(self, *script):
        self.script = list(script)
        self.requests: list[httpx.Request] = []
        self.waits: list[float] = []

    def handle(self, request):
        """Give the next answer of the script."""
        self.requests.append(request)
        answer = self.script.pop(0)
        if isinstance(answer, httpx.Response):
            return answer
        message = "scripted"
        raise answer(message, request=request)

    async def wait(self, seconds):
        """Note a wait, and do not wait."""
        self.waits.append(seconds)

    def sync(self, **options):
        """Make a blocking client that talks to this double."""
        return Client(
            BASE_URL,
            **{"retry": STEADY, "transport": httpx.MockTransport(self.handle), "sleep": self.waits.append, **options},
        )

    def asynchronous(self, **options):
        """Make an asynchronous client that talks to this double."""
        return AsyncClient(
            BASE_URL, **{"retry": STEADY, "transport": httpx.MockTransport(self.handle), "sleep": self.wait, **options}
        )


def ask_sync(double, operation, /, *, options=None, **question):
    """Put one question through the blocking client."""
    with double.sync(**(options or {})) as client:
        return getattr(client, operation)(**question)


def ask_async(double, operation, /, *, options=None, **question):
    """Put one question through the asynchronous client."""

    async def conversation():
        async with double.asynchronous(**(options or {})) as client:
            return await getattr(client, operation)(**question)

    return asyncio.run(conversation())
