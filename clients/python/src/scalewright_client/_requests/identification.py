"""Readings of a board, and the rules that it may have been cut by."""

from collections.abc import Iterable
from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._requests.quantities import Length, Unit
from scalewright_client._requests.rules import RuleLike

__all__ = [
    "AnyDivisor",
    "BatchId",
    "CandidateRequest",
    "IdentificationQuestion",
    "Origin",
    "Point",
    "Reading",
    "Temperament",
]

Origin: TypeAlias = Literal["nut", "zero_fret"]
"""What readings "from the nut" were measured from."""

Point: TypeAlias = Literal["centre", "near_edge", "far_edge"]
"""Which part of the slot or crown the caliper touched."""

Temperament: TypeAlias = Literal["pythagorean", "quarter_comma_meantone", "ganassi_1543", "dowland_1610"]
"""A temperament from published sources."""

BatchId: TypeAlias = str | int | float | None
"""The caller's own name for a question of a batch: a text of at most 200 characters, or a number."""

# "from" is a word of Python, so this one is written as a call.
Reading = TypedDict(
    "Reading",
    {
        "from": int,
        "to": Required[int],
        "distance": Required[Length],
        "uncertainty": Length,
        "point": Point,
    },
    total=False,
)
Reading.__doc__ = "One measured distance, from fret 0 (the nut) unless given, with its standard uncertainty (k = 1)."


class AnyDivisor(TypedDict, total=False):
    """Any constant divisor, equally likely between two bounds."""

    lower: float
    """The smallest; 16.5 unless given. [-]"""
    upper: float
    """The largest; 19.5 unless given. [-]"""


class CandidateRequest(TypedDict, total=False):
    """What a board may have been cut by: one of ``rule``, ``any_divisor`` and ``temperament``."""

    rule: RuleLike
    """A spacing rule."""
    any_divisor: AnyDivisor
    """Instead: any constant divisor; ``{}`` takes the default bounds."""
    temperament: Temperament
    """Instead: a temperament from published sources."""
    prior: float
    """How likely it is before anything is measured, relative to the others; 1 unless given. [-]"""


class IdentificationQuestion(TypedDict, total=False):
    """One question of a batch: the keywords of ``identification``, and the caller's own ``id``."""

    id: BatchId
    """Comes back with the answer, untouched."""
    unit: Unit
    """Unit of plain numbers here and of every length in the answer; "mm" unless given."""
    from_nut: Iterable[Length]
    """Distances from the nut. [unit, or their own]"""
    fret_to_fret: Iterable[Length]
    """Instead: distances from each fret to the one before it. [unit, or their own]"""
    readings: Iterable[Reading]
    """Instead: distances between any two frets."""
    frets: Iterable[int]
    """Numbers of the frets read; 1, 2, 3, ... unless given."""
    instrument_uncertainty: Length
    """Of one reading (k = 1). [unit, or its own]"""
    resolution: Length
    """Smallest step of the instrument. [unit, or its own]"""
    scale_error: float
    """Relative error common to all readings of the instrument (k = 1). [-]"""
    tooling_scatter: Length
    """Of the slots themselves (k = 1). [unit, or its own]"""
    origin: Origin
    """What the readings were measured from; "nut" unless given."""
    nut_offset: Literal["free", "none"] | Length
    """Shift of the nut, or whether there may be one; "free" unless given. [unit, or its own]"""
    nut_offset_deviation: Length
    """Standard deviation of a free nut offset before anything is measured. [unit, or its own]"""
    slot_width: Length
    """Width of the slots or crowns, for readings taken at an edge. [unit, or its own]"""
    candidates: Iterable[CandidateRequest]
    """Rules to compare."""
    threshold: float
    """Probability that makes a rule established. [-]"""
    coverage: float
    """Probability that the intervals of the answer cover. [-]"""
    significance: float
    """A rule whose residuals are less likely than this explains nothing. [-]"""
    misreading_probability: float
    """Probability that one of a board's readings is a blunder. [-]"""
