"""The least-squares fits and marginal likelihoods behind an identification."""

import itertools
import json
import math
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, optimize

from scalewright.lutherie import spacing
from scalewright.lutherie.identification import curve
from scalewright.lutherie.identification.candidates import FreeDivisor
from scalewright.lutherie.identification.fit import deleted_residuals_of_divisor, fit
from scalewright.lutherie.identification.plan import Pattern, covariance_of, make_plan, rule_table
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Rule
from tests.lutherie.identification.boards import CASES, draw, pattern, positions

METROLOGY = json.loads((Path(__file__).parents[2] / "reference" / "metrology.json").read_text(encoding="utf-8"))
FRETS = list(range(1, 23))
RULES: tuple[Rule, ...] = (EQUAL, EIGHTEENTH)
TABLE = rule_table(RULES, spacing.MOST_FRETS)
PRINTED = 1e-9
"""Relative; the reference fits are printed with ten digits."""
PRINTED_READINGS = 3e-8
"""Relative; for sums of residuals of readings that are themselves printed with ten digits."""


def fitted(frets, readings, deviation=1.0, **known):
    """Fits of equal spacing, the rule of 18 and a free divisor to one board."""
    readings = np.array(readings, dtype=float)[None, :, None]
    return fit(make_plan(pattern(frets, deviation, **known), TABLE), readings, FreeDivisor())


@pytest.mark.source("NIST StRD, linear regression, Norris: certified to 15 digits")
def test_norris_to_nine_digits():
    """A line with a free intercept is the fit of one shape with a free nut offset; the certified values come out."""
    rows = np.array(METROLOGY["nist_norris"]["data"]["rows"])
    certified = METROLOGY["nist_norris"]["certified"]
    count = len(rows)
    shape = np.concatenate([[0.0], rows[:, 1]])[:, None]
    plan = make_plan(pattern(list(range(1, count + 1)), 1.0, nut_deviation=math.inf), shape)
    found = fit(plan, rows[None, :, :1], FreeDivisor())
    residual_deviation = math.sqrt(found.chi_square[0, 0, 0] / (count - 2))
    assert found.scale[0, 0, 0] == pytest.approx(certified["b1"], rel=1e-9)
    assert found.nut[0, 0, 0] == pytest.approx(certified["b0"], rel=1e-9)
    assert residual_deviation == pytest.approx(certified["rsd"], rel=1e-9)
    assert residual_deviation * found.scale_deviation[0, 0, 0] == pytest.approx(certified["sd_b1"], rel=1e-9)
    assert residual_deviation * found.nut_deviation[0, 0, 0] == pytest.approx(certified["sd_b0"], rel=1e-9)


@pytest.mark.source("JCGM 100:2008 (GUM), example H.3: calibration of a thermometer, values and covariance")
def test_the_thermometer_of_the_guide():
    """Intercept, slope, their uncertainties and correlation, and the prediction at 30 degrees are the guide's."""
    guide = METROLOGY["gum_h3"]
    t, b = np.array(guide["t_C"]) - guide["t0"], np.array(guide["b_C"])
    count = len(t)
    shape = np.concatenate([[0.0], t])[:, None]
    plan = make_plan(pattern(list(range(1, count + 1)), 1.0, nut_deviation=math.inf), shape)
    found = fit(plan, b[None, :, None], FreeDivisor())
    s = math.sqrt(found.chi_square[0, 0, 0] / (count - 2))
    slope, u_slope = found.scale[0, 0, 0], s * found.scale_deviation[0, 0, 0]
    intercept, u_intercept = found.nut[0, 0, 0], s * found.nut_deviation[0, 0, 0]
    covariance = -plan.nut_slope[0, 0, 0] * u_slope**2
    expected = guide["computed"]
    assert [intercept, slope] == pytest.approx([expected["y1"], expected["y2"]], rel=1e-9)
    assert [u_intercept, u_slope] == pytest.approx([expected["u_y1"], expected["u_y2"]], rel=1e-9)
    assert covariance / (u_intercept * u_slope) == pytest.approx(expected["r"], rel=1e-9)
    assert s == pytest.approx(expected["s"], rel=1e-9)
    at_30 = math.sqrt(u_intercept**2 + 100.0 * u_slope**2 + 20.0 * covariance)
    assert intercept + 10.0 * slope == pytest.approx(expected["b30"], rel=1e-9)
    assert at_30 == pytest.approx(expected["u_b30"], rel=1e-9)


