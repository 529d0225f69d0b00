"""Trace context: which trace a request belongs to, as its caller says (W3C Trace Context, section 3.2)."""

import re

__all__ = ["trace_id_of"]

_PARENT = re.compile(rb"([0-9a-f]{2})-([0-9a-f]{32})-([0-9a-f]{16})-[0-9a-f]{2}(-[\x20-\x7e]*)?")
_NO_TRACE = b"0" * 32
_NO_SPAN = b"0" * 16


def trace_id_of(header: bytes) -> str | None:
    """Trace id of a ``traceparent`` header, or None for a header that the standard says to ignore.

    Version 00 has four parts and no more; a higher version may add parts behind them; ff is forbidden.
    """
    match = _PARENT.fullmatch(header.strip())
    if match is None:
        return None
    version, trace, span, rest = match.groups()
    if version == b"ff" or (version == b"00" and rest is not None) or trace == _NO_TRACE or span == _NO_SPAN:
        return None
    return trace.decode("ascii")
