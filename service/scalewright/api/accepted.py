"""What is accepted at a place of a question: names, ranges and examples, read off the model's JSON schema."""

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import Any

from pydantic import BaseModel

__all__ = ["example_at", "names_at", "range_at", "without_branches"]

_BRANCH = re.compile(r"[a-z]+:[a-z_]+", re.ASCII)
"""How a branch of a union is named in the paths of pydantic's errors: "rule:divisor"; no field has such a name."""

_Schema = Mapping[str, Any]
_Path = Sequence[str | int]


def without_branches(path: _Path) -> list[str | int]:
    """Path of an error without the names of the branches that were taken."""
    return [part for part in path if not _is_branch(part)]


def names_at(model: type[BaseModel], path: _Path) -> list[str]:
    """Names of the fields that the object at a path may have."""
    return list(dict.fromkeys(name for schema in _schemas_at(model, path) for name in schema.get("properties", {})))


def range_at(model: type[BaseModel], path: _Path) -> tuple[float, float] | None:
    """Least and greatest number at a path, or None where they are not both known."""
    for schema in _schemas_at(model, path):
        if "minimum" in schema and "maximum" in schema:
            return schema["minimum"], schema["maximum"]
    return None


def example_at(model: type[BaseModel], path: _Path) -> object:
    """Value that is accepted at a path, or None where none is known."""
    schemas = _schemas_at(model, path)
    for schema in schemas:
        if schema.get("examples"):
            return schema["examples"][0]
    for schema in schemas:
        for key in ("default", "const"):
            if schema.get(key) is not None:
                return schema[key]
        if schema.get("enum"):
            return schema["enum"][0]
    for schema in schemas:
        if "minimum" in schema:
            return schema["minimum"]
        if schema.get("type") == "boolean":
            return False
    return None


def _is_branch(part: str | int) -> bool:
    return isinstance(part, str) and _BRANCH.fullmatch(part) is not None


@lru_cache(maxsize=64)
def _schema_of(model: type[BaseModel]) -> dict[str, Any]:
    return model.model_json_schema()


def _schemas_at(model: type[BaseModel], path: _Path) -> list[_Schema]:
    """Schemas that hold at a path, those of all alternatives where several do."""
    root = _schema_of(model)
    here = _alternatives(root, root)
    for part in path:
        if _is_branch(part):
            name = str(part).partition(":")[2]
            taken = [schema for schema in here if schema.get("properties", {}).get("name", {}).get("const") == name]
            here = taken or here
            continue
        if isinstance(part, int):
            below = [schema["items"] for schema in here if "items" in schema]
        else:
            below = [schema["properties"][part] for schema in here if part in schema.get("properties", {})]
        here = [alternative for schema in below for alternative in _alternatives(root, schema)]
    return here


def _alternatives(root: _Schema, schema: _Schema) -> list[_Schema]:
    """Schema itself with all that stands behind its references and alternatives, itself first."""
    found = [schema]
    if "$ref" in schema:
        found += _alternatives(root, root["$defs"][schema["$ref"].rpartition("/")[2]])
    for branch in (*schema.get("anyOf", ()), *schema.get("oneOf", ())):
        found += _alternatives(root, branch)
    return found
