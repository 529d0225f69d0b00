"""The workshop: heavy work in processes of its own, so that small requests stay quick beside it."""

import asyncio
import contextlib
import gc
import os
import pickle  # nosec B403  (what comes is from a process of our own)
import signal
import socket
import struct
import sys
from collections.abc import Callable, Generator
from functools import partial
from multiprocessing import get_context
from multiprocessing.process import BaseProcess
from typing import ParamSpec, TypeVar, cast

from starlette.concurrency import run_in_threadpool

__all__ = ["Workshop"]

_P = ParamSpec("_P")
_R = TypeVar("_R")

_NICENESS = 10
"""How far the processes stand back behind the one that answers small requests."""

_NUMBER = struct.Struct("!Q")
"""How numbers go along the line."""

_PATIENCE = 10.0
"""Time that a process has to finish what it does when the workshop closes. [s]"""


class Workshop:
    """A few processes that are started when they are first needed, and again if one of them dies.

    It belongs to the event loop in which it first works.
    """

    def __init__(self, processes: int) -> None:
        self._processes = processes
        self._benches = [_Bench() for _ in range(processes)]
        self._idle: asyncio.Queue[_Bench] = asyncio.Queue()
        for bench in self._benches:
            self._idle.put_nowait(bench)

    @property
    def places(self) -> int:
        """How many pieces of work go on at once."""
        return max(self._processes, 1)

    async def run(self, work: Callable[_P, _R], *arguments: _P.args, **named: _P.kwargs) -> _R:
        """Do a piece of work and wait for it without holding up the event loop.

        Parameters
        ----------
        work : callable
            A function of a module, as another process has to find it. What is large in its result is best
            pickled out of band (PEP 574): such buffers come one by one.
        *arguments, **named
            What it takes.

        Returns
        -------
        object
            What it returns.

        Raises
        ------
        RuntimeError
            When the processes keep dying at this work.
        Exception
            What the work raised.
        """
        if self._processes == 0:
            return await run_in_threadpool(work, *arguments, **named)
        order = pickle.dumps(partial(work, *arguments, **named))
        for _ in range(2):
            bench = await self._idle.get()
            # A process finishes what it has begun, even when nobody waits for it any more.
            doing = asyncio.ensure_future(bench.do(order))
            doing.add_done_callback(partial(_free, self._idle, bench))
            try:
                good, result = await asyncio.shield(doing)
            except ConnectionError:
                continue  # somebody has ended the process, or the system has, for want of memory: with a new one
            if good:
                return cast("_R", result)
            raise cast("Exception", result)
        message = "the processes for heavy work keep dying"
        raise RuntimeError(message)

    async def close(self) -> None:
        """End the processes; what they are at is finished first, but nobody hears of it."""
        for bench in self._benches:
            await bench.close()


def _free(idle: "asyncio.Queue[_Bench]", bench: "_Bench", done: "asyncio.Task[object]") -> None:
    """Let another piece of work have a process."""
    if not done.cancelled():
        done.exception()  # whoever waited for it has been told
    idle.put_nowait(bench)


