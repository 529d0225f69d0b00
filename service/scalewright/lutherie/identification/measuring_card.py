"""A measuring card: the fewest frets to read so that the rules can be told apart."""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import ImpossibleReadingError, TooFewReadingsError
from scalewright.lutherie.estimate import Floats, Note
from scalewright.lutherie.identification.candidates import DEFAULT_CANDIDATES, FreeDivisor
from scalewright.lutherie.measure import LEAST_UNCERTAINTY, Instrument
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL

__all__ = ["MeasuringCard", "Step", "measuring_card"]

_USUAL_SCATTER = 0.05
"""Taken for the tool where nothing is known: the median of what tools do. [mm]"""

_EXHAUSTIVE = 30_000
"""So many sets of frets are compared one by one; beyond that the best set is grown and improved by exchange."""

_MOST_READINGS = 24
"""A card with more frets than this is no card."""


@dataclass(frozen=True, slots=True)
class Step:
    """The best set of a given number of frets."""

    readings: int
    """How many frets."""
    frets: list[int]
    """Which, ascending."""
    probability: float
    """Probability that the board's own rule will be established by them. [-]"""


@dataclass(frozen=True, slots=True)
class MeasuringCard:
    """Which frets to read on boards of a kind."""

    decides: bool
    """Whether the probability asked for is reached."""
    frets: list[int]
    """The frets to read from the nut: the smallest set that decides, or the best where none does."""
    probability: float
    """Probability that the board's own rule will be established by them, at the shortest scale. [-]"""
    scale: float
    """The scale for which that holds; longer ones are easier. [mm]"""
    steps: list[Step]
    """The best sets of two, three and more frets, up to the one that decides."""
    uncertainty_needed: float | None
    """Standard uncertainty of an instrument that would decide with these frets; None where none would. [mm]"""
    statement: str
    """What to do, in a sentence."""
    notes: list[Note]
    """Cautions."""


def measuring_card(
    instrument: Instrument,
    shortest_scale: float,
    frets: int,
    *,
    tooling_scatter: float | None = None,
    nut_deviation: float = 0.3,
    probability: float = 0.95,
    threshold: float = 0.95,
) -> MeasuringCard:
    """The smallest set of frets that decides between equal spacing and the rule of 18 with a given probability.

    Parameters
    ----------
    instrument : Instrument
        What the boards will be read with.
    shortest_scale : float
        The shortest layout scale to be expected; the rules lie closest there. [mm]
    frets : int
        Number of frets on the boards.
    tooling_scatter : float, optional
        Standard deviation of a fret about its place by the tool. [mm]
    nut_deviation : float
        Standard deviation of the nut's offset; 0 for a nut whose offset is known. [mm]
    probability : float
        Probability with which the board's own rule is to be established.
    threshold : float
        Posterior probability that establishes a rule.

    Returns
    -------
    MeasuringCard
        The frets, and how the probability grows with their number.

    Raises
    ------
    TooFewReadingsError
        Fewer than two frets.
    ImpossibleReadingError
        An instrument without any uncertainty.

    Notes
    -----
    With scale and nut offset free, one rule fitted to the other leaves a length L in units of the
    readings' standard deviation. If z is the standardised error along that direction, the logarithm
    of the likelihood ratio is L²/2 + L z. A free divisor lies along it too: its standard deviation is
    the distance of the two rules' divisors over L, and with a prior density of w against the rule's
    its marginal likelihood is w sqrt(2 pi) (17.817 - 18) / L exp(z²/2). The true rule passes a posterior
    threshold where the two together leave it enough; that is integrated over z. L² is the Schur
    complement of the normal matrix's sums, which add up over the frets: a set costs a handful of additions.
    """
    deviation = math.hypot(instrument.uncertainty, instrument.resolution / math.sqrt(12.0))
    scatter = _USUAL_SCATTER if tooling_scatter is None else tooling_scatter
    variance = deviation**2 + scatter**2
    if frets < 2:
        message = "a card needs two frets or more to choose from"
        raise TooFewReadingsError(message, field=("frets",), given=frets, needed=2)
    if deviation < LEAST_UNCERTAINTY:
        message = "readings without any uncertainty cannot be weighed; give the instrument's, for example 0.05 mm"
        raise ImpossibleReadingError(message, field=("instrument_uncertainty",))
    prior = 1.0 / nut_deviation**2 if nut_deviation > 0.0 else math.inf
    products = _products(frets)
    steps: list[Step] = []
    best: list[int] = []
    for count in range(2, min(frets, _MOST_READINGS) + 1):
        best = _best_set(products, count, prior * variance, best)
        length = shortest_scale * math.sqrt(_square(products[best].sum(axis=0), prior * variance) / variance)
        steps.append(Step(count, [int(k) + 1 for k in best], _chance(length, threshold)))
        if steps[-1].probability >= probability:
            break
    last = steps[-1]
    decides = last.probability >= probability
    needed = None
    if not decides:
        needed = _uncertainty_needed(products, last.frets, prior, scatter, shortest_scale, probability, threshold)
    return MeasuringCard(
        decides=decides,
        frets=last.frets,
        probability=last.probability,
        scale=shortest_scale,
        steps=steps,
        uncertainty_needed=needed,
        statement=_statement(last, needed, decides=decides),
        notes=_notes(tooling_scatter),
    )


