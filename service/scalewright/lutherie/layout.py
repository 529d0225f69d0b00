"""Fret layouts: where the frets of a board go."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import OutsideScaleError
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


@dataclass(frozen=True, slots=True)
class Layout:
    """A fret layout."""

    rule: Rule
    """The spacing rule."""
    layout_scale: float
    """The length that the rule was applied to. [mm]"""
    true_scale: float | None
    """Twice the distance from the nut to the octave fret; None where there is no octave fret. [mm]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave, on the board or beyond it."""
    frets: list[Fret]
    """The frets, from the nut on."""


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
    true_scale = scale if basis == "true" else true_scale_of(rule, layout_scale)
    # How far the layout end lies behind the true end; the remainder of the layout scale keeps the
    # digits that a difference of two nearly equal lengths would lose at the upper frets.
    overhang = None if true_scale is None else layout_scale - true_scale
    rows: list[Fret] = []
    left = layout_scale
    columns = zip(
        spacing.fractions(rule, frets),
        spacing.remainders(rule, frets),
        spacing.step_shares(rule, frets),
        spacing.cents(rule, frets),
        strict=True,
    )
    for number, (fraction, remainder, share, cents) in enumerate(columns, 1):
        from_previous = left * share
        left = layout_scale * remainder
        rows.append(
            Fret(
                fret=number,
                from_nut=layout_scale * fraction,
                from_previous=from_previous,
                to_layout_end=left,
                to_true_end=None if overhang is None else left - overhang,
                cents=cents,
            )
        )
    return Layout(rule, layout_scale, true_scale, spacing.octave_fret(rule), rows)
