"""Measuring cards on the wire: an instrument in, the frets to read out."""

from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field

from scalewright.lutherie.estimate import Note
from scalewright.lutherie.measure import NUT_OFFSET_UNCERTAINTY, Instrument
from scalewright.lutherie.spacing import MOST_FRETS
from scalewright.wire.quantities import LengthOut, Question, Reply, Scale, Uncertainty

__all__ = ["MeasuringCardIn", "MeasuringCardOut", "StepOut"]


class MeasuringCardIn(Question):
    """Which frets have to be read with this instrument to tell the rules apart?"""

    instrument_uncertainty: Uncertainty
    """Standard uncertainty of one reading (k = 1)."""
    resolution: Uncertainty = 0.0
    """Smallest step that the instrument shows; adds its square over 12 to the variance of every reading."""
    tooling_scatter: Uncertainty | None = None
    """Standard deviation of a fret about its place by the tool; left out, 0.05 mm is taken."""
    shortest_scale: Scale
    """The shortest layout scale to be expected; longer boards are easier."""
    frets: Annotated[int, Field(ge=2, le=MOST_FRETS)] = 19
    """Number of frets on the boards."""
    nut_offset_deviation: Uncertainty | None = None
    """Standard deviation of the nut's offset; 0 where it is known, and 0.3 mm if left out."""
    probability: Annotated[float, Field(ge=0.5, le=0.999)] = 0.95
    """Probability with which a board's own rule is to be established."""
    threshold: Annotated[float, Field(ge=0.5, le=0.9999)] = 0.95
    """Probability that makes a rule established."""

    def to_domain(self) -> dict[str, Any]:
        """Return what :func:`~scalewright.lutherie.identification.measuring_card.measuring_card` takes."""
        return {
            "instrument": Instrument(self.instrument_uncertainty, self.resolution),
            "shortest_scale": self.shortest_scale,
            "frets": self.frets,
            "tooling_scatter": self.tooling_scatter,
            "nut_deviation": NUT_OFFSET_UNCERTAINTY if self.nut_offset_deviation is None else self.nut_offset_deviation,
            "probability": self.probability,
            "threshold": self.threshold,
        }


class StepOut(BaseModel):
    """The best set of a given number of frets."""

    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

    readings: int
    """How many frets."""
    frets: list[int]
    """Which, ascending."""
    probability: float
    """Probability that the board's own rule will be established by them. [-]"""


class MeasuringCardOut(Reply):
    """Which frets to read on boards of a kind."""

    decides: bool
    """Whether the probability asked for is reached."""
    frets: list[int]
    """The frets to read from the nut: the smallest set that decides, or the best where none does."""
    probability: float
    """Probability that the board's own rule will be established by them, at the shortest scale. [-]"""
    scale: LengthOut
    """The scale for which that holds. [unit]"""
    steps: list[StepOut]
    """The best sets of two, three and more frets, up to the one that decides."""
    uncertainty_needed: LengthOut | None
    """Standard uncertainty of an instrument that would decide with these frets; null where these do, or none would."""
    statement: str
    """What to do, in a sentence."""
    notes: list[Note]
    """Cautions."""
