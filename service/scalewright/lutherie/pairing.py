"""Pairs of parts: the mismatch of their scales and saddle lines, and what it does to the notes."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product
from typing import Literal, TypeAlias

import numpy as np

from scalewright.lutherie import spacing
from scalewright.lutherie.deciding import USUAL_FRETS, DecidingReadings, Prospects, deciding_readings
from scalewright.lutherie.decision import Decision, Mixture, Mixtures, decide, probability_within
from scalewright.lutherie.errors import refused_at
from scalewright.lutherie.estimate import Estimate, Floats
from scalewright.lutherie.known import Hypothesis, Known
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.part import Side, Travel
from scalewright.lutherie.ruling import Interval
from scalewright.lutherie.spacing import CENTS_PER_OCTAVE, EQUAL, Listed, Rule

__all__ = [
    "Absorption",
    "CentsAtFret",
    "Demands",
    "Held",
    "Pair",
    "Within",
    "cents_of_shift",
    "distances_to_frets",
    "hold",
    "pair_of",
]

Within: TypeAlias = Literal["yes", "no", "undecided"]
"""Whether something is within reach."""

_REACH: dict[Decision, Within] = {"together": "yes", "apart": "no", "undecided": "undecided"}


@dataclass(frozen=True, slots=True)
class Demands:
    """How well parts have to agree, and how sure that has to be."""

    tolerance: float
    """How far two true scales may differ. [mm]"""
    guard_factor: float
    """Guard band in standard uncertainties. [-]"""
    coverage: float
    """Probability that a stated interval holds. [-]"""


@dataclass(frozen=True, slots=True)
class CentsAtFret:
    """What a misplaced saddle line does to one fretted note."""

    fret: int
    """Number of the fret."""
    cents: Estimate
    """Change of its pitch after the open string is tuned again; positive sharp. [cent]"""


@dataclass(frozen=True, slots=True)
class Absorption:
    """Whether the saddle's travel can take the mismatch up."""

    needed: float
    """How far the break point would have to move, positive away from the nut. [mm]"""
    absorbs: Within
    """Whether it can."""
    left: float
    """What stays of the mismatch with the saddle at the end of its travel. [mm]"""


@dataclass(frozen=True, slots=True)
class Pair:
    """Two parts along one string line."""

    first: str
    """The part that carries the frets; of two such, or of none, the one named first."""
    second: str
    """The other part."""
    side: Side
    """Along which string line."""
    decision: Decision
    """Whether they belong together."""
    mismatch: Estimate | None
    """True scale of the second minus that of the first; None where one cannot be told. [mm]"""
    saddle_mismatch: Estimate | None
    """Where the saddle line falls against the end of the true scale of the part that carries the frets, placed from
    its datum; positive too far from the nut. Of two boards: the first one's saddle line under the second. [mm]"""
    conformance_probability: float | None
    """Probability that the true scales differ by no more than the tolerance. [-]"""
    tolerance: float
    """How far the true scales may differ. [mm]"""
    guard_band: float | None
    """A mismatch has to lie so far inside or outside the tolerance to be decided. [mm]"""
    cents: list[CentsAtFret]
    """What the saddle mismatch does to fretted notes; empty where no part carries frets."""
    absorption: Absorption | None
    """Whether the saddle's travel takes it up; None where no part says how far its saddle moves."""
    deciding: DecidingReadings | None
    """What to measure where it cannot be decided."""


def distances_to_frets(hypotheses: Sequence[Hypothesis], frets: int, rule: Rule | None = None) -> Floats:
    """Distances from the pattern's zero line to its frets, as shares of the true scale. [-]

    Parameters
    ----------
    hypotheses : sequence of Hypothesis
        Possibilities for a part.
    frets : int
        Number of the last fret.
    rule : Rule, optional
        Rule to use where a possibility names none; equal spacing without it.

    Returns
    -------
    ndarray, shape (n_hypotheses, frets + 1)
        From the nut on; half for the octave fret.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret.
    """
    return np.stack([_shares(one.rule or rule or EQUAL, frets) for one in hypotheses])


