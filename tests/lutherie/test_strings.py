"""Strings: unit mass, tension, stiffness and strength."""

import json
import math
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.lutherie.errors import ImpossibleStringError, StringDescriptionError, StringError, UnknownPitchError
from scalewright.lutherie.materials import MATERIALS, breaking_load
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.strings import BREAKING_CAUTION, open_string

REFERENCE = Path(__file__).parents[1] / "reference"
STRINGS = json.loads((REFERENCE / "intonation.json").read_text(encoding="utf-8"))
MATERIAL_TABLES = json.loads((REFERENCE / "materials.json").read_text(encoding="utf-8"))

ANDERSON = "Anderson and Beausoleil, J. Acoust. Soc. Am. 156(1), 683 (2024), tables of string specifications"
PUBLISHED = [
    pytest.param(string, id=f"{name}-{string['string']}") for name, row in STRINGS["sets"].items() for string in row
]

INCH = 25.4
POUND_FORCE = 4.4482216152605
POUND_PER_INCH = 453.59237 / 0.0254
"""g/m, from the exact definitions of pound and inch."""

NEWTON_OF_TABLE = 0.1
KAPPA_OF_TABLE = 0.1 + 1e-9
"""R has one decimal in the table, so kappa = 2 R + 1 is known to one unit in its last place."""
B0_OF_TABLE = 0.00001
ROUNDING = 1e-12


def spec(**changes):
    """Describe a nylon treble, with changes."""
    plain = {"pitch": "E4", "diameter": 0.712, "unit_mass": 0.374, "R": 23.6}
    return StringSpec(**{name: value for name, value in {**plain, **changes}.items() if value is not None})


def slugs(string):
    """Which notes a string carries."""
    return {note.slug for note in string.notes}


@pytest.mark.source(ANDERSON)
@pytest.mark.parametrize("row", PUBLISHED)
def test_the_published_strings(row):
    """Tension, kappa and B0 of all 24 published strings follow from unit mass, radius and R."""
    string = open_string(
        StringSpec(
            pitch=row["pitch"],
            diameter=2.0 * row["radius_mm"],
            unit_mass=row["unit_mass_lb_per_in"] * POUND_PER_INCH,
            R=row["R"],
        ),
        STRINGS["geometry"]["scale_mm"],
    )

    assert string.tension_n == pytest.approx(row["tension_N"], abs=NEWTON_OF_TABLE)
    assert string.kappa == pytest.approx(row["kappa"], abs=KAPPA_OF_TABLE)
    assert pytest.approx(row["B0"], abs=B0_OF_TABLE) == string.B0


@pytest.mark.source(ANDERSON)
@pytest.mark.parametrize("row", PUBLISHED)
def test_the_published_effective_modulus(row):
    """The modulus that the paper derives, taken over the whole section, gives kappa back."""
    area = math.pi * row["radius_mm"] ** 2
    kappa = 1e3 * row["effective_modulus_GPa"] * area / row["tension_N"]
    string = open_string(StringSpec(row["pitch"], 2.0 * row["radius_mm"], tension=row["tension_N"], R=row["R"]), 650.0)

    # Modulus, radius and tension are printed to two or three digits.
    assert string.kappa == pytest.approx(kappa, rel=0.01)


@pytest.mark.source("piano technicians' mailing list attachment: 0.020 in wire, 16 in, 440 Hz, 0.283 lb/in3: 45.6 lb")
def test_a_piano_wire():
    """A worked example of a plain steel wire in inches and pounds."""
    example = MATERIAL_TABLES["piano_wire_example"]
    diameter = example["d_in"] * INCH
    unit_mass = example["density_lb_in3"] * math.pi / 4.0 * example["d_in"] ** 2 * POUND_PER_INCH
    measured = open_string(
        StringSpec("A4", diameter, unit_mass=unit_mass, core_material="steel"), example["L_in"] * INCH
    )
    catalogue = open_string(StringSpec("A4", diameter, core_material="steel"), example["L_in"] * INCH)

    # The example's own arithmetic takes gravity as 386.4 in/s2, 0.08 % more than the standard value.
    assert measured.tension_n / POUND_FORCE == pytest.approx(example["T_lb"] * 386.4 / 386.088582677, abs=0.05)
    # Our density of steel is another source's, 0.2 % higher.
    assert catalogue.tension_n / POUND_FORCE == pytest.approx(example["T_lb"], rel=0.004)


