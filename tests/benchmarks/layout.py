"""How long a layout takes against a route that does nothing, interleaved in one run.

Run ``python tests/benchmarks/layout.py``. One worker of uvicorn on the loopback address answers, over one
kept-alive connection, in turn:

- *layout*: POST /v1/layout, another scale each time;
- *bytes*: a FastAPI route with a JSON body of the same size that hands out a ready answer of the same size;
- *model*: the same route, its answer a dictionary that FastAPI serialises;

all behind the same layers. Printed are the times of a request, wall and processor, and their ratios to *bytes*,
the harder of the two to match.
"""

import argparse
import contextlib
import json
import os
import random
import socket
import statistics
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import uvicorn
from fastapi import FastAPI, Response

from scalewright.api.app import create_app
from scalewright.api.settings import Settings

HOST = "127.0.0.1"


def body(random_source: random.Random) -> bytes:
    """Return a question, of the same size each time."""
    inches = f"{random_source.randint(20, 29)} {random_source.choice((1, 3, 5, 7))}/8 in"
    return json.dumps({"scale": inches, "rule": "eighteenth", "frets": 24, "unit": "in"}).encode()


def with_idle_routes(app: FastAPI, answer: bytes) -> FastAPI:
    """Add the routes that do nothing, ahead of all others, so that they are found first."""
    parsed = json.loads(answer)
    others = list(app.router.routes)
    app.router.routes.clear()

    @app.post("/idle/bytes", include_in_schema=False)
    async def idle_bytes(_question: dict[str, Any]) -> Response:
        return Response(answer, media_type="application/json")

    @app.post("/idle/model", include_in_schema=False)
    async def idle_model(_question: dict[str, Any]) -> dict[str, Any]:
        return parsed  # type: ignore[no-any-return]  # it is the answer as JSON

    app.router.routes.extend(others)
    return app


@contextlib.contextmanager
def serving(app: FastAPI) -> Iterator[tuple[int, int]]:
    """Serve an application from a process of its own; yields its port and process id."""
    # The protocol is named, as asyncio turns Nagle's algorithm off only where it is.
    listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    listener.bind((HOST, 0))
    listener.listen()
    port = listener.getsockname()[1]
    child = os.fork()
    if child == 0:
        config = uvicorn.Config(app, access_log=False, log_level="warning", server_header=False)
        uvicorn.Server(config).run([listener])
        os._exit(0)
    listener.close()
    try:
        yield port, child
    finally:
        os.kill(child, 15)
        os.waitpid(child, 0)


def processor_seconds(process: int) -> float:
    """Time that a process has run, from the kernel's own account. [s]"""
    return int(Path(f"/proc/{process}/schedstat").read_text(encoding="ascii").split()[0]) * 1e-9


def ask(connection: socket.socket, path: str, question: bytes) -> bytes:
    """Send a question and read the answer."""
    lines = (
        f"POST {path} HTTP/1.1",
        f"Host: {HOST}",
        "Content-Type: application/json",
        f"Content-Length: {len(question)}",
    )
    connection.sendall("\r\n".join((*lines, "", "")).encode() + question)
    received = b""
    while b"\r\n\r\n" not in received:
        received += connection.recv(65536)
    head_received, _, content = received.partition(b"\r\n\r\n")
    assert head_received.startswith(b"HTTP/1.1 200 "), received[:300]
    size = int(head_received.lower().partition(b"content-length: ")[2].partition(b"\r\n")[0])
    while len(content) < size:
        content += connection.recv(65536)
    return content


def measure(rounds: int, requests: int) -> dict[str, tuple[list[float], list[float]]]:
    """Times per request of each route, wall and processor, one entry a round. [s]"""
    source = random.Random(18)
    app = create_app(Settings(log_requests=False))
    with serving(app) as (port, _), socket.create_connection((HOST, port)) as connection:
        answer = ask(connection, "/v1/layout", body(source))
    times: dict[str, tuple[list[float], list[float]]] = {}
    paths = {"layout": "/v1/layout", "bytes": "/idle/bytes", "model": "/idle/model"}
    with (
        serving(with_idle_routes(app, answer)) as (port, process),
        socket.create_connection((HOST, port)) as connection,
    ):
        connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        for _ in range(rounds):
            for name, path in paths.items():
                questions = [body(source) for _ in range(requests)]
                wall, processor = time.perf_counter(), processor_seconds(process)
                for question in questions:
                    ask(connection, path, question)
                walls, processors = times.setdefault(name, ([], []))
                walls.append((time.perf_counter() - wall) / requests)
                processors.append((processor_seconds(process) - processor) / requests)
    return times


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rounds", type=int, default=30)
    parser.add_argument("--requests", type=int, default=200, help="of each kind in a round")
    arguments = parser.parse_args()
    times = measure(arguments.rounds, arguments.requests)
    for column, kind in enumerate(("wall", "processor")):
        reference = statistics.median(times["bytes"][column])
        for name, columns in times.items():
            middle = statistics.median(columns[column])
            print(f"{kind:10s} {name:8s} {middle * 1e6:7.1f} us   {middle / reference:5.2f} of bytes")


if __name__ == "__main__":
    main()
