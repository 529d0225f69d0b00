"""Readings taken on a board, and what is known of the instrument, the tool and the nut."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

from scalewright.lutherie.errors import ImpossibleReadingError, TooFewReadingsError

__all__ = [
    "EDGE_HALF_WIDTH",
    "EDGE_HALF_WIDTH_UNCERTAINTY",
    "LEAST_UNCERTAINTY",
    "NUT_OFFSET_UNCERTAINTY",
    "Instrument",
    "NutOffset",
    "Origin",
    "Point",
    "Procedure",
    "Reading",
    "Survey",
    "survey",
]

NUT_OFFSET_UNCERTAINTY = 0.3
"""Standard deviation of a nut's distance from the pattern's zero line on boards at large: our own choice, no
source. [mm]"""

LEAST_UNCERTAINTY = 1e-4
"""No instrument that is put on wood is better. [mm]"""

EDGE_HALF_WIDTH = 0.7
"""Half of what a slot or crown measures across where that was not said: common practice, no source. [mm]"""

EDGE_HALF_WIDTH_UNCERTAINTY = 0.4
"""Its standard uncertainty: from half a thin kerf to half a wide crown. [mm]"""

Point: TypeAlias = Literal["centre", "near_edge", "far_edge"]
"""Where on a slot or crown a reading ends; near is the side of the nut."""

Origin: TypeAlias = Literal["nut", "zero_fret"]
"""What fret number 0 is: the nut's front edge, or a fret that belongs to the pattern."""

_EDGE: dict[Point, int] = {"near_edge": -1, "far_edge": 1}


class Reading(NamedTuple):
    """One measured distance between two frets of a board; fret 0 is the origin."""

    start: int
    """Number of the fret the distance starts from."""
    end: int
    """Number of the fret it ends at."""
    distance: float
    """The distance. [mm]"""
    uncertainty: float | None = None
    """Its own standard uncertainty, where it differs from the instrument's. [mm]"""
    point: Point = "centre"
    """Where on the slots or crowns it was taken; both ends alike."""


@dataclass(frozen=True, slots=True)
class Instrument:
    """What is known of the instrument."""

    uncertainty: float
    """Standard uncertainty of one reading (k = 1). [mm]"""
    resolution: float = 0.0
    """Smallest step that it shows; adds resolution squared over 12 (JCGM 100, F.2.2.1). [mm]"""
    scale_error: float = 0.0
    """Relative standard uncertainty that all its readings share. [-]"""


@dataclass(frozen=True, slots=True)
class NutOffset:
    """What is known of the nut before anything is measured, as a normal distribution.

    The offset is the distance from the pattern's zero line to the nut's front edge, counted
    positive away from fret 1, so that a reading from the nut is long by just that much.
    """

    mean: float = 0.0
    """Its expected value. [mm]"""
    standard_deviation: float = NUT_OFFSET_UNCERTAINTY
    """How far it may be from that; 0 for a known one. [mm]"""


@dataclass(frozen=True, slots=True)
class Procedure:
    """How a board was measured: all that there is to know of its readings but their values."""

    start: tuple[int, ...]
    """Numbers of the frets that the distances start from, N of them."""
    end: tuple[int, ...]
    """Numbers of the frets that they end at, N of them."""
    variance: tuple[float, ...]
    """Variance of each by the instrument alone. [mm²]"""
    offset: tuple[float, ...]
    """What is known to be too much in each: half widths of slots or crowns. [mm]"""
    edge: tuple[int, ...]
    """How many half widths of uncertain size each contains: -1, 0 or 1."""
    scatter: float | None
    """Standard deviation of a fret about its place by the tool; None where it is not known. [mm]"""
    nut: NutOffset
    """What is known of the nut."""
    scale_error: float
    """Relative standard uncertainty that all readings share. [-]"""
    zero_fret: bool
    """Whether fret 0 is a fret, set by the tool like the others."""

    @property
    def without_nut(self) -> bool:
        """Whether the nut plays no part: fret 0 is a fret, or nothing was measured from it."""
        return self.zero_fret or 0 not in self.start


