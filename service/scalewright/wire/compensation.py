"""Compensation on the wire: a board, its strings and how they lie; where they break over saddle and nut."""

from collections.abc import Sequence
from typing import Annotated, Any, Literal, Self

from pydantic import BaseModel, ConfigDict, Field, ValidationError, model_validator

from scalewright.lutherie import spacing
from scalewright.lutherie.compensation import BridgeWork, Freedom, Order, Preference, compensate_all
from scalewright.lutherie.errors import LutherieError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.string_path import StiffnessModel
from scalewright.lutherie.stringing import SetbackOrigin
from scalewright.wire.bridge import BridgeAdviceOut, GluedBridgeIn
from scalewright.wire.many import answer_many
from scalewright.wire.placement import PlacementOut, StringSetIn
from scalewright.wire.quantities import Distance, LengthOut, Reply
from scalewright.wire.reslotting import ReslottingOut
from scalewright.wire.rules import RuleOut
from scalewright.wire.slot import SlotFitOut, StraightSlotIn, TravelFitOut, TravelIn
from scalewright.wire.stringing import HeightsOut, StrungQuestion
from scalewright.wire.strings import OpenStringOut, Strings, refuse_unnamed_pitches, string_specs

__all__ = ["CompensationIn", "CompensationOut", "OptimiseFor", "answer_compensations"]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

_MOST_SETS = 12
_FEW_STRINGS = 12
"""More strings than this take their time."""


class OptimiseFor(BaseModel):
    """Which frets the setbacks are best for."""

    model_config = _STRICT

    frets: Annotated[
        list[Annotated[int, Field(ge=1, le=spacing.MOST_FRETS)]],
        Field(min_length=1, max_length=spacing.MOST_FRETS, examples=[[1, 2, 3, 4, 5, 7, 9, 12]]),
    ]
    """Numbers of the frets, each once."""
    weights: (
        Annotated[list[Annotated[float, Field(ge=0.0, le=1e6)]], Field(min_length=1, max_length=spacing.MOST_FRETS)]
        | None
    ) = None
    """How much the squared error of each counts; left out, all alike."""

    def to_domain(self) -> Preference:
        """Return the preference."""
        return Preference(self.frets, [1.0] * len(self.frets) if self.weights is None else self.weights)


class CompensationIn(StrungQuestion):
    """Where do saddle and nut go for these strings on this board?"""

    strings: Strings
    """The strings, 1 to 24."""
    nut: Freedom = "fixed"
    """Whether the nut stays ("fixed"), is set back for every string as well ("free") or alike for all ("uniform")."""
    saddle: Literal["free", "uniform"] = "free"
    """Whether every string has a saddle setback of its own ("free") or all have one ("uniform")."""
    optimise_for: OptimiseFor | None = None
    """Which frets the setbacks are best for; left out, all frets of the board alike."""
    slot: StraightSlotIn | None = None
    """Ask for the best straight slot."""
    travel: TravelIn | None = None
    """Ask for the best that saddles of limited travel give."""
    bridge: GluedBridgeIn | None = None
    """Ask what helps a bridge that is glued already."""
    other_sets: Annotated[list[StringSetIn], Field(max_length=_MOST_SETS, default_factory=list)]
    """Other string sets, tunings and actions that the same bridge has to serve; asks where to glue it."""
    reach: Annotated[Distance | None, Field(examples=["3 mm"])] = None
    """How far along the strings a break point can be moved on a bridge that is still to be glued: the thickness of its
    saddle, or the travel of adjustable ones; asks where to glue it. [unit]"""
    compare_with_equal: bool = False
    """Compare with the same board slotted again in equal steps at the same true scale."""

    @property
    def light(self) -> bool:
        """Whether its answer takes no more than a few milliseconds."""
        extras = (self.slot, self.travel, self.bridge, self.reach)
        plain = not self.other_sets and not self.compare_with_equal and all(extra is None for extra in extras)
        return plain and len(self.strings) <= _FEW_STRINGS

    @model_validator(mode="after")
    def _pitches_are_named(self) -> Self:
        refuse_unnamed_pitches(self.tuning, self.strings)
        return self

    def to_domain(self) -> Order:
        """Return what :func:`~scalewright.lutherie.compensation.compensate` takes."""
        return Order(
            setup=self.setup(string_specs(self.tuning, self.strings)),
            nut=self.nut,
            preference=None if self.optimise_for is None else self.optimise_for.to_domain(),
            saddle=self.saddle,
            work=BridgeWork(
                slot=None if self.slot is None else self.slot.to_domain(),
                travel=None if self.travel is None else self.travel.to_domain(),
                bridge=None if self.bridge is None else self.bridge.to_domain(),
                other_sets=[one.to_domain() for one in self.other_sets],
                reach=self.reach,
                reslotted=self.compare_with_equal,
            ),
        )


