"""The board sheet: a fingerboard at full size with its numbers, as a template and as a picture."""

import itertools
import math
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from scalewright.drawing.board_letters import ROOM_BELOW, draw_letters, in_words, room_above, two_sided
from scalewright.drawing.check_bars import draw_check_bars
from scalewright.drawing.page import Circles, Drawing, Figure, Line, Lines, Path, Shapes, Stamps
from scalewright.drawing.sheet import MARGIN, PAPERS, Sheet
from scalewright.drawing.title_block import draw_cover, draw_title_block, set_title_block
from scalewright.lutherie.fingerboard import Fingerboard
from scalewright.lutherie.fingerboard.plan import MOST_BOARD_STRINGS

__all__ = ["board_on_pages", "board_sheet", "plan_of_board"]

_HEADING = "Fingerboard"
_LEAST_WIDTH = 130.0
_MARKER = 3.0
"""Radius of a position marker at most. [mm]"""
_CHORDS = tuple((share * 0.5**0.5, (0.5 - 0.5 * share * share) ** 0.5) for share in (-0.5, 0.0, 0.5))
"""Chords of a circle at 45 degrees: how far aside of its middle, and half as long, both ways alike. [radius]"""
_STRING_NAMES = tuple(f"string-{number}" for number in range(1, MOST_BOARD_STRINGS + 1))
_EIGHTH = 3.175
"""An eighth of an inch: twelve pixels of CSS. [mm]"""
_UNITS = {"mm": "millimetres", "in": "inches"}


def board_sheet(board: Fingerboard, sheet: Sheet, unit: str) -> Drawing:
    """Draw a board at full size, with a title block below it.

    Parameters
    ----------
    board : Fingerboard
        The board.
    sheet : Sheet
        Title, identifiers and date.
    unit : {"mm", "in"}
        Unit of the numbers on the drawing.

    Returns
    -------
    Drawing
        As large as it needs to be.
    """
    extent = _extent(board)
    room = max(extent.right - extent.left, _LEAST_WIDTH)
    statement = board.statement
    block = set_title_block(sheet, _HEADING, _sentences(board, statement, unit), board.notes[0].text, room)
    drawing = _begin(sheet, statement, extent, room, block.height)
    plan_of_board(drawing, board, unit)
    ox, oy = drawing.origin
    draw_title_block(drawing, block, (MARGIN - ox, 0.6 * MARGIN + block.height - oy))
    return drawing


def board_on_pages(board: Fingerboard, sheet: Sheet, unit: str) -> tuple[Drawing, Drawing]:
    """Draw a board at full size for pages that are glued together.

    Parameters
    ----------
    board : Fingerboard
        The board.
    sheet : Sheet
        Title, identifiers and date, and the page.
    unit : {"mm", "in"}
        Unit of the numbers on the drawing.

    Returns
    -------
    cover : Drawing
        A page with all words and the check bars.
    whole : Drawing
        The board without them, larger than a page.
    """
    cover = Drawing(*(sheet.page or PAPERS["A4"]), title=sheet.title or _HEADING)
    draw_check_bars(cover, MARGIN, MARGIN)
    statement, extent = board.statement, _extent(board)
    draw_cover(cover, sheet, _HEADING, _sentences(board, statement, unit), board.notes[0].text)
    whole = _begin(sheet, statement, extent, extent.right - extent.left, 0.0)
    plan_of_board(whole, board, unit)
    return cover, whole


class _Extent(NamedTuple):
    """Room that a board takes with its letters, from its own zero point. [mm]"""

    left: float
    right: float
    below: float
    above: float


def _begin(sheet: Sheet, statement: str, extent: _Extent, room: float, block: float) -> Drawing:
    """Begin a drawing of a board with room for a block below it."""
    left, right, below, above = extent
    return Drawing(
        width=_whole(room + 2.0 * MARGIN),
        height=_whole(block + above - below + 0.8 * MARGIN),
        title=sheet.title or _HEADING,
        description=statement,
        origin=(MARGIN - left + 0.5 * (room - (right - left)), 0.6 * MARGIN + block - below),
    )


def _whole(length: float) -> float:
    """Side of a page, made longer to a whole number of eighths of an inch.

    That is a whole number of a browser's pixels as well; it would round any other side, and scale the drawing by it.
    """
    return math.ceil(length / _EIGHTH) * _EIGHTH


