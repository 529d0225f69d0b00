"""Deciding readings: what to measure where two parts cannot be told to belong together or not."""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.known import Known
from scalewright.lutherie.phrases import listed, numbered, plain, times
from scalewright.lutherie.precision import information_of, reading_information, true_scale_deviation
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL

__all__ = ["CALIPER", "USUAL_FRETS", "DecidingReadings", "Prospects", "ReadingOn", "deciding_readings"]

CALIPER = 0.05
"""Standard uncertainty of a caliper that is read with care: common practice, no source. [mm]"""

USUAL_FRETS = 19
"""How many frets a board is taken to have where that is not known: common practice, no source."""

_OWN_AT_MOST, _CALIPER_AT_MOST = 3, 16
"""So many more readings are worth advising with the instrument at hand, and with a caliper."""


_LEAST_GUARD = 0.01
"""A guard band of fewer standard uncertainties asks for no more than this one. [-]"""


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


class Prospect:
    """What more readings on a part would tell; reckoned once, however many parts it is held against."""

    def __init__(self, known: Known) -> None:
        part = known.part
        procedure = None if part.survey is None else part.survey.procedure
        self.known = known
        self._share = sum(
            one.probability * {EQUAL: 0.0, EIGHTEENTH: 1.0}.get(one.rule, 0.5) for one in known.hypotheses if one.rule
        )
        self._true_scale = known.true_scale if known.hypotheses else 650.0
        highest = part.frets or max(USUAL_FRETS, max(procedure.end) if procedure else 0)
        self._frets = tuple(range(1, highest + 1))
        self.uncertainty = math.sqrt(float(np.median(procedure.variance))) if procedure else 0.0
        """Standard uncertainty of the instrument at hand, 0 where there was none. [mm]"""
        self._information = information_of(procedure, self._true_scale, self._share)
        self.variance = float(true_scale_deviation(self._information)) ** 2
        """Variance of the true scale as things stand. [mm²]"""
        self._ladders: dict[float, tuple[list[Floats], list[tuple[int, float]]]] = {}

    def step(self, uncertainty: float, number: int) -> tuple[int, float]:
        """The reading that tells most after so many others were taken, and the variance of the true scale after it.

        Parameters
        ----------
        uncertainty : float
            Standard uncertainty of these readings. [mm]
        number : int
            How many were taken before.

        Returns
        -------
        fret : int
            Fret to measure to.
        variance : float
            Of the true scale. [mm²]
        """
        told, ladder = self._ladders.setdefault(uncertainty, ([self._information], []))
        while len(ladder) <= number:
            gains = reading_information(self._frets, uncertainty, self._true_scale, self._share)
            after = true_scale_deviation(told[-1] + gains) ** 2
            best = int(np.argmin(after))
            told.append(told[-1] + gains[best])
            ladder.append((self._frets[best], float(after[best])))
        return ladder[number]


class Prospects:
    """Prospects of the parts of one assembly, each reckoned when it is first asked for."""

    def __init__(self) -> None:
        self._found: dict[int, Prospect] = {}

    def of(self, known: Known) -> Prospect:
        """What more readings on this part would tell."""
        found = self._found.get(id(known))
        if found is None:
            # The prospect holds on to what it is about, so that no other can take its identity.
            found = self._found[id(known)] = Prospect(known)
        return found


def deciding_readings(
    one: Known, other: Known, mismatch: float, tolerance: float, guard_factor: float, prospects: Prospects
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
    prospects : Prospects
        What is known already of further readings on the parts.

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
    needed = abs(abs(mismatch) - tolerance) / max(guard_factor, _LEAST_GUARD)
    fixed = math.sqrt(sum(known.deviation**2 for known in (one, other) if known.source == "definition"))
    sides = [prospects.of(known) for known in (one, other) if known.source != "definition"]
    if not sides or fixed >= needed:
        too_rough = [known.part.id for known in (one, other) if known.source == "definition" and known.deviation > 0.0]
        return _undecidable(fixed, needed, too_rough)
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


def _greedy(
    sides: Sequence[Prospect], fixed: float, needed: float, uncertainty: float | None, most: int
) -> tuple[list[ReadingOn], float]:
    """Readings that tell most, one after the other, until the mismatch is sure enough."""
    instruments = [uncertainty or side.uncertainty for side in sides]
    taken = [0] * len(sides)
    variance = [side.variance for side in sides]
    readings: list[ReadingOn] = []
    expected = math.sqrt(fixed**2 + sum(variance))
    # One at least: the parts would not be undecided if the plan's rough reckoning were all there is to it.
    while (expected > needed or not readings) and len(readings) < most:
        steps = [side.step(sigma, number) for side, sigma, number in zip(sides, instruments, taken, strict=True)]
        which = max(range(len(sides)), key=lambda k: variance[k] - steps[k][1])
        fret, variance[which] = steps[which]
        taken[which] += 1
        readings.append(ReadingOn(sides[which].known.part.id, fret, instruments[which]))
        expected = math.sqrt(fixed**2 + sum(variance))
    return readings, expected


def _words(readings: Sequence[ReadingOn]) -> str:
    """What to measure, part by part; a fret that is to be read again and again is named once."""
    frets: dict[str, Counter[int]] = {}
    for reading in readings:
        frets.setdefault(reading.part, Counter())[reading.fret] += 1
    places = []
    for part, counts in frets.items():
        places.append(f"on {part} from the nut to {numbered('fret', sorted(counts))}")
        again = [f"fret {fret} {times(count)}" for fret, count in sorted(counts.items()) if count > 1]
        places[-1] += f" ({listed(again)})" if again else ""
    sure = max(reading.uncertainty for reading in readings)
    return f"Measure {listed(places)}, to {plain(sure, 2)} mm (k = 1); that should decide it."


def _undecidable(expected: float, needed: float, too_rough: Sequence[str] = ()) -> DecidingReadings:
    """No readings; ``too_rough`` names parts whose stated tolerances leave it open."""
    text = (
        "The mismatch lies so near the tolerance that no caliper reading can be expected to decide it; lay the parts "
        "against each other, or treat them as not belonging together."
    )
    if too_rough:
        text = (
            f"What is stated of {listed(too_rough)} is too rough to decide it; give readings of it instead, or a "
            "closer tolerance."
        )
    return DecidingReadings([], expected, needed, text)
