"""How far out of tune a strung board is."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Note
from scalewright_client._results.rules import Rule
from scalewright_client._results.strings import FretRelief, OpenString, StringHeights

__all__ = ["Intonation", "SoundedNote", "StringIntonation"]


@dataclass(frozen=True, slots=True)
class SoundedNote:
    """How sharp one fretted note is with the open string in tune, and why."""

    fret: int
    """Number of the fret."""
    cents: float
    """The error, positive sharp: ``spacing`` + ``stretch`` + ``stiffness`` + ``geometry``, added in this order.
    [cent]"""
    spacing: float
    """Where the fret stands, for an ideal string that breaks at the ends of the scale. [cent]"""
    stretch: float
    """Tension and mass of the string, pressed down and thereby stretched. [cent]"""
    stiffness: float
    """Resistance to bending, which counts more the shorter the string. [cent]"""
    geometry: float
    """Lengths: setbacks of saddle and nut, and the slope of the string. [cent]"""


@dataclass(frozen=True, slots=True)
class StringIntonation(OpenString):
    """One string at all its frets."""

    saddle_setback: float
    """From the end of the scale to the break point on the saddle, positive away from the nut. [unit]"""
    nut_setback: float
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    saddle_from_nut: float
    """From the nut's front edge to the break point, parallel to the fret plane. [unit]"""
    rms_cents: float
    """Root mean square of the errors at all frets. [cent]"""
    worst_fret: int
    """Fret with the largest error."""
    worst_cents: float
    """Error there. [cent]"""
    cents: tuple[SoundedNote, ...]
    """Errors at every fret."""


@dataclass(frozen=True, slots=True)
class Intonation:
    """How far out of tune a strung board is."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    rule: Rule
    """Spacing rule of the board."""
    layout_scale: float
    """The length that the rule was applied to. [unit]"""
    true_scale: float | None
    """Twice the distance from the pattern's zero line to the octave fret; None without one. [unit]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave."""
    setback_from: str
    """Whose end the saddle setbacks are counted from."""
    heights: StringHeights
    """How high the strings were taken to lie."""
    relief: FretRelief | None
    """How far the fret tops were taken to leave the straight line; None where they lie on it."""
    target_cents: tuple[float, ...]
    """Pitch above the open string that every fret should give. [cent]"""
    boundary_factor: float
    """Ends of the speaking length that were taken as clamped."""
    stiffness: str
    """What the stiffness of a fretted note followed."""
    strings: tuple[StringIntonation, ...]
    """The strings, in the order given."""
    notes: tuple[Note, ...]
    """What the numbers of all strings rest on."""
