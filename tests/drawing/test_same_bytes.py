"""The same bytes in every process: no order of a set, no clock and no chance is in a file."""

import os
import subprocess
import sys

import pytest

SCRIPT = """
import hashlib
from scalewright.drawing.board_sheet import board_on_pages, board_sheet
from scalewright.drawing.dxf import write_dxf
from scalewright.drawing.pdf import write_pdf, write_pdf_pages
from scalewright.drawing.png import write_png
from scalewright.drawing.sheet import PAPERS, Sheet
from scalewright.drawing.svg import write_svg
from tests.drawing.boards import FAN_BOARD

sheet = Sheet(title="Board 7, Ωμέγα", identifiers=("order 1042",), date="2026-11-25", page=PAPERS["A4"])
drawing = board_sheet(FAN_BOARD, sheet, "mm")
forms = {
    "svg": write_svg(drawing),
    "dxf": write_dxf(drawing),
    "pdf": write_pdf(drawing),
    "pages": write_pdf_pages(*board_on_pages(FAN_BOARD, sheet, "mm"), sheet),
    "png": write_png(drawing, 400),
}
print({name: hashlib.sha256(form).hexdigest() for name, form in forms.items()})
"""

SEEDS = ("0", "1", "4", "7")
"""Of Python's hashes; sets of a few names come in several orders among them."""


@pytest.mark.slow
def test_every_form_is_the_same_in_every_process():
    """SVG, DXF, PDF and PNG of a board do not depend on the seed of Python's hashes.

    Slow: it starts Python four times, and loads all that draws.
    """
    running = [
        subprocess.Popen(
            [sys.executable, "-c", SCRIPT],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))},
            stdout=subprocess.PIPE,
            text=True,
        )
        for seed in SEEDS
    ]
    shown = {process.communicate(timeout=60)[0] for process in running}

    assert all(process.returncode == 0 for process in running)
    assert len(shown) == 1