@pytest.mark.source("Young, J. Acoust. Soc. Am. 24, 267 (1952), second-hand: Bc = 3.4e13 d2/(f2 L4), d, L in cm; 1 %")
@pytest.mark.parametrize(
    ("pitch", "diameter", "length"), [("E4", 0.254, 648.0), ("A4", 0.9, 400.0), ("G2", 1.2, 1100.0)]
)
def test_inharmonicity_of_plain_steel(pitch, diameter, length):
    """Cents of inharmonicity of steel wire agree with the working formula for piano strings."""
    string = open_string(StringSpec(pitch, diameter, core_material="steel"), length)
    cents = 600.0 / math.log(2.0) * math.pi**2 * string.B0**2  # 1200 log2 sqrt(1 + pi2 B0^2 n^2), per n^2
    young = 3.4e13 * (diameter / 10.0) ** 2 / (string.frequency_hz**2 * (length / 10.0) ** 4)

    assert cents == pytest.approx(young, rel=0.01)


@pytest.mark.source("Fletcher, J. Acoust. Soc. Am. 36(1), 203 (1964): B = pi^3 E d^4/(64 T L^2)")
def test_stiffness_of_a_solid_string():
    """pi2 B0 squared is Fletcher's coefficient of a solid round string."""
    string = open_string(StringSpec("E4", 0.3, core_material="steel"), 640.0)
    modulus = 1e3 * MATERIALS["steel"].modulus  # N/mm2
    fletcher = math.pi**3 * modulus * 0.3**4 / (64.0 * string.tension_n * 640.0**2)

    assert math.pi**2 * string.B0**2 == pytest.approx(fletcher, rel=ROUNDING)


@pytest.mark.source("ASTM A228 minimum tensile strength, as reproduced by a wire supplier")
def test_strength_of_music_wire():
    """The breaking load is the table's strength times the area, at every diameter of the table."""
    for inches, ksi, _ in MATERIAL_TABLES["music_wire"]["rows"]:
        load = breaking_load(MATERIALS["steel"], inches * INCH)

        assert load is not None
        assert load == pytest.approx(1e3 * ksi * math.pi / 4.0 * inches**2 * POUND_FORCE, rel=1e-9)


def test_strength_between_and_beyond_the_table():
    """Between two diameters the strength lies between theirs; beyond the table nothing is claimed."""
    steel = MATERIALS["steel"]
    load = breaking_load(steel, 0.019 * INCH)

    assert load is not None
    strength = load / (math.pi / 4.0 * 0.019**2 * POUND_FORCE) / 1e3
    assert 350.0 < strength < 356.0
    assert breaking_load(steel, 0.003 * INCH) is None
    assert breaking_load(steel, 0.1 * INCH) is None
    assert breaking_load(MATERIALS["nylon"], 0.7) is None


def test_densities_and_moduli_lie_between_their_sources():
    """The steel we count with lies between the sources that the reference table lists."""
    music_wire = [row for row in MATERIAL_TABLES["materials"] if row["name"].startswith("Music wire")]
    steel = MATERIALS["steel"]

    assert min(row["E_GPa"] for row in music_wire) <= steel.modulus <= max(row["E_GPa"] for row in music_wire)
    assert min(row["rho_g_cm3"] for row in music_wire) <= steel.density <= max(row["rho_g_cm3"] for row in music_wire)
    for name, source in (("nylon", "Nylon 6/6 extruded"), ("fluorocarbon", "PVDF")):
        (row,) = [row for row in MATERIAL_TABLES["materials"] if row["name"] == source]
        assert (MATERIALS[name].modulus, MATERIALS[name].density) == (row["E_GPa"], row["rho_g_cm3"])


def test_tension_and_unit_mass_say_the_same():
    """A string given by its tension has the unit mass that gives this tension."""
    by_mass = open_string(spec(), 650.0)
    by_tension = open_string(spec(unit_mass=None, tension=by_mass.tension_n), 650.0)

    assert by_tension.unit_mass == pytest.approx(0.374, rel=ROUNDING)
    assert pytest.approx(by_mass.B0, rel=ROUNDING) == by_tension.B0


