"""What is typed at a terminal: ``scalewright-client identify boards.csv -o answers.csv``."""

import argparse
import os
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Final, NoReturn, TextIO

import httpx

from scalewright_client._clients import DEFAULT_BASE_URL, Client
from scalewright_client._errors import ScalewrightError
from scalewright_client._retry import Retry
from scalewright_client._version import __version__
from scalewright_client.command.columns import UnusableColumnsError
from scalewright_client.command.identify import IdentifyJob, identify
from scalewright_client.command.journal import CannotResumeError, Standing
from scalewright_client.command.rows import RowFormat, UnusableFileError

__all__ = ["main", "run"]

ALL_GOOD: Final = 0
BAD_ROWS: Final = 1
UNUSABLE: Final = 2
NO_ANSWER: Final = 3
STOPPED: Final = 130

_SUFFIXES: Final[Mapping[str, str]] = {
    ".csv": "csv",
    ".tsv": "csv",
    ".txt": "csv",
    ".jsonl": "jsonl",
    ".ndjson": "jsonl",
}

_PATIENT: Final = Retry(attempts=4, first_wait=0.5, longest_wait=60.0)
"""A file can wait a minute where a person would not: for a quota, say."""

_EPILOG: Final = """\
Columns are recognised by their names: "id", "fret 1 [mm]", "fret 12 [in]", "instrument_uncertainty [mm]" ...;
cells may be decimals or fractions (12 9/32), or carry their own unit. Lines of JSON are questions as the service
takes them. The same command goes on where it was stopped.

environment: SCALEWRIGHT_URL is the address of the service, SCALEWRIGHT_API_KEY its key.
exit status: 0 all rows answered, 1 some rows are bad and are in the file of bad rows, 2 the files cannot be used,
3 the service does not answer, 130 stopped from the keyboard.
"""


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
    options = _parser(surroundings).parse_args(arguments)
    try:
        job = _job(options)
        with Client(
            options.url,
            api_key=surroundings.get("SCALEWRIGHT_API_KEY"),
            timeout=options.timeout,
            retry=_PATIENT,
            transport=transport,
        ) as client:
            standing = identify(job, client, say, quiet=options.quiet)
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
        say.write(_account(standing, job))
    return BAD_ROWS if standing.bad_rows else ALL_GOOD


def _account(standing: Standing, job: IdentifyJob) -> str:
    """What has become of the rows, in a line."""
    verdicts = "".join(f", {count} {verdict}" for verdict, count in sorted(standing.verdicts.items()))
    bad = f", {standing.bad_rows} bad (see {job.bad_rows})" if standing.bad_rows else ""
    return f"{standing.rows} rows{verdicts}{bad}: {job.output}\n"


def _parser(surroundings: Mapping[str, str]) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="scalewright-client", description="Whole files of boards through a Scalewright service."
    )
    parser.add_argument("--version", action="version", version=f"scalewright-client {__version__}")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    one = commands.add_parser(
        "identify",
        help="which rule and true scale the boards of a file have",
        description="Which rule and true scale the boards of a file have: a row of answers for each row of readings.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add = one.add_argument
    add("source", type=Path, metavar="BOARDS", help="the file of boards, .csv or .jsonl")
    add("-o", "--output", type=Path, required=True, metavar="FILE", help="the file of answers, .csv or .jsonl")
    add("--bad-rows", type=Path, metavar="FILE", help="the file of bad rows (OUTPUT.bad-rows.csv)")
    add(
        "--column",
        action="append",
        default=[],
        metavar="FIELD=NAME",
        help='a column with another name: "fret 12=Dist. to octave", id=SKU',
    )
    add(
        "--set",
        action="append",
        default=[],
        metavar="FIELD=VALUE",
        help="a field that is the same for all rows: instrument_uncertainty=0.05mm",
    )
    add("--unit", choices=("mm", "in"), help="unit of bare numbers whose column names none, and of the answers")
    add("--delimiter", metavar="CHAR", help="what parts the cells (found out)")
    add("--encoding", default="utf-8", metavar="NAME", help="of the file of boards (utf-8)")
    add("--format", choices=("csv", "jsonl"), help="of the file of boards, where its name does not say it")
    add("--output-format", choices=("csv", "jsonl"), help="of the file of answers, where its name does not say it")
    add("--restart", action="store_true", help="start afresh, and replace what is there")
    add("--at-once", type=_count, default=2048, metavar="N", help="rows in one request (2048)")
    add("--url", default=surroundings.get("SCALEWRIGHT_URL", DEFAULT_BASE_URL), help="address of the service")
    add("--timeout", type=float, default=60.0, metavar="SECONDS", help="how long to wait for each part of an answer")
    add("-q", "--quiet", action="store_true", help="say nothing but what is wrong")
    return parser


def _count(text: str) -> int:
    count = int(text)
    if count < 1:
        message = "at least 1"
        raise argparse.ArgumentTypeError(message)
    return count


def _job(options: argparse.Namespace) -> IdentifyJob:
    output: Path = options.output
    bad_rows = options.bad_rows or output.with_name(f"{output.name}.bad-rows.csv")
    paths = [path.resolve() for path in (options.source, output, bad_rows)]
    if len(set(paths)) < len(paths):
        message = "the files of boards, answers and bad rows have to be three different ones"
        raise UnusableFileError(message)
    delimiter = {"\\t": "\t", "tab": "\t"}.get(options.delimiter, options.delimiter)
    if delimiter is not None and len(delimiter) != 1:
        message = "--delimiter is one character, or tab"
        raise UnusableFileError(message)
    return IdentifyJob(
        source=options.source,
        output=output,
        bad_rows=bad_rows,
        row_format=_format(options.format, options.source, "--format"),
        output_format=_format(options.output_format, output, "--output-format"),
        delimiter=delimiter,
        encoding=options.encoding,
        unit=options.unit,
        mapping=_pairs(options.column, "--column"),
        fixed=_pairs(options.set, "--set"),
        at_once=options.at_once,
        restart=options.restart,
    )


def _format(given: str | None, path: Path, option: str) -> RowFormat:
    found = given or _SUFFIXES.get(path.suffix.lower())
    if found is None:
        message = f"{path}: csv or jsonl? Say it with {option}"
        raise UnusableFileError(message)
    return "csv" if found == "csv" else "jsonl"


def _pairs(given: Sequence[str], option: str) -> dict[str, str]:
    pairs: dict[str, str] = {}
    for text in given:
        name, equals, value = text.partition("=")
        if not equals or not name.strip():
            message = f'{option} takes FIELD=..., and not "{text}"'
            raise UnusableFileError(message)
        if name.strip() in pairs:
            message = f"{option} names {name.strip()} twice"
            raise UnusableFileError(message)
        pairs[name.strip()] = value.strip()
    return pairs


def run() -> NoReturn:
    """Do what the command line says, and end the process."""
    status = main()
    if status in {NO_ANSWER, STOPPED}:
        # All that counts is on the disk; a request that hangs must not hold the process until its time is up.
        sys.stderr.flush()
        os._exit(status)
    sys.exit(status)


if __name__ == "__main__":
    run()
