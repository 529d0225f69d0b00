"""Abuse: what is sent to hurt is refused, and costs next to nothing.

The service runs in a process of its own, and the kernel says what each request took of it. Slow, as a
process starts.
"""

import asyncio
import contextlib
import http.client
import json
import socket
import statistics
import time

import pytest

from tests.api.running import HOST, PATIENCE, ask_on, forget_peak, memory, processor_seconds, service

MOST_PROCESSOR = 0.05
"""What one such request may take. [s]"""
MOST_MEMORY = 50.0
"""What one such request may take. [MB]"""
GIGABYTE = 1_000_000_000
BAD_READINGS = {"from_nut": ["1 1/2 in" * 4] * 900}


@pytest.fixture(scope="module")
def running():
    """Run the service with patience for a second; gives process and port."""
    with service(SCALEWRIGHT_LOG_REQUESTS="off", SCALEWRIGHT_HEAD_SECONDS="1", SCALEWRIGHT_BODY_SECONDS="1") as found:
        _, port = found
        for path in ("/v1/layout", "/v1/identification", "/v1/compensation"):  # what is loaded at first use is loaded
            raw(port, post(b"{}", path))
        yield found


def post(body, path="/v1/layout", headers=b""):
    """Return the bytes of a request."""
    about = b"POST %b HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: %d\r\n%b\r\n"
    return about % (path.encode(), len(body), headers) + body


def get(path=b"/livez", headers=b""):
    """Return the bytes of a request."""
    return b"GET %b HTTP/1.1\r\nHost: x\r\n%b\r\n" % (path, headers)


def raw(port, request):
    """Send bytes, and read the answer; gives its status, head and body."""
    with socket.create_connection((HOST, port), timeout=PATIENCE) as peer:
        with contextlib.suppress(ConnectionError):
            peer.sendall(request)
        received = b""
        with contextlib.suppress(ConnectionError):
            while piece := peer.recv(65536):
                received += piece
                head, _, body = received.partition(b"\r\n\r\n")
                length = head.lower().partition(b"content-length: ")[2].partition(b"\r\n")[0]
                if (length and len(body) >= int(length)) or body.endswith(b"\r\n0\r\n\r\n"):
                    break
    head, _, body = received.partition(b"\r\n\r\n")
    return int(head.split(b" ")[1]), head, body


ATTACKS: dict[str, tuple[bytes, set[int]]] = {
    "nesting that fits": (post(b"[" * 32_000 + b"]" * 32_000), {400}),
    "nesting of objects": (post(b'{"a":' * 10_000 + b"1" + b"}" * 10_000), {400}),
    "nesting of 100,000": (post(b"[" * 100_000 + b"]" * 100_000), {413}),
    "a name twice": (post(b'{"scale": 650, "scale": 651, "rule": "equal", "frets": 1}'), {400}),
    "a name 4,000 times": (post(b"{" + b'"scale":1,' * 4_000 + b'"frets":1}'), {400, 422}),
    "invalid UTF-8": (post(b'{"scale": "\xff\xfe\x80", "rule": "equal", "frets": 1}'), {400}),
    "half a surrogate": (post(b'{"scale": "\\ud800", "rule": "equal", "frets": 1}'), {400, 422}),
    "UTF-16": (post('{"scale": 650}'.encode("utf-16")), {400}),
    "a byte order mark": (post(b"\xef\xbb\xbf{}"), {400}),
    "a megabyte of digits": (post(b'{"scale": ' + b"9" * 1_000_000 + b"}"), {413}),
    "all the digits that fit": (post(b'{"scale": ' + b"9" * 65_000 + b"}"), {400, 422}),
    "digits behind the point": (post(b'{"scale": 0.' + b"9" * 65_000 + b', "rule": "equal", "frets": 1}'), {200}),
    "a huge exponent": (post(b'{"scale": 1e999999999, "rule": "equal", "frets": 1}'), {400, 422}),
    "a huge exponent in a text": (post(b'{"scale": "1e9999999 in", "rule": "equal", "frets": 1}'), {422}),
    "NaN": (post(b'{"scale": NaN, "rule": "equal", "frets": 1}'), {400}),
    "Infinity": (post(b'{"scale": -Infinity, "rule": "equal", "frets": 1}'), {400}),
    "an unknown name 5,000 times": (post(json.dumps({f"k{n}": n for n in range(5_000)}).encode()), {413, 422}),
    "names that differ in a digit": (post(json.dumps({f"{n:06}": 0 for n in range(4_500)}).encode()), {422}),
    "a bad text 900 times": (post(json.dumps(BAD_READINGS).encode(), "/v1/identification"), {422}),
    "a fraction without end": (post(json.dumps({"scale": "1 " * 30_000 + "in"}).encode()), {422}),
    "spaces without end": (post(json.dumps({"scale": " " * 60_000 + "x"}).encode()), {422}),
    "an Accept header of stars": (get(b"/v1/rules", b"Accept: " + b"*/*;q=0.1," * 1_500 + b"a/b\r\n"), {200, 406}),
    "tags without end": (get(b"/v1/rules", b"If-None-Match: " + b'W/"x",' * 2_500 + b"\r\n"), {200}),
    "parameters without end": (get(b"/v1/layout?" + b"a=1&" * 2_000), {400}),
    "an address of percent signs": (get(b"/v1/layout?scale=" + b"%25" * 2_000), {422}),
    "a thousand headers": (get(b"/livez", b"".join(b"X-%d: 1\r\n" % n for n in range(1_000))), {200, 431}),
    "a header of 100 kB": (get(b"/livez", b"X: " + b"a" * 100_000 + b"\r\n"), {431}),
    "gzip": (post(b"\x1f\x8b" + b"\0" * 60_000, headers=b"Content-Encoding: gzip\r\n"), {415}),
    "out of the assets": (get(b"/docs-assets/..%2f..%2f..%2f..%2fetc/passwd"), {404}),
    "out of the problems": (get(b"/problems/..%2f..%2fetc%2fpasswd"), {404}),
    "a NUL in the address": (get(b"/v1/layout%00"), {404}),
    "length and chunks": (post(b"{}", headers=b"Transfer-Encoding: chunked\r\n"), {400}),
}  # fmt: skip


