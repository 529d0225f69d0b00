"""String specs: a string as its maker or a bench describes it, and as it is at its open pitch."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from scalewright.lutherie.estimate import Note
from scalewright.lutherie.winding import CoreShape, Wrap

__all__ = ["BendingSource", "CoreMaterial", "MassSource", "OpenString", "StretchSource", "StringSpec"]

MassSource: TypeAlias = Literal["measured", "tension", "material"]
"""What a unit mass rests on: it was given, it follows from the tension, or from material and gauge."""

StretchSource: TypeAlias = Literal["R", "kappa", "modulus"]
"""What kappa rests on: a stretch test, or the modulus of the core's material."""

BendingSource: TypeAlias = Literal["measured", "core", "whole_section", "sliding_filaments"]
"""What B0 rests on: it was given, or the section that bends is the core, the whole string, or nothing."""

CoreMaterial: TypeAlias = Literal["steel", "nylon", "fluorocarbon"]
"""Materials that a core may be made of; each stands in :data:`scalewright.lutherie.materials.MATERIALS`."""


@dataclass(frozen=True, slots=True)
class StringSpec:
    """A string as its maker or a bench describes it; what is not known is None."""

    pitch: str
    """Name of the open pitch, or its frequency with the unit."""
    diameter: float | None = None
    """Outer diameter. [mm]"""
    unit_mass: float | None = None
    """Mass per length. [g/m]"""
    tension: float | None = None
    """Tension at pitch. [N]"""
    R: float | None = None
    """Relative change of frequency with length in a stretch test, (L/f) df/dL. [-]"""
    kappa: float | None = None
    """Relative change of tension with length, (L/T) dT/dL. [-]"""
    core_material: CoreMaterial | None = None
    """What the core, or the whole of a plain string, is made of."""
    core_diameter: float | None = None
    """Diameter of the core, across the flats if it is hexagonal; of a plain string the outer one. [mm]"""
    core_shape: CoreShape = "round"
    """Section of the core."""
    wraps: Sequence[Wrap] = ()
    """Windings, from the core outwards."""
    B0: float | None = None
    """Stiffness of the open string where it was measured, from its partials for instance. [-]"""


@dataclass(frozen=True, slots=True)
class OpenString:
    """A string at its open pitch."""

    pitch: str
    """Name of the open pitch, or its frequency with the unit."""
    frequency_hz: float
    """Frequency of the open string. [Hz]"""
    unit_mass: float
    """Mass per length. [g/m]"""
    tension_n: float
    """Tension at pitch. [N]"""
    kappa: float
    """Relative change of tension with length, E A/T of the part that carries it. [-]"""
    gyration: float
    """Radius of gyration of the section that bends: half its radius where it is solid and round. [mm]"""
    B0: float
    """Stiffness of the open string, sqrt(kappa) times the radius of gyration over its length. [-]"""
    stiffness_n: float
    """E A of what carries the tension, kappa times the tension. [N]"""
    breaking_share: float | None
    """Tension over the minimum breaking load; None where no standard gives the strength. [-]"""
    unit_mass_from: MassSource
    """What the unit mass, and with it the tension, rests on."""
    kappa_from: StretchSource
    """What kappa rests on."""
    B0_from: BendingSource
    """What the section that bends was taken to be."""
    notes: list[Note]
    """What the numbers rest on, and cautions."""
