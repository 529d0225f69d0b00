"""Sheets: what stands on a drawing beside its lines, and what paper it goes on."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

__all__ = ["FOOT", "LEAST_STEP", "MARGIN", "PAPERS", "PLAIN", "Sheet"]

PAPERS: Mapping[str, tuple[float, float]] = MappingProxyType({"A4": (297.0, 210.0), "letter": (279.4, 215.9)})
"""Sizes of paper, lying: ISO 216 A4, and 11 in by 8.5 in. [mm]"""

MARGIN = 10.0
"""What most printers leave white around a page: common practice, no source. [mm]"""


FOOT = 16.0
"""What the check bars and the page map take of the height of a page. [mm]"""

LEAST_STEP = 20.0
"""How much of the drawing a page has to bring that the one before it has not. [mm]"""


@dataclass(frozen=True, slots=True)
class Sheet:
    """What a person wants of a drawing."""

    title: str = ""
    """What it is called."""
    identifiers: tuple[str, ...] = ()
    """Numbers of orders, parts or drawings."""
    date: str | None = None
    """The day that it bears, as given."""
    page: tuple[float, float] | None = None
    """Width and height of a page of a drawing in several; None for one long sheet. [mm]"""
    overlap: float = 15.0
    """How far neighbouring pages overlap. [mm]"""
    pixels: int = 1600
    """Width of a picture in points."""

    @property
    def least_step(self) -> float:
        """How far a page goes beyond its overlap with the one before it, the lesser of both ways. [mm]"""
        if self.page is None:
            return 0.0
        return min(self.page[0] - 2.0 * MARGIN, self.page[1] - 2.0 * MARGIN - FOOT) - self.overlap


PLAIN = Sheet()
"""A drawing without a name."""
