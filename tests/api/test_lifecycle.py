"""The life of processes: one that goes says so first, one that dies is replaced, and their numbers add up.

Slow tests, all: each starts the command, and waits for processes to end.
"""

import contextlib
import http.client
import json
import os
import re
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from tests.api.running import HOST, PATIENCE, ask, ask_on, processor_seconds, service


class Load(threading.Thread):
    """A caller that watches readiness, as a load balancer does, and counts what fails."""

    def __init__(self, port, *, keep):
        super().__init__(daemon=True)
        self.port, self.keep = port, keep
        self.done, self.failures, self.gone = 0, [], threading.Event()

    def run(self):
        """Ask until the service is not ready any more."""
        connection = http.client.HTTPConnection(HOST, self.port, timeout=PATIENCE)
        while not self.gone.is_set():
            try:
                status, headers, _ = ask_on(connection, "POST", "/v1/layout")
                if status != 200:
                    self.failures.append(status)
                self.done += 1
            except (OSError, http.client.HTTPException) as error:
                self.failures.append(repr(error))
                return
            if not self.keep or headers["connection"] == "close":
                connection.close()
            time.sleep(0.005)
        connection.close()


@pytest.mark.slow
@pytest.mark.parametrize("workers", ["1", "2"])
def test_a_service_that_goes_fails_no_request(workers):
    """SIGTERM under load: not ready at once, all answered, kept connections are closed politely, and status 0."""
    with service("--workers", workers) as (process, port):
        load = [Load(port, keep=keep) for keep in (True, True, False)]
        for caller in load:
            caller.start()
        time.sleep(0.3)
        process.send_signal(signal.SIGTERM)
        deadline = time.monotonic() + PATIENCE
        while (answer := ask(port, "GET", "/readyz"))[0] == 200 and time.monotonic() < deadline:
            time.sleep(0.05)
        status, headers, text = answer
        assert (status, headers["connection"]) == (503, "close")
        assert json.loads(text)["type"] == "/problems/shutting-down"
        assert ask(port, "GET", "/livez")[0] == 200
        for caller in load:
            caller.gone.set()
        for caller in load:
            caller.join(PATIENCE)
        assert process.wait(PATIENCE) == 0

    assert [caller.failures for caller in load] == [[], [], []]
    assert min(caller.done for caller in load) > 5


@pytest.mark.slow
def test_a_service_at_a_terminal_goes_at_once():
    """Ctrl+C does not wait for anybody."""
    with service(SCALEWRIGHT_LAME_DUCK_SECONDS="60") as (process, _):
        process.send_signal(signal.SIGINT)

        process.wait(PATIENCE)


def workers_of(process):
    """Ids of the processes that serve."""
    children = Path(f"/proc/{process.pid}/task/{process.pid}/children").read_text(encoding="ascii").split()
    found = set()
    for child in children:
        with contextlib.suppress(FileNotFoundError, ProcessLookupError):  # it may end while it is looked at
            if b"spawn_main" in Path(f"/proc/{child}/cmdline").read_bytes():
                found.add(int(child))
    return found


@pytest.mark.slow
def test_a_worker_that_dies_is_replaced_and_the_numbers_add_up():
    """After kill -9 of one of two there are two again, and what each of the three counted is in one sum."""
    with service("--workers", "2") as (process, port):
        for _ in range(40):
            assert ask(port, "POST", "/v1/layout")[0] == 200
        before = workers_of(process)
        os.kill(min(before), signal.SIGKILL)
        began = time.monotonic()
        answered = 0
        while answered < 40 or len(workers_of(process) - before) < 1:
            assert time.monotonic() - began < PATIENCE
            with contextlib.suppress(ConnectionError, http.client.HTTPException):
                answered += ask(port, "POST", "/v1/layout")[0] == 200
        texts = [ask(port, "GET", "/metrics")[2] for _ in range(4)]
        counts = [
            float(count)
            for text in texts
            for count in re.findall(r'_requests_total{.*route="/v1/layout",status="200"} (\S+)$', text, re.MULTILINE)
        ]
        in_flight = re.findall(r"^scalewright_requests_in_flight (\S+)$", texts[-1], re.MULTILINE)

        assert len(workers_of(process)) == 2
        assert len(counts) == 4
        assert len(set(counts)) == 1
        # A worker that is killed between its last answer and the note of it takes that one count with it.
        assert counts[0] in {39.0 + answered, 40.0 + answered}
        assert in_flight == ["1.0"]


@pytest.mark.slow
def test_the_start_is_quick():
    """To the first answer it takes no more than five times the processor time of importing what it stands on."""
    program = "import time, numpy, fastapi, uvicorn; print(time.process_time())"
    imports = [float(subprocess.check_output([sys.executable, "-c", program])) for _ in range(3)]
    with service() as (process, _):
        assert processor_seconds(process) < 5.0 * max(imports)