def test_R_and_kappa_say_the_same():
    """A string given by kappa = 2 R + 1 is the string given by R."""
    by_kappa, by_R = open_string(spec(R=None, kappa=48.2), 650.0), open_string(spec(), 650.0)

    assert (by_kappa.kappa_from, by_R.kappa_from) == ("kappa", "R")
    assert replace(by_kappa, kappa_from="R") == by_R


@given(st.floats(0.1, 1.0), st.floats(300.0, 900.0))
def test_stiffness_of_steel_does_not_depend_on_thickness(diameter, length):
    """At one pitch and length, kappa of a plain string is its modulus over density, whatever its gauge."""
    string = open_string(StringSpec("220 Hz", diameter, core_material="steel"), length)
    steel = MATERIALS["steel"]
    speed = 2e-3 * length * 220.0  # of the wave, m/s

    assert string.kappa == pytest.approx(1e9 * steel.modulus / (1e3 * steel.density * speed**2), rel=1e-9)


def test_a_thin_core_bends_more_easily():
    """Of a wound string the core's radius bends, so B0 is smaller by the ratio of the diameters."""
    whole, cored = open_string(spec(), 650.0), open_string(spec(core_diameter=0.356), 650.0)

    assert pytest.approx(0.5 * whole.B0, rel=ROUNDING) == cored.B0
    assert "taken-as-plain" in slugs(whole)
    assert "taken-as-plain" not in slugs(cored)


def test_a_wound_string_by_mass_and_core():
    """Measured mass with a steel core of known diameter needs no stretch test: E A/T of the core alone."""
    string = open_string(StringSpec("E2", 1.07, unit_mass=5.7, core_material="steel", core_diameter=0.41), 648.0)
    core = math.pi * 0.41**2 / 4.0

    assert string.kappa == pytest.approx(1e3 * MATERIALS["steel"].modulus * core / string.tension_n, rel=ROUNDING)


def test_a_bulk_modulus_gets_a_caution():
    """Nylon from its bulk modulus comes with the caution that a settled string is stiffer."""
    string = open_string(StringSpec("E4", 0.712, core_material="nylon"), 650.0)

    assert "bulk-modulus" in slugs(string)
    assert "mass-from-density" in slugs(string)


@pytest.mark.source("ASTM A228 minimum tensile strength, as reproduced by a wire supplier: 0.010 in, 387 ksi")
def test_a_string_near_its_breaking_load_gets_a_caution():
    """A plain 0.010 in string is at ease at E4 and near its limit a fourth above."""
    load = 387e3 * math.pi / 4.0 * 0.010**2 * POUND_FORCE
    at_ease = open_string(StringSpec("E4", 0.254, core_material="steel"), 648.0)
    strained = open_string(StringSpec("A4", 0.254, core_material="steel"), 648.0)

    assert at_ease.breaking_share is not None
    assert strained.breaking_share is not None
    assert at_ease.breaking_share == pytest.approx(at_ease.tension_n / load, rel=1e-9)
    assert at_ease.breaking_share < BREAKING_CAUTION < strained.breaking_share
    assert "near-breaking" not in slugs(at_ease)
    (caution,) = [note.text for note in strained.notes if note.slug == "near-breaking"]
    assert "eyes" in caution


def test_a_slack_string_gets_a_caution():
    """A unit mass given in kg/m leaves a string that hangs, which is said."""
    assert "slack" in slugs(open_string(spec(unit_mass=0.000374), 650.0))


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"unit_mass": 0.0}, "unit_mass"),
        ({"unit_mass": -0.374}, "unit_mass"),
        ({"unit_mass": 374.0}, "unit_mass"),
        ({"diameter": 0.0}, "diameter"),
        ({"diameter": -1.0}, "diameter"),
        ({"diameter": 712.0}, "diameter"),
        ({"core_diameter": 0.8}, "core_diameter"),
        ({"R": -1.0}, "R"),
        ({"R": 0.0}, "R"),
        ({"R": None, "kappa": 0.0}, "kappa"),
        ({"unit_mass": None, "tension": 0.0}, "tension"),
        ({"unit_mass": 8.0, "core_material": "steel", "pitch": "E7"}, "unit_mass"),
        ({"pitch": "E9", "unit_mass": None, "core_material": "steel"}, "core_diameter"),
    ],
)
def test_impossible_strings_are_refused(changes, field):
    """A string that cannot be is refused, and the member at fault is named."""
    with pytest.raises(ImpossibleStringError) as refused:
        open_string(spec(**changes), 650.0)

    assert refused.value.field == (field,)


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"diameter": None}, "diameter"),
        ({"unit_mass": None}, "unit_mass"),
        ({"R": None}, "R"),
        ({"kappa": 48.2}, "kappa"),
        ({"tension": 68.6}, "tension"),
        ({"unit_mass": None, "core_material": "steel", "core_diameter": 0.3}, "unit_mass"),
    ],
)
def test_a_string_described_by_too_little_or_too_much_is_refused(changes, field):
    """What is missing, or said twice, is named."""
    with pytest.raises(StringDescriptionError) as refused:
        open_string(spec(**changes), 650.0)

    assert refused.value.field == (field,)


