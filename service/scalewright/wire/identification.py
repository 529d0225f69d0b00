"""Identification on the wire: readings in, rule and scales out."""

from dataclasses import dataclass
from typing import Annotated, LiteralString, NamedTuple, Self, TypeAlias

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    ValidationInfo,
    model_validator,
)
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, InitErrorDetails, PydanticCustomError, ValidationError, core_schema

from scalewright.drawing.plots import identification_plot
from scalewright.drawing.svg import write_svg
from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.identification import (
    DEFAULT_CANDIDATES,
    Beliefs,
    Identification,
    NextReading,
    Verdict,
)
from scalewright.lutherie.measure import (
    NUT_OFFSET_UNCERTAINTY,
    Instrument,
    NutOffset,
    Origin,
    Point,
    Reading,
    Survey,
    survey,
)
from scalewright.lutherie.phrases import counted
from scalewright.lutherie.spacing import MOST_FRETS, Listed
from scalewright.wire.candidates import Candidates
from scalewright.wire.quantities import (
    AnswerContext,
    LengthBetween,
    LengthEstimate,
    LengthOut,
    LengthsOut,
    Question,
    Reply,
    Uncertainty,
)
from scalewright.wire.rules import RuleOut

__all__ = [
    "LONGEST_DISTANCE",
    "SHORTEST_DISTANCE",
    "CandidateOut",
    "IdentificationIn",
    "IdentificationOut",
    "ReadingIn",
    "SuspectOut",
]

SHORTEST_DISTANCE = 0.1
"""Shorter than any distance between two frets. [mm]"""

LONGEST_DISTANCE = 3000.0
"""Longer than any fretted board. [mm]"""

_LONGEST_TEXT = 32
_MOST_READINGS = 200
_MANY, _FEW = 30, 4
"""More readings, or more candidates, than this take their time."""
_MOST_NUT_OFFSET = 50.0

Measured: TypeAlias = Annotated[float, LengthBetween(SHORTEST_DISTANCE, LONGEST_DISTANCE, "322.6 mm")]
"""A distance read on a board."""

FretNumber: TypeAlias = Annotated[int, Field(ge=0, le=MOST_FRETS)]
"""A fret, 0 for the origin."""

Share: TypeAlias = Annotated[float, Field(ge=0.5, le=0.9999)]
"""A probability that something is to hold."""


