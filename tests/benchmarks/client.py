"""What the Python client adds: to one call, and to a file of a hundred thousand boards.

Run ``python3 -m tests --benchmarks client``. Printed are

- *call*: processor time that a call takes in the caller's process, against bare httpx that sends the same bytes and
  parses the JSON of the answer, one after the other over kept-alive connections in one run;
- *file*: boards a second of ``scalewright-client identify`` from CSV to CSV, against the batch route alone, which is
  sent the same questions and whose answer is read and thrown away; with the processor time of the command itself.
"""

import argparse
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import httpx
import numpy as np
import orjson

import scalewright_client as sc
from scalewright.api.app import create_app
from scalewright.api.settings import Settings
from tests.benchmarks.layout import HOST, serving

FRETS = list(range(1, 23))
QUESTIONS: dict[str, dict[str, object]] = {
    "layout": {"scale": "24 3/4 in", "rule": "eighteenth", "frets": 24, "unit": "in"},
    "identification": {
        "unit": "mm",
        "frets": FRETS,
        "from_nut": [round(650.0 * (1.0 - 2.0 ** (-fret / 12.0)), 2) for fret in FRETS],
        "instrument_uncertainty": 0.05,
    },
    "nominal": {"unit": "mm", "label": "25.4 in"},
}
JSON = {"Content-Type": "application/json", "Accept": "application/json"}


def calls(rounds: int, times: int) -> None:
    """Measure and print what a call takes."""
    with serving(create_app(Settings(log_requests=False))) as (port, _):
        base = f"http://{HOST}:{port}"
        with sc.Client(base) as client, httpx.Client(base_url=base) as bare:
            for name, question in QUESTIONS.items():
                asked, body = getattr(client, name), orjson.dumps(question)

                def by_hand(path: str = f"/v1/{name}", body: bytes = body) -> object:
                    return bare.post(path, content=body, headers=JSON).raise_for_status().json()

                def by_client(asked: Callable[..., object] = asked, question: dict[str, object] = question) -> object:
                    return asked(**question)

                ratios, spent = [], []
                for _ in range(rounds):
                    one, other = processor(by_hand, times), processor(by_client, times)
                    ratios.append(other / one)
                    spent.append((one, other))
                hand, own = (statistics.median(column) * 1e6 / times for column in zip(*spent, strict=True))
                print(f"call {name:15s} httpx {hand:6.0f} us, client {own:6.0f} us: {statistics.median(ratios):.2f}")


def processor(work: Callable[[], object], times: int) -> float:
    """Processor time of this process for some repetitions. [s]"""
    began = time.process_time()
    for _ in range(times):
        work()
    return time.process_time() - began


def boards(count: int) -> np.ndarray:
    """Readings of boards, half of them of either rule, to a hundredth. [mm]"""
    source = np.random.default_rng(12)
    n = np.array(FRETS)
    shapes = np.stack([1.0 - 2.0 ** (-n / 12.0), 1.0 - (17.0 / 18.0) ** n])
    scales = source.uniform(600.0, 680.0, count)
    return np.round(scales[:, None] * shapes[source.integers(0, 2, count)] + source.normal(0.0, 0.05, (count, 22)), 2)


def files(count: int, processes: int) -> None:
    """Measure and print what a file takes."""
    rows = boards(count)
    with tempfile.TemporaryDirectory() as folder:
        source, output = Path(folder) / "boards.csv", Path(folder) / "scales.csv"
        with source.open("w", encoding="ascii") as file:
            file.write(",".join(["id", *(f"fret {fret} [mm]" for fret in FRETS)]) + "\n")
            file.writelines(f"B-{index},{','.join(map(str, row))}\n" for index, row in enumerate(rows.tolist()))
        settings = Settings(log_requests=False, batch_processes=processes)
        with serving(create_app(settings)) as (port, _):
            base = f"http://{HOST}:{port}"
            route(base, rows[:2048])
            alone = route(base, rows)
            command = [sys.executable, "-m", "scalewright_client.command", "identify", str(source), "-o", str(output)]
            # The scatter is given, as that is what the service answers fastest, and so the hardest to keep up with.
            fixed = ("instrument_uncertainty=0.05 mm", "tooling_scatter=0.05 mm")
            options = [*(part for one in fixed for part in ("--set", one)), "--url", base, "--quiet"]
            before = resource.getrusage(resource.RUSAGE_CHILDREN)
            began = time.perf_counter()
            subprocess.run([*command, *options], check=True)
            taken = time.perf_counter() - began
            used = resource.getrusage(resource.RUSAGE_CHILDREN)
        spent = used.ru_utime + used.ru_stime - before.ru_utime - before.ru_stime
        assert output.read_bytes().count(b"\n") == count + 1
        print(f"file route alone {count / alone:8.0f} boards/s")
        print(f"file command     {count / taken:8.0f} boards/s: {alone / taken:.2f} of the route alone")
        print(f"file command     {spent / count * 1e6:.0f} us of its own processor time a board")


def route(base: str, rows: np.ndarray) -> float:
    """Time that the batch route alone takes, its answer read and thrown away. [s]"""
    questions = [
        {
            "id": f"B-{index}",
            "frets": FRETS,
            "from_nut": row,
            "instrument_uncertainty": "0.05 mm",
            "tooling_scatter": "0.05 mm",
        }
        for index, row in enumerate(rows.tolist())
    ]
    body = b"\n".join(map(orjson.dumps, questions))
    began = time.perf_counter()
    # Not compressed, as the client asks for it on one machine too.
    headers = {"Content-Type": "application/jsonl", "Accept-Encoding": "identity"}
    with httpx.stream("POST", f"{base}/v1/identification/batch", content=body, headers=headers, timeout=600) as answer:
        assert answer.status_code == 200
        for _ in answer.iter_raw():
            pass
    return time.perf_counter() - began


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--rounds", type=int, default=15)
    parser.add_argument("--times", type=int, default=100, help="calls in a round")
    parser.add_argument("--boards", type=int, default=100_000)
    parser.add_argument("--processes", type=int, default=min(2, os.cpu_count() or 1), help="of the batch route")
    arguments = parser.parse_args()
    calls(arguments.rounds, arguments.times)
    files(arguments.boards, arguments.processes)


if __name__ == "__main__":
    main()
