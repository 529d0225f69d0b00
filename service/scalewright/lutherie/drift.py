"""Drift: whether a sequence of readings wanders or jumps, when, and by how much."""

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from scalewright.lutherie.estimate import Estimate, Floats, mixture_interval
from scalewright.lutherie.student import student_quantile, student_survival

__all__ = ["FEWEST", "Drift", "Jump", "drift_of"]

FEWEST = 8
"""Fewer values show no drift worth testing."""

_SHORTEST = 2
_SEEN = 1e-9
_USUAL = 1.959963984540054


@dataclass(frozen=True, slots=True)
class Jump:
    """A jump between two values of a sequence."""

    at: int
    """Index, from 0, of the first value after it."""
    earliest: int
    """Lower end of the interval of that index at the stated coverage."""
    latest: int
    """Its upper end."""
    size: Estimate
    """How large it is; the uncertainty of its place is in the interval."""


@dataclass(frozen=True, slots=True)
class Drift:
    """How a sequence moves."""

    kind: Literal["trend", "step"]
    """Whether it wanders steadily or jumps; whichever leaves less unexplained."""
    p_value: float
    """Probability of a movement as large by chance, corrected for the places where a step may be looked for. [-]"""
    trend: Estimate
    """Change from one value to the next by a straight line."""
    step: Jump | None
    """The jump, for a step."""
    present: Estimate
    """Where the sequence now stands: after the step, or at the end of the trend."""


def drift_of(values: Floats, significance: float, coverage: float) -> Drift | None:
    """Trend or step in a sequence of normally distributed values.

    Parameters
    ----------
    values : ndarray, shape (n,)
        In the order of their making.
    significance : float
        Probability of a false alarm. [-]
    coverage : float
        Probability that an interval holds.

    Returns
    -------
    Drift or None
        None where nothing moves more than chance does, and for fewer than :data:`FEWEST` values.

    Notes
    -----
    Trend: Student's t of the least-squares slope. Step: the largest two-sample t over all places, its chance
    multiplied by their number (Bonferroni), which is on the safe side. Each is allowed half of the false alarms. If
    both are seen, Schwarz's criterion chooses. The place of a step has the posterior
    RSS_k^(-(n-2)/2) / sqrt(k (n - k)) (flat priors on place, levels and log of the scatter), and the interval of its
    size is the mixture over the places.
    """
    count = len(values)
    if count < FEWEST:
        return None
    mean = float(np.mean(values))
    centred = values - mean
    total = float(centred @ centred)
    if total <= (1e-12 * max(abs(mean), 1e-6)) ** 2 * count:
        return None
    at = np.arange(count) - 0.5 * (count - 1)
    spread = count * (count * count - 1.0) / 12.0
    slope = float(at @ centred) / spread
    freedom = count - 2
    left_by_trend = max(total - slope * slope * spread, 1e-300)
    slope_deviation = math.sqrt(left_by_trend / freedom / spread)
    trend_chance = 2.0 * student_survival(abs(slope) / slope_deviation, freedom)

    before = np.arange(1, count)
    gap = np.cumsum(centred)[:-1]
    weight = before * (count - before.astype(float))
    explained = gap * gap * count / weight
    explained[: _SHORTEST - 1] = explained[count - _SHORTEST :] = 0.0
    best = int(np.argmax(explained))
    left_by_step = max(total - float(explained[best]), 1e-300)
    t = math.sqrt(float(explained[best]) / (left_by_step / freedom))
    step_chance = min(1.0, 2.0 * student_survival(t, freedom) * (count - 1))

    if min(trend_chance, step_chance) > 0.5 * significance:
        return None
    student = student_quantile(0.5 * (1.0 - coverage), freedom)
    trend = _estimate(slope, slope_deviation, student)
    if count * math.log(left_by_trend) < count * math.log(left_by_step) + math.log(count):
        end = 0.5 * (count - 1)
        deviation = math.hypot(math.sqrt(left_by_trend / freedom / count), slope_deviation * end)
        return Drift("trend", trend_chance, trend, None, _estimate(mean + slope * end, deviation, student))
    step = _step(explained, gap, weight, total, coverage, student)
    after = values[step.at :]
    now = float(np.mean(after))
    deviation = float(np.std(after, ddof=1)) / math.sqrt(len(after))
    few = student_quantile(0.5 * (1.0 - coverage), len(after) - 1)
    return Drift("step", step_chance, trend, step, _estimate(now, deviation, few))


def _estimate(value: float, deviation: float, factor: float) -> Estimate:
    return Estimate(value, deviation, value - factor * deviation, value + factor * deviation)


def _step(explained: Floats, gap: Floats, weight: Floats, total: float, coverage: float, student: float) -> Jump:
    """Place and size of a step, with the uncertainty of both."""
    count = len(gap) + 1
    left = np.maximum(total - explained, 1e-300)
    allowed = slice(_SHORTEST - 1, count - _SHORTEST)
    logarithm = np.full(len(gap), -np.inf)
    logarithm[allowed] = -0.5 * (count - 2) * np.log(left[allowed]) - 0.5 * np.log(weight[allowed])
    probability = np.exp(logarithm - np.max(logarithm))
    probability /= np.sum(probability)
    cumulated = np.cumsum(probability)
    tail = 0.5 * (1.0 - coverage)
    earliest, latest = int(np.searchsorted(cumulated, tail)), int(np.searchsorted(cumulated, 1.0 - tail))
    there = np.nonzero(probability > _SEEN)[0]
    # A step after k values is as large as the means differ.
    sizes = -gap[there] * count / weight[there]
    deviations = np.sqrt(left[there] / (count - 2) * count / weight[there])
    share = probability[there] / np.sum(probability[there])
    size = float(np.sum(share * sizes))
    deviation = math.sqrt(float(np.sum(share * (deviations**2 + (sizes - size) ** 2))))
    # Widened from the normal to Student's t.
    low, high = mixture_interval(share, sizes, deviations * student / _USUAL, coverage).tolist()
    return Jump(
        at=int(np.argmax(probability)) + 1,
        earliest=earliest + 1,
        latest=min(latest, len(gap) - 1) + 1,
        size=Estimate(size, deviation, low, high),
    )
