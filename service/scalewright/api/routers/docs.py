"""Documentation pages: everything they load comes from this service, so they work without the internet."""

from importlib.util import find_spec
from pathlib import Path

from fastapi import APIRouter
from starlette.responses import Response
from starlette.routing import Mount
from starlette.staticfiles import StaticFiles

__all__ = ["assets", "router"]

router = APIRouter(include_in_schema=False)

_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
    "font-src 'self' data:; connect-src 'self'; worker-src 'self' blob:; base-uri 'none'; frame-ancestors 'none'"
)
_PAGE = """\
<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Scalewright</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="/docs-assets/swagger-ui.css">
</head>
<body>
<div id="documentation"></div>
<script src="/docs-assets/swagger-ui-bundle.js"></script>
<script src="/docs/start.js"></script>
</body>
</html>
"""
_START = """\
SwaggerUIBundle({
  url: "/openapi.json",
  dom_id: "#documentation",
  deepLinking: true,
  validatorUrl: null,
  tryItOutEnabled: true,
  docExpansion: "list",
  defaultModelsExpandDepth: 0,
});
"""


@router.get("/docs")
async def docs() -> Response:
    """The page."""
    headers = {"Content-Security-Policy": _POLICY, "Cache-Control": "no-cache"}
    return Response(_PAGE, media_type="text/html; charset=utf-8", headers=headers)


@router.get("/docs/start.js")
async def start() -> Response:
    """The script that opens the page, in a file of its own so that the policy can refuse scripts in the page."""
    return Response(_START, media_type="text/javascript; charset=utf-8", headers={"Cache-Control": "no-cache"})


def assets() -> Mount:
    """Files of the page's library, from the package that carries them."""
    # Found and not imported: importing the carrier would replace functions of FastAPI.
    carrier = find_spec("fastapi_standalone_docs")
    if carrier is None or carrier.origin is None:
        message = "the package fastapi-standalone-docs, which carries the files of the documentation page, is missing"
        raise RuntimeError(message)
    directory = Path(carrier.origin).with_name("static") / "swagger"
    return Mount("/docs-assets", StaticFiles(directory=directory), name="docs-assets")
