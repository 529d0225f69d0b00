"""How fast boards are identified: the kernel, one request, and a batch, as ratios from interleaved runs.

Run ``python3 -m tests --benchmarks identification``. Printed are

- *kernel*: boards a second against a loop of ``scipy.optimize.curve_fit`` that does the same three fits with a
  free nut offset and 22 readings, with and without what is done about blunders;
- *request*: POST /v1/identification against an idle route with a body and an answer of the same size;
- *batch*: boards a second over HTTP against reading and writing the same JSON with orjson alone;
- *beside a batch*: the 99th percentile of the times of layout requests while a batch runs, against without.
"""

import argparse
import os
import random
import socket
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import httpx
import numpy as np
import orjson
from scipy import optimize

from scalewright.api.app import create_app
from scalewright.api.settings import Settings
from scalewright.lutherie.identification.candidates import Beliefs
from scalewright.lutherie.identification.inquiry import inquire
from scalewright.lutherie.identification.judge import judge
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL
from tests.benchmarks.layout import HOST, ask, body, serving, with_idle_routes
from tests.lutherie.identification.boards import draw, pattern, positions

FRETS = list(range(1, 23))
DEVIATION = 0.05
AT_ONCE = 2048


def seconds(work: Callable[[], object]) -> float:
    """Time that a piece of work takes. [s]"""
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


def fit_loop(rows: np.ndarray) -> None:
    """Three fits a board with a general least-squares routine; the nut's prior is one more reading."""
    n = np.array(FRETS)
    sigma = np.append(np.full(len(n), DEVIATION), 0.3)
    shapes = [positions(rule, 1.0, FRETS) for rule in (EQUAL, EIGHTEENTH)]
    for row in rows:
        known = np.append(row, 0.0)
        start = 2.0 * row[11]
        for shape in shapes:
            optimize.curve_fit(
                lambda _, scale, nut, shape=shape: np.append(nut + scale * shape, nut),
                sigma, known, [start, 0.0], sigma=sigma, absolute_sigma=True,
            )  # fmt: skip
        optimize.curve_fit(
            lambda _, scale, nut, divisor: np.append(nut + scale * (1.0 - (1.0 - 1.0 / divisor) ** n), nut),
            sigma, known, [start, 0.0, 17.9], sigma=sigma, absolute_sigma=True,
        )  # fmt: skip


def kernel(rounds: int) -> None:
    """Boards a second of the kernel, as multiples of the loop's."""
    readings, *_ = draw(np.random.default_rng(1), 8 * AT_ONCE, FRETS, DEVIATION)
    columns = np.ascontiguousarray(readings.T)[None]
    found: dict[str, list[float]] = {"with blunders": [], "without": []}
    for _ in range(rounds):
        loop = 100 / seconds(lambda: fit_loop(readings[:100]))
        for name, beliefs in (("with blunders", Beliefs()), ("without", Beliefs(misreading=0.0))):
            inquiry = inquire(pattern(FRETS, DEVIATION), beliefs, scatter_known=True)

            def run(inquiry=inquiry) -> None:
                for first in range(0, columns.shape[2], AT_ONCE):
                    judge(inquiry, columns[:, :, first : first + AT_ONCE])

            found[name].append(columns.shape[2] / seconds(run) / loop)
    for name, ratios in found.items():
        print(f"kernel {name}: {statistics.median(ratios):.0f} times the loop of curve_fit")


def questions(count: int) -> list[bytes]:
    """Questions as lines of JSON, boards drawn from the priors."""
    readings, *_ = draw(np.random.default_rng(2), count, FRETS, DEVIATION)
    return [
        orjson.dumps(
            {
                "id": f"board-{index}",
                "instrument_uncertainty": DEVIATION,
                "tooling_scatter": 0,
                "from_nut": [round(x, 2) for x in row],
            }
        )
        for index, row in enumerate(readings.tolist())
    ]


def request(rounds: int) -> None:
    """One identification against an idle route."""
    asked = [orjson.dumps({k: v for k, v in orjson.loads(q).items() if k != "id"}) for q in questions(200)]
    app = create_app(Settings(log_requests=False))
    with serving(app) as (port, _), socket.create_connection((HOST, port)) as connection:
        answer = ask(connection, "/v1/identification", asked[0])
    times: dict[str, list[float]] = {"/v1/identification": [], "/idle/bytes": []}
    with serving(with_idle_routes(app, answer)) as (port, _), socket.create_connection((HOST, port)) as connection:
        connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        for _ in range(rounds):
            for path, spent in times.items():
                began = time.perf_counter()
                for question in asked:
                    ask(connection, path, question)
                spent.append((time.perf_counter() - began) / len(asked))
    one, idle = (statistics.median(spent) for spent in times.values())
    print(f"request: {1e6 * one:.0f} us, {one / idle:.1f} times an idle route's {1e6 * idle:.0f} us")


