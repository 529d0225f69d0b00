"""Bridges on the wire: slots, travels, glued bridges and other string sets, and what is said of them."""

from typing import Annotated, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from scalewright.lutherie.compensation import GluedBridge, StraightSlot, StringSet, Travel
from scalewright.lutherie.compensation.bridge import RemedyName
from scalewright.wire.quantities import AnyLength, Distance, Length, LengthOut
from scalewright.wire.stringing import HeightsIn
from scalewright.wire.strings import MOST_STRINGS, Strings, Tuning, refuse_unnamed_pitches, string_specs

__all__ = [
    "BridgeAdviceOut",
    "GluedBridgeIn",
    "PlacementOut",
    "ReslottingOut",
    "SlotFitOut",
    "StraightSlotIn",
    "StringSetIn",
    "TravelFitOut",
    "TravelIn",
]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class StraightSlotIn(BaseModel):
    """A straight slot that is to be cut."""

    model_config = _STRICT

    thickness: Annotated[Length, Field(examples=["3 mm"])]
    """Thickness of the saddle that stands in it. [unit]"""
    spread: Annotated[Length | None, Field(examples=["58 mm"])] = None
    """Distance across the bridge from the first string to the last; strings lie evenly between. [unit]"""
    across: Annotated[list[Distance], Field(min_length=1, max_length=MOST_STRINGS)] | None = None
    """Instead of `spread`: where every string crosses the bridge, from the first one's place, ascending. [unit]"""

    def to_domain(self) -> StraightSlot:
        """Return the slot."""
        return StraightSlot(self.thickness, self.spread, self.across)


class TravelIn(BaseModel):
    """How far adjustable saddles go, as saddle setbacks; all alike."""

    model_config = _STRICT

    least: Annotated[AnyLength, Field(examples=["0 mm"])]
    """Setback at the end of the travel nearest to the nut. [unit]"""
    most: Annotated[AnyLength, Field(examples=["5 mm"])]
    """Setback at the other end. [unit]"""

    def to_domain(self) -> Travel:
        """Return the travel."""
        return Travel(self.least, self.most)


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


class StringSetIn(BaseModel):
    """Another set of strings, another tuning or another action for the same board."""

    model_config = _STRICT

    name: Annotated[str, Field(min_length=1, max_length=80, pattern=r"^[^\x00-\x1f\x7f]+$", examples=["heavy set"])]
    """Its name."""
    strings: Strings
    """Its strings."""
    tuning: Tuning = None
    heights: HeightsIn | None = None
    """How high they lie; left out, as high as the first set."""

    @model_validator(mode="after")
    def _pitches_are_named(self) -> Self:
        refuse_unnamed_pitches(self.tuning, self.strings)
        return self

    def to_domain(self) -> StringSet:
        """Return the set."""
        heights = None if self.heights is None else self.heights.to_domain()
        return StringSet(self.name, string_specs(self.tuning, self.strings), heights)


# ---- What is said of them -------------------------------------------------------------------------------


class BreakPointOut(BaseModel):
    """Where one string breaks over a saddle that cannot give every string what it wants."""

    model_config = _READ_OFF

    string: int
    """Number of the string, from 1 in the order given."""
    pitch: str
    """Open pitch, as given."""
    saddle_setback: LengthOut
    """From the end of the scale to the break point, positive away from the nut. [unit]"""
    nut_setback: LengthOut
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    reached: bool
    """Whether it is the string's best."""
    short_by: LengthOut
    """How much further out its best lies; negative where the best lies nearer to the nut. [unit]"""
    rms_cents: float
    """Root mean square of the errors that remain on the frets that count. [cent]"""
    least_rms_cents: float
    """The same at the string's best. [cent]"""


