"""The label: a part's true scale in large letters, what else is known of it, and a code that a scanner reads."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from scalewright.drawing.language import Language, decimals_for
from scalewright.drawing.letters import text_width, wrap
from scalewright.drawing.page import Drawing, Figure, Stamps, Text
from scalewright.lutherie.errors import LabelSizeError, LutherieError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.part import Part, Source
from scalewright.lutherie.tag import Tag, TagUnit, notes_on, tag_of, tags_of
from scalewright.lutherie.tag_text import write_tag

__all__ = [
    "LARGEST",
    "PRESETS",
    "FilledLabel",
    "LabelOrder",
    "PrintedLabel",
    "draw_label",
    "fill_label",
    "fill_labels",
    "set_label",
]

PRESETS = {
    "40x20mm": (40.0, 20.0),
    "50x25mm": (50.0, 25.0),
    "57x32mm": (57.0, 32.0),
    "62x29mm": (62.0, 29.0),
    "70x36mm": (70.0, 36.0),
    "100x50mm": (100.0, 50.0),
    "2x1in": (50.8, 25.4),
    "2.25x1.25in": (57.15, 31.75),
    "4x2in": (101.6, 50.8),
}
"""Sizes that label stock is commonly cut to: common practice, no source. [mm]"""

LARGEST = 300.0
"""The longest side of a label. [mm]"""

_MARGIN = 1.5
_GAP = 2.0
_BYTES = (
    14, 26, 42, 62, 84, 106, 122, 152, 180, 213, 251, 287, 331, 362, 412, 450, 504, 560, 624, 666,
    711, 779, 857, 911, 997, 1059, 1125, 1190, 1264, 1370, 1452, 1538, 1628, 1722, 1809, 1911, 1989, 2099, 2213, 2331,
)  # fmt: skip
"""Bytes that codes of versions 1 to 40 hold where 15 % of them can be mended (ISO/IEC 18004, table 7)."""
_QUIET = 4
"""Modules left white around a code (ISO/IEC 18004)."""
_LEAST_MODULE = 0.25
"""What phones read from a hand's distance: common practice, no source. [mm]"""
_LARGEST_MODULE = 0.8
_LEAST_LETTERS, _LARGEST_LETTERS = 1.7, 5.0
"""From one line to the next is 1.3 times as much; smaller letters are hard to read. [mm]"""
_STEPS = round(10.0 * (_LARGEST_LETTERS - _LEAST_LETTERS))
"""Sizes of letters that are tried, a tenth of a millimetre apart, but for the smallest."""
_LEADING = 1.3
_LARGE = 2.0
"""How much larger the true scale is than the other letters, at the least."""
_LARGER = 3.2


@dataclass(frozen=True, slots=True)
class LabelOrder:
    """What label a person wants."""

    part: Part
    """The part."""
    unit: TagUnit
    """Unit that its lengths are written in."""
    beliefs: Beliefs
    """What identification reckons with."""
    width: float
    """[mm]"""
    height: float
    """[mm]"""
    dpi: int = 300
    """Dots per inch of the printer: a code's modules are whole numbers of dots."""
    title: str = ""
    """A line of the caller's own."""
    date: str | None = None
    """The day that it bears, as given."""
    url: str | None = None
    """What the code carries instead of the tag's text."""


@dataclass(frozen=True, slots=True)
class FilledLabel:
    """A label whose part is known."""

    order: LabelOrder
    """What is wanted."""
    tag: Tag
    """What it states."""
    source: Source
    """What the true scale is known from."""

    @property
    def notes(self) -> list[Note]:
        """Cautions about what it states."""
        return notes_on(self.order.part, self.tag, self.source)

    @property
    def code(self) -> str:
        """What its code carries."""
        return write_tag(self.tag) if self.order.url is None else self.order.url