def _extent(board: Fingerboard) -> _Extent:
    """Room that a board takes with its letters."""
    xs, ys = zip(*board.outline, *board.nut, *board.zero_line, *board.saddle, *board.scale_end, strict=True)
    return _Extent(min(xs) - 7.0, max(xs) + 10.0, min(ys) - ROOM_BELOW, max(ys) + room_above(board))


def _sentences(board: Fingerboard, statement: str, unit: str) -> list[str]:
    """What stands in the title block about the board."""
    kerf = f"Kerf {in_words([board.plan.slots.kerf], unit)[0]} {unit}"
    depth = board.plan.slots.depth
    deep = "" if depth is None else f", slots {in_words([depth], unit)[0]} {unit} deep below the surface"
    if not two_sided(board):
        along = "along the centre line"
    elif board.measured == "string":
        along = "along the outer string on that side"
    else:
        along = "to the outer string on that side, parallel to the centre line"
    numbers = f"Numbers beside the board: distances from the zero line at the nut, {along}, in {_UNITS[unit]}."
    return [statement, f"{kerf}{deep}. {numbers}"]


def plan_of_board(drawing: Drawing, board: Fingerboard, unit: str) -> None:
    """Draw the lines of a board and the letters beside them."""
    drawing.layer("outline").append(Path(board.outline, "board"))
    drawing.layer("centre-line").append(Line(*board.centre_line.start, *board.centre_line.end, "axis"))
    ends = _in_turn((*string.at_nut, *string.at_saddle) for string in board.strings)
    drawing.layer("strings").append(Lines(ends, _STRING_NAMES[: len(board.strings)]))
    _markers(drawing, board)
    columns = board.columns
    kerf_names, fret_names = _names(columns.places.names, columns.places.numbers)
    drawing.layer("kerfs").append(Shapes(_in_turn(columns.corners), kerf_names))
    drawing.layer("frets").append(Lines(_in_turn(columns.slots), fret_names))
    for layer, (bass, treble) in (("nut", board.nut), ("scale-end", board.scale_end), ("saddle", board.saddle)):
        drawing.layer(layer).append(Line(*bass, *treble, f"{layer}-line"))
    draw_letters(drawing, board, unit)


def _in_turn(rows: Iterable[Iterable[float]]) -> list[float]:
    """Numbers of rows one after the other."""
    return list(itertools.chain.from_iterable(rows))


@lru_cache(maxsize=256)
def _names(names: tuple[str, ...], numbers: tuple[int | None, ...]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Names of kerfs and frets in a drawing, safe whatever people call them; few boards have others."""
    safe = [f"extra-{index}" if numbers[index] is None else name for index, name in enumerate(names)]
    return tuple(f"kerf-{name}" for name in safe), tuple(f"fret-{name}" for name in safe)


def _markers(drawing: Drawing, board: Fingerboard) -> None:
    """Position markers, hatched."""
    if not board.markers:
        return
    middles: list[float] = []
    radii: list[float] = []
    hatched: dict[float, list[float]] = {}
    for _, middle, room in board.markers:
        # In tenths of a millimetre, so that few hatchings do for all boards.
        radius = min(_MARKER, math.floor(3.0 * room) / 10.0)
        radii.append(radius)
        middles += middle
        if radius not in hatched:
            hatched[radius] = []
        hatched[radius] += middle
    names = _marker_names(tuple([marker.fret for marker in board.markers]))
    layer = drawing.layer("markers")
    layer.append(Circles(middles, radii, names))
    layer += (Stamps(_hatching(radius), places) for radius, places in hatched.items())


@lru_cache(maxsize=256)
def _marker_names(frets: tuple[int, ...]) -> tuple[str, ...]:
    """Names of markers in a drawing; few boards have others."""
    return tuple(f"marker-{fret}-{index}" for index, fret in enumerate(frets))


@lru_cache(maxsize=256)
def _hatching(radius: float) -> Figure:
    """Chords of a circle at 45 degrees."""
    ends = [(share * radius, half * radius) for share, half in _CHORDS]
    return Figure(tuple(((aside - half, -aside - half), (aside + half, -aside + half)) for aside, half in ends))
