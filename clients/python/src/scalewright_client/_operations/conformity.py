"""Asking whether a part is what it claims to be."""

from typing import Literal

from scalewright_client._protocol import Call, call
from scalewright_client._requests import Length, PartLike, Process, Unit
from scalewright_client._results import Conformity

__all__ = ["conformity"]


def conformity(
    *,
    part: PartLike,
    unit: Unit = "mm",
    tolerance: Length | None = None,
    decision_rule: Literal["simple_acceptance", "guarded_acceptance", "guarded_rejection"] | None = None,
    guard_factor: float | None = None,
    label_means: Literal["true_scale", "layout_scale"] | None = None,
    process: Process | None = None,
    coverage: float | None = None,
) -> Call[Conformity]:
    """Ask whether a part is what its label or its definition says, within a tolerance.

    Parameters
    ----------
    part : Part or StatedPart
        What it claims, and its readings.
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    tolerance : float or str, optional
        How far its true scale may be from the claimed one; 0.5 mm unless given. [unit, or its own]
    decision_rule : {"simple_acceptance", "guarded_acceptance", "guarded_rejection"}, optional
        How to decide near the limits; "guarded_acceptance" unless given.
    guard_factor : float, optional
        Guard band in standard uncertainties; 2 unless given. [-]
    label_means : {"true_scale", "layout_scale"}, optional
        What a label claims where no scale is stated; unless given, the layout scale where the part states a rule,
        and else the true scale.
    process : Process, optional
        What is known of parts like this one; gives global risks.
    coverage : float, optional
        Probability that the intervals of the answer cover; 0.95 unless given. [-]

    Returns
    -------
    Conformity
        The decision, what the readings prove, and the risks of either side.
    """
    body = {
        "unit": unit,
        "part": part,
        "tolerance": tolerance,
        "decision_rule": decision_rule,
        "guard_factor": guard_factor,
        "label_means": label_means,
        "process": process,
        "coverage": coverage,
    }
    return call("POST", "/v1/conformity", Conformity, body)
