"""Saddle lines: where a straight slot lies best under strings that each want their own break point."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.compensation.setbacks import BestSetbacks, best_setbacks
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.fretting import cents_errors_and_slopes
from scalewright.lutherie.string_path import FrettedStrings

__all__ = ["BreakPoint", "Line", "LineFamily", "Wishes", "break_points", "fit_line", "narrowest_line", "pooled_rms"]

_MOST_STEPS = 50
_MOST_HALVINGS = 30
_STILL = 1e-10
"""A line that moves less than this has been found. [mm]"""
_REACHED = 1e-6
"""A break point that misses by less than this is reached. [mm]"""


@dataclass(frozen=True, slots=True)
class BreakPoint:
    """Where one string breaks over a saddle that cannot give every string what it wants."""

    string: int
    """Number of the string, from 1 in the order given."""
    pitch: str
    """Name of the open pitch, or its frequency with the unit."""
    saddle_setback: float
    """From the end of the scale to the break point, positive away from the nut. [mm]"""
    nut_setback: float
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [mm]"""
    reached: bool
    """Whether it is the string's best."""
    short_by: float
    """How much further out its best lies; negative where the best lies nearer to the nut. [mm]"""
    rms_cents: float
    """Root mean square of the errors that remain on the frets that count. [cent]"""
    least_rms_cents: float
    """The same at the string's best. [cent]"""


@dataclass(frozen=True, slots=True)
class Wishes:
    """What every string wants."""

    strings: FrettedStrings
    """The strings on their board."""
    weights: Floats
    """How much the squared error of every fret counts, shape (n_frets,) or (n_strings, n_frets). [-]"""
    best: BestSetbacks
    """Their best setbacks."""
    nut_free: bool
    """Whether the nut of a string follows its saddle; otherwise it stays where its best has it."""


@dataclass(frozen=True, slots=True)
class LineFamily:
    """The lines that a slot may have: setbacks ``base`` + ``pattern`` times some parameters between limits."""

    base: Floats
    """Setbacks of the slot's centre at every string with all parameters at zero, shape (n_strings,). [mm]"""
    pattern: Floats
    """How they answer to the parameters, shape (n_strings, n_parameters). [-]"""
    start: Floats
    """Parameters to start from, shape (n_parameters,). [mm]"""
    low: Floats
    """Their least values, the same shape. [mm]"""
    high: Floats
    """Their most, the same shape. [mm]"""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight slot under the strings."""

    centre: Floats
    """Setback of its centre line at every string, shape (n_strings,). [mm]"""
    saddle: Floats
    """Setback of every break point, shape (n_strings,). [mm]"""


@dataclass(frozen=True, slots=True)
class _Held:
    """Strings whose saddles are held somewhere."""

    nut: Floats
    rms: Floats
    total: Floats
    pull: Floats
    """Half the slope of the total by the saddle's setback. [cent²/mm]"""
    steepness: Floats
    """Half its curvature. [cent²/mm²]"""


def _held(wishes: Wishes, saddle: Floats) -> _Held:
    """Errors of strings whose saddles are held, each nut following where it may."""
    strings, weights, nut = wishes.strings, wishes.weights, wishes.best.nut
    if wishes.nut_free:
        found = best_setbacks(strings, weights, saddle="fixed", nut="free", start=(saddle, nut))
        # A saddle far from its place may leave the nut none; it then stays where it is best with the best saddle.
        nut = np.where(found.settled, found.nut, nut)
    errors, by_saddle, by_nut = cents_errors_and_slopes(strings, saddle, nut)
    weighted = weights * by_saddle
    total, steepness = np.vecdot(weights, errors**2), np.vecdot(weighted, by_saddle)
    if wishes.nut_free:
        steepness = steepness - np.vecdot(weighted, by_nut) ** 2 / np.vecdot(weights * by_nut, by_nut)
    rms = np.sqrt(total / np.broadcast_to(weights, errors.shape).sum(axis=1))
    return _Held(nut, rms, total, np.vecdot(weighted, errors), steepness)


