"""Strings with the places where they break over saddle and nut."""

from scalewright_client._requests.quantities import Length
from scalewright_client._requests.strings import StringRequest

__all__ = ["PlacedString"]


class PlacedString(StringRequest, total=False):
    """One string, and where it breaks over saddle and nut."""

    saddle_setback: Length
    """From the end of the true scale to the break point, positive away from the nut; 0 unless given.
    [unit, or its own]"""
    nut_setback: Length
    """From the pattern's zero line to the nut's front edge, positive away from fret 1; 0 unless given.
    [unit, or its own]"""
