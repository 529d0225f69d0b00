"""Bridges that are glued already: what each remedy reaches and leaves, from the least intrusive to the most."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from scalewright.lutherie.compensation.saddle_line import (
    BreakPoint,
    LineFamily,
    Wishes,
    break_points,
    fit_line,
    narrowest_line,
    pooled_rms,
)
from scalewright.lutherie.compensation.slot import across_of, angle_between, ends_of
from scalewright.lutherie.errors import ImpossibleSetupError
from scalewright.lutherie.estimate import Floats

__all__ = ["BridgeAdvice", "GluedBridge", "Remedy", "RemedyName", "advise"]

RemedyName: TypeAlias = Literal[
    "as_it_is", "within_saddle", "wider_slot", "slanted_slot", "new_slot", "moved_bridge", "moved_bridge_and_new_slot"
]
"""What may be done, from the least intrusive to the most."""


_ASTRAY = 0.1
"""Share of the scale by which a slot may miss its end and still be one: far more than any does; our choice. [-]"""


@dataclass(frozen=True, slots=True)
class GluedBridge:
    """A bridge as it stands on an instrument."""

    slot_at_first: float
    """From the nut's front edge to the centre line of the slot, along the first string. [mm]"""
    slot_at_last: float
    """The same along the last string. [mm]"""
    thickness: float
    """Thickness of the saddle. [mm]"""
    spread: float | None = None
    """Distance across the bridge from the first string to the last; strings lie evenly between. [mm]"""
    across: Sequence[float] | None = None
    """Instead of ``spread``: where every string crosses the bridge, from the first one's place. [mm]"""
    widest_slot: float | None = None
    """Widest slot that the wood around it allows; None where that is not known. [mm]"""
    front: float | None = None
    """From the nut's front edge to where a new slot may begin at the earliest; None without a limit. [mm]"""
    back: float | None = None
    """From the nut's front edge to where a new slot must end; None without a limit. [mm]"""
    good_enough: float = 1.0
    """What a string may keep beyond its least before another remedy is looked for. [cent]"""


@dataclass(frozen=True, slots=True)
class Remedy:
    """One thing that may be done."""

    remedy: RemedyName
    """Which."""
    good_enough: bool
    """Whether no string keeps more than it may beyond its least."""
    all_reached: bool
    """Whether every string breaks at its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    slot_width: float
    """Width of the slot. [mm]"""
    shift_at_first: float
    """How far the slot's centre line moves at the first string, positive away from the nut. [mm]"""
    shift_at_last: float
    """The same at the last string. [mm]"""
    angle_degrees: float
    """Slant of the slot, positive where the last string is the longer. [degree]"""
    strings: list[BreakPoint]
    """Where every string breaks."""
    advice: str
    """What it means at the bench, with the usual cautions."""


@dataclass(frozen=True, slots=True)
class BridgeAdvice:
    """What helps a bridge that is glued already."""

    suggestion: RemedyName
    """The least intrusive remedy that is good enough, or the one that leaves least."""
    good_enough: float
    """What a string may keep beyond its least. [cent]"""
    remedies: list[Remedy]
    """The remedies, from the least intrusive to the most; those that the bridge does not allow are left out."""


_DUST = (
    "Rout with sharp cutters and the work held fast, guard and hands clear, eyes, ears and lungs protected; bone and "
    "rosewood dust are harmful. Follow your local codes and qualified practice."
)

_ADVICE: dict[RemedyName, str] = {
    "as_it_is": "Nothing is changed: every string breaks over the middle of the saddle.",
    "within_saddle": (
        "File the top of the saddle so that each string breaks where it should; nothing but the saddle changes. "
        "Wear a mask, as bone dust is harmful."
    ),
    "wider_slot": "Widen the slot on one or both sides, its sides staying parallel, and fit a thicker saddle. " + _DUST,
    "slanted_slot": (
        "Recut the slot wider and at a slant that swallows the old one, and fit a thicker saddle; leave enough wood "
        "in front, where the saddle leans. " + _DUST
    ),
    "new_slot": "Plug the old slot with matching wood, let the glue cure, and cut a new one where this says. " + _DUST,
    "moved_bridge": (
        "Take the bridge off and glue it where this says. Heat, steam and lifting fibres can ruin a top, and a joint "
        "that fails under tension can hurt: this is work for a qualified repairer. Check the distance on both sides "
        "before gluing."
    ),
    "moved_bridge_and_new_slot": (
        "The bridge would have to move, and its slot to be cut at another slant as well. This is work for a qualified "
        "repairer. " + _DUST
    ),
}


