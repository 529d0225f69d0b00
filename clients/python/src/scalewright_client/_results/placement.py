"""Where one bridge goes that has to serve several string sets."""

from dataclasses import dataclass

from scalewright_client._results.slot import BreakPoint

__all__ = ["PlacedSet", "Placement"]


@dataclass(frozen=True, slots=True)
class PlacedSet:
    """What one string set wants, and what it gets from the best placement."""

    name: str
    """Name of the set; "strings" is the one asked for first."""
    least: float
    """Least saddle setback that one of its strings wants. [unit]"""
    most: float
    """Largest saddle setback that one of its strings wants. [unit]"""
    all_reached: bool
    """Whether every string gets its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: tuple[BreakPoint, ...]
    """Where every string breaks with the bridge placed so."""


@dataclass(frozen=True, slots=True)
class Placement:
    """Where a bridge has to be glued for several string sets."""

    reach: float
    """How far along the strings a break point can be moved on the bridge. [unit]"""
    needed_reach: float
    """Reach that would serve all the strings of all the sets. [unit]"""
    all_reached: bool
    """Whether one placement serves them all."""
    least: float
    """Setback of the front end of the reach with the bridge placed best. [unit]"""
    most: float
    """Setback of its back end. [unit]"""
    least_from_nut: float
    """From the pattern's zero line to the front end of the reach. [unit]"""
    most_from_nut: float
    """From the pattern's zero line to its back end. [unit]"""
    earliest: float
    """Least setback of the front end that still serves all; equal to ``latest`` where none does. [unit]"""
    latest: float
    """Largest setback of the front end that still serves all. [unit]"""
    sets: tuple[PlacedSet, ...]
    """The sets, the one asked for first."""
