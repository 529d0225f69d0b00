"""The list of lines that made no label, on pages at the end of the others."""

from collections.abc import Sequence

from scalewright.drawing.letters import wrap
from scalewright.drawing.page import Drawing, Text
from scalewright.drawing.sheet import MARGIN, PAPERS

__all__ = ["list_pages"]

_LETTERS = 3.2
_LEADING = 1.4


def list_pages(heading: str, lines: Sequence[str], paper: str) -> list[Drawing]:
    """Set lines of text on pages.

    Parameters
    ----------
    heading : str
        What stands above them on every page.
    lines : sequence of str
        The lines, broken where they are longer than the paper is wide.
    paper : {"A4", "letter"}
        What they are printed on, upright.

    Returns
    -------
    list of Drawing
        As many pages as it takes.
    """
    height, width = PAPERS[paper]
    step = _LETTERS * _LEADING
    room = int((height - 2.0 * MARGIN) / step) - 2
    broken = [part for line in lines for part in wrap(line, _LETTERS, width - 2.0 * MARGIN)]
    pages = []
    for first in range(0, len(broken), room):
        page = Drawing(width, height, title=heading)
        top = height - MARGIN - _LETTERS
        letters = page.layer("text")
        letters.append(Text(MARGIN, top, heading, 1.2 * _LETTERS, bold=True))
        for number, line in enumerate(broken[first : first + room], 2):
            letters.append(Text(MARGIN, top - number * step, line, _LETTERS))
        pages.append(page)
    return pages
