"""Tooling on the wire: readings of many boards off one tool in, what the tool does out."""

from typing import Annotated, Any, Literal, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.tooling import SLOT_TOLERANCE
from scalewright.wire.identification import Share
from scalewright.wire.names import distinct
from scalewright.wire.quantities import Length, LengthEstimate, LengthOut, Reply, Uncertainty
from scalewright.wire.signature import (
    MOST_SIGNATURES,
    CommandedIn,
    Row,
    SignatureIn,
    SignatureOut,
    ToolName,
    ToolOriginOut,
)

__all__ = [
    "DriftOut",
    "JumpOut",
    "ResetOut",
    "SlotStudyOut",
    "ToolingDriftOut",
    "ToolingIn",
    "ToolingOut",
    "VariancesOut",
]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)
_MOST_BOARDS = 1000


class ToolingIn(CommandedIn):
    """What does this tool do to its boards?"""

    id: ToolName = "this tool"
    """Your name for the tool, which its signature bears."""
    boards: Annotated[list[Row], Field(max_length=_MOST_BOARDS, examples=[[[36.45, 70.93], [36.47, 70.9]]])]
    """For each board, in the order of their making, the positions of its slots from the tool's own zero."""
    instrument_uncertainty: Uncertainty = 0.0
    """Standard uncertainty of one reading (k = 1)."""
    tolerance: Annotated[Length, Field(examples=["0.1 mm"])] = SLOT_TOLERANCE
    """How far a slot may lie from its commanded place (plus and minus); 0.1 mm if left out."""
    significance: Annotated[float, Field(ge=1e-6, le=0.2)] = 0.01
    """Probability of calling a drift, or a slot to be re-set, where there is none; over all slots together."""
    unknown: Row | None = None
    """A board of unknown origin, to be held against this tool and those of `signatures`."""
    signatures: Annotated[list[SignatureIn], Field(max_length=MOST_SIGNATURES, default_factory=list)]
    """With `unknown`: other tools that it may have come from, each with an id of its own."""
    coverage: Share = 0.95
    """Probability that a stated interval holds."""

    @model_validator(mode="after")
    def _tools_have_names_of_their_own(self) -> Self:
        distinct(self.signatures, taken=[self.id], place=("signatures",))
        return self

    @model_validator(mode="after")
    def _signatures_have_a_board(self) -> Self:
        if self.signatures and self.unknown is None:
            message = "Other tools are held against a board of unknown origin; give its slots as unknown too."
            problem = PydanticCustomError("signatures_without_board", "{reason}", {"reason": message})
            fault = InitErrorDetails(type=problem, loc=("signatures",), input=None)
            raise ValidationError.from_exception_data("tooling", [fault])
        return self

    def to_domain(self) -> dict[str, Any]:
        """Return what :func:`~scalewright.lutherie.tooling.study` takes."""
        return {
            "tool": self.tool(),
            "readings": self.boards,
            "name": self.id,
            "instrument_uncertainty": self.instrument_uncertainty,
            "tolerance": self.tolerance,
            "significance": self.significance,
            "coverage": self.coverage,
            "unknown": self.unknown,
            "others": [signature.to_domain() for signature in self.signatures],
        }


# ---- The answer -----------------------------------------------------------------------------------------


class SlotStudyOut(BaseModel):
    """What a tool does at one slot."""

    model_config = _READ_OFF

    fret: int
    """Its fret."""
    commanded: LengthOut
    """Where it should be, from the tool's zero. [unit]"""
    bias: LengthEstimate
    """How far it lies from there on average, positive away from the nut. [unit]"""
    aligned_bias: LengthEstimate | None
    """The same with the tool's scale and origin taken out; null with fewer than three slots. [unit]"""
    standard_deviation: LengthOut
    """Of the slot over the boards. [unit]"""
    expanded_uncertainty: LengthOut
    """Of a board's slot against its commanded place (k = 2), the bias included as it stands. [unit]"""
    cp: float | None
    """Tolerance over six standard deviations; null without spread. [-]"""
    cpk: float | None
    """The same, on the side with less room. [-]"""
    cents: float
    """What the bias does to the pitch of the note, positive sharp. [cent]"""


