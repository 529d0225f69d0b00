"""Pages: a large drawing cut into sheets of paper that overlap, with register marks, a page map and check bars."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from scalewright.drawing.check_bars import BARS_WIDTH, draw_check_bars
from scalewright.drawing.letters import wrap
from scalewright.drawing.page import Circle, Drawing, Item, Line, Path, Single, Strokes, Text
from scalewright.drawing.sheet import FOOT, MARGIN, Sheet
from scalewright.lutherie.errors import PaperError

__all__ = ["MOST_PAGES", "Tile", "bounds", "cut_into_pages", "register_marks"]

MOST_PAGES = 100
"""The most pages of one drawing."""

_ARM = 3.0
_MAP_WIDTH, _MAP_HEIGHT = 26.0, 9.0
_LETTERS = 2.6


@dataclass(frozen=True, slots=True)
class Tile:
    """One page of a drawing in several."""

    row: int
    """Counted from 1 at the top."""
    column: int
    """Counted from 1 on the left."""
    window: tuple[float, float, float, float]
    """Part of the drawing that it shows: left, lower, right and upper bound, from its zero point. [mm]"""
    shift: tuple[float, float]
    """Where the drawing's zero point lies on the page. [mm]"""
    foot: Drawing
    """Check bars, page map and number, on the page itself."""


def _cuts(length: float, window: float, overlap: float) -> int:
    """How many windows cover a length."""
    return 1 if length <= window else math.ceil((length - overlap) / (window - overlap) - 1e-9)


def cut_into_pages(drawing: Drawing, sheet: Sheet) -> list[Tile]:
    """Cut a drawing into pages.

    Parameters
    ----------
    drawing : Drawing
        The drawing.
    sheet : Sheet
        Its page and overlap.

    Returns
    -------
    list of Tile
        Row by row from the top, each row from the left.

    Raises
    ------
    PaperError
        A drawing of more than :data:`MOST_PAGES` pages.
    """
    page = sheet.page or (drawing.width, drawing.height)
    wide, high = page[0] - 2.0 * MARGIN, page[1] - 2.0 * MARGIN - FOOT
    columns, rows = _cuts(drawing.width, wide, sheet.overlap), _cuts(drawing.height, high, sheet.overlap)
    if columns * rows > MOST_PAGES:
        message = (
            f"this drawing would take {columns * rows} pages, and there may be {MOST_PAGES}; "
            "choose larger pages, a smaller overlap or one long sheet"
        )
        raise PaperError(message, field=("sheet", "paper"), pages=columns * rows)
    ox, oy = drawing.origin
    tiles = []
    for row in range(rows):
        for column in range(columns):
            left = column * (wide - sheet.overlap) - ox
            upper = drawing.height - row * (high - sheet.overlap) - oy
            foot = Drawing(page[0], page[1])
            _draw_foot(foot, (row, column), (rows, columns), drawing.title)
            tiles.append(
                Tile(
                    row=row + 1,
                    column=column + 1,
                    window=(left, upper - high, left + wide, upper),
                    shift=(MARGIN - left, MARGIN + FOOT + high - upper),
                    foot=foot,
                )
            )
    return tiles


def register_marks(drawing: Drawing, sheet: Sheet) -> Iterator[tuple[str, Item]]:
    """Marks in the middle of every overlap, the same on both pages that share it.

    Parameters
    ----------
    drawing : Drawing
        The drawing.
    sheet : Sheet
        Its page and overlap.

    Yields
    ------
    str, Item
        Layer and item, where they lie on the whole drawing. [mm]
    """
    page = sheet.page or (drawing.width, drawing.height)
    wide, high = page[0] - 2.0 * MARGIN, page[1] - 2.0 * MARGIN - FOOT
    columns, rows = _cuts(drawing.width, wide, sheet.overlap), _cuts(drawing.height, high, sheet.overlap)
    begin, top = -drawing.origin[0], drawing.height - drawing.origin[1]
    across = [begin + column * (wide - sheet.overlap) + 0.5 * sheet.overlap for column in range(1, columns)]
    down = [top - row * (high - sheet.overlap) - 0.5 * sheet.overlap for row in range(1, rows)]
    lower = min(top - drawing.height, top - rows * (high - sheet.overlap) - sheet.overlap)
    right = begin + columns * (wide - sheet.overlap) + sheet.overlap
    for x in across:
        yield "tiles", Line(x, lower, x, top)
    for y in down:
        yield "tiles", Line(begin, y, right, y)
    for x in across:
        for row in range(rows):
            upper = top - row * (high - sheet.overlap)
            for share in (0.12, 0.88):
                yield from _mark(x, upper - share * high, f"register-{x:.1f}-{row}-{share}")
    for y in down:
        for column in range(columns):
            left = begin + column * (wide - sheet.overlap)
            for share in (0.12, 0.88):
                yield from _mark(left + share * wide, y, f"register-{y:.1f}-{column}-{share}")


def _mark(x: float, y: float, name: str) -> Iterator[tuple[str, Item]]:
    yield "register", Line(x - _ARM, y, x + _ARM, y, name)
    yield "register", Line(x, y - _ARM, x, y + _ARM)
    yield "register", Circle(x, y, 0.5 * _ARM)


def _draw_foot(foot: Drawing, place: tuple[int, int], size: tuple[int, int], title: str) -> None:
    """Check bars, number and map of a page."""
    (row, column), (rows, columns) = place, size
    draw_check_bars(foot, MARGIN, MARGIN)
    x = MARGIN + BARS_WIDTH + 4.0
    number, total = row * columns + column + 1, rows * columns
    letters = foot.layer("text")
    letters.append(Text(x, MARGIN + 10.6, f"Page {number} of {total}", _LETTERS, bold=True))
    cell = min(_MAP_WIDTH / columns, _MAP_HEIGHT / rows, 5.0)
    frame, here = foot.layer("frame"), foot.layer("page")
    for r in range(rows):
        for c in range(columns):
            left, low = x + c * cell, MARGIN + (rows - 1 - r) * cell
            corners = ((left, low), (left + cell, low), (left + cell, low + cell), (left, low + cell))
            (here if (r, c) == place else frame).append(Path(corners))
    room = foot.width - 2.0 * MARGIN - BARS_WIDTH - 4.0 - _MAP_WIDTH - 4.0
    if room >= 40.0:
        advice = (
            "Cut along the line through the register marks, lay it on the same line of the next page, mark on mark, "
            "and glue."
        )
        lines = [*wrap(title, _LETTERS, room)[:1], *wrap(advice, _LETTERS, room)][:4]
        for index, line in enumerate(lines):
            letters.append(Text(x + _MAP_WIDTH + 4.0, MARGIN + 10.6 - 3.5 * index, line, _LETTERS))


def bounds(item: Single) -> tuple[float, float, float, float]:
    """Left, lower, right and upper bound of an item, with room for its letters. [mm]"""
    match item:
        case Line(x1, y1, x2, y2):
            return min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)
        case Strokes(lines):
            xs, ys = [x for line in lines for x in line[::2]], [y for line in lines for y in line[1::2]]
            return min(xs), min(ys), max(xs), max(ys)
        case Path(points):
            xs, ys = [x for x, _ in points], [y for _, y in points]
            return min(xs), min(ys), max(xs), max(ys)
        case Circle(x, y, radius):
            return x - radius, y - radius, x + radius, y + radius
        case Text(x, y, text, size):
            reach = size * (len(text) + 1.0)
            return x - reach, y - reach, x + reach, y + reach
