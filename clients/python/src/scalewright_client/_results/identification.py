"""Which rule and scale a board's readings come from."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from scalewright_client._results.estimate import Estimate, Note
from scalewright_client._results.rules import Rule

__all__ = ["Candidate", "Identification", "NextReading", "SuspectReading", "Verdict"]

Verdict: TypeAlias = Literal["established", "undecided", "none"]
"""Whether one rule is established, the readings cannot tell, or no candidate rule explains them."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """One rule that the readings were compared with."""

    rule: Rule
    """The rule; for the free divisor with its fitted value."""
    probability: float
    """Its posterior probability. [-]"""
    layout_scale: Estimate
    """The length that this rule would have been applied to. [unit]"""
    true_scale: Estimate | None
    """Twice the distance from the pattern's zero line to the octave fret under this rule. [unit]"""
    nut_offset: Estimate | None
    """From the pattern's zero line to the nut's front edge, positive away from fret 1; None without a nut. [unit]"""
    chi_square: float
    """Weighted sum of squared residuals, the nut prior's term included. [-]"""
    degrees_of_freedom: int
    """Degrees of freedom of ``chi_square``."""
    p_value: float | None
    """How often readings of this rule would fit no better; None without degrees of freedom. [-]"""
    residuals: tuple[float, ...]
    """Reading minus prediction; positive reads long. [unit]"""


@dataclass(frozen=True, slots=True)
class SuspectReading:
    """A reading that the others speak against."""

    fret: int
    """Number of the fret that the reading ends at."""
    reading: int
    """Its place in the list of readings, counted from 0."""
    deviation: float
    """Reading minus what the other readings predict; positive reads long. [unit]"""
    explanation: str
    """A sentence, for people."""


@dataclass(frozen=True, slots=True)
class NextReading:
    """The reading that would tell most."""

    fret: int
    """Number of the fret to measure next."""
    expected_probability: float
    """Expected posterior probability of the leading family after that reading. [-]"""
    chance_to_decide: float
    """Probability that the rule will then be established. [-]"""


@dataclass(frozen=True, slots=True)
class Identification:
    """Which rule and scale a board's readings come from."""

    verdict: Verdict
    """ "established", "undecided" or "none"."""
    unit: str
    """Unit of all lengths, "mm" or "in"."""
    coverage: float
    """Probability that each interval covers. [-]"""
    rule: Rule | None
    """The rule; None unless established."""
    family: tuple[Rule, ...]
    """The rule and those that these readings cannot tell from it; empty unless established."""
    probability: float
    """Posterior probability of the leading rule, with its family. [-]"""
    layout_scale: Estimate | None
    """The length that the rule was applied to; None unless established. [unit]"""
    true_scale: Estimate | None
    """Of the fret pattern, the nut's shift excluded: what every other part must agree with. [unit]"""
    nut_offset: Estimate | None
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    divisor: Estimate | None
    """Divisor of the free fit, whatever the verdict; None where the readings do not determine it. [-]"""
    candidates: tuple[Candidate, ...]
    """The rules that were compared."""
    suspect_readings: tuple[SuspectReading, ...]
    """Readings to take again."""
    next_reading: NextReading | None
    """What to measure next; None where nothing more is needed or nothing helps."""
    statement: str
    """One sentence to put on a label or a work order."""
    notes: tuple[Note, ...]
    """Cautions."""