@lru_cache(maxsize=256)
def _shares(rule: Rule, frets: int) -> Floats:
    """Distances from the nut to frets 0, 1, 2, ... by one rule. shape (frets + 1,)"""
    true_scale = true_scale_of(rule, 1.0)
    shares = np.array([0.0, *spacing.fractions(rule, frets)]) / (1.0 if true_scale is None else true_scale)
    shares.flags.writeable = False
    return shares


def _share(rule: Rule | None, fret: int) -> float:
    """Distance from the nut to one fret by a rule, or by equal spacing without one. [-]"""
    return float(_shares(rule or EQUAL, fret)[fret])


def cents_of_shift(true_scale: float, share: float, shift: float) -> float:
    """Change of a fretted note's interval when an ideal string's saddle line is moved.

    Parameters
    ----------
    true_scale : float
        From the nut to where the saddle line belongs. [mm]
    share : float
        Distance from the nut to the fret, as a share of the true scale. [-]
    shift : float
        How far the saddle line lies beyond its place; positive away from the nut. [mm]

    Returns
    -------
    float
        Positive sharp, the open string in tune. [cent]

    Notes
    -----
    A string of length L sounds 1/L: fret n rises by 1200 log2 of (X0 + e) X_n / ((X_n + e) X0) against what was
    intended, with X_n what is left from fret n to the saddle's place.
    """
    left = (1.0 - share) * true_scale
    return CENTS_PER_OCTAVE * (math.log1p(shift / true_scale) - math.log1p(shift / left)) / math.log(2.0)


@dataclass(frozen=True, slots=True)
class Held:
    """One part held against another, before the intervals of all pairs are reckoned together."""

    first: Known
    """The part that carries the frets; of two such, or of none, the one named first."""
    second: Known
    """The other part."""
    side: Side
    """Along which string line."""
    fretted: Known
    """Whose frets sound."""
    saddle: Known
    """Whose saddle line they sound against."""
    differences: Mixtures | None
    """Mismatch of the true scales, and that of the saddle line; None where one part cannot be told. [mm]"""

    @property
    def placed(self) -> Known:
        """Which of the two is placed by its datum: of two boards the new one, else the one with the saddle line."""
        return self.fretted if self.saddle.part.fretted else self.saddle

    @property
    def moved(self) -> Known:
        """Which of the two has the travel that counts."""
        return self.saddle if self.saddle.part.travel is not None else self.fretted


def hold(one: Known, other: Known, side: Side) -> Held:
    """Hold one part against another.

    Parameters
    ----------
    one, other : Known
        What is known of the two along one string line, in the order in which they were named.
    side : {"whole", "bass", "treble"}
        Which line that is.

    Returns
    -------
    Held
        For :func:`pair_of`.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the datum fret.
    """
    first, second = (other, one) if other.part.fretted and not one.part.fretted else (one, other)
    fretted, saddle = (second, first) if first.part.fretted and second.part.fretted else (first, second)
    if not (first.hypotheses and second.hypotheses):
        return Held(first, second, side, fretted, saddle, None)
    couples = list(product(first.hypotheses, second.hypotheses))
    weight = np.array([a.probability * b.probability for a, b in couples])
    scale = [b.true_scale - a.true_scale for a, b in couples]
    spread = [math.hypot(a.deviation, b.deviation) for a, b in couples]
    ordered = couples if fretted is first else [(b, a) for a, b in couples]
    held = Held(first, second, side, fretted, saddle, None)
    line, line_spread = _saddle_line(held, ordered)
    differences = Mixtures(
        weight / np.sum(weight), np.stack([scale, line], axis=1), np.stack([spread, line_spread], axis=1)
    )
    return replace(held, differences=differences)


