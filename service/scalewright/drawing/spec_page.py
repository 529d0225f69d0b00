"""The spec sheet as a web page, or as a part of one: semantic HTML with a style sheet of its own."""

import re
from functools import cache
from importlib import resources
from typing import TYPE_CHECKING

from scalewright.drawing.board_sheet import plan_of_board
from scalewright.drawing.language import Language
from scalewright.drawing.page import Drawing
from scalewright.drawing.spec_words import large_scale, sentences_of
from scalewright.drawing.svg import write_svg
from scalewright.lutherie.fingerboard import Fingerboard
from scalewright.lutherie.spec_sheet import SpecSheet

if TYPE_CHECKING:
    from jinja2 import Template

__all__ = ["write_spec_page"]

_ROOM = 16.0
"""White around the board. [mm]"""
_BELOW = 20.0


def write_spec_page(sheet: SpecSheet, language: Language, *, whole: bool) -> bytes:
    """Write a spec sheet.

    Parameters
    ----------
    sheet : SpecSheet
        What is known of the part.
    language : Language
        What it is written in.
    whole : bool
        Whether as a page, or as a fragment to be put into one.

    Returns
    -------
    bytes
        HTML in UTF-8, without scripts, and with nothing to be fetched.
    """
    from markupsafe import Markup  # noqa: PLC0415  (loaded when first used)

    page = _template().render(
        sheet=sheet,
        plan=sheet.plan,
        words=sentences_of(sheet, language),
        say=language,
        large=large_scale(sheet, language),
        css=Markup(_text("spec_sheet.css")),  # noqa: S704  (a file of ours)  # nosec B704
        drawing=None if sheet.board is None else Markup(_drawing(sheet.board, sheet.plan.unit)),  # noqa: S704  # nosec B704  (escaped)
        whole=whole,
    )
    return page.encode()


def _text(name: str) -> str:
    return (resources.files("scalewright.drawing") / "templates" / name).read_text(encoding="utf-8")


@cache
def _template() -> "Template":
    from jinja2 import Environment, StrictUndefined  # noqa: PLC0415  (loaded when first used)

    surroundings = Environment(autoescape=True, undefined=StrictUndefined)
    return surroundings.from_string(_text("spec_sheet.html"))


def _drawing(board: Fingerboard, unit: str) -> str:
    """Drawing of the board to scale, with ids that clash with none of the page around it."""
    points = [*board.outline, *board.saddle, *board.scale_end, *board.nut]
    xs, ys = [point.x for point in points], [point.y for point in points]
    width, height = max(xs) - min(xs) + 2.0 * _ROOM, max(ys) - min(ys) + _BELOW + _ROOM
    drawing = Drawing(width, height, origin=(_ROOM - min(xs), _BELOW - min(ys)))
    plan_of_board(drawing, board, unit)
    svg = write_svg(drawing).decode()
    return re.sub(r' id="([^"]*)"', r' id="scalewright-drawing-\1"', svg)
