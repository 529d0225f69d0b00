"""Retirement: what an operation says of its own end, ahead of it (RFC 9745, RFC 8594, RFC 8288)."""

from dataclasses import dataclass
from datetime import UTC, datetime
from email.utils import format_datetime

__all__ = ["Retirement"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Retirement:
    """An operation that goes away; the policy stands in DEVELOPERS.md.

    Raises
    ------
    ValueError
        When the end comes before the announcement.
    """

    deprecated: datetime
    """From when on new callers should use the successor, with its time zone."""
    sunset: datetime
    """When the operation ends, with its time zone."""
    successor: str
    """Address of what takes its place."""

    def __post_init__(self) -> None:
        if self.sunset < self.deprecated:
            message = "an operation cannot end before it is deprecated"
            raise ValueError(message)

    def headers(self) -> list[tuple[bytes, bytes]]:
        """Headers of every answer of the operation."""
        ends = format_datetime(self.sunset.astimezone(UTC), usegmt=True)
        return [
            (b"deprecation", b"@%d" % int(self.deprecated.timestamp())),
            (b"sunset", ends.encode("ascii")),
            (b"link", f'<{self.successor}>; rel="successor-version"'.encode("ascii")),
        ]
