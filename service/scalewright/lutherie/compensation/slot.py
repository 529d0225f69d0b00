"""Slots and saddles that are not free: a straight slot across the bridge, and saddles of limited travel."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

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
from scalewright.lutherie.errors import ImpossibleSetupError
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.phrases import counted

__all__ = [
    "SlotFit",
    "StraightSlot",
    "Travel",
    "TravelFit",
    "across_of",
    "angle_between",
    "ends_of",
    "fit_slot",
    "fit_travel",
]


@dataclass(frozen=True, slots=True)
class StraightSlot:
    """A straight slot that is to be cut."""

    thickness: float
    """Thickness of the saddle that stands in it. [mm]"""
    spread: float | None = None
    """Distance across the bridge from the first string to the last; strings lie evenly between. [mm]"""
    across: Sequence[float] | None = None
    """Instead of ``spread``: where every string crosses the bridge, from the first one's place. [mm]"""


@dataclass(frozen=True, slots=True)
class SlotFit:
    """The best straight slot for a set of strings."""

    thickness: float
    """Thickness of the saddle. [mm]"""
    needed_thickness: float
    """Thickness that would let every string break at its best, in the slot that needs least. [mm]"""
    fits: bool
    """Whether all the best break points lie on the saddle."""
    setback_at_first: float
    """Setback of the slot's centre line at the first string. [mm]"""
    setback_at_last: float
    """The same at the last string. [mm]"""
    from_nut_at_first: float
    """From the pattern's zero line to the slot's centre line at the first string. [mm]"""
    from_nut_at_last: float
    """The same at the last string. [mm]"""
    angle_degrees: float
    """Slant against a line square to the strings, positive where the last string is the longer. [degree]"""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[BreakPoint]
    """Where every string breaks."""


@dataclass(frozen=True, slots=True)
class Travel:
    """How far adjustable saddles go; all alike."""

    least: float
    """Setback at the end of the travel nearest to the nut. [mm]"""
    most: float
    """Setback at the other end. [mm]"""


@dataclass(frozen=True, slots=True)
class TravelFit:
    """What adjustable saddles of limited travel give."""

    least: float
    """Setback at the end of the travel nearest to the nut. [mm]"""
    most: float
    """Setback at the other end. [mm]"""
    all_reached: bool
    """Whether every string gets its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[BreakPoint]
    """Where every string breaks."""


def across_of(spread: float | None, across: Sequence[float] | None, n: int, field: str) -> tuple[Floats, float]:
    """Where strings lie across a bridge, from 0 at the first to 1 at the last, and how wide they spread. [-, mm]

    Raises
    ------
    ImpossibleSetupError
        Neither or both of the two, places of another number than the strings, or out of order.
    """
    if across is None:
        if spread is None:
            message = "the strings' places across the bridge are missing; give spread, from the first to the last"
            raise ImpossibleSetupError(message, field=(field, "spread"), example="58 mm")
        return (np.arange(n) / max(1, n - 1)).astype(np.float64), spread
    if spread is not None:
        message = "spread and across say the same thing; give one of them"
        raise ImpossibleSetupError(message, field=(field, "across"))
    if len(across) != n:
        message = (
            f"{counted(n, 'string')} and {counted(len(across), 'place')} on the bridge do not match; give one for each"
        )
        raise ImpossibleSetupError(message, field=(field, "across"), given=len(across), needed=n)
    places = np.array(across, dtype=np.float64) - across[0]
    if n > 1 and not (np.diff(places) > 0.0).all():
        message = "the places across the bridge ascend from the first string to the last"
        raise ImpossibleSetupError(message, field=(field, "across"))
    width = float(places[-1])
    return (places / width if n > 1 else places), width


def ends_of(across: Floats) -> Floats:
    """How a line's setbacks answer to those of its two ends, shape (n_strings, 2). [-]"""
    return np.stack([1.0 - across, across], axis=1)


def fit_slot(wishes: Wishes, pitches: list[str], scale: float, slot: StraightSlot) -> SlotFit:
    """Line of the straight slot that suits a set of strings best.

    Parameters
    ----------
    wishes : Wishes
        What the strings want.
    pitches : list of str
        Their pitches.
    scale : float
        X0, the length from the pattern's zero line that setbacks are counted from. [mm]
    slot : StraightSlot
        The saddle's thickness and where the strings lie.

    Returns
    -------
    SlotFit
        If the saddle is thick enough for all the best break points, the slot that has them as near to its
        centre line as can be; otherwise the one that leaves the least error.

    Raises
    ------
    ImpossibleSetupError
        Strings whose places across the bridge are missing or out of order.
    """
    across, spread = across_of(slot.spread, slot.across, len(pitches), "slot")
    ends, deviation = narrowest_line(wishes.best.saddle, across)
    pattern = ends_of(across)
    limits = np.full(2, np.inf)
    if 2.0 * deviation <= slot.thickness:
        centre, saddle = pattern @ ends, wishes.best.saddle
    else:
        family = LineFamily(np.zeros(len(across)), pattern, ends, -limits, limits)
        line = fit_line(wishes, family, 0.5 * slot.thickness)
        centre, saddle = line.centre, line.saddle
    points = break_points(wishes, pitches, saddle)
    first, last = float(centre[0]), float(centre[-1])
    return SlotFit(
        thickness=slot.thickness,
        needed_thickness=2.0 * deviation,
        fits=2.0 * deviation <= slot.thickness,
        setback_at_first=first,
        setback_at_last=last,
        from_nut_at_first=scale + first,
        from_nut_at_last=scale + last,
        angle_degrees=angle_between(first, last, spread),
        rms_cents=pooled_rms([point.rms_cents for point in points]),
        strings=points,
    )


def angle_between(first: float, last: float, spread: float) -> float:
    """Slant of a line between its setbacks at the first and the last string. [degree]"""
    return math.degrees(math.atan2(last - first, spread)) if last != first else 0.0


def fit_travel(wishes: Wishes, pitches: list[str], travel: Travel) -> TravelFit:
    """Best that adjustable saddles of limited travel can give.

    Parameters
    ----------
    wishes : Wishes
        What the strings want.
    pitches : list of str
        Their pitches.
    travel : Travel
        How far the saddles go.

    Returns
    -------
    TravelFit
        Every saddle at its best, or at the end of its travel that is nearest to it.

    Raises
    ------
    ImpossibleSetupError
        A travel that ends before it begins, or in front of the last fret.
    """
    if not travel.least <= travel.most:
        message = "the travel ends before it begins; least is the setback nearest to the nut"
        raise ImpossibleSetupError(message, field=("travel", "most"))
    if not travel.least + wishes.strings.remaining.min() > 0.0:
        message = "the travel begins in front of the last fret; setbacks count from the end of the true scale"
        raise ImpossibleSetupError(message, field=("travel", "least"), example="-2 mm")
    points = break_points(wishes, pitches, np.clip(wishes.best.saddle, travel.least, travel.most))
    return TravelFit(
        least=travel.least,
        most=travel.most,
        all_reached=all(point.reached for point in points),
        rms_cents=pooled_rms([point.rms_cents for point in points]),
        strings=points,
    )
