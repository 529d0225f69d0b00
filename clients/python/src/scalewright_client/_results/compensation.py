"""Compensated saddle and nut positions, and what is left in cents."""

from dataclasses import dataclass

from scalewright_client._results.bridge import BridgeAdvice
from scalewright_client._results.estimate import Note
from scalewright_client._results.placement import Placement
from scalewright_client._results.reslotting import Reslotting
from scalewright_client._results.rules import Rule
from scalewright_client._results.slot import SlotFit, TravelFit
from scalewright_client._results.strings import OpenString, StringHeights

__all__ = ["CompensatedString", "Compensation", "FretCents", "OptimisedFor"]


@dataclass(frozen=True, slots=True)
class FretCents:
    """How sharp one fretted note is with the open string in tune."""

    fret: int
    """Number of the fret."""
    uncompensated: float
    """With saddle and nut at the ends of the scale; positive sharp. [cent]"""
    compensated: float
    """With both where this answer puts them; positive sharp. [cent]"""


@dataclass(frozen=True, slots=True)
class CompensatedString(OpenString):
    """Where one string breaks over the saddle and the nut."""

    saddle_setback: float
    """From the end of the scale to the break point on the saddle, positive away from the nut. [unit]"""
    nut_setback: float
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    saddle_from_nut: float
    """From the nut's front edge to the break point, parallel to the fret plane. [unit]"""
    saddle_from_fret_12: float | None
    """From fret 12 to the break point, parallel to the fret plane; None on a board without that fret. [unit]"""
    rms_cents: float
    """Root mean square of the errors that remain on the fretted notes that count. [cent]"""
    cents: tuple[FretCents, ...]
    """Errors at every fret."""


@dataclass(frozen=True, slots=True)
class OptimisedFor:
    """Which frets the setbacks are best for."""

    frets: tuple[int, ...]
    """Numbers of the frets."""
    weights: tuple[float, ...]
    """How much the squared error of each counted."""


@dataclass(frozen=True, slots=True)
class Compensation:
    """Saddle and nut positions of a set of strings."""

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
    nut: str
    """Whether the nut was set back too."""
    saddle: str
    """Whether every string has a setback of its own ("free") or all have one ("uniform")."""
    heights: StringHeights
    """How high the strings were taken to lie."""
    optimised_for: OptimisedFor
    """Frets and weights that the setbacks are best for."""
    target_cents: tuple[float, ...]
    """Pitch above the open string that every fret should give. [cent]"""
    boundary_factor: float
    """Ends of the speaking length that were taken as clamped."""
    stiffness: str
    """What the stiffness of a fretted note followed."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: tuple[CompensatedString, ...]
    """The strings, in the order given."""
    slot: SlotFit | None
    """The best straight slot; None unless asked for."""
    travel: TravelFit | None
    """What saddles of limited travel give; None unless asked for."""
    bridge: BridgeAdvice | None
    """What helps a bridge that is glued already; None unless asked for."""
    placement: Placement | None
    """Where to glue a bridge for all the string sets; None unless asked for."""
    reslotted: Reslotting | None
    """The same board in equal steps at the same true scale; None unless asked for."""
    notes: tuple[Note, ...]
    """What the numbers of all strings rest on."""
