"""Windings: the mass of cores and wraps against solids that are measured another way."""

import dataclasses
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.lutherie.errors import ImpossibleStringError, StringDescriptionError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.materials import MATERIALS
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.strings import open_string
from scalewright.lutherie.winding import Wrap, core_section, seat_below, wound_diameter, wrap_mass

INCH = 25.4
HELIX = "length of a helix of touching turns times the section of its wire; geometry"

diameters = st.floats(0.2, 1.5)
wires = st.floats(0.05, 0.8)


def mass(seat, wraps, outer=None):
    """Mass of the wraps alone."""
    return wrap_mass(seat, wraps, outer, [])


@pytest.mark.source(HELIX)
@given(diameters, wires)
def test_a_round_wrap_is_a_helix(seat, wire):
    """One layer weighs as much as the wire that a helix of touching turns takes for a length of string."""
    turns = 100
    length = turns * wire
    angle = np.linspace(0.0, 2.0 * np.pi * turns, 40_001)
    radius = (seat + wire) / 2.0
    curve = np.stack([radius * np.cos(angle), radius * np.sin(angle), wire * angle / (2.0 * np.pi)])
    wire_length = np.sum(np.sqrt(np.sum(np.diff(curve, axis=1) ** 2, axis=0)))
    expected = MATERIALS["phosphor_bronze"].density * math.pi / 4.0 * wire**2 * wire_length / length

    assert mass(seat, [Wrap("phosphor_bronze", wire)]) == pytest.approx(expected, rel=1e-4)


@pytest.mark.source("volume of a tube; geometry")
@given(diameters, wires)
def test_a_flat_wrap_fills_its_layer(seat, thickness):
    """A ribbon weighs as a tube does."""
    tube = math.pi / 4.0 * ((seat + 2.0 * thickness) ** 2 - seat**2)

    assert mass(seat, [Wrap("nickel", thickness, "flat")]) == pytest.approx(8.89 * tube, rel=1e-9)


@given(diameters, wires, wires)
def test_a_second_wrap_lies_on_the_first(seat, inner, outer):
    """Of two wraps the second weighs what it would on a core as thick as the string below it."""
    first, second = Wrap("nickel_plated_steel", inner), Wrap("nickel_plated_steel", outer)

    both = mass(seat, [first, second])

    assert both == pytest.approx(mass(seat, [first]) + mass(seat + 2.0 * inner, [second]), rel=1e-12)
    assert wound_diameter(seat, [first, second]) == pytest.approx(seat + 2.0 * (inner + outer))


@pytest.mark.source("volume of a torus cut by a cylinder, by numerical integration; geometry")
@pytest.mark.parametrize("share", [0.05, 0.2, 0.5, 0.9])
def test_what_grinding_takes_off(share):
    """A ground wrap weighs what lies within the ground diameter, by the outer diameter that is given."""
    seat, wire = 0.4, 0.3
    radius = (seat + wire) / 2.0
    outer = seat + 2.0 * wire - 2.0 * share * wire
    r, dr = np.linspace(seat / 2.0, outer / 2.0, 200_001, retstep=True)
    width = 2.0 * np.sqrt(np.maximum((wire / 2.0) ** 2 - (r - radius) ** 2, 0.0))
    volume = np.sum(2.0 * np.pi * r * width) * dr / wire
    helix = math.sqrt(1.0 + (wire / (math.pi * (seat + wire))) ** 2)

    found = mass(seat, [Wrap("steel", wire, "ground")], outer)

    assert found == pytest.approx(7.85 * volume * helix, rel=1e-4)


def test_grinding_that_is_not_described_is_assumed():
    """Without an outer diameter a share of the wrap is taken as ground off, and the answer says so."""
    notes: list[Note] = []
    ground = wrap_mass(0.4, [Wrap("steel", 0.3, "ground")], None, notes)

    assert mass(0.4, [Wrap("steel", 0.3, "flat")]) > ground
    assert ground < mass(0.4, [Wrap("steel", 0.3)])
    assert "ground-depth-assumed" in {note.slug for note in notes}
    # Ground by nothing, it is round.
    assert mass(0.4, [Wrap("steel", 0.3, "ground")], 1.0) == pytest.approx(mass(0.4, [Wrap("steel", 0.3)]))