@dataclass(frozen=True, slots=True)
class PrintedLabel:
    """What stands on a label."""

    code: str
    """What its code carries."""
    module: float
    """Side of one square of the code. [mm]"""
    lines: list[str]
    """Its letters, line by line."""
    width: float
    """[mm]"""
    height: float
    """[mm]"""
    language: str
    """Tag of the language it is written in."""


@dataclass(frozen=True, slots=True)
class _Layout:
    """Where all stands."""

    dot: float
    module: float
    letters: float
    large: float
    lines: tuple[str, ...]
    beside: bool


def fill_label(order: LabelOrder) -> FilledLabel:
    """Find out what a label is to state; raises what :func:`scalewright.lutherie.tag.tag_of` does."""
    return FilledLabel(order, *tag_of(order.part, order.unit, order.beliefs))


def fill_labels(orders: Sequence[LabelOrder]) -> list[FilledLabel | LutherieError]:
    """The same for many at once; a refusal stands where :func:`fill_label` would raise it."""
    found = tags_of([(order.part, order.unit, order.beliefs) for order in orders])
    return [
        told if isinstance(told, LutherieError) else FilledLabel(order, *told)
        for order, told in zip(orders, found, strict=True)
    ]


def set_label(label: FilledLabel, language: Language) -> PrintedLabel:
    """Say what stands on a label.

    Parameters
    ----------
    label : FilledLabel
        What is wanted, and what is known.
    language : Language
        What it is written in.

    Returns
    -------
    PrintedLabel
        With letters as large as fit.

    Raises
    ------
    LabelSizeError
        The label is too small for its content; names the smallest that works.
    """
    order = label.order
    large, lines = _words(label, language)
    found = _placed(label, large, lines)
    return PrintedLabel(
        code=label.code,
        module=found.module,
        lines=[large, *found.lines],
        width=order.width,
        height=order.height,
        language=language.tag,
    )


def draw_label(label: FilledLabel, language: Language) -> Drawing:
    """Draw a label at full size.

    Parameters
    ----------
    label : FilledLabel
        What is wanted, and what is known.
    language : Language
        What it is written in.

    Returns
    -------
    Drawing
        What :func:`set_label` says, and the code.

    Raises
    ------
    LabelSizeError
        As :func:`set_label` does.
    """
    order = label.order
    large, lines = _words(label, language)
    found = _placed(label, large, lines)
    drawing = Drawing(order.width, order.height, title=order.title or label.tag.id, description=f"{large} {lines[0]}")
    _draw(drawing, found, large, _modules(label.code))
    return drawing


def _placed(label: FilledLabel, large: str, lines: Sequence[str]) -> _Layout:
    """Where all stands on a label; a refusal where it does not fit."""
    order, across = label.order, _modules_across(len(label.code))
    found = _arrange(large, lines, across, order, order.width, order.height)
    if found is None:
        raise _too_small(large, lines, across, order)
    return found


def _modules_across(length: int) -> int:
    """Modules along a side of a code; its text has small letters, so that each takes a byte and the length tells."""
    return 21 + 4 * bisect_left(_BYTES, length)


def _modules(code: str) -> Sequence[bytearray]:
    """Rows of a code's modules, 1 for a dark one."""
    import segno  # noqa: PLC0415  (loaded when first used)

    # One mask for all: readers take any, and trying all eight takes five times as long.
    rows: Sequence[bytearray] = segno.make_qr(code, error="m", boost_error=False, mask=0).matrix
    return rows


