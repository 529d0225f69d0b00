"""Drift of a tool: what moved over the boards, all slots or one, and what to set again."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.drift import Drift, drift_of
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.student import student_quantile
from scalewright.lutherie.variance import Moments, middle_of

__all__ = ["Reset", "ToolingDrift", "drifts_of", "resets_of"]

_ENOUGH_OTHERS = 3
"""So many slots have a middle that one of them does not carry away."""

_RESET_ABOVE = 0.25
"""Share of the tolerance above which a bias is worth re-setting a slot: a convention. [-]"""


@dataclass(frozen=True, slots=True)
class Reset:
    """A slot that should be set again."""

    fret: int
    """Its fret."""
    move: float
    """How far to move it, positive away from the nut. [mm]"""
    since: int
    """Index of the first board, from 0, that this rests on."""


@dataclass(frozen=True, slots=True)
class ToolingDrift:
    """What moved over the sequence of boards."""

    fret: int | None
    """The slot that moved against the others; None where all moved together."""
    drift: Drift
    """How it moved. [mm]"""


def drifts_of(
    table: Floats,
    commanded: Floats,
    moments: Moments,
    frets: Sequence[int],
    significance: float,
    coverage: float,
) -> list[ToolingDrift]:
    """What moved: all slots together, or one against the middle of the others.

    Parameters
    ----------
    table : ndarray, shape (boards, slots)
        Positions from the tool's zero, in the order of their making. [mm]
    commanded : ndarray, shape (slots,)
        Where they should be. [mm]
    moments : Moments
        Of the table.
    frets : sequence of int
        Fret of each slot.
    significance : float
        Probability of a false alarm, over all slots together. [-]
    coverage : float
        Probability that an interval holds.

    Returns
    -------
    list of ToolingDrift
        All slots first.
    """
    allowed = significance / (len(frets) + 1)
    together = drift_of(moments.common, allowed, coverage)
    found = [] if together is None else [ToolingDrift(None, together)]
    if len(frets) < _ENOUGH_OTHERS:
        return found

    def against(common: Floats, slot: int) -> Drift | None:
        return drift_of(table[:, slot] - commanded[slot] - common, allowed, coverage)

    moved = [slot for slot in range(len(frets)) if against(moments.common, slot) is not None]
    others = [slot for slot in range(len(frets)) if slot not in moved]
    common = moments.common
    if moved and len(others) >= _ENOUGH_OTHERS:
        # A slot that moves drags the middle of all slots along a little; those that stay put do not.
        common = middle_of(table, commanded, others)
    for slot in moved:
        drift = against(common, slot)
        if drift is not None:
            found.append(ToolingDrift(frets[slot], drift))
    return found


def resets_of(
    table: Floats,
    commanded: Floats,
    frets: Sequence[int],
    drifts: Sequence[ToolingDrift],
    tolerance: float,
    significance: float,
    instrument_uncertainty: float = 0.0,
) -> list[Reset]:
    """Slots whose present bias is proved, and large enough to matter.

    Parameters
    ----------
    table : ndarray, shape (boards, slots)
        Positions from the tool's zero, in the order of their making. [mm]
    commanded : ndarray, shape (slots,)
        Where they should be. [mm]
    frets : sequence of int
        Fret of each slot.
    drifts : sequence of ToolingDrift
        What moved; after a step only the later boards count.
    tolerance : float
        How far a slot may lie from its place; a quarter of it is worth re-setting. [mm]
    significance : float
        Probability of a false alarm, over all slots together. [-]
    instrument_uncertainty : float
        Standard uncertainty of one reading, below which no spread is believed. [mm]

    Returns
    -------
    list of Reset
        In the order of the slots.
    """
    steps = {one.fret: one.drift.step.at for one in drifts if one.drift.step is not None}
    found = []
    for k, fret in enumerate(frets):
        since = max(steps.get(None, 0), steps.get(fret, 0))
        own = table[since:, k] - commanded[k]
        spread = max(float(np.std(own, ddof=1)), instrument_uncertainty)
        bias, deviation = float(np.mean(own)), spread / math.sqrt(len(own))
        certain = student_quantile(0.5 * significance / len(frets), len(own) - 1) * deviation
        if abs(bias) - certain > 0.0 and abs(bias) > _RESET_ABOVE * tolerance:
            found.append(Reset(fret, -bias, since))
    return found