def test_only_the_outermost_wrap_can_be_ground():
    """A ground wrap below another one is refused, at its place."""
    with pytest.raises(StringDescriptionError) as refused:
        mass(0.4, [Wrap("steel", 0.3, "ground"), Wrap("steel", 0.3)])

    assert refused.value.field == ("wraps", 0, "form")


@pytest.mark.source("corners of a regular hexagon lie 2/sqrt(3) of the width across flats apart; geometry")
def test_wraps_lie_on_the_corners_of_a_hexagon():
    """Over a hexagonal core the winding is as wide as its corners."""
    assert seat_below("hexagonal", 1.0) == pytest.approx(2.0 * (0.5 / math.cos(math.pi / 6.0)))
    assert core_section("hexagonal", 0.4).seat == seat_below("hexagonal", 0.4)
    assert core_section("round", 0.4).seat == 0.4


def test_a_wound_string_from_its_parts():
    """Core and wraps give mass, tension and outer diameter; the winding adds mass and no stiffness."""
    described = StringSpec(
        "A2",
        core_material="steel",
        core_diameter=0.016 * INCH,
        wraps=(Wrap("phosphor_bronze", 0.013 * INCH),),
    )
    string = open_string(described, 647.7)
    core = math.pi / 4.0 * (0.016 * INCH) ** 2

    assert string.unit_mass == pytest.approx(7.85 * core + mass(0.016 * INCH, described.wraps))
    assert string.stiffness_n == pytest.approx(1e3 * MATERIALS["steel"].modulus * core)
    assert {"mass-from-wraps", "catalogue-modulus"} <= {note.slug for note in string.notes}
    assert string.unit_mass_from == "material"


def test_wraps_beside_a_known_mass_are_not_weighed_and_that_is_said():
    """A mass that was measured stands before its parts, which are still held against the outer diameter."""
    wraps = (Wrap("phosphor_bronze", 0.33),)
    weighed = StringSpec("A2", 1.07, unit_mass=4.4, core_material="steel", core_diameter=0.41, wraps=wraps)
    plain, thick = open_string(weighed, 650.0), open_string(dataclasses.replace(weighed, diameter=1.5), 650.0)

    assert plain.unit_mass == 4.4
    assert "wraps-not-weighed" in {note.slug for note in plain.notes}
    assert ["diameters-differ" in {note.slug for note in string.notes} for string in (plain, thick)] == [False, True]


def test_a_core_that_is_not_given_is_what_the_wraps_leave():
    """Outer diameter and wraps give the core, with a note; wraps that leave none are refused."""
    wraps = (Wrap("phosphor_bronze", 0.33),)
    told = open_string(StringSpec("A2", core_material="steel", core_diameter=0.41, wraps=wraps), 650.0)
    found = open_string(StringSpec("A2", 0.41 + 0.66, core_material="steel", wraps=wraps), 650.0)

    assert found.unit_mass == pytest.approx(told.unit_mass)
    assert "core-from-wraps" in {note.slug for note in found.notes}
    with pytest.raises(ImpossibleStringError) as refused:
        open_string(StringSpec("A2", 0.6, core_material="steel", wraps=wraps), 650.0)
    assert refused.value.field == ("wraps",)


def test_parts_that_do_not_add_up_are_pointed_out():
    """An outer diameter that core and wraps miss gets a note, not a refusal."""
    wraps = (Wrap("phosphor_bronze", 0.33),)
    string = open_string(StringSpec("A2", 1.3, core_material="steel", core_diameter=0.41, wraps=wraps), 650.0)

    assert "diameters-differ" in {note.slug for note in string.notes}


@pytest.mark.parametrize(
    ("wraps", "field"), [((Wrap("nickel", 0.0),), 0), ((Wrap("nickel", 0.3), Wrap("nickel", 99.0)), 1)]
)
def test_wraps_that_cannot_be_are_refused(wraps, field):
    """A wrap without thickness, or one thicker than a string, is refused at its place."""
    with pytest.raises(ImpossibleStringError) as refused:
        open_string(StringSpec("A2", core_material="steel", core_diameter=0.4, wraps=wraps), 650.0)

    assert refused.value.field == ("wraps", field, "diameter")
