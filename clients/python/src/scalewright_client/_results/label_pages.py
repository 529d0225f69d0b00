"""Pages of labels."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Note

__all__ = ["LabelPages"]


@dataclass(frozen=True, slots=True)
class LabelPages:
    """How labels lie on pages."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    pages: int
    """How many pages there are."""
    columns: int
    """Labels side by side on a page."""
    rows: int
    """Labels one below the other on a page."""
    left: float
    """From the left edge of the paper to the first column. [unit]"""
    top: float
    """From the upper edge of the paper to the first row. [unit]"""
    codes: tuple[str, ...]
    """What the codes carry, label by label."""
    notes: tuple[Note, ...]
    """Cautions; the pages do not show them."""
