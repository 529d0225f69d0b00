"""Versions: the client tells which service it talks to, and says in plain words where the two do not match."""

import asyncio
import json
from types import SimpleNamespace

import httpx
import pytest

import scalewright_client as sc
from scalewright_client._versions import read_service
from tests.client.service_double import LAYOUT, STEADY

QUESTION = {"scale": 650, "rule": "equal", "frets": 1}
NOT_FOUND = {"type": "/problems/not-found", "title": "No such address", "status": 404, "detail": "Nothing lives here."}


def root(version, api=("v1",), **members):
    """What a service says of itself."""
    return {"service": "scalewright", "version": version, "api": list(api), **members}


class Simulated:
    """A service of another version: what it says at its root, and how it answers everything else."""

    def __init__(self, said, answer=None, status=200):
        self.said = said
        self.answer = answer
        self.status = status
        self.asked: list[str] = []

    def handle(self, request):
        """Answer a request."""
        self.asked.append(request.url.path)
        if request.url.path == "/":
            if self.said is None:
                return httpx.Response(404, text="nothing here")
            return httpx.Response(200, json=self.said)
        kind = "application/problem+json" if self.status >= 400 else "application/json"
        return httpx.Response(self.status, json=self.answer, headers={"Content-Type": kind})


def sync(service, name, /, **question):
    """Ask through the blocking client."""
    with sc.Client("http://double", transport=httpx.MockTransport(service.handle), retry=STEADY) as client:
        return getattr(client, name)(**question)


def asynchronous(service, name, /, **question):
    """Ask through the asynchronous client."""

    async def ask():
        transport = httpx.MockTransport(service.handle)
        async with sc.AsyncClient("http://double", transport=transport, retry=STEADY) as client:
            return await getattr(client, name)(**question)

    return asyncio.run(ask())


both = pytest.mark.parametrize("put", [sync, asynchronous], ids=["sync", "async"])


@both
@pytest.mark.parametrize(
    ("version", "relation"),
    [(sc.__version__, "same"), ("0.0.9", "older"), ("0.99.0", "newer"), ("1.0.0", "newer"), ("next", "unknown")],
)
def test_the_service_tells_its_version(put, version, relation):
    """The client learns the version and holds it against the one that it was built for."""
    service = put(Simulated(root(version)), "service")

    assert (service.version, service.relation, service.api) == (version, relation, ("v1",))
    assert sc.API_VERSION in service.api


@both
@pytest.mark.parametrize(
    ("api", "advice"),
    [
        (["v2"], "update scalewright-client"),
        (["v2", "v3"], "update scalewright-client"),
        (["v0"], "update the service"),
    ],
)
def test_another_api_is_refused_in_plain_words(put, api, advice):
    """A service that no longer, or not yet, speaks v1 is refused with both versions and what to do."""
    for name, question in (("service", {}), ("layout", QUESTION)):
        with pytest.raises(sc.VersionError) as refused:
            put(Simulated(root("2.0.1", api), NOT_FOUND, 404), name, **question)

        assert refused.value.service_version == "2.0.1"
        assert refused.value.client_version == sc.__version__
        for words in ("2.0.1", sc.__version__, " and ".join(api), "v1", advice):
            assert words in str(refused.value)


@both
def test_a_service_that_speaks_the_next_api_too_is_good(put):
    """While v1 is served beside v2, nothing changes."""
    assert put(Simulated(root("2.0.0", ["v1", "v2"]), LAYOUT), "layout", **QUESTION).octave_fret == 12


@both
@pytest.mark.parametrize(
    ("version", "advice"),
    [("0.0.9", "update the service"), ("3.1.0", "update scalewright-client"), (sc.__version__, "ask")],
)
@pytest.mark.parametrize("status", [404, 405])
def test_an_operation_that_is_missing_is_told_with_both_versions(put, version, advice, status):
    """Where the service lacks an operation, the message names it, both versions, and which of the two to update."""
    service = Simulated(root(version), NOT_FOUND | {"status": status}, status)
    with pytest.raises(sc.MissingOperationError) as refused:
        put(service, "layout", **QUESTION)

    assert isinstance(refused.value, sc.NotFoundError)
    assert refused.value.status == status
    for words in ("/v1/layout", version, sc.__version__, advice):
        assert words in str(refused.value)
    assert service.asked == ["/v1/layout", "/"]


@both
def test_fields_of_a_newer_service_are_ignored(put):
    """What a newer service adds to its answers does no harm, and is not asked about."""
    answer = json.loads(json.dumps(LAYOUT)) | {"mood": {"good": True}}
    answer["frets"][0]["colour"] = "red"
    service = Simulated(root("0.99.0"), answer)

    assert put(service, "layout", **QUESTION).frets[0].from_nut == 1.375
    assert service.asked == ["/v1/layout"]


