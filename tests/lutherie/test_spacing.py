"""Spacing rules, against exact constants."""

import json
import math
from fractions import Fraction
from pathlib import Path

import mpmath
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.lutherie import spacing
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal, Listed

EXACT = json.loads((Path(__file__).parent.parent / "reference" / "spacing.json").read_text(encoding="utf-8"))["exact"]

ROUNDING = 4e-16
"""Relative; two units in the last place."""

PRINTED = 6e-10
"""Relative; the constants of the reference are printed to ten figures."""

mp = mpmath.MPContext()
mp.dps = 50


@pytest.mark.source("reference/spacing.json, exact, computed; its digits behind the tenth from mpmath")
def test_the_divisor_of_equal_temperament():
    """Equal temperament of twelve steps divides by 17.817153745105777."""
    exact = 1 / (1 - mp.power(2, mp.mpf(-1) / 12))

    assert pytest.approx(EXACT["equal_divisor"], rel=PRINTED) == float(exact)
    assert pytest.approx(float(exact), rel=ROUNDING) == EQUAL.divisor
    assert pytest.approx(17.817153745105777, rel=ROUNDING) == EQUAL.divisor


@pytest.mark.source("reference/spacing.json, exact, computed")
def test_the_cents_of_the_rule_of_18():
    """A step is 98.954592230 cents, twelve are 1187.455106764, short of an octave by 12.544893236."""
    step = spacing.step_cents(EIGHTEENTH)

    assert step == pytest.approx(EXACT["eighteenth_step_cents"], rel=PRINTED)
    assert step == pytest.approx(98.954592230, abs=5e-10)
    assert spacing.cents(EIGHTEENTH, 12)[-1] == pytest.approx(1187.455106764, abs=5e-10)
    assert spacing.octave_shortfall(EIGHTEENTH) == pytest.approx(
        EXACT["eighteenth_octave_shortfall_cents"], rel=PRINTED
    )


@pytest.mark.source("reference/spacing.json, exact, computed")
def test_fret_12_of_the_rule_of_18_is_an_exact_fraction():
    """Fret 12 stands at 574209144196415/1156831381426176 of the layout scale, correctly rounded."""
    exact = Fraction(EXACT["eighteenth_fret12_fraction"])

    assert exact == 1 - Fraction(17, 18) ** 12
    assert spacing.fractions(EIGHTEENTH, 12)[-1] == exact.numerator / exact.denominator


@pytest.mark.parametrize(
    ("rule", "octave"),
    [
        (EQUAL, 12),
        (Equal(1), 1),
        (Equal(19), 19),
        (Equal(31), 31),
        (EIGHTEENTH, 12),
        (Divisor(17.817), 12),
        (Divisor(17.835), 12),
        (Divisor(2.0), 1),
        (Divisor(1000.0), 693),
        (Listed((204.0, 498.0, 702.0, 1200.0)), 4),
        (Listed((204.0, 1199.995)), 2),
        (Listed((204.0, 1199.98)), None),
        (Listed((204.0, 702.0)), None),
        (Listed((600.0, 1199.995), repeat=True), 2),
    ],
)
def test_the_octave_fret(rule, octave):
    """The octave fret is N of N steps, the whole number nearest to ln 2 / -ln(1 - 1/d), or the listed octave."""
    assert spacing.octave_fret(rule) == octave


@given(st.floats(2.0, 1000.0))
def test_the_octave_fret_of_a_divisor_is_the_nearest(divisor):
    """No other whole number of steps comes nearer to an octave."""
    octave = spacing.octave_fret(Divisor(divisor))
    step = spacing.step_cents(Divisor(divisor))

    assert octave is not None
    assert step is not None
    assert abs(octave * step - 1200.0) <= step / 2.0 * (1.0 + 1e-12)


@given(st.integers(1, 120), st.integers(1, 60))
def test_equal_spacing_halves_what_is_left_at_every_octave(steps, fret):
    """N steps further only half the length is left; N frets make 1200 cents."""
    rule = Equal(steps)
    left = spacing.remainders(rule, fret + steps)

    assert left[fret + steps - 1] == pytest.approx(left[fret - 1] / 2.0, rel=1e-15 * steps)
    assert spacing.cents(rule, steps)[-1] == 1200.0


@pytest.mark.parametrize(
    "rule", [EQUAL, Equal(5), EIGHTEENTH, Divisor(17.835), Divisor(2.5), Listed((90.0, 204.0, 294.0), repeat=True)]
)
def test_fractions_remainders_and_steps_are_one_thing(rule):
    """What lies before a fret and what is left behind it make one; a step is its share of what was left."""
    fractions, left = spacing.fractions(rule, 30), spacing.remainders(rule, 30)

    for n, share in enumerate(spacing.step_shares(rule, 30)):
        before = left[n - 1] if n else 1.0
        assert fractions[n] + left[n] == pytest.approx(1.0, rel=ROUNDING)
        assert before * (1.0 - share) == pytest.approx(left[n], rel=1e-13)


def test_a_constant_divisor_takes_the_same_share_at_every_fret():
    """The divisor is what the length that is left is divided by, which is how a maker uses it at the bench."""
    left = 650.0
    for fret, fraction in enumerate(spacing.fractions(Divisor(17.817), 24), 1):
        left -= left / 17.817
        assert 650.0 * (1.0 - fraction) == pytest.approx(left, rel=1e-13), fret


def test_repeated_pitches_go_on_an_octave_higher():
    """A list that repeats starts again 1200 cents higher where it ends."""
    assert spacing.cents(Listed((204.0, 702.0, 1200.0), repeat=True), 5) == [204.0, 702.0, 1200.0, 1404.0, 1902.0]


def test_listed_pitches_have_no_constant_step():
    """Neither a divisor nor a step is made up for listed pitches."""
    rule = Listed((204.0, 702.0))

    assert rule.divisor is None
    assert spacing.step_cents(rule) is None
    assert spacing.octave_shortfall(rule) is None
    assert spacing.true_remainders(rule, 2) is None


def test_equal_pitches_listed_are_equal_spacing():
    """Listing 100, 200, 300 ... cents gives the frets of equal temperament."""
    listed = spacing.fractions(Listed(tuple(100.0 * n for n in range(1, 25))), 24)

    for one, other in zip(listed, spacing.fractions(EQUAL, 24), strict=True):
        assert math.isclose(one, other, rel_tol=1e-15)
