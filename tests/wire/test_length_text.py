"""Lengths as people write them: read exactly, or refused with a sentence and a place."""

import itertools
import re
import sys
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from scalewright.lutherie.errors import UnreadableLengthError
from scalewright.wire import length_text
from scalewright.wire.length_text import LONGEST_TEXT, UNITS, read_length, read_number, shop_fraction

INCH = Fraction(254, 10)
"""Millimetres, by definition (ISO 80000-3, International yard and pound agreement of 1959)."""


def nearest(millimetres: Fraction) -> float:
    """Return the double nearest to an exact length."""
    return millimetres.numerator / millimetres.denominator


@pytest.mark.parametrize(
    ("text", "exactly"),
    [
        ("24 9/16 in", Fraction(24 * 16 + 9, 16) * INCH),
        ("24-9/16 in", Fraction(24 * 16 + 9, 16) * INCH),
        ("24 - 9/16 in", Fraction(24 * 16 + 9, 16) * INCH),
        ('24 9/16"', Fraction(24 * 16 + 9, 16) * INCH),
        ('24 9/16 "', Fraction(24 * 16 + 9, 16) * INCH),
        ("24 9/16″", Fraction(24 * 16 + 9, 16) * INCH),
        ("24 9/16′′", Fraction(24 * 16 + 9, 16) * INCH),
        ("24 9/16''", Fraction(24 * 16 + 9, 16) * INCH),
        ("24 9/16”", Fraction(24 * 16 + 9, 16) * INCH),
        ("24 9⁄16 in", Fraction(24 * 16 + 9, 16) * INCH),
        ("24⅝ in", Fraction(24 * 8 + 5, 8) * INCH),
        ("24 ⅝in", Fraction(24 * 8 + 5, 8) * INCH),
        ("24-⅝ in", Fraction(24 * 8 + 5, 8) * INCH),
        ("⅝ in", Fraction(5, 8) * INCH),
        ("5/8 in", Fraction(5, 8) * INCH),
        ("0.010 inch", Fraction(10, 1000) * INCH),
        (".010 inch", Fraction(10, 1000) * INCH),
        ("24.75 inches", Fraction(2475, 100) * INCH),
        ("24.75 in.", Fraction(2475, 100) * INCH),
        ("24.75 IN", Fraction(2475, 100) * INCH),
        ("25. in", 25 * INCH),
        ("628.65 mm", Fraction(62865, 100)),
        ("628.65mm", Fraction(62865, 100)),
        (" 628.65 mm ", Fraction(62865, 100)),
        ("+628.65 mm", Fraction(62865, 100)),
        ("62,9 cm", Fraction(629)),
        ("628,650 mm", Fraction(62865, 100)),
        ("24,750 in", 24 * INCH + Fraction(3, 4) * INCH),
        ("0,250 in", INCH / 4),
        ("0.6286 m", Fraction(6286, 10)),
        ("-0.3 mm", Fraction(-3, 10)),
        ("−0.3 mm", Fraction(-3, 10)),
        ("-1 1/2 in", Fraction(-3, 2) * INCH),
        ("0 mm", Fraction(0)),
    ],
)
def test_what_people_write_is_read_exactly(text, exactly):
    """Every form of the contract is the double nearest to the length that it names."""
    assert read_length(text) == nearest(exactly)


