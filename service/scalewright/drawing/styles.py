"""Styles: how each layer of a drawing looks, told apart by width and dashes as well as by colour."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

__all__ = ["STYLES", "Style"]


@dataclass(frozen=True, slots=True)
class Style:
    """Look of the lines and letters of a layer."""

    colour: str
    """As #rrggbb."""
    width: float
    """Width of its lines; 0 for none. [mm]"""
    dashes: tuple[float, ...] = ()
    """Lengths of dashes and gaps, in turn; a full line without. [mm]"""
    filled: bool = False
    """Whether closed shapes are filled."""
    dxf_colour: int = 7
    """Number of the nearest of the nine basic colours of DXF; 7 is black on white."""


_INK = "#15242f"
_RUST = "#a63a1e"
_SLATE = "#5d6d78"
_SEA = "#1f6a86"
_MOSS = "#2d6a45"

STYLES: Mapping[str, Style] = MappingProxyType(
    {
        "outline": Style(_INK, 0.35),
        "centre-line": Style(_SEA, 0.18, (7.0, 1.5, 1.0, 1.5), dxf_colour=4),
        "strings": Style(_SLATE, 0.2, (3.0, 1.2), dxf_colour=8),
        "markers": Style(_MOSS, 0.18, dxf_colour=3),
        "kerfs": Style(_RUST, 0.16, dxf_colour=1),
        "frets": Style(_RUST, 0.08, dxf_colour=1),
        "ticks": Style(_INK, 0.13),
        "nut": Style(_INK, 0.5),
        "scale-end": Style(_SEA, 0.18, (0.8, 0.8), dxf_colour=4),
        "saddle": Style(_MOSS, 0.4, dxf_colour=3),
        "labels": Style(_INK, 0.0),
        "frame": Style(_SLATE, 0.13, dxf_colour=8),
        "bars": Style(_INK, 0.2),
        "bar-fills": Style(_INK, 0.0, filled=True),
        "text": Style(_INK, 0.0),
        "code": Style("#000000", 0.0, filled=True),
        "grid": Style("#b9c2c8", 0.1, dxf_colour=9),
        "axis": Style(_INK, 0.2),
        "tiles": Style(_SEA, 0.13, (2.0, 1.0), dxf_colour=4),
        "register": Style(_INK, 0.13),
        "page": Style(_INK, 0.0, filled=True),
        # Of the lines of a plot each has its own dashes and its own sign.
        "plot-0": Style("#a63a1e", 0.3, dxf_colour=1),
        "plot-1": Style("#1f6a86", 0.3, (3.0, 1.0), dxf_colour=4),
        "plot-2": Style("#2d6a45", 0.3, (1.0, 0.8), dxf_colour=3),
        "plot-3": Style("#5b3f86", 0.3, (5.0, 1.0, 1.0, 1.0), dxf_colour=6),
        "plot-4": Style("#7a5a00", 0.3, (2.0, 2.0), dxf_colour=2),
        "plot-5": Style("#15242f", 0.3, (6.0, 2.0), dxf_colour=7),
        "band": Style("#e4eaed", 0.0, filled=True),
    }
)
"""Look of every layer, by name; in the order in which they are drawn."""
