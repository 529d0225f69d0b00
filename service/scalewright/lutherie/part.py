"""Parts: what is said of them, what was measured on them, and what is known of their true scale."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import ContradictoryPartError, UndefinedPartError
from scalewright.lutherie.identification import Beliefs, Identification, identify_all
from scalewright.lutherie.identification.words import length_in_words
from scalewright.lutherie.label import SETBACK, SETBACK_UNCERTAINTY, Label, meanings_of
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.measure import Survey
from scalewright.lutherie.spacing import Rule

__all__ = [
    "STATED_ALIKE",
    "FanScale",
    "Hypothesis",
    "Kind",
    "Known",
    "MadeTo",
    "Part",
    "Side",
    "Source",
    "Travel",
    "identify_parts",
    "known_of",
]

Kind: TypeAlias = Literal["board", "neck_blank", "bridge", "saddle_template"]
"""A board carries frets, and so does a neck blank that is cut for them; a bridge and a template carry a saddle line."""

MadeTo: TypeAlias = Literal["true_scale", "string_length"]
"""What a stated length ends at: the end of the true scale, or the string's break point, setback included."""

Side: TypeAlias = Literal["whole", "bass", "treble"]
"""Which string line a length is along."""

Source: TypeAlias = Literal["readings", "definition", "label"]
"""What a part's true scale is known from."""

STATED_ALIKE = 0.1
"""Two stated scales that differ by less than this are the same but for rounding. [mm]"""

_CONTRADICTED = 3.0
"""Standard deviations beyond which readings contradict a stated scale. [-]"""


@dataclass(frozen=True, slots=True)
class FanScale:
    """True scales of a fan board along its two outer strings."""

    bass: float
    """Along the lowest string. [mm]"""
    treble: float
    """Along the highest string. [mm]"""


@dataclass(frozen=True, slots=True)
class Travel:
    """How far the break point can be moved from where the part puts it: a slot's room, or a saddle's screws."""

    towards_nut: float
    """[mm]"""
    away_from_nut: float
    """[mm]"""


@dataclass(frozen=True, slots=True)
class Part:
    """A part as it is described; one or more of scale, label and readings define it."""

    id: str
    """The caller's name for it."""
    kind: Kind
    """What it is."""
    true_scale: float | FanScale | None = None
    """Stated true scale, or string length; see :attr:`made_to`. [mm]"""
    layout_scale: float | None = None
    """Stated layout scale; together with a rule. [mm]"""
    rule: Rule | None = None
    """Stated spacing rule."""
    label: Label | None = None
    """Its label."""
    survey: Survey | None = None
    """What was measured on it."""
    tolerance: float = 0.0
    """How far its true scale may be from what is stated: half the width of a rectangular distribution. [mm]"""
    made_to: MadeTo = "true_scale"
    """What its stated true scale ends at."""
    setback: float | None = None
    """Setback that is in its string length. [mm]"""
    datum: Literal["nut", "fret"] = "nut"
    """What it is placed from."""
    datum_fret: int | None = None
    """The fret that it is placed from."""
    frets: int | None = None
    """Number of frets."""
    body_joint_fret: int | None = None
    """Fret at which the neck meets the body."""
    travel: Travel | None = None
    """How far its saddle can be moved."""

    @property
    def fretted(self) -> bool:
        """Whether it carries frets."""
        return self.kind in {"board", "neck_blank"}


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

    @property
    def true_scale(self) -> float:
        """Expected true scale; not a number where it cannot be told. [mm]"""
        if not self.hypotheses:
            return math.nan
        return sum(one.probability * one.true_scale for one in self.hypotheses)

    @property
    def deviation(self) -> float:
        """Standard deviation of the true scale. [mm]"""
        mean = self.true_scale
        square = sum(
            one.probability * (one.deviation**2 + (one.true_scale - mean) ** 2) for one in self.hypotheses
        )
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
    stated = _stated(part, place)
    if isinstance(stated, FanScale):
        spread = part.tolerance / math.sqrt(3.0)
        sides: tuple[tuple[Side, float], ...] = (("bass", stated.bass), ("treble", stated.treble))
        return {
            side: Known(part, "definition", (Hypothesis(1.0, part.rule, length, spread),)) for side, length in sides
        }
    if identification is not None:
        hypotheses = _measured(identification)
        measured = Known(part, "readings", hypotheses, identification)
        if stated is not None and hypotheses:
            _refuse_contradiction(part, place, stated, measured)
        return {"whole": measured}
    if stated is not None:
        one = Hypothesis(1.0, part.rule, stated, part.tolerance / math.sqrt(3.0))
        return {"whole": Known(part, "definition", (one,))}
    assert part.label is not None  # noqa: S101  (_stated has refused a part that nothing defines)
    given = (SETBACK, SETBACK_UNCERTAINTY) if part.setback is None else (part.setback, 0.0)
    meanings = meanings_of(part.label, *given)
    total = sum(meaning.prior for meaning in meanings)
    return {
        "whole": Known(
            part,
            "label",
            tuple(
                Hypothesis(meaning.prior / total, meaning.rule, meaning.true_scale, meaning.deviation)
                for meaning in meanings
            ),
        )
    }


