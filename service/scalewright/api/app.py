"""The application: its layers and its routes."""

import gc
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from functools import partial
from typing import Any

from fastapi import FastAPI, Request
from starlette.exceptions import HTTPException
from starlette.middleware.cors import CORSMiddleware
from starlette.responses import JSONResponse, Response

from scalewright import __version__
from scalewright.api.access import Access
from scalewright.api.browsers import cors
from scalewright.api.compression import Compression
from scalewright.api.documentation import ABOUT, TAGS, openapi_document
from scalewright.api.lifecycle import Lifecycle
from scalewright.api.limits import Limits
from scalewright.api.methods import HeadAsGet, allowed_methods
from scalewright.api.metrics import Metrics
from scalewright.api.observability import RequestLog
from scalewright.api.overload import Overload
from scalewright.api.problems import Refusal, problem
from scalewright.api.protection import document_protection
from scalewright.api.routers import (
    assembly,
    compensation,
    conformity,
    diagnosis,
    docs,
    fingerboard,
    identification,
    intonation,
    label,
    label_pages,
    layout,
    nominal,
    operation,
    problems,
    rules,
    spec_sheet,
    stretch_test,
    tooling,
)
from scalewright.api.settings import Settings
from scalewright.api.shortcut import Shortcut
from scalewright.api.telemetry import telemetry
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
        telemetry=telemetry(),
    )
    app.state.settings = settings
    app.state.metrics = Metrics()
    app.state.lifecycle = Lifecycle()
    app.state.workshop = Workshop(settings.batch_processes)
    app.openapi = partial(_document, app)  # type: ignore[method-assign]  # FastAPI's documented way
    craft = (layout, identification, fingerboard, compensation, intonation, diagnosis, stretch_test)
    parts = (nominal, assembly, conformity, label, label_pages, spec_sheet, tooling)
    for part in (*craft, *parts, rules, operation, problems, *([docs] if settings.docs else [])):
        # Taken over one by one: a router that is included is searched twice for every request.
        app.router.routes.extend(part.router.routes)
    if settings.docs:
        app.router.routes.append(docs.assets())
        app.add_api_route("/openapi.json", _document_route(app), include_in_schema=False)
    app.exception_handlers |= {Refusal: _refused, HTTPException: _refused_by_the_framework}
    # The last one added is the outermost.
    app.add_middleware(Shortcut, routes=app.router.routes)
    app.add_middleware(Overload, settings=settings, routes=app.router.routes)
    app.add_middleware(Compression, least_bytes=settings.compress_bytes)
    app.add_middleware(Limits, settings=settings)
    if settings.api_keys or settings.requests_per_minute:
        app.add_middleware(Access, settings=settings)
    app.add_middleware(HeadAsGet)
    if settings.cors_origins:
        app.add_middleware(CORSMiddleware, **cors(settings))
    app.add_middleware(RequestLog, log=settings.log_requests, metrics=app.state.metrics, lifecycle=app.state.lifecycle)
    return app


@asynccontextmanager
async def _lifespan(app: FastAPI) -> AsyncIterator[None]:
    """Set what is loaded aside from the collector of garbage, and close the workshop when the service ends."""
    # It stays; looking it all over would now and then hold up a small request by 50 ms.
    gc.freeze()
    yield
    await app.state.workshop.close()


def _document(app: FastAPI) -> dict[str, Any]:
    if app.openapi_schema is None:
        document_protection(openapi_document(app), app.state.settings)
    return openapi_document(app)


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
