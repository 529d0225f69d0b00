"""The octave reading alone."""

import pytest

from scalewright.lutherie.identification.octave import octave_alone
from scalewright.lutherie.measure import Instrument, NutOffset, Reading, survey

ROUNDING = 1e-12


def alone(readings, *, aside=(), scale_error=0.0):
    """Twice the distance to fret 12."""
    return octave_alone(survey(readings, Instrument(0.1, scale_error=scale_error)), 12, aside, 0.95)[0]


@pytest.mark.source("JCGM 100:2008, 5.1.2: variances of independent readings add; a mean of two has half of one")
def test_single_readings_repeats_and_spans():
    """One reading doubles, two are averaged, spans add, each with its uncertainty."""
    single = alone([Reading(0, 12, 325.0)])
    assert (single.value, single.standard_uncertainty) == pytest.approx((650.0, 0.2), rel=ROUNDING)
    twice = alone([Reading(0, 12, 325.1), Reading(0, 12, 324.9)])
    assert (twice.value, twice.standard_uncertainty) == pytest.approx((650.0, 0.2 / 2.0**0.5), rel=ROUNDING)
    spanned = alone([Reading(0, 5, 163.0), Reading(5, 12, 162.0), Reading(3, 9, 160.0)])
    assert (spanned.value, spanned.standard_uncertainty) == pytest.approx((650.0, 0.2 * 2.0**0.5), rel=ROUNDING)


def test_a_broken_chain_tells_nothing():
    """Where no readings lead from the nut to fret 12 there is no figure, and a reading set aside breaks the chain."""
    assert alone([Reading(0, 5, 163.0), Reading(7, 12, 109.0)]) is None
    assert alone([Reading(0, 5, 163.0)]) is None
    assert alone([Reading(0, 5, 163.0), Reading(5, 12, 162.0)], aside=(1,)) is None


@pytest.mark.source("JCGM 100:2008, F.1.2.3: an error common to all readings")
def test_an_error_of_the_scale_is_common():
    """A thousandth of the length is added in squares."""
    assert alone([Reading(0, 12, 325.0)], scale_error=0.001).standard_uncertainty == pytest.approx(
        (0.2**2 + 0.65**2) ** 0.5, rel=ROUNDING
    )


@pytest.mark.source(
    "JCGM 100:2008, 5.1.2 and F.1.2.3: a correction that is known is made, one that is common adds in full"
)
def test_what_is_known_of_nut_and_slots_is_taken_out_and_what_is_not_is_in_the_uncertainty():
    """A known nut offset and a known half width are corrected; an unknown half width widens the figure."""
    moved = survey([Reading(0, 12, 320.0)], Instrument(0.1), nut_offset=NutOffset(-5.0, 0.0))
    found, note = octave_alone(moved, 12, (), 0.95)
    assert found.value == pytest.approx(650.0, rel=ROUNDING)
    assert "moved" not in note.text
    edges = [Reading(0, 12, 324.3, point="near_edge")]
    unknown = octave_alone(survey(edges, Instrument(0.1)), 12, (), 0.95)[0]
    assert unknown.standard_uncertainty == pytest.approx(2.0 * (0.1**2 + 0.4**2) ** 0.5, rel=ROUNDING)
    known = octave_alone(survey(edges, Instrument(0.1), slot_width=1.4), 12, (), 0.95)[0]
    assert (known.value, known.standard_uncertainty) == pytest.approx((650.0, 0.2), rel=ROUNDING)
