"""Parts: what is said of a board, a bridge or a template, and what was measured on it."""

from collections.abc import Iterable
from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._requests.identification import Origin, Reading
from scalewright_client._requests.quantities import Length
from scalewright_client._requests.rules import RuleLike
from scalewright_client._results import StatedPart

__all__ = ["FanScale", "LabelLike", "Part", "PartKind", "PartLike", "PartReadings", "Process", "SaddleTravel"]

LabelLike: TypeAlias = float | str
"""A label as it is written, "24 3/4 in"; a bare number is inches or millimetres, whichever it fits."""

PartKind: TypeAlias = Literal["board", "neck_blank", "bridge", "saddle_template"]
"""What a part is; the first two carry frets."""


class PartReadings(TypedDict, total=False):
    """What was measured on a part: ``from_nut``, ``fret_to_fret`` or ``readings``, once."""

    instrument_uncertainty: Length
    """Of one reading (k = 1). [unit, or its own]"""
    resolution: Length
    """Smallest step of the instrument. [unit, or its own]"""
    scale_error: float
    """Relative error common to all readings of the instrument (k = 1). [-]"""
    tooling_scatter: Length
    """Of the slots themselves (k = 1). [unit, or its own]"""
    frets: Iterable[int]
    """Numbers of the frets read; 1, 2, 3, ... unless given."""
    from_nut: Iterable[Length]
    """Distances from the nut. [unit, or their own]"""
    fret_to_fret: Iterable[Length]
    """Instead: distances from each fret to the one before it. [unit, or their own]"""
    readings: Iterable[Reading]
    """Instead: distances between any two frets."""
    origin: Origin
    """What the readings were measured from; "nut" unless given."""
    nut_offset: Literal["free", "none"] | Length
    """Shift of the nut, or whether there may be one; "free" unless given. [unit, or its own]"""
    slot_width: Length
    """Width of the slots or crowns, for readings taken at an edge. [unit, or its own]"""


class FanScale(TypedDict):
    """Lengths of a fan board along its two outer strings."""

    bass: Length
    """Along the lowest string. [unit, or its own]"""
    treble: Length
    """Along the highest string. [unit, or its own]"""


class SaddleTravel(TypedDict, total=False):
    """How far a break point can be moved from where its part puts it."""

    towards_nut: Length
    """Towards the nut; 0 unless given. [unit, or its own]"""
    away_from_nut: Length
    """Away from the nut; 0 unless given. [unit, or its own]"""


class Part(TypedDict, total=False):
    """A part, defined by ``true_scale``, ``layout_scale`` with ``rule``, ``label`` or ``readings``."""

    id: Required[str]
    """The caller's name for it, which comes back in the answer."""
    kind: Required[PartKind]
    """What it is."""
    true_scale: Length | FanScale
    """Stated true scale. [unit, or its own]"""
    layout_scale: Length
    """Stated layout scale, with ``rule``. [unit, or its own]"""
    square_fret: int
    """The fret of a fan board that stays square to its centre line, 0 for the nut."""
    rule: RuleLike
    """Stated spacing rule."""
    label: LabelLike
    """Its label, as it is written."""
    readings: PartReadings
    """What was measured on it."""
    tolerance: Length
    """How far its true scale may be from what is stated; it is taken at its word unless given. [unit, or its own]"""
    made_to: Literal["true_scale", "string_length"]
    """What its true scale or label ends at; "true_scale" unless given."""
    setback: Length
    """Setback that is in its string length, positive away from the nut. [unit, or its own]"""
    datum: Literal["nut", "fret"]
    """What it is placed from; the nut unless given."""
    datum_fret: int
    """The fret that it is placed from."""
    frets: int
    """Number of frets."""
    body_joint_fret: int
    """Fret at which the neck meets the body."""
    saddle_travel: SaddleTravel
    """How far its saddle can be moved."""


PartLike: TypeAlias = Part | StatedPart
"""A part: in full, or as ``label_read`` found it on a label, asked about in the same unit."""


class Process(TypedDict, total=False):
    """How far the true scales of parts like one are from what they claim."""

    mean_deviation: Length
    """Mean of made minus claimed true scale; 0 unless given. [unit, or its own]"""
    standard_deviation: Required[Length]
    """Standard deviation of what is made. [unit, or its own]"""
