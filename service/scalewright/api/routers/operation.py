"""Operation: whether the service lives and is ready, and where to begin."""

from typing import Any, Literal

from fastapi import APIRouter, Request, Response
from pydantic import BaseModel, ConfigDict
from starlette.responses import JSONResponse, RedirectResponse

from scalewright import __version__
from scalewright.api.documentation import problem_documentation
from scalewright.api.media import choose
from scalewright.api.problems import KINDS, Refusal

__all__ = ["router"]

router = APIRouter(tags=["operation"])
_NO_STORE = {"Cache-Control": "no-store"}
_API = "v1"
"""The versions of the API that are served: one."""


class Health(BaseModel):
    """State of the service."""

    model_config = ConfigDict(frozen=True, use_attribute_docstrings=True)

    status: Literal["ok"]
    """Always "ok": a service that is not answers with another HTTP status or not at all."""
    version: str
    """Version of the service."""


_ANSWER: dict[str, Any] = {"response_model": Health, "responses": {405: problem_documentation(405)}}


@router.get("/livez", operation_id="livez", summary="Whether the process lives", **_ANSWER)
async def livez() -> Response:
    """Answers as long as the process can answer at all; restart it when this stays silent."""
    return JSONResponse({"status": "ok", "version": __version__}, headers=_NO_STORE)


@router.get(
    "/readyz",
    operation_id="readyz",
    summary="Whether requests are welcome",
    response_model=Health,
    responses={status: problem_documentation(status) for status in (405, 503)},
)
async def readyz(request: Request) -> Response:
    """Answers when the service takes requests: it needs nothing beside itself, so from its start until its end.

    From SIGTERM on it answers 503, while all else is still answered for a few seconds, so that whoever watches it
    can take new requests elsewhere.
    """
    if request.app.state.lifecycle.draining:
        raise Refusal("shutting-down", KINDS["shutting-down"].about)
    return JSONResponse({"status": "ok", "version": __version__}, headers=_NO_STORE)


@router.get("/metrics", include_in_schema=False)
def metrics(request: Request) -> Response:
    """Numbers for Prometheus; in a thread, as those of several processes are read from files."""
    if not request.app.state.settings.metrics:
        raise Refusal.of_status(404)
    content, media_type = request.app.state.metrics.text(request.headers.get("accept", ""))
    return Response(content, headers={**_NO_STORE, "Content-Type": media_type})


@router.get("/", include_in_schema=False)
async def root(request: Request) -> Response:
    """Where to begin: links for programs, the documentation for people."""
    links = {word: f"/{_API}/{word}" for word in ("identification", "layout", "rules")}
    headers = {"Vary": "Accept"}
    if request.app.state.settings.docs:
        accepted = request.headers.get("accept", "*/*").encode("latin-1")
        if choose(("application/json", "text/html"), accepted) == "text/html":
            return RedirectResponse("/docs", 307, headers)
        links = {"documentation": "/docs", "openapi": "/openapi.json", **links}
        headers["Link"] = '</openapi.json>; rel="service-desc", </docs>; rel="service-doc"'
    members = {"service": "scalewright", "version": __version__, "api": [_API], "links": links}
    return JSONResponse(members, headers=headers)
