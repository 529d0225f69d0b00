"""Lines of JSON: a body read line by line, with bounds on a line and on their number."""

from dataclasses import dataclass, field

from starlette.types import Receive

__all__ = ["Lines", "read_lines"]


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
        first = 0
        while self.lines.complete:
            end = piece.find(b"\n", first)
            if end < 0:
                break
            self._add(piece[first:end])
            self._close()
            first = end + 1
        if self.lines.complete:
            self._add(piece[first:])

    def finish(self) -> Lines:
        """The lines, the last one too if no line feed ended it."""
        if self.lines.complete:
            self._close()
        return self.lines

    def _add(self, piece: bytes) -> None:
        self._length += len(piece)
        if self._length <= self._longest:
            self._open.append(piece)
        else:
            self._open.clear()

    def _close(self) -> None:
        long = self._length > self._longest
        text = b"".join(self._open).strip()
        self._open.clear()
        self._length = 0
        if not long and not text:
            return
        if len(self.lines.texts) >= self._most:
            self.lines.complete = False
            return
        self.lines.texts.append(None if long else text)


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
        if whole:
            pieces.append(message.get("body", b""))
        else:
            cutter.feed(message.get("body", b""))
        if not message.get("more_body", False):
            return Lines([b"".join(pieces)]) if whole else cutter.finish()
