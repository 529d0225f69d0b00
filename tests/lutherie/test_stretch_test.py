"""Stretch tests: R, kappa and modulus against published evaluations and general libraries."""

import json
import math
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats
from scipy.optimize import curve_fit

from scalewright.lutherie.errors import ImpossibleReadingError, TooFewReadingsError, UnknownPitchError
from scalewright.lutherie.stretch_test import StretchReadings, evaluate_stretch_test

TABLES = json.loads((Path(__file__).parents[1] / "reference" / "intonation.json").read_text(encoding="utf-8"))
ANDERSON = "Anderson and Beausoleil, J. Acoust. Soc. Am. 156(1), 683 (2024), raw stretch tests and derived constants"
LENGTH = TABLES["geometry"]["stretch_test_length_mm"]
STRINGS = [
    pytest.param(name, row, id=f"{name}-{row['string']}") for name, rows in TABLES["sets"].items() for row in rows
]

R_OF_TABLE = 0.05 + 1e-9
"""Half a unit in the last place of R and of its uncertainty. [-]"""
MODULUS_OF_TABLE = 0.03
"""Radius and tension are printed to three digits. [GPa]"""

NYLON = [326.0, 331.5, 337.5, 345.0, 352.0, 357.5, 363.0]
"""Readings of a published string, nylon-normal E4. [Hz]"""

OF_AN_ITERATION = 1e-6
"""Where a general optimiser stops. [-, Hz]"""

STRETCH = [0.0, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0]


def published(name, row):
    """Readings of a published string; the paper weights one of its sets."""
    weighted = TABLES["nylon_normal_frequency_standard_uncertainty_Hz"][str(row["string"])]
    return StretchReadings(
        length=LENGTH,
        stretch=row["stretch_test"]["stretch_mm"],
        frequencies=row["stretch_test"]["frequency_Hz"],
        uncertainties=weighted if name == "nylon-normal" else None,
        pitch=row["pitch"],
        diameter=2.0 * row["radius_mm"],
        tension=row["tension_N"],
    )


@pytest.mark.source(ANDERSON)
@pytest.mark.parametrize(("name", "row"), STRINGS)
def test_the_published_stretch_tests(name, row):
    """R with its uncertainty, kappa and effective modulus of all 24 published strings, from the raw readings."""
    answer = evaluate_stretch_test(published(name, row))

    assert answer.R.value == pytest.approx(row["R"], abs=R_OF_TABLE)
    assert answer.R.standard_uncertainty == pytest.approx(row["R_standard_uncertainty"], abs=R_OF_TABLE)
    assert answer.kappa.value == pytest.approx(row["kappa"], abs=0.1 + 1e-9)
    assert answer.effective_modulus_gpa.value == pytest.approx(row["effective_modulus_GPa"], abs=MODULUS_OF_TABLE)


@pytest.mark.source("scipy.optimize.curve_fit, absolute and relative weights; scipy.stats.t and norm")
@pytest.mark.parametrize("scatter_from", ["residuals", "uncertainties"])
@pytest.mark.parametrize("weighted", [False, True])
def test_the_line_is_that_of_a_general_library(scatter_from, weighted):
    """Slope, its uncertainty and its interval agree with a general library, weighted or not."""
    rng = np.random.default_rng(3)
    u = rng.uniform(0.2, 1.0, 9)
    x = np.linspace(0.0, 4.0, 9)
    y = 196.0 + 9.0 * x + rng.normal(0.0, u)
    answer = evaluate_stretch_test(
        StretchReadings(600.0, x.tolist(), y.tolist(), u.tolist() if weighted else None, scatter_from=scatter_from)
    )
    given_alone = weighted and scatter_from == "uncertainties"
    fit, covariance = curve_fit(
        lambda x, a, b: a + b * x, x, y, p0=[200.0, 9.0], sigma=u if weighted else None, absolute_sigma=given_alone
    )
    sigma = math.sqrt(covariance[1, 1])
    half = sigma * (stats.norm.ppf(0.975) if given_alone else stats.t.ppf(0.975, 7))
    residuals = y - fit[0] - fit[1] * x

    assert answer.slope_hz_per_mm.value == pytest.approx(fit[1], rel=OF_AN_ITERATION)
    assert answer.slope_hz_per_mm.standard_uncertainty == pytest.approx(sigma, rel=OF_AN_ITERATION)
    assert answer.slope_hz_per_mm.upper - answer.slope_hz_per_mm.lower == pytest.approx(2.0 * half, rel=OF_AN_ITERATION)
    assert answer.residuals_hz == pytest.approx(residuals.tolist(), abs=OF_AN_ITERATION)
    if weighted:
        assert answer.chi_square == pytest.approx(float(np.sum((residuals / u) ** 2)))
        assert answer.p_value == pytest.approx(stats.chi2.sf(answer.chi_square, 7))
    else:
        assert answer.chi_square is answer.p_value is None


