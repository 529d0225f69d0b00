"""The application: its layers and its routes."""

from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from functools import partial

from fastapi import FastAPI, Request
from starlette.exceptions import HTTPException
from starlette.responses import JSONResponse, Response

from scalewright import __version__
from scalewright.api.documentation import ABOUT, TAGS, openapi_document
from scalewright.api.limits import Limits
from scalewright.api.methods import HeadAsGet, allowed_methods
from scalewright.api.observability import RequestLog
from scalewright.api.problems import Refusal, problem
from scalewright.api.routers import (
    compensation,
    diagnosis,
    docs,
    identification,
    intonation,
    layout,
    operation,
    problems,
    rules,
    stretch_test,
)
from scalewright.api.settings import Settings
from scalewright.api.shortcut import Shortcut
from scalewright.api.workshop import Workshop

__all__ = ["create_app"]


def create_app(settings: Settings | None = None) -> FastAPI:
    """Build the application.

    Parameters
    ----------
    settings : Settings, optional
        How it behaves; without them the environment says.

    Returns
    -------
    FastAPI
        The application, with no state between requests: any number of copies may stand side by side.
    """
    settings = Settings.from_environment() if settings is None else settings
    app = FastAPI(
        title="Scalewright",
        version=__version__,
        summary="What scale a fretted board really has, and what follows from it.",
        description=ABOUT,
        openapi_tags=TAGS,
        servers=[{"url": "/", "description": "This service."}],
        docs_url=None,
        redoc_url=None,
        openapi_url=None,
        redirect_slashes=False,
        lifespan=_lifespan,
    )
    app.state.settings = settings
    app.state.workshop = Workshop(settings.batch_processes)
    app.openapi = partial(openapi_document, app)  # type: ignore[method-assign]  # FastAPI's documented way
    calculations = (layout, identification, compensation, intonation, diagnosis, stretch_test, rules)
    for part in (*calculations, operation, problems, docs):
        # Taken over one by one: a router that is included is searched twice for every request.
        app.router.routes.extend(part.router.routes)
    app.router.routes.append(docs.assets())
    app.add_api_route("/openapi.json", _document_route(app), include_in_schema=False)
    app.exception_handlers |= {Refusal: _refused, HTTPException: _refused_by_the_framework}
    # The last one added is the outermost.
    app.add_middleware(Shortcut, routes=app.router.routes)
    app.add_middleware(Limits, settings=settings)
    app.add_middleware(HeadAsGet)
    app.add_middleware(RequestLog, log=settings.log_requests)
    return app


@asynccontextmanager
async def _lifespan(app: FastAPI) -> AsyncIterator[None]:
    """Close the workshop when the service ends."""
    yield
    app.state.workshop.close()


def _document_route(app: FastAPI) -> Callable[[], Awaitable[Response]]:
    async def openapi_json() -> Response:
        return JSONResponse(app.openapi(), headers={"Cache-Control": "no-cache"})

    return openapi_json


async def _refused(request: Request, error: Refusal) -> Response:
    return problem(request.scope, error)


async def _refused_by_the_framework(request: Request, error: HTTPException) -> Response:
    """Say what the framework refuses, 404 and 405 above all, as a problem; answer OPTIONS."""
    headers = {}
    if error.status_code == 405:
        headers["Allow"] = ", ".join(allowed_methods(request.app, request.scope))
        if request.method == "OPTIONS":
            return Response(status_code=204, headers=headers)
    return problem(request.scope, Refusal.of_status(error.status_code, headers))
