"""Observability: a request id in and out, and for every request one line of JSON and its share of the metrics."""

import logging
import random
import re
import time
import traceback
from dataclasses import dataclass

import orjson
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from scalewright.api.lifecycle import Lifecycle
from scalewright.api.metrics import Metrics
from scalewright.api.problems import Refusal, problem
from scalewright.api.trace_context import trace_id_of

__all__ = ["LOGGER", "RequestLog"]

LOGGER = logging.getLogger("scalewright.requests")

_PLAIN_ID = re.compile(rb"[A-Za-z0-9._-]{1,64}")
_SECURITY = [
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"x-frame-options", b"DENY"),
    (b"cross-origin-resource-policy", b"same-site"),
]
_API_POLICY = (b"content-security-policy", b"default-src 'none'; frame-ancestors 'none'; sandbox")
_CLOSE = (b"connection", b"close")
_random = random.SystemRandom()


@dataclass(frozen=True, slots=True)
class RequestLog:
    """The outermost layer: names each request, answers for failures of the service, logs and counts."""

    app: ASGIApp
    log: bool
    metrics: Metrics
    lifecycle: Lifecycle

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        started = time.perf_counter()
        self.metrics.begun()
        state = scope.setdefault("state", {})
        request_id = _identify(scope)
        added = [(b"x-request-id", request_id.encode()), *_SECURITY]
        status = 0

        async def send_named(message: Message) -> None:
            nonlocal status
            if message["type"] == "http.response.start":
                status = message["status"]
                headers = [*message["headers"], *added]
                if not any(name == _API_POLICY[0] for name, _ in message["headers"]):
                    headers.append(_API_POLICY)
                if self.lifecycle.draining:
                    headers.append(_CLOSE)
                message = {**message, "headers": headers}
            await send(message)

        try:
            await self.app(scope, receive, send_named)
        except Exception:
            failure = {"level": "error", "request_id": request_id, "traceback": traceback.format_exc()}
            LOGGER.error("%s", orjson.dumps(failure).decode())  # noqa: TRY400  (one line, as all others)
            if status:
                state["problem"] = "internal-error"
                raise  # the answer has begun; only breaking it off tells the client
            await problem(scope, Refusal.of_status(500))(scope, receive, send_named)
        finally:
            seconds = time.perf_counter() - started
            self.metrics.ended(scope, status, seconds)
            if self.log:
                _write(scope, status, seconds)


def _write(scope: Scope, status: int, seconds: float) -> None:
    """Log a request: what it was, how it ended, whose it was; neither its address nor what it asked."""
    state = scope["state"]
    line = {
        "method": scope["method"],
        "route": getattr(scope.get("route"), "path", None),
        "status": status,
        "milliseconds": round(seconds * 1000.0, 3),
        "request_id": state["request_id"],
    }
    line.update((name, state[name]) for name in ("trace_id", "key", "problem", "batch_lines") if name in state)
    LOGGER.info("%s", orjson.dumps(line).decode())


def _identify(scope: Scope) -> str:
    """Note the id that the client sent, where it is a plain one, else a new one, and its trace; returns the id."""
    state = scope["state"]
    request_id = None
    for name, value in scope["headers"]:
        if name == b"x-request-id":
            if _PLAIN_ID.fullmatch(value):
                request_id = str(value, "ascii")
        elif name == b"traceparent":
            trace_id = trace_id_of(value)
            if trace_id is not None:
                state["trace_id"] = trace_id
    state["request_id"] = request_id or f"{_random.getrandbits(64):016x}"
    return str(state["request_id"])
