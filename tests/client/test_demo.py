"""The demo: its account is right, its failures are one plain sentence, and its child is always ended."""

import contextlib
import os
import re
import signal
import subprocess
import sys
from fractions import Fraction
from functools import partial
from pathlib import Path

import httpx
import numpy as np
import pytest

from scalewright_client import Client, Identification, Retry
from service import demo
from tests.client.live_service import live_service

ROOT = Path(__file__).parents[2]
HUNDREDTH = 0.01
THOUSANDTH = 0.001


@pytest.fixture(scope="module")
def address():
    """Address of a service on loopback."""
    with live_service() as where:
        yield where


@pytest.fixture(scope="module")
def account(address):
    """The lines of the account."""
    return list(demo._account(address))


@pytest.fixture
def served(monkeypatch, address):
    """The demo with a service that already runs."""
    monkeypatch.setattr(demo, "_running_service", lambda: contextlib.nullcontext(address))


def rows(account, heading):
    """Number columns of the table below a heading."""
    start = next(index for index, line in enumerate(account) if line.startswith(heading))
    end = account.index("", start)
    found = [line.split() for line in account[start:end]]
    return [cells for cells in found if len(cells) >= 4 and all(re.fullmatch(r"-?\d+\.\d+", c) for c in cells[-3:])]


def board_by_hand():
    """Least squares of the readings on 1 - (17/18)^n with the nut free, by a general-purpose library."""
    frets = np.array(list(demo.READINGS))
    share = np.array([float(1 - Fraction(17, 18) ** int(fret)) for fret in frets])
    # The nut's prior, 0 +/- 0.3 mm, is one more reading of the offset.
    design = np.vstack([np.column_stack([share, np.ones_like(share)]) / 0.05, [0.0, 1.0 / 0.3]])
    seen = np.append(np.array(list(demo.READINGS.values())) / 0.05, 0.0)
    (layout_scale, _), *_ = np.linalg.lstsq(design, seen)
    return layout_scale, 2.0 * layout_scale * float(1 - Fraction(17, 18) ** 12)


def test_the_board_is_invented_and_says_so(account):
    """Nobody takes the demo's board for a measured one."""
    assert "invented" in account[0]


def test_the_invented_readings_are_those_of_the_board_they_tell_of():
    """Eleven readings of 24.75 in under the rule of 18, none further off than 0.06 mm, on a 0.05 mm scale."""
    for fret, reading in demo.READINGS.items():
        exact = Fraction("24.75") * Fraction("25.4") * (1 - Fraction(17, 18) ** fret)
        assert abs(reading - float(exact)) < 0.06
        assert reading / 0.05 == pytest.approx(round(reading / 0.05))


@pytest.mark.source("common practice, no source: 24.75 in under the rule of 18 is 24.57 in true")
def test_the_label_is_told_apart_from_the_true_scale(account):
    """The label says 24.75 in, the board is 24.57 in, and the account says which is which."""
    text = " ".join(line.strip() for line in account)
    found = re.search(
        r"true scale +(\S+) in = (\S+) mm .*?: (\S+) to (\S+) in\) layout scale +(\S+) in = (\S+) mm", text
    )
    assert found
    true_in, true_mm, lower, upper, layout_in, layout_mm = (float(number) for number in found.groups())
    layout_by_hand, true_by_hand = board_by_hand()
    assert true_mm == pytest.approx(true_by_hand, abs=HUNDREDTH)
    assert layout_mm == pytest.approx(layout_by_hand, abs=HUNDREDTH)
    assert true_in == pytest.approx(true_by_hand / 25.4, abs=THOUSANDTH)
    assert layout_in == pytest.approx(layout_by_hand / 25.4, abs=THOUSANDTH)
    assert lower < 24.57 < upper
    assert "The label names the layout scale" in text
    beyond = re.search(r"would stand (\S+) mm too far out", text)
    assert beyond
    assert float(beyond[1]) == pytest.approx(24.75 * 25.4 - true_by_hand, abs=HUNDREDTH)
    # Twelve steps of the rule of 18 are 12 * 1200 log2(18/17) = 1187.455 cents.
    assert "12.5 cents flat" in text


def test_the_table_of_frets_is_right_by_hand(account):
    """Each fret stands where the rule of 18 puts it on the scale that was found."""
    layout_scale, true_scale = board_by_hand()
    table = rows(account, "WHERE THE FRETS GO")
    assert [int(row[0]) for row in table] == list(range(1, demo.FRETS + 1))
    for fret, from_nut, inches, to_true_end in table:
        exact = layout_scale * float(1 - Fraction(17, 18) ** int(fret))
        assert float(from_nut) == pytest.approx(exact, abs=HUNDREDTH)
        assert float(inches) == pytest.approx(exact / 25.4, abs=THOUSANDTH)
        assert float(to_true_end) == pytest.approx(true_scale - exact, abs=HUNDREDTH)


def test_the_table_of_saddles_is_right_by_hand(account):
    """Tension is 4 L² f² mu; nut to saddle is the true scale plus setback; half of that from fret 12."""
    _, true_scale = board_by_hand()
    table = rows(account, "WHERE THE SADDLE GOES")
    # ISO 16 puts A4 at 440 Hz; equal temperament gives the others.
    semitones = {"E4": -5, "B3": -10, "G3": -14, "D3": -19, "A2": -24, "E2": -29}
    assert [row[0] for row in table] == list(semitones)
    for (pitch, tension, setback, from_nut, from_12, _), string in zip(table, demo.STRINGS, strict=True):
        frequency = 440.0 * 2.0 ** (semitones[pitch] / 12)
        by_hand = 4.0 * (true_scale / 1000.0) ** 2 * frequency**2 * string["unit_mass"] / 1000.0
        assert float(tension) == pytest.approx(by_hand, rel=0.002)
        assert float(from_nut) == pytest.approx(true_scale + float(setback), abs=2 * HUNDREDTH)
        assert float(from_12) == pytest.approx(true_scale / 2 + float(setback), abs=2 * HUNDREDTH)


