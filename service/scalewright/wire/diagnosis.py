"""Diagnosis on the wire: cents by string and fret, and the moves that mend them."""

from typing import Annotated, TypeAlias

from pydantic import BaseModel, ConfigDict, Field

from scalewright.lutherie import spacing
from scalewright.lutherie.diagnosis import CentsReading, Complaint
from scalewright.lutherie.diagnosis.answer import SpacingVerdict, StringVerdict
from scalewright.lutherie.diagnosis.complaint import Reference
from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.layout import ScaleBasis
from scalewright.wire.quantities import LengthEstimate, LengthOut, Question, Reply, Scale
from scalewright.wire.rules import RuleIn, RuleOut
from scalewright.wire.stringing import TargetIn, target_of
from scalewright.wire.strings import MOST_STRINGS

__all__ = ["CentsReadingIn", "DiagnosisIn", "DiagnosisOut"]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

_MOST_READINGS = 1000

_CentsUncertainty: TypeAlias = Annotated[float, Field(ge=0.001, le=100.0)]


class CentsReadingIn(BaseModel):
    """One note on the tuner."""

    model_config = _STRICT

    string: Annotated[int, Field(ge=1, le=MOST_STRINGS, examples=[1])]
    """Number of the string."""
    fret: Annotated[int, Field(ge=0, le=spacing.MOST_FRETS, examples=[12])]
    """Number of the fret; 0 is the open string."""
    cents: Annotated[float, Field(ge=-1200.0, le=1200.0, examples=[4.0])]
    """How sharp it sounded against the pitch that this fret should give. [cent]"""
    uncertainty: _CentsUncertainty | None = None
    """Standard uncertainty of this reading; left out, the tuner's. [cent]"""

    def to_domain(self) -> CentsReading:
        """Return the reading."""
        return CentsReading(self.string, self.fret, self.cents, self.uncertainty)


class DiagnosisIn(Question):
    """What mends a board that plays out of tune?"""

    scale: Scale
    """The scale, a number in `unit` or a text with its own unit; `scale_basis` says which scale it is."""
    rule: RuleIn
    """The spacing rule of the board, as far as it is known."""
    readings: Annotated[
        list[CentsReadingIn],
        Field(
            min_length=1,
            max_length=_MOST_READINGS,
            examples=[[{"string": 1, "fret": 1, "cents": 1.5}, {"string": 1, "fret": 12, "cents": 6.0}]],
        ),
    ]
    """The notes that were read, in any order; a note may be read repeatedly. Half a cent between readings of one
    fretted note is no contradiction, however fine the tuner: a finger does not press twice alike. Of the open string
    only the tuner's uncertainty is allowed for."""
    frets: Annotated[int, Field(ge=1, le=spacing.MOST_FRETS, examples=[22])] = 24
    """Number of frets of the board, 1 to 60."""
    scale_basis: ScaleBasis = "layout"
    """Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret."""
    relative_to: Reference = "open_string"
    """What the cents were read against: the string's own open note, or the tuner's pitches ("tuner"); then read the
    open string, fret 0, as well."""
    tuner_uncertainty: Annotated[_CentsUncertainty, Field(examples=[1.0])] = 1.0
    """Standard uncertainty of one reading. [cent]"""
    resolution: Annotated[float, Field(ge=0.0, le=100.0)] = 0.0
    """Step of the tuner's display; its square over twelve adds to the variance. [cent]"""
    model_uncertainty: Annotated[float, Field(ge=0.0, le=100.0)] = 0.15
    """What stretch and stiffness of a string leave where saddle and nut are best. [cent]"""
    nut_may_move: bool = True
    """Whether the nut is a suspect too; false where it is known to be right or has to stay."""
    target: TargetIn | None = None
    """Temperament that the cents were read in; left out, the equal temperament nearest to the rule."""
    coverage: Annotated[float, Field(ge=0.5, le=0.9999)] = 0.95
    """Probability that the intervals of the answer hold."""

    def to_domain(self) -> Complaint:
        """Return what was heard."""
        return Complaint(
            rule=self.rule.to_domain(),
            scale=self.scale,
            readings=[reading.to_domain() for reading in self.readings],
            frets=self.frets,
            scale_basis=self.scale_basis,
            relative_to=self.relative_to,
            tuner_uncertainty=self.tuner_uncertainty,
            resolution=self.resolution,
            model_uncertainty=self.model_uncertainty,
            nut_may_move=self.nut_may_move,
            target=target_of(self.target),
            coverage=self.coverage,
        )


# ---- The answer -----------------------------------------------------------------------------------------


class MendedReadingOut(BaseModel):
    """One reading and what the moves leave of it."""

    model_config = _READ_OFF

    fret: int
    """Number of the fret; 0 is the open string."""
    cents: float
    """As it was read. [cent]"""
    remaining: float
    """What the moves of the answer leave of it. [cent]"""