@pytest.mark.slow
@pytest.mark.parametrize("name", ATTACKS)
def test_an_attack_is_refused_and_costs_little(running, name):
    """The status is the client's fault and never the service's, and neither time nor memory is lost."""
    process, port = running
    request, statuses = ATTACKS[name]
    forget_peak(process)
    before, began = memory(process, "VmRSS"), processor_seconds(process)
    status, _, body = raw(port, request)

    assert status in statuses, body[:500]
    assert processor_seconds(process) - began < MOST_PROCESSOR
    assert memory(process, "VmHWM") - before < MOST_MEMORY
    assert len(body) < 50_000


@pytest.mark.slow
def test_a_gigabyte_in_chunks_is_refused_with_flat_memory(running):
    """An upload that never says how long it is ends at the limit, long before the gigabyte."""
    process, port = running
    chunk = b"100000\r\n" + b"9" * 1_048_576 + b"\r\n"
    sent = 0
    forget_peak(process)
    before, began = memory(process, "VmRSS"), processor_seconds(process)
    with socket.create_connection((HOST, port), timeout=PATIENCE) as peer, contextlib.suppress(ConnectionError):
        peer.sendall(b"POST /v1/layout HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n")
        peer.sendall(b"Transfer-Encoding: chunked\r\n\r\n")
        while sent < GIGABYTE:
            peer.sendall(chunk)
            sent += len(chunk)

    assert sent < GIGABYTE / 10
    assert processor_seconds(process) - began < MOST_PROCESSOR
    assert memory(process, "VmHWM") - before < MOST_MEMORY


@pytest.mark.slow
def test_a_line_without_end_takes_no_memory(running):
    """A batch whose one line never ends is read past and not kept; its answer says so."""
    process, port = running
    head = b"POST /v1/identification/batch HTTP/1.1\r\nHost: x\r\nContent-Type: application/jsonl\r\n"
    forget_peak(process)
    before = memory(process, "VmRSS")
    status, _, body = raw(port, head + b"Content-Length: 60000000\r\n\r\n" + b"9" * 60_000_000)

    assert status == 200
    assert b"/problems/line-too-long" in body
    assert memory(process, "VmHWM") - before < MOST_MEMORY


@pytest.mark.parametrize(
    "request_bytes",
    [get(b"/livez", b"X-Request-ID: a\r\nSet-Cookie: b=1\r\n"), get(b"/problems/a%0d%0aSet-Cookie:%20b=1"),
     get(b"/livez", b"X-Request-ID: a\rSet-Cookie: b=1\r\n"), get(b"/v1/rules?format=a%0d%0aSet-Cookie:b")],
)  # fmt: skip
@pytest.mark.slow
def test_no_header_can_be_injected(running, request_bytes):
    """Nothing of a request becomes a header of its answer."""
    _, head, _ = raw(running[1], request_bytes)

    assert b"set-cookie" not in head.lower()


def quantile(port, count):
    """Ask so often, one after another; gives the 99th percentile of the times. [s]"""
    times = []
    with contextlib.closing(http.client.HTTPConnection(HOST, port, timeout=PATIENCE)) as connection:
        for _ in range(count):
            began = time.perf_counter()
            assert ask_on(connection, "POST", "/v1/layout")[0] == 200
            times.append(time.perf_counter() - began)
    return statistics.quantiles(times, n=100)[98]


async def drip(port, count, ended):
    """Hold connections that send a byte now and then, half of them of a head and half of a body."""

    async def one(number):
        while not ended.is_set():
            reader, writer = await asyncio.open_connection(HOST, port)
            start = get()[:-2] if number % 2 else post(b"x" * 1_000)[:-990]
            writer.write(start)
            with contextlib.suppress(ConnectionError):
                while not ended.is_set() and not reader.at_eof() and not writer.is_closing():
                    writer.write(b"a")
                    await writer.drain()
                    with contextlib.suppress(TimeoutError):
                        await asyncio.wait_for(reader.read(1_000), 0.4)
            writer.close()

    await asyncio.gather(*(one(number) for number in range(count)))


async def attacked_quantile(port):
    """Measure the 99th percentile beside 200 connections that drip. [s]"""
    ended = asyncio.Event()
    dripping = asyncio.ensure_future(drip(port, 200, ended))
    await asyncio.sleep(0.3)
    try:
        return await asyncio.to_thread(quantile, port, 200)
    finally:
        ended.set()
        await dripping


@pytest.mark.slow
def test_slow_clients_do_not_slow_the_others(running):
    """Beside 200 connections that drip, the 99th percentile of normal requests is below three times what it was.

    The machine may be busy with other things, now with more and now with less: one pair of a few has to hold.
    """
    _, port = running

    assert any(asyncio.run(attacked_quantile(port)) < 3.0 * quiet for quiet in (quantile(port, 200) for _ in range(6)))
