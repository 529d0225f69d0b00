"""Strings over a board: how they are spread at either end, and the lines that they follow."""

import itertools
import math
from collections.abc import Sequence
from typing import NamedTuple

from scalewright.lutherie.errors import ImpossibleBoardError
from scalewright.lutherie.fingerboard.plan import BoardMargins, Plan
from scalewright.lutherie.fingerboard.points import Point

__all__ = ["Spread", "StringLine", "spread_of", "spread_out"]


class Spread(NamedTuple):
    """Where the strings and the edges lie across the board; all distances from the centre line."""

    nut: list[float]
    """Strings at the zero line, string 1 first, positive on its side. [mm]"""
    saddle: list[float]
    """Strings at the end of the scale. [mm]"""
    margins: BoardMargins
    """From the outer strings to the edges."""


class StringLine(NamedTuple):
    """The line that one string follows."""

    string: int
    """Number of the string; 1 is the highest."""
    at_zero: Point
    """Where it crosses the zero line of the pattern."""
    at_nut: Point
    """Where it crosses the front edge of the nut."""
    at_scale_end: Point
    """Where its scale ends: the true one, or the layout scale where there is no octave fret."""
    at_saddle: Point
    """Where it breaks over the saddle."""
    scale: float
    """Its own scale, from the zero line to the end, measured as the plan says. [mm]"""
    saddle_setback: float
    """From the end of its scale to the break point, positive away from the nut. [mm]"""


def spread_out(spread: float, count: int, gauges: Sequence[float] | None, field: tuple[str | int, ...]) -> list[float]:
    """Distances of strings from the centre line.

    Parameters
    ----------
    spread : float
        From the centre of the first string to that of the last. [mm]
    count : int
        Number of strings.
    gauges : sequence of float, length count, optional
        Diameters from string 1 on; with them the gaps between neighbours are equal, without them the centres
        are evenly spread. [mm]
    field : tuple
        What to name in a refusal.

    Returns
    -------
    list of float, length count
        String 1 first, positive on its side. [mm]

    Raises
    ------
    ImpossibleBoardError
        Strings too thick for the spread.
    """
    if count == 1:
        return [0.0]
    if gauges is None:
        return [spread * (0.5 - index / (count - 1)) for index in range(count)]
    halves = [0.5 * (one + next_one) for one, next_one in itertools.pairwise(gauges)]
    gap = (spread - math.fsum(halves)) / (count - 1)
    if gap <= 0.0:
        message = (
            f"strings of these gauges fill {math.fsum(halves):.2f} mm between the centres of the outer ones, and the "
            f"spread is {spread:.2f} mm; widen the spread or check the unit of the gauges"
        )
        raise ImpossibleBoardError(message, field=field)
    places = [0.5 * spread]
    for half in halves[:-1]:
        places.append(places[-1] - gap - half)
    return [*places, -0.5 * spread]


def spread_of(plan: Plan, last_share: float) -> Spread:
    """Where strings and edges lie, from two of the three: spreads, margins and widths.

    Parameters
    ----------
    plan : Plan
        The plan.
    last_share : float
        Where the last fret stands between the zero line and the end of the scale. [-]

    Returns
    -------
    Spread
        Strings and margins at both ends.

    Raises
    ------
    ImpossibleBoardError
        Margins wider than the board, widths narrower than the strings, or strings too thick for their spread.
    """
    strings, margins, widths = plan.strings, plan.margins, plan.widths
    nut, saddle = (strings.nut_spread, strings.saddle_spread) if strings.count > 1 else (0.0, 0.0)
    if nut is None or saddle is None:
        if widths is None or margins is None:
            message = "two of three are needed: the spread of the strings, the margins, and the widths of the board"
            raise ImpossibleBoardError(message, field=("strings",))
        nut = widths.nut - margins.nut_bass - margins.nut_treble
        last = widths.last_fret - margins.last_bass - margins.last_treble
        saddle = nut + (last - nut) / last_share
        if min(nut, last, saddle) <= 0.0:
            message = (
                f"the margins leave {nut:.2f} mm for the strings at the nut, {last:.2f} mm at the last fret and "
                f"{saddle:.2f} mm at the saddle; the strings would cross: make the margins smaller or the board wider"
            )
            raise ImpossibleBoardError(message, field=("margins",))
    elif margins is None:
        if widths is None:
            message = "the edges are missing; give margins, or the widths of the board"
            raise ImpossibleBoardError(message, field=("margins",))
        last = nut + (saddle - nut) * last_share
        room = (0.5 * (widths.nut - nut), 0.5 * (widths.last_fret - last))
        if min(room) <= 0.0:
            message = (
                f"the outer strings would run off the board: it is {widths.nut:.2f} mm wide at the nut and "
                f"{widths.last_fret:.2f} mm at the last fret, where the strings spread {nut:.2f} mm and {last:.2f} mm"
            )
            raise ImpossibleBoardError(message, field=("widths",))
        margins = BoardMargins(room[0], room[0], room[1], room[1])
    return Spread(
        spread_out(nut, strings.count, strings.gauges, ("strings", "nut_spread")),
        spread_out(saddle, strings.count, strings.gauges, ("strings", "saddle_spread")),
        margins,
    )