def _products(frets: int) -> Floats:
    """What each fret adds to the normal matrix of (one rule, the other, the nut). shape (frets, 6)"""
    one, other = (np.array(spacing.fractions(rule, frets)) for rule in (EQUAL, EIGHTEENTH))
    return np.stack([one * one, one * other, one, other * other, other, np.ones(frets)], axis=1)


def _square(sums: Floats, prior: float) -> Floats:
    """Square of what one rule leaves when the other and a nut offset are fitted to it. shape (...)"""
    aa, ab, a, bb, b, n = np.moveaxis(np.asarray(sums), -1, 0)
    if math.isinf(prior):
        left = aa - ab * ab / bb
    else:
        n = n + prior
        left = aa - (ab * ab * n - 2.0 * ab * a * b + a * a * bb) / (bb * n - b * b)
    return np.maximum(left, 0.0)


def _best_set(products: Floats, count: int, prior: float, chosen: list[int]) -> list[int]:
    """The set of so many frets that leaves most, given the best set with one fret less."""
    frets = len(products)
    if len(chosen) < count - 1 or math.comb(frets, count) <= _EXHAUSTIVE:
        sets = np.array(list(itertools.combinations(range(frets), count)))
        return [int(k) for k in sets[int(np.argmax(_square(products[sets].sum(axis=1), prior)))]]
    # Grown by one from the set before, then improved by the best exchange for as long as one helps.
    rest = [k for k in range(frets) if k not in chosen]
    total = products[chosen].sum(axis=0)
    chosen = [*chosen, rest[int(np.argmax(_square(total + products[rest], prior)))]]
    while True:
        rest = [k for k in range(frets) if k not in chosen]
        total = products[chosen].sum(axis=0)
        if not rest:
            return sorted(chosen)
        after = _square(total - products[chosen][:, None] + products[rest], prior)
        place, new = divmod(int(np.argmax(after)), len(rest))
        if after[place, new] <= float(_square(total, prior)) * (1.0 + 1e-12):
            return sorted(chosen)
        chosen[place] = rest[new]


_Z = np.linspace(-6.0, 6.0, 2401)
_DENSITY = np.exp(-0.5 * _Z * _Z) / np.sum(np.exp(-0.5 * _Z * _Z))


def _chance(length: float, threshold: float) -> float:
    """Probability that the true rule passes the threshold, with the default candidates and priors."""
    if length <= 0.0:
        return 0.0
    rule, free = (candidate.prior for candidate in (DEFAULT_CANDIDATES[0], DEFAULT_CANDIDATES[-1]))
    width = min(math.sqrt(2.0 * math.pi) * (EIGHTEENTH.divisor - EQUAL.divisor) / length / _WINDOW, 1.0)
    others = np.exp(-0.5 * length * length - length * _Z) + free / rule * width * np.exp(0.5 * _Z * _Z)
    return float(np.sum(_DENSITY[others <= (1.0 - threshold) / threshold]))


_WINDOW = FreeDivisor().upper - FreeDivisor().lower


def _uncertainty_needed(
    products: Floats,
    frets: Sequence[int],
    prior: float,
    scatter: float,
    scale: float,
    probability: float,
    threshold: float,
) -> float | None:
    """Instrument's standard uncertainty with which these frets would decide."""
    rows = products[[fret - 1 for fret in frets]].sum(axis=0)

    def reached(uncertainty: float) -> bool:
        variance = uncertainty**2 + scatter**2
        length = scale * math.sqrt(float(_square(rows, prior * variance)) / variance)
        return _chance(length, threshold) >= probability

    low, high = 1e-4, 10.0
    if not reached(low):
        return None
    for _ in range(60):
        middle = math.sqrt(low * high)
        low, high = (middle, high) if reached(middle) else (low, middle)
    return low


def _statement(step: Step, needed: float | None, *, decides: bool) -> str:
    """What to do, in a sentence."""
    numbers = ", ".join(str(fret) for fret in step.frets)
    chance = f"a probability of {step.probability:.3f}"
    if decides:
        return f"Measure from the nut to frets {numbers}: that tells the rule with {chance}."
    if needed is None:
        wanted = "no finer instrument would mend that"
    else:
        wanted = f"an instrument with a standard uncertainty of {needed:.3f} mm would do"
    return (
        "This instrument cannot tell the rules apart as surely as asked; "
        f"frets {numbers} do so with {chance}, and {wanted}."
    )


def _notes(scatter: float | None) -> list[Note]:
    """Cautions."""
    notes = [
        Note(
            "room-for-a-blunder",
            "With three readings more than the card asks for, a misreading can be noticed and set aside.",
        )
    ]
    if scatter is not None:
        return notes
    text = f"The tool's scatter was not given and was taken as {_USUAL_SCATTER} mm, the median of what tools do."
    return [*notes, Note("tooling-scatter-assumed", text)]
