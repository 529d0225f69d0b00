"""Tools: where one was told to cut, and what identifies it."""

from typing import Required, TypeAlias, TypedDict

from scalewright_client._requests.quantities import Length, ScaleBasis
from scalewright_client._requests.rules import RuleLike
from scalewright_client._results import Signature

__all__ = ["LaidOut", "SignatureLike", "SignatureRequest"]


class LaidOut(TypedDict, total=False):
    """Where a tool was told to cut, as a layout."""

    scale: Required[Length]
    """The scale. [unit, or its own]"""
    rule: Required[RuleLike]
    """The spacing rule."""
    frets: Required[int]
    """Number of slots, from fret 1 on."""
    scale_basis: ScaleBasis
    """Which of the two scales ``scale`` is; "layout" unless given."""


class SignatureRequest(TypedDict):
    """What a tool does to every board."""

    id: str
    """The caller's name for the tool."""
    bias: list[Length]
    """How far each slot lies from where it was commanded, positive away from the nut. [unit, or their own]"""
    within: Length
    """Standard deviation of a slot against the other slots of its board. [unit, or its own]"""
    between: Length
    """Standard deviation of a whole board against the others. [unit, or its own]"""
    boards: int
    """How many boards were studied."""


SignatureLike: TypeAlias = SignatureRequest | Signature
"""What identifies a tool: in full, or out of an earlier answer with the same unit."""