@pytest.mark.source("NIST StRD, nonlinear regression, Misra1a: certified to 11 digits")
def test_misra1a_through_the_variable_projection():
    """A curve b1 (1 - exp(-b2 x)) is a scale and a free divisor over frets that are not whole; eight digits come out.

    DanWood, b1 x^b2, is no such curve: a power of x has no divisor, and this code cannot host it.
    """
    misra = METROLOGY["nist_misra1a"]
    y, x = np.array(misra["data"]).T
    count = len(x)
    # So many units of x to a fret that b2 falls on the axis of the series.
    per_fret = 0.058 / 5.5e-4
    frets = np.concatenate([[0.0], x / per_fret])
    table = np.zeros((count + 1, 1))
    table[1:, 0] = x
    plan = make_plan(pattern(list(range(1, count + 1)), 1.0, nut_deviation=0.0), table, frets)
    found = fit(plan, y[None, :, None], FreeDivisor())
    b1, b2 = found.scale[1, 0, 0], curve.step_at(found.position)[0, 0] / per_fret
    residual_deviation = math.sqrt(found.chi_square[1, 0, 0] / (count - 2))
    assert [b1, b2] == pytest.approx(misra["certified"], rel=1e-8)
    assert residual_deviation == pytest.approx(misra["rsd"], rel=1e-8)
    deviations = [found.scale_deviation[1, 0, 0], curve.STEP_SLOPE * found.position_deviation[0, 0] / per_fret]
    assert residual_deviation * np.array(deviations) == pytest.approx(misra["certified_sd"], rel=1e-5)


@pytest.mark.source("least-squares fits made independently, spacing.json")
@pytest.mark.parametrize("name", sorted(CASES))
@pytest.mark.parametrize(("rule", "key"), [(0, "ET"), (1, "R18")])
def test_published_boards_fitted_by_one_rule(name, rule, key):
    """Scale, its standard deviation and the rms of the residuals are those of the reference fits."""
    published, reference = CASES[name], CASES[name]["least_squares_fits"][key]
    found = fitted(published["fret"], published["from_nut"], nut_deviation=0.0)
    count = len(published["fret"])
    rms = math.sqrt(found.chi_square[rule, 0, 0] / count)
    assert found.scale[rule, 0, 0] == pytest.approx(reference["L"], rel=PRINTED)
    assert rms == pytest.approx(reference["rms"], rel=PRINTED_READINGS)
    s = rms * math.sqrt(count / (count - 1))
    assert s * found.scale_deviation[rule, 0, 0] == pytest.approx(reference["sd_L"], rel=PRINTED_READINGS)


@pytest.mark.source("least-squares fits made independently, spacing.json")
@pytest.mark.parametrize("name", sorted(CASES))
@pytest.mark.parametrize(("rule", "key"), [(0, "ET_offset"), (1, "R18_offset")])
def test_published_boards_fitted_with_a_nut_about_which_nothing_is_known(name, rule, key):
    """With a free offset, scale, offset and rms are those of the reference fits."""
    published, reference = CASES[name], CASES[name]["least_squares_fits"][key]
    found = fitted(published["fret"], published["from_nut"], nut_deviation=math.inf)
    assert found.scale[rule, 0, 0] == pytest.approx(reference["L"], rel=PRINTED)
    assert found.nut[rule, 0, 0] == pytest.approx(reference["x0"], abs=1e-9 * reference["L"])
    assert math.sqrt(found.chi_square[rule, 0, 0] / len(published["fret"])) == pytest.approx(
        reference["rms"], rel=PRINTED_READINGS
    )


@pytest.mark.source("least-squares fits made independently, spacing.json")
@pytest.mark.parametrize("name", sorted(CASES))
def test_published_boards_fitted_with_a_free_divisor(name):
    """Scale, divisor, rms and standard deviations are those of the reference fits, far from the usual divisors too."""
    published, reference = CASES[name], CASES[name]["least_squares_fits"]["free_divisor"]
    found = fitted(published["fret"], published["from_nut"], nut_deviation=0.0)
    count = len(published["fret"])
    position, spread = found.position[0, 0], found.position_deviation[0, 0]
    rms = math.sqrt(found.chi_square[2, 0, 0] / count)
    s = rms * math.sqrt(count / (count - 2))
    # The reference fits stopped a few digits short of these.
    assert curve.divisor_at(position) == pytest.approx(reference["N"], rel=1e-7)
    assert rms == pytest.approx(reference["rms"], rel=PRINTED_READINGS)
    assert -s * curve.divisor_slope(curve.divisor_at(position)) * spread == pytest.approx(reference["sd_N"], rel=1e-5)


