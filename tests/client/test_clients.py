"""The two clients: how they talk, and that they are the same."""

import asyncio
import inspect
from typing import Any

import httpx
import pytest

import scalewright_client as sc
from tests.client.operations import OPERATIONS
from tests.client.service_double import LAYOUT, Double

QUESTION: dict[str, Any] = {"scale": 24.75, "rule": "eighteenth", "frets": 1, "unit": "in"}


def good():
    return httpx.Response(200, json=LAYOUT)


def test_a_request_names_its_types_and_its_sender(ask):
    """JSON goes out, JSON is asked for, and a log of the service shows which client asked."""
    double = Double(good())
    ask(double, "layout", **QUESTION)
    (request,) = double.requests
    assert str(request.url) == "http://scalewright.test/v1/layout"
    assert request.headers["Content-Type"] == request.headers["Accept"] == "application/json"
    assert request.headers["User-Agent"] == f"scalewright-client/{sc.__version__} (API v1)"
    assert "X-API-Key" not in request.headers


def test_the_key_goes_with_every_request(ask):
    """A service with keys is asked with ``api_key``."""
    double = Double(good())
    ask(double, "layout", options={"api_key": "k-1"}, **QUESTION)
    assert double.requests[0].headers["X-API-Key"] == "k-1"


def test_a_language_goes_with_every_request(ask):
    """Labels and sheets are written in it; who asks for none sends none."""
    double = Double(good(), good())
    ask(double, "layout", options={"language": "de"}, **QUESTION)
    ask(double, "layout", **QUESTION)
    assert [request.headers.get("Accept-Language") for request in double.requests] == ["de", None]


def test_a_time_limit_reaches_the_transport(ask):
    """The caller decides how long to wait."""
    double = Double(good())
    ask(double, "layout", options={"timeout": 2.5}, **QUESTION)
    assert set(double.requests[0].extensions["timeout"].values()) == {2.5}


@pytest.mark.parametrize("base_url", ["http://shop.test/tools", "http://shop.test/tools/"])
def test_a_path_in_the_base_address_is_kept(base_url):
    """A service behind a shop's own path is found."""
    double = Double(good())
    with sc.Client(base_url, transport=httpx.MockTransport(double.handle)) as client:
        client.layout(**QUESTION)
    assert str(double.requests[0].url) == "http://shop.test/tools/v1/layout"


@pytest.mark.parametrize("base_url", ["", "127.0.0.1:8000", "ftp://shop.test", "http://", "http://[::1", "http:///v1"])
@pytest.mark.parametrize("kind", [sc.Client, sc.AsyncClient])
def test_an_address_that_is_none_is_refused_at_once(kind, base_url):
    """The mistake is told where it is made, with an example that works."""
    with pytest.raises(ValueError, match=r"http://127\.0\.0\.1:8000"):
        kind(base_url)


def test_a_client_can_be_closed_by_hand():
    """Context managers are a convenience, not a duty."""
    client = sc.Client()
    client.close()
    with pytest.raises(RuntimeError):
        client.rules()

    async def conversation():
        asynchronous = sc.AsyncClient()
        await asynchronous.aclose()
        with pytest.raises(RuntimeError):
            await asynchronous.rules()

    asyncio.run(conversation())


@pytest.mark.parametrize("operation", OPERATIONS)
@pytest.mark.parametrize("kind", [sc.Client, sc.AsyncClient])
def test_every_method_has_help_and_takes_keywords_only(kind, operation):
    """``help(client.layout)`` shows names, defaults and units."""
    method = getattr(kind, operation)
    assert (method.__name__, method.__qualname__) == (operation, f"{kind.__name__}.{operation}")
    assert "Returns" in method.__doc__
    own, *parameters = inspect.signature(method).parameters.values()
    assert own.name == "self"
    assert {parameter.kind for parameter in parameters} <= {inspect.Parameter.KEYWORD_ONLY}
    assert all(f"{parameter.name} : " in method.__doc__ for parameter in parameters)


@pytest.mark.parametrize("operation", OPERATIONS)
def test_both_clients_take_the_same(operation):
    """Code moves from one client to the other by adding ``await``."""
    assert inspect.signature(getattr(sc.Client, operation)) == inspect.signature(getattr(sc.AsyncClient, operation))
    assert inspect.iscoroutinefunction(getattr(sc.AsyncClient, operation))
    assert not inspect.iscoroutinefunction(getattr(sc.Client, operation))


def test_many_questions_may_be_under_way_at_once():
    """One asynchronous client serves a whole backend."""

    async def conversation():
        async with Double(*[good() for _ in range(50)]).asynchronous() as client:
            return await asyncio.gather(*[client.layout(**QUESTION) for _ in range(50)])

    assert len(set(asyncio.run(conversation()))) == 1
