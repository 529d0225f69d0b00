"""Readings still to be taken: how sure a true scale would be after them."""

from collections.abc import Sequence
from functools import lru_cache

import numpy as np

from scalewright.lutherie import spacing
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.measure import Procedure
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, MOST_FRETS

__all__ = ["information_of", "reading_information", "scatter_of", "true_scale_deviation"]

_USUAL_SCATTER = 0.05
"""What a tool of unknown scatter is taken to scatter: the median of what is believed of it. [mm]"""

_RULE_DEVIATION = 0.5
"""Standard deviation of a share that is 0 for equal spacing and 1 for the rule of 18. [-]"""

_WIDEST = 1e-12
"""Information that stands for knowing nothing of a scale. [1/mm²]"""


@lru_cache(maxsize=1)
def _shapes() -> Floats:
    """Distance to every fret of a board whose true scale is 1, and what changes with the rule. shape (61, 2)"""
    columns = []
    for rule in (EQUAL, EIGHTEENTH):
        fractions = np.array([0.0, *spacing.fractions(rule, MOST_FRETS)])
        columns.append(fractions / (2.0 * fractions[12]))
    return np.stack([columns[0], columns[1] - columns[0]], axis=1)


def _rows(start: Sequence[int], end: Sequence[int], true_scale: float, share: float) -> Floats:
    """Design of readings for true scale, rule and nut offset. shape (..., 3)"""
    shapes = _shapes()
    difference = shapes[list(end)] - shapes[list(start)]
    scale = difference[:, 0] + share * difference[:, 1]
    return np.stack([scale, true_scale * difference[:, 1], np.array(start) == 0], axis=1)


def information_of(procedure: Procedure | None, true_scale: float, share: float = 0.5) -> Floats:
    """What the readings of a board tell of its true scale, its rule and its nut, as an information matrix.

    Parameters
    ----------
    procedure : Procedure or None
        How the board was measured; None for one that was not.
    true_scale : float
        About what it is. [mm]
    share : float
        0 for a board that is equally spaced, 1 for the rule of 18, between for one not known. [-]

    Returns
    -------
    ndarray, shape (3, 3)
        Inverse of the covariance of true scale, rule and nut offset, the priors included.

    Notes
    -----
    A plan, not a fit: the rule is a share between the two main ones with a normal prior, the
    readings are independent, and all is linear.
    """
    nut = 0.3 if procedure is None else procedure.nut.standard_deviation
    prior = np.diag([_WIDEST, _RULE_DEVIATION**-2, max(nut, 1e-6) ** -2])
    if procedure is None:
        return prior
    rows = _rows(procedure.start, procedure.end, true_scale, share)
    weight = 1.0 / (np.array(procedure.variance) + scatter_of(procedure) ** 2)
    information: Floats = prior + (rows * weight[:, None]).T @ rows
    return information


def scatter_of(procedure: Procedure) -> float:
    """Scatter of the tool that a plan reckons with. [mm]"""
    return _USUAL_SCATTER if procedure.scatter is None else procedure.scatter


def reading_information(frets: Sequence[int], uncertainty: float, true_scale: float, share: float = 0.5) -> Floats:
    """What one more reading from the nut to each of some frets would tell. shape (n, 3, 3)

    Parameters
    ----------
    frets : sequence of int
        n frets.
    uncertainty : float
        Standard uncertainty of the reading; the tool's usual scatter is added. [mm]
    true_scale : float
        About what it is. [mm]
    share : float
        As for :func:`information_of`.

    Returns
    -------
    ndarray, shape (n, 3, 3)
        To be added to :func:`information_of`.
    """
    rows = _rows([0] * len(frets), frets, true_scale, share)
    information: Floats = rows[:, :, None] * rows[:, None, :] / (uncertainty**2 + _USUAL_SCATTER**2)
    return information


def true_scale_deviation(information: Floats) -> Floats:
    """Standard deviation of the true scale. [mm]

    Parameters
    ----------
    information : ndarray, shape (..., 3, 3)
        From :func:`information_of` and :func:`reading_information`.

    Returns
    -------
    ndarray, shape (...)
        What is left when rule and nut are not known either.
    """
    deviation: Floats = np.sqrt(np.linalg.inv(information)[..., 0, 0])
    return deviation
