"""Weighing: what readings leave of the meanings of a label."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Estimate, Floats, mixture_interval, normal_survival
from scalewright.lutherie.identification import Beliefs, CandidateFit, FreeDivisor, Identification
from scalewright.lutherie.label import Meaning
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Rule

__all__ = ["Component", "WeighedMeaning", "combined", "components_of", "evidence_of"]

_REACH = 12.0
"""Standard deviations beyond which nothing of a distribution is left."""

_STEPS = 161

_NEGLIGIBLE = 1e-9
"""A meaning less probable than this adds nothing to be seen."""


@dataclass(frozen=True, slots=True)
class WeighedMeaning:
    """One meaning of a label, and how it stands after the readings."""

    meaning: Meaning
    """The meaning."""
    probability: float
    """Its probability after the readings; before any, how likely it is. [-]"""
    survives: bool
    """Whether its probability is at least one minus the threshold; before any reading all stand."""

    @property
    def name(self) -> str:
        """What was done to the length to make a label of it."""
        return self.meaning.name

    @property
    def rule(self) -> Rule | None:
        """Spacing rule; None for any other meaning."""
        return self.meaning.rule

    @property
    def basis(self) -> str | None:
        """Which length the label names."""
        return self.meaning.basis

    @property
    def explanation(self) -> str:
        """What it would mean, in words."""
        return self.meaning.explanation

    @property
    def layout_scale(self) -> float | None:
        """Length that the rule was applied to. [mm]"""
        return self.meaning.layout_scale

    @property
    def true_scale(self) -> float | None:
        """True scale that it stands for, or the middle of the interval. [mm]"""
        return None if self.rule is None else self.meaning.true_scale

    @property
    def lower(self) -> float | None:
        """Smallest true scale that it stands for. [mm]"""
        return None if self.rule is None else self.meaning.lower

    @property
    def upper(self) -> float | None:
        """Largest true scale that it stands for. [mm]"""
        return None if self.rule is None else self.meaning.upper

    @property
    def octave_distance(self) -> float | None:
        """Distance from the nut to fret 12 to look for. [mm]"""
        return None if self.rule is None else self.meaning.octave_distance


@dataclass(frozen=True, slots=True)
class Component:
    """What the readings say of the true scale under one rule."""

    rule: Rule
    """The rule."""
    evidence: float
    """Evidence of the rule, relative to that of all candidates together. [-]"""
    mean: float
    """Expected true scale. [mm]"""
    deviation: float
    """Its standard deviation. [mm]"""


def components_of(measured: Identification, beliefs: Beliefs) -> list[Component]:
    """What readings say under the two main rules.

    Parameters
    ----------
    measured : Identification
        Of the board.
    beliefs : Beliefs
        With which it was identified.

    Returns
    -------
    list of Component
        Under either rule the octave reading alone where no rule explains the readings; nothing where they do not
        tell the true scale.
    """
    if measured.verdict == "none":
        if measured.true_scale is None:
            return []
        octave = measured.true_scale
        return [Component(rule, 1.0, octave.value, octave.standard_uncertainty) for rule in (EQUAL, EIGHTEENTH)]
    return [
        Component(fit.rule, fit.probability / prior, fit.true_scale.value, fit.true_scale.standard_uncertainty)
        for fit in measured.candidates
        if (prior := _prior_of(fit, beliefs)) is not None and fit.true_scale is not None
    ]


def _prior_of(fit: CandidateFit, beliefs: Beliefs) -> float | None:
    """Prior of a fixed rule among the candidates; None for a free divisor."""
    total = sum(candidate.prior for candidate in beliefs.candidates)
    for candidate in beliefs.candidates:
        if not isinstance(candidate.rule, FreeDivisor) and candidate.rule == fit.rule:
            return candidate.prior / total
    return None


def evidence_of(meaning: Meaning, components: Sequence[Component]) -> float:
    """Density that the readings give to a meaning, times the evidence of its rule.

    Parameters
    ----------
    meaning : Meaning
        Of the label.
    components : sequence of Component
        What the readings say.

    Returns
    -------
    float
        1 without readings. [1/mm]
    """
    if not components:
        return 1.0
    return sum(part.evidence * _density(meaning, part) for part in components if part.rule == meaning.rule)


def _density(meaning: Meaning, part: Component) -> float:
    """Overlap of what a meaning says of the true scale with what the readings say. [1/mm]"""
    # Bounds of a layout scale are as uncertain as the true scale in them, so one spread serves both.
    spread = math.hypot(part.deviation, meaning.spread)
    if meaning.upper == meaning.lower:
        z = (part.mean - meaning.lower) / spread
        return math.exp(-0.5 * z * z) / (spread * math.sqrt(2.0 * math.pi))
    ends = (np.array([meaning.lower, meaning.upper]) - part.mean) / spread
    above = normal_survival(ends)
    return float(above[0] - above[1]) / (meaning.upper - meaning.lower)


def combined(weighed: Sequence[WeighedMeaning], components: Sequence[Component], coverage: float) -> Estimate:
    """True scale by label and readings together, over all meanings.

    Parameters
    ----------
    weighed : sequence of WeighedMeaning
        With their probabilities.
    components : sequence of Component
        What the readings say.
    coverage : float
        Probability that the interval holds.

    Returns
    -------
    Estimate
        [mm]
    """
    parts = []
    for one in weighed:
        if one.probability < _NEGLIGIBLE:
            continue
        for part in components:
            if one.rule is None:
                share = part.evidence / sum(other.evidence for other in components)
                parts.append((one.probability * share, part.mean, part.deviation))
            elif part.rule == one.rule:
                parts.append((one.probability, *_moments(one.meaning, part)))
    table = np.array(parts).T
    weight = table[0] / np.sum(table[0])
    value = float(np.sum(weight * table[1]))
    deviation = math.sqrt(float(np.sum(weight * (table[2] ** 2 + (table[1] - value) ** 2))))
    low, high = mixture_interval(weight, table[1], table[2], coverage).tolist()
    return Estimate(value, deviation, low, high)


def _moments(meaning: Meaning, part: Component) -> tuple[float, float]:
    """Mean and standard deviation of the true scale under a meaning, given the readings."""
    if meaning.upper == meaning.lower:
        own, read = meaning.spread**-2, part.deviation**-2
        return (own * meaning.lower + read * part.mean) / (own + read), math.sqrt(1.0 / (own + read))
    low = max(meaning.lower - _REACH * meaning.spread, part.mean - _REACH * part.deviation)
    high = min(meaning.upper + _REACH * meaning.spread, part.mean + _REACH * part.deviation)
    at = np.linspace(low, high, _STEPS)
    density: Floats = normal_survival((meaning.lower - at) / meaning.spread) - normal_survival(
        (meaning.upper - at) / meaning.spread
    )
    density = density * np.exp(-0.5 * ((at - part.mean) / part.deviation) ** 2)
    density /= np.sum(density)
    mean = float(np.sum(density * at))
    return mean, math.sqrt(float(np.sum(density * (at - mean) ** 2)))
