"""The client against the service's OpenAPI document: a renamed field on either side fails here."""

import functools
import inspect
import operator
import types
from dataclasses import MISSING, fields, is_dataclass
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints, is_typeddict

import pytest

from scalewright.api.app import create_app
from scalewright.api.problems import KINDS
from scalewright_client import _operations as operations
from scalewright_client import _requests as requests
from scalewright_client._problems import BY_SLUG, BY_STATUS, _class_of
from tests.client.operations import BATCHES, OPERATIONS


@pytest.fixture(scope="module")
def document():
    """The document as the service serves it."""
    return create_app().openapi()


def resolved(document, schema) -> Any:
    """Follow a reference."""
    while "$ref" in schema:
        name = schema["$ref"].removeprefix("#/components/schemas/")
        schema = document["components"]["schemas"][name]
    return schema


def variants(document, schema):
    """What a value may be besides null."""
    schema = resolved(document, schema)
    options = schema.get("anyOf") or schema.get("oneOf") or [schema]
    if options == [schema]:
        return [schema]
    return [leaf for option in options for leaf in variants(document, option) if leaf.get("type") != "null"]


def nullable(document, schema):
    """Whether null is among what a value may be."""
    schema = resolved(document, schema)
    return any(resolved(document, option).get("type") == "null" for option in schema.get("anyOf", []))


def without_none(hint):
    """The annotation besides None."""
    if get_origin(hint) in {Union, types.UnionType}:
        hints = [option for option in get_args(hint) if option is not type(None)]
        return functools.reduce(operator.or_, hints)
    return hint


def of_kind(hint, schema):
    """Of an annotation with alternatives the one for an object, or the one for anything else."""
    is_object = schema.get("type") == "object"
    found = get_args(hint) if get_origin(hint) in {Union, types.UnionType} else (hint,)
    return next((option for option in found if is_dataclass(option) == is_object), found[0])


def assert_reads(document, schema, hint, where):
    """A result's annotation reads whatever the schema allows."""
    hints = without_none(hint)
    for option in variants(document, schema):
        hint = of_kind(hints, option)
        match option.get("type"):
            case "object":
                assert is_dataclass(hint), where
                assert_reads_fields(document, option, hint, where)
            case "array":
                assert get_origin(hint) is tuple, where
                assert_reads(document, option["items"], get_args(hint)[0], f"{where}/0")
            case "number":
                assert hint is float, where
            case "integer":
                assert hint in {int, float}, where
            case "boolean":
                assert hint is bool, where
            case _:
                assert hint is str or get_origin(hint) is Literal, where
                assert get_origin(hint) is not Literal or set(get_args(hint)) == set(option["enum"]), where


def assert_reads_fields(document, schema, record, where):
    """Every field of the schema is known, none is invented, and only optional ones may be missing or None."""
    hints = get_type_hints(record)
    properties = schema["properties"]
    assert set(hints) == set(properties), where
    for field in fields(record):
        here = f"{where}/{field.name}"
        optional = type(None) in get_args(hints[field.name])
        assert optional or not nullable(document, properties[field.name]), here
        if field.default is MISSING:
            assert field.name in schema.get("required", []), here
        assert_reads(document, properties[field.name], hints[field.name], here)


@pytest.mark.parametrize("name", OPERATIONS)
def test_methods_are_the_operation_ids(document, name):
    """Who reads the document knows the method's name."""
    method, path, _ = OPERATIONS[name]
    assert document["paths"][path][method]["operationId"] == name
    build = inspect.signature(getattr(operations, name))
    assert build.return_annotation.__args__ == (OPERATIONS[name][2],)


@pytest.mark.parametrize("name", OPERATIONS)
def test_answers_are_read_whole(document, name):
    """The result has exactly the fields of the response, with their types."""
    method, path, result = OPERATIONS[name]
    content = document["paths"][path][method]["responses"]["200"]["content"]
    assert_reads(document, content["application/json"]["schema"], result, name)


def schemas_of(document, schema, found):
    """Names of all schemas that an answer is made of."""
    if "$ref" in schema:
        name = schema["$ref"].removeprefix("#/components/schemas/")
        if name in found:
            return
        found.add(name)
    schema = resolved(document, schema)
    items = [schema["items"]] if "items" in schema else []
    for one in (*schema.get("anyOf", ()), *schema.get("properties", {}).values(), *items):
        schemas_of(document, one, found)


