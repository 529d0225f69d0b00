"""What is known of a part: its true scale, from readings, a definition or a label, and what contradicts it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from scalewright.lutherie.errors import ContradictoryPartError, UndefinedPartError
from scalewright.lutherie.identification import Beliefs, Candidate, CandidateFit, Identification, identify_all
from scalewright.lutherie.identification.words import length_in_words
from scalewright.lutherie.label import SETBACK, SETBACK_UNCERTAINTY, meanings_of
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.part import FanScale, Part, Side, Source
from scalewright.lutherie.spacing import Listed, Rule
from scalewright.lutherie.stated import STATED_ALIKE, stated_scale

__all__ = ["Hypothesis", "Known", "identify_parts", "known_of"]

_CONTRADICTED = 3.0
"""Standard deviations beyond which readings contradict a stated scale. [-]"""

_UNLIKELY = 0.05
"""A stated rule that the readings leave less likely than this is contradicted: what establishes another. [-]"""


@dataclass(frozen=True, slots=True)
class Hypothesis:
    """One possibility for a part, as a normal distribution."""

    probability: float
    """How likely it is. [-]"""
    rule: Rule | None
    """Its spacing rule, where that is known."""
    true_scale: float
    """Its true scale. [mm]"""
    deviation: float
    """Standard deviation of that. [mm]"""
    nut_offset: float = 0.0
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [mm]"""
    nut_deviation: float = 0.0
    """Standard deviation of that. [mm]"""


@dataclass(frozen=True, slots=True)
class Known:
    """What is known of a part along one string line."""

    part: Part
    """The part."""
    source: Source
    """What it is known from."""
    hypotheses: tuple[Hypothesis, ...]
    """Possibilities, the likeliest first; none where its true scale cannot be told."""
    identification: Identification | None = None
    """What its readings say."""
    place: tuple[str | int, ...] = ("part",)
    """Path to the part in the question, for refusals."""

    @property
    def true_scale(self) -> float:
        """Expected true scale. [mm]"""
        return sum(one.probability * one.true_scale for one in self.hypotheses)

    @property
    def deviation(self) -> float:
        """Standard deviation of the true scale. [mm]"""
        mean = self.true_scale
        square = sum(one.probability * (one.deviation**2 + (one.true_scale - mean) ** 2) for one in self.hypotheses)
        return math.sqrt(square)

    @property
    def rule(self) -> Rule | None:
        """Spacing rule of the likeliest possibility."""
        return self.hypotheses[0].rule if self.hypotheses else None


def identify_parts(parts: Sequence[Part], beliefs: Beliefs) -> list[Identification | None]:
    """What the readings of many parts say; None for a part without readings.

    Parameters
    ----------
    parts : sequence of Part
        Of one assembly or of many.
    beliefs : Beliefs
        What identification reckons with.

    Returns
    -------
    list of Identification or None
        In the same order.

    Raises
    ------
    TooFewPitchesError
        Listed pitches among the candidates that end before the highest fret read.

    Notes
    -----
    A rule that is stated of a part, and is none of the candidates, is compared with them at the prior of the
    likeliest.
    """
    members: dict[Rule | None, list[int]] = {}
    for index, part in enumerate(parts):
        if part.survey is not None:
            members.setdefault(_to_compare(part, beliefs), []).append(index)
    found: dict[int, Identification] = {}
    for rule, indices in members.items():
        compared = beliefs
        if rule is not None:
            prior = max(candidate.prior for candidate in beliefs.candidates)
            compared = replace(beliefs, candidates=(*beliefs.candidates, Candidate(rule, prior)))
        surveys = [survey for index in indices if (survey := parts[index].survey) is not None]
        found.update(zip(indices, identify_all(surveys, compared), strict=True))
    return [found.get(index) for index in range(len(parts))]


def _to_compare(part: Part, beliefs: Beliefs) -> Rule | None:
    """Rule that is stated of a part that was measured, and is no candidate yet."""
    rule = part.rule
    if rule is None or rule in beliefs.fixed_rules or part.survey is None:
        return None
    if isinstance(rule, Listed) and not rule.repeat and len(rule.cents) < max(part.survey.procedure.end):
        return None  # stated_scale refuses it
    return None if true_scale_of(rule, 1.0) is None else rule


