"""The bar that says how far a run has come."""

import io

import pytest

from scalewright_client.command.progress import Progress


class Terminal(io.StringIO):
    """A stream with somebody who watches."""

    def isatty(self):
        """Say that it is a terminal."""
        return True


@pytest.fixture
def clock(monkeypatch):
    """A clock that is set by hand: ``clock[0] = seconds``."""
    now = [100.0]
    monkeypatch.setattr("time.monotonic", lambda: now[0])
    return now


def test_the_bar_tells_share_rows_pace_and_what_is_left(clock):
    """A quarter in ten seconds leaves half a minute (by hand)."""
    terminal = Terminal()
    bar = Progress(terminal, 4000, "boards.csv", quiet=False)
    bar.show(0, 0, 0)
    clock[0] += 10.0
    bar.show(1000, 500, 3)
    bar.end()
    last = terminal.getvalue().rsplit("\r", 1)[1]
    assert last == "boards.csv  [######..................]  25%  500 rows  3 bad  50 rows/s  0:30 left\x1b[K\n"


def test_a_run_that_is_gone_on_with_counts_its_own_pace(clock):
    """Rows of an earlier run were not done in this one's time."""
    terminal = Terminal()
    bar = Progress(terminal, 4000, "boards.csv", quiet=False)
    bar.show(2000, 1000, 0)
    clock[0] += 3600.0
    bar.show(3000, 1500, 0)
    assert terminal.getvalue().endswith("1500 rows  0 rows/s  1:00:00 left\x1b[K")


def test_it_is_not_drawn_more_often_than_eyes_can_follow(clock):
    """Drawing costs time too."""
    terminal = Terminal()
    bar = Progress(terminal, 4000, "boards.csv", quiet=False)
    for step in range(100):
        clock[0] += 0.01
        bar.show(step, step, 0)
    assert terminal.getvalue().count("\r") <= 5


@pytest.mark.parametrize(("terminal", "quiet"), [(io.StringIO(), False), (Terminal(), True)])
def test_nothing_is_drawn_where_nobody_watches(clock, terminal, quiet):
    """A log file holds no bars."""
    bar = Progress(terminal, 0, "boards.csv", quiet=quiet)
    clock[0] += 10.0
    bar.show(0, 0, 0)
    bar.end()
    assert terminal.getvalue() == ""
