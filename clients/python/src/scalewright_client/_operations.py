"""The operations, each once: what a method of either client takes, sends and gives back."""

from collections.abc import Iterable
from typing import Literal

from scalewright_client._protocol import Call, call
from scalewright_client._requests import (
    Heights,
    Length,
    OptimiseFor,
    Origin,
    Reading,
    RuleLike,
    ScaleBasis,
    StiffnessModel,
    StringRequest,
    Unit,
)
from scalewright_client._results import Compensation, Identification, Layout, Rules

__all__ = ["compensation", "identification", "layout", "rules"]


def rules() -> Call[Rules]:
    """Ask which spacing rules exist.

    Returns
    -------
    Rules
        Each rule with its divisor, its step and its shortfall of an octave.
    """
    return call("GET", "/v1/rules", Rules)


def layout(
    *,
    scale: Length,
    rule: RuleLike,
    frets: int,
    unit: Unit = "mm",
    scale_basis: ScaleBasis | None = None,
    fractions: int | None = None,
) -> Call[Layout]:
    """Ask where the frets go.

    Parameters
    ----------
    scale : float or str
        The scale. [unit, or its own]
    rule : str, RuleRequest or Rule
        The spacing rule; one out of an earlier answer is accepted too.
    frets : int
        Number of frets, 1 to 60.
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    scale_basis : {"layout", "true"}, optional
        Which of the two scales ``scale`` is; "layout" unless given.
    fractions : int, optional
        Add shop fractions with this denominator.

    Returns
    -------
    Layout
        One row a fret: ``frets[11].from_nut`` is fret 12. A bridge belongs at ``to_true_end`` plus
        the setback, never at ``to_layout_end``.
    """
    body = {
        "unit": unit,
        "scale": scale,
        "scale_basis": scale_basis,
        "rule": rule,
        "frets": frets,
        "fractions": fractions,
    }
    return call("POST", "/v1/layout", Layout, body)


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
    slot_width: Length | None = None,
    threshold: float | None = None,
    coverage: float | None = None,
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
    slot_width : float or str, optional
        Width of the slots or crowns, for readings taken at an edge. [unit, or its own]
    threshold : float, optional
        Probability that makes a rule established; 0.95 unless given. [-]
    coverage : float, optional
        Probability that the intervals of the answer cover; 0.95 unless given. [-]

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
        "slot_width": slot_width,
        "threshold": threshold,
        "coverage": coverage,
    }
    return call("POST", "/v1/identification", Identification, body)


def compensation(
    *,
    scale: Length,
    rule: RuleLike,
    heights: Heights,
    strings: Iterable[StringRequest],
    unit: Unit = "mm",
    scale_basis: ScaleBasis | None = None,
    frets: int | None = None,
    finger_behind_fret: Length | None = None,
    nut: Literal["fixed", "free"] | None = None,
    optimise_for: OptimiseFor | None = None,
    boundary_factor: float | None = None,
    stiffness: StiffnessModel | None = None,
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
    finger_behind_fret : float or str, optional
        How far behind the fret the finger bends the string. [unit, or its own]
    nut : {"fixed", "free"}, optional
        Whether the nut may be set back too; "fixed" unless given.
    optimise_for : OptimiseFor, optional
        Which frets to do best for, and how much each counts; all alike unless given.
    boundary_factor : float, optional
        Ends of the speaking length that are clamped, 0 to 2; 1 unless given. [-]
    stiffness : {"position", "length_and_tension"}, optional
        What the stiffness of a fretted note follows; "position" unless given.

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
        "finger_behind_fret": finger_behind_fret,
        "nut": nut,
        "optimise_for": optimise_for,
        "boundary_factor": boundary_factor,
        "stiffness": stiffness,
        "strings": strings,
    }
    return call("POST", "/v1/compensation", Compensation, body)
