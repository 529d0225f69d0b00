"""What a label can mean."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Estimate, Note
from scalewright_client._results.labels import Label
from scalewright_client._results.rules import Rule

__all__ = ["Measured", "Nominal", "ReadingToTake", "WeighedMeaning"]


@dataclass(frozen=True, slots=True)
class WeighedMeaning:
    """One meaning of a label, and how it stands after the readings."""

    name: str
    """ "exact": the number as it is; "rounded": to the nearest; "rounded_up": in favour of compensation;
    "string_length": with the saddle's setback in it; "converted": a round number of the other system; "other"."""
    rule: Rule | None
    """Spacing rule; None for "other"."""
    basis: str | None
    """Which length the label names."""
    probability: float
    """Its probability after the readings; without any, how likely it is beforehand. [-]"""
    survives: bool
    """Whether its probability is at least one minus the threshold; before any reading all stand."""
    true_scale: float | None
    """True scale that it stands for, the middle of ``lower`` and ``upper``. [unit]"""
    lower: float | None
    """Smallest true scale that it stands for. [unit]"""
    upper: float | None
    """Largest true scale that it stands for. [unit]"""
    layout_scale: float | None
    """Length that the rule was applied to. [unit]"""
    octave_distance: float | None
    """Distance from the nut to fret 12 to look for. [unit]"""
    explanation: str
    """What it would mean, in words."""


@dataclass(frozen=True, slots=True)
class ReadingToTake:
    """A reading that would tell more."""

    fret: int
    """Fret to measure to, from the nut."""
    uncertainty: float | None
    """Standard uncertainty it should have; None for any good instrument. [unit]"""
    reason: str
    """What it would tell."""


@dataclass(frozen=True, slots=True)
class Measured:
    """What readings alone say."""

    verdict: str
    """Whether they establish a rule."""
    rule: Rule | None
    """The established rule."""
    true_scale: Estimate | None
    """True scale; None where it cannot be told. [unit]"""
    statement: str
    """One sentence."""


@dataclass(frozen=True, slots=True)
class Nominal:
    """What a label can mean."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    verdict: str
    """ "established": one rule is behind it; "undecided": more than one may be; "none": the readings fit no meaning."""
    statement: str
    """The sentence to print instead of the label."""
    label: Label
    """The label as it was read."""
    rule: Rule | None
    """The rule behind it, where one is established."""
    meaning: WeighedMeaning | None
    """The most probable meaning, where a rule is established."""
    true_scale: Estimate | None
    """True scale by label and readings together, by the readings alone where no meaning fits. [unit]"""
    meanings: tuple[WeighedMeaning, ...]
    """All meanings, the most probable first."""
    measured: Measured | None
    """What the readings alone say."""
    next_reading: ReadingToTake | None
    """What to measure next, where the rule is undecided."""
    coverage: float
    """Probability that the interval of the true scale holds. [-]"""
    notes: tuple[Note, ...]
    """Cautions."""
