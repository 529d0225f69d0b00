"""Assembly on the wire: parts in, whether they belong together out."""

from collections.abc import Sequence
from typing import Annotated, Any

from pydantic import AfterValidator, BaseModel, ConfigDict, Field
from pydantic_core import ValidationError

from scalewright.lutherie.assembly import TOLERANCE, AssemblyQuestion, assemble_all
from scalewright.lutherie.decision import Decision
from scalewright.lutherie.errors import LutherieError
from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.identification import Beliefs, Verdict
from scalewright.lutherie.pairing import Within
from scalewright.lutherie.part import Kind, Side, Source
from scalewright.lutherie.ruling import GUARD_FACTOR
from scalewright.wire.identification import Share, SuspectOut
from scalewright.wire.many import answer_many
from scalewright.wire.names import distinct
from scalewright.wire.parts import PartIn
from scalewright.wire.quantities import Length, LengthEstimate, LengthOut, Question, Reply
from scalewright.wire.rules import RuleOut

__all__ = [
    "AbsorptionOut",
    "AssemblyIn",
    "AssemblyOut",
    "BodyJointOut",
    "CentsAtFretOut",
    "DecidingReadingsOut",
    "FretOffsetOut",
    "GuardFactor",
    "PairOut",
    "PartScaleOut",
    "ReadingOnOut",
    "ReplacementOut",
    "SlantOut",
    "answer_assemblies",
]

_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)
_MOST_PARTS = 10

GuardFactor = Annotated[float, Field(ge=0.0, le=10.0, examples=[2.0])]
"""Guard band in standard uncertainties."""


class AssemblyIn(Question):
    """Do these parts belong together?"""

    parts: Annotated[list[PartIn], Field(min_length=2, max_length=_MOST_PARTS), AfterValidator(distinct)]
    """Two parts or more. Of two boards the one named later is the replacement."""
    tolerance: Annotated[Length, Field(examples=["0.5 mm"])] = TOLERANCE
    """How far two true scales may differ; 0.5 mm if left out."""
    guard_factor: GuardFactor = GUARD_FACTOR
    """Guard band in standard uncertainties: 2 (default) is U of ISO 14253-1, 1.645 a one-sided 95 %."""
    coverage: Share = 0.95
    """Probability that a stated interval holds."""

    def to_domain(self) -> AssemblyQuestion:
        """Return the question."""
        parts = tuple(part.to_domain(("parts", index)) for index, part in enumerate(self.parts))
        return AssemblyQuestion(parts, self.tolerance, self.guard_factor, Beliefs(coverage=self.coverage))


# ---- The answer -----------------------------------------------------------------------------------------


class PartScaleOut(BaseModel):
    """What is known of one part along one string line."""

    model_config = _READ_OFF

    id: str
    """Your name for it."""
    kind: Kind
    """What it is."""
    side: Side
    """Along which string line: "whole", or "bass" and "treble" of a fan board."""
    source: Source
    """What its true scale is known from: "readings", "definition" or "label"."""
    true_scale: LengthEstimate | None
    """Its true scale; null where it cannot be told. [unit]"""
    rule: RuleOut | None
    """Its likeliest spacing rule, where that is known."""
    verdict: Verdict | None
    """Whether its readings establish the rule; null without readings."""
    suspect_readings: list[SuspectOut]
    """Readings set aside as blunders."""
    explanation: str
    """Where the figure comes from."""


class CentsAtFretOut(BaseModel):
    """What a misplaced saddle line does to one fretted note."""

    model_config = _READ_OFF

    fret: int
    """Number of the fret."""
    cents: Estimate
    """Change of its pitch after the open string is tuned again; positive sharp. [cent]"""


class AbsorptionOut(BaseModel):
    """Whether the saddle's travel can take the mismatch up."""

    model_config = _READ_OFF

    needed: LengthOut
    """How far the break point would have to move, positive away from the nut. [unit]"""
    absorbs: Within
    """Whether it can: "yes", "no" or "undecided"."""
    left: LengthOut
    """What stays of the mismatch with the saddle at the end of its travel. [unit]"""


class ReadingOnOut(BaseModel):
    """A reading to take on one of the parts."""

    model_config = _READ_OFF

    part: str
    """Which part."""
    fret: int
    """Fret to measure to, from the nut."""
    uncertainty: LengthOut
    """Standard uncertainty that it should have. [unit]"""


class DecidingReadingsOut(BaseModel):
    """Readings that are expected to decide."""

    model_config = _READ_OFF

    readings: list[ReadingOnOut]
    """In the order of their worth; empty where none can be expected to decide."""
    expected_uncertainty: LengthOut
    """Standard uncertainty that the mismatch in true scale will then have. [unit]"""
    needed_uncertainty: LengthOut
    """Standard uncertainty below which a mismatch like this is decided. [unit]"""
    text: str
    """What to do, in words."""


