"""Fret lines and slots: where every fret lies across the board, and the wood that is cut away for it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from scalewright.lutherie.errors import ImpossibleBoardError
from scalewright.lutherie.fingerboard.places import FretCents, FretDistances
from scalewright.lutherie.fingerboard.plan import SlotPlan, SurfaceRadius
from scalewright.lutherie.fingerboard.points import AcrossLine, Point, crossing, turned_by
from scalewright.lutherie.fingerboard.string_lines import StringLine
from scalewright.lutherie.spacing import CENTS_PER_OCTAVE

__all__ = [
    "BoardFret",
    "FretSlot",
    "StringCrossing",
    "Surface",
    "on_line_at",
]


@dataclass(frozen=True, slots=True)
class StringCrossing:
    """Where a fret crosses one string."""

    string: int
    """Number of the string; 1 is the highest."""
    at: Point
    """The place on the board."""
    from_zero: float
    """From the zero line, along the string as the plan measures. [mm]"""
    off_own_rule: float | None
    """How far that is from where the rule puts the fret on this string's own scale; None for unequal rules. [mm]"""
    cents: float
    """1200 log2 of scale over what is left of it, for an ideal string. [cent]"""


class FretSlot(NamedTuple):
    """The slot of a fret."""

    bass: Point
    """Middle of its end on the bass side."""
    treble: Point
    """Middle of its end on the treble side."""
    near_edge: AcrossLine
    """Edge of the kerf on the side of the nut."""
    far_edge: AcrossLine
    """Edge of the kerf on the side of the bridge."""
    length: float
    """Length of its middle line. [mm]"""
    plan: SlotPlan
    """How it is cut."""
    surface: "Surface | None"
    """How the surface is rounded; None for a flat board."""

    @property
    def depth(self) -> float | None:
        """Depth below the surface, the same all along; None where no tang was given. [mm]"""
        return self.plan.depth

    @property
    def drop(self) -> float:
        """How much lower the rounded surface lies at the slot's ends than in its middle. [mm]"""
        return 0.0 if self.surface is None else max(map(self.surface.drop_at, (self.bass, self.treble)))

    @property
    def flat_depth(self) -> float | None:
        """Depth in the middle of the board of a slot whose bottom is flat; None without a tang. [mm]"""
        return None if self.depth is None else self.depth + self.drop


class BoardFret(NamedTuple):
    """One fret of a board."""

    name: str
    """Its number, or what an extra fret is called."""
    fret: int | None
    """Its number by the rule; None for an extra fret."""
    cents: FretCents
    """What the rule of either side intends."""
    from_zero: FretDistances
    """Distance from the zero line along the outer strings."""
    first_string: int
    """The string nearest to string 1 that it crosses."""
    last_string: int
    """The string farthest from string 1 that it crosses."""
    on_centre_line: float
    """Where it crosses the centre line, from the zero line there. [mm]"""
    line: AcrossLine
    """Its crossings with the outer strings."""
    slot: FretSlot
    """Its slot."""
    strings: Sequence[StringLine]
    """All strings of the board, string 1 first."""
    share: float | None
    """Where the rule puts it on every string's own scale; None where the rules of the outer strings differ. [-]"""

    @property
    def angle_degrees(self) -> float:
        """How far it leans from square, positive where its bass end is nearer to the bridge. [degree]"""
        return turned_by(self.line)

    @property
    def radius(self) -> float | None:
        """Radius that the fretwire is bent to, along its own line; None for a flat board. [mm]"""
        surface = self.slot.surface
        if surface is None:
            return None
        # Along a line that leans by an angle, a cylinder of radius R is as round as a circle of R / cos^2.
        return surface.radius_at(self.on_centre_line) / math.cos(math.radians(self.angle_degrees)) ** 2

    @property
    def crossings(self) -> list[StringCrossing]:
        """Where it crosses its strings, string 1 first."""
        crossed = self.strings[self.first_string - 1 : self.last_string]
        return [_cross(string, self.line, self.share) for string in crossed]


def _cross(string: StringLine, line: AcrossLine, share: float | None) -> StringCrossing:
    zero, end = string.at_zero, string.at_scale_end
    along = crossing(line, (zero, end))
    return StringCrossing(
        string=string.string,
        at=Point(zero.x + along * (end.x - zero.x), zero.y + along * (end.y - zero.y)),
        from_zero=along * string.scale,
        off_own_rule=None if share is None else (along - share) * string.scale,
        cents=-CENTS_PER_OCTAVE * math.log2(1.0 - along),
    )


class Surface(NamedTuple):
    """The rounded surface of a board."""

    radius: SurfaceRadius
    """Radii at the zero line and at the last fret."""
    last: float
    """Where the last fret crosses the centre line. [mm]"""

    def radius_at(self, x: float) -> float:
        """Radius at a place along the board. [mm]"""
        return self.radius.nut + (self.radius.last_fret - self.radius.nut) * x / self.last

    def drop_at(self, point: Point) -> float:
        """How much lower the surface lies at a place than on the centre line beside it. [mm]"""
        radius = self.radius_at(point.x)
        if radius <= 0.0:
            message = (
                "the surface is a cone that comes to a point before the end of the board; make its radii more alike"
            )
            raise ImpossibleBoardError(message, field=("radius",))
        if radius <= abs(point.y):
            message = (
                f"a surface with a radius of {radius:.1f} mm cannot reach {abs(point.y):.1f} mm from its centre line; "
                "make the radius larger"
            )
            raise ImpossibleBoardError(message, field=("radius",))
        # Not radius - sqrt(...), whose digits cancel.
        return point.y * point.y / (radius + math.sqrt(radius * radius - point.y * point.y))


def on_line_at(line: tuple[Point, Point], y: float) -> float:
    """Place along the board of a line, prolonged, at a distance from the centre line. [mm]"""
    (ax, ay), (bx, by) = line
    ay, by = ay - y, by - y
    return ax - ay * (bx - ax) / (by - ay)
