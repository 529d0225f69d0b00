"""A bar that says how far a run has come, for whoever watches."""

import time
from typing import TextIO

__all__ = ["Progress"]

_WIDTH = 24
_BETWEEN = 0.2
"""Least time between two drawings. [s]"""


class Progress:
    """A bar on a terminal; silent where nobody watches.

    Parameters
    ----------
    stream : TextIO
        Where it is drawn.
    total : int
        Length of the input. [byte]
    name : str
        What is worked on.
    quiet : bool
        Whether to draw nothing at all.
    """

    def __init__(self, stream: TextIO, total: int, name: str, *, quiet: bool) -> None:
        self._stream = stream
        self._total = max(total, 1)
        self._name = name
        self._silent = quiet or not stream.isatty()
        self._began = time.monotonic()
        self._drawn = 0.0
        self._first: tuple[int, int] | None = None
        self._open = False

    def show(self, place: int, rows: int, bad_rows: int) -> None:
        """Draw the bar.

        Parameters
        ----------
        place : int
            How far the input was read. [byte]
        rows, bad_rows : int
            Rows that are done, and those among them without an answer.
        """
        now = time.monotonic()
        if self._first is None:
            self._first = (place, rows)
        if self._silent or now - self._drawn < _BETWEEN:
            return
        self._drawn = now
        share = min(place / self._total, 1.0)
        full = round(share * _WIDTH)
        gone = max(now - self._began, 1e-9)
        speed = (place - self._first[0]) / gone
        left = f"  {_clock((self._total - place) / speed)} left" if speed > 0.0 else ""
        bad = f"  {bad_rows} bad" if bad_rows else ""
        bar = f"[{'#' * full}{'.' * (_WIDTH - full)}] {share:4.0%}"
        pace = f"{(rows - self._first[1]) / gone:.0f} rows/s"
        self._stream.write(f"\r{self._name}  {bar}  {rows} rows{bad}  {pace}{left}\x1b[K")
        self._stream.flush()
        self._open = True

    def end(self) -> None:
        """Leave the bar as it is and go on below it."""
        if self._open:
            self._stream.write("\n")
            self._stream.flush()
            self._open = False


def _clock(seconds: float) -> str:
    minutes, rest = divmod(round(min(seconds, 359_999.0)), 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02}:{rest:02}" if hours else f"{minutes}:{rest:02}"
