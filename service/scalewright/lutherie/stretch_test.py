"""Stretch tests: from frequencies of a string pulled longer step by step to R, kappa and its effective modulus."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from scalewright.lutherie.errors import ImpossibleReadingError, TooFewReadingsError
from scalewright.lutherie.estimate import Estimate, Floats, Note, chi_square_survival, coverage_factor
from scalewright.lutherie.phrases import counted, given
from scalewright.lutherie.student import student_quantile, student_survival
from scalewright.lutherie.temperament import frequency_of

__all__ = ["OutlierReading", "ScatterFrom", "StretchReadings", "StretchTest", "evaluate_stretch_test"]

ScatterFrom: TypeAlias = Literal["residuals", "uncertainties"]
"""How sure the slope is: by how the readings scatter about the line, or by the uncertainties as given."""

_FEWEST = 3
"""A line needs two readings, and its scatter one more."""

_SUSPICION = 0.01
"""How improbable the largest deviation has to be, of all readings together, to be named; our choice. [-]"""

_FLAT = 1e-9
"""Share of the curvature's size below which it is rounding. [-]"""
_BENT = 0.01
"""How improbable a curvature has to be to be pointed out; our choice. [-]"""


@dataclass(frozen=True, slots=True)
class StretchReadings:
    """What was measured."""

    length: float
    """Length that vibrates, before it is stretched. [mm]"""
    stretch: Sequence[float]
    """How much longer the string was made. [mm]"""
    frequencies: Sequence[float]
    """Frequency at each stretch. [Hz]"""
    uncertainties: Sequence[float] | None = None
    """Standard uncertainty of each frequency; None where all are alike. [Hz]"""
    pitch: str | None = None
    """Pitch that R is meant for; None for the pitch before the stretch."""
    scatter_from: ScatterFrom = "residuals"
    """How sure the slope is."""
    diameter: float | None = None
    """Diameter of what carries the tension, the core of a wound string; None where it is not known. [mm]"""
    tension: float | None = None
    """Tension at the pitch; None where it follows from ``unit_mass`` or is not known. [N]"""
    unit_mass: float | None = None
    """Mass per length. [g/m]"""
    scale: float | None = None
    """Open length at which the string has its pitch; None for ``length``. [mm]"""
    coverage: float = 0.95
    """Probability that the intervals of the answer hold. [-]"""


@dataclass(frozen=True, slots=True)
class OutlierReading:
    """A reading that the others contradict."""

    reading: int
    """Its number, from 1 in the order given."""
    stretch: float
    """Its stretch. [mm]"""
    frequency_hz: float
    """Its frequency. [Hz]"""
    deviation_hz: float
    """Reading minus what the others predict. [Hz]"""
    probability: float
    """How probable so large a deviation among so many readings is by chance. [-]"""


@dataclass(frozen=True, slots=True)
class StretchTest:
    """What a stretch test says of a string."""

    R: Estimate
    """Relative change of frequency with length, (L/f) df/dL. [-]"""
    kappa: Estimate
    """Relative change of tension with length, 2 R + 1. [-]"""
    slope_hz_per_mm: Estimate
    """Rise of the frequency with the stretch. [Hz/mm]"""
    frequency_hz: float
    """Frequency that R was taken at. [Hz]"""
    tension_n: float | None
    """Tension at that frequency; None where neither tension nor unit mass is known. [N]"""
    effective_modulus_gpa: Estimate | None
    """kappa times tension over area; None where diameter or tension is not known. [GPa]"""
    residuals_hz: list[float]
    """Reading minus fitted line, in the order given. [Hz]"""
    scatter_hz: float
    """Standard deviation of a reading about the line; with uncertainties given, that of one with weight one. [Hz]"""
    chi_square: float | None
    """Weighted sum of squared residuals; None without uncertainties. [-]"""
    degrees_of_freedom: int
    """Readings beyond the two that a line needs."""
    p_value: float | None
    """How probable so large a chi-square is by chance; None without uncertainties. [-]"""
    outliers: list[OutlierReading]
    """Readings that the others contradict; they are in the fit."""
    coverage: float
    """Probability that the intervals hold. [-]"""
    notes: list[Note]
    """What the numbers rest on, and cautions."""