@pytest.mark.parametrize(
    ("text", "position", "words"),
    [
        ("", 1, "empty"),
        ("    ", 1, "empty"),
        ("24", 3, "unit is missing"),
        ("24 9/16", 8, "unit is missing"),
        ("in", 1, "no number"),
        ("NaN", 1, "no number"),
        ("Infinity mm", 1, "no number"),
        ("-", 1, "no number"),
        ("٢٤ mm", 1, "no number"),
        ("２４ mm", 1, "no number"),
        ("\t24 mm", 1, "no number"),
        ("24 mm\n", 4, "unit was expected"),
        ("25..4 in", 4, "second decimal sign"),
        ("25.4.1 in", 5, "second decimal sign"),
        ("1,234.5 mm", 6, "second decimal sign"),
        ("12 3/0 in", 6, "cannot be over 0"),
        ("12 3/ in", 4, "cannot be read past"),
        ("12 3 in", 4, "cannot be read past"),
        ("1/2/3 in", 4, "cannot be read past"),
        ("25 furlongs", 4, "unit was expected"),
        ("1e3 mm", 2, "unit was expected"),
        ("1_000 mm", 2, "unit was expected"),
        ("24 in in", 4, "unit was expected"),
        ("2 ft", 3, "feet"),
        ("2'", 2, "feet"),
        ("1,234 mm", 2, "thousands or decimals"),
        ("9,999 mm", 2, "thousands or decimals"),
        ("9" * 33, 33, "at most 32 characters"),
        ("9" * 1_000_000, 33, "at most 32 characters"),
        ("½½ in", 2, "unit was expected"),
    ],
)
def test_what_is_no_length_is_refused_with_a_place(text, position, words):
    """The refusal says what is wrong, where, and shows a form that works."""
    with pytest.raises(UnreadableLengthError) as refused:
        read_length(text)

    assert words in str(refused.value)
    assert refused.value.facts["position"] == position
    shown = re.findall(r'"([^"]+)"', str(refused.value))
    assert shown or "32 characters" in str(refused.value)


@pytest.mark.parametrize("text", ["", "24", "25..4 in", "12 3/0 in", "25 furlongs", "2 ft", "1,234 mm", "x" * 40])
def test_the_forms_that_a_refusal_shows_are_read(text):
    """What a refusal offers as an example is a length."""
    with pytest.raises(UnreadableLengthError) as refused:
        read_length(text)

    shown = re.findall(r'"([^"]+)"', str(refused.value))
    assert shown
    for form in shown:
        assert read_length(form) > 0.0


def test_a_bare_number_has_a_unit_where_one_is_lent():
    """A query's bare number is in the unit of the query; a unit of its own still counts."""
    assert read_length("24.75", "in") == 628.65
    assert read_length("24 3/4", "in") == 628.65
    assert read_length("650 mm", "in") == 650.0


@given(st.text(alphabet="0123456789 ./,-−½⅝″′\"'+inmcfteE_⁄\t\n\x00٣²\u2028é\ud800", max_size=40))
@example("1" * 32)
@example("1 " * 16)
@example("-/-/-/")
def test_no_text_does_anything_but_be_read_or_refused(text):
    """Whatever the text, there is a finite length or a refusal, and nothing else."""
    try:
        length = read_length(text)
    except UnreadableLengthError as error:
        position, length = error.facts["position"], 0.0
    else:
        position = 1

    assert abs(length) < 1e19
    assert isinstance(position, int)
    assert 1 <= position <= LONGEST_TEXT + 1


@given(
    st.integers(0, 9999),
    st.integers(1, 999),
    st.sampled_from([2, 4, 8, 16, 32, 64, 128]),
    st.sampled_from([" ", "-"]),
    st.sampled_from(['"', " in", " inch", "″"]),
)
def test_mixed_numbers_are_correctly_rounded(whole, over, under, joint, unit):
    """A mixed number is the double nearest to it, however it is joined and whatever the sign for inches."""
    assert read_length(f"{whole}{joint}{over}/{under}{unit}") == nearest((whole + Fraction(over, under)) * INCH)


@given(st.decimals(0, 9999, places=6, allow_nan=False), st.sampled_from(["mm", "cm", "m", "in"]))
def test_decimals_are_correctly_rounded(number, unit):
    """A decimal number is the double nearest to it in any unit, with a point; with a comma it is the same."""
    over, under = UNITS[unit]

    assert read_length(f"{number:f} {unit}") == nearest(Fraction(number) * Fraction(over, under))
    assert read_length(f"{number:f} {unit}".replace(".", ",")) == read_length(f"{number:f} {unit}")


