"""Functions of the divisor as Chebyshev series: how the pattern of a board changes with it."""

import math
from functools import lru_cache

import numpy as np

from scalewright.lutherie.estimate import Floats

__all__ = [
    "HIGHEST_DIVISOR",
    "LOWEST_DIVISOR",
    "STEP_SLOPE",
    "basis",
    "derivative",
    "divisor_at",
    "divisor_slope",
    "fractions_at_nodes",
    "nodes",
    "position_of",
    "series",
    "step_at",
]

LOWEST_DIVISOR = 14.0
HIGHEST_DIVISOR = 24.0
"""Between these a free divisor is looked for. [-]"""

_FIRST_STEP = -math.log1p(-1.0 / HIGHEST_DIVISOR)
_LAST_STEP = -math.log1p(-1.0 / LOWEST_DIVISOR)
_MIDDLE = 0.5 * (_LAST_STEP + _FIRST_STEP)
_HALF = 0.5 * (_LAST_STEP - _FIRST_STEP)

STEP_SLOPE = _HALF
"""Derivative of :func:`step_at`. [-]"""


def step_at(position: Floats) -> Floats:
    """Logarithm of the ratio of two neighbouring remainders, from a position on the series' axis. [-]

    Parameters
    ----------
    position : ndarray
        Any shape, -1 at :data:`HIGHEST_DIVISOR` and 1 at :data:`LOWEST_DIVISOR`.

    Returns
    -------
    ndarray
        theta = -ln(1 - 1/d), the same shape.
    """
    return _MIDDLE + _HALF * position


def divisor_at(position: Floats) -> Floats:
    """Divisor at a position on the series' axis, any shape. [-]"""
    return -1.0 / np.expm1(-step_at(position))


def divisor_slope(divisor: Floats) -> Floats:
    """Derivative of divisors by the position on the series' axis, any shape. [-]"""
    return (1.0 - divisor) * divisor * _HALF


def position_of(divisor: float) -> float:
    """Position of a divisor on the series' axis. [-]"""
    return (-math.log1p(-1.0 / divisor) - _MIDDLE) / _HALF


@lru_cache(maxsize=8)
def nodes(terms: int) -> Floats:
    """Positions of the Chebyshev nodes of a series. [-]

    Parameters
    ----------
    terms : int
        Length of the series.

    Returns
    -------
    ndarray, shape (terms,)
        From 1 down to -1.
    """
    return np.cos(math.pi * (np.arange(terms) + 0.5) / terms)


@lru_cache(maxsize=8)
def series(terms: int) -> Floats:
    """Matrix that turns values at the nodes into the coefficients of their series.

    Parameters
    ----------
    terms : int
        Length of the series.

    Returns
    -------
    ndarray, shape (terms, terms)
        ``values @ series(terms)`` are the coefficients.
    """
    matrix = 2.0 / terms * np.cos(np.outer(np.arccos(nodes(terms)), np.arange(terms)))
    matrix[:, 0] *= 0.5
    return matrix


@lru_cache(maxsize=8)
def derivative(terms: int) -> Floats:
    """Matrix that differentiates a series by its position.

    Parameters
    ----------
    terms : int
        Length of the series.

    Returns
    -------
    ndarray, shape (terms, terms)
        ``coefficients @ derivative(terms)`` are the derivative's coefficients.
    """
    return np.stack([np.pad(np.polynomial.chebyshev.chebder(row), (0, 1)) for row in np.eye(terms)])


def fractions_at_nodes(frets: Floats, terms: int) -> Floats:
    """Share of the layout scale up to some frets, for the divisors at the nodes. [-]

    Parameters
    ----------
    frets : ndarray, shape (n,)
        Numbers of the frets, 0 for the nut; between two frets they need not be whole.
    terms : int
        Length of the series.

    Returns
    -------
    ndarray, shape (n, terms)
        A row for each.
    """
    return -np.expm1(-np.outer(frets, step_at(nodes(terms))))


def basis(position: Floats, terms: int) -> Floats:
    """Chebyshev polynomials at the positions given.

    Parameters
    ----------
    position : ndarray, shape (..., n)
        On the series' axis.
    terms : int
        How many, at least two.

    Returns
    -------
    ndarray, shape (..., terms, n)
        T_0, T_1, ...
    """
    values = np.empty((*position.shape[:-1], terms, position.shape[-1]))
    values[..., 0, :] = 1.0
    values[..., 1, :] = position
    highest = 1
    while highest < terms - 1:
        # T_(m + n) = 2 T_m T_n - T_(m - n): twice as many at every step.
        more = min(highest, terms - 1 - highest)
        added = values[..., highest + 1 : highest + 1 + more, :]
        np.multiply(2.0 * values[..., highest : highest + 1, :], values[..., 1 : more + 1, :], out=added)
        added -= values[..., highest - more : highest, :][..., ::-1, :]
        highest += more
    return values
