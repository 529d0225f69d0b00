"""A new board against an old one."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Estimate

__all__ = ["BodyJoint", "FretOffset", "Replacement"]


@dataclass(frozen=True, slots=True)
class FretOffset:
    """Where a fret of the new board falls against the same fret of the old one."""

    fret: int
    """Number of the fret."""
    offset: Estimate
    """New minus old, both boards placed from the same datum; positive farther from the nut. [unit]"""


@dataclass(frozen=True, slots=True)
class BodyJoint:
    """Whether the bridge still agrees when the joint frets are in line."""

    fret: int
    """Fret at which the neck meets the body."""
    offset: Estimate
    """Where it falls against the old one, placed from the datum. [unit]"""
    joint_to_bridge: Estimate
    """How much farther the new board's saddle line lies from its joint fret than the old one's. [unit]"""
    decision: str
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
    offsets: tuple[FretOffset, ...]
    """Fret by fret; empty where a scale or a rule cannot be told."""
    largest: FretOffset | None
    """The one that is farthest off."""
    body_joint: BodyJoint | None
    """Joint and bridge; None where no part names a joint fret."""
