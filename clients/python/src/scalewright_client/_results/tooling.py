"""What a tool does to many boards."""

from dataclasses import dataclass

from scalewright_client._results.drift import Reset, ToolingDrift
from scalewright_client._results.estimate import Estimate, Note
from scalewright_client._results.signature import Signature, ToolOrigin

__all__ = ["SlotStudy", "Tooling", "Variances"]


@dataclass(frozen=True, slots=True)
class SlotStudy:
    """What a tool does at one slot."""

    fret: int
    """Its fret."""
    commanded: float
    """Where it should be, from the tool's zero. [unit]"""
    bias: Estimate
    """How far it lies from there on average, positive away from the nut. [unit]"""
    aligned_bias: Estimate | None
    """The same with the tool's scale and origin taken out; None with fewer than three slots. [unit]"""
    standard_deviation: float
    """Of the slot over the boards. [unit]"""
    expanded_uncertainty: float
    """Of a board's slot against its commanded place (k = 2), the bias included as it stands. [unit]"""
    cp: float | None
    """Tolerance over six standard deviations; None without spread. [-]"""
    cpk: float | None
    """The same, on the side with less room. [-]"""
    cents: float
    """What the bias does to the pitch of the note, positive sharp. [cent]"""


@dataclass(frozen=True, slots=True)
class Variances:
    """Two-way analysis of variance, slots by boards, one reading each; sums of squares in mm², whatever ``unit`` is."""

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
    """Mean square between boards over what is left; None with one slot. [-]"""
    p_value: float | None
    """Probability of a ratio as large if all boards lay alike. [-]"""
    within: float
    """Repeatability within boards: standard deviation of a slot against the others of its board. [unit]"""
    between: float
    """Repeatability between boards: standard deviation of a whole board against the others. [unit]"""


@dataclass(frozen=True, slots=True)
class Tooling:
    """What a tool does to many boards."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    boards: int
    """How many were measured."""
    statement: str
    """One sentence for a work order."""
    slots: tuple[SlotStudy, ...]
    """Slot by slot."""
    scale_error: Estimate | None
    """Relative error of the tool's scale; None with fewer than three slots. [-]"""
    origin_shift: Estimate | None
    """How far its zero is off, positive away from the nut; None with fewer than three slots. [unit]"""
    variances: Variances
    """Analysis of variance: repeatability within and between boards."""
    instrument_uncertainty: float
    """Standard uncertainty of one reading. [unit]"""
    tool_within: float
    """Standard deviation within boards with the instrument's share taken out. [unit]"""
    expanded_uncertainty: float
    """Of the product: twice the root mean square of all slots' deviations from their commanded places. [unit]"""
    tolerance: float
    """How far a slot may lie from its commanded place. [unit]"""
    worst_cpk: float | None
    """The smallest Cpk of all slots; None where no slot has any spread. [-]"""
    drifts: tuple[ToolingDrift, ...]
    """What moved over the sequence."""
    resets: tuple[Reset, ...]
    """Slots that should be set again."""
    signature: Signature
    """What identifies this tool, for later questions."""
    origin: ToolOrigin | None
    """Which tool the unknown board came from, where one was given."""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: tuple[Note, ...]
    """Cautions."""
