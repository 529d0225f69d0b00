"""Tools on the wire: where one was told to cut, what identifies it, and which of several a board came from."""

from typing import Annotated, Literal, NamedTuple, Self, TypeAlias

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, model_validator
from pydantic_core import PydanticCustomError

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import refused_within
from scalewright.lutherie.layout import ScaleBasis, lay_out
from scalewright.lutherie.signature import Signature
from scalewright.lutherie.tooling import Tool
from scalewright.wire.names import distinct
from scalewright.wire.quantities import (
    AnyLength,
    Distance,
    LengthBetween,
    LengthOut,
    LengthsOut,
    Question,
    Reply,
    Scale,
)
from scalewright.wire.rules import RuleIn

__all__ = [
    "MOST_SIGNATURES",
    "CommandedIn",
    "LaidOutIn",
    "Row",
    "SignatureIn",
    "SignatureMatchOut",
    "SignatureOut",
    "ToolName",
    "ToolOriginIn",
    "ToolOriginOut",
]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

MOST_SIGNATURES = 100
"""The most tools that a board may be held against."""

Spread: TypeAlias = Annotated[float, LengthBetween(0.0, 100.0, "0.03 mm")]
"""A standard deviation: 0 to 100 mm."""

Row: TypeAlias = Annotated[list[AnyLength], Field(max_length=spacing.MOST_FRETS)]
"""Positions of a board's slots from the tool's zero."""

ToolName: TypeAlias = Annotated[
    str, Field(min_length=1, max_length=60, pattern=r"^[A-Za-z0-9][A-Za-z0-9 ._#()+-]*$", examples=["gang saw"])
]
"""Your name for a tool."""


class LaidOutIn(BaseModel):
    """Where a tool was told to cut, as a layout."""

    model_config = _STRICT

    scale: Scale
    """The scale; `scale_basis` says which."""
    rule: RuleIn
    """The spacing rule."""
    frets: Annotated[int, Field(ge=1, le=spacing.MOST_FRETS, examples=[22])]
    """Number of slots, from fret 1 on."""
    scale_basis: ScaleBasis = "layout"
    """Which length `scale` is: "layout" or "true"."""


class CommandedIn(Question):
    """Where a tool was told to cut."""

    layout: LaidOutIn | None = None
    """Where the tool was told to cut, as a layout; or `commanded` with `true_scale`."""
    commanded: Annotated[list[Distance], Field(min_length=1, max_length=spacing.MOST_FRETS)] | None = None
    """Instead: positions of the slots from the tool's zero, ascending."""
    true_scale: Scale | None = None
    """With `commanded`: the true scale that they were laid out for."""
    frets: (
        Annotated[list[Annotated[int, Field(ge=1, le=spacing.MOST_FRETS)]], Field(max_length=spacing.MOST_FRETS)] | None
    ) = None
    """With `commanded`: fret of each slot; left out: 1, 2, 3, ..."""

    @model_validator(mode="after")
    def _commanded_once(self) -> Self:
        by_hand = self.commanded is not None and self.true_scale is not None
        any_by_hand = any(given is not None for given in (self.commanded, self.true_scale, self.frets))
        if (self.layout is not None) == by_hand or (self.layout is not None and any_by_hand):
            message = "Say where the tool was told to cut once: as a layout, or as commanded with true_scale."
            raise PydanticCustomError("commanded_given", message)
        return self

    def tool(self) -> Tool:
        """Return where the tool was told to cut."""
        if self.layout is not None:
            asked = self.layout
            with refused_within(("layout",)):
                laid = lay_out(asked.rule.to_domain(), asked.scale, asked.frets, asked.scale_basis)
            frets = tuple(range(1, asked.frets + 1))
            return Tool(tuple(laid.from_nut), laid.true_scale or laid.layout_scale, frets)
        commanded = tuple(self.commanded or ())
        frets = tuple(range(1, len(commanded) + 1)) if self.frets is None else tuple(self.frets)
        return Tool(commanded, self.true_scale or 0.0, frets)


class SignatureIn(BaseModel):
    """What a tool does to every board: the `signature` of a study's answer."""

    model_config = _STRICT

    id: ToolName
    """Your name for the tool."""
    bias: Annotated[Row, Field(min_length=1, examples=[[0.01, -0.02, 0.03]])]
    """How far each slot lies from where it was commanded, positive away from the nut."""
    within: Spread
    """Standard deviation of a slot against the other slots of its board."""
    between: Spread
    """Standard deviation of a whole board against the others."""
    boards: Annotated[int, Field(ge=2, le=10**9, examples=[40])]
    """How many boards were studied."""

    def to_domain(self) -> Signature:
        """Return the signature."""
        return Signature(self.id, tuple(self.bias), self.within, self.between, self.boards)


class OriginArguments(NamedTuple):
    """Arguments of :func:`scalewright.lutherie.tooling.came_from`."""

    tool: Tool
    board: list[float]
    signatures: list[Signature]


class ToolOriginIn(CommandedIn):
    """Which of several tools did this board come from?"""

    board: Annotated[Row, Field(min_length=1)]
    """Positions of its slots from the tools' zero."""
    signatures: Annotated[list[SignatureIn], Field(min_length=1, max_length=MOST_SIGNATURES), AfterValidator(distinct)]
    """The tools, each with an id of its own."""

    def to_domain(self) -> OriginArguments:
        """Return what :func:`~scalewright.lutherie.tooling.came_from` takes."""
        return OriginArguments(self.tool(), self.board, [signature.to_domain() for signature in self.signatures])


# ---- The answer -----------------------------------------------------------------------------------------


class SignatureOut(BaseModel):
    """What identifies a tool; a later question takes it as it stands, in the same unit."""

    model_config = _READ_OFF

    id: str
    """Your name for the tool."""
    bias: LengthsOut
    """How far each slot lies from where it was commanded, positive away from the nut. [unit]"""
    within: LengthOut
    """Standard deviation of a slot against the other slots of its board. [unit]"""
    between: LengthOut
    """Standard deviation of a whole board against the others. [unit]"""
    boards: int
    """How many boards were studied."""


class SignatureMatchOut(BaseModel):
    """How well an unknown board agrees with one tool."""

    model_config = _READ_OFF

    id: str
    """The tool."""
    probability: float
    """Its probability among the tools, none of them preferred. [-]"""
    chi_square: float
    """Squared deviations in units of their variance. [-]"""
    p_value: float
    """Probability of a chi-square as large by chance if the board came from this tool. [-]"""


class ToolOriginOut(Reply):
    """Which tool an unknown board came from."""

    verdict: Literal["established", "undecided", "none"]
    """"established": one tool; "undecided" between tools; "none" of them."""
    tool: str | None
    """The tool, where one is established."""
    statement: str
    """One sentence."""
    matches: list[SignatureMatchOut]
    """All the tools, the most probable first."""
