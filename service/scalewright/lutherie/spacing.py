"""Spacing rules: what fraction of a layout scale lies between the nut and each fret."""

import itertools
import math
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import ClassVar, TypeAlias

from scalewright.lutherie.errors import TooFewPitchesError
from scalewright.lutherie.phrases import counted, given

__all__ = [
    "CENTS_PER_OCTAVE",
    "EIGHTEENTH",
    "EQUAL",
    "MOST_FRETS",
    "OCTAVE_TOLERANCE_CENTS",
    "Divisor",
    "Eighteenth",
    "Equal",
    "Listed",
    "Rule",
    "cents",
    "fractions",
    "octave_fraction",
    "octave_fret",
    "octave_shortfall",
    "remainders",
    "step_cents",
    "step_shares",
    "true_remainders",
]

CENTS_PER_OCTAVE = 1200.0
"""An octave, by definition. [cent]"""

OCTAVE_TOLERANCE_CENTS = 0.01
"""How near to an octave a listed pitch must lie to be called one. [cent]"""

MOST_FRETS = 60
"""The most frets that a layout may have."""


@dataclass(frozen=True, slots=True)
class Equal:
    """Equal spacing: every step is the same interval, ``steps`` of them make an octave."""

    steps: int = 12
    name: ClassVar[str] = "equal"

    @property
    def divisor(self) -> float:
        """What the remaining length is divided by to place the next fret. [-]"""
        return -1.0 / math.expm1(-math.log(2.0) / self.steps)


@dataclass(frozen=True, slots=True)
class Eighteenth:
    """The rule of 18: each fret takes one eighteenth of the length that is left (V. Galilei, 1581)."""

    name: ClassVar[str] = "eighteenth"

    @property
    def divisor(self) -> float:
        """What the remaining length is divided by to place the next fret. [-]"""
        return 18.0


@dataclass(frozen=True, slots=True)
class Divisor:
    """Any constant divisor: each fret takes one part in ``divisor`` of the length that is left."""

    divisor: float
    name: ClassVar[str] = "divisor"


@dataclass(frozen=True, slots=True)
class Listed:
    """Listed pitches: one for each fret above the open string, ascending. [cent]

    With ``repeat`` the list starts again an octave higher where it ends.
    """

    cents: tuple[float, ...]
    repeat: bool = False
    name: ClassVar[str] = "listed"

    @property
    def divisor(self) -> None:
        """Listed pitches have no constant divisor."""
        return


Rule: TypeAlias = Equal | Eighteenth | Divisor | Listed

EQUAL = Equal()
EIGHTEENTH = Eighteenth()


def step_cents(rule: Rule) -> float | None:
    """Interval of one step, or None where the steps differ.

    Parameters
    ----------
    rule : Rule
        The spacing rule.

    Returns
    -------
    float or None
        Interval from one fret to the next. [cent]
    """
    match rule:
        case Equal(steps):
            return CENTS_PER_OCTAVE / steps
        case Eighteenth() | Divisor():
            return -CENTS_PER_OCTAVE * math.log1p(-1.0 / rule.divisor) / math.log(2.0)
        case Listed():
            return None


