"""Lines of a board: strings, frets and their slots."""

from dataclasses import dataclass

__all__ = [
    "AcrossLine",
    "BoardFret",
    "FretSlot",
    "Place",
    "Segment",
    "SideCents",
    "SideDistances",
    "StringCrossing",
    "StringLine",
]


@dataclass(frozen=True, slots=True)
class Place:
    """A place on the board."""

    x: float
    """Along the centre line, from the zero line of the pattern towards the bridge. [unit]"""
    y: float
    """Across, positive to the left as one looks from the nut to the bridge. [unit]"""


@dataclass(frozen=True, slots=True)
class AcrossLine:
    """A line across the board, by its ends."""

    bass: Place
    """End on the side of the lowest string."""
    treble: Place
    """End on the side of string 1."""


@dataclass(frozen=True, slots=True)
class Segment:
    """A line along the board, by its ends."""

    start: Place
    """End on the side of the nut."""
    end: Place
    """End on the side of the bridge."""


@dataclass(frozen=True, slots=True)
class StringLine:
    """The line that one string follows."""

    string: int
    """Number of the string; 1 is the highest."""
    at_zero: Place
    """Where it crosses the zero line of the pattern."""
    at_nut: Place
    """Where it crosses the front edge of the nut."""
    at_scale_end: Place
    """Where its scale ends: the true one, or the layout scale where there is no octave fret."""
    at_saddle: Place
    """Where it breaks over the saddle."""
    scale: float
    """Its own scale, from the zero line to the end, measured as ``measured`` says. [unit]"""
    saddle_setback: float
    """From the end of its scale to the break point, positive away from the nut. [unit]"""


@dataclass(frozen=True, slots=True)
class SideCents:
    """Pitch of a fret on either side."""

    bass: float
    """By the rule of the lowest string. [cent]"""
    treble: float
    """By the rule of string 1. [cent]"""


@dataclass(frozen=True, slots=True)
class SideDistances:
    """Distance of a fret from the zero line on either side, measured as ``measured`` says."""

    bass: float
    """Along the lowest string. [unit]"""
    treble: float
    """Along string 1. [unit]"""


@dataclass(frozen=True, slots=True)
class StringCrossing:
    """Where a fret crosses one string."""

    string: int
    """Number of the string; 1 is the highest."""
    at: Place
    """The place on the board."""
    from_zero: float
    """From the zero line, along the string as ``measured`` says. [unit]"""
    off_own_rule: float | None
    """How far that is from where the rule puts the fret on this string's own scale; None for unequal rules. [unit]"""
    cents: float
    """1200 log2 of its scale over what is left of it, for an ideal string. [cent]"""


@dataclass(frozen=True, slots=True)
class FretSlot:
    """The slot of a fret."""

    bass: Place
    """Middle of its end on the bass side."""
    treble: Place
    """Middle of its end on the treble side."""
    near_edge: AcrossLine
    """Edge of the kerf on the side of the nut."""
    far_edge: AcrossLine
    """Edge of the kerf on the side of the bridge."""
    length: float
    """Length of its middle line. [unit]"""
    depth: float | None
    """Depth below the surface, the same all along; None where no tang was given. [unit]"""
    flat_depth: float | None
    """Depth in the middle of the board of a slot whose bottom is flat; None without a tang. [unit]"""
    drop: float
    """How much lower the rounded surface lies at the slot's ends than in its middle. [unit]"""


@dataclass(frozen=True, slots=True)
class BoardFret:
    """One fret of a board."""

    name: str
    """Its number, or what an extra fret is called."""
    fret: int | None
    """Its number by the rule; None for an extra fret."""
    cents: SideCents
    """What the rule of either side intends."""
    from_zero: SideDistances
    """Distance from the zero line along the outer strings."""
    on_centre_line: float
    """Where it crosses the centre line, from the zero line there. [unit]"""
    angle_degrees: float
    """How far it leans from square, positive where its bass end is nearer to the bridge. [degree]"""
    line: AcrossLine
    """Its crossings with the outer strings, prolonged to them where it is cut short."""
    slot: FretSlot
    """Its slot."""
    radius: float | None
    """Radius that the fretwire is bent to, along its own line; None for a flat board. [unit]"""
    first_string: int
    """The string nearest to string 1 that it crosses."""
    last_string: int
    """The string farthest from string 1 that it crosses."""
    crossings: tuple[StringCrossing, ...]
    """Where it crosses its strings, string 1 first."""
