"""Many identifications at once: the same questions and answers, without an object for each board.

Boards of a batch are mostly measured alike: their questions differ in the distances alone. What they have in
common is validated once, by the model of a single question, and their distances as one array; whatever is
out of the ordinary goes the way of a single question. The answers are written from columns; tests hold them
against those of the single route.
"""

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any, TypeAlias

import numpy as np
import orjson
from pydantic import ValidationError

from scalewright.lutherie.errors import LutherieError
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.identification import Beliefs, NextReading
from scalewright.lutherie.identification.answer import (
    VERDICTS,
    Identification,
    advice_notes,
    divisor_out_of_bounds,
    named_in_statement,
    octave_frets,
    procedure_notes,
)
from scalewright.lutherie.identification.columns import WIDEST_COVERAGE, Columns
from scalewright.lutherie.identification.identify import Judged, conclude, judge_alike, judge_singly
from scalewright.lutherie.identification.judge import ESTABLISHED, NONE, UNDECIDED
from scalewright.lutherie.identification.slips import is_unusual
from scalewright.lutherie.identification.words import fill_statements, statement_form, statement_numbers
from scalewright.lutherie.measure import Procedure, Survey
from scalewright.lutherie.spacing import Divisor, Rule
from scalewright.wire.identification import LONGEST_DISTANCE, SHORTEST_DISTANCE, IdentificationIn, IdentificationOut
from scalewright.wire.quantities import AnswerContext, Unit, to_millimetres
from scalewright.wire.rules import RuleOut

__all__ = ["Outcome", "identify_questions", "verdict_of"]

Outcome: TypeAlias = bytes | LutherieError | ValidationError
"""An answer as a JSON object, or why there is none."""

_MOST_FRAMES = 256
"""So many ways to measure are remembered in one call."""


@dataclass(frozen=True, slots=True)
class _Frame:
    """What boards that were measured alike have in common."""

    procedure: Procedure
    beliefs: Beliefs
    unit: Unit
    rules: list[dict[str, Any]]
    """The fixed rules as an answer writes them."""
    free: bool
    """Whether a free divisor is compared too."""
    notes: list[dict[str, str]]
    """What is to be said of every one of these boards."""


def identify_questions(questions: Sequence[dict[str, Any]]) -> list[Outcome]:
    """Answer many questions.

    Parameters
    ----------
    questions : sequence of dict
        As :class:`~scalewright.wire.identification.IdentificationIn` takes them, parsed from JSON.

    Returns
    -------
    list of bytes, LutherieError or ValidationError
        For each question its answer as a JSON object, or what was wrong with it.
    """
    outcomes: list[Outcome | None] = [None] * len(questions)
    frames: dict[bytes, _Frame | None] = {}
    alike: dict[bytes, list[int]] = defaultdict(list)
    apart: list[int] = []
    for index, question in enumerate(questions):
        key = _frame_key(question)
        if key is None:
            apart.append(index)
            continue
        if key not in frames:
            frames[key] = _frame(question) if len(frames) < _MOST_FRAMES else None
        alike[key].append(index)
    for key, members in alike.items():
        frame = frames[key]
        apart += members if frame is None else _answer_alike(frame, questions, members, outcomes)
    _answer_apart(questions, apart, outcomes)
    return [outcome for outcome in outcomes if outcome is not None]


def verdict_of(answer_text: bytes) -> str:
    """The verdict that an answer gives, read off its start."""
    return answer_text.split(b'"', 8)[7].decode()


def _frame_key(question: dict[str, Any]) -> bytes | None:
    """All of a question but its distances, as bytes; None where the distances are not a plain list of numbers."""
    distances = question.pop("from_nut", None)
    try:
        if type(distances) is not list or not distances or not _NUMBERS.issuperset(map(type, distances)):
            return None
        return b"%d %b" % (len(distances), orjson.dumps(question))
    finally:
        if distances is not None:
            question["from_nut"] = distances


_NUMBERS = frozenset({float, int})


def _frame(question: dict[str, Any]) -> _Frame | None:
    """What the boards with this question's frame have in common; None where the question is refused."""
    try:
        read = IdentificationIn.read(orjson.dumps(question))
        survey, beliefs = read.to_domain()
    except (ValidationError, LutherieError):
        return None
    rules = [RuleOut.model_validate(rule).model_dump() for rule in beliefs.fixed_rules]
    notes = [{"slug": note.slug, "text": note.text} for note in procedure_notes(survey.procedure)]
    return _Frame(survey.procedure, beliefs, read.unit, rules, len(rules) < len(beliefs.candidates), notes)


