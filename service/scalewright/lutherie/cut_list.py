"""Cut lists: where a saw is set for every slot, and what rounding and measuring from fret to fret would cost."""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

from scalewright.lutherie.spacing import CENTS_PER_OCTAVE

__all__ = [
    "SIXTY_FOURTH",
    "BladeSide",
    "Blank",
    "Cut",
    "CutList",
    "CutOrigin",
    "MarkedSlot",
    "Method",
    "Saw",
    "WhatIf",
    "list_cuts",
    "set_to_step",
]

SIXTY_FOURTH = 25.4 / 64.0
"""A 64th of an inch. [mm]"""

CutOrigin: TypeAlias = Literal["zero_line", "nut_end", "far_end"]
"""Where all running distances start: the zero line of the pattern, or one of the ends of the board."""

BladeSide: TypeAlias = Literal["centre", "nut_side", "bridge_side"]
"""Which part of the blade is set to a distance: its middle, or one of its faces."""

Method: TypeAlias = Literal["running", "fret_to_fret"]
"""All distances from one origin, or each from the slot before it."""


@dataclass(frozen=True, slots=True)
class Saw:
    """How the slots are cut."""

    step: float | None = None
    """The smallest step that the machine or the rule can be set to; None for no rounding. [mm]"""
    origin: CutOrigin = "zero_line"
    """Where the distances start."""
    blade: BladeSide = "centre"
    """Which part of the blade is set."""


class MarkedSlot(NamedTuple):
    """A slot as the saw sees it, along the centre line."""

    name: str
    """What the fret is called."""
    at: float
    """Middle of the slot, from the zero line. [mm]"""
    sounding: float
    """From there to the end of the scale. [mm]"""
    length: float
    """Length of the slot. [mm]"""
    angle_degrees: float
    """How far it leans from square. [degree]"""
    depth: float | None
    """Depth below the surface; None where no tang was given. [mm]"""


@dataclass(frozen=True, slots=True)
class Cut:
    """One slot of a cut list; all distances from the origin, along the centre line."""

    name: str
    """What the fret is called."""
    running: float
    """To the middle of the slot, exactly. [mm]"""
    near_edge: float
    """To the face of the blade nearer to the origin. [mm]"""
    far_edge: float
    """To the face farther from the origin. [mm]"""
    set_to: float
    """What to set, for the part of the blade that is set, rounded to the step. [mm]"""
    error: float
    """By how much rounding moves the slot, positive towards the bridge. [mm]"""
    error_cents: float | None
    """How much sharper the fret sounds for it; None where it would stand beyond the end of the scale. [cent]"""
    length: float
    """Length of the slot. [mm]"""
    angle_degrees: float
    """How far the slot leans, positive where its bass end is nearer to the bridge. [degree]"""
    depth: float | None
    """Depth below the surface; None where no tang was given. [mm]"""


@dataclass(frozen=True, slots=True)
class WhatIf:
    """What a way of setting the saw costs, for every slot rounded to a step."""

    method: Method
    """All from one origin, or each from the slot before."""
    step: float
    """What distances are rounded to. [mm]"""
    worst_fret: str
    """Slot that is off most, in cents."""
    worst_error: float
    """By how much, positive towards the bridge. [mm]"""
    worst_cents: float | None
    """How much sharper that fret sounds for it; None where it would stand beyond the end of the scale. [cent]"""
    expected_at_last: float
    """Standard deviation to be expected at the last slot, with an even chance for every rounding. [mm]"""


@dataclass(frozen=True, slots=True)
class Blank:
    """The smallest piece of wood that holds the board, before any allowance for trimming."""

    length: float
    """Along the centre line. [mm]"""
    width: float
    """Across. [mm]"""


@dataclass(frozen=True, slots=True)
class CutList:
    """Settings of a saw for every slot of a board."""

    origin: CutOrigin
    """Where all distances start."""
    blade: BladeSide
    """Which part of the blade is set."""
    step: float | None
    """What `set_to` is rounded to; None for no rounding. [mm]"""
    kerf: float
    """Width of the blade's cut. [mm]"""
    cuts: list[Cut]
    """The slots, in the order in which they stand on the board."""
    smallest_blank: Blank
    """The smallest piece of wood that holds the board."""
    what_if: list[WhatIf]
    """What rounding costs, from one origin and from fret to fret."""


