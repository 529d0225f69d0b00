"""Telemetry: traces and measurements by OpenTelemetry, where its packages are there and its variables ask for it."""

import os
from importlib.util import find_spec

from fastapi.telemetry import TelemetryConfig

__all__ = ["telemetry"]

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
    installed = find_spec("opentelemetry") is not None and find_spec("opentelemetry.sdk") is not None
    return {"auto_configure": asked_for and installed, "logs": False, "operation_spans": False}
