"""Fret layouts: where the frets of a board go."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, TypeAlias

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import OutsideScaleError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.spacing import Rule

__all__ = ["Fret", "Layout", "ScaleBasis", "lay_out", "layout_scale_of", "true_scale_of"]

ScaleBasis: TypeAlias = Literal["layout", "true"]
"""Which length a number names: the one the rule is applied to, or twice nut to octave fret."""


@dataclass(frozen=True, slots=True)
class Fret:
    """Where one fret stands."""

    fret: int
    """Number of the fret, counted from the nut."""
    from_nut: float
    """Distance from the nut. [mm]"""
    from_previous: float
    """Distance from the fret before it, or from the nut for fret 1. [mm]"""
    to_layout_end: float
    """Distance to the end of the layout scale. [mm]"""
    to_true_end: float | None
    """Distance to the end of the true scale, where a bridge is measured from; None without one. [mm]"""
    cents: float
    """1200 log2(S / (S - from_nut)), with S the layout scale. [cent]"""


_NO_OCTAVE = Note(
    "no-octave-fret",
    "None of these frets stands for the octave, so the board has no true scale to place a bridge by.",
)


@dataclass(frozen=True, slots=True)
class Layout:
    """A fret layout, column by column; :attr:`frets` has it row by row."""

    rule: Rule
    """The spacing rule."""
    layout_scale: float
    """The length that the rule was applied to. [mm]"""
    true_scale: float | None
    """Twice the distance from the nut to the octave fret; None where there is no octave fret. [mm]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave, on the board or beyond it."""
    from_nut: list[float]
    """Distances from the nut, fret 1 first. [mm]"""
    from_previous: list[float]
    """Distances from the fret before, or from the nut for fret 1. [mm]"""
    to_layout_end: list[float]
    """Distances to the end of the layout scale. [mm]"""
    to_true_end: list[float] | None
    """Distances to the end of the true scale, where a bridge is measured from; None without one. [mm]"""
    cents: list[float]
    """1200 log2(S / (S - from_nut)), with S the layout scale. [cent]"""

    @property
    def notes(self) -> list[Note]:
        """Cautions about the layout."""
        return [] if self.octave_fret is not None else [_NO_OCTAVE]

    @property
    def frets(self) -> list[Fret]:
        """The frets, from the nut on."""
        to_true_end = [None] * len(self.from_nut) if self.to_true_end is None else self.to_true_end
        columns = zip(self.from_nut, self.from_previous, self.to_layout_end, to_true_end, self.cents, strict=True)
        return [Fret(number, *row) for number, row in enumerate(columns, 1)]


@dataclass(frozen=True, slots=True)
class _Pattern:
    """A layout of a board whose layout scale is 1."""

    fractions: list[float]
    steps: list[float]
    remainders: list[float]
    true_remainders: list[float] | None
    cents: list[float]
    octave_fret: int | None
    true_scale: float | None


@lru_cache(maxsize=256)
def _pattern(rule: Rule, frets: int) -> _Pattern:
    """Pattern of a rule; few are in use at a time, and each takes longer than all that is made of it."""
    left = spacing.remainders(rule, frets)
    shares = zip([1.0, *left[:-1]], spacing.step_shares(rule, frets), strict=True)
    return _Pattern(
        fractions=spacing.fractions(rule, frets),
        steps=[before * share for before, share in shares],
        remainders=left,
        true_remainders=spacing.true_remainders(rule, frets),
        cents=spacing.cents(rule, frets),
        octave_fret=spacing.octave_fret(rule),
        true_scale=true_scale_of(rule, 1.0),
    )


def true_scale_of(rule: Rule, layout_scale: float) -> float | None:
    """True scale of a board laid out by a rule from a length; None without an octave fret. [mm]"""
    if isinstance(rule, spacing.Equal):
        return layout_scale
    half = spacing.octave_fraction(rule)
    return None if half is None else 2.0 * half * layout_scale


def layout_scale_of(rule: Rule, scale: float, basis: ScaleBasis) -> float:
    """Layout scale of a board whose layout or true scale is known.

    Parameters
    ----------
    rule : Rule
        The spacing rule.
    scale : float
        The scale. [mm]
    basis : {"layout", "true"}
        Which of the two it is.

    Returns
    -------
    float
        The length to apply the rule to. [mm]

    Raises
    ------
    OutsideScaleError
        A true scale together with a rule that has no octave fret.
    """
    if basis == "layout" or isinstance(rule, spacing.Equal):
        return scale
    half = spacing.octave_fraction(rule)
    if half is None:
        message = (
            "listed pitches without an octave have no true scale to start from; "
            'give the layout scale instead, or list a pitch of 1200 cents ("scale_basis": "layout")'
        )
        raise OutsideScaleError(message, field=("scale_basis",))
    return scale / (2.0 * half)


def lay_out(rule: Rule, scale: float, frets: int, basis: ScaleBasis = "layout") -> Layout:
    """Positions of the frets of a board.

    Parameters
    ----------
    rule : Rule
        The spacing rule.
    scale : float
        The scale. [mm]
    frets : int
        Number of frets, 1 to :data:`scalewright.lutherie.spacing.MOST_FRETS`.
    basis : {"layout", "true"}
        Whether ``scale`` is the layout scale or the true scale.

    Returns
    -------
    Layout
        The positions, in full double precision.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret and do not repeat.
    OutsideScaleError
        A true scale together with a rule that has no octave fret.
    """
    layout_scale = layout_scale_of(rule, scale, basis)
    pattern = _pattern(rule, frets)
    true_remainders = pattern.true_remainders
    if basis == "layout":
        true_scale = None if pattern.true_scale is None else layout_scale * pattern.true_scale
    else:
        true_scale = scale
    return Layout(
        rule=rule,
        layout_scale=layout_scale,
        true_scale=true_scale,
        octave_fret=pattern.octave_fret,
        from_nut=[layout_scale * share for share in pattern.fractions],
        from_previous=[layout_scale * share for share in pattern.steps],
        to_layout_end=[layout_scale * share for share in pattern.remainders],
        to_true_end=None if true_remainders is None else [layout_scale * share for share in true_remainders],
        cents=list(pattern.cents),
    )
