"""Fret lines and slots: where every fret lies across the board, and the wood that is cut away for it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from scalewright.lutherie.errors import FretsCollideError, ImpossibleBoardError
from scalewright.lutherie.fingerboard.places import FretCents, FretDistances, FretPlace
from scalewright.lutherie.fingerboard.plan import SlotPlan, SurfaceRadius
from scalewright.lutherie.fingerboard.points import AcrossLine, Point, crossing, meeting, turned_by
from scalewright.lutherie.fingerboard.string_lines import StringLine
from scalewright.lutherie.spacing import CENTS_PER_OCTAVE

__all__ = [
    "BoardFret",
    "FretSlot",
    "StringCrossing",
    "Surface",
    "cut_slot",
    "on_line_at",
    "refuse_collisions",
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
    length: float
    """Length of its middle line. [mm]"""
    plan: SlotPlan
    """How it is cut."""
    edges: tuple[tuple[Point, Point] | None, tuple[Point, Point] | None]
    """Edges of the board that it runs out of, on the bass and on the treble side; None where it ends before."""
    surface: "Surface | None"
    """How the surface is rounded; None for a flat board."""

    @property
    def near_edge(self) -> AcrossLine:
        """Edge of the kerf on the side of the nut."""
        first, second, _, _ = self.corners()
        return AcrossLine(Point(*first), Point(*second))

    @property
    def far_edge(self) -> AcrossLine:
        """Edge of the kerf on the side of the bridge."""
        _, _, third, fourth = self.corners()
        return AcrossLine(Point(*fourth), Point(*third))

    def corners(self, ox: float = 0.0, oy: float = 0.0) -> tuple[tuple[float, float], ...]:
        """Corners of the kerf: on the nut's side bass and treble, then on the bridge's side treble and bass.

        Parameters
        ----------
        ox, oy : float
            Where the zero point of the board lies. [mm]

        Returns
        -------
        four pairs of float
            Places. [mm]
        """
        (ax, ay), (bx, by) = self.bass, self.treble
        # Square to the slot, half a kerf towards the bridge.
        share = math.copysign(0.5 * self.plan.kerf, by - ay) / self.length
        dx, dy = share * (by - ay), -share * (bx - ax)
        px, py = _towards(self.edges[0], dx, dy)
        qx, qy = _towards(self.edges[1], dx, dy)
        return (
            (ax - px + ox, ay - py + oy),
            (bx - qx + ox, by - qy + oy),
            (bx + qx + ox, by + qy + oy),
            (ax + px + ox, ay + py + oy),
        )

    @property
    def depth(self) -> float | None:
        """Depth below the surface, the same all along; None where no tang was given. [mm]"""
        return None if self.plan.tang_depth is None else self.plan.tang_depth + self.plan.clearance

    @property
    def drop(self) -> float:
        """How much lower the rounded surface lies at the slot's ends than in its middle. [mm]"""
        return 0.0 if self.surface is None else max(map(self.surface.drop_at, (self.bass, self.treble)))

    @property
    def flat_depth(self) -> float | None:
        """Depth in the middle of the board of a slot whose bottom is flat; None without a tang. [mm]"""
        return None if self.depth is None else self.depth + self.drop


def _towards(edge: tuple[Point, Point] | None, dx: float, dy: float) -> tuple[float, float]:
    """Way from a slot's end to a corner of its kerf: along the edge that it runs out of, as far as the kerf is wide."""
    if edge is None:
        return dx, dy
    (cx, cy), (ex, ey) = edge
    ux, uy = ex - cx, ey - cy
    share = (dx * dx + dy * dy) / (ux * dx + uy * dy)
    return share * ux, share * uy


class BoardFret(NamedTuple):
    """One fret of a board."""

    place: FretPlace
    """What it is called, and where it stands by the rules."""
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
    def name(self) -> str:
        """Its number, or what an extra fret is called."""
        return self.place.name

    @property
    def fret(self) -> int | None:
        """Its number by the rule; None for an extra fret."""
        return self.place.fret

    @property
    def cents(self) -> FretCents:
        """What the rule of either side intends."""
        return self.place.cents

    @property
    def from_zero(self) -> FretDistances:
        """Distance from the zero line along the outer strings."""
        return self.place.distances

    @property
    def first_string(self) -> int:
        """The string nearest to string 1 that it crosses."""
        return self.place.first

    @property
    def last_string(self) -> int:
        """The string farthest from string 1 that it crosses."""
        return self.place.last

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
        if radius <= abs(point.y):
            message = (
                f"a surface with a radius of {radius:.1f} mm cannot reach {abs(point.y):.1f} mm from its centre line; "
                "make the radius larger"
            )
            raise ImpossibleBoardError(message, field=("radius",))
        # Not radius - sqrt(...), whose digits cancel.
        return point.y * point.y / (radius + math.sqrt(radius * radius - point.y * point.y))


