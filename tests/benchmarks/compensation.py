"""How long a compensation takes against a route that does nothing, and a thousand of them together.

Run ``python tests/benchmarks/compensation.py``. One worker of uvicorn on the loopback address answers, over one
kept-alive connection, in turn:

- *compensation*: POST /v1/compensation, six strings by twenty-four frets, another scale each time;
- *no-op*: a FastAPI route that takes the same body and hands out a ready answer of the same size;

behind the same layers. Printed are the times of a request and their ratio, then the time of each of a thousand
questions read, solved together and written in one process.
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
from typing import Any

import orjson
import uvicorn
from fastapi import FastAPI, Response

from scalewright.api.app import create_app
from scalewright.api.settings import Settings
from scalewright.lutherie.compensation import Compensation, compensate_all
from scalewright.wire.compensation import CompensationIn, CompensationOut

HOST = "127.0.0.1"

STRINGS = [
    {"pitch": pitch, "diameter": diameter, "unit_mass": mass, "R": R}
    for pitch, diameter, mass, R in (
        ("E4", 0.712, 0.374, 23.6),
        ("B3", 0.818, 0.505, 23.8),
        ("G3", 1.024, 0.836, 28.8),
        ("D3", 0.736, 1.92, 22.5),
        ("A2", 0.89, 3.289, 23.9),
        ("E2", 1.092, 5.47, 28.6),
    )
]
"""Published nylon strings (Anderson and Beausoleil 2024)."""


def body(source: random.Random) -> bytes:
    """Question with a scale of its own."""
    question = {
        "unit": "mm",
        "scale": round(source.uniform(600.0, 700.0), 3),
        "rule": source.choice(["equal", "eighteenth"]),
        "frets": 24,
        "heights": {"nut": 1.0, "saddle_above_nut": 4.0},
        "nut": "free",
        "strings": STRINGS,
    }
    return json.dumps(question).encode()


def application(answer: bytes) -> FastAPI:
    """Service with a route beside it that does nothing."""
    app = create_app(Settings(log_requests=False))

    async def no_op(question: dict[str, Any]) -> Response:
        return Response(answer if question else b"{}", media_type="application/json")

    app.add_api_route("/no-op", no_op, methods=["POST"])
    return app


@contextlib.contextmanager
def served(app: FastAPI) -> Iterator[int]:
    """Serve in a child process; gives the port."""
    with socket.create_server((HOST, 0)) as listener:
        port = listener.getsockname()[1]
        child = os.fork()
        if child == 0:
            config = uvicorn.Config(app, http="httptools", loop="uvloop", access_log=False, log_level="error")
            uvicorn.Server(config).run(sockets=[listener])
            os._exit(0)
        try:
            yield port
        finally:
            os.kill(child, 15)
            os.waitpid(child, 0)


def ask(connection: socket.socket, path: str, content: bytes) -> float:
    """Send a request over a kept-alive connection and read its answer. [s]"""
    lines = (f"POST {path} HTTP/1.1", "Host: here", "Content-Type: application/json", f"Content-Length: {len(content)}")
    head = "\r\n".join((*lines, "", ""))
    began = time.perf_counter()
    connection.sendall(head.encode() + content)
    answer = b""
    while b"\r\n\r\n" not in answer:
        answer += connection.recv(262_144)
    headers, _, rest = answer.partition(b"\r\n\r\n")
    assert headers.startswith(b"HTTP/1.1 200"), headers
    length = int(headers.lower().partition(b"content-length: ")[2].partition(b"\r\n")[0])
    while len(rest) < length:
        rest += connection.recv(262_144)
    return time.perf_counter() - began


def over_http(rounds: int) -> None:
    """Compare the two routes, interleaved."""
    source = random.Random(1)
    ready = written(answers([body(source)]))[0]
    times: dict[str, list[float]] = {"/v1/compensation": [], "/no-op": []}
    with served(application(ready)) as port:
        time.sleep(2.0)
        with socket.create_connection((HOST, port)) as connection:
            for turn in range(rounds):
                for path, found in times.items():
                    taken = ask(connection, path, body(source))
                    if turn >= rounds // 10:
                        found.append(taken)
    medians = {path: statistics.median(found) * 1e3 for path, found in times.items()}
    for path, median in medians.items():
        print(f"{path:18} {median:6.3f} ms")
    print(f"{'ratio':18} {medians['/v1/compensation'] / medians['/no-op']:6.2f}")


def answers(bodies: list[bytes]) -> list[Compensation]:
    """Answers to questions, solved together."""
    return [
        answer
        for answer in compensate_all([CompensationIn.read(raw).to_domain() for raw in bodies])
        if isinstance(answer, Compensation)
    ]


def written(found: list[Compensation]) -> list[bytes]:
    """Answers as JSON."""
    return [orjson.dumps(CompensationOut.model_validate(one).model_dump(context={"unit": "mm"})) for one in found]


def together(many: int) -> None:
    """Time many questions in one process."""
    source = random.Random(2)
    bodies = [body(source) for _ in range(many)]
    answers(bodies[:64])
    began = time.perf_counter()
    found = answers(bodies)
    solved = time.perf_counter()
    out = written(found)
    ended = time.perf_counter()
    print(f"{len(out)} together: {1e3 * (solved - began) / many:.3f} ms each to solve, "
          f"{1e3 * (ended - solved) / many:.3f} ms to write")  # fmt: skip


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--rounds", type=int, default=300)
    parser.add_argument("--many", type=int, default=1000)
    options = parser.parse_args()
    over_http(options.rounds)
    together(options.many)
