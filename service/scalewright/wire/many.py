"""Many questions at once: each is validated by itself, all are answered by one call of the craft."""

from collections.abc import Callable, Sequence
from typing import Any, TypeVar

import orjson
from pydantic import BaseModel, ValidationError

from scalewright.lutherie.errors import LutherieError
from scalewright.wire.quantities import Question

__all__ = ["answer_many"]

_Asked = TypeVar("_Asked", bound=Question)


def answer_many(
    questions: Sequence[dict[str, Any]],
    model: type[_Asked],
    answer: type[BaseModel],
    solve: Callable[[list[Any]], Sequence[object]],
) -> list[bytes | LutherieError | ValidationError]:
    """Answer many questions.

    Parameters
    ----------
    questions : sequence of dict
        As the model takes them, parsed from JSON.
    model : type
        Model of a single question; its ``to_domain`` gives what ``solve`` takes a list of.
    answer : type
        Model of a single answer.
    solve : callable
        Answers of the craft in the same order; a refusal may stand in an answer's place.

    Returns
    -------
    list of bytes, LutherieError or ValidationError
        For each question its answer as a JSON object, or what was wrong with it.
    """
    outcomes: list[Any] = [None] * len(questions)
    asked: list[tuple[int, _Asked, Any]] = []
    for index, members in enumerate(questions):
        try:
            question = model.read(orjson.dumps(members))
            asked.append((index, question, question.to_domain()))  # type: ignore[attr-defined]  # all questions have it
        except (LutherieError, ValidationError) as refusal:
            outcomes[index] = refusal
    found = solve([domain for _, _, domain in asked])
    in_short = getattr(answer, "to_json", None)
    for (index, question, _), result in zip(asked, found, strict=True):
        if isinstance(result, LutherieError):
            outcomes[index] = result
            continue
        if in_short is not None:
            try:
                outcomes[index] = in_short(result, question.answer_context)
            except LutherieError as refusal:  # a label may turn out too small for what is to stand on it
                outcomes[index] = refusal
            continue
        reply = answer.__pydantic_validator__.validate_python(result, from_attributes=True)
        outcomes[index] = answer.__pydantic_serializer__.to_json(reply, context=dict(question.answer_context))
    return outcomes
