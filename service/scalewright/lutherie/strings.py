"""Strings: unit mass, tension and stiffness of an open string, and what each number rests on."""

import math

from scalewright.lutherie.errors import ImpossibleStringError, StringDescriptionError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.materials import MATERIALS, Material, tensile_strength
from scalewright.lutherie.phrases import plain
from scalewright.lutherie.string_spec import (
    BendingSource,
    MassSource,
    OpenString,
    StretchSource,
    StringSpec,
)
from scalewright.lutherie.temperament import frequency_of
from scalewright.lutherie.winding import (
    Section,
    core_section,
    seat_below,
    set_wraps_aside,
    wound_diameter,
    wrap_mass,
)

__all__ = ["BREAKING_CAUTION", "open_string"]

BREAKING_CAUTION = 0.75
"""Share of the minimum breaking load above which a string gets a caution; our choice, no source. [-]"""

_BEYOND_BREAKING = 10.0
"""How many times the breaking load is taken for a slip of the pen and refused; our choice. [-]"""

_SLACK = 5.0
"""Below this tension a string hardly sounds: common practice, no source. [N]"""

_THICKEST = 10.0
"""Thicker than any string of a fretted instrument: common practice, no source. [mm]"""

_DENSEST = 22.6
"""Density of osmium, the densest metal; a string can't be denser: value from memory. [g/cm³]"""


def open_string(spec: StringSpec, length: float) -> OpenString:
    """Mass, tension and stiffness of a string at its pitch.

    Parameters
    ----------
    spec : StringSpec
        The string.
    length : float
        Its open length, taken as the scale length. [mm]

    Returns
    -------
    OpenString
        The string at pitch, with a note for every assumption.

    Raises
    ------
    UnknownPitchError
        A name that is no pitch.
    ImpossibleStringError
        A string that cannot be; ``field`` names the member at fault.
    StringDescriptionError
        A string described by too little or by too much.

    Notes
    -----
    Tension is that of an ideal string, T = mu (2 L f)²; stiffness would lower it by 2 B0, some parts
    in a thousand, and the published tables (Anderson and Beausoleil 2024) leave that out too.
    Tension is carried and bending resisted by the core alone; a winding only adds mass.
    """
    frequency = frequency_of(spec.pitch)
    notes: list[Note] = []
    outer, core = _diameters(spec, notes)
    section = core_section(spec.core_shape, core)
    material = MATERIALS[spec.core_material] if spec.core_material is not None else None
    pull = (2e-3 * length * frequency) ** 2 * 1e-3  # tension of 1 g/m at this length and pitch [N]
    unit_mass, mass_from = _unit_mass(spec, material, outer, section, pull, notes)
    if 4.0 * unit_mass / (math.pi * outer**2) > _DENSEST:
        message = (
            "so much mass in this diameter would be denser than any metal; unit_mass is in grams per metre "
            "(the same number as mg/mm) and diameter is the outer one"
        )
        raise ImpossibleStringError(message, field=("unit_mass",), example=0.374)
    tension = unit_mass * pull
    share = _breaking_share(spec, material, core, section.area, tension, notes)
    kappa, kappa_from = _kappa(spec, material, section.area, tension, notes)
    gyration, bending_from = _gyration(spec, outer, section, kappa, length, notes)
    if tension < _SLACK:
        notes.append(Note("slack", f"Below about {_SLACK:g} N a string hardly sounds: check its mass and pitch."))
    return OpenString(
        pitch=spec.pitch,
        frequency_hz=frequency,
        unit_mass=unit_mass,
        tension_n=tension,
        kappa=kappa,
        gyration=gyration,
        B0=math.sqrt(kappa) * gyration / length,
        stiffness_n=kappa * tension,
        breaking_share=share,
        unit_mass_from=mass_from,
        kappa_from=kappa_from,
        B0_from=bending_from,
        notes=notes,
    )