def _words(label: FilledLabel, language: Language) -> tuple[str, list[str]]:
    """The true scale in large letters, and the other lines."""
    order, tag = label.order, label.tag
    digits = decimals_for(tag.uncertainty)
    first, second = ("mm", "in") if tag.written_in == "mm" else ("in", "mm")
    scales = [tag.true_scale, *([] if tag.treble_scale is None else [tag.treble_scale])]
    name = language.say("true_scale" if tag.treble_scale is None else "true_scale_fan")
    scale = f"{name} ({language.lengths(scales, second, digits)})"
    how = language.say({"readings": "measured", "definition": "taken_at_word", "label": "from_label"}[label.source])
    if tag.uncertainty is not None:
        how = f"{how}, u = {language.length(tag.uncertainty, first, digits)}"
    if tag.rule is None:
        rule = language.say("rule_unknown")
    elif tag.layout_scale is None:
        rule = language.rule(tag.rule)
    else:
        layouts = [tag.layout_scale, *([] if tag.treble_layout is None else [tag.treble_layout])]
        length = language.lengths(layouts, first, digits)
        rule = language.say("laid_out", rule=language.rule(tag.rule), length=length)
    if tag.square_fret is not None:
        square = language.say("square_fret", fret=tag.square_fret) if tag.square_fret else language.say("square_nut")
        rule = f"{rule}, {square}"
    number = language.say("number", id=tag.id)
    own = [line for line in (order.title, order.date) if line]
    return language.lengths(scales, first, digits), [scale, how, f"{rule[0].upper()}{rule[1:]}", number, *own]


