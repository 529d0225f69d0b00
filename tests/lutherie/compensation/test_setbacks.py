"""Setbacks: what is free, fixed and uniform, one set or many, against a general optimiser."""

import itertools
from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import least_squares

from scalewright.lutherie.compensation import Order, Preference, compensate, compensate_all, setbacks
from scalewright.lutherie.compensation.setbacks import best_setbacks
from scalewright.lutherie.errors import ImpossibleSetupError, LutherieError, NoSaddlePositionError
from scalewright.lutherie.fretting import cents_errors, cents_errors_and_slopes
from scalewright.lutherie.setup import Heights, Relief
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Equal
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.stringing import lay_strings
from tests.lutherie.compensation.boards import NYLON, setup

MM_OF_ANOTHER_OPTIMISER = 1e-6
FLAT = 1e-9
"""What is left of the gradient of half the sum of squares at a minimum. [cent2/mm]"""

FREEDOMS = [pair for pair in itertools.product(["fixed", "free", "uniform"], repeat=2) if "uniform" in pair]


def unknowns(freedom, n):
    """How many numbers a freedom leaves open for n strings."""
    return {"fixed": 0, "free": n, "uniform": 1}[freedom]


def spread(freedom, numbers, n):
    """Setbacks of n strings from the numbers that are open."""
    return np.zeros(n) if freedom == "fixed" else np.broadcast_to(numbers, (n,)).astype(float)


@pytest.mark.source("scipy.optimize.least_squares, from several starts")
@pytest.mark.parametrize(("saddle", "nut"), FREEDOMS)
def test_what_is_uniform_is_best_for_the_set(saddle, nut):
    """With one saddle or one nut for all strings the set has the least sum of squares, and a flat one."""
    rng = np.random.default_rng(7)
    for _ in range(3):
        frets = int(rng.integers(10, 22))
        n = int(rng.integers(2, 7))
        board = setup(
            strings=NYLON[:n], rule=[EQUAL, EIGHTEENTH][rng.integers(2)], frets=frets, scale=rng.uniform(500.0, 700.0)
        )
        strings, weights = lay_strings(board).fretted, rng.uniform(0.2, 2.0, frets)
        split = unknowns(saddle, n)

        def residuals(numbers, strings=strings, weights=weights, n=n, split=split):
            errors = cents_errors(strings, spread(saddle, numbers[:split], n), spread(nut, numbers[split:], n))
            return (np.sqrt(weights) * errors).ravel()

        found = best_setbacks(strings, weights, saddle=saddle, nut=nut)
        errors, by_saddle, by_nut = cents_errors_and_slopes(strings, found.saddle, found.nut)
        pulls = {"saddle": (weights * errors * by_saddle).sum(axis=1), "nut": (weights * errors * by_nut).sum(axis=1)}
        for freedom, pull in ((saddle, pulls["saddle"]), (nut, pulls["nut"])):
            if freedom != "fixed":
                assert np.abs(pull.sum() if freedom == "uniform" else pull).max() < FLAT
        for start in rng.normal(0.0, 2.0, (2, split + unknowns(nut, n))):
            best = least_squares(residuals, start, jac="3-point", xtol=1e-15, ftol=1e-15, gtol=1e-15).x
            assert found.saddle == pytest.approx(spread(saddle, best[:split], n), abs=MM_OF_ANOTHER_OPTIMISER)
            assert found.nut == pytest.approx(spread(nut, best[split:], n), abs=MM_OF_ANOTHER_OPTIMISER)


def test_more_freedom_leaves_less():
    """Each thing that is set free, or string by string, leaves less error, or as much."""
    left = {
        (saddle, nut): compensate(setup(), nut, None, saddle).rms_cents
        for saddle in ("uniform", "free")
        for nut in ("fixed", "uniform", "free")
    }

    for saddle in ("uniform", "free"):
        assert left[saddle, "fixed"] > left[saddle, "uniform"] > left[saddle, "free"]
    for nut in ("fixed", "uniform", "free"):
        assert left["uniform", nut] > left["free", nut]