def _answer_alike(
    frame: _Frame, questions: Sequence[dict[str, Any]], members: list[int], outcomes: list[Outcome | None]
) -> list[int]:
    """Answer questions with one frame; return those that need a closer look."""
    # Each times 1 or 25.4, as a single question has it.
    distances = np.array([questions[member]["from_nut"] for member in members], dtype=float)
    distances = distances * to_millimetres(127.0, frame.unit) / 127.0
    plausible = np.all((distances >= SHORTEST_DISTANCE) & (distances <= LONGEST_DISTANCE), axis=1)
    good = np.nonzero(plausible)[0]
    first = 0
    for judged in judge_alike(frame.procedure, distances[good], frame.beliefs) if good.size else []:
        rows = good[first : first + judged.columns.verdict.shape[1]]
        first += len(rows)
        for row, text in zip(rows.tolist(), _write(frame, judged, distances[rows]), strict=True):
            outcomes[members[row]] = text
    return [members[row] for row in np.nonzero(~plausible)[0].tolist()]


def _answer_apart(questions: Sequence[dict[str, Any]], members: list[int], outcomes: list[Outcome | None]) -> None:
    """Answer questions each in its own way."""
    together: dict[Beliefs, list[tuple[int, Survey, AnswerContext]]] = defaultdict(list)
    for member in members:
        try:
            read = IdentificationIn.read(orjson.dumps(questions[member]))
            survey, beliefs = read.to_domain()
        except (ValidationError, LutherieError) as refusal:
            outcomes[member] = refusal
        else:
            together[beliefs].append((member, survey, read.answer_context))
    for beliefs, boards in together.items():
        findings = judge_singly([survey for _, survey, _ in boards], beliefs)
        for (member, survey, context), finding in zip(boards, findings, strict=True):
            outcomes[member] = _write_whole(conclude(survey, finding, beliefs), context)


def _write_whole(identification: Identification, context: AnswerContext) -> bytes:
    """An answer by way of the model."""
    reply = IdentificationOut.__pydantic_validator__.validate_python(identification, from_attributes=True)
    return IdentificationOut.__pydantic_serializer__.to_json(reply, context=dict(context))


@dataclass(frozen=True, slots=True)
class _Number:
    """Place of a number in an answer: a column of :func:`_numbers`."""

    column: int


@dataclass(frozen=True, slots=True)
class _Text:
    """Place of the statement in an answer (-1), or of the residuals under a candidate."""

    candidate: int


@dataclass(frozen=True, slots=True)
class _Form:
    """An answer with its numbers left open."""

    pieces: list[bytes]
    """What stands before, between and after the open places, each of which follows as an empty entry; it ends with a
    line break."""
    is_text: list[bool]
    """Whether an open place takes a text, not a number, in their order."""
    columns: list[int]
    """Which numbers are written into the places for numbers."""
    texts: list[int]
    """Which texts are written into the others: :attr:`_Text.candidate`."""


