"""Spec sheets on paper: one page, read back by a program that did not write it."""

import io
from dataclasses import replace

import pdfplumber
import pytest

from scalewright.drawing.language import language_named
from scalewright.drawing.spec_pdf import write_spec_pdf
from scalewright.lutherie.errors import PaperError
from scalewright.lutherie.fingerboard.plan import BoardMargins, BoardWidths
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.label import Label
from scalewright.lutherie.part import Part
from scalewright.lutherie.spacing import EIGHTEENTH
from scalewright.lutherie.spec_sheet import SheetPlan, SheetSetback, draw_up_sheet

POINT = 72.0 / 25.4
INCH = 25.4


def sheet_of(frets=22, **more):
    """A sheet of a board of 24 3/4 in under the rule of 18."""
    part = Part(
        "W" * 60,
        "board",
        layout_scale=24.75 * INCH,
        rule=EIGHTEENTH,
        label=Label(24.75 * INCH, "in", 6.35),
        frets=frets,
    )
    outline = (6, BoardMargins(3.0, 3.0, 3.5, 3.5), BoardWidths(43.0, 57.0))
    return draw_up_sheet(SheetPlan(part, "mm", 0.5, Beliefs(), outline=outline, **more))


@pytest.mark.parametrize(
    ("paper", "width", "height"), [("A4", 210.0, 297.0), ("letter", 215.9, 279.4)], ids=["A4", "letter"]
)
@pytest.mark.parametrize("frets", [12, 36])
def test_a_sheet_is_one_page_with_all_inside(paper, width, height, frets):
    """Paper is ISO 216 A4 or 8.5 by 11 in, upright, and every letter and line lies on it with a margin."""
    sheet = sheet_of(frets, title="M" * 120, identifiers=("M" * 60,) * 4, revision="M" * 60, date="2026-11-25")
    with pdfplumber.open(io.BytesIO(write_spec_pdf(sheet, language_named("fr"), paper))) as pdf:
        (page,) = pdf.pages
        things = [*(char for char in page.chars if char["text"].strip()), *page.lines, *page.curves]

    assert page.width == pytest.approx(width * POINT, abs=0.1)
    assert page.height == pytest.approx(height * POINT, abs=0.1)
    assert min(thing["x0"] for thing in things) > 8.0 * POINT
    assert max(thing["x1"] for thing in things) < (width - 8.0) * POINT
    assert min(thing["top"] for thing in things) > 5.0 * POINT
    assert max(thing["bottom"] for thing in things) < (height - 8.0) * POINT


@pytest.mark.source("exact rationals: fret 12 at 24.75 in (1 - (17/18)^12) = 12.285 in; true scale twice that")
def test_the_figures_stand_on_it():
    """True scale and fret 12 can be read, in both units."""
    with pdfplumber.open(io.BytesIO(write_spec_pdf(sheet_of(), language_named("en"), "A4"))) as pdf:
        text = pdf.pages[0].extract_text()

    for figure in ("624.08 mm", "24.570 in", "312.04", "12.285"):
        assert figure in text


def test_the_board_is_drawn_to_scale():
    """Frets stand along the drawing as they do along the board."""
    sheet = sheet_of()
    with pdfplumber.open(io.BytesIO(write_spec_pdf(sheet, language_named("en"), "A4"))) as pdf:
        upright = [one for one in pdf.pages[0].lines if abs(one["x1"] - one["x0"]) < 0.01 and one["height"] > 10.0]
    places = sorted({round(one["x0"], 2) for one in upright})
    wanted = [row.from_nut for row in sheet.frets]
    nut, last = places[0], places[len(wanted)]
    scale = (last - nut) / wanted[-1]

    assert scale < POINT
    for place, distance in zip(places[1:], wanted, strict=False):
        assert place - nut == pytest.approx(scale * distance, abs=0.02 * POINT)


def test_what_fits_no_page_is_refused():
    """More strings than a page holds are refused, and HTML is named instead."""
    sheet = replace(
        sheet_of(stringing=None), setbacks=[SheetSetback(number, "E4", 2.0, 626.0) for number in range(1, 200)]
    )
    with pytest.raises(PaperError, match="HTML"):
        write_spec_pdf(replace(sheet, frets=sheet.frets * 10), language_named("en"), "A4")
