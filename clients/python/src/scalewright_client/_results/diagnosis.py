"""What mends a board that plays out of tune."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Estimate, Note
from scalewright_client._results.rules import Rule

__all__ = [
    "Diagnosis",
    "FretError",
    "MendedReading",
    "ReadNext",
    "RuleLikelihood",
    "SpacingDiagnosis",
    "StringDiagnosis",
    "SuspectCents",
]


@dataclass(frozen=True, slots=True)
class MendedReading:
    """One reading and what the moves leave of it."""

    fret: int
    """Number of the fret; 0 is the open string."""
    cents: float
    """As it was read. [cent]"""
    remaining: float
    """What the moves of the answer leave of it. [cent]"""


@dataclass(frozen=True, slots=True)
class StringDiagnosis:
    """What mends one string."""

    string: int
    """Number of the string."""
    verdict: str
    """ "in_tune" (the errors are what the tuner allows anyway), "move" (the moves mend them) or "undecided" (the
    readings can't tell which move)."""
    saddle_move: Estimate | None
    """How far to move the saddle, positive away from the nut; None where that can't be told. [unit]"""
    nut_move: Estimate | None
    """How far to move the nut's front edge, positive away from fret 1; None where that can't be told. [unit]"""
    saddle_alone: Estimate | None
    """How far the saddle would have to go if the nut stayed. [unit]"""
    nut_alone: Estimate | None
    """How far the nut would have to go if the saddle stayed. [unit]"""
    tuning_offset: Estimate | None
    """How sharp the open string was tuned; None where it can't be told. [cent]"""
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
    """How probable so large a chi-square is by chance; None without degrees of freedom."""
    readings: tuple[MendedReading, ...]
    """The readings, by fret."""
    statement: str
    """One sentence for the bench."""


@dataclass(frozen=True, slots=True)
class FretError:
    """An error that all strings share at one fret."""

    fret: int
    """Number of the fret."""
    error: Estimate
    """How sharp the fret is beyond what saddle, nut and the spacing rule explain. [cent]"""
    displacement: Estimate
    """How much too near to the saddle it stands. [unit]"""
    misplaced: bool
    """Whether that is more than chance allows among so many frets."""


@dataclass(frozen=True, slots=True)
class RuleLikelihood:
    """How well one spacing rule explains what no move does."""

    rule: Rule
    """The rule."""
    probability: float
    """Its probability among the rules that were compared, each as likely before."""
    chi_square: float
    """Weighted sum of squared residuals with the rule's own errors taken out."""
    p_value: float | None
    """How probable so large a chi-square is by chance; None without degrees of freedom."""


@dataclass(frozen=True, slots=True)
class SpacingDiagnosis:
    """What the readings say of where the frets stand, beyond what moves of saddle and nut explain."""

    verdict: str
    """Whether one rule is "established"; "undecided" where the readings can't tell, "none" where no rule fits."""
    rules: tuple[RuleLikelihood, ...]
    """The rules that were compared, the likeliest first."""
    degrees_of_freedom: int
    """Readings beyond those that the moves need."""
    frets: tuple[FretError, ...]
    """Errors that all strings share, at frets read on two strings or more."""
    statement: str
    """One sentence for the bench."""


@dataclass(frozen=True, slots=True)
class SuspectCents:
    """A reading that the others of its string contradict."""

    string: int
    """Number of the string."""
    fret: int
    """Number of the fret."""
    deviation: float
    """Reading minus what the others predict. [cent]"""
    explanation: str
    """What it may be."""


@dataclass(frozen=True, slots=True)
class ReadNext:
    """The reading that would tell most about a string."""

    string: int
    """Number of the string."""
    fret: int
    """Number of the fret; 0 is the open string."""
    saddle_uncertainty: float | None
    """Standard uncertainty of the saddle move after it; None where it still can't be told. [unit]"""
    nut_uncertainty: float | None
    """Standard uncertainty of the nut move after it; None where it still can't be told. [unit]"""


@dataclass(frozen=True, slots=True)
class Diagnosis:
    """What mends a board that plays out of tune."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    rule: Rule
    """Spacing rule that the board was said to have."""
    layout_scale: float
    """The length that the rule was applied to. [unit]"""
    true_scale: float
    """Twice the distance from the pattern's zero line to the octave fret. [unit]"""
    coverage: float
    """Probability that the intervals hold."""
    strings: tuple[StringDiagnosis, ...]
    """The strings that were read, by number."""
    spacing: SpacingDiagnosis
    """What is left for the frets to explain."""
    suspect_readings: tuple[SuspectCents, ...]
    """Readings to take again."""
    cannot_tell: tuple[Note, ...]
    """What can't be told apart with these frets or this tuner."""
    next_readings: tuple[ReadNext, ...]
    """What to read next; empty where nothing more is needed."""
    remaining_rms_cents: float
    """Root mean square of the fretted readings after the moves; the tuner's own scatter is in it. [cent]"""
    statement: str
    """One sentence for the work order."""
    notes: tuple[Note, ...]
    """What the numbers rest on, and cautions."""
