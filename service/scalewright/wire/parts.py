"""Parts on the wire: what is said of a board, a bridge or a template, and what was measured on it."""

from typing import Annotated, Literal, Self, TypeAlias

from pydantic import (
    BaseModel,
    ConfigDict,
    Discriminator,
    Field,
    PrivateAttr,
    Tag,
    model_validator,
)
from pydantic_core import PydanticCustomError

from scalewright.lutherie.errors import refused_within
from scalewright.lutherie.measure import Origin, Survey
from scalewright.lutherie.part import FanScale, Kind, MadeTo, Part, Travel
from scalewright.lutherie.spacing import MOST_FRETS
from scalewright.wire.identification import IdentificationIn, Measured, NutOffsetIn, ReadingIn
from scalewright.wire.labels import LabelIn
from scalewright.wire.quantities import AnyLength, Distance, Length, LengthBetween, Scale, Uncertainty
from scalewright.wire.rules import RuleIn

__all__ = ["FanScaleIn", "FretCount", "PartIn", "ReadingsIn", "TravelIn"]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_MOST_READINGS = 200

FretCount: TypeAlias = Annotated[int, Field(ge=1, le=MOST_FRETS)]
"""A fret, or a number of frets: 1 to 60."""


class ReadingsIn(BaseModel):
    """What was measured on a part, as in an identification: say `from_nut`, `fret_to_fret` or `readings`, once."""

    model_config = _STRICT

    instrument_uncertainty: Uncertainty | None = None
    """Standard uncertainty of one reading (k = 1). A caliper read with care: about 0.05 mm."""
    resolution: Uncertainty = 0.0
    """Smallest step that the instrument shows; adds its square over 12 to the variance of every reading."""
    scale_error: Annotated[float, Field(ge=0.0, le=0.1)] = 0.0
    """Relative standard uncertainty that all readings of the instrument share; 0.001 is 1 mm in a metre."""
    tooling_scatter: Uncertainty | None = None
    """Standard deviation of a fret about its place by the tool; left out, it is integrated over what tools do."""
    frets: Annotated[list[FretCount], Field(max_length=_MOST_READINGS)] | None = None
    """Fret of every reading; left out: 1, 2, 3, ..."""
    from_nut: Annotated[list[Measured], Field(max_length=_MOST_READINGS)] | None = None
    """Distances from the nut (or zero fret) to the centre of each fret."""
    fret_to_fret: Annotated[list[Measured], Field(max_length=_MOST_READINGS)] | None = None
    """Instead: distances from each of `frets` to the one before it in the list, the first from the nut."""
    readings: Annotated[list[ReadingIn], Field(max_length=_MOST_READINGS)] | None = None
    """Instead: distances between any two frets."""
    origin: Origin = "nut"
    """What fret number 0 is: the nut's front edge, or a zero fret, which the tool has set like the others."""
    nut_offset: NutOffsetIn = "free"
    """Shift of the nut from the pattern's zero line: "free" (default), "none", or a known length."""
    slot_width: Annotated[float, LengthBetween(0.0, 10.0, "0.6 mm", above=True)] | None = None
    """Width of the slots or crowns between their edges, for readings taken at an edge."""

    _identification: IdentificationIn = PrivateAttr()

    @model_validator(mode="after")
    def _as_for_an_identification(self) -> Self:
        # Its lengths are millimetres by now; the rules about several fields are those of an identification.
        members = {name: getattr(self, name) for name in self.model_fields_set}
        if self.readings is not None:
            members["readings"] = [reading.model_dump(by_alias=True) for reading in self.readings]
        self._identification = IdentificationIn.model_validate(members, context={})
        return self

    def to_domain(self) -> Survey:
        """Return the survey."""
        return self._identification.to_domain().survey


class FanScaleIn(BaseModel):
    """True scales of a fan board along its two outer strings."""

    model_config = _STRICT

    bass: Annotated[Scale, Field(examples=["27 in"])]
    """Along the lowest string."""
    treble: Annotated[Scale, Field(examples=["25.5 in"])]
    """Along the highest string."""

    def to_domain(self) -> FanScale:
        """Return the scales."""
        return FanScale(self.bass, self.treble)


def _which_scale(value: object) -> str:
    return "scale:fan" if isinstance(value, dict | FanScaleIn) else "scale:length"