def cents(rule: Rule, frets: int) -> list[float]:
    """Interval of every fret above the open string that the rule intends for an ideal string.

    The same as 1200 log2(S / (S - x)) for a fret at distance x on a layout scale S.

    Parameters
    ----------
    rule : Rule
        The spacing rule.
    frets : int
        Number of frets.

    Returns
    -------
    list of float, length frets
        Intervals of frets 1, 2, ... [cent]

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret and do not repeat.
    """
    match rule:
        case Listed(listed, repeat):
            if repeat:
                return [
                    listed[(fret - 1) % len(listed)] + CENTS_PER_OCTAVE * ((fret - 1) // len(listed))
                    for fret in range(1, frets + 1)
                ]
            if len(listed) < frets:
                message = (
                    f"a board of {counted(frets, 'fret')} needs as many listed pitches, and {given(len(listed))}; "
                    'give one for each fret, or add "repeat": true to repeat them by octaves'
                )
                raise TooFewPitchesError(message, field=("rule", "cents"), given=len(listed), needed=frets)
            return list(listed[:frets])
        case Equal(steps):
            return [CENTS_PER_OCTAVE * fret / steps for fret in range(1, frets + 1)]
        case _:
            step = -CENTS_PER_OCTAVE * math.log1p(-1.0 / rule.divisor) / math.log(2.0)
            return [step * fret for fret in range(1, frets + 1)]


def fractions(rule: Rule, frets: int) -> list[float]:
    """Share of the layout scale that lies between the nut and every fret.

    Parameters
    ----------
    rule : Rule
        The spacing rule.
    frets : int
        Number of frets.

    Returns
    -------
    list of float, length frets
        Fractions of frets 1, 2, ..., each within 2 units in the last place. [-]

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret and do not repeat.

    Notes
    -----
    PHYSICS of the rules: equal S (1 - 2^(-n/N)), eighteenth S (1 - (17/18)^n), any constant
    divisor d S (1 - (1 - 1/d)^n), listed pitches S (1 - 2^(-c/1200)). ``expm1`` keeps the digits
    that 1 - 2^(-x) would lose near the nut; whole numbers keep the rule of 18 exact.
    """
    match rule:
        case Equal(steps):
            return [-math.expm1(-fret * math.log(2.0) / steps) for fret in range(1, frets + 1)]
        case Eighteenth():
            return [(18**fret - 17**fret) / 18**fret for fret in range(1, frets + 1)]
        case Divisor(divisor):
            step = math.log1p(-1.0 / divisor)
            return [-math.expm1(fret * step) for fret in range(1, frets + 1)]
        case Listed():
            return [-math.expm1(-c * math.log(2.0) / CENTS_PER_OCTAVE) for c in cents(rule, frets)]


def remainders(rule: Rule, frets: int) -> list[float]:
    """Share of the layout scale that lies between every fret and the layout end.

    One minus :func:`fractions`, with all its digits where little is left.

    Parameters
    ----------
    rule : Rule
        The spacing rule.
    frets : int
        Number of frets.

    Returns
    -------
    list of float, length frets
        Remainders of frets 1, 2, ... [-]

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret and do not repeat.
    """
    match rule:
        case Equal(steps):
            return [math.exp2(-fret / steps) for fret in range(1, frets + 1)]
        case Eighteenth():
            return [17**fret / 18**fret for fret in range(1, frets + 1)]
        case Divisor(divisor):
            step = math.log1p(-1.0 / divisor)
            return [math.exp(fret * step) for fret in range(1, frets + 1)]
        case Listed():
            return [math.exp2(-c / CENTS_PER_OCTAVE) for c in cents(rule, frets)]


def step_shares(rule: Rule, frets: int) -> list[float]:
    """Share that every fret takes of the length the fret before it left over.

    Parameters
    ----------
    rule : Rule
        The spacing rule.
    frets : int
        Number of frets.

    Returns
    -------
    list of float, length frets
        The reciprocal of the divisor; for listed pitches a share of its own for each fret. [-]

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret and do not repeat.
    """
    if isinstance(rule, Listed):
        frets = len(cents(rule, frets))
        # Taken within the list: a pitch some octaves up has fewer digits behind the point.
        first, *others = [above - below for below, above in itertools.pairwise((0.0, *rule.cents))]
        again = (CENTS_PER_OCTAVE - rule.cents[-1]) + rule.cents[0]
        intervals = [first, *itertools.islice(itertools.cycle((*others, again)), frets - 1)]
        return [-math.expm1(-interval * math.log(2.0) / CENTS_PER_OCTAVE) for interval in intervals]
    # The same number as the first fraction, so that fret 1 stands at one place.
    return fractions(rule, 1) * frets


def octave_fret(rule: Rule) -> int | None:
    """Number of the fret that stands for the octave, or None where a rule has none.

    Parameters
    ----------
    rule : Rule
        The spacing rule.

    Returns
    -------
    int or None
        N for equal spacing in N steps; for a constant divisor the whole number of steps nearest to
        an octave; for listed pitches the entry within :data:`OCTAVE_TOLERANCE_CENTS` of an octave.
    """
    match rule:
        case Equal(steps):
            return steps
        case Eighteenth() | Divisor():
            return _nearest_to_octave(rule.divisor)
        case Listed(listed, repeat):
            if repeat:
                # A list that stops short of its octave may still reach it as its next repeat.
                listed = (*listed, *(c + CENTS_PER_OCTAVE for c in listed))
            near = [n for n, c in enumerate(listed, 1) if abs(c - CENTS_PER_OCTAVE) <= OCTAVE_TOLERANCE_CENTS]
            return near[0] if near else None


@lru_cache(maxsize=256)
def octave_fraction(rule: Rule) -> float | None:
    """Share of the layout scale that lies between the nut and the octave fret.

    Half the true scale of a board laid out from a unit length; None where there is no octave fret.
    """
    octave = octave_fret(rule)
    return None if octave is None else fractions(rule, octave)[-1]


def true_remainders(rule: Rule, frets: int) -> list[float] | None:
    """Share of the layout scale that lies between every fret and the true end; None without an octave fret.

    Twice :func:`octave_fraction` minus :func:`fractions`, with its digits kept.

    Parameters
    ----------
    rule : Rule
        The spacing rule.
    frets : int
        Number of frets.

    Returns
    -------
    list of float, length frets, or None
        Remainders of frets 1, 2, ...; negative for a fret beyond the true end. [-]

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret and do not repeat.

    Notes
    -----
    The layout end lies 2 r^o - 1 of the layout scale behind the true end, with r^o what is left at the
    octave fret; that is subtracted from :func:`remainders`. Where a fret happens to stand near the true
    end the digits cancel, and for a constant divisor whole numbers give them back.
    """
    left = remainders(rule, frets)
    match rule:
        case Equal():
            return left
        case Listed():
            octave = octave_fret(rule)
            if octave is None:
                return None
            # The difference of two nearly equal numbers is exact, and expm1 keeps its digits.
            overhang = math.expm1((CENTS_PER_OCTAVE - cents(rule, octave)[-1]) * math.log(2.0) / CENTS_PER_OCTAVE)
            return [share - overhang for share in left]
        case Eighteenth() | Divisor():
            octave = _nearest_to_octave(rule.divisor)
            over, under = rule.divisor.as_integer_ratio()
            overhang = 2.0 * remainders(rule, octave)[-1] - 1.0
            shares = [share - overhang for share in left]
            for index, share in enumerate(shares):
                if abs(share) < _FEW_DIGITS_LEFT:
                    exact = _power(over - under, over, index + 1) - (2 * _power(over - under, over, octave) - 1)
                    shares[index] = exact.numerator / exact.denominator
            return shares


_FEW_DIGITS_LEFT = 1e-2
"""A difference of shares below which too few of their sixteen digits would be left. [-]"""


def _nearest_to_octave(divisor: float) -> int:
    """Whole number of steps that comes nearest to an octave."""
    return max(1, round(math.log(2.0) / -math.log1p(-1.0 / divisor)))


def _power(over: int, under: int, exponent: int) -> Fraction:
    return Fraction(over**exponent, under**exponent)


def octave_shortfall(rule: Rule) -> float | None:
    """How far the octave fret stops short of an octave when the bridge stands at the layout end. [cent]"""
    octave = octave_fret(rule)
    return None if octave is None else CENTS_PER_OCTAVE - cents(rule, octave)[-1]