def _diameters(spec: StringSpec, notes: list[Note]) -> tuple[float, float]:
    """Outer diameter and core diameter, each standing in for the other where only one is known. [mm]"""
    _within(("diameter",), spec.diameter)
    _within(("core_diameter",), spec.core_diameter)
    for index, wrap in enumerate(spec.wraps):
        _within(("wraps", index, "diameter"), wrap.diameter)
    outer, core = spec.diameter, spec.core_diameter
    if outer is None and core is None:
        message = "the thickness of the string is missing; give its outer diameter, or the core's of a plain string"
        raise StringDescriptionError(message, field=("diameter",), example="0.712 mm")
    if core is None:
        core = _core_below(spec, outer or 0.0, notes)
    if outer is None:
        outer = wound_diameter(seat_below(spec.core_shape, core), spec.wraps) if spec.wraps else core
        _within(("wraps",), outer)
    if core > outer:
        message = "the core is thicker than the string; core_diameter is at most diameter, the outer one"
        raise ImpossibleStringError(message, field=("core_diameter",), core_diameter_mm=core, diameter_mm=outer)
    return outer, core


def _within(field: tuple[str | int, ...], value: float | None) -> None:
    """Refuse a thickness that no string has."""
    if value is not None and not 0.0 < value <= _THICKEST:
        message = (
            f"a string is between 0 and {_THICKEST:g} mm thick; write the unit with the number if in doubt, "
            'as in "0.712 mm" or "0.028 in"'
        )
        raise ImpossibleStringError(message, field=field, example="0.712 mm")


def _core_below(spec: StringSpec, outer: float, notes: list[Note]) -> float:
    """Diameter of a core that is not given: what the wraps leave of the outer diameter. [mm]"""
    if not spec.wraps:
        return outer
    core = (outer - wound_diameter(0.0, spec.wraps)) / seat_below(spec.core_shape, 1.0)
    if not core > 0.0:
        message = "the wraps leave no room for a core; diameter is the outer one, and each wrap counts twice"
        raise ImpossibleStringError(message, field=("wraps",), diameter_mm=outer)
    text = (
        f"Core of {core:.3f} mm: what the wraps leave of the outer diameter. Measure it if you can, as it counts much."
    )
    notes.append(Note("core-from-wraps", text))
    return core


def _unit_mass(
    spec: StringSpec, material: Material | None, outer: float, section: Section, pull: float, notes: list[Note]
) -> tuple[float, MassSource]:
    """Mass per length: measured, or from the tension, or from density and section. [g/m]"""
    if spec.unit_mass is not None and spec.tension is not None:
        message = "unit_mass and tension say the same thing at a known pitch and length; give one of them"
        raise StringDescriptionError(message, field=("tension",))
    if spec.wraps and (spec.unit_mass is not None or spec.tension is not None):
        set_wraps_aside(section.seat, spec.wraps, spec.diameter, notes)
    if spec.unit_mass is not None:
        if not spec.unit_mass > 0.0:
            message = "a string has a mass; give unit_mass in grams per metre, above zero"
            raise ImpossibleStringError(message, field=("unit_mass",), example=0.374)
        return spec.unit_mass, "measured"
    if spec.tension is not None:
        if not spec.tension > 0.0:
            message = "a string at pitch is under tension; give tension in newtons, above zero"
            raise ImpossibleStringError(message, field=("tension",), example=68.6)
        return spec.tension / pull, "tension"
    if material is None:
        message = (
            "the mass of the string is missing; give unit_mass in grams per metre, or tension, "
            'or core_material, such as "steel" (with wraps if it is wound)'
        )
        raise StringDescriptionError(message, field=("unit_mass",), example=0.374)
    if section.seat < outer * (1.0 - 1e-9) and not spec.wraps:
        message = (
            "a wound string weighs more than its core; give its measured unit_mass in grams per metre, "
            "or its wraps with material and diameter"
        )
        raise StringDescriptionError(message, field=("unit_mass",), example=3.289)
    notes.append(
        Note(
            "mass-from-density",
            f"Mass from a density of {plain(material.density)} g/cm³ for {material.name} ({material.source}).",
        )
    )
    mass = material.density * section.area
    if spec.wraps:
        mass += wrap_mass(section.seat, spec.wraps, spec.diameter, notes)
    return mass, "material"


