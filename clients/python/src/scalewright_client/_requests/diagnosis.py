"""What a tuner read, note by note."""

from typing import Required, TypedDict

__all__ = ["CentsReading"]


class CentsReading(TypedDict, total=False):
    """One note on the tuner."""

    string: Required[int]
    """Number of the string."""
    fret: Required[int]
    """Number of the fret; 0 is the open string."""
    cents: Required[float]
    """How sharp it sounded against the pitch that this fret should give. [cent]"""
    uncertainty: float
    """Standard uncertainty of this reading (k = 1); the tuner's unless given. [cent]"""