def evaluate_stretch_test(readings: StretchReadings) -> StretchTest:
    r"""Fit a line to the frequencies of a stretch test.

    Parameters
    ----------
    readings : StretchReadings
        What was measured.

    Returns
    -------
    StretchTest
        R, kappa and, where diameter and tension are known, the effective modulus.

    Raises
    ------
    ImpossibleReadingError
        Lists of unequal length, a string that was not stretched, or that fell in pitch.
    TooFewReadingsError
        Fewer than three readings.
    UnknownPitchError
        A name that is no pitch.

    Notes
    -----
    Least squares, weighted by :math:`1/u^2` where uncertainties are given. With their scatter taken from
    the residuals the uncertainties count as weights only, and the interval widens by Student's t; taken as
    given they make the interval by themselves. The published nylon-normal set (Anderson and Beausoleil 2024)
    was evaluated in the first way with weights, the other sets without.
    """
    x, y, weights = _columns(readings)
    n = len(x)
    # Counted from the middle of the readings, level and slope do not lean on each other.
    weight = float(weights.sum())
    middle, level = float(weights @ x) / weight, float(weights @ y) / weight
    lever = float(weights @ (x - middle) ** 2)
    slope = float(weights @ ((x - middle) * (y - level))) / lever
    start = level - slope * middle
    residuals = y - level - slope * (x - middle)
    chi_square = float(weights @ residuals**2)
    given = readings.uncertainties is not None and readings.scatter_from == "uncertainties"
    spread = 1.0 if given else chi_square / (n - 2)
    factor = coverage_factor(readings.coverage) if given else student_quantile(0.5 - 0.5 * readings.coverage, n - 2)
    if not (slope > 0.0 and start > 0.0):
        message = "the pitch does not rise with the stretch; frequencies belong to the stretches in the same order"
        raise ImpossibleReadingError(message, field=("frequencies",), slope_hz_per_mm=slope)
    if readings.pitch is None:
        frequency = start
        # The start is fitted too, and leans on the slope.
        ratio = slope / start
        variance = (1.0 + ratio * middle) ** 2 / lever + ratio**2 / weight
    else:
        frequency, variance = frequency_of(readings.pitch), 1.0 / lever
    sigma = math.sqrt(spread * variance)
    R = readings.length / frequency * slope
    u = readings.length / frequency * sigma
    tension = _tension(readings, frequency)
    modulus = None
    if tension is not None and readings.diameter is not None:
        per_kappa = 1e-3 * tension / (math.pi / 4.0 * readings.diameter**2)
        modulus = _estimate(per_kappa * (2.0 * R + 1.0), per_kappa * 2.0 * u, factor)
    weighted = readings.uncertainties is not None
    return StretchTest(
        R=_estimate(R, u, factor),
        kappa=_estimate(2.0 * R + 1.0, 2.0 * u, factor),
        slope_hz_per_mm=_estimate(slope, math.sqrt(spread / lever), factor),
        frequency_hz=frequency,
        tension_n=tension,
        effective_modulus_gpa=modulus,
        residuals_hz=residuals.tolist(),
        scatter_hz=math.sqrt(chi_square / (n - 2)),
        chi_square=chi_square if weighted else None,
        degrees_of_freedom=n - 2,
        p_value=float(chi_square_survival(np.array(chi_square), n - 2)) if weighted else None,
        outliers=_outliers(readings, weights, residuals, given=given),
        coverage=readings.coverage,
        notes=_notes(readings, x, y, weights),
    )


def _estimate(value: float, sigma: float, factor: float) -> Estimate:
    return Estimate(value, sigma, value - factor * sigma, value + factor * sigma)


def _columns(readings: StretchReadings) -> tuple[Floats, Floats, Floats]:
    """Stretches, frequencies and weights, each of shape (n_readings,)."""
    x, y = np.array(readings.stretch, dtype=np.float64), np.array(readings.frequencies, dtype=np.float64)
    if len(x) != len(y):
        message = (
            f"{counted(len(x), 'stretch', 'stretches')} and {counted(len(y), 'frequency', 'frequencies')} do not match"
        )
        raise ImpossibleReadingError(message, field=("frequencies",), given=len(y), needed=len(x))
    if len(x) < _FEWEST:
        message = f"a stretch test needs {_FEWEST} readings or more, and {given(len(x))}"
        raise TooFewReadingsError(message, field=("stretch",), given=len(x), needed=_FEWEST)
    if readings.uncertainties is not None and len(readings.uncertainties) != len(x):
        message = f"one uncertainty is needed for each of {len(x)} readings, and {given(len(readings.uncertainties))}"
        raise ImpossibleReadingError(
            message, field=("uncertainties",), given=len(readings.uncertainties), needed=len(x)
        )
    if not np.ptp(x) > 1e-6 * readings.length:
        message = "the string was not stretched; give at least two different stretches"
        raise ImpossibleReadingError(message, field=("stretch",), example=[0.0, 0.5, 1.0, 1.5])
    weights = np.ones_like(x) if readings.uncertainties is None else 1.0 / np.array(readings.uncertainties) ** 2
    return x, y, weights


