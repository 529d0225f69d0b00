"""The title block: what a drawing is, for whom and when, its check bars, and what to mind at the saw."""

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from scalewright.drawing.check_bars import BARS_HEIGHT, BARS_WIDTH, draw_check_bars
from scalewright.drawing.letters import clip_text, text_width, wrap
from scalewright.drawing.page import Drawing, Line, Texts
from scalewright.drawing.sheet import MARGIN, Sheet

__all__ = ["Paragraph", "TitleBlock", "draw_cover", "draw_title_block", "paragraphs_of", "set_title_block"]

_TITLE, _BODY = 6.0, 3.2
_LEADING = 1.45
_GAP = 6.0
_STEP = 5.0
_ROOM_FOR_THREE = 420.0
"""Width from which title, bars and cautions stand side by side. [mm]"""

Paragraph = tuple[tuple[str, ...], float, bool]
"""Lines of letters, their size, and whether they are bold."""


def paragraphs_of(sheet: Sheet, heading: str, sentences: Sequence[str], width: float) -> list[Paragraph]:
    """Title, identifiers, date and sentences as lines that fit a width."""
    blocks: list[Paragraph] = [(wrap(sheet.title or heading, _TITLE, width)[:3], _TITLE, True)]
    facts = [*([f"Date: {sheet.date}"] if sheet.date else []), *sheet.identifiers]
    blocks += [((clip_text(fact, _BODY, width),), _BODY, False) for fact in facts]
    blocks += [(_lines(sentence, width), _BODY, False) for sentence in sentences]
    return blocks


@lru_cache(maxsize=64)
def _lines(sentence: str, width: float) -> tuple[str, ...]:
    """Lines of a sentence of ours; most fit into one on a long board, and some come again."""
    return (sentence,) if text_width(sentence, _BODY) <= width else wrap(sentence, _BODY, width)


def _height(paragraphs: Sequence[Paragraph]) -> float:
    return sum(len(lines) * size * _LEADING + 0.4 * size for lines, size, _ in paragraphs)


class TitleBlock(NamedTuple):
    """A block whose lines are broken, ready to be drawn."""

    beside: bool
    """Whether all stands side by side."""
    left: list[Paragraph]
    """What the drawing is."""
    right: list[Paragraph]
    """What to mind."""
    width: float
    """Width of the block. [mm]"""
    height: float
    """Height of the block on a page. [mm]"""


def _room_beside(width: float) -> float:
    """Room for either column of letters where all stands side by side. [mm]"""
    return 0.5 * (width - BARS_WIDTH - 2.0 * _GAP)


def set_title_block(sheet: Sheet, heading: str, sentences: Sequence[str], caution: str, width: float) -> TitleBlock:
    """Break the lines of a block.

    Parameters
    ----------
    sheet : Sheet
        Title, identifiers and date.
    heading : str
        What stands for a title where there is none.
    sentences : sequence of str
        What is said about the thing drawn.
    caution : str
        What to mind.
    width : float
        Width of the block. [mm]

    Returns
    -------
    TitleBlock
        What to draw, and the height that it takes.
    """
    beside = width >= _ROOM_FOR_THREE
    # In steps, so that the same words are broken alike on boards of nearly the same length.
    room = _STEP * math.floor((_room_beside(width) if beside else width) / _STEP)
    left = paragraphs_of(sheet, heading, sentences, room)
    right: list[Paragraph] = [(wrap(caution, _BODY, room), _BODY, False)]
    if beside:
        height = max(_height(left), _height(right), BARS_HEIGHT) + _GAP
    else:
        height = _height(left) + _height(right) + BARS_HEIGHT + 2.5 * _GAP
    return TitleBlock(beside, left, right, width, height)


def draw_title_block(drawing: Drawing, block: TitleBlock, corner: tuple[float, float]) -> None:
    """Draw a block.

    Parameters
    ----------
    drawing : Drawing
        To draw on.
    block : TitleBlock
        The block.
    corner : pair of float
        Upper left corner of the block. [mm]
    """
    x, top = corner
    beside, left, right, width, _ = block
    drawing.layer("frame").append(Line(x, top, x + width, top))
    top -= 0.5 * _GAP
    if beside:
        _write(drawing, left, x, top)
        room = _room_beside(width)
        draw_check_bars(drawing, x + room + _GAP, top - BARS_HEIGHT + 1.0)
        _write(drawing, right, x + width - room, top)
    else:
        low = _write(drawing, left, x, top)
        draw_check_bars(drawing, x, low - BARS_HEIGHT - 0.5 * _GAP)
        _write(drawing, right, x, low - BARS_HEIGHT - 1.5 * _GAP)


def draw_cover(drawing: Drawing, sheet: Sheet, heading: str, sentences: Sequence[str], caution: str) -> None:
    """Draw the words of a block on a page of their own, as wide as it; the page has its bars already."""
    width = drawing.width - 2.0 * MARGIN
    paragraphs = paragraphs_of(sheet, heading, [*sentences, caution], width)
    _write(drawing, paragraphs, MARGIN, drawing.height - MARGIN)


def _write(drawing: Drawing, paragraphs: Sequence[Paragraph], x: float, top: float) -> float:
    """Write paragraphs below one another; the place below them."""
    letters = drawing.layer("text")
    for lines, size, bold in paragraphs:
        places: list[float] = []
        for _ in lines:
            top -= size * _LEADING
            places += (x, top + 0.3 * size)
        letters.append(Texts(places, lines, size, bold=bold))
        top -= 0.4 * size
    return top
