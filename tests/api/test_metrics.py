"""Metrics and traces: what operators are told, with labels that callers cannot invent."""

import json
import re

import pytest
from prometheus_client.parser import text_string_to_metric_families

from scalewright.api.app import create_app
from scalewright.api.settings import Settings
from scalewright.api.trace_context import trace_id_of

QUESTION = {"scale": 650, "rule": "equal", "frets": 12}
LINES = b'{"from_nut": [36.5, 70.9, 103.4]}\nno question\n'


def numbers(text):
    """Every sample by its name and labels, as Prometheus' own parser reads them."""
    return {
        (sample.name, *sorted(sample.labels.items())): sample.value
        for family in text_string_to_metric_families(text)
        for sample in family.samples
    }


def test_requests_are_counted_by_route_and_refusals_by_slug(send):
    """Route templates, times, refusals and lines of batches are counted; the request that asks is in flight."""
    app = create_app(Settings(log_requests=False, batch_processes=0))
    for _ in range(3):
        send("POST", "/v1/layout", app=app, json=QUESTION)
    send("POST", "/v1/layout", app=app, json={})
    send("GET", "/problems/not-found", app=app)
    send("GET", "/secret-address", app=app)
    send("POST", "/v1/identification/batch", app=app, content=LINES, headers={"Content-Type": "application/jsonl"})
    answer = send("GET", "/metrics", app=app)
    told = numbers(answer.text)
    layout = ("method", "POST"), ("route", "/v1/layout")
    batch = ("route", "/v1/identification/batch")

    assert answer.headers["content-type"].startswith("text/plain; version=")
    assert told["scalewright_requests_total", *layout, ("status", "200")] == 3
    assert told["scalewright_requests_total", *layout, ("status", "422")] == 1
    assert told["scalewright_request_seconds_count", *layout] == 4
    assert 0.0 < told["scalewright_request_seconds_sum", *layout] < 10.0
    assert told["scalewright_requests_total", ("method", "GET"), ("route", "none"), ("status", "404")] == 1
    assert told["scalewright_refusals_total", ("slug", "invalid-request")] == 1
    assert told["scalewright_refusals_total", ("slug", "not-found")] == 1
    assert told["scalewright_batch_lines_total", ("outcome", "problem"), batch] >= 1
    assert (
        sum(told["scalewright_batch_lines_total", ("outcome", outcome), batch] for outcome in ("problem", "result"))
        == 2
    )
    assert told["scalewright_requests_in_flight",] == 1
    assert "secret-address" not in answer.text
    assert ("scalewright_requests_total", ("method", "GET"), ("route", "/problems/{slug}"), ("status", "200")) in told


def test_methods_that_nobody_knows_share_a_label(send):
    """A caller cannot fill the memory with labels."""
    app = create_app(Settings(log_requests=False))
    for number in range(5):
        send(f"METHOD{number}", "/v1/layout", app=app)

    told = numbers(send("GET", "/metrics", app=app).text)
    assert [value for (name, *labels), value in told.items() if name == "scalewright_requests_total"] == [5.0]
    assert "METHOD" not in repr(told)


def test_openmetrics_is_spoken_too(send):
    """Prometheus asks for the newer format first."""
    answer = send("GET", "/metrics", headers={"Accept": "application/openmetrics-text; version=1.0.0"})

    assert answer.headers["content-type"].startswith("application/openmetrics-text")
    assert answer.text.endswith("# EOF\n")


def test_metrics_can_be_switched_off(send):
    """Where the setting says so there is no such address."""
    assert send("GET", "/metrics", app=create_app(Settings(log_requests=False, metrics=False))).status_code == 404


TRACE = "0af7651916cd43dd8448eb211c80319c"


@pytest.mark.source("W3C Trace Context, sections 3.2.2 and 4: its example, and what has to be ignored")
@pytest.mark.parametrize(
    ("header", "trace"),
    [
        (f"00-{TRACE}-b7ad6b7169203331-01", TRACE),
        (f"00-{TRACE}-b7ad6b7169203331-00", TRACE),
        (f"01-{TRACE}-b7ad6b7169203331-01-what-the-future-will-be-like", TRACE),
        (f"cc-{TRACE}-b7ad6b7169203331-01", TRACE),
        (f"cc-{TRACE}-b7ad6b7169203331-01.what", None),
        (f"00-{TRACE}-b7ad6b7169203331-01-extra", None),
        (f"ff-{TRACE}-b7ad6b7169203331-01", None),
        (f"00-{'0' * 32}-b7ad6b7169203331-01", None),
        (f"00-{TRACE}-{'0' * 16}-01", None),
        (f"00-{TRACE.upper()}-b7ad6b7169203331-01", None),
        (f"00-{TRACE[:-1]}-b7ad6b7169203331-01", None),
        (f"0-{TRACE}-b7ad6b7169203331-01", None),
        ("", None),
        ("\u0661" * 55, None),
    ],
)
def test_a_trace_is_known_by_its_header(header, trace):
    """Valid headers give their trace id, later versions too; invalid ones are as good as none."""
    assert trace_id_of(header.encode()) == trace


def test_the_log_line_says_all_that_is_needed(send, caplog):
    """One line of JSON: method, route, status, time, id, trace and the slug of a refusal; not what was asked."""
    app = create_app(Settings())
    headers = {"traceparent": f"00-{TRACE}-b7ad6b7169203331-01", "X-Request-ID": "mine"}
    with caplog.at_level("INFO", "scalewright.requests"):
        send("GET", "/v1/layout?scale=private", app=app, headers=headers)
    (line,) = [json.loads(message) for message in caplog.messages]

    assert line["milliseconds"] > 0.0
    assert {name: value for name, value in line.items() if name != "milliseconds"} == {
        "method": "GET",
        "route": "/v1/layout",
        "status": 422,
        "request_id": "mine",
        "trace_id": TRACE,
        "problem": "invalid-request",
    }


@pytest.mark.parametrize("forged", ["a b", "x\ty", '"}\\n{"', "x" * 65, "é"])
def test_a_request_id_cannot_forge_a_line(send, forged):
    """An id that is not plain is replaced, in the header and in the log."""
    answer = send("GET", "/livez", headers={"X-Request-ID": forged.encode()})

    assert re.fullmatch(r"[0-9a-f]{16}", answer.headers["x-request-id"])
