"""Boards for the tests of identification: published, and drawn at random from the stated priors."""

import json
from pathlib import Path

import numpy as np

from scalewright.lutherie import spacing
from scalewright.lutherie.identification import identify
from scalewright.lutherie.identification.plan import Pattern
from scalewright.lutherie.measure import Instrument, Reading, survey
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL

_SPACING = json.loads((Path(__file__).parents[2] / "reference" / "spacing.json").read_text(encoding="utf-8"))

CASES = _SPACING["cases"]
"""Boards and divisions that were published, with least-squares fits made independently."""


def board(frets, from_nut, uncertainty, *, scatter=0.0, **known):
    """A survey of readings from the nut."""
    readings = [Reading(0, fret, float(distance)) for fret, distance in zip(frets, from_nut, strict=True)]
    return survey(readings, Instrument(uncertainty), tooling_scatter=scatter, **known)


def case(name, uncertainty, *, length=None):
    """A published board, scaled to a length where one is given."""
    published = CASES[name]
    factor = 1.0 if length is None else length / published["nominal_length"]
    return board(published["fret"], [factor * distance for distance in published["from_nut"]], uncertainty)


def positions(rule, scale, frets):
    """Distances from the nut to some frets. [mm]"""
    fractions = spacing.fractions(rule, max(frets))
    return np.array([scale * fractions[fret - 1] for fret in frets])


def pattern(frets, deviation, *, nut_deviation=0.3, scatter=0.0):
    """One pattern of readings from the nut, all with one standard deviation."""
    count = len(frets)
    return Pattern(
        start=np.zeros((1, count), dtype=np.int64),
        end=np.array([frets]),
        used=np.ones((1, count), dtype=np.bool_),
        variance=np.full((1, count), deviation**2),
        edge=np.zeros((1, count)),
        scatter=np.array([scatter]),
        nut_deviation=nut_deviation,
        zero_fret=False,
    )


def draw(rng, boards, frets, deviation):
    """Readings of boards drawn from the default priors.

    Returns
    -------
    readings : ndarray, shape (boards, n_frets)
        What the instrument shows. [mm]
    rule : ndarray, shape (boards,)
        0 equal, 1 eighteenth, 2 another divisor.
    scale, true_scale : ndarray, shape (boards,)
        Layout scale and true scale. [mm]
    """
    rule = rng.choice(3, boards, p=[0.45, 0.45, 0.10])
    divisor = np.where(
        rule == 0, EQUAL.divisor, np.where(rule == 1, EIGHTEENTH.divisor, rng.uniform(16.5, 19.5, boards))
    )
    scale = rng.uniform(300.0, 900.0, boards)
    offset = rng.normal(0.0, 0.3, boards)
    step = -np.log1p(-1.0 / divisor)[:, None]
    readings = offset[:, None] - scale[:, None] * np.expm1(-step * np.array(frets))
    readings = readings + rng.normal(0.0, deviation, readings.shape)
    octave = np.rint(np.log(2.0) / step)
    return readings, rule, scale, -2.0 * scale * np.expm1(-octave * step)[:, 0]


__all__ = ["CASES", "board", "case", "draw", "identify", "pattern", "positions"]
