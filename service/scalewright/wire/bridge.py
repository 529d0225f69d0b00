"""Bridges on the wire: a bridge that is glued already, and what helps it."""

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from scalewright.lutherie.compensation import GluedBridge
from scalewright.lutherie.compensation.bridge import RemedyName
from scalewright.wire.quantities import Distance, Length, LengthOut
from scalewright.wire.slot import BreakPointOut
from scalewright.wire.strings import MOST_STRINGS

__all__ = ["BridgeAdviceOut", "GluedBridgeIn"]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class GluedBridgeIn(BaseModel):
    """A bridge as it stands on an instrument, measured from the nut's front edge along the strings."""

    model_config = _STRICT

    slot_at_first: Annotated[Length, Field(examples=["651 mm"])]
    """To the centre line of the slot, along the first string. [unit]"""
    slot_at_last: Annotated[Length, Field(examples=["652.5 mm"])]
    """To the centre line of the slot, along the last string. [unit]"""
    thickness: Annotated[Length, Field(examples=["2.5 mm"])]
    """Thickness of the saddle. [unit]"""
    spread: Annotated[Length | None, Field(examples=["58 mm"])] = None
    """Distance across the bridge from the first string to the last; strings lie evenly between. [unit]"""
    across: Annotated[list[Distance], Field(min_length=1, max_length=MOST_STRINGS)] | None = None
    """Instead of `spread`: where every string crosses the bridge, from the first one's place, ascending. [unit]"""
    widest_slot: Annotated[Length | None, Field(examples=["5 mm"])] = None
    """Widest slot that the wood around it allows; left out, a wider or slanted slot is not considered. [unit]"""
    front: Annotated[Length | None, Field(examples=["646 mm"])] = None
    """To where a new slot may begin at the earliest; left out, without a limit. [unit]"""
    back: Annotated[Length | None, Field(examples=["660 mm"])] = None
    """To where a new slot has to end; left out, without a limit. [unit]"""
    good_enough: Annotated[float, Field(ge=0.0, le=100.0)] = 1.0
    """Cents rms that a string may keep beyond its least before another remedy is looked for. [cent]"""

    def to_domain(self) -> GluedBridge:
        """Return the bridge."""
        return GluedBridge(
            slot_at_first=self.slot_at_first,
            slot_at_last=self.slot_at_last,
            thickness=self.thickness,
            spread=self.spread,
            across=self.across,
            widest_slot=self.widest_slot,
            front=self.front,
            back=self.back,
            good_enough=self.good_enough,
        )


class RemedyOut(BaseModel):
    """One thing that may be done with a bridge that is glued already."""

    model_config = _READ_OFF

    remedy: RemedyName
    """Which."""
    good_enough: bool
    """Whether no string keeps more than it may beyond its least."""
    all_reached: bool
    """Whether every string breaks at its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    slot_width: LengthOut
    """Width of the slot. [unit]"""
    shift_at_first: LengthOut
    """How far the slot's centre line moves at the first string, positive away from the nut. [unit]"""
    shift_at_last: LengthOut
    """The same at the last string. [unit]"""
    angle_degrees: float
    """Slant of the slot, positive where the last string is the longer. [degree]"""
    strings: list[BreakPointOut]
    """Where every string breaks."""
    advice: str
    """What it means at the bench, with the usual cautions."""


class BridgeAdviceOut(BaseModel):
    """What helps a bridge that is glued already."""

    model_config = _READ_OFF

    suggestion: RemedyName
    """The least intrusive remedy that is good enough, or the one that leaves least."""
    good_enough: float
    """What a string may keep beyond its least. [cent]"""
    remedies: list[RemedyOut]
    """The remedies, from the least intrusive to the most; those that the bridge does not allow are left out."""
