"""What moved over a sequence of boards."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Estimate

__all__ = ["Drift", "Jump", "Reset", "ToolingDrift"]


@dataclass(frozen=True, slots=True)
class Jump:
    """A jump between two boards."""

    at: int
    """Index, from 0, of the first board after it."""
    earliest: int
    """Lower end of the interval of that index."""
    latest: int
    """Its upper end."""
    size: Estimate
    """How large it is. [unit]"""


@dataclass(frozen=True, slots=True)
class Drift:
    """How positions move over the boards."""

    kind: str
    """Whether they wander steadily or jump."""
    p_value: float
    """Probability of a movement as large by chance, corrected for the places where a step was looked for. [-]"""
    trend: Estimate
    """Change from one board to the next by a straight line. [unit]"""
    step: Jump | None
    """The jump, for a step."""
    present: Estimate
    """Where they now stand against the commanded positions, one slot against the middle of the others. [unit]"""


@dataclass(frozen=True, slots=True)
class ToolingDrift:
    """What moved over the sequence of boards."""

    fret: int | None
    """The slot that moved against the others; None where all moved together."""
    drift: Drift
    """How it moved."""


@dataclass(frozen=True, slots=True)
class Reset:
    """A slot that should be set again."""

    fret: int
    """Its fret."""
    move: float
    """How far to move it, positive away from the nut. [unit]"""
    since: int
    """Index of the first board, from 0, that this rests on."""
