"""Orders: what may be asked about the saddle and the nut of a board."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from scalewright.lutherie.compensation.bridge import GluedBridge
from scalewright.lutherie.compensation.setbacks import Freedom
from scalewright.lutherie.compensation.slot import StraightSlot, Travel
from scalewright.lutherie.compensation.string_sets import Preference
from scalewright.lutherie.setup import Heights, Setup
from scalewright.lutherie.string_spec import StringSpec

__all__ = ["BridgeWork", "Order", "StringSet"]


@dataclass(frozen=True, slots=True)
class StringSet:
    """Another set of strings for the same board."""

    name: str
    """Its name."""
    strings: Sequence[StringSpec]
    """Its strings."""
    heights: Heights | None = None
    """How high they lie; None for as high as the first set."""


@dataclass(frozen=True, slots=True)
class BridgeWork:
    """What else is asked about the bridge; what is None is not."""

    slot: StraightSlot | None = None
    """A straight slot that is to be cut."""
    travel: Travel | None = None
    """Saddles that can be moved so far."""
    bridge: GluedBridge | None = None
    """A bridge that is glued already."""
    other_sets: Sequence[StringSet] = ()
    """Other string sets that the same bridge has to serve."""
    reach: float | None = None
    """How far a break point can be moved on a bridge that is still to be glued. [mm]"""
    reslotted: bool = False
    """Whether to compare with the same board in equal steps."""


class Order(NamedTuple):
    """One question of compensation."""

    setup: Setup
    """The board, its strings and how they lie."""
    nut: Freedom = "fixed"
    """Whether the nut may be set back too, string by string or alike for all."""
    preference: Preference | None = None
    """Which frets to do best for; all alike where it is None."""
    saddle: Freedom = "free"
    """Whether every string has a setback of its own, or all have one."""
    work: BridgeWork = BridgeWork()
    """What else is asked about the bridge."""
