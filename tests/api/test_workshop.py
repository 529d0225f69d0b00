"""The workshop: work in other processes, results with large buffers, and what goes wrong."""

import asyncio
import os
import time
from pickle import PickleBuffer

import pytest

from scalewright.api.workshop import Workshop

LARGE = 3_000_000
"""More than a line takes at once. [bytes]"""


def with_workshop(run):
    """What a coroutine function makes of a workshop with one process."""

    async def whole():
        workshop = Workshop(1)
        try:
            return await run(workshop)
        finally:
            await workshop.close()

    return asyncio.run(whole())


def die():
    """End this process at once."""
    os._exit(1)


def refuse(words):
    """Raise."""
    raise ConnectionError(words)


def unsendable():
    """Return what cannot be pickled."""
    return lambda: None


def nap():
    """Take a while."""
    time.sleep(0.3)
    return "rested"


class Parcel:
    """Something with large parts, which are pickled out of band."""

    def __init__(self, parts):
        self.parts = parts

    def __reduce__(self):
        return Parcel, ([PickleBuffer(part) for part in self.parts],)


def parcel():
    """Parts of several sizes, an empty one among them."""
    return Parcel([b"", b"x", bytes(range(256)) * (LARGE // 256), b""])


@pytest.mark.slow
def test_a_process_that_dies_is_replaced():
    """Work goes on in a new process after one was killed; work that always kills its process is given up."""

    async def run(workshop):
        first = await workshop.run(os.getpid)
        with pytest.raises(RuntimeError):
            await workshop.run(die)
        return first, await workshop.run(os.getpid)

    first, second = with_workshop(run)
    assert os.getpid() != first != second


@pytest.mark.slow
def test_large_buffers_come_back_whole():
    """Buffers out of band arrive as they were, whatever their size."""

    async def run(workshop):
        return await workshop.run(parcel)

    assert [bytes(part) for part in with_workshop(run).parts] == parcel().parts


@pytest.mark.slow
def test_what_work_raises_is_raised_here_and_the_process_goes_on():
    """An exception comes back, one about connections too, and so does word of a result that cannot be sent."""

    async def run(workshop):
        first = await workshop.run(os.getpid)
        with pytest.raises(ConnectionError, match="not today"):
            await workshop.run(refuse, "not today")
        with pytest.raises(Exception, match="pickle"):
            await workshop.run(unsendable)
        return first, await workshop.run(os.getpid)

    first, second = with_workshop(run)
    assert first == second


@pytest.mark.slow
def test_work_that_nobody_waits_for_any_more_spoils_nothing():
    """After a piece of work is abandoned, the next one gets its own result."""

    async def run(workshop):
        with pytest.raises(TimeoutError):
            await asyncio.wait_for(workshop.run(nap), 0.05)
        return await workshop.run(len, "four")

    assert with_workshop(run) == len("four")


def test_without_processes_work_is_done_in_a_thread():
    """A workshop of no processes works in this one."""
    assert asyncio.run(Workshop(0).run(os.getpid)) == os.getpid()
