"""Limits: what is refused before any of it is worked on."""

import asyncio
from dataclasses import dataclass

from starlette.types import ASGIApp, Message, Receive, Scope, Send

from scalewright.api.problems import Refusal, problem
from scalewright.api.settings import Settings
from scalewright.lutherie.phrases import plain

__all__ = ["Limits"]

_CLOSE = {"Connection": "close"}
_BATCH = "/batch"
"""How the addresses of batches end."""
_MOST_DIGITS = 18
"""No body has so many bytes, and reading more digits is work."""


@dataclass(frozen=True, slots=True)
class Limits:
    """Bounds the address, the headers, the body, declared or not, and the time that the body takes."""

    app: ASGIApp
    settings: Settings

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Refuse the request or pass it on."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        try:
            has_body = self._check_head(scope)
        except Refusal as refusal:
            await problem(scope, refusal)(scope, receive, send)
            return
        await self.app(scope, self._bounded(scope, receive) if has_body else receive, send)

    def _check_head(self, scope: Scope) -> bool:
        """Refuse what the head of the request already shows; return whether a body follows."""
        settings = self.settings
        if len(scope.get("raw_path") or b"") + len(scope["query_string"]) > settings.max_url_bytes:
            message = f"Path and query together may have at most {settings.max_url_bytes} bytes; use POST with a body."
            raise Refusal("address-too-long", message, headers=_CLOSE)
        total, chunked = 0, False
        declared: bytes | None = None
        for name, value in scope["headers"]:
            total += len(name) + len(value)
            if name == b"content-length":
                declared = value
            elif name == b"transfer-encoding":
                chunked = True
        if total > settings.max_header_bytes:
            message = f"The request headers may have at most {settings.max_header_bytes} bytes."
            raise Refusal("headers-too-large", message, headers=_CLOSE)
        if declared is None:
            return chunked
        if chunked:
            message = "Content-Length and Transfer-Encoding contradict each other; send one of them."
            raise Refusal("malformed-request", message, headers=_CLOSE)
        if not declared.isdigit():
            raise Refusal("malformed-request", "Content-Length has to be a whole number.", headers=_CLOSE)
        if len(declared) > _MOST_DIGITS or int(declared) > self._most_bytes(scope):
            raise self._too_large(scope)
        return int(declared) > 0

    def _most_bytes(self, scope: Scope) -> int:
        """How large the body may be: a batch is one of many questions."""
        settings = self.settings
        return settings.max_batch_bytes if scope["path"].endswith(_BATCH) else settings.max_body_bytes

    def _too_large(self, scope: Scope) -> Refusal:
        most = self._most_bytes(scope)
        message = f"The body may have at most {most} bytes."
        return Refusal("body-too-large", message, headers=_CLOSE, facts={"max_body_bytes": most})

    def _bounded(self, scope: Scope, receive: Receive) -> Receive:
        """Wrap the channel of the body so that its size and its time are bounded."""
        loop = asyncio.get_running_loop()
        most = self._most_bytes(scope)
        seconds = self.settings.batch_seconds if scope["path"].endswith(_BATCH) else self.settings.body_seconds
        deadline = loop.time() + seconds
        received = 0
        complete = False

        async def receive_bounded() -> Message:
            nonlocal received, complete
            if complete:
                return await receive()
            try:
                async with asyncio.timeout_at(deadline):
                    message = await receive()
            except TimeoutError:
                about = f"The body did not arrive within {plain(seconds)} s; send it in one go."
                raise Refusal("request-timeout", about, headers=_CLOSE) from None
            received += len(message.get("body", b""))
            if received > most:
                raise self._too_large(scope)
            complete = message["type"] != "http.request" or not message.get("more_body", False)
            return message

        return receive_bounded
