"""Placement: where a bridge has to be glued so that several string sets, tunings and actions can be reached."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.compensation.saddle_line import (
    BreakPoint,
    LineFamily,
    Wishes,
    break_points,
    fit_line,
    pooled_rms,
)
from scalewright.lutherie.estimate import Floats

__all__ = ["PlacedSet", "Placement", "place_bridge"]


@dataclass(frozen=True, slots=True)
class PlacedSet:
    """What one string set wants, and what it gets from the best placement."""

    name: str
    """Name of the set."""
    least: float
    """Least saddle setback that one of its strings wants. [mm]"""
    most: float
    """Largest saddle setback that one of its strings wants. [mm]"""
    all_reached: bool
    """Whether every string gets its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[BreakPoint]
    """Where every string breaks with the bridge placed so."""


@dataclass(frozen=True, slots=True)
class Placement:
    """Where a bridge has to be glued for several string sets."""

    reach: float
    """How far along the strings a break point can be moved on the bridge. [mm]"""
    needed_reach: float
    """Reach that would serve all the strings of all the sets. [mm]"""
    all_reached: bool
    """Whether one placement serves them all."""
    least: float
    """Setback of the front end of the reach with the bridge placed best. [mm]"""
    most: float
    """Setback of its back end. [mm]"""
    least_from_nut: float
    """From the pattern's zero line to the front end of the reach. [mm]"""
    most_from_nut: float
    """From the pattern's zero line to its back end. [mm]"""
    earliest: float
    """Least setback of the front end that still serves all; equal to ``latest`` where none does. [mm]"""
    latest: float
    """Largest setback of the front end that still serves all. [mm]"""
    sets: list[PlacedSet]
    """The sets, the one asked for first."""


def place_bridge(
    sets: Sequence[tuple[str, list[str], Wishes]], together: Wishes, scale: float, reach: float
) -> Placement:
    """Best place of a bridge whose break points can be moved by a given reach.

    Parameters
    ----------
    sets : sequence of (name, pitches, Wishes)
        The string sets.
    together : Wishes
        All their strings, one set after the other.
    scale : float
        X0, the length from the pattern's zero line that setbacks are counted from. [mm]
    reach : float
        How far a break point can be moved along its string. [mm]

    Returns
    -------
    Placement
        Where one placement serves all, the one in the middle of those that do; otherwise the one that
        leaves the least error, with what it does not reach.
    """
    best = together.best.saddle
    low, high = float(best.min()), float(best.max())
    if high - low <= reach:
        centre = 0.5 * (low + high)
        earliest, latest = high - reach, low
    else:
        every = np.ones((len(best), 1))
        unbounded = np.full(1, np.inf)
        family = LineFamily(np.zeros(len(best)), every, np.array([0.5 * (low + high)]), -unbounded, unbounded)
        centre = float(fit_line(together, family, 0.5 * reach).centre[0])
        earliest = latest = centre - 0.5 * reach
    front, back = centre - 0.5 * reach, centre + 0.5 * reach
    return Placement(
        reach=reach,
        needed_reach=high - low,
        all_reached=high - low <= reach,
        least=front,
        most=back,
        least_from_nut=scale + front,
        most_from_nut=scale + back,
        earliest=earliest,
        latest=latest,
        sets=[_placed(*one, front, back) for one in sets],
    )


def _placed(name: str, pitches: list[str], wishes: Wishes, front: float, back: float) -> PlacedSet:
    """What one set gets."""
    wanted: Floats = wishes.best.saddle
    points = break_points(wishes, pitches, np.clip(wanted, front, back))
    return PlacedSet(
        name=name,
        least=float(wanted.min()),
        most=float(wanted.max()),
        all_reached=all(point.reached for point in points),
        rms_cents=pooled_rms([point.rms_cents for point in points]),
        strings=points,
    )
