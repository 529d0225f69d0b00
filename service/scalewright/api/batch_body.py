"""The body of a batch: lines of JSON or one array, and the question on each line."""

from collections.abc import Sequence
from typing import Any

import orjson

from scalewright.api.problems import Refusal
from scalewright.api.settings import Settings
from scalewright.api.strict_json import check_body

__all__ = ["JSON_LINES", "LINE_TYPES", "is_array", "question_of", "texts_of_array"]

JSON_LINES = "application/jsonl"
LINE_TYPES = (JSON_LINES, "application/x-ndjson")
"""Media types of lines of JSON, the one we prefer first; neither is registered."""

_LONGEST_ID = 200
"""Characters of an id that comes back."""

_IDS = frozenset({str, int, float, type(None)})
"""What an id may be."""

_LONGEST_ARRAY = 4_194_304
"""Bytes of a batch that is sent as one JSON array."""


def question_of(line: bytes | None, max_list_items: int) -> tuple[object, dict[str, Any]]:
    """The id and the question of a line.

    Raises
    ------
    Refusal
        For a line that is too long, no JSON, no object, or that names a member twice.
    """
    if line is None:
        raise Refusal("line-too-long", "This line is longer than a line may be; a line holds one question.")
    try:
        members = orjson.loads(line)
    except orjson.JSONDecodeError as error:
        message = f"The line is not JSON that can be read: {error.msg} at character {error.pos + 1}."
        raise Refusal("malformed-request", message) from None
    if not isinstance(members, dict):
        raise Refusal("invalid-request", "A line has to be an object in braces: one question.")
    named = len(members)
    identifier = members.pop("id", None)
    if type(identifier) not in _IDS or (type(identifier) is str and len(identifier) > _LONGEST_ID):
        detail = f"An id is a text of at most {_LONGEST_ID} characters, or a number."
        fault = {"pointer": "/id", "code": "id_type", "detail": detail, "example": "board-17"}
        raise Refusal("invalid-request", f"At /id: {detail}", faults=[fault])
    # A member that is given twice is lost by now, but the bytes still have it; where they have more that looks
    # like a member than was read, or may have a long list, they are read again by the strict reader.
    if line.count(b'":') != named or b'" :' in line or len(line) >= 2 * max_list_items:
        try:
            check_body(line, max_list_items)
        except Refusal as refusal:
            raise Refusal(refusal.slug, refusal.detail, faults=refusal.faults, facts={"id": identifier}) from None
    return identifier, members


def is_array(headers: dict[bytes, bytes]) -> bool:
    """Whether a batch comes as one JSON array; refuse what is neither that nor lines of JSON."""
    name = headers.get(b"content-type", b"").partition(b";")[0].strip().lower().decode("latin-1")
    if headers.get(b"content-encoding", b"identity").lower() != b"identity":
        raise Refusal("unsupported-media-type", "The body has to be sent as it is; leave Content-Encoding out.")
    if name == "application/json":
        return True
    if name not in LINE_TYPES:
        message = f"A batch has to be lines of JSON; send the header Content-Type: {JSON_LINES}."
        raise Refusal("unsupported-media-type", message)
    return False


def texts_of_array(texts: Sequence[bytes | None], settings: Settings) -> list[bytes | None]:
    """The questions of a JSON array as lines."""
    text = b"\n".join(line for line in texts if line is not None)
    if len(text) > _LONGEST_ARRAY:
        message = f"A batch as one array may have at most {_LONGEST_ARRAY} bytes; send lines of JSON instead."
        raise Refusal("body-too-large", message)
    try:
        questions = orjson.loads(text)
    except orjson.JSONDecodeError as error:
        raise Refusal("malformed-request", f"The body is not JSON that can be read: {error.msg}.") from None
    if not isinstance(questions, list):
        raise Refusal("invalid-request", "A batch as application/json has to be an array of questions.")
    if len(questions) > settings.max_batch_lines:
        raise Refusal("too-many-lines", f"A batch may have at most {settings.max_batch_lines} questions.")
    return [orjson.dumps(question) for question in questions]
