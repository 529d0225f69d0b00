"""Many boards in, one answer for each: boards that were measured alike are judged together."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeAlias

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification.answer import Identification, answer
from scalewright.lutherie.identification.candidates import Beliefs
from scalewright.lutherie.identification.columns import Boards, Columns, Row, tabulate
from scalewright.lutherie.identification.inquiry import Inquiry, inquire
from scalewright.lutherie.identification.judge import NONE, UNDECIDED, Findings, judge
from scalewright.lutherie.identification.next_reading import NextReading, advise
from scalewright.lutherie.identification.plan import Pattern
from scalewright.lutherie.identification.slips import slips
from scalewright.lutherie.measure import Procedure, Survey

__all__ = ["Finding", "Judged", "conclude", "identify", "identify_all", "judge_alike", "judge_singly"]

_CHUNK = 2048
"""Boards judged at once: their arrays then stay in a processor's cache."""

_STACK = 256
"""Boards of different patterns judged at once: each has matrices of its own."""

_ALIKE = 8
"""So many boards measured alike are worth a plan of their own."""

_SET_ASIDE = 8
"""One reading in so many may be set aside as a blunder, and at least one."""

_MOST_ASIDE = 4
"""But no more than this: a board with more of them should be measured again."""

Finding: TypeAlias = tuple[Row, list[int], NextReading | None]
"""What was found for a board, the readings that were set aside, and what to measure next."""

Place: TypeAlias = tuple[int, int]
"""Pattern and board."""


@dataclass(frozen=True, slots=True)
class Judged:
    """Boards that were judged together."""

    columns: Columns
    """What was found for all of them."""
    advice: dict[Place, NextReading]
    """What to measure next, by board, where that is open."""
    mended: dict[Place, Finding]
    """What was found, by board, where a reading had to be set aside first."""

    def finding(self, p: int, m: int) -> Finding:
        """What was found for one board."""
        return self.mended.get((p, m)) or (self.columns.row(p, m), [], self.advice.get((p, m)))


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
    beliefs = Beliefs() if beliefs is None else beliefs
    (judged,) = judge_alike(survey.procedure, np.array([survey.distance]), beliefs)
    return conclude(survey, judged.finding(0, 0), beliefs)


def conclude(survey: Survey, finding: Finding, beliefs: Beliefs) -> Identification:
    """Put what was found for a board into words, with the slip that would explain it where no rule does.

    Parameters
    ----------
    survey : Survey
        The board's readings.
    finding : tuple
        What was found for it.
    beliefs : Beliefs
        Candidates, priors and thresholds.

    Returns
    -------
    Identification
        Everything that is said about the board.
    """
    row, aside, advice = finding
    return answer(row, survey, aside, beliefs, advice, slips(survey, row, beliefs, _rows_of))


def _rows_of(surveys: Sequence[Survey], beliefs: Beliefs) -> list[Row]:
    """What is found for boards that are alike in number of readings and nut, every reading taken at its word."""
    boards = _stack(surveys, beliefs)
    columns = tabulate(judge(boards.inquiry, boards.readings), boards)
    return [columns.row(p, 0) for p in range(len(surveys))]


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
    alike: dict[Procedure, list[int]] = defaultdict(list)
    for index, survey in enumerate(surveys):
        alike[survey.procedure].append(index)
    found: list[Finding | None] = [None] * len(surveys)
    singles: list[int] = []
    for procedure, members in alike.items():
        if len(members) < _ALIKE:
            singles += members
            continue
        distances = np.array([surveys[member].distance for member in members])
        place = iter(members)
        for judged in judge_alike(procedure, distances, beliefs):
            for m in range(judged.columns.verdict.shape[1]):
                found[next(place)] = judged.finding(0, m)
    apart = judge_singly([surveys[member] for member in singles], beliefs)
    for member, finding in zip(singles, apart, strict=True):
        found[member] = finding
    return [
        conclude(survey, finding, beliefs)
        for survey, finding in zip(surveys, found, strict=True)
        if finding is not None
    ]


def judge_alike(procedure: Procedure, distances: Floats, beliefs: Beliefs) -> list[Judged]:
    """Judge boards that were all measured in the same way.

    Parameters
    ----------
    procedure : Procedure
        How they were measured, N readings each.
    distances : ndarray, shape (boards, N)
        The readings. [mm]
    beliefs : Beliefs
        Candidates, priors and thresholds.

    Returns
    -------
    list of Judged
        The boards in their order, a few thousand at a time, each as pattern 0.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the highest fret read and do not repeat.
    """
    inquiry, excess = _inquiry_of(procedure, beliefs)
    known = distances - excess
    nut_mean, scale_error = np.array([procedure.nut.mean]), np.array([procedure.scale_error])
    judged = []
    for first in range(0, len(known), _CHUNK):
        readings = np.ascontiguousarray(known[first : first + _CHUNK].T)[None]
        judged.append(_judge(Boards(inquiry, readings, nut_mean, scale_error)))
    return judged


@lru_cache(maxsize=32)
def _inquiry_of(procedure: Procedure, beliefs: Beliefs) -> tuple[Inquiry, Floats]:
    """What is asked of boards measured in one way, and what their readings have too much; the last few are kept."""
    return inquire(_pattern([procedure]), beliefs, scatter_known=procedure.scatter is not None), _excess(procedure)


def _excess(procedure: Procedure) -> Floats:
    """What is known to be too much in every reading, and the nut's expected offset. shape (N,) [mm]"""
    return np.array(procedure.offset) + procedure.nut.mean * (np.array(procedure.start) == 0)


