"""The running service: its command, its greeting, and peers that do not behave."""

import contextlib
import json
import os
import re
import select
import shlex
import socket
import subprocess
import sys
import threading
import time
import urllib.request

import pytest
import uvicorn

from scalewright.__main__ import main
from scalewright.api.app import create_app
from scalewright.api.connections import GuardedConnection
from scalewright.api.settings import Settings

HOST = "127.0.0.1"
PATIENCE = 20.0
"""How long anything here may take on a busy machine. [s]"""


class HastyConnection(GuardedConnection):
    """The same guard with room for less, so that the tests need not send as much."""

    most_head_bytes = 40_000


@pytest.fixture(scope="module")
def port():
    """Serve in a thread; gives the port."""
    config = uvicorn.Config(
        create_app(Settings(log_requests=False, head_seconds=0.2)),
        host=HOST,
        port=0,
        log_level="error",
        ws="none",
        http=HastyConnection,
    )
    server = uvicorn.Server(config)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    deadline = time.monotonic() + PATIENCE
    while not server.started and time.monotonic() < deadline:
        time.sleep(0.01)
    yield server.servers[0].sockets[0].getsockname()[1]
    server.should_exit = True
    thread.join(PATIENCE)


@pytest.fixture
def peer(port):
    """Open a raw connection."""
    with socket.create_connection((HOST, port), timeout=PATIENCE) as connection:
        yield connection


def answer(connection):
    """Read until the service closes; gives status, headers and body of what came."""
    received = b""
    with contextlib.suppress(ConnectionResetError):
        while piece := connection.recv(65536):
            received += piece
    head, _, body = received.partition(b"\r\n\r\n")
    return int(head.split(b" ")[1]), head.lower(), body


def test_a_body_that_is_declared_too_large_is_refused_before_it_is_sent(peer):
    """A client that waits to be told to go on is told at once not to, and the connection ends."""
    peer.sendall(
        b"POST /v1/layout HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
        b"Expect: 100-continue\r\nContent-Length: 104857600\r\n\r\n"
    )
    status, head, body = answer(peer)

    assert status == 413
    assert b"connection: close" in head
    assert json.loads(body)["type"] == "/problems/body-too-large"


def test_a_body_of_untold_size_is_cut_off(peer):
    """64 MiB in chunks are refused when the limit is reached, not when they have all arrived."""
    peer.sendall(
        b"POST /v1/layout HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n"
    )
    chunk = b"10000\r\n" + b"9" * 65_536 + b"\r\n"
    sent = 0
    with contextlib.suppress(ConnectionError):
        for _ in range(1024):
            peer.sendall(chunk)
            sent += 1
    assert sent < 1024
    status, _, body = answer(peer)

    assert status == 413
    assert json.loads(body)["type"] == "/problems/body-too-large"


@pytest.mark.parametrize(
    "request_bytes",
    [
        b"NONSENSE\r\n\r\n",
        b"GET / HTTP/1.1\r\nHost x\r\n\r\n",
        b"POST /v1/layout HTTP/1.1\r\nHost: x\r\nContent-Length: -1\r\n\r\n",
        b"POST /v1/layout HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n",
        b"POST /v1/layout HTTP/1.1\r\nHost: x\r\nContent-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
    ],
    ids=["no HTTP", "no header", "negative length", "two lengths", "length and chunks"],
)
def test_broken_http_is_a_problem_too(peer, request_bytes):
    """Bytes that are no request, or one that says its length in two ways, get 400 and the connection ends."""
    peer.sendall(request_bytes)
    status, head, body = answer(peer)

    assert status == 400
    assert b"application/problem+json" in head
    assert json.loads(body)["type"] == "/problems/malformed-request"


def test_a_head_that_drips_is_given_up(peer):
    """A client that sends its head byte by byte is told 408 after a while, however steadily it drips."""
    began = time.monotonic()
    with contextlib.suppress(ConnectionError):
        for byte in b"GET / HTTP/1.1\r\nX-Drip: " + b"a" * 100:
            peer.sendall(bytes([byte]))
            time.sleep(0.02)
            if time.monotonic() - began > 1.0:
                break
    status, _, body = answer(peer)

    assert status == 408
    assert json.loads(body)["type"] == "/problems/request-timeout"


def test_a_connection_that_says_nothing_is_closed(peer):
    """Silence is answered with the end of the connection."""
    assert peer.recv(1) == b""


