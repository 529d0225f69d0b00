"""Spec sheets: what a buyer of a part has to know of its scale."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Estimate
from scalewright_client._results.rules import Rule

__all__ = ["SheetConformity", "SheetFret", "SheetLabel", "SheetSentences", "SheetSetback", "SheetTreble", "SpecSheet"]


@dataclass(frozen=True, slots=True)
class SheetFret:
    """Where one fret goes."""

    fret: int
    """Its number."""
    from_nut: float
    """Distance from the nut. [unit]"""
    to_true_end: float | None
    """Distance to the end of the true scale. [unit]"""
    millimetres: float
    """Distance from the nut in millimetres. [mm]"""
    inches: float
    """Distance from the nut in inches. [in]"""
    fraction: str
    """Nearest sixty-fourth of an inch."""


@dataclass(frozen=True, slots=True)
class SheetTreble:
    """The side of the highest string of a fan board."""

    true_scale: Estimate
    """The true scale along it. [unit]"""
    layout_scale: float | None
    """The length that the rule was applied to there. [unit]"""
    frets: tuple[SheetFret, ...]
    """Its frets; none where the rule is not known."""


@dataclass(frozen=True, slots=True)
class SheetLabel:
    """What the label of the part says, and what that is."""

    text: str
    """Its letters, as they were given."""
    length: float
    """Its number, taken at its word. [unit]"""
    written_in: str
    """Unit that the label is written in."""
    names: str
    """Which length it is: "true_scale", "layout_scale" or "neither"."""
    excess: float
    """Label minus true scale. [unit]"""


@dataclass(frozen=True, slots=True)
class SheetSetback:
    """Where one string breaks over the saddle."""

    string: int
    """Number of the string, 1 first."""
    pitch: str
    """Its open pitch."""
    saddle_setback: float
    """From the end of the true scale to the break point on the saddle, positive away from the nut. [unit]"""
    saddle_from_nut: float
    """From the nut's front edge to the break point. [unit]"""


@dataclass(frozen=True, slots=True)
class SheetConformity:
    """Whether the part is what it claims to be."""

    decision: str
    """By guarded acceptance: "accept" or "reject"."""
    conformance: str
    """What the readings prove: "conforming", "undecided" or "nonconforming" (ISO 14253-1)."""
    deviation: Estimate
    """Measured minus claimed true scale. [unit]"""
    tolerance: float
    """How far it may be from the claimed one. [unit]"""
    conformance_probability: float
    """Probability that the true scale lies within the tolerance. [-]"""


@dataclass(frozen=True, slots=True)
class SheetSentences:
    """Sentences of the sheet, in its language."""

    statement: str
    """Rule, layout scale and true scale in one sentence."""
    true_scale: str
    """The true scale with its uncertainty."""
    layout_scale: str
    """The layout scale, or that it is not established."""
    rule: str
    """The spacing rule, or that it is not established."""
    obtained: str
    """How the true scale is known."""
    label: str | None
    """What the label says and what it means."""
    conformity: str | None
    """Whether the part is what it claims to be."""
    not_with: tuple[str, ...]
    """What it must not be combined with."""
    cautions: tuple[str, ...]
    """What to mind."""


@dataclass(frozen=True, slots=True)
class SpecSheet:
    """All that a buyer of a part has to know of its scale."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    id: str
    """Your name for the part."""
    kind: str
    """What it is."""
    source: str
    """What the true scale is known from: "readings", "definition" or "label"."""
    rule: Rule | None
    """Its spacing rule, where that is established or stated."""
    layout_scale: float | None
    """The length that the rule was applied to. [unit]"""
    true_scale: Estimate
    """Its true scale. [unit]"""
    tolerance: float
    """How far true scales of parts that are put together may differ. [unit]"""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    label: SheetLabel | None
    """What its label says; None without one."""
    frets: tuple[SheetFret, ...]
    """Its frets; none where the rule is not known."""
    setbacks: tuple[SheetSetback, ...]
    """Recommended setbacks, string by string."""
    treble: SheetTreble | None
    """The side of the highest string of a fan board, whose other figures are the lowest's; None for one scale."""
    square_fret: int | None
    """The fret of a fan board that is square to its centre line, where that is stated; 0 for the nut."""
    conformity: SheetConformity | None
    """Whether it is what it claims to be; None unless it claims a scale and was measured."""
    sentences: SheetSentences
    """The same in words."""
    language: str
    """Language of the sentences, by its tag."""
    language_known: bool
    """False where languages were asked for and none of them is known."""
