"""PDF: measured by a reader that did not write it, on one long sheet and on pages put together by their marks."""

import io
from dataclasses import replace
from itertools import pairwise

import pdfplumber
import pytest

from scalewright.drawing.board_sheet import board_on_pages, board_sheet
from scalewright.drawing.fonts import UNKNOWN
from scalewright.drawing.page import Drawing, Text
from scalewright.drawing.pages import MOST_PAGES
from scalewright.drawing.pdf import LONGEST_SHEET, write_pdf, write_pdf_pages
from scalewright.drawing.sheet import FOOT, MARGIN, PAPERS, Sheet
from scalewright.lutherie.errors import PaperError
from scalewright.lutherie.fingerboard import Side, StringPlan, draw_up
from scalewright.lutherie.spacing import EQUAL
from tests.drawing.boards import FAN_BOARD, PLAIN_BOARD, PLAN, ZERO_FRET_BOARD

PRINTED = 0.01
"""How near a line of a print has to be at full size. [mm]"""

MM = 25.4 / 72.0
"""A point, the unit of PDF (ISO 32000-1, 8.3.2.3). [mm]"""

A4 = Sheet(title="On pages", page=PAPERS["A4"])


def read(written: bytes):
    """Read a file with a library that has nothing of the writer's."""
    return pdfplumber.open(io.BytesIO(written))


def lines_of(page) -> list[tuple[float, float, float, float]]:
    """Return the straight lines of a page, each from left to right, from its lower left corner. [mm]"""
    height = float(page.height)
    found = []
    for line in page.lines:
        (x1, y1), (x2, y2) = line["pts"]
        ends = sorted([(x1 * MM, (height - y1) * MM), (x2 * MM, (height - y2) * MM)])
        found.append((*ends[0], *ends[1]))
    return found


def there(lines, wanted, tolerance=PRINTED) -> bool:
    """Whether a line is among others, whichever way round."""
    a, b = sorted([tuple(wanted[:2]), tuple(wanted[2:])])
    return any(
        all(abs(x - y) <= tolerance for x, y in zip(line, (*a, *b), strict=True))
        or all(abs(x - y) <= tolerance for x, y in zip(line, (*b, *a), strict=True))
        for line in lines
    )


@pytest.mark.parametrize("board", [PLAIN_BOARD, FAN_BOARD, ZERO_FRET_BOARD], ids=["plain", "fan", "zero-fret"])
def test_a_long_sheet_measures_what_the_board_does(board):
    """Every slot and string is found on the page at full size, to a hundredth of a millimetre."""
    drawing = board_sheet(board, Sheet(), "mm")
    ox, oy = drawing.origin
    with read(write_pdf(drawing)) as pdf:
        (page,) = pdf.pages
        lines = lines_of(page)
        assert float(page.width) * MM == pytest.approx(drawing.width, abs=PRINTED)
        assert float(page.height) * MM == pytest.approx(drawing.height, abs=PRINTED)

    for fret in board.frets:
        (ax, ay), (bx, by) = fret.slot.bass, fret.slot.treble
        assert there(lines, (ax + ox, ay + oy, bx + ox, by + oy)), fret.name
    for string in board.strings:
        (ax, ay), (bx, by) = string.at_nut, string.at_saddle
        assert there(lines, (ax + ox, ay + oy, bx + ox, by + oy)), string.string


def register_marks(page) -> list[tuple[float, float]]:
    """Return the middles of the crosses of a page that lie within its window: lines of 6 mm that halve each other."""
    within = (MARGIN, MARGIN + FOOT, float(page.width) * MM - MARGIN, float(page.height) * MM - MARGIN)
    middles = []
    lines = lines_of(page)
    level = [line for line in lines if abs(line[1] - line[3]) < PRINTED and abs(line[2] - line[0] - 6.0) < PRINTED]
    upright = [
        line for line in lines if abs(line[0] - line[2]) < PRINTED and abs(abs(line[3] - line[1]) - 6.0) < PRINTED
    ]
    for a in level:
        middle = (0.5 * (a[0] + a[2]), a[1])
        crossed = any(
            abs(b[0] - middle[0]) < PRINTED and abs(0.5 * (b[1] + b[3]) - middle[1]) < PRINTED for b in upright
        )
        if crossed and within[0] <= middle[0] <= within[2] and within[1] <= middle[1] <= within[3]:
            middles.append(middle)
    return sorted(middles)


def test_pages_put_together_by_their_marks_give_the_long_sheet():
    """Laid mark on mark, each page shows the lines that the board has there; the overlap is what was asked for."""
    cover, whole = board_on_pages(FAN_BOARD, A4, "mm")
    ox, oy = whole.origin
    with read(write_pdf_pages(cover, whole, A4)) as pdf:
        pages = pdf.pages[1:]
        assert len(pages) == 3
        marks = [register_marks(page) for page in pages]
        lines = [lines_of(page) for page in pages]
    at = [(MARGIN, MARGIN + FOOT + (210.0 - 2 * MARGIN - FOOT) - whole.height)]
    for before, after in pairwise(marks):
        right = [mark for mark in before if mark[0] > 148.5]
        left = [mark for mark in after if mark[0] < 148.5]
        shifts = {(round(b[0] - a[0], 3), round(b[1] - a[1], 3)) for a, b in zip(right, left, strict=True)}
        assert len(shifts) == 1
        ((dx, dy),) = shifts
        assert dx == pytest.approx(-(297.0 - 2 * MARGIN - A4.overlap), abs=PRINTED)
        at.append((at[-1][0] + dx, at[-1][1] + dy))
    assert FAN_BOARD.frets
    for fret in FAN_BOARD.frets:
        (ax, ay), (bx, by) = fret.slot.bass, fret.slot.treble
        wanted = (ax + ox, ay + oy, bx + ox, by + oy)
        shown = [
            there(found, (wanted[0] + x, wanted[1] + y, wanted[2] + x, wanted[3] + y))
            for found, (x, y) in zip(lines, at, strict=True)
        ]
        assert any(shown), fret.name


