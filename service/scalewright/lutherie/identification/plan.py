"""What a fit needs to know of where the readings were taken, before it sees their values."""

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie import spacing
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification import curve
from scalewright.lutherie.measure import EDGE_HALF_WIDTH_UNCERTAINTY
from scalewright.lutherie.spacing import Rule

__all__ = ["Ints", "Pattern", "Plan", "covariance_of", "make_plan", "rule_table"]

Ints = NDArray[np.int64]
"""An array of whole numbers."""

_TERMS = ((12, 12), (24, 14), (36, 16), (spacing.MOST_FRETS, 20))
"""Highest fret and length of a free divisor's series up to it; its last terms are rounding (tested)."""

_ROUNDING = 1e-9
"""Part of a shape, beside the reference's 1, that may be rounding."""
_TOLD = 1e-9
"""Share of its own weight that the other readings must leave a reading to say anything of it."""


@dataclass(frozen=True, slots=True)
class Pattern:
    """Where the readings of P kinds of board were taken, N readings each, padded with unused ones."""

    start: Ints
    """Fret that each distance starts from. shape (P, N)"""
    end: Ints
    """Fret that it ends at. shape (P, N)"""
    used: NDArray[np.bool_]
    """False for padding and for readings set aside. shape (P, N)"""
    variance: Floats
    """Variance by the instrument. shape (P, N) [mm²]"""
    edge: Floats
    """Half widths of unknown size in each reading: -1, 0 or 1. shape (P, N)"""
    scatter: Floats
    """Standard deviation of the tool. shape (P,) [mm]"""
    nut_deviation: float
    """Standard deviation of the nut offset before measuring; 0 for a known offset, infinite for one
    about which nothing is known. [mm]"""
    zero_fret: bool
    """Whether fret 0 is a fret that the tool has set."""


@dataclass(frozen=True, slots=True)
class Plan:
    """P patterns made ready: whitened, the nut projected out, every candidate's shape laid against one.

    Readings y of a board become whitened rows (R = N, and one more that holds what is known of the
    nut). In them the reference shape is the unit vector u, and every other shape is proportional to
    u + t with t at right angles to u; t is small for rules that lie close, so that nothing is lost
    in differences of large numbers. A free divisor's t is a Chebyshev series of J terms.
    """

    whiten: Floats
    """Inverse of the lower Cholesky factor of the covariance, zero rows for unused readings. shape (P, N, N) [1/mm]"""
    scatter: Floats
    """Standard deviation of the tool. shape (P,) [mm]"""
    own: Floats
    """Weight of every reading by itself, the covariance's inverse's diagonal. shape (P, N) [1/mm²]"""
    readings: Ints
    """How many readings are used. shape (P,)"""
    bends: NDArray[np.bool_]
    """Whether the readings say anything of a divisor; those of one fret alone do not. shape (P,)"""
    nut: Floats | None
    """Unit vector of the nut offset. shape (P, R)"""
    nut_norm: Floats
    """Its length, 1 / standard deviation if all else were known; 1 with a known nut. shape (P,) [1/mm]"""
    nut_slope: Floats
    """What the nut offset loses for each unit of layout scale, by fixed rule. shape (F, P, 1) [-]"""
    log_weight: Floats
    """Logarithm of the readings' density that all candidates share. shape (P,)"""
    reference: Floats
    """The unit vector u. shape (P, R)"""
    shapes: Floats
    """t of every fixed rule. shape (P, F, R)"""
    lengths: Floats
    """How long a fixed rule's shape is along u. shape (F, P, 1) [1/mm]"""
    shape_squares: Floats
    """|t|² of every fixed rule. shape (F, P, 1)"""
    split: Floats
    """Matrix that splits readings into the remainder at right angles to u and the nut, the amplitude along u,
    and the nut offset with no board beside it [mm]. shape (P, R + 2, N) [1/mm]"""
    pull: Floats
    """Matrices that turn readings into deleted residuals under a fixed rule: how far each reading lies from what
    the others predict, in units of its standard deviation; 0 where they predict nothing. shape (F, P, N, N) [1/mm]"""
    pull_spread: Floats
    """That standard deviation. shape (F, P, N) [mm]"""
    shape_curves: Floats
    """t of a free divisor as a series, and its first two derivatives by the position x. shape (P, 3, J, R)"""
    scalar_curves: Floats
    """What else depends on x alone, as series: |t|², its first two derivatives, |dt/dx|², the length along u
    [1/mm] and its derivative, the nut's loss and its derivative. shape (P, 8, J)"""