class StringDiagnosisOut(BaseModel):
    """What mends one string."""

    model_config = _READ_OFF

    string: int
    """Number of the string."""
    verdict: StringVerdict
    """"in_tune" (the errors are what the tuner allows anyway), "move" (the moves mend them) or "undecided" (the
    readings can't tell which move)."""
    saddle_move: LengthEstimate | None
    """How far to move the saddle, positive away from the nut; null where that can't be told. [unit]"""
    nut_move: LengthEstimate | None
    """How far to move the nut's front edge, positive away from fret 1; null where that can't be told. [unit]"""
    saddle_alone: LengthEstimate | None
    """How far the saddle would have to go if the nut stayed. [unit]"""
    nut_alone: LengthEstimate | None
    """How far the nut would have to go if the saddle stayed. [unit]"""
    tuning_offset: Estimate | None
    """How sharp the open string was tuned; null where it can't be told. [cent]"""
    rms_cents: float
    """Root mean square of the fretted readings against the open string as it was tuned. [cent]"""
    remaining_rms_cents: float
    """The same after the moves of the answer; the tuner's own scatter is in it. [cent]"""
    saddle_alone_rms_cents: float | None
    """The same after moving the saddle alone. [cent]"""
    nut_alone_rms_cents: float | None
    """The same after moving the nut alone. [cent]"""
    chi_square: float
    """Weighted sum of squared residuals of the moves."""
    degrees_of_freedom: int
    """Readings beyond those that the fit needs."""
    p_value: float | None
    """How probable so large a chi-square is by chance; null without degrees of freedom."""
    readings: list[MendedReadingOut]
    """The readings, by fret."""
    statement: str
    """One sentence for the bench."""


class FretErrorOut(BaseModel):
    """An error that all strings share at one fret."""

    model_config = _READ_OFF

    fret: int
    """Number of the fret."""
    error: Estimate
    """How sharp the fret is beyond what saddle, nut and the spacing rule (the one that is established, or else the one
    that was given) explain, if beside it only `misplaced` frets are off. [cent]"""
    displacement: LengthEstimate
    """How much too near to the saddle it stands. [unit]"""
    misplaced: bool
    """Whether that is more than chance allows among so many frets."""


class RuleLikelihoodOut(BaseModel):
    """How well one spacing rule explains what no move does."""

    model_config = _READ_OFF

    rule: RuleOut
    """The rule."""
    probability: float
    """Its probability among the rules that were compared, each as likely before."""
    chi_square: float
    """Weighted sum of squared residuals with the rule's own errors taken out."""
    p_value: float | None
    """How probable so large a chi-square is by chance; null without degrees of freedom."""


class SpacingDiagnosisOut(BaseModel):
    """What the readings say of where the frets stand, beyond what moves of saddle and nut explain."""

    model_config = _READ_OFF

    verdict: SpacingVerdict
    """Whether one rule is "established"; "undecided" where the readings can't tell, "none" where no rule fits."""
    rules: list[RuleLikelihoodOut]
    """The rules that were compared, the likeliest first."""
    degrees_of_freedom: int
    """Readings beyond those that the moves need."""
    frets: list[FretErrorOut]
    """Errors that all strings share, at frets read on two strings or more."""
    statement: str
    """One sentence for the bench."""


class SuspectCentsOut(BaseModel):
    """A reading that the others of its string contradict."""

    model_config = _READ_OFF

    string: int
    """Number of the string."""
    fret: int
    """Number of the fret."""
    deviation: float
    """Reading minus what the others predict. [cent]"""
    explanation: str
    """What it may be."""


class ReadNextOut(BaseModel):
    """The reading that would tell most about a string."""

    model_config = _READ_OFF

    string: int
    """Number of the string."""
    fret: int
    """Number of the fret; 0 is the open string."""
    saddle_uncertainty: LengthOut | None
    """Standard uncertainty of the saddle move after it; null where it still can't be told. [unit]"""
    nut_uncertainty: LengthOut | None
    """Standard uncertainty of the nut move after it; null where it still can't be told. [unit]"""


class DiagnosisOut(Reply):
    """What mends a board that plays out of tune."""

    rule: RuleOut
    """Spacing rule that the board was said to have."""
    layout_scale: LengthOut
    """The length that the rule was applied to. [unit]"""
    true_scale: LengthOut
    """Twice the distance from the pattern's zero line to the octave fret. [unit]"""
    coverage: float
    """Probability that the intervals hold."""
    strings: list[StringDiagnosisOut]
    """The strings that were read, by number."""
    spacing: SpacingDiagnosisOut
    """What is left for the frets to explain."""
    suspect_readings: list[SuspectCentsOut]
    """Readings to take again."""
    cannot_tell: list[Note]
    """What can't be told apart with these frets or this tuner."""
    next_readings: list[ReadNextOut]
    """What to read next; empty where nothing more is needed."""
    remaining_rms_cents: float
    """Root mean square of the fretted readings after the moves; the tuner's own scatter is in it. [cent]"""
    statement: str
    """One sentence for the work order."""
    notes: list[Note]
    """What the numbers rest on, and cautions."""
