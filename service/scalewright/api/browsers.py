"""Browsers: which pages of other origins may ask (the CORS protocol of the Fetch standard)."""

from typing import Any

from scalewright.api.settings import Settings

__all__ = ["cors"]

_MAY_SEND = ["Authorization", "Content-Type", "If-None-Match", "X-API-Key", "X-Request-ID", "traceparent", "tracestate"]
_MAY_READ = [
    "Content-Disposition",
    "Deprecation",
    "ETag",
    "Link",
    "RateLimit",
    "RateLimit-Policy",
    "Retry-After",
    "Sunset",
    "X-Request-ID",
]


def cors(settings: Settings) -> dict[str, Any]:
    """Arguments of Starlette's layer: the origins of the setting, and no cookies, as there are none."""
    return {
        "allow_origins": settings.cors_origins,
        "allow_methods": ["GET", "HEAD", "POST"],
        "allow_headers": _MAY_SEND,
        "expose_headers": _MAY_READ,
        "max_age": 600,
    }
