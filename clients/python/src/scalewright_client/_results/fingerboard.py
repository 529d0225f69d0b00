"""A board with all its lines."""

from dataclasses import dataclass

from scalewright_client._results.board_lines import AcrossLine, BoardFret, Place, Segment, StringLine
from scalewright_client._results.cut_list import CutList
from scalewright_client._results.estimate import Note
from scalewright_client._results.rules import Rule

__all__ = ["BoardSide", "Fingerboard", "Marker", "TrueScales"]


@dataclass(frozen=True, slots=True)
class BoardSide:
    """Rule and scales of one outer string."""

    rule: Rule
    """Its spacing rule."""
    layout_scale: float
    """The length that the rule was applied to. [unit]"""
    true_scale: float | None
    """Twice the distance from the zero line to the octave fret; None without one. [unit]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave."""


@dataclass(frozen=True, slots=True)
class TrueScales:
    """True scales of the outer strings."""

    bass: float | None
    """Of the lowest string; None where its rule has no octave fret. [unit]"""
    treble: float | None
    """Of string 1; None where its rule has no octave fret. [unit]"""


@dataclass(frozen=True, slots=True)
class Marker:
    """A position marker."""

    fret: int
    """Fret that it stands before, on the side of the nut."""
    at: Place
    """Its centre."""


@dataclass(frozen=True, slots=True)
class Fingerboard:
    """A board with all its lines. Its x axis is the centre line, its zero where the zero line crosses it."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    statement: str
    """One sentence for a drawing or a work order."""
    handedness: str
    """Which hand plucks."""
    measured: str
    """What the scales are measured along."""
    square_fret: int
    """The fret that is square to the centre line; with equal scales and rules all are."""
    zero_fret: bool
    """Whether a fret stands on the zero line."""
    true_scale: TrueScales
    """True scales of the outer strings."""
    bass: BoardSide
    """Rule and scales of the lowest string."""
    treble: BoardSide
    """Rule and scales of string 1."""
    strings: tuple[StringLine, ...]
    """The strings, string 1 first."""
    frets: tuple[BoardFret, ...]
    """The frets, from the nut on."""
    zero_line: AcrossLine
    """Where the rule puts the nut, from edge to edge."""
    nut: AcrossLine
    """Front edge of the nut, from edge to edge."""
    scale_end: AcrossLine
    """Where the scales of the outer strings end."""
    saddle: AcrossLine
    """Where the outer strings break over the saddle."""
    outline: tuple[Place, ...]
    """Corners of the board: nut end bass and treble, far end treble and bass."""
    centre_line: Segment
    """From one end of the board to the other."""
    markers: tuple[Marker, ...]
    """Position markers."""
    cut_list: CutList
    """Settings of a saw for every slot."""
    notes: tuple[Note, ...]
    """What to mind."""