def judge_singly(surveys: Sequence[Survey], beliefs: Beliefs) -> list[Finding]:
    """Judge boards that were each measured in a way of its own.

    Parameters
    ----------
    surveys : sequence of Survey
        The readings of each board.
    beliefs : Beliefs
        Candidates, priors and thresholds.

    Returns
    -------
    list of tuple
        For each board its row, the readings set aside, and the next reading to take.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the highest fret read and do not repeat.
    """
    stacks: dict[tuple[object, ...], list[int]] = defaultdict(list)
    for index, survey in enumerate(surveys):
        p = survey.procedure
        # Alike in length too, to a power of two, so that padding costs little.
        kind = (p.nut.standard_deviation, p.zero_fret, p.scatter is None, len(p.end).bit_length())
        stacks[kind].append(index)
    found: dict[int, Finding] = {}
    for members in stacks.values():
        for first in range(0, len(members), _STACK):
            chunk = members[first : first + _STACK]
            judged = _judge(_stack([surveys[member] for member in chunk], beliefs))
            found.update((member, judged.finding(p, 0)) for p, member in enumerate(chunk))
    return [found[index] for index in range(len(surveys))]


def _pattern(procedures: Sequence[Procedure]) -> Pattern:
    """Patterns of several ways to measure, padded to the longest; they agree on nut and zero fret."""
    shape = (len(procedures), max(len(p.end) for p in procedures))
    pattern = Pattern(
        start=np.zeros(shape, dtype=np.int64),
        end=np.ones(shape, dtype=np.int64),
        used=np.zeros(shape, dtype=np.bool_),
        variance=np.ones(shape),
        edge=np.zeros(shape),
        scatter=np.array([0.0 if p.scatter is None else p.scatter for p in procedures]),
        nut_deviation=procedures[0].nut.standard_deviation,
        zero_fret=procedures[0].zero_fret,
    )
    for row, p in enumerate(procedures):
        own = slice(0, len(p.end))
        pattern.start[row, own], pattern.end[row, own], pattern.used[row, own] = p.start, p.end, True
        pattern.variance[row, own], pattern.edge[row, own] = p.variance, p.edge
    return pattern


def _stack(surveys: Sequence[Survey], beliefs: Beliefs) -> Boards:
    """Boards of one pattern each."""
    procedures = [survey.procedure for survey in surveys]
    pattern = _pattern(procedures)
    readings = np.zeros((*pattern.start.shape, 1))
    for row, (survey, p) in enumerate(zip(surveys, procedures, strict=True)):
        readings[row, : len(p.end), 0] = np.array(survey.distance) - _excess(p)
    return Boards(
        inquire(pattern, beliefs, scatter_known=procedures[0].scatter is not None),
        readings,
        np.array([p.nut.mean for p in procedures]),
        np.array([p.scale_error for p in procedures]),
    )


def _judge(boards: Boards) -> Judged:
    """Judge boards; where one reading stands against all the others, judge the board without it."""
    findings = judge(boards.inquiry, boards.readings)
    judged = Judged(tabulate(findings, boards), _advice(findings, boards), {})
    if (findings.suspect < 0).all():
        return judged
    counts = np.sum(boards.inquiry.pattern.used, axis=1)
    todo = [(p, m, [int(findings.suspect[p, m])]) for p, m in np.argwhere(findings.suspect >= 0).tolist()]
    while todo:
        again = _without(boards, todo)
        findings = judge(again.inquiry, again.readings)
        columns, advice = tabulate(findings, again), _advice(findings, again)
        more = []
        for k, (p, m, aside) in enumerate(todo):
            if findings.verdict[k, 0] != NONE:
                judged.mended[p, m] = (columns.row(k, 0), aside, advice.get((k, 0)))
            suspect = int(findings.suspect[k, 0])
            if suspect >= 0 and len(aside) < min(max(1, int(counts[p]) // _SET_ASIDE), _MOST_ASIDE):
                more.append((p, m, [*aside, suspect]))
        todo = more
    return judged


def _advice(findings: Findings, boards: Boards) -> dict[Place, NextReading]:
    """What to measure next on the boards that are undecided."""
    found: dict[Place, NextReading] = {}
    undecided = findings.verdict == UNDECIDED
    if len(boards.inquiry.beliefs.candidates) < 2 or not undecided.any():
        return found
    for p in np.nonzero(undecided.any(axis=1))[0].tolist():
        members = np.nonzero(undecided[p])[0]
        advice = advise(findings, boards, p, members)
        found.update(((p, m), reading) for m, reading in zip(members.tolist(), advice, strict=True))
    return found


def _without(boards: Boards, todo: Sequence[tuple[int, int, list[int]]]) -> Boards:
    """Some of the boards, each as a pattern of its own and without some readings."""
    rows = np.array([p for p, _, _ in todo])
    columns = np.array([m for _, m, _ in todo])
    pattern = boards.inquiry.pattern
    used = pattern.used[rows].copy()
    for row, (_, _, aside) in enumerate(todo):
        used[row, aside] = False
    lessened = Pattern(
        start=pattern.start[rows],
        end=pattern.end[rows],
        used=used,
        variance=pattern.variance[rows],
        edge=pattern.edge[rows],
        scatter=pattern.scatter[rows],
        nut_deviation=pattern.nut_deviation,
        zero_fret=pattern.zero_fret,
    )
    return Boards(
        inquire(lessened, boards.inquiry.beliefs, scatter_known=boards.inquiry.scatters == 1),
        boards.readings[rows, :, columns][:, :, None],
        boards.nut_mean[rows],
        boards.scale_error[rows],
    )
