"""Fretting: cents errors of fretted notes, against published tables and other ways to the same numbers."""

import json
import math
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.lutherie.fretting import cents_errors, cents_errors_and_slopes, stiffness_factor
from scalewright.lutherie.string_path import FrettedStrings

STRINGS = json.loads((Path(__file__).parents[1] / "reference" / "intonation.json").read_text(encoding="utf-8"))
ANDERSON = "Anderson and Beausoleil, J. Acoust. Soc. Am. 156(1), 683 (2024)"
DEFAULT = STRINGS["default_string"]
MATERIALS = json.loads((Path(__file__).parents[1] / "reference" / "materials.json").read_text(encoding="utf-8"))
STRINGS_OF_KEMP = MATERIALS["inharmonicity"]["kemp_2020"]

CENT_OF_TABLE = 0.005
"""B0 and kappa of the default string are rounded in print; this is what that can do. [cent]"""
CENT_OF_KAPPA = 0.02
"""kappa has one decimal in the tables, the radius three; half a unit of both moves the highest note by this. [cent]"""
CENT_OF_ANOTHER_WAY = 0.05
"""What a series in B and the numbers of another method may differ by, far below hearing. [cent]"""
CENT_OF_THE_PUBLISHED_FORM = 0.1
"""What B_n = gamma_n B_0 makes of the physical B over twelve frets, for the stiffest published strings. [cent]"""


def fretted(kappa, gyration, *, scale=650.0, frets=12, nut=1.0, rise=4.0, finger=0.0, **options):
    """One string on an equal-tempered board, heights as in the paper."""
    n = np.arange(1, frets + 1)
    return FrettedStrings(
        scale=np.array([scale]),
        remaining=scale * 2.0 ** (-n[np.newaxis] / 12.0),
        target=100.0 * n[np.newaxis],
        nut_height=np.array([nut]),
        saddle_rise=np.array([rise]),
        finger=np.array([finger]),
        kappa=np.array([kappa]),
        gyration=np.array([gyration]),
        **options,
    )


def one(value):
    """One string's setback."""
    return np.array([value])


NONE = one(0.0)


@pytest.mark.source(ANDERSON, "default string, errors at frets 1 to 12, recomputed from the model")
@pytest.mark.parametrize("finger", [0, 10])
def test_the_default_string(finger):
    """The twelve errors of the paper's default string, pressed on the fret and 10 mm behind it."""
    string = fretted(DEFAULT["kappa"], DEFAULT["radius_mm"] / 2.0, finger=float(finger))

    errors = cents_errors(string, NONE, NONE)[0]

    assert errors == pytest.approx(DEFAULT[f"uncompensated_cents_frets_1_to_12_d{finger}"], abs=CENT_OF_TABLE)


@pytest.mark.source(ANDERSON, "nylon-normal set, errors before and after, recomputed from the model")
@pytest.mark.parametrize("row", STRINGS["sets"]["nylon-normal"], ids=lambda row: f"string-{row['string']}")
def test_the_nylon_normal_set(row):
    """Errors of the six strings without compensation and at the published setbacks."""
    string = fretted(row["kappa"], row["radius_mm"] / 2.0)
    table = STRINGS["nylon_normal_cents_frets_1_to_12"][str(row["string"])]
    setbacks = row["recomputed"]

    before = cents_errors(string, NONE, NONE)[0]
    after = cents_errors(string, one(setbacks["saddle_setback_mm"]), one(setbacks["nut_setback_mm"]))[0]

    assert before == pytest.approx(table["uncompensated"], abs=CENT_OF_KAPPA)
    assert after == pytest.approx(table["compensated"], abs=CENT_OF_KAPPA)


@pytest.mark.source("common knowledge of the ideal string: 1200 log2(325/324) and 1200 log2(2 x 325/651 x 651/652)")
def test_a_millimetre_at_the_twelfth_fret():
    """On 650 mm a fret 12 set 1 mm towards the saddle is 5.335 cents sharp, a saddle 1 mm too far out 2.66 flat."""
    ideal = fretted(0.0, 0.0, nut=0.0, rise=0.0)
    moved = replace(ideal, remaining=ideal.remaining - 1.0)

    assert cents_errors(moved, NONE, NONE)[0, 11] == pytest.approx(5.335, abs=0.001)
    assert cents_errors(ideal, one(1.0), NONE)[0, 11] == pytest.approx(-2.66, abs=0.005)


