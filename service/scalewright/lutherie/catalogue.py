"""Listed temperaments from published sources, as pitches of frets above the open string."""

import math
from dataclasses import dataclass
from typing import Final

from scalewright.lutherie.spacing import CENTS_PER_OCTAVE, Listed

__all__ = ["CATALOGUE", "Temperament"]


@dataclass(frozen=True, slots=True)
class Temperament:
    """A listed temperament."""

    name: str
    """A short name that stays the same, for programs."""
    source: str
    """Where it was published."""
    rule: Listed
    """The pitches, one for each fret; those that reach an octave repeat above it."""

    @property
    def cents(self) -> list[float]:
        """The pitches above the open string. [cent]"""
        return list(self.rule.cents)


def _of_ratios(*ratios: tuple[int, int], repeat: bool) -> Listed:
    """Pitches of string ratios: the whole string over what sounds."""
    return Listed(tuple(CENTS_PER_OCTAVE * math.log2(a / b) for a, b in ratios), repeat)


def _meantone() -> Listed:
    """Twelve pitches in fifths of 5^(1/4), from three fifths below the open string to eight above."""
    fifth = CENTS_PER_OCTAVE * math.log2(5.0) / 4.0
    chain = sorted(math.fmod(k * fifth + 4.0 * CENTS_PER_OCTAVE, CENTS_PER_OCTAVE) for k in range(-3, 9) if k)
    return Listed((*chain, CENTS_PER_OCTAVE), repeat=True)


CATALOGUE: Final[dict[str, Temperament]] = {
    temperament.name: temperament
    for temperament in (
        Temperament(
            "pythagorean",
            "Pure fifths and fourths; J. M. Barbour, Tuning and Temperament (1951), chapter I (from memory)",
            _of_ratios(
                (256, 243), (9, 8), (32, 27), (81, 64), (4, 3), (729, 512), (3, 2), (128, 81), (27, 16), (16, 9),
                (243, 128), (2, 1), repeat=True,
            ),
        ),
        Temperament(
            "quarter_comma_meantone",
            "P. Aaron, Thoscanello de la musica (1523); J. M. Barbour, Tuning and Temperament (1951), chapter III "
            "(from memory)",
            _meantone(),
        ),
        Temperament(
            "ganassi_1543",
            "S. Ganassi, Lettione seconda (1543), ratios of lute and viol frets",
            _of_ratios(
                (20, 19), (10, 9), (20, 17), (5, 4), (4, 3), (24, 17), (3, 2), (30, 19), (5, 3), (30, 17), (15, 8),
                (2, 1), repeat=True,
            ),
        ),
        Temperament(
            "dowland_1610",
            "R. Dowland, Varietie of Lute-Lessons (1610), where to place ten frets",
            _of_ratios(
                (33, 31), (9, 8), (33, 28), (264, 211), (4, 3), (24, 17), (3, 2), (99, 62), (27, 16), (99, 56),
                repeat=False,
            ),
        ),
    )
}  # fmt: skip
"""The temperaments by name."""
