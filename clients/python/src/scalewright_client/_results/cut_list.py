"""How the slots of a board are cut."""

from dataclasses import dataclass

__all__ = ["Blank", "Cut", "CutList", "WhatIf"]


@dataclass(frozen=True, slots=True)
class Cut:
    """One slot of a cut list; all distances from the origin, along the centre line."""

    name: str
    """What the fret is called."""
    running: float
    """To the middle of the slot, exactly. [unit]"""
    near_edge: float
    """To the face of the blade nearer to the origin. [unit]"""
    far_edge: float
    """To the face farther from the origin. [unit]"""
    set_to: float
    """What to set, for the part of the blade that is set, rounded to the step. [unit]"""
    error: float
    """By how much rounding moves the slot, positive towards the bridge. [unit]"""
    error_cents: float | None
    """How much sharper the fret sounds for it; None where it would stand beyond the end of the scale. [cent]"""
    length: float
    """Length of the slot. [unit]"""
    angle_degrees: float
    """How far the slot leans, positive where its bass end is nearer to the bridge. [degree]"""
    depth: float | None
    """Depth below the surface; None where no tang was given. [unit]"""


@dataclass(frozen=True, slots=True)
class WhatIf:
    """What a way of setting the saw costs, for every slot rounded to a step."""

    method: str
    """All "running" from one origin, or each "fret_to_fret" from the slot before it."""
    step: float
    """What distances are rounded to. [unit]"""
    worst_fret: str
    """Slot that is off most, in cents."""
    worst_error: float
    """By how much, positive towards the bridge. [unit]"""
    worst_cents: float | None
    """How much sharper that fret sounds for it; None where it would stand beyond the end of the scale. [cent]"""
    expected_at_last: float
    """Standard deviation to be expected at the last slot, with an even chance for every rounding. [unit]"""


@dataclass(frozen=True, slots=True)
class Blank:
    """The smallest piece of wood that holds the board, before any allowance for trimming."""

    length: float
    """Along the centre line. [unit]"""
    width: float
    """Across. [unit]"""


@dataclass(frozen=True, slots=True)
class CutList:
    """Settings of a saw for every slot of a board."""

    origin: str
    """Where all distances start."""
    blade: str
    """Which part of the blade is set."""
    step: float | None
    """What ``set_to`` is rounded to; None for no rounding. [unit]"""
    kerf: float
    """Width of the blade's cut. [unit]"""
    cuts: tuple[Cut, ...]
    """The slots, in the order in which they stand on the board."""
    smallest_blank: Blank
    """The smallest piece of wood that holds the board."""
    what_if: tuple[WhatIf, ...]
    """What rounding costs: to the step, and to a 64th of an inch; from one origin, and from fret to fret."""
