"""Windings: what a core and its wraps weigh, how thick they are together, and which section bends."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from scalewright.lutherie.errors import StringDescriptionError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.materials import MATERIALS
from scalewright.lutherie.phrases import plain

__all__ = [
    "CoreShape",
    "Section",
    "Wrap",
    "WrapForm",
    "WrapMaterial",
    "core_section",
    "seat_below",
    "set_wraps_aside",
    "wound_diameter",
    "wrap_mass",
]

CoreShape: TypeAlias = Literal["round", "hexagonal", "multifilament"]
"""Section of a core: a round wire, a hexagonal wire measured across its flats, or a bundle of filaments."""

WrapForm: TypeAlias = Literal["round", "flat", "ground"]
"""Section of a wrap: a round wire, a ribbon, or a round wire ground down after winding."""

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
"""Materials that a wrap may be made of; each stands in :data:`scalewright.lutherie.materials.MATERIALS`."""

_GROUND_OFF = 0.2
"""Share of a wrap's diameter that grinding takes where the outer diameter is not given; our choice, no source. [-]"""

_DIAMETER_SLACK = 0.05
"""Core and wraps may miss the outer diameter by this before it is pointed out; our choice, no source. [-]"""


@dataclass(frozen=True, slots=True)
class Wrap:
    """One layer of winding, touching turns."""

    material: WrapMaterial
    """What it is made of."""
    diameter: float
    """Diameter of the wire before it was ground; thickness of a ribbon. [mm]"""
    form: WrapForm = "round"
    """Section of the wire."""


@dataclass(frozen=True, slots=True)
class Section:
    """Section of a core."""

    area: float
    """Area that carries the tension. [mm²]"""
    gyration: float
    """Radius of gyration, as far as the section bends as one piece. [mm]"""
    seat: float
    """Diameter that the first wrap lies on. [mm]"""


def core_section(shape: CoreShape, diameter: float) -> Section:
    """Section of a core.

    Parameters
    ----------
    shape : {"round", "hexagonal", "multifilament"}
        Its shape.
    diameter : float
        Its diameter; of a hexagonal wire across the flats. [mm]

    Returns
    -------
    Section
        A hexagon of width w across flats has the area sqrt(3)/2 w², the second moment 5 sqrt(3)/144 w⁴
        about any axis, and corners on a circle of 2 w/sqrt(3). A bundle of filaments is taken as a full
        circle that carries but does not resist bending, as its filaments slide.
    """
    if shape == "hexagonal":
        area = math.sqrt(3.0) / 2.0 * diameter**2
        return Section(area, math.sqrt(5.0 * math.sqrt(3.0) / 144.0 * diameter**4 / area), seat_below(shape, diameter))
    area = math.pi / 4.0 * diameter**2
    return Section(area, 0.0 if shape == "multifilament" else diameter / 4.0, diameter)


def seat_below(shape: CoreShape, diameter: float) -> float:
    """Diameter that the first wrap lies on: the corners of a hexagonal core, the surface of any other. [mm]"""
    return 2.0 / math.sqrt(3.0) * diameter if shape == "hexagonal" else diameter


def wound_diameter(seat: float, wraps: Sequence[Wrap]) -> float:
    """Outer diameter of a core with its wraps, before grinding. [mm]"""
    return seat + 2.0 * sum(wrap.diameter for wrap in wraps)