@pytest.mark.source("scipy.optimize.curve_fit, a general-purpose library")
def test_values_and_covariances_agree_with_a_general_least_squares_fit():
    """Scale, nut offset and divisor with their standard deviations agree for boards of all kinds.

    The nut's prior enters the library's fit as one more reading; its numerical derivatives are what limits the
    agreement of the standard deviations.
    """
    rng = np.random.default_rng(11)
    frets = np.array([1, 2, 3, 5, 7, 9, 12, 15, 17, 19, 22])
    readings, *_ = draw(rng, 12, frets, 0.05)
    found = fit(make_plan(pattern(list(frets), 0.05), TABLE), readings.T[None], FreeDivisor())
    sigma = np.append(np.full(len(frets), 0.05), 0.3)

    def model(_, scale, offset, divisor):
        return np.append(offset + scale * (1.0 - (1.0 - 1.0 / divisor) ** frets), offset)

    for at, row in enumerate(readings):
        value, covariance = optimize.curve_fit(
            model, np.arange(len(frets) + 1), np.append(row, 0.0), [2.0 * row[6], 0.0, 17.9],
            sigma=sigma, absolute_sigma=True, ftol=1e-15, xtol=1e-15, gtol=1e-15,
        )  # fmt: skip
        deviation = np.sqrt(np.diag(covariance))
        position = found.position[0, at]
        ours = [found.scale[2, 0, at], found.nut[2, 0, at], curve.divisor_at(position)]
        spread = [
            found.scale_deviation[2, 0, at],
            found.nut_deviation[2, 0, at],
            -curve.divisor_slope(curve.divisor_at(position)) * found.position_deviation[0, at],
        ]
        assert np.abs(value - ours) / deviation == pytest.approx(np.zeros(3), abs=1e-4)
        assert spread == pytest.approx(deviation, rel=5e-4)


@pytest.mark.source("numpy.longdouble arithmetic, normal equations and bisection written out here")
def test_extended_precision_agrees():
    """In 80-bit arithmetic the same minimum is found, scale and divisor to 1e-11."""
    rng = np.random.default_rng(5)
    readings, *_ = draw(rng, 4, FRETS, 0.02)
    found = fit(make_plan(pattern(FRETS, 0.02, nut_deviation=0.0), TABLE), readings.T[None], FreeDivisor())
    n = np.array(FRETS, dtype=np.longdouble)
    for at, row in enumerate(readings.astype(np.longdouble)):

        def slope(theta, row=row):
            """Half the derivative of the squares by theta, the scale eliminated."""
            shape, change = -np.expm1(-theta * n), n * np.exp(-theta * n)
            scale = (shape @ row) / (shape @ shape)
            return -scale * (change @ (row - scale * shape)), scale

        low, high = np.longdouble(0.045), np.longdouble(0.07)
        for _ in range(70):
            middle = (low + high) / 2
            low, high = (middle, high) if slope(middle)[0] < 0 else (low, middle)
        assert found.scale[2, 0, at] == pytest.approx(float(slope(low)[1]), rel=1e-11)
        assert curve.divisor_at(found.position[0, at]) == pytest.approx(float(-1 / np.expm1(-low)), rel=1e-11)