@pytest.mark.source("f = sqrt(E A Q/mu)/(2 L): an elastic string from its equation, R = (kappa - 1)/2")
@pytest.mark.parametrize("kappa", [20.0, 60.0, 200.0])
def test_an_elastic_string(kappa):
    """A string whose tension rises by kappa per unit of strain, and whose mass stretches with it, gives kappa back."""
    strain = np.linspace(-1e-6, 1e-6, 5)
    f = 220.0 * np.sqrt((1.0 + kappa * strain) * (1.0 + strain)) / (1.0 + strain)
    readings = StretchReadings(600.0, (600.0 * (strain - strain[0])).tolist(), f.tolist(), pitch="220 Hz")
    # The readings differ by microhertz; the line through them is exact all the same.
    readings = StretchReadings(0.6, readings.stretch, readings.frequencies, pitch=readings.pitch)
    answer = evaluate_stretch_test(readings)

    assert 1e3 * answer.R.value == pytest.approx((kappa - 1.0) / 2.0, rel=1e-4)


def test_modulus_from_mass_or_tension():
    """Tension follows from unit mass, pitch and scale; the modulus from kappa, tension and area."""
    by_mass = evaluate_stretch_test(
        StretchReadings(LENGTH, STRETCH, NYLON, pitch="E4", diameter=0.712, unit_mass=0.374, scale=650.0)
    )
    alone = evaluate_stretch_test(StretchReadings(LENGTH, STRETCH, NYLON))
    tension, area = 0.374e-3 * (2.0 * 0.650 * by_mass.frequency_hz) ** 2, math.pi / 4.0 * 0.712**2

    assert by_mass.tension_n == pytest.approx(tension)
    assert by_mass.effective_modulus_gpa.value == pytest.approx(1e-3 * by_mass.kappa.value * tension / area)
    assert alone.tension_n is None
    assert alone.effective_modulus_gpa is None


@pytest.mark.source("propagation through R = L b/a with the covariance of the fit (JCGM 100), by sampling")
def test_without_a_pitch_the_start_of_the_line_counts():
    """Left to itself R is taken at the fitted start, whose uncertainty leans on the slope's."""
    y = [200.0, 204.9, 210.2, 214.9, 220.1]
    answer = evaluate_stretch_test(StretchReadings(600.0, [0.0, 0.5, 1.0, 1.5, 2.0], y))
    fit, covariance = np.polyfit([0.0, 0.5, 1.0, 1.5, 2.0], y, 1, cov=True)
    drawn = np.random.default_rng(1).multivariate_normal(fit, covariance, 200_000)

    assert answer.frequency_hz == pytest.approx(fit[1])
    assert answer.R.value == pytest.approx(600.0 * fit[0] / fit[1])
    assert answer.R.standard_uncertainty == pytest.approx(np.std(600.0 * drawn[:, 0] / drawn[:, 1]), rel=0.01)
    assert "pitch-at-start" in {note.slug for note in answer.notes}


def test_a_wrong_reading_is_named():
    """A reading that the others contradict is named with what it is off by, and stays in the fit."""
    clean = [196.0, 201.0, 206.1, 211.0, 216.0, 221.1, 226.0]
    wrong = [*clean[:3], clean[3] + 10.0, *clean[4:]]

    (outlier,) = evaluate_stretch_test(StretchReadings(600.0, STRETCH, wrong)).outliers

    assert (outlier.reading, outlier.stretch, outlier.frequency_hz) == (4, 1.5, wrong[3])
    assert outlier.deviation_hz == pytest.approx(10.0, abs=0.2)
    assert outlier.probability < 0.01
    assert evaluate_stretch_test(StretchReadings(600.0, STRETCH, clean)).outliers == []


@pytest.mark.source("prediction from a line fitted without the reading, scipy.stats; Bonferroni's correction")
def test_how_improbable_an_outlier_is():
    """The probability of the largest deviation is that of a reading so far off the line through the others."""
    y = [196.0, 201.3, 205.9, 217.0, 216.2, 220.8, 226.1]
    (outlier,) = evaluate_stretch_test(StretchReadings(600.0, STRETCH, y)).outliers
    x_others, y_others = np.delete(STRETCH, 3), np.delete(y, 3)
    line = stats.linregress(x_others, y_others)
    predicted = line.intercept + line.slope * STRETCH[3]
    scatter = np.sum((y_others - line.intercept - line.slope * x_others) ** 2) / 4.0
    spread = 1.0 + 1.0 / 6.0 + (STRETCH[3] - x_others.mean()) ** 2 / np.sum((x_others - x_others.mean()) ** 2)
    t = (y[3] - predicted) / math.sqrt(scatter * spread)

    assert outlier.deviation_hz == pytest.approx(y[3] - predicted)
    assert outlier.probability == pytest.approx(7 * 2.0 * stats.t.sf(t, 4), rel=1e-6)


