"""Telemetry: traces and measurements by OpenTelemetry, where its packages are there and its variables ask for it."""

import os
from importlib.util import find_spec

from fastapi.telemetry import TelemetryConfig
from opentelemetry.trace import get_current_span
from starlette.types import Scope

__all__ = ["name_route", "telemetry"]

_ENDPOINTS = (
    "OTEL_EXPORTER_OTLP_ENDPOINT",
    "OTEL_EXPORTER_OTLP_TRACES_ENDPOINT",
    "OTEL_EXPORTER_OTLP_METRICS_ENDPOINT",
)


def telemetry() -> TelemetryConfig:
    """Configuration of FastAPI's own telemetry, which stands before all layers and so sees every request.

    It sends what it sees where the standard variables of OpenTelemetry say, if one of them names an endpoint
    and the extra ``otel`` is installed; without them it costs nothing. A ``traceparent`` becomes the parent of
    the request's span. Logs stay lines on the error stream.
    """
    asked_for = any(os.environ.get(variable) for variable in _ENDPOINTS)
    installed = find_spec("opentelemetry.sdk") is not None
    return {"auto_configure": asked_for and installed, "logs": False, "operation_spans": False}


def name_route(scope: Scope, path: str) -> None:
    """Name the route in the span and the measurements of a request that the framework's own search never saw."""
    scope["fastapi.telemetry"].route = path
    span = get_current_span()
    span.update_name(f"{scope['method']} {path}")
    span.set_attribute("http.route", path)
