"""The client's README, run as it stands."""

import contextlib
import io
import re
from pathlib import Path

import pytest

from scalewright_client import _errors as errors
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
    assert lines[0] == "established"
    assert any(re.fullmatch(r"62[34]\.\d\d mm, k = 1: 0\.\d\d mm", line) for line in lines)
    assert "1 1.375 1 3/8 in" in lines
    assert any(line.startswith("E4 ") and line.endswith("cents left") for line in lines)
    assert any(line.startswith("/scale ") for line in lines)
    assert lines[-1] == "12"


def test_every_exception_named_in_the_text_exists():
    """A reader who copies a name gets the class."""
    text = README.read_text(encoding="utf-8")
    named = set(re.findall(r"`(\w+Error)`", text))
    assert named
    assert named <= set(errors.__all__)
