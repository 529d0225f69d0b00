"""Points and lines on a board, in millimetres: x along the centre line towards the bridge, y across."""

import math
from collections.abc import Callable
from functools import partial
from typing import NamedTuple, TypeAlias, cast

__all__ = [
    "AcrossLine",
    "Edges",
    "Point",
    "Segment",
    "across",
    "crossing",
    "meeting",
    "on_centre_line",
    "point",
    "shifted_along",
    "slope_of",
    "turned_by",
]


class Point(NamedTuple):
    """A place on the board."""

    x: float
    """Along the centre line, from the zero line of the pattern towards the bridge. [mm]"""
    y: float
    """Across, positive to the left as one looks from the nut to the bridge. [mm]"""


class AcrossLine(NamedTuple):
    """A line across the board, by its ends."""

    bass: Point
    """End on the side of the lowest string. [mm]"""
    treble: Point
    """End on the side of string 1. [mm]"""


point = cast(Callable[[tuple[float, float]], Point], partial(tuple.__new__, Point))
"""Point of a pair: as ``Point(*pair)``, in half the time; a board has some hundreds."""

across = cast(Callable[[tuple[Point, Point]], AcrossLine], partial(tuple.__new__, AcrossLine))
"""Line of its two ends, likewise."""


Edges: TypeAlias = tuple[tuple[Point, Point], tuple[Point, Point]]
"""Edges of a board, by two points of each, on the bass and on the treble side."""


class Segment(NamedTuple):
    """A line along the board, by its ends."""

    start: Point
    """End on the side of the nut. [mm]"""
    end: Point
    """End on the side of the bridge. [mm]"""


def meeting(line: tuple[Point, Point], other: tuple[Point, Point]) -> Point:
    """Where a line, prolonged, meets another.

    Parameters
    ----------
    line, other : pair of Point
        Two points of each; the two are not parallel.

    Returns
    -------
    Point
        On the first line: where its two points have the same x, this point has it too, to the last digit. [mm]
    """
    (ax, ay), (bx, by) = line
    (cx, cy), (dx, dy) = other
    ux, uy, vx, vy = bx - ax, by - ay, dx - cx, dy - cy
    share = ((cx - ax) * vy - (cy - ay) * vx) / (ux * vy - uy * vx)
    return point((ax + share * ux, ay + share * uy))


def crossing(line: tuple[Point, Point], along: tuple[Point, Point]) -> float:
    """How far along a segment a line crosses it, as a share of the segment. [-]

    Parameters
    ----------
    line, along : pair of Point
        Two points of each; the two are not parallel.

    Returns
    -------
    float
        0 at the first point of ``along``, 1 at its second.
    """
    (cx, cy), (dx, dy) = line
    (ax, ay), (bx, by) = along
    vx, vy = dx - cx, dy - cy
    return ((cx - ax) * vy - (cy - ay) * vx) / ((bx - ax) * vy - (by - ay) * vx)


def on_centre_line(line: tuple[Point, Point]) -> float:
    """Place on the centre line where a line across the board crosses it. [mm]"""
    (ax, ay), (bx, by) = line
    return ax - ay * (bx - ax) / (by - ay)


def slope_of(line: tuple[Point, Point]) -> float:
    """How far a line across the board runs along it as it runs across. [mm/mm]"""
    (ax, ay), (bx, by) = line
    return (bx - ax) / (by - ay)


def shifted_along(line: AcrossLine, distance: float) -> AcrossLine:
    """Line moved along the centre line, positive towards the bridge. [mm]"""
    (ax, ay), (bx, by) = line
    return AcrossLine(Point(ax + distance, ay), Point(bx + distance, by))


def turned_by(line: tuple[Point, Point]) -> float:
    """Angle by which a line across the board leans, positive where its bass end is nearer to the bridge. [degree]"""
    (ax, ay), (bx, by) = line
    return math.degrees(math.atan2(ax - bx, abs(by - ay)))
