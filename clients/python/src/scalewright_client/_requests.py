"""What goes into a request: lengths, rules, readings, strings."""

from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._results import Rule

__all__ = [
    "ActionAtFret",
    "Heights",
    "Length",
    "OptimiseFor",
    "Origin",
    "Point",
    "Reading",
    "RuleLike",
    "RuleRequest",
    "ScaleBasis",
    "StiffnessModel",
    "StringRequest",
    "Unit",
]

Length: TypeAlias = float | str
"""A length: a number in the request's ``unit``, or a text with its own unit ("24 9/16 in", "628.65 mm")."""

Unit: TypeAlias = Literal["mm", "in"]
"""Unit of plain numbers in the request and of every length in the answer."""

ScaleBasis: TypeAlias = Literal["layout", "true"]
"""What ``scale`` names: the length the rule is applied to, or twice the distance to the octave fret."""

Origin: TypeAlias = Literal["nut", "zero_fret"]
"""What readings "from the nut" were measured from."""

Point: TypeAlias = Literal["centre", "near_edge", "far_edge"]
"""Which part of the slot or crown the caliper touched."""


StiffnessModel: TypeAlias = Literal["position", "length_and_tension"]
"""What the stiffness of a fretted note follows: its position, or its own length and tension."""


class RuleRequest(TypedDict, total=False):
    """A spacing rule."""

    name: Required[Literal["equal", "eighteenth", "divisor", "listed"]]
    steps: int
    """Steps to the octave, for "equal" (12 unless given)."""
    divisor: float
    """What the remaining length is divided by, for "divisor". [-]"""
    cents: list[float]
    """One pitch for each fret, ascending, for "listed". [cent]"""
    repeat: bool
    """Whether "listed" starts again an octave higher where the list ends."""


RuleLike: TypeAlias = Literal["equal", "eighteenth"] | RuleRequest | Rule
"""A spacing rule: its bare name, in full, or out of an earlier answer."""


# "from" is a word of Python, so this one is written as a call.
Reading = TypedDict(
    "Reading",
    {
        "from": int,
        "to": Required[int],
        "distance": Required[Length],
        "uncertainty": Length,
        "point": Point,
    },
    total=False,
)
Reading.__doc__ = "One measured distance, from fret 0 (the nut) unless given, with its standard uncertainty (k = 1)."


class ActionAtFret(TypedDict):
    """String height at a fret, as a player knows it."""

    fret: int
    height: Length
    """Underside of the string above the crown of that fret, string not pressed."""


class Heights(TypedDict, total=False):
    """Underside of the strings above the plane of the fret tops, strings not pressed."""

    nut: Required[Length]
    """Height at the nut."""
    saddle_above_nut: Length
    """How much higher the string lies at the saddle than at the nut."""
    action: ActionAtFret
    """Given instead of ``saddle_above_nut``."""


class OptimiseFor(TypedDict, total=False):
    """Which frets the setbacks are to be best for."""

    frets: Required[list[int]]
    """Numbers of the frets, each once."""
    weights: list[float]
    """How much the squared error of each counts; all alike unless given. [-]"""


class StringRequest(TypedDict, total=False):
    """One string: measured (``unit_mass``, ``R`` or ``kappa``) or described by material and gauge."""

    pitch: Required[str | float]
    """Open pitch: its name, "E4", or its frequency. [Hz]"""
    diameter: Length
    """Outer diameter."""
    unit_mass: float
    """Mass per length. [g/m]"""
    tension: float
    """Tension at pitch, instead of ``unit_mass``. [N]"""
    R: float
    """Relative change of frequency with length in a stretch test, (L/f) df/dL. [-]"""
    kappa: float
    """Relative change of tension with length, 2 R + 1; instead of ``R``. [-]"""
    core_material: str
    """What the core, or the whole of a plain string, is made of, "steel"; needed without ``R`` and ``kappa``."""
    core_diameter: Length
    """Diameter of the core; the string is plain unless given."""