@pytest.mark.parametrize("name", OPERATIONS)
def test_a_renamed_field_is_noticed(document, name):
    """The check above is no formality: whichever field of an answer the service renames, it fails."""
    method, path, result = OPERATIONS[name]
    content = document["paths"][path][method]["responses"]["200"]["content"]["application/json"]["schema"]
    found: set[str] = set()
    schemas_of(document, content, found)
    schemas = document["components"]["schemas"]
    for changed in sorted(found):
        if "properties" not in schemas[changed]:
            continue
        first, *rest = schemas[changed]["properties"].items()
        renamed = {**schemas[changed], "properties": {f"{first[0]}_renamed": first[1], **dict(rest)}}
        components = {**document["components"], "schemas": {**schemas, changed: renamed}}
        with pytest.raises(AssertionError):
            assert_reads({**document, "components": components}, content, result, name)


@pytest.mark.parametrize("name", [name for name, (method, _, _) in OPERATIONS.items() if method == "post"])
def test_questions_take_all_that_the_service_takes(document, name):
    """Each member of the request is a keyword of the method, and the required ones have no default."""
    _, path, _ = OPERATIONS[name]
    schema = resolved(document, document["paths"][path]["post"]["requestBody"]["content"]["application/json"]["schema"])
    parameters = inspect.signature(getattr(operations, name)).parameters
    assert set(parameters) == set(schema["properties"])
    needed = {key for key, parameter in parameters.items() if parameter.default is inspect.Parameter.empty}
    assert needed == set(schema.get("required", []))


def objects_of(document, name):
    """Schemas of the objects nested in a request, by the member they are given as."""
    _, path, _ = OPERATIONS[name]
    start = document["paths"][path]["post"]["requestBody"]["content"]["application/json"]["schema"]
    found: dict[str, dict[str, Any]] = {}

    def walk(schema, key):
        for option in variants(document, schema):
            if "items" in option:
                walk(option["items"], key)
            if "properties" in option:
                members = found.setdefault(key, {})
                for inner, value in option["properties"].items():
                    members[inner] = {"anyOf": [members[inner], value]} if inner in members else value
                    walk(value, inner)

    walk(start, "")
    return found


SHAPES = [
    ("layout", "rule", requests.RuleRequest),
    ("identification", "readings", requests.Reading),
    ("identification", "candidates", requests.CandidateRequest),
    ("identification", "any_divisor", requests.AnyDivisor),
    ("compensation", "heights", requests.Heights),
    ("compensation", "action", requests.ActionAtFret),
    ("compensation", "relief", requests.Relief),
    ("compensation", "optimise_for", requests.OptimiseFor),
    ("compensation", "strings", requests.StringRequest),
    ("compensation", "wraps", requests.Wrap),
    ("compensation", "slot", requests.StraightSlot),
    ("compensation", "travel", requests.Travel),
    ("compensation", "bridge", requests.GluedBridge),
    ("compensation", "other_sets", requests.StringSet),
    ("intonation", "strings", requests.PlacedString),
    ("diagnosis", "readings", requests.CentsReading),
    ("assembly", "parts", requests.Part),
    ("assembly", "true_scale", requests.FanScale),
    ("assembly", "saddle_travel", requests.SaddleTravel),
    ("conformity", "part", requests.Part),
    ("conformity", "process", requests.Process),
    ("spec_sheet", "stringing", requests.Stringing),
    ("spec_sheet", "outline", requests.Outline),
    ("label", "part", requests.Part),
    ("label_pages", "labels", requests.LabelOnPage),
    ("label", "size", requests.LabelSize),
    ("tooling", "layout", requests.LaidOut),
    ("fingerboard", "scale", requests.FanScale),
    ("fingerboard", "strings", requests.BoardStrings),
    ("fingerboard", "margins", requests.BoardMargins),
    ("fingerboard", "widths", requests.BoardWidths),
    ("fingerboard", "slots", requests.Slots),
    ("fingerboard", "radius", requests.SurfaceRadius),
    ("fingerboard", "partial_frets", requests.PartialFret),
    ("fingerboard", "saw", requests.Saw),
    ("fingerboard", "sheet", requests.Sheet),
    ("fingerboard", "page", requests.Page),
    ("tooling", "signatures", requests.SignatureRequest),
]


@pytest.mark.parametrize(("operation", "member", "shape"), SHAPES)
def test_nested_shapes_of_a_question_are_those_of_the_service(document, operation, member, shape):
    """A TypedDict has the members that the service takes there."""
    assert is_typeddict(shape)
    assert set(get_type_hints(shape)) == set(objects_of(document, operation)[member])


def test_readings_of_a_part_are_those_of_the_service(document):
    """They hold readings between any two frets under the same name."""
    shapes = set(get_type_hints(requests.PartReadings)) | set(get_type_hints(requests.Reading))
    assert objects_of(document, "nominal")["readings"].keys() == shapes


