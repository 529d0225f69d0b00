"""Asking which spacing rules exist."""

from scalewright_client._protocol import Call, call
from scalewright_client._results import Rules

__all__ = ["rules"]


def rules() -> Call[Rules]:
    """Ask which spacing rules exist.

    Returns
    -------
    Rules
        Each rule with its divisor, its step and its shortfall of an octave.
    """
    return call("GET", "/v1/rules", Rules)
