"""Plans of a fingerboard: strings, edges, slots, surface, saw, and the sheet of a drawing."""

from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._requests.parts import FanScale
from scalewright_client._requests.quantities import Length, ScaleBasis, Unit
from scalewright_client._requests.rules import RuleLike

__all__ = [
    "BoardMargins",
    "BoardRules",
    "BoardStrings",
    "BoardWidths",
    "DrawingMedia",
    "FingerboardQuestion",
    "Page",
    "PartialFret",
    "Saw",
    "Sheet",
    "Slots",
    "SurfaceRadius",
]

DrawingMedia: TypeAlias = Literal["image/svg+xml", "image/vnd.dxf", "application/pdf", "image/png", "text/csv"]
"""Media types of a drawing; CSV is the cut list."""


class BoardRules(TypedDict):
    """Rules of the two outer strings, where they differ."""

    bass: RuleLike
    """Of the lowest string."""
    treble: RuleLike
    """Of string 1."""


class BoardStrings(TypedDict, total=False):
    """The strings of a board: how many, and how they are spread across it."""

    count: Required[int]
    """Number of strings."""
    nut_spread: Length
    """From the centre of string 1 to that of the lowest, at the zero line. [unit, or its own]"""
    saddle_spread: Length
    """The same at the end of the scale. [unit, or its own]"""
    gauges: list[Length]
    """Diameters from string 1 on: the gaps are made equal, and the centres unless given. [unit, or their own]"""


class BoardMargins(TypedDict):
    """From the centre of an outer string to the edge of the board beside it."""

    nut_bass: Length
    """At the zero line, beside the lowest string. [unit, or its own]"""
    nut_treble: Length
    """At the zero line, beside string 1. [unit, or its own]"""
    last_fret_bass: Length
    """At the last fret, beside the lowest string. [unit, or its own]"""
    last_fret_treble: Length
    """At the last fret, beside string 1. [unit, or its own]"""


class BoardWidths(TypedDict):
    """Widths of a board, half on either side of the centre line."""

    nut: Length
    """At the zero line. [unit, or its own]"""
    last_fret: Length
    """At the last fret. [unit, or its own]"""


class Slots(TypedDict, total=False):
    """The slots that the frets go into."""

    kerf: Length
    """Width of a slot, as the blade cuts it; 0.6 mm unless given. [unit, or its own]"""
    blind_inset: Length
    """How far a blind slot ends before the edge; slots go through unless given. [unit, or its own]"""
    tang_depth: Length
    """Depth of the fretwire's tang; no depth is stated without it. [unit, or its own]"""
    clearance: Length
    """How much deeper than the tang a slot is; 0 unless given. [unit, or its own]"""


class SurfaceRadius(TypedDict):
    """A surface that is part of a cone."""

    nut: Length
    """Radius at the zero line. [unit, or its own]"""
    last_fret: Length
    """Radius at the last fret. [unit, or its own]"""


class PartialFret(TypedDict, total=False):
    """A fret of the rule that is cut short, or an extra fret at a pitch of its own."""

    fret: int
    """Number of the fret that is cut short."""
    cents: float
    """Instead: pitch of an extra fret above the open string. [cent]"""
    first_string: int
    """The string nearest to string 1 that it crosses; 1 unless given."""
    last_string: int
    """The string farthest from string 1 that it crosses; the lowest unless given."""
    name: str
    """What an extra fret is called; its cents unless given."""


class Saw(TypedDict, total=False):
    """How the slots are cut; the cut list is written for it."""

    step: Length
    """The smallest step that can be set; nothing is rounded unless given. [unit, or its own]"""
    origin: Literal["zero_line", "nut_end", "far_end"]
    """Where all distances start; the pattern's zero line unless given."""
    blade: Literal["centre", "nut_side", "bridge_side"]
    """Which part of the blade is set; its centre unless given."""


class Page(TypedDict):
    """A page of a size of its own."""

    width: Length
    """Along the board. [unit, or its own]"""
    height: Length
    """Across the board. [unit, or its own]"""


class Sheet(TypedDict, total=False):
    """What stands on a drawing, and what paper it goes on."""

    title: str
    """What the drawing is called."""
    identifiers: list[str]
    """Numbers of orders, parts or drawings."""
    date: str
    """The day that the drawing bears; the service has no clock of its own."""
    paper: Literal["long", "A4", "letter", "custom"]
    """Paper of a PDF: one long sheet (unless given), or pages to be glued together."""
    page: Page
    """Size of a page, for paper of a custom size."""
    overlap: Length
    """How far pages overlap; 15 mm unless given. [unit, or its own]"""
    pixels: int
    """Width of a PNG preview; 1600 unless given."""


class FingerboardQuestion(TypedDict, total=False):
    """The keywords of ``fingerboard``, for ``fingerboard_drawing``."""

    unit: Unit
    scale: Required[Length | FanScale]
    rule: Required[RuleLike | BoardRules]
    frets: Required[int]
    strings: Required[BoardStrings]
    margins: Length | BoardMargins
    widths: BoardWidths
    scale_basis: ScaleBasis
    scale_along: Literal["centre_line", "string"]
    square_fret: int
    handedness: Literal["right", "left"]
    extension: Length
    far_end: Literal["square", "parallel"]
    zero_fret: bool
    behind_zero_fret: Length
    nut_setback: Length
    saddle_setbacks: list[Length]
    slots: Slots
    radius: Length | SurfaceRadius
    partial_frets: list[PartialFret]
    markers: list[int]
    double_markers: list[int]
    saw: Saw
    sheet: Sheet
