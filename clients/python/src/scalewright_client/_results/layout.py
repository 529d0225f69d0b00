"""Where the frets go."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Note
from scalewright_client._results.rules import Rule

__all__ = ["Fraction", "Fret", "Layout"]


@dataclass(frozen=True, slots=True)
class Fraction:
    """A length rounded to a shop fraction."""

    text: str
    """As written on a drawing, "1 3/8 in"."""
    error: float
    """Fraction minus exact position. [unit]"""


@dataclass(frozen=True, slots=True)
class Fret:
    """Where one fret stands."""

    fret: int
    """Number of the fret, counted from the nut."""
    from_nut: float
    """Distance from the nut. [unit]"""
    from_previous: float
    """Distance from the fret before it, or from the nut for fret 1. [unit]"""
    to_layout_end: float
    """Distance to the end of the layout scale. A bridge never belongs here. [unit]"""
    to_true_end: float | None
    """Distance to the end of the true scale, where a bridge is measured from; None without one. [unit]"""
    cents: float
    """1200 log2(S / (S - from_nut)), with S the layout scale. [cent]"""
    from_nut_fraction: Fraction | None = None
    """``from_nut`` as a shop fraction; None unless ``fractions`` was asked for."""


@dataclass(frozen=True, slots=True)
class Layout:
    """A fret layout."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    rule: Rule
    """The spacing rule."""
    layout_scale: float
    """The length that the rule was applied to. [unit]"""
    true_scale: float | None
    """Twice the distance from the nut to the octave fret; None where there is no octave fret. [unit]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave; None where there is none."""
    frets: tuple[Fret, ...]
    """The frets, from the nut on: ``frets[11]`` is fret 12."""
    notes: tuple[Note, ...]
    """Cautions that come with a valid answer."""
