"""Intonation on the wire: a strung board with its break points; the cents of every note and their causes."""

from typing import Annotated, NamedTuple, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from scalewright.drawing.plots import intonation_plot
from scalewright.drawing.svg import write_svg
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.intonation import Intonation, Setbacks
from scalewright.lutherie.setup import Setup
from scalewright.lutherie.string_path import StiffnessModel
from scalewright.lutherie.stringing import SetbackOrigin
from scalewright.wire.quantities import AnswerContext, AnyLength, LengthOut, Reply
from scalewright.wire.rules import RuleOut
from scalewright.wire.stringing import HeightsOut, ReliefOut, StrungQuestion
from scalewright.wire.strings import MOST_STRINGS, OpenStringOut, StringIn, refuse_unnamed_pitches, string_specs

__all__ = ["IntonationIn", "IntonationOut", "PlacedStringIn"]

_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class PlacedStringIn(StringIn):
    """One string, and where it breaks over saddle and nut."""

    saddle_setback: Annotated[AnyLength, Field(examples=["2 mm"])] = 0.0
    """From the end of the true scale to the break point on the saddle, positive away from the nut. [unit]"""
    nut_setback: Annotated[AnyLength, Field(examples=["-0.4 mm"])] = 0.0
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""


class IntonationArguments(NamedTuple):
    """Arguments of :func:`scalewright.lutherie.intonation.intonate`."""

    setup: Setup
    setbacks: list[Setbacks]


class IntonationIn(StrungQuestion):
    """How far out of tune is every note of these strings on this board?"""

    strings: Annotated[
        list[PlacedStringIn],
        Field(
            min_length=1,
            max_length=MOST_STRINGS,
            examples=[
                [{"pitch": "E4", "diameter": "0.712 mm", "unit_mass": 0.374, "R": 23.6, "saddle_setback": "2 mm"}]
            ],
        ),
    ]
    """The strings, 1 to 24, each with its setbacks."""

    @model_validator(mode="after")
    def _pitches_are_named(self) -> Self:
        refuse_unnamed_pitches(self.tuning, self.strings)
        return self

    def to_domain(self) -> IntonationArguments:
        """Return what :func:`~scalewright.lutherie.intonation.intonate` takes."""
        setbacks = [Setbacks(string.saddle_setback, string.nut_setback) for string in self.strings]
        return IntonationArguments(self.setup(string_specs(self.tuning, self.strings)), setbacks)


# ---- The answer -----------------------------------------------------------------------------------------


class SoundedNoteOut(BaseModel):
    """How sharp one fretted note is with the open string in tune, and why."""

    model_config = _READ_OFF

    fret: int
    """Number of the fret."""
    cents: float
    """The error, positive sharp: `spacing` + `stretch` + `stiffness` + `geometry`, added in this order. [cent]"""
    spacing: float
    """Where the fret stands, for an ideal string that breaks at the ends of the scale. [cent]"""
    stretch: float
    """Tension and mass of the string, pressed down and thereby stretched. [cent]"""
    stiffness: float
    """Resistance to bending, which counts more the shorter the string. [cent]"""
    geometry: float
    """Lengths: setbacks of saddle and nut, and the slope of the string. [cent]"""


class StringIntonationOut(OpenStringOut):
    """One string at all its frets."""

    saddle_setback: LengthOut
    """From the end of the scale to the break point on the saddle, positive away from the nut. [unit]"""
    nut_setback: LengthOut
    """From the pattern's zero line to the nut's front edge, positive away from fret 1. [unit]"""
    saddle_from_nut: LengthOut
    """From the nut's front edge to the break point, parallel to the fret plane. [unit]"""
    rms_cents: float
    """Root mean square of the errors at all frets. [cent]"""
    worst_fret: int
    """Fret with the largest error."""
    worst_cents: float
    """Error there. [cent]"""
    cents: list[SoundedNoteOut]
    """Errors at every fret."""


class IntonationOut(Reply):
    """How far out of tune a strung board is."""

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
    heights: HeightsOut
    """How high the strings were taken to lie."""
    relief: ReliefOut | None
    """How far the fret tops were taken to leave the straight line; null where they lie on it."""
    target_cents: list[float]
    """Pitch above the open string that every fret should give. [cent]"""
    boundary_factor: float
    """Ends of the speaking length that were taken as clamped."""
    stiffness: StiffnessModel
    """What the stiffness of a fretted note followed."""
    strings: list[StringIntonationOut]
    """The strings, in the order given."""
    notes: list[Note]
    """What the numbers of all strings rest on."""

    @classmethod
    def to_svg(cls, intonation: Intonation, _: AnswerContext) -> bytes:
        """Draw the error of every string at every fret."""
        return write_svg(intonation_plot(intonation))

    @classmethod
    def file_title(cls, _: Intonation, __: AnswerContext) -> str:
        """Name of a file with this picture."""
        return "intonation"
