"""Telemetry: what OpenTelemetry's standard variables ask for is sent, and nothing without them."""

import http.client
import threading
import time
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

import pytest

from scalewright.api.telemetry import telemetry
from tests.api.running import HOST, PATIENCE, QUESTION, service

TRACE = "0af7651916cd43dd8448eb211c80319c"
PARENT = "b7ad6b7169203331"


@pytest.fixture
def collector():
    """Collect what is sent to an address of this machine; gives its port and the bodies by path."""
    received: list[tuple[str, bytes]] = []

    class Collector(BaseHTTPRequestHandler):
        def do_POST(self):
            received.append((self.path, self.rfile.read(int(self.headers["Content-Length"]))))
            self.send_response(200)
            self.send_header("Content-Length", "0")
            self.end_headers()

        def log_message(self, *_):
            """Say nothing."""

    with ThreadingHTTPServer((HOST, 0), Collector) as server:
        thread = threading.Thread(target=server.serve_forever, daemon=True)
        thread.start()
        yield server.server_address[1], received
        server.shutdown()
        thread.join(PATIENCE)


@pytest.mark.slow
@pytest.mark.source(
    "W3C Trace Context, section 3.2: a receiver goes on with the trace id and makes the sender its parent"
)
def test_a_request_is_a_span_of_its_callers_trace(collector):
    """The span names the route, has the caller's trace, and the caller's span as parent (slow: a process starts)."""
    port_of_collector, received = collector
    variables = {
        "OTEL_EXPORTER_OTLP_ENDPOINT": f"http://{HOST}:{port_of_collector}",
        "OTEL_METRICS_EXPORTER": "none",
        "OTEL_BSP_SCHEDULE_DELAY": "50",
        "NO_PROXY": HOST,
    }
    with service(**variables) as (_, port):
        connection = http.client.HTTPConnection(HOST, port, timeout=PATIENCE)
        headers = {"Content-Type": "application/json", "traceparent": f"00-{TRACE}-{PARENT}-01"}
        connection.request("POST", "/v1/layout", QUESTION, headers)
        assert connection.getresponse().read()
        connection.close()
        deadline = time.monotonic() + PATIENCE
        while not (spans := [b for p, b in received if p == "/v1/traces" and bytes.fromhex(TRACE) in b]):
            assert time.monotonic() < deadline
            time.sleep(0.05)

    assert bytes.fromhex(PARENT) in spans[0]
    assert b"POST /v1/layout" in spans[0]


def test_without_the_variables_nothing_is_sent(monkeypatch):
    """No exporter is made unless an endpoint is named."""
    for variable in ("OTEL_EXPORTER_OTLP_ENDPOINT", "OTEL_EXPORTER_OTLP_TRACES_ENDPOINT"):
        monkeypatch.delenv(variable, raising=False)
    assert telemetry()["auto_configure"] is False

    monkeypatch.setenv("OTEL_EXPORTER_OTLP_TRACES_ENDPOINT", "http://collector:4318/v1/traces")
    assert telemetry()["auto_configure"] is True
    monkeypatch.setattr("scalewright.api.telemetry.find_spec", lambda _: None)
    assert telemetry()["auto_configure"] is False
