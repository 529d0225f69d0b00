"""Board sheets: all that is drawn stands where the board has it, and no letters stand on others."""

import math
import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest
from shapely import LineString, Polygon, STRtree, box

from scalewright.drawing.board_sheet import board_on_pages, board_sheet
from scalewright.drawing.letters import text_width
from scalewright.drawing.page import Drawing, Path, Text, singly
from scalewright.drawing.sheet import PAPERS, Sheet
from scalewright.drawing.svg import write_svg
from scalewright.lutherie.fingerboard import PartialFret, SlotPlan, draw_up
from tests.drawing.boards import FAN_BOARD, PLAIN_BOARD, PLAN, ZERO_FRET_BOARD, named, random_boards

SVG_DIGITS = 0.0001
"""Coordinates of an SVG have four decimals. [mm]"""

LOADED = Sheet(
    title="A title that goes on for as long as titles are allowed to go on, and says nothing that has to be said " * 2,
    identifiers=("W" * 60, "order 1042", "board 7", "drawing 3"),
    date="2026-11-25",
)


def boxes(drawing: Drawing):
    """Return the room that every text of a drawing takes, from its size and its widest width."""
    rooms = []
    for layer in drawing.layers.values():
        for item in singly(layer):
            if isinstance(item, Text) and item.text:
                width = text_width(item.text, item.size)
                left = -{"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor] * width
                corners = [(left, -0.2 * item.size), (left + width, 0.75 * item.size)]
                turn = math.radians(item.turn)
                xs, ys = zip(
                    *[
                        (
                            item.x + x * math.cos(turn) - y * math.sin(turn),
                            item.y + x * math.sin(turn) + y * math.cos(turn),
                        )
                        for x, y in corners
                    ],
                    strict=True,
                )
                rooms.append(box(min(xs), min(ys), max(xs), max(ys)))
    return rooms


def assert_free(drawing: Drawing):
    """Assert that no text stands on another or leaves the page."""
    rooms = boxes(drawing)
    ox, oy = drawing.origin
    page = box(-ox, -oy, drawing.width - ox, drawing.height - oy)
    first, second = STRtree(rooms).query(rooms, predicate="intersects")
    clashes = [(a, b) for a, b in zip(first.tolist(), second.tolist(), strict=True) if a < b]

    assert not clashes
    assert all(page.covers(room) for room in rooms)


@pytest.mark.parametrize("sheet", [Sheet(), LOADED], ids=["plain", "loaded"])
@pytest.mark.parametrize("unit", ["mm", "in"])
def test_letters_never_stand_on_letters(sheet, unit):
    """By shapely, on boards of all sizes, every text leaves every other free and stays on the page."""
    for board in [*random_boards(40), FAN_BOARD, PLAIN_BOARD, ZERO_FRET_BOARD]:
        assert_free(board_sheet(board, sheet, unit))


@pytest.mark.parametrize("page", [*PAPERS.values(), (210.0, 148.0), (420.0, 297.0)])
def test_the_words_of_a_cover_fit_its_page(page):
    """On A5, A4, letter and A3 title, statement and cautions are all there, above the check bars."""
    sheet = Sheet(
        title="A title for a board that is long enough", identifiers=("a", "b", "c", "d"), date="2026-11-25", page=page
    )
    cover, _ = board_on_pages(FAN_BOARD, sheet, "mm")

    assert_free(cover)


@pytest.mark.parametrize("board", [PLAIN_BOARD, FAN_BOARD, ZERO_FRET_BOARD], ids=["plain", "fan", "zero-fret"])
def test_lines_stand_where_the_board_has_them(board):
    """Read back from the SVG by an XML parser, with the drawing's zero point taken off, to its four decimals."""
    drawing = board_sheet(board, Sheet(), "mm")
    root = ET.fromstring(write_svg(drawing))  # noqa: S314  (our own output)
    found = {element.get("id"): element for element in root.iter() if element.get("id")}
    ox, oy = drawing.origin

    def points(element):
        if element.get("points"):
            flat = [float(number) for pair in element.get("points").split() for number in pair.split(",")]
        else:
            flat = [float(element.get(name)) for name in ("x1", "y1", "x2", "y2")]
        pairs = zip(flat[::2], flat[1::2], strict=True)
        return [(x - ox, drawing.height - y - oy) for x, y in pairs]

    for fret in board.frets:
        name = "extra-6" if fret.fret is None else str(fret.fret)
        for point, expected in zip(points(found[f"fret-{name}"]), (fret.slot.bass, fret.slot.treble), strict=True):
            assert point == pytest.approx(expected, abs=SVG_DIGITS)
        kerf = (*fret.slot.near_edge, *reversed(fret.slot.far_edge))
        for point, expected in zip(points(found[f"kerf-{name}"]), kerf, strict=True):
            assert point == pytest.approx(expected, abs=SVG_DIGITS)
    for string in board.strings:
        ends = (string.at_nut, string.at_saddle)
        for point, expected in zip(points(found[f"string-{string.string}"]), ends, strict=True):
            assert point == pytest.approx(expected, abs=SVG_DIGITS)
    for point, expected in zip(points(found["board"]), board.outline, strict=True):
        assert point == pytest.approx(expected, abs=SVG_DIGITS)
    assert root.get("width") == f"{drawing.width:.4f}mm"
    assert root.get("viewBox") == f"0 0 {drawing.width:.4f} {drawing.height:.4f}"


def test_every_sheet_has_bars_of_100_mm_and_4_in():
    """The two bars measure 100 mm and 4 times 25.4 mm (an inch is 25.4 mm by definition, ISO 80000-3)."""
    items = named(board_sheet(PLAIN_BOARD, Sheet(), "mm"))

    for name, length in (("bar-100-mm", 100.0), ("bar-4-in", 4 * 25.4)):
        xs = [x for x, _ in items[name].points]
        assert max(xs) - min(xs) == pytest.approx(length, abs=1e-9)


def test_a_sheet_says_what_it_is_and_what_to_mind():
    """Title, statement, date and identifiers as given; and the cautions of the saw."""
    sheet = Sheet(title="Board 7", identifiers=("order 1042",), date="2026-11-25")
    text = " ".join(item.text for item in singly(board_sheet(PLAIN_BOARD, sheet, "mm").layer("text")))

    for words in ("Board 7", "Date: 2026-11-25", "order 1042", "equal spacing, layout scale 650.00 mm (25.591 in)"):
        assert words in text
    for words in ("eye and ear protection", "dust", "guard the blade", "The machine's own instructions"):
        assert words in text


def test_numbers_beside_a_fan_are_those_of_either_side():
    """The bass distance stands on the bass side, the treble distance on the treble side."""
    texts = [
        item.text for item in singly(board_sheet(FAN_BOARD, Sheet(), "mm").layer("labels")) if isinstance(item, Text)
    ]

    assert f"{686.0 / 2:.2f}" in texts
    assert f"{648.0 / 2:.2f}" in texts
    inches = [
        item.text for item in singly(board_sheet(FAN_BOARD, Sheet(), "in").layer("labels")) if isinstance(item, Text)
    ]
    assert f"{686.0 / 50.8:.3f}" in inches


def test_markers_are_hatched_and_leave_the_frets_free():
    """A marker is a circle with chords, no wider than three fifths of its fret space."""
    drawing = board_sheet(PLAIN_BOARD, Sheet(), "mm")
    items = named(drawing)
    circle = items["marker-3-0"]
    frets = [items[f"fret-{n}"].x1 for n in (2, 3)]

    assert frets[0] < circle.x - circle.radius
    assert circle.x + circle.radius < frets[1]
    hatching = [item for item in singly(drawing.layer("markers")) if isinstance(item, Path)]
    assert len(hatching) == 3 * len(PLAIN_BOARD.markers)
    for chord in hatching[:3]:
        for x, y in chord.points:
            assert math.dist((x, y), (circle.x, circle.y)) == pytest.approx(circle.radius, abs=1e-9)


def test_letters_stand_beside_the_board_where_slots_end_before_its_edge():
    """Ticks of blind slots and of frets cut short begin outside the outline, as those of all others do."""
    blind = draw_up(replace(PLAN, slots=SlotPlan(inset=3.0), partial_frets=(PartialFret(3, 4, fret=9),)))
    drawing = board_sheet(blind, Sheet(), "mm")
    outline = Polygon(named(drawing)["board"].points)
    ticks = [item.points for item in singly(drawing.layer("ticks")) if isinstance(item, Path)]

    assert len(ticks) == 2 * len(blind.frets)
    for ends in ticks:
        assert 0.3 < LineString(ends).distance(outline) < 0.5


def test_a_sheet_says_what_its_numbers_are_measured_along():
    """On a fan each side bears its own string's distances, along the string or along the board as the plan has it."""
    along_strings = draw_up(replace(FAN_BOARD.plan, measured="string"))
    plain_along_strings = draw_up(replace(PLAN, measured="string"))

    def said(board):
        text = " ".join(item.text for item in singly(board_sheet(board, Sheet(), "mm").layer("text")))
        return text.partition("the zero line at the nut, ")[2].partition(", in millimetres")[0]

    def numbers(board):
        return [item.text for item in singly(board_sheet(board, Sheet(), "mm").layer("labels")) if item.turn == 90.0]

    assert said(FAN_BOARD) == "to the outer string on that side, parallel to the centre line"
    for board, measure in ((FAN_BOARD, lambda start, end: end.x - start.x), (along_strings, math.dist)):
        for fret in board.frets[:5]:
            assert f"{measure(board.strings[-1].at_zero, fret.line.bass):.2f}" in numbers(board)
            assert f"{measure(board.strings[0].at_zero, fret.line.treble):.2f}" in numbers(board)
    assert said(along_strings) == "along the outer string on that side"
    for fret in plain_along_strings.frets[:5]:
        assert f"{fret.on_centre_line:.2f}" in numbers(plain_along_strings)
    assert said(PLAIN_BOARD) == said(plain_along_strings) == "along the centre line"
