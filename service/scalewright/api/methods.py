"""Methods: HEAD wherever there is GET, and what an address allows."""

from dataclasses import dataclass

from fastapi import FastAPI
from starlette.routing import Match
from starlette.types import ASGIApp, Message, Receive, Scope, Send

__all__ = ["HeadAsGet", "allowed_methods"]


@dataclass(frozen=True, slots=True)
class HeadAsGet:
    """Answers HEAD as GET without the body (RFC 9110, section 9.3.2)."""

    app: ASGIApp

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on, HEAD as GET."""
        if scope["type"] != "http" or scope["method"] != "HEAD":
            await self.app(scope, receive, send)
            return

        async def send_head(message: Message) -> None:
            if message["type"] == "http.response.body":
                message = {**message, "body": b""}
            await send(message)

        # A copy, as the server looks into its own to know that no body may follow.
        as_get = {**scope, "method": "GET"}
        await self.app(as_get, receive, send_head)
        scope["route"] = as_get.get("route")


def allowed_methods(app: FastAPI, scope: Scope) -> list[str]:
    """Methods that the address of a request answers, of all the routes that share it."""
    methods: set[str] = set()
    for route in app.routes:
        # A route with another method still matches the path, in part.
        if route.matches(scope)[0] is not Match.NONE:
            methods |= getattr(route, "methods", None) or {"GET"}
    if "GET" in methods:
        methods.add("HEAD")
    return sorted(methods)
