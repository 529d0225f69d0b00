"""Labels: read by a program that did not write them, at the resolutions of label printers."""

import io
import itertools
import random
import re
import struct
import time
from typing import Any

import pdfplumber
import pytest
import segno
import zxingcpp
from PIL import Image

from scalewright.drawing.label_picture import write_label_picture
from scalewright.drawing.label_sheet import PRESETS, LabelOrder, _modules_across, draw_label, fill_label, set_label
from scalewright.drawing.language import LANGUAGES, language_named
from scalewright.drawing.letters import wrap
from scalewright.drawing.page import singly
from scalewright.drawing.pdf import write_pdf
from scalewright.lutherie.errors import LabelSizeError
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.part import FanScale, Part
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal
from scalewright.lutherie.tag_text import read_tag

POINT = 72.0 / 25.4
LONGEST = Part("W" * 60, "saddle_template", layout_scale=1234.567, rule=Divisor(17.817153745105), tolerance=0.123)
"""The widest letters that an id may have, as many as there may be."""


def order(part, size=(100.0, 50.0), **wishes):
    """A label for a part."""
    return fill_label(LabelOrder(part, wishes.pop("unit", "mm"), Beliefs(), *size, **wishes))


def random_part(draw):
    """A part such as a stock room has."""
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 ._#()+-"
    name = draw.choice("BFT") + "".join(draw.choice(letters) for _ in range(draw.randint(0, 20)))
    rule = draw.choice([EIGHTEENTH, EQUAL, Equal(draw.randint(5, 60)), Divisor(draw.uniform(15.0, 20.0))])
    return Part(name, "board", layout_scale=draw.uniform(300.0, 900.0), rule=rule, tolerance=draw.uniform(0.0, 1.0))


def random_fan(draw):
    """A fan board, whose code carries two scales, and mostly the fret that is square."""
    known = random_part(draw)
    bass = draw.uniform(300.0, 900.0)
    scales = FanScale(bass, bass * draw.uniform(0.9, 1.0))
    square = draw.choice([None, draw.randint(0, 24)])
    return Part(known.id, "board", true_scale=scales, rule=known.rule, tolerance=known.tolerance, square_fret=square)


def scanned(drawing, dpi, **wishes):
    """What a reader makes of the picture of a label, as the only thing that it finds."""
    picture = Image.open(io.BytesIO(write_label_picture(drawing, dpi)))
    (code,) = zxingcpp.read_barcodes(picture, **wishes)
    return code.text


def agree(tag, stated):
    """Whether a tag that was read has what was stated, to half of a text's step."""
    half_a_step = 0.0005 + 1e-9  # mm; the step of a text in inches is smaller
    lengths = [("true_scale", "layout_scale"), ("treble_scale", "treble_layout")][
        : 1 if stated.treble_scale is None else 2
    ]
    for name in itertools.chain(*lengths):
        assert abs(getattr(tag, name) - getattr(stated, name)) <= half_a_step, name
    assert (tag.id, tag.kind, tag.rule, tag.square_fret) == (stated.id, stated.kind, stated.rule, stated.square_fret)


def assert_all_are_read(number, seed, make=random_part, version="1", **wishes):
    """Print random labels and scan them at both resolutions."""
    draw = random.Random(seed)
    for _ in range(number):
        part, unit, size = make(draw), draw.choice(["mm", "in"]), draw.choice([(70.0, 36.0), (100.0, 50.0)])
        language = language_named(draw.choice(LANGUAGES))
        for dpi in (203, 300):
            filled = order(part, size, unit=unit, dpi=dpi, date="2026-11-25")
            text = scanned(draw_label(filled, language), dpi, **wishes)
            assert text.startswith(f"TRUESCALE/{version};")
            agree(read_tag(text), filled.tag)


@pytest.mark.slow
@pytest.mark.source("an independent reader: zxing-cpp, by the ZXing authors")
def test_codes_are_read_by_another_program():
    """Random labels are read at 203 and 300 dots per inch; slow, as each is drawn and scanned twice."""
    assert_all_are_read(8, 20261125)
    assert_all_are_read(4, 20261126, random_fan, "2")


@pytest.mark.study
@pytest.mark.source("an independent reader: zxing-cpp, by the ZXing authors")
def test_a_thousand_codes_are_read():
    """All of 1,000 random labels, and of 1,000 of fan boards, are read at both resolutions."""
    assert_all_are_read(1000, 8)
    # Of codes as large as those of fans four in a thousand have rows that pass for a short linear code as well.
    assert_all_are_read(1000, 9, random_fan, "2", formats=zxingcpp.BarcodeFormat.QRCode)


