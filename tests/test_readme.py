"""What README.md shows is what happens: its commands, requests, answers, Python and settings."""

import contextlib
import io
import json
import re
import shlex
from dataclasses import fields
from decimal import Decimal
from pathlib import Path

import httpx
import pytest

from scalewright.api.settings import PREFIX, Settings
from tests.client.live_service import live_service

README = (Path(__file__).resolve().parent.parent / "README.md").read_text(encoding="utf-8")

SHOWN_ADDRESS = "127.0.0.1:8000"
"""Where the README expects the service."""

BLOCKS = re.findall(r"^```(\w*)\n(.*?)^```$", README, re.MULTILINE | re.DOTALL)
"""Language and text of every code block, in order."""

ASKED = [
    (text, BLOCKS[n + 1]) for n, (language, text) in enumerate(BLOCKS) if language == "sh" and text.startswith("curl ")
]
"""Every curl line with the block behind it, its answer."""


@pytest.fixture(scope="module")
def address():
    """Serve on a free port of this machine; gives host and port."""
    with live_service() as url:
        yield url.removeprefix("http://")


def send(command: str, address: str) -> httpx.Response:
    """Send what a curl line sends."""
    words = shlex.split(command)[1:]
    headers, body, url = {}, None, None
    while words:
        word = words.pop(0)
        if word == "-H":
            name, _, value = words.pop(0).partition(": ")
            headers[name] = value
        elif word == "-d":
            body = words.pop(0)
        elif word != "-s":
            assert url is None
            url = word.replace(SHOWN_ADDRESS, address)
    assert url is not None
    return httpx.request("GET" if body is None else "POST", url, headers=headers, content=body, trust_env=False)


def assert_shows(shown, real, where="answer"):
    """Hold what is shown, which may leave members out and round numbers, against what came."""
    if isinstance(shown, dict):
        for name, value in shown.items():
            assert_shows(value, real[name], f"{where}.{name}")
    elif isinstance(shown, list):
        for index, value in enumerate(shown):
            assert_shows(value, real[index], f"{where}[{index}]")
    elif isinstance(shown, Decimal):
        assert Decimal(real).quantize(shown) == shown, f"{where}: {real}"
    else:
        assert shown == real, where


def assert_table_shows(shown, real):
    """Hold a table whose numbers are cut after some decimals against what came."""
    lines = real.splitlines()
    assert shown.splitlines()[0] == lines[0]
    assert len(shown.splitlines()) == len(lines)
    for row, came in zip(shown.splitlines()[1:], lines[1:], strict=True):
        for cell, full in zip(row.split(","), came.split(","), strict=True):
            assert full.startswith(cell), (row, came)


@pytest.mark.parametrize(("command", "answer"), ASKED, ids=lambda value: value[:60] if isinstance(value, str) else "")
def test_a_curl_line_answers_as_shown(command, answer, address):
    """Pasted into a shell, each curl line gives the answer shown below it."""
    language, shown = answer
    response = send(command, address)

    if language == "csv":
        assert_table_shows(shown, response.text)
    else:
        assert language == "json"
        assert_shows(json.loads(shown, parse_float=Decimal), response.json())


def test_the_curl_lines_are_all_there():
    """The README shows the main job, a layout and a refusal."""
    assert len(ASKED) == 3


def test_the_python_prints_what_is_shown(address):
    """Each Python block prints the text block behind it."""
    shown = [(text, BLOCKS[n + 1]) for n, (language, text) in enumerate(BLOCKS) if language == "python"]

    assert shown
    for code, (language, expected) in shown:
        assert language == "text"
        printed = io.StringIO()
        with contextlib.redirect_stdout(printed):
            exec(code.replace(SHOWN_ADDRESS, address), {})  # noqa: S102  # it is our own page
        assert printed.getvalue() == expected


def test_every_setting_stands_in_the_table_with_its_default():
    """The table of settings lists each field of the settings once, with its default, and nothing else."""
    listed = dict(re.findall(rf"^\| `({PREFIX}\w+)` \| `([^`]*)` \|", README, re.MULTILINE))
    defaults = {PREFIX + field.name.upper(): getattr(Settings(), field.name) for field in fields(Settings)}

    shown = {True: "true", False: "false", (): "none"}
    assert listed == {
        name: shown[value] if isinstance(value, bool | tuple) else str(value) for name, value in defaults.items()
    }


def test_the_map_shows_folders_that_exist():
    """Each line of the map begins with a folder or a file of the checkout."""
    house = README.partition("\n## The map of the house\n")[2]
    places = re.findall(r"^([\w./]+)  +\w", house, re.MULTILINE)

    assert len(places) >= 7
    assert all((Path(__file__).resolve().parent.parent / place).exists() for place in places)


def test_the_paths_shown_are_operations(address):
    """Every path in the table of operations is one of the service."""
    listed = re.findall(
        r"`(?:GET )?(?:POST )?(/[\w/.-]+)`", README.partition("\n## What it does\n")[2].partition("\n#")[0]
    )
    described = httpx.get(f"http://{address}/openapi.json", trust_env=False).json()["paths"]

    assert {path for path in listed if path not in {"/docs", "/openapi.json", "/metrics"}} <= set(described)
    assert "/v1/identification" in listed
