"""Assembly: whether parts belong together, pair by pair, before anything is glued."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import combinations

from scalewright.lutherie.assembly_words import notes_of, statement_of, why
from scalewright.lutherie.deciding import Prospects
from scalewright.lutherie.decision import Decision, summed_up
from scalewright.lutherie.errors import LutherieError, UndefinedPartError
from scalewright.lutherie.estimate import Estimate, Note, normal_estimate
from scalewright.lutherie.identification import Beliefs, SuspectReading, Verdict
from scalewright.lutherie.known import Known, identify_parts, known_of
from scalewright.lutherie.pairing import Demands, Pair, hold, pair_of
from scalewright.lutherie.part import Kind, Part, Side, Source
from scalewright.lutherie.replacement import Replacement, hold_boards, replacement_of
from scalewright.lutherie.ruling import GUARD_FACTOR, Interval, refuse_without_width
from scalewright.lutherie.slant import Slant, hold_slants, slant_of
from scalewright.lutherie.spacing import Rule

__all__ = ["TOLERANCE", "Assembly", "AssemblyQuestion", "PartScale", "assemble", "assemble_all"]

TOLERANCE = 0.5
"""How far two true scales may differ where nothing else was asked for: 2.7 cents at fret 12 of 650 mm if the saddle is
not moved, well within a saddle's usual travel; common practice, no source. [mm]"""


@dataclass(frozen=True, slots=True)
class AssemblyQuestion:
    """Parts that are to be put together."""

    parts: tuple[Part, ...]
    """Two or more."""
    tolerance: float = TOLERANCE
    """How far their true scales may differ. [mm]"""
    guard_factor: float = GUARD_FACTOR
    """Guard band in standard uncertainties. [-]"""
    beliefs: Beliefs = field(default_factory=Beliefs)
    """What identification reckons with."""


@dataclass(frozen=True, slots=True)
class PartScale:
    """What is known of one part along one string line."""

    id: str
    """The caller's name for it."""
    kind: Kind
    """What it is."""
    side: Side
    """Along which string line."""
    source: Source
    """What its true scale is known from."""
    true_scale: Estimate | None
    """Its true scale; None where that cannot be told. [mm]"""
    rule: Rule | None
    """Its likeliest spacing rule, where that is known."""
    verdict: Verdict | None
    """Whether its readings establish the rule; None without readings."""
    suspect_readings: list[SuspectReading]
    """Readings set aside as blunders."""
    explanation: str
    """Where the figure comes from."""


@dataclass(frozen=True, slots=True)
class Assembly:
    """Whether parts belong together."""

    decision: Decision
    """The worst of the pairs, the body joints and the slants: apart before undecided before together."""
    statement: str
    """One sentence for a work order."""
    parts: list[PartScale]
    """What is known of each part."""
    pairs: list[Pair]
    """Each part against each other."""
    explanations: list[str]
    """What the mismatches look like."""
    replacements: list[Replacement]
    """Each board that follows another in the list, as its replacement."""
    slants: list[Slant]
    """The saddle lines of fan parts that name their square fret, each against each other."""
    tolerance: float
    """How far true scales may differ. [mm]"""
    guard_factor: float
    """Guard band in standard uncertainties. [-]"""
    coverage: float
    """Probability that a stated interval holds. [-]"""
    notes: list[Note]
    """Cautions."""


def assemble(question: AssemblyQuestion) -> Assembly:
    """Whether the parts of one assembly belong together.

    Parameters
    ----------
    question : AssemblyQuestion
        The parts.

    Returns
    -------
    Assembly
        Mismatches, consequences and decisions.

    Raises
    ------
    ToleranceError
        A tolerance of zero or less.
    UndefinedPartError
        Fewer than two parts, or one that nothing defines.
    ContradictoryPartError
        A part that is defined twice, differently.
    TooFewPitchesError
        Listed pitches that end before a fret that is asked for.
    """
    (answer,) = assemble_all([question])
    if isinstance(answer, LutherieError):
        raise answer
    return answer