def _write(frame: _Frame, judged: Judged, distances: Floats) -> list[bytes]:
    """Answers straight from the columns; by way of the model where there is more to say than numbers.

    Boards with the same verdict, the same ranking of the rules and the same gaps have the same form.
    """
    columns = judged.columns
    texts: list[bytes] = [b""] * columns.verdict.shape[1]
    alike: dict[tuple[int, ...], list[int]] = defaultdict(list)
    compared = len(frame.rules) + frame.free
    ranks = np.argsort(-columns.candidate_probability[:compared, 0], axis=0, kind="stable").T.tolist()
    kinds = np.stack([columns.verdict[0], columns.leader[0], *columns.family[:, 0]]).T.tolist()
    gaps = _gaps(columns)
    scale = np.take_along_axis(columns.lengths[0, 0, :, 0], columns.leader, axis=0)[0]
    unsaid = np.isnan(columns.believed[0, 1, 0]) | (columns.verdict[0] == NONE) | is_unusual(scale)
    # An interval may need a word on the rule that it assumes, and a divisor one on its octave fret.
    established = columns.verdict[0] == ESTABLISHED
    unsaid |= established & (columns.probability[0] * WIDEST_COVERAGE < frame.beliefs.coverage)
    for m in np.nonzero(established & (columns.leader[0] == len(frame.rules)))[0].tolist():
        low, high = octave_frets(columns.divisor_estimate[:, 0, m].tolist())
        unsaid[m] |= low != high
    for m in np.nonzero(columns.verdict[0] == UNDECIDED)[0].tolist():
        unsaid[m] |= divisor_out_of_bounds(columns.divisor_estimate[:, 0, m].tolist(), UNDECIDED, frame.beliefs)
    for m, whole in enumerate(unsaid.tolist()):
        if whole or (0, m) in judged.mended:
            survey = Survey(frame.procedure, tuple(distances[m].tolist()))
            whole_answer = conclude(survey, judged.finding(0, m), frame.beliefs)
            texts[m] = _write_whole(whole_answer, {"unit": frame.unit})
        else:
            # Advice is part of the form, and so a board that has some has a form of its own.
            alike[m if (0, m) in judged.advice else -1, gaps[m], *kinds[m], *ranks[m]].append(m)
    numbers, residuals = _numbers(frame, columns), _residuals(frame, columns)
    for (_, _, verdict, leader, *rest), members in alike.items():
        family, ranked = rest[: len(columns.family)], rest[len(columns.family) :]
        form = _form(frame, columns, members[0], verdict, leader, family, ranked, judged.advice.get((0, members[0])))
        fills = [
            _statements(frame, columns, members, verdict, leader, family, ranked)
            if candidate < 0
            else _rows(residuals[candidate][members])
            for candidate in form.texts
        ]
        for m, text in zip(members, _fill(form, numbers[form.columns][:, members], fills), strict=True):
            texts[m] = text
    return texts


def _gaps(columns: Columns) -> list[int]:
    """Which of the numbers that may be missing are missing of each board: alike for boards with the same gaps."""
    lengths = columns.lengths[0, :, :, 0].reshape(-1, columns.verdict.shape[1])
    missing = np.isnan([*lengths, columns.divisor_estimate[0, 0]])
    if bool(np.all(missing == missing[:, :1])):
        return [0] * missing.shape[1]
    _, which = np.unique(missing, axis=1, return_inverse=True)
    found: list[int] = which.ravel().tolist()
    return found


def _fill(form: _Form, numbers: Floats, texts: Sequence[list[bytes]]) -> list[bytes]:
    """Fill a form once for each board, all of them in one go.

    Parameters
    ----------
    form : _Form
        The form.
    numbers : ndarray, shape (places, boards)
        What goes into its places for numbers.
    texts : sequence of list of bytes
        What goes into its places for texts, for every board.

    Returns
    -------
    list of bytes
        The answers.
    """
    count = numbers.shape[1]
    tokens = orjson.dumps(np.ascontiguousarray(numbers).ravel(), option=orjson.OPT_SERIALIZE_NUMPY)[1:-1].split(b",")
    columns = iter([tokens[first : first + count] for first in range(0, len(tokens), count)])
    others = iter(texts)
    page = form.pieces * count
    for place, is_text in enumerate(form.is_text):
        page[2 * place + 1 :: len(form.pieces)] = next(others if is_text else columns)
    # JSON has no line break of its own, so that one tells where an answer ends.
    return b"".join(page).split(b"\n")[:-1]


def _rows(numbers: Floats) -> list[bytes]:
    """Rows of numbers as JSON, between commas."""
    return orjson.dumps(np.ascontiguousarray(numbers), option=orjson.OPT_SERIALIZE_NUMPY)[2:-2].split(b"],[")


def _factor(frame: _Frame) -> tuple[float, float]:
    """What a length is multiplied with and divided by, as in :func:`~scalewright.wire.quantities.from_millimetres`."""
    return (1.0, 1.0) if frame.unit == "mm" else (5.0, 127.0)


def _residuals(frame: _Frame, columns: Columns) -> Floats:
    """Residuals in the unit of the answer. shape (C, boards, readings)"""
    times, over = _factor(frame)
    return np.swapaxes(columns.residuals[:, 0], 1, 2) * times / over


