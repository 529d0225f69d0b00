"""The title block: what a drawing is, for whom and when, its check bars, and what to mind at the saw."""

from collections.abc import Sequence

from scalewright.drawing.check_bars import BARS_HEIGHT, BARS_WIDTH, draw_check_bars
from scalewright.drawing.letters import clip_text, wrap
from scalewright.drawing.page import Drawing, Line, Text
from scalewright.drawing.sheet import MARGIN, Sheet

__all__ = ["Paragraph", "block_height", "draw_cover", "draw_title_block", "paragraphs_of"]

_TITLE, _BODY = 6.0, 3.2
_LEADING = 1.45
_GAP = 6.0
_ROOM_FOR_THREE = 420.0
"""Width from which title, bars and cautions stand side by side. [mm]"""

Paragraph = tuple[tuple[str, ...], float, bool]
"""Lines of letters, their size, and whether they are bold."""


def paragraphs_of(sheet: Sheet, heading: str, sentences: Sequence[str], width: float) -> list[Paragraph]:
    """Title, identifiers, date and sentences as lines that fit a width."""
    blocks: list[Paragraph] = [(wrap(sheet.title or heading, _TITLE, width)[:3], _TITLE, True)]
    facts = [*([f"Date: {sheet.date}"] if sheet.date else []), *sheet.identifiers]
    blocks.extend(((clip_text(fact, _BODY, width),), _BODY, False) for fact in facts)
    blocks.extend((wrap(sentence, _BODY, width), _BODY, False) for sentence in sentences)
    return blocks


def _height(paragraphs: Sequence[Paragraph]) -> float:
    return sum(len(lines) * size * _LEADING + 0.4 * size for lines, size, _ in paragraphs)


def _columns(
    sheet: Sheet, heading: str, sentences: Sequence[str], caution: str, width: float
) -> tuple[bool, list[Paragraph], list[Paragraph]]:
    """Whether all stands side by side, what the drawing is, and what to mind."""
    beside = width >= _ROOM_FOR_THREE
    room = 0.5 * (width - BARS_WIDTH - 2.0 * _GAP) if beside else width
    cautions: list[Paragraph] = [(wrap(caution, _BODY, room), _BODY, False)]
    return beside, paragraphs_of(sheet, heading, sentences, room), cautions


def block_height(sheet: Sheet, heading: str, sentences: Sequence[str], caution: str, width: float) -> float:
    """Height of the block on a page. [mm]"""
    beside, left, right = _columns(sheet, heading, sentences, caution, width)
    if beside:
        return max(_height(left), _height(right), BARS_HEIGHT) + _GAP
    return _height(left) + _height(right) + BARS_HEIGHT + 2.5 * _GAP


def draw_title_block(
    drawing: Drawing,
    sheet: Sheet,
    heading: str,
    sentences: Sequence[str],
    caution: str,
    corner: tuple[float, float],
    width: float,
) -> None:
    """Draw the block.

    Parameters
    ----------
    drawing : Drawing
        To draw on.
    sheet : Sheet
        Title, identifiers and date.
    heading : str
        What stands for a title where there is none.
    sentences : sequence of str
        What is said about the thing drawn.
    caution : str
        What to mind.
    corner : pair of float
        Upper left corner of the block. [mm]
    width : float
        Width of the block. [mm]
    """
    x, top = corner
    beside, left, right = _columns(sheet, heading, sentences, caution, width)
    drawing.layer("frame").append(Line(x, top, x + width, top))
    top -= 0.5 * _GAP
    if beside:
        _write(drawing, left, x, top)
        room = 0.5 * (width - BARS_WIDTH - 2.0 * _GAP)
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
        for line in lines:
            top -= size * _LEADING
            letters.append(Text(x, top + 0.3 * size, line, size, "start", 0.0, bold))
        top -= 0.4 * size
    return top
