"""Spec pages: parsed by a strict reader, with the words and figures that they are to have."""

import html.parser
import re
from fractions import Fraction

import pytest

from scalewright.drawing.language import LANGUAGES, language_named
from scalewright.drawing.spec_page import write_spec_page
from scalewright.drawing.spec_words import sentences_of
from scalewright.lutherie.errors import UndefinedPartError
from scalewright.lutherie.fingerboard.plan import BoardMargins, BoardWidths
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.label import Label
from scalewright.lutherie.part import Part
from scalewright.lutherie.setup import Heights
from scalewright.lutherie.spacing import EIGHTEENTH
from scalewright.lutherie.spec_sheet import SheetPlan, Stringing, draw_up_sheet
from tests.lutherie.parts_of_boards import measured

INCH = 25.4
FRETS = tuple(range(1, 21))
VOID = {"meta", "br", "line", "circle", "polygon", "polyline", "path"}
OUTLINE = (6, BoardMargins(3.0, 3.0, 3.5, 3.5), BoardWidths(43.0, 57.0))


def plan(part=None, **more):
    """A sheet for a board of 24 3/4 in under the rule of 18."""
    board = Part("BD-17", "board", layout_scale=24.75 * INCH, rule=EIGHTEENTH, label=Label(24.75 * INCH, "in", 6.35))
    return SheetPlan(part or board, more.pop("unit", "mm"), 0.5, Beliefs(), **more)


class Reader(html.parser.HTMLParser):
    """Keeps the open elements, the ids and the texts of a page; complains of what is not closed."""

    def __init__(self):
        super().__init__()
        self.open, self.ids, self.names, self.texts = [], [], [], []

    def handle_starttag(self, tag, attrs):
        """Keep what opens."""
        self.names.append(tag)
        self.ids += [value for name, value in attrs if name == "id"]
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        """Keep what stands alone."""
        self.names.append(tag)
        self.ids += [value for name, value in attrs if name == "id"]

    def handle_endtag(self, tag):
        """Close what was opened last."""
        assert self.open.pop() == tag

    def handle_data(self, data):
        """Keep what is shown."""
        if self.open and self.open[-1] not in {"style", "title", "desc", "text"}:
            self.texts.append(data)


def read(page):
    """Read a page."""
    reader = Reader()
    reader.feed(page.decode())
    reader.close()
    assert not reader.open
    return reader


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("whole", [True, False])
def test_a_sheet_is_well_formed(language, whole):
    """Elements close in order, ids are there once, headings begin with one h1, and what is labelled exists."""
    page = write_spec_page(draw_up_sheet(plan(outline=OUTLINE)), language_named(language), whole=whole)
    reader = read(page)

    assert len(reader.ids) == len(set(reader.ids))
    assert set(re.findall(r'aria-labelledby="([^"]+)"', page.decode())) <= set(reader.ids)
    assert reader.names.count("h1") == 1
    assert (reader.names[0] == "html") is whole
    assert f'lang="{language}"' in page.decode()


@pytest.mark.source("exact rationals: x_n = S (1 - (17/18)^n)")
def test_frets_stand_where_the_rule_puts_them():
    """The table has every fret in millimetres, inches and the nearest 64th, each within half of its last place."""
    sheet = draw_up_sheet(plan())

    assert len(sheet.frets) == 22
    for row in sheet.frets:
        exact = Fraction(99, 4) * (1 - Fraction(17, 18) ** row.fret)
        assert abs(row.inches - float(exact)) < 1e-9  # in
        whole, _, part = row.fraction.rpartition(" ")
        assert abs(Fraction(whole or 0) + Fraction(part) - exact) <= Fraction(1, 128)
    text = " ".join(read(write_spec_page(sheet, language_named("en"), whole=True)).texts)
    assert "312.04" in text  # fret 12: 24.75 in (1 - (17/18)^12) = 312.039 mm
    assert "12.285" in text


