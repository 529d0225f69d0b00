"""Stringing on the wire: a board with strings on, and how they lie over its frets."""

from typing import Annotated, Literal, TypeAlias

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Discriminator, Field, Tag

from scalewright.lutherie import spacing
from scalewright.lutherie.layout import ScaleBasis
from scalewright.lutherie.setup import Action, Heights, Relief, ReliefShape, Setup
from scalewright.lutherie.string_path import ALONG_THE_SCALE, StiffnessModel
from scalewright.lutherie.string_spec import StringSpec
from scalewright.wire.quantities import Distance, Length, LengthBetween, LengthOut, Question, Scale
from scalewright.wire.rules import EqualIn, ListedIn, RuleIn, refuse_repeat_out_of_order
from scalewright.wire.strings import Tuning

__all__ = ["ActionIn", "HeightsIn", "HeightsOut", "ReliefIn", "ReliefOut", "StrungQuestion", "TargetIn", "target_of"]

_STRICT = ConfigDict(strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True)
_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

_HEIGHT = LengthBetween(0.0, 50.0, "1 mm")
_Rise: TypeAlias = Annotated[float, LengthBetween(-50.0, 50.0, "4 mm")]
_Hollow: TypeAlias = Annotated[float, LengthBetween(-10.0, 10.0, "0.2 mm")]


class ActionIn(BaseModel):
    """String height at a fret, as a player knows it."""

    model_config = _STRICT

    fret: Annotated[int, Field(ge=1, le=spacing.MOST_FRETS, examples=[12])]
    """Number of the fret."""
    height: Annotated[float, _HEIGHT, Field(examples=[3.0])]
    """Underside of the string above the top of that fret, string not pressed. [unit]"""

    def to_domain(self) -> Action:
        """Return the action."""
        return Action(self.fret, self.height)


class HeightsIn(BaseModel):
    """How high the strings lie above the plane of the fret tops, not pressed; all strings alike."""

    model_config = _STRICT

    nut: Annotated[float, _HEIGHT, Field(examples=[1.0])]
    """Underside of the strings at the nut. [unit]"""
    saddle_above_nut: Annotated[_Rise | None, Field(examples=[4.0])] = None
    """How much higher the strings are at the saddle than at the nut. [unit]"""
    action: ActionIn | None = None
    """Height at a fret; instead of `saddle_above_nut`."""

    def to_domain(self) -> Heights:
        """Return the heights."""
        action = None if self.action is None else self.action.to_domain()
        return Heights(self.nut, self.saddle_above_nut, action)


class ReliefIn(BaseModel):
    """How far the fret tops leave the straight line."""

    model_config = _STRICT

    depth: Annotated[_Hollow, Field(examples=["0.2 mm"])]
    """Gap under a straightedge from fret 1 to the last fret; of a tilt, the fall at half the scale. [unit]"""
    shape: ReliefShape = "parabola"
    """A parabola, deepest in its middle, or a straight fall that starts at the nut ("tilt")."""

    def to_domain(self) -> Relief:
        """Return the relief."""
        return Relief(self.depth, self.shape)


def _branch(value: object) -> str | None:
    """Tell which kind of target is meant."""
    name = value.get("name") if isinstance(value, dict) else getattr(value, "name", None)
    return f"target:{name}" if isinstance(name, str) and name in {"equal", "listed"} else None


def _from_name(value: object) -> object:
    return {"name": value} if value == "equal" else value


def _checked(target: EqualIn | ListedIn) -> EqualIn | ListedIn:
    if isinstance(target, ListedIn) and target.repeat:
        refuse_repeat_out_of_order(target.cents)
    return target


