"""How strings lie over a board."""

from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._requests.quantities import Length

__all__ = ["ActionAtFret", "Heights", "Relief", "StiffnessModel"]

StiffnessModel: TypeAlias = Literal["position", "length_and_tension"]
"""What the stiffness of a fretted note follows: its position, or its own length and tension."""


class ActionAtFret(TypedDict):
    """String height at a fret, as a player knows it."""

    fret: int
    height: Length
    """Underside of the string above the crown of that fret, string not pressed. [unit, or its own]"""


class Heights(TypedDict, total=False):
    """Underside of the strings above the plane of the fret tops, strings not pressed."""

    nut: Required[Length]
    """Height at the nut. [unit, or its own]"""
    saddle_above_nut: Length
    """How much higher the string lies at the saddle than at the nut. [unit, or its own]"""
    action: ActionAtFret
    """Given instead of ``saddle_above_nut``."""


class Relief(TypedDict, total=False):
    """How far the fret tops leave the straight line."""

    depth: Required[Length]
    """Gap under a straightedge from fret 1 to the last; of a tilt, the fall at half the scale. [unit, or its own]"""
    shape: Literal["parabola", "tilt"]
    """A parabola (unless given), or a straight fall that starts at the nut."""
