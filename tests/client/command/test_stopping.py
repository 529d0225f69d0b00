"""Stopped from the keyboard, the command ends at once."""

import os
import signal
import socket
import subprocess
import sys
import time

import pytest

from tests.client.command.desk import HEADER, board


@pytest.mark.slow
def test_a_service_that_hangs_does_not_hold_the_command(desk):
    """Slow, for it starts an interpreter: a service that never answers is left, and the run can be gone on with."""
    desk.write("boards.csv", HEADER, board(0))
    with socket.create_server(("127.0.0.1", 0)) as silent:
        url = f"http://127.0.0.1:{silent.getsockname()[1]}"
        arguments = ["identify", "boards.csv", "-o", "out.jsonl", "--url", url, "--timeout", "60"]
        with subprocess.Popen(
            [sys.executable, "-m", "scalewright_client.command", *arguments],
            cwd=desk.folder,
            env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)},
            stderr=subprocess.PIPE,
            text=True,
        ) as child:
            silent.settimeout(20.0)
            connection, _ = silent.accept()
            with connection:
                began = time.monotonic()
                child.send_signal(signal.SIGINT)
                _, said = child.communicate(timeout=20)
                assert time.monotonic() - began < 10.0
    assert child.returncode == 130
    assert "Stopped; the same command goes on there." in said
    assert desk.run() == 0
