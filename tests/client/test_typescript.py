"""The TypeScript client as far as it can be looked at without Node; `npm run check` in its folder does the rest."""

import json
import re
from pathlib import Path

import pytest

import scalewright

CLIENT = Path(__file__).parents[2] / "clients" / "typescript"

WRITTEN = sorted(path for folder in ("src", "sample", "tests", "scripts") for path in (CLIENT / folder).glob("*.[tj]s"))

LONGEST = 400
"""Lines of a file that is written by hand; at as many there is a second subject in it."""


def parsed(name):
    """A file of JSON."""
    return json.loads((CLIENT / name).read_text(encoding="utf-8"))


def test_its_version_is_the_services():
    """The package has the version of the service whose contract it was built for."""
    assert parsed("package.json")["version"] == parsed("package-lock.json")["version"] == scalewright.__version__


def test_its_lock_file_has_hashes_and_no_address():
    """Every package is pinned by a hash, and where it is fetched from is left to the machine."""
    packages = {name: about for name, about in parsed("package-lock.json")["packages"].items() if name}

    assert packages
    for about in packages.values():
        assert about["integrity"].startswith("sha512-")
        assert "resolved" not in about
    assert "omit-lockfile-registry-resolved=true" in (CLIENT / ".npmrc").read_text(encoding="utf-8").splitlines()


def test_a_page_has_to_load_one_package_alone():
    """Whoever uses the client needs openapi-fetch and nothing else."""
    assert list(parsed("package.json")["dependencies"]) == ["openapi-fetch"]


def test_every_field_of_the_document_is_in_the_generated_types():
    """The types say in their first line that they are generated, and know each schema and each of its fields."""
    text = (CLIENT / "src" / "schema.ts").read_text(encoding="utf-8")
    document = json.loads((CLIENT.parents[1] / "openapi_examples" / "openapi.json").read_text(encoding="utf-8"))

    assert text.startswith("// Generated from openapi_examples/openapi.json by openapi-typescript: `npm run generate`.")
    for name, schema in document["components"]["schemas"].items():
        body = re.search(rf"^        {name}: {{\n(.*?)^        }};", text, re.MULTILINE | re.DOTALL)
        assert body is not None, name
        fields = set(re.findall(r"^            (\w+)\??:", body[1], re.MULTILINE))
        assert fields == set(schema["properties"]), name


@pytest.mark.parametrize("path", WRITTEN, ids=lambda path: str(path.relative_to(CLIENT)))
def test_every_file_says_its_subject_in_its_first_line(path):
    """The first line is a comment that is a sentence, and what is written by hand has one subject."""
    lines = path.read_text(encoding="utf-8").splitlines()

    assert re.fullmatch(r"// .*[.:]", lines[0])
    assert path.name == "schema.ts" or len(lines) < LONGEST
    assert max(len(line) for line in lines) <= 120 or path.name == "schema.ts"
