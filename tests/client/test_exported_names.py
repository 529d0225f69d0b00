"""The public face of the client."""

import inspect
import subprocess
import sys
from dataclasses import is_dataclass
from importlib import resources
from pathlib import Path

import pytest

import scalewright_client as sc

RESULTS = [thing for thing in vars(sc).values() if inspect.isclass(thing) and is_dataclass(thing)]


def test_what_is_imported_is_exported_sorted():
    """Every public name is listed, once, and every listed name is there."""
    public = [name for name, thing in vars(sc).items() if not name.startswith("_") and not inspect.ismodule(thing)]
    assert sorted(sc.__all__) == sorted([*public, "__version__"])


@pytest.mark.parametrize("name", sc.__all__)
def test_every_exported_thing_says_what_it_is(name):
    """What a user meets has a docstring; aliases and the version are told by their names."""
    thing = getattr(sc, name)
    if inspect.isclass(thing):
        assert thing.__doc__
        assert not thing.__doc__.startswith(f"{name}(")


@pytest.mark.parametrize("result", RESULTS, ids=lambda result: result.__name__)
def test_every_field_of_a_result_says_its_meaning(result):
    """Each field has a sentence below it, lengths and other quantities with their unit."""
    source = "".join(inspect.getsource(ancestor) for ancestor in result.__mro__ if ancestor.__module__ != "builtins")
    for name in result.__dataclass_fields__:
        _, _, rest = source.partition(f"\n    {name}: ")
        assert rest.split("\n")[1].strip().startswith('"""'), name


def test_the_package_is_typed():
    """A type checker on the user's side may rely on the annotations."""
    assert (resources.files(sc) / "py.typed").is_file()


def test_the_client_needs_httpx_alone():
    """Imported in an interpreter of its own, it loads nothing of the service and none of its libraries."""
    source = Path(sc.__file__).parent.parent
    program = "import sys, scalewright_client; print(*sorted({name.partition('.')[0] for name in sys.modules}))"
    done = subprocess.run(
        [sys.executable, "-c", program], env={"PYTHONPATH": str(source)}, capture_output=True, text=True, check=True
    )
    loaded = set(done.stdout.split())
    assert "httpx" in loaded
    assert not loaded & {"fastapi", "numpy", "orjson", "pydantic", "scalewright", "starlette", "uvicorn"}
