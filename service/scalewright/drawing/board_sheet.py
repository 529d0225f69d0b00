"""The board sheet: a fingerboard at full size with its numbers, as a template and as a picture."""

import itertools
import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple, TypeVar

from scalewright.drawing.check_bars import draw_check_bars
from scalewright.drawing.letters import text_width
from scalewright.drawing.page import Anchor, Circle, Drawing, Line, Path, Strokes, Text
from scalewright.drawing.sheet import MARGIN, PAPERS, Sheet
from scalewright.drawing.title_block import draw_cover, draw_title_block, set_title_block
from scalewright.lutherie.fingerboard import BoardFret, Fingerboard, Point
from scalewright.lutherie.fingerboard.points import meeting

__all__ = ["board_on_pages", "board_sheet", "in_words", "plan_of_board"]

_T = TypeVar("_T")

_HEADING = "Fingerboard"
_LEAST_WIDTH = 130.0
_NUMBER = 3.6
_DISTANCE = 2.8
_ASIDE = 2.0
"""From an edge of the board to the letters beside it. [mm]"""
_ROOM_BELOW, _ROOM_ABOVE, _ROOM_ABOVE_BOTH = 19.0, 11.0, 24.0
"""Room for letters below a board, and above it where they are the numbers of the frets, or distances as well. [mm]"""
_MARKER = 3.0
"""Radius of a position marker at most. [mm]"""
_TICK = 1.4
_CHORDS = tuple((share * 0.5**0.5, (0.5 - 0.5 * share * share) ** 0.5) for share in (-0.5, 0.0, 0.5))
"""Chords of a circle at 45 degrees: how far aside of its middle, and half as long, both ways alike. [radius]"""
_EIGHTH = 3.175
"""An eighth of an inch: twelve pixels of CSS. [mm]"""
_UNITS = {"mm": "millimetres", "in": "inches"}


def in_words(length: float, unit: str) -> str:
    """Length as letters on a drawing: hundredths of a millimetre, or thousandths of an inch."""
    return f"{length:.2f}" if unit == "mm" else f"{length / 25.4:.3f}"


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
    draw_title_block(drawing, block, (MARGIN, 0.6 * MARGIN + block.height))
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
    above = _ROOM_ABOVE_BOTH if _two_sided(board) else _ROOM_ABOVE
    return _Extent(min(xs) - 7.0, max(xs) + 10.0, min(ys) - _ROOM_BELOW, max(ys) + above)


def _sentences(board: Fingerboard, statement: str, unit: str) -> list[str]:
    """What stands in the title block about the board."""
    kerf = f"Kerf {in_words(board.plan.slots.kerf, unit)} {unit}"
    depth = board.frets[-1].slot.depth
    deep = "" if depth is None else f", slots {in_words(depth, unit)} {unit} deep below the surface"
    side = f"Numbers beside the board: distances from the zero line at the nut, in {_UNITS[unit]}"
    along = ", along the outer string on that side" if _two_sided(board) else ", along the centre line"
    return [
        statement,
        f"{kerf}{deep}. {side}{along if board.measured == 'centre_line' or _two_sided(board) else ''}.",
    ]


def _two_sided(board: Fingerboard) -> bool:
    """Whether the two sides of a board have numbers of their own."""
    return board.bass.rule != board.treble.rule or board.bass.layout_scale != board.treble.layout_scale


def plan_of_board(drawing: Drawing, board: Fingerboard, unit: str) -> None:
    """Draw the lines of a board and the letters beside them, at the drawing's origin."""
    ox, oy = drawing.origin
    (sx, sy), (ex, ey) = board.centre_line
    drawing.layer("outline").append(Path([(x + ox, y + oy) for x, y in board.outline], "board"))
    drawing.layer("centre-line").append(Line(sx + ox, sy + oy, ex + ox, ey + oy, "axis"))
    strings = drawing.layer("strings")
    for string in board.strings:
        (ax, ay), (bx, by) = string.at_nut, string.at_saddle
        strings.append(Line(ax + ox, ay + oy, bx + ox, by + oy, f"string-{string.string}"))
    _markers(drawing, board)
    kerfs, frets = drawing.layer("kerfs"), drawing.layer("frets")
    for index, fret in enumerate(board.frets):
        name = _name(fret, index)
        slot = fret.slot
        kerfs.append(Path(slot.corners(ox, oy), f"kerf-{name}"))
        (ax, ay), (bx, by) = slot.bass, slot.treble
        frets.append(Line(ax + ox, ay + oy, bx + ox, by + oy, f"fret-{name}"))
    for layer, line in (("nut", board.nut), ("scale-end", board.scale_end), ("saddle", board.saddle)):
        (ax, ay), (bx, by) = line
        drawing.layer(layer).append(Line(ax + ox, ay + oy, bx + ox, by + oy, f"{layer}-line"))
    _letters(drawing, board, unit)


def _name(fret: BoardFret, index: int) -> str:
    """Name of a fret in a drawing, safe whatever people call it."""
    return f"extra-{index}" if fret.place.fret is None else fret.place.name


