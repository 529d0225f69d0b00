"""Many boards in, one answer for each: boards that were measured alike are judged together."""

from collections import defaultdict
from collections.abc import Sequence
from functools import lru_cache

import numpy as np

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification.answer import Identification, answer
from scalewright.lutherie.identification.candidates import Beliefs
from scalewright.lutherie.identification.columns import Boards, Row, tabulate
from scalewright.lutherie.identification.judge import NONE, UNDECIDED, Findings, judge, plan_of
from scalewright.lutherie.identification.next_reading import NextReading, advise
from scalewright.lutherie.identification.plan import Ints, Pattern, Plan
from scalewright.lutherie.measure import Procedure, Survey

__all__ = ["Finding", "identify", "identify_all", "judge_alike", "judge_singly"]

_CHUNK = 2048
"""Boards judged at once: their arrays then stay in a processor's cache."""

_STACK = 256
"""Boards of different patterns judged at once: each has matrices of its own."""

_ALIKE = 8
"""So many boards measured alike are worth a plan of their own."""

_SET_ASIDE = 8
"""One reading in so many may be set aside as a blunder, and at least one."""

Finding = tuple[Row, list[int], NextReading | None]
"""What was found for a board, the readings that were set aside, and what to measure next."""


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
    ((row, aside, advice),) = judge_alike(survey.procedure, np.array([survey.distance]), beliefs)
    return answer(row, survey, aside, beliefs, advice)


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
        for member, finding in zip(members, judge_alike(procedure, distances, beliefs), strict=True):
            found[member] = finding
    apart = judge_singly([surveys[member] for member in singles], beliefs)
    for member, finding in zip(singles, apart, strict=True):
        found[member] = finding
    return [
        answer(finding[0], survey, finding[1], beliefs, finding[2])
        for survey, finding in zip(surveys, found, strict=True)
        if finding is not None
    ]


def judge_alike(procedure: Procedure, distances: Floats, beliefs: Beliefs) -> list[Finding]:
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
    list of tuple
        For each board its row, the readings set aside, and the next reading to take.

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the highest fret read and do not repeat.
    """
    pattern = _pattern([procedure])
    plan = _plan_of(procedure, beliefs)
    nut = procedure.nut.mean * (np.array(procedure.start) == 0)
    known = distances - np.array(procedure.offset) - nut
    findings: list[Finding] = []
    for first in range(0, len(known), _CHUNK):
        readings = np.ascontiguousarray(known[first : first + _CHUNK].T)[None]
        boards = Boards(
            pattern,
            readings,
            np.array([procedure.nut.mean]),
            np.array([procedure.scale_error]),
            procedure.scatter is not None,
        )
        findings += _judge(boards, plan, beliefs)[0]
    return findings


@lru_cache(maxsize=32)
def _plan_of(procedure: Procedure, beliefs: Beliefs) -> Plan:
    """Plan of one way to measure; the last few are kept."""
    return plan_of(_pattern([procedure]), beliefs, scatter_known=procedure.scatter is not None)


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
        As from :func:`judge_alike`.

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
            boards = _stack([surveys[member] for member in chunk])
            plan = plan_of(boards.pattern, beliefs, scatter_known=boards.scatter_known)
            found.update(
                (member, rows[0]) for member, rows in zip(chunk, _judge(boards, plan, beliefs), strict=True)
            )
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


def _stack(surveys: Sequence[Survey]) -> Boards:
    """Boards of one pattern each."""
    procedures = [survey.procedure for survey in surveys]
    pattern = _pattern(procedures)
    readings = np.zeros((*pattern.start.shape, 1))
    for row, (survey, p) in enumerate(zip(surveys, procedures, strict=True)):
        own = slice(0, len(p.end))
        nut = p.nut.mean * (np.array(p.start) == 0)
        readings[row, own, 0] = np.array(survey.distance) - np.array(p.offset) - nut
    return Boards(
        pattern,
        readings,
        np.array([p.nut.mean for p in procedures]),
        np.array([p.scale_error for p in procedures]),
        procedures[0].scatter is not None,
    )


def _judge(boards: Boards, plan: Plan, beliefs: Beliefs) -> list[list[Finding]]:
    """Judge boards; where one reading stands against all the others, judge the board without it."""
    findings = judge(plan, boards.readings, beliefs, scatter_known=boards.scatter_known)
    found = _with_advice(findings, boards, beliefs)
    counts = np.sum(boards.pattern.used, axis=1)
    todo = [(p, m, [int(findings.suspect[p, m])]) for p, m in np.argwhere(findings.suspect >= 0).tolist()]
    while todo:
        again = _without(boards, todo)
        plan = plan_of(again.pattern, beliefs, scatter_known=boards.scatter_known)
        findings = judge(plan, again.readings, beliefs, scatter_known=boards.scatter_known)
        rows = _with_advice(findings, again, beliefs)
        more = []
        for k, (p, m, aside) in enumerate(todo):
            row, _, advice = rows[k][0]
            if row.verdict != NONE:
                found[p][m] = (row, aside, advice)
            suspect = int(findings.suspect[k, 0])
            if suspect >= 0 and len(aside) < max(1, int(counts[p]) // _SET_ASIDE):
                more.append((p, m, [*aside, suspect]))
        todo = more
    return found


def _with_advice(findings: Findings, boards: Boards, beliefs: Beliefs) -> list[list[Finding]]:
    """Rows of the boards, with advice for those that are undecided."""
    found: list[list[Finding]] = [
        [(row, [], None) for row in rows] for rows in tabulate(findings, boards, beliefs)
    ]
    for p in range(len(found)):
        undecided: Ints = np.nonzero(findings.verdict[p] == UNDECIDED)[0]
        if undecided.size and len(beliefs.candidates) > 1:
            for m, advice in zip(
                undecided.tolist(), advise(findings, boards, p, undecided, beliefs), strict=True
            ):
                found[p][m] = (found[p][m][0], [], advice)
    return found


def _without(boards: Boards, todo: Sequence[tuple[int, int, list[int]]]) -> Boards:
    """Some of the boards, each as a pattern of its own and without some readings."""
    rows = np.array([p for p, _, _ in todo])
    columns = np.array([m for _, m, _ in todo])
    pattern = boards.pattern
    used = pattern.used[rows].copy()
    for row, (_, _, aside) in enumerate(todo):
        used[row, aside] = False
    return Boards(
        Pattern(
            start=pattern.start[rows],
            end=pattern.end[rows],
            used=used,
            variance=pattern.variance[rows],
            edge=pattern.edge[rows],
            scatter=pattern.scatter[rows],
            nut_deviation=pattern.nut_deviation,
            zero_fret=pattern.zero_fret,
        ),
        boards.readings[rows, :, columns][:, :, None],
        boards.nut_mean[rows],
        boards.scale_error[rows],
        boards.scatter_known,
    )