def test_a_head_without_end_is_cut_off(peer):
    """A head that grows piece by piece is refused at its limit."""
    with contextlib.suppress(ConnectionError):
        peer.sendall(b"GET / HTTP/1.1\r\n")
        for n in range(20):
            peer.sendall(b"".join(b"X-%d-%d: %s\r\n" % (n, k, b"a" * 100) for k in range(100)))
            # To go on sending into a closed connection would make the kernel drop the answer.
            if select.select([peer], [], [], 0.01)[0]:
                break
    status, _, body = answer(peer)

    assert status == 431
    assert json.loads(body)["type"] == "/problems/headers-too-large"


def test_two_requests_share_a_connection(peer):
    """After an answer the connection stays open for the next question."""
    for _ in range(2):
        peer.sendall(b"GET /livez HTTP/1.1\r\nHost: x\r\n\r\n")
        assert b"200 OK" in peer.recv(65536)


@contextlib.contextmanager
def command(*arguments, **environment):
    """Run the command in a process of its own until its greeting is out; gives the process and its lines."""
    process = subprocess.Popen(
        [sys.executable, "-m", "scalewright", "serve", *arguments],
        env={
            **os.environ,
            "PYTHONPATH": ":".join(sys.path),
            "PYTHONUNBUFFERED": "1",
            "SCALEWRIGHT_LAME_DUCK_SECONDS": "0",
            **environment,
        },
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    try:
        assert process.stdout is not None
        yield process, [process.stdout.readline() for _ in range(4)]
    finally:
        process.terminate()
        process.communicate(timeout=PATIENCE)


@pytest.mark.slow
def test_the_greeting_can_be_pasted():
    """On a free port the greeting names the documentation's address and a curl line; both work (a process starts)."""
    with command("--port", "0") as (_, lines):
        greeting = "".join(lines)
        (page,) = re.findall(r"http://\S+/docs", greeting)
        words = shlex.split(next(line for line in lines if "curl" in line))
        url = next(word for word in words if word.startswith("http"))
        body = words[words.index("-d") + 1].encode()
        headers = dict([words[words.index("-H") + 1].split(": ")])
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        with opener.open(page, timeout=PATIENCE) as documentation:
            assert documentation.status == 200
            assert "server" not in documentation.headers
        with opener.open(urllib.request.Request(url, body, headers), timeout=PATIENCE) as layout:  # noqa: S310  (ours)
            assert json.load(layout)["frets"][0]["from_nut"] == 1.375


@pytest.mark.slow
def test_several_processes_share_the_port():
    """With --workers the same port is served by more than one process (which take a moment to start)."""
    with command("--port", "0", "--workers", "2") as (_, lines):
        (address,) = re.findall(r"(http://\S+)/docs", "".join(lines))
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        with opener.open(f"{address}/livez", timeout=PATIENCE) as alive:
            assert json.load(alive)["status"] == "ok"


def test_a_taken_port_is_said_in_one_sentence(capsys):
    """No traceback: the sentence names the port and the way out."""
    with socket.create_server((HOST, 0)) as taken:
        port = taken.getsockname()[1]
        assert main(["serve", "--port", str(port)]) == 1
    told = capsys.readouterr().err

    assert told.count("\n") == 1
    assert f"port {port} of {HOST} is taken" in told
    assert "--port" in told


def test_a_host_that_is_none_is_said_in_one_sentence(capsys):
    """An address of another machine cannot be listened on."""
    assert main(["serve", "--host", "192.0.2.1", "--port", "0"]) == 1
    assert "192.0.2.1 is no address of this machine" in capsys.readouterr().err


def test_a_setting_that_is_none_is_said_in_one_sentence(capsys, monkeypatch):
    """A slip in the environment ends the command before it begins."""
    monkeypatch.setenv("SCALEWRIGHT_PORT", "eighty")

    assert main(["serve"]) == 2
    assert capsys.readouterr().err == "scalewright: SCALEWRIGHT_PORT has to be a whole number of 0 or more\n"


@pytest.mark.parametrize("arguments", [["serve", "--port", "65536"], ["serve", "--workers", "0"], ["sing"], []])
def test_arguments_that_are_none(arguments, capsys):
    """Slips on the command line are explained by the command's own help."""
    with pytest.raises(SystemExit) as ended:
        main(arguments)

    assert ended.value.code == 2
    assert "usage: scalewright" in capsys.readouterr().err
