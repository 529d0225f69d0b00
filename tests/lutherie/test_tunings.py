"""Tunings: open pitches of common instruments."""

import itertools
from typing import get_args

import pytest

from scalewright.lutherie.temperament import cents_between, frequency_of
from scalewright.lutherie.tunings import TUNINGS, TuningName


def test_every_tuning_has_its_name():
    """The names that a question may use are those of the table."""
    assert set(get_args(TuningName)) == set(TUNINGS)


@pytest.mark.parametrize("name", sorted(TUNINGS))
def test_every_pitch_is_one(name):
    """Each pitch can be read, and lies within what strings sound."""
    assert all(25.0 < frequency_of(pitch) < 1000.0 for pitch in TUNINGS[name])


# Common practice, no source: these instruments are tuned in fourths, in fifths, and fourths with one third.
@pytest.mark.parametrize(
    ("name", "steps"),
    [
        ("six_string_standard", [5, 4, 5, 5, 5]),
        ("bass_four_string", [5, 5, 5]),
        ("bass_six_string", [5, 5, 5, 5, 5]),
        ("mandolin", [7, 7, 7]),
        ("octave_mandolin", [7, 7, 7]),
        ("banjo_tenor", [7, 7, 7]),
        ("ukulele_baritone", [5, 4, 5]),
        ("ukulele_low_g", [5, 4, 5]),
        ("baritone_six_string", [5, 4, 5, 5, 5]),
    ],
)
def test_intervals_between_strings(name, steps):
    """From the lowest string up the intervals are those of the trade, in semitones."""
    pitches = [frequency_of(pitch) for pitch in TUNINGS[name]]
    up = [round(cents_between(low, high) / 100.0) for high, low in itertools.pairwise(pitches)]

    assert up == steps
