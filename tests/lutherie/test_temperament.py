"""Pitches and temperaments: names, hertz and the pitches that frets are meant for."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import UnknownPitchError
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal, Listed
from scalewright.lutherie.temperament import cents_between, equal_tempered_targets, frequency_of

ROUNDING = 1e-12
"""Relative; a few units in the last place."""

PUBLISHED_TO = 0.00005
"""Half a unit in the last decimal of the standard's table. [Hz]"""


@pytest.mark.source("ISO 16:1975, Acoustics - Standard tuning frequency")
def test_the_standard_tuning_frequency():
    """A4 is 440 Hz, exactly."""
    assert frequency_of("A4") == 440.0


@pytest.mark.source("MIDI note numbers and names of the pretty-midi library, a general music library")
@pytest.mark.parametrize("accidental", ["", "#", "b"])
def test_names_agree_with_a_general_music_library(accidental):
    """Every natural, sharp and flat of eleven octaves sounds as the library says."""
    # Loaded here, as it takes longer than all the other tests of this file.
    import pretty_midi  # noqa: PLC0415

    for octave in range(-1, 10):
        for letter in "CDEFGAB":
            name = f"{letter}{accidental}{octave}"
            expected = pretty_midi.note_number_to_hz(pretty_midi.note_name_to_number(name))
            if expected < 8.0:  # Cb-1, below the lowest pitch
                continue
            assert frequency_of(name) == pytest.approx(expected, rel=ROUNDING), name


@pytest.mark.parametrize(
    ("name", "same"),
    [
        ("B#3", "C4"),
        ("Cb4", "B3"),
        ("F##3", "G3"),
        ("Fx3", "G3"),
        ("Bbb2", "A2"),
        ("E♭4", "D♯4"),
        ("bb3", "Bb3"),
        (" e4 ", "E4"),
    ],
)
def test_two_names_of_one_pitch(name, same):
    """Enharmonic spellings and lower case letters name the same pitch; the octave belongs to the letter."""
    assert frequency_of(name) == frequency_of(same)


def test_hertz_are_taken_as_they_are():
    """A frequency with its unit is that frequency, to the last digit."""
    assert frequency_of("329.6275569128699 Hz") == 329.6275569128699
    assert frequency_of("440Hz") == 440.0


@pytest.mark.parametrize(
    "text",
    ["H#9", "H3", "", "E", "E44", "4E", "E4\n", "Hz", "1e3 Hz", "E#b4", "é4", "٣ Hz", "2 Hz", "50000 Hz", "E" * 10_000],
)
def test_what_is_no_pitch_is_refused_with_an_example(text):
    """A text that is no pitch is refused, names the field, shows what works and repeats nothing."""
    with pytest.raises(UnknownPitchError, match='"E4"') as refused:
        frequency_of(text)

    assert refused.value.field == ("pitch",)
    assert frequency_of(str(refused.value.facts["example"])) > 0.0


def test_an_octave_is_1200_cents():
    """Cents are counted upwards, 1200 to the octave, by definition."""
    assert cents_between(220.0, 440.0) == pytest.approx(1200.0)
    assert cents_between(440.0, 220.0) == pytest.approx(-1200.0)


@pytest.mark.parametrize("steps", [1, 12, 19, 53])
def test_equal_spacing_is_meant_for_its_own_steps(steps):
    """A board of N steps to the octave should sound N steps to the octave."""
    targets = equal_tempered_targets(Equal(steps), 2 * steps)

    assert targets == pytest.approx([1200.0 * n / steps for n in range(1, 2 * steps + 1)])


@pytest.mark.parametrize("rule", [EIGHTEENTH, Divisor(17.817), Divisor(17.9)])
def test_boards_near_twelve_steps_are_meant_for_twelve(rule):
    """The rule of 18 and its kin stand elsewhere, but are meant for twelve equal steps."""
    assert equal_tempered_targets(rule, 24) == pytest.approx(100.0 * np.arange(1, 25))


@pytest.mark.source("quarter-comma meantone and just intonation, from their definitions")
def test_listed_pitches_are_meant_for_the_nearest_step():
    """A diatonic list in just intonation is meant for the equal-tempered scale, degree by degree."""
    ratios = [9 / 8, 5 / 4, 4 / 3, 3 / 2, 5 / 3, 15 / 8, 2]
    just = Listed(tuple(1200.0 * math.log2(ratio) for ratio in ratios), repeat=True)

    assert equal_tempered_targets(just, 8).tolist() == [200, 400, 500, 700, 900, 1100, 1200, 1400]


@given(st.integers(1, spacing.MOST_FRETS))
def test_an_equal_board_intends_what_it_targets(frets):
    """Equal spacing in twelve is the one common rule whose positions and targets say the same."""
    assert equal_tempered_targets(EQUAL, frets) == pytest.approx(spacing.cents(EQUAL, frets), rel=ROUNDING)
