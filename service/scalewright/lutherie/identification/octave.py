"""The true scale from the octave reading alone, where no rule holds."""

import math
from collections.abc import Sequence

import numpy as np

from scalewright.lutherie.estimate import Estimate, Note, normal_estimate
from scalewright.lutherie.measure import Survey

__all__ = ["octave_alone"]

_RANK_TOLERANCE = 1e-9


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
    (JCGM 100, 5.1.2 for the sum of uncertainties).
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
            distance = float(
                inverse[at] @ (weight * np.array([survey.distance[i] - procedure.offset[i] for i in keep]))
            )
            deviation = math.hypot(float(np.linalg.norm(inverse[at])), procedure.scale_error * distance)
            return (
                normal_estimate(2.0 * distance, 2.0 * deviation, coverage),
                Note(
                    "octave-reading-alone",
                    f"No rule explains the readings: the true scale is twice the reading at fret {octave}, and a nut "
                    "that was moved or cut back would be hidden in it.",
                ),
            )
    missing = "the rule that fits best has no octave fret" if octave is None else f"fret {octave} was not read"
    return None, Note(
        "no-octave-reading",
        f"No rule explains the readings and {missing}, so the true scale cannot be told; measure from the nut "
        f"to fret {12 if octave is None else octave}.",
    )
