"""Stretch tests on the wire: frequencies of a string pulled longer, and the R and kappa that they give."""

from typing import Annotated, Self, TypeAlias

from pydantic import BaseModel, ConfigDict, Field, model_validator
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.stretch_test import ScatterFrom, StretchReadings
from scalewright.wire.quantities import Distance, Length, LengthOut, Question, Reply, Scale
from scalewright.wire.strings import Pitch

__all__ = ["StretchTestIn", "StretchTestOut"]

_MOST_READINGS = 200

_Frequency: TypeAlias = Annotated[float, Field(ge=8.0, le=20_000.0)]
_FrequencyUncertainty: TypeAlias = Annotated[float, Field(ge=1e-6, le=1000.0)]


class StretchTestIn(Question):
    """What do these frequencies of a stretched string say of it?"""

    length: Annotated[Scale, Field(examples=["613.518 mm"])]
    """Length that vibrates, before it is stretched. [unit]"""
    stretch: Annotated[
        list[Distance], Field(min_length=1, max_length=_MOST_READINGS, examples=[[0.0, 0.5, 1.0, 1.5, 2.0]])
    ]
    """How much longer the string was made, for each reading. [unit]"""
    frequencies: Annotated[
        list[_Frequency], Field(min_length=1, max_length=_MOST_READINGS, examples=[[326.0, 331.5, 337.5, 345.0, 352.0]])
    ]
    """Frequency at each stretch, Hz."""
    uncertainties: Annotated[list[_FrequencyUncertainty], Field(min_length=1, max_length=_MOST_READINGS)] | None = None
    """Standard uncertainty of each frequency, Hz; left out, all readings count alike."""
    pitch: Annotated[Pitch | None, Field(examples=["E4"])] = None
    """Pitch that R is meant for, a name or hertz; left out, the one that the fitted line has before the stretch."""
    scatter_from: ScatterFrom = "residuals"
    """How sure the answer is: by how the readings scatter about the line ("residuals"; uncertainties then count as
    weights only), or by the "uncertainties" as they are given."""
    diameter: Annotated[Length | None, Field(examples=["0.712 mm"])] = None
    """Diameter of what carries the tension, the core of a wound string; asks for the effective modulus. [unit]"""
    tension: Annotated[float, Field(gt=0.0, le=10_000.0, examples=[68.6])] | None = None
    """Tension at the pitch, N; left out, it follows from `unit_mass`."""
    unit_mass: Annotated[float, Field(gt=0.0, le=1000.0, examples=[0.374])] | None = None
    """Mass per length, g/m (the same number as mg/mm)."""
    scale: Annotated[Scale | None, Field(examples=["650 mm"])] = None
    """Open length at which the string has its pitch; left out, `length`. [unit]"""
    coverage: Annotated[float, Field(ge=0.5, le=0.9999)] = 0.95
    """Probability that the intervals of the answer hold."""

    @model_validator(mode="after")
    def _nothing_idle(self) -> Self:
        if self.scatter_from == "uncertainties" and self.uncertainties is None:
            message = "There are no uncertainties that the scatter could be taken from; give them, or leave this out."
            raise _fault("scatter_from", message)
        if self.tension is not None and self.unit_mass is not None:
            message = "A tension and a unit_mass say the same twice; give one of them."
            raise _fault("unit_mass", message)
        if self.diameter is not None and self.tension is None and self.unit_mass is None:
            message = (
                "The modulus takes a tension or a unit_mass beside the diameter; add one, or leave the diameter out."
            )
            raise _fault("diameter", message)
        return self

    def to_domain(self) -> StretchReadings:
        """Return the readings."""
        return StretchReadings(
            length=self.length,
            stretch=self.stretch,
            frequencies=self.frequencies,
            uncertainties=self.uncertainties,
            pitch=self.pitch,
            scatter_from=self.scatter_from,
            diameter=self.diameter,
            tension=self.tension,
            unit_mass=self.unit_mass,
            scale=self.scale,
            coverage=self.coverage,
        )


def _fault(field: str, message: str) -> ValidationError:
    """An error that names a member without effect."""
    problem = PydanticCustomError("no_effect", "{reason}", {"reason": message})
    return ValidationError.from_exception_data(
        "stretch_test", [InitErrorDetails(type=problem, loc=(field,), input=None)]
    )


class OutlierReadingOut(BaseModel):
    """A reading that the others contradict."""

    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

    reading: int
    """Its number, from 1 in the order given."""
    stretch: LengthOut
    """Its stretch. [unit]"""
    frequency_hz: float
    """Its frequency. [Hz]"""
    deviation_hz: float
    """Reading minus what the others predict. [Hz]"""
    probability: float
    """How probable so large a deviation among so many readings is by chance."""


class StretchTestOut(Reply):
    """What a stretch test says of a string."""

    R: Estimate
    """Relative change of frequency with length, (L/f) df/dL."""
    kappa: Estimate
    """Relative change of tension with length, 2 R + 1."""
    slope_hz_per_mm: Estimate
    """Rise of the frequency with the stretch, per millimetre whatever the unit. [Hz/mm]"""
    frequency_hz: float
    """Frequency that R was taken at. [Hz]"""
    tension_n: float | None
    """Tension at that frequency; null where neither tension nor unit mass is known. [N]"""
    effective_modulus_gpa: Estimate | None
    """kappa times tension over area; null where diameter or tension is not known. [GPa]"""
    residuals_hz: list[float]
    """Reading minus fitted line, in the order given. [Hz]"""
    scatter_hz: float
    """Standard deviation of a reading about the line; with uncertainties given, in terms of those. [Hz]"""
    chi_square: float | None
    """Weighted sum of squared residuals; null without uncertainties."""
    degrees_of_freedom: int
    """Readings beyond the two that a line needs."""
    p_value: float | None
    """How probable so large a chi-square is by chance; null without uncertainties."""
    outliers: list[OutlierReadingOut]
    """Readings that the others contradict; they are in the fit, so leave them out and ask again if they were wrong."""
    coverage: float
    """Probability that the intervals hold."""
    notes: list[Note]
    """What the numbers rest on, and cautions."""