def cut_slot(
    line: AcrossLine,
    edges: tuple[tuple[Point, Point], tuple[Point, Point]],
    open_ends: tuple[bool, bool],
    plan: SlotPlan,
    surface: Surface | None,
) -> FretSlot:
    """Slot of a fret.

    Parameters
    ----------
    line : AcrossLine
        The fret's line.
    edges : pair of pairs of Point
        What bounds the slot on the bass and on the treble side, two points of each line.
    open_ends : pair of bool
        Whether each of them is an edge of the board, which a slot may run out of; a partial fret ends before it.
    plan : SlotPlan
        Kerf, inset and depth.
    surface : Surface or None
        How the surface is rounded.

    Returns
    -------
    FretSlot
        The slot.

    Raises
    ------
    ImpossibleBoardError
        An inset that leaves no slot, or a surface too round for the board.
    """
    bass, treble = meeting(line, edges[0]), meeting(line, edges[1])
    ux, uy = treble.x - bass.x, treble.y - bass.y
    length = math.hypot(ux, uy)
    inset = plan.inset
    if inset == 0.0:
        bound = (edges[0] if open_ends[0] else None, edges[1] if open_ends[1] else None)
        return FretSlot(bass, treble, length, plan, bound, surface)
    ux, uy = ux / length, uy / length
    insets = (inset if open_ends[0] else 0.0, inset if open_ends[1] else 0.0)
    if insets[0] + insets[1] >= length:
        message = f"blind slots that end {plan.inset:g} mm before either edge leave nothing of {length:.2f} mm"
        raise ImpossibleBoardError(message, field=("slots", "inset"))
    bass = Point(bass.x + insets[0] * ux, bass.y + insets[0] * uy)
    treble = Point(treble.x - insets[1] * ux, treble.y - insets[1] * uy)
    return FretSlot(bass, treble, length - sum(insets), plan, (None, None), surface)


def refuse_collisions(frets: list[BoardFret], nut: AcrossLine, kerf: float) -> None:
    """Refuse frets that cross on the board, or whose slots run into one another.

    Parameters
    ----------
    frets : list of BoardFret
        Frets in the order of their places on the centre line.
    nut : AcrossLine
        Front edge of the nut, or the zero fret, between the edges of the board.
    kerf : float
        Width of the slots. [mm]

    Raises
    ------
    FretsCollideError
        Names the two.
    """
    whole = min(fret.place.first for fret in frets), max(fret.place.last for fret in frets)
    earlier: list[tuple[str, tuple[Point, Point], int, int]] = [("", nut, *whole)]
    for fret in frets:
        name, _, _, _, first, last = fret.place
        slot = fret.slot.bass, fret.slot.treble
        for other_name, other, other_first, other_last in reversed(earlier):
            if first > other_last or last < other_first:
                continue
            if not _well_apart(slot, other, kerf):
                _refuse_collision(name, slot, f"fret {other_name}" if other_name else "the nut", other, kerf)
            if (other_first, other_last) == whole:
                break
        earlier.append((name, slot, first, last))


def _well_apart(line: tuple[Point, Point], other: tuple[Point, Point], kerf: float) -> bool:
    """Whether two lines are so far apart that no more has to be found out."""
    (ax, ay), (bx, by) = line
    (cx, cy), (dx, dy) = other
    # Leaning by 45 degrees at most, a line gains no more along the board than across, and its gap is 0.7 of that.
    enough = 4.0 * kerf + 4.0 * max(abs(ay - cy), abs(by - dy))
    return ax - cx > enough and bx - dx > enough and abs(cx - dx) < abs(cy - dy)


def _refuse_collision(
    name: str, slot: tuple[Point, Point], neighbour: str, other: tuple[Point, Point], kerf: float
) -> None:
    """Refuse a slot that crosses or touches the one before it."""
    lean = math.cos(math.radians(turned_by(other)))
    gap = min((end.x - on_line_at(other, end.y)) * lean for end in slot)
    if gap <= kerf:
        what = "cross" if gap < 0.0 else "run into one another"
        message = (
            f"{neighbour} and fret {name} {what} on this board; "
            "choose scales that differ less, another square fret, fewer frets or a thinner saw"
        )
        raise FretsCollideError(message, field=("frets",), between=[neighbour, f"fret {name}"], gap_mm=gap)


def on_line_at(line: tuple[Point, Point], y: float) -> float:
    """Place along the board of a line, prolonged, at a distance from the centre line. [mm]"""
    (ax, ay), (bx, by) = line
    ay, by = ay - y, by - y
    return ax - ay * (bx - ax) / (by - ay)
