"""Strings at their open pitch, and how they lie over the frets."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Note

__all__ = ["FretRelief", "OpenString", "StringHeights"]


@dataclass(frozen=True, slots=True)
class StringHeights:
    """How high the strings were taken to lie."""

    nut: float
    """Underside of the strings above the plane of the fret tops at the nut. [unit]"""
    saddle_above_nut: float
    """How much higher they are at the saddle. [unit]"""


@dataclass(frozen=True, slots=True)
class FretRelief:
    """How far the fret tops were taken to leave the straight line."""

    depth: float
    """Gap under a straightedge from fret 1 to the last fret; of a tilt, the fall at half the scale. [unit]"""
    shape: str
    """A parabola, or a straight fall that starts at the nut."""


@dataclass(frozen=True, slots=True)
class OpenString:
    """A string at its open pitch."""

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
    """Tension over the minimum breaking load (ASTM A228); None where no standard gives the strength."""
    unit_mass_from: str
    """What unit mass and tension rest on: "measured", "tension" or "material"."""
    kappa_from: str
    """What kappa rests on: "R", "kappa" or the "modulus" of the core's material."""
    B0_from: str
    """What B0 rests on: "measured", or the section that bends: the "core", the "whole_section" or
    "sliding_filaments"."""
    notes: tuple[Note, ...]
    """What the numbers of this string rest on, and cautions."""
