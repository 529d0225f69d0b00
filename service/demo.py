"""The main job, shown on an invented board: readings in, true scale, frets and saddles out.

Starts the service on a free loopback port, asks it over HTTP with the project's own client, and
ends it again.
"""

import contextlib
import os
import signal
import socket
import subprocess
import sys
import tempfile
import textwrap
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from types import FrameType
from typing import Final, NoReturn

import httpx

from scalewright_client import (
    Client,
    Compensation,
    Estimate,
    Heights,
    Identification,
    Layout,
    Rule,
    ScalewrightError,
    StringRequest,
)

__all__ = ["main"]

WIDTH: Final = 80
MM_PER_INCH: Final = 25.4
START_LIMIT: Final = 30.0
"""How long the service may take to get ready. [s]"""
STOP_LIMIT: Final = 3.0
"""How long the service may take to end by itself; nobody else is talking to it. [s]"""

LABEL_INCHES: Final = 24.75
FRETS: Final = 22
CALIPER_UNCERTAINTY: Final = 0.05
"""Standard uncertainty of one reading. [mm]"""
READINGS: Final[dict[int, float]] = {
    1: 34.95,
    2: 67.85,
    3: 99.10,
    5: 156.25,
    7: 207.35,
    9: 252.80,
    12: 312.00,
    15: 361.95,
    17: 390.80,
    19: 416.40,
    22: 449.90,
}
"""Fret to distance from the nut: a rule-of-18 board of 24.75 in with invented errors up to 0.06. [mm]"""

HEIGHTS: Final[Heights] = {"nut": 1.0, "saddle_above_nut": 4.0}
"""3 mm over the fret tops at mid-string. [mm]"""
OPTIMISED_FRETS: Final = 12
STRINGS: Final[list[StringRequest]] = [
    {"pitch": "E4", "diameter": 0.71, "unit_mass": 0.41, "R": 24.0},
    {"pitch": "B3", "diameter": 0.82, "unit_mass": 0.56, "R": 26.0},
    {"pitch": "G3", "diameter": 1.02, "unit_mass": 0.87, "R": 31.0},
    {"pitch": "D3", "diameter": 0.74, "unit_mass": 1.90, "R": 15.0},
    {"pitch": "A2", "diameter": 0.89, "unit_mass": 3.30, "R": 17.0},
    {"pitch": "E2", "diameter": 1.09, "unit_mass": 5.60, "R": 20.0},
]
"""Invented strings of nylon's kind; diameter in mm, unit_mass in g/m, R from a stretch test."""


class DemoError(Exception):
    """The demo cannot go on; its text is one plain sentence."""


def main(argv: Sequence[str] | None = None) -> int:
    """Run the demo.

    Parameters
    ----------
    argv : sequence of str, optional
        Arguments after the command; the demo takes none.

    Returns
    -------
    int
        0, or 1 after one plain sentence on standard error.
    """
    try:
        if argv:
            message = "The demo takes no arguments; run it as `python3 -m service demo`."
            raise DemoError(message)  # noqa: TRY301 - one place tells every failure
        with _ended_by_signals(), _running_service() as address:
            for line in _account(address):
                _say(line)
            sys.stdout.flush()
    except BrokenPipeError:
        # What is still in the buffer has nowhere to go; the interpreter would complain about it at its end.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.stderr.write("The output was closed before the account was complete.\n")
        return 1
    except (DemoError, ScalewrightError, OSError) as failure:
        with contextlib.suppress(OSError):
            sys.stderr.write(f"{' '.join(str(failure).split())}\n")
        return 1
    return 0


def _account(address: str) -> Iterator[str]:
    """Lines of the account, each part after its answer has come."""
    # A transport of its own keeps the proxies of the environment out of a loopback call.
    with Client(address, transport=httpx.HTTPTransport()) as client:
        yield from _the_board()
        found = client.identification(
            unit="mm",
            instrument_uncertainty=CALIPER_UNCERTAINTY,
            frets=list(READINGS),
            from_nut=list(READINGS.values()),
        )
        rule, layout_scale, true_scale = _settled(found)
        layout = client.layout(unit="mm", scale=true_scale.value, scale_basis="true", rule=rule, frets=FRETS)
        yield from _what_it_is(found, layout_scale, true_scale, layout)
        yield from _where_the_frets_go(layout)
        compensation = client.compensation(
            unit="mm",
            scale=true_scale.value,
            scale_basis="true",
            rule=rule,
            frets=OPTIMISED_FRETS,
            heights=HEIGHTS,
            nut="fixed",
            strings=STRINGS,
        )
        yield from _where_the_saddle_goes(compensation)
        yield from _where_to_look_next()


