"""Refusals of the service as exceptions."""

import math

import httpx
import pytest

import scalewright_client as sc
from scalewright_client._problems import BY_SLUG, BY_STATUS, problem_of, retry_after_of
from tests.client.service_double import Double

PROBLEM = {
    "type": "/problems/unreadable-length",
    "title": "Not a length",
    "status": 422,
    "detail": "The scale is no length.",
    "instance": "urn:request:abc-1",
    "errors": [
        {"pointer": "/scale", "code": "unreadable_length", "detail": "Write it as 24 9/16 in.", "example": "24 9/16 in"}
    ],
    "position": 4,
}


def problem(status=422, *, headers=None, **members):
    document = {name: value for name, value in {**PROBLEM, "status": status, **members}.items() if value is not None}
    kind = {"Content-Type": "application/problem+json"}
    return httpx.Response(status, json=document, headers={**kind, **(headers or {})})


def test_a_refusal_carries_all_that_the_service_said(ask):
    """Status, title, detail, slug, pointers, request id and the explaining numbers all arrive."""
    with pytest.raises(sc.UnreadableLengthError) as caught:
        ask(Double(problem()), "layout", scale="25..4 in", rule="equal", frets=12)
    error = caught.value
    assert (error.status, error.title, error.detail) == (422, "Not a length", "The scale is no length.")
    assert (error.slug, error.request_id) == ("unreadable-length", "abc-1")
    assert error.pointers == ("/scale",)
    fault = sc.Fault("/scale", "unreadable_length", "Write it as 24 9/16 in.", "24 9/16 in")
    assert error.errors == (fault,)
    assert error.extensions == {"position": 4}


def test_the_text_of_a_refusal_is_enough_to_mend_the_request():
    """Printed, it names the place, the remedy and the request to quote."""
    text = str(problem_of(problem()))
    assert "The scale is no length." in text
    assert "/scale: Write it as 24 9/16 in." in text
    assert "abc-1" in text
    assert str(problem_of(httpx.Response(500))) == "Internal Server Error"


def test_the_request_id_of_the_header_comes_first():
    """The header is on every answer; the instance is only in problem documents."""
    assert problem_of(problem(headers={"X-Request-ID": "from-header"})).request_id == "from-header"


@pytest.mark.parametrize(("slug", "kind"), BY_SLUG.items())
def test_each_slug_has_its_class_below_that_of_its_status(slug, kind):
    """Who catches the class of the status also catches what a slug tells more exactly."""
    error = problem_of(problem(type=f"/problems/{slug}"))
    assert type(error) is kind
    assert isinstance(error, sc.InvalidRequestError)


@pytest.mark.parametrize(("status", "kind"), BY_STATUS.items())
def test_an_unknown_slug_falls_back_to_its_status(status, kind):
    """A refusal that a newer service has added is still an exception of the right kind."""
    error = problem_of(problem(status, type="/problems/something-new"))
    assert type(error) is kind
    assert error.slug == "something-new"


@pytest.mark.parametrize(
    ("status", "kind"),
    [
        (418, sc.RequestProblemError),
        (499, sc.RequestProblemError),
        (500, sc.ServerProblemError),
        (507, sc.ServerProblemError),
    ],
)
def test_an_unknown_status_falls_back_to_its_class(status, kind):
    """4xx is a fault of the request, 5xx one of the service."""
    assert type(problem_of(problem(status, type="about:blank"))) is kind


@pytest.mark.parametrize(
    "response",
    [
        httpx.Response(502, html="<h1>Bad gateway</h1>"),
        httpx.Response(502, content=b"{broken", headers={"Content-Type": "application/problem+json"}),
        httpx.Response(502, json=["no", "object"]),
        httpx.Response(502, json={"type": 7, "title": None, "errors": {"pointer": "/x"}}),
        httpx.Response(502, content=b"\xff\xfe", headers={"Content-Type": "application/json"}),
        httpx.Response(502),
    ],
    ids=["page", "broken", "list", "odd members", "no text", "empty"],
)
def test_what_is_no_problem_document_still_tells_its_status(response):
    """A gateway's page becomes an exception with the class and the name of its status."""
    error = problem_of(response)
    assert type(error) is sc.UnavailableError
    assert (error.title, error.slug, error.errors, error.request_id) == ("Bad Gateway", None, (), None)


def test_every_fault_is_read_leniently():
    """Members of a fault that are missing or odd do not hide the others."""
    error = problem_of(problem(errors=[{"pointer": "/frets"}, "odd", {"detail": 3, "code": "x"}]))
    assert error.errors == (sc.Fault("/frets", "", ""), sc.Fault("", "x", ""))


@pytest.mark.parametrize(
    ("headers", "seconds"),
    [
        ({"Retry-After": "7"}, 7.0),
        ({"Retry-After": "Wed, 25 Nov 2026 10:00:30 GMT", "Date": "Wed, 25 Nov 2026 10:00:00 GMT"}, 30.0),
        ({"Retry-After": "Wed, 25 Nov 2026 09:00:00 GMT", "Date": "Wed, 25 Nov 2026 10:00:00 GMT"}, 0.0),
        ({"Retry-After": "Wed, 25 Nov 2026 10:00:30 GMT"}, None),
        ({"Retry-After": "soon", "Date": "Wed, 25 Nov 2026 10:00:00 GMT"}, None),
        ({"Retry-After": "-3"}, None),
        ({"Retry-After": "9" * 5000}, math.inf),
        ({}, None),
    ],
)
@pytest.mark.source("RFC 9110, section 10.2.3: Retry-After = HTTP-date / delay-seconds")
def test_retry_after_is_read_from_seconds_and_from_dates(headers, seconds):
    """Both forms of the header count from the answer's own date; what is unreadable is left out."""
    assert retry_after_of(httpx.Response(503, headers=headers)) == seconds


def test_the_exceptions_form_one_tree():
    """One class catches all, one all refusals, one all faults of the line."""
    classes = [kind for kind in vars(sc).values() if isinstance(kind, type) and issubclass(kind, Exception)]
    assert all(issubclass(kind, sc.ScalewrightError) for kind in classes)
    assert set(BY_SLUG.values()) | set(BY_STATUS.values()) < set(classes)
