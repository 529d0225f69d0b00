"""Slots on the wire: a straight slot, saddles of limited travel, and where the strings break over them."""

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from scalewright.lutherie.compensation import StraightSlot, Travel
from scalewright.wire.quantities import AnyLength, Distance, Length, LengthOut
from scalewright.wire.strings import MOST_STRINGS

__all__ = ["BreakPointOut", "SlotFitOut", "StraightSlotIn", "TravelFitOut", "TravelIn"]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class StraightSlotIn(BaseModel):
    """A straight slot that is to be cut."""

    model_config = _STRICT

    thickness: Annotated[Length, Field(examples=["3 mm"])]
    """Thickness of the saddle that stands in it. [unit]"""
    spread: Annotated[Length | None, Field(examples=["58 mm"])] = None
    """Distance across the bridge from the first string to the last; strings lie evenly between. [unit]"""
    across: Annotated[list[Distance], Field(min_length=1, max_length=MOST_STRINGS)] | None = None
    """Instead of `spread`: where every string crosses the bridge, from the first one's place, ascending. [unit]"""

    def to_domain(self) -> StraightSlot:
        """Return the slot."""
        return StraightSlot(self.thickness, self.spread, self.across)


class TravelIn(BaseModel):
    """How far adjustable saddles go, as saddle setbacks; all alike."""

    model_config = _STRICT

    least: Annotated[AnyLength, Field(examples=["0 mm"])]
    """Setback at the end of the travel nearest to the nut. [unit]"""
    most: Annotated[AnyLength, Field(examples=["5 mm"])]
    """Setback at the other end. [unit]"""

    def to_domain(self) -> Travel:
        """Return the travel."""
        return Travel(self.least, self.most)


class BreakPointOut(BaseModel):
    """Where one string breaks over a saddle that cannot give every string what it wants."""

    model_config = _READ_OFF

    string: int
    """Number of the string, from 1 in the order given."""
    pitch: str
    """Open pitch, as given."""
    saddle_setback: LengthOut
    """From the end of the scale to the break point, positive away from the nut. [unit]"""
    nut_setback: LengthOut
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    reached: bool
    """Whether it is the string's best."""
    short_by: LengthOut
    """How much further out its best lies; negative where the best lies nearer to the nut. [unit]"""
    rms_cents: float
    """Root mean square of the errors that remain on the frets that count. [cent]"""
    least_rms_cents: float
    """The same at the string's best. [cent]"""


class SlotFitOut(BaseModel):
    """The best straight slot for a set of strings."""

    model_config = _READ_OFF

    thickness: LengthOut
    """Thickness of the saddle. [unit]"""
    needed_thickness: LengthOut
    """Thickness that would let every string break at its best, in the slot that needs least. [unit]"""
    fits: bool
    """Whether all the best break points lie on the saddle."""
    setback_at_first: LengthOut
    """Setback of the slot's centre line at the first string. [unit]"""
    setback_at_last: LengthOut
    """The same at the last string. [unit]"""
    from_nut_at_first: LengthOut
    """From the pattern's zero line to the slot's centre line at the first string. [unit]"""
    from_nut_at_last: LengthOut
    """The same at the last string. [unit]"""
    angle_degrees: float
    """Slant against a line square to the strings, positive where the last string is the longer. [degree]"""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[BreakPointOut]
    """Where every string breaks."""


class TravelFitOut(BaseModel):
    """What adjustable saddles of limited travel give."""

    model_config = _READ_OFF

    least: LengthOut
    """Setback at the end of the travel nearest to the nut. [unit]"""
    most: LengthOut
    """Setback at the other end. [unit]"""
    all_reached: bool
    """Whether every string gets its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[BreakPointOut]
    """Where every string breaks."""
