"""What a study of a tool says in words: the sentence for a work order, and the cautions."""

from collections.abc import Sequence
from typing import Protocol

from scalewright.lutherie.drift import FEWEST, Drift
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.variance import Variances

__all__ = ["notes_of", "statement_of"]

_CAPABLE = 1.33
"""Cpk that a process is usually asked for: common practice, no source. [-]"""


class _Moved(Protocol):
    @property
    def fret(self) -> int | None: ...
    @property
    def drift(self) -> Drift: ...


class _ToReset(Protocol):
    @property
    def fret(self) -> int: ...
    @property
    def move(self) -> float: ...


def statement_of(boards: int, worst_cpk: float | None, resets: Sequence[_ToReset], drifts: Sequence[_Moved]) -> str:
    """One sentence for a work order.

    Parameters
    ----------
    boards : int
        How many were measured.
    worst_cpk : float or None
        The smallest Cpk of all slots.
    resets : sequence
        Slots to be set again.
    drifts : sequence
        What moved over the sequence.

    Returns
    -------
    str
        What the tool is able to do, what moved and what to set.
    """
    able = "capability not known"
    if worst_cpk is not None:
        able = f"worst Cpk {worst_cpk:.2f}, {'capable' if worst_cpk >= _CAPABLE else 'not capable'}"
    moved = ""
    if drifts:
        moved = f"; {_drift_in_words(drifts[0])}"
        moved += f" ({len(drifts) - 1} more)" if len(drifts) > 1 else ""
    if not resets:
        return f"{boards} boards: {able}{moved}; no slot needs re-setting."
    listed = ", ".join(f"fret {one.fret} by {one.move:+.3f} mm" for one in resets[:6])
    more = f" and {len(resets) - 6} more" if len(resets) > 6 else ""
    return f"{boards} boards: {able}{moved}; re-set {listed}{more} (positive away from the nut)."


def _drift_in_words(moved: _Moved) -> str:
    what = "all slots" if moved.fret is None else f"fret {moved.fret}"
    if moved.drift.step is not None:
        step = moved.drift.step
        verb = "jump" if moved.fret is None else "jumps"
        return f"{what} {verb} by {step.size.value:+.3f} mm at board {step.at + 1}, as after a changed blade"
    verb = "drift" if moved.fret is None else "drifts"
    return f"{what} {verb} by {moved.drift.trend.value * 100.0:+.3g} mm in 100 boards"


def notes_of(boards: int, drifts: Sequence[_Moved], variances: Variances, instrument_uncertainty: float) -> list[Note]:
    """Cautions that come with a study.

    Parameters
    ----------
    boards : int
        How many were measured.
    drifts : sequence
        What moved over the sequence.
    variances : Variances
        The analysis of variance.
    instrument_uncertainty : float
        Standard uncertainty of one reading. [mm]

    Returns
    -------
    list of Note
        The one about safety last.
    """
    notes = []
    if boards < FEWEST:
        text = f"Fewer than {FEWEST} boards: drift was not looked for."
        notes.append(Note("too-few-for-drift", text))
    if any(one.drift.step is not None for one in drifts):
        text = (
            "The tool changed within the sequence, so its bias and capability mix two states; re-setting rests on the "
            "boards after the step alone."
        )
        notes.append(Note("two-states", text))
    if instrument_uncertainty > variances.within > 0.0:
        text = "The boards repeat better than the instrument is said to; its uncertainty may be overstated."
        notes.append(Note("instrument-overstated", text))
    text = (
        "Before setting a saw, a template or a CNC, stop it and cut its power; guard the blade, catch the dust, try a "
        "piece of scrap, and follow local codes and qualified practice."
    )
    notes.append(Note("before-setting", text))
    return notes