def test_an_ideal_string_on_an_exact_board_is_in_tune():
    """Without height, stretch and stiffness every equal-tempered fret is right."""
    errors = cents_errors(fretted(0.0, 0.0, nut=0.0, rise=0.0, frets=24), NONE, NONE)

    assert np.abs(errors).max() < 1e-9


@pytest.mark.source("roots of the exact frequency equations, computed; series of Fletcher 1964")
@pytest.mark.parametrize("row", STRINGS["stiff_string_roots"]["rows"], ids=lambda row: f"B{row['B']}-q{row['q']}")
def test_the_series_of_a_stiff_string(row):
    """The series is the published one, and near the exact roots for all three kinds of ends."""
    q, B = row["q"], np.array([row["B"]])
    exact = [row["pinned_pinned"], row["pinned_clamped"], row["clamped_clamped"]]
    series = [q * stiffness_factor(B, float(boundary), q)[0] for boundary in range(3)]

    assert series[1:] == pytest.approx([row["series_pc"], row["series_cc"]], rel=1e-9)
    if q <= 2 and row["B"] <= 0.00236:
        assert series == pytest.approx(exact, rel=1e-6)
    if q == 1:
        assert series == pytest.approx(exact, rel=CENT_OF_ANOTHER_WAY * math.log(2.0) / 1200.0)


KEMP = "J. A. Kemp, SN Applied Sciences 2:636 (2020), abstract"


@pytest.mark.source(KEMP, "about 100 cents at partial 10 stopped at fret 12, about 100 at partial 6 stopped at fret 21")
def test_inharmonicity_of_stopped_strings():
    """A string 100 cents sharp in partial 10 at fret 12 is about 101.7 cents sharp in partial 6 at fret 21."""

    def cents(B, partial):
        factor = stiffness_factor(np.array([B]), 0.0, partial)[0]
        return 1200.0 * math.log2(factor)

    # Pinned ends: Fletcher's 1 + B_F q^2 under a root is this series to first order, with B_F = (pi B)^2.
    low, high = 0.0, 0.05
    for _ in range(60):
        middle = (low + high) / 2.0
        exact = 600.0 * math.log2(1.0 + (math.pi * middle * 10) ** 2)
        low, high = (middle, high) if exact < 100.0 else (low, middle)
    at_21 = low * 2.0 ** (9.0 / 12.0)  # B goes as 1/L at one tension
    predicted = 600.0 * math.log2(1.0 + (math.pi * at_21 * 6) ** 2)

    assert predicted == pytest.approx(STRINGS_OF_KEMP["computed"]["predicted21"], abs=0.001)
    # Our series is the root's first terms; at a hundred cents they differ by what the next term is.
    assert cents(at_21, 6) == pytest.approx(predicted, rel=0.04)
    assert (math.pi * low) ** 2 == pytest.approx(STRINGS_OF_KEMP["computed"]["B12"], rel=1e-9)


# ---- The same string another way: its equation of motion, solved numerically ---------------------------------


def chebyshev(points):
    """Chebyshev points on [0, 1], ascending, and the matrix that differentiates there (Trefethen 2000, ch. 6)."""
    x = np.cos(np.pi * np.arange(points + 1) / points)[::-1]
    c = np.r_[2.0, np.ones(points - 1), 2.0] * (-1.0) ** np.arange(points + 1)
    D = np.outer(c, 1.0 / c) / (x[:, np.newaxis] - x + np.eye(points + 1))
    return (x + 1.0) / 2.0, 2.0 * (D - np.diag(D.sum(axis=1)))


