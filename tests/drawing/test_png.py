"""PNG: a picture of the right size with something on it, read by another library."""

import io
from dataclasses import replace

import numpy as np
from PIL import Image

from scalewright.drawing import png
from scalewright.drawing.board_sheet import board_sheet
from scalewright.drawing.page import Drawing, Text
from scalewright.drawing.png import write_png
from scalewright.drawing.sheet import Sheet
from scalewright.lutherie.fingerboard import StringPlan, draw_up
from tests.drawing.boards import PLAIN_BOARD, PLAN


def read(written: bytes) -> Image.Image:
    """Read a picture."""
    return Image.open(io.BytesIO(written)).convert("L")


def test_a_preview_is_as_wide_as_was_asked():
    """Its height follows from the drawing; fret 12 is a dark line where the drawing has it, on white."""
    drawing = board_sheet(PLAIN_BOARD, Sheet(), "mm")
    picture = read(write_png(drawing, 3200))
    ox, oy = drawing.origin
    scale = 3200 / drawing.width
    row = int((drawing.height - oy + 5.5) * scale)
    grey = np.asarray(picture)
    line = [int(grey[row, int((325.0 + ox + d) * scale)]) for d in (-2.0, -1.0, -0.3, 0.0, 0.3, 1.0, 2.0)]

    assert picture.width == 3200
    assert abs(picture.height - drawing.height * scale) <= 1.0
    assert grey[2, 2] == 255
    assert min(line[2:5]) < 200 < min(line[:2] + line[5:])


def test_a_tall_picture_is_made_narrower(monkeypatch):
    """No drawing becomes more points than there may be."""
    monkeypatch.setattr(png, "MOST_POINTS", 100_000)
    drawing = board_sheet(draw_up(replace(PLAN, radius=None, strings=StringPlan(6, 9000.0, 9500.0))), Sheet(), "mm")
    picture = read(write_png(drawing, 800))

    assert picture.width * picture.height <= 100_000
    assert picture.width < 800


def test_letters_that_the_font_lacks_are_seen_to_be_missing():
    """A mark stands for them, not an empty place."""
    drawing = Drawing(40.0, 10.0)
    drawing.layer("text").append(Text(5.0, 3.0, "漢", 5.0))

    assert min(read(write_png(drawing, 400)).tobytes()) < 100


def test_the_same_drawing_gives_the_same_bytes():
    """Neither clock nor chance is in a picture."""
    drawing = board_sheet(PLAIN_BOARD, Sheet(), "mm")

    assert write_png(drawing, 600) == write_png(drawing, 600)