@dataclass(frozen=True, slots=True)
class _NutOffsetIn:
    """Annotation of a nut offset in a question: a length, or what is known of it in a word."""

    length: LengthBetween

    def read(self, value: object, info: ValidationInfo) -> float | str:
        """Length in millimetres, or the word."""
        if not isinstance(value, str) or any(character.isdigit() for character in value[:_LONGEST_TEXT]):
            return self.length.read(value, info)
        if value in {"free", "none"}:
            return value
        message = 'A nut offset is "free", "none" or a length, such as "0.5 mm".'
        raise PydanticCustomError("nut_offset_unknown", message)

    def __get_pydantic_core_schema__(self, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.with_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        lengths = self.length.__get_pydantic_json_schema__(schema, handler)
        return {"anyOf": [{"type": "string", "enum": ["free", "none"]}, *lengths["anyOf"]], "examples": ["free"]}


NutOffsetIn: TypeAlias = Annotated[
    float | str, _NutOffsetIn(LengthBetween(-_MOST_NUT_OFFSET, _MOST_NUT_OFFSET, "0.5 mm"))
]
"""What is known of the nut."""


def _not_empty(values: list[float]) -> list[float]:
    """Say where to start where nothing was measured."""
    if not values:
        message = "There is no reading to fit; measure from the nut to fret 12 first, then to the highest fret."
        raise PydanticCustomError("too_few_readings", message)
    return values


def _fault(field: str, code: LiteralString, message: str, *below: int) -> ValidationError:
    """An error that names one field, from a rule about several."""
    problem = PydanticCustomError(code, "{reason}", {"reason": message})
    return ValidationError.from_exception_data(
        "identification", [InitErrorDetails(type=problem, loc=(field, *below), input=None)]
    )


class ReadingIn(BaseModel):
    """One distance between two frets."""

    model_config = ConfigDict(
        strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True
    )

    start: FretNumber = Field(0, alias="from")
    """Fret that the distance starts from, 0 for the origin."""
    end: Annotated[int, Field(ge=1, le=MOST_FRETS)] = Field(alias="to")
    """Fret that it ends at."""
    distance: Measured
    """The distance."""
    uncertainty: Uncertainty | None = None
    """Its own standard uncertainty (k = 1), where it differs from the instrument's."""
    point: Point = "centre"
    """Where on slots or crowns it was taken: "centre", "near_edge" (towards the nut) or "far_edge", both ends alike."""


class IdentificationArguments(NamedTuple):
    """Arguments of :func:`scalewright.lutherie.identification.identify`."""

    survey: Survey
    beliefs: Beliefs


class IdentificationIn(Question):
    """Which rule was this board cut by, and what is its scale?"""

    instrument_uncertainty: Uncertainty | None = None
    """Standard uncertainty of one reading (k = 1). A caliper read with care: about 0.05 mm."""
    resolution: Uncertainty = 0.0
    """Smallest step that the instrument shows; adds its square over 12 to the variance of every reading."""
    scale_error: Annotated[float, Field(ge=0.0, le=0.1)] = 0.0
    """Relative standard uncertainty that all readings of the instrument share; 0.001 is 1 mm in a metre."""
    tooling_scatter: Uncertainty | None = None
    """Standard deviation of a fret about its place by the tool; left out, it is integrated over what tools do."""
    frets: Annotated[list[Annotated[int, Field(ge=1, le=MOST_FRETS)]], Field(max_length=_MOST_READINGS)] | None = None
    """Fret of every reading, in any order, repeats welcome; left out: 1, 2, 3, ..."""
    from_nut: Annotated[list[Measured], Field(max_length=_MOST_READINGS), AfterValidator(_not_empty)] | None = None
    """Distances from the nut (or zero fret) to the centre of each fret, all from the same end in one go."""
    fret_to_fret: Annotated[list[Measured], Field(max_length=_MOST_READINGS), AfterValidator(_not_empty)] | None = None
    """Instead: distances from each of `frets` to the one before it in the list, the first from the nut."""
    readings: Annotated[list[ReadingIn], Field(max_length=_MOST_READINGS), AfterValidator(_not_empty)] | None = None
    """Instead: distances between any two frets, for a caliper that cannot reach."""
    origin: Origin = "nut"
    """What fret number 0 is: the nut's front edge, or a zero fret, which the tool has set like the others."""
    nut_offset: NutOffsetIn = "free"
    """Shift of the nut from the pattern's zero line, positive away from fret 1: "free" (default; normal with a
    standard deviation of 0.3 mm), "none", or a known length."""
    slot_width: Annotated[float, LengthBetween(0.0, 10.0, "0.6 mm", above=True)] | None = None
    """Width of the slots or crowns between their edges, for readings taken at an edge."""
    nut_offset_deviation: Annotated[float, LengthBetween(1e-4, _MOST_NUT_OFFSET, "0.3 mm")] | None = None
    """Standard deviation of a free nut offset before anything is measured; 0.3 mm if left out."""
    candidates: Candidates | None = None
    """Rules to compare; left out: "equal" and "eighteenth" with a prior of 0.45 each, any divisor with 0.10."""
    threshold: Share = 0.95
    """Probability that makes a rule established."""
    coverage: Share = 0.95
    """Probability that a stated interval holds."""
    significance: Annotated[float, Field(ge=1e-9, le=0.2)] = 0.001
    """A rule whose residuals are less likely than this explains nothing."""
    misreading_probability: Annotated[float, Field(ge=0.0, le=0.5)] = 0.02
    """Probability that one of a board's readings is a blunder; 0 takes every reading at its word."""

    @property
    def light(self) -> bool:
        """Whether its answer takes no more than a few milliseconds."""
        readings = len(self.from_nut or self.fret_to_fret or self.readings or ())
        return self.tooling_scatter is not None and readings <= _MANY and len(self.candidates or ()) <= _FEW

    @model_validator(mode="after")
    def _one_list_of_readings(self) -> Self:
        given = [name for name in ("from_nut", "fret_to_fret", "readings") if getattr(self, name) is not None]
        if len(given) != 1:
            where = given[-1] if given else "from_nut"
            message = "Give the readings once: as from_nut, fret_to_fret or readings."
            raise _fault(where, "readings_given", message)
        values = self.from_nut or self.fret_to_fret
        if values is not None:
            self._check_frets(given[0], values)
        elif self.frets is not None:
            message = "Each of the readings names its own frets; leave this list out."
            raise _fault("frets", "frets_given", message)
        own = self.readings is not None and all(reading.uncertainty for reading in self.readings)
        if self.instrument_uncertainty is None and self.resolution == 0.0 and not own:
            message = (
                "How sure the readings are is missing; give the standard uncertainty of one reading, "
                "for example 0.05 mm for a caliper, or the resolution of the instrument."
            )
            raise _fault("instrument_uncertainty", "uncertainty_missing", message)
        return self

    @property
    def _nut_is_known(self) -> bool:
        return isinstance(self.nut_offset, float) and self.nut_offset != 0.0

    @model_validator(mode="after")
    def _the_nut_is_spoken_of_once(self) -> Self:
        if self.origin == "zero_fret" and (self.nut_offset_deviation is not None or self._nut_is_known):
            message = "From a zero fret the nut plays no part; leave nut_offset and nut_offset_deviation out."
            raise _fault("origin", "nut_given", message)
        if self.nut_offset_deviation is not None and self.nut_offset != "free":
            message = "Only a free nut offset has a deviation; leave it out, or the nut_offset."
            raise _fault("nut_offset_deviation", "deviation_given", message)
        return self

    @model_validator(mode="after")
    def _candidates_reach_the_readings(self) -> Self:
        ends = [reading.end for reading in self.readings or ()] or self.frets
        highest = max(ends) if ends else len(self.from_nut or self.fret_to_fret or ())
        for index, candidate in enumerate(self.candidates or ()):
            rule = candidate.to_domain().rule
            if isinstance(rule, Listed) and not rule.repeat and len(rule.cents) < highest:
                listed = counted(len(rule.cents), "pitch", "pitches")
                message = f"This candidate lists {listed} and fret {highest} was read; list one for each."
                raise _fault("candidates", "too_few_pitches", message, index)
        return self

    def _check_frets(self, where: str, values: list[float]) -> None:
        """Refuse frets that do not go with the readings."""
        if self.frets is None:
            if len(values) > MOST_FRETS:
                message = f"More readings than a board has frets, {MOST_FRETS}; name the fret of each in frets."
                raise _fault(where, "frets_missing", message)
        elif len(self.frets) != len(values):
            frets, readings = counted(len(self.frets), "fret"), counted(len(values), "reading")
            message = f"{frets} and {readings} do not match; give one fret for each."
            raise _fault("frets", "unequal_lists", message)
        elif self.fret_to_fret is not None and sorted(set(self.frets)) != self.frets:
            message = "Readings fret to fret go up the board; give each fret once, in ascending order."
            raise _fault("frets", "frets_not_ascending", message)

    def to_domain(self) -> IdentificationArguments:
        """Return what :func:`~scalewright.lutherie.identification.identify` takes."""
        match self.nut_offset:
            case "free":
                nut = NutOffset(0.0, self.nut_offset_deviation or NUT_OFFSET_UNCERTAINTY)
            case "none":
                nut = NutOffset(0.0, 0.0)
            case known:
                nut = NutOffset(float(known), 0.0)
        board = survey(
            self._readings(),
            Instrument(self.instrument_uncertainty or 0.0, self.resolution, self.scale_error),
            tooling_scatter=self.tooling_scatter,
            nut_offset=nut,
            origin=self.origin,
            slot_width=self.slot_width,
        )
        beliefs = Beliefs(
            candidates=DEFAULT_CANDIDATES
            if self.candidates is None
            else tuple(candidate.to_domain() for candidate in self.candidates),
            threshold=self.threshold,
            significance=self.significance,
            coverage=self.coverage,
            misreading=self.misreading_probability,
        )
        return IdentificationArguments(board, beliefs)

    @property
    def answer_context(self) -> AnswerContext:
        """How the answer is to be written; a picture needs to know what was read where."""
        return {"unit": self.unit, "frets": self._frets()}

    def _frets(self) -> list[int]:
        """Fret that every reading ends at."""
        if self.readings is not None:
            return [reading.end for reading in self.readings]
        return list(range(1, len(self.from_nut or self.fret_to_fret or ()) + 1)) if self.frets is None else self.frets

    def _readings(self) -> list[Reading]:
        if self.readings is not None:
            return [Reading(r.start, r.end, r.distance, r.uncertainty, r.point) for r in self.readings]
        ends = self._frets()
        if self.from_nut is not None:
            return [Reading(0, end, distance) for end, distance in zip(ends, self.from_nut, strict=True)]
        return [Reading(a, b, step) for a, b, step in zip([0, *ends], ends, self.fret_to_fret or (), strict=False)]


# ---- The answer -----------------------------------------------------------------------------------------


class _Part(BaseModel):
    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class CandidateOut(_Part):
    """How one rule fits the readings."""

    rule: RuleOut
    """The rule; a free divisor appears with its least-squares value."""
    probability: float
    """Its probability among the candidates. [-]"""
    layout_scale: LengthEstimate
    """Layout scale under this rule. [unit]"""
    true_scale: LengthEstimate | None
    """True scale under this rule; null without an octave fret. [unit]"""
    nut_offset: LengthEstimate | None
    """Nut offset under this rule; null where the nut plays no part. [unit]"""
    chi_square: float
    """Squared residuals in units of their variance, the nut's prior included. [-]"""
    degrees_of_freedom: int
    """Readings used less parameters fitted; a free nut offset brings its prior with it."""
    p_value: float | None
    """Probability of a chi-square as large by chance; null without degrees of freedom. [-]"""
    residuals: LengthsOut
    """Reading minus prediction, positive where it reads long, in the order of the readings. [unit]"""


class SuspectOut(_Part):
    """A reading that the rule cannot explain though it explains all the others; it was set aside."""

    fret: int
    """Fret that the reading ends at."""
    reading: int
    """Its place in the list of readings, counted from 0."""
    deviation: LengthOut
    """Reading minus the prediction of the others, positive where it reads long. [unit]"""
    explanation: str
    """What it looks like, in words."""


class IdentificationOut(Reply):
    """What a board's readings say about its spacing rule and scale."""

    verdict: Verdict
    """"established": one rule is; "undecided": the readings cannot tell; "none": no rule explains them."""
    statement: str
    """One sentence for a label or a work order."""
    rule: RuleOut | None
    """The established rule."""
    family: list[RuleOut]
    """The established rule, and any others compared whose frets lie in the same places here."""
    probability: float
    """Probability of the leading rule, with its family. [-]"""
    layout_scale: LengthEstimate | None
    """Length that the rule was applied to; null unless a rule is established. [unit]"""
    true_scale: LengthEstimate | None
    """Twice nut to octave fret, what every other part must agree with; null where it cannot be told. [unit]"""
    nut_offset: LengthEstimate | None
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    divisor: Estimate | None
    """The least-squares divisor, whatever the verdict; null where the readings do not determine it. [-]"""
    candidates: list[CandidateOut]
    """Every rule compared, the most probable first."""
    suspect_readings: list[SuspectOut]
    """Readings set aside as blunders."""
    next_reading: NextReading | None
    """What to measure next, where the rule is undecided."""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: list[Note]
    """Cautions."""

    @classmethod
    def to_svg(cls, identification: Identification, context: AnswerContext) -> bytes:
        """Draw what the likeliest rules leave of every reading."""
        return write_svg(identification_plot(identification, context["frets"], context["unit"]))

    @classmethod
    def file_title(cls, _: Identification, __: AnswerContext) -> str:
        """Name of a file with this picture."""
        return "identification"
