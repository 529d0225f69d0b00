"""Intonation: how far out of tune every fretted note of every string is, and what each cause contributes."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.errors import ImpossibleSetupError
from scalewright.lutherie.estimate import Floats, Note
from scalewright.lutherie.fretting import causes
from scalewright.lutherie.setup import Heights, Relief, Setup
from scalewright.lutherie.spacing import Rule
from scalewright.lutherie.string_path import StiffnessModel
from scalewright.lutherie.string_spec import BendingSource, MassSource, StretchSource
from scalewright.lutherie.stringing import SetbackOrigin, Strung, lay_strings

__all__ = ["Intonation", "Setbacks", "SoundedNote", "StringIntonation", "intonate"]


@dataclass(frozen=True, slots=True)
class Setbacks:
    """Where one string breaks over the saddle and the nut now."""

    saddle: float = 0.0
    """From the end of the scale to the break point on the saddle, positive away from the nut. [mm]"""
    nut: float = 0.0
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [mm]"""


@dataclass(frozen=True, slots=True)
class SoundedNote:
    """How sharp one fretted note is with the open string in tune, and why; the causes add up to it."""

    fret: int
    """Number of the fret."""
    cents: float
    """The error: ``spacing`` + ``stretch`` + ``stiffness`` + ``geometry``, added in this order. [cent]"""
    spacing: float
    """Where the fret stands, for an ideal string that breaks at the ends of the scale. [cent]"""
    stretch: float
    """Tension and mass of the string, pressed down and thereby stretched. [cent]"""
    stiffness: float
    """Resistance to bending, which counts more the shorter the string. [cent]"""
    geometry: float
    """Lengths: setbacks of saddle and nut, and the slope of the string. [cent]"""


@dataclass(frozen=True, slots=True)
class StringIntonation:
    """One string at all its frets."""

    pitch: str
    """Name of the open pitch, or its frequency with the unit."""
    frequency_hz: float
    """Frequency of the open string. [Hz]"""
    unit_mass: float
    """Mass per length. [g/m]"""
    tension_n: float
    """Tension at pitch. [N]"""
    kappa: float
    """Relative change of tension with length. [-]"""
    B0: float
    """Stiffness of the open string. [-]"""
    stiffness_n: float
    """E A of what carries the tension. [N]"""
    breaking_share: float | None
    """Tension over the minimum breaking load; None where no standard gives the strength. [-]"""
    unit_mass_from: MassSource
    """What the unit mass rests on."""
    kappa_from: StretchSource
    """What kappa rests on."""
    B0_from: BendingSource
    """What the section that bends was taken to be."""
    saddle_setback: float
    """From the end of the scale to the break point on the saddle, positive away from the nut. [mm]"""
    nut_setback: float
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [mm]"""
    saddle_from_nut: float
    """From the nut's front edge to the break point, parallel to the fret plane. [mm]"""
    rms_cents: float
    """Root mean square of the errors at all frets. [cent]"""
    worst_fret: int
    """Fret with the largest error."""
    worst_cents: float
    """Error there. [cent]"""
    cents: list[SoundedNote]
    """Errors at every fret."""
    notes: list[Note]
    """What the numbers of this string rest on, and cautions."""


@dataclass(frozen=True, slots=True)
class Intonation:
    """How far out of tune a strung board is."""

    rule: Rule
    """Spacing rule of the board."""
    layout_scale: float
    """The length that the rule was applied to. [mm]"""
    true_scale: float | None
    """Twice the distance from the pattern's zero line to the octave fret; None without one. [mm]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave."""
    setback_from: SetbackOrigin
    """Whose end the saddle setbacks are counted from."""
    heights: Heights
    """How high the strings lie, at the nut and at the saddle."""
    relief: Relief | None
    """How far the fret tops leave the straight line."""
    target_cents: list[float]
    """Pitch above the open string that every fret should give. [cent]"""
    boundary_factor: float
    """Ends of the speaking length that were taken as clamped. [-]"""
    stiffness: StiffnessModel
    """What the stiffness of a fretted note followed."""
    strings: list[StringIntonation]
    """The strings, in the order given."""
    notes: list[Note]
    """What all the numbers rest on."""


