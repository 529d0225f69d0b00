"""Parts of a fingerboard's plan on the wire: its strings, edges, slots, surface and saw."""

from typing import Annotated, Self, TypeAlias

from pydantic import BaseModel, ConfigDict, Discriminator, Field, Tag, model_validator
from pydantic_core import PydanticCustomError

from scalewright.lutherie.cut_list import BladeSide, CutOrigin, Saw
from scalewright.lutherie.fingerboard import BoardMargins, BoardWidths, PartialFret, SlotPlan, StringPlan, SurfaceRadius
from scalewright.lutherie.fingerboard.plan import MOST_BOARD_STRINGS
from scalewright.lutherie.spacing import MOST_FRETS, Rule
from scalewright.wire.quantities import Distance, Length, LengthBetween, Scale
from scalewright.wire.rules import RuleIn
from scalewright.wire.texts import ShortText

__all__ = [
    "BoardRulesIn",
    "BoardScalesIn",
    "BoardStringsIn",
    "MarginsIn",
    "OneOrBothRules",
    "OneOrBothScales",
    "OneOrFourMargins",
    "OneOrTwoRadii",
    "PartialFretIn",
    "SawIn",
    "SlotsIn",
    "SurfaceRadiusIn",
    "WidthsIn",
]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)

_Gauge: TypeAlias = Annotated[float, LengthBetween(0.05, 10.0, "0.010 in")]
_Kerf: TypeAlias = Annotated[float, LengthBetween(0.1, 5.0, "0.6 mm")]
_Depth: TypeAlias = Annotated[float, LengthBetween(0.1, 20.0, "1.8 mm")]
_Step: TypeAlias = Annotated[float, LengthBetween(0.0001, 10.0, "0.01 mm")]
_StringNumber: TypeAlias = Annotated[int, Field(ge=1, le=MOST_BOARD_STRINGS)]


class BoardScalesIn(BaseModel):
    """Scales of the two outer strings of a fan board."""

    model_config = _STRICT

    bass: Annotated[Scale, Field(examples=["25.5 in"])]
    """Of the lowest string."""
    treble: Annotated[Scale, Field(examples=["24 in"])]
    """Of string 1."""


class BoardRulesIn(BaseModel):
    """Rules of the two outer strings, where they differ."""

    model_config = _STRICT

    bass: RuleIn
    """Of the lowest string."""
    treble: RuleIn
    """Of string 1."""

    def to_domain(self) -> tuple[Rule, Rule]:
        """Return the two."""
        return self.bass.to_domain(), self.treble.to_domain()


def _scales(value: object) -> str:
    return "scales:both" if type(value) in (dict, BoardScalesIn) else "scales:one"


def _rules(value: object) -> str:
    sides = "bass" in value or "treble" in value if isinstance(value, dict) else type(value) is BoardRulesIn
    return "rules:both" if sides else "rules:one"


OneOrBothScales: TypeAlias = Annotated[
    Annotated[Scale, Tag("scales:one")] | Annotated[BoardScalesIn, Tag("scales:both")], Discriminator(_scales)
]
"""One scale, or one for either outer string."""

OneOrBothRules: TypeAlias = Annotated[
    Annotated[RuleIn, Tag("rules:one")] | Annotated[BoardRulesIn, Tag("rules:both")], Discriminator(_rules)
]
"""One rule, or one for either outer string."""


class BoardStringsIn(BaseModel):
    """The strings of a board: how many, and how they are spread across it."""

    model_config = _STRICT

    count: Annotated[int, Field(ge=1, le=MOST_BOARD_STRINGS, examples=[6])]
    """Number of strings."""
    nut_spread: Annotated[Length | None, Field(examples=["36 mm"])] = None
    """From the centre of string 1 to the centre of the lowest, across the board at the zero line. [unit]"""
    saddle_spread: Annotated[Length | None, Field(examples=["52 mm"])] = None
    """The same at the end of the scale. [unit]"""
    gauges: Annotated[list[_Gauge], Field(max_length=MOST_BOARD_STRINGS)] | None = None
    """Diameters from string 1 on: the gaps between neighbours are made equal; left out, the centres are. [unit]"""

    @model_validator(mode="after")
    def _one_for_each(self) -> Self:
        if self.gauges is not None and len(self.gauges) != self.count:
            message = "Give one gauge for each string, from string 1 on, or leave them out."
            raise PydanticCustomError("gauges_given", message)
        if (self.nut_spread is None) != (self.saddle_spread is None):
            message = "The spread is needed at both ends, nut_spread and saddle_spread, or at neither."
            raise PydanticCustomError("spreads_given", message)
        return self

    def to_domain(self) -> StringPlan:
        """Return the strings."""
        gauges = None if self.gauges is None else tuple(self.gauges)
        return StringPlan(self.count, self.nut_spread, self.saddle_spread, gauges)


class MarginsIn(BaseModel):
    """From the centre of an outer string to the edge of the board beside it, across the board."""

    model_config = _STRICT

    nut_bass: Annotated[Length, Field(examples=["3 mm"])]
    """At the zero line, beside the lowest string. [unit]"""
    nut_treble: Annotated[Length, Field(examples=["3 mm"])]
    """At the zero line, beside string 1. [unit]"""
    last_fret_bass: Annotated[Length, Field(examples=["3.5 mm"])]
    """At the last fret, beside the lowest string. [unit]"""
    last_fret_treble: Annotated[Length, Field(examples=["4 mm"])]
    """At the last fret, beside string 1. [unit]"""


