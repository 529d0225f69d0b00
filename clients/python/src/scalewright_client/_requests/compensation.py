"""What compensation is to be best for, and the bridges and slots that it has to serve."""

from collections.abc import Iterable
from typing import Required, TypedDict

from scalewright_client._requests.quantities import Length
from scalewright_client._requests.stringing import Heights
from scalewright_client._requests.strings import StringRequest, Tuning

__all__ = ["GluedBridge", "OptimiseFor", "StraightSlot", "StringSet", "Travel"]


class OptimiseFor(TypedDict, total=False):
    """Which frets the setbacks are to be best for."""

    frets: Required[list[int]]
    """Numbers of the frets, each once."""
    weights: list[float]
    """How much the squared error of each counts; all alike unless given. [-]"""


class StraightSlot(TypedDict, total=False):
    """A straight slot that is to be cut."""

    thickness: Required[Length]
    """Thickness of the saddle that stands in it. [unit, or its own]"""
    spread: Length
    """Across the bridge from the first string to the last, which lie evenly between. [unit, or its own]"""
    across: list[Length]
    """Instead: where every string crosses the bridge, from the first one's place. [unit, or their own]"""


class Travel(TypedDict):
    """How far adjustable saddles go, as saddle setbacks."""

    least: Length
    """Setback at the end of the travel nearest to the nut. [unit, or its own]"""
    most: Length
    """Setback at the other end. [unit, or its own]"""


class GluedBridge(TypedDict, total=False):
    """A bridge as it stands on an instrument, measured from the nut's front edge along the strings."""

    slot_at_first: Required[Length]
    """To the centre line of the slot, along the first string. [unit, or its own]"""
    slot_at_last: Required[Length]
    """To the centre line of the slot, along the last string. [unit, or its own]"""
    thickness: Required[Length]
    """Thickness of the saddle. [unit, or its own]"""
    spread: Length
    """Across the bridge from the first string to the last, which lie evenly between. [unit, or its own]"""
    across: list[Length]
    """Instead: where every string crosses the bridge, from the first one's place. [unit, or their own]"""
    widest_slot: Length
    """Widest slot that the wood around it allows. [unit, or its own]"""
    front: Length
    """To where a new slot may begin at the earliest. [unit, or its own]"""
    back: Length
    """To where a new slot has to end. [unit, or its own]"""
    good_enough: float
    """What a string may keep beyond its least before another remedy is looked for; 1 unless given. [cent]"""


class StringSet(TypedDict, total=False):
    """Another set of strings, another tuning or another action for the same board."""

    name: Required[str]
    """Its name."""
    strings: Required[Iterable[StringRequest]]
    """Its strings."""
    tuning: Tuning
    """Open pitches of strings that give none."""
    heights: Heights
    """How high they lie; as high as the first set unless given."""