class _Bench(asyncio.BufferedProtocol):
    """A process and the line to it.

    Down the line goes a pickled order; up come the outcome and its buffers. The event loop itself reads them,
    straight to where they stay: a thread that did would now and then keep it waiting.
    """

    def __init__(self) -> None:
        self._process: BaseProcess | None = None
        self._transport: asyncio.Transport | None = None
        self._outcome: asyncio.Future[list[memoryview]] | None = None
        self._reading = self._read()
        self._frame, self._filled = memoryview(b""), 0

    async def do(self, order: bytes) -> tuple[bool, object]:
        """Have something done.

        Parameters
        ----------
        order : bytes
            A pickled callable.

        Returns
        -------
        tuple of bool and object
            Whether it went well; its result, or the exception that it raised.

        Raises
        ------
        ConnectionError
            When the process has died.
        """
        transport = self._transport or await self._start()
        self._outcome = asyncio.get_running_loop().create_future()
        transport.write(_NUMBER.pack(len(order)) + order)
        first, *buffers = await self._outcome
        # From a process of our own.
        outcome: tuple[bool, object] = pickle.loads(first, buffers=buffers)  # noqa: S301  # nosec B301
        return outcome

    async def _start(self) -> asyncio.Transport:
        """Begin a process afresh; it is not forked, as this one has threads."""
        ours, theirs = socket.socketpair()
        self._process = get_context("spawn").Process(target=_serve, args=(theirs,), daemon=True)
        await run_in_threadpool(self._process.start)
        theirs.close()
        self._reading = self._read()
        self._expect(next(self._reading))
        loop = asyncio.get_running_loop()
        connect = loop.create_connection if ours.family == socket.AF_INET else loop.create_unix_connection
        self._transport, _ = await connect(lambda: self, sock=ours)
        return self._transport

    def _read(self) -> Generator[int, memoryview, None]:
        """Ask for so many bytes, again and again, and make outcomes of them."""
        while True:
            (count,) = _NUMBER.unpack((yield _NUMBER.size))
            sizes = yield count * _NUMBER.size
            frames = []
            for (size,) in _NUMBER.iter_unpack(sizes):
                frames.append((yield size) if size else memoryview(b""))
            if self._outcome is not None and not self._outcome.done():
                self._outcome.set_result(frames)

    def _expect(self, size: int) -> None:
        self._frame, self._filled = memoryview(bytearray(size)), 0

    def get_buffer(self, sizehint: int) -> memoryview:  # noqa: ARG002  (the event loop's interface)
        """Where the next bytes go."""
        return self._frame[self._filled :]

    def buffer_updated(self, nbytes: int) -> None:
        """Take bytes that have come."""
        self._filled += nbytes
        if self._filled < len(self._frame):
            return
        self._expect(self._reading.send(self._frame))
        if self._transport is not None:
            # The loop would go on as long as the process writes; others have their turn first.
            self._transport.pause_reading()
            asyncio.get_running_loop().call_soon(self._read_on)

    def _read_on(self) -> None:
        if self._transport is not None and not self._transport.is_closing():
            self._transport.resume_reading()

    def connection_lost(self, exc: Exception | None) -> None:  # noqa: ARG002  (the event loop's interface)
        """Say so to whoever waits."""
        self._transport = None
        if self._outcome is not None and not self._outcome.done():
            self._outcome.set_exception(ConnectionResetError("the process for heavy work has died"))

    async def close(self) -> None:
        """End the process: it stops when its line does."""
        if self._transport is not None:
            self._transport.abort()
        if self._process is not None:
            await run_in_threadpool(self._process.join, _PATIENCE)


def _serve(line: socket.socket) -> None:
    """Do what comes down the line until it ends."""
    _settle()
    orders = line.makefile("rb")
    with contextlib.suppress(ConnectionError):
        while header := orders.read(_NUMBER.size):
            order = pickle.loads(orders.read(*_NUMBER.unpack(header)))  # noqa: S301  # nosec B301
            try:
                frames = _pickled((True, order()))
            except Exception as error:  # noqa: BLE001 - it is raised where the work was ordered
                frames = _pickled((False, error))
            line.sendall(b"".join(map(_NUMBER.pack, (len(frames), *map(len, frames)))))
            for frame in frames:
                line.sendall(frame)


def _pickled(outcome: tuple[bool, object]) -> list[memoryview]:
    """An outcome, and after it the buffers that were pickled out of band."""
    buffers: list[pickle.PickleBuffer] = []
    text = pickle.dumps(outcome, protocol=5, buffer_callback=buffers.append)
    return [memoryview(text), *(buffer.raw() for buffer in buffers)]


def _settle() -> None:
    """What a new process does first."""
    # An interrupt from the keyboard goes to all processes; this one ends when its line does.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(os, "nice"):
        os.nice(_NICENESS)
    if sys.platform == "linux":
        # Behind a process that is merely nice, a small request may have to wait for the end of its time slice.
        with contextlib.suppress(OSError):  # some sandboxes forbid it
            os.sched_setscheduler(0, os.SCHED_IDLE, os.sched_param(0))
    # What is loaded by now stays; looking it over again and again would cost a tenth of the time.
    gc.freeze()
    gc.set_threshold(100_000, 20, 20)
