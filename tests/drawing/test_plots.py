"""Plots: every value stands where it belongs, and letters leave one another free."""

import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.drawing.axes import LOOKS, Axes, Series, nice_step, numbers_of, room_for
from scalewright.drawing.page import Circle, Drawing, Line, Path, Text
from scalewright.drawing.plots import identification_plot, intonation_plot
from scalewright.lutherie.identification import identify
from scalewright.lutherie.intonation import intonate
from scalewright.wire.identification import IdentificationIn
from scalewright.wire.intonation import IntonationIn
from tests.api.replay import EXAMPLES
from tests.drawing.boards import named
from tests.drawing.test_board_sheet import assert_free

DRAWN = 1e-9
"""How near a sign has to be to its value. [mm]"""


def question(word: str, name: str) -> bytes:
    """Read the question of an example."""
    return (EXAMPLES / word / f"{name}.request.json").read_bytes()


def cases(word: str) -> list[str]:
    """Names of all examples of a word."""
    return sorted(path.name.split(".")[0] for path in (EXAMPLES / word).glob("*.request.json"))


def ticks(drawing: Drawing, axis: str) -> dict[float, float]:
    """Numbers on an axis with their places, read off the letters."""
    letters = [item for item in drawing.layer("labels") if isinstance(item, Text)]
    anchor = "end" if axis == "y" else "middle"
    found = {}
    for item in letters:
        text = item.text.replace("\N{MINUS SIGN}", "-")
        if item.anchor == anchor and text.lstrip("-").replace(".", "").isdigit():
            found[float(text)] = item.y + 1.0 if axis == "y" else item.x
    return found


def scale(drawing: Drawing, axis: str):
    """Reckon places from values by two numbers on an axis."""
    (a, at), *_, (b, to) = sorted(ticks(drawing, axis).items())
    return lambda value: at + (value - a) * (to - at) / (b - a)


@pytest.mark.parametrize("name", cases("intonation"))
def test_cents_stand_at_their_frets_and_values(name):
    """By the numbers on the axes, every point of a string's line is its fret and its error in cents."""
    answer = intonate(*IntonationIn.read(question("intonation", name)).to_domain())
    drawing = intonation_plot(answer)
    x, y = scale(drawing, "x"), scale(drawing, "y")

    for number, string in enumerate(answer.strings, 1):
        line = named(drawing)[f"line-{number}"]
        for (at, up), note in zip(line.points, string.cents, strict=True):
            assert at == pytest.approx(x(note.fret), abs=DRAWN)
            assert up == pytest.approx(y(note.cents), abs=DRAWN)
    assert_free(drawing)


@pytest.mark.parametrize("name", cases("identification"))
def test_residuals_stand_at_their_frets_and_values(name):
    """Of the likeliest rule every reading has its sign where the axes say; readings set aside are ringed and named."""
    asked = IdentificationIn.read(question("identification", name))
    answer = identify(*asked.to_domain())
    frets = asked.answer_context["frets"]
    for unit, factor in (("mm", 1.0), ("in", 1.0 / 25.4)):
        drawing = identification_plot(answer, frets, unit)
        x, y = scale(drawing, "x"), scale(drawing, "y")
        circles = [(item.x, item.y) for item in drawing.layer("axis") if isinstance(item, Circle)]
        aside = {suspect.reading for suspect in answer.suspect_readings}
        for index, residual in enumerate(answer.candidates[0].residuals):
            place = (x(frets[index]), y(residual * factor))
            near = any(math.dist(place, circle) < DRAWN for circle in circles)
            assert near == (index not in aside)
        words = " ".join(item.text for item in drawing.layer("labels") if isinstance(item, Text))
        assert words.count("set aside") == len(aside)
        assert_free(drawing)


def test_a_name_too_long_for_the_legend_is_cut_short():
    """Twenty-four strings with long names still leave one another free."""
    asked = json.loads(question("intonation", cases("intonation")[0]))
    asked["strings"] = (asked["strings"] * 24)[:24]
    drawing = intonation_plot(intonate(*IntonationIn.read(json.dumps(asked).encode()).to_domain()))

    assert_free(drawing)


def test_looks_are_told_apart_without_colour():
    """Signs differ for strings whose lines have the same dashes: 36 strings, 36 looks."""
    drawing = Drawing(200.0, 300.0)
    axes = Axes(drawing, 20.0, 20.0, 100.0, 260.0, (0.0, 40.0), (0.0, 40.0))
    shapes = []
    for count in range(LOOKS * LOOKS):
        drawing.layers.clear()
        axes.draw_series([Series(str(n), [(n, n)], joined=False) for n in range(count + 1)])
        sign = drawing.layer("axis")[-1]
        kind = len(sign.points) if isinstance(sign, Path) else type(sign).__name__
        skew = isinstance(sign, Path) and sign.points[0][0] != sign.points[-1][0]
        level = isinstance(sign, Line) and sign.x1 == sign.x2
        shapes.append((count % LOOKS, kind, skew, level))

    assert len(set(shapes)) == LOOKS * LOOKS


@given(st.floats(1e-6, 1e6), st.integers(1, 20))
def test_steps_are_round_numbers(span, most):
    """A step is 1, 2 or 5 times a power of ten, and there are no more parts than were asked for."""
    step = nice_step(span, most)

    assert span / step <= most * (1.0 + 1e-6)
    assert round(step / 10.0 ** math.floor(math.log10(step) + 1e-9), 6) in {1.0, 2.0, 5.0}


@pytest.mark.parametrize("span", [(-5e-5, 5e-5), (-7e-5, 1e-5), (-2e5, 1e5), (0.0, 0.3), (-0.017, 0.017), (-9.9, 0.2)])
def test_numbers_of_an_axis_leave_its_words_free(span):
    """However many digits they need, the numbers stand beside the words, and those below zero have a minus sign."""
    drawing = Drawing(225.0, 120.0)
    axes = Axes(drawing, room_for(span) + 1.0, 14.0, 120.0, 80.0, (0.0, 24.5), span)
    axes.draw_frame("fret", "reading minus rule in millimetres")
    assert_free(drawing)

    written = [item.text for item in drawing.layer("labels") if isinstance(item, Text) and item.anchor == "end"]
    assert written == [number for _, number in numbers_of(span)]
    for value, number in numbers_of(span):
        assert number.startswith("\N{MINUS SIGN}") == (value < 0.0)
        assert "-" not in number
        assert float(number.replace("\N{MINUS SIGN}", "-")) == pytest.approx(value, abs=1e-12)
