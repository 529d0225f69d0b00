"""Readings that were misread: named, set aside, and kept from changing the verdict."""

import numpy as np
import pytest

from scalewright.lutherie.identification import identify, identify_all
from scalewright.lutherie.identification.words import deviation_in_words, length_in_words
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL
from tests.lutherie.identification.boards import board, draw, positions

FRETS = [1, 2, 3, 5, 7, 9, 12, 15, 17, 19, 22]
SIXTEENTH = 25.4 / 16.0


@pytest.mark.parametrize("rule", [EQUAL, EIGHTEENTH])
@pytest.mark.parametrize("slip", [1.0, -1.0, SIXTEENTH, -10.0, 100.0])
@pytest.mark.parametrize("index", range(len(FRETS)))
def test_a_misread_fret_is_named_and_set_aside(rule, slip, index):
    """One reading off by a mark or a digit is found wherever it is, and rule and scale are those without it."""
    readings = positions(rule, 640.0, FRETS) + 0.03 * np.cos(np.arange(11.0))
    readings[index] += slip
    if readings[index] <= 0.0:
        return
    found = identify(board(FRETS, readings, 0.05))
    assert [suspect.fret for suspect in found.suspect_readings] == [FRETS[index]]
    (suspect,) = found.suspect_readings
    assert suspect.reading == index
    # What the other readings predict is itself uncertain, most at the ends.
    assert suspect.deviation == pytest.approx(slip, abs=0.25)
    assert found.rule == rule
    assert found.true_scale.lower < 640.0 * (1.0 if rule == EQUAL else 0.992727) + 0.1
    assert found.candidates[0].degrees_of_freedom == len(FRETS) - 2
    assert found.candidates[0].residuals[index] == pytest.approx(suspect.deviation, abs=1e-6)


@pytest.mark.slow
def test_clean_boards_are_rarely_suspected_and_blunders_rarely_flip_a_verdict():
    """Over 600 boards at most 2 % false alarms; a misreading by 1/16 in is named in 98 % and flips under 2 %."""
    rng = np.random.default_rng(31)
    readings, *_ = draw(rng, 600, FRETS, 0.1)
    clean = identify_all([board(FRETS, row, 0.1) for row in readings])
    assert np.mean([bool(f.suspect_readings) for f in clean]) < 0.02
    where = rng.integers(0, len(FRETS), 600)
    readings[np.arange(600), where] += rng.choice([-SIXTEENTH, SIXTEENTH], 600)
    misread = identify_all([board(FRETS, row, 0.1) for row in readings])
    named = [[s.reading for s in f.suspect_readings] == [k] for f, k in zip(misread, where, strict=True)]
    assert np.mean(named) > 0.98
    flipped = [
        a.verdict == b.verdict == "established" and a.rule.name != b.rule.name
        for a, b in zip(clean, misread, strict=True)
    ]
    assert np.mean(flipped) < 0.02


def test_two_readings_cannot_tell_which_of_them_is_wrong():
    """With two readings nothing is named: either may be the blunder."""
    found = identify(board([5, 12], positions(EQUAL, 650.0, [5, 12]) + np.array([0.0, 3.0]), 0.05))
    assert found.suspect_readings == []


def test_boards_that_follow_no_rule_are_not_rescued_by_leaving_readings_out():
    """Positions that wander by a millimetre stay without a rule and without suspects."""
    wander = np.array([0.8, -0.9, 1.1, -0.7, 0.9, -1.2, 1.0, -0.8, 0.7, -1.1, 0.9])
    found = identify(board(FRETS, positions(EQUAL, 640.0, FRETS) + wander, 0.05))
    assert found.verdict == "none"
    assert found.suspect_readings == []


@pytest.mark.source("25.4 mm in an inch, exactly; one mark is common practice, no source")
@pytest.mark.parametrize(
    ("deviation", "text"),
    [
        (1.6, "fret 7 reads 1.6 mm long, as a misreading by 1/16 in would"),
        (-1.02, "fret 7 reads 1.0 mm short, as a misreading by 1 mm would"),
        (0.4, "fret 7 reads 0.40 mm long"),
    ],
)
def test_words_for_a_deviation(deviation, text):
    """The words say how far, which way, and what kind of slip it looks like, if it looks like one."""
    assert deviation_in_words(0, 7, deviation, 0.05) == text


def test_lengths_in_words_keep_the_digits_that_their_uncertainty_leaves():
    """Two digits of the uncertainty, in both units."""
    assert length_in_words(624.0781, 0.11) == "624.08 mm (24.570 in)"
    assert length_in_words(624.0781, 1.2) == "624.1 mm (24.57 in)"
    assert length_in_words(624.0781, 12.0) == "624 mm (24.6 in)"