class PairOut(BaseModel):
    """Two parts along one string line."""

    model_config = _READ_OFF

    first: str
    """The part that carries the frets; of two such, or of none, the one named first."""
    second: str
    """The other part."""
    side: Side
    """Along which string line."""
    decision: Decision
    """"together": they belong together; "apart": they do not; "undecided": can't be decided with this uncertainty."""
    mismatch: LengthEstimate | None
    """True scale of the second minus that of the first; null where one cannot be told. [unit]"""
    saddle_mismatch: LengthEstimate | None
    """Where the saddle line falls against the end of the true scale of the part with the frets, placed from its datum;
    positive too far from the nut. Of two boards: the first one's saddle line under the second. [unit]"""
    conformance_probability: float | None
    """Probability that the true scales differ by no more than the tolerance. [-]"""
    tolerance: LengthOut
    """How far the true scales may differ. [unit]"""
    guard_band: LengthOut | None
    """A mismatch has to lie so far inside or outside the tolerance to be decided. [unit]"""
    cents: list[CentsAtFretOut]
    """What the saddle mismatch does at frets 5, 12 and the last; empty where no part carries frets."""
    absorption: AbsorptionOut | None
    """Whether the saddle's travel takes it up; null where no part says how far its saddle moves."""
    deciding: DecidingReadingsOut | None
    """What to measure where it cannot be decided."""


class FretOffsetOut(BaseModel):
    """Where a fret of the new board falls against the same fret of the old one."""

    model_config = _READ_OFF

    fret: int
    """Number of the fret."""
    offset: LengthEstimate
    """New minus old, both boards placed from the same datum; positive farther from the nut. [unit]"""


class BodyJointOut(BaseModel):
    """Whether the bridge still agrees when the joint frets are in line."""

    model_config = _READ_OFF

    fret: int
    """Fret at which the neck meets the body."""
    offset: LengthEstimate
    """Where it falls against the old one, placed from the datum. [unit]"""
    joint_to_bridge: LengthEstimate
    """How much farther the new board's saddle line lies from its joint fret than the old one's. [unit]"""
    decision: Decision
    """Whether joint and bridge agree, within the tolerance."""


class ReplacementOut(BaseModel):
    """A new board against an old one."""

    model_config = _READ_OFF

    old: str
    """The board that is replaced."""
    new: str
    """The board that replaces it."""
    datum_fret: Annotated[int, Field(ge=0)]
    """Fret that both are placed from; 0 for the nut."""
    offsets: list[FretOffsetOut]
    """Fret by fret; empty where a scale or a rule cannot be told."""
    largest: FretOffsetOut | None
    """The one that is farthest off."""
    body_joint: BodyJointOut | None
    """Joint and bridge; null where no part names a joint fret."""


class SlantOut(BaseModel):
    """How the saddle lines of two fan parts lie against each other."""

    model_config = _READ_OFF

    first: str
    """The part that carries the frets; of two such, or of none, the one named first."""
    second: str
    """The other part."""
    first_square_fret: int
    """Fret of the first that is square to its centre line; 0 for the nut."""
    second_square_fret: int
    """The same of the second."""
    offset: LengthEstimate
    """With the middles of the saddle lines in line: how far the bass end of the second's lies from that of the first,
    positive farther from the nut; the treble end lies as far off the other way. [unit]"""
    decision: Decision
    """Whether that is within the tolerance."""


class AssemblyOut(Reply):
    """Whether parts belong together."""

    decision: Decision
    """The worst of the pairs, the body joints and the slants: "apart" before "undecided" before "together"."""
    statement: str
    """One sentence for a work order."""
    pairs: list[PairOut]
    """Each part against each other."""
    explanations: list[str]
    """What the mismatches look like."""
    parts: list[PartScaleOut]
    """What is known of each part."""
    replacements: list[ReplacementOut]
    """Each board that follows another in the list, as its replacement."""
    slants: list[SlantOut]
    """The saddle lines of fan parts that name their `square_fret`, each against each other."""
    tolerance: LengthOut
    """How far true scales may differ. [unit]"""
    guard_factor: float
    """Guard band in standard uncertainties. [-]"""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: list[Note]
    """Cautions."""


# ---- Many at once ---------------------------------------------------------------------------------------


def answer_assemblies(questions: Sequence[dict[str, Any]]) -> list[bytes | LutherieError | ValidationError]:
    """Answer many questions.

    Parameters
    ----------
    questions : sequence of dict
        As :class:`AssemblyIn` takes them, parsed from JSON.

    Returns
    -------
    list of bytes, LutherieError or ValidationError
        For each question its answer as a JSON object, or what was wrong with it.
    """
    return answer_many(questions, AssemblyIn, AssemblyOut, assemble_all)
