"""Problems: every way to fail ends in a problem document that says what to do and repeats nothing."""

import asyncio
import inspect
import json
import re
from typing import Any

import httpx
import pytest

from scalewright.api import problems
from scalewright.api.app import create_app
from scalewright.api.problems import KINDS, REFUSED_BY_THE_CRAFT, pointer_to
from scalewright.api.settings import Settings
from scalewright.lutherie import errors
from scalewright.lutherie.errors import LutherieError

SECRET = "zq7-do-not-repeat-this"  # noqa: S105  (not one: it stands for what a client sent)
JSON = {"Content-Type": "application/json"}
ONE_PITCH = {"name": "listed", "cents": [100]}
GOOD = b'{"scale": 650, "rule": "equal", "frets": 1}'


async def chunks(size):
    """Send a body in pieces, its length untold."""
    for _ in range(size // 1024):
        yield SECRET.ljust(1024).encode()


WAYS_TO_FAIL: dict[str, tuple[int, str, str, dict[str, Any]]] = {
    "bad JSON": (400, "POST", "/v1/layout", {"content": b'{"' + SECRET.encode(), "headers": JSON}),
    "NaN": (400, "POST", "/v1/layout", {"content": b'{"scale": NaN}', "headers": JSON}),
    "twice": (400, "POST", "/v1/layout", {"content": f'{{"{SECRET} ": 1, "{SECRET} ": 2}}'.encode(), "headers": JSON}),
    "query": (400, "GET", "/v1/layout?" + "&".join(["a=" + SECRET] * 200), {}),
    "no such address": (404, "GET", f"/{SECRET}", {}),
    "no such version": (404, "POST", "/v2/layout", {"content": GOOD, "headers": JSON}),
    "a trailing slash": (404, "GET", "/v1/layout/", {}),
    "no such asset": (404, "GET", f"/docs-assets/{SECRET}", {}),
    "outside the assets": (404, "GET", "/docs-assets/..%2f..%2f__init__.py", {}),
    "no such problem": (404, "GET", f"/problems/{SECRET}", {}),
    "method": (405, "DELETE", "/v1/layout", {}),
    "method of a page": (405, "POST", "/livez", {"content": SECRET}),
    "method of an asset": (405, "POST", "/docs-assets/swagger-ui.css", {"content": SECRET}),
    "accept": (406, "GET", "/v1/rules", {"headers": {"Accept": f"application/{SECRET}"}}),
    "format": (406, "GET", f"/v1/rules?format={SECRET}", {}),
    "declared size": (413, "POST", "/v1/layout", {"content": SECRET.encode() * 10_000, "headers": JSON}),
    "untold size": (413, "POST", "/v1/layout", {"content": 10_000_000, "headers": JSON}),
    "address": (414, "GET", "/v1/layout?scale=" + SECRET * 1000, {}),
    "content type": (415, "POST", "/v1/layout", {"content": GOOD, "headers": {"Content-Type": f"text/{SECRET}"}}),
    "encoding": (415, "POST", "/v1/layout", {"content": GOOD, "headers": JSON | {"Content-Encoding": SECRET}}),
    "a value": (422, "POST", "/v1/layout", {"json": {"scale": SECRET, "rule": SECRET, "frets": SECRET}}),
    "a name": (422, "POST", "/v1/layout", {"json": {f"{SECRET} ~/": 1, "rule": {f"\u202e{SECRET}": SECRET}}}),
    "a long name": (422, "POST", "/v1/layout", {"json": {SECRET * 100: 1}}),
    "a parameter": (422, "GET", f"/v1/layout?scale={SECRET}&rule={SECRET}&frets={SECRET}", {}),
    "a parameter's name": (422, "GET", f"/v1/rules?{SECRET * 3}=1", {}),
    "the craft": (422, "POST", "/v1/layout", {"json": {"scale": 650, "rule": ONE_PITCH, "frets": 2}}),
    "headers": (431, "GET", "/livez", {"headers": {"X-Note": SECRET * 1000}}),
    "a fault of ours": (500, "GET", "/fails", {}),
}  # fmt: skip


@pytest.fixture(scope="module")
def failing():
    """Return an application with one route that fails."""
    app = create_app(Settings(log_requests=False))

    @app.get("/fails")
    async def fails():
        raise RuntimeError(SECRET)

    return app


@pytest.mark.parametrize("way", WAYS_TO_FAIL)
def test_every_failure_is_a_problem_document(send, failing, way):
    """The right status, the media type, the members of RFC 9457, no caching, the request's id, nothing repeated."""
    status, method, path, options = WAYS_TO_FAIL[way]
    if isinstance(options.get("content"), int):
        options = options | {"content": chunks(options["content"])}
    answer = send(method, path, app=failing, **options)
    problem = answer.json()
    kind = KINDS[problem["type"].removeprefix("/problems/")]

    assert answer.status_code == status == problem["status"] == kind.status
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.headers["cache-control"] == "no-store"
    assert list(problem)[:6] == ["type", "title", "status", "detail", "instance", "errors"]
    assert problem["title"] == kind.title
    assert problem["detail"].endswith((".", ")"))
    assert problem["instance"] == f"urn:request:{answer.headers['x-request-id']}"
    assert SECRET not in answer.text
    assert "Traceback" not in answer.text
    for fault in problem["errors"]:
        assert re.fullmatch(r"(/[A-Za-z0-9_.-]+)*", fault["pointer"])


def test_a_failure_of_ours_is_logged_on_one_line(send, failing, caplog):
    """The log has the request's id and the traceback; the answer has the id alone."""
    answer = send("GET", "/fails", app=failing, headers={"X-Request-ID": "report-me.1"})
    (record,) = [record for record in caplog.records if record.name == "scalewright.requests"]
    line = json.loads(record.getMessage())

    assert answer.json()["instance"] == "urn:request:report-me.1"
    assert line["request_id"] == "report-me.1"
    assert "RuntimeError" in line["traceback"]


def leaves(cls):
    """Classes below one that have no class below themselves."""
    below = cls.__subclasses__()
    return {cls} if not below else set().union(*map(leaves, below))


def test_every_refusal_of_the_craft_has_a_problem():
    """A new exception of the craft needs its line in the table."""
    ours = {cls for cls in leaves(LutherieError) if cls.__module__ == errors.__name__}

    assert ours == set(REFUSED_BY_THE_CRAFT)
    assert set(REFUSED_BY_THE_CRAFT.values()) <= set(KINDS)


def test_slugs_and_titles_are_chosen_by_hand_and_told_apart():
    """No two kinds share a slug or a title, and each says what to do."""
    assert len({kind.title for kind in KINDS.values()}) == len(KINDS)
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", slug) and slug == kind.slug for slug, kind in KINDS.items())
    assert all(kind.about.endswith(".") for kind in KINDS.values())
    assert inspect.getdoc(problems)


@pytest.mark.parametrize("slug", KINDS)
def test_the_type_of_a_problem_is_an_address(send, slug):
    """What a document names as its type can be read there."""
    page = send("GET", f"/problems/{slug}").json()

    assert page["type"] == f"/problems/{slug}"
    assert page["status"] == KINDS[slug].status


@pytest.mark.source("RFC 6901, JavaScript Object Notation (JSON) Pointer, section 5: the pointers of its example")
@pytest.mark.parametrize(
    ("path", "pointer"),
    [((), ""), (("foo",), "/foo"), (("foo", 0), "/foo/0"), (("",), "/"), (("a/b",), "/a~1b"), (("m~n",), "/m~0n"),
     (("c%d",), "/c%d"), (('k"l',), '/k"l'), ((" ",), "/ ")],
)  # fmt: skip
def test_pointers_follow_their_standard(path, pointer):
    """Slashes and tildes in names are escaped."""
    assert pointer_to(path) == pointer


@pytest.mark.parametrize(
    ("path", "allow"),
    [
        ("/v1/layout", "GET, HEAD, POST"),
        ("/v1/rules", "GET, HEAD"),
        ("/livez", "GET, HEAD"),
        ("/v1/identification", "POST"),
        ("/problems/not-found", "GET, HEAD"),
    ],
)
def test_405_and_options_list_all_methods(send, path, allow):
    """Allow names the methods of every route that shares the address."""
    assert send("PATCH", path).headers["allow"] == allow
    options = send("OPTIONS", path)

    assert (options.status_code, options.headers["allow"], options.content) == (204, allow, b"")


def test_a_slow_body_is_given_up():
    """A body that stops arriving is answered with 408, and the connection is closed."""
    app = create_app(Settings(log_requests=False, body_seconds=0.05))

    async def slow():
        yield b'{"scale"'
        await asyncio.sleep(10.0)

    async def ask():
        async with httpx.AsyncClient(transport=httpx.ASGITransport(app), base_url="http://service") as client:
            return await client.post("/v1/layout", content=slow(), headers=JSON)

    answer = asyncio.run(ask())

    assert answer.status_code == 408
    assert answer.headers["connection"] == "close"
    assert answer.json()["type"] == "/problems/request-timeout"


@pytest.mark.parametrize(
    ("body", "pointer", "named"),
    [
        (b'{"scale": 650, "rule": "equal", "scale": 640}', "/scale", '"scale"'),
        (b'{"scale": 650, "rule": {"name": "divisor", "divisor": 17, "divisor": 18}}', "/rule/divisor", '"divisor"'),
        (b'{"a": [1, {"b": 1}, {"c": 1, "d": 2, "c": 3}]}', "/a/2/c", '"c"'),
        (b'{"scale": {"x": 1, "x": 2}, "scale": 640}', "/scale", '"scale"'),
        ('{"ru\u202ele": 1, "ru\u202ele": 2}'.encode(), "", "a member"),
        (b'{"rule": {"not plain": 1, "not plain": 2}}', "/rule", "a member"),
    ],
)
def test_a_member_that_is_given_twice_is_pointed_at(send, body, pointer, named):
    """The refusal names the member, where its name is a plain one, and points at it, however deep it stands."""
    answer = send("POST", "/v1/layout", content=body, headers=JSON)
    problem = answer.json()
    (fault,) = problem["errors"]

    assert answer.status_code == 400
    assert fault["pointer"] == pointer
    assert fault["code"] == "member_repeated"
    assert f"{named} twice" in fault["detail"]
    assert fault["detail"] in problem["detail"]


@pytest.mark.parametrize("brackets", [("[", "]"), ('{"a":', "}")])
def test_deep_nesting_is_refused_in_plain_words(send, brackets):
    """A body nested two hundred deep and more is refused with that number, and not in a parser's words."""
    opening, closing = brackets
    answer = send("POST", "/v1/layout", content=opening * 201 + "1" + closing * 201, headers=JSON)

    assert answer.status_code == 400
    assert "200 deep" in answer.json()["detail"]
    assert "recursion" not in answer.text
    assert "nested" not in send("POST", "/v1/layout", content=opening * 199 + "1" + closing * 199, headers=JSON).text


@pytest.mark.source("Unicode Character Database: names of characters")
@pytest.mark.parametrize(
    ("member", "text", "words"),
    [
        ("title", "board\u202e", "Character 6 of this text, U+202E (right-to-left override), is not accepted here."),
        ("title", "\x07", "Character 1 of this text, U+0007 (a control character), is not accepted here."),
        (
            "title",
            "ab\U000e0041",
            "Character 3 of this text, U+E0041 (tag latin capital letter a), is not accepted here.",
        ),
        ("date", "25.11.2026", "This text does not have the form that is needed here."),
    ],
)
def test_a_character_that_is_not_accepted_is_told_by_number_and_name(send, member, text, words):
    """The refusal of a text says which character is at fault and where; a date of another form has none."""
    question = {"part": {"id": "a", "kind": "board", "true_scale": 650}, member: text}
    problem = send("POST", "/v1/label", json=question).json()

    assert problem["errors"][0]["pointer"] == f"/{member}"
    assert problem["errors"][0]["detail"] == words


def test_a_name_with_a_letter_that_is_not_accepted(send):
    """Names that other systems have to read are spelled in a few characters; the first other one is told."""
    parts = [{"id": "größe", "kind": "board", "true_scale": 650}, {"id": "b", "kind": "bridge", "true_scale": 650}]
    detail = send("POST", "/v1/assembly", json={"parts": parts}).json()["errors"][0]["detail"]

    assert detail == "Character 3 of this text, U+00F6 (latin small letter o with diaeresis), is not accepted here."


def test_long_lists_are_refused_by_setting(send):
    """The longest list is a setting; what is longer is pointed at."""
    app = create_app(Settings(log_requests=False, max_list_items=3))
    rule: dict[str, Any] = {"name": "listed", "cents": [100, 200, 300, 400]}
    problem = send("POST", "/v1/layout", app=app, json={"scale": 650, "rule": rule, "frets": 4}).json()

    assert problem["errors"] == [
        {
            "pointer": "/rule/cents",
            "code": "too_long",
            "detail": "A list may have at most 3 entries; send less at once.",
        }
    ]
    rule["cents"].pop()
    assert send("POST", "/v1/layout", app=app, json={"scale": 650, "rule": rule, "frets": 3}).status_code == 200
