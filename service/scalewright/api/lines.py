"""Lines of JSON: a body read line by line, with bounds on a line and on their number."""

import asyncio
from dataclasses import dataclass, field

from starlette.types import Receive

__all__ = ["Lines", "read_lines"]


_AT_ONCE = 65_536
"""Bytes that are cut into lines before small requests have their turn."""


@dataclass(slots=True)
class Lines:
    """The lines of a body; empty ones do not count."""

    texts: list[bytes | None] = field(default_factory=list)
    """Line by line; None for one that was too long, of which nothing is kept."""
    complete: bool = True
    """Whether all lines are here; False where there were more than are taken."""


class _Cutter:
    """Cuts pieces of a body into lines as they come."""

    def __init__(self, most_lines: int, longest: int) -> None:
        self.lines = Lines()
        self._most, self._longest = most_lines, longest
        self._open: list[bytes] = []
        self._length = 0

    def feed(self, piece: bytes) -> None:
        """Take the next piece."""
        *ended, rest = piece.split(b"\n")
        if ended:
            self._add(ended[0])
            self._close()
            self._keep([text if len(text) <= self._longest else None for text in ended[1:]])
        self._add(rest)

    def finish(self) -> Lines:
        """The lines, the last one too if no line feed ended it."""
        self._close()
        return self.lines

    def _add(self, piece: bytes) -> None:
        self._length += len(piece)
        if self._length <= self._longest:
            self._open.append(piece)
        else:
            self._open.clear()

    def _close(self) -> None:
        self._keep([b"".join(self._open) if self._length <= self._longest else None])
        self._open.clear()
        self._length = 0

    def _keep(self, texts: list[bytes | None]) -> None:
        texts = [text and text.strip() for text in texts]
        texts = [text for text in texts if text != b""]
        room = self._most - len(self.lines.texts)
        self.lines.texts += texts[:room]
        self.lines.complete &= len(texts) <= room


async def read_lines(receive: Receive, most_lines: int, longest: int, *, whole: bool = False) -> Lines | None:
    """Read a whole body as lines.

    It is read to its end before anything is answered: a client that sends all before it reads would
    otherwise wait for us while we wait for it.

    Parameters
    ----------
    receive : callable
        The channel of the body.
    most_lines : int
        How many lines are kept; one more makes the result incomplete.
    longest : int
        How long a line may be. [bytes]
    whole : bool
        Whether the body is no lines but one text, which is then the only one.

    Returns
    -------
    Lines or None
        None where the client has gone.
    """
    cutter = _Cutter(most_lines, longest)
    pieces: list[bytes] = []
    while True:
        message = await receive()
        if message["type"] == "http.disconnect":
            return None
        body = message.get("body", b"")
        if whole:
            pieces.append(body)
        else:
            for first in range(0, len(body), _AT_ONCE):
                cutter.feed(body[first : first + _AT_ONCE])
                await asyncio.sleep(0)
        if not message.get("more_body", False):
            return Lines([b"".join(pieces)]) if whole else cutter.finish()