def known_of(
    part: Part, identification: Identification | None, place: tuple[str | int, ...] = ("part",)
) -> dict[Side, Known]:
    """What is known of a part's true scale.

    Parameters
    ----------
    part : Part
        As it is described.
    identification : Identification or None
        What its readings say.
    place : tuple
        Path to the part in the question, for refusals.

    Returns
    -------
    dict
        By string line: one, "whole", or "bass" and "treble" of a fan board.

    Raises
    ------
    UndefinedPartError
        Nothing says what the part's scale is.
    ContradictoryPartError
        The part is defined twice, and the two differ.

    Notes
    -----
    What was measured stands before what is stated, and that before a label. They are compared, and never
    averaged: a stated scale that the readings contradict by more than three standard deviations is refused. A stated
    rule that the readings leave is taken at its word, and one that they do not leave is refused.
    """
    stated = stated_scale(part, place)
    if isinstance(stated, FanScale):
        spread = part.tolerance / math.sqrt(3.0)
        sides: tuple[tuple[Side, float], ...] = (("bass", stated.bass), ("treble", stated.treble))
        return {
            side: Known(part, "definition", (Hypothesis(1.0, part.rule, length, spread),), place=place)
            for side, length in sides
        }
    if identification is not None:
        found = identification if part.rule is None else _by_the_stated(part.rule, place, identification)
        hypotheses = _measured(found)
        measured = Known(part, "readings", hypotheses, found, place)
        if stated is not None and hypotheses:
            _refuse_contradiction(part, place, stated, measured)
        return {"whole": measured}
    if stated is not None:
        one = Hypothesis(1.0, part.rule, stated, part.tolerance / math.sqrt(3.0))
        return {"whole": Known(part, "definition", (one,), place=place)}
    assert part.label is not None  # noqa: S101  (stated_scale has refused a part that nothing defines)
    given = (SETBACK, SETBACK_UNCERTAINTY) if part.setback is None else (part.setback, 0.0)
    meanings = meanings_of(part.label, *given)
    if part.made_to == "string_length":
        meanings = [meaning for meaning in meanings if meaning.basis == "string_length"]
    if part.rule is not None:
        # A stated rule leaves the meanings under it, if it is one that labels are read by.
        meanings = [meaning for meaning in meanings if meaning.rule in {None, part.rule}] or meanings
    total = sum(meaning.prior for meaning in meanings)
    return {
        "whole": Known(
            part,
            "label",
            tuple(
                Hypothesis(meaning.prior / total, meaning.rule, meaning.true_scale, meaning.deviation)
                for meaning in meanings
            ),
            place=place,
        )
    }


def _measured(identification: Identification) -> tuple[Hypothesis, ...]:
    """Possibilities that readings leave, the likeliest first."""
    if identification.verdict == "none":
        octave = identification.true_scale
        return () if octave is None else (Hypothesis(1.0, None, octave.value, octave.standard_uncertainty),)
    found = [
        Hypothesis(fit.probability, fit.rule, scale.value, scale.standard_uncertainty, *_nut_of(fit))
        for fit in identification.candidates
        if (scale := fit.true_scale) is not None
    ]
    total = sum(one.probability for one in found)
    return tuple(
        Hypothesis(one.probability / total, one.rule, one.true_scale, one.deviation, one.nut_offset, one.nut_deviation)
        for one in found
    )


def _nut_of(fit: CandidateFit) -> tuple[float, float]:
    """Nut offset and its standard deviation; none from a zero fret. [mm]"""
    return (0.0, 0.0) if fit.nut_offset is None else (fit.nut_offset.value, fit.nut_offset.standard_uncertainty)


def _refuse_contradiction(part: Part, place: tuple[str | int, ...], stated: float, measured: Known) -> None:
    """Refuse a stated scale that the readings contradict under every rule that they leave."""
    allowed = max(STATED_ALIKE, part.tolerance)
    rules = [one for one in measured.hypotheses if one.probability > 0.01]
    off = min(max(abs(stated - one.true_scale) - allowed, 0.0) / max(one.deviation, 1e-9) for one in rules)
    if off > _CONTRADICTED:
        value, spread = measured.true_scale, measured.deviation
        message = (
            f"the stated scale gives a true scale of {length_in_words(stated, 0.01)}, and the readings give "
            f"{length_in_words(value, spread)} with a standard uncertainty of {spread:.2f} mm: they differ by "
            f"{abs(stated - value):.2f} mm; measure again, or leave out what is wrong"
        )
        field = "true_scale" if part.true_scale is not None else "layout_scale"
        raise ContradictoryPartError(message, field=(*place, field), part=part.id, stated_mm=stated, measured_mm=value)


def _by_the_stated(rule: Rule, place: tuple[str | int, ...], found: Identification) -> Identification:
    """What readings say where the rule is stated; refuses a rule that they do not leave."""
    if true_scale_of(rule, 1.0) is None:
        message = "under a rule without an octave fret readings give no true scale; leave the rule or the readings out"
        raise UndefinedPartError(message, field=(*place, "rule"))
    fit = next(fit for fit in found.candidates if fit.rule == rule)
    if found.verdict == "established" and rule not in found.family:
        message = "the stated spacing rule is another than the one the readings establish; mend one of them"
        raise ContradictoryPartError(message, field=(*place, "rule"))
    if found.verdict == "none" or fit.probability < _UNLIKELY:
        message = (
            "the readings are not those of the stated spacing rule; leave the rule out, or measure once more what is "
            "farthest off"
        )
        raise ContradictoryPartError(message, field=(*place, "rule"))
    if found.rule == rule:
        return found
    return replace(
        found,
        rule=rule,
        layout_scale=fit.layout_scale,
        true_scale=fit.true_scale,
        nut_offset=fit.nut_offset,
        candidates=[fit],
        statement=f"{found.statement} The spacing rule is taken as stated.",
    )
