"""Setbacks: the search for the saddle and nut positions that leave the least error."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.fretting import cents_errors_and_slopes
from scalewright.lutherie.string_path import FrettedStrings

__all__ = ["BestSetbacks", "Freedom", "best_setbacks"]

Freedom: TypeAlias = Literal["fixed", "free", "uniform"]
"""Whether a setback stays where it is, is found for every string by itself, or is one for all strings of a set."""

_MOST_STEPS = 60
_MOST_HALVINGS = 30
_SMALLEST_STEP = 1e-16
"""The search of a string ends where its next step is below this share of the scale. [-]"""
_SMALL_STEP, _SMALL_STEP_LATE = 1e-14, 1e-12
"""It ends below this share too where steps no longer shrink, as the rest is rounding; the second late in the search,
for strings whose frets hardly tell saddle and nut apart. [-]"""
_LATE = 20
"""Steps after which a search is late."""
_QUICK = 0.05
"""Steps that shrink faster than to this share are not corrected. [-]"""
_REST = 1e-17
"""The search of a string ends where what a step leaves is below this share of the scale. [-]"""
_LEAST_SHARE, _MOST_SHARE = 0.1, 2.0
"""Bounds of that correction. [-]"""
_NEAR = 1e-3
"""Below this share of the scale a step is corrected by how the one before it turned out. [-]"""


@dataclass(frozen=True, slots=True)
class BestSetbacks:
    """The setbacks that leave the least error, and what they leave."""

    saddle: Floats
    """Saddle setbacks, shape (n_strings,). [mm]"""
    nut: Floats
    """Nut setbacks, shape (n_strings,). [mm]"""
    uncompensated: Floats
    """Errors where the search began, shape (n_strings, n_frets). [cent]"""
    compensated: Floats
    """Errors that remain, shape (n_strings, n_frets). [cent]"""
    rms: Floats
    """Weighted root mean square of those, shape (n_strings,). [cent]"""
    settled: NDArray[np.bool_]
    """Whether the search came to rest, shape (n_strings,)."""


@dataclass(frozen=True, slots=True)
class _Normal:
    """Normal equations of every string: [[a, c], [c, b]] (saddle, nut) = -(p, r)."""

    a: Floats
    b: Floats
    c: Floats
    p: Floats
    r: Floats

    def summed(self, sets: "_Sets") -> "_Normal":
        """Return those of the sets, each repeated for its strings."""
        return _Normal(*(sets.sum(column) for column in (self.a, self.b, self.c, self.p, self.r)))


@dataclass(frozen=True, slots=True)
class _Sets:
    """Sets of strings that lie one after the other."""

    starts: NDArray[np.intp]
    """Index of the first string of every set."""
    sizes: NDArray[np.intp]
    """Number of strings of every set."""

    def sum(self, column: Floats) -> Floats:
        """Sum over each set, repeated for its strings."""
        return np.repeat(np.add.reduceat(column, self.starts), self.sizes)

    def least(self, column: Floats) -> Floats:
        """Least of each set, repeated for its strings."""
        return np.repeat(np.minimum.reduceat(column, self.starts), self.sizes)


def best_setbacks(
    strings: FrettedStrings,
    weights: Floats,
    *,
    saddle: Freedom = "free",
    nut: Freedom = "fixed",
    start: tuple[Floats, Floats] | None = None,
    sizes: NDArray[np.intp] | None = None,
) -> BestSetbacks:
    """Setbacks with the least weighted sum of squared errors.

    Parameters
    ----------
    strings : FrettedStrings
        The strings on their boards.
    weights : ndarray, shape (n_frets,) or (n_strings, n_frets)
        How much the squared error of every fret counts. [-]
    saddle, nut : {"fixed", "free", "uniform"}
        Whether saddle and nut stay where they are, are found string by string, or are one for each set.
    start : tuple of ndarray, each of shape (n_strings,), optional
        Saddle and nut setbacks to start from, or to stay at; zero without it. [mm]
    sizes : ndarray of int, shape (n_sets,), optional
        Numbers of strings of the sets, one after the other; all strings are one set without it.

    Returns
    -------
    BestSetbacks
        The setbacks and the errors they leave; where ``settled`` is false they mean nothing.

    Notes
    -----
    Gauss-Newton with exact slopes, all strings at once. What is uniform is found from the sum of the
    normal equations of its set, what is free beside it is eliminated string by string. A step never takes
    more than half of what lies between the saddle and the last fret, or between the nut and the finger at
    fret 1, and is halved until it does not make the sum of squares larger.
    """
    n = len(strings.scale)
    coupled = "uniform" in {saddle, nut}
    sizes = np.array([n]) if sizes is None else sizes
    sets = _Sets(np.cumsum(sizes) - sizes, sizes) if coupled else None
    at_saddle, at_nut = (np.zeros(n), np.zeros(n)) if start is None else start
    with np.errstate(all="ignore"):  # what is not finite does not settle
        return _search(strings, weights, (saddle, nut), (at_saddle, at_nut), sets)


def _search(
    strings: FrettedStrings,
    weights: Floats,
    freedom: tuple[Freedom, Freedom],
    start: tuple[Floats, Floats],
    sets: _Sets | None,
) -> BestSetbacks:
    """Search from a start."""
    saddle, nut = start
    saddle_room = strings.remaining.min(axis=1)
    nut_room = strings.scale - strings.finger - strings.remaining.max(axis=1)
    errors, by_saddle, by_nut = cents_errors_and_slopes(strings, saddle, nut)
    uncompensated, total = errors, np.vecdot(weights, errors**2)
    moves, settled = np.full(len(saddle), np.inf), np.zeros(len(saddle), dtype=np.bool_)
    hopeless = np.zeros_like(settled)
    taken: tuple[Floats, Floats, Floats] | None = None
    for steps in range(_MOST_STEPS):
        saddle_step, nut_step = _step(weights, errors, by_saddle, by_nut, freedom, sets)
        moves, last_moves = np.maximum(np.abs(saddle_step), np.abs(nut_step)) / strings.scale, moves
        if sets is not None:
            moves = -sets.least(-moves)
        small = _SMALL_STEP if steps < _LATE else _SMALL_STEP_LATE
        settled |= (moves < _SMALLEST_STEP) | ((moves < small) & (moves > 0.5 * last_moves))
        if settled.all():
            break
        # The largest share of the step that stays clear of the last fret and of the finger at fret 1.
        share = 0.5 / np.maximum(0.5, np.maximum(-saddle_step / (saddle_room + saddle), -nut_step / (nut_room + nut)))
        if taken is not None and (moves > _QUICK * last_moves).any():
            share = np.where(moves < _NEAR, share * _secant(taken, saddle_step, nut_step, sets), share)
        hopeless |= ~np.isfinite(moves)
        share = np.where(hopeless, 0.0, share)
        if sets is not None:
            share = sets.least(share)
        summed = total if sets is None else sets.sum(total)
        halvings = 0
        while True:
            trial_saddle = np.where(share > 0.0, saddle + share * saddle_step, saddle)
            trial_nut = np.where(share > 0.0, nut + share * nut_step, nut)
            errors, by_saddle, by_nut = cents_errors_and_slopes(strings, trial_saddle, trial_nut)
            trial = np.vecdot(weights, errors**2)
            # Rounding may lift the sum a little at the very bottom, which must not stop the search.
            worse = (trial if sets is None else sets.sum(trial)) > summed * (1.0 + 1e-9) + 1e-18
            if halvings == _MOST_HALVINGS or not worse.any():
                break
            share, halvings = np.where(worse, 0.5 * share, share), halvings + 1
        hopeless |= worse  # not even the smallest step goes down
        whole = (share == 1.0) & (np.True_ if taken is None else taken[0] == 1.0)
        saddle, nut, total, taken = trial_saddle, trial_nut, trial, (share, saddle_step, nut_step)
        # What this step has left is about what it left of the one before.
        whole &= (moves < _QUICK * last_moves) & np.isfinite(last_moves)
        settled |= whole & (moves * moves < _REST * last_moves)
        if (settled | hopeless).all():
            break
    rms = np.sqrt(total / np.broadcast_to(weights, errors.shape).sum(axis=1))
    return BestSetbacks(saddle, nut, uncompensated, errors, rms, settled & ~hopeless & np.isfinite(rms))


def _secant(taken: tuple[Floats, Floats, Floats], saddle_step: Floats, nut_step: Floats, sets: _Sets | None) -> Floats:
    """Share of a step that leads to rest, by what a share of the step before left of it, shape (n_strings,). [-]

    Where errors stay large, Gauss-Newton alone creeps or swings about the minimum.
    """
    share, saddle_before, nut_before = taken
    left = saddle_step * saddle_before + nut_step * nut_before
    before = saddle_before**2 + nut_before**2
    if sets is not None:
        left, before = sets.sum(left), sets.sum(before)
    secant = share / (1.0 - left / before)
    return np.where((secant > _LEAST_SHARE) & np.isfinite(secant), np.minimum(secant, _MOST_SHARE), 1.0)


def _step(
    weights: Floats,
    errors: Floats,
    by_saddle: Floats,
    by_nut: Floats,
    freedom: tuple[Freedom, Freedom],
    sets: _Sets | None,
) -> tuple[Floats, Floats]:
    """Gauss-Newton step of saddle and nut, each of shape (n_strings,). [mm]"""
    saddle, nut = freedom
    weighted, none = weights * by_saddle, np.zeros(len(errors))
    if freedom == ("free", "fixed"):
        return -np.vecdot(weighted, errors) / np.vecdot(weighted, by_saddle), none
    weighted_nut = weights * by_nut
    equations = _Normal(
        a=np.vecdot(weighted, by_saddle),
        b=np.vecdot(weighted_nut, by_nut),
        c=np.vecdot(weighted, by_nut),
        p=np.vecdot(weighted, errors),
        r=np.vecdot(weighted_nut, errors),
    )
    if sets is not None and "free" not in freedom:
        equations = equations.summed(sets)
    e = equations
    if nut == "fixed" or saddle == "fixed":
        return (none if saddle == "fixed" else -e.p / e.a), (none if nut == "fixed" else -e.r / e.b)
    if sets is None or saddle == nut:
        determinant = e.a * e.b - e.c**2
        return (e.c * e.r - e.b * e.p) / determinant, (e.c * e.p - e.a * e.r) / determinant
    if nut == "uniform":
        nut_step = -sets.sum(e.r - e.c * e.p / e.a) / sets.sum(e.b - e.c**2 / e.a)
        return -(e.p + e.c * nut_step) / e.a, nut_step
    saddle_step = -sets.sum(e.p - e.c * e.r / e.b) / sets.sum(e.a - e.c**2 / e.b)
    return saddle_step, -(e.r + e.c * saddle_step) / e.b