def pair_of(held: Held, estimates: Sequence[Estimate], demands: Demands, prospects: Prospects) -> Pair:
    """What it means that two parts differ as they do.

    Parameters
    ----------
    held : Held
        The two parts.
    estimates : sequence of Estimate
        Of its ``differences``; empty where there are none. [mm]
    demands : Demands
        How well they have to agree.
    prospects : Prospects
        What more readings on the parts would tell.

    Returns
    -------
    Pair
        Mismatch, consequences and decision.
    """
    first, second = held.first, held.second
    limits = Interval(-demands.tolerance, demands.tolerance)
    if held.differences is None:
        return Pair(
            first=first.part.id,
            second=second.part.id,
            side=held.side,
            decision="undecided",
            mismatch=None,
            saddle_mismatch=None,
            conformance_probability=None,
            tolerance=demands.tolerance,
            guard_band=None,
            cents=[],
            absorption=None,
            deciding=deciding_readings(first, second, 0.0, demands.tolerance, demands.guard_factor, prospects),
        )
    scales, line = held.differences.quantity(0), held.differences.quantity(1)
    mismatch, saddle_mismatch = estimates
    decision = decide(scales, limits, demands.guard_factor)
    deciding = None
    if decision == "undecided":
        likeliest = second.hypotheses[0].true_scale - first.hypotheses[0].true_scale
        deciding = deciding_readings(first, second, likeliest, demands.tolerance, demands.guard_factor, prospects)
    return Pair(
        first=first.part.id,
        second=second.part.id,
        side=held.side,
        decision=decision,
        mismatch=mismatch,
        saddle_mismatch=saddle_mismatch,
        conformance_probability=probability_within(scales, limits),
        tolerance=demands.tolerance,
        guard_band=demands.guard_factor * mismatch.standard_uncertainty,
        cents=_cents(held.fretted, saddle_mismatch) if held.fretted.part.fretted else [],
        absorption=_absorption(held.moved.part.travel, line, demands),
        deciding=deciding,
    )


def _saddle_line(held: Held, couples: Sequence[tuple[Hypothesis, Hypothesis]]) -> tuple[list[float], list[float]]:
    """Where the saddle line falls beyond the end of the true scale of the part with the frets, and how surely. [mm]"""
    placed = held.placed
    fret = (placed.part.datum_fret or 0) if placed.part.datum == "fret" else 0
    means, deviations = [], []
    with refused_at((*placed.place, "datum_fret")):
        shares = [
            (_share(board.rule or line.rule, fret), _share(line.rule or board.rule, fret)) for board, line in couples
        ]
    for (board, line), (near, far) in zip(couples, shares, strict=True):
        mean = line.true_scale * (1.0 - far) - board.true_scale * (1.0 - near)
        spread = math.hypot(line.deviation * (1.0 - far), board.deviation * (1.0 - near))
        if fret == 0:
            # Placed from the nut's front edge. A board's nut offset and scale are anticorrelated, so that adding
            # their squares overstates the uncertainty.
            mean += line.nut_offset - board.nut_offset
            spread = math.hypot(spread, math.hypot(line.nut_deviation, board.nut_deviation))
        means.append(mean)
        deviations.append(spread)
    return means, deviations


def _cents(fretted: Known, shift: Estimate) -> list[CentsAtFret]:
    """Cents at frets 5, 12 and the last."""
    part = fretted.part
    leading = fretted.hypotheses[0]
    read = max(part.survey.procedure.end) if part.survey is not None else 0
    last = part.frets or max(USUAL_FRETS, read)
    if isinstance(leading.rule, Listed) and not leading.rule.repeat:
        last = min(last, len(leading.rule.cents))
    (shares,) = distances_to_frets([leading], last)
    found = []
    for fret in sorted({fret for fret in (5, 12, last) if fret <= last}):
        share = float(shares[fret])
        numbers = [
            cents_of_shift(leading.true_scale, share, max(e, 0.5 * (share - 1.0) * leading.true_scale))
            for e in (shift.value, shift.lower, shift.upper)
        ]
        slope = abs(numbers[1] - numbers[2]) / max(shift.upper - shift.lower, 1e-12)
        found.append(
            CentsAtFret(fret, Estimate(numbers[0], slope * shift.standard_uncertainty, min(numbers), max(numbers)))
        )
    return found


def _absorption(travel: Travel | None, line: Mixture, demands: Demands) -> Absorption | None:
    """Whether the travel of the saddle reaches the end of the true scale."""
    if travel is None:
        return None
    reach = Interval(-travel.away_from_nut, travel.towards_nut)
    shift = line.value
    held = min(max(shift, reach.lower), reach.upper)
    return Absorption(needed=-shift, absorbs=_REACH[decide(line, reach, demands.guard_factor)], left=shift - held)
