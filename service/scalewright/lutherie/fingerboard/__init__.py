"""Fingerboards: the geometry of a board, from scales, strings and edges to every slot."""

from scalewright.lutherie.fingerboard.board import BoardSide, Fingerboard, draw_up
from scalewright.lutherie.fingerboard.fret_lines import BoardFret, FretSlot, StringCrossing
from scalewright.lutherie.fingerboard.markers import Marker
from scalewright.lutherie.fingerboard.plan import (
    BoardMargins,
    BoardWidths,
    PartialFret,
    Plan,
    Side,
    SlotPlan,
    StringPlan,
    SurfaceRadius,
)
from scalewright.lutherie.fingerboard.points import AcrossLine, Point, Segment
from scalewright.lutherie.fingerboard.string_lines import StringLine

__all__ = [
    "AcrossLine",
    "BoardFret",
    "BoardMargins",
    "BoardSide",
    "BoardWidths",
    "Fingerboard",
    "FretSlot",
    "Marker",
    "PartialFret",
    "Plan",
    "Point",
    "Segment",
    "Side",
    "SlotPlan",
    "StringCrossing",
    "StringLine",
    "StringPlan",
    "SurfaceRadius",
    "draw_up",
]
