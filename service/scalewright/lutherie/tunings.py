"""Tunings: the open pitches of common instruments, by the names that the trade gives them."""

from typing import Literal, TypeAlias

__all__ = ["TUNINGS", "TuningName"]

TuningName: TypeAlias = Literal[
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
"""Names of the tunings."""

# Common practice, no source. String 1, the one at the treble edge, comes first; a banjo's drone comes last.
TUNINGS: dict[TuningName, tuple[str, ...]] = {
    "six_string_standard": ("E4", "B3", "G3", "D3", "A2", "E2"),
    "six_string_dropped_d": ("E4", "B3", "G3", "D3", "A2", "D2"),
    "seven_string_standard": ("E4", "B3", "G3", "D3", "A2", "E2", "B1"),
    "twelve_string_standard": ("E4", "E4", "B3", "B3", "G4", "G3", "D4", "D3", "A3", "A2", "E3", "E2"),
    "baritone_six_string": ("B3", "F#3", "D3", "A2", "E2", "B1"),
    "bass_four_string": ("G2", "D2", "A1", "E1"),
    "bass_five_string": ("G2", "D2", "A1", "E1", "B0"),
    "bass_six_string": ("C3", "G2", "D2", "A1", "E1", "B0"),
    "ukulele_high_g": ("A4", "E4", "C4", "G4"),
    "ukulele_low_g": ("A4", "E4", "C4", "G3"),
    "ukulele_baritone": ("E4", "B3", "G3", "D3"),
    "mandolin": ("E5", "A4", "D4", "G3"),
    "mandolin_paired": ("E5", "E5", "A4", "A4", "D4", "D4", "G3", "G3"),
    "octave_mandolin": ("E4", "A3", "D3", "G2"),
    "banjo_five_string": ("D4", "B3", "G3", "D3", "G4"),
    "banjo_tenor": ("A4", "D4", "G3", "C3"),
    "banjo_plectrum": ("D4", "B3", "G3", "C3"),
}
"""Open pitches, one for each string."""
