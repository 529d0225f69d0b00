"""Labels: a nominal scale as it stands on a part, and what its number can mean."""

import math
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from scalewright.lutherie.errors import UnplaceableLabelError
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Rule

__all__ = [
    "LONGEST_SCALE",
    "MADE_TO",
    "SETBACK",
    "SETBACK_UNCERTAINTY",
    "SHORTEST_SCALE",
    "Label",
    "LabelUnit",
    "Meaning",
    "MeaningName",
    "label_without_unit",
    "meanings_of",
]

SHORTEST_SCALE, LONGEST_SCALE = 250.0, 1300.0
"""Scales of fretted instruments, for a label that names no unit: common practice, no source. [mm]"""

MADE_TO = 0.2
"""Standard deviation of a board's true scale about what it was made to: common practice, no source. [mm]"""

SETBACK, SETBACK_UNCERTAINTY = 2.5, 1.0
"""Setback that a string length includes, where it was not given, and its standard uncertainty: common practice,
no source. [mm]"""

_INCH = 25.4

LabelUnit: TypeAlias = Literal["in", "mm", "cm"]
"""Units that labels are written in."""

MeaningName: TypeAlias = Literal["exact", "rounded", "rounded_up", "string_length", "converted", "other"]
"""What was done to a length to make a label of it."""

_PRIORS: dict[tuple[MeaningName, Rule], float] = {
    ("exact", EQUAL): 0.34,
    ("exact", EIGHTEENTH): 0.34,
    ("rounded", EQUAL): 0.06,
    ("rounded", EIGHTEENTH): 0.06,
    ("rounded_up", EQUAL): 0.04,
    ("rounded_up", EIGHTEENTH): 0.01,
    ("string_length", EQUAL): 0.04,
    ("string_length", EIGHTEENTH): 0.01,
    ("converted", EQUAL): 0.04,
    ("converted", EIGHTEENTH): 0.04,
}
"""How likely each meaning is before anything is measured; what is left over is for any other. A convention."""

_ROUND_INCHES = (8, 10)
"""Inch scales are made to whole numbers of these parts of an inch: common practice, no source."""

_ROUND_MILLIMETRES = 5.0
"""Metric scales are made to whole numbers of these: common practice, no source. [mm]"""

_MOST_CONVERTED = 4


@dataclass(frozen=True, slots=True)
class Label:
    """A nominal scale as it is written."""

    length: float
    """The number, taken at its word. [mm]"""
    unit: LabelUnit
    """The unit it is written in."""
    grain: float
    """The smallest step that numbers written like this one have: 0.1 in for 25.4 in, 1/4 in for 24 3/4 in. [mm]"""
    unit_given: bool = True
    """Whether the label names its unit."""
    text: str = field(default="", compare=False)
    """Its letters, as they were given; empty where only its number is known."""


@dataclass(frozen=True, slots=True)
class Meaning:
    """One thing that a label can mean: the label's number before it was rounded, and the rule laid out from it."""

    name: MeaningName
    """What was done to the length."""
    rule: Rule | None
    """Spacing rule; None for any other meaning."""
    basis: Literal["layout_scale", "true_scale", "string_length"] | None
    """Which length the label names."""
    lower: float
    """Smallest true scale that it stands for. [mm]"""
    upper: float
    """Largest true scale that it stands for. [mm]"""
    spread: float
    """Standard deviation of a board's true scale about that. [mm]"""
    prior: float
    """How likely it is before anything is measured. [-]"""
    explanation: str
    """What it would mean, in words."""

    @property
    def true_scale(self) -> float:
        """Middle of the true scales it stands for. [mm]"""
        return 0.5 * (self.lower + self.upper)

    @property
    def layout_scale(self) -> float | None:
        """Length that the rule was applied to; None without a rule. [mm]"""
        return None if self.rule is None else self.true_scale / _true_share(self.rule)

    @property
    def deviation(self) -> float:
        """Standard deviation of the true scale under this meaning. [mm]"""
        return math.sqrt(self.spread**2 + (self.upper - self.lower) ** 2 / 12.0)

    @property
    def octave_distance(self) -> float:
        """Distance from the nut to the octave fret to look for: half the true scale. [mm]"""
        return 0.5 * self.true_scale


