"""Compression: answers above a size are sent in gzip to who accepts it (RFC 9110, sections 8.4 and 12.5.3)."""

import zlib

from starlette.types import ASGIApp, Message, Receive, Scope, Send

__all__ = ["Compression", "accepts_gzip"]

_LEVEL = 5
_GZIP = 31
"""Tells zlib to write gzip's frame, whose time stamp it leaves at zero: equal answers stay equal bytes."""
_COMPRESSIBLE = (b"application/json", b"application/problem+json", b"text/", b"image/svg+xml", b"application/x-ndjson")
_COMPRESSIBLE_TOO = (b"application/jsonl", b"image/vnd.dxf")
_WEAK = b"W/"

_Headers = list[tuple[bytes, bytes]]


class Compression:
    """Compresses what can be, piece by piece where an answer is sent in pieces.

    The entity tag of a compressed answer is a weak one, as its bytes are others (RFC 9110, section 8.8.3).
    """

    def __init__(self, app: ASGIApp, least_bytes: int) -> None:
        self.app = app
        self.least_bytes = least_bytes

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, and compress its answer."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        wanted = accepts_gzip(scope["headers"])
        await self.app(scope, receive, _Compressor(send, self.least_bytes).send if wanted else _varying(send))


def accepts_gzip(headers: _Headers) -> bool:
    """Whether the Accept-Encoding header of a request lets gzip pass."""
    accepted = {}
    for name, value in headers:
        if name == b"accept-encoding":
            for part in value.lower().split(b",")[:32]:
                coding, _, parameter = part.partition(b";")
                accepted[coding.strip()] = parameter.replace(b" ", b"") not in {b"q=0", b"q=0.0", b"q=0.00", b"q=0.000"}
    return accepted.get(b"gzip", accepted.get(b"*", False))


def _varying(send: Send) -> Send:
    """Say that another request could have had the answer compressed."""

    async def send_varying(message: Message) -> None:
        if message["type"] == "http.response.start" and _is_compressible(message):
            message = {**message, "headers": _varied(message["headers"])}
        await send(message)

    return send_varying


class _Compressor:
    """Holds the head of an answer back until its first piece shows whether compressing pays."""

    def __init__(self, send: Send, least_bytes: int) -> None:
        self._send = send
        self._least = least_bytes
        self._head: Message | None = None
        self._squeeze: zlib._Compress | None = None

    async def send(self, message: Message) -> None:
        """Send a message, compressed."""
        if message["type"] == "http.response.start":
            if not _is_compressible(message):
                await self._send(message)
                return
            self._head = {**message, "headers": _varied(message["headers"])}
            return
        if self._head is not None:
            head, self._head = self._head, None
            body, more = message.get("body", b""), message.get("more_body", False)
            if more or len(body) >= self._least:
                self._squeeze = zlib.compressobj(_LEVEL, zlib.DEFLATED, _GZIP)
                squeezed = self._squeezed(message)
                length = None if more else len(squeezed["body"])
                await self._send({**head, "headers": _compressed(head["headers"], length)})
                await self._send(squeezed)
                return
            await self._send(head)
        elif self._squeeze is not None:
            message = self._squeezed(message)
        await self._send(message)

    def _squeezed(self, message: Message) -> Message:
        assert self._squeeze is not None  # noqa: S101  (told by the callers)
        more = message.get("more_body", False)
        body = self._squeeze.compress(message.get("body", b""))
        # A piece goes out whole, so that the reader of a stream need not wait for the next one.
        body += self._squeeze.flush(zlib.Z_SYNC_FLUSH if more else zlib.Z_FINISH)
        return {**message, "body": body}


def _is_compressible(message: Message) -> bool:
    """Whether an answer, or the one that 304 stands for, is of a kind that gets smaller."""
    status = message["status"]
    if status in {204, 206}:
        return False
    for name, value in message["headers"]:
        if name == b"content-encoding":
            return False
        if name == b"content-type":
            return bool(value.startswith(_COMPRESSIBLE + _COMPRESSIBLE_TOO))
    return bool(status == 304)


def _varied(headers: _Headers) -> _Headers:
    """Headers that name Accept-Encoding among what the answer depends on."""
    others = [(name, value) for name, value in headers if name != b"vary"]
    varies = [value for name, value in headers if name == b"vary"]
    return [*others, (b"vary", b", ".join([*varies, b"Accept-Encoding"]))]


def _compressed(headers: _Headers, length: int | None) -> _Headers:
    """Headers of the compressed answer; a length that is not known yet is left out."""
    changed: _Headers = [(b"content-encoding", b"gzip")]
    for name, value in headers:
        if name == b"content-length":
            if length is not None:
                changed.append((name, b"%d" % length))
        elif name == b"etag" and not value.startswith(_WEAK):
            changed.append((name, _WEAK + value))
        else:
            changed.append((name, value))
    return changed