def intonate(setup: Setup, setbacks: Sequence[Setbacks]) -> Intonation:
    """Errors of every string at every fret, split into their causes.

    Parameters
    ----------
    setup : Setup
        The board, its strings and how they lie.
    setbacks : sequence of Setbacks, length n_strings
        Where the strings break over saddle and nut.

    Returns
    -------
    Intonation
        Positive errors are sharp, with the open string in tune.

    Raises
    ------
    LutherieError
        A board or strings that :func:`scalewright.lutherie.stringing.lay_strings` refuses.
    ImpossibleSetupError
        A saddle in front of the last fret, or a nut behind the finger at fret 1.
    """
    strung = lay_strings(setup)
    saddle = np.array([one.saddle for one in setbacks])
    nut = np.array([one.nut for one in setbacks])
    _refuse(strung, saddle, nut)
    parts = causes(strung.fretted, saddle, nut)
    columns = [parts.spacing, parts.stretch, parts.stiffness, parts.geometry]
    # Added in the order in which they are told, so that whoever adds them again gets the same number.
    errors = columns[0] + columns[1] + columns[2] + columns[3]
    layout = strung.layout
    return Intonation(
        rule=layout.rule,
        layout_scale=layout.layout_scale,
        true_scale=layout.true_scale,
        octave_fret=layout.octave_fret,
        setback_from=strung.setback_from,
        heights=strung.heights,
        relief=setup.relief,
        target_cents=strung.target_cents.tolist(),
        boundary_factor=setup.boundary_factor,
        stiffness=setup.stiffness,
        strings=_by_string(strung, setbacks, errors, columns),
        notes=strung.notes,
    )


def _refuse(strung: Strung, saddle: Floats, nut: Floats) -> None:
    """Refuse break points that no string can have."""
    room = float(strung.remaining.min())
    if (wrong := np.flatnonzero(saddle + room <= 0.0)).size:
        message = (
            "the saddle would stand in front of the last fret; saddle_setback counts from the end of the true scale, "
            "and is most often 1 to 4 mm"
        )
        raise ImpossibleSetupError(message, field=("strings", int(wrong[0]), "saddle_setback"), example="2 mm")
    room = strung.scale - strung.setup.finger_behind_fret - float(strung.remaining.max())
    if (wrong := np.flatnonzero(nut + room <= 0.0)).size:
        message = (
            "the nut would stand beyond fret 1 or under the finger there; nut_setback counts from the zero line of "
            "the fret pattern, and is most often -1 to 0 mm"
        )
        raise ImpossibleSetupError(message, field=("strings", int(wrong[0]), "nut_setback"), example="-0.4 mm")


def _by_string(
    strung: Strung, setbacks: Sequence[Setbacks], errors: Floats, columns: Sequence[Floats]
) -> list[StringIntonation]:
    """Rows of the answer."""
    numbers = range(1, errors.shape[1] + 1)
    worst = np.argmax(np.abs(errors), axis=1).tolist()
    rows = zip(strung.opened, setbacks, errors.tolist(), *(column.tolist() for column in columns), worst, strict=True)
    return [
        StringIntonation(
            pitch=string.pitch,
            frequency_hz=string.frequency_hz,
            unit_mass=string.unit_mass,
            tension_n=string.tension_n,
            kappa=string.kappa,
            B0=string.B0,
            stiffness_n=string.stiffness_n,
            breaking_share=string.breaking_share,
            unit_mass_from=string.unit_mass_from,
            kappa_from=string.kappa_from,
            B0_from=string.B0_from,
            saddle_setback=placed.saddle,
            nut_setback=placed.nut,
            saddle_from_nut=strung.scale + placed.saddle + placed.nut,
            rms_cents=math.sqrt(sum(error**2 for error in total) / len(total)),
            worst_fret=at + 1,
            worst_cents=total[at],
            cents=list(map(SoundedNote, numbers, total, spacing, stretch, stiffness, geometry)),
            notes=string.notes,
        )
        for string, placed, total, spacing, stretch, stiffness, geometry, at in rows
    ]
