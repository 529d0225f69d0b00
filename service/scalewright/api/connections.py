"""Connections: what a peer may do before there is a request, and after the answer began."""

import asyncio
from typing import Any

import orjson
from uvicorn.protocols.http.httptools_impl import STATUS_LINE, HttpToolsProtocol

from scalewright.api.metrics import Metrics
from scalewright.api.problems import KINDS, MEDIA_TYPE
from scalewright.api.settings import Settings

__all__ = ["GuardedConnection"]


class GuardedConnection(HttpToolsProtocol):
    """A connection whose request head has to be small and quick, and whose reader has to read.

    uvicorn bounds none of the three: a head that drips in, one byte a second, would hold a connection
    for ever, and so would a client that never reads its answer.
    """

    most_head_bytes = 65_536
    """Largest head that may arrive in pieces; :class:`scalewright.api.limits.Limits` bounds complete ones."""
    head_seconds = 5.0
    """How long a head may take, from the connection or from its first byte."""
    stall_seconds = 20.0
    """How long a client may leave an answer unread."""

    def __init__(self, *arguments: Any, **named: Any) -> None:
        super().__init__(*arguments, **named)
        # Nothing but the application knows the settings here, as each process makes its own; uvicorn may wrap it.
        self._state = getattr(getattr(self.app, "app", self.app), "state", None)
        settings: Settings | None = getattr(self._state, "settings", None)
        if settings is not None:
            self.head_seconds, self.stall_seconds = settings.head_seconds, settings.stall_seconds

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]  # as in the base class
        """Begin to wait for a head."""
        super().connection_made(transport)
        self._head_bytes = 0
        self._in_head = True
        self._stalled: asyncio.TimerHandle | None = None
        self._late: asyncio.TimerHandle | None = self.loop.call_later(self.head_seconds, self._head_is_late)

    def connection_lost(self, exc: Exception | None) -> None:
        """Stop waiting."""
        self._stop_waiting()
        self.resume_writing()
        super().connection_lost(exc)

    def data_received(self, data: bytes) -> None:
        """Count what arrives while the head is incomplete."""
        super().data_received(data)
        if self._in_head:
            self._head_bytes += len(data)
            if self._head_bytes > self.most_head_bytes:
                self._refuse("headers-too-large")

    def on_message_begin(self) -> None:
        """Wait for the head of the next request on a connection that is kept alive."""
        super().on_message_begin()
        self._in_head = True
        self._head_bytes = 0
        if self._late is None:
            self._late = self.loop.call_later(self.head_seconds, self._head_is_late)

    def on_headers_complete(self) -> None:
        """Stop waiting: the head is there."""
        self._in_head = False
        self._stop_waiting()
        super().on_headers_complete()

    def pause_writing(self) -> None:
        """Give the reader a while."""
        super().pause_writing()
        if self._stalled is None:
            self._stalled = self.loop.call_later(self.stall_seconds, self.transport.abort)

    def resume_writing(self) -> None:
        """Go on: the reader reads."""
        if self._stalled is not None:
            self._stalled.cancel()
            self._stalled = None
        super().resume_writing()

    def send_400_response(self, msg: str) -> None:
        """Refuse bytes that are no HTTP, with a problem document as everywhere."""
        del msg
        self._refuse("malformed-request")

    def _head_is_late(self) -> None:
        self._late = None
        if self._head_bytes:
            self._refuse("request-timeout")
        else:
            self.transport.close()

    def _stop_waiting(self) -> None:
        if self._late is not None:
            self._late.cancel()
            self._late = None

    def _refuse(self, slug: str) -> None:
        """Send a problem document and close."""
        self._stop_waiting()
        if self.transport.is_closing():
            return
        metrics: Metrics | None = getattr(self._state, "metrics", None)
        if metrics is not None:
            metrics.refused(slug)
        kind = KINDS[slug]
        document: dict[str, Any] = {
            "type": f"/problems/{kind.slug}",
            "title": kind.title,
            "status": kind.status,
            "detail": kind.about,
            "instance": "urn:request:unknown",
            "errors": [],
        }
        content = orjson.dumps(document)
        head = (
            f"content-type: {MEDIA_TYPE}\r\ncontent-length: {len(content)}\r\n"
            "cache-control: no-store\r\nconnection: close\r\n\r\n"
        )
        self.transport.write(STATUS_LINE[kind.status] + head.encode() + content)
        self.transport.close()