class VariancesOut(BaseModel):
    """Two-way analysis of variance, slots by boards, one reading each; sums of squares in mm², whatever `unit` is."""

    model_config = _READ_OFF

    slots_sum: float
    """Sum of squares between slots. [mm²]"""
    boards_sum: float
    """Sum of squares between boards. [mm²]"""
    residual_sum: float
    """What is left. [mm²]"""
    slots_freedom: int
    """Degrees of freedom between slots."""
    boards_freedom: int
    """Degrees of freedom between boards."""
    residual_freedom: int
    """Degrees of freedom of what is left."""
    f_ratio: float | None
    """Mean square between boards over what is left; null with one slot. [-]"""
    p_value: float | None
    """Probability of a ratio as large if all boards lay alike. [-]"""
    within: LengthOut
    """Repeatability within boards: standard deviation of a slot against the others of its board. [unit]"""
    between: LengthOut
    """Repeatability between boards: standard deviation of a whole board against the others. [unit]"""


class JumpOut(BaseModel):
    """A jump between two boards."""

    model_config = _READ_OFF

    at: int
    """Index, from 0, of the first board after it."""
    earliest: int
    """Lower end of the interval of that index."""
    latest: int
    """Its upper end."""
    size: LengthEstimate
    """How large it is. [unit]"""


class DriftOut(BaseModel):
    """How positions move over the boards."""

    model_config = _READ_OFF

    kind: Literal["trend", "step"]
    """Whether they wander steadily or jump."""
    p_value: float
    """Probability of a movement as large by chance, corrected for the places where a step was looked for. [-]"""
    trend: LengthEstimate
    """Change from one board to the next by a straight line. [unit]"""
    step: JumpOut | None
    """The jump, for a step."""
    present: LengthEstimate
    """Where they now stand against the commanded positions, one slot against the middle of the others. [unit]"""


class ToolingDriftOut(BaseModel):
    """What moved over the sequence of boards."""

    model_config = _READ_OFF

    fret: int | None
    """The slot that moved against the others; null where all moved together."""
    drift: DriftOut
    """How it moved."""


class ResetOut(BaseModel):
    """A slot that should be set again."""

    model_config = _READ_OFF

    fret: int
    """Its fret."""
    move: LengthOut
    """How far to move it, positive away from the nut. [unit]"""
    since: int
    """Index of the first board, from 0, that this rests on."""


class ToolingOut(Reply):
    """What a tool does to many boards."""

    boards: int
    """How many were measured."""
    statement: str
    """One sentence for a work order."""
    slots: list[SlotStudyOut]
    """Slot by slot."""
    scale_error: Estimate | None
    """Relative error of the tool's scale; null with fewer than three slots. [-]"""
    origin_shift: LengthEstimate | None
    """How far its zero is off, positive away from the nut; null with fewer than three slots. [unit]"""
    variances: VariancesOut
    """Analysis of variance: repeatability within and between boards."""
    instrument_uncertainty: LengthOut
    """Standard uncertainty of one reading. [unit]"""
    tool_within: LengthOut
    """Standard deviation within boards with the instrument's share taken out. [unit]"""
    expanded_uncertainty: LengthOut
    """Of the product: twice the root mean square of all slots' deviations from their commanded places. [unit]"""
    tolerance: LengthOut
    """How far a slot may lie from its commanded place. [unit]"""
    worst_cpk: float | None
    """The smallest Cpk of all slots; null where no slot has any spread. [-]"""
    drifts: list[ToolingDriftOut]
    """What moved over the sequence."""
    resets: list[ResetOut]
    """Slots that should be set again."""
    signature: SignatureOut
    """What identifies this tool, for later questions."""
    origin: ToolOriginOut | None
    """Which tool the unknown board came from, where one was given."""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: list[Note]
    """Cautions."""