def _measured(identification: Identification) -> tuple[Hypothesis, ...]:
    """Possibilities that readings leave, the likeliest first."""
    if identification.verdict == "none":
        octave = identification.true_scale
        return () if octave is None else (Hypothesis(1.0, None, octave.value, octave.standard_uncertainty),)
    found = []
    for fit in identification.candidates:
        if fit.true_scale is None:
            continue
        nut, spread = (0.0, 0.0) if fit.nut_offset is None else (fit.nut_offset.value, fit.nut_offset.standard_uncertainty)
        scale = fit.true_scale
        found.append(Hypothesis(fit.probability, fit.rule, scale.value, scale.standard_uncertainty, nut, spread))
    total = sum(one.probability for one in found)
    return tuple(
        Hypothesis(one.probability / total, one.rule, one.true_scale, one.deviation, one.nut_offset, one.nut_deviation)
        for one in found
    )


def _stated(part: Part, place: tuple[str | int, ...]) -> float | FanScale | None:
    """True scale that is stated, after a look whether it is stated twice. [mm]"""
    if part.true_scale is None and part.layout_scale is None and part.label is None and part.survey is None:
        message = "nothing says what this part's scale is; give its true_scale, layout_scale and rule, label or readings"
        raise UndefinedPartError(message, field=place, example={"true_scale": "25.4 in"})
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


def _refuse_contradiction(part: Part, place: tuple[str | int, ...], stated: float, measured: Known) -> None:
    """Refuse a stated scale that the readings contradict under every rule that they leave."""
    allowed = max(STATED_ALIKE, part.tolerance)
    rules = [one for one in measured.hypotheses if one.probability > 0.01]
    off = min(
        max(abs(stated - one.true_scale) - allowed, 0.0) / max(one.deviation, 1e-9) for one in rules
    )
    if off > _CONTRADICTED:
        value, spread = measured.true_scale, measured.deviation
        message = (
            f"the stated scale gives a true scale of {length_in_words(stated, 0.01)}, and the readings give "
            f"{length_in_words(value, spread)} with a standard uncertainty of {spread:.2f} mm: they differ by "
            f"{abs(stated - value):.2f} mm; measure again, or leave out what is wrong"
        )
        field = "true_scale" if part.true_scale is not None else "layout_scale"
        raise ContradictoryPartError(
            message, field=(*place, field), part=part.id, stated_mm=stated, measured_mm=value
        )
    if part.rule is not None and part.layout_scale is not None:
        _refuse_other_rule(part, place, measured)


def _refuse_other_rule(part: Part, place: tuple[str | int, ...], measured: Known) -> None:
    """Refuse a stated rule that the readings rule out."""
    found = measured.identification
    rule = part.rule
    if found is None or found.verdict != "established" or rule is None or rule in found.family:
        return
    if rule in [fit.rule for fit in found.candidates] and spacing.octave_fret(rule) is not None:
        message = "the stated spacing rule is another than the one the readings establish; mend one of them"
        raise ContradictoryPartError(message, field=(*place, "rule"), part=part.id)