def _markers(drawing: Drawing, board: Fingerboard) -> None:
    """Position markers, hatched."""
    ox, oy = drawing.origin
    layer = drawing.layer("markers")
    hatching: list[tuple[float, float, float, float]] = []
    places = {fret.place.fret: fret.on_centre_line for fret in board.frets} | {0: 0.0}
    for index, marker in enumerate(board.markers):
        radius = min(_MARKER, 0.3 * (places[marker.fret] - places[marker.fret - 1]))
        x, y = marker.at.x + ox, marker.at.y + oy
        layer.append(Circle(x, y, radius, f"marker-{marker.fret}-{index}"))
        for aside, along in _CHORDS:
            px, qx = aside * radius, along * radius
            hatching.append((x + px - qx, y - px - qx, x + px + qx, y - px + qx))
    if hatching:
        layer.append(Strokes(hatching))


def _letters(drawing: Drawing, board: Fingerboard, unit: str) -> None:
    """Numbers of frets above the board, distances below it, on both sides where they differ."""
    ox, oy = drawing.origin
    letters, ticks = drawing.layer("labels"), drawing.layer("ticks")
    up = 1.0 if board.handedness == "right" else -1.0
    two_sided = _two_sided(board)
    # The bass side lies below on a right-handed board, and above on a left-handed one.
    for side, sign in (("bass", -up), ("treble", up)):
        ends = _edge_ends(board, side)
        above = sign > 0.0
        offset = _TICK + _ASIDE
        if above:
            names = [fret.place.name for fret in board.frets]
            for name, (x, y) in _spaced(names, ends, [_number_width(name) for name in names]):
                letters.append(Text(x + ox, y + oy + offset, name, _NUMBER, "middle", 0.0, True))  # noqa: FBT003  (bold)
            offset += _NUMBER + 0.8
        if two_sided or not above:
            distances = [getattr(fret.from_zero, side) if two_sided else fret.on_centre_line for fret in board.frets]
            size = _size_for([x for x, _ in ends])
            anchor: Anchor = "start" if above else "end"
            for distance, (x, y) in _spaced(distances, ends, [1.15 * size] * len(ends)):
                place = x + ox + 0.35 * size, y + oy + sign * offset
                letters.append(Text(*place, in_words(distance, unit), size, anchor, 90.0))
        near, far = oy + sign * 0.4, oy + sign * (0.4 + _TICK)
        ticks.append(Strokes([(x + ox, y + near, x + ox, y + far) for x, y in ends]))
    _ends(drawing, board)


@lru_cache(maxsize=256)
def _number_width(name: str) -> float:
    """Room that the number of a fret takes; the same on every board. [mm]"""
    return max(text_width(name, _NUMBER), 1.0)


def _edge_ends(board: Fingerboard, side: str) -> list[Point]:
    """Where the frets' lines, prolonged, leave the board on one side."""
    first, second, third, fourth = board.outline
    # A slot that runs out of the board ends there; one that is blind or cut short does not.
    if side == "bass":
        return [fret.slot.bass if fret.slot.edges[0] else meeting(fret.line, (first, fourth)) for fret in board.frets]
    return [fret.slot.treble if fret.slot.edges[1] else meeting(fret.line, (second, third)) for fret in board.frets]


def _size_for(xs: Sequence[float]) -> float:
    """Size of letters that stand upright beside one another, as large as the nearest two allow, within reason."""
    gaps = [after - before for before, after in itertools.pairwise(xs)]
    return max(1.4, min(_DISTANCE, 0.85 * min(gaps, default=_DISTANCE)))


def _spaced(things: Sequence[_T], places: Sequence[Point], widths: Sequence[float]) -> list[tuple[_T, Point]]:
    """Things whose letters, centred at their places, leave one another free; those that would not are left out."""
    kept: list[tuple[_T, Point]] = []
    taken = -math.inf
    for thing, place, width in zip(things, places, widths, strict=True):
        x, half = place[0], 0.5 * width
        if x - half >= taken:
            kept.append((thing, place))
            taken = x + half
    return kept


def _ends(drawing: Drawing, board: Fingerboard) -> None:
    """Names of nut and saddle, and numbers of the strings."""
    ox, oy = drawing.origin
    letters = drawing.layer("labels")
    left = min(point.x for point in (*board.nut, *board.outline)) + ox
    middle = 0.5 * (board.nut.bass.y + board.nut.treble.y) + oy
    letters.append(Text(left - 2.5, middle, "nut end", _DISTANCE, "middle", 90.0))
    places = [string.at_saddle for string in board.strings]
    gap = min((abs(a.y - b.y) for a, b in itertools.pairwise(places)), default=4.0)
    size = min(_DISTANCE, 0.8 * gap)
    if size >= 1.2:
        letters.extend(
            Text(place.x + ox + 1.5, place.y + oy - 0.35 * size, str(string.string), size)
            for string, place in zip(board.strings, places, strict=True)
        )
    right = max(place.x for place in places) + ox + 1.5 + 2.0 * size + 3.0
    letters.append(Text(right, oy, "saddle", _DISTANCE, "middle", 90.0))
