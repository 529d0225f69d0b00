"""DXF: read by another reader than its writer, and audited by its writer's library."""

import io

import dxfgrabber
import pytest
from ezdxf.filemanagement import read as read_again

from scalewright.drawing.board_sheet import board_sheet
from scalewright.drawing.dxf import write_dxf
from scalewright.drawing.page import Drawing, Text
from scalewright.drawing.sheet import Sheet
from tests.drawing.boards import FAN_BOARD, PLAIN_BOARD, ZERO_FRET_BOARD

DXF_DIGITS = 1e-6
"""How near a line read back has to be. [mm]"""

MILLIMETRES = 4
"""Of $INSUNITS, by the published reference of the format (group code 70 of the header)."""


def read(written: bytes):
    """Read a file with a library that has nothing of the writer's."""
    return dxfgrabber.read(io.StringIO(written.decode("utf-8")), {"grab_blocks": False})


def header_value(written: bytes, name: str) -> str:
    """Read a variable of the header from the bare group codes."""
    lines = [line.strip() for line in written.decode("utf-8").splitlines()]
    return lines[lines.index(name) + 2]


@pytest.mark.parametrize("board", [PLAIN_BOARD, FAN_BOARD, ZERO_FRET_BOARD], ids=["plain", "fan", "zero-fret"])
def test_slots_are_where_the_board_has_them(board):
    """Its zero point is the zero line on the centre line; each slot's middle and kerf agree with the geometry."""
    entities = read(write_dxf(board_sheet(board, Sheet(), "mm"))).entities
    middles = [line for line in entities if line.layer == "FRETS"]
    kerfs = [line for line in entities if line.layer == "KERFS"]

    assert len(middles) == len(kerfs) == len(board.frets)
    for fret, middle, kerf in zip(board.frets, middles, kerfs, strict=True):
        assert middle.start[:2] == pytest.approx(fret.slot.bass, abs=DXF_DIGITS)
        assert middle.end[:2] == pytest.approx(fret.slot.treble, abs=DXF_DIGITS)
        corners = (*fret.slot.near_edge, *reversed(fret.slot.far_edge))
        assert kerf.is_closed
        for point, corner in zip(kerf.points, corners, strict=True):
            assert point[:2] == pytest.approx(corner, abs=DXF_DIGITS)


def test_units_are_millimetres():
    """By the bare group codes of the file."""
    written = write_dxf(board_sheet(PLAIN_BOARD, Sheet(), "in"))

    assert header_value(written, "$INSUNITS") == str(MILLIMETRES)
    assert header_value(written, "$MEASUREMENT") == "1"
    assert header_value(written, "$ACADVER") == "AC1024"


@pytest.mark.parametrize("board", [PLAIN_BOARD, FAN_BOARD], ids=["plain", "fan"])
def test_an_audit_finds_nothing(board):
    """Neither errors nor anything that had to be mended, by ezdxf's auditor on the file read again."""
    auditor = read_again(io.StringIO(write_dxf(board_sheet(board, Sheet(title="x"), "mm")).decode())).audit()

    assert not auditor.errors
    assert not auditor.fixes


def test_the_same_drawing_gives_the_same_bytes():
    """Neither clock nor chance is in a file."""
    assert write_dxf(board_sheet(PLAIN_BOARD, Sheet(), "mm")) == write_dxf(board_sheet(PLAIN_BOARD, Sheet(), "mm"))


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("<b>&\"'", "<b>&\"'"),
        ("100 %% sure, %%d", "100 % % sure, % %d"),
        ("a^Jb", "a^ Jb"),
        ("\\U+0041 \\P", "\N{SET MINUS}U+0041 \N{SET MINUS}P"),
        ("לוח", "לוח"),
        ("漢字 é ☃", "漢字 é ☃"),
        ("{\\fArial;x}", "{\N{SET MINUS}fArial;x}"),
    ],
)
def test_text_means_nothing_but_itself(text, shown):
    """What begins a code in DXF is spelt so that it begins none."""
    drawing = Drawing(10.0, 10.0)
    drawing.layer("text").extend([Text(1.0, 1.0, text, 2.0), Text(1.0, 1.0, "", 2.0)])
    (entity,) = read_again(io.StringIO(write_dxf(drawing).decode())).modelspace()

    assert entity.dxf.text == shown
    (other,) = read(write_dxf(drawing)).entities
    assert other.text == shown
