"""PDF: sheets to be printed at 100 %, one long one or pages that are glued together (ISO 32000)."""

import io
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from typing import TYPE_CHECKING

from scalewright.drawing.bidi import in_visual_order
from scalewright.drawing.fonts import font_file, with_known_letters
from scalewright.drawing.page import Circle, Drawing, Figure, Item, Line, Path, Stamps, Strokes, Text, singly
from scalewright.drawing.pages import bounds, cut_into_pages, register_marks
from scalewright.drawing.sheet import Sheet
from scalewright.drawing.styles import STYLES, Style
from scalewright.lutherie.errors import PaperError

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

__all__ = ["LONGEST_SHEET", "POINTS", "write_pdf", "write_pdf_pages", "write_pdf_sheets"]

POINTS = 72.0 / 25.4
"""Points in a millimetre."""

LONGEST_SHEET = 5080.0
"""The longest side of a page that readers are bound to show: 14 400 points (ISO 32000-1, annex C). [mm]"""

_FONT = "letters"
_CORNERS = 4


def write_pdf(drawing: Drawing) -> bytes:
    """Write a drawing at full size on one sheet.

    Parameters
    ----------
    drawing : Drawing
        What is drawn.

    Returns
    -------
    bytes
        The same for the same drawing.

    Raises
    ------
    PaperError
        A sheet too long.
    """
    longest = max(drawing.width, drawing.height)
    if longest > LONGEST_SHEET:
        message = (
            f"a sheet of {longest:.0f} mm is longer than the {LONGEST_SHEET:.0f} mm that a "
            "PDF may be; ask for pages, of A4 for instance"
        )
        raise PaperError(message, field=("sheet", "paper"), longest_mm=LONGEST_SHEET)
    canvas, buffer = _canvas(drawing)
    _add_page(canvas, drawing)
    canvas.save()
    return buffer.getvalue()


def write_pdf_pages(cover: Drawing, drawing: Drawing, sheet: Sheet) -> bytes:
    """Write a drawing at full size on pages that overlap.

    Parameters
    ----------
    cover : Drawing
        The first page, as large as the others.
    drawing : Drawing
        What is cut into pages.
    sheet : Sheet
        The page and the overlap.

    Returns
    -------
    bytes
        The same for the same drawing.

    Raises
    ------
    PaperError
        Too many pages.
    """
    tiles = cut_into_pages(drawing, sheet)
    marks: dict[str, list[Item]] = {}
    for layer, item in register_marks(drawing, sheet):
        marks.setdefault(layer, []).append(item)
    whole = {**drawing.layers, **marks}
    placed = {layer: [(item, bounds(item)) for item in singly(items)] for layer, items in whole.items()}
    canvas, buffer = _canvas(drawing)
    _add_page(canvas, cover)
    for tile in tiles:
        _begin_page(canvas, tile.foot)
        _draw(canvas, tile.foot.layers)
        left, low, right, high = tile.window
        canvas.translate(*tile.shift)
        window = canvas.beginPath()
        window.rect(left, low, right - left, high - low)
        canvas.clipPath(window, stroke=0, fill=0)
        shown = {
            layer: [item for item, (a, b, c, d) in items if a <= right and c >= left and b <= high and d >= low]
            for layer, items in placed.items()
        }
        _draw(canvas, shown)
        canvas.showPage()
    canvas.save()
    return buffer.getvalue()


def write_pdf_sheets(sheets: Sequence[Drawing], letters: str = "") -> bytes:
    """Write drawings as the pages of one file, each at full size.

    Parameters
    ----------
    sheets : sequence of Drawing
        What is drawn; the first names the file.
    letters : str
        Letters that the file's font has in any case, in this order; files with the same ones can be joined.

    Returns
    -------
    bytes
        The same for the same drawings.
    """
    canvas, buffer = _canvas(sheets[0])
    if letters:
        # A letter's number in the font is given when it is first set; this text is set and never drawn.
        unseen = canvas.beginText()
        unseen.setFont(_register_font(), 1.0)
        unseen.textOut(with_known_letters(letters))
    for sheet in sheets:
        _add_page(canvas, sheet)
    canvas.save()
    return buffer.getvalue()


def _add_page(canvas: "Canvas", page: Drawing) -> None:
    _begin_page(canvas, page)
    canvas.translate(*page.origin)
    _draw(canvas, page.layers)
    canvas.showPage()


def _begin_page(canvas: "Canvas", page: Drawing) -> None:
    canvas.setPageSize((page.width * POINTS, page.height * POINTS))
    canvas.scale(POINTS, POINTS)


