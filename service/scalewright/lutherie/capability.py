"""Capability: how a process's spread and place compare with its tolerance."""

from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.ruling import Interval, refuse_without_width

__all__ = ["Capability", "capability"]


@dataclass(frozen=True, slots=True)
class Capability:
    """Capability indices of one characteristic or of many."""

    cp: Floats
    """Tolerance over six standard deviations. [-]"""
    cpk: Floats
    """The same, on the side where there is less room. [-]"""
    cpm: Floats
    """Tolerance over six root-mean-square distances from the target. [-]"""


def capability(mean: Floats, standard_deviation: Floats, tolerance: Interval, target: float) -> Capability:
    """Capability indices of normally distributed characteristics.

    Parameters
    ----------
    mean, standard_deviation : ndarray
        Of each, any shape; a standard deviation of 0 gives infinite indices.
    tolerance : Interval
        Where each has to lie.
    target : float
        Where each should lie.

    Returns
    -------
    Capability
        Of the same shape.

    Raises
    ------
    ToleranceError
        A tolerance of zero or less.

    References
    ----------
    .. [nist-6.1.6] NIST/SEMATECH e-Handbook of Statistical Methods, section 6.1.6.
    """
    refuse_without_width(tolerance)
    with np.errstate(divide="ignore", invalid="ignore"):
        cp = (tolerance.upper - tolerance.lower) / (6.0 * standard_deviation)
        cpk = np.minimum(tolerance.upper - mean, mean - tolerance.lower) / (3.0 * standard_deviation)
        cpm = (tolerance.upper - tolerance.lower) / (6.0 * np.hypot(standard_deviation, mean - target))
    return Capability(cp, cpk, cpm)