def _settled(found: Identification) -> tuple[Rule, Estimate, Estimate]:
    if found.rule is None or found.layout_scale is None or found.true_scale is None:
        message = f'The readings settle no rule, so there is nothing to lay out (verdict "{found.verdict}").'
        raise DemoError(message)
    return found.rule, found.layout_scale, found.true_scale


def _the_board() -> Iterator[str]:
    yield "SCALEWRIGHT DEMO: the board, its label, the readings and strings are invented"
    yield ""
    yield "THE BOARD"
    yield from _told(
        f'Its label says "24 3/4 in". Eleven frets were read from the nut with a caliper, '
        f"standard uncertainty {CALIPER_UNCERTAINTY} mm each:"
    )
    pairs = list(READINGS.items())
    for row in (pairs[:6], pairs[6:]):
        yield "    fret " + "".join(f"{fret:9d}" for fret, _ in row)
        yield "    mm   " + "".join(f"{reading:9.2f}" for _, reading in row)
    yield ""


def _what_it_is(found: Identification, layout_scale: Estimate, true_scale: Estimate, layout: Layout) -> Iterator[str]:
    yield "WHAT IT IS  (POST /v1/identification)"
    yield from _told(found.statement)
    for name, length in (("true scale", true_scale), ("layout scale", layout_scale)):
        inches = [f"{mm / MM_PER_INCH:.3f}" for mm in (length.value, length.lower, length.upper)]
        yield (
            f"    {name:12} {inches[0]} in = {length.value:.2f} mm"
            f"   ({found.coverage:.0%}: {inches[1]} to {inches[2]} in)"
        )
    label = LABEL_INCHES * MM_PER_INCH
    if abs(label - layout_scale.value) > abs(label - true_scale.value):
        yield from _told("The label states the true scale, so other parts may be bought by it.")
    else:
        beyond = label - true_scale.value
        flat = 1200.0 - layout.frets[11].cents
        yield from _told(
            f"The label names the layout scale, the length that the rule was applied to. A bridge "
            f"bought for {LABEL_INCHES} in would stand {beyond:.2f} mm too far out, and on an ideal "
            f"string fret 12 would sound {flat:.1f} cents flat. Other parts must agree with the true scale."
        )
    for note in found.notes:
        yield from _told(f"Note: {note.text}")
    yield ""


def _where_the_frets_go(layout: Layout) -> Iterator[str]:
    yield "WHERE THE FRETS GO  (POST /v1/layout)"
    yield "    fret   from nut   from nut   to true end"
    yield "                 mm         in            mm"
    for fret in layout.frets:
        to_end = "-" if fret.to_true_end is None else f"{fret.to_true_end:.2f}"
        yield f"    {fret.fret:4d} {fret.from_nut:10.2f} {fret.from_nut / MM_PER_INCH:10.3f} {to_end:>13}"
    yield ""


def _where_the_saddle_goes(compensation: Compensation) -> Iterator[str]:
    end = compensation.setback_from.replace("_", " ")
    yield "WHERE THE SADDLE GOES  (POST /v1/compensation)"
    yield from _told(
        f"Nut as it is, best over frets 1 to {OPTIMISED_FRETS}; strings {HEIGHTS['nut']} mm above "
        f"the fret plane at the nut and {HEIGHTS['saddle_above_nut']} mm more at the saddle. The "
        f"setback is counted from the end of the {end}."
    )
    yield "    string   tension   setback   nut to saddle   fret 12 to saddle    left"
    yield "                   N        mm              mm                  mm   cents"
    for string in compensation.strings:
        from_12 = "-" if string.saddle_from_fret_12 is None else f"{string.saddle_from_fret_12:.2f}"
        yield (
            f"    {string.pitch:6} {string.tension_n:9.1f} {string.saddle_setback:9.2f} "
            f"{string.saddle_from_nut:15.2f} {from_12:>19} {string.rms_cents:7.2f}"
        )
    of_strings = [note.slug for string in compensation.strings for note in string.notes]
    slugs = dict.fromkeys([*(note.slug for note in compensation.notes), *of_strings])
    yield from _told(f"What this rests on, each explained in the answer: {', '.join(slugs)}.")
    yield from _told(
        "Before you saw or string: check one position with a rule, keep fingers off the saw line, "
        "wear eye protection, keep dust out of your lungs, and follow local codes."
    )
    yield ""