def assemble_all(questions: Sequence[AssemblyQuestion]) -> list[Assembly | LutherieError]:
    """Whether the parts of many assemblies belong together.

    Parameters
    ----------
    questions : sequence of AssemblyQuestion
        The assemblies.

    Returns
    -------
    list of Assembly or LutherieError
        In the same order; a refusal stands where :func:`assemble` would raise it, and spoils no other.
    """
    by_beliefs: dict[Beliefs, list[int]] = {}
    for index, question in enumerate(questions):
        by_beliefs.setdefault(question.beliefs, []).append(index)
    answers: dict[int, Assembly | LutherieError] = {}
    for beliefs, members in by_beliefs.items():
        found = iter(identify_parts([part for member in members for part in questions[member].parts], beliefs))
        for member in members:
            question = questions[member]
            own = [next(found) for _ in question.parts]
            try:
                known = [
                    known_of(part, identification, ("parts", index))
                    for index, (part, identification) in enumerate(zip(question.parts, own, strict=True))
                ]
                answers[member] = _answer(question, known)
            except LutherieError as refusal:
                answers[member] = refusal
    return [answers[index] for index in range(len(questions))]


def _answer(question: AssemblyQuestion, known: list[dict[Side, Known]]) -> Assembly:
    """Answer for one assembly."""
    refuse_without_width(Interval(-question.tolerance, question.tolerance))
    if len(known) < 2:
        message = "one part alone has nothing to belong to; give two or more"
        raise UndefinedPartError(message, field=("parts",))
    demands = Demands(question.tolerance, question.guard_factor, question.beliefs.coverage)
    held, boards, lines = [], [], []
    for one, other in combinations(known, 2):
        for side in _sides(one, other):
            a, b = one.get(side) or one["whole"], other.get(side) or other["whole"]
            held.append(hold(a, b, side))
            if a.part.fretted and b.part.fretted and side == "whole":
                boards.append(hold_boards(a, b))
        lines += [pair] if (pair := hold_slants(one, other)) is not None else []
    # The intervals of all pairs and all frets together, for one by one they take most of the time.
    groups = [pair.differences for pair in held] + [pair.offsets for pair in boards] + [pair.offsets for pair in lines]
    found = iter(summed_up([group for group in groups if group], demands.coverage))
    prospects = Prospects()
    pairs = [pair_of(pair, next(found) if pair.differences else [], demands, prospects) for pair in held]
    replacements = [replacement_of(pair, next(found) if pair.offsets else [], demands) for pair in boards]
    slants = [slant_of(pair, next(found)[0], demands) for pair in lines]
    explanations = [text for pair, two in zip(pairs, held, strict=True) for text in why(pair, two.first, two.second)]
    worst = {"apart": 0, "undecided": 1, "together": 2}
    decisions = [pair.decision for pair in pairs]
    decisions += [one.body_joint.decision for one in replacements if one.body_joint is not None]
    decisions += [slant.decision for slant in slants]
    decision = min(decisions, key=lambda one: worst[one])
    return Assembly(
        decision=decision,
        statement=statement_of(decision, pairs, replacements, slants, question.tolerance),
        parts=[_scale(line, side, question.beliefs.coverage) for part in known for side, line in part.items()],
        pairs=pairs,
        explanations=list(dict.fromkeys(explanations)),
        replacements=replacements,
        slants=slants,
        tolerance=question.tolerance,
        guard_factor=question.guard_factor,
        coverage=question.beliefs.coverage,
        notes=notes_of(decision, pairs, [line for part in known for line in part.values()], held, boards),
    )


def _sides(one: dict[Side, Known], other: dict[Side, Known]) -> tuple[Side, ...]:
    """String lines along which two parts are compared."""
    return ("whole",) if "whole" in one and "whole" in other else ("bass", "treble")


def _scale(known: Known, side: Side, coverage: float) -> PartScale:
    """What is said of one part."""
    found = known.identification
    true_scale = None
    if found is not None:
        true_scale = found.true_scale
        explanation = found.statement
    else:
        true_scale = normal_estimate(known.true_scale, known.deviation, coverage)
        explanation = {
            "definition": "Taken as stated; nothing was measured.",
            "label": "The label can mean more than one true scale; nothing was measured.",
        }[known.source]
    return PartScale(
        id=known.part.id,
        kind=known.part.kind,
        side=side,
        source=known.source,
        true_scale=true_scale,
        rule=known.rule,
        verdict=None if found is None else found.verdict,
        suspect_readings=[] if found is None else found.suspect_readings,
        explanation=explanation,
    )