def test_few_outliers_are_seen_where_there_are_none():
    """Of tests with nothing but noise about one in a hundred names a reading, by chance."""
    rng = np.random.default_rng(5)
    tests = 400
    named = sum(
        bool(
            evaluate_stretch_test(
                StretchReadings(600.0, STRETCH, (200.0 + 9.0 * np.array(STRETCH) + rng.normal(0.0, 0.5, 7)).tolist())
            ).outliers
        )
        for _ in range(tests)
    )

    assert named <= 12


def test_the_interval_covers():
    """In 95 of a hundred simulated tests the interval holds the true R, though only seven readings tell the scatter."""
    rng = np.random.default_rng(11)
    tests, covered = 600, 0
    for _ in range(tests):
        y = 220.0 + 8.0 * np.array(STRETCH) + rng.normal(0.0, 0.7, 7)
        R = evaluate_stretch_test(StretchReadings(600.0, STRETCH, y.tolist(), pitch="220 Hz")).R
        covered += R.lower <= 600.0 * 8.0 / 220.0 <= R.upper

    assert abs(covered / tests - 0.95) < 0.027  # three standard deviations of the count


def test_readings_that_bend_are_pointed_out():
    """A string that settles or slips bends its line, which gets a note."""
    x = np.array(STRETCH)
    bent = (200.0 + 12.0 * x - 1.5 * x**2).tolist()

    assert "readings-bend" in {note.slug for note in evaluate_stretch_test(StretchReadings(600.0, STRETCH, bent)).notes}


def test_two_stretches_have_no_bend():
    """Readings at two stretches only, however many, cannot bend, and one uncertain beyond measure changes nothing."""
    twice = StretchReadings(600.0, [0.0, 0.0, 2.0, 2.0], [200.0, 200.2, 219.0, 219.3])
    vague = StretchReadings(600.0, [*twice.stretch, 1.0], [*twice.frequencies, 900.0], [1.0, 1.0, 1.0, 1.0, 1e6])

    assert "readings-bend" not in {note.slug for note in evaluate_stretch_test(twice).notes}
    assert evaluate_stretch_test(vague).R.value == pytest.approx(evaluate_stretch_test(twice).R.value, rel=1e-6)


@given(st.floats(0.3, 3.0), st.floats(0.5, 2.0))
def test_units_do_not_matter(lengths, frequencies):
    """All lengths times one factor and all frequencies times another leave R as it is."""
    y = [200.0, 204.9, 210.2, 214.9, 220.1]
    x = [0.0, 0.5, 1.0, 1.5, 2.0]
    one = evaluate_stretch_test(StretchReadings(600.0, x, y)).R
    other = evaluate_stretch_test(
        StretchReadings(600.0 * lengths, [lengths * v for v in x], [frequencies * v for v in y])
    ).R

    assert other.value == pytest.approx(one.value, rel=1e-9)
    assert other.standard_uncertainty == pytest.approx(one.standard_uncertainty, rel=1e-9)


@pytest.mark.parametrize(
    ("readings", "refusal", "field"),
    [
        (StretchReadings(600.0, [0.0, 1.0], [200.0, 210.0]), TooFewReadingsError, "stretch"),
        (StretchReadings(600.0, [0.0, 1.0, 2.0], [200.0, 210.0]), ImpossibleReadingError, "frequencies"),
        (StretchReadings(600.0, [1.0, 1.0, 1.0], [200.0, 210.0, 205.0]), ImpossibleReadingError, "stretch"),
        (StretchReadings(600.0, [0.0, 1.0, 2.0], [220.0, 210.0, 200.0]), ImpossibleReadingError, "frequencies"),
        (
            StretchReadings(600.0, [0.0, 1.0, 2.0], [200.0, 210.0, 220.0], [1.0]),
            ImpossibleReadingError,
            "uncertainties",
        ),
        (StretchReadings(600.0, [0.0, 1.0, 2.0], [200.0, 210.0, 220.0], pitch="H#9"), UnknownPitchError, "pitch"),
    ],
)
def test_what_is_no_stretch_test_is_refused(readings, refusal, field):
    """Too few readings, lists of unequal length, no stretch or a falling pitch: each names its member."""
    with pytest.raises(refusal) as refused:
        evaluate_stretch_test(readings)

    assert refused.value.field == (field,)
