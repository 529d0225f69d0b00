"""Whether parts belong together."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Estimate, Note
from scalewright_client._results.identification import SuspectReading
from scalewright_client._results.replacement import Replacement
from scalewright_client._results.rules import Rule

__all__ = ["Absorption", "Assembly", "CentsAtFret", "DecidingReadings", "Pair", "PartScale", "ReadingOn", "Slant"]


@dataclass(frozen=True, slots=True)
class PartScale:
    """What is known of one part along one string line."""

    id: str
    """Your name for it."""
    kind: str
    """What it is."""
    side: str
    """Along which string line: "whole", or "bass" and "treble" of a fan board."""
    source: str
    """What its true scale is known from: "readings", "definition" or "label"."""
    true_scale: Estimate | None
    """Its true scale; None where it cannot be told. [unit]"""
    rule: Rule | None
    """Its likeliest spacing rule, where that is known."""
    verdict: str | None
    """Whether its readings establish the rule; None without readings."""
    suspect_readings: tuple[SuspectReading, ...]
    """Readings set aside as blunders."""
    explanation: str
    """Where the figure comes from."""


@dataclass(frozen=True, slots=True)
class CentsAtFret:
    """What a misplaced saddle line does to one fretted note."""

    fret: int
    """Number of the fret."""
    cents: Estimate
    """Change of its pitch after the open string is tuned again; positive sharp. [cent]"""


@dataclass(frozen=True, slots=True)
class Absorption:
    """Whether the saddle's travel can take the mismatch up."""

    needed: float
    """How far the break point would have to move, positive away from the nut. [unit]"""
    absorbs: str
    """Whether it can: "yes", "no" or "undecided"."""
    left: float
    """What stays of the mismatch with the saddle at the end of its travel. [unit]"""


@dataclass(frozen=True, slots=True)
class ReadingOn:
    """A reading to take on one of the parts."""

    part: str
    """Which part."""
    fret: int
    """Fret to measure to, from the nut."""
    uncertainty: float
    """Standard uncertainty that it should have. [unit]"""


@dataclass(frozen=True, slots=True)
class DecidingReadings:
    """Readings that are expected to decide."""

    readings: tuple[ReadingOn, ...]
    """In the order of their worth; empty where none can be expected to decide."""
    expected_uncertainty: float
    """Standard uncertainty that the mismatch in true scale will then have. [unit]"""
    needed_uncertainty: float
    """Standard uncertainty below which a mismatch like this is decided. [unit]"""
    text: str
    """What to do, in words."""


@dataclass(frozen=True, slots=True)
class Pair:
    """Two parts along one string line."""

    first: str
    """The part that carries the frets; of two such, or of none, the one named first."""
    second: str
    """The other part."""
    side: str
    """Along which string line."""
    decision: str
    """ "together": they belong together; "apart": they do not; "undecided": can't be decided with this uncertainty."""
    mismatch: Estimate | None
    """True scale of the second minus that of the first; None where one cannot be told. [unit]"""
    saddle_mismatch: Estimate | None
    """Where the saddle line falls against the end of the true scale of the part with the frets, placed from its datum;
    positive too far from the nut. Of two boards: the first one's saddle line under the second. [unit]"""
    conformance_probability: float | None
    """Probability that the true scales differ by no more than the tolerance. [-]"""
    tolerance: float
    """How far the true scales may differ. [unit]"""
    guard_band: float | None
    """A mismatch has to lie so far inside or outside the tolerance to be decided. [unit]"""
    cents: tuple[CentsAtFret, ...]
    """What the saddle mismatch does at frets 5, 12 and the last; empty where no part carries frets."""
    absorption: Absorption | None
    """Whether the saddle's travel takes it up; None where no part says how far its saddle moves."""
    deciding: DecidingReadings | None
    """What to measure where it cannot be decided."""


@dataclass(frozen=True, slots=True)
class Slant:
    """How the saddle lines of two fan parts lie against each other."""

    first: str
    """The part that carries the frets; of two such, or of none, the one named first."""
    second: str
    """The other part."""
    first_square_fret: int
    """Fret of the first that is square to its centre line; 0 for the nut."""
    second_square_fret: int
    """The same of the second."""
    offset: Estimate
    """With the middles of the saddle lines in line: how far the bass end of the second's lies from that of the first,
    positive farther from the nut; the treble end lies as far off the other way. [unit]"""
    decision: str
    """Whether that is within the tolerance."""


@dataclass(frozen=True, slots=True)
class Assembly:
    """Whether parts belong together."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    decision: str
    """The worst of the pairs, the body joints and the slants: "apart" before "undecided" before "together"."""
    statement: str
    """One sentence for a work order."""
    pairs: tuple[Pair, ...]
    """Each part against each other."""
    explanations: tuple[str, ...]
    """What the mismatches look like."""
    parts: tuple[PartScale, ...]
    """What is known of each part."""
    replacements: tuple[Replacement, ...]
    """Each board that follows another in the list, as its replacement."""
    slants: tuple[Slant, ...]
    """The saddle lines of fan parts that name their square fret, each against each other."""
    tolerance: float
    """How far true scales may differ. [unit]"""
    guard_factor: float
    """Guard band in standard uncertainties. [-]"""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: tuple[Note, ...]
    """Cautions."""
