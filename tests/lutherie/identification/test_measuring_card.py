"""Measuring cards: which frets tell the rules apart."""

import itertools
import math

import numpy as np
import pytest

from scalewright.lutherie.errors import ImpossibleReadingError, TooFewReadingsError
from scalewright.lutherie.identification import identify_all
from scalewright.lutherie.identification.measuring_card import measuring_card
from scalewright.lutherie.measure import Instrument
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL
from tests.lutherie.identification.boards import board, positions


@pytest.mark.slow
@pytest.mark.source("simulation of boards read as the card says, judged by the identification itself")
@pytest.mark.parametrize(("uncertainty", "scale"), [(0.05, 600.0), (0.144, 650.0)])
def test_the_probability_is_what_the_identification_then_does(uncertainty, scale):
    """Of 600 boards read as the card says, the promised share have their own rule established."""
    card = measuring_card(Instrument(uncertainty), scale, 19, tooling_scatter=0.0, probability=0.85)
    rng = np.random.default_rng(19)
    rules = rng.choice([0, 1], 600)
    surveys = [
        board(
            card.frets,
            positions((EQUAL, EIGHTEENTH)[rule], scale, card.frets)
            + rng.normal(0.0, 0.3)
            + rng.normal(0.0, uncertainty, len(card.frets)),
            uncertainty,
        )
        for rule in rules
    ]
    right = [
        found.verdict == "established" and found.rule == (EQUAL, EIGHTEENTH)[rule]
        for found, rule in zip(identify_all(surveys), rules, strict=True)
    ]
    assert card.decides
    assert np.mean(right) == pytest.approx(card.probability, abs=3.0 * math.sqrt(0.15 * 0.85 / 600) + 0.01)


@pytest.mark.source("numpy.linalg.lstsq on every set of three frets, a general-purpose library")
def test_no_other_set_of_as_many_frets_is_better():
    """The set advised leaves the most of one rule when the other is fitted with scale and nut."""
    card = measuring_card(Instrument(0.02), 300.0, 12, tooling_scatter=0.0, probability=0.999)
    (three,) = [step for step in card.steps if step.readings == 3]

    def left(frets):
        one, other = (np.append(positions(rule, 300.0, frets), 0.0) / 0.02 for rule in (EQUAL, EIGHTEENTH))
        nut = np.append(np.full(len(frets), 1.0 / 0.02), 1.0 / 0.3)
        design = np.stack([other, nut], axis=1)
        return np.linalg.norm(one - design @ np.linalg.lstsq(design, one, rcond=None)[0])

    best = max(itertools.combinations(range(1, 13), 3), key=left)
    assert three.frets == list(best)


def test_better_instruments_longer_scales_and_known_nuts_need_fewer_frets():
    """What helps is monotone: never more frets for less uncertainty, more length or a known nut."""
    coarse = measuring_card(Instrument(0.1), 600.0, 20, tooling_scatter=0.0)
    fine = measuring_card(Instrument(0.05), 600.0, 20, tooling_scatter=0.0)
    long = measuring_card(Instrument(0.1), 860.0, 20, tooling_scatter=0.0)
    known = measuring_card(Instrument(0.1), 600.0, 20, tooling_scatter=0.0, nut_deviation=0.0)
    assert len(fine.frets) <= len(coarse.frets)
    assert len(long.frets) <= len(coarse.frets)
    assert len(known.frets) <= len(coarse.frets)


@pytest.mark.source("common practice, no source: a half-millimetre rule over five frets cannot decide")
def test_an_instrument_that_cannot_decide_is_told_what_would():
    """A coarse rule on a short board does not decide; the uncertainty that would is named and does."""
    card = measuring_card(Instrument(0.5), 500.0, 12, tooling_scatter=0.0)
    assert not card.decides
    assert card.probability < 0.95
    assert card.uncertainty_needed is not None
    finer = measuring_card(Instrument(card.uncertainty_needed), 500.0, 12, tooling_scatter=0.0)
    assert finer.decides
    assert "cannot tell" in card.statement


def test_a_tool_that_scatters_too_much_leaves_no_instrument():
    """Where the tool alone blurs the rules, no instrument is named."""
    card = measuring_card(Instrument(0.05), 300.0, 12, tooling_scatter=2.0)
    assert (card.decides, card.uncertainty_needed) == (False, None)
    assert "no finer instrument" in card.statement


def test_unknown_scatter_is_assumed_with_a_note():
    """The tool's scatter left out is taken as the median, and a note says so."""
    notes = measuring_card(Instrument(0.05), 600.0, 19).notes
    assert "tooling-scatter-assumed" in [note.slug for note in notes]


def test_refusals():
    """One fret makes no card, and an instrument without any uncertainty is none."""
    with pytest.raises(TooFewReadingsError):
        measuring_card(Instrument(0.05), 600.0, 1)
    with pytest.raises(ImpossibleReadingError):
        measuring_card(Instrument(0.0), 600.0, 19, tooling_scatter=0.0)
