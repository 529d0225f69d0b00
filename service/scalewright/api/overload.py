"""Overload: how many requests are worked on at once; what is above it is told to come again."""

import asyncio
from collections.abc import Sequence

from starlette.routing import BaseRoute
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from scalewright.api.batch import BatchOperation
from scalewright.api.operations import Operation
from scalewright.api.problems import Refusal, problem
from scalewright.api.settings import Settings
from scalewright.lutherie.phrases import plain

__all__ = ["Overload"]

_HEALTH = frozenset({"/livez", "/readyz", "/metrics"})


class _Places:
    """Places for one kind of request that leaves the event loop."""

    def __init__(self, most: int) -> None:
        self.most = most
        self.taken = 0


class Overload:
    """Bounds the requests that are in work at once, and among them the heavy ones more tightly.

    Heavy is what leaves the event loop: batches, and operations that run in a thread. Health is never
    refused, or a service that is merely busy would be restarted.
    """

    def __init__(self, app: ASGIApp, settings: Settings, routes: Sequence[BaseRoute]) -> None:
        self.app = app
        self.all = _Places(settings.max_requests)
        self.seconds = settings.request_seconds
        threads, batches = _Places(settings.max_threaded_requests), _Places(settings.max_batches)
        self.heavy = {route.path: threads for route in routes if isinstance(route, Operation) and not route.awaits}
        self.heavy |= {route.path: batches for route in routes if isinstance(route, BatchOperation)}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Refuse the request or pass it on."""
        if scope["type"] != "http" or scope["path"] in _HEALTH:
            await self.app(scope, receive, send)
            return
        heavy = self.heavy.get(scope["path"])
        if self.all.taken >= self.all.most or (heavy is not None and heavy.taken >= heavy.most):
            about = "The service has as much to do as it takes on at once; send the request again in a second."
            await problem(scope, Refusal("overloaded", about, headers={"Retry-After": "1"}))(scope, receive, send)
            return
        self.all.taken += 1
        try:
            if heavy is None:
                await self.app(scope, receive, send)
            else:
                await self._in_time(heavy, scope, receive, send)
        finally:
            self.all.taken -= 1

    async def _in_time(self, places: _Places, scope: Scope, receive: Receive, send: Send) -> None:
        """Work on a heavy request, and give it up when it takes too long."""
        begun = False

        async def send_noting(message: Message) -> None:
            nonlocal begun
            begun = True
            await send(message)

        places.taken += 1
        try:
            async with asyncio.timeout(self.seconds):
                await self.app(scope, receive, send_noting)
        except TimeoutError:
            if begun:
                raise  # only breaking the answer off tells the client
            about = f"The answer was not ready within {plain(self.seconds)} s; send less at once."
            await problem(scope, Refusal("overloaded", about, headers={"Retry-After": "5"}))(scope, receive, send)
        finally:
            places.taken -= 1
