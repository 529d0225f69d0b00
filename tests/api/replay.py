"""Replaying the examples: sends each question to the application and compares the answer with the one on file.

``python -m tests.api.replay`` writes the answers anew, after a change that is meant to change them.
"""

import asyncio
import json
import math
import re
from pathlib import Path

import httpx

from scalewright.api.app import create_app
from scalewright.api.settings import Settings

EXAMPLES = Path(__file__).resolve().parents[2] / "openapi_examples"

LAST_DIGITS = 1e-9
"""Relative; the mathematical libraries of two processors may round the last digits another way."""

NOTHING = 1e-9
"""Absolute; a residual that is zero but for rounding may be any such number."""

_NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?")


def cases() -> list[tuple[str, str]]:
    """Word and name of every example."""
    files = sorted(EXAMPLES.glob("*/*.json"))
    return list(dict.fromkeys((file.parent.name, file.name.split(".")[0]) for file in files))


def address(word: str) -> str:
    """Address that the examples of a word are about; an underscore stands for a slash."""
    return f"/v1/{word.replace('_', '/')}"


def question_of(word: str, name: str) -> bytes | None:
    """Body that the example sends; None for one that sends none and so is a GET."""
    file = EXAMPLES / word / f"{name}.request.json"
    return file.read_bytes() if file.exists() else None


def answer_file(word: str, name: str) -> Path:
    """File of the answer of an example."""
    return EXAMPLES / word / f"{name}.response.json"


async def ask(word: str, name: str) -> httpx.Response:
    """Send the question of an example to the application."""
    app = create_app(Settings(log_requests=False))
    headers = {"Content-Type": "application/json", "X-Request-ID": "example"}
    async with httpx.AsyncClient(transport=httpx.ASGITransport(app), base_url="http://service") as client:
        question = question_of(word, name)
        if question is None:
            return await client.get(address(word), headers=headers)
        return await client.post(address(word), content=question, headers=headers)


def as_filed(answer: bytes) -> str:
    """Text of an answer as it is kept on file."""
    return json.dumps(json.loads(answer), indent=2, ensure_ascii=False) + "\n"


def same(text: str, other: str) -> bool:
    """Whether two texts are the same byte for byte, but for the last digits of their numbers."""
    numbers, others = _NUMBER.findall(text), _NUMBER.findall(other)
    return (
        _NUMBER.sub("#", text) == _NUMBER.sub("#", other)
        and len(numbers) == len(others)
        and all(
            math.isclose(float(a), float(b), rel_tol=LAST_DIGITS, abs_tol=NOTHING)
            for a, b in zip(numbers, others, strict=True)
        )
    )


def main() -> None:
    """Write all the answers anew."""
    for word, name in cases():
        answer = asyncio.run(ask(word, name))
        answer_file(word, name).write_text(as_filed(answer.content), encoding="utf-8")


if __name__ == "__main__":
    main()
