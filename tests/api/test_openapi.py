"""The OpenAPI document: valid, complete, the committed one, and true."""

import json
import re
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from openapi_spec_validator import OpenAPIV31SpecValidator

from scalewright.__main__ import main
from tests.api.replay import EXAMPLES, address, answer_file, cases, question_of

COMMITTED = Path(EXAMPLES) / "openapi.json"


@pytest.fixture(scope="module")
def document(send):
    """Return the document as the service hands it out."""
    return send("GET", "/openapi.json").json()


def operations(document):
    """Address, method and operation of all there are."""
    return [(path, method, operation) for path, item in document["paths"].items() for method, operation in item.items()]


def test_the_committed_document_is_the_applications(document):
    """``python -m scalewright openapi > openapi_examples/openapi.json`` was run after the last change."""
    assert json.loads(COMMITTED.read_text(encoding="utf-8")) == document


def test_the_command_prints_the_committed_document(capsys):
    """The command writes the file byte for byte."""
    assert main(["openapi"]) == 0
    assert capsys.readouterr().out == COMMITTED.read_text(encoding="utf-8")


def test_the_document_is_valid(document):
    """The schema of OpenAPI 3.1 accepts it, by openapi-spec-validator."""
    assert document["openapi"] == "3.1.0"
    assert list(OpenAPIV31SpecValidator(document).iter_errors()) == []


def test_no_schema_of_the_framework_is_left_over(document):
    """The framework's own description of 422 would be untrue."""
    assert "HTTPValidationError" not in json.dumps(document)
    assert "x-examples" not in json.dumps(document)


def test_every_operation_is_described(document):
    """A method name for clients, a summary, a description, tags that are explained, and documented problems."""
    explained = {tag["name"] for tag in document["tags"]}
    names = [operation["operationId"] for _, _, operation in operations(document)]

    assert len(names) == len(set(names))
    for path, method, operation in operations(document):
        assert re.fullmatch(r"[a-z]+(_[a-z]+)*", operation["operationId"])
        assert set(operation["tags"]) <= explained
        assert operation["summary"]
        assert not operation["summary"].endswith(".")
        assert operation["description"]
        assert any(status.startswith("4") for status in operation["responses"]), (path, method)
        for status, response in operation["responses"].items():
            if int(status) >= 400:
                assert list(response["content"]) == ["application/problem+json"], (path, method, status)


def test_batches_say_what_their_index_counts(document):
    """A line number of a file is none: the documents of all batches say that blank lines do not count."""
    batches = [(path, operation) for path, _, operation in operations(document) if path.endswith("/batch")]
    assert len(batches) == 6
    for path, operation in batches:
        asked = operation["requestBody"]["content"]["application/jsonl"]["schema"]["description"]
        told = operation["responses"]["200"]["content"]["application/jsonl"]["schema"]["description"]
        assert "Blank lines are skipped" in asked, path
        assert "`index` counts the questions from 0, blank lines left out" in told, path


def test_every_parameter_and_field_is_described(document):
    """Parameters and members of schemas say what they are, lengths and cents with their unit."""
    for path, _, operation in operations(document):
        for parameter in operation.get("parameters", []):
            assert parameter["description"], (path, parameter["name"])
            assert not parameter["required"] or "example" in parameter
    schemas = document["components"]["schemas"]
    for name, schema in schemas.items():
        for member, about in schema.get("properties", {}).items():
            # A member that says no more than the schema that it refers to leaves saying it to that.
            behind = schemas[about["$ref"].rpartition("/")[2]] if "$ref" in about else {}
            assert about.get("description") or behind.get("description") or "const" in about, f"{name}.{member}"


@pytest.mark.parametrize(("word", "name"), cases())
def test_examples_fit_the_schemas_that_they_illustrate(document, word, name):
    """By a general JSON Schema validator, each question fits its request schema and each answer its response's."""
    question = question_of(word, name)
    operation = document["paths"][address(word)]["get" if question is None else "post"]
    answer = json.loads(answer_file(word, name).read_text(encoding="utf-8"))

    def validator(schema):
        return Draft202012Validator({**schema, "components": document["components"]})

    validator(operation["responses"]["200"]["content"]["application/json"]["schema"]).validate(answer)
    if question is not None:
        validator(operation["requestBody"]["content"]["application/json"]["schema"]).validate(json.loads(question))


def test_examples_are_shown_beside_what_they_illustrate(document):
    """A reader of the document sees every case."""
    for word, name in cases():
        operation = document["paths"][address(word)]["get" if question_of(word, name) is None else "post"]
        assert name in operation["responses"]["200"]["content"]["application/json"]["examples"]


def test_a_problem_fits_its_schema(document, send):
    """A real refusal has the documented members."""
    problem = send("POST", "/v1/layout", json={"scale": 0}).json()
    schema = {"$ref": "#/components/schemas/Problem", "components": document["components"]}

    Draft202012Validator(schema).validate(problem)
