"""Strings, as a bench or a catalogue describes them."""

from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._requests.quantities import Length

__all__ = ["CoreMaterial", "CoreShape", "StringRequest", "Tuning", "Wrap", "WrapForm", "WrapMaterial"]

CoreMaterial: TypeAlias = Literal["steel", "nylon", "fluorocarbon"]
"""What a core, or the whole of a plain string, is made of."""

CoreShape: TypeAlias = Literal["round", "hexagonal", "multifilament"]
"""Section of a core."""

WrapMaterial: TypeAlias = Literal[
    "nickel_plated_steel",
    "nickel",
    "steel",
    "stainless_steel",
    "phosphor_bronze",
    "bronze_80_20",
    "jewelry_bronze",
    "silver_plated_copper",
    "nylon",
]
"""What a winding is made of."""

WrapForm: TypeAlias = Literal["round", "flat", "ground"]
"""Section of the wire of a winding."""

Tuning: TypeAlias = Literal[
    "six_string_standard",
    "six_string_dropped_d",
    "seven_string_standard",
    "twelve_string_standard",
    "baritone_six_string",
    "bass_four_string",
    "bass_five_string",
    "bass_six_string",
    "ukulele_high_g",
    "ukulele_low_g",
    "ukulele_baritone",
    "mandolin",
    "mandolin_paired",
    "octave_mandolin",
    "banjo_five_string",
    "banjo_tenor",
    "banjo_plectrum",
]
"""Name of a common tuning, for strings that give no pitch of their own."""


class Wrap(TypedDict, total=False):
    """One layer of winding, touching turns."""

    material: Required[WrapMaterial]
    """What it is made of."""
    diameter: Required[Length]
    """Diameter of the wire before it was ground; thickness of a ribbon. [unit, or its own]"""
    form: WrapForm
    """Section of the wire; "round" unless given."""


class StringRequest(TypedDict, total=False):
    """One string: measured (``unit_mass``, ``R`` or ``kappa``) or described by material and gauge."""

    pitch: str | float
    """Open pitch: its name, "E4", or its frequency; needed unless ``tuning`` names it. [Hz]"""
    diameter: Length
    """Outer diameter. [unit, or its own]"""
    unit_mass: float
    """Mass per length. [g/m]"""
    tension: float
    """Tension at pitch, instead of ``unit_mass``. [N]"""
    R: float
    """Relative change of frequency with length in a stretch test, (L/f) df/dL. [-]"""
    kappa: float
    """Relative change of tension with length, 2 R + 1; instead of ``R``. [-]"""
    core_material: CoreMaterial
    """What the core, or the whole of a plain string, is made of; needed without ``R`` and ``kappa``."""
    core_diameter: Length
    """Diameter of the core, of a hexagonal one across the flats; a plain string has none. [unit, or its own]"""
    core_shape: CoreShape
    """Section of the core; "round" unless given."""
    wraps: list[Wrap]
    """Windings, from the core outwards."""
    B0: float
    """Stiffness of the open string where it was measured, from its partials for instance. [-]"""