def eigenfrequency(length, tension, unit_mass, bending, points=72):
    """Lowest frequency of a string with bending stiffness, clamped at 0 and pinned at its length.

    Collocation of T y'' - EI m'' = -mu w^2 y with m = y'', in metres, newtons and kg/m.
    """
    _, D = chebyshev(points)
    D = D / length
    n, I = points + 1, np.eye(points + 1)
    A, M = np.zeros((2 * n, 2 * n)), np.zeros((2 * n, 2 * n))
    A[:n, :n], A[:n, n:] = D @ D, -I
    A[n:, n:] = bending * D @ D - tension * I
    M[n:, :n] = unit_mass * I
    for row, condition in ((0, np.r_[I[0], 0 * I[0]]), (n - 1, np.r_[I[-1], 0 * I[0]])):
        A[row], M[row] = condition, 0.0  # y = 0 at both ends
    A[n], M[n] = np.r_[D[0], 0 * D[0]], 0.0  # y' = 0 at the clamp
    A[-1], M[-1] = np.r_[0 * I[0], I[-1]], 0.0  # m = 0 at the pin
    near = (math.pi / length) ** 2 * tension / unit_mass
    factor = np.linalg.inv(A - near * M) @ M
    vector = np.r_[np.sin(np.pi * np.linspace(0.0, 1.0, n)), np.zeros(n)]
    growth = 0.0
    for _ in range(12):
        vector = factor @ vector
        growth = vector[np.argmax(np.abs(vector))]
        vector = vector / growth
    return math.sqrt(near + 1.0 / growth) / (2.0 * math.pi)


def test_the_other_way_gives_the_exact_roots():
    """The numerical solution itself agrees with the roots of the exact frequency equation."""
    for row in STRINGS["stiff_string_roots"]["rows"]:
        # At B = 0.0005 the string bends within half a thousandth of its length, finer than the points lie.
        if row["q"] == 1 and row["B"] > 0.001:
            found = eigenfrequency(1.0, 4.0, 1.0, 4.0 * row["B"] ** 2)
            assert found == pytest.approx(row["pinned_clamped"], rel=1e-8)


@pytest.mark.source("spectral collocation of the equation of motion; geometry of the paper by hypotenuses")
@pytest.mark.parametrize(
    ("stiffness", "frets", "cent"),
    [
        ("length_and_tension", (1, 5, 12, 20), CENT_OF_ANOTHER_WAY),
        ("position", (1, 5, 12), CENT_OF_THE_PUBLISHED_FORM),
    ],
)
@pytest.mark.parametrize("name", ["nylon-light", "fluorocarbon-normal"])
def test_a_fretted_string_another_way(name, stiffness, frets, cent):
    """Solving the equation of motion of the open and of the fretted string gives the same cents."""
    row = STRINGS["sets"][name][2]
    kappa, s, tension, unit_mass = 2.0 * row["R"] + 1.0, row["radius_mm"] / 2.0, 54.0, 0.8e-3
    dS, dN, d, b, c = 1.2, -0.4, 3.0, 0.8, 3.5
    string = fretted(kappa, s, nut=b, rise=c, finger=d, frets=20, stiffness=stiffness)
    errors = cents_errors(string, one(dS), one(dN))[0]
    bending = kappa * tension * (s * 1e-3) ** 2  # E A = kappa T, times s^2

    L0 = math.dist((0.0, b), (650.0 + dS + dN, b + c))
    open_frequency = eigenfrequency(L0 * 1e-3, tension, unit_mass, bending)
    for fret in frets:
        X = 650.0 / 2.0 ** (fret / 12.0)
        L = math.dist((0.0, 0.0), (X + dS, b + c))
        corner = (d, -(b + c) * d / (X + dS))  # towards the nut, below the fret tops
        behind = math.dist((0.0, 0.0), corner) + math.dist(corner, (650.0 - X + dN, b))
        Q = (L + behind - L0) / L0
        frequency = eigenfrequency(L * 1e-3, tension * (1.0 + kappa * Q), unit_mass / (1.0 + Q), bending)
        expected = 1200.0 * math.log2(frequency / open_frequency) - 100.0 * fret

        assert errors[fret - 1] == pytest.approx(expected, abs=cent)


# ---- Laws ----------------------------------------------------------------------------------------------------