def test_a_pitch_is_a_matter_of_strings():
    """An unknown pitch is caught with the other faults of a string."""
    assert issubclass(UnknownPitchError, StringError)
    with pytest.raises(StringError):
        open_string(spec(pitch="H#9"), 650.0)


# ---- Cores, measured stiffness and what the numbers rest on -----------------------------------------------------


@pytest.mark.source("second moment of a regular hexagon, 5 sqrt(3)/144 w^4 with w across the flats; geometry")
def test_a_hexagonal_core():
    """A hexagonal core carries by its own area and bends by its own second moment, with w across the flats."""
    width, length = 0.4, 648.0
    string = open_string(
        StringSpec("D3", 0.8, unit_mass=3.0, core_material="steel", core_diameter=width, core_shape="hexagonal"),
        length,
    )
    x, dx = np.linspace(-width / 2, width / 2, 200_001, retstep=True)
    side = width / math.sqrt(3.0)
    # Across the flats the hexagon is a band of the side's length that widens towards the middle.
    chord = 2.0 * side - 2.0 * np.abs(x) / math.sqrt(3.0)
    area, moment = np.sum(chord) * dx, np.sum(chord * x**2) * dx
    modulus = 1e3 * MATERIALS["steel"].modulus

    assert string.stiffness_n == pytest.approx(modulus * area, rel=1e-4)
    assert pytest.approx(math.sqrt(modulus * moment / string.tension_n) / length, rel=1e-4) == string.B0
    assert string.B0_from == "core"


def test_filaments_resist_bending_only_as_measured():
    """A bundle of filaments counts as limp, unless its stiffness was measured."""
    bundle = open_string(spec(core_shape="multifilament"), 650.0)
    measured = open_string(spec(core_shape="multifilament", B0=0.0012), 650.0)

    assert (bundle.B0, bundle.B0_from) == (0.0, "sliding_filaments")
    assert "filaments-slide" in slugs(bundle)
    assert pytest.approx(0.0012, rel=ROUNDING) == measured.B0
    assert measured.B0_from == "measured"
    assert "filaments-taken-as-full" in slugs(
        open_string(StringSpec("E4", 0.7, core_material="nylon", core_shape="multifilament"), 650.0)
    )


def test_every_number_says_what_it_rests_on():
    """Unit mass, kappa and B0 each come with what made them."""
    measured = open_string(spec(), 650.0)
    by_tension = open_string(spec(unit_mass=None, tension=68.0, core_diameter=0.7), 650.0)
    catalogue = open_string(StringSpec("E4", 0.254, core_material="steel"), 650.0)

    assert (measured.unit_mass_from, measured.kappa_from, measured.B0_from) == ("measured", "R", "whole_section")
    assert (by_tension.unit_mass_from, by_tension.B0_from) == ("tension", "core")
    assert (catalogue.unit_mass_from, catalogue.kappa_from) == ("material", "modulus")
    assert catalogue.stiffness_n == pytest.approx(catalogue.kappa * catalogue.tension_n)


@pytest.mark.source("ASTM A228 minimum tensile strength, 0.014 in, 369 ksi, over the area of a hexagon")
def test_strength_of_a_hexagonal_core():
    """A hexagonal core has the strength of wire as thick as it is across the flats, over its own area."""
    string = open_string(
        StringSpec("D3", 0.8, unit_mass=3.0, core_material="steel", core_diameter=0.014 * INCH, core_shape="hexagonal"),
        648.0,
    )
    load = 369e3 * math.sqrt(3.0) / 2.0 * 0.014**2 * POUND_FORCE

    assert string.breaking_share == pytest.approx(string.tension_n / load, rel=1e-9)