def break_points(wishes: Wishes, pitches: list[str], saddle: Floats) -> list[BreakPoint]:
    """Break points with what each leaves, the nuts following where they may.

    Parameters
    ----------
    wishes : Wishes
        What the strings want.
    pitches : list of str
        Their pitches.
    saddle : ndarray, shape (n_strings,)
        Saddle setbacks that they get. [mm]

    Returns
    -------
    list of BreakPoint
        One for each string.
    """
    held = _held(wishes, saddle)
    short = wishes.best.saddle - saddle
    columns = (saddle, held.nut, np.abs(short) < _REACHED, short, held.rms, wishes.best.rms)
    return [
        BreakPoint(number, pitch, *row)
        for number, (pitch, row) in enumerate(
            zip(pitches, zip(*(column.tolist() for column in columns), strict=True), strict=True), 1
        )
    ]


def pooled_rms(rms: Sequence[float]) -> float:
    """Root mean square over strings that share frets and weights. [cent]"""
    return math.sqrt(sum(value**2 for value in rms) / len(rms))


def narrowest_line(points: Floats, across: Floats) -> tuple[Floats, float]:
    """Line that no point misses by more than it must.

    Parameters
    ----------
    points : ndarray, shape (n,)
        Setbacks. [mm]
    across : ndarray, shape (n,)
        Where the strings lie across the bridge, from 0 at the first to 1 at the last, ascending. [-]

    Returns
    -------
    ends : ndarray, shape (2,)
        Setbacks of the line at the first and the last string. [mm]
    deviation : float
        The largest distance of a point from it, half the narrowest slot that holds them all. [mm]

    Notes
    -----
    The best straight line in Chebyshev's sense touches three points in turn above, below and above, or
    the reverse; of all triples it is the one that any line has to miss by most.
    """
    n = len(points)
    if n < 3:
        return points[[0, -1]].copy(), 0.0
    i, j, k = np.array([(i, j, k) for i in range(n) for j in range(i + 1, n) for k in range(j + 1, n)]).T
    slope = (points[k] - points[i]) / (across[k] - across[i])
    miss = 0.5 * (points[j] - points[i] - slope * (across[j] - across[i]))
    worst = int(np.argmax(np.abs(miss)))
    start = points[i[worst]] + miss[worst] - slope[worst] * across[i[worst]]
    return np.array([start, start + slope[worst]]), float(np.abs(miss[worst]))


def fit_line(wishes: Wishes, family: LineFamily, half_width: float) -> Line:
    """Slot of a given width that leaves the least weighted sum of squared errors over all strings.

    Parameters
    ----------
    wishes : Wishes
        What the strings want.
    family : LineFamily
        The lines that may be had, and the one to start from.
    half_width : float
        How far from the centre line a string may break. [mm]

    Returns
    -------
    Line
        A slot that holds all the best break points where there is one; otherwise the best there is, with
        each string breaking at the point of the slot that is nearest to its best.

    Notes
    -----
    A string's sum of squares falls all the way to its best, so that it breaks there or at an edge of the
    slot. Newton's method for the strings at an edge, with the curvature of their own sums of squares; a
    parameter at a limit stays there while it is pushed outwards.
    """
    best, pattern = wishes.best.saddle, family.pattern
    place = np.clip(family.start, family.low, family.high)

    def at(place: Floats) -> tuple[_Held, Floats, Floats]:
        centre = family.base + pattern @ place
        saddle = np.clip(best, centre - half_width, centre + half_width)
        return _held(wishes, saddle), centre, saddle

    held, centre, saddle = at(place)
    for _ in range(_MOST_STEPS):
        edge = (np.abs(best - centre) > half_width).astype(np.float64)
        slope = pattern.T @ (held.pull * edge)
        free = ~(((place <= family.low) & (slope > 0.0)) | ((place >= family.high) & (slope < 0.0)))
        if not (edge.any() and free.any()):
            break
        curvature = (pattern.T * (held.steepness * edge)) @ pattern
        curvature = curvature[np.ix_(free, free)] + np.eye(int(free.sum())) * (1e-9 * held.steepness.max())
        step = np.zeros_like(place)
        step[free] = -np.linalg.solve(curvature, slope[free])
        moved = np.clip(place + step, family.low, family.high)
        trial, halvings = at(moved), 0
        while not trial[0].total.sum() <= held.total.sum() * (1.0 + 1e-13) and halvings < _MOST_HALVINGS:
            halvings += 1
            moved = np.clip(place + 0.5**halvings * step, family.low, family.high)
            trial = at(moved)
        still = bool(np.abs(moved - place).max() < _STILL)
        place, (held, centre, saddle) = moved, trial
        if still:
            break
    return Line(centre, saddle)
