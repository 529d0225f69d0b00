"""String materials: density, modulus and strength, each with the source it was taken from."""

import math
from dataclasses import dataclass

import numpy as np

__all__ = ["MATERIALS", "Material", "breaking_load", "tensile_strength"]

_INCH = 25.4
"""An inch, by definition. [mm]"""

_KSI = 4448.2216152605 / 25.4**2
"""A thousand pounds-force per square inch, by definition. [N/mm²]"""


@dataclass(frozen=True, slots=True)
class Material:
    """What a string is made of."""

    name: str
    """Trade name."""
    density: float
    """Density. [g/cm³]"""
    modulus: float
    """Young's modulus. [GPa]"""
    source: str
    """Where the two numbers come from."""
    modulus_range: tuple[float, float]
    """Lowest and highest modulus that sources give for it in a string. [GPa]"""
    bulk: bool = False
    """Whether the modulus is that of bulk material, which a drawn and settled string does not share."""
    music_wire: bool = False
    """Whether the strength of music wire applies."""


MATERIALS = {
    "steel": Material(
        name="music wire",
        density=7.85,
        modulus=200.0,
        source="Young 1952, inharmonicity of plain wire piano strings, as quoted elsewhere",
        modulus_range=(190.0, 207.0),  # a materials database page (read); spring-design practice (from memory)
        music_wire=True,
    ),
    "nylon": Material(
        name="nylon 6/6",
        density=1.14,
        modulus=2.69,
        source="data sheet of extruded nylon 6/6",
        modulus_range=(3.87, 8.33),  # settled treble strings, Anderson and Beausoleil 2024
        bulk=True,
    ),
    "fluorocarbon": Material(
        name="PVDF",
        density=1.77,
        modulus=2.21,
        source="data sheet of PVDF",
        modulus_range=(5.71, 13.04),  # settled treble strings, Anderson and Beausoleil 2024
        bulk=True,
    ),
    "nickel_plated_steel": Material(
        name="nickel-plated steel",
        density=7.85,
        modulus=200.0,
        source="common practice, no source: near steel, 7.8 to 7.9 g/cm³",
        modulus_range=(190.0, 207.0),
    ),
    "nickel": Material(
        name="nickel 200",
        density=8.89,
        modulus=205.0,
        source="value from memory",
        modulus_range=(205.0, 205.0),
    ),
    "stainless_steel": Material(
        name="stainless steel",
        density=7.9,
        modulus=193.0,
        source="value from memory",
        modulus_range=(190.0, 200.0),
    ),
    "phosphor_bronze": Material(
        name="phosphor bronze C51000",
        density=8.86,
        modulus=110.0,
        source="materials database page and foundry sheet",
        modulus_range=(110.0, 117.0),
    ),
    "bronze_80_20": Material(
        name="80/20 bronze (low brass C24000)",
        density=8.67,
        modulus=110.0,
        source="value from memory",
        modulus_range=(110.0, 110.0),
    ),
    "jewelry_bronze": Material(
        name="jewelry bronze C22600",
        density=8.7,
        modulus=110.0,
        source="materials database page",
        modulus_range=(110.0, 110.0),
    ),
    "silver_plated_copper": Material(
        name="silver-plated copper",
        density=8.96,
        modulus=117.0,
        source="value from memory, that of copper",
        modulus_range=(110.0, 128.0),
    ),
}
"""Materials of cores and wraps by the name that a request gives them."""

# ASTM A228 minimum tensile strength, as reproduced by a wire supplier: diameter [in], strength [ksi].
_MUSIC_WIRE = np.array(
    [
        *[(0.004, 439), (0.005, 426), (0.006, 415), (0.007, 407), (0.008, 399), (0.009, 393), (0.010, 387)],
        *[(0.011, 382), (0.012, 377), (0.013, 373), (0.014, 369), (0.015, 365), (0.016, 362), (0.018, 356)],
        *[(0.020, 350), (0.022, 345), (0.024, 341), (0.026, 337), (0.028, 333), (0.030, 330), (0.032, 327)],
        *[(0.034, 324), (0.036, 321), (0.038, 318), (0.040, 315), (0.042, 313), (0.045, 309), (0.048, 306)],
        *[(0.051, 303), (0.055, 300), (0.059, 296), (0.063, 293), (0.067, 290), (0.072, 287), (0.076, 284)],
        (0.080, 282),
    ]
)
_DIAMETERS, _STRENGTHS = _MUSIC_WIRE.T


def tensile_strength(material: Material, diameter: float) -> float | None:
    """Least stress at which new wire of this material and diameter may break.

    Parameters
    ----------
    material : Material
        What the wire is made of.
    diameter : float
        Diameter; of a hexagonal wire across the flats. [mm]

    Returns
    -------
    float or None
        Minimum tensile strength; None where no standard gives it. [N/mm²]

    Notes
    -----
    ASTM A228, minimum tensile strength, interpolated by diameter between 0.004 in and 0.080 in.
    A wire that is bent, nicked, rusty or wound breaks sooner.
    """
    inches = diameter / _INCH
    # A tenth of a thousandth either way, so that a gauge converted from millimetres stays in the table.
    slack = 1e-4
    if not material.music_wire or not _DIAMETERS[0] - slack <= inches <= _DIAMETERS[-1] + slack:
        return None
    return float(np.interp(inches, _DIAMETERS, _STRENGTHS)) * _KSI


def breaking_load(material: Material, diameter: float) -> float | None:
    """Least load at which new round wire may break: its tensile strength times its area. [N]"""
    strength = tensile_strength(material, diameter)
    return None if strength is None else strength * math.pi * diameter**2 / 4.0
