"""Places: where the frets stand along the two outer strings, before any line is drawn."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple, TypeAlias

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import OutsideScaleError
from scalewright.lutherie.fingerboard.plan import Plan, Side
from scalewright.lutherie.layout import layout_scale_of, true_scale_of
from scalewright.lutherie.spacing import Listed, Rule

__all__ = [
    "BoardSide",
    "FretCents",
    "FretDistances",
    "FretPlaces",
    "Sides",
    "fret_places",
    "refuse_beyond_scale",
    "side_of",
]


@dataclass(frozen=True, slots=True)
class BoardSide:
    """Rule and scales of one outer string."""

    rule: Rule
    """Its spacing rule."""
    layout_scale: float
    """The length that the rule was applied to. [mm]"""
    true_scale: float | None
    """Twice the distance from the zero line to the octave fret; None without one. [mm]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave."""

    @property
    def speaking(self) -> float:
        """Where the scale ends: the true one, or the layout scale where there is no octave fret. [mm]"""
        return self.layout_scale if self.true_scale is None else self.true_scale


class FretCents(NamedTuple):
    """Pitch of a fret on either side."""

    bass: float
    """By the rule of the lowest string. [cent]"""
    treble: float
    """By the rule of string 1. [cent]"""


class FretDistances(NamedTuple):
    """Distance of a fret from the zero line, measured as the plan says."""

    bass: float
    """Along the lowest string. [mm]"""
    treble: float
    """Along string 1. [mm]"""


Sides: TypeAlias = tuple[Sequence[float], Sequence[float]]
"""Numbers of all frets of a board, on the bass and on the treble side."""


class FretPlaces(NamedTuple):
    """All frets of a board before they are lines, in the order in which they stand."""

    names: tuple[str, ...]
    """Number of each, or what an extra fret is called."""
    numbers: tuple[int | None, ...]
    """Number by the rule; None for an extra fret."""
    cents: Sides
    """What the rule of either side intends. [cent]"""
    distances: Sides
    """From the zero line along the outer strings. [mm]"""
    crossed: tuple[tuple[int, int], ...]
    """The strings nearest to string 1 and farthest from it that each crosses."""
    whole: bool
    """Whether every fret crosses all strings."""


def side_of(side: Side, plan: Plan) -> BoardSide:
    """Rule and scales of one side of a plan."""
    layout_scale = layout_scale_of(side.rule, side.scale, plan.basis)
    true_scale = side.scale if plan.basis == "true" else true_scale_of(side.rule, layout_scale)
    return BoardSide(side.rule, layout_scale, true_scale, spacing.octave_fret(side.rule))


def fret_places(plan: Plan, bass: BoardSide, treble: BoardSide) -> FretPlaces:
    """Frets in the order in which they stand, with what each crosses."""
    names, numbers, cents, shares = _pattern(bass.rule, treble.rule, plan.frets, plan.zero_fret)
    whole = (1, plan.strings.count)
    distances = [bass.layout_scale * share for share in shares[0]], [treble.layout_scale * share for share in shares[1]]
    if not plan.partial_frets:
        return FretPlaces(names, numbers, cents, distances, (whole,) * len(names), whole=True)
    cut_short = {partial.fret: (partial.first_string, partial.last_string) for partial in plan.partial_frets}
    # Of every fret all that is said of it, its two distances first.
    rows = [
        (*row, cut_short.get(row[-1], whole) if row[-1] else whole)
        for row in zip(*distances, *cents, names, numbers, strict=True)
    ]
    for partial in plan.partial_frets:
        if partial.cents is not None:
            # By its pitch on the layout scales.
            (share,) = spacing.fractions(Listed((partial.cents,)), 1)
            name = partial.name or f"{partial.cents:g} ct"
            crossed = partial.first_string, partial.last_string
            ends = bass.layout_scale * share, treble.layout_scale * share
            rows.append((*ends, partial.cents, partial.cents, name, None, crossed))
    rows.sort(key=lambda row: row[0] + row[1])
    bass_ends, treble_ends, bass_cents, treble_cents, all_names, all_numbers, all_crossed = zip(*rows, strict=True)
    return FretPlaces(
        all_names,
        all_numbers,
        (bass_cents, treble_cents),
        (bass_ends, treble_ends),
        all_crossed,
        whole=all(strings == whole for strings in all_crossed),
    )


@lru_cache(maxsize=256)
def _pattern(
    bass: Rule,
    treble: Rule,
    frets: int,
    zero_fret: bool,  # noqa: FBT001  (as the plan has it)
) -> tuple[tuple[str, ...], tuple[int, ...], Sides, Sides]:
    """Names, numbers, pitches and shares of either scale of all frets; few rules are in use at a time."""
    begin = (0.0,) if zero_fret else ()
    numbers = tuple(range(0 if zero_fret else 1, frets + 1))
    cents = (*begin, *spacing.cents(bass, frets)), (*begin, *spacing.cents(treble, frets))
    shares = (*begin, *spacing.fractions(bass, frets)), (*begin, *spacing.fractions(treble, frets))
    return tuple(map(str, numbers)), numbers, cents, shares


def refuse_beyond_scale(places: FretPlaces, bass: BoardSide, treble: BoardSide) -> None:
    """Refuse frets that would stand at or beyond the end of the scale."""
    sides = bass.speaking, treble.speaking
    low, high = places.distances[0][-1], places.distances[1][-1]
    if low < sides[0] and high < sides[1] and None not in places.numbers:
        return
    # Extra frets need not be in order on either side.
    for name, number, *distances in zip(places.names, places.numbers, *places.distances, strict=True):
        for distance, end in zip(distances, sides, strict=True):
            if distance >= end:
                extra = number is None
                message = (
                    f"fret {name} would stand {distance:.2f} mm from the nut, and the scale ends at {end:.2f} mm; "
                    f"choose {'a lower pitch for it' if extra else 'fewer frets'}"
                )
                raise OutsideScaleError(message, field=("partial_frets",) if extra else ("frets",))