@pytest.mark.parametrize("name", BATCHES)
def test_a_question_of_a_batch_is_a_single_question_with_an_id(document, name):
    """What the single operation takes as keywords, a batch takes as members, and the caller's id."""
    single, shape = BATCHES[name]
    _, path, result = OPERATIONS[single]
    assert document["paths"][f"{path}/batch"]["post"]["operationId"] == name
    build = inspect.signature(getattr(operations, name))
    assert build.return_annotation.__args__ == (result,)
    assert getattr(operations, name)([]).path == f"{path}/batch"
    assert set(get_type_hints(shape)) == set(inspect.signature(getattr(operations, single)).parameters) | {"id"}


def test_a_drawing_is_asked_for_like_its_board(document):
    """The keywords are the same, and the media types are those that the service can make, JSON aside."""
    assert set(get_type_hints(requests.FingerboardQuestion)) == set(
        inspect.signature(operations.fingerboard).parameters
    )
    offered = set(document["paths"]["/v1/fingerboard"]["post"]["responses"]["200"]["content"])
    assert set(get_args(requests.DrawingMedia)) == offered - {"application/json"}


def test_a_label_is_asked_for_like_what_it_says(document):
    """The keywords are the same, and the media types are those that the service can make, JSON aside."""
    assert set(get_type_hints(requests.LabelQuestion)) == set(inspect.signature(operations.label).parameters)
    offered = set(document["paths"]["/v1/label"]["post"]["responses"]["200"]["content"])
    assert set(get_args(requests.LabelMedia)) == offered - {"application/json"}


def test_pages_of_labels_are_asked_for_like_what_they_say(document):
    """The keywords are the same, and the media types are those that the service can make, JSON aside."""
    assert set(get_type_hints(requests.LabelPagesQuestion)) == set(inspect.signature(operations.label_pages).parameters)
    offered = set(document["paths"]["/v1/label/pages"]["post"]["responses"]["200"]["content"])
    assert {*get_args(requests.LabelPagesMedia)} == offered - {"application/json"}


def test_a_sheet_is_asked_for_like_its_figures(document):
    """The keywords are the same, and the media types are those that the service can make, JSON aside."""
    assert set(get_type_hints(requests.SpecSheetQuestion)) == set(inspect.signature(operations.spec_sheet).parameters)
    offered = set(document["paths"]["/v1/spec-sheet"]["post"]["responses"]["200"]["content"])
    assert {*get_args(requests.SheetMedia)} == offered - {"application/json"}


def test_every_calculation_of_the_service_has_its_method(document):
    """Whatever the service can calculate, the client can ask for."""
    served = {path for path in document["paths"] if path.startswith("/v1/")}
    singles = {name: path for name, (_, path, _) in OPERATIONS.items()}
    assert served == set(singles.values()) | {f"{singles[single]}/batch" for single, _ in BATCHES.values()}


def words_of(hint):
    """Words that an annotation names, those inside of objects aside."""
    if get_origin(hint) is Literal:
        return set(get_args(hint))
    return set() if is_typeddict(hint) or is_dataclass(hint) else set().union(*map(words_of, get_args(hint)))


def words_in(document, schema):
    """Words that a schema names, those inside of objects aside."""
    found = set()
    for option in variants(document, schema):
        found |= {word for word in (*option.get("enum", ()), option.get("const")) if isinstance(word, str)}
        found |= words_in(document, option["items"]) if "items" in option else set()
    return found


@pytest.mark.parametrize("name", [name for name, (method, _, _) in OPERATIONS.items() if method == "post"])
def test_words_of_a_question_are_those_of_the_service(document, name):
    """Where the service takes one of a few words, a type checker knows them."""
    _, path, _ = OPERATIONS[name]
    schema = resolved(document, document["paths"][path]["post"]["requestBody"]["content"]["application/json"]["schema"])
    for key, hint in get_type_hints(getattr(operations, name)).items():
        if key != "return":
            assert words_of(hint) == words_in(document, schema["properties"][key]), key


@pytest.mark.parametrize(("operation", "member", "shape"), SHAPES)
def test_words_of_nested_shapes_are_those_of_the_service(document, operation, member, shape):
    """The same for the members of a TypedDict."""
    members = objects_of(document, operation)[member]
    for key, hint in get_type_hints(shape).items():
        assert words_of(hint) == words_in(document, members[key]), key


def test_every_refusal_of_the_service_has_its_class():
    """No slug of ours is one that the service lacks, and each class stands below that of its status."""
    assert set(BY_SLUG) <= set(KINDS)
    for slug, kind in KINDS.items():
        fallback = BY_STATUS.get(kind.status, _class_of(kind.status))
        assert issubclass(BY_SLUG.get(slug, fallback), fallback), slug