def _where_to_look_next() -> Iterator[str]:
    yield "WHERE TO LOOK NEXT"
    yield "    python3 -m service            starts the service; while it runs:"
    yield "    http://127.0.0.1:8000/docs    every operation, to be tried in a browser"
    yield "    curl '127.0.0.1:8000/v1/layout?scale=24.75in&rule=eighteenth&frets=22'"
    yield "    clients/python/README.md      the client that this demo uses"


def _told(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent="  ", subsequent_indent="  ", break_on_hyphens=False)


def _say(line: str) -> None:
    """Print a line, with a question mark for what the terminal's encoding does not know."""
    encoding = sys.stdout.encoding or "ascii"
    print(line.encode(encoding, "replace").decode(encoding))


@contextlib.contextmanager
def _running_service() -> Iterator[str]:
    """Run the service as a child process; gives its address and ends it whatever happens."""
    port = _free_port()
    source = str(Path(__file__).resolve().parent)
    path = os.pathsep.join(part for part in (source, os.environ.get("PYTHONPATH")) if part)
    with tempfile.TemporaryFile() as log:
        child = subprocess.Popen(  # noqa: S603 - starts ourselves, with arguments from this file alone
            [sys.executable, "-m", "scalewright", "serve", "--host", "127.0.0.1", "--port", str(port)],
            # Nobody watches the readiness of a demo, so it may end at once.
            env={**os.environ, "PYTHONPATH": path, "SCALEWRIGHT_LAME_DUCK_SECONDS": "0"},
            stdin=subprocess.DEVNULL,
            stdout=log,
            stderr=log,
        )
        try:
            address = f"http://127.0.0.1:{port}"
            _await_ready(address, child.poll, lambda: _last_line(log.fileno()))
            yield address
        finally:
            _end(child)


def _await_ready(address: str, poll: Callable[[], int | None], last_words: Callable[[], str]) -> None:
    deadline = time.monotonic() + START_LIMIT
    with httpx.Client(base_url=address, trust_env=False, timeout=2.0) as probe:
        while time.monotonic() < deadline:
            if (code := poll()) is not None:
                message = f"The service ended with code {code} before it was ready: {last_words()}"
                raise DemoError(message)
            with contextlib.suppress(httpx.TransportError):
                if probe.get("/readyz").is_success:
                    return
            time.sleep(0.05)
    message = f"The service was not ready after {START_LIMIT:.0f} seconds: {last_words()}"
    raise DemoError(message)


def _end(child: "subprocess.Popen[bytes]") -> None:
    child.terminate()
    try:
        child.wait(STOP_LIMIT)
    except subprocess.TimeoutExpired:
        child.kill()
        child.wait()


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


def _last_line(log: int) -> str:
    size = os.fstat(log).st_size
    os.lseek(log, max(0, size - 2000), os.SEEK_SET)
    lines = os.read(log, 2000).decode("utf-8", "replace").split("\n")
    return next((line.strip() for line in reversed(lines) if line.strip()), "it said nothing")


@contextlib.contextmanager
def _ended_by_signals() -> Iterator[None]:
    """Let a polite kill and Ctrl-C become a plain failure, so that the child is ended with the demo."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return

    def stop(_number: int, _frame: FrameType | None) -> NoReturn:
        message = "The demo was stopped."
        raise DemoError(message)

    before = {number: signal.signal(number, stop) for number in (signal.SIGTERM, signal.SIGINT)}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
