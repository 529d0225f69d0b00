"""The picture of what the rule of 18 does to pitch, and the account beside it in the README."""

import math

import pytest

from scalewright.lutherie.compensation import compensate
from scalewright.lutherie.intonation import Setbacks, intonate
from scalewright.lutherie.layout import lay_out
from scalewright.lutherie.spacing import EIGHTEENTH
from tests.lutherie.compensation.boards import NYLON, setup
from tests.lutherie.compensation.picture import FILE, FRETS, HIGHEST, LOWEST, curves, draw


def test_the_picture_on_file_is_the_one_that_is_drawn():
    """The committed picture shows the service's numbers of today."""
    assert FILE.read_text(encoding="utf-8") == draw()


def test_every_note_is_inside_the_picture():
    """No curve leaves the frame, and each has a point at every fret."""
    for cents in curves().values():
        assert len(cents) == FRETS
        assert min(cents) > LOWEST
        assert max(cents) < HIGHEST


@pytest.mark.source("650 mm times 2 (1 - (17/18)^12), exact; common practice: the effect grows at the upper frets")
def test_the_account_of_the_rule_of_18():
    """The old rule's octave lies short of half the layout, and its cost is small low on the neck and grows upwards."""
    layout = lay_out(EIGHTEENTH, 650.0, FRETS)
    at_true, best, equal = curves().values()
    assert layout.true_scale is not None
    setback = compensate(setup(frets=FRETS, strings=NYLON[:1])).strings[0].saddle_setback
    at_layout_end = intonate(
        setup(rule=EIGHTEENTH, frets=FRETS, strings=NYLON[:1]), [Setbacks(650.0 - layout.true_scale + setback)]
    )

    assert layout.true_scale == pytest.approx(1300.0 * (1.0 - (17.0 / 18.0) ** 12), rel=1e-15)
    assert at_layout_end.strings[0].cents[11].cents == pytest.approx(-12.4, abs=0.1)
    # The rule itself: 1200 log2 of what is left of the true scale, less the target, for an ideal string.
    for fret in (5, 12, 19):
        left = layout.frets[fret - 1].to_true_end
        assert left is not None
        assert at_true[fret - 1] - equal[fret - 1] == pytest.approx(
            1200.0 * math.log2(layout.true_scale / left) - 100.0 * fret, abs=0.15
        )
    assert abs(best[4]) < abs(best[18])
