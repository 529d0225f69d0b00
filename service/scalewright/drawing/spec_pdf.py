"""The spec sheet on paper: one page with all that the web page has."""

from collections.abc import Sequence
from functools import partial

from scalewright.drawing.board_sheet import plan_of_board
from scalewright.drawing.language import Language
from scalewright.drawing.letters import clip_text, text_width, wrap
from scalewright.drawing.moving import moved
from scalewright.drawing.page import Drawing, Line, Text, Texts
from scalewright.drawing.pdf import write_pdf
from scalewright.drawing.sheet import MARGIN, PAPERS
from scalewright.drawing.spec_words import SheetSentences, large_scale, sentences_of
from scalewright.lutherie.errors import PaperError
from scalewright.lutherie.fingerboard import Fingerboard
from scalewright.lutherie.spec_sheet import SheetFret, SpecSheet

__all__ = ["spec_drawing", "write_spec_pdf"]

_LARGEST, _LEAST = 3.2, 1.9
"""Sizes of the letters, as large as all of them fit on one page. [mm]"""
_LEADING = 1.35
_GAP = 7.0
_AROUND = 3.0


def write_spec_pdf(sheet: SpecSheet, language: Language, paper: str) -> bytes:
    """Write a spec sheet as one page.

    Parameters
    ----------
    sheet : SpecSheet
        What is known of the part.
    language : Language
        What it is written in.
    paper : {"A4", "letter"}
        What it is printed on, upright.

    Returns
    -------
    bytes
        The same for the same sheet.

    Raises
    ------
    PaperError
        It does not fit one page.
    """
    return write_pdf(spec_drawing(sheet, language, paper))


def spec_drawing(sheet: SpecSheet, language: Language, paper: str) -> Drawing:
    """Set a spec sheet on one page; see :func:`write_spec_pdf`."""
    height, width = PAPERS[paper]
    words = sentences_of(sheet, language)
    size = _LARGEST
    while size >= _LEAST:
        drawing = Drawing(width, height, title=sheet.plan.title or f"{language.say('sheet')} {sheet.id}")
        drawing.description = words.statement
        if _Setting(drawing, sheet, words, language, size).set() >= MARGIN:
            return drawing
        size -= 0.1
    message = "the sheet does not fit one page; give fewer strings or frets, or ask for HTML, which may be longer"
    raise PaperError(message, field=("part",))


