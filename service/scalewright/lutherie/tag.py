"""Tags: what a printed label states of one part, its true scale before all."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from scalewright.lutherie.errors import LutherieError, OutsideScaleError, UndefinedPartError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.identification import Beliefs, Identification
from scalewright.lutherie.identification.words import length_in_words
from scalewright.lutherie.known import Known, identify_parts, known_of
from scalewright.lutherie.label import Label
from scalewright.lutherie.layout import layout_scale_of
from scalewright.lutherie.part import FanScale, Kind, Part, Source
from scalewright.lutherie.spacing import Rule
from scalewright.lutherie.stated import STATED_ALIKE

__all__ = ["LabelNames", "Tag", "TagUnit", "named_by", "notes_on", "tag_of", "tags_of"]

_POSSIBLE = 0.01
"""A meaning less likely than this need not be counted with. [-]"""

_AT_ITS_WORD = 0.3
"""How far a length may be from a label that names it: about an 80th of an inch; common practice, no source. [mm]"""

LabelNames: TypeAlias = Literal["true_scale", "layout_scale", "neither"]
"""Which length the number on a label is, if either."""

TagUnit: TypeAlias = Literal["mm", "in"]
"""Units that a tag's lengths are written in."""


@dataclass(frozen=True, slots=True)
class Tag:
    """What a label states of a part."""

    id: str
    """The caller's name for the part: its stock number."""
    kind: Kind
    """What it is."""
    true_scale: float
    """Its true scale; of a fan board that along the lowest string. [mm]"""
    uncertainty: float | None
    """Standard uncertainty of that (k = 1); None where it is taken at its word. [mm]"""
    rule: Rule | None
    """Its spacing rule, where that is established."""
    layout_scale: float | None
    """The length that the rule was applied to, where that is established. [mm]"""
    written_in: TagUnit
    """Unit that the lengths are written in."""
    treble_scale: float | None = None
    """Of a fan board the true scale along the highest string, by the same rule. [mm]"""
    treble_layout: float | None = None
    """The length that the rule was applied to there. [mm]"""
    square_fret: int | None = None
    """The fret of a fan board that is square to the centre line, where that is stated; 0 for the nut."""

    @property
    def part(self) -> Part:
        """The part as an assembly takes it; its tolerance is as uncertain as the tag says. [mm]"""
        fan = self.treble_scale is not None
        return Part(
            id=self.id,
            kind=self.kind,
            true_scale=self.true_scale if self.treble_scale is None else FanScale(self.true_scale, self.treble_scale),
            layout_scale=None if fan else self.layout_scale,  # a part has one; the rule gives those of both sides
            square_fret=self.square_fret,
            rule=self.rule,
            # A rectangular distribution of this half width has the uncertainty for its standard deviation.
            tolerance=math.sqrt(3.0) * (self.uncertainty or 0.0),
        )


def tag_of(part: Part, unit: TagUnit, beliefs: Beliefs) -> tuple[Tag, Source]:
    """What a label may state of a part.

    Parameters
    ----------
    part : Part
        As it is described.
    unit : {"mm", "in"}
        Unit that lengths are to be written in.
    beliefs : Beliefs
        What identification reckons with.

    Returns
    -------
    tag : Tag
        Rule and layout scale only where they are established or stated.
    source : {"readings", "definition", "label"}
        What the true scale is known from.

    Raises
    ------
    UndefinedPartError
        Nothing tells the part's true scale.
    ContradictoryPartError
        The part is defined twice, and the two differ.
    """
    (answer,) = tags_of([(part, unit, beliefs)])
    if isinstance(answer, LutherieError):
        raise answer
    return answer


def tags_of(wanted: Sequence[tuple[Part, TagUnit, Beliefs]]) -> list[tuple[Tag, Source] | LutherieError]:
    """What the labels of many parts may state; readings of all are worked out together.

    Parameters
    ----------
    wanted : sequence of tuple
        For each label what :func:`tag_of` takes.

    Returns
    -------
    list of tuple or LutherieError
        In the same order; a refusal stands where :func:`tag_of` would raise it, and spoils no other.
    """
    by_beliefs: dict[Beliefs, list[int]] = {}
    for index, (_, _, beliefs) in enumerate(wanted):
        by_beliefs.setdefault(beliefs, []).append(index)
    answers: dict[int, tuple[Tag, Source] | LutherieError] = {}
    for beliefs, members in by_beliefs.items():
        found = identify_parts([wanted[member][0] for member in members], beliefs)
        for member, identification in zip(members, found, strict=True):
            part, unit, _ = wanted[member]
            try:
                answers[member] = _tag(part, unit, identification)
            except LutherieError as refusal:
                answers[member] = refusal
    return [answers[index] for index in range(len(wanted))]


