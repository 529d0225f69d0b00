"""Complaints that the tests of diagnosis share: strings with planted errors, heard through a tuner."""

import numpy as np

from scalewright.lutherie.compensation import best_setbacks
from scalewright.lutherie.diagnosis import CentsReading
from scalewright.lutherie.fretting import cents_errors
from scalewright.lutherie.setup import Heights, Setup
from scalewright.lutherie.spacing import EQUAL
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.stringing import lay_strings

# Nylon strings of Anderson and Beausoleil 2024, and plain steel.
STRINGS = [
    StringSpec("E4", 0.712, unit_mass=0.374, R=23.6),
    StringSpec("G3", 1.024, unit_mass=0.836, R=28.8),
    StringSpec("E4", 0.254, core_material="steel"),
]
SCALE = 650.0


class Instrument:
    """Strings that real physics sounds, set at their best over the frets that are read."""

    def __init__(self, frets, rule=EQUAL, strings=STRINGS, **changes):
        self.frets = np.array(frets)
        setup = Setup(rule, SCALE, int(max(frets)), strings, Heights(0.7, 3.5), **changes)
        self.fretted = lay_strings(setup).fretted
        weights = np.zeros(max(frets))
        weights[self.frets - 1] = 1.0
        self.best = best_setbacks(self.fretted, weights, nut="free")

    def heard(self, rng, noise, saddle, nut, *, absolute=False, more=0.0):
        """Readings of all strings with planted errors of saddle and nut; ``more`` is added at every fret."""
        errors = cents_errors(self.fretted, self.best.saddle + saddle, self.best.nut + nut)[:, self.frets - 1] + more
        n = len(errors)
        opened = rng.normal(0.0, 3.0 if absolute else noise, n)
        readings = []
        for string in range(n):
            if absolute:
                readings.append(CentsReading(string + 1, 0, float(opened[string] + rng.normal(0.0, noise))))
            readings += [
                CentsReading(string + 1, int(fret), float(error + opened[string] + rng.normal(0.0, noise)))
                for fret, error in zip(self.frets, errors[string], strict=True)
            ]
        return readings
