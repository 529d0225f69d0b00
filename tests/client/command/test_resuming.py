"""Stopped at any moment, the same command goes on to the same files, byte for byte."""

import random

import pytest

from scalewright_client.command.journal import Growing, Journal, Output
from tests.client.command.desk import HEADER, Desk, board


class Killed(BaseException):
    """The process ends here."""


STEPS = [
    (Growing, "write"),
    (Growing, "settle"),
    (Journal, "keep"),
    (Output, "publish"),
    (Output, "discard"),
    (Journal, "discard"),
]


class Fate:
    """Ends the process before its n-th step that touches a file."""

    def __init__(self, monkeypatch) -> None:
        self.left: int | None = None
        for owner, name in STEPS:
            monkeypatch.setattr(owner, name, self.watched(getattr(owner, name)))

    def watched(self, step):
        """A step that may be the last."""

        def watching(*arguments):
            if self.left is not None:
                self.left -= 1
                if self.left < 0:
                    raise Killed
            return step(*arguments)

        return watching


def boards(desk, count):
    """A file of boards, some of them bad."""
    rows = [board(n, fret12="abc") if n % 7 == 3 else board(n) for n in range(count)]
    rows[5] = 'B-5,"never closed,3'
    rows[8] = '"B-8\nsecond line",151,313,0.05,1'
    desk.write("boards.csv", HEADER, *rows)


def outcome(desk):
    """What a finished run has left."""
    return {name: (desk.folder / name).read_bytes() for name in desk.files}


@pytest.fixture
def uninterrupted(tmp_path):
    """Files of a run that nobody stopped."""
    folder = tmp_path / "whole"
    folder.mkdir()
    whole = Desk(folder)
    boards(whole, 10)
    assert whole.run("--at-once", "4") == 1
    assert whole.files == {"boards.csv", "out.jsonl", "out.jsonl.bad-rows.csv"}
    return outcome(whole)


@pytest.mark.slow
def test_a_run_that_is_ended_before_any_of_its_steps_can_be_gone_on_with(tmp_path, monkeypatch, uninterrupted):
    """Slow, for every step is tried as the last one: the second run makes the files whole."""
    fate = Fate(monkeypatch)
    for step in range(1000):
        folder = tmp_path / str(step)
        folder.mkdir()
        desk = Desk(folder)
        boards(desk, 10)
        fate.left = step
        try:
            desk.run("--at-once", "4")
        except Killed:
            fate.left = None
            # Only the very last step leaves a run that is finished and says so.
            assert desk.run("--at-once", "4") in {1, 2}
            assert outcome(desk) == uninterrupted, step
        else:
            assert outcome(desk) == uninterrupted
            assert step > 20
            return
    raise AssertionError


def test_twenty_interruptions_leave_no_trace(tmp_path, monkeypatch, uninterrupted):
    """However often it is ended by chance, the files come out the same; other sizes of chunk do no harm."""
    fate = Fate(monkeypatch)
    chance = random.Random(9)
    folder = tmp_path / "often"
    folder.mkdir()
    desk = Desk(folder)
    boards(desk, 10)
    ended = 0
    while ended < 20:
        fate.left = chance.randrange(8)
        try:
            status = desk.run("--at-once", str(chance.randrange(1, 3)))
        except Killed:
            ended += 1
        else:
            assert status in {1, 2}
            break
    fate.left = None
    assert desk.run("--at-once", "4") in {1, 2}
    assert outcome(desk) == uninterrupted
    assert ended >= 5


def test_what_is_done_is_not_asked_again(desk, monkeypatch):
    """A second run begins where the first was stopped, and says so."""
    desk.write("boards.csv", HEADER, *[board(n) for n in range(20)])
    kept = Journal.keep

    def stopping(journal, standing):
        kept(journal, standing)
        if standing.rows == 8:
            raise KeyboardInterrupt

    monkeypatch.setattr(Journal, "keep", stopping)
    assert desk.run("--at-once", "4") == 130
    monkeypatch.setattr(Journal, "keep", kept)
    desk.asked.clear()
    assert desk.run("--at-once", "4") == 0
    assert {question["id"] for question in desk.questions} == {f"B-{n}" for n in range(8, 20)}
    assert "going on after 8 rows" in desk.said


@pytest.mark.parametrize(
    ("spoil", "arguments", "words"),
    [
        (lambda desk: desk.write("boards.csv", HEADER, *[board(n + 1) for n in range(20)]), [], "input has changed"),
        (lambda desk: desk.write("boards.csv", HEADER, board(0)), [], "input has changed"),
        (lambda _: None, ["--set", "threshold=0.9"], "other options"),
        (lambda desk: desk.write("out.jsonl.progress", "{}"), [], "cannot be read"),
        (lambda desk: desk.write("out.jsonl.part", ""), [], "shorter than it was"),
    ],
    ids=["input", "shorter input", "options", "journal", "output"],
)
def test_what_does_not_belong_together_is_not_joined(desk, monkeypatch, spoil, arguments, words):
    """Another input or other options need a fresh start, which the caller has to ask for."""
    fate = Fate(monkeypatch)
    desk.write("boards.csv", HEADER, *[board(n) for n in range(20)])
    fate.left = 20
    with pytest.raises(Killed):
        desk.run("--at-once", "4")
    fate.left = None
    spoil(desk)
    assert desk.run("--at-once", "4", *arguments) == 2
    assert words in desk.said
    assert desk.run("--at-once", "4", "--restart", *arguments) == 0
    assert len(desk.read("out.jsonl").splitlines()) == len(desk.read("boards.csv").splitlines()) - 1


def test_rows_that_were_added_meanwhile_are_done_too(desk, monkeypatch):
    """A file that has grown behind what is done is still the same file."""
    fate = Fate(monkeypatch)
    desk.write("boards.csv", HEADER, *[board(n) for n in range(8)])
    fate.left = 15
    with pytest.raises(Killed):
        desk.run("--at-once", "4")
    fate.left = None
    desk.write("boards.csv", HEADER, *[board(n) for n in range(11)])
    assert desk.run("--at-once", "4") == 0
    assert len(desk.read("out.jsonl").splitlines()) == 11


def test_no_row_is_lost_when_there_is_none(desk):
    """A file with a header alone gives an empty answer."""
    desk.write("boards.csv", HEADER)
    assert desk.run(output="out.csv") == 0
    assert len(desk.read("out.csv").splitlines()) == 1
