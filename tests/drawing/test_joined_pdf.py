"""PDF files joined while they are sent: other programs read all pages, and each has its own letters."""

import io

import pdfplumber
import pypdf
import pytest

from scalewright.drawing.joined_pdf import JoinedPdf
from scalewright.drawing.page import Drawing, Text
from scalewright.drawing.pdf import write_pdf_sheets

LETTERS = "".join(map(chr, range(0x400, 0x500)))
"""More letters than one part of a font holds."""


def page(text):
    """A page with one line."""
    drawing = Drawing(100.0, 50.0, title="pages")
    drawing.layer("text").append(Text(5.0, 20.0, text, 4.0))
    return drawing


def joined(*files):
    """What is sent of several files of pages."""
    whole = JoinedPdf()
    return b"".join(whole.add(write_pdf_sheets(list(map(page, texts)), LETTERS)) for texts in files) + whole.end()


@pytest.mark.source("an independent reader: pypdf in its strict mode, which takes no table or trailer that is wrong")
@pytest.mark.parametrize("files", [[["one"]], [["one", "две"], ["three"], ["ӕ", "five", "ӿ six"]]])
def test_every_page_is_there_in_its_order(files):
    """Pages of all files follow one another, with the words of the first file about them."""
    reader = pypdf.PdfReader(io.BytesIO(joined(*files)), strict=True)
    texts = [page.extract_text().strip() for page in reader.pages]

    assert texts == [text for file in files for text in file]
    assert reader.metadata.title == "pages"


def test_fonts_are_there_once():
    """Ten files have the fonts of one, and letters beyond the first 256 are the same in all."""
    one, ten = joined(["Ӕ"]), joined(*[["Ӕ ж"]] * 10)
    with pdfplumber.open(io.BytesIO(ten)) as pdf:
        texts = {page.extract_text() for page in pdf.pages}

    assert texts == {"Ӕ ж"}
    assert ten.count(b"/FontFile2") == one.count(b"/FontFile2") > 1


def test_nothing_is_kept_of_what_was_sent():
    """The end of a long file has a line of twenty bytes for each object, and no page."""
    whole = JoinedPdf()
    files = [write_pdf_sheets([page(f"page {number}")], LETTERS) for number in range(20)]
    for file in files:
        whole.add(file)

    assert b"/Contents" not in whole.end()
    assert len(whole.end()) < 20 * 2 * 30 + 600
