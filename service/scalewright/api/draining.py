"""The end of a process: it says that it is not ready, serves on for a while, and only then goes."""

import signal
import time
from types import FrameType
from typing import Any

from prometheus_client.multiprocess import mark_process_dead
from uvicorn import Config, Server
from uvicorn.config import STARTUP_FAILURE
from uvicorn.supervisors.multiprocess import Multiprocess, Process

__all__ = ["DrainingServer", "Workers"]

_QUIET_SECONDS = 30.0
"""With no request for so long, not even one for its readiness, nobody is there who would have to be told."""


class DrainingServer(Server):
    """A server that SIGTERM turns into a lame duck first.

    From then on it is not ready, but answers everything, so that whoever watches its readiness can take new
    requests elsewhere; connections that are kept alive end with their next answer. Ctrl+C, and a second
    SIGTERM, end it at once.
    """

    def __init__(self, config: Config, lame_duck_seconds: float) -> None:
        super().__init__(config)
        self._lame_duck_seconds = lame_duck_seconds
        self._leave_at: float | None = None
        self._answered = 0
        self._last_seen = 0.0

    def handle_exit(self, sig: int, frame: FrameType | None) -> None:
        """Begin to leave."""
        quiet = time.monotonic() - self._last_seen > _QUIET_SECONDS
        if sig != signal.SIGTERM or self._leave_at is not None or quiet or not self._lame_duck_seconds:
            super().handle_exit(sig, frame)
            return
        self._leave_at = time.monotonic() + self._lame_duck_seconds
        self.config.loaded_app.state.lifecycle.draining = True

    async def on_tick(self, counter: int) -> bool:
        """Look, ten times a second, whether it is time to go."""
        if self.server_state.total_requests != self._answered:
            self._answered = self.server_state.total_requests
            self._last_seen = time.monotonic()
        if self._leave_at is not None and time.monotonic() >= self._leave_at:
            self.should_exit = True
        return await super().on_tick(counter)


class _Worker(Process):
    """A process among several, with a server that drains."""

    def __init__(self, config: Config, sockets: list[Any], lame_duck_seconds: float) -> None:
        super().__init__(config, sockets)
        self._lame_duck_seconds = lame_duck_seconds

    @property
    def server(self) -> Server:
        if self._server is None:
            self._server = DrainingServer(self.config, self._lame_duck_seconds)
        return self._server


class Workers(Multiprocess):
    """Several processes on one socket; one that dies or hangs is replaced."""

    def __init__(self, config: Config, sockets: list[Any], lame_duck_seconds: float) -> None:
        super().__init__(config, sockets)
        self._lame_duck_seconds = lame_duck_seconds

    def init_processes(self) -> None:
        """Start them."""
        self.processes = [self._started() for _ in range(self.processes_num)]

    def restart_all(self) -> None:
        """Replace each process by a new one that is ready before the old one goes (SIGHUP)."""
        for index, old in enumerate(self.processes):
            new = self._started()
            if not new.wait_until_ready(self.config.timeout_worker_healthcheck, self.should_exit):
                self._end(new)
                return
            self.processes[index] = new
            old.terminate()
            old.join()
            mark_process_dead(old.pid)  # type: ignore[no-untyped-call]  # the library leaves it untyped

    def keep_subprocess_alive(self) -> None:
        """Replace what has died or hangs; give up where none could start."""
        for index, process in enumerate(self.processes):
            if self.should_exit.is_set() or process.is_alive(timeout=self.config.timeout_worker_healthcheck):
                continue
            self._end(process)
            if process.exitcode == STARTUP_FAILURE:
                self.should_exit.set()
            else:
                self.processes[index] = self._started()

    def _started(self) -> _Worker:
        worker = _Worker(self.config, self.sockets, self._lame_duck_seconds)
        worker.start()
        return worker

    @staticmethod
    def _end(process: Process) -> None:
        process.kill()
        process.join()
        # What it had in work is in work no more; what it counted stays counted.
        mark_process_dead(process.pid)  # type: ignore[no-untyped-call]  # the same
