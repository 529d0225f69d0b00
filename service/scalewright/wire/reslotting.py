"""Reslotting on the wire: a board beside the same board in equal steps."""

from pydantic import BaseModel, ConfigDict

from scalewright.wire.quantities import LengthOut

__all__ = ["ReslottingOut"]

_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class ReslottedNoteOut(BaseModel):
    """One fretted note on both boards, each with its own best saddle."""

    model_config = _READ_OFF

    fret: int
    """Number of the fret."""
    here: float
    """Error on this board. [cent]"""
    equal: float
    """Error on the board in equal steps. [cent]"""
    cost: float
    """What the spacing rule of this board adds: the first less the second. [cent]"""


class ReslottedStringOut(BaseModel):
    """One string on the board in equal steps."""

    model_config = _READ_OFF

    pitch: str
    """Open pitch, as given."""
    saddle_setback: LengthOut
    """From the end of the scale to the break point, positive away from the nut. [unit]"""
    nut_setback: LengthOut
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    rms_cents: float
    """Root mean square of the errors that remain on the frets that count. [cent]"""
    cents: list[ReslottedNoteOut]
    """Both boards at every fret."""


class ReslottingOut(BaseModel):
    """The same board in equal steps at the same true scale."""

    model_config = _READ_OFF

    steps: int
    """Equal steps to the octave."""
    true_scale: LengthOut
    """The true scale of both. [unit]"""
    rms_cents_here: float
    """Root mean square of what remains on this board, over all strings and the frets that count. [cent]"""
    rms_cents_equal: float
    """The same on the board in equal steps. [cent]"""
    strings: list[ReslottedStringOut]
    """The strings, in the order given."""
