"""Metrics: what operators are told of the service as a whole, in Prometheus' text format.

With several processes the numbers are in files that all of them share, and whichever process is asked adds
them up: ``scalewright serve --workers`` makes a folder for them and names it in ``PROMETHEUS_MULTIPROC_DIR``,
the client library's own variable, before the processes start. A process of its own keeps them in memory.
"""

import os

from prometheus_client import CollectorRegistry, Counter, Gauge, Histogram, ProcessCollector
from prometheus_client.exposition import choose_encoder
from prometheus_client.multiprocess import MultiProcessCollector
from starlette.types import Scope

__all__ = ["SHARED", "Metrics"]

SHARED = "PROMETHEUS_MULTIPROC_DIR"
"""Names the folder in which several processes keep their numbers."""

_METHODS = frozenset({"GET", "HEAD", "POST", "OPTIONS", "PUT", "PATCH", "DELETE"})
_BUCKETS = (0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0)
"""Upper ends of the histogram of times. [s]"""


class Metrics:
    """Counts requests, their time, those in work, lines of batches, and refusals.

    Labels come from this code alone: the template of a route and never its address, known methods, slugs.
    """

    def __init__(self) -> None:
        self._registry = CollectorRegistry()
        self._requests = Counter(
            "scalewright_requests", "Requests answered.", ("method", "route", "status"), registry=self._registry
        )
        self._seconds = Histogram(
            "scalewright_request_seconds",
            "Time from a request's head to the end of its answer.",
            ("method", "route"),
            buckets=_BUCKETS,
            registry=self._registry,
        )
        self._in_flight = Gauge(
            "scalewright_requests_in_flight",
            "Requests in work now.",
            registry=self._registry,
            multiprocess_mode="livesum",
        )
        self._lines = Counter(
            "scalewright_batch_lines", "Lines of batches.", ("route", "outcome"), registry=self._registry
        )
        self._refusals = Counter(
            "scalewright_refusals", "Requests refused, by the slug of the problem.", ("slug",), registry=self._registry
        )
        if SHARED not in os.environ:
            ProcessCollector(registry=self._registry)
        self._answered: dict[tuple[str, str, int], tuple[Counter, Histogram]] = {}

    def begun(self) -> None:
        """Count a request that begins."""
        self._in_flight.inc()

    def ended(self, scope: Scope, status: int, seconds: float) -> None:
        """Count a request that has ended, with what its scope tells."""
        self._in_flight.dec()
        method = scope["method"] if scope["method"] in _METHODS else "other"
        key = (method, getattr(scope.get("route"), "path", None) or "none", status)
        pair = self._answered.get(key)
        if pair is None:
            pair = self._requests.labels(*map(str, key)), self._seconds.labels(*key[:2])
            self._answered[key] = pair
        pair[0].inc()
        pair[1].observe(seconds)
        state = scope["state"]
        if "problem" in state:
            self.refused(state["problem"])
        if "batch_lines" in state:
            for outcome, count in state["batch_lines"].items():
                self._lines.labels(key[1], outcome).inc(count)

    def refused(self, slug: str) -> None:
        """Count a refusal."""
        self._refusals.labels(slug).inc()

    def text(self, accept: str) -> tuple[bytes, str]:
        """All numbers of all processes, in the format that is asked for, and the format's media type."""
        registry = self._registry
        if SHARED in os.environ:
            registry = CollectorRegistry()
            MultiProcessCollector(registry)  # type: ignore[no-untyped-call]  # the library leaves it untyped
        encode, media_type = choose_encoder(accept)
        return encode(registry), media_type