def _margins(value: object) -> str:
    return "margins:four" if type(value) in (dict, MarginsIn) else "margins:one"


OneOrFourMargins: TypeAlias = Annotated[
    Annotated[Length, Tag("margins:one"), Field(examples=["3 mm"])] | Annotated[MarginsIn, Tag("margins:four")],
    Discriminator(_margins),
]
"""One margin everywhere, or one for each corner."""


def margins_of(margins: float | MarginsIn | None) -> BoardMargins | None:
    """Margins at all four corners. [mm]"""
    if margins is None:
        return None
    if isinstance(margins, float):
        return BoardMargins(margins, margins, margins, margins)
    return BoardMargins(margins.nut_bass, margins.nut_treble, margins.last_fret_bass, margins.last_fret_treble)


class WidthsIn(BaseModel):
    """Widths of the board, half on either side of the centre line."""

    model_config = _STRICT

    nut: Annotated[Length, Field(examples=["43 mm"])]
    """At the zero line. [unit]"""
    last_fret: Annotated[Length, Field(examples=["56 mm"])]
    """At the last fret. [unit]"""

    def to_domain(self) -> BoardWidths:
        """Return the widths."""
        return BoardWidths(self.nut, self.last_fret)


class SlotsIn(BaseModel):
    """The slots that the frets go into."""

    model_config = _STRICT

    kerf: _Kerf = 0.6
    """Width of a slot, as the blade cuts it; 0.6 mm if left out. [unit]"""
    blind_inset: Distance = 0.0
    """How far a blind slot ends before the edge of the board; left out, slots go through. [unit]"""
    tang_depth: _Depth | None = None
    """Depth of the fretwire's tang; without it no depth is stated. [unit]"""
    clearance: Distance = 0.0
    """How much deeper than the tang a slot is; it counts beside `tang_depth` alone. [unit]"""

    def to_domain(self) -> SlotPlan:
        """Return the slots."""
        return SlotPlan(self.kerf, self.blind_inset, self.tang_depth, self.clearance)


class SurfaceRadiusIn(BaseModel):
    """A surface that is part of a cone."""

    model_config = _STRICT

    nut: Annotated[Length, Field(examples=["10 in"])]
    """Radius at the zero line. [unit]"""
    last_fret: Annotated[Length, Field(examples=["16 in"])]
    """Radius at the last fret. [unit]"""


def _radii(value: object) -> str:
    return "radius:two" if type(value) in (dict, SurfaceRadiusIn) else "radius:one"


OneOrTwoRadii: TypeAlias = Annotated[
    Annotated[Length, Tag("radius:one"), Field(examples=["12 in"])] | Annotated[SurfaceRadiusIn, Tag("radius:two")],
    Discriminator(_radii),
]
"""One radius, or one at either end."""


def radius_of(radius: float | SurfaceRadiusIn | None) -> SurfaceRadius | None:
    """Radii at both ends. [mm]"""
    if radius is None:
        return None
    if isinstance(radius, float):
        return SurfaceRadius(radius, radius)
    return SurfaceRadius(radius.nut, radius.last_fret)


class PartialFretIn(BaseModel):
    """A fret of the rule that is cut short, or an extra fret at a pitch of its own."""

    model_config = _STRICT

    fret: Annotated[int, Field(ge=1, le=MOST_FRETS, examples=[1])] | None = None
    """Number of the fret that is cut short."""
    cents: Annotated[float, Field(gt=0.0, le=12000.0, examples=[650.0])] | None = None
    """Instead: pitch of an extra fret above the open string, placed as a listed pitch is. [cent]"""
    first_string: Annotated[_StringNumber, Field(examples=[1])] = 1
    """The string nearest to string 1 that it crosses."""
    last_string: Annotated[_StringNumber | None, Field(examples=[3])] = None
    """The string farthest from string 1 that it crosses; left out, the lowest."""
    name: Annotated[ShortText, Field(max_length=12, examples=["6 1/2"])] = ""
    """What an extra fret is called; left out, its cents."""

    @model_validator(mode="after")
    def _one_of_two(self) -> Self:
        if (self.fret is None) == (self.cents is None):
            message = "A partial fret is either a fret of the rule, by its number, or an extra one, by its cents."
            raise PydanticCustomError("partial_fret_given", message)
        return self

    def to_domain(self, count: int) -> PartialFret:
        """Return the fret of a board with so many strings."""
        last = count if self.last_string is None else self.last_string
        return PartialFret(self.first_string, last, self.fret, self.cents, self.name)


class SawIn(BaseModel):
    """How the slots are cut; the cut list is written for it."""

    model_config = _STRICT

    step: _Step | None = None
    """The smallest step that the machine or the rule can be set to; left out, nothing is rounded. [unit]"""
    origin: CutOrigin = "zero_line"
    """Where all distances start: "zero_line" of the pattern, or the "nut_end" or "far_end" of the board."""
    blade: BladeSide = "centre"
    """Which part of the blade is set to a distance: its "centre", or its face on the "nut_side" or "bridge_side"."""

    def to_domain(self) -> Saw:
        """Return the saw."""
        return Saw(self.step, self.origin, self.blade)
