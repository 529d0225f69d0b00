"""Replacement boards: where each fret falls against the old one, and whether joint and bridge still agree."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.deciding import USUAL_FRETS
from scalewright.lutherie.decision import Decision, Mixtures, decide
from scalewright.lutherie.errors import ContradictoryPartError, refused_at
from scalewright.lutherie.estimate import Estimate, Floats
from scalewright.lutherie.known import Known
from scalewright.lutherie.pairing import Demands, distances_to_frets
from scalewright.lutherie.ruling import Interval
from scalewright.lutherie.spacing import Listed

__all__ = ["BodyJoint", "FretOffset", "HeldBoards", "Replacement", "hold_boards", "replacement_of"]


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


@dataclass(frozen=True, slots=True)
class HeldBoards:
    """A new board held against an old one, before the intervals of all boards are reckoned together."""

    old: Known
    """The board that is replaced."""
    new: Known
    """The board that replaces it."""
    datum: int
    """Fret that both are placed from; 0 for the nut."""
    frets: int
    """How many frets are compared."""
    joint: int | None
    """Fret at which the neck meets the body; None where no part names one."""
    offsets: Mixtures | None
    """Of frets 1, 2, ..., then of the joint fret, and from the joint fret to the saddle line, where there is a joint
    fret; None where a true scale or a rule cannot be told. [mm]"""


def hold_boards(old: Known, new: Known) -> HeldBoards:
    """Hold a new board against an old one, fret by fret.

    Parameters
    ----------
    old, new : Known
        What is known of them.

    Returns
    -------
    HeldBoards
        For :func:`replacement_of`.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the joint fret or the datum fret.
    ContradictoryPartError
        Joint frets that differ.
    """
    parts = (old.part, new.part)
    _refuse_two_joints(old, new)
    datum = (new.part.datum_fret or 0) if new.part.datum == "fret" else 0
    counts = [part.frets or (max(part.survey.procedure.end) if part.survey is not None else None) for part in parts]
    rules = [known.rule for known in (old, new)]
    lists = [len(rule.cents) for rule in rules if isinstance(rule, Listed) and not rule.repeat]
    frets = min([min((count for count in counts if count is not None), default=USUAL_FRETS), *lists])
    names_joint = new if new.part.body_joint_fret else old
    joint = names_joint.part.body_joint_fret
    offsets = None
    if all(known.hypotheses and known.rule is not None for known in (old, new)):
        reach = {
            frets: old.place,
            datum: (*new.place, "datum_fret"),
            joint or 0: (*names_joint.place, "body_joint_fret"),
        }
        with refused_at(reach[max(reach)]):
            offsets = _offsets(old, new, datum, [*range(1, frets + 1)], joint)
    return HeldBoards(old, new, datum, frets, joint, offsets)


def _refuse_two_joints(old: Known, new: Known) -> None:
    """Refuse boards that meet the body at different frets: no one fret can be in line there."""
    frets = (old.part.body_joint_fret, new.part.body_joint_fret)
    if None not in frets and frets[0] != frets[1]:
        message = (
            f"{old.part.id} meets the body at fret {frets[0]}, and {new.part.id}, which replaces it, at fret "
            f"{frets[1]}; give both the same body_joint_fret, or leave one out"
        )
        raise ContradictoryPartError(message, field=(*new.place, "body_joint_fret"))


def _offsets(old: Known, new: Known, datum: int, frets: list[int], joint: int | None) -> Mixtures:
    """New minus old distances from the datum to frets, to the joint fret, and from there to the saddle line."""
    last = max(*frets, datum, joint or 0)
    one, other = (_Board(known, last) for known in (old, new))
    pairs = [(one.span(datum, frets), other.span(datum, frets))]
    if joint is not None:
        pairs.append((one.span(datum, [joint]), other.span(datum, [joint])))
        pairs.append((one.to_end(joint), other.to_end(joint)))
    means, variances = [], []
    for (old_mean, old_variance), (new_mean, new_variance) in pairs:
        # Every possibility of the old board with every one of the new.
        means.append((new_mean - old_mean[:, None]).reshape(-1, new_mean.shape[-1]))
        variances.append((new_variance + old_variance[:, None]).reshape(-1, new_mean.shape[-1]))
    weight = (one.probability[:, None] * other.probability).ravel()
    return Mixtures(weight / weight.sum(), np.concatenate(means, axis=1), np.sqrt(np.concatenate(variances, axis=1)))


class _Board:
    """A board's possibilities as columns."""

    def __init__(self, known: Known, last: int) -> None:
        rows = [
            (one.probability, one.true_scale, one.deviation, one.nut_offset, one.nut_deviation)
            for one in known.hypotheses
        ]
        self.probability, *columns = np.array(rows).T
        self.true_scale, self.deviation, self.nut_offset, self.nut_deviation = (column[:, None] for column in columns)
        self.shares = distances_to_frets(known.hypotheses, last)

    def span(self, start: int, ends: list[int]) -> tuple[Floats, Floats]:
        """Distances from one fret to others, and their variances. shape (n_hypotheses, n_ends) [mm, mm²]"""
        share = self.shares[:, ends] - self.shares[:, [start]]
        mean, variance = self.true_scale * share, (self.deviation * share) ** 2
        # From the nut's front edge.
        return (mean + self.nut_offset, variance + self.nut_deviation**2) if start == 0 else (mean, variance)

    def to_end(self, fret: int) -> tuple[Floats, Floats]:
        """Distance from a fret to the end of the true scale, and its variance. shape (n_hypotheses, 1) [mm, mm²]"""
        left = 1.0 - self.shares[:, [fret]]
        return self.true_scale * left, (self.deviation * left) ** 2


def replacement_of(held: HeldBoards, estimates: Sequence[Estimate], demands: Demands) -> Replacement:
    """What it means that two boards differ as they do.

    Parameters
    ----------
    held : HeldBoards
        The two boards.
    estimates : sequence of Estimate
        Of its ``offsets``; empty where there are none. [mm]
    demands : Demands
        How well they have to agree.

    Returns
    -------
    Replacement
        Offsets, none where a true scale or a rule cannot be told.
    """
    body_joint, offsets = None, []
    if held.offsets is not None:
        offsets = [FretOffset(fret, estimate) for fret, estimate in enumerate(estimates[: held.frets], 1)]
        if held.joint is not None:
            limits = Interval(-demands.tolerance, demands.tolerance)
            bridge = held.offsets.quantity(held.frets + 1)
            decision = decide(bridge, limits, demands.guard_factor)
            body_joint = BodyJoint(held.joint, estimates[held.frets], estimates[held.frets + 1], decision)
    largest = max(offsets, key=lambda one: abs(one.offset.value), default=None)
    return Replacement(held.old.part.id, held.new.part.id, held.datum, offsets, largest, body_joint)
