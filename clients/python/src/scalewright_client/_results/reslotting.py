"""A board beside the same board in equal steps."""

from dataclasses import dataclass

__all__ = ["ReslottedNote", "ReslottedString", "Reslotting"]


@dataclass(frozen=True, slots=True)
class ReslottedNote:
    """One fretted note on both boards, each with its own best saddle."""

    fret: int
    """Number of the fret."""
    here: float
    """Error on this board. [cent]"""
    equal: float
    """Error on the board in equal steps. [cent]"""
    cost: float
    """What the spacing rule of this board adds: the first less the second. [cent]"""


@dataclass(frozen=True, slots=True)
class ReslottedString:
    """One string on the board in equal steps."""

    pitch: str
    """Open pitch, as given."""
    saddle_setback: float
    """From the end of the scale to the break point, positive away from the nut. [unit]"""
    nut_setback: float
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    rms_cents: float
    """Root mean square of the errors that remain on the frets that count. [cent]"""
    cents: tuple[ReslottedNote, ...]
    """Both boards at every fret."""


@dataclass(frozen=True, slots=True)
class Reslotting:
    """The same board in equal steps at the same true scale."""

    steps: int
    """Equal steps to the octave."""
    true_scale: float
    """The true scale of both. [unit]"""
    rms_cents_here: float
    """Root mean square of what remains on this board, over all strings and the frets that count. [cent]"""
    rms_cents_equal: float
    """The same on the board in equal steps. [cent]"""
    strings: tuple[ReslottedString, ...]
    """The strings, in the order given."""