@contextmanager
def live() -> Iterator[str]:
    """The service as a user starts it; yields its address."""
    with socket.create_server((HOST, 0)) as probe:
        port = probe.getsockname()[1]
    environment = os.environ | {"SCALEWRIGHT_LOG_REQUESTS": "false"}
    command = [sys.executable, "-m", "scalewright", "serve", "--port", str(port)]
    process = subprocess.Popen(command, env=environment, stdout=subprocess.DEVNULL)
    address = f"http://{HOST}:{port}"
    try:
        for _ in range(100):
            try:
                httpx.get(f"{address}/readyz")
                break
            except httpx.ConnectError:
                time.sleep(0.05)
        yield address
    finally:
        process.terminate()
        process.wait(10)


def drain(address: str, file: str) -> bytes:
    """Send a batch over a bare connection and read its answer, of which the end is returned."""
    host, _, port = address.removeprefix("http://").partition(":")
    content = Path(file).read_bytes()
    head = (
        f"POST /v1/identification/batch HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n"
        f"Content-Type: application/jsonl\r\nContent-Length: {len(content)}\r\n\r\n"
    )
    last = b""
    with socket.create_connection((host, int(port))) as connection:
        connection.sendall(head.encode() + content)
        while piece := connection.recv(1 << 20):
            last = (last + piece)[-200:]
    return last


def draining(address: str, file: str) -> "subprocess.Popen[bytes]":
    """The same in a process of its own, so that the client costs the measurement nothing."""
    command = [sys.executable, "-m", "tests.benchmarks.identification", "--drain", address, file]
    return subprocess.Popen(command)


def batch(rounds: int, boards: int) -> None:
    """A batch against its JSON alone, and small requests beside it."""
    lines = questions(boards)
    with live() as address, tempfile.TemporaryDirectory() as folder:
        file = str(Path(folder) / "boards.jsonl")
        Path(file).write_bytes(b"\n".join(lines))
        headers = {"Content-Type": "application/jsonl"}
        first = httpx.post(f"{address}/v1/identification/batch", content=b"\n".join(lines[:2000]), headers=headers)
        parsed = [orjson.loads(line) for line in first.content.splitlines()[:-1]]
        drain(address, file)
        shares, speeds = [], []
        for _ in range(rounds):
            alone = seconds(lambda: [orjson.loads(line) for line in lines[:2000]])
            alone += seconds(lambda: [orjson.dumps(one) for one in parsed])
            spent = seconds(lambda: drain(address, file))
            shares.append(alone / 2000 / (spent / boards))
            speeds.append(boards / spent)
        speed, share = statistics.median(speeds), statistics.median(shares)
        print(f"batch: {speed:.0f} boards a second, {share:.2f} of reading and writing the same JSON alone")
        quiet = percentile(address, None)
        beside = percentile(address, draining(address, file))
        print(f"beside a batch: p99 {1e3 * beside:.1f} ms against {1e3 * quiet:.1f} ms, {beside / quiet:.1f} times")


def percentile(address: str, busy: "subprocess.Popen[bytes] | None") -> float:
    """99th percentile of the times of layout requests, while something goes on. [s]"""
    source = random.Random(3)
    port = int(address.rpartition(":")[2])
    times: list[float] = []
    if busy is not None:
        time.sleep(0.5)
    with socket.create_connection((HOST, port)) as connection:
        connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        while len(times) < 1000 and (busy is None or busy.poll() is None):
            question = body(source)
            began = time.perf_counter()
            ask(connection, "/v1/layout", question)
            times.append(time.perf_counter() - began)
            time.sleep(0.001)
    if busy is not None:
        busy.wait()
    return float(np.quantile(times, 0.99))


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rounds", type=int, default=7)
    parser.add_argument("--boards", type=int, default=50_000, help="in a batch")
    parser.add_argument("--drain", nargs=2, metavar=("ADDRESS", "FILE"), help="only send a batch")
    arguments = parser.parse_args()
    if arguments.drain:
        drain(*arguments.drain)
        return
    kernel(arguments.rounds)
    request(arguments.rounds)
    batch(max(arguments.rounds // 2, 2), arguments.boards)


if __name__ == "__main__":
    main()
