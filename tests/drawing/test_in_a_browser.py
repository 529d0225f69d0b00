"""SVG in a browser: headless Chromium measures a drawing through its document object model.

A study, as it needs a browser: ``.ci/run`` puts Chromium on the machine and runs it.
"""

import json
import re
import shutil
import subprocess
from typing import Any

import pytest

from scalewright.drawing.board_sheet import board_sheet
from scalewright.drawing.sheet import Sheet
from scalewright.drawing.svg import write_svg
from tests.drawing.boards import FAN_BOARD, PLAIN_BOARD

MEASURED = 0.001
"""How near what the browser measures has to be. [mm]"""

CSS_PIXEL = 25.4 / 96.0
"""A pixel of CSS: a 96th of an inch (W3C CSS Values and Units 3, 5.2). [mm]"""

SCRIPT = """
const corner = document.querySelector('svg').getBoundingClientRect(), found = {};
for (const line of document.querySelectorAll('svg line[id]')) {
  const matrix = line.getScreenCTM(), ends = [];
  for (const end of ['1', '2']) {
    const point = document.querySelector('svg').createSVGPoint();
    point.x = line['x' + end].baseVal.value; point.y = line['y' + end].baseVal.value;
    const there = point.matrixTransform(matrix);
    ends.push([there.x - corner.x, there.y - corner.y]);
  }
  found[line.id] = ends;
}
const texts = [...document.querySelectorAll('svg text')].map(text => {
  const box = text.getBoundingClientRect();
  return [box.left, box.top, box.right, box.bottom];
});
const size = [corner.width, corner.height];
document.body.textContent = '=====' + JSON.stringify({found, texts, size}) + '=====';
"""


def measure(svg: bytes, folder) -> dict[str, Any]:
    """Show a drawing in a page and bring back what the browser measures."""
    page = folder / "drawing.html"
    head = '<!doctype html><meta charset="utf-8"><style>body{margin:0}</style><body>'
    page.write_text(f"{head}{svg.decode()}<script>{SCRIPT}</script>", encoding="utf-8")
    browser = shutil.which("chromium") or shutil.which("chromium-browser") or "chromium"
    shown = subprocess.run(
        [browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking",
         f"--user-data-dir={folder / 'profile'}", "--dump-dom", page.as_uri()],
        capture_output=True, text=True, timeout=120, check=True,
    )  # fmt: skip
    answer = re.search(r"=====(.*)=====", shown.stdout)
    assert answer, shown.stderr[-2000:]
    measured: dict[str, Any] = json.loads(answer[1])
    return measured


@pytest.mark.study
@pytest.mark.parametrize("board", [PLAIN_BOARD, FAN_BOARD], ids=["plain", "fan"])
def test_a_browser_measures_the_board(board, tmp_path):
    """Frets, strings, nut and saddle stand within a thousandth of a millimetre, the drawing has its size in mm."""
    drawing = board_sheet(board, Sheet(title="In a browser"), "mm")
    measured = measure(write_svg(drawing), tmp_path)
    ox, oy = drawing.origin
    lines = {f"string-{string.string}": (string.at_nut, string.at_saddle) for string in board.strings}
    for index, fret in enumerate(board.frets):
        lines[f"fret-{fret.fret or f'extra-{index}'}"] = (fret.slot.bass, fret.slot.treble)
    lines |= {"nut-line": board.nut, "saddle-line": board.saddle}

    assert [side * CSS_PIXEL for side in measured["size"]] == pytest.approx([drawing.width, drawing.height], abs=0.01)
    for name, ends in lines.items():
        for (left, top), (x, y) in zip(measured["found"][name], ends, strict=True):
            assert left * CSS_PIXEL - ox == pytest.approx(x, abs=MEASURED)
            assert drawing.height - top * CSS_PIXEL - oy == pytest.approx(y, abs=MEASURED)


@pytest.mark.study
def test_a_browsers_letters_leave_one_another_free(tmp_path):
    """With the font that the browser takes, no text's box meets another's, but for a hair of their empty margins."""
    boxes = measure(write_svg(board_sheet(FAN_BOARD, Sheet(title="In a browser"), "mm")), tmp_path)["texts"]
    hair = 3.0

    for index, (left, top, right, bottom) in enumerate(boxes):
        for other in boxes[index + 1 :]:
            apart = (
                left + hair > other[2] or other[0] + hair > right or top + hair > other[3] or other[1] + hair > bottom
            )
            assert apart
