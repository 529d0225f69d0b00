"""What is typed at a terminal: ``scalewright-client identify boards.csv -o answers.csv``."""

import os
import sys
from collections.abc import Mapping, Sequence
from typing import Final, NoReturn, TextIO

import httpx

from scalewright_client._clients import Client
from scalewright_client._errors import ScalewrightError
from scalewright_client._retry import Retry
from scalewright_client.command.columns import UnusableColumnsError
from scalewright_client.command.identify import Identify
from scalewright_client.command.journal import CannotResumeError, Standing
from scalewright_client.command.labels import Labels
from scalewright_client.command.options import job_of, parser
from scalewright_client.command.rows import UnusableFileError
from scalewright_client.command.running import Job, Word, run_word
from scalewright_client.command.spec_sheets import SpecSheets

__all__ = ["main", "run"]

ALL_GOOD: Final = 0
BAD_ROWS: Final = 1
UNUSABLE: Final = 2
NO_ANSWER: Final = 3
STOPPED: Final = 130

_WORDS: Final[Mapping[str, type[Word]]] = {word.name: word for word in (Identify, Labels, SpecSheets)}

_PATIENT: Final = Retry(attempts=4, first_wait=0.5, longest_wait=60.0)
"""A file can wait a minute where a person would not: for a quota, say."""


_TURN: Final = 0.0002
"""How long one thread may keep the interpreter: those that read answers have little to do at each turn, and would else
wait longest for it. [s]"""


def main(
    arguments: Sequence[str] | None = None,
    *,
    transport: httpx.BaseTransport | None = None,
    terminal: TextIO | None = None,
    environment: Mapping[str, str] | None = None,
) -> int:
    """Do what the arguments say.

    Parameters
    ----------
    arguments : sequence of str, optional
        Those of the command line unless given.
    transport : httpx.BaseTransport, optional
        Takes the place of the network, for tests.
    terminal : TextIO, optional
        Where messages go; standard error unless given.
    environment : mapping, optional
        That of the process unless given.

    Returns
    -------
    int
        Exit status.
    """
    say = sys.stderr if terminal is None else terminal
    surroundings = os.environ if environment is None else environment
    options = parser(surroundings).parse_args(arguments)
    try:
        word = _WORDS[options.word](job_of(options))
        with Client(
            options.url,
            api_key=surroundings.get("SCALEWRIGHT_API_KEY"),
            timeout=options.timeout,
            retry=_PATIENT,
            transport=transport,
        ) as client:
            standing = run_word(word, client, say, quiet=options.quiet)
    except (UnusableFileError, UnusableColumnsError, CannotResumeError, ValueError) as error:
        say.write(f"{error}\n")
        return UNUSABLE
    except OSError as error:
        say.write(f"{error.filename or options.source}: {error.strerror or error}\n")
        return UNUSABLE
    except ScalewrightError as error:
        say.write(f"{error}\nWhat was done is kept; the same command goes on there.\n")
        return NO_ANSWER
    except KeyboardInterrupt:
        say.write("Stopped; the same command goes on there.\n")
        return STOPPED
    if not options.quiet:
        say.write(_account(standing, word.job))
    return BAD_ROWS if standing.bad_rows else ALL_GOOD


def _account(standing: Standing, job: Job) -> str:
    """What has become of the rows, in a line."""
    verdicts = "".join(f", {count} {verdict}" for verdict, count in sorted(standing.verdicts.items()))
    bad = f", {standing.bad_rows} bad (see {job.bad_rows})" if standing.bad_rows else ""
    return f"{standing.rows} rows{verdicts}{bad}: {job.output}\n"


def run() -> NoReturn:
    """Do what the command line says, and end the process."""
    sys.setswitchinterval(_TURN)
    status = main()
    if status in {NO_ANSWER, STOPPED}:
        # All that counts is on the disk; a request that hangs must not hold the process until its time is up.
        sys.stderr.flush()
        os._exit(status)
    sys.exit(status)


if __name__ == "__main__":
    run()
