"""Which rules a board may have been cut by, and what is believed before it is measured."""

from dataclasses import dataclass
from functools import cached_property
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, MOST_FRETS, Listed, Rule

__all__ = [
    "DEFAULT_CANDIDATES",
    "SCATTER_LOWER",
    "SCATTER_SCALE",
    "SCATTER_SHAPE",
    "SCATTER_UPPER",
    "Beliefs",
    "Candidate",
    "FreeDivisor",
]

SCATTER_UPPER = 0.25
"""The most that a tool is believed to scatter. [mm]"""

SCATTER_LOWER = 0.004
"""Below this a scatter makes no difference to anything, and one tool in ten thousand is that good. [mm]"""

SCATTER_SCALE = 0.05027321448959372
"""What a tool is believed to scatter: a logarithmic normal distribution about this, cut off at the upper
bound, so that the median is 0.05 mm and 99 % lie below 0.2 mm: our own choice, no source. [mm]"""

SCATTER_SHAPE = 0.6486538936326911
"""Standard deviation of the logarithm of that distribution before it is cut off. [-]"""


@dataclass(frozen=True, slots=True)
class FreeDivisor:
    """Any constant divisor, equally likely between two bounds."""

    lower: float = 16.5
    """The smallest. [-]"""
    upper: float = 19.5
    """The largest. [-]"""


Spacing: TypeAlias = Rule | FreeDivisor
"""What a candidate may be."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """One rule that a board may have been cut by."""

    rule: Spacing
    """The rule, or a free divisor."""
    prior: float
    """How likely it is before anything is measured, relative to the other candidates. [-]"""


DEFAULT_CANDIDATES = (
    Candidate(EQUAL, 0.45),
    Candidate(EIGHTEENTH, 0.45),
    Candidate(FreeDivisor(), 0.10),
)
"""Equal, the rule of 18, and any other divisor: our own choice, no source."""


@dataclass(frozen=True)
class Beliefs:
    """What is believed before a board is measured, and how sure an answer has to be."""

    candidates: tuple[Candidate, ...] = DEFAULT_CANDIDATES
    """The rules compared, at most one of them a free divisor."""
    scale_lower: float = 50.0
    """The shortest layout scale thought possible; all between the bounds are equally likely. [mm]"""
    scale_upper: float = 3000.0
    """The longest layout scale thought possible. [mm]"""
    threshold: float = 0.95
    """Probability that makes a rule established. [-]"""
    significance: float = 0.001
    """A rule whose residuals are less likely than this explains nothing. [-]"""
    coverage: float = 0.95
    """Probability that a stated interval holds. [-]"""
    misreading: float = 0.02
    """Probability that one of a board's readings is a blunder. [-]"""
    false_alarm: float = 0.008
    """Share of clean boards on which a reading may be named a blunder, if the leading rule is right; as now and then
    it is not, the share in all comes to a little more, and stays below a hundredth. [-]"""

    @property
    def most_frets(self) -> int:
        """The highest fret that all candidates know: listed pitches that do not repeat come to an end."""
        listed = [r for r in self.fixed_rules if isinstance(r, Listed) and not r.repeat]
        return min([MOST_FRETS, *(len(rule.cents) for rule in listed)])

    @cached_property
    def fixed_rules(self) -> tuple[Rule, ...]:
        """The candidates without a free parameter."""
        return tuple(c.rule for c in self.candidates if not isinstance(c.rule, FreeDivisor))

    @cached_property
    def free_divisor(self) -> FreeDivisor:
        """Bounds of the free divisor; those of the default candidates where it is none of them."""
        return next((c.rule for c in self.candidates if isinstance(c.rule, FreeDivisor)), FreeDivisor())

    @property
    def priors(self) -> NDArray[np.float64]:
        """Probabilities of the fixed rules and, last, of a free divisor; they sum to one. shape (C,)"""
        fixed = [c.prior for c in self.candidates if not isinstance(c.rule, FreeDivisor)]
        free = [c.prior for c in self.candidates if isinstance(c.rule, FreeDivisor)]
        weights = np.array([*fixed, free[0] if free else 0.0])
        return weights / np.sum(weights)
