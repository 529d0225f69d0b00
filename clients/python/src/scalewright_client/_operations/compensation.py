"""Asking where saddle and nut belong."""

from collections.abc import Iterable
from typing import Literal

from scalewright_client._batch import BatchCall, Questions
from scalewright_client._protocol import Call, call
from scalewright_client._requests import (
    CompensationQuestion,
    GluedBridge,
    Heights,
    Length,
    OptimiseFor,
    Relief,
    RuleLike,
    ScaleBasis,
    StiffnessModel,
    StraightSlot,
    StringRequest,
    StringSet,
    TargetLike,
    Travel,
    Tuning,
    Unit,
)
from scalewright_client._results import Compensation

__all__ = ["compensation", "compensation_batch"]


def compensation(
    *,
    scale: Length,
    rule: RuleLike,
    heights: Heights,
    strings: Iterable[StringRequest],
    unit: Unit = "mm",
    scale_basis: ScaleBasis | None = None,
    frets: int | None = None,
    tuning: Tuning | None = None,
    finger_behind_fret: Length | None = None,
    fret_height: Length | None = None,
    relief: Relief | None = None,
    sliding_length: Length | None = None,
    target: TargetLike | None = None,
    boundary_factor: float | None = None,
    stiffness: StiffnessModel | None = None,
    nut: Literal["fixed", "free", "uniform"] | None = None,
    saddle: Literal["free", "uniform"] | None = None,
    optimise_for: OptimiseFor | None = None,
    slot: StraightSlot | None = None,
    travel: Travel | None = None,
    bridge: GluedBridge | None = None,
    other_sets: Iterable[StringSet] | None = None,
    reach: Length | None = None,
    compare_with_equal: bool | None = None,
) -> Call[Compensation]:
    """Ask where saddle and nut belong, string by string.

    Parameters
    ----------
    scale : float or str
        The scale. [unit, or its own]
    rule : str, RuleRequest or Rule
        The spacing rule that the board was cut by.
    heights : Heights
        Underside of the strings above the plane of the fret tops.
    strings : iterable of StringRequest
        The strings.
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    scale_basis : {"layout", "true"}, optional
        Which of the two scales ``scale`` is; "layout" unless given.
    frets : int, optional
        Number of frets, 1 to 60; 12 unless given.
    tuning : Tuning, optional
        Open pitches of strings that give none of their own.
    finger_behind_fret : float or str, optional
        How far behind the fret the finger presses the string down. [unit, or its own]
    fret_height : float or str, optional
        Height of the frets above the board, down to which the finger presses. [unit, or its own]
    relief : Relief, optional
        How far the fret tops leave the straight line.
    sliding_length : float or str, optional
        Length of string beyond nut and saddle that slides over them and stretches too.
        [unit, or its own]
    target : str, RuleRequest or Rule, optional
        Temperament that the board should sound in: equal or listed; the equal one nearest to the
        rule unless given.
    boundary_factor : float, optional
        Ends of the speaking length that are clamped, 0 to 2; 1 unless given. [-]
    stiffness : {"position", "length_and_tension"}, optional
        What the stiffness of a fretted note follows; "position" unless given.
    nut : {"fixed", "free", "uniform"}, optional
        Whether the nut stays ("fixed", unless given), is set back for every string as well, or alike
        for all.
    saddle : {"free", "uniform"}, optional
        Whether every string has a saddle setback of its own ("free", unless given) or all have one.
    optimise_for : OptimiseFor, optional
        Which frets to do best for, and how much each counts; all alike unless given.
    slot : StraightSlot, optional
        Asks for the best straight slot.
    travel : Travel, optional
        Asks for the best that saddles of limited travel give.
    bridge : GluedBridge, optional
        Asks what helps a bridge that is glued already.
    other_sets : iterable of StringSet, optional
        Other string sets that the same bridge has to serve; asks where to glue it.
    reach : float or str, optional
        How far along the strings a break point can be moved on a bridge still to be glued; asks
        where to glue it. [unit, or its own]
    compare_with_equal : bool, optional
        Asks for a comparison with the same board slotted again in equal steps.

    Returns
    -------
    Compensation
        Setbacks, positions and what is left in cents. ``saddle_from_nut`` is measured from the
        nut's front edge.
    """
    body = {
        "unit": unit,
        "scale": scale,
        "scale_basis": scale_basis,
        "rule": rule,
        "frets": frets,
        "heights": heights,
        "tuning": tuning,
        "finger_behind_fret": finger_behind_fret,
        "fret_height": fret_height,
        "relief": relief,
        "sliding_length": sliding_length,
        "target": target,
        "boundary_factor": boundary_factor,
        "stiffness": stiffness,
        "strings": strings,
        "nut": nut,
        "saddle": saddle,
        "optimise_for": optimise_for,
        "slot": slot,
        "travel": travel,
        "bridge": bridge,
        "other_sets": other_sets,
        "reach": reach,
        "compare_with_equal": compare_with_equal,
    }
    return call("POST", "/v1/compensation", Compensation, body)


def compensation_batch(questions: Questions[CompensationQuestion]) -> BatchCall[Compensation]:
    """Ask where saddle and nut belong on many boards.

    Parameters
    ----------
    questions : iterable of CompensationQuestion
        The keywords of ``compensation`` for each, and the caller's own ``id``; taken as they are sent.

    Returns
    -------
    Batch or AsyncBatch
        Iterates over a ``BatchResult`` or a ``BatchProblem`` for each question, in their order.
    """
    return BatchCall("/v1/compensation/batch", Compensation, questions)