@st.composite
def strung(draw, base):
    """A string with or without relief, a finger that presses it to the board, and ends that slide."""
    string = draw(base)
    depth, pressed, beyond = draw(st.floats(-0.2, 0.6)), draw(st.floats(0.05, 1.5)), draw(st.floats(1.0, 300.0))
    along = np.linspace(0.0, 1.0, string.remaining.shape[1])[np.newaxis]
    return replace(
        string,
        fall=4.0 * depth * along * (1.0 - along) if draw(st.booleans()) else None,
        pressed=one(pressed) if draw(st.booleans()) and string.finger[0] > 0.1 else None,
        beyond=one(beyond) if draw(st.booleans()) else None,
    )


boards = st.builds(
    fretted,
    st.floats(1.0, 150.0),
    st.floats(0.02, 0.3),
    scale=st.floats(330.0, 900.0),
    frets=st.integers(1, 24),
    nut=st.floats(0.1, 2.0),
    rise=st.floats(0.5, 10.0),
    finger=st.floats(0.0, 8.0),
    boundary=st.floats(0.0, 2.0),
    stiffness=st.sampled_from(["position", "length_and_tension"]),
)
setbacks = st.floats(-4.0, 4.0)


@given(strung(boards), setbacks, setbacks)
def test_slopes_are_the_derivatives(string, saddle, nut):
    """The analytic slopes are what central differences approach."""
    h = 1e-4  # mm; its square times the third derivative is below the tolerance
    _, by_saddle, by_nut = cents_errors_and_slopes(string, one(saddle), one(nut))
    saddle_moves = cents_errors(string, one(saddle + h), one(nut)) - cents_errors(string, one(saddle - h), one(nut))
    nut_moves = cents_errors(string, one(saddle), one(nut + h)) - cents_errors(string, one(saddle), one(nut - h))

    assert by_saddle == pytest.approx(saddle_moves / (2.0 * h), abs=1e-6, rel=1e-6)
    assert by_nut == pytest.approx(nut_moves / (2.0 * h), abs=1e-6, rel=1e-6)


@given(boards)
def test_lower_action_is_nearer_to_tune(string):
    """Less height, less stretch: every fretted note comes down (common practice, no source)."""
    string = replace(string, kappa=string.kappa + 20.0)  # an elastic band may behave otherwise
    lower = replace(string, nut_height=0.5 * string.nut_height, saddle_rise=0.5 * string.saddle_rise)

    assert (cents_errors(lower, NONE, NONE) <= cents_errors(string, NONE, NONE) + 1e-9).all()


@given(boards)
def test_a_thicker_string_is_sharper(string):
    """More stiffness of bending, sharper fretted notes (common practice, no source)."""
    thicker = replace(string, gyration=1.2 * string.gyration, boundary=1.0)
    string = replace(string, boundary=1.0)

    assert (cents_errors(thicker, NONE, NONE) >= cents_errors(string, NONE, NONE) - 1e-9).all()


@given(strung(boards), setbacks, setbacks, st.floats(0.5, 2.0))
def test_only_proportions_matter(string, saddle, nut, times):
    """All lengths times one factor leave every error as it is."""
    lengths = ("scale", "remaining", "nut_height", "saddle_rise", "finger", "gyration", "fall", "pressed", "beyond")
    larger = replace(
        string,
        **{name: times * getattr(string, name) for name in lengths if getattr(string, name) is not None},
    )

    same = cents_errors(larger, one(times * saddle), one(times * nut))

    assert same == pytest.approx(cents_errors(string, one(saddle), one(nut)), abs=1e-8)


def test_strings_do_not_hear_each_other():
    """Each row of the arrays is computed as if it were alone."""
    low, high = fretted(50.0, 0.2, frets=9), fretted(90.0, 0.1, frets=9, scale=500.0)
    arrays = ("scale", "remaining", "target", "nut_height", "saddle_rise", "finger", "kappa", "gyration")
    both = replace(low, **{name: np.concatenate([getattr(low, name), getattr(high, name)]) for name in arrays})

    together = cents_errors(both, np.array([1.0, 2.0]), np.array([-0.1, 0.2]))

    assert together[0] == pytest.approx(cents_errors(low, one(1.0), one(-0.1))[0], rel=1e-12)
    assert together[1] == pytest.approx(cents_errors(high, one(2.0), one(0.2))[0], rel=1e-12)
