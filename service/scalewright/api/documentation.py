"""Documentation: what the OpenAPI document says beyond what FastAPI reads off the code."""

import json
from typing import Any

from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi
from pydantic import BaseModel
from pydantic.json_schema import models_json_schema

from scalewright.api.examples import Example, examples_of
from scalewright.api.media import CSV, DXF, FORMATS, HTML, JSON, PDF, PNG, SVG
from scalewright.api.problems import KINDS, MEDIA_TYPE
from scalewright.wire.problems import Problem

__all__ = ["ABOUT", "OTHER_FORMS", "TAGS", "answer_documentation", "openapi_document", "problem_documentation"]

ABOUT = """\
Turns a label or a few caliper readings into one unambiguous definition of a fretted board, and uses it for all that \
follows.

**Lengths.** A number in a request is in the request's `unit` ("mm" or "in"); a text carries its own unit: \
"24 9/16 in", "24-9/16 in", "24⅝ in", "0.010 inch", "628.65 mm", "62,9 cm". In an answer every length is a number in \
`unit`, unrounded.

**Two scales.** The *layout scale* is the length that the spacing rule was applied to, the *true scale* twice the \
distance from the nut to the octave fret. A bridge is measured from the true scale's end.

**Problems.** Every refusal is an `application/problem+json` document (RFC 9457): 400 where the request cannot be \
read, 422 where its values cannot be used, with a JSON pointer, a sentence and an example that works for each.

**Repeating.** Every operation is a pure calculation: nothing is stored, and any request may be sent again.

**Caution.** A layout is cut with saws and routers: check it on paper first, guard the blade, catch the dust, and \
follow your local codes and qualified practice.
"""

TAGS = [
    {"name": "layout", "description": "Where the frets go."},
    {"name": "identification", "description": "Which rule and scale a board was made to, from readings."},
    {"name": "fingerboard", "description": "Boards as geometry, cut lists and drawings."},
    {"name": "compensation", "description": "Where saddle and nut go for given strings."},
    {"name": "intonation", "description": "How far out of tune every fretted note is, and why."},
    {"name": "diagnosis", "description": "From cents that were heard to the moves that mend them."},
    {"name": "stretch-test", "description": "What a stretch test says of a string."},
    {"name": "parts", "description": "Labels, parts that belong together, conformity, and the tools that make them."},
    {"name": "operation", "description": "Whether the service lives and is ready, and what its problems mean."},
]

_OF_EVERY = (400, 406, 414, 422, 431, 500)
_OF_BODIES = (400, 406, 408, 413, 414, 415, 422, 431, 500)
_REQUEST_ID = {
    "X-Request-ID": {
        "description": "Id of the request: the one that was sent, or a new one.",
        "schema": {"type": "string", "maxLength": 64},
    }
}
_CACHING = {
    "ETag": {"description": "Names this answer, for If-None-Match.", "schema": {"type": "string"}},
    "Cache-Control": {"description": "How long the answer may be kept.", "schema": {"type": "string"}},
}
_EXAMPLES = "x-examples"
_BATCH_EXAMPLES = "x-batch-examples"
"""Notes which cases an operation shows until the document is made; nothing is read from disk before."""
OTHER_FORMS: dict[str, dict[str, Any]] = {
    CSV: {"schema": {"type": "string", "description": "Comma-separated values with a header (RFC 4180)."}},
    SVG: {"schema": {"type": "string", "description": "A drawing in millimetres (SVG 1.1)."}},
    DXF: {"schema": {"type": "string", "description": "A drawing in millimetres, in layers (DXF R2010)."}},
    HTML: {"schema": {"type": "string", "description": "A web page, or a fragment to be put into one."}},
    PDF: {"schema": {"type": "string", "format": "binary", "description": "Sheets to be printed at 100 %."}},
    PNG: {"schema": {"type": "string", "format": "binary", "description": "A preview, not to scale."}},
}


def answer_documentation(method: str, offers: tuple[str, ...], word: str) -> dict[str, Any]:
    """Arguments of a route that document its examples, its media types and its problems."""
    content: dict[str, Any] = {JSON: {}}
    content |= {media_type: OTHER_FORMS[media_type] for media_type in offers if media_type != JSON}
    caching = _CACHING if method == "GET" else {}
    responses: dict[int | str, dict[str, Any]] = {200: {"content": content, "headers": _REQUEST_ID | caching}}
    if method == "GET":
        responses[304] = {"description": "Not modified: the answer is the one named in If-None-Match."}
    for status in _OF_BODIES if method == "POST" else _OF_EVERY:
        responses[status] = problem_documentation(status)
    extra: dict[str, Any] = {_EXAMPLES: word}
    if len(offers) > 1:
        extra["parameters"] = [_format_parameter(offers)]
    return {"responses": responses, "openapi_extra": extra}


