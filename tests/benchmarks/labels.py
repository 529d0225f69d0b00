"""How long a stock of labels takes as one PDF, in seconds of one core, and how its memory grows.

Run ``python -m tests.benchmarks.labels``. One worker of uvicorn on the loopback address and one process of its
workshop set stocks of labels, small ones first: the peak of memory must not grow with the stock. While the largest
is set, a small request is asked again and again. A label is compared with a FastAPI route that hands out a ready
answer, and one label as SVG with the same.
"""

import argparse
import json
import socket
import statistics
import time
from pathlib import Path
from threading import Event, Thread

import httpx

from scalewright.api.app import create_app
from scalewright.api.settings import Settings
from tests.benchmarks.layout import HOST, ask, processor_seconds, serving, with_idle_routes

PART: dict[str, object] = {"kind": "board", "rule": "eighteenth", "tolerance": 0.1}


def label(number: int) -> dict[str, object]:
    """Return a question, another board each time."""
    part = {**PART, "id": f"BD-{number:05d}", "layout_scale": 600.0 + 0.01 * number}
    return {"part": part, "title": f"Bœard {number}", "date": "2026-11-25"}


def family(process: int) -> list[int]:
    """Ids of a process and its children."""
    threads = Path(f"/proc/{process}/task").iterdir()
    children = [child for thread in threads for child in (thread / "children").read_text(encoding="ascii").split()]
    return [process, *(one for child in children for one in family(int(child)))]


def peak_megabytes(process: int) -> float:
    """Most memory that a process and its children have had. [MB]"""
    texts = [Path(f"/proc/{one}/status").read_text(encoding="ascii") for one in family(process)]
    peaks = [text.partition("VmHWM:")[2].split()[0] for text in texts if "VmHWM:" in text]
    return sum(int(peak) for peak in peaks) / 1024.0


def set_stock(address: str, number: int) -> tuple[int, float]:
    """Size of the PDF of a stock, and the time until its first byte. [bytes, s]"""
    lines = b"".join(json.dumps(label(one)).encode() + b"\n" for one in range(number))
    headers = {"Content-Type": "application/jsonl", "Accept": "application/pdf"}
    size, first, begun = 0, 0.0, time.perf_counter()
    with httpx.stream("POST", f"{address}/v1/label/batch", content=lines, headers=headers, timeout=600.0) as answer:
        assert answer.status_code == 200
        for piece in answer.iter_bytes():
            first = first or time.perf_counter() - begun
            size += len(piece)
    return size, first


def small_requests(port: int, done: Event, times: list[float]) -> None:
    """Ask for a layout until all is done."""
    with socket.create_connection((HOST, port)) as connection:
        connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        while not done.wait(0.01):
            begun = time.perf_counter()
            ask(connection, "/v1/layout", b'{"scale": 650, "rule": "equal", "frets": 22}')
            times.append(time.perf_counter() - begun)


def per_request(port: int, process: int, path: str, requests: int) -> float:
    """Processor time of one request. [s]"""
    with socket.create_connection((HOST, port)) as connection:
        connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        ask(connection, path, json.dumps(label(0)).encode())
        begun = processor_seconds(process)
        for number in range(requests):
            ask(connection, path, json.dumps(label(number)).encode())
        return (processor_seconds(process) - begun) / requests


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--stocks", type=int, nargs="+", default=[500, 2500, 10_000])
    arguments = parser.parse_args()
    app = create_app(Settings(log_requests=False, batch_processes=1))
    idle = json.dumps({"answer": "x" * 12_000}).encode()
    with serving(with_idle_routes(app, idle)) as (port, process):
        nothing = per_request(port, process, "/idle/bytes", 2000)
        one = per_request(port, process, "/v1/label?format=svg", 300)
        print(f"one label as SVG {one * 1e3:.2f} ms, {one / nothing:.0f} of a route that does nothing")
        for number in arguments.stocks:
            waits: list[float] = []
            done = Event()
            beside = Thread(target=small_requests, args=(port, done, waits))
            beside.start()
            begun = sum(map(processor_seconds, family(process)))
            wall = time.perf_counter()
            size, first = set_stock(f"http://{HOST}:{port}", number)
            wall = time.perf_counter() - wall
            done.set()
            beside.join()
            spent = sum(map(processor_seconds, family(process))) - begun
            waits.sort()
            print(
                f"{number:6d} labels {wall:6.1f} s, first byte {first:5.1f} s, processor {spent:6.1f} s, "
                f"{spent / number / nothing:5.1f} of nothing a label, {size / 1e6:5.2f} MB, "
                f"peak {peak_megabytes(process):6.1f} MB, small requests p50 {statistics.median(waits) * 1e3:.1f} ms, "
                f"p99 {waits[int(0.99 * len(waits))] * 1e3:.1f} ms"
            )


if __name__ == "__main__":
    main()