TargetIn: TypeAlias = Annotated[
    Annotated[EqualIn, Tag("target:equal")] | Annotated[ListedIn, Tag("target:listed")],
    Discriminator(
        _branch,
        custom_error_type="target_unknown",
        custom_error_message='A target is "equal", or an object whose "name" is "equal" or "listed".',
    ),
    BeforeValidator(_from_name, json_schema_input_type=Literal["equal"] | EqualIn | ListedIn),
    AfterValidator(_checked),
    Field(examples=[{"name": "equal", "steps": 12}]),
]
"""Temperament that a board should sound in."""


def target_of(target: EqualIn | ListedIn | None) -> spacing.Equal | spacing.Listed | None:
    """Return the target of the craft."""
    match target:
        case EqualIn():
            return spacing.Equal(target.steps)
        case ListedIn():
            return spacing.Listed(tuple(target.cents), target.repeat)
        case None:
            return None


class StrungQuestion(Question):
    """What every question on a strung board has, its strings aside."""

    scale: Scale
    """The scale, a number in `unit` or a text with its own unit; `scale_basis` says which scale it is."""
    rule: RuleIn
    """The spacing rule of the board."""
    heights: Annotated[HeightsIn, Field(examples=[{"nut": "1 mm", "saddle_above_nut": "4 mm"}])]
    """How high the strings lie."""
    frets: Annotated[int, Field(ge=1, le=spacing.MOST_FRETS, examples=[12])] = 12
    """Number of frets of the board, 1 to 60."""
    scale_basis: ScaleBasis = "layout"
    """Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret."""
    tuning: Tuning = None
    finger_behind_fret: Annotated[Distance, Field(examples=[0.0])] = 0.0
    """How far behind the fret the finger presses the string down. [unit]"""
    fret_height: Annotated[Length | None, Field(examples=["1.1 mm"])] = None
    """Height of the frets above the board, where the finger presses the string down to it; left out, the string goes
    straight on behind the fret. [unit]"""
    relief: ReliefIn | None = None
    """How far the fret tops leave the straight line; left out, they lie on it."""
    sliding_length: Annotated[Distance, Field(examples=["120 mm"])] = 0.0
    """Length of string beyond nut and saddle, to post and tail, that slides over them and stretches too. [unit]"""
    target: TargetIn | None = None
    """Temperament that the board should sound in, each string against its own open note: equal steps, or listed cents,
    one for each fret; left out, the equal temperament nearest to the rule."""
    boundary_factor: Annotated[float, Field(ge=0.0, le=2.0)] = 1.0
    """Ends of the speaking length that are clamped: 0 none, 1 the fret, 2 both; measured 1.1 +/- 0.2."""
    stiffness: StiffnessModel = ALONG_THE_SCALE
    """What the stiffness of a fretted note follows: "position" (B0 X0/X_n, as in the published tables) or
    "length_and_tension" (its speaking length and the tension of the stretched string)."""

    def setup(self, strings: list[StringSpec]) -> Setup:
        """Return the board with these strings on."""
        return Setup(
            rule=self.rule.to_domain(),
            scale=self.scale,
            frets=self.frets,
            strings=strings,
            heights=self.heights.to_domain(),
            scale_basis=self.scale_basis,
            finger_behind_fret=self.finger_behind_fret,
            boundary_factor=self.boundary_factor,
            stiffness=self.stiffness,
            relief=None if self.relief is None else self.relief.to_domain(),
            fret_height=self.fret_height,
            sliding_length=self.sliding_length,
            target=target_of(self.target),
        )


class HeightsOut(BaseModel):
    """How high the strings were taken to lie."""

    model_config = _READ_OFF

    nut: LengthOut
    """Underside of the strings above the plane of the fret tops at the nut. [unit]"""
    saddle_above_nut: LengthOut
    """How much higher they are at the saddle. [unit]"""


class ReliefOut(BaseModel):
    """How far the fret tops were taken to leave the straight line."""

    model_config = _READ_OFF

    depth: LengthOut
    """Gap under a straightedge from fret 1 to the last fret; of a tilt, the fall at half the scale. [unit]"""
    shape: ReliefShape
    """A parabola, or a straight fall that starts at the nut."""
