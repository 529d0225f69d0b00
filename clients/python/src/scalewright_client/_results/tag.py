"""What the code on a label says."""

from dataclasses import dataclass

from scalewright_client._results.rules import Rule

__all__ = ["FanScales", "StatedPart", "Tag"]


@dataclass(frozen=True, slots=True)
class FanScales:
    """True scales of a fan board along its two outer strings."""

    bass: float
    """Along the lowest string. [unit]"""
    treble: float
    """Along the highest string. [unit]"""


@dataclass(frozen=True, slots=True)
class StatedPart:
    """The part that a label is on, as other questions take it."""

    id: str
    """Its name: the stock number."""
    kind: str
    """What it is: "board", "neck_blank", "bridge" or "saddle_template"."""
    true_scale: float | FanScales
    """Its true scale; of a fan board those of both sides. [unit]"""
    layout_scale: float | None
    """The length that the rule was applied to, where the label states it. [unit]"""
    rule: Rule | None
    """Its spacing rule, where the label states it."""
    tolerance: float | None
    """Half the width of a rectangular distribution that is as uncertain as the label says. [unit]"""
    square_fret: int | None = None
    """The fret of a fan board that is square to its centre line, where the label states it; 0 for the nut."""


@dataclass(frozen=True, slots=True)
class Tag:
    """What the code on a label says."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    part: StatedPart
    """The part, as an assembly takes it."""
    uncertainty: float | None
    """Standard uncertainty of the true scale; None where it is taken at its word. [unit]"""
    written_in: str
    """Unit that the label's lengths are written in."""
