"""Phrases: counts, lists and numbers read as a person writes them."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.lutherie.phrases import counted, listed, numbered, plain, times
from scalewright.lutherie.phrases import given as told_given


@pytest.mark.parametrize(
    ("number", "words"), [(0, "0 frets"), (1, "1 fret"), (2, "2 frets"), (11, "11 frets"), (21, "21 frets")]
)
def test_one_thing_is_told_in_the_singular(number, words):
    """One fret, and any other number of frets."""
    assert counted(number, "fret") == words


def test_a_plural_of_its_own():
    """Entries are not entrys."""
    assert [counted(number, "entry", "entries") for number in (1, 2)] == ["1 entry", "2 entries"]


@pytest.mark.parametrize(("number", "words"), [(0, "none was given"), (1, "1 was given"), (2, "2 were given")])
def test_what_was_given(number, words):
    """The verb goes with the number."""
    assert told_given(number) == words


@pytest.mark.parametrize(
    ("numbers", "words"), [([3], "fret 3"), ([3, 7], "frets 3 and 7"), ([3, 7, 12], "frets 3, 7 and 12")]
)
def test_things_by_their_numbers(numbers, words):
    """One fret by its number, several by theirs."""
    assert numbered("fret", numbers) == words
    assert listed(numbers) == words.partition(" ")[2]


@pytest.mark.parametrize(
    ("number", "words"), [(1, "once"), (2, "twice"), (3, "three times"), (9, "nine times"), (10, "10 times")]
)
def test_how_often(number, words):
    """In words up to nine."""
    assert times(number) == words


@pytest.mark.parametrize(
    ("number", "words"),
    [(20240.3, "20240.3"), (1e22, "1" + "0" * 22), (2e-5, "0.00002"), (650.0, "650"), (-3.5, "-3.5"), (0.0, "0")],
)
def test_a_number_has_no_exponent(number, words):
    """Large and small numbers are written out."""
    assert plain(number) == words


@given(st.floats(-1e300, 1e300), st.integers(1, 12))
def test_every_number_keeps_its_leading_digits(number, digits):
    """Whatever the number, it is written out, and right to so many digits."""
    text = plain(number, digits)

    assert re.fullmatch(r"-?[0-9]+(\.[0-9]+)?", text)
    assert float(text) == pytest.approx(number, rel=0.51 * 10.0 ** (1 - digits), abs=0.0)