def _tension(readings: StretchReadings, frequency: float) -> float | None:
    """Tension at the pitch. [N]"""
    if readings.tension is not None or readings.unit_mass is None:
        return readings.tension
    length = readings.length if readings.scale is None else readings.scale
    return readings.unit_mass * (2e-3 * length * frequency) ** 2 * 1e-3


def _outliers(readings: StretchReadings, weights: Floats, residuals: Floats, *, given: bool) -> list[OutlierReading]:
    """Readings that deviate from the line through the others by more than chance allows."""
    n = len(residuals)
    x = np.array(readings.stretch)
    centred = x - weights @ x / weights.sum()
    leverage = weights / weights.sum() + weights * centred**2 / (weights @ centred**2)
    deleted = residuals / (1.0 - np.minimum(leverage, 1.0 - 1e-12))
    found = []
    for index in range(n):
        # Squared deviation in terms of what the other readings scatter by.
        squared = float(weights[index] * residuals[index] * deleted[index])
        others = float(weights @ residuals**2) - squared
        if given:
            alone = float(chi_square_survival(np.array(squared), 1))
        elif n - 3 < 1 or others <= 1e-24 * squared:
            continue  # with three readings each lies where the other two allow it to
        else:
            alone = 2.0 * student_survival(math.sqrt(squared * (n - 3) / others), n - 3)
        probability = min(1.0, n * alone)
        if probability < _SUSPICION:
            found.append(
                OutlierReading(
                    index + 1,
                    float(readings.stretch[index]),
                    float(readings.frequencies[index]),
                    float(deleted[index]),
                    probability,
                )
            )
    return found


def _notes(readings: StretchReadings, x: Floats, y: Floats, weights: Floats) -> list[Note]:
    """What the numbers rest on, and cautions."""
    notes = [
        Note(
            "caution-under-tension",
            "A string that is stretched further can break: protect your eyes and keep your face out of its line.",
        )
    ]
    if readings.uncertainties is None:
        notes.append(
            Note("weighted-alike", "All readings count alike; their scatter about the line says how sure R is.")
        )
    elif readings.scatter_from == "residuals":
        text = "The uncertainties count as weights; the scatter of the readings about the line says how sure R is."
        notes.append(Note("weights-from-uncertainties", text))
    if readings.pitch is None:
        notes.append(Note("pitch-at-start", "R is taken at the frequency that the line has before the stretch."))
    if len(x) > _FEWEST and _bends(x, y, weights):
        text = "The readings bend away from a line: the string may still be settling, or slip at its ends."
        notes.append(Note("readings-bend", text))
    return notes


def _bends(x: Floats, y: Floats, weights: Floats) -> bool:
    """Whether a parabola fits so much better than a line that chance does not explain it."""
    root = np.sqrt(weights)
    # Level, slope and curvature, each with what the ones before explain taken out.
    basis, sizes = np.linalg.qr(np.stack([np.ones_like(x), x, x**2], axis=1) * root[:, np.newaxis])
    if abs(sizes[2, 2]) <= _FLAT * abs(sizes[0, 0]) * float(np.abs(x).max()) ** 2:
        return False  # two different stretches have no curvature
    along = basis.T @ (root * y)
    left = float(np.sum((root * y - basis @ along) ** 2))
    if left <= _FLAT**2 * float(along @ along):
        return bool(abs(along[2]) > _FLAT * np.abs(along).max())  # without scatter any bend counts
    t = abs(float(along[2])) / math.sqrt(left / (len(x) - _FEWEST))
    return 2.0 * student_survival(t, len(x) - _FEWEST) < _BENT
