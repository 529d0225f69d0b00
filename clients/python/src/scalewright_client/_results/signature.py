"""What identifies a tool, and which of several a board came from."""

from dataclasses import dataclass

__all__ = ["Signature", "SignatureMatch", "ToolOrigin"]


@dataclass(frozen=True, slots=True)
class Signature:
    """What identifies a tool; a later question takes it as it stands, in the same unit."""

    id: str
    """Your name for the tool."""
    bias: tuple[float, ...]
    """How far each slot lies from where it was commanded, positive away from the nut. [unit]"""
    within: float
    """Standard deviation of a slot against the other slots of its board. [unit]"""
    between: float
    """Standard deviation of a whole board against the others. [unit]"""
    boards: int
    """How many boards were studied."""


@dataclass(frozen=True, slots=True)
class SignatureMatch:
    """How well an unknown board agrees with one tool."""

    id: str
    """The tool."""
    probability: float
    """Its probability among the tools, none of them preferred. [-]"""
    chi_square: float
    """Squared deviations in units of their variance. [-]"""
    p_value: float
    """Probability of a chi-square as large by chance if the board came from this tool. [-]"""


@dataclass(frozen=True, slots=True)
class ToolOrigin:
    """Which tool an unknown board came from."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    verdict: str
    """ "established": one tool; "undecided" between tools; "none" of them."""
    tool: str | None
    """The tool, where one is established."""
    statement: str
    """One sentence."""
    matches: tuple[SignatureMatch, ...]
    """All the tools, the most probable first."""