@pytest.mark.source("scipy.integrate.quad over the dense normal density, a general-purpose library")
@pytest.mark.parametrize("deviation", [0.03, 0.2, 1.0])
@pytest.mark.parametrize("frets", [[12], [5, 12], [1, 3, 5, 7, 12], FRETS])
def test_marginal_likelihoods(frets, deviation):
    """Their ratios are those of a direct integration over scale, nut offset and divisor."""
    rng = np.random.default_rng(len(frets))
    row = positions(EIGHTEENTH, 640.0, frets) + rng.normal(0.1, deviation, len(frets))
    found = fitted(frets, row, deviation)
    covariance = np.eye(len(frets)) * deviation**2 + 0.3**2
    inverse = np.linalg.inv(covariance)

    def log_likelihood(shape):
        """Logarithm of the likelihood integrated over scale and nut offset, without the constants in common."""
        information = shape @ inverse @ shape
        best = shape @ inverse @ row
        return -0.5 * (row @ inverse @ row - best * best / information) - 0.5 * math.log(information)

    fixed = [log_likelihood(positions(rule, 1.0, frets)) for rule in RULES]
    peak = max(log_likelihood(positions(Divisor(d), 1.0, frets)) for d in np.linspace(16.5, 19.5, 301))
    pieces = np.linspace(16.5, 19.5, 61)
    area = sum(
        integrate.quad(lambda d: math.exp(log_likelihood(positions(Divisor(d), 1.0, frets)) - peak), a, b)[0]
        for a, b in itertools.pairwise(pieces)
    )
    free = peak + math.log(area / 3.0)
    ours = found.log_evidence[:, 0, 0]
    assert ours[1] - ours[0] == pytest.approx(fixed[1] - fixed[0], abs=1e-6)
    assert ours[2] - ours[0] == pytest.approx(free - fixed[0], abs=2e-3)


def spans(steps, *, used=True):
    """A pattern of readings between neighbouring frets."""
    count = len(steps)
    return Pattern(
        start=np.array([[a for a, _ in steps]]),
        end=np.array([[b for _, b in steps]]),
        used=np.full((1, count), used),
        variance=np.full((1, count), 0.04**2),
        edge=np.zeros((1, count)),
        scatter=np.array([0.03]),
        nut_deviation=0.3,
        zero_fret=False,
    )


@pytest.mark.source("JCGM 100:2008, 5.2.2: covariance of linear combinations, written out with the matrix of the sums")
def test_readings_fret_to_fret_carry_the_covariance_of_a_running_sum():
    """Fitting the steps is the same as fitting their running sums with the covariance propagated to them."""
    frets = [1, 2, 3, 5, 7, 9, 12]
    steps = spans(list(zip([0, *frets], frets, strict=False)))
    covariance = covariance_of(steps)[0]
    total = np.tril(np.ones((len(frets), len(frets))))
    running = total @ covariance @ total.T
    # Each sum has the instrument's error of every step in it, and the tool's error of one fret.
    expected = 0.04**2 * np.minimum.outer(np.arange(1, 8), np.arange(1, 8)) + 0.03**2 * np.eye(7)
    assert running == pytest.approx(expected, abs=1e-15)

    row = positions(EQUAL, 650.0, frets) + np.random.default_rng(2).normal(0.0, 0.1, 7)
    found = fit(make_plan(steps, TABLE), np.diff(row, prepend=0.0)[None, :, None], FreeDivisor())
    design = np.array([positions(EQUAL, 1.0, frets), np.ones(7)]).T
    information = design.T @ np.linalg.inv(running) @ design + np.diag([0.0, 1.0 / 0.3**2])
    scale, offset = np.linalg.solve(information, design.T @ np.linalg.inv(running) @ row)
    deviation = np.sqrt(np.diag(np.linalg.inv(information)))
    assert [found.scale[0, 0, 0], found.nut[0, 0, 0]] == pytest.approx([scale, offset], rel=1e-9)
    assert [found.scale_deviation[0, 0, 0], found.nut_deviation[0, 0, 0]] == pytest.approx(deviation, rel=1e-9)


def test_a_repeat_shares_the_misplacement_of_its_fret():
    """Two readings at one fret have the tool's variance in common and only the instrument's apart."""
    repeated = pattern([7, 7, 12], 0.05, scatter=0.04)
    expected = np.diag(np.full(3, 0.05**2)) + 0.04**2 * np.array([[1, 1, 0], [1, 1, 0], [0, 0, 1]])
    assert covariance_of(repeated)[0] == pytest.approx(expected, abs=1e-15)


