"""Labels: what a number on a part can mean."""

import pytest

from scalewright.lutherie.errors import UnplaceableLabelError
from scalewright.lutherie.label import Label, label_without_unit, meanings_of
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL

INCH = 25.4
EXACT = 1e-9
THOU = 0.0005 * INCH
"""Half of the last digit of a number of inches with three decimals. [mm]"""


def inches(number, grain):
    """A label in inches."""
    return Label(number * INCH, "in", grain * INCH)


def meaning(label, name, rule=EQUAL, **known):
    """The meaning of one name and rule."""
    (found,) = [one for one in meanings_of(label, **known) if (one.name, one.rule) == (name, rule)]
    return found


@pytest.mark.source("common practice, no source: 24.75 in and its 12th fret under both rules")
def test_the_two_main_readings_of_24_75():
    """Equal spacing puts fret 12 at 12.375 in, the rule of 18 at 12.285 in, doubled 24.57 in."""
    label = inches(24.75, 0.01)
    equal, old = meaning(label, "exact"), meaning(label, "exact", EIGHTEENTH)
    assert equal.octave_distance == pytest.approx(12.375 * INCH, abs=EXACT)
    assert old.octave_distance == pytest.approx(12.285 * INCH, abs=THOU)
    assert old.true_scale == pytest.approx(24.57 * INCH, abs=THOU)
    assert old.layout_scale == pytest.approx(24.75 * INCH, rel=EXACT)
    assert (equal.basis, old.basis) == ("true_scale", "layout_scale")


@pytest.mark.source("common practice, no source: 25.34 sold as 25.4, 24.84 as 24.9")
@pytest.mark.parametrize(("label", "true_scale"), [(25.4, 25.34), (24.9, 24.84)])
def test_rounding_up_in_favour_of_compensation(label, true_scale):
    """A label with one decimal holds true scales down to a tenth of an inch below it."""
    found = meaning(inches(label, 0.1), "rounded_up")
    assert found.lower == pytest.approx((label - 0.1) * INCH, rel=EXACT)
    assert found.lower < true_scale * INCH < found.upper
    assert found.upper == pytest.approx(label * INCH, rel=EXACT)


@pytest.mark.parametrize(("grain", "half"), [(0.1, 0.05), (0.01, 0.005), (0.25, 0.125)])
def test_rounding_to_the_nearest_follows_how_the_label_is_written(grain, half):
    """One decimal, two decimals and quarters of an inch stand for intervals of half their step to both sides."""
    found = meaning(inches(24.75, grain), "rounded")
    assert found.lower == pytest.approx((24.75 - half) * INCH, rel=EXACT)
    assert found.upper == pytest.approx((24.75 + half) * INCH, rel=EXACT)


def test_a_string_length_has_the_setback_in_it():
    """The true scale is shorter by the setback, and as uncertain as that."""
    found = meaning(inches(25.5, 0.1), "string_length", setback=3.0, setback_uncertainty=0.5)
    assert found.true_scale == pytest.approx(25.5 * INCH - 3.0, rel=EXACT)
    assert found.deviation > 0.5


@pytest.mark.source("exact: an inch is 25.4 mm, so 25 1/2 in are 647.7 mm and 24 3/4 in 628.65 mm")
def test_metric_labels_that_are_rounded_inches_and_the_reverse():
    """648 mm may be 25 1/2 in, 629 mm 24 3/4 in, and 25.6 in 650 mm."""
    for label, length in (
        (Label(648.0, "mm", 1.0), 647.7),
        (Label(629.0, "mm", 1.0), 628.65),
        (Label(25.6 * INCH, "in", 0.1 * INCH), 650.0),
    ):
        lengths = [one.true_scale for one in meanings_of(label) if (one.name, one.rule) == ("converted", EQUAL)]
        assert any(length == pytest.approx(found, rel=EXACT) for found in lengths)


def test_labels_without_a_unit_are_read_in_the_one_they_fit():
    """25.4 can only be inches and 650 only millimetres."""
    assert label_without_unit(25.4, (0.1, 0.1)) == Label(25.4 * INCH, "in", 0.1 * INCH, unit_given=False)
    assert label_without_unit(650.0, (1.0, 1.0)) == Label(650.0, "mm", 1.0, unit_given=False)


@pytest.mark.parametrize("number", [0.0, 5.0, 62.9, 120.0, 5000.0, -25.4])
def test_labels_that_fit_neither_unit_are_refused(number):
    """What is neither inches nor millimetres needs its unit."""
    with pytest.raises(UnplaceableLabelError, match="write its unit"):
        label_without_unit(number, (0.1, 0.1))


def test_all_meanings_leave_room_for_another():
    """The priors of the meanings that are known sum to less than one."""
    total = sum(one.prior for one in meanings_of(inches(25.6, 0.1)))
    assert 0.8 < total < 1.0
