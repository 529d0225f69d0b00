"""What the tests of the HTTP floor share: an application in process, and a way to ask it."""

import asyncio

import httpx
import pytest

from scalewright.api.app import create_app
from scalewright.api.settings import Settings


@pytest.fixture(scope="session")
def application():
    """One application for all these tests; it keeps no state, and no processes, which know one event loop alone."""
    return create_app(Settings(log_requests=False, batch_processes=0))


@pytest.fixture(scope="session")
def send(application):
    """Send a request in process, as ``send("POST", "/v1/layout", json=...)``."""

    async def request(app, method, path, **options):
        transport = httpx.ASGITransport(app, raise_app_exceptions=False)
        async with httpx.AsyncClient(transport=transport, base_url="http://service") as client:
            return await client.request(method, path, **options)

    def sender(method, path, *, app=application, **options):
        return asyncio.run(request(app, method, path, **options))

    return sender
