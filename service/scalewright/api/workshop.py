"""The workshop: heavy work in processes of its own, so that small requests stay quick beside it."""

import asyncio
import gc
import os
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from functools import partial
from multiprocessing import get_context
from typing import ParamSpec, TypeVar

from starlette.concurrency import run_in_threadpool

__all__ = ["Workshop"]

_P = ParamSpec("_P")
_R = TypeVar("_R")

_NICENESS = 10
"""How far the processes stand back behind the one that answers small requests."""


class Workshop:
    """A few processes that are started when they are first needed, and again if one of them dies."""

    def __init__(self, processes: int) -> None:
        self._processes = processes
        self._pool: ProcessPoolExecutor | None = None

    @property
    def places(self) -> int:
        """How many pieces of work go on at once."""
        return max(self._processes, 1)

    async def run(self, work: Callable[_P, _R], *arguments: _P.args, **named: _P.kwargs) -> _R:
        """Do a piece of work and wait for it without holding up the event loop.

        Parameters
        ----------
        work : callable
            A function of a module, as another process has to find it.
        *arguments, **named
            What it takes.

        Returns
        -------
        object
            What it returns.
        """
        if self._processes == 0:
            return await run_in_threadpool(work, *arguments, **named)
        loop = asyncio.get_running_loop()
        for _ in range(2):
            pool = self._pool or self._open()
            try:
                return await loop.run_in_executor(pool, partial(work, *arguments, **named))
            except BrokenProcessPool:
                # Somebody has ended a process, or the system has, for want of memory: once more with a new one.
                if self._pool is pool:
                    self._pool = None
        message = "the processes for heavy work keep dying"
        raise RuntimeError(message)

    def _open(self) -> ProcessPoolExecutor:
        # A process is begun afresh, not forked: this one has threads.
        self._pool = ProcessPoolExecutor(self._processes, get_context("spawn"), _settle)
        return self._pool

    def close(self) -> None:
        """End the processes; what is going on is finished first."""
        if self._pool is not None:
            self._pool.shutdown(cancel_futures=True)
            self._pool = None


def _settle() -> None:
    """What a new process does first."""
    if hasattr(os, "nice"):
        os.nice(_NICENESS)
    # What is loaded by now stays; looking it over again and again would cost a tenth of the time.
    gc.freeze()
    gc.set_threshold(100_000, 20, 20)
