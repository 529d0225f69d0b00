"""Places: where the frets stand along the two outer strings, before any line is drawn."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import OutsideScaleError
from scalewright.lutherie.fingerboard.plan import PartialFret, Plan, Side
from scalewright.lutherie.layout import layout_scale_of, true_scale_of
from scalewright.lutherie.spacing import Listed, Rule

__all__ = [
    "BoardSide",
    "FretCents",
    "FretDistances",
    "FretPlace",
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


class FretPlace(NamedTuple):
    """A fret before it is a line."""

    name: str
    """Its number, or what an extra fret is called."""
    fret: int | None
    """Its number by the rule; None for an extra fret."""
    cents: FretCents
    """What the rule of either side intends."""
    distances: FretDistances
    """From the zero line along the outer strings."""
    first: int
    """The string nearest to string 1 that it crosses."""
    last: int
    """The string farthest from string 1 that it crosses."""


def side_of(side: Side, plan: Plan) -> BoardSide:
    """Rule and scales of one side of a plan."""
    layout_scale = layout_scale_of(side.rule, side.scale, plan.basis)
    true_scale = side.scale if plan.basis == "true" else true_scale_of(side.rule, layout_scale)
    return BoardSide(side.rule, layout_scale, true_scale, spacing.octave_fret(side.rule))


def fret_places(plan: Plan, bass: BoardSide, treble: BoardSide) -> list[FretPlace]:
    """Frets in the order in which they stand, with what each crosses."""
    low, high = bass.layout_scale, treble.layout_scale
    whole = (1, plan.strings.count)
    cut_short = {partial.fret: (partial.first_string, partial.last_string) for partial in plan.partial_frets}
    places = [FretPlace("0", 0, FretCents(0.0, 0.0), FretDistances(0.0, 0.0), *whole)] if plan.zero_fret else []
    for number, (name, cents, low_share, high_share) in enumerate(_pattern(bass.rule, treble.rule, plan.frets), 1):
        distances = FretDistances(low * low_share, high * high_share)
        places.append(FretPlace(name, number, cents, distances, *cut_short.get(number, whole)))
    extras = [_extra(partial, bass, treble) for partial in plan.partial_frets if partial.cents is not None]
    return sorted([*places, *extras], key=lambda place: sum(place.distances)) if extras else places


@lru_cache(maxsize=256)
def _pattern(bass: Rule, treble: Rule, frets: int) -> list[tuple[str, FretCents, float, float]]:
    """Names, pitches and shares of either scale of all frets; few rules are in use at a time."""
    columns = [column(rule, frets) for column in (spacing.cents, spacing.fractions) for rule in (bass, treble)]
    return [
        (str(number), FretCents(low_cents, high_cents), low, high)
        for number, (low_cents, high_cents, low, high) in enumerate(zip(*columns, strict=True), 1)
    ]


def _extra(partial: PartialFret, bass: BoardSide, treble: BoardSide) -> FretPlace:
    """Place of an extra fret, by its pitch on the layout scales."""
    cents = partial.cents or 0.0
    share = spacing.fractions(Listed((cents,)), 1)[0]
    return FretPlace(
        partial.name or f"{cents:g} ct",
        None,
        FretCents(cents, cents),
        FretDistances(share * bass.layout_scale, share * treble.layout_scale),
        partial.first_string,
        partial.last_string,
    )


def refuse_beyond_scale(places: Sequence[FretPlace], bass: BoardSide, treble: BoardSide) -> None:
    """Refuse frets that would stand at or beyond the end of the scale."""
    low_end, high_end = bass.speaking, treble.speaking
    for place in places:
        low, high = place.distances
        if low >= low_end or high >= high_end:
            distance, end = (low, low_end) if low >= low_end else (high, high_end)
            message = (
                f"fret {place.name} would stand {distance:.2f} mm from the nut, and the scale ends at "
                f"{end:.2f} mm; choose fewer frets"
            )
            raise OutsideScaleError(message, field=("frets",))