def _arrange(
    large: str, lines: Sequence[str], modules: int, order: LabelOrder, width: float, height: float
) -> _Layout | None:
    """Largest letters and code that fit a label of a size, the code beside the letters or below them."""
    dot, least = _least_module(order, width)
    beside = width >= height
    along, across = width - 2.0 * _MARGIN, height - 2.0 * _MARGIN
    side = (modules + 2 * _QUIET) * least
    if side > min(along, across):
        return None
    # The code takes two fifths of the longer way at most where more than the least would fit.
    room = min(across if beside else along, max(side, 0.4 * (along if beside else across)))
    module = min(max(room // ((modules + 2 * _QUIET) * dot), 1.0) * dot, max(least, _LARGEST_MODULE // dot * dot))
    module = max(module, least)
    for one in (module, least):
        fitted = _fit(large, lines, *_room(modules, one, width, height))
        if fitted is not None:
            letters, big, wrapped = fitted
            return _Layout(dot, one, letters, big, wrapped, beside)
    return None


def _least_module(order: LabelOrder, width: float) -> tuple[float, float]:
    """A dot of the printer, and the smallest module that is read and is a whole number of them. [mm]"""
    dot = width / max(1.0, width * order.dpi // 25.4)  # a whole number of them makes the width
    return dot, max(1, -(-_LEAST_MODULE // dot)) * dot


def _room(modules: int, module: float, width: float, height: float) -> tuple[float, float]:
    """Width and height that a code leaves for the letters, beside it or above. [mm]"""
    side = (modules + 2 * _QUIET) * module
    along, across = width - 2.0 * _MARGIN, height - 2.0 * _MARGIN
    return (along - side - _GAP, across) if width >= height else (along, across - side - _GAP)


def _holds(large: str, lines: Sequence[str], modules: int, order: LabelOrder, width: float, height: float) -> bool:
    """Whether a label of a size holds its content at all: with the smallest code and letters, which need least room."""
    _, least = _least_module(order, width)
    if (modules + 2 * _QUIET) * least > min(width, height) - 2.0 * _MARGIN:
        return False
    return _fit_letters(large, lines, _LEAST_LETTERS, *_room(modules, least, width, height)) is not None


def _fit(large: str, lines: Sequence[str], width: float, height: float) -> tuple[float, float, tuple[str, ...]] | None:
    """Size of letters, of the large ones, and lines, as large as a room allows. [mm]"""
    smallest = _fit_letters(large, lines, _LEAST_LETTERS, width, height)
    if smallest is None:  # larger ones do not fit either
        return None
    for step in range(_STEPS):
        fitted = _fit_letters(large, lines, _LARGEST_LETTERS - 0.1 * step, width, height)
        if fitted is not None:
            return fitted
    return smallest


def _fit_letters(
    large: str, lines: Sequence[str], letters: float, width: float, height: float
) -> tuple[float, float, tuple[str, ...]] | None:
    """The same for letters of one size."""
    if width <= 0.0:
        return None
    wrapped = tuple(part for line in lines for part in wrap(line, letters, width))
    big = min(width / text_width(large, 1.0), _LARGER * letters, (height - len(wrapped) * letters * _LEADING))
    fits = all(text_width(line, letters) <= width + 1e-9 for line in wrapped)
    return (letters, big, wrapped) if big >= _LARGE * letters and fits else None


def _too_small(large: str, lines: Sequence[str], modules: int, order: LabelOrder) -> LabelSizeError:
    """Refusal that names the smallest label of the same proportions, and the smallest common size, that work."""
    size = None
    longer, ratio = max(order.width, order.height), order.height / order.width
    while longer < LARGEST:
        longer = min(float(int(longer) + 1), LARGEST)
        width = longer if ratio <= 1.0 else longer / ratio
        if _holds(large, lines, modules, order, width, width * ratio):
            size = width, width * ratio
            break
    names = [
        name
        for name, (width, height) in sorted(PRESETS.items(), key=lambda item: item[1][0] * item[1][1])
        if _holds(large, lines, modules, order, width, height)
    ]
    message = f"a label of {order.width:g} mm by {order.height:g} mm is too small for what is to stand on it"
    facts: dict[str, object] = {}
    if size is not None:
        message += f"; the smallest of these proportions that works is {size[0]:.4g} mm by {size[1]:.4g} mm"
        facts["smallest_mm"] = list(size)
    if names:
        message += f", and the smallest common size is {names[0]}"
        facts["smallest_common_size"] = names[0]
    if not facts:
        message += "; shorten the id or the title, or name the rule by a divisor instead of listed pitches"
    return LabelSizeError(message, field=("size",), **facts, **({"example": names[0]} if names else {}))


def _draw(drawing: Drawing, layout: _Layout, large: str, rows: Sequence[bytearray]) -> None:
    """Draw letters and code."""
    letters = drawing.layer("text")
    block = layout.large + len(layout.lines) * layout.letters * _LEADING
    side = (len(rows) + 2 * _QUIET) * layout.module
    high = drawing.height if layout.beside else drawing.height - side - _GAP
    low = 0.0 if layout.beside else side + _GAP
    top = low + 0.5 * (high + block) if layout.beside else drawing.height - _MARGIN
    letters.append(Text(_MARGIN, top - 0.8 * layout.large, large, layout.large, bold=True))
    top -= layout.large
    for line in layout.lines:
        top -= layout.letters * _LEADING
        letters.append(Text(_MARGIN, top + 0.3 * layout.letters, line, layout.letters))
    left = drawing.width - _MARGIN - side if layout.beside else 0.5 * (drawing.width - side)
    base = 0.5 * (drawing.height - side) if layout.beside else _MARGIN
    # On whole dots, counted from the lower left corner, so that a picture has no grey between light and dark.
    left = left // layout.dot * layout.dot + _QUIET * layout.module
    upper = base // layout.dot * layout.dot + side - _QUIET * layout.module
    drawing.layer("code").append(Stamps(_figure(rows, layout.module), (left, upper)))


def _figure(rows: Sequence[bytearray], module: float) -> Figure:
    """The dark runs of a code's rows, from its upper left corner. [mm]"""
    shapes = []
    for number, row in enumerate(rows):
        upper = -number * module
        low = upper - module
        for start, end in _runs(row):
            a, b = start * module, end * module
            shapes.append(((a, low), (b, low), (b, upper), (a, upper)))
    return Figure(tuple(shapes), closed=True)


def _runs(row: bytearray) -> list[tuple[int, int]]:
    """Starts and ends of the dark runs of a row."""
    found = []
    start = row.find(1)
    while start >= 0:
        end = row.find(0, start)
        end = len(row) if end < 0 else end
        found.append((start, end))
        start = row.find(1, end)
    return found
