"""The true scale from the octave reading alone, where no rule holds."""

import math
from collections.abc import Sequence

import numpy as np

from scalewright.lutherie.estimate import Estimate, Floats, Note, chi_square_survival, normal_estimate
from scalewright.lutherie.measure import EDGE_HALF_WIDTH_UNCERTAINTY, Survey

__all__ = ["octave_alone"]

_RANK_TOLERANCE = 1e-9
_BY_CHANCE = 0.05
"""Repeats that differ with a smaller probability differ by more than the instrument allows."""


def _known(survey: Survey, index: int) -> float:
    """A reading less what is known to be too much in it. [mm]"""
    procedure = survey.procedure
    nut = procedure.nut.mean if procedure.start[index] == 0 else 0.0
    return survey.distance[index] - procedure.offset[index] - nut


def _about(survey: Survey, octave: int) -> str:
    """What the figure rests on, and what it cannot show."""
    said = f"No rule explains the readings: the true scale is twice the distance to fret {octave} alone"
    if survey.procedure.nut.standard_deviation > 0.0:
        return f"{said}, and a nut that was moved or cut back would be hidden in it."
    return f"{said}."


def _birge_ratio(design: Floats, inverse: Floats, values: Floats) -> float:
    """How much more the values scatter than they should; 1 where that may be chance. [-]"""
    freedom = len(values) - round(float(np.trace(inverse @ design)))
    residuals = values - design @ (inverse @ values)
    chi_square = float(residuals @ residuals)
    if freedom <= 0 or chi_square_survival(np.array([chi_square]), freedom)[0] > _BY_CHANCE:
        return 1.0
    return max(1.0, math.sqrt(chi_square / freedom))


def octave_alone(
    survey: Survey, octave: int | None, aside: Sequence[int], coverage: float
) -> tuple[Estimate | None, Note]:
    """Twice the distance from the nut to the octave fret, by the readings that lead there.

    Parameters
    ----------
    survey : Survey
        The board's readings.
    octave : int or None
        Number of the octave fret.
    aside : sequence of int
        Readings not to be used.
    coverage : float
        Probability that the interval holds.

    Returns
    -------
    estimate : Estimate or None
        None where no chain of readings joins the nut and the octave fret. [mm]
    note : Note
        What the figure cannot show, or why there is none.

    Notes
    -----
    Every fret is a free position; weighted least squares joins single readings, repeats and spans
    (JCGM 100, 5.1.2 for the sum of uncertainties). Where repeats scatter by more than the instrument
    allows, their uncertainty is widened to what they show [birge-1932]_.

    References
    ----------
    .. [birge-1932] R. T. Birge, "The calculation of errors by the method of least squares", Phys. Rev. 40,
       207 (1932).
    """
    procedure = survey.procedure
    keep = [index for index in range(len(survey.distance)) if index not in aside]
    frets = sorted({procedure.end[i] for i in keep} | {procedure.start[i] for i in keep} - {0})
    if octave is not None and octave in frets:
        design = np.zeros((len(keep), len(frets)))
        for row, index in enumerate(keep):
            design[row, frets.index(procedure.end[index])] = 1.0
            if procedure.start[index] in frets:
                design[row, frets.index(procedure.start[index])] = -1.0
        weight = 1.0 / np.sqrt(np.array([procedure.variance[i] for i in keep]))
        inverse = np.linalg.pinv(design * weight[:, None], rcond=_RANK_TOLERANCE)
        at = frets.index(octave)
        told = inverse @ (design * weight[:, None])
        if abs(told[at, at] - 1.0) < _RANK_TOLERANCE:
            share = inverse[at] * weight
            known = np.array([_known(survey, i) for i in keep])
            distance = float(share @ known)
            own = float(np.linalg.norm(inverse[at])) * _birge_ratio(weight[:, None] * design, inverse, weight * known)
            # A half width of a slot that is not known is the same in all readings.
            edge = EDGE_HALF_WIDTH_UNCERTAINTY * float(share @ np.array([procedure.edge[i] for i in keep]))
            deviation = math.hypot(own, edge, procedure.scale_error * distance)
            estimate = normal_estimate(2.0 * distance, 2.0 * deviation, coverage)
            return estimate, Note("octave-reading-alone", _about(survey, octave))
    missing = "the rule that fits best has no octave fret" if octave is None else f"fret {octave} was not read"
    return None, Note(
        "no-octave-reading",
        f"No rule explains the readings and {missing}, so the true scale cannot be told; measure from the nut "
        f"to fret {12 if octave is None else octave}.",
    )
