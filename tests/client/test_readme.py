"""The client's README, run as it stands."""

import contextlib
import csv
import io
import re
import shlex
from pathlib import Path

import pytest

from scalewright_client import _errors as errors
from scalewright_client.command.__main__ import main
from tests.client.live_service import live_service

README = Path(__file__).parents[2] / "clients" / "python" / "README.md"


@pytest.fixture(scope="module")
def printed():
    """What the examples print, one after another in one session against a live service."""
    text = README.read_text(encoding="utf-8")
    out = io.StringIO()
    names: dict[str, object] = {}
    with live_service() as address, contextlib.redirect_stdout(out):
        for number, match in enumerate(re.finditer(r"^```python\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)):
            code = match[1].replace("http://127.0.0.1:8000", address)
            exec(compile(code, f"example {number} of the README", "exec"), names)  # noqa: S102 - the test's subject
    return out.getvalue()


def test_the_examples_tell_what_the_text_says(printed):
    """The board is settled, its layout follows, and a refusal names its place."""
    lines = printed.splitlines()
    shown = re.search(r"^```text\n(.*?)^```$", README.read_text(encoding="utf-8"), re.MULTILINE | re.DOTALL)
    assert shown is not None
    assert lines[:2] == shown[1].splitlines()
    assert any(re.fullmatch(r"62[34]\.\d\d mm, k = 1: 0\.\d\d mm", line) for line in lines)
    assert "1 1.375 1 3/8 in" in lines
    assert any(line.startswith("E4 ") and line.endswith("cents left") for line in lines)
    assert any(line.startswith("/scale ") for line in lines)
    assert lines[-1] == "12"


def test_the_batch_tells_good_from_bad(printed):
    """The refused board is named by its id and place, and the good one is answered."""
    lines = printed.splitlines()
    assert "B-2 is bad: /from_nut/1" in lines
    assert any(line.startswith("B-1 ") for line in lines)
    assert "1 answered, 1 bad" in lines


def test_the_command_does_what_the_text_says(tmp_path, monkeypatch):
    """The stock list and the command stand in the text as they are run here."""
    text = README.read_text(encoding="utf-8")
    stock, parts = re.findall(r"^```csv\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)
    commands = re.findall(r"^```sh\n(scalewright-client .*?)\n```$", text, re.MULTILINE)
    monkeypatch.chdir(tmp_path)
    Path("stock.csv").write_text(stock, encoding="utf-8")
    Path("parts.csv").write_text(parts, encoding="utf-8")
    with live_service() as address:
        surroundings = {"SCALEWRIGHT_URL": address}
        statuses = [
            main(shlex.split(command)[1:], terminal=io.StringIO(), environment=surroundings) for command in commands
        ]
    assert statuses == [1, 0, 0]
    assert Path("labels.pdf").read_bytes().startswith(b"%PDF")
    assert sorted(path.name for path in Path("sheets").iterdir()) == ["BD-17-2.html", "BR-3-3.html", "sheets.csv"]
    rows = list(csv.DictReader(Path("scales.csv").read_text(encoding="utf-8").splitlines()))
    assert [row["id"] for row in rows] == ["A-17", "A-18", "A-19"]
    # Both rows were made for 24.75 in under the rule of 18: true scale 24.570 in.
    assert [float(row["true_scale"]) for row in rows[:2]] == pytest.approx([24.570] * 2, abs=0.02)
    assert rows[2]["problem"].startswith("fret 12 [in]: ")
    bad = list(csv.DictReader(Path("scales.csv.bad-rows.csv").read_text(encoding="utf-8").splitlines()))
    assert [(row["line"], row["id"], row["column"]) for row in bad] == [("4", "A-19", "fret 12 [in]")]


def test_every_exception_named_in_the_text_exists():
    """A reader who copies a name gets the class."""
    text = README.read_text(encoding="utf-8")
    named = set(re.findall(r"`(\w+Error)`", text))
    assert named
    assert named <= set(errors.__all__)