def test_the_account_fits_a_terminal(account):
    """80 columns, plain text."""
    assert max(len(line) for line in account) <= demo.WIDTH
    assert all(line.isprintable() for line in account)


@pytest.mark.usefixtures("served")
def test_the_demo_prints_its_account(capsys):
    """All goes to standard output, and the exit code is 0."""
    assert demo.main([]) == 0
    out, err = capsys.readouterr()
    assert (out.splitlines()[-1].split()[0], err) == ("clients/python/README.md", "")


def failure(capsys, argv=()):
    """The sentence of a demo that fails."""
    assert demo.main(list(argv)) == 1
    _, err = capsys.readouterr()
    assert err.count("\n") == 1
    return err.strip()


def test_arguments_are_refused_in_a_sentence(capsys):
    """The demo has no options to get wrong."""
    assert failure(capsys, ["--loud"]) == "The demo takes no arguments; run it as `python3 -m service demo`."


def test_a_service_that_cannot_start_is_told_with_its_last_words(capsys, monkeypatch, tmp_path):
    """What the service said before it ended is part of the sentence."""
    (tmp_path / "python").write_text("#!/bin/sh\necho starting; echo no port left >&2; exit 3\n")
    (tmp_path / "python").chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(tmp_path / "python"))
    assert failure(capsys) == "The service ended with code 3 before it was ready: no port left"


def test_a_service_that_never_gets_ready_is_ended(capsys, monkeypatch, tmp_path):
    """The demo waits for a while, says so, and leaves no process behind."""
    number = tmp_path / "pid"
    (tmp_path / "python").write_text(f"#!/bin/sh\necho $$ > {number}\nexec sleep 60\n")
    (tmp_path / "python").chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(tmp_path / "python"))
    monkeypatch.setattr(demo, "START_LIMIT", 0.2)
    assert failure(capsys) == "The service was not ready after 0 seconds: it said nothing"
    with pytest.raises(ProcessLookupError):
        os.kill(int(number.read_text()), 0)


def test_readings_that_settle_nothing_end_the_demo_in_a_sentence():
    """Nothing is laid out from a rule that nobody knows."""
    nothing = (None,) * 4
    found = Identification("undecided", "mm", 0.95, None, (), 0.6, *nothing, (), (), None, "Undecided.", ())
    with pytest.raises(demo.DemoError, match="settle no rule"):
        demo._settled(found)


def test_a_service_that_goes_away_is_a_sentence(capsys, monkeypatch):
    """A fault of the line in the middle is told like every other failure."""
    monkeypatch.setattr(demo, "_running_service", lambda: contextlib.nullcontext("http://127.0.0.1:1"))
    monkeypatch.setattr(demo, "Client", partial(Client, retry=Retry(attempts=1)))
    assert failure(capsys).startswith("no answer from http://127.0.0.1:1")


def test_what_the_terminal_cannot_write_is_replaced():
    """A plus-minus sign does not end the demo on a terminal without one."""
    done = subprocess.run(
        [sys.executable, "-c", "from service import demo; demo._say('24.57 \u00b1 0.01')"],
        env={**os.environ, "PYTHONIOENCODING": "ascii", "PYTHONPATH": os.pathsep.join(sys.path)},
        cwd=ROOT,
        capture_output=True,
        check=True,
    )
    assert done.stdout.split() == [b"24.57", b"?", b"0.01"]


def test_an_output_that_is_closed_early_is_a_sentence(address):
    """Piped into something that stops reading, the demo still ends plainly."""
    program = (
        "import contextlib, sys\n"
        "from service import demo\n"
        "demo._running_service = lambda: contextlib.nullcontext(sys.argv[1])\n"
        "sys.exit(demo.main([]))\n"
    )
    read, write = os.pipe()
    os.close(read)
    done = subprocess.run(
        [sys.executable, "-c", program, address],
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)},
        cwd=ROOT,
        stdout=write,
        stderr=subprocess.PIPE,
        text=True,
        check=False,
    )
    os.close(write)
    assert (done.returncode, done.stderr) == (1, "The output was closed before the account was complete.\n")


@pytest.mark.slow
def test_the_demo_runs_from_the_command_and_ends_its_child_when_killed(tmp_path):
    """Slow, for it starts two interpreters: a polite kill ends the demo with code 1 and its service too."""
    program = (
        "import pathlib, sys\n"
        "from service import demo\n"
        "def account(address):\n"
        "    pathlib.Path(sys.argv[1]).write_text(address)\n"
        "    yield 'ready'\n"
        "    demo.time.sleep(60)\n"
        "demo._account = account\n"
        "sys.exit(demo.main([]))\n"
    )
    note = tmp_path / "address"
    with subprocess.Popen(
        [sys.executable, "-u", "-c", program, str(note)],
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)},
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    ) as child:
        assert child.stdout is not None
        first = child.stdout.readline()
        child.send_signal(signal.SIGTERM)
        _, err = child.communicate(timeout=20)
    assert (first, child.returncode, err) == ("ready\n", 1, "The demo was stopped.\n")
    with pytest.raises(httpx.ConnectError):
        httpx.get(f"{note.read_text()}/livez", trust_env=False)
