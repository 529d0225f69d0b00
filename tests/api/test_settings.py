"""Settings: read from the environment, strictly, with safe defaults."""

import inspect
import subprocess
import sys
from dataclasses import fields

import pytest

from scalewright.api.settings import PREFIX, Settings, SettingsError


def test_nothing_set_is_the_defaults():
    """An environment without our prefix changes nothing."""
    assert Settings.from_environment({"PATH": "/bin", "PORT": "1"}) == Settings()


def test_the_environment_sets_each_field_by_its_name():
    """The name of the variable is the field's, in capitals behind the prefix, and the value has the field's type."""
    settings = Settings.from_environment(
        {
            "SCALEWRIGHT_HOST": "0.0.0.0",  # noqa: S104  (a value like any other here)
            "SCALEWRIGHT_PORT": "9000",
            "SCALEWRIGHT_LOG_REQUESTS": "off",
            "SCALEWRIGHT_BODY_SECONDS": "2.5",
        }
    )

    assert (settings.host, settings.port, settings.log_requests, settings.body_seconds) == ("0.0.0.0", 9000, False, 2.5)  # noqa: S104


@pytest.mark.parametrize(
    ("variable", "text", "words"),
    [
        ("PORT", "eighty", "a whole number"),
        ("PORT", "-1", "a whole number"),
        ("PORT", "1e3", "a whole number"),
        ("PORT", "", "a whole number"),
        ("BODY_SECONDS", "nan", "a number"),
        ("BODY_SECONDS", "inf", "a number"),
        ("LOG_REQUESTS", "maybe", "true or false"),
        ("PROT", "8000", "is no setting; there are SCALEWRIGHT_HOST, SCALEWRIGHT_PORT"),
    ],
)
def test_a_slip_is_told_in_a_sentence(variable, text, words):
    """A value that cannot be read, or a misspelt name, says what it may be."""
    with pytest.raises(SettingsError, match=words):
        Settings.from_environment({PREFIX + variable: text})


def test_each_setting_is_documented():
    """Every field has a sentence under it in the source."""
    text = inspect.getsource(Settings)

    for field in fields(Settings):
        behind = text.partition(f"    {field.name}: ")[2].partition("\n")[2].lstrip()
        assert behind.startswith('"""'), field.name


@pytest.mark.slow
def test_nothing_happens_at_import():
    """Importing the application reads no environment and makes no application (a process starts)."""
    program = (
        "import os, scalewright.api.app as app, scalewright.__main__; from fastapi import FastAPI; "
        "assert not any(isinstance(thing, FastAPI) for thing in vars(app).values()); print('quiet')"
    )
    environment = {"PYTHONPATH": ":".join(sys.path), "SCALEWRIGHT_PORT": "not a port"}
    done = subprocess.run(
        [sys.executable, "-c", program], env=environment, capture_output=True, text=True, timeout=30, check=False
    )

    assert (done.stdout, done.stderr) == ("quiet\n", "")
