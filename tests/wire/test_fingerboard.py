"""Fingerboards on the wire: one value or several where a board allows both, and sheets."""

import json

import pytest

from scalewright.drawing.sheet import PAPERS
from scalewright.lutherie.fingerboard import BoardMargins, BoardWidths, SurfaceRadius
from scalewright.lutherie.fingerboard.board import draw_up
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal
from scalewright.wire.fingerboard import FingerboardIn

BOARD = {
    "scale": 650,
    "rule": "equal",
    "frets": 12,
    "strings": {"count": 6, "nut_spread": 43, "saddle_spread": 58},
    "margins": 4,
}


def read(**changes) -> FingerboardIn:
    """Read a question that differs from a plain board."""
    return FingerboardIn.read(json.dumps({**BOARD, **changes}).encode())


def test_one_rule_and_scale_stand_for_both_sides():
    """Where one is given, bass and treble are alike; where two are, each has its own."""
    one = read().to_domain()
    two = read(
        scale={"bass": "27 in", "treble": 648},
        rule={"bass": "eighteenth", "treble": {"name": "divisor", "divisor": 17.9}},
        square_fret=7,
    ).to_domain()

    assert one.bass == one.treble
    assert (two.bass.rule, two.treble.rule) == (EIGHTEENTH, Divisor(17.9))
    assert [two.bass.scale, two.treble.scale] == pytest.approx([685.8, 648.0])
    assert two.square_fret == 7


def test_margins_and_radii_are_one_or_several():
    """One margin stands for all corners, one radius for both ends."""
    assert read().to_domain().margins == BoardMargins(4.0, 4.0, 4.0, 4.0)
    corners = {"nut_bass": 1, "nut_treble": 2, "last_fret_bass": 3, "last_fret_treble": "4 mm"}
    assert read(margins=corners).to_domain().margins == BoardMargins(1.0, 2.0, 3.0, 4.0)
    radius = read(radius="12 in").to_domain().radius
    assert radius is not None
    assert [radius.nut, radius.last_fret] == pytest.approx([12 * 25.4] * 2)
    assert read(radius={"nut": 250, "last_fret": 400}).to_domain().radius == SurfaceRadius(250.0, 400.0)
    strings = {"count": 6}
    assert read(strings=strings, widths={"nut": 50, "last_fret": 60}).to_domain().widths == BoardWidths(50.0, 60.0)


def test_frets_cut_short_reach_to_the_lowest_string_unless_said_otherwise():
    """The last string is the board's last where it is left out."""
    partial = (
        read(partial_frets=[{"fret": 3, "first_string": 4}, {"cents": 150, "last_string": 2}]).to_domain().partial_frets
    )

    assert [(fret.first_string, fret.last_string) for fret in partial] == [(4, 6), (1, 2)]


@pytest.mark.parametrize(
    ("rule", "words"),
    [
        ("equal", "equal spacing, layout scale 650.00 mm (25.591 in)"),
        ({"name": "equal", "steps": 19}, "equal spacing in 19 steps"),
        ("eighteenth", "rule of 18"),
        ({"name": "divisor", "divisor": 17.835}, "divisor 17.835"),
        ({"name": "listed", "cents": [100, 200], "repeat": True}, "listed pitches, layout scale"),
    ],
)
def test_the_statement_names_the_rule(rule, words):
    """One sentence says rule and scales; without an octave fret there is no true scale to state."""
    statement = draw_up(read(rule=rule, frets=2).to_domain()).statement

    assert words in statement
    assert statement.endswith(".")
    assert ("none (no octave fret)" in statement) == ("listed" in words)


def test_a_statement_of_a_fan_names_both_sides():
    """And the fret that stays square."""
    fan = read(scale={"bass": 686, "treble": 648}, square_fret=0, handedness="left").to_domain()

    assert draw_up(fan).statement.startswith("12 frets, 6 strings, left-handed, fan square at the nut: bass equal")


def test_rules_of_other_steps():
    """A rule goes through as it is."""
    assert read(rule={"name": "equal", "steps": 31}).to_domain().bass.rule == Equal(31) != EQUAL


def test_a_sheet_knows_its_paper():
    """A long sheet has no page; A4 and letter lie; a page of a size of its own is taken as it is."""
    assert read().sheet.to_domain().page is None
    assert read().sheet.to_domain().least_step == 0.0
    assert read(sheet={"paper": "A4"}).answer_context["sheet"].page == PAPERS["A4"]
    own = read(unit="mm", sheet={"paper": "custom", "page": {"width": "16.5 in", "height": 297}, "overlap": 12}).sheet
    assert own.to_domain().page == pytest.approx((419.1, 297.0))
    assert own.to_domain().overlap == 12.0
