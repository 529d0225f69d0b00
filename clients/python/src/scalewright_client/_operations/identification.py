"""Asking which rule and scale readings come from, and which readings would tell."""

from collections.abc import Iterable
from typing import Literal

from scalewright_client._batch import BatchCall, Questions
from scalewright_client._protocol import Call, call
from scalewright_client._requests import CandidateRequest, IdentificationQuestion, Length, Origin, Reading, Unit
from scalewright_client._results import Identification, MeasuringCard

__all__ = ["identification", "identification_batch", "identification_plan"]


def identification(
    *,
    unit: Unit = "mm",
    from_nut: Iterable[Length] | None = None,
    fret_to_fret: Iterable[Length] | None = None,
    readings: Iterable[Reading] | None = None,
    frets: Iterable[int] | None = None,
    instrument_uncertainty: Length | None = None,
    resolution: Length | None = None,
    scale_error: float | None = None,
    tooling_scatter: Length | None = None,
    origin: Origin | None = None,
    nut_offset: Literal["free", "none"] | Length | None = None,
    nut_offset_deviation: Length | None = None,
    slot_width: Length | None = None,
    candidates: Iterable[CandidateRequest] | None = None,
    threshold: float | None = None,
    coverage: float | None = None,
    significance: float | None = None,
    misreading_probability: float | None = None,
) -> Call[Identification]:
    """Ask which rule and scale a board's readings come from.

    One of ``from_nut``, ``fret_to_fret`` and ``readings`` is needed, and how sure the readings are:
    ``instrument_uncertainty`` or ``resolution``. Uncertainties are standard uncertainties (k = 1).

    Parameters
    ----------
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    from_nut : iterable of float or str, optional
        Distances from the nut. [unit, or their own]
    fret_to_fret : iterable of float or str, optional
        Distances from each fret to the one before it. [unit, or their own]
    readings : iterable of Reading, optional
        Distances between any two frets.
    frets : iterable of int, optional
        Numbers of the frets read; 1, 2, 3, ... unless given.
    instrument_uncertainty : float or str, optional
        Of one reading. [unit, or its own]
    resolution : float or str, optional
        Smallest step of the instrument; adds resolution squared over 12 to the variance.
        [unit, or its own]
    scale_error : float, optional
        Relative error common to all readings of the instrument. [-]
    tooling_scatter : float or str, optional
        Of the slots themselves. [unit, or its own]
    origin : {"nut", "zero_fret"}, optional
        What the readings were measured from; "nut" unless given.
    nut_offset : {"free", "none"} or float or str, optional
        Shift of the nut from the pattern's zero line, positive away from fret 1, or whether there
        may be one; "free" unless given. [unit, or its own]
    nut_offset_deviation : float or str, optional
        Standard deviation of a free nut offset before anything is measured; 0.3 mm unless given.
        [unit, or its own]
    slot_width : float or str, optional
        Width of the slots or crowns, for readings taken at an edge. [unit, or its own]
    candidates : iterable of CandidateRequest, optional
        Rules to compare; equal spacing, the rule of 18 and any divisor unless given.
    threshold : float, optional
        Probability that makes a rule established; 0.95 unless given. [-]
    coverage : float, optional
        Probability that the intervals of the answer cover; 0.95 unless given. [-]
    significance : float, optional
        A rule whose residuals are less likely than this explains nothing; 0.001 unless given. [-]
    misreading_probability : float, optional
        Probability that one of a board's readings is a blunder; 0.02 unless given, and 0 takes every
        reading at its word. [-]

    Returns
    -------
    Identification
        Verdict, rule and scales with their uncertainty. What is None is not known: read ``verdict``
        and ``notes`` before using the numbers.
    """
    body = {
        "unit": unit,
        "frets": frets,
        "from_nut": from_nut,
        "fret_to_fret": fret_to_fret,
        "readings": readings,
        "instrument_uncertainty": instrument_uncertainty,
        "resolution": resolution,
        "scale_error": scale_error,
        "tooling_scatter": tooling_scatter,
        "origin": origin,
        "nut_offset": nut_offset,
        "nut_offset_deviation": nut_offset_deviation,
        "slot_width": slot_width,
        "candidates": candidates,
        "threshold": threshold,
        "coverage": coverage,
        "significance": significance,
        "misreading_probability": misreading_probability,
    }
    return call("POST", "/v1/identification", Identification, body)


def identification_plan(
    *,
    instrument_uncertainty: Length,
    shortest_scale: Length,
    unit: Unit = "mm",
    resolution: Length | None = None,
    tooling_scatter: Length | None = None,
    frets: int | None = None,
    nut_offset_deviation: Length | None = None,
    probability: float | None = None,
    threshold: float | None = None,
) -> Call[MeasuringCard]:
    """Ask which frets have to be read with an instrument to tell the rules apart.

    Parameters
    ----------
    instrument_uncertainty : float or str
        Standard uncertainty of one reading (k = 1). [unit, or its own]
    shortest_scale : float or str
        The shortest layout scale to be expected; longer boards are easier. [unit, or its own]
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    resolution : float or str, optional
        Smallest step of the instrument. [unit, or its own]
    tooling_scatter : float or str, optional
        Of the slots themselves; 0.05 mm unless given. [unit, or its own]
    frets : int, optional
        Number of frets on the boards; 19 unless given.
    nut_offset_deviation : float or str, optional
        Standard deviation of the nut's offset; 0.3 mm unless given, 0 where it is known.
        [unit, or its own]
    probability : float, optional
        Probability with which a board's own rule is to be established; 0.95 unless given. [-]
    threshold : float, optional
        Probability that makes a rule established; 0.95 unless given. [-]

    Returns
    -------
    MeasuringCard
        The smallest set of frets that decides, or the best where none does.
    """
    body = {
        "unit": unit,
        "instrument_uncertainty": instrument_uncertainty,
        "resolution": resolution,
        "tooling_scatter": tooling_scatter,
        "shortest_scale": shortest_scale,
        "frets": frets,
        "nut_offset_deviation": nut_offset_deviation,
        "probability": probability,
        "threshold": threshold,
    }
    return call("POST", "/v1/identification/plan", MeasuringCard, body)


def identification_batch(questions: Questions[IdentificationQuestion]) -> BatchCall[Identification]:
    """Ask which rules and scales many boards have.

    Parameters
    ----------
    questions : iterable of IdentificationQuestion
        One a board, with the keywords of ``identification`` and the caller's own ``id``. They are taken
        as they are sent, and their answers given as they arrive, so that neither fills the memory; the
        service answers when it has all of them. Those of a list are put again after a broken
        connection, those of an iterator can't be.

    Returns
    -------
    Batch or AsyncBatch
        Iterates over a ``BatchResult`` or a ``BatchProblem`` for each question, in their order.
    """
    return BatchCall("/v1/identification/batch", Identification, questions)