def _numbers(frame: _Frame, columns: Columns) -> Floats:
    """All other numbers of the answers, in the unit of the answer. shape (columns, boards)

    By candidate (15 each): its probability, chi-square, p-value and three estimates. Then the board's probability,
    its layout scale and true scale, the divisor and its estimate.
    """
    times, over = _factor(frame)
    count = columns.verdict.shape[1]
    parts = []
    for c in range(len(columns.family)):
        parts += [columns.candidate_probability[c], columns.chi_square[c], columns.p_value[c]]
        parts.append(columns.lengths[:, :, c, 0].transpose(1, 0, 2).reshape(12, count) * times / over)
    believed = columns.believed[:, :, 0].transpose(1, 0, 2).reshape(8, count)
    parts += [columns.probability, believed * times / over]
    parts += [columns.divisor, columns.divisor_estimate[:, 0]]
    return np.concatenate(parts)


def _form(
    frame: _Frame,
    columns: Columns,
    member: int,
    verdict: int,
    leader: int,
    family: list[int],
    ranked: list[int],
    advice: NextReading | None,
) -> _Form:
    """The form of answers with one verdict, one ranking and the gaps of one of the boards."""
    board = 15 * len(columns.family)
    established = verdict == ESTABLISHED

    def estimate(first: int) -> dict[str, _Number]:
        names = ("value", "standard_uncertainty", "lower", "upper")
        return {name: _Number(first + k) for k, name in enumerate(names)}

    def length(candidate: int, which: int) -> dict[str, _Number] | None:
        there = not math.isnan(columns.lengths[0, which, candidate, 0, member])
        return estimate(15 * candidate + 3 + 4 * which) if there else None

    def nut(candidate: int) -> dict[str, _Number] | None:
        return None if frame.procedure.without_nut else length(candidate, 2)

    rules = [*frame.rules, {"name": "divisor", "divisor": _Number(board + 9)}]
    freedom = columns.degrees_of_freedom[:, 0].tolist()
    told = not math.isnan(columns.divisor_estimate[0, 0, member])
    whole = {
        "unit": frame.unit,
        "verdict": VERDICTS[verdict],
        "statement": _Text(-1),
        "rule": rules[leader] if established else None,
        "family": [rules[index] for index in ranked if family[index]] if established else [],
        "probability": _Number(board),
        "layout_scale": estimate(board + 1) if established else None,
        "true_scale": estimate(board + 5),
        "nut_offset": nut(leader) if established else None,
        "divisor": estimate(board + 10) if told else None,
        "candidates": [
            {
                "rule": rules[c],
                "probability": _Number(15 * c),
                "layout_scale": length(c, 0),
                "true_scale": length(c, 1),
                "nut_offset": nut(c),
                "chi_square": _Number(15 * c + 1),
                "degrees_of_freedom": max(freedom[c], 0),
                "p_value": None if freedom[c] < 1 else _Number(15 * c + 2),
                "residuals": [_Text(c)],
            }
            for c in ranked
        ],
        "suspect_readings": [],
        "next_reading": None if advice is None else asdict(advice),
        "coverage": frame.beliefs.coverage,
        "notes": [*frame.notes, *map(asdict, advice_notes(advice))],
    }
    places: list[_Number | _Text] = []

    def leave_open(place: _Number | _Text) -> str:
        places.append(place)
        return _OPEN

    text = orjson.dumps(whole, default=leave_open, option=orjson.OPT_PASSTHROUGH_DATACLASS)
    fixed = (text + b"\n").split(f'"{_OPEN}"'.encode())
    pieces = [b""] * (2 * len(fixed) - 1)
    pieces[::2] = fixed
    return _Form(
        pieces,
        [isinstance(place, _Text) for place in places],
        [place.column for place in places if isinstance(place, _Number)],
        [place.candidate for place in places if isinstance(place, _Text)],
    )


_OPEN = "?"
"""Stands for an open place in a form; no text of an answer consists of it."""


def _statements(
    frame: _Frame,
    columns: Columns,
    members: list[int],
    verdict: int,
    leader: int,
    family: list[int],
    ranked: list[int],
) -> list[bytes]:
    """The sentence on each board, as JSON."""
    rules: list[Rule] = [*frame.beliefs.fixed_rules, *[Divisor(2.0)] * frame.free]
    named = named_in_statement(verdict, leader, family, ranked)
    free = named.index(len(rules) - 1) if frame.free and len(rules) - 1 in named else None
    form = statement_form(VERDICTS[verdict], [rules[c] for c in named], frame.beliefs.coverage, told=True, free=free)
    layout, true = columns.believed[:, 0, 0, members], columns.believed[:, 1, 0, members]
    numbers = statement_numbers(layout, true, columns.probability[0, members], columns.divisor[0, members])
    return [orjson.dumps(statement) for statement in fill_statements(form, numbers)]
