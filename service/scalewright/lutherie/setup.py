"""Setups: a board, its strings and how they lie over it."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from scalewright.lutherie.layout import ScaleBasis
from scalewright.lutherie.spacing import Rule
from scalewright.lutherie.string_path import ALONG_THE_SCALE, StiffnessModel
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.temperament import Target

__all__ = ["Action", "Heights", "Relief", "ReliefShape", "Setup"]

ReliefShape: TypeAlias = Literal["parabola", "tilt"]
"""How the fret tops leave the straight line: hollow between fret 1 and the last, or falling away from the nut."""


@dataclass(frozen=True, slots=True)
class Relief:
    """How far the fret tops leave the straight line."""

    depth: float
    """Gap under a straightedge from fret 1 to the last fret; of a tilt, the fall at half the scale. [mm]"""
    shape: ReliefShape = "parabola"
    """A parabola over that stretch, deepest in its middle, or a straight fall that starts at the nut."""


@dataclass(frozen=True, slots=True)
class Action:
    """String height at a fret, as a player knows it."""

    fret: int
    """Number of the fret."""
    height: float
    """Underside of the string above the top of that fret, string not pressed. [mm]"""


@dataclass(frozen=True, slots=True)
class Heights:
    """How high the strings lie; one of ``saddle_above_nut`` and ``action``."""

    nut: float
    """Underside of the string above the plane of the fret tops at the nut. [mm]"""
    saddle_above_nut: float | None = None
    """How much higher it is at the saddle than at the nut. [mm]"""
    action: Action | None = None
    """Height at a fret, from which the height at the saddle follows in a straight line."""


@dataclass(frozen=True, slots=True)
class Setup:
    """A board, its strings and how they lie."""

    rule: Rule
    """Spacing rule of the board."""
    scale: float
    """Its scale. [mm]"""
    frets: int
    """Its number of frets."""
    strings: Sequence[StringSpec]
    """The strings."""
    heights: Heights
    """How high they lie."""
    scale_basis: ScaleBasis = "layout"
    """Whether ``scale`` is the layout scale or the true scale."""
    finger_behind_fret: float = 0.0
    """How far behind the fret the finger presses the string down. [mm]"""
    boundary_factor: float = 1.0
    """Ends of the speaking length that are clamped: 0, 1 (the fret) or 2, or between. [-]"""
    stiffness: StiffnessModel = ALONG_THE_SCALE
    """What the stiffness of a fretted note follows."""
    relief: Relief | None = None
    """How far the fret tops leave the straight line; None where they lie on it."""
    fret_height: float | None = None
    """How far below the fret's top the finger presses the string; None where it goes straight on behind it. [mm]"""
    sliding_length: float = 0.0
    """Length of string beyond nut and saddle that slides over them and stretches too. [mm]"""
    target: Target | None = None
    """Temperament that the board should sound in; None for the equal one nearest to the rule."""
