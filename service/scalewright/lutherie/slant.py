"""Slants: whether the saddle lines of two fan parts lie at the same angle across the strings."""

import math
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np

from scalewright.lutherie.decision import Decision, Mixtures, decide
from scalewright.lutherie.errors import refused_at
from scalewright.lutherie.estimate import Estimate
from scalewright.lutherie.known import Known
from scalewright.lutherie.pairing import Demands, distances_to_frets
from scalewright.lutherie.part import Side
from scalewright.lutherie.ruling import Interval
from scalewright.lutherie.spacing import Rule

__all__ = ["HeldSlants", "Slant", "hold_slants", "slant_of"]

_Lines: TypeAlias = dict[Side, Known]


@dataclass(frozen=True, slots=True)
class Slant:
    """How the saddle lines of two fan parts lie against each other."""

    first: str
    """The part that carries the frets; of two such, or of none, the one named first."""
    second: str
    """The other part."""
    first_square_fret: int
    """Fret of the first that is square to its centre line; 0 for the nut."""
    second_square_fret: int
    """The same of the second."""
    offset: Estimate
    """With the middles of the saddle lines in line: how far the bass end of the second's lies from that of the first,
    positive farther from the nut; the treble end lies as far off the other way. [mm]"""
    decision: Decision
    """Whether that is within the tolerance."""


@dataclass(frozen=True, slots=True)
class HeldSlants:
    """Two fan parts held against each other, before the intervals of all are reckoned together."""

    first: Known
    """The part that carries the frets; of two such, or of none, the one named first."""
    second: Known
    """The other part."""
    offsets: Mixtures
    """Of the bass end. [mm]"""


def hold_slants(one: _Lines, other: _Lines) -> HeldSlants | None:
    """Hold the saddle line of one fan part against that of another.

    Parameters
    ----------
    one, other : dict
        What is known of the two by string line, in the order in which they were named.

    Returns
    -------
    HeldSlants or None
        For :func:`slant_of`; None unless both are fan parts that name their square fret.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before a square fret.

    Notes
    -----
    From the square fret to the end of the true scale is a share of each side's scale, so the saddle line slants by
    that share of what the scales differ. A part without a rule has that of the other, or equal spacing. This is along
    the centre line; where scales are measured along the strings, their angle of a degree or two takes off less than a
    thousandth.
    """
    if any("whole" in lines or lines["bass"].part.square_fret is None for lines in (one, other)):
        return None
    swapped = other["bass"].part.fretted and not one["bass"].part.fretted
    first, second = (other, one) if swapped else (one, other)
    slant, spread = _slant(first, second["bass"].rule)
    other_slant, other_spread = _slant(second, first["bass"].rule)
    mean, deviation = 0.5 * (other_slant - slant), 0.5 * math.hypot(spread, other_spread)
    offsets = Mixtures(np.array([1.0]), np.array([[mean]]), np.array([[deviation]]))
    return HeldSlants(first["bass"], second["bass"], offsets)


def _slant(lines: _Lines, rule: Rule | None) -> tuple[float, float]:
    """How much farther the bass end of a saddle line lies from the nut than the treble end, and how surely. [mm]"""
    bass, treble = lines["bass"], lines["treble"]
    fret = bass.part.square_fret or 0
    with refused_at((*bass.place, "square_fret")):
        left = 1.0 - float(distances_to_frets(bass.hypotheses[:1], fret, rule)[0, fret])
    return left * (bass.true_scale - treble.true_scale), left * math.hypot(bass.deviation, treble.deviation)


def slant_of(held: HeldSlants, offset: Estimate, demands: Demands) -> Slant:
    """What it means that two saddle lines slant as they do.

    Parameters
    ----------
    held : HeldSlants
        The two parts.
    offset : Estimate
        Of its ``offsets``. [mm]
    demands : Demands
        How well they have to agree.

    Returns
    -------
    Slant
        Offset and decision.
    """
    limits = Interval(-demands.tolerance, demands.tolerance)
    first, second = held.first.part, held.second.part
    return Slant(
        first=first.id,
        second=second.id,
        first_square_fret=first.square_fret or 0,
        second_square_fret=second.square_fret or 0,
        offset=offset,
        decision=decide(held.offsets.quantity(0), limits, demands.guard_factor),
    )
