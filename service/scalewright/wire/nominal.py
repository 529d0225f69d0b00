"""Nominal scales on the wire: a label in, its meanings out."""

from collections.abc import Sequence
from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from scalewright.lutherie.errors import LutherieError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.identification import Beliefs, Verdict
from scalewright.lutherie.label import SETBACK, SETBACK_UNCERTAINTY, MeaningName
from scalewright.lutherie.nominal import NominalQuestion, NominalVerdict, nominal_all
from scalewright.wire.identification import Share
from scalewright.wire.labels import LabelIn, LabelOut
from scalewright.wire.many import answer_many
from scalewright.wire.parts import ReadingsIn
from scalewright.wire.quantities import AnyLength, LengthEstimate, LengthOut, Question, Reply, Uncertainty
from scalewright.wire.rules import RuleOut

__all__ = ["MeasuredOut", "NominalIn", "NominalOut", "ReadingToTakeOut", "WeighedMeaningOut", "answer_nominals"]

_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class NominalIn(Question):
    """What can this label mean?"""

    label: LabelIn
    """The label as it is written: "24 3/4 in", "25.4 in", "628 mm". A bare number is inches or millimetres, whichever
    it fits."""
    readings: Annotated[
        ReadingsIn | None,
        Field(examples=[{"instrument_uncertainty": "0.05 mm", "frets": [12], "from_nut": ["12.285 in"]}]),
    ] = None
    """What was measured on the board, fret 12 at least."""
    setback: AnyLength = SETBACK
    """Setback that a string length includes; 2.5 mm if left out."""
    setback_uncertainty: Uncertainty = SETBACK_UNCERTAINTY
    """Its standard uncertainty; 1 mm if left out."""
    threshold: Share = 0.95
    """Probability that makes a rule established; a meaning survives with at least one minus it."""
    coverage: Share = 0.95
    """Probability that a stated interval holds."""

    def to_domain(self) -> NominalQuestion:
        """Return the question."""
        try:
            survey = None if self.readings is None else self.readings.to_domain()
        except LutherieError as refusal:
            refusal.field = ("readings", *refusal.field)
            raise
        beliefs = Beliefs(threshold=self.threshold, coverage=self.coverage)
        return NominalQuestion(self.label, survey, self.setback, self.setback_uncertainty, beliefs)


# ---- The answer -----------------------------------------------------------------------------------------


class WeighedMeaningOut(BaseModel):
    """One meaning of a label, and how it stands after the readings."""

    model_config = _READ_OFF

    name: MeaningName
    """"exact": the number as it is; "rounded": to the nearest; "rounded_up": in favour of compensation;
    "string_length": with the saddle's setback in it; "converted": a round number of the other system; "other"."""
    rule: RuleOut | None
    """Spacing rule; null for "other"."""
    basis: Literal["layout_scale", "true_scale", "string_length"] | None
    """Which length the label names."""
    probability: float
    """Its probability after the readings; without any, how likely it is beforehand. [-]"""
    survives: bool
    """Whether its probability is at least one minus the threshold; before any reading all stand."""
    true_scale: LengthOut | None
    """True scale that it stands for, the middle of `lower` and `upper`. [unit]"""
    lower: LengthOut | None
    """Smallest true scale that it stands for. [unit]"""
    upper: LengthOut | None
    """Largest true scale that it stands for. [unit]"""
    layout_scale: LengthOut | None
    """Length that the rule was applied to. [unit]"""
    octave_distance: LengthOut | None
    """Distance from the nut to fret 12 to look for. [unit]"""
    explanation: str
    """What it would mean, in words."""


class ReadingToTakeOut(BaseModel):
    """A reading that would tell more."""

    model_config = _READ_OFF

    fret: int
    """Fret to measure to, from the nut."""
    uncertainty: LengthOut | None
    """Standard uncertainty it should have; null for any good instrument. [unit]"""
    reason: str
    """What it would tell."""


class MeasuredOut(BaseModel):
    """What readings alone say."""

    model_config = _READ_OFF

    verdict: Verdict
    """Whether they establish a rule."""
    rule: RuleOut | None
    """The established rule."""
    true_scale: LengthEstimate | None
    """True scale; null where it cannot be told. [unit]"""
    statement: str
    """One sentence."""


class NominalOut(Reply):
    """What a label can mean."""

    verdict: NominalVerdict
    """"established": one rule is behind it; "undecided": more than one may be; "none": the readings fit no meaning."""
    statement: str
    """The sentence to print instead of the label."""
    label: LabelOut
    """The label as it was read."""
    rule: RuleOut | None
    """The rule behind it, where one is established."""
    meaning: WeighedMeaningOut | None
    """The most probable meaning, where a rule is established."""
    true_scale: LengthEstimate | None
    """True scale by label and readings together, by the readings alone where no meaning fits. [unit]"""
    meanings: list[WeighedMeaningOut]
    """All meanings, the most probable first."""
    measured: MeasuredOut | None
    """What the readings alone say."""
    next_reading: ReadingToTakeOut | None
    """What to measure next, where the rule is undecided."""
    coverage: float
    """Probability that the interval of the true scale holds. [-]"""
    notes: list[Note]
    """Cautions."""


# ---- Many at once ---------------------------------------------------------------------------------------


def answer_nominals(questions: Sequence[dict[str, Any]]) -> list[bytes | LutherieError | ValidationError]:
    """Answer many questions.

    Parameters
    ----------
    questions : sequence of dict
        As :class:`NominalIn` takes them, parsed from JSON.

    Returns
    -------
    list of bytes, LutherieError or ValidationError
        For each question its answer as a JSON object, or what was wrong with it.
    """
    return answer_many(questions, NominalIn, NominalOut, nominal_all)