@both
def test_a_field_that_an_older_service_lacks_is_told(put):
    """An answer without a field that is promised names the field, and both versions."""
    service = Simulated(root("0.0.9"), {name: value for name, value in LAYOUT.items() if name != "octave_fret"})
    with pytest.raises(sc.UnexpectedAnswerError, match="/octave_fret") as refused:
        put(service, "layout", **QUESTION)

    assert "the service is version 0.0.9" in str(refused.value)
    assert sc.__version__ in str(refused.value)


@both
@pytest.mark.parametrize(("version", "hinted"), [("0.0.9", True), (sc.__version__, False)])
def test_a_field_that_an_older_service_does_not_know_is_told(put, version, hinted):
    """A refusal of a field says that the service may be too old for it, where it is older."""
    fault = {"pointer": "/fractions", "code": "extra_forbidden", "detail": "There is no field of this name here."}
    problem = {"type": "/problems/invalid-request", "title": "Invalid request", "status": 422, "errors": [fault]}
    with pytest.raises(sc.InvalidRequestError) as refused:
        put(Simulated(root(version), problem, 422), "layout", **QUESTION, fractions=64)

    assert refused.value.pointers == ("/fractions",)
    assert ("0.0.9" in str(refused.value)) == hinted
    assert (refused.value.hint is not None) == hinted


@both
@pytest.mark.parametrize("said", [None, [], {"service": "another"}, {"status": "ok"}])
def test_an_error_stays_what_it_is_where_the_version_cannot_be_learnt(put, said):
    """Behind a gateway that hides the root, or at a wrong address, the refusal is told as it came."""
    with pytest.raises(sc.NotFoundError) as refused:
        put(Simulated(said, NOT_FOUND, 404), "layout", **QUESTION)

    assert not isinstance(refused.value, sc.MissingOperationError)
    assert "Nothing lives here." in str(refused.value)


@pytest.mark.parametrize("said", [[], {"service": "another"}])
def test_what_is_no_service_is_said_not_to_be(said):
    """Asked for its version, another program is not taken for the service."""
    with pytest.raises(sc.UnexpectedAnswerError, match="check the base address"):
        sync(Simulated(said), "service")


@both
def test_nothing_hides_an_error(put):
    """Whatever goes wrong while the version is asked for, the error that was there first is told."""

    def handle(request):
        if request.url.path == "/":
            message = "nothing was prepared for this question"
            raise KeyError(message)
        return httpx.Response(404, json=NOT_FOUND, headers={"Content-Type": "application/problem+json"})

    with pytest.raises(sc.NotFoundError, match="Nothing lives here"):
        put(SimpleNamespace(handle=handle), "layout", **QUESTION)


@both
@pytest.mark.parametrize("status", [400, 422, 500])
def test_other_refusals_cost_no_further_question(put, status):
    """The version is asked only where it may be behind an error."""
    service = Simulated(root("0.0.9"), {"title": "No", "status": status}, status)
    with pytest.raises(sc.ProblemError):
        put(service, "layout", **QUESTION)

    assert service.asked == ["/v1/layout"]


@pytest.mark.parametrize("name", ["identification_batch", "layout_batch"])
def test_a_batch_that_is_missing_is_told_too(name):
    """A service without a batch route, or of another API, says so before the first answer."""
    for said, kind in ((root("0.0.9"), sc.MissingOperationError), (root("2.0.0", ["v2"]), sc.VersionError)):
        transport = httpx.MockTransport(Simulated(said, NOT_FOUND, 404).handle)
        with sc.Client("http://double", transport=transport) as client, pytest.raises(kind, match=sc.__version__):
            next(getattr(client, name)([QUESTION]))

        async def first(said=said):
            transport = httpx.MockTransport(Simulated(said, NOT_FOUND, 404).handle)
            async with sc.AsyncClient("http://double", transport=transport) as client:
                return await anext(getattr(client, name)([QUESTION]))

        with pytest.raises(kind, match=sc.__version__):
            asyncio.run(first())


def test_the_first_services_told_their_api_by_their_links():
    """A root without the member is read by its links."""
    said = {"service": "scalewright", "version": "0.1.0", "links": {"docs": "/docs", "rules": "/v1/rules"}}
    service = read_service(httpx.Response(200, json=said))

    assert service == sc.Service("0.1.0", ("v1",))


def test_the_client_says_what_it_speaks():
    """Every request states the client's version and that of the API."""
    seen = []

    def handle(request):
        seen.append(request)
        return httpx.Response(200, json=LAYOUT)

    with sc.Client("http://double", transport=httpx.MockTransport(handle)) as client:
        client.layout(scale=650, rule="equal", frets=1)

    assert seen[0].headers["User-Agent"] == f"scalewright-client/{sc.__version__} (API {sc.API_VERSION})"
    assert seen[0].url.path.startswith(f"/{sc.API_VERSION}/")
