"""Asking how far out of tune every note is."""

from collections.abc import Iterable

from scalewright_client._protocol import Call, call
from scalewright_client._requests import (
    Heights,
    Length,
    PlacedString,
    Relief,
    RuleLike,
    ScaleBasis,
    StiffnessModel,
    TargetLike,
    Tuning,
    Unit,
)
from scalewright_client._results import Intonation

__all__ = ["intonation"]


def intonation(
    *,
    scale: Length,
    rule: RuleLike,
    heights: Heights,
    strings: Iterable[PlacedString],
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
) -> Call[Intonation]:
    """Ask how far out of tune every note of these strings is on this board, and why.

    Parameters
    ----------
    scale : float or str
        The scale. [unit, or its own]
    rule : str, RuleRequest or Rule
        The spacing rule that the board was cut by.
    heights : Heights
        Underside of the strings above the plane of the fret tops.
    strings : iterable of PlacedString
        The strings, each with its setbacks.
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

    Returns
    -------
    Intonation
        The error of every string at every fret, parted by its causes.
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
    }
    return call("POST", "/v1/intonation", Intonation, body)
