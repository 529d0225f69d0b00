"""What stands on a printed label."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Note

__all__ = ["PrintedLabel"]


@dataclass(frozen=True, slots=True)
class PrintedLabel:
    """A label as it is printed; the drawing itself comes as SVG, PNG or PDF."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    code: str
    """What its code carries."""
    lines: tuple[str, ...]
    """Its letters, line by line, the true scale first."""
    width: float
    """Its width. [unit]"""
    height: float
    """Its height. [unit]"""
    module: float
    """Side of one square of the code. [unit]"""
    language: str
    """Language of its letters, by its tag."""
    language_known: bool
    """False where languages were asked for and none of them is known; it is in English then."""
    notes: tuple[Note, ...]
    """Cautions, in English; a drawing does not show them."""
