"""Painting: pictures are painted in another process, so that the service answers small questions meanwhile."""

import http.client
import json
import time
from pathlib import Path

import pytest

from tests.api.running import HOST, PATIENCE, processor_seconds, service

LARGE = {
    "scale": 860,
    "rule": "equal",
    "frets": 60,
    "strings": {"count": 20, "nut_spread": 100, "saddle_spread": 150},
    "margins": 4,
    "slots": {"kerf": 0.4},
    "extension": 0,
    "sheet": {"pixels": 4000},
}


def paint(port):
    """Ask for a large picture; gives the time that it took. [s]"""
    connection = http.client.HTTPConnection(HOST, port, timeout=PATIENCE)
    began = time.perf_counter()
    connection.request("POST", "/v1/fingerboard?format=png", json.dumps(LARGE), {"Content-Type": "application/json"})
    answer = connection.getresponse()
    assert (answer.status, answer.read()[:4]) == (200, b"\x89PNG")
    connection.close()
    return time.perf_counter() - began


def children(process):
    """Return the processes that a process has begun."""
    lists = Path(f"/proc/{process.pid}/task").glob("*/children")
    return {child for listed in lists for child in listed.read_text(encoding="ascii").split()}


@pytest.mark.slow
def test_a_large_picture_is_painted_in_another_process():
    """The service itself works for a small part of the time that a picture takes; idle, it has no other process.

    Slow: it runs a service, and paints two pictures of four million points.
    """
    with service() as (process, port):
        assert not children(process)
        paint(port)
        assert children(process)
        before = processor_seconds(process)
        took = paint(port)

        assert processor_seconds(process) - before < 0.5 * took
