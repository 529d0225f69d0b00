"""What is asked of boards, made ready: where they were read, what is believed of them, and all that follows from both.

Nothing here depends on the values read, so that it serves any number of boards.
"""

import itertools
import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from scalewright.lutherie import spacing
from scalewright.lutherie.estimate import ChiSquareTail, Floats, chi_square_quantile
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import (
    SCATTER_LOWER,
    SCATTER_SCALE,
    SCATTER_SHAPE,
    SCATTER_UPPER,
    Beliefs,
)
from scalewright.lutherie.identification.plan import Ints, Pattern, Plan, make_plan, rule_table
from scalewright.lutherie.spacing import Listed, Rule

__all__ = ["Inquiry", "inquire", "scatter_nodes"]

_SCATTER_NODES = 11

_SHOP_SCALE, _SHOP_FRETS, _CLOSE = 650.0, 24, 0.1
"""Rules are of one family only if on such a board [mm] with so many frets they come this close [mm]."""


@lru_cache(maxsize=1)
def scatter_nodes() -> tuple[Floats, Floats]:
    """Scatter of an unknown tool as a few values with weights, the last the upper bound with weight zero.

    Returns
    -------
    scatter, weight : ndarray, shape (T,)
        Gauss and Legendre's abscissae in the logarithm, with the density of the prior. [mm], [-]
    """
    at, weight = np.polynomial.legendre.leggauss(_SCATTER_NODES)
    low, high = math.log(SCATTER_LOWER), math.log(SCATTER_UPPER)
    logarithm = 0.5 * (high + low) + 0.5 * (high - low) * at
    weight = weight * np.exp(-0.5 * ((logarithm - math.log(SCATTER_SCALE)) / SCATTER_SHAPE) ** 2)
    return np.append(np.exp(logarithm), SCATTER_UPPER), np.append(weight / np.sum(weight), 0.0)


@dataclass(frozen=True, slots=True)
class Inquiry:
    """A question about boards of P patterns with N readings each.

    C candidates, the F = C - 1 fixed rules first, then a free divisor; T values of the tool's scatter, one if it
    was given.
    """

    pattern: Pattern
    """Where and how surely the readings are taken."""
    beliefs: Beliefs
    """Candidates, priors and thresholds."""
    scatters: int
    """T, how many values of the tool's scatter are integrated over."""
    plan: Plan
    """Of T x P patterns."""
    log_prior: Floats
    """Logarithm of the prior of candidate and scatter. shape (C, T, 1, 1)"""
    degrees_of_freedom: Ints
    """Of every candidate. shape (C, P)"""
    tail: ChiSquareTail
    """For as many degrees of freedom, and for one where there is none. shape (C, P, 1)"""
    limit: Floats
    """Chi-square that a candidate's residuals may not exceed; infinite without degrees of freedom. shape (C, P, 1)"""
    apart: list[tuple[int, int, Floats]]
    """Fixed rules whose frets come close in a shop, and how far apart the readings of a board of unit amplitude put
    them. each of shape (P, 1)"""
    true_scale: Floats
    """True scale of the fixed rules for a layout scale of one; NaN without an octave fret. shape (F, 1, 1, 1)"""
    span: Floats
    """Share of the layout scale that every reading spans by the fixed rules. shape (F, P, N, 1)"""
    from_nut: Floats
    """1 for a reading from the nut, 0 for any other. shape (P, N, 1)"""
    bounds: tuple[float, float]
    """Lowest and highest position of a free divisor on the series' axis."""