class _Setting:
    """One try to set a sheet with letters of a size."""

    def __init__(
        self, drawing: Drawing, sheet: SpecSheet, words: SheetSentences, language: Language, size: float
    ) -> None:
        self.drawing, self.sheet, self.words, self.language, self.size = drawing, sheet, words, language, size
        self.room = drawing.width - 2.0 * MARGIN
        self.column = 0.5 * (self.room - _GAP)
        self.letters = drawing.layer("text")

    def set(self) -> float:
        """Set all; gives how far above the lower edge it ends, negative where it does not fit. [mm]"""
        plan = self.sheet.plan
        title = clip_text(plan.title or self.language.say("sheet"), 2.0 * self.size, self.room)
        top = self.drawing.height - MARGIN - 2.0 * self.size
        self.letters.append(Text(MARGIN, top, title, 2.0 * self.size, bold=True))
        top -= 0.8 * self.size
        top = self.paragraph(MARGIN, top, self.words.statement, self.room, bold=True)
        self.drawing.layer("frame").append(
            Line(MARGIN, top - 0.4 * self.size, MARGIN + self.room, top - 0.4 * self.size)
        )
        top -= self.size
        low = min(self.left(MARGIN, top), self.right(MARGIN + self.column + _GAP, top))
        return low if self.sheet.board is None else self.board(self.sheet.board, low - self.size)

    def left(self, x: float, top: float) -> float:
        """What is known of the part, and its strings."""
        say, sheet, plan = self.language.say, self.sheet, self.sheet.plan
        large = large_scale(sheet, self.language)
        bold = min(2.4 * self.size, self.column / text_width(large, 1.0))
        top = self.heading(x, top, say("true_scale"))
        self.letters.append(Text(x, top - 2.2 * self.size, large, bold, bold=True))
        top -= 3.2 * self.size
        facts = [
            (say("true_scale"), self.words.true_scale),
            (say("obtained"), self.words.obtained),
            (say("spacing_rule"), self.words.rule),
            (say("layout_scale"), self.words.layout_scale),
            (say("part"), say(f"kind_{sheet.kind}")),
            (say("stock_number"), sheet.id),
            (say("identifiers"), ", ".join(plan.identifiers)),
            (say("revision"), plan.revision),
            (say("date"), plan.date or ""),
        ]
        for name, text in facts:
            if text:
                top = self.paragraph(x, top, f"{name}: {text}", self.column)
        for name, sentence in (("heading_label", self.words.label), ("heading_conformity", self.words.conformity)):
            if sentence is not None:
                top = self.paragraph(x, self.heading(x, top, say(name)), sentence, self.column)
        for name, sentences in (("not_with", self.words.not_with), ("cautions", self.words.cautions)):
            top = self.heading(x, top, say(f"heading_{name}"))
            for sentence in sentences:
                top = self.paragraph(x, top, f"• {sentence}", self.column)
        if sheet.setbacks and plan.stringing is not None:
            top = self.heading(x, top, say("heading_setbacks"))
            named = plan.stringing.name or say("strings_unnamed")
            top = self.paragraph(x, top, say("setbacks_for", name=named), self.column)
            written = partial(self.language.length, unit=plan.unit, decimals=2)
            rows = [
                (str(one.string), one.pitch, written(one.saddle_setback), written(one.saddle_from_nut))
                for one in sheet.setbacks
            ]
            heads = (say("string"), say("pitch"), say("saddle_setback"), say("saddle_from_nut"))
            top = self.table(x, top, heads, rows, (0.14, 0.3, 0.64, 1.0))
        return top

    def right(self, x: float, top: float) -> float:
        """The table of the frets."""
        if not self.sheet.frets:
            return top
        say, number = self.language.say, self.language.number
        top = self.heading(x, top, say("heading_frets"))
        top = self.paragraph(x, top, say("from_nut"), self.column)

        def cells(row: SheetFret) -> tuple[str, ...]:
            return number(row.millimetres, 2), number(row.inches, 3), row.fraction

        heads: tuple[str, ...] = ("mm", "in", say("fraction"))
        ends: tuple[float, ...] = (0.14, 0.36, 0.58, 1.0)
        rows = [(str(row.fret), *cells(row)) for row in self.sheet.frets]
        if self.sheet.treble is not None:
            heads = (f"{say('bass')}, mm", "in", "1/64 in", f"{say('treble')}, mm", "in", "1/64 in")
            ends = (0.08, 0.26, 0.4, 0.55, 0.73, 0.86, 1.0)
            rows = [(*row, *cells(other)) for row, other in zip(rows, self.sheet.treble.frets, strict=True)]
        return self.table(x, top, (say("fret"), *heads), rows, ends)

    def heading(self, x: float, top: float, text: str) -> float:
        """A heading."""
        top -= 2.0 * self.size
        self.letters.append(Text(x, top, text, 1.15 * self.size, bold=True))
        return top - 0.3 * self.size

    def paragraph(self, x: float, top: float, text: str, room: float, *, bold: bool = False) -> float:
        """Lines of a paragraph."""
        for line in wrap(text, self.size, room):
            top -= self.size * _LEADING
            self.letters.append(Text(x, top, line, self.size, bold=bold))
        return top

    def table(
        self, x: float, top: float, heads: Sequence[str], rows: Sequence[Sequence[str]], ends: Sequence[float]
    ) -> float:
        """A table whose columns end at shares of the room."""
        rules = self.drawing.layer("grid")
        # The longest cell decides on the size of a column's letters.
        widest = [max(text_width(cell, self.size) for cell in column) for column in zip(*rows, strict=True)]
        begins = (0.0, *ends[:-1])
        rooms = [(end - begin) * self.column - 0.5 * self.size for begin, end in zip(begins, ends, strict=True)]
        for index, row in enumerate((heads, *rows)):
            top -= self.size * _LEADING
            for cell, end, room, width in zip(row, ends, rooms, widest, strict=True):
                longest = text_width(cell, self.size) if index == 0 else width
                size = self.size * min(1.0, room / max(longest, 1e-9))
                self.letters.append(Text(x + end * self.column, top, cell, size, "end", bold=index == 0))
            rules.append(Line(x, top - 0.25 * self.size, x + self.column, top - 0.25 * self.size))
        return top - 0.25 * self.size

    def board(self, board: Fingerboard, top: float) -> float:
        """The board to scale, as wide as the page allows."""
        points = [*board.outline, *board.saddle, *board.scale_end, *board.nut]
        xs, ys = [point.x for point in points], [point.y for point in points]
        factor = min(1.0, (self.room - 2.0 * _AROUND) / (max(xs) - min(xs)))
        high = factor * (max(ys) - min(ys)) + 2.0 * _AROUND
        top = self.heading(MARGIN, top, self.language.say("heading_board"))
        whole = Drawing(1.0, 1.0)
        plan_of_board(whole, board, self.sheet.plan.unit)
        dx, dy = MARGIN + _AROUND - factor * min(xs), top - high + _AROUND - factor * min(ys)
        for name, items in whole.layers.items():
            kept = [moved(item, dx, dy, factor) for item in items if not isinstance(item, Text | Texts)]
            self.drawing.layer(name).extend(kept)
        return top - high