@cache
def _register_font() -> str:
    from reportlab import rl_config  # noqa: PLC0415  (loaded when first used)
    from reportlab.pdfbase import pdfmetrics  # noqa: PLC0415  (the same)
    from reportlab.pdfbase.ttfonts import TTFont  # noqa: PLC0415  (the same)

    # Bytes as they are: as ASCII they would be a quarter more, and take longer than all else.
    rl_config.useA85 = 0
    pdfmetrics.registerFont(TTFont(_FONT, font_file()))
    return _FONT


def _canvas(drawing: Drawing) -> "tuple[Canvas, io.BytesIO]":
    from reportlab.pdfgen.canvas import Canvas  # noqa: PLC0415  (loaded when first used)

    _register_font()
    buffer = io.BytesIO()
    # Invariant: no clock, no random id. Drawn in colours that a black and white printer keeps apart.
    canvas = Canvas(buffer, invariant=1, pageCompression=1, initialFontName="Helvetica")
    canvas.setTitle(drawing.title)
    canvas.setSubject(drawing.description)
    canvas.setCreator("Scalewright")
    canvas.setAuthor("Scalewright")
    canvas.setViewerPreference("PrintScaling", "None")
    return canvas, buffer


def _draw(canvas: "Canvas", layers: Mapping[str, Sequence[Item]]) -> None:
    """Draw layers in millimetres."""
    for name, items in layers.items():
        if items:
            style = STYLES[name]
            _take(canvas, style)
            _items(canvas, items, style)


def _take(canvas: "Canvas", style: Style) -> None:
    red, green, blue = (int(style.colour[at : at + 2], 16) / 255.0 for at in (1, 3, 5))
    canvas.setStrokeColorRGB(red, green, blue)
    canvas.setFillColorRGB(red, green, blue)
    canvas.setLineWidth(style.width)
    canvas.setDash(list(style.dashes))


def _items(canvas: "Canvas", items: Iterable[Item], style: Style) -> None:
    fill, stroke = int(style.filled), int(style.width > 0.0)
    for several in items:
        if isinstance(several, Stamps) and fill and not stroke:
            for x, y in zip(several.places[::2], several.places[1::2], strict=True):
                canvas.addLiteral(_filled(several.figure, x, y))
            continue
        _singles(canvas, several, stroke, fill)


def _filled(figure: Figure, x: float, y: float) -> str:
    """Operators that fill a figure at a place, at one go. [mm]"""
    numbers: list[float] = [x, y]
    form = ["q 1 0 0 1 %.4f %.4f cm"]
    for line in figure.lines:
        (left, low), *others = line
        if len(line) == _CORNERS and line[1][1] == low and line[2] == (line[1][0], line[3][1]) and line[3][0] == left:
            form.append("%.4f %.4f %.4f %.4f re")
            numbers += (left, low, line[2][0] - left, line[2][1] - low)
        else:
            form += ["%.4f %.4f m", *["%.4f %.4f l"] * len(others), "h"]
            numbers += [place for point in line for place in point]
    return " ".join([*form, "f Q"]) % tuple(numbers)


def _singles(canvas: "Canvas", items: Item, stroke: int, fill: int) -> None:
    """Draw things one by one."""
    for item in singly([items]):
        match item:
            case Line(x1, y1, x2, y2):
                canvas.line(x1, y1, x2, y2)
            case Strokes(lines):
                canvas.lines(lines)
            case Path(points, closed=closed):
                path = canvas.beginPath()
                path.moveTo(*points[0])
                for point in points[1:]:
                    path.lineTo(*point)
                if closed:
                    path.close()
                canvas.drawPath(path, stroke=stroke, fill=fill)
            case Circle(x, y, radius):
                canvas.circle(x, y, radius, stroke=stroke, fill=fill)
            case Text():
                _text(canvas, item)


def _text(canvas: "Canvas", item: Text) -> None:
    text = in_visual_order(with_known_letters(item.text))
    if not text:
        return
    canvas.saveState()
    canvas.translate(item.x, item.y)
    if item.turn:
        canvas.rotate(item.turn)
    canvas.setFont(_FONT, item.size)
    width = canvas.stringWidth(text, _FONT, item.size)
    letters = canvas.beginText(-{"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor] * width, 0.0)
    if item.bold:
        # The font comes in one weight; its letters are drawn with their outline.
        canvas.setLineWidth(0.035 * item.size)
        canvas.setDash([])
        letters.setTextRenderMode(2)
    letters.textOut(text)
    canvas.drawText(letters)
    canvas.restoreState()
