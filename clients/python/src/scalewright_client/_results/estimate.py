"""Measured quantities with their intervals, and cautions that come with an answer."""

from dataclasses import dataclass

__all__ = ["Estimate", "Note"]


@dataclass(frozen=True, slots=True)
class Estimate:
    """A measured quantity with its interval at the stated coverage."""

    value: float
    """The best estimate. [unit]"""
    standard_uncertainty: float
    """Its standard uncertainty (k = 1). [unit]"""
    lower: float
    """Lower end of the interval. [unit]"""
    upper: float
    """Upper end of the interval. [unit]"""


@dataclass(frozen=True, slots=True)
class Note:
    """A caution that comes with a valid answer."""

    slug: str
    """A short name that stays the same, for programs."""
    text: str
    """One sentence, for people."""
