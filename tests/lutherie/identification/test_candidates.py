"""Candidates beyond the default ones: rounded divisors, other steps, and listed temperaments."""

import numpy as np
import pytest
from scipy import integrate, stats

from scalewright.lutherie.catalogue import CATALOGUE
from scalewright.lutherie.identification import Beliefs, Candidate, FreeDivisor, identify
from scalewright.lutherie.identification.candidates import SCATTER_SCALE, SCATTER_SHAPE, SCATTER_UPPER
from scalewright.lutherie.identification.inquiry import scatter_nodes
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal
from tests.lutherie.identification.boards import CASES, board, case, positions

FRETS = list(range(1, 20))
HUNDREDTH_OF_A_CENT = 0.01
ROUNDED = tuple(Candidate(rule, 1.0) for rule in (EQUAL, EIGHTEENTH, Divisor(17.817), Divisor(17.835)))


@pytest.mark.source("17.817 and 17.835 as rounded divisors in shop use: common practice, no source")
def test_rounded_divisors_are_of_one_family_with_equal_spacing():
    """Frets by 17.817 cannot be told from equal ones with a caliper: they share their probability and are named."""
    found = identify(board(FRETS, positions(Divisor(17.817), 650.0, FRETS), 0.05), Beliefs(candidates=ROUNDED))
    assert found.verdict == "established"
    assert {rule.name for rule in found.family} == {"equal", "divisor"}
    assert len(found.family) == 3
    assert found.probability > 0.99
    assert max(candidate.probability for candidate in found.candidates) < 0.6
    assert "not to be told" in found.statement


def test_the_two_main_rules_are_never_one_family():
    """Readings too weak to tell the rule of 18 from equal spacing leave it undecided; they do not merge the two."""
    found = identify(board([3, 5], positions(EIGHTEENTH, 650.0, [3, 5]), 0.3))
    assert found.verdict == "undecided"
    assert found.probability < 0.6


@pytest.mark.source("S. Ganassi 1543 and R. Dowland 1610, spacing.json")
@pytest.mark.parametrize(
    ("case_name", "temperament"), [("ganassi-1543", "ganassi_1543"), ("dowland-1610", "dowland_1610")]
)
def test_historical_frets_are_recognised_by_their_own_division(case_name, temperament):
    """With the temperament among the candidates, the published positions establish it."""
    rule = CATALOGUE[temperament].rule
    beliefs = Beliefs(candidates=(Candidate(EQUAL, 1.0), Candidate(EIGHTEENTH, 1.0), Candidate(rule, 1.0)))
    found = identify(case(case_name, 0.3), beliefs)
    assert (found.verdict, found.rule) == ("established", rule)
    assert found.layout_scale.value == pytest.approx(600.0, abs=1e-6)


@pytest.mark.source("spacing.json: cents of Ganassi 1543 and Dowland 1610")
@pytest.mark.parametrize(("temperament", "name"), [("ganassi_1543", "ganassi-1543"), ("dowland_1610", "dowland-1610")])
def test_catalogue_against_the_published_cents(temperament, name):
    """The pitches of the catalogue are the published ones."""
    assert CATALOGUE[temperament].rule.cents == pytest.approx(CASES[name]["cents"], abs=1e-6)


@pytest.mark.source(
    "J. M. Barbour, Tuning and Temperament (1951), tables of Pythagorean and meantone tuning, from memory"
)
def test_catalogue_against_the_handbook():
    """Pythagorean and quarter-comma meantone pitches are the handbook's, to its hundredths of a cent."""
    pythagorean = [90.22, 203.91, 294.13, 407.82, 498.04, 611.73, 701.96, 792.18, 905.87, 996.09, 1109.78, 1200.0]
    meantone = [76.05, 193.16, 310.26, 386.31, 503.42, 579.47, 696.58, 772.63, 889.74, 1006.84, 1082.89, 1200.0]
    assert CATALOGUE["pythagorean"].rule.cents == pytest.approx(pythagorean, abs=HUNDREDTH_OF_A_CENT)
    assert CATALOGUE["quarter_comma_meantone"].rule.cents == pytest.approx(meantone, abs=HUNDREDTH_OF_A_CENT)


def test_equal_spacing_in_other_steps():
    """Nineteen steps to the octave are told from twelve, and the octave fret is the nineteenth."""
    beliefs = Beliefs(candidates=(Candidate(EQUAL, 1.0), Candidate(Equal(19), 1.0)))
    found = identify(board(FRETS, positions(Equal(19), 600.0, FRETS), 0.05), beliefs)
    assert (found.verdict, found.rule) == ("established", Equal(19))
    assert found.true_scale.value == pytest.approx(600.0, abs=1e-6)


def test_priors_weigh():
    """A prior of a thousand to one decides where the readings do not."""
    survey = board([3, 5], positions(EQUAL, 650.0, [3, 5]), 0.3)
    beliefs = Beliefs(candidates=(Candidate(EQUAL, 1.0), Candidate(EIGHTEENTH, 1000.0)))
    assert identify(survey, beliefs).rule == EIGHTEENTH


def test_any_divisor_between_other_bounds():
    """Wider bounds make a free divisor less likely beforehand, and its marginal likelihood smaller in proportion."""
    survey = board(FRETS, positions(EQUAL, 650.0, FRETS), 0.05)
    narrow, wide = (
        identify(survey, Beliefs(candidates=(Candidate(EQUAL, 1.0), Candidate(FreeDivisor(*bounds), 1.0))))
        for bounds in ((16.5, 19.5), (15.0, 21.0))
    )
    odds = [next(c for c in found.candidates if c.rule.name == "divisor").probability for found in (narrow, wide)]
    assert odds[0] / (1.0 - odds[0]) == pytest.approx(2.0 * odds[1] / (1.0 - odds[1]), rel=1e-6)


@pytest.mark.source(
    "scipy.stats.lognorm, cut off at the bound: median 0.05 mm, 99 % below 0.2 mm; bound 0.25 mm documented"
)
def test_the_prior_of_an_unknown_scatter():
    """The distribution has the stated median and tail, and the values integrated over have its moments."""
    prior = stats.lognorm(SCATTER_SHAPE, scale=SCATTER_SCALE)
    whole = prior.cdf(SCATTER_UPPER)
    assert prior.cdf(0.05) / whole == pytest.approx(0.5, abs=1e-9)
    assert prior.cdf(0.2) / whole == pytest.approx(0.99, abs=1e-9)
    scatter, weight = scatter_nodes()
    assert np.sum(weight) == pytest.approx(1.0, abs=1e-12)
    assert (scatter[-1], weight[-1]) == (SCATTER_UPPER, 0.0)
    for function in (np.log, np.square, np.sqrt):
        expected = integrate.quad(lambda x, f=function: f(x) * prior.pdf(x) / whole, 1e-4, SCATTER_UPPER)[0]
        assert float(weight[:-1] @ function(scatter[:-1])) == pytest.approx(expected, rel=0.005)
