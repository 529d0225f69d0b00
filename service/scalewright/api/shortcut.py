"""The shortcut: an operation is found by its address in one look-up, ahead of the framework's search."""

from collections.abc import Sequence

from starlette.routing import BaseRoute
from starlette.types import ASGIApp, Receive, Scope, Send

from scalewright.api.batch import BatchOperation
from scalewright.api.operations import Operation
from scalewright.api.problems import Refusal, problem
from scalewright.api.telemetry import name_route
from scalewright.lutherie.errors import LutherieError

__all__ = ["Shortcut"]


class Shortcut:
    """The innermost layer: hands a request for an operation to it, and any other to the framework.

    The framework compares the address with each route in turn and keeps a stack for what a dependency may
    want to close; operations have no dependencies, and their addresses have no parameters. Without this
    layer all works the same, a tenth of the time slower.
    """

    def __init__(self, app: ASGIApp, routes: Sequence[BaseRoute]) -> None:
        self.app = app
        self.operations = {
            (route.method, route.path): route for route in routes if isinstance(route, Operation | BatchOperation)
        }

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request on."""
        operation = self.operations.get((scope["method"], scope["path"])) if scope["type"] == "http" else None
        if operation is None:
            await self.app(scope, receive, send)
            return
        scope["route"] = operation
        if "fastapi.telemetry" in scope:
            name_route(scope, operation.path)
        try:
            await operation.handle(scope, receive, send)
        except Refusal as refusal:
            await problem(scope, refusal)(scope, receive, send)
        except LutherieError as error:
            await problem(scope, Refusal.of_craft(error))(scope, receive, send)
