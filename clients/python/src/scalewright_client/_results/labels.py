"""Labels as they were read."""

from dataclasses import dataclass

__all__ = ["Label"]


@dataclass(frozen=True, slots=True)
class Label:
    """A label as it was read."""

    length: float
    """Its number, taken at its word. [unit]"""
    unit: str
    """Unit of all lengths, "mm" or "in"."""
    grain: float
    """The smallest step of numbers written like it: 0.1 in for 25.4 in, 1/4 in for 24 3/4 in. [unit]"""
    unit_given: bool
    """Whether the label names its unit."""