def label_without_unit(number: float, grains: tuple[float, float]) -> Label:
    """A label that names no unit, in the unit that its number fits.

    Parameters
    ----------
    number : float
        As it is written.
    grains : tuple of float
        Step of numbers written so if it is inches, and if it is millimetres, in the unit itself.

    Returns
    -------
    Label
        In inches or millimetres; no number fits both.

    Raises
    ------
    UnplaceableLabelError
        A number that is no scale in either.
    """
    units: tuple[tuple[LabelUnit, float, float], ...] = (("in", _INCH, grains[0]), ("mm", 1.0, grains[1]))
    for unit, millimetres, grain in units:
        if SHORTEST_SCALE <= number * millimetres <= LONGEST_SCALE:
            return Label(number * millimetres, unit, grain * millimetres, unit_given=False)
    message = (
        f"a label without a unit is read as inches from {SHORTEST_SCALE / _INCH:.3g} to {LONGEST_SCALE / _INCH:.3g} or "
        f"as millimetres from {SHORTEST_SCALE:g} to {LONGEST_SCALE:g}, and this number is neither; write its unit"
    )
    raise UnplaceableLabelError(message, field=("label",), example="24.75 in")


def meanings_of(
    label: Label, setback: float = SETBACK, setback_uncertainty: float = SETBACK_UNCERTAINTY
) -> list[Meaning]:
    """All that a label can mean, the likeliest first.

    Parameters
    ----------
    label : Label
        As written.
    setback, setback_uncertainty : float
        Setback that a string length includes, and its standard uncertainty. [mm]

    Returns
    -------
    list of Meaning
        Their priors sum to less than one; the rest is for any other meaning.
    """
    half = 0.5 * label.grain
    found = []
    for rule, words in ((EQUAL, "equal spacing"), (EIGHTEENTH, "the rule of 18")):
        share = _true_share(rule)
        basis: Literal["layout_scale", "true_scale"] = "true_scale" if rule == EQUAL else "layout_scale"
        said = "the true scale" if rule == EQUAL else "the layout scale"

        def add(name: MeaningName, low: float, high: float, text: str, *, rule: Rule = rule, factor: float = share,
                basis: Literal["layout_scale", "true_scale", "string_length"] = basis, spread: float = MADE_TO,
                prior: float = 1.0) -> None:  # fmt: skip
            weight = prior * _PRIORS[name, rule]
            found.append(Meaning(name, rule, basis, low * factor, high * factor, spread, weight, text))

        at = label.length
        add("exact", at, at, f"the label is {said} under {words}")
        add("rounded", at - half, at + half, f"the label is {said} under {words}, rounded to the nearest")
        add(
            "rounded_up", at - label.grain, at,
            f"the label is the true scale under {words}, rounded up in favour of compensation",
            factor=1.0, basis="true_scale",
        )  # fmt: skip
        add(
            "string_length", at - setback, at - setback,
            f"the label is the string length under {words}, with the saddle's setback in it",
            factor=1.0, basis="string_length", spread=math.hypot(MADE_TO, setback_uncertainty),
        )  # fmt: skip
        others = _before_conversion(label)
        for length, name in others:
            text = f"the label is {said} under {words}, made to {name} and converted"
            add("converted", length, length, text, prior=1.0 / len(others))
    return sorted(found, key=lambda meaning: -meaning.prior)


def _true_share(rule: Rule) -> float:
    """True scale of a board with a layout scale of 1; both rules here have an octave fret."""
    share = true_scale_of(rule, 1.0)
    return 1.0 if share is None else share


def _before_conversion(label: Label) -> list[tuple[float, str]]:
    """Round lengths of the other system that a label may have been converted from, with their names. [mm]"""
    low, high = label.length - 0.5 * label.grain, label.length + 0.5 * label.grain
    found: dict[float, str] = {}
    if label.unit == "in":
        for count in range(math.ceil(low / _ROUND_MILLIMETRES), math.floor(high / _ROUND_MILLIMETRES) + 1):
            found[count * _ROUND_MILLIMETRES] = f"{count * _ROUND_MILLIMETRES:g} mm"
    else:
        for parts in _ROUND_INCHES:
            for count in range(math.ceil(low * parts / _INCH), math.floor(high * parts / _INCH) + 1):
                found[count * _INCH / parts] = f"{count / parts:g} in"
    near = sorted(found.items(), key=lambda item: abs(item[0] - label.length))
    return near[:_MOST_CONVERTED]
