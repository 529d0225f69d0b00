"""Parts: what may be said of a board, a bridge or a template."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from scalewright.lutherie.label import Label
from scalewright.lutherie.measure import Survey
from scalewright.lutherie.spacing import Rule

__all__ = ["FanScale", "Kind", "MadeTo", "Part", "Side", "Source", "Travel"]

Kind: TypeAlias = Literal["board", "neck_blank", "bridge", "saddle_template"]
"""A board carries frets, and so does a neck blank that is cut for them; a bridge and a template carry a saddle line."""

MadeTo: TypeAlias = Literal["true_scale", "string_length"]
"""What a stated length ends at: the end of the true scale, or the string's break point, setback included."""

Side: TypeAlias = Literal["whole", "bass", "treble"]
"""Which string line a length is along."""

Source: TypeAlias = Literal["readings", "definition", "label"]
"""What a part's true scale is known from."""


@dataclass(frozen=True, slots=True)
class FanScale:
    """True scales of a fan board along its two outer strings."""

    bass: float
    """Along the lowest string. [mm]"""
    treble: float
    """Along the highest string. [mm]"""


@dataclass(frozen=True, slots=True)
class Travel:
    """How far the break point can be moved from where the part puts it: a slot's room, or a saddle's screws."""

    towards_nut: float
    """[mm]"""
    away_from_nut: float
    """[mm]"""


@dataclass(frozen=True, slots=True)
class Part:
    """A part as it is described; one or more of scale, label and readings define it."""

    id: str
    """The caller's name for it."""
    kind: Kind
    """What it is."""
    true_scale: float | FanScale | None = None
    """Stated true scale, or string length; see :attr:`made_to`. [mm]"""
    layout_scale: float | None = None
    """Stated layout scale; together with a rule. [mm]"""
    rule: Rule | None = None
    """Stated spacing rule."""
    label: Label | None = None
    """Its label."""
    survey: Survey | None = None
    """What was measured on it."""
    tolerance: float = 0.0
    """How far its true scale may be from what is stated: half the width of a rectangular distribution. [mm]"""
    made_to: MadeTo = "true_scale"
    """What its stated true scale ends at."""
    setback: float | None = None
    """Setback that is in its string length. [mm]"""
    datum: Literal["nut", "fret"] = "nut"
    """What it is placed from."""
    datum_fret: int | None = None
    """The fret that it is placed from."""
    square_fret: int | None = None
    """The fret of a fan board that stays square to its centre line, 0 for the nut."""
    frets: int | None = None
    """Number of frets."""
    body_joint_fret: int | None = None
    """Fret at which the neck meets the body."""
    travel: Travel | None = None
    """How far its saddle can be moved."""

    @property
    def fretted(self) -> bool:
        """Whether it carries frets."""
        return self.kind in {"board", "neck_blank"}
