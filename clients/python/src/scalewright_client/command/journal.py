"""How far a run has come, kept beside its output, so that the same command goes on where it was stopped."""

import hashlib
import json
import os
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import cast

from scalewright_client.command.whole import write_whole

__all__ = ["CannotResumeError", "Growing", "Journal", "Output", "Standing"]

_VERSION = 1
_PIECE = 1_048_576


class CannotResumeError(Exception):
    """What an earlier run has left does not belong to this one."""


@dataclass(slots=True)
class Standing:
    """How far a run has come."""

    place: int
    """Where the next row begins in the input. [byte]"""
    line: int
    """Number of the line that begins there."""
    rows: int = 0
    """Rows that are done."""
    bad_rows: int = 0
    """Those among them that have no answer."""
    output: int = 0
    """Length of the output. [byte]"""
    bad_output: int = 0
    """Length of the file of bad rows. [byte]"""
    verdicts: dict[str, int] = field(default_factory=dict)
    """Rows that were answered, by verdict."""
    finished: bool = False
    """Whether all rows are done."""


class Output:
    """A file that grows under a name of its own, and gets its name when it is whole.

    Parameters
    ----------
    path : Path
        The name that it will have.
    """

    def __init__(self, path: Path) -> None:
        self._path = path
        self.part = path.with_name(f"{path.name}.part")
        """The name that it has until then."""

    def grow(self, length: int) -> "Growing":
        """Go on after so many bytes; whatever stands behind them was not accounted for.

        Raises
        ------
        CannotResumeError
            There are not so many.
        """
        # Opened for appending first, which makes the file and harms nothing that it holds.
        with self.part.open("ab") as file:
            if file.tell() < length:
                message = f"{self.part} is shorter than it was; start afresh with --restart"
                raise CannotResumeError(message)
            file.truncate(length)
        return Growing(self.part)

    def publish(self) -> None:
        """Give the file its name."""
        if self.part.exists():
            self.part.replace(self._path)

    def discard(self) -> None:
        """Take away what was begun, and what has the name."""
        self.part.unlink(missing_ok=True)
        self._path.unlink(missing_ok=True)


class Growing:
    """A file that is added to.

    Parameters
    ----------
    path : Path
        The file.
    """

    def __init__(self, path: Path) -> None:
        self._file = path.open("ab")

    def write(self, text: bytes) -> None:
        """Add to the file."""
        self._file.write(text)

    def settle(self) -> int:
        """Bring all that was written to the disk; returns the length. [byte]"""
        self._file.flush()
        os.fsync(self._file.fileno())
        return self._file.tell()

    def close(self) -> None:
        """Close the file."""
        self._file.close()


class Journal:
    """The standing of a run in a small file, replaced as a whole whenever it changes.

    Parameters
    ----------
    path : Path
        The file.
    source : Path
        The input, read anew as far as an earlier run had come, to see that it is still the same.
    order : mapping
        What was asked for; a run goes on only if it asks for the same.
    """

    def __init__(self, path: Path, source: Path, order: dict[str, object]) -> None:
        self._path = path
        self._order = hashlib.sha256(json.dumps(order, sort_keys=True, default=str).encode()).hexdigest()
        self._seen = _Seen(source)

    def standing(self) -> Standing | None:
        """Read how far an earlier run has come.

        Returns
        -------
        Standing or None
            None where there was none.

        Raises
        ------
        CannotResumeError
            It had another input, or other options.
        """
        try:
            left = cast("dict[str, object]", json.loads(self._path.read_bytes()))
            version, order, digest = left.pop("version"), left.pop("order"), left.pop("seen")
            standing = Standing(**left)  # type: ignore[arg-type] # what does not fit is refused below
        except FileNotFoundError:
            return None
        except (ValueError, KeyError, TypeError, AttributeError):
            message = f"{self._path} cannot be read; start afresh with --restart"
            raise CannotResumeError(message) from None
        if version != _VERSION or order != self._order:
            message = f"{self._path} was left by a run with other options; repeat them, or start afresh with --restart"
            raise CannotResumeError(message)
        if digest != self._seen.digest(standing.place):
            message = "the input has changed in the rows that are done already; start afresh with --restart"
            raise CannotResumeError(message)
        return standing

    def keep(self, standing: Standing) -> None:
        """Write how far the run has come."""
        left = {
            "version": _VERSION,
            "order": self._order,
            "seen": self._seen.digest(standing.place),
            **asdict(standing),
        }
        write_whole(self._path, json.dumps(left).encode())

    def discard(self) -> None:
        """Take the journal away."""
        self._path.unlink(missing_ok=True)


class _Seen:
    """A digest of the input up to a place, carried on as the place moves on."""

    def __init__(self, source: Path) -> None:
        self._source = source
        self._place = 0
        self._digest = hashlib.sha256()

    def digest(self, place: int) -> str:
        """Digest of all bytes before a place, which never moves back."""
        with self._source.open("rb") as file:
            file.seek(self._place)
            while self._place < place:
                piece = file.read(min(_PIECE, place - self._place))
                if not piece:
                    break
                self._digest.update(piece)
                self._place += len(piece)
        return f"{self._place}:{self._digest.hexdigest()}"
