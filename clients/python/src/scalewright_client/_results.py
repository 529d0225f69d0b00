"""What comes back: frozen dataclasses, lengths in the ``unit`` of the answer and unrounded."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

__all__ = [
    "Candidate",
    "CompensatedString",
    "Compensation",
    "Estimate",
    "Fraction",
    "Fret",
    "FretCents",
    "Identification",
    "Layout",
    "NextReading",
    "Note",
    "OptimisedFor",
    "Rule",
    "RuleDescription",
    "Rules",
    "StringHeights",
    "SuspectReading",
    "Verdict",
]

Verdict: TypeAlias = Literal["established", "undecided", "none"]
"""Whether one rule is established, the readings cannot tell, or no candidate rule explains them."""


@dataclass(frozen=True, slots=True)
class Rule:
    """A spacing rule. It may be given back to the client as the ``rule`` of another request."""

    name: str
    """ "equal", "eighteenth", "divisor" or "listed"."""
    divisor: float | None = None
    """What the remaining length is divided by to place the next fret; None for "listed". [-]"""
    steps: int | None = None
    """Steps to the octave; None but for "equal"."""
    cents: tuple[float, ...] | None = None
    """One pitch for each fret; None but for "listed". [cent]"""
    repeat: bool | None = None
    """Whether the list repeats by octaves; None but for "listed"."""


@dataclass(frozen=True, slots=True)
class Note:
    """A caution that comes with a valid answer."""

    slug: str
    """A short name that stays the same, for programs."""
    text: str
    """One sentence, for people."""


@dataclass(frozen=True, slots=True)
class Estimate:
    """A measured quantity with its interval at the stated coverage."""

    value: float
    """The best estimate. [unit]"""
    standard_uncertainty: float
    """Its standard uncertainty (k = 1). [unit]"""
    lower: float
    """Lower end of the interval. [unit]"""
    upper: float
    """Upper end of the interval. [unit]"""


@dataclass(frozen=True, slots=True)
class RuleDescription:
    """One spacing rule that the service knows."""

    name: str
    """Its name in a request."""
    description: str
    """What it does, in a sentence."""
    parameters: tuple[str, ...]
    """What it takes beside its name."""
    divisor: float | None
    """What the remaining length is divided by, with the default parameters; None without one. [-]"""
    step_cents: float | None
    """Interval from one fret to the next, with the default parameters; None without one. [cent]"""
    octave_fret: int | None
    """Fret that stands for the octave, with the default parameters; None without one."""
    octave_shortfall_cents: float | None
    """How far it stops short of an octave when the bridge stands at the layout end; None without one. [cent]"""


@dataclass(frozen=True, slots=True)
class Rules:
    """The spacing rules that exist."""

    rules: tuple[RuleDescription, ...]
    """One description a rule."""


@dataclass(frozen=True, slots=True)
class Fraction:
    """A length rounded to a shop fraction."""

    text: str
    """As written on a drawing, "1 3/8 in"."""
    error: float
    """Fraction minus exact position. [unit]"""


@dataclass(frozen=True, slots=True)
class Fret:
    """Where one fret stands."""

    fret: int
    """Number of the fret, counted from the nut."""
    from_nut: float
    """Distance from the nut. [unit]"""
    from_previous: float
    """Distance from the fret before it, or from the nut for fret 1. [unit]"""
    to_layout_end: float
    """Distance to the end of the layout scale. A bridge never belongs here. [unit]"""
    to_true_end: float | None
    """Distance to the end of the true scale, where a bridge is measured from; None without one. [unit]"""
    cents: float
    """1200 log2(S / (S - from_nut)), with S the layout scale. [cent]"""
    from_nut_fraction: Fraction | None = None
    """``from_nut`` as a shop fraction; None unless ``fractions`` was asked for."""


@dataclass(frozen=True, slots=True)
class Layout:
    """A fret layout."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    rule: Rule
    """The spacing rule."""
    layout_scale: float
    """The length that the rule was applied to. [unit]"""
    true_scale: float | None
    """Twice the distance from the nut to the octave fret; None where there is no octave fret. [unit]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave; None where there is none."""
    frets: tuple[Fret, ...]
    """The frets, from the nut on: ``frets[11]`` is fret 12."""


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


@dataclass(frozen=True, slots=True)
class FretCents:
    """Pitch error of one string at one fret."""

    fret: int
    """Number of the fret."""
    uncompensated: float
    """Error with saddle and nut at the ends of the true scale; positive is sharp. [cent]"""
    compensated: float
    """Error with the setbacks of the answer. [cent]"""


@dataclass(frozen=True, slots=True)
class CompensatedString:
    """Where one string's break points belong."""

    pitch: str
    """Name of the open pitch."""
    frequency_hz: float
    """Frequency of the open string. [Hz]"""
    unit_mass: float
    """Mass per length. [g/m]"""
    tension_n: float
    """Tension of the open string. [N]"""
    kappa: float
    """Relative change of tension with length. [-]"""
    B0: float
    """Stiffness of the open string: how much sharper than an ideal one it sounds. [-]"""
    breaking_share: float | None
    """Tension over the minimum breaking load; None where no standard gives the strength. [-]"""
    saddle_setback: float
    """From the end that ``setback_from`` names to the break point on the saddle, positive away from the nut. [unit]"""
    nut_setback: float
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    saddle_from_nut: float
    """From the nut's front edge to the break point, parallel to the fret plane. [unit]"""
    saddle_from_fret_12: float | None
    """From fret 12 to the break point, parallel to the fret plane; None on a board without it. [unit]"""
    rms_cents: float
    """Root mean square error over the fretted notes that count. [cent]"""
    cents: tuple[FretCents, ...]
    """Errors at every fret."""
    notes: tuple[Note, ...]
    """What the numbers of this string rest on, and cautions."""


@dataclass(frozen=True, slots=True)
class StringHeights:
    """How high the strings were taken to lie."""

    nut: float
    """Underside of the strings above the plane of the fret tops at the nut. [unit]"""
    saddle_above_nut: float
    """How much higher they are at the saddle. [unit]"""


@dataclass(frozen=True, slots=True)
class OptimisedFor:
    """Which frets the setbacks are best for."""

    frets: tuple[int, ...]
    """Numbers of the frets."""
    weights: tuple[float, ...]
    """How much the squared error of each counted. [-]"""


@dataclass(frozen=True, slots=True)
class Compensation:
    """Compensated saddle and nut positions of a set of strings."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    rule: Rule
    """Spacing rule of the board."""
    layout_scale: float
    """The length that the rule was applied to. [unit]"""
    true_scale: float | None
    """Twice the distance from the pattern's zero line to the octave fret; None without one. [unit]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave; None where there is none."""
    setback_from: str
    """Whose end saddle setbacks are counted from: "true_scale", or "layout_scale" without an octave fret."""
    nut: str
    """Whether the nut was set back too: "fixed" or "free"."""
    heights: StringHeights
    """How high the strings were taken to lie."""
    optimised_for: OptimisedFor
    """Frets and weights that the setbacks are best for."""
    target_cents: tuple[float, ...]
    """Pitch above the open string that every fret should give. [cent]"""
    boundary_factor: float
    """Ends of the speaking length that were taken as clamped. [-]"""
    stiffness: str
    """What the stiffness of a fretted note followed."""
    strings: tuple[CompensatedString, ...]
    """One a string, in the order given."""
    notes: tuple[Note, ...]
    """What the numbers of all strings rest on."""
