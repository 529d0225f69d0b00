"""Replacement boards: where each fret falls against the old one, and whether joint and bridge still agree."""

import math
from dataclasses import dataclass
from itertools import product

import numpy as np

from scalewright.lutherie.deciding import USUAL_FRETS
from scalewright.lutherie.decision import Decision, Mixture, decide, summed_up
from scalewright.lutherie.estimate import Estimate
from scalewright.lutherie.known import Known
from scalewright.lutherie.pairing import Demands, distance_to_fret
from scalewright.lutherie.ruling import Interval
from scalewright.lutherie.spacing import Listed

__all__ = ["BodyJoint", "FretOffset", "Replacement", "replacement_of"]


@dataclass(frozen=True, slots=True)
class FretOffset:
    """Where a fret of the new board falls against the same fret of the old one."""

    fret: int
    """Number of the fret."""
    offset: Estimate
    """New minus old, both boards placed from the same datum; positive farther from the nut. [mm]"""


@dataclass(frozen=True, slots=True)
class BodyJoint:
    """Whether the bridge still agrees when the joint frets are in line."""

    fret: int
    """Fret at which the neck meets the body."""
    offset: Estimate
    """Where it falls against the old one, placed from the datum. [mm]"""
    joint_to_bridge: Estimate
    """How much farther the new board's saddle line lies from its joint fret than the old one's. [mm]"""
    decision: Decision
    """Whether joint and bridge agree, within the tolerance."""


@dataclass(frozen=True, slots=True)
class Replacement:
    """A new board against an old one."""

    old: str
    """The board that is replaced."""
    new: str
    """The board that replaces it."""
    datum_fret: int
    """Fret that both are placed from; 0 for the nut."""
    offsets: list[FretOffset]
    """Fret by fret."""
    largest: FretOffset | None
    """The one that is farthest off."""
    body_joint: BodyJoint | None
    """Joint and bridge; None where no part names a joint fret."""


def replacement_of(old: Known, new: Known, demands: Demands) -> Replacement:
    """Hold a new board against an old one, fret by fret.

    Parameters
    ----------
    old, new : Known
        What is known of them.
    demands : Demands
        How well they have to agree.

    Returns
    -------
    Replacement
        Offsets, none where a true scale or a rule cannot be told.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret.
    """
    parts = (old.part, new.part)
    datum = (new.part.datum_fret or 0) if new.part.datum == "fret" else 0
    told = all(known.hypotheses and known.rule is not None for known in (old, new))
    counts = [part.frets or (max(part.survey.procedure.end) if part.survey is not None else None) for part in parts]
    frets = min((count for count in counts if count is not None), default=USUAL_FRETS)
    frets = min(
        [
            frets,
            *(
                len(known.rule.cents)
                for known in (old, new)
                if isinstance(known.rule, Listed) and not known.rule.repeat
            ),
        ]
    )
    offsets = []
    if told:
        offsets = [
            FretOffset(fret, summed_up(_between(old, new, datum, fret), demands.coverage))
            for fret in range(1, frets + 1)
        ]
    joint = new.part.body_joint_fret or old.part.body_joint_fret
    body_joint = None
    if told and joint is not None:
        bridge = _to_end(old, new, joint)
        limits = Interval(-demands.tolerance, demands.tolerance)
        body_joint = BodyJoint(
            joint,
            summed_up(_between(old, new, datum, joint), demands.coverage),
            summed_up(bridge, demands.coverage),
            decide(bridge, limits, demands.guard_factor),
        )
    largest = max(offsets, key=lambda one: abs(one.offset.value), default=None)
    return Replacement(old.part.id, new.part.id, datum, offsets, largest, body_joint)


def _between(old: Known, new: Known, start: int, end: int) -> Mixture:
    """New minus old distance from one fret to another."""
    weights, means, deviations = [], [], []
    for a, b in product(old.hypotheses, new.hypotheses):
        shares = [distance_to_fret(one, end) - distance_to_fret(one, start) for one in (a, b)]
        mean = b.true_scale * shares[1] - a.true_scale * shares[0]
        spread = math.hypot(b.deviation * shares[1], a.deviation * shares[0])
        if start == 0:
            mean += b.nut_offset - a.nut_offset
            spread = math.hypot(spread, math.hypot(a.nut_deviation, b.nut_deviation))
        weights.append(a.probability * b.probability)
        means.append(mean)
        deviations.append(spread)
    return Mixture(np.array(weights) / sum(weights), np.array(means), np.array(deviations))


def _to_end(old: Known, new: Known, fret: int) -> Mixture:
    """New minus old distance from a fret to the end of the true scale."""
    weights, means, deviations = [], [], []
    for a, b in product(old.hypotheses, new.hypotheses):
        left = [1.0 - distance_to_fret(one, fret) for one in (a, b)]
        weights.append(a.probability * b.probability)
        means.append(b.true_scale * left[1] - a.true_scale * left[0])
        deviations.append(math.hypot(b.deviation * left[1], a.deviation * left[0]))
    return Mixture(np.array(weights) / sum(weights), np.array(means), np.array(deviations))
