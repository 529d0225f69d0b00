"""Labels on the wire: what is read off them, and what is refused."""

import json

import pytest
from pydantic import ValidationError

from scalewright.wire.nominal import NominalIn

INCH = 25.4


def label(value):
    """The label that a question's value becomes."""
    return NominalIn.read(json.dumps({"label": value}).encode()).label


@pytest.mark.parametrize(
    ("value", "length", "unit", "grain", "given"),
    [
        ("24 3/4 in", 24.75 * INCH, "in", INCH / 4, True),
        ('24.75"', 24.75 * INCH, "in", INCH / 100, True),
        ("25.4 in", 25.4 * INCH, "in", INCH / 10, True),
        ("25.50 in", 25.5 * INCH, "in", INCH / 100, True),
        ("628 mm", 628.0, "mm", 1.0, True),
        ("62,9 cm", 629.0, "cm", 1.0, True),
        ("0.65 m", 650.0, "mm", 10.0, True),
        ("25.4", 25.4 * INCH, "in", INCH / 10, False),
        ("24 9/16", 24.5625 * INCH, "in", INCH / 16, False),
        ("650", 650.0, "mm", 1.0, False),
        (24.75, 24.75 * INCH, "in", INCH / 100, False),
        (655, 655.0, "mm", 1.0, False),
        (647.7, 647.7, "mm", 0.1, False),
    ],
)
def test_a_label_is_read_with_its_step(value, length, unit, grain, given):
    """Number, unit and the step of its digits or fraction are read; a missing unit is the one that fits."""
    found = label(value)
    assert found.length == pytest.approx(length, rel=1e-12)
    assert (found.unit, found.unit_given) == (unit, given)
    assert found.grain == pytest.approx(grain, rel=1e-12)


@pytest.mark.parametrize(
    ("value", "code", "words"),
    [
        ("62.9", "label_unplaceable", "write its unit"),
        (120, "label_unplaceable", "write its unit"),
        (-3, "label_unplaceable", "write its unit"),
        ("abc", "label_unreadable", "No number"),
        ("", "label_unreadable", "empty"),
        ("25..4 in", "label_unreadable", "second decimal sign"),
        ("12 3/0 in", "label_unreadable", "over 0"),
        ("25 furlongs", "label_unreadable", "unit was expected"),
        ("1e309", "label_unreadable", "unit was expected"),
        ("9" * 100, "label_unreadable", "at most 32 characters"),
        ("0.1 mm", "label_out_of_range", "1 mm to 10 000 mm"),
        ("99999 in", "label_out_of_range", "1 mm to 10 000 mm"),
        (1e300, "label_type", "A label is"),
        (10**100, "label_type", "A label is"),
        (True, "label_type", "A label is"),
        (None, "label_type", "A label is"),
        (["25.4 in"], "label_type", "A label is"),
    ],
)
def test_refusals_say_what_a_label_is(value, code, words):
    """What is no label is refused with a sentence that tells what to write."""
    with pytest.raises(ValidationError) as refused:
        label(value)
    (first,) = refused.value.errors()
    assert (first["loc"], first["type"]) == (("label",), code)
    assert words in first["msg"]