def batch_documentation(
    media_types: tuple[str, ...], question: type[BaseModel], word: str, tallied: str, limits: tuple[int, int]
) -> dict[str, Any]:
    """Arguments of a route that document a batch: lines of JSON, which OpenAPI 3.1 can only call a text.

    Parameters
    ----------
    media_types : tuple of str
        What lines of JSON are called.
    question : type of BaseModel
        What each line holds.
    word : str
        Whose cases are shown.
    tallied : str
        Name of the counts in the end line; empty for none.
    limits : tuple of int
        Most lines, and most bytes in one, by default.
    """
    most, longest = limits
    lines = {
        "type": "string",
        "description": (
            f"A line for each question: an object as in the body of the single operation ({question.__name__}) and, if "
            "you like, an `id` of yours, a text or a number, which comes back. Blank lines are skipped. Unless this "
            f"service is set up otherwise at most {most:,} lines of at most {longest:,} bytes."
        ),
    }
    array = {"type": "array", "items": {"type": "object"}, "maxItems": most, "description": "The same as one array."}
    counts = f', "{tallied}": {{...}}' if tallied else ""
    answers = {
        "type": "string",
        "description": (
            'A line for each question in the same order, `{"kind": "result", "index": 0, "id": ..., ...}` or '
            '`{"kind": "problem", "index": 1, "id": ..., "type": ..., ...}`, and last '
            f'`{{"kind": "end", "results": 1, "problems": 1, "complete": true{counts}}}`. An answer without that line '
            "was cut off. `index` counts the questions from 0, blank lines left out: in a file that has such it is not "
            "the number of the line, and an `id` tells more."
        ),
    }
    responses: dict[int | str, dict[str, Any]] = {
        200: {
            "description": "A line for each question, and an end line.",
            "content": {media_type: {"schema": answers} for media_type in media_types},
            "headers": _REQUEST_ID,
        }
    }
    responses |= {status: problem_documentation(status) for status in _OF_BODIES}
    body = {
        "required": True,
        "content": {media_type: {"schema": lines} for media_type in media_types} | {JSON: {"schema": array}},
    }
    return {"responses": responses, "openapi_extra": {"requestBody": body, _BATCH_EXAMPLES: word}}


def openapi_document(app: FastAPI) -> dict[str, Any]:
    """OpenAPI document of the application, made once."""
    if app.openapi_schema is None:
        document = get_openapi(
            title=app.title,
            version=app.version,
            summary=app.summary,
            description=app.description,
            routes=app.routes,
            tags=app.openapi_tags,
            servers=app.servers,
            license_info=app.license_info,
            # No model is both: an answer requires its unit, though the model has a default for it.
            separate_input_output_schemas=True,
        )
        schemas = document.setdefault("components", {}).setdefault("schemas", {})
        for leftover in ("HTTPValidationError", "ValidationError"):
            schemas.pop(leftover, None)
        _, definitions = models_json_schema([(Problem, "serialization")], ref_template="#/components/schemas/{model}")
        schemas.update(definitions["$defs"])
        document["components"]["schemas"] = dict(sorted(schemas.items()))
        for path in document["paths"].values():
            for operation in path.values():
                _show_examples(operation)
                # Where all parameters are texts, FastAPI's own 422 can't come; the others have ours instead.
                if JSON in operation["responses"].get("422", {}).get("content", {}):
                    del operation["responses"]["422"]
                for parameter in operation.get("parameters", ()):
                    _simplify(parameter)
                operation.get("parameters", []).sort(key=lambda parameter: not parameter.get("required"))
        app.openapi_schema = document
    return app.openapi_schema


def _show_examples(operation: dict[str, Any]) -> None:
    """Put the cases of the word that was noted beside the question and the answer."""
    if _BATCH_EXAMPLES in operation:
        _show_lines(operation, examples_of(operation.pop(_BATCH_EXAMPLES))[:2])
    word = operation.pop(_EXAMPLES, None)
    if word is None:
        return
    examples = examples_of(word)
    operation["responses"]["200"]["content"][JSON] |= _named(examples, "response")
    if "requestBody" in operation:
        operation["requestBody"]["content"][JSON] |= _named(examples, "request")


def _show_lines(operation: dict[str, Any], examples: list[Example]) -> None:
    """Put two cases of the single operation into the lines of a batch."""
    # FastAPI's own guess at what is answered.
    operation["responses"]["200"]["content"].pop(JSON, None)
    questions = [{"id": example.name, **example.request} for example in examples]
    if questions:
        text = "".join(json.dumps(question, ensure_ascii=False) + "\n" for question in questions)
        for media_type, content in operation["requestBody"]["content"].items():
            content["example"] = questions if media_type == JSON else text


def _named(examples: list[Example], part: str) -> dict[str, Any]:
    """Named examples of a media type, or nothing where there are none."""
    values = {example.name: getattr(example, part) for example in examples}
    shown = {
        name: {"summary": name.replace("-", " ").replace("_", " "), "value": value}
        for name, value in values.items()
        if value is not None
    }
    return {"examples": shown} if shown else {}


def problem_documentation(status: int) -> dict[str, Any]:
    """Documentation of a refusal."""
    kind = next(kind for kind in KINDS.values() if kind.status == status)  # the general one stands first
    return {
        "description": kind.about,
        "content": {
            MEDIA_TYPE: {
                "schema": {"$ref": "#/components/schemas/Problem"},
                "example": {
                    "type": f"/problems/{kind.slug}",
                    "title": kind.title,
                    "status": status,
                    "detail": kind.about,
                    "instance": "urn:request:5f2b8c0e9a7d4c31",
                    "errors": [],
                },
            }
        },
        "headers": _REQUEST_ID,
    }


def _format_parameter(offers: tuple[str, ...]) -> dict[str, Any]:
    names = [name for name, media_type in FORMATS.items() if media_type in offers]
    return {
        "name": "format",
        "in": "query",
        "required": False,
        "description": "Form of the answer; it beats the Accept header.",
        "schema": {"type": "string", "enum": names},
        "example": names[0],
    }


def _simplify(parameter: dict[str, Any]) -> None:
    """Say of a parameter only what a query can say; lift its example to where a page fills its form from."""
    schema = parameter.get("schema", {})
    values = [branch for branch in schema.get("anyOf", ()) if branch.get("type") != "null"]
    if len(values) == 1:  # a query leaves a parameter out, it has no null
        del schema["anyOf"]
        schema.update(values[0])
    if "example" in parameter or not parameter.get("required"):
        return
    if schema.get("examples"):
        parameter["example"] = schema["examples"][0]
    elif schema.get("enum"):
        parameter["example"] = schema["enum"][0]