# ---- The answer -----------------------------------------------------------------------------------------


class FrettedNoteOut(BaseModel):
    """How sharp one fretted note is with the open string in tune."""

    model_config = _READ_OFF

    fret: int
    """Number of the fret."""
    uncompensated: float
    """With saddle and nut at the ends of the scale; positive sharp. [cent]"""
    compensated: float
    """With both where this answer puts them; positive sharp. [cent]"""


class StringCompensationOut(OpenStringOut):
    """Where one string breaks over the saddle and the nut."""

    saddle_setback: LengthOut
    """From the end of the scale to the break point on the saddle, positive away from the nut. [unit]"""
    nut_setback: LengthOut
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    saddle_from_nut: LengthOut
    """From the nut's front edge to the break point, parallel to the fret plane. [unit]"""
    saddle_from_fret_12: LengthOut | None
    """From fret 12 to the break point, parallel to the fret plane; null on a board without that fret. [unit]"""
    rms_cents: float
    """Root mean square of the errors that remain on the fretted notes that count. [cent]"""
    cents: list[FrettedNoteOut]
    """Errors at every fret."""


class PreferenceOut(BaseModel):
    """Which frets the setbacks are best for."""

    model_config = _READ_OFF

    frets: list[int]
    """Numbers of the frets."""
    weights: list[float]
    """How much the squared error of each counted."""


class CompensationOut(Reply):
    """Saddle and nut positions of a set of strings."""

    rule: RuleOut
    """Spacing rule of the board."""
    layout_scale: LengthOut
    """The length that the rule was applied to. [unit]"""
    true_scale: LengthOut | None
    """Twice the distance from the pattern's zero line to the octave fret; null without one. [unit]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave."""
    setback_from: SetbackOrigin
    """Whose end the saddle setbacks are counted from."""
    nut: Freedom
    """Whether the nut was set back too."""
    saddle: Freedom
    """Whether every string has a setback of its own ("free") or all have one ("uniform")."""
    heights: HeightsOut
    """How high the strings were taken to lie."""
    optimised_for: PreferenceOut
    """Frets and weights that the setbacks are best for."""
    target_cents: list[float]
    """Pitch above the open string that every fret should give. [cent]"""
    boundary_factor: float
    """Ends of the speaking length that were taken as clamped."""
    stiffness: StiffnessModel
    """What the stiffness of a fretted note followed."""
    rms_cents: float
    """Root mean square of what remains, over all strings and the frets that count. [cent]"""
    strings: list[StringCompensationOut]
    """The strings, in the order given."""
    slot: SlotFitOut | None
    """The best straight slot; null unless asked for."""
    travel: TravelFitOut | None
    """What saddles of limited travel give; null unless asked for."""
    bridge: BridgeAdviceOut | None
    """What helps a bridge that is glued already; null unless asked for."""
    placement: PlacementOut | None
    """Where to glue a bridge for all the string sets; null unless asked for."""
    reslotted: ReslottingOut | None
    """The same board in equal steps at the same true scale; null unless asked for."""
    notes: list[Note]
    """What the numbers of all strings rest on."""


# ---- Many at once ---------------------------------------------------------------------------------------


def answer_compensations(questions: Sequence[dict[str, Any]]) -> list[bytes | LutherieError | ValidationError]:
    """Answer many questions.

    Parameters
    ----------
    questions : sequence of dict
        As :class:`CompensationIn` takes them, parsed from JSON.

    Returns
    -------
    list of bytes, LutherieError or ValidationError
        For each question its answer as a JSON object, or what was wrong with it.
    """
    return answer_many(questions, CompensationIn, CompensationOut, compensate_all)
