"""What can be typed behind ``scalewright-client``, and the job that it makes."""

import argparse
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from scalewright_client._clients import DEFAULT_BASE_URL
from scalewright_client._version import __version__
from scalewright_client.command.rows import RowFormat, UnusableFileError
from scalewright_client.command.running import Job

__all__ = ["job_of", "parser"]

_SUFFIXES: Final[Mapping[str, str]] = {
    ".csv": "csv",
    ".tsv": "csv",
    ".txt": "csv",
    ".jsonl": "jsonl",
    ".ndjson": "jsonl",
    ".pdf": "pdf",
}

_EPILOG: Final = """\
Columns are recognised by their names: "id", "fret 1 [mm]", "fret 12 [in]", "instrument_uncertainty [mm]" ...;
cells may be decimals or fractions (12 9/32), or carry their own unit. Lines of JSON are questions as the service
takes them. The same command goes on where it was stopped.

environment: SCALEWRIGHT_URL is the address of the service, SCALEWRIGHT_API_KEY its key.
exit status: 0 all rows answered, 1 some rows are bad and are in the file of bad rows, 2 the files cannot be used,
3 the service does not answer, 130 stopped from the keyboard.
"""


@dataclass(frozen=True, slots=True)
class _Saying:
    """What a word does, for people, and what it writes."""

    help: str
    """In a line."""
    formats: tuple[str, ...]
    """What it can write; where a folder is written, the first unless the caller says otherwise."""
    output: str
    """What is written."""
    into: str = ""
    """The table in the folder that is written; empty where it is one file."""


_SAYINGS: Final[Mapping[str, _Saying]] = {
    "identify": _Saying(
        "which rule and true scale the boards of a file have", ("csv", "jsonl"), "the file of answers, .csv or .jsonl"
    ),
    "labels": _Saying(
        "labels for the parts of a file",
        ("csv", "jsonl", "pdf"),
        "pages of labels, .pdf, or what stands on them, .csv or .jsonl",
    ),
    "spec-sheets": _Saying(
        "a spec sheet for each part of a file", ("html", "pdf"), "the folder of sheets", into="sheets.csv"
    ),
}


def parser(surroundings: Mapping[str, str]) -> argparse.ArgumentParser:
    """Return what reads the command line.

    Parameters
    ----------
    surroundings : mapping
        The environment.
    """
    whole = argparse.ArgumentParser(
        prog="scalewright-client", description="Whole files of boards through a Scalewright service."
    )
    whole.add_argument("--version", action="version", version=f"scalewright-client {__version__}")
    commands = whole.add_subparsers(required=True, metavar="COMMAND")
    for word, saying in _SAYINGS.items():
        one = commands.add_parser(
            word,
            help=saying.help,
            description=f"{saying.help[:1].upper()}{saying.help[1:]}: an answer for each row.",
            epilog=_EPILOG,
            formatter_class=argparse.RawDescriptionHelpFormatter,
        )
        one.set_defaults(word=word)
        _add_options(one, saying, surroundings)
    return whole


def _add_options(one: argparse.ArgumentParser, saying: _Saying, surroundings: Mapping[str, str]) -> None:
    add = one.add_argument
    add("source", type=Path, metavar="FILE", help="the file of rows, .csv or .jsonl")
    add("-o", "--output", type=Path, required=True, metavar="OUTPUT", help=saying.output)
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
    add("--encoding", default="utf-8", metavar="NAME", help="of the file of rows (utf-8)")
    add("--format", choices=("csv", "jsonl"), help="of the file of rows, where its name does not say it")
    add("--output-format", choices=saying.formats, help="what to write, where the name does not say it")
    add("--restart", action="store_true", help="start afresh, and replace what is there")
    add("--at-once", type=_count, metavar="N", help="rows in one request, or on their way at once")
    add("--url", default=surroundings.get("SCALEWRIGHT_URL", DEFAULT_BASE_URL), help="address of the service")
    add("--timeout", type=float, default=60.0, metavar="SECONDS", help="how long to wait for each part of an answer")
    add("-q", "--quiet", action="store_true", help="say nothing but what is wrong")


def _count(text: str) -> int:
    count = int(text)
    if count < 1:
        message = "at least 1"
        raise argparse.ArgumentTypeError(message)
    return count


def job_of(options: argparse.Namespace) -> Job:
    """Return the job that the options make.

    Raises
    ------
    UnusableFileError
        Options that do not go together.
    """
    saying = _SAYINGS[options.word]
    output: Path = options.output / saying.into if saying.into else options.output
    bad_rows = options.bad_rows or output.with_name(f"{output.name}.bad-rows.csv")
    paths = [path.resolve() for path in (options.source, output, bad_rows)]
    if len(set(paths)) < len(paths):
        message = "the files of rows, answers and bad rows have to be three different ones"
        raise UnusableFileError(message)
    delimiter = {"\\t": "\t", "tab": "\t"}.get(options.delimiter, options.delimiter)
    if delimiter is not None and len(delimiter) != 1:
        message = "--delimiter is one character, or tab"
        raise UnusableFileError(message)
    return Job(
        source=options.source,
        output=output,
        bad_rows=bad_rows,
        row_format=_row_format(options.format, options.source),
        output_format=_output_format(options.output_format, output, saying),
        delimiter=delimiter,
        encoding=options.encoding,
        unit=options.unit,
        mapping=_pairs(options.column, "--column"),
        fixed=_pairs(options.set, "--set"),
        at_once=options.at_once,
        restart=options.restart,
    )


def _row_format(given: str | None, path: Path) -> RowFormat:
    return "csv" if _format(given, path, ("csv", "jsonl"), "--format") == "csv" else "jsonl"


def _output_format(given: str | None, path: Path, saying: _Saying) -> str:
    if saying.into:
        return given or saying.formats[0]
    return _format(given, path, saying.formats, "--output-format")


def _format(given: str | None, path: Path, known: Sequence[str], option: str) -> str:
    found = given or _SUFFIXES.get(path.suffix.lower())
    if found is None or found not in known:
        message = f"{path}: {' or '.join(known)}? Say it with {option}"
        raise UnusableFileError(message)
    return found


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
