"""Strings on the wire: as a bench or a catalogue describes them."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Annotated, TypeAlias

from pydantic import BaseModel, ConfigDict, Field, PlainValidator, WithJsonSchema
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from scalewright.lutherie.estimate import Note
from scalewright.lutherie.phrases import given
from scalewright.lutherie.string_spec import BendingSource, CoreMaterial, MassSource, StretchSource, StringSpec
from scalewright.lutherie.temperament import HIGHEST_HZ, LOWEST_HZ
from scalewright.lutherie.tunings import TUNINGS, TuningName
from scalewright.lutherie.winding import CoreShape, Wrap, WrapForm, WrapMaterial
from scalewright.wire.length_text import LONGEST_TEXT
from scalewright.wire.quantities import Length

__all__ = [
    "MOST_STRINGS",
    "OpenStringOut",
    "Pitch",
    "StringIn",
    "Strings",
    "Tuning",
    "WrapIn",
    "refuse_unnamed_pitches",
    "string_specs",
]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)

MOST_STRINGS = 24
"""The most strings that one question may hold."""


def _read_pitch(value: object) -> str:
    """Take a name as it is, for the craft to judge, and a number as hertz."""
    if isinstance(value, str) and len(value) <= LONGEST_TEXT:
        return value
    if isinstance(value, int | float) and not isinstance(value, bool) and LOWEST_HZ <= value <= HIGHEST_HZ:
        return f"{float(value)!r} Hz"
    message = (
        f'A pitch is a name such as "E4", "F#3" or "Bb2" (at most {LONGEST_TEXT} characters), '
        f"or a number of hertz from {LOWEST_HZ:g} to {HIGHEST_HZ:g}."
    )
    problem = PydanticCustomError("pitch_type", "{reason}", {"reason": message})
    raise problem


Pitch: TypeAlias = Annotated[
    str,
    PlainValidator(_read_pitch),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "string", "minLength": 1, "maxLength": LONGEST_TEXT},
                {"type": "number", "minimum": LOWEST_HZ, "maximum": HIGHEST_HZ},
            ],
            "examples": ["E4"],
        }
    ),
]
"""Open pitch: a name, or a number in hertz."""


Tuning: TypeAlias = Annotated[
    TuningName | None,
    Field(
        description="Open pitches by the name of a common tuning, for strings that give no `pitch` of their own; as "
        "many strings as it has pitches, in this order: "
        + "; ".join(f"{name}: {' '.join(pitches)}" for name, pitches in TUNINGS.items())
        + ".",
        examples=["six_string_standard"],
    ),
]
"""Name of a tuning."""


class WrapIn(BaseModel):
    """One layer of winding, touching turns."""

    model_config = _STRICT

    material: Annotated[WrapMaterial, Field(examples=["phosphor_bronze"])]
    """What it is made of. A wrap that is sold as nickel is most often nickel-plated steel."""
    diameter: Annotated[Length, Field(examples=["0.010 in"])]
    """Diameter of the wire before it was ground; thickness of a ribbon. [unit]"""
    form: WrapForm = "round"
    """Section of the wire: round, a flat ribbon, or a round wire ground down (the outermost wrap only)."""

    def to_domain(self) -> Wrap:
        """Return the wrap."""
        return Wrap(self.material, self.diameter, self.form)


class StringIn(BaseModel):
    """One string: measured (`unit_mass`, `R` or `kappa`) or described by material and gauge."""

    model_config = _STRICT

    pitch: Annotated[Pitch | None, Field(examples=["E4"])] = None
    """Open pitch: a name such as "E4", "F#3", "Bb2" (A4 = 440 Hz), or a number in hertz; needed unless `tuning`
    names it."""
    diameter: Annotated[Length | None, Field(examples=[0.712])] = None
    """Outer diameter. [unit]"""
    unit_mass: Annotated[float, Field(gt=0.0, le=1000.0, examples=[0.374])] | None = None
    """Mass per length, g/m (the same number as mg/mm); left out, it follows from `tension` or from the materials."""
    tension: Annotated[float, Field(gt=0.0, le=10_000.0, examples=[68.6])] | None = None
    """Tension at pitch, N; instead of `unit_mass`."""
    R: Annotated[float, Field(gt=0.0, le=1000.0, examples=[23.6])] | None = None
    """Relative change of frequency with length in a stretch test, (L/f) df/dL."""
    kappa: Annotated[float, Field(gt=0.0, le=2001.0, examples=[48.2])] | None = None
    """Relative change of tension with length, 2 R + 1; instead of `R`."""
    core_material: Annotated[CoreMaterial | None, Field(examples=["steel"])] = None
    """What the core, or the whole of a plain string, is made of; needed where `R` and `kappa` are not known."""
    core_diameter: Annotated[Length | None, Field(examples=["0.010 in"])] = None
    """Diameter of the core, of a hexagonal one across the flats; left out, the string is taken as plain. [unit]"""
    core_shape: CoreShape = "round"
    """Section of the core: a round or a hexagonal wire, or a bundle of filaments, which hardly resists bending."""
    wraps: Annotated[list[WrapIn], Field(max_length=4)] = []
    """Windings, from the core outwards."""
    B0: Annotated[float, Field(ge=0.0, le=0.2, examples=[0.0019])] | None = None
    """Stiffness of the open string where it was measured, from its partials for instance."""

    def to_domain(self) -> StringSpec:
        """Return the string; a pitch that is not given is an empty text."""
        return StringSpec(
            pitch=self.pitch or "",
            diameter=self.diameter,
            unit_mass=self.unit_mass,
            tension=self.tension,
            R=self.R,
            kappa=self.kappa,
            core_material=self.core_material,
            core_diameter=self.core_diameter,
            core_shape=self.core_shape,
            wraps=tuple(wrap.to_domain() for wrap in self.wraps),
            B0=self.B0,
        )


Strings: TypeAlias = Annotated[
    list[StringIn],
    Field(
        min_length=1,
        max_length=MOST_STRINGS,
        examples=[[{"pitch": "E4", "diameter": "0.712 mm", "unit_mass": 0.374, "R": 23.6}]],
    ),
]
"""The strings of an instrument, in any order; the answer keeps it."""


def refuse_unnamed_pitches(tuning: TuningName | None, strings: Sequence[StringIn]) -> None:
    """Refuse strings without a pitch, and a tuning for another number of strings.

    Raises
    ------
    ValidationError
        At the place of the pitch, or of the tuning.
    """
    if tuning is None:
        error = PydanticCustomError("missing", "This field is needed and was not given, as no tuning names it.")
        faults = [
            InitErrorDetails(type=error, loc=("strings", index, "pitch"), input=None)
            for index, string in enumerate(strings)
            if string.pitch is None
        ]
    else:
        needed = len(TUNINGS[tuning])
        error = PydanticCustomError(
            "tuning_of_other_strings",
            "This tuning is for {needed} strings, and {given}.",
            {"needed": needed, "given": given(len(strings))},
        )
        idle = PydanticCustomError("no_effect", "Every string names its pitch; leave the tuning out, or the pitches.")
        wrong = [error] if needed != len(strings) else [idle] if all(string.pitch for string in strings) else []
        faults = [InitErrorDetails(type=one, loc=("tuning",), input=None) for one in wrong]
    if faults:
        raise ValidationError.from_exception_data("strings", faults)


def string_specs(tuning: TuningName | None, strings: Sequence[StringIn]) -> list[StringSpec]:
    """Return the strings, each with its own pitch or the tuning's."""
    specs = [string.to_domain() for string in strings]
    if tuning is None:
        return specs
    return [
        spec if spec.pitch else replace(spec, pitch=pitch) for spec, pitch in zip(specs, TUNINGS[tuning], strict=True)
    ]


class OpenStringOut(BaseModel):
    """A string at its open pitch."""

    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

    pitch: str
    """Open pitch, as given."""
    frequency_hz: float
    """Frequency of the open string. [Hz]"""
    unit_mass: float
    """Mass per length. [g/m]"""
    tension_n: float
    """Tension at pitch. [N]"""
    kappa: float
    """Relative change of tension with length."""
    B0: float
    """Stiffness of the open string, sqrt(kappa) s / X0 with s the radius of gyration of the section that bends."""
    stiffness_n: float
    """E A of what carries the tension, kappa times the tension. [N]"""
    breaking_share: float | None
    """Tension over the minimum breaking load (ASTM A228); null where no standard gives the strength."""
    unit_mass_from: MassSource
    """What unit mass and tension rest on: "measured", "tension" or "material"."""
    kappa_from: StretchSource
    """What kappa rests on: "R", "kappa" or the "modulus" of the core's material."""
    B0_from: BendingSource
    """What B0 rests on: "measured", or the section that bends: the "core", the "whole_section" or
    "sliding_filaments"."""
    notes: list[Note]
    """What the numbers of this string rest on, and cautions."""
