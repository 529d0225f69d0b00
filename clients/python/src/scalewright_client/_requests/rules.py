"""Spacing rules and temperaments, as a request gives them."""

from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._results import Rule

__all__ = ["RuleLike", "RuleRequest", "TargetLike"]


class RuleRequest(TypedDict, total=False):
    """A spacing rule."""

    name: Required[Literal["equal", "eighteenth", "divisor", "listed"]]
    steps: int
    """Steps to the octave, for "equal" (12 unless given)."""
    divisor: float
    """What the remaining length is divided by, for "divisor". [-]"""
    cents: list[float]
    """One pitch for each fret, ascending, for "listed". [cent]"""
    repeat: bool
    """Whether "listed" starts again an octave higher where the list ends."""


RuleLike: TypeAlias = Literal["equal", "eighteenth"] | RuleRequest | Rule
"""A spacing rule: its bare name, in full, or out of an earlier answer."""

TargetLike: TypeAlias = Literal["equal"] | RuleRequest | Rule
"""A temperament that a board should sound in: equal steps or listed cents."""
