"""Slips that spoil a whole board are named with the correction that would explain it."""

import numpy as np
import pytest

from scalewright.lutherie.identification import identify
from scalewright.lutherie.measure import Instrument, Reading, survey
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL
from tests.lutherie.identification.boards import board, case, positions

FRETS = [1, 2, 3, 5, 7, 9, 12, 15, 17, 19]
ROUGH = 0.02 * np.array([1, -1, 2, -2, 1, 0, -1, 2, -1, 1])
"""A caliper's small errors. [mm]"""


def slugs(found):
    """What is remarked about a board."""
    return [note.slug for note in found.notes]


def remark(found, slug):
    """Text of one remark."""
    (text,) = [note.text for note in found.notes if note.slug == slug]
    return text


def test_a_clean_board_gets_no_remark():
    """Nothing is corrected where nothing is wrong."""
    found = identify(board(FRETS, positions(EIGHTEENTH, 640.0, FRETS) + ROUGH, 0.05))
    assert not any(slug.startswith("looks") for slug in slugs(found))


@pytest.mark.parametrize("fret", [5, 9, 15])
@pytest.mark.parametrize("shift", [1, -1])
def test_a_miscounted_fret(fret, shift):
    """From a skipped or doubled fret on all numbers are off by one; the verdict stays "none", the remark says where."""
    numbered = [f + shift if f >= fret else f for f in FRETS]
    if len(set(numbered)) < len(numbered):
        return
    found = identify(board(numbered, positions(EIGHTEENTH, 640.0, FRETS) + ROUGH, 0.05))
    assert found.verdict == "none"
    text = remark(found, "looks-miscounted")
    assert ("counted twice" if shift > 0 else "skipped") in text
    assert "rule of 18" in text


@pytest.mark.parametrize("offset", [6.0, -4.0])
def test_another_origin_than_the_nut(offset):
    """Readings from the end of the board or past a zero fret are explained by their origin."""
    found = identify(board(FRETS, positions(EQUAL, 640.0, FRETS) + ROUGH + offset, 0.05))
    assert found.verdict == "none"
    text = remark(found, "looks-like-another-origin")
    assert f"{abs(offset):.1f} mm {'behind' if offset > 0 else 'in front of'}" in text


@pytest.mark.source("25.4 mm in an inch, exactly")
def test_one_unit_for_the_other():
    """A 25.2 in board sent as millimetres looks like inches, and a 640 mm one sent as inches like millimetres."""
    inches = identify(board(FRETS, positions(EQUAL, 640.0, FRETS) / 25.4, 0.05))
    assert "25.2" in remark(inches, "looks-like-inches")
    few = [1, 2, 3]
    millimetres = identify(board(few, positions(EQUAL, 640.0, few) * 25.4, 0.05 * 25.4))
    assert "640" in remark(millimetres, "looks-like-millimetres")


def test_steps_sent_as_distances():
    """Distances that shrink up the board are steps from fret to fret."""
    frets = list(range(1, 20))
    steps = np.diff(positions(EIGHTEENTH, 640.0, frets), prepend=0.0)
    found = identify(board(frets, steps + 0.02 * np.cos(np.arange(19.0)), 0.05))
    assert found.verdict == "none"
    assert "fret_to_fret" in remark(found, "looks-fret-to-fret")
    # Sent as what they are, the same steps are explained.
    readings = [Reading(k, k + 1, float(step)) for k, step in enumerate(steps)]
    assert identify(survey(readings, Instrument(0.02), tooling_scatter=0.0)).rule == EIGHTEENTH


@pytest.mark.source("spacing.json: a measured lute, 2008; S. Ganassi 1543")
@pytest.mark.parametrize(("name", "uncertainty"), [("lute-550", 0.144), ("ganassi-1543", 0.5)])
def test_frets_that_follow_no_rule_are_not_talked_into_one(name, uncertainty):
    """Hand-set frets are explained by no slip."""
    assert not any(slug.startswith("looks") for slug in slugs(identify(case(name, uncertainty))))