def _tag(part: Part, unit: TagUnit, found: Identification | None) -> tuple[Tag, Source]:
    """What a label may state of a part whose readings say so much."""
    lines = known_of(part, found)
    if "whole" not in lines:
        return _fan_tag(part, lines["bass"], lines["treble"], unit), "definition"
    known = lines["whole"]
    if not known.hypotheses:
        message = "these readings do not tell the true scale; measure from the nut to fret 12 as well"
        raise UndefinedPartError(message, field=("part", "readings"))
    if known.source == "label":
        _refuse_several_meanings(known)
    value, spread, rule, layout = _stated(known)
    tag = Tag(
        id=part.id,
        kind=part.kind,
        true_scale=value,
        uncertainty=spread or None,
        rule=rule,
        layout_scale=layout,
        written_in=unit,
    )
    return tag, known.source


def _fan_tag(part: Part, bass: Known, treble: Known, unit: TagUnit) -> Tag:
    """Tag of a board with a scale for each side."""
    return Tag(
        id=part.id,
        kind=part.kind,
        true_scale=bass.true_scale,
        uncertainty=bass.deviation or None,
        rule=part.rule,
        layout_scale=_layout_scale(part.rule, bass.true_scale),
        written_in=unit,
        treble_scale=treble.true_scale,
        treble_layout=_layout_scale(part.rule, treble.true_scale),
        square_fret=part.square_fret,
    )


def _refuse_several_meanings(known: Known) -> None:
    """Refuse a part of which there is a label alone that can mean true scales that differ: no mean of them is one."""
    possible = sorted({one.true_scale for one in known.hypotheses if one.probability > _POSSIBLE})
    if possible[-1] - possible[0] > STATED_ALIKE:
        message = (
            f"this label can mean true scales from {possible[0]:.2f} to {possible[-1]:.2f} mm, and none of them is "
            "known to be right; state the part's true_scale, or its layout_scale and rule, or give readings of it"
        )
        raise UndefinedPartError(message, field=("part", "label"), example={"true_scale": "25.4 in"})


def _stated(known: Known) -> tuple[float, float, Rule | None, float | None]:
    """True scale, its uncertainty, rule and layout scale. [mm]"""
    part, found = known.part, known.identification
    if found is not None and found.true_scale is not None:
        layout = None if found.layout_scale is None else found.layout_scale.value
        rule = found.rule if layout is not None else None
        return found.true_scale.value, found.true_scale.standard_uncertainty, rule, layout
    layout = part.layout_scale
    if layout is None:
        layout = _layout_scale(part.rule, known.true_scale)
    return known.true_scale, known.deviation, part.rule, layout


def _layout_scale(rule: Rule | None, true_scale: float) -> float | None:
    """Length that a rule was applied to; None where there is none, or no octave to tell it from. [mm]"""
    if rule is None:
        return None
    try:
        return layout_scale_of(rule, true_scale, "true")
    except OutsideScaleError:
        return None


def named_by(label: Label, tag: Tag, setback: float = 0.0) -> tuple[LabelNames, float]:
    """Which length of a part its old label names; of a fan board's two sides that of the nearer.

    Parameters
    ----------
    label : Label
        As it is written.
    tag : Tag
        What is known of the part.
    setback : float
        That is in the label, where it is a string length. [mm]

    Returns
    -------
    names : {"true_scale", "layout_scale", "neither"}
        Within its last digit, a label's usual care and twice the uncertainty.
    excess : float
        Label minus true scale. [mm]
    """
    true_scale, layout_scale = tag.true_scale, tag.layout_scale
    treble, length = tag.treble_scale, label.length - setback
    if treble is not None and abs(length - treble) < abs(length - true_scale):
        true_scale, layout_scale = treble, tag.treble_layout
    near = max(min(0.5 * label.grain, _AT_ITS_WORD), 2.0 * (tag.uncertainty or 0.0))
    names: LabelNames = "neither"
    if abs(length - true_scale) <= near:
        names = "true_scale"
    elif layout_scale is not None and abs(length - layout_scale) <= near:
        names = "layout_scale"
    return names, label.length - true_scale


def notes_on(part: Part, tag: Tag, source: Source) -> list[Note]:
    """Cautions that come with what a label states.

    Parameters
    ----------
    part : Part
        As it is described.
    tag : Tag
        What the label states of it.
    source : {"readings", "definition", "label"}
        What that is known from.

    Returns
    -------
    list of Note
        One where the part has an old label that names neither its true scale nor its layout scale.
    """
    setback = part.setback or 0.0 if part.made_to == "string_length" else 0.0
    if part.label is None or source == "label" or named_by(part.label, tag, setback)[0] != "neither":
        return []
    text = (
        f"The label of {part.id} so far says {length_in_words(part.label.length, 0.05)}, which is neither its true "
        "scale nor its layout scale; the new one does not show it."
    )
    return [Note("label-is-not-true-scale", text)]
