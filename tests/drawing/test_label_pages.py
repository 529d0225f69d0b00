"""Pages of labels: each label stands where the paper has its place, read back by other programs."""

import io

import pdfplumber
import pypdfium2
import pytest
import zxingcpp

from scalewright.drawing.label_pages import LabelPages, LabelPaper, fill_pages, grid_of, print_pages
from scalewright.drawing.label_sheet import LabelOrder
from scalewright.drawing.language import language_named
from scalewright.drawing.pdf import write_pdf_sheets
from scalewright.lutherie.errors import LabelSizeError, PaperError, UndefinedPartError
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.part import Part
from scalewright.lutherie.spacing import EIGHTEENTH
from scalewright.lutherie.tag_text import read_tag

POINT = 72.0 / 25.4
PAPER = LabelPaper(70.0, 36.0)


def orders(number, size=(70.0, 36.0)):
    """Labels for boards with numbers of their own."""
    return [
        LabelOrder(Part(f"B{n}", "board", layout_scale=600.0 + n, rule=EIGHTEENTH), "mm", Beliefs(), *size)
        for n in range(number)
    ]


def test_labels_begin_at_the_place_that_is_asked_for():
    """On A4 stand 3 by 8 labels of 70 mm by 36 mm; from place 23 on, the third goes on the next page."""
    filled = fill_pages(LabelPages(orders(3), LabelPaper(70.0, 36.0, start=23)))
    with pdfplumber.open(io.BytesIO(write_pdf_sheets(print_pages(filled, language_named("en"))))) as pdf:
        places = [
            (number, word["x0"] / POINT, word["top"] / POINT)
            for number, page in enumerate(pdf.pages)
            for word in page.extract_words()
            if word["text"] in {"B0", "B1", "B2"}
        ]

    assert (filled.grid.columns, filled.grid.rows) == (3, 8)
    assert filled.grid.left == pytest.approx(0.0)
    assert filled.grid.top == pytest.approx(4.5)
    (_, x0, y0), (_, x1, y1), (page, x2, y2) = places
    assert page == 1
    assert filled.pages == 2
    assert 70.0 < x0 < 140.0 < x1 < 210.0
    assert y0 == pytest.approx(y1, abs=0.01)
    assert 4.5 + 7 * 36.0 < y0 < 4.5 + 8 * 36.0
    assert 0.0 < x2 < 70.0
    assert 4.5 < y2 < 4.5 + 36.0
    assert x1 - x0 == pytest.approx(70.0, abs=0.01)


@pytest.mark.slow
@pytest.mark.source("independent readers: PDFium draws the page, zxing-cpp reads it")
def test_all_codes_of_a_page_are_read():
    """A full page gives back all its parts; slow, as it is drawn and searched."""
    pages = print_pages(fill_pages(LabelPages(orders(24), PAPER)), language_named("en"))
    page = pypdfium2.PdfDocument(write_pdf_sheets(pages))[0].render(scale=300 / 72).to_pil()
    tags = [read_tag(code.text) for code in zxingcpp.read_barcodes(page)]

    assert {tag.id for tag in tags} == {f"B{n}" for n in range(24)}
    assert all(tag.layout_scale == 600.0 + int(tag.id[1:]) for tag in tags)


def test_gaps_and_edges_are_kept():
    """With edges and gaps of a label stock's own, places lie where they say."""
    grid = grid_of(LabelPaper(63.5, 38.1, column_gap=2.5, left=7.2, top=15.1))

    assert (grid.columns, grid.rows, grid.left, grid.top) == (3, 7, 7.2, 15.1)


@pytest.mark.parametrize(
    "wanted",
    [
        LabelPaper(220.0, 50.0),
        LabelPaper(70.0, 36.0, start=25),
        LabelPaper(70.0, 36.0, "letter", left=200.0),
    ],
)
def test_what_fits_no_paper_is_refused(wanted):
    """Labels too wide, and places that are not there, are refused."""
    with pytest.raises(PaperError):
        fill_pages(LabelPages(orders(1), wanted))


def test_a_refusal_names_the_label():
    """What is wrong with one label is said of that one; a size too small is the fault of all."""
    bad = [*orders(1), LabelOrder(Part("x", "board"), "mm", Beliefs(), 70.0, 36.0)]
    with pytest.raises(UndefinedPartError) as refused:
        fill_pages(LabelPages(bad, PAPER))
    with pytest.raises(LabelSizeError) as too_small:
        print_pages(fill_pages(LabelPages(orders(2, (20.0, 10.0)), LabelPaper(20.0, 10.0))), language_named("en"))

    assert refused.value.field == ("labels", 1, "part")
    assert too_small.value.field == ("size",)