def inquire(pattern: Pattern, beliefs: Beliefs, *, scatter_known: bool) -> Inquiry:
    """Make ready what is asked of boards that are read in given ways.

    Parameters
    ----------
    pattern : Pattern
        P patterns of N readings.
    beliefs : Beliefs
        Candidates, priors and thresholds.
    scatter_known : bool
        Whether the pattern's scatter was given; otherwise it is integrated over its prior.

    Returns
    -------
    Inquiry
        For any number of boards of each pattern.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the highest fret read and do not repeat.
    """
    scatter, share = pattern.scatter[None, :], np.ones(1)
    if not scatter_known:
        nodes, share = scatter_nodes()
        scatter = np.repeat(nodes[:, None], len(pattern.start), axis=1)
    rules, free = beliefs.fixed_rules, beliefs.free_divisor
    table = rule_table(rules, int(pattern.end.max()))
    plan = make_plan(_repeat(pattern, scatter), table)
    patterns = len(pattern.start)
    with np.errstate(divide="ignore"):
        log_prior = np.log(beliefs.priors)[:, None, None, None] + np.log(share)[:, None, None]
    # Where the readings say nothing of the divisor, it takes nothing from their freedom.
    parameters = np.ones((len(log_prior), patterns), dtype=np.int64)
    parameters[-1] += plan.bends[:patterns]
    freedom = plan.readings[:patterns] - parameters
    limit = [_limit(beliefs.significance, k) for k in freedom.ravel().tolist()]
    shapes = plan.shapes[:patterns]
    return Inquiry(
        pattern=pattern,
        beliefs=beliefs,
        scatters=len(share),
        plan=plan,
        log_prior=log_prior,
        degrees_of_freedom=freedom,
        tail=ChiSquareTail(np.maximum(freedom, 1)[..., None]),
        limit=np.array(limit).reshape(*freedom.shape, 1),
        apart=[
            (one, other, np.linalg.norm(shapes[:, one] - shapes[:, other], axis=1)[:, None])
            for one, other in _close_pairs(rules)
        ],
        true_scale=np.array([_true_scale(rule) for rule in rules]).reshape(-1, 1, 1, 1),
        span=(table[pattern.end] - table[pattern.start]).transpose(2, 0, 1)[..., None],
        from_nut=(pattern.start == 0).astype(float)[..., None],
        bounds=(curve.position_of(free.upper), curve.position_of(free.lower)),
    )


def _repeat(pattern: Pattern, scatter: Floats) -> Pattern:
    """The pattern once for every scatter. scatter has the shape (T, P)."""
    times = (len(scatter), 1)
    return Pattern(
        start=np.tile(pattern.start, times),
        end=np.tile(pattern.end, times),
        used=np.tile(pattern.used, times),
        variance=np.tile(pattern.variance, times),
        edge=np.tile(pattern.edge, times),
        scatter=scatter.ravel(),
        nut_deviation=pattern.nut_deviation,
        zero_fret=pattern.zero_fret,
    )


def _limit(significance: float, freedom: int) -> float:
    """Chi-square that residuals may not exceed; with no freedom there are none to judge by."""
    return chi_square_quantile(significance, freedom) if freedom > 0 else math.inf


def _true_scale(rule: Rule) -> float:
    """True scale for a layout scale of one, NaN without an octave fret. [-]"""
    half = spacing.octave_fraction(rule)
    return math.nan if half is None else 2.0 * half


@lru_cache(maxsize=64)
def _close_pairs(rules: tuple[Rule, ...]) -> list[tuple[int, int]]:
    """Pairs of rules whose frets fall within a tenth of a millimetre when scale and nut are fitted."""
    pairs = []
    for one, other in itertools.combinations(range(len(rules)), 2):
        count = min(_frets_of(rules[one]), _frets_of(rules[other]))
        target = _SHOP_SCALE * np.array(spacing.fractions(rules[one], count))
        design = np.array([spacing.fractions(rules[other], count), np.ones(count)]).T
        missed = target - design @ np.linalg.lstsq(design, target, rcond=None)[0]
        if count > design.shape[1] and np.max(np.abs(missed)) < _CLOSE:
            pairs.append((one, other))
    return pairs


def _frets_of(rule: Rule) -> int:
    """How many frets a comparison of rules can use."""
    return min(len(rule.cents), _SHOP_FRETS) if isinstance(rule, Listed) and not rule.repeat else _SHOP_FRETS
