"""Spacing rules as the service answers them."""

from dataclasses import dataclass

__all__ = ["Rule", "RuleDescription", "Rules", "TemperamentDescription"]


@dataclass(frozen=True, slots=True)
class Rule:
    """A spacing rule. It may be given back to the client as the ``rule`` of another request."""

    name: str
    """ "equal", "eighteenth", "divisor" or "listed"."""
    divisor: float | None = None
    """What the remaining length is divided by to place the next fret; None for "listed". [-]"""
    steps: int | None = None
    """Steps to the octave; None but for "equal"."""
    cents: tuple[float, ...] | None = None
    """One pitch for each fret; None but for "listed". [cent]"""
    repeat: bool | None = None
    """Whether the list repeats by octaves; None but for "listed"."""


@dataclass(frozen=True, slots=True)
class RuleDescription:
    """One spacing rule that the service knows."""

    name: str
    """Its name in a request."""
    description: str
    """What it does, in a sentence."""
    parameters: tuple[str, ...]
    """What it takes beside its name."""
    divisor: float | None
    """What the remaining length is divided by, with the default parameters; None without one. [-]"""
    step_cents: float | None
    """Interval from one fret to the next, with the default parameters; None without one. [cent]"""
    octave_fret: int | None
    """Fret that stands for the octave, with the default parameters; None without one."""
    octave_shortfall_cents: float | None
    """How far it stops short of an octave when the bridge stands at the layout end; None without one. [cent]"""


@dataclass(frozen=True, slots=True)
class TemperamentDescription:
    """A listed temperament from published sources."""

    name: str
    """What a candidate of an identification calls it."""
    source: str
    """Where it was published."""
    cents: tuple[float, ...]
    """Cents above the open string, one for each fret; as they stand, the listed pitches of a layout. [cent]"""


@dataclass(frozen=True, slots=True)
class Rules:
    """The spacing rules that exist."""

    rules: tuple[RuleDescription, ...]
    """One description a rule."""
    temperaments: tuple[TemperamentDescription, ...]
    """Listed temperaments, for candidates of an identification or for listed pitches."""