@lru_cache(maxsize=64)
def rule_table(rules: tuple[Rule, ...], frets: int) -> Floats:
    """Share of the layout scale up to every fret, by rule.

    Parameters
    ----------
    rules : tuple of Rule
        F spacing rules.
    frets : int
        The highest fret wanted.

    Returns
    -------
    ndarray, shape (frets + 1, F)
        Row n is fret n, row 0 the nut.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the highest fret and do not repeat.
    """
    table = np.array([[0.0, *spacing.fractions(rule, frets)] for rule in rules]).reshape(len(rules), frets + 1).T
    # It is kept for the next who asks, and is not theirs to change.
    table.flags.writeable = False
    return table


def covariance_of(pattern: Pattern) -> Floats:
    """Covariance of the readings, the nut's offset excepted.

    A fret that the tool has set a little off shifts every reading that ends there, so that repeats,
    and the neighbours in readings taken fret to fret, are not independent.

    Parameters
    ----------
    pattern : Pattern
        P patterns of N readings.

    Returns
    -------
    ndarray, shape (P, N, N)
        Unused readings have a variance of one and no covariance. [mm²]
    """
    start, end = pattern.start, pattern.end
    placed = np.ones(start.shape) if pattern.zero_fret else (start > 0).astype(float)
    shared = (
        (end[:, :, None] == end[:, None, :]).astype(float)
        - (end[:, :, None] == start[:, None, :])
        - (start[:, :, None] == end[:, None, :])
        + (start[:, :, None] == start[:, None, :]) * placed[:, :, None]
    )
    covariance = shared * (pattern.scatter * pattern.scatter)[:, None, None]
    if pattern.edge.any():
        covariance += EDGE_HALF_WIDTH_UNCERTAINTY**2 * pattern.edge[:, :, None] * pattern.edge[:, None, :]
    diagonal = np.arange(start.shape[1])
    covariance[:, diagonal, diagonal] += pattern.variance
    both = pattern.used[:, :, None] & pattern.used[:, None, :]
    covariance = np.where(both, covariance, 0.0)
    covariance[:, diagonal, diagonal] += ~pattern.used
    return covariance