def set_to_step(distance: float, step: float | None) -> float:
    """Nearest setting of a machine to a distance. [mm]"""
    return distance if step is None else math.floor(distance / step + 0.5) * step


def _sharper(sounding: float, moved: float) -> float | None:
    """How much sharper a fret sounds that is moved towards the bridge; None beyond the end of the scale. [cent]"""
    left = sounding - moved
    return CENTS_PER_OCTAVE * math.log2(sounding / left) if left > 0.0 else None


def list_cuts(slots: Sequence[MarkedSlot], saw: Saw, kerf: float, ends: tuple[float, float], blank: Blank) -> CutList:
    """Settings of the saw for every slot of a board.

    Parameters
    ----------
    slots : sequence of MarkedSlot
        The slots, from the nut on.
    saw : Saw
        How they are cut.
    kerf : float
        Width of the cut, square to the slot. [mm]
    ends : pair of float
        Where the centre line meets the two ends of the board, from the zero line. [mm]
    blank : Blank
        Length and width of the board.

    Returns
    -------
    CutList
        All from one origin; and what rounding costs.
    """
    origin, sign = {"zero_line": (0.0, 1.0), "nut_end": (ends[0], 1.0), "far_end": (ends[1], -1.0)}[saw.origin]
    cuts = []
    for slot in slots:
        running = sign * (slot.at - origin)
        half = 0.5 * kerf / math.cos(math.radians(slot.angle_degrees))
        # The side of the bridge is the far side, unless distances run back from the far end.
        offset = {"centre": 0.0, "nut_side": -sign * half, "bridge_side": sign * half}[saw.blade]
        set_to = set_to_step(running + offset, saw.step)
        error = sign * (set_to - (running + offset)) if saw.step is not None else 0.0
        cuts.append(
            Cut(
                name=slot.name,
                running=running,
                near_edge=running - half,
                far_edge=running + half,
                set_to=set_to,
                error=error,
                error_cents=_sharper(slot.sounding, error),
                length=slot.length,
                angle_degrees=slot.angle_degrees,
                depth=slot.depth,
            )
        )
    steps = [SIXTY_FOURTH] if saw.step in {None, SIXTY_FOURTH} else [saw.step, SIXTY_FOURTH]
    ordered = list(slots) if sign > 0.0 else list(reversed(slots))
    methods: tuple[Method, Method] = ("running", "fret_to_fret")
    return CutList(
        origin=saw.origin,
        blade=saw.blade,
        step=saw.step,
        kerf=kerf,
        cuts=cuts,
        smallest_blank=blank,
        what_if=[_what_if(ordered, origin, sign, method, step) for step in steps if step for method in methods],
    )


def _size(cents: float | None) -> float:
    """How far off a fret is; one without a pitch is farther off than any. [cent]"""
    return math.inf if cents is None else abs(cents)


def _what_if(slots: Sequence[MarkedSlot], origin: float, sign: float, method: Method, step: float) -> WhatIf:
    """Cost of rounding every setting to a step."""
    running = [sign * (slot.at - origin) for slot in slots]
    if method == "running":
        cut = [set_to_step(distance, step) for distance in running]
        settings = 1
    else:
        gaps = [after - before for before, after in itertools.pairwise([0.0, *running])]
        cut = list(itertools.accumulate(set_to_step(gap, step) for gap in gaps))
        settings = len(slots)
    errors = [sign * (at - exact) for at, exact in zip(cut, running, strict=True)]
    cents = [_sharper(slot.sounding, error) for slot, error in zip(slots, errors, strict=True)]
    worst = max(range(len(slots)), key=lambda index: _size(cents[index]))
    return WhatIf(
        method=method,
        step=step,
        worst_fret=slots[worst].name,
        worst_error=errors[worst],
        worst_cents=cents[worst],
        # A rounding is even between half a step either way (JCGM 100, 4.3.7); independent ones add by squares.
        expected_at_last=step * math.sqrt(settings / 12.0),
    )
