"""How long drawings of a board take against a route that does nothing, interleaved in one run.

Run ``python -m tests.benchmarks.drawing``. One worker of uvicorn on the loopback address answers, over one
kept-alive connection, in turn: a FastAPI route that hands out a ready answer of the same size as the SVG, and
POST /v1/fingerboard for a board of 24 frets as SVG, DXF, PDF and PNG, another scale each time. After that the steps
from a question to an SVG are timed in this process.
"""

import argparse
import itertools
import json
import random
import socket
import statistics
import time

from scalewright.api.app import create_app
from scalewright.api.settings import Settings
from scalewright.drawing.board_sheet import board_sheet
from scalewright.drawing.sheet import PLAIN
from scalewright.drawing.svg import write_svg
from scalewright.lutherie.fingerboard import draw_up
from scalewright.wire.fingerboard import FingerboardIn
from tests.benchmarks.layout import HOST, ask, processor_seconds, serving, with_idle_routes

FORMS = ("svg", "dxf", "pdf", "png")
STEPS = ("read", "plan", "draw up", "sheet", "write")


def body(random_source: random.Random) -> bytes:
    """Return a question, another board each time."""
    return json.dumps(
        {
            "scale": random_source.uniform(600.0, 680.0),
            "rule": "equal",
            "frets": 24,
            "strings": {"count": 6, "nut_spread": 43, "saddle_spread": 58},
            "margins": 4,
        }
    ).encode()


def measure(rounds: int, requests: int) -> dict[str, tuple[list[float], list[float]]]:
    """Times per request of each form, wall and processor, one entry a round. [s]"""
    source = random.Random(24)
    app = create_app(Settings(log_requests=False))
    with serving(app) as (port, _), socket.create_connection((HOST, port)) as connection:
        size = len(ask(connection, "/v1/fingerboard?format=svg", body(source)))
    idle = json.dumps({"answer": "x" * size}).encode()
    times: dict[str, tuple[list[float], list[float]]] = {}
    paths = {"idle": "/idle/bytes", **{form: f"/v1/fingerboard?format={form}" for form in FORMS}}
    with (
        serving(with_idle_routes(app, idle)) as (port, process),
        socket.create_connection((HOST, port)) as connection,
    ):
        connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        for path in paths.values():  # the libraries are loaded at the first drawing
            ask(connection, path, body(source))
        for _ in range(rounds):
            for name, path in paths.items():
                count = requests if name in {"idle", "svg"} else max(1, requests // 20)
                questions = [body(source) for _ in range(count)]
                wall, processor = time.perf_counter(), processor_seconds(process)
                for question in questions:
                    ask(connection, path, question)
                walls, processors = times.setdefault(name, ([], []))
                walls.append((time.perf_counter() - wall) / count)
                processors.append((processor_seconds(process) - processor) / count)
    return times


def steps(boards: int) -> dict[str, float]:
    """Median times of the steps from the bytes of a question to those of an SVG. [s]"""
    source = random.Random(25)
    columns: dict[str, list[float]] = {}
    for _ in range(boards):
        raw = body(source)
        marks = [time.perf_counter()]
        question = FingerboardIn.read(raw)
        marks.append(time.perf_counter())
        plan = question.to_domain()
        marks.append(time.perf_counter())
        board = draw_up(plan)
        marks.append(time.perf_counter())
        drawing = board_sheet(board, PLAIN, "mm")
        marks.append(time.perf_counter())
        write_svg(drawing)
        marks.append(time.perf_counter())
        for name, (begin, end) in zip(STEPS, itertools.pairwise(marks), strict=True):
            columns.setdefault(name, []).append(end - begin)
    return {name: statistics.median(column) for name, column in columns.items()}


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rounds", type=int, default=20)
    parser.add_argument("--requests", type=int, default=100, help="of SVG in a round; a twentieth of the others")
    arguments = parser.parse_args()
    times = measure(arguments.rounds, arguments.requests)
    for column, kind in enumerate(("wall", "processor")):
        reference = statistics.median(times["idle"][column])
        for name, columns in times.items():
            middle = statistics.median(columns[column])
            print(f"{kind:10s} {name:5s} {middle * 1e3:8.3f} ms   {middle / reference:7.2f} of idle")
    for name, seconds in steps(20 * arguments.requests).items():
        print(f"svg, {name:8s} {seconds * 1e6:8.1f} us")


if __name__ == "__main__":
    main()