def test_a_set_of_one_is_uniform_anyway():
    """For a single string uniform and free are the same."""
    one = setup(strings=NYLON[:1])
    free, uniform = compensate(one, "free").strings[0], compensate(one, "uniform", None, "uniform").strings[0]

    assert uniform.saddle_setback == pytest.approx(free.saddle_setback, abs=1e-9)
    assert uniform.nut_setback == pytest.approx(free.nut_setback, abs=1e-9)


def test_a_held_saddle_stays():
    """A saddle that is held stays where it was put, and the nut makes the best of it."""
    strings = lay_strings(setup()).fretted
    held = np.full(6, 1.0)

    found = best_setbacks(strings, np.ones(12), saddle="fixed", nut="free", start=(held, np.zeros(6)))

    assert (found.saddle == held).all()
    assert (found.nut != 0.0).all()


ORDERS = [
    Order(setup(), "free"),
    Order(setup(strings=NYLON[:2], frets=24, rule=EIGHTEENTH), "free", Preference([1, 5, 12], [1.0, 2.0, 1.0])),
    Order(setup(strings=NYLON[3:4], scale=430.0, heights=Heights(0.4, 2.0))),
    Order(setup(frets=19), "uniform", None, "free"),
    Order(setup(frets=15, scale=600.0), "uniform", None, "free"),
    Order(setup(relief=Relief(0.3), frets=20), "free"),
    Order(setup(finger_behind_fret=5.0, fret_height=1.0)),
    Order(setup(sliding_length=100.0), "free"),
    Order(setup(stiffness="length_and_tension", boundary_factor=1.1), "free"),
    Order(setup(rule=Equal(19), frets=19), "free"),
]


@pytest.mark.parametrize("times", [1, 8])
def test_many_are_answered_as_each_alone(times):
    """Boards of every kind solved together get the answers that they get alone, in the order given."""
    together = compensate_all(ORDERS * times)

    for order, answer in zip(ORDERS * times, together, strict=True):
        alone = compensate(*order)
        assert not isinstance(answer, LutherieError)
        assert [string.pitch for string in answer.strings] == [string.pitch for string in alone.strings]
        for one, other in zip(answer.strings, alone.strings, strict=True):
            assert one.saddle_setback == pytest.approx(other.saddle_setback, abs=1e-9)
            assert one.nut_setback == pytest.approx(other.nut_setback, abs=1e-9)
            assert [n.compensated for n in one.cents] == pytest.approx([n.compensated for n in other.cents], abs=1e-9)


def test_a_bad_one_among_many_fails_alone():
    """A board that cannot be, and a string that no saddle helps, leave the others as they are."""
    hopeless = StringSpec("E4", 0.712, unit_mass=0.374, R=1e8)
    orders = [
        ORDERS[0],
        Order(setup(heights=Heights(1.0)), "free"),
        Order(setup(strings=[NYLON[0], hopeless]), "free"),
        ORDERS[0],
    ]

    first, unlaid, unsettled, last = compensate_all(orders)

    assert isinstance(unlaid, ImpossibleSetupError)
    assert isinstance(unsettled, NoSaddlePositionError)
    assert unsettled.field == ("strings", 1)
    assert not isinstance(first, LutherieError)
    assert not isinstance(last, LutherieError)
    assert first.strings[0].saddle_setback == pytest.approx(compensate(*ORDERS[0]).strings[0].saddle_setback, abs=1e-9)


def test_a_hopeless_string_is_given_up_soon():
    """Where no saddle helps, the search ends after few evaluations, not after all that it may take."""
    steps = []
    board = setup(strings=[replace(NYLON[0], R=1e8)], frets=2)
    strings = lay_strings(board).fretted

    def counting(*arguments):
        steps.append(1)
        return cents_errors_and_slopes(*arguments)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(setbacks, "cents_errors_and_slopes", counting)
        found = best_setbacks(strings, np.ones(2), nut="free")

    assert not found.settled.any()
    assert len(steps) < 200


def test_none_at_all_is_no_answer():
    """No question, no answer."""
    assert compensate_all([]) == []