@dataclass(frozen=True, slots=True)
class Survey:
    """All readings of one board."""

    procedure: Procedure
    """How they were taken."""
    distance: tuple[float, ...]
    """The distances as read, N of them. [mm]"""


def _between(start: int, end: int) -> int:
    """How many half widths a distance gains when both ends move one half width: of a fret, not of a nut."""
    return int(end > 0) - int(start > 0)


def survey(
    readings: Sequence[Reading],
    instrument: Instrument,
    *,
    tooling_scatter: float | None = None,
    nut_offset: NutOffset | None = None,
    origin: Origin = "nut",
    slot_width: float | None = None,
) -> Survey:
    """Everything that was measured on a board, checked and in the order given.

    Parameters
    ----------
    readings : sequence of Reading
        N distances between frets, in any order; repeats are fine.
    instrument : Instrument
        What they were read with.
    tooling_scatter : float, optional
        Standard deviation of a fret about its place by the tool; None where it is not known. [mm]
    nut_offset : NutOffset, optional
        What is known of the nut; by default free with the prior of boards at large. With a zero
        fret as the origin the nut plays no part.
    origin : {"nut", "zero_fret"}
        What fret number 0 is.
    slot_width : float, optional
        Distance between the edges of a slot or crown, for readings taken at an edge. [mm]

    Returns
    -------
    Survey
        The readings with their variances.

    Raises
    ------
    TooFewReadingsError
        No reading at all.
    ImpossibleReadingError
        A distance that is not positive, a reading from a fret to itself, or one with next to no
        uncertainty.
    """
    if not readings:
        message = "there is no reading to fit; measure from the nut to fret 12 first, then to the highest fret"
        raise TooFewReadingsError(message, field=("readings",), given=0, needed=1)
    half_width = EDGE_HALF_WIDTH if slot_width is None else 0.5 * slot_width
    by_resolution = instrument.resolution * instrument.resolution / 12.0
    least = LEAST_UNCERTAINTY * LEAST_UNCERTAINTY
    zero_fret = origin == "zero_fret"
    variances = []
    distances = []
    offsets = []
    edges = []
    for index, reading in enumerate(readings):
        if reading.end <= reading.start:
            message = (
                f"a reading from fret {reading.start} to fret {reading.end} has no length; "
                "give the lower fret first and a higher one second, 0 for the nut"
            )
            raise ImpossibleReadingError(message, field=("readings", index))
        if not reading.distance > 0.0:
            message = "a distance between two frets is greater than zero"
            raise ImpossibleReadingError(message, field=("readings", index))
        own = instrument.uncertainty if reading.uncertainty is None else reading.uncertainty
        variance = own * own + by_resolution
        if variance < least:
            message = (
                "a reading without any uncertainty cannot be weighed, and no instrument reads a board to less than "
                "0.0001 mm; give the instrument's standard uncertainty, for example 0.05 mm, or its resolution"
            )
            raise ImpossibleReadingError(message, field=("instrument_uncertainty",))
        edge = 0
        if not zero_fret and reading.point != "centre":
            edge = _EDGE[reading.point] * _between(reading.start, reading.end)
        if reading.distance - half_width * edge <= 0.0:
            message = "less half a slot's width nothing is left of this distance; check slot_width and the reading"
            raise ImpossibleReadingError(message, field=("readings", index))
        variances.append(variance)
        distances.append(reading.distance)
        offsets.append(half_width * edge)
        edges.append(edge if slot_width is None else 0)
    nut = NutOffset() if nut_offset is None else nut_offset
    procedure = Procedure(
        start=tuple(reading.start for reading in readings),
        end=tuple(reading.end for reading in readings),
        variance=tuple(variances),
        offset=tuple(offsets),
        edge=tuple(edges),
        scatter=tooling_scatter,
        nut=NutOffset(0.0, 0.0) if zero_fret else nut,
        scale_error=instrument.scale_error,
        zero_fret=zero_fret,
    )
    return Survey(procedure, tuple(distances))