class SlotFitOut(BaseModel):
    """The best straight slot for a set of strings."""

    model_config = _READ_OFF

    thickness: LengthOut
    """Thickness of the saddle. [unit]"""
    needed_thickness: LengthOut
    """Thickness that would let every string break at its best, in the slot that needs least. [unit]"""
    fits: bool
    """Whether all the best break points lie on the saddle."""
    setback_at_first: LengthOut
    """Setback of the slot's centre line at the first string. [unit]"""
    setback_at_last: LengthOut
    """The same at the last string. [unit]"""
    from_nut_at_first: LengthOut
    """From the pattern's zero line to the slot's centre line at the first string. [unit]"""
    from_nut_at_last: LengthOut
    """The same at the last string. [unit]"""
    angle_degrees: float
    """Slant against a line square to the strings, positive where the last string is the longer. [degree]"""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[BreakPointOut]
    """Where every string breaks."""


class TravelFitOut(BaseModel):
    """What adjustable saddles of limited travel give."""

    model_config = _READ_OFF

    least: LengthOut
    """Setback at the end of the travel nearest to the nut. [unit]"""
    most: LengthOut
    """Setback at the other end. [unit]"""
    all_reached: bool
    """Whether every string gets its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[BreakPointOut]
    """Where every string breaks."""


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


class PlacedSetOut(BaseModel):
    """What one string set wants, and what it gets from the best placement."""

    model_config = _READ_OFF

    name: str
    """Name of the set; "strings" is the one asked for first."""
    least: LengthOut
    """Least saddle setback that one of its strings wants. [unit]"""
    most: LengthOut
    """Largest saddle setback that one of its strings wants. [unit]"""
    all_reached: bool
    """Whether every string gets its best."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[BreakPointOut]
    """Where every string breaks with the bridge placed so."""


class PlacementOut(BaseModel):
    """Where a bridge has to be glued for several string sets."""

    model_config = _READ_OFF

    reach: LengthOut
    """How far along the strings a break point can be moved on the bridge. [unit]"""
    needed_reach: LengthOut
    """Reach that would serve all the strings of all the sets. [unit]"""
    all_reached: bool
    """Whether one placement serves them all."""
    least: LengthOut
    """Setback of the front end of the reach with the bridge placed best. [unit]"""
    most: LengthOut
    """Setback of its back end. [unit]"""
    least_from_nut: LengthOut
    """From the pattern's zero line to the front end of the reach. [unit]"""
    most_from_nut: LengthOut
    """From the pattern's zero line to its back end. [unit]"""
    earliest: LengthOut
    """Least setback of the front end that still serves all; equal to `latest` where none does. [unit]"""
    latest: LengthOut
    """Largest setback of the front end that still serves all. [unit]"""
    sets: list[PlacedSetOut]
    """The sets, the one asked for first."""


class ReslottedNoteOut(BaseModel):
    """One fretted note on both boards, each with its own best saddle."""

    model_config = _READ_OFF

    fret: int
    """Number of the fret."""
    here: float
    """Error on this board. [cent]"""
    equal: float
    """Error on the board in equal steps. [cent]"""
    cost: float
    """What the spacing rule of this board adds: the first less the second. [cent]"""


class ReslottedStringOut(BaseModel):
    """One string on the board in equal steps."""

    model_config = _READ_OFF

    pitch: str
    """Open pitch, as given."""
    saddle_setback: LengthOut
    """From the end of the scale to the break point, positive away from the nut. [unit]"""
    nut_setback: LengthOut
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    rms_cents: float
    """Root mean square of the errors that remain on the frets that count. [cent]"""
    cents: list[ReslottedNoteOut]
    """Both boards at every fret."""


class ReslottingOut(BaseModel):
    """The same board in equal steps at the same true scale."""

    model_config = _READ_OFF

    steps: int
    """Equal steps to the octave."""
    true_scale: LengthOut
    """The true scale of both. [unit]"""
    rms_cents_here: float
    """Root mean square of what remains on this board, over all strings and the frets that count. [cent]"""
    rms_cents_equal: float
    """The same on the board in equal steps. [cent]"""
    strings: list[ReslottedStringOut]
    """The strings, in the order given."""
