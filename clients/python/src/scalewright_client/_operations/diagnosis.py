"""Asking what mends a board that plays out of tune."""

from collections.abc import Iterable
from typing import Literal

from scalewright_client._protocol import Call, call
from scalewright_client._requests import CentsReading, Length, RuleLike, ScaleBasis, TargetLike, Unit
from scalewright_client._results import Diagnosis

__all__ = ["diagnosis"]


def diagnosis(
    *,
    scale: Length,
    rule: RuleLike,
    readings: Iterable[CentsReading],
    unit: Unit = "mm",
    scale_basis: ScaleBasis | None = None,
    frets: int | None = None,
    relative_to: Literal["open_string", "tuner"] | None = None,
    tuner_uncertainty: float | None = None,
    resolution: float | None = None,
    model_uncertainty: float | None = None,
    nut_may_move: bool | None = None,
    target: TargetLike | None = None,
    coverage: float | None = None,
) -> Call[Diagnosis]:
    """Ask which moves of saddle and nut mend a board, or whether its frets are to blame.

    Parameters
    ----------
    scale : float or str
        The scale. [unit, or its own]
    rule : str, RuleRequest or Rule
        The spacing rule of the board, as far as it is known.
    readings : iterable of CentsReading
        The notes that were read, in any order, repeats welcome.
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    scale_basis : {"layout", "true"}, optional
        Which of the two scales ``scale`` is; "layout" unless given.
    frets : int, optional
        Number of frets, 1 to 60; 24 unless given.
    relative_to : {"open_string", "tuner"}, optional
        What the cents were read against; the string's own open note unless given.
    tuner_uncertainty : float, optional
        Standard uncertainty of one reading (k = 1); 1 unless given. [cent]
    resolution : float, optional
        Step of the tuner's display. [cent]
    model_uncertainty : float, optional
        What stretch and stiffness leave where saddle and nut are best; 0.15 unless given. [cent]
    nut_may_move : bool, optional
        Whether the nut is a suspect too; it is unless given as False.
    target : str, RuleRequest or Rule, optional
        Temperament that the cents were read in; the equal one nearest to the rule unless given.
    coverage : float, optional
        Probability that the intervals of the answer cover; 0.95 unless given. [-]

    Returns
    -------
    Diagnosis
        Moves by string with their uncertainty, what is left for the frets to explain, and what to
        read next.
    """
    body = {
        "unit": unit,
        "scale": scale,
        "scale_basis": scale_basis,
        "rule": rule,
        "frets": frets,
        "readings": readings,
        "relative_to": relative_to,
        "tuner_uncertainty": tuner_uncertainty,
        "resolution": resolution,
        "model_uncertainty": model_uncertainty,
        "nut_may_move": nut_may_move,
        "target": target,
        "coverage": coverage,
    }
    return call("POST", "/v1/diagnosis", Diagnosis, body)