def _kappa(
    spec: StringSpec, material: Material | None, area: float, tension: float, notes: list[Note]
) -> tuple[float, StretchSource]:
    """Relative change of tension with length: measured, or from modulus and section of the core. [-]"""
    if spec.R is not None and spec.kappa is not None:
        message = "R and kappa say the same thing (kappa = 2 R + 1); give one of them"
        raise StringDescriptionError(message, field=("kappa",))
    if spec.R is not None:
        if not spec.R > 0.0:
            message = "a string rises in pitch when it is stretched; R is above zero, most often 15 to 60"
            raise ImpossibleStringError(message, field=("R",), example=23.6)
        return 2.0 * spec.R + 1.0, "R"  # Anderson and Beausoleil 2024: f goes as sqrt(T/mu)/L with L stretched
    if spec.kappa is not None:
        if not spec.kappa > 0.0:
            message = "a string rises in tension when it is stretched; kappa is above zero, most often 30 to 150"
            raise ImpossibleStringError(message, field=("kappa",), example=48.2)
        return spec.kappa, "kappa"
    if material is None:
        message = (
            "how the string answers to stretch is missing; give R or kappa from a stretch test, "
            'or core_material and core_diameter, such as "steel" and "0.010 in"'
        )
        raise StringDescriptionError(message, field=("R",), example=23.6)
    low, high = material.modulus_range
    if material.bulk:
        text = (
            f"Stiffness from a bulk modulus of {plain(material.modulus)} GPa ({material.source}). A drawn and settled "
            f"string is stiffer, {plain(low)} to {plain(high)} GPa in published tests: measure R in a stretch test."
        )
        notes.append(Note("bulk-modulus", text))
    else:
        text = (
            f"Stiffness from a modulus of {plain(material.modulus)} GPa for {material.name} ({material.source}); "
            f"other sources give {plain(low)} to {plain(high)} GPa."
        )
        notes.append(Note("catalogue-modulus", text))
    if spec.core_shape == "multifilament":
        text = "The filaments are taken to fill the core's circle; a real bundle carries and weighs less: measure R."
        notes.append(Note("filaments-taken-as-full", text))
    return 1e3 * material.modulus * area / tension, "modulus"


def _gyration(
    spec: StringSpec, outer: float, section: Section, kappa: float, length: float, notes: list[Note]
) -> tuple[float, BendingSource]:
    """Radius of gyration of the section that bends. [mm]"""
    if spec.B0 is not None:
        if not spec.B0 >= 0.0:
            message = "stiffness is not negative; B0 is most often 0.001 to 0.004"
            raise ImpossibleStringError(message, field=("B0",), example=0.0019)
        return spec.B0 * length / math.sqrt(kappa), "measured"
    if spec.core_shape == "multifilament":
        text = (
            "Filaments that slide hardly bend as one: the stiffness is taken as zero. "
            "Give B0 where it was measured, or leave core_shape out to take the core as solid."
        )
        notes.append(Note("filaments-slide", text))
        return section.gyration, "sliding_filaments"
    if spec.core_diameter is not None or spec.wraps:
        return section.gyration, "core"
    text = "Taken as plain: the whole section bends. Of a wound string give core_diameter, since only its core does."
    notes.append(Note("taken-as-plain", text))
    return outer / 4.0 if spec.core_shape == "round" else section.gyration, "whole_section"


def _breaking_share(
    spec: StringSpec, material: Material | None, core: float, area: float, tension: float, notes: list[Note]
) -> float | None:
    """Tension over the minimum breaking load, with a caution near it. [-]"""
    strength = None if material is None else tensile_strength(material, core)
    if strength is None:
        return None
    load = strength * area
    share = tension / load
    if share > _BEYOND_BREAKING:
        field = next((name for name in ("unit_mass", "tension") if getattr(spec, name) is not None), "core_diameter")
        message = (
            f"this pitch at this length pulls {share:.0f} times what such a wire breaks at; "
            "check the pitch, the scale and the unit mass"
        )
        raise ImpossibleStringError(message, field=(field,), tension_n=tension, breaking_load_n=load)
    if share > BREAKING_CAUTION:
        fate = "A string can break without warning"
        if share > 1.0:
            fate = "Expect the string to break before it is up to pitch, and choose a lower pitch or a shorter scale"
        text = (
            f"Tension is {100.0 * share:.0f} % of the minimum breaking load (ASTM A228). {fate}: "
            "protect your eyes, keep your face out of its line, bring it up slowly and follow its maker's limits."
        )
        notes.append(Note("near-breaking", text))
    return share
