"""Pages of labels: labels of one size side by side on paper, from a place on."""

from collections.abc import Sequence
from dataclasses import dataclass

from scalewright.drawing.label_sheet import FilledLabel, LabelOrder, draw_label, fill_labels
from scalewright.drawing.language import Language
from scalewright.drawing.moving import moved
from scalewright.drawing.page import Drawing
from scalewright.drawing.sheet import PAPERS
from scalewright.lutherie.errors import LutherieError, PaperError, refused_within
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.phrases import counted

__all__ = [
    "MOST_LABELS",
    "FilledPages",
    "LabelPages",
    "LabelPaper",
    "PageGrid",
    "fill_pages",
    "grid_of",
    "print_pages",
    "set_on_pages",
]

MOST_LABELS = 500
"""The most labels in one file."""


@dataclass(frozen=True, slots=True)
class PageGrid:
    """Places of labels on a page."""

    columns: int
    """Labels side by side."""
    rows: int
    """Labels one below the other."""
    left: float
    """From the left edge of the paper to the first column. [mm]"""
    top: float
    """From the upper edge of the paper to the first row. [mm]"""

    @property
    def places(self) -> int:
        """Labels on a page."""
        return self.columns * self.rows


@dataclass(frozen=True, slots=True)
class LabelPaper:
    """Label paper: labels of one size on sheets."""

    width: float
    """Of a label. [mm]"""
    height: float
    """Of a label. [mm]"""
    paper: str = "A4"
    """A4 or letter, upright."""
    start: int = 1
    """Place of the first label on the first page, counted along the rows from the upper left."""
    column_gap: float = 0.0
    """Between neighbours in a row. [mm]"""
    row_gap: float = 0.0
    """Between rows. [mm]"""
    left: float | None = None
    """From the left edge to the first column; None to centre the labels. [mm]"""
    top: float | None = None
    """From the upper edge to the first row; None to centre the labels. [mm]"""


@dataclass(frozen=True, slots=True)
class LabelPages:
    """Labels of one size that go on pages."""

    orders: Sequence[LabelOrder]
    """The labels, all of the size that the paper has."""
    paper: LabelPaper
    """What they go on."""


@dataclass(frozen=True, slots=True)
class FilledPages:
    """Pages of labels whose parts are known."""

    wanted: LabelPages
    """What is wanted."""
    grid: PageGrid
    """Places of labels on each page."""
    labels: Sequence[FilledLabel]
    """The labels, in their order."""

    @property
    def codes(self) -> list[str]:
        """What the labels' codes carry."""
        return [label.code for label in self.labels]

    @property
    def notes(self) -> list[Note]:
        """Cautions about what the labels state."""
        return [note for label in self.labels for note in label.notes]

    @property
    def pages(self) -> int:
        """How many pages there are."""
        return -(-(len(self.labels) + self.wanted.paper.start - 1) // self.grid.places)


def grid_of(wanted: LabelPaper) -> PageGrid:
    """Places of labels on a page.

    Parameters
    ----------
    wanted : LabelPaper
        Size, gaps and edges.

    Returns
    -------
    PageGrid
        As many columns and rows as the paper holds.

    Raises
    ------
    PaperError
        Not one label fits the paper, or the first place is none of the page's.
    """
    height, width = PAPERS[wanted.paper]
    columns = _count(width - (wanted.left or 0.0), wanted.width, wanted.column_gap)
    rows = _count(height - (wanted.top or 0.0), wanted.height, wanted.row_gap)
    if columns * rows == 0:
        message = f"no label of {wanted.width:g} mm by {wanted.height:g} mm fits this paper from these edges"
        raise PaperError(message, field=("size",))
    if wanted.start > columns * rows:
        message = f"a page has {counted(columns * rows, 'place')}, so the first label cannot have place {wanted.start}"
        raise PaperError(message, field=("start",), places=columns * rows)
    free_x = width - columns * wanted.width - (columns - 1) * wanted.column_gap
    free_y = height - rows * wanted.height - (rows - 1) * wanted.row_gap
    left = 0.5 * free_x if wanted.left is None else wanted.left
    top = 0.5 * free_y if wanted.top is None else wanted.top
    return PageGrid(columns, rows, left, top)


def _count(room: float, size: float, gap: float) -> int:
    """How many labels a length holds; a hair's breadth too much is rounding."""
    return max(0, int((room + gap) / (size + gap) + 1e-9))


def fill_pages(wanted: LabelPages) -> FilledPages:
    """Find out what labels are to state.

    Parameters
    ----------
    wanted : LabelPages
        The labels and the paper.

    Returns
    -------
    FilledPages
        What :func:`print_pages` prints.

    Raises
    ------
    PaperError
        As :func:`grid_of` does.
    LutherieError
        What a label is refused for alone; its field begins with the label's place in the list.
    """
    grid = grid_of(wanted.paper)
    labels = []
    for index, label in enumerate(fill_labels(wanted.orders)):
        if isinstance(label, LutherieError):
            with refused_within(("labels", index)):
                raise label
        labels.append(label)
    return FilledPages(wanted, grid, labels)


def print_pages(filled: FilledPages, language: Language) -> list[Drawing]:
    """Set labels on pages.

    Parameters
    ----------
    filled : FilledPages
        The labels and the paper.
    language : Language
        What they are written in.

    Returns
    -------
    list of Drawing
        Each label where its place is.

    Raises
    ------
    LabelSizeError
        The labels are too small for the content of one of them.
    """
    return set_on_pages(filled.labels, filled.wanted.paper, language, filled.wanted.paper.start - 1)


def set_on_pages(labels: Sequence[FilledLabel], paper: LabelPaper, language: Language, taken: int = 0) -> list[Drawing]:
    """Set some labels on pages.

    Parameters
    ----------
    labels : sequence of FilledLabel
        The labels.
    paper : LabelPaper
        What they go on.
    language : Language
        What they are written in.
    taken : int
        Places of the first page before the first of these labels.

    Returns
    -------
    list of Drawing
        Each label where its place is.

    Raises
    ------
    LabelSizeError
        The labels are too small for the content of one of them.
    """
    grid = grid_of(paper)
    height, width = PAPERS[paper.paper]
    pages = [
        Drawing(width, height, title=language.say("labels")) for _ in range(-(-(taken + len(labels)) // grid.places))
    ]
    for place, label in enumerate(labels, taken):
        drawing = draw_label(label, language)
        page = pages[place // grid.places]
        row, column = divmod(place % grid.places, grid.columns)
        dx = grid.left + column * (paper.width + paper.column_gap)
        dy = height - grid.top - row * (paper.height + paper.row_gap) - paper.height
        for name, items in drawing.layers.items():
            page.layer(name).extend(moved(item, dx, dy) for item in items)
    return pages