@given(st.floats(1.0, 9999.0))
def test_a_number_that_was_written_is_read_back(length):
    """The shortest decimal of a double, read again, is the double."""
    assert read_length(f"{length!r} mm") == length


@given(st.integers(0, 640_000), st.integers(0, 640_000))
def test_longer_texts_are_longer_lengths(one, other):
    """Reading keeps the order: of two numbers of 64ths the larger is the longer."""
    lengths = [read_length(f"{n // 64} {n % 64}/64 in") for n in (one, other)]

    assert (lengths[0] < lengths[1]) == (one < other)


def count_steps(function, *arguments):
    """Count the lines of Python that a call runs."""
    steps = itertools.count()

    def trace(*_):
        next(steps)
        return trace

    previous = sys.gettrace()
    sys.settrace(trace)
    try:
        function(*arguments)
    except UnreadableLengthError:
        pass
    finally:
        sys.settrace(previous)
    return next(steps)


@pytest.mark.parametrize("piece", ["9", " ", "9 ", "/", "9/", "½", "-", ".", "9,", "9 9/9", "\u2028"])
def test_reading_takes_no_longer_the_longer_the_text(piece):
    """A text a thousand times as long takes not one step of the program more than one of 33 characters."""
    # The least of three: what the interpreter does on the side, freeing objects for instance, is traced too.
    short, long = (
        min(count_steps(read_length, text) for _ in range(3)) for text in ((piece * 33)[:33], piece * 33_000)
    )

    assert long == short


def test_the_pattern_has_no_part_that_could_run_away():
    """No repetition in the patterns is unbounded or nested, so matching takes a bounded number of steps."""
    for pattern in (length_text._NUMBER.pattern, length_text._DECIMAL.pattern):
        assert not re.search(r"[*+](?![^\[]*\])", pattern)
        assert not re.search(r"\{\d+,\}", pattern)
        assert not re.search(r"\)\{|\)\?\{", pattern)


def test_no_general_reader_of_numbers_sees_a_text():
    """Fraction and Decimal, which work for hours on 1e100000000, are not even loaded here."""
    assert not {"Fraction", "Decimal", "fractions", "decimal"} & set(vars(length_text))


@pytest.mark.parametrize("text", ["17.817", "18", "+2.5", ".5", "18."])
def test_plain_numbers_of_a_query(text):
    """A divisor in a query is a plain decimal number."""
    assert read_number(text) == float(text)


@pytest.mark.parametrize("text", ["", "1e3", "1_0", "17,817", "nan", "inf", "0x10", " 18", "18\n", "١٨", "1" * 40])
def test_numbers_that_are_not_plain(text):
    """Forms that Python would take as a number are refused."""
    with pytest.raises(UnreadableLengthError, match="not a plain number"):
        read_number(text)


@pytest.mark.parametrize(
    ("inches", "denominator", "text", "value"),
    [
        (1.375, 64, "1 3/8 in", 1.375),
        (0.375, 8, "3/8 in", 0.375),
        (2.0, 64, "2 in", 2.0),
        (1.999, 64, "2 in", 2.0),
        (0.001, 64, "0 in", 0.0),
        (0.0, 64, "0 in", 0.0),
        (12.285, 64, "12 9/32 in", 12.28125),
        (12.285, 1, "12 in", 12.0),
        (-1.375, 64, "-1 3/8 in", -1.375),
    ],
)
def test_the_nearest_mark_of_a_rule(inches, denominator, text, value):
    """Marks are named in lowest terms, as they are on a rule."""
    assert shop_fraction(inches, denominator) == (text, value)


@given(st.floats(0.0, 400.0), st.sampled_from([1, 2, 4, 8, 16, 32, 64, 128]))
def test_no_other_mark_is_nearer(inches, denominator):
    """The mark lies within half a graduation, and its text says its value."""
    text, value = shop_fraction(inches, denominator)

    assert abs(value - inches) <= 0.5 / denominator
    assert read_length(text) == nearest(Fraction(value) * INCH)
