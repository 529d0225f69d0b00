"""Stretch tests on the wire: readings in any unit, and what comes of them."""

import json

import pytest
from pydantic import ValidationError

from scalewright.lutherie.stretch_test import StretchReadings, evaluate_stretch_test
from scalewright.wire.stretch_test import StretchTestIn, StretchTestOut

TEST = {"length": 600, "stretch": [0, 1, 2, 3], "frequencies": [200, 209, 219, 228]}


def read(**changes):
    """Read a stretch test with changes."""
    return StretchTestIn.read(json.dumps({**TEST, **changes}).encode())


def test_a_stretch_test():
    """Each member reaches the craft under its own meaning, lengths in millimetres."""
    readings = read(
        unit="in", length=24, stretch=[0, 0.02, "1 mm"], frequencies=[200, 205, 210], uncertainties=[1, 1, 2],
        pitch=220, diameter="0.028 in", tension=68, scale="25.5 in", coverage=0.9, scatter_from="uncertainties",
    ).to_domain()  # fmt: skip

    assert readings == StretchReadings(
        length=24 * 127 / 5,
        stretch=[0.0, 0.508, 1.0],
        frequencies=[200.0, 205.0, 210.0],
        uncertainties=[1.0, 1.0, 2.0],
        pitch="220.0 Hz",
        scatter_from="uncertainties",
        diameter=0.028 * 127 / 5,
        tension=68.0,
        scale=25.5 * 127 / 5,
        coverage=0.9,
    )


def test_only_lengths_are_in_the_unit():
    """The stretch of an outlier is in the unit asked for; the slope is per millimetre whatever the unit."""
    y = [196.0, 201.0, 206.1, 221.0, 216.0, 221.1, 226.0]
    x = [0.0, 0.02, 0.04, 0.06, 0.08, 0.1, 0.12]
    question = read(unit="in", stretch=x, frequencies=y, length=24)
    result = evaluate_stretch_test(question.to_domain())
    answer = json.loads(StretchTestOut.model_validate(result).model_dump_json(context=dict(question.answer_context)))

    assert answer["outliers"][0]["stretch"] == pytest.approx(0.06)
    assert answer["slope_hz_per_mm"]["value"] == result.slope_hz_per_mm.value
    assert answer["R"]["value"] == result.R.value


@pytest.mark.parametrize(
    ("changes", "place"),
    [
        ({"length": 0}, ("length",)),
        ({"stretch": []}, ("stretch",)),
        ({"stretch": [0, -1, 2, 3]}, ("stretch", 1)),
        ({"frequencies": [0, 1, 2, 3]}, ("frequencies", 0)),
        ({"uncertainties": [0, 1, 1, 1]}, ("uncertainties", 0)),
        ({"pitch": True}, ("pitch",)),
        ({"scatter_from": "dice"}, ("scatter_from",)),
        ({"tension": 0}, ("tension",)),
    ],
)
def test_what_a_stretch_test_may_not_say(changes, place):
    """A value that cannot be is refused, at the place where it stands."""
    with pytest.raises(ValidationError) as refused:
        read(**changes)

    assert refused.value.errors()[0]["loc"][: len(place)] == place