def advise(wishes: Wishes, pitches: list[str], scale: float, bridge: GluedBridge) -> BridgeAdvice:
    """Compare the remedies for a bridge that is glued already.

    Parameters
    ----------
    wishes : Wishes
        What the strings want.
    pitches : list of str
        Their pitches.
    scale : float
        X0, the length from the pattern's zero line that setbacks are counted from. [mm]
    bridge : GluedBridge
        The bridge as it stands.

    Returns
    -------
    BridgeAdvice
        What each remedy leaves, and the least intrusive one that is good enough.

    Raises
    ------
    ImpossibleSetupError
        A slot in front of the last fret, one wider than the widest, or limits that leave no room.
    """
    across, spread = across_of(bridge.spread, bridge.across, len(pitches), "bridge")
    pattern = ends_of(across)
    ends = np.array([bridge.slot_at_first, bridge.slot_at_last]) - scale
    _refuse(wishes, bridge, ends, scale)
    now, half = pattern @ ends, 0.5 * bridge.thickness
    every = np.ones((len(across), 1))
    unbounded = np.full(2, np.inf)
    straight, _ = narrowest_line(wishes.best.saddle, across)

    remedies: list[Remedy] = []

    def take(remedy: RemedyName, width: float, centre: Floats, saddle: Floats) -> None:
        points = break_points(wishes, pitches, saddle)
        first, last = float(centre[0]), float(centre[-1])
        remedies.append(
            Remedy(
                remedy=remedy,
                good_enough=all(p.rms_cents - p.least_rms_cents <= bridge.good_enough for p in points),
                all_reached=all(p.reached for p in points),
                rms_cents=pooled_rms([point.rms_cents for point in points]),
                slot_width=width,
                shift_at_first=first - float(now[0]),
                shift_at_last=last - float(now[-1]),
                angle_degrees=angle_between(first, last, spread),
                strings=points,
                advice=_ADVICE[remedy],
            )
        )

    def search(remedy: RemedyName, width: float, family: LineFamily) -> None:
        line = fit_line(wishes, family, 0.5 * width)
        take(remedy, width, line.centre, line.saddle)

    take("as_it_is", bridge.thickness, now, now)
    take("within_saddle", bridge.thickness, now, np.clip(wishes.best.saddle, now - half, now + half))
    middle = np.array([_middle(wishes.best.saddle - now)])
    if bridge.widest_slot is not None and bridge.widest_slot > bridge.thickness:
        # The new slot swallows the old one, so that its centre line moves by half of what is cut away at most.
        room = 0.5 * (bridge.widest_slot - bridge.thickness)
        family = LineFamily(now, every, middle, np.array([-room]), np.array([room]))
        saddle = fit_line(wishes, family, 0.5 * bridge.widest_slot).saddle
        # No more is cut away than the break points need.
        front, back = min(-half, float((saddle - now).min())), max(half, float((saddle - now).max()))
        take("wider_slot", back - front, now + 0.5 * (front + back), saddle)
        search("slanted_slot", bridge.widest_slot, LineFamily(0.0 * now, pattern, straight, ends - room, ends + room))
    low = -unbounded if bridge.front is None else np.full(2, bridge.front - scale + half)
    high = unbounded if bridge.back is None else np.full(2, bridge.back - scale - half)
    search("new_slot", bridge.thickness, LineFamily(0.0 * now, pattern, straight, low, high))
    search("moved_bridge", bridge.thickness, LineFamily(now, every, middle, -unbounded[:1], unbounded[:1]))
    search(
        "moved_bridge_and_new_slot", bridge.thickness, LineFamily(0.0 * now, pattern, straight, -unbounded, unbounded)
    )

    least = min(remedies, key=lambda remedy: remedy.rms_cents)
    suggested = next((remedy for remedy in remedies if remedy.good_enough), least)
    return BridgeAdvice(suggested.remedy, bridge.good_enough, remedies)


def _middle(distances: Floats) -> float:
    """Middle between the least and the largest. [mm]"""
    return 0.5 * float(distances.min() + distances.max())


def _refuse(wishes: Wishes, bridge: GluedBridge, ends: Floats, scale: float) -> None:
    """Refuse a bridge that cannot be."""
    room = float(wishes.strings.remaining.min())  # from the last fret to the end of the scale
    if not float(ends.min()) - 0.5 * bridge.thickness + room > 0.0:
        member = "slot_at_first" if ends[0] <= ends[1] else "slot_at_last"
        message = "the saddle would stand in front of the last fret; slot positions are measured from the nut"
        raise ImpossibleSetupError(message, field=("bridge", member))
    if float(np.abs(ends).max()) > _ASTRAY * scale:
        member = "slot_at_first" if abs(ends[0]) >= abs(ends[1]) else "slot_at_last"
        message = (
            f"the slot would stand {np.abs(ends).max():.0f} mm from the end of the scale; slot positions are measured "
            "from the nut's front edge along the strings"
        )
        raise ImpossibleSetupError(message, field=("bridge", member), scale_mm=scale)
    if bridge.widest_slot is not None and bridge.widest_slot < bridge.thickness:
        message = "the widest slot that the bridge allows is narrower than the one that is there"
        raise ImpossibleSetupError(message, field=("bridge", "widest_slot"))
    if bridge.back is not None and not bridge.back - scale - bridge.thickness + room > 0.0:
        message = "a new slot that ends there would stand in front of the last fret; back is measured from the nut"
        raise ImpossibleSetupError(message, field=("bridge", "back"))
    if bridge.front is not None and bridge.back is not None and bridge.back - bridge.front < bridge.thickness:
        message = "between front and back there is no room for the slot; both are measured from the nut"
        raise ImpossibleSetupError(message, field=("bridge", "back"))
