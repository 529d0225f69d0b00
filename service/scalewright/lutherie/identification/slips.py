"""Slips that spoil a whole board: a miscounted fret, a wrong origin, the wrong unit, steps taken for distances."""

import dataclasses
import itertools
from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.estimate import Floats, Note
from scalewright.lutherie.identification.candidates import Beliefs
from scalewright.lutherie.identification.columns import Row
from scalewright.lutherie.identification.judge import NONE
from scalewright.lutherie.identification.words import rule_in_words
from scalewright.lutherie.measure import NutOffset, Survey
from scalewright.lutherie.phrases import plain
from scalewright.lutherie.spacing import Divisor

__all__ = ["is_unusual", "slips"]

_INCH = 25.4
"""One inch, exactly. [mm]"""

_USUAL_SCALES = (200.0, 1300.0)
"""Scales of fretted instruments from the smallest to basses: common practice, no source. [mm]"""

_FAR_NUT = NutOffset(0.0, 15.0)
"""A nut that is no nut: a zero fret stands before it, or the tape was hooked over the end of the board. [mm]"""

_NEAR_NUT = 2.0
"""An offset no larger than this needs no such explanation. [mm]"""

_MISCOUNTED_READINGS = 40
"""With more readings than this each place for a miscount is not tried."""

_PLAIN = 0.01
"""A correction has to explain the readings at least so well."""

_Judge = Callable[[Sequence[Survey], Beliefs], list[Row]]


def is_unusual(scale: Floats) -> NDArray[np.bool_]:
    """Whether layout scales [mm] are none that fretted instruments have, so that there may be more to say."""
    return (scale < _USUAL_SCALES[0]) | (scale > _USUAL_SCALES[1])


def slips(survey: Survey, row: Row, beliefs: Beliefs, judge: _Judge) -> list[Note]:
    """Corrections that would explain a board which no rule explains.

    Parameters
    ----------
    survey : Survey
        The board's readings.
    row : Row
        What was found without any correction.
    beliefs : Beliefs
        Candidates, priors and thresholds.
    judge : callable
        Judges surveys; a row for each.

    Returns
    -------
    list of Note
        At most one, the correction after which a rule is established; the verdict stays as it is,
        as the person with the board has to say whether that is what happened.
    """
    scale = row.layout_scale[row.leader][0]
    small, large = _USUAL_SCALES
    if scale < small <= scale * _INCH <= large:
        text = f"If these are inches taken for millimetres, the scale is {plain(scale, 4)} in; check the unit."
        return [Note("looks-like-inches", text)]
    if scale > large >= scale / _INCH >= small:
        text = f"If these are millimetres taken for inches, the scale is {plain(scale / _INCH, 4)} mm; check the unit."
        return [Note("looks-like-millimetres", text)]
    if row.verdict != NONE:
        return []
    # What differs in what is known of the nut is judged apart.
    kinds = [kind for kind in (_far_nut(survey), [*_as_steps(survey), *_miscounts(survey, beliefs.most_frets)]) if kind]
    explained = [
        (r.p_value[r.leader], note(r, beliefs))
        for kind in kinds
        for (note, _), r in zip(kind, judge([candidate for _, candidate in kind], beliefs), strict=True)
        if r.verdict != NONE and r.degrees_of_freedom[r.leader] > 1 and r.p_value[r.leader] > _PLAIN
    ]
    best = max(explained, key=lambda pair: pair[0], default=None)
    return [] if best is None or best[1] is None else [best[1]]


_Correction = tuple[Callable[[Row, Beliefs], Note | None], Survey]


def _rule(row: Row, beliefs: Beliefs) -> str:
    """The rule that a row is led by, in words."""
    return rule_in_words([*beliefs.fixed_rules, Divisor(row.divisor)][row.leader])


def _from_nut(survey: Survey) -> bool:
    return not any(survey.procedure.start) and len(set(survey.procedure.end)) == len(survey.procedure.end)


def _as_steps(survey: Survey) -> list[_Correction]:
    """Steps from fret to fret that were sent as distances from the nut."""
    if not _from_nut(survey) or len(survey.distance) < 3:
        return []
    order = sorted(range(len(survey.distance)), key=lambda k: survey.procedure.end[k])
    distances = [survey.distance[k] for k in order]
    if all(a < b for a, b in itertools.pairwise(distances)):
        return []
    ends = [survey.procedure.end[k] for k in order]
    starts = dict(zip(ends, [0, *ends], strict=False))
    procedure = dataclasses.replace(survey.procedure, start=tuple(starts[end] for end in survey.procedure.end))

    def note(row: Row, beliefs: Beliefs) -> Note:
        text = f"As readings from fret to fret these are explained by {_rule(row, beliefs)}; send them as fret_to_fret."
        return Note("looks-fret-to-fret", text)

    return [(note, Survey(procedure, survey.distance))]


def _far_nut(survey: Survey) -> list[_Correction]:
    """An origin that lies well away from the pattern's zero line."""
    if 0 not in survey.procedure.start:
        return []
    procedure = dataclasses.replace(survey.procedure, nut=_FAR_NUT, zero_fret=False)

    def note(row: Row, beliefs: Beliefs) -> Note | None:
        offset = row.nut_offset[row.leader][0]
        if abs(offset) < _NEAR_NUT:
            return None
        side = "behind" if offset > 0.0 else "in front of"
        text = (
            f"Measured from a point {abs(offset):.1f} mm {side} the pattern's zero line these are explained by "
            f"{_rule(row, beliefs)}: a zero fret, or the end of the board, may have been taken for the nut; "
            'measure from the nut\'s front edge, or from the zero fret with "origin": "zero_fret".'
        )
        return Note("looks-like-another-origin", text)

    return [(note, Survey(procedure, survey.distance))]


def _miscounts(survey: Survey, most_frets: int) -> list[_Correction]:
    """One fret skipped or counted twice: from there on all numbers are off by one."""
    procedure = survey.procedure
    frets = sorted({*procedure.end, *procedure.start} - {0})
    if len(procedure.end) > _MISCOUNTED_READINGS or len(frets) < 4:
        return []
    found: list[_Correction] = []
    for fret in frets:
        for shift in (-1, 1):
            renumbered = {f: f + shift if f >= fret else f for f in [0, *frets]}
            if len(set(renumbered.values())) < len(renumbered) or max(renumbered.values()) > most_frets:
                continue
            moved = dataclasses.replace(
                procedure,
                start=tuple(renumbered[f] for f in procedure.start),
                end=tuple(renumbered[f] for f in procedure.end),
            )
            found.append((_miscount_note(fret, shift), Survey(moved, survey.distance)))
    return found


def _miscount_note(fret: int, shift: int) -> Callable[[Row, Beliefs], Note]:
    def note(row: Row, beliefs: Beliefs) -> Note:
        slip = "a fret was counted twice" if shift < 0 else "a fret was skipped"
        text = (
            f"If {slip} before fret {fret}, so that it and all higher ones are really one "
            f"{'lower' if shift < 0 else 'higher'}, {_rule(row, beliefs)} explains the readings; count again."
        )
        return Note("looks-miscounted", text)

    return note