def test_a_code_may_carry_an_address():
    """An address stands in the code as it was given."""
    address = "https://shop.example/boards?id=17&lang=de"
    assert scanned(draw_label(order(LONGEST, url=address), language_named("en")), 300) == address


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("title", ["M" * 60, "琴" * 60, "\N{EM DASH}Щ" * 30])
def test_letters_fit_for_the_longest_values(language, title):
    """Every letter of the longest id and title lies on the label, and none in the code or its white frame."""
    filled = order(LONGEST, title=title, date="2026-11-25")
    label = set_label(filled, language_named(language))
    with pdfplumber.open(io.BytesIO(write_pdf(draw_label(filled, language_named(language))))) as pdf:
        (page,) = pdf.pages
        chars = [char for char in page.chars if char["text"].strip()]
        code = min(shape["x0"] for shape in [*page.rects, *page.curves]) - 4.0 * label.module * POINT

    assert len(chars) == sum(len(line.replace(" ", "")) for line in label.lines)
    assert min(char["x0"] for char in chars) > 0.0
    assert max(char["x1"] for char in chars) < code
    assert min(char["top"] for char in chars) > -0.3 * max(char["size"] for char in chars)
    assert max(char["bottom"] for char in chars) < 50.0 * POINT + 1.0


def test_a_size_too_small_is_refused_with_the_smallest_that_works():
    """The size that a refusal names works, the next smaller one of whole millimetres does not."""
    with pytest.raises(LabelSizeError) as refused:
        set_label(order(LONGEST, (40.0, 20.0)), language_named("en"))
    facts: dict[str, Any] = dict(refused.value.facts)
    width, height = facts["smallest_mm"]

    for size in ((width, height), PRESETS[facts["smallest_common_size"]]):
        label = set_label(order(LONGEST, size), language_named("en"))
        assert (label.width, label.height) == size
    with pytest.raises(LabelSizeError):
        set_label(order(LONGEST, (width - 1.0, (width - 1.0) * height / width)), language_named("en"))


def shortest(work):
    """Processor time that some work takes when nothing was done before. [s]"""
    times = []
    for _ in range(5):
        wrap.cache_clear()
        begun = time.process_time()
        work()
        times.append(time.process_time() - begun)
    return min(times)


def test_a_refusal_is_not_much_dearer_than_a_label():
    """To find the smallest size that works takes no longer than a few labels, for it is found on the event loop."""
    english = language_named("en")
    fits, small = order(LONGEST), order(LONGEST, (40.0, 20.0))

    def refuse():
        with pytest.raises(LabelSizeError):
            set_label(small, english)

    assert shortest(refuse) < 4.0 * shortest(lambda: set_label(fits, english))


def test_letters_alone_need_no_code(monkeypatch):
    """What a label says is known without its code being made, which may take longer than all else."""
    monkeypatch.setattr(segno, "make_qr", None)
    filled = order(LONGEST)
    assert set_label(filled, language_named("en")).code == filled.code
    with pytest.raises(TypeError):
        draw_label(filled, language_named("en"))


@pytest.mark.slow
@pytest.mark.source("an independent table: segno's, at both sides of every step")
def test_the_size_of_a_code_follows_from_its_length():
    """A code of each version holds as many bytes as the library finds room for; slow, as the largest are made too."""
    for version in range(1, 41):
        across = 17 + 4 * version
        full = max(length for length in range(1, 2332) if _modules_across(length) == across)
        assert segno.make_qr("a" * full, error="m", boost_error=False, mask=0).symbol_size(border=0)[0] == across
        if version < 40:
            longer = segno.make_qr("a" * (full + 1), error="m", boost_error=False, mask=0)
            assert longer.symbol_size(border=0)[0] == across + 4


def test_a_label_upright_has_its_code_below():
    """Where a label is higher than wide, letters stand above the code."""
    drawing = draw_label(order(LONGEST, (60.0, 110.0)), language_named("en"))
    lowest = min(text.y for text in drawing.layers["text"])

    assert max(y for path in singly(drawing.layers["code"]) for _, y in path.points) < lowest


@pytest.mark.source("W3C Portable Network Graphics, section 11.3.4.3: pHYs has dots per metre")
def test_a_picture_says_its_resolution():
    """300 dots per inch are 11811 per metre, and black and white is all that a code has."""
    drawing = draw_label(order(LONGEST), language_named("en"))
    picture = write_label_picture(drawing, 300)
    at = picture.index(b"pHYs")

    assert struct.unpack(">IIB", picture[at + 4 : at + 13]) == (11811, 11811, 1)
    image = Image.open(io.BytesIO(picture)).convert("L")
    image.load()
    assert image.width == 1181
    left = min(x for path in singly(drawing.layers["code"]) for x, _ in path.points)
    code = image.crop((round(left * image.width / drawing.width), 0, image.width, image.height))
    colours: Any = code.getcolors(256)
    assert all(value < 5 or value > 250 for _, value in colours)


def test_numbers_are_written_as_the_language_does():
    """German and French have a decimal comma, English a point."""
    first = {tag: set_label(order(LONGEST), language_named(tag)).lines[0] for tag in LANGUAGES}

    assert "." in first["en"]
    assert first["de"] == first["fr"]
    assert first["de"].replace(",", ".") == first["en"]


def test_all_catalogues_have_the_same_words():
    """No language lacks a word, and each fills in the same values."""
    english = language_named("en").words
    for tag in LANGUAGES:
        words = language_named(tag).words
        assert words.keys() == english.keys()
        for key, text in words.items():
            assert sorted(re.findall(r"{\w+}", text)) == sorted(re.findall(r"{\w+}", english[key])), (tag, key)