def wrap_mass(seat: float, wraps: Sequence[Wrap], outer: float | None, notes: list[Note]) -> float:
    r"""Mass per length of the wraps of a string.

    Parameters
    ----------
    seat : float
        Diameter that the first wrap lies on. [mm]
    wraps : sequence of Wrap
        The wraps, from the core outwards.
    outer : float or None
        Outer diameter of the string, which tells how far a ground wrap was ground. [mm]
    notes : list of Note
        Takes what had to be assumed.

    Returns
    -------
    float
        Mass per length. [g/m]

    Raises
    ------
    StringDescriptionError
        A ground wrap below another one.

    Notes
    -----
    A helix of touching turns of a wire of diameter d on a seat of diameter D has the mass per length
    :math:`\rho \pi^2 d (D + d)/4 \cdot \sqrt{1 + (d/(\pi (D + d)))^2}`. A ribbon fills its layer, a
    tube of thickness d. What grinding takes off is a segment of the wire's circle at its own distance
    from the axis (Pappus). The turns are taken as round even over a hexagonal core, on its corners.
    """
    total, below = 0.0, seat
    for index, wrap in enumerate(wraps):
        d, last = wrap.diameter, index == len(wraps) - 1
        density = MATERIALS[wrap.material].density
        if wrap.form == "ground" and not last:
            message = "only the outermost wrap can be ground; the wraps stand in order from the core outwards"
            raise StringDescriptionError(message, field=("wraps", index, "form"), example="round")
        if wrap.form == "flat":
            total += density * math.pi * d * (below + d)
        else:
            helix = math.sqrt(1.0 + (d / (math.pi * (below + d))) ** 2)
            swept = math.pi**2 * d * (below + d) / 4.0  # volume per length of round touching turns
            if wrap.form == "ground":
                swept -= _ground_volume(below, d, _ground_depth(below, d, outer, notes))
            total += density * swept * helix
        below += 2.0 * d
    _compare_diameters(below, wraps, outer, notes)
    notes.append(
        Note(
            "mass-from-wraps",
            "Mass of the winding from touching turns: "
            + ", ".join(f"{plain(MATERIALS[wrap.material].density)} g/cm³ for {_told(wrap)}" for wrap in wraps)
            + ".",
        )
    )
    return total


def set_wraps_aside(seat: float, wraps: Sequence[Wrap], outer: float | None, notes: list[Note]) -> None:
    """Say that the wraps of a string whose mass is known were not weighed, and whether its diameters differ.

    Parameters
    ----------
    seat : float
        Diameter of the core that the first wrap lies on. [mm]
    wraps : sequence of Wrap
        The wraps, from the core outwards.
    outer : float or None
        Outer diameter of the string where it was given. [mm]
    notes : list of Note
        Takes what is to be said.
    """
    _compare_diameters(wound_diameter(seat, wraps), wraps, outer, notes)
    notes.append(Note("wraps-not-weighed", "The wraps were not weighed, as the mass of the string is known without."))


def _told(wrap: Wrap) -> str:
    """Name of a material with its source."""
    material = MATERIALS[wrap.material]
    return f"{material.name} ({material.source})"


def _ground_depth(below: float, d: float, outer: float | None, notes: list[Note]) -> float:
    """How much of the wire's diameter was ground away, on the outside. [mm]"""
    if outer is None:
        text = (
            f"The outer diameter of a ground string is not given: {_GROUND_OFF:.0%} of its wrap is taken as ground off."
        )
        notes.append(Note("ground-depth-assumed", text))
        return _GROUND_OFF * d
    return min(max(0.5 * (below + 2.0 * d - outer), 0.0), d)


def _ground_volume(below: float, d: float, depth: float) -> float:
    """Volume per length that grinding takes off touching turns. [mm²]"""
    if depth == 0.0:
        return 0.0
    r = 0.5 * d
    half_angle = math.acos((r - depth) / r)
    segment = r**2 * (half_angle - math.sin(half_angle) * math.cos(half_angle))
    out = 2.0 * (r * math.sin(half_angle)) ** 3 / (3.0 * segment)  # of its centroid, from the wire's centre
    return 2.0 * math.pi * segment * (0.5 * (below + d) + out) / d


def _compare_diameters(wound: float, wraps: Sequence[Wrap], outer: float | None, notes: list[Note]) -> None:
    """Point out an outer diameter that core and wraps do not add up to."""
    if outer is None or any(wrap.form == "ground" for wrap in wraps):
        return
    if abs(wound - outer) > _DIAMETER_SLACK * outer:
        text = f"Core and wraps add up to {wound:.3f} mm, and the outer diameter is given as {outer:.3f} mm."
        notes.append(Note("diameters-differ", text))