def test_a_label_is_told_for_what_it_names():
    """A label that names the layout scale, the true scale or neither is told for that."""
    names = [
        draw_up_sheet(
            plan(Part("b", "board", layout_scale=24.75 * INCH, rule=EIGHTEENTH, label=Label(inches * INCH, "in", 2.54)))
        ).label.names
        for inches in (24.75, 24.57, 25.5)
    ]

    assert names == ["layout_scale", "true_scale", "neither"]


def test_markup_is_shown_as_text():
    """Tags in a title, a number or a revision stand on the page as they were written."""
    hostile = "<script>alert('1')</script><img src=x onerror=y>"
    page = write_spec_page(
        draw_up_sheet(plan(title=hostile, identifiers=(hostile,), revision=hostile)), language_named("en"), whole=True
    )
    reader = read(page)

    assert "script" not in reader.names
    assert "img" not in reader.names
    assert "".join(reader.texts).count(hostile) == 3


def test_nothing_is_fetched():
    """A page names no address but that of the SVG vocabulary."""
    page = write_spec_page(draw_up_sheet(plan(outline=OUTLINE)), language_named("de"), whole=True).decode()

    assert set(re.findall(r"https?://[^\"' ]+", page)) == {"http://www.w3.org/2000/svg"}
    assert "url(" not in page
    assert "@import" not in page


def test_documented_properties_are_those_of_the_style_sheet():
    """Every custom property that the style sheet names at its head is used below, with a value of its own."""
    page = write_spec_page(draw_up_sheet(plan()), language_named("en"), whole=False).decode()
    head, _, rest = page.partition("*/")
    documented = set(re.findall(r"--scalewright-\w+", head))

    assert documented == set(re.findall(r"var\((--scalewright-\w+), ", rest))
    assert len(documented) == 7


def test_readings_against_a_claim_give_a_decision():
    """A board that was measured as it claims is accepted, and the sheet says what was allowed."""
    part = Part(
        "b", "board", layout_scale=628.65, rule=EIGHTEENTH, survey=measured(628.65, FRETS, rule=EIGHTEENTH), frets=20
    )
    sheet = draw_up_sheet(plan(part))
    words = sentences_of(sheet, language_named("en"))

    assert (sheet.source, sheet.conformity.decision, sheet.conformity.conformance) == (
        "readings", "accept", "conforming",
    )  # fmt: skip
    assert words.conformity.startswith("Accepted.")
    assert "± 0.50 mm" in (words.conformity or "")


def test_what_must_not_be_combined_is_named():
    """The bounds are the tolerance about the true scale, and the layout scale is no place for a bridge."""
    words = sentences_of(draw_up_sheet(plan()), language_named("en"))
    true = 2.0 * 628.65 * (1.0 - (17.0 / 18.0) ** 12)

    assert f"below {true - 0.5:.2f} mm" in words.not_with[0]
    assert f"above {true + 0.5:.2f} mm" in words.not_with[0]
    assert "628.65 mm" in words.not_with[1]
    assert f"{628.65 - true:.2f} mm" in words.not_with[1]
    assert len(words.not_with) == len(words.cautions) == 3


def test_of_a_label_alone_there_is_no_sheet():
    """A label that can mean several true scales states none."""
    with pytest.raises(UndefinedPartError):
        draw_up_sheet(plan(Part("b", "board", label=Label(628.65, "in", 6.35))))


def test_of_a_true_scale_alone_no_frets_are_stated():
    """Without a rule there is no table, and strings or an outline are refused."""
    part = Part("b", "board", true_scale=628.65)
    words = sentences_of(draw_up_sheet(plan(part)), language_named("en"))

    assert draw_up_sheet(plan(part)).frets == []
    assert words.rule == words.layout_scale == "not established"
    with pytest.raises(UndefinedPartError):
        draw_up_sheet(plan(part, outline=OUTLINE))
    with pytest.raises(UndefinedPartError):
        draw_up_sheet(plan(part, stringing=Stringing("s", [], Heights(0.5, 1.0))))
