"""Many boards in, one answer for each: boards that were measured alike are judged together."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification.answer import Identification, answer
from scalewright.lutherie.identification.candidates import Beliefs
from scalewright.lutherie.identification.judge import NONE, Findings, judge
from scalewright.lutherie.identification.plan import Pattern
from scalewright.lutherie.measure import Survey

__all__ = ["identify", "identify_all"]

_CHUNK = 1024
"""Boards judged at once: their arrays then stay in a processor's cache."""

_ALIKE = 8
"""So many boards measured alike are worth a plan of their own."""

_SET_ASIDE = 8
"""One reading in so many may be set aside as a blunder, and at least one."""


@dataclass(frozen=True, slots=True)
class _Group:
    """Boards that are judged together: P patterns of M boards."""

    members: list[list[int]]
    """Which boards, by pattern."""
    pattern: Pattern
    readings: Floats
    scatter_known: bool


def identify(survey: Survey, beliefs: Beliefs | None = None) -> Identification:
    """Which rule a board was cut by.

    Parameters
    ----------
    survey : Survey
        The board's readings.
    beliefs : Beliefs, optional
        Candidates, priors and thresholds.

    Returns
    -------
    Identification
        Verdict, scales, candidates and advice.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the highest fret read and do not repeat.
    """
    return identify_all([survey], beliefs)[0]


def identify_all(surveys: Sequence[Survey], beliefs: Beliefs | None = None) -> list[Identification]:
    """Which rules many boards were cut by.

    Parameters
    ----------
    surveys : sequence of Survey
        The readings of each board, in any mixture of patterns.
    beliefs : Beliefs, optional
        Candidates, priors and thresholds, the same for all.

    Returns
    -------
    list of Identification
        In the order of the boards.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the highest fret read and do not repeat.
    """
    beliefs = Beliefs() if beliefs is None else beliefs
    found: list[Identification | None] = [None] * len(surveys)
    for group in _groups(surveys):
        _judge_group(group, surveys, beliefs, found)
    return [identification for identification in found if identification is not None]


def _groups(surveys: Sequence[Survey]) -> list[_Group]:
    """Boards sorted into groups that share a plan, or a stack of plans of one shape."""
    alike: dict[tuple[object, ...], list[int]] = defaultdict(list)
    for index, s in enumerate(surveys):
        alike[s.start, s.end, s.variance, s.edge, s.scatter, s.nut.standard_deviation, s.zero_fret].append(index)
    groups = []
    singles: dict[tuple[object, ...], list[int]] = defaultdict(list)
    for members in alike.values():
        if len(members) >= _ALIKE or len(alike) == 1:
            groups += [_group([members[i : i + _CHUNK]], surveys) for i in range(0, len(members), _CHUNK)]
        else:
            s = surveys[members[0]]
            # Alike in length too, to a power of two, so that padding costs little.
            shape = (s.nut.standard_deviation, s.zero_fret, s.scatter is None, len(s.end).bit_length())
            singles[shape] += members
    for members in singles.values():
        groups += [
            _group([[index] for index in members[i : i + _CHUNK]], surveys) for i in range(0, len(members), _CHUNK)
        ]
    return groups


def _group(members: list[list[int]], surveys: Sequence[Survey]) -> _Group:
    """Arrays of boards, padded to the longest."""
    kinds = [surveys[boards[0]] for boards in members]
    count = max(len(s.end) for s in kinds)
    shape = (len(members), count)
    pattern = Pattern(
        start=np.zeros(shape, dtype=np.int64),
        end=np.ones(shape, dtype=np.int64),
        used=np.zeros(shape, dtype=np.bool_),
        variance=np.ones(shape),
        edge=np.zeros(shape),
        scatter=np.array([0.0 if s.scatter is None else s.scatter for s in kinds]),
        nut_deviation=kinds[0].nut.standard_deviation,
        zero_fret=kinds[0].zero_fret,
    )
    readings = np.zeros((len(members), len(members[0]), count))
    for p, (boards, kind) in enumerate(zip(members, kinds, strict=True)):
        own = slice(0, len(kind.end))
        pattern.start[p, own] = kind.start
        pattern.end[p, own] = kind.end
        pattern.used[p, own] = True
        pattern.variance[p, own] = kind.variance
        pattern.edge[p, own] = kind.edge
        readings[p, :, own] = [surveys[board].distance for board in boards]
        offset = np.array([surveys[board].nut.mean for board in boards])
        if offset.any():
            readings[p, :, own] -= offset[:, None] * (np.array(kind.start) == 0)
    return _Group(members, pattern, readings, kinds[0].scatter is not None)


def _judge_group(
    group: _Group, surveys: Sequence[Survey], beliefs: Beliefs, found: list[Identification | None]
) -> None:
    """Judge a group; where one reading stands against all the others, judge the board without it."""
    findings = judge(group.pattern, group.readings, beliefs, scatter_known=group.scatter_known)
    settled: dict[int, tuple[Findings, tuple[int, int], list[int]]] = {
        board: (findings, (p, m), []) for p, boards in enumerate(group.members) for m, board in enumerate(boards)
    }
    todo: list[tuple[int, int, int, list[int]]] = [(board, p, m, []) for board, (_, (p, m), _) in settled.items() if findings.suspect[p, m] >= 0]
    pattern, readings = group.pattern, group.readings
    while todo:
        rows = np.array([p for _, p, _, _ in todo])
        aside = [[*before, int(findings.suspect[p, m])] for _, p, m, before in todo]
        readings = readings[rows, [m for _, _, m, _ in todo]][:, None, :]
        pattern = _without(pattern, rows, [done[-1] for done in aside])
        readings = np.where(pattern.used[:, None, :], readings, 0.0)
        findings = judge(pattern, readings, beliefs, scatter_known=group.scatter_known)
        again: list[tuple[int, int, int, list[int]]] = []
        for row, ((board, *_), done) in enumerate(zip(todo, aside, strict=True)):
            if findings.verdict[row, 0] != NONE:
                settled[board] = (findings, (row, 0), done)
            limit = max(1, len(surveys[board].distance) // _SET_ASIDE)
            if findings.suspect[row, 0] >= 0 and len(done) < limit:
                again.append((board, row, 0, done))
        todo = again
    for board, (source, place, done) in settled.items():
        found[board] = answer(source, place, surveys[board], done, beliefs)


def _without(pattern: Pattern, rows: np.ndarray[tuple[int], np.dtype[np.int64]], aside: list[int]) -> Pattern:
    """The patterns of some boards, each without one reading."""
    used = pattern.used[rows].copy()
    used[np.arange(len(rows)), aside] = False
    return Pattern(
        start=pattern.start[rows],
        end=pattern.end[rows],
        used=used,
        variance=pattern.variance[rows],
        edge=pattern.edge[rows],
        scatter=pattern.scatter[rows],
        nut_deviation=pattern.nut_deviation,
        zero_fret=pattern.zero_fret,
    )
