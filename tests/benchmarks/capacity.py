"""What one processor of a service does, for the page on capacity in service/deploy.

Run ``python3 -m tests --benchmarks capacity``. The command runs as it would in production, with its log and its
metrics; a few callers keep it busy over kept-alive connections, and a batch of boards follows. Divided is by the
time that the service's processes ran, by the kernel's account, so that neither the callers nor whatever else the
machine does is counted.
"""

import argparse
import http.client
import json
import threading
from pathlib import Path
from typing import Any

from scalewright.lutherie.layout import lay_out
from scalewright.lutherie.spacing import Equal
from tests.api.running import HOST, PATIENCE, memory, processor_seconds, service

FRETS = 22
QUESTIONS: dict[str, tuple[str, str, dict[str, Any] | None]] = {
    "layout, GET": ("GET", f"/v1/layout?scale=650mm&rule=equal&frets={FRETS}", None),
    "layout, POST": ("POST", "/v1/layout", {"scale": "24 3/4 in", "rule": "eighteenth", "frets": FRETS, "unit": "in"}),
    "identification": ("POST", "/v1/identification", {"instrument_uncertainty": 0.05, "from_nut": []}),
}
CALLERS = 4


def board() -> list[float]:
    """Readings of a board, exact ones: what they are makes no difference to the time."""
    return [fret.from_nut for fret in lay_out(Equal(12), 650.0, FRETS).frets]


def ask_often(port: int, method: str, path: str, body: bytes | None, count: int) -> None:
    """Ask on one connection."""
    connection = http.client.HTTPConnection(HOST, port, timeout=PATIENCE)
    for _ in range(count):
        connection.request(method, path, body, {"Content-Type": "application/json"} if body else {})
        answer = connection.getresponse()
        content = answer.read()
        assert answer.status == 200, content[:300]
    connection.close()


def send_batch(port: int, lines: list[str]) -> None:
    """Send a batch, and see that all of it came back."""
    connection = http.client.HTTPConnection(HOST, port, timeout=10.0 * PATIENCE)
    connection.request("POST", "/v1/identification/batch", "\n".join(lines), {"Content-Type": "application/jsonl"})
    content = connection.getresponse().read()
    assert b'"complete":true' in content[-300:]
    connection.close()


class Family:
    """A process with the processes that it has started."""

    def __init__(self, pid: int) -> None:
        self.pid = pid

    def members(self) -> list["Family"]:
        """The process and its children, whichever of its threads began them."""
        threads = Path(f"/proc/{self.pid}/task").glob("*/children")
        children = [child for thread in threads for child in thread.read_text(encoding="ascii").split()]
        return [self, *(Family(int(child)) for child in children)]

    def seconds(self) -> float:
        """Processor time of all. [s]"""
        return sum(float(processor_seconds(member)) for member in self.members())


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--requests", type=int, default=2_000, help="of each kind")
    parser.add_argument("--boards", type=int, default=20_000, help="in a batch")
    arguments = parser.parse_args()
    readings = board()
    with service() as (process, port):
        family = Family(process.pid)
        print(f"at rest                    {memory(process, 'VmRSS'):7.0f} MB")
        for name, (method, path, question) in QUESTIONS.items():
            if question is not None and "from_nut" in question:
                question["from_nut"] = readings
            body = None if question is None else json.dumps(question).encode()
            ask_often(port, method, path, body, 20)
            began = family.seconds()
            share = arguments.requests // CALLERS
            callers = [
                threading.Thread(target=ask_often, args=(port, method, path, body, share)) for _ in range(CALLERS)
            ]
            for caller in callers:
                caller.start()
            for caller in callers:
                caller.join()
            print(f"{name:20s} {share * CALLERS / (family.seconds() - began):13,.0f} requests a processor second")
        line = json.dumps({"instrument_uncertainty": 0.05, "from_nut": readings})
        send_batch(port, [line] * 100)  # starts the process that answers batches
        began = family.seconds()
        send_batch(port, [line] * arguments.boards)
        print(f"{'batch':20s} {arguments.boards / (family.seconds() - began):13,.0f} boards a processor second")
        for member in family.members():
            print(f"afterwards, process {member.pid:6d} {memory(member, 'VmRSS'):7.0f} MB")


if __name__ == "__main__":
    main()
