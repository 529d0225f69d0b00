"""Lengths and their unit, as a request gives them."""

from typing import Literal, TypeAlias

__all__ = ["Length", "ScaleBasis", "Unit"]

Length: TypeAlias = float | str
"""A length: a number in the request's ``unit``, or a text with its own unit ("24 9/16 in", "628.65 mm")."""

Unit: TypeAlias = Literal["mm", "in"]
"""Unit of plain numbers in the request and of every length in the answer."""

ScaleBasis: TypeAlias = Literal["layout", "true"]
"""What ``scale`` names: the length the rule is applied to, or twice the distance to the octave fret."""
