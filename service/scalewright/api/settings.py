"""Settings: typed, documented, with safe defaults, read from the environment when asked and never at import."""

import os
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from typing import Self

from scalewright.api.keys import Key

__all__ = ["PREFIX", "Settings", "SettingsError"]

PREFIX = "SCALEWRIGHT_"
"""Starts the name of every environment variable that is a setting."""

_WHOLE = re.compile(r"[0-9]{1,9}")
_DECIMAL = re.compile(r"[0-9]{1,9}(?:\.[0-9]{1,9})?")
_ORIGIN = re.compile(r"https?://[a-z0-9.-]{1,253}(?::[0-9]{1,5})?")
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
    docs: bool = True
    """Whether there are a documentation page and an OpenAPI document."""
    metrics: bool = True
    """Whether /metrics tells Prometheus what the service does."""
    api_keys: tuple[Key, ...] = ()
    """Who may ask, as name:digest with commas between; scalewright key makes one; none lets everybody ask."""
    requests_per_minute: int = 0
    """How often one caller may ask one process in a minute; 0 as often as it likes."""
    cors_origins: tuple[str, ...] = ()
    """Web pages that may ask from a browser, as https://shop.example with commas between."""
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
    batch_processes: int = 2
    """Processes that answer batches and paint pictures beside the one for small requests; 0 uses a thread instead."""
    max_list_items: int = 1_000
    """Longest list in a request."""
    max_url_bytes: int = 8_192
    """Longest path and query together, in bytes."""
    max_header_bytes: int = 16_384
    """Largest set of request headers, in bytes."""
    body_seconds: float = 10.0
    """How long a client may take to send a body, in seconds."""
    head_seconds: float = 5.0
    """How long a client may take to send the head of a request, in seconds."""
    stall_seconds: float = 20.0
    """How long a client may leave an answer unread, in seconds."""
    keep_alive_seconds: int = 5
    """How long a connection is kept open between two requests, in seconds."""
    request_seconds: float = 300.0
    """How long a heavy request, such as a batch, may take in all, in seconds."""
    max_connections: int = 4_096
    """Most connections to one process."""
    max_requests: int = 256
    """Most requests in work in one process at once; others are told to come again."""
    max_threaded_requests: int = 64
    """Most among them that take more than a few milliseconds and so leave the event loop."""
    max_batches: int = 4
    """Most batches among them; each may hold its whole body in memory."""
    compress_bytes: int = 1_000
    """Smallest answer that is compressed for who accepts gzip, in bytes."""
    lame_duck_seconds: float = 8.0
    """How long the service still answers after SIGTERM, while it says that it is not ready, in seconds."""
    drain_seconds: int = 10
    """How long what is in work then may take to end, in seconds."""
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


def _origin(text: str) -> str:
    if _ORIGIN.fullmatch(text) is None:
        raise ValueError
    return text


_LISTS: Mapping[object, tuple[Callable[[str], object], str]] = {
    tuple[Key, ...]: (Key.read, "keys as name:digest, as `scalewright key NAME` prints them, with commas between"),
    tuple[str, ...]: (_origin, "origins such as https://shop.example, in small letters, with commas between"),
}
"""How the parts of lists are read, and what they have to be."""


def _read(variable: str, text: str, kind: object) -> object:
    """Value of a setting from its text."""
    if kind is str:
        return text
    if kind in _LISTS:
        read, wanted = _LISTS[kind]
        try:
            return tuple(read(part) for part in text.replace(",", " ").split())
        except ValueError:
            message = f"{variable} has to be {wanted}"
            raise SettingsError(message) from None
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
