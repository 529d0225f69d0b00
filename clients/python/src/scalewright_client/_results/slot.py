"""Where strings break over a saddle that cannot give every string what it wants."""

from dataclasses import dataclass

__all__ = ["BreakPoint", "SlotFit", "TravelFit"]


@dataclass(frozen=True, slots=True)
class BreakPoint:
    """Where one string breaks over a saddle that cannot give every string what it wants."""

    string: int
    """Number of the string, from 1 in the order given."""
    pitch: str
    """Open pitch, as given."""
    saddle_setback: float
    """From the end of the scale to the break point, positive away from the nut. [unit]"""
    nut_setback: float
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    reached: bool
    """Whether it is the string's best."""
    short_by: float
    """How much further out its best lies; negative where the best lies nearer to the nut. [unit]"""
    rms_cents: float
    """Root mean square of the errors that remain on the frets that count. [cent]"""
    least_rms_cents: float
    """The same at the string's best. [cent]"""


@dataclass(frozen=True, slots=True)
class SlotFit:
    """The best straight slot for a set of strings."""

    thickness: float
    """Thickness of the saddle. [unit]"""
    needed_thickness: float
    """Thickness that would let every string break at its best, in the slot that needs least. [unit]"""
    fits: bool
    """Whether all the best break points lie on the saddle."""
    setback_at_first: float
    """Setback of the slot's centre line at the first string. [unit]"""
    setback_at_last: float
    """The same at the last string. [unit]"""
    from_nut_at_first: float
    """From the pattern's zero line to the slot's centre line at the first string. [unit]"""
    from_nut_at_last: float
    """The same at the last string. [unit]"""
    angle_degrees: float
    """Slant against a line square to the strings, positive where the last string is the longer. [degree]"""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: tuple[BreakPoint, ...]
    """Where every string breaks."""


@dataclass(frozen=True, slots=True)
class TravelFit:
    """What adjustable saddles of limited travel give."""

    least: float
    """Setback at the end of the travel nearest to the nut. [unit]"""
    most: float
    """Setback at the other end. [unit]"""
    all_reached: bool
    """Whether every string gets its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: tuple[BreakPoint, ...]
    """Where every string breaks."""
