"""What a stretch test says of a string."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Estimate, Note

__all__ = ["OutlierReading", "StretchTest"]


@dataclass(frozen=True, slots=True)
class OutlierReading:
    """A reading that the others contradict."""

    reading: int
    """Its number, from 1 in the order given."""
    stretch: float
    """Its stretch. [unit]"""
    frequency_hz: float
    """Its frequency. [Hz]"""
    deviation_hz: float
    """Reading minus what the others predict. [Hz]"""
    probability: float
    """How probable so large a deviation among so many readings is by chance."""


@dataclass(frozen=True, slots=True)
class StretchTest:
    """What a stretch test says of a string."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    R: Estimate
    """Relative change of frequency with length, (L/f) df/dL."""
    kappa: Estimate
    """Relative change of tension with length, 2 R + 1."""
    slope_hz_per_mm: Estimate
    """Rise of the frequency with the stretch, per millimetre whatever the unit. [Hz/mm]"""
    frequency_hz: float
    """Frequency that R was taken at. [Hz]"""
    tension_n: float | None
    """Tension at that frequency; None where neither tension nor unit mass is known. [N]"""
    effective_modulus_gpa: Estimate | None
    """kappa times tension over area; None where diameter or tension is not known. [GPa]"""
    residuals_hz: tuple[float, ...]
    """Reading minus fitted line, in the order given. [Hz]"""
    scatter_hz: float
    """Standard deviation of a reading about the line; with uncertainties given, in terms of those. [Hz]"""
    chi_square: float | None
    """Weighted sum of squared residuals; None without uncertainties."""
    degrees_of_freedom: int
    """Readings beyond the two that a line needs."""
    p_value: float | None
    """How probable so large a chi-square is by chance; None without uncertainties."""
    outliers: tuple[OutlierReading, ...]
    """Readings that the others contradict; they are in the fit, so leave them out and ask again if they were wrong."""
    coverage: float
    """Probability that the intervals hold."""
    notes: tuple[Note, ...]
    """What the numbers rest on, and cautions."""
