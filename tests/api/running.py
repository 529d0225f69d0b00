"""A running service for tests: the command in a process of its own, asked over HTTP, its costs read from the kernel."""

import contextlib
import http.client
import json
import os
import re
import signal
import subprocess
import sys
from pathlib import Path

HOST = "127.0.0.1"
PATIENCE = 20.0
"""How long anything here may take on a busy machine. [s]"""

LAME_DUCK = 0.5
"""How long a process that goes still answers, in these tests. [s]"""

QUESTION = json.dumps({"scale": 650, "rule": "equal", "frets": 12})


@contextlib.contextmanager
def service(*arguments, **environment):
    """Run the command until it is ready; gives the process and its port, and ends it."""
    process = subprocess.Popen(
        [sys.executable, "-m", "scalewright", "serve", "--port", "0", *arguments],
        env={
            **os.environ,
            "PYTHONPATH": ":".join(sys.path),
            "PYTHONUNBUFFERED": "1",
            "SCALEWRIGHT_LAME_DUCK_SECONDS": str(LAME_DUCK),
            **environment,
        },
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    )
    try:
        assert process.stdout is not None
        (port,) = re.findall(r":(\d+),", process.stdout.readline())
        assert ask(int(port), "GET", "/readyz")[0] == 200  # a first question waits for the service to come up
        yield process, int(port)
    finally:
        if process.poll() is None:
            process.send_signal(signal.SIGINT)  # kill -9 would leave its workers behind
        process.communicate(timeout=PATIENCE)


def ask(port, method, path):
    """Ask once; gives status, headers and text."""
    with contextlib.closing(http.client.HTTPConnection(HOST, port, timeout=PATIENCE)) as connection:
        return ask_on(connection, method, path)


def ask_on(connection, method, path):
    """Ask on a connection that may be kept."""
    body = QUESTION if method == "POST" else None
    connection.request(method, path, body, {"Content-Type": "application/json"} if body else {})
    answer = connection.getresponse()
    return answer.status, answer.headers, answer.read().decode()


def processor_seconds(process):
    """Time that all threads of a process have run, from the kernel's own account. [s]"""
    threads = Path(f"/proc/{process.pid}/task").glob("*/schedstat")
    return sum(int(thread.read_text(encoding="ascii").split()[0]) for thread in threads) * 1e-9


def forget_peak(process):
    """Let the kernel measure the peak of the memory from now on."""
    Path(f"/proc/{process.pid}/clear_refs").write_text("5", encoding="ascii")


def memory(process, name):
    """Memory in use (VmRSS) or its peak (VmHWM). [MB]"""
    status = Path(f"/proc/{process.pid}/status").read_text(encoding="ascii")
    (kilobytes,) = re.findall(rf"^{name}:\s+(\d+) kB$", status, re.MULTILINE)
    return int(kilobytes) / 1000.0
