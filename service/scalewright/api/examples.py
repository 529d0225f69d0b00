"""Examples: the cases of ``openapi_examples``, which the documentation shows and the tests replay."""

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

__all__ = ["Example", "examples_of", "folder"]


@dataclass(frozen=True, slots=True)
class Example:
    """A case: what is sent and what comes back."""

    name: str
    """Name of the case, from its files."""
    request: Any
    """What is sent, or None where nothing is."""
    response: Any
    """What comes back, or None where the case shows none."""


def folder() -> Path | None:
    """Folder of the examples: in the installed package, or at the top of a checkout; None where neither is there."""
    here = Path(__file__).resolve()
    for candidate in (here.with_name("openapi_examples"), here.parents[3] / "openapi_examples"):
        if candidate.is_dir():
            return candidate
    return None


def examples_of(word: str) -> list[Example]:
    """Cases of one word, by name; none where the folder is absent, which costs the document its examples only."""
    top = folder()
    if top is None:
        return []
    cases = top / word
    names = sorted({path.name.split(".")[0] for path in cases.glob("*.json")})
    return [
        Example(name, _load(cases / f"{name}.request.json"), _load(cases / f"{name}.response.json")) for name in names
    ]


def _load(path: Path) -> Any:
    return json.loads(path.read_text(encoding="utf-8")) if path.is_file() else None
