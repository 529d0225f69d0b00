"""Stringing on the wire: relief, fret height, sliding ends and the target, and the work at a bridge."""

import json
from typing import Any

import pytest
from pydantic import ValidationError

from scalewright.lutherie.compensation import GluedBridge, StraightSlot, Travel
from scalewright.lutherie.setup import Relief
from scalewright.lutherie.spacing import Equal, Listed
from scalewright.wire.compensation import CompensationIn
from scalewright.wire.intonation import IntonationIn

BOARD: dict[str, Any] = {
    "scale": 650,
    "rule": "equal",
    "heights": {"nut": 1, "saddle_above_nut": 4},
    "strings": [{"pitch": "E4", "diameter": 0.7, "unit_mass": 0.4, "R": 20}],
}


def read(model=CompensationIn, **changes):
    """Read a question with changes."""
    return model.read(json.dumps({**BOARD, **changes}).encode()).to_domain()


def test_how_the_strings_lie():
    """Relief, fret height and sliding length come through in millimetres."""
    setup = read(relief={"depth": "0.010 in"}, finger_behind_fret=5, fret_height="1.1 mm", sliding_length=120).setup

    assert setup.relief == Relief(0.254)
    assert (setup.finger_behind_fret, setup.fret_height, setup.sliding_length) == (5.0, 1.1, 120.0)
    assert read(relief={"depth": 0.2, "shape": "tilt"}).setup.relief == Relief(0.2, "tilt")
    plain = read().setup
    assert (plain.relief, plain.fret_height, plain.sliding_length, plain.target) == (None, None, 0.0, None)


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("equal", Equal(12)),
        ({"name": "equal", "steps": 19}, Equal(19)),
        ({"name": "listed", "cents": [100.0, 200.0]}, Listed((100.0, 200.0))),
        ({"name": "listed", "cents": [386.0, 1200.0], "repeat": True}, Listed((386.0, 1200.0), repeat=True)),
    ],
)
def test_a_target(said, meant):
    """A target is equal steps or listed pitches."""
    assert read(target=said).setup.target == meant


def test_work_at_the_bridge():
    """Slot, travel, glued bridge, other sets and reach come through under their own meaning."""
    work = read(
        slot={"thickness": 3, "spread": "58 mm"},
        travel={"least": -1, "most": 5},
        bridge={"slot_at_first": 651, "slot_at_last": 652, "thickness": 2.5, "across": [0], "widest_slot": 5},
        other_sets=[{"name": "heavy", "strings": BOARD["strings"], "heights": {"nut": 1, "saddle_above_nut": 5}}],
        reach=4,
        compare_with_equal=True,
    ).work

    assert work.slot == StraightSlot(3.0, 58.0)
    assert work.travel == Travel(-1.0, 5.0)
    assert work.bridge == GluedBridge(651.0, 652.0, 2.5, across=[0.0], widest_slot=5.0)
    assert (work.other_sets[0].name, work.other_sets[0].heights.saddle_above_nut) == ("heavy", 5.0)
    assert (work.reach, work.reslotted) == (4.0, True)


def test_setbacks_of_a_played_board():
    """In a question of intonation each string has its own setbacks, zero unless given."""
    strings = [BOARD["strings"][0], {**BOARD["strings"][0], "saddle_setback": "2 mm", "nut_setback": -0.4}]
    setbacks = read(IntonationIn, strings=strings).setbacks

    assert [(one.saddle, one.nut) for one in setbacks] == [(0.0, 0.0), (2.0, -0.4)]


@pytest.mark.parametrize(
    ("changes", "place"),
    [
        ({"target": "eighteenth"}, ("target",)),
        ({"target": {"name": "listed", "cents": []}}, ("target",)),
        ({"target": {"name": "listed", "cents": [200.0, 100.0]}}, ("target",)),
        ({"target": {"name": "listed", "cents": [100.0, 1400.0], "repeat": True}}, ("target",)),
        ({"relief": {"depth": "20 mm"}}, ("relief", "depth")),
        ({"relief": {"depth": 0.2, "shape": "wave"}}, ("relief", "shape")),
        ({"fret_height": 0}, ("fret_height",)),
        ({"saddle": "fixed"}, ("saddle",)),
        ({"nut": "glued"}, ("nut",)),
        ({"slot": {}}, ("slot", "thickness")),
        ({"bridge": {"slot_at_first": 651}}, ("bridge", "slot_at_last")),
        ({"other_sets": [{"strings": BOARD["strings"]}]}, ("other_sets", 0, "name")),
        ({"other_sets": [{"name": "a\nb", "strings": BOARD["strings"]}]}, ("other_sets", 0, "name")),
        (
            {"other_sets": [{"name": "a", "strings": [{"diameter": 0.7}]}]},
            ("other_sets", 0, "strings", 0, "pitch"),
        ),
        ({"reach": -1}, ("reach",)),
    ],
)
def test_what_a_strung_board_may_not_say(changes, place):
    """A value that cannot be is refused, at the place where it stands."""
    with pytest.raises(ValidationError) as refused:
        read(**changes)

    assert refused.value.errors()[0]["loc"][: len(place)] == place
