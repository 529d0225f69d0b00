"""What is known of a part: its true scale, from readings, a definition or a label, and what contradicts it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from scalewright.lutherie.errors import ContradictoryPartError, UndefinedPartError, refused_within
from scalewright.lutherie.identification import Beliefs, CandidateFit, Identification, identify_all
from scalewright.lutherie.identification.words import length_in_words
from scalewright.lutherie.label import SETBACK, SETBACK_UNCERTAINTY, meanings_of
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.part import FanScale, Part, Side, Source
from scalewright.lutherie.spacing import Rule, cents

__all__ = ["STATED_ALIKE", "Hypothesis", "Known", "identify_parts", "known_of", "stated_scale"]

STATED_ALIKE = 0.1
"""Two stated scales that differ by less than this are the same but for rounding. [mm]"""

_CONTRADICTED = 3.0
"""Standard deviations beyond which readings contradict a stated scale. [-]"""


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
    """
    found = iter(identify_all([part.survey for part in parts if part.survey is not None], beliefs))
    return [None if part.survey is None else next(found) for part in parts]


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
    averaged: a stated scale that the readings contradict by more than three standard deviations is refused.
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
        hypotheses = _measured(identification)
        measured = Known(part, "readings", hypotheses, identification, place)
        if stated is not None and hypotheses:
            _refuse_contradiction(part, place, stated, measured)
        if part.rule is not None:
            _refuse_other_rule(part.rule, place, identification)
        return {"whole": measured}
    if stated is not None:
        one = Hypothesis(1.0, part.rule, stated, part.tolerance / math.sqrt(3.0))
        return {"whole": Known(part, "definition", (one,), place=place)}
    assert part.label is not None  # noqa: S101  (stated_scale has refused a part that nothing defines)
    given = (SETBACK, SETBACK_UNCERTAINTY) if part.setback is None else (part.setback, 0.0)
    meanings = meanings_of(part.label, *given)
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


def stated_scale(part: Part, place: tuple[str | int, ...]) -> float | FanScale | None:
    """True scale that is stated for a part, after a look whether it is stated twice.

    Parameters
    ----------
    part : Part
        As it is described.
    place : tuple
        Path to the part in the question, for refusals.

    Returns
    -------
    float, FanScale or None
        None for a part that has a label or readings alone. [mm]

    Raises
    ------
    UndefinedPartError
        Nothing says what the part's scale is.
    ContradictoryPartError
        It is stated twice, and the two differ.
    TooFewPitchesError
        Its listed pitches end before its last fret.
    """
    if part.true_scale is None and part.layout_scale is None and part.label is None and part.survey is None:
        message = (
            "nothing says what this part's scale is; give its true_scale, layout_scale and rule, label or readings"
        )
        raise UndefinedPartError(message, field=place, example={"true_scale": "25.4 in"})
    _refuse_short_list(part, place)
    of_layout = None
    if part.layout_scale is not None:
        if part.rule is None:
            message = "a layout scale means nothing without its spacing rule; add the rule"
            raise UndefinedPartError(message, field=(*place, "rule"), example="eighteenth")
        of_layout = true_scale_of(part.rule, part.layout_scale)
        if of_layout is None:
            message = "this rule has no octave fret, so its layout scale gives no true scale; give the true_scale"
            raise UndefinedPartError(message, field=(*place, "rule"))
    stated = part.true_scale
    if isinstance(stated, FanScale):
        if of_layout is not None or part.survey is not None:
            message = (
                "a fan board has a scale for each side; one layout scale or one line of readings cannot define both, "
                "so give them as parts of their own"
            )
            raise ContradictoryPartError(message, field=(*place, "true_scale"))
        return stated
    if stated is not None and part.made_to == "string_length":
        if part.setback is None:
            message = "a string length gives a true scale only with the setback that is in it; add the setback"
            raise UndefinedPartError(message, field=(*place, "setback"), example="2.5 mm")
        stated -= part.setback
    if stated is not None and of_layout is not None and abs(stated - of_layout) > max(STATED_ALIKE, part.tolerance):
        message = (
            f"the stated true scale is {length_in_words(stated, 0.01)}, and layout scale and rule give "
            f"{length_in_words(of_layout, 0.01)}: they differ by {abs(stated - of_layout):.2f} mm; leave one out, "
            "or mend it"
        )
        raise ContradictoryPartError(
            message, field=(*place, "true_scale"), part=part.id, stated_mm=stated, from_layout_mm=of_layout
        )
    return of_layout if stated is None else stated


def _refuse_short_list(part: Part, place: tuple[str | int, ...]) -> None:
    """Refuse listed pitches that end before a fret that the part is said to have."""
    needed = max(part.frets or 0, part.body_joint_fret or 0, (part.datum_fret or 0) if part.fretted else 0)
    if part.rule is not None and needed:
        with refused_within(place):
            cents(part.rule, needed)


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


def _refuse_other_rule(rule: Rule, place: tuple[str | int, ...], found: Identification) -> None:
    """Refuse a stated rule where the readings establish another one that it was compared with."""
    compared = [fit.rule for fit in found.candidates]
    if found.verdict == "established" and rule in compared and rule not in found.family:
        message = "the stated spacing rule is another than the one the readings establish; mend one of them"
        raise ContradictoryPartError(message, field=(*place, "rule"))
