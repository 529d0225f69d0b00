"""The plan of a fingerboard: what a maker decides before any line is drawn."""

from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from scalewright.lutherie.cut_list import Saw
from scalewright.lutherie.layout import ScaleBasis
from scalewright.lutherie.spacing import Rule

__all__ = [
    "COMMON_DOUBLE_MARKERS",
    "COMMON_MARKERS",
    "MOST_BOARD_STRINGS",
    "BoardEnd",
    "BoardMargins",
    "BoardWidths",
    "Handedness",
    "Measured",
    "PartialFret",
    "Plan",
    "Side",
    "SlotPlan",
    "StringPlan",
    "SurfaceRadius",
]

MOST_BOARD_STRINGS = 24
"""The most strings that a board may carry."""

COMMON_MARKERS = (3, 5, 7, 9, 12, 15, 17, 19, 21, 24)
"""Frets that bear a position marker where twelve frets make an octave: common practice, no source."""

COMMON_DOUBLE_MARKERS = (12, 24)
"""Those of them that bear two: common practice, no source."""

Handedness: TypeAlias = Literal["right", "left"]
"""Which hand plucks; a left-handed board is the mirror image."""

Measured: TypeAlias = Literal["centre_line", "string"]
"""What a scale is measured along: the centre line of the board, or the outer string itself."""

BoardEnd: TypeAlias = Literal["square", "parallel"]
"""Whether the far end of the board is square to the centre line or parallel to the last fret."""


@dataclass(frozen=True, slots=True)
class Side:
    """Rule and scale of one outer string."""

    rule: Rule
    """Its spacing rule."""
    scale: float
    """Its scale; the plan's basis says which one. [mm]"""


@dataclass(frozen=True, slots=True)
class StringPlan:
    """The strings: how many, and how they are spread."""

    count: int
    """Number of strings, 1 to :data:`MOST_BOARD_STRINGS`."""
    nut_spread: float | None = None
    """From the centre of the first string to that of the last, at the zero line. [mm]"""
    saddle_spread: float | None = None
    """The same at the end of the scale. [mm]"""
    gauges: tuple[float, ...] | None = None
    """Diameters from string 1 on: the gaps between neighbours are made equal; without them, the centres. [mm]"""


@dataclass(frozen=True, slots=True)
class BoardMargins:
    """From the centre of an outer string to the edge of the board beside it, across the board."""

    nut_bass: float
    """At the zero line, beside the lowest string. [mm]"""
    nut_treble: float
    """At the zero line, beside string 1. [mm]"""
    last_bass: float
    """At the last fret, beside the lowest string. [mm]"""
    last_treble: float
    """At the last fret, beside string 1. [mm]"""


@dataclass(frozen=True, slots=True)
class BoardWidths:
    """Widths of the board, half on either side of the centre line."""

    nut: float
    """At the zero line. [mm]"""
    last_fret: float
    """At the last fret. [mm]"""


@dataclass(frozen=True, slots=True)
class SlotPlan:
    """The slots that the frets go into."""

    kerf: float = 0.6
    """Width of a slot, as the blade cuts it. [mm]"""
    inset: float = 0.0
    """How far a blind slot ends before the edge, along the slot; 0 for slots that go through. [mm]"""
    tang_depth: float | None = None
    """Depth of the fretwire's tang. [mm]"""
    clearance: float = 0.0
    """How much deeper than the tang a slot is. [mm]"""

    @property
    def depth(self) -> float | None:
        """Depth below the surface, the same all along; None where no tang was given. [mm]"""
        return None if self.tang_depth is None else self.tang_depth + self.clearance


@dataclass(frozen=True, slots=True)
class SurfaceRadius:
    """How the surface is rounded across; a cone where the two differ."""

    nut: float
    """Radius at the zero line. [mm]"""
    last_fret: float
    """Radius at the last fret. [mm]"""


@dataclass(frozen=True, slots=True)
class PartialFret:
    """A fret that crosses some strings only, or that stands between the others."""

    first_string: int
    """The string nearest to string 1 that it crosses."""
    last_string: int
    """The string farthest from string 1 that it crosses."""
    fret: int | None = None
    """Number of the fret of the rule that is cut short."""
    cents: float | None = None
    """Instead: pitch of an extra fret, which the scale is divided for as for listed pitches. [cent]"""
    name: str = ""
    """What an extra fret is called."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """All that decides the geometry of a board."""

    bass: Side
    """Rule and scale of the lowest string."""
    treble: Side
    """Rule and scale of string 1."""
    frets: int
    """Number of frets that go by the rule."""
    strings: StringPlan
    """The strings."""
    margins: BoardMargins | None = None
    """From the outer strings to the edges; two of spreads, margins and widths make the third."""
    widths: BoardWidths | None = None
    """Widths of the board."""
    basis: ScaleBasis = "layout"
    """Whether the scales are layout scales or true scales."""
    measured: Measured = "centre_line"
    """What the scales are measured along."""
    square_fret: int = 0
    """The fret that stays square to the centre line; 0 is the zero line at the nut."""
    handedness: Handedness = "right"
    """Which hand plucks."""
    extension: float = 10.0
    """How far the board goes on past the last fret. [mm]"""
    end: BoardEnd = "square"
    """How the far end is cut."""
    zero_fret: bool = False
    """Whether a fret stands on the zero line, with the nut behind it as a guide."""
    behind_zero_fret: float = 0.0
    """How far the board goes on behind a zero fret, up to the nut. [mm]"""
    nut_setback: float = 0.0
    """From the zero line to the nut's front edge, positive away from fret 1. [mm]"""
    saddle_setbacks: tuple[float, ...] = ()
    """From the end of each string's scale to its break point, positive away from the nut, string 1 first. [mm]"""
    slots: SlotPlan = field(default_factory=SlotPlan)
    """The slots."""
    radius: SurfaceRadius | None = None
    """How the surface is rounded; flat without."""
    partial_frets: tuple[PartialFret, ...] = ()
    """Frets cut short, and extra frets."""
    markers: tuple[int, ...] | None = None
    """Frets with a position marker before them; without, :data:`COMMON_MARKERS` where they have a meaning."""
    double_markers: tuple[int, ...] | None = None
    """Those of them that bear two; without, :data:`COMMON_DOUBLE_MARKERS`."""
    saw: Saw = field(default_factory=Saw)
    """How the slots are cut."""