def make_plan(pattern: Pattern, table: Floats, frets: Floats | None = None) -> Plan:
    """Everything about P patterns that does not depend on the values read.

    Parameters
    ----------
    pattern : Pattern
        P patterns of N readings.
    table : ndarray, shape (frets + 1, F)
        Share of the layout scale up to every fret by fixed rule (:func:`rule_table`), at least to the
        highest fret read. [-]
    frets : ndarray, shape (n,), optional
        Where a free divisor takes the pattern's frets 0, 1, 2, ... to be; just there, if left out.

    Returns
    -------
    Plan
        The patterns made ready.
    """
    highest = int(pattern.end.max())
    places = np.arange(highest + 1.0) if frets is None else frets
    terms = next(terms for fret, terms in _TERMS if highest <= fret)
    fixed = table.shape[1]
    reference = -np.expm1(-math.log(2.0) / 12.0 * places)
    table = np.column_stack([table[: highest + 1], curve.fractions_at_nodes(places, terms), reference])
    covariance = covariance_of(pattern)
    whiten = np.linalg.inv(np.linalg.cholesky(covariance)) * pattern.used[:, :, None]
    rows = whiten @ (table[pattern.end] - table[pattern.start])
    log_weight = np.sum(np.log(np.where(pattern.used, np.diagonal(whiten, axis1=1, axis2=2), 1.0)), axis=1)

    nut: Floats | None = None
    nut_norm = np.ones(len(rows))
    slopes = np.zeros((len(rows), table.shape[1]))
    if pattern.nut_deviation > 0.0:
        prior = 1.0 / pattern.nut_deviation
        column = np.squeeze(whiten @ (pattern.start == 0).astype(float)[:, :, None], 2)
        column = np.concatenate([column, np.full((len(rows), 1), prior)], axis=1)
        rows = np.concatenate([rows, np.zeros((len(rows), 1, rows.shape[2]))], axis=1)
        nut_norm = np.linalg.norm(column, axis=1)
        nut = column / nut_norm[:, None]
        along = nut[:, None, :] @ rows
        rows = rows - nut[:, :, None] * along
        slopes = along[:, 0, :] / nut_norm[:, None]
        log_weight = log_weight + (math.log(prior) if prior > 0.0 else 0.0) - np.log(nut_norm)

    reference = rows[:, :, -1] / np.linalg.norm(rows[:, :, -1], axis=1)[:, None]
    lengths = np.squeeze(reference[:, None, :] @ rows, 1)
    shapes = rows / lengths[:, None, :] - reference[:, :, None]
    # Once more at right angles: what is left of u in t is rounding, and would be multiplied by the readings.
    shapes -= reference[:, :, None] * (reference[:, None, :] @ shapes)

    series, slope = curve.series(terms), curve.derivative(terms)
    at_nodes = shapes[:, :, fixed:-1]
    shape = np.swapaxes(at_nodes @ series, 1, 2)
    bent = slope.T @ shape
    shape_curves = np.stack([shape, bent, slope.T @ bent], axis=1)
    square = np.sum(at_nodes * at_nodes, axis=1) @ series
    speed = np.sum((curve.basis(curve.nodes(terms), terms).T @ bent) ** 2, axis=2) @ series
    length = lengths[:, fixed:-1] @ series
    loss = slopes[:, fixed:-1] @ series
    scalars = [square, square @ slope, square @ slope @ slope, speed, length, length @ slope, loss, loss @ slope]
    own = np.einsum("pij,pij->pj", whiten, whiten)
    pull, pull_spread = _pull(whiten, own, nut, reference, shapes[:, :, :fixed])
    return Plan(
        whiten=whiten,
        scatter=pattern.scatter,
        own=own,
        readings=np.sum(pattern.used, axis=1),
        bends=np.max(np.abs(at_nodes), axis=(1, 2)) > _ROUNDING,
        nut=nut,
        nut_norm=nut_norm,
        nut_slope=slopes[:, :fixed].T[:, :, None],
        log_weight=log_weight,
        reference=reference,
        shapes=np.ascontiguousarray(np.swapaxes(shapes[:, :, :fixed], 1, 2)),
        lengths=lengths[:, :fixed].T[:, :, None],
        shape_squares=np.sum(shapes[:, :, :fixed] ** 2, axis=1).T[:, :, None],
        split=_split(whiten, nut, nut_norm, reference),
        pull=pull,
        pull_spread=pull_spread,
        shape_curves=shape_curves,
        scalar_curves=np.stack(scalars, axis=1),
    )


def _split(whiten: Floats, nut: Floats | None, nut_norm: Floats, reference: Floats) -> Floats:
    """Matrix from readings to remainder, amplitude and nut. shape (P, R + 2, N)"""
    level = np.zeros((len(whiten), 1, whiten.shape[2]))
    rows = whiten
    if nut is not None:
        rows = np.concatenate([whiten, level], axis=1)
        along = nut[:, None, :] @ rows
        rows = rows - nut[:, :, None] * along
        level = along / nut_norm[:, None, None]
    amplitude = reference[:, None, :] @ rows
    return np.concatenate([rows - reference[:, :, None] * amplitude, amplitude, level], axis=1)


def _pull(whiten: Floats, own: Floats, nut: Floats | None, reference: Floats, shapes: Floats) -> tuple[Floats, Floats]:
    """Deleted residuals of every fixed rule: Q y / sqrt(diag Q), with Q = W' (I - oo' - vv') W.

    With o the nut's and v the rule's unit vector, z = Q y are the weighted residuals of the fit to all
    readings; a reading lies z / diag(Q) from what the others predict, with a variance of 1 / diag(Q).
    """
    readings = whiten.shape[1]
    unit = reference[:, :, None] + shapes
    unit = unit / np.linalg.norm(unit, axis=1)[:, None, :]
    back = np.swapaxes(whiten, 1, 2)
    along = np.moveaxis(back @ unit[:, :readings, :], 2, 0)[..., None]
    weight = back @ whiten
    if nut is not None:
        shift = back @ nut[:, :readings, None]
        weight = weight - shift @ np.swapaxes(shift, 1, 2)
    influence = weight - along @ np.swapaxes(along, 2, 3)
    diagonal = np.diagonal(influence, axis1=2, axis2=3)
    told = diagonal > _TOLD * own
    spread = 1.0 / np.sqrt(np.where(told, diagonal, 1.0))
    return influence * (spread * told)[..., None], spread
