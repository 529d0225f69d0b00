"""Deciding readings: what to measure where two parts cannot be told to belong together or not."""

import math
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.known import Known
from scalewright.lutherie.precision import information_of, reading_information, true_scale_deviation
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL

__all__ = ["CALIPER", "USUAL_FRETS", "DecidingReadings", "ReadingOn", "deciding_readings"]

CALIPER = 0.05
"""Standard uncertainty of a caliper that is read with care: common practice, no source. [mm]"""

USUAL_FRETS = 19
"""How many frets a board is taken to have where that is not known: common practice, no source."""

_OWN_AT_MOST, _CALIPER_AT_MOST = 3, 16
"""So many more readings are worth advising with the instrument at hand, and with a caliper."""


@dataclass(frozen=True, slots=True)
class ReadingOn:
    """A reading to take on one of the parts."""

    part: str
    """Which part."""
    fret: int
    """Fret to measure to, from the nut."""
    uncertainty: float
    """Standard uncertainty that it should have. [mm]"""


@dataclass(frozen=True, slots=True)
class DecidingReadings:
    """Readings that are expected to decide."""

    readings: list[ReadingOn]
    """In the order of their worth; empty where none can be expected to decide."""
    expected_uncertainty: float
    """Standard uncertainty that the mismatch in true scale will then have. [mm]"""
    needed_uncertainty: float
    """Standard uncertainty below which a mismatch like this is decided. [mm]"""
    text: str
    """What to do, in words."""


@dataclass(frozen=True, slots=True)
class _Side:
    """A part that can be measured."""

    known: Known
    information: Floats
    share: float
    true_scale: float
    frets: tuple[int, ...]
    uncertainty: float


def deciding_readings(
    one: Known, other: Known, mismatch: float, tolerance: float, guard_factor: float
) -> DecidingReadings:
    """Readings that would decide whether two parts belong together.

    Parameters
    ----------
    one, other : Known
        What is known of them.
    mismatch : float
        The likeliest difference of their true scales. [mm]
    tolerance : float
        How large it may be. [mm]
    guard_factor : float
        Guard band in standard uncertainties. [-]

    Returns
    -------
    DecidingReadings
        The fewest found by taking the one that tells most, again and again: with the instrument at hand where that
        will do, else with a caliper.

    Notes
    -----
    Decided is what lies a guard band off the tolerance, so the uncertainty has to come below
    abs(abs(mismatch) - tolerance) / guard_factor. What each reading adds is reckoned by
    :mod:`scalewright.lutherie.precision`.
    """
    needed = abs(abs(mismatch) - tolerance) / guard_factor
    fixed = math.sqrt(sum(known.deviation**2 for known in (one, other) if known.source == "definition"))
    sides = [_side(known) for known in (one, other) if known.source != "definition"]
    if not sides or fixed >= needed:
        return _undecidable(fixed, needed)
    own = [side for side in sides if side.uncertainty > 0.0]
    attempts: list[tuple[float | None, int]] = []
    if len(own) == len(sides):
        attempts.append((None, _OWN_AT_MOST))
    if not own or max(side.uncertainty for side in sides) > CALIPER or len(own) < len(sides):
        attempts.append((CALIPER, _CALIPER_AT_MOST))
    else:
        attempts = [(None, _CALIPER_AT_MOST)]
    expected = math.inf
    for uncertainty, most in attempts:
        readings, expected = _greedy(sides, fixed, needed, uncertainty, most)
        if expected <= needed:
            return DecidingReadings(readings, expected, needed, _words(readings))
    return _undecidable(expected, needed)


def _side(known: Known) -> _Side:
    part = known.part
    survey = part.survey
    procedure = None if survey is None else survey.procedure
    share = sum(
        one.probability * {EQUAL: 0.0, EIGHTEENTH: 1.0}.get(one.rule, 0.5) for one in known.hypotheses if one.rule
    )
    true_scale = known.true_scale if known.hypotheses else 650.0
    highest = part.frets or max(USUAL_FRETS, max(procedure.end) if procedure else 0)
    uncertainty = math.sqrt(float(np.median(procedure.variance))) if procedure else 0.0
    information = information_of(procedure, true_scale, share)
    return _Side(known, information, share, true_scale, tuple(range(1, highest + 1)), uncertainty)


def _greedy(
    sides: list[_Side], fixed: float, needed: float, uncertainty: float | None, most: int
) -> tuple[list[ReadingOn], float]:
    """Readings that tell most, one after the other, until the mismatch is sure enough."""
    information = [side.information for side in sides]
    gains = [
        reading_information(side.frets, uncertainty or side.uncertainty, side.true_scale, side.share) for side in sides
    ]
    variance = [float(true_scale_deviation(told)) ** 2 for told in information]
    readings: list[ReadingOn] = []
    expected = math.sqrt(fixed**2 + sum(variance))
    # One at least: the parts would not be undecided if the plan's rough reckoning were all there is to it.
    while (expected > needed or not readings) and len(readings) < most:
        after = [true_scale_deviation(told + gain) ** 2 for told, gain in zip(information, gains, strict=True)]
        which = max(range(len(sides)), key=lambda k: variance[k] - float(np.min(after[k])))
        best = int(np.argmin(after[which]))
        information[which] = information[which] + gains[which][best]
        variance[which] = float(after[which][best])
        side = sides[which]
        readings.append(ReadingOn(side.known.part.id, side.frets[best], uncertainty or side.uncertainty))
        expected = math.sqrt(fixed**2 + sum(variance))
    return readings, expected


def _words(readings: list[ReadingOn]) -> str:
    frets: dict[str, list[int]] = {}
    for reading in readings:
        frets.setdefault(reading.part, []).append(reading.fret)
    places = " and ".join(
        f"on {part} from the nut to fret {', '.join(str(fret) for fret in sorted(numbers))}"
        for part, numbers in frets.items()
    )
    sure = max(reading.uncertainty for reading in readings)
    return f"Measure {places}, to {sure:.2g} mm (k = 1); that should decide it."


def _undecidable(expected: float, needed: float) -> DecidingReadings:
    text = (
        "The mismatch lies so near the tolerance that no caliper reading can be expected to decide it; lay the parts "
        "against each other, or treat them as not belonging together."
    )
    return DecidingReadings([], expected, needed, text)
