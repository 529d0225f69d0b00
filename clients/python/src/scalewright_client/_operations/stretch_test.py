"""Asking what a stretch test says of a string."""

from collections.abc import Iterable
from typing import Literal

from scalewright_client._protocol import Call, call
from scalewright_client._requests import Length, Unit
from scalewright_client._results import StretchTest

__all__ = ["stretch_test"]


def stretch_test(
    *,
    length: Length,
    stretch: Iterable[Length],
    frequencies: Iterable[float],
    unit: Unit = "mm",
    uncertainties: Iterable[float] | None = None,
    pitch: str | float | None = None,
    scatter_from: Literal["residuals", "uncertainties"] | None = None,
    diameter: Length | None = None,
    tension: float | None = None,
    unit_mass: float | None = None,
    scale: Length | None = None,
    coverage: float | None = None,
) -> Call[StretchTest]:
    """Ask what the frequencies of a string pulled longer say of it.

    Parameters
    ----------
    length : float or str
        Length that vibrates, before it is stretched. [unit, or its own]
    stretch : iterable of float or str
        How much longer the string was made, for each reading. [unit, or their own]
    frequencies : iterable of float
        Frequency at each stretch. [Hz]
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    uncertainties : iterable of float, optional
        Standard uncertainty of each frequency (k = 1); all readings count alike unless given. [Hz]
    pitch : str or float, optional
        Pitch that R is meant for; the one before the stretch unless given. [Hz]
    scatter_from : {"residuals", "uncertainties"}, optional
        What the uncertainty of the answer follows; "residuals" unless given.
    diameter : float or str, optional
        Diameter of what carries the tension; asks for the effective modulus. [unit, or its own]
    tension : float, optional
        Tension at the pitch. [N]
    unit_mass : float, optional
        Mass per length. [g/m]
    scale : float or str, optional
        Open length at which the string has its pitch; ``length`` unless given. [unit, or its own]
    coverage : float, optional
        Probability that the intervals of the answer cover; 0.95 unless given. [-]

    Returns
    -------
    StretchTest
        R and kappa with their uncertainty, and the readings that the others contradict.
    """
    body = {
        "unit": unit,
        "length": length,
        "stretch": stretch,
        "frequencies": frequencies,
        "uncertainties": uncertainties,
        "pitch": pitch,
        "scatter_from": scatter_from,
        "diameter": diameter,
        "tension": tension,
        "unit_mass": unit_mass,
        "scale": scale,
        "coverage": coverage,
    }
    return call("POST", "/v1/stretch-test", StretchTest, body)
