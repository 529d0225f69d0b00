"""Places: where the frets stand along the two outer strings, before any line is drawn."""

from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple, TypeAlias

import numpy as np
from numpy.typing import NDArray

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
    "Pairs",
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


Pairs: TypeAlias = NDArray[np.float64]
"""Numbers of all frets of a board, shape (n_frets, 2): on the bass and on the treble side."""


class FretPlaces(NamedTuple):
    """All frets of a board before they are lines, in the order in which they stand."""

    names: tuple[str, ...]
    """Number of each, or what an extra fret is called."""
    numbers: tuple[int | None, ...]
    """Number by the rule; None for an extra fret."""
    cents: Pairs
    """What the rule of either side intends. [cent]"""
    distances: Pairs
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
    scales = np.array((bass.layout_scale, treble.layout_scale))
    whole = (1, plan.strings.count)
    if not plan.partial_frets:
        return FretPlaces(names, numbers, cents, scales * shares, (whole,) * len(names), whole=True)
    cut_short = {partial.fret: (partial.first_string, partial.last_string) for partial in plan.partial_frets}
    crossed = [cut_short.get(number, whole) if number else whole for number in numbers]
    extras = [partial for partial in plan.partial_frets if partial.cents is not None]
    pitches = [partial.cents or 0.0 for partial in extras]
    # By its pitch on the layout scales.
    more = [spacing.fractions(Listed((pitch,)), 1)[0] for pitch in pitches]
    cents = np.concatenate((cents, np.repeat(pitches, 2).reshape(-1, 2)))
    distances = scales * np.concatenate((shares, np.repeat(more, 2).reshape(-1, 2)))
    order = np.argsort(distances.sum(axis=1), kind="stable")
    all_names = [*names, *(partial.name or f"{partial.cents:g} ct" for partial in extras)]
    all_numbers = [*numbers, *(None for _ in extras)]
    crossed += [(partial.first_string, partial.last_string) for partial in extras]
    return FretPlaces(
        tuple(all_names[index] for index in order),
        tuple(all_numbers[index] for index in order),
        cents[order],
        distances[order],
        tuple(crossed[index] for index in order),
        whole=all(strings == whole for strings in crossed),
    )


@lru_cache(maxsize=256)
def _pattern(
    bass: Rule,
    treble: Rule,
    frets: int,
    zero_fret: bool,  # noqa: FBT001  (as the plan has it)
) -> tuple[tuple[str, ...], tuple[int, ...], Pairs, Pairs]:
    """Names, numbers, pitches and shares of either scale of all frets; few rules are in use at a time."""
    begin = [0.0] if zero_fret else []
    numbers = tuple(range(0 if zero_fret else 1, frets + 1))
    cents = [[*begin, *spacing.cents(rule, frets)] for rule in (bass, treble)]
    shares = [[*begin, *spacing.fractions(rule, frets)] for rule in (bass, treble)]
    return tuple(map(str, numbers)), numbers, np.column_stack(cents), np.column_stack(shares)


def refuse_beyond_scale(places: FretPlaces, bass: BoardSide, treble: BoardSide) -> None:
    """Refuse frets that would stand at or beyond the end of the scale."""
    ends = bass.speaking, treble.speaking
    low, high = places.distances[-1].tolist()
    if low >= ends[0] or high >= ends[1] or None in places.numbers:
        beyond = places.distances >= ends
        if not beyond.any():
            return
        fret = int(beyond.any(axis=1).argmax())
        side = int(beyond[fret].argmax())
        extra = places.numbers[fret] is None
        message = (
            f"fret {places.names[fret]} would stand {places.distances[fret, side]:.2f} mm from the nut, and the scale "
            f"ends at {ends[side]:.2f} mm; choose {'a lower pitch for it' if extra else 'fewer frets'}"
        )
        raise OutsideScaleError(message, field=("partial_frets",) if extra else ("frets",))
