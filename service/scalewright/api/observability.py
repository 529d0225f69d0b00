"""Observability: a request id in and out, and one line of JSON in the log for every request."""

import logging
import random
import re
import time
import traceback
from dataclasses import dataclass

import orjson
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from scalewright.api.problems import Refusal, problem

__all__ = ["LOGGER", "RequestLog"]

LOGGER = logging.getLogger("scalewright.requests")

_PLAIN_ID = re.compile(rb"[A-Za-z0-9._-]{1,64}")
_SECURITY = [
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"x-frame-options", b"DENY"),
]
_API_POLICY = (b"content-security-policy", b"default-src 'none'; frame-ancestors 'none'; sandbox")
_random = random.SystemRandom()


@dataclass(frozen=True, slots=True)
class RequestLog:
    """The outermost layer: names each request, answers for failures of the service, and logs."""

    app: ASGIApp
    log: bool = True

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        started = time.perf_counter()
        request_id = _request_id(scope)
        scope.setdefault("state", {})["request_id"] = request_id
        named = (b"x-request-id", request_id.encode())
        status = 0

        async def send_named(message: Message) -> None:
            nonlocal status
            if message["type"] == "http.response.start":
                status = message["status"]
                headers = [*message["headers"], named, *_SECURITY]
                if not any(name == _API_POLICY[0] for name, _ in message["headers"]):
                    headers.append(_API_POLICY)
                message = {**message, "headers": headers}
            await send(message)

        try:
            await self.app(scope, receive, send_named)
        except Exception:
            failure = {"level": "error", "request_id": request_id, "traceback": traceback.format_exc()}
            LOGGER.error("%s", orjson.dumps(failure).decode())  # noqa: TRY400  (one line, as all others)
            if status:
                raise  # the answer has begun; only breaking it off tells the client
            await problem(scope, Refusal.of_status(500))(scope, receive, send_named)
        finally:
            if self.log:
                self._write(scope, status, request_id, time.perf_counter() - started)

    @staticmethod
    def _write(scope: Scope, status: int, request_id: str, seconds: float) -> None:
        line = {
            "method": scope["method"],
            "route": getattr(scope.get("route"), "path", None),
            "status": status,
            "milliseconds": round(seconds * 1000.0, 3),
            "request_id": request_id,
        }
        LOGGER.info("%s", orjson.dumps(line).decode())


def _request_id(scope: Scope) -> str:
    """Id that the client sent, where it is a plain one, else a new one."""
    for name, value in scope["headers"]:
        if name == b"x-request-id" and _PLAIN_ID.fullmatch(value):
            return str(value, "ascii")
    return f"{_random.getrandbits(64):016x}"