@pytest.mark.source("refitting without the reading, with this project's own fit")
def test_deleted_residuals_are_those_of_a_fit_without_the_reading():
    """What each reading differs by from the others' prediction, and how surely, needs no refit; a refit agrees."""
    frets = [1, 2, 3, 5, 7, 9, 12, 15, 19]
    row, *_ = draw(np.random.default_rng(3), 1, frets, 0.05)
    plan = make_plan(pattern(frets, 0.05), TABLE)
    fits = fit(plan, row.T[None], FreeDivisor())
    for rule, shape in enumerate(RULES):
        strain, spread = (plan.pull[rule] @ row.T[None])[0, :, 0], plan.pull_spread[rule, 0]
        for index, fret in enumerate(frets):
            others = [k for k in range(len(frets)) if k != index]
            again = fitted([frets[k] for k in others], row[0, others], 0.05)
            predicted = again.nut[rule, 0, 0] + again.scale[rule, 0, 0] * positions(shape, 1.0, [fret])[0]
            assert strain[index] * spread[index] == pytest.approx(row[0, index] - predicted, abs=1e-9)
            drop = fits.chi_square[rule, 0, 0] - again.chi_square[rule, 0, 0]
            assert strain[index] ** 2 == pytest.approx(drop, rel=1e-7, abs=1e-9)


def test_deleted_residuals_under_a_free_divisor():
    """The divisor's part is linearised, and still the drop of chi-square is right to a part in a thousand."""
    frets = [1, 2, 3, 5, 7, 9, 12, 15, 19]
    row, *_ = draw(np.random.default_rng(3), 1, frets, 0.05)
    plan = make_plan(pattern(frets, 0.05), TABLE)
    fits = fit(plan, row.T[None], FreeDivisor())
    strain, _ = deleted_residuals_of_divisor(plan, fits.position, fits.amplitude, fits.remainder)
    for index in range(len(frets)):
        others = [k for k in range(len(frets)) if k != index]
        again = fitted([frets[k] for k in others], row[0, others], 0.05)
        drop = fits.chi_square[2, 0, 0] - again.chi_square[2, 0, 0]
        assert strain[0, index, 0] ** 2 == pytest.approx(drop, rel=1e-3, abs=1e-6)


@given(scale=st.floats(200.0, 1500.0), divisor=st.floats(14.5, 23.5), count=st.integers(4, 60))
def test_perfect_readings_are_fitted_perfectly(scale, divisor, count):
    """A board without error gives its own scale and divisor back, whatever they are."""
    frets = list(range(1, count + 1))
    found = fitted(frets, positions(Divisor(divisor), scale, frets), 0.02, nut_deviation=0.0)
    assert found.chi_square[2, 0, 0] == pytest.approx(0.0, abs=1e-3)
    assert curve.divisor_at(found.position[0, 0]) == pytest.approx(divisor, rel=1e-6)
    assert found.scale[2, 0, 0] == pytest.approx(scale, rel=1e-5)


@pytest.mark.parametrize("highest", [5, 22, 30, 31, 45, 60])
def test_the_series_of_a_free_divisor_is_exact(highest):
    """Off its nodes too the series is the shape itself, to rounding."""
    plan = make_plan(pattern(list(range(1, highest + 1)), 0.05), TABLE)
    for divisor in (14.1, 15.0, 17.817, 18.0, 21.0, 23.9):
        exact = make_plan(pattern(list(range(1, highest + 1)), 0.05), rule_table((Divisor(divisor),), highest))
        at = curve.basis(np.array([curve.position_of(divisor)]), plan.shape_curves.shape[2])[:, 0]
        assert at @ plan.shape_curves[0, 0] == pytest.approx(exact.shapes[0, 0], abs=1e-13)
        assert at @ plan.scalar_curves[0, 4] == pytest.approx(exact.lengths[0, 0, 0], rel=1e-11)


def test_padding_changes_nothing():
    """A board among longer ones gets the same fit as alone."""
    frets = [1, 3, 5, 7, 12]
    row = positions(EIGHTEENTH, 640.0, frets) + np.array([0.05, -0.03, 0.02, 0.04, -0.01])
    alone = fitted(frets, row, 0.05)
    padded = pattern([*frets, 1, 1], 0.05)
    padded.used[0, 5:] = False
    among = fit(make_plan(padded, TABLE), np.append(row, [0.0, 0.0])[None, :, None], FreeDivisor())
    for name in ("chi_square", "scale", "scale_deviation", "nut", "nut_deviation", "log_evidence"):
        assert getattr(among, name) == pytest.approx(getattr(alone, name), rel=1e-9, abs=1e-9), name
