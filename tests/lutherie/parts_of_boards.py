"""Parts for the tests of assembly: boards, bridges and templates as they are described and measured."""

from scalewright.lutherie import spacing
from scalewright.lutherie.measure import Instrument, Reading, survey
from scalewright.lutherie.part import Part
from scalewright.lutherie.spacing import EQUAL

INCH = 25.4
"""An inch, exactly. [mm]"""

FOUR = (1, 5, 12, 17)
"""Frets of a quick check."""


def measured(scale, frets=FOUR, uncertainty=0.05, *, rule=EQUAL, errors=None, **known):
    """A survey of a board laid out by a rule, read from the nut without errors unless some are given. [mm]"""
    fractions = spacing.fractions(rule, max(frets))
    errors = [0.0] * len(frets) if errors is None else errors
    distances = [scale * fractions[fret - 1] + error for fret, error in zip(frets, errors, strict=True)]
    readings = [Reading(0, fret, float(distance)) for fret, distance in zip(frets, distances, strict=True)]
    return survey(readings, Instrument(uncertainty), **known)


def board(scale, frets=FOUR, uncertainty=0.05, *, name="board", **known):
    """A board that was measured. [mm]"""
    return Part(name, "board", survey=measured(scale, frets, uncertainty, **known))


def template(scale, frets=FOUR, uncertainty=0.05, *, name="template", **known):
    """A saddle template that was measured. [mm]"""
    return Part(name, "saddle_template", survey=measured(scale, frets, uncertainty, **known))
