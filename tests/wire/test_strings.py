"""Strings on the wire: gauges, wraps, tunings, and pitches that are named once."""

import json
from typing import Any

import pytest
from pydantic import ValidationError

from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.tunings import TUNINGS
from scalewright.lutherie.winding import Wrap
from scalewright.wire.compensation import CompensationIn

WOUND: dict[str, Any] = {
    "pitch": "A2",
    "core_material": "steel",
    "core_diameter": "0.016 in",
    "core_shape": "hexagonal",
    "wraps": [
        {"material": "nickel_plated_steel", "diameter": "0.010 in"},
        {"material": "phosphor_bronze", "diameter": 0.3, "form": "ground"},
    ],
}


def read(strings, **changes):
    """Read a question with these strings."""
    document = {
        "scale": 650,
        "rule": "equal",
        "heights": {"nut": "1 mm", "saddle_above_nut": "4 mm"},
        "strings": strings,
        **changes,
    }
    return CompensationIn.read(json.dumps({**document, **changes}).encode())


def specs(strings, **changes):
    """Strings that reach the craft."""
    return read(strings, **changes).to_domain().setup.strings


def test_a_wound_string():
    """Core shape and wraps come through, lengths in millimetres."""
    (string,) = specs([WOUND])

    assert string.core_shape == "hexagonal"
    assert string.core_diameter == pytest.approx(0.016 * 25.4)
    assert string.wraps == (Wrap("nickel_plated_steel", 0.254), Wrap("phosphor_bronze", 0.3, "ground"))


def test_gauges_in_inches():
    """In a request in inches a bare number is a gauge in inches."""
    wraps = [{"material": "nickel", "diameter": 0.012}]
    (string,) = specs(
        [{"pitch": "A2", "core_material": "steel", "core_diameter": 0.016, "wraps": wraps}], unit="in", scale=25
    )

    assert string.core_diameter == pytest.approx(0.4064)
    assert string.wraps[0].diameter == pytest.approx(0.3048)


def test_what_is_left_out():
    """A string has a round core, no wraps and no measured stiffness unless it says so."""
    (string,) = specs([{"pitch": "E4", "diameter": 0.7, "unit_mass": 0.4, "R": 20}])

    assert string == StringSpec("E4", 0.7, unit_mass=0.4, R=20.0)


def test_a_tuning_names_the_pitches():
    """Strings without a pitch take the tuning's, in its order; one with its own keeps it."""
    plain = {"core_material": "steel", "core_diameter": "0.012 in"}
    named = specs([plain] * 5 + [{**plain, "pitch": "D2"}], tuning="six_string_standard")

    assert [string.pitch for string in named] == [*TUNINGS["six_string_standard"][:5], "D2"]


@pytest.mark.parametrize(
    ("strings", "changes", "place"),
    [
        ([WOUND, {**WOUND, "pitch": None}], {}, ("strings", 1, "pitch")),
        ([{key: value for key, value in WOUND.items() if key != "pitch"}], {}, ("strings", 0, "pitch")),
        ([WOUND], {"tuning": "six_string_standard"}, ("tuning",)),
        ([WOUND], {"tuning": "open_z"}, ("tuning",)),
        ([{**WOUND, "core_shape": "triangular"}], {}, ("strings", 0, "core_shape")),
        ([{**WOUND, "wraps": [{"material": "gold", "diameter": 0.2}]}], {}, ("strings", 0, "wraps", 0, "material")),
        ([{**WOUND, "wraps": [{"material": "nickel"}]}], {}, ("strings", 0, "wraps", 0, "diameter")),
        ([{**WOUND, "wraps": [{"material": "nickel", "diameter": 0}]}], {}, ("strings", 0, "wraps", 0, "diameter")),
        ([{**WOUND, "wraps": WOUND["wraps"] * 3}], {}, ("strings", 0, "wraps")),
        ([{**WOUND, "B0": -0.1}], {}, ("strings", 0, "B0")),
    ],
)
def test_what_a_string_may_not_say(strings, changes, place):
    """A pitch that nobody names, a tuning of other strings, an unknown material: each is refused at its place."""
    with pytest.raises(ValidationError) as refused:
        read(strings, **changes)

    assert refused.value.errors()[0]["loc"][: len(place)] == place
