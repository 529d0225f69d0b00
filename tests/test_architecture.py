"""The house keeps its order: every floor does its own work, and names agree from floor to floor."""

import ast
import importlib
import inspect
import pkgutil
import typing
from pathlib import Path
from types import ModuleType

import pytest
from pydantic import BaseModel

import scalewright
import scalewright.lutherie
import scalewright.wire
import scalewright_client
from scalewright.api import problems
from scalewright.lutherie.errors import LutherieError

PACKAGE = Path(scalewright.__file__).parent

MODULES = sorted(
    module.name
    for package in (scalewright, scalewright_client)
    for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}.")
)
"""Every module of the service and the client, by its full name."""

NAMED_OTHERWISE = {
    "CandidateOut": ("CandidateFit", "on the wire a candidate is told apart by where it stands"),
    "MeasuredOut": ("Identification", "the part of it that a label is held against"),
    "SheetConformityOut": ("Conformity", "of it what a buyer has to know"),
    "StatedPartOut": ("Part", "what of a part a label states"),
    "SuspectOut": ("SuspectReading", "the same"),
}
"""Answers whose thing of the craft has another name, each with the reason."""

NO_VIEW = {
    "LabelPagesOut": "pages are a thing of the drawing floor",
    "PrintedLabelOut": "what is printed is a thing of the drawing floor",
    "SheetSentencesOut": "sentences are made on the drawing floor, by language",
    "RulesOut": "a list of what the wire itself understands",
}
"""Answers that are no view of one thing of the craft, each with the reason."""

WRITTEN_FROM_CONTEXT = {
    "unit": "the question says in which unit its answer is written",
    "language": "the question's headers say in which language its answer is written",
    "language_known": "the same",
    "sentences": "written in that language",
    "from_nut_fraction": "written only where the question asks for shop fractions",
}
"""Fields of answers that are no attribute of the domain object, each with the reason."""


def public_names(module: ModuleType) -> list[str]:
    """Names that a module offers, in the order in which it lists them."""
    return list(getattr(module, "__all__", []))


def calls(tree: ast.AST) -> set[str]:
    """Names of all that is called, dotted as written."""
    return {ast.unparse(node.func) for node in ast.walk(tree) if isinstance(node, ast.Call)}


@pytest.mark.parametrize("name", MODULES)
def test_every_file_says_its_subject_in_its_first_line(name):
    """The first line of a module's docstring is one sentence that ends with a full stop."""
    documentation = importlib.import_module(name).__doc__ or ""
    first = documentation.splitlines()[0] if documentation else ""

    assert first.endswith("."), f"{name} begins with {first!r}"
    assert first[:1].isupper() or first[:1] == "`", f"{name} begins with {first!r}"


@pytest.mark.parametrize("name", MODULES)
def test_public_names_exist_and_are_documented(name):
    """All that a module lists as public is there, once, and what can have a docstring has one."""
    module = importlib.import_module(name)
    names = public_names(module)

    assert len(names) == len(set(names))
    for public in names:
        thing = getattr(module, public)
        if inspect.isclass(thing) or inspect.isroutine(thing):
            assert inspect.getdoc(thing), f"{name}.{public} has no docstring"


@pytest.mark.parametrize("name", [name for name in MODULES if name.startswith("scalewright.lutherie.")])
def test_a_room_of_the_craft_lists_what_it_offers(name):
    """Every module of the craft has a list of its public names, and it lists all that has no underscore."""
    module = importlib.import_module(name)
    own = {
        public
        for public, thing in vars(module).items()
        if not public.startswith("_") and getattr(thing, "__module__", None) == name and inspect.isroutine(thing)
    }

    assert own <= set(public_names(module))


@pytest.mark.parametrize(
    "path",
    [path for floor in ("lutherie", "drawing", "wire") for path in sorted((PACKAGE / floor).rglob("*.py"))],
    ids=lambda path: str(path.relative_to(PACKAGE)),
)
def test_nothing_below_http_prints_or_rounds_or_opens_files(path):
    """No print, no input, no open and no rounding to digits below the floor of HTTP."""
    forbidden = {"print", "input", "open", "breakpoint", "np.round", "np.around"}

    assert not forbidden & calls(ast.parse(path.read_text(encoding="utf-8")))


def things_of_the_craft(name: str) -> list[type]:
    """Classes that the craft offers under a name: one, or the members of a union."""
    for module in MODULES:
        if module.startswith("scalewright.lutherie."):
            thing = vars(importlib.import_module(module)).get(name)
            if inspect.isclass(thing):
                return [thing]
            if thing is not None:
                return list(typing.get_args(thing))
    return []


def models() -> list[type[BaseModel]]:
    """Models of questions and answers."""
    return [
        cls
        for name in MODULES
        if name.startswith("scalewright.wire.")
        for _, cls in inspect.getmembers(importlib.import_module(name), inspect.isclass)
        if cls.__module__ == name and issubclass(cls, BaseModel)
    ]


def answers() -> list[type[BaseModel]]:
    """Models of answers that view a thing of the craft: those whose name ends with Out."""
    return [model for model in models() if model.__name__.endswith("Out") and model.__name__ not in NO_VIEW]


@pytest.mark.parametrize("answer", answers(), ids=lambda cls: cls.__name__)
def test_an_answer_is_a_view_of_one_thing_of_the_craft(answer):
    """Every field of XOut is an attribute of the craft's X, or is written from the question and listed above."""
    name, _ = NAMED_OTHERWISE.get(answer.__name__, (answer.__name__.removesuffix("Out"), ""))
    things = things_of_the_craft(name)
    attributes = {name for thing in things for name in [*dir(thing), *getattr(thing, "__dataclass_fields__", ())]}

    assert things
    assert set(answer.model_fields) - attributes <= set(WRITTEN_FROM_CONTEXT)


def test_every_field_on_the_wire_says_what_it_is():
    """Fields have descriptions, which the OpenAPI document shows; only a tag with one value needs none."""
    silent = [
        f"{model.__name__}.{field}"
        for model in models()
        for field, about in model.model_fields.items()
        if not about.description and len(typing.get_args(about.annotation)) != 1
    ]

    assert models()
    assert not silent


def leaves(cls: type) -> set[type]:
    """Classes below a class that have none below themselves."""
    below: list[type] = cls.__subclasses__()
    return {leaf for child in below for leaf in leaves(child)} if below else {cls}


def test_every_refusal_of_the_craft_is_in_the_one_table():
    """Each exception that the craft can raise has a slug of its own, and the slug a title and a status."""
    slugs = list(problems.REFUSED_BY_THE_CRAFT.values())

    assert leaves(LutherieError) <= set(problems.REFUSED_BY_THE_CRAFT)
    assert len(slugs) == len(set(slugs))
    assert set(slugs) <= set(problems.KINDS)


def test_every_kind_of_problem_is_told_in_full():
    """A kind of problem has a slug in lower case, an error's status, and says what to do in a sentence."""
    for slug, kind in problems.KINDS.items():
        assert kind.slug == slug == slug.lower().replace("_", "-")
        assert 400 <= kind.status < 600
        assert kind.title
        assert kind.about.endswith(".")


def test_every_room_of_http_has_its_room_on_the_wire():
    """One word, one file name on every floor: a router's name is a name on the wire."""
    routers = {name.rsplit(".", 1)[1] for name in MODULES if name.startswith("scalewright.api.routers.")}
    wire = {name.rsplit(".", 1)[1] for name in MODULES if name.startswith("scalewright.wire.")}

    assert routers <= wire | {"docs", "operation"}
