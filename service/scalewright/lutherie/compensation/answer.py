"""Answers: saddle and nut positions of a set of strings, with all that they rest on."""

from dataclasses import dataclass

from scalewright.lutherie.compensation.bridge import BridgeAdvice
from scalewright.lutherie.compensation.placement import Placement
from scalewright.lutherie.compensation.reslotting import Reslotting
from scalewright.lutherie.compensation.setbacks import BestSetbacks, Freedom
from scalewright.lutherie.compensation.slot import SlotFit, TravelFit
from scalewright.lutherie.compensation.string_sets import Preference
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.setup import Heights
from scalewright.lutherie.spacing import Rule
from scalewright.lutherie.string_path import StiffnessModel
from scalewright.lutherie.string_spec import BendingSource, MassSource, StretchSource
from scalewright.lutherie.stringing import SetbackOrigin, Strung

__all__ = ["Compensation", "FrettedNote", "StringCompensation", "by_string"]

_OUT_OF_TUNE = 20.0
"""A string that keeps more than this has something wrong with it; our choice, no source. [cent]"""

_SERIES_LIMIT = 0.02
"""Stiffness coefficient up to which the series of the frequency holds to 0.1 cents. [-]"""


@dataclass(frozen=True, slots=True)
class FrettedNote:
    """How sharp one fretted note is with the open string in tune."""

    fret: int
    """Number of the fret."""
    uncompensated: float
    """With saddle and nut at the ends of the scale. [cent]"""
    compensated: float
    """With both where the answer puts them. [cent]"""


@dataclass(frozen=True, slots=True)
class StringCompensation:
    """Where one string breaks over the saddle and the nut."""

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
    saddle_from_fret_12: float | None
    """From fret 12 to the break point, parallel to the fret plane; None on a board without it. [mm]"""
    rms_cents: float
    """Root mean square of the errors that remain on the frets that count. [cent]"""
    cents: list[FrettedNote]
    """Errors at every fret."""
    notes: list[Note]
    """What the numbers of this string rest on, and cautions."""


@dataclass(frozen=True, slots=True)
class Compensation:
    """Saddle and nut positions of a set of strings."""

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
    nut: Freedom
    """Whether the nut was set back too."""
    saddle: Freedom
    """Whether every string has a setback of its own."""
    heights: Heights
    """How high the strings lie, at the nut and at the saddle."""
    optimised_for: Preference
    """Frets and weights that the setbacks are best for."""
    target_cents: list[float]
    """Pitch above the open string that every fret should give. [cent]"""
    boundary_factor: float
    """Ends of the speaking length that were taken as clamped. [-]"""
    stiffness: StiffnessModel
    """What the stiffness of a fretted note followed."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[StringCompensation]
    """The strings, in the order given."""
    slot: SlotFit | None
    """The best straight slot, where it was asked for."""
    travel: TravelFit | None
    """What saddles of limited travel give, where it was asked for."""
    bridge: BridgeAdvice | None
    """What helps a bridge that is glued already, where it was asked for."""
    placement: Placement | None
    """Where to glue a bridge for all the string sets, where it was asked for."""
    reslotted: Reslotting | None
    """The same board in equal steps, where it was asked for."""
    notes: list[Note]
    """What all the numbers rest on."""


def by_string(strung: Strung, best: BestSetbacks, highest: int) -> list[StringCompensation]:
    """Rows of the answer."""
    X0, numbers = strung.scale, range(1, len(strung.remaining) + 1)
    twelfth = float(strung.remaining[11]) if len(strung.remaining) >= 12 else None
    columns = (best.saddle, best.nut, best.uncompensated, best.compensated, best.rms)
    return [
        StringCompensation(
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
            saddle_setback=dS,
            nut_setback=dN,
            saddle_from_nut=X0 + dS + dN,
            saddle_from_fret_12=None if twelfth is None else twelfth + dS,
            rms_cents=rms,
            cents=list(map(FrettedNote, numbers, before, after)),
            notes=string.notes + _cautions(rms, string.B0 * X0 / float(strung.remaining[highest - 1])),
        )
        for string, dS, dN, before, after, rms in zip(
            strung.opened, *(column.tolist() for column in columns), strict=True
        )
    ]


def _cautions(rms: float, stiffest: float) -> list[Note]:
    """Cautions on a string that stays out of tune, or is too stiff for the series of its frequency."""
    notes = []
    if rms > _OUT_OF_TUNE:
        text = (
            f"Even the best saddle leaves {rms:.0f} cents rms: check the scale, the heights, the frets that count and "
            "the string's measures."
        )
        notes.append(Note("still-out-of-tune", text))
    if stiffest > _SERIES_LIMIT:
        text = (
            f"This string is so stiff at its highest frets (B = {stiffest:.3f}) that the model is off by more than "
            "0.1 cents there."
        )
        notes.append(Note("stiff-beyond-model", text))
    return notes