@pytest.mark.parametrize(("paper", "size"), [("A4", (297.0, 210.0)), ("letter", (11 * 25.4, 8.5 * 25.4))])
def test_every_page_has_its_size_its_bars_and_its_number(paper, size):
    """ISO 216 A4, and letter of 11 in by 8.5 in; on each page 100 mm and 4 in, and how many pages there are."""
    sheet = Sheet(page=PAPERS[paper])
    cover, whole = board_on_pages(PLAIN_BOARD, sheet, "mm")
    with read(write_pdf_pages(cover, whole, sheet)) as pdf:
        total = len(pdf.pages) - 1
        for number, page in enumerate(pdf.pages):
            widths = {round((rect["x1"] - rect["x0"]) * MM, 2) for rect in [*page.rects, *page.curves]}
            text = page.extract_text()
            assert (float(page.width) * MM, float(page.height) * MM) == pytest.approx(size, abs=PRINTED)
            assert {100.0, 101.6} <= widths
            assert "100 mm: print at 100 %" in text
            assert "4 in: print at 100 %" in text
            if number:
                assert f"Page {number} of {total}" in text
    assert total == 3


def test_a_drawing_larger_than_a_page_both_ways_has_rows_and_columns():
    """A board wider than a page is cut both ways, with marks in the overlaps above and below as well."""
    board = draw_up(replace(PLAN, radius=None, strings=StringPlan(12, 300.0, 400.0), frets=12))
    cover, whole = board_on_pages(board, A4, "mm")
    with read(write_pdf_pages(cover, whole, A4)) as pdf:
        assert len(pdf.pages) == 1 + 3 * 3
        middle = register_marks(pdf.pages[1 + 3 + 1])
    assert len(middle) == 8


def test_text_is_text():
    """What people wrote can be read off the page again, markup, backslashes and brackets among it."""
    sheet = Sheet(title="(a) \\ <b> & 100 % Ω Ж", identifiers=("é ü ñ ß",))
    with read(write_pdf(board_sheet(PLAIN_BOARD, sheet, "mm"))) as pdf:
        text = pdf.pages[0].extract_text()
        assert "(a) \\ <b> & 100 % Ω Ж" in text
        assert "é ü ñ ß" in text
        assert "eye and ear protection" in text
        assert pdf.metadata["Title"] == "(a) \\ <b> & 100 % Ω Ж"


def test_right_to_left_writing_is_set_from_the_right():
    """The first letter of a Hebrew word stands farthest to the right; a letter that the font lacks shows that."""
    drawing = Drawing(100.0, 20.0)
    drawing.layer("text").extend([Text(5.0, 5.0, "לוח", 5.0), Text(5.0, 12.0, "漢", 5.0), Text(5.0, 1.0, "", 5.0)])
    with read(write_pdf(drawing)) as pdf:
        letters = {char["text"]: char["x0"] for char in pdf.pages[0].chars}

    assert letters["ל"] > letters["ו"] > letters["ח"]
    assert UNKNOWN in letters


def test_the_same_drawing_gives_the_same_bytes():
    """Neither clock nor chance is in a file."""
    drawing = board_sheet(PLAIN_BOARD, Sheet(), "mm")
    assert write_pdf(drawing) == write_pdf(drawing)
    assert write_pdf_pages(*board_on_pages(PLAIN_BOARD, A4, "mm"), A4) == write_pdf_pages(
        *board_on_pages(PLAIN_BOARD, A4, "mm"), A4
    )


def test_a_printer_is_told_not_to_scale():
    """The viewer preference PrintScaling is None (ISO 32000-1, table 150)."""
    assert b"/PrintScaling /None" in write_pdf(board_sheet(PLAIN_BOARD, Sheet(), "mm"))


def test_too_much_paper_is_refused():
    """A sheet longer than a PDF may be, and more pages than anybody would glue, are refused with a way out."""
    board = draw_up(replace(PLAN, bass=Side(EQUAL, 6000.0), treble=Side(EQUAL, 6000.0)))
    with pytest.raises(PaperError, match=f"{LONGEST_SHEET:.0f} mm"):
        write_pdf(board_sheet(board, Sheet(), "mm"))
    wide = draw_up(
        replace(
            PLAN, bass=Side(EQUAL, 6000.0), treble=Side(EQUAL, 6000.0), radius=None, strings=StringPlan(6, 900.0, 900.0)
        )
    )
    with pytest.raises(PaperError, match=f"there may be {MOST_PAGES}"):
        write_pdf_pages(*board_on_pages(wide, A4, "mm"), A4)
