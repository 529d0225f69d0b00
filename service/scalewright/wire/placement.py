"""Placements on the wire: string sets that one bridge has to serve, and where it goes."""

from typing import Annotated, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from scalewright.lutherie.compensation import StringSet
from scalewright.wire.quantities import LengthOut
from scalewright.wire.slot import BreakPointOut
from scalewright.wire.stringing import HeightsIn
from scalewright.wire.strings import Strings, Tuning, refuse_unnamed_pitches, string_specs

__all__ = ["PlacementOut", "StringSetIn"]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


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
