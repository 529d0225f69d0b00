"""Places: where the frets stand along the two outer strings, before any line is drawn."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import OutsideScaleError
from scalewright.lutherie.fingerboard.fret_lines import FretCents, FretDistances
from scalewright.lutherie.fingerboard.plan import PartialFret, Plan, Side
from scalewright.lutherie.layout import lay_out, layout_scale_of, true_scale_of
from scalewright.lutherie.spacing import Listed, Rule

__all__ = ["BoardSide", "FretPlace", "fret_places", "refuse_beyond_scale", "side_of"]


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


class FretPlace(NamedTuple):
    """A fret before it is a line."""

    name: str
    fret: int | None
    cents: FretCents
    distances: FretDistances
    first: int
    last: int


def side_of(side: Side, plan: Plan) -> BoardSide:
    """Rule and scales of one side of a plan."""
    layout_scale = layout_scale_of(side.rule, side.scale, plan.basis)
    true_scale = side.scale if plan.basis == "true" else true_scale_of(side.rule, layout_scale)
    return BoardSide(side.rule, layout_scale, true_scale, spacing.octave_fret(side.rule))


def fret_places(plan: Plan, bass: BoardSide, treble: BoardSide) -> list[FretPlace]:
    """Frets in the order in which they stand, with what each crosses."""
    low, high = (lay_out(side.rule, side.layout_scale, plan.frets) for side in (bass, treble))
    cut_short = {partial.fret: partial for partial in plan.partial_frets if partial.fret is not None}
    count = plan.strings.count
    places = [FretPlace("0", 0, FretCents(0.0, 0.0), FretDistances(0.0, 0.0), 1, count)] if plan.zero_fret else []
    for number in range(1, plan.frets + 1):
        partial = cut_short.get(number)
        places.append(
            FretPlace(
                str(number),
                number,
                FretCents(low.cents[number - 1], high.cents[number - 1]),
                FretDistances(low.from_nut[number - 1], high.from_nut[number - 1]),
                1 if partial is None else partial.first_string,
                count if partial is None else partial.last_string,
            )
        )
    extras = [_extra(partial, bass, treble) for partial in plan.partial_frets if partial.cents is not None]
    return sorted([*places, *extras], key=lambda place: sum(place.distances)) if extras else places


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
    for place in places:
        for side, distance in zip((bass, treble), place.distances, strict=True):
            if distance >= side.speaking:
                message = (
                    f"fret {place.name} would stand {distance:.2f} mm from the nut, and the scale ends at "
                    f"{side.speaking:.2f} mm; choose fewer frets"
                )
                raise OutsideScaleError(message, field=("frets",))
