"""What helps a bridge that is glued already."""

from dataclasses import dataclass

from scalewright_client._results.slot import BreakPoint

__all__ = ["BridgeAdvice", "Remedy"]


@dataclass(frozen=True, slots=True)
class Remedy:
    """One thing that may be done with a bridge that is glued already."""

    remedy: str
    """Which."""
    good_enough: bool
    """Whether no string keeps more than it may beyond its least."""
    all_reached: bool
    """Whether every string breaks at its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    slot_width: float
    """Width of the slot. [unit]"""
    shift_at_first: float
    """How far the slot's centre line moves at the first string, positive away from the nut. [unit]"""
    shift_at_last: float
    """The same at the last string. [unit]"""
    angle_degrees: float
    """Slant of the slot, positive where the last string is the longer. [degree]"""
    strings: tuple[BreakPoint, ...]
    """Where every string breaks."""
    advice: str
    """What it means at the bench, with the usual cautions."""


@dataclass(frozen=True, slots=True)
class BridgeAdvice:
    """What helps a bridge that is glued already."""

    suggestion: str
    """The least intrusive remedy that is good enough, or the one that leaves least."""
    good_enough: float
    """What a string may keep beyond its least. [cent]"""
    remedies: tuple[Remedy, ...]
    """The remedies, from the least intrusive to the most; those that the bridge does not allow are left out."""