_TrueScaleIn: TypeAlias = Annotated[
    Annotated[Scale, Tag("scale:length")] | Annotated[FanScaleIn, Tag("scale:fan")], Discriminator(_which_scale)
]


class TravelIn(BaseModel):
    """How far the break point can be moved from where the part puts it: a slot's room, or a saddle's screws."""

    model_config = _STRICT

    towards_nut: Annotated[Distance, Field(examples=["1 mm"])] = 0.0
    """Towards the nut."""
    away_from_nut: Annotated[Distance, Field(examples=["2 mm"])] = 0.0
    """Away from the nut."""

    def to_domain(self) -> Travel:
        """Return the travel."""
        return Travel(self.towards_nut, self.away_from_nut)


class PartIn(BaseModel):
    """A part: one or more of `true_scale`, `layout_scale` with `rule`, `label` and `readings` define it.

    What was measured stands before what is stated, and that before a label; two definitions that disagree are refused
    and never averaged.
    """

    model_config = _STRICT

    id: Annotated[
        str, Field(min_length=1, max_length=60, pattern=r"^[A-Za-z0-9][A-Za-z0-9 ._#()+-]*$", examples=["board"])
    ]
    """Your name for it, which comes back in the answer."""
    kind: Kind
    """What it is: "board", "neck_blank", "bridge" or "saddle_template"; the first two carry frets."""
    true_scale: _TrueScaleIn | None = None
    """Stated true scale; of a fan board {"bass", "treble"}."""
    layout_scale: Scale | None = None
    """Stated layout scale; with `rule`."""
    square_fret: Annotated[int, Field(ge=0, le=MOST_FRETS, examples=[7])] | None = None
    """The fret of a fan board that stays square to its centre line, 0 for the nut."""
    rule: RuleIn | None = None
    """Stated spacing rule."""
    label: LabelIn | None = None
    """Its label, as it is written."""
    readings: ReadingsIn | None = None
    """What was measured on it."""
    tolerance: Annotated[Length | None, Field(examples=["0.2 mm"])] = None
    """How far its true scale may be from the scale that is stated (limits, plus and minus); left out, that is taken at
    its word."""
    made_to: MadeTo = "true_scale"
    """What its `true_scale` or label ends at: "true_scale", or "string_length" with its `setback` in it."""
    setback: AnyLength | None = None
    """Setback that is in its string length, positive away from the nut; with `"made_to": "string_length"`, or with a
    label alone, which may name one."""
    datum: Literal["nut", "fret"] = "nut"
    """What it is placed from when it is put on: the nut, or a fret. Of boards only a replacement is put on."""
    datum_fret: FretCount | None = None
    """The fret it is placed from, with `"datum": "fret"`."""
    frets: FretCount | None = None
    """Number of frets of a board or a neck blank."""
    body_joint_fret: FretCount | None = None
    """Fret at which the neck meets the body; for boards of which one replaces the other."""
    saddle_travel: TravelIn | None = None
    """How far its saddle can be moved."""

    @model_validator(mode="after")
    def _datum_is_whole(self) -> Self:
        if (self.datum == "fret") != (self.datum_fret is not None):
            message = 'A part that is placed from a fret has both "datum": "fret" and its datum_fret.'
            raise PydanticCustomError("datum_incomplete", message)
        if self.square_fret is not None and not isinstance(self.true_scale, FanScaleIn):
            message = 'A square_fret is that of a fan board, whose true_scale has a "bass" and a "treble".'
            raise PydanticCustomError("square_fret_without_fan", message)
        return self

    def to_domain(self, place: tuple[str | int, ...] = ("part",)) -> Part:
        """Return the part; ``place`` is the path to it, for refusals."""
        with refused_within((*place, "readings")):
            survey = None if self.readings is None else self.readings.to_domain()
        scale = self.true_scale
        return Part(
            id=self.id,
            kind=self.kind,
            true_scale=scale.to_domain() if isinstance(scale, FanScaleIn) else scale,
            layout_scale=self.layout_scale,
            rule=None if self.rule is None else self.rule.to_domain(),
            label=self.label,
            survey=survey,
            tolerance=self.tolerance or 0.0,
            made_to=self.made_to,
            setback=self.setback,
            datum=self.datum,
            datum_fret=self.datum_fret,
            square_fret=self.square_fret,
            frets=self.frets,
            body_joint_fret=self.body_joint_fret,
            travel=None if self.saddle_travel is None else self.saddle_travel.to_domain(),
        )
