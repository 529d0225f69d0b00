"""Settings: typed, documented, with safe defaults, read from the environment when asked and never at import."""

import os
import re
from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Self

__all__ = ["PREFIX", "Settings", "SettingsError"]

PREFIX = "SCALEWRIGHT_"
"""Starts the name of every environment variable that is a setting."""

_WHOLE = re.compile(r"[0-9]{1,9}")
_DECIMAL = re.compile(r"[0-9]{1,9}(?:\.[0-9]{1,9})?")
_TRUTHS = {"1": True, "true": True, "yes": True, "on": True, "0": False, "false": False, "no": False, "off": False}


class SettingsError(Exception):
    """An environment variable that is no setting; the message says what it may be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """How the service behaves; each field is an environment variable with the prefix ``SCALEWRIGHT_``."""

    host: str = "127.0.0.1"
    """Address to listen on; 0.0.0.0 for every interface."""
    port: int = 8000
    """Port to listen on; 0 takes a free one."""
    workers: int = 1
    """Number of processes; in a container leave it at 1 and run more containers."""
    log_requests: bool = True
    """Whether a line of JSON is logged for every request."""
    max_body_bytes: int = 65_536
    """Largest body of a single request, in bytes."""
    max_batch_bytes: int = 67_108_864
    """Largest body of a batch, in bytes."""
    max_batch_lines: int = 100_000
    """Most questions in a batch."""
    max_line_bytes: int = 65_536
    """Longest line of a batch, in bytes."""
    batch_seconds: float = 120.0
    """How long a client may take to send a batch, in seconds."""
    batch_processes: int = 1
    """Processes that answer batches beside the one that answers small requests; 0 uses a thread instead."""
    max_list_items: int = 1_000
    """Longest list in a request."""
    max_url_bytes: int = 8_192
    """Longest path and query together, in bytes."""
    max_header_bytes: int = 16_384
    """Largest set of request headers, in bytes."""
    body_seconds: float = 10.0
    """How long a client may take to send a body, in seconds."""
    cache_seconds: int = 86_400
    """How long the answer of a GET may be kept by caches, in seconds."""

    @classmethod
    def from_environment(cls, environment: Mapping[str, str] | None = None) -> Self:
        """Read the settings.

        Parameters
        ----------
        environment : mapping, optional
            Instead of the environment of the process.

        Returns
        -------
        Settings
            The settings, defaults where nothing is set.

        Raises
        ------
        SettingsError
            A variable that cannot be read, or one with our prefix that is no setting.
        """
        environment = os.environ if environment is None else environment
        types = {field.name: field.type for field in fields(cls)}
        values: dict[str, object] = {}
        for variable, text in environment.items():
            if not variable.startswith(PREFIX):
                continue
            name = variable.removeprefix(PREFIX).lower()
            if name not in types:
                known = ", ".join(f"{PREFIX}{known.upper()}" for known in types)
                message = f"{variable} is no setting; there are {known}"
                raise SettingsError(message)
            values[name] = _read(variable, text, types[name])
        return cls(**values)  # type: ignore[arg-type]  # each value was read as the type of its field


def _read(variable: str, text: str, kind: object) -> object:
    """Value of a setting from its text."""
    if kind is str:
        return text
    if kind is bool:
        if text.strip().lower() in _TRUTHS:
            return _TRUTHS[text.strip().lower()]
        wanted = "true or false"
    elif kind is int:
        if _WHOLE.fullmatch(text):
            return int(text)
        wanted = "a whole number of 0 or more"
    else:
        if _DECIMAL.fullmatch(text):
            return float(text)
        wanted = "a number of 0 or more"
    message = f"{variable} has to be {wanted}"
    raise SettingsError(message)
