"""Asking again: only where it is safe and helps, and never for ever."""

import httpx
import pytest

import scalewright_client as sc
from tests.client.service_double import LAYOUT, Double

QUESTION = {"scale": 24.75, "rule": "eighteenth", "frets": 1, "unit": "in"}


def good():
    return httpx.Response(200, json=LAYOUT)


@pytest.mark.parametrize("status", [429, 502, 503, 504])
def test_a_passing_trouble_is_asked_again(ask, status):
    """After "not now" the same question is put again, after growing waits."""
    double = Double(httpx.Response(status), httpx.Response(status), good())
    assert ask(double, "layout", **QUESTION).true_scale == LAYOUT["true_scale"]
    assert double.waits == [0.5, 1.0]
    assert len({request.content for request in double.requests}) == 1


@pytest.mark.parametrize(
    "fault",
    [
        httpx.ConnectError,
        httpx.ConnectTimeout,
        httpx.ReadError,
        httpx.WriteError,
        httpx.CloseError,
        httpx.RemoteProtocolError,
    ],
)
def test_a_broken_connection_is_asked_again(ask, fault):
    """Every operation is a pure calculation, so a lost answer may be asked for again."""
    double = Double(fault, good())
    assert ask(double, "layout", **QUESTION).octave_fret == 12
    assert double.waits == [0.5]


@pytest.mark.parametrize("status", [400, 401, 403, 404, 405, 406, 408, 413, 415, 422, 500, 501])
def test_a_refusal_is_never_asked_again(ask, status):
    """What is wrong stays wrong."""
    double = Double(httpx.Response(status))
    with pytest.raises(sc.ProblemError) as caught:
        ask(double, "layout", **QUESTION)
    asked = [request for request in double.requests if request.url.path != "/"]
    assert (caught.value.status, double.waits, len(asked)) == (status, [], 1)


def test_asking_ends(ask):
    """After the last attempt the refusal is raised, without a further wait."""
    double = Double(*[httpx.Response(503, headers={"X-Request-ID": str(n)}) for n in range(3)])
    with pytest.raises(sc.UnavailableError) as caught:
        ask(double, "layout", **QUESTION)
    assert (caught.value.request_id, double.waits) == ("2", [0.5, 1.0])


def test_a_line_that_stays_broken_is_told_with_its_cause(ask):
    """After the last attempt the fault is raised as the client's own, the transport's beneath it."""
    double = Double(*[httpx.ConnectError] * 3)
    with pytest.raises(sc.ConnectionFaultError, match=r"http://scalewright\.test") as caught:
        ask(double, "layout", **QUESTION)
    assert isinstance(caught.value.__cause__, httpx.ConnectError)
    assert len(double.requests) == 3


def test_a_slow_answer_is_not_asked_for_again(ask):
    """Asking a slow service again would only make it slower."""
    double = Double(httpx.ReadTimeout)
    with pytest.raises(sc.TimedOutError):
        ask(double, "layout", **QUESTION)
    assert double.waits == []


def test_other_faults_of_the_transport_are_wrapped(ask):
    """No exception of the transport reaches the caller bare."""
    with pytest.raises(sc.TransportError):
        ask(Double(httpx.DecodingError), "layout", **QUESTION)


def test_the_service_may_ask_for_a_longer_wait(ask):
    """Retry-After beats the client's own shorter wait."""
    double = Double(httpx.Response(429, headers={"Retry-After": "3"}), good())
    ask(double, "layout", **QUESTION)
    assert double.waits == [3.0]


def test_the_service_cannot_make_the_client_wait_for_ever(ask):
    """A Retry-After beyond the longest wait is told to the caller instead."""
    double = Double(httpx.Response(429, headers={"Retry-After": "3600"}))
    with pytest.raises(sc.RateLimitedError) as caught:
        ask(double, "layout", **QUESTION)
    assert (caught.value.retry_after, double.waits) == (3600.0, [])


def test_waits_grow_to_the_longest_and_keep_half_whatever_chance_says(ask):
    """Chance shortens a wait to no less than half of it."""
    policy = sc.Retry(attempts=5, first_wait=1.0, longest_wait=3.0, jitter=lambda: 0.0)
    double = Double(*[httpx.Response(503)] * 4, good())
    ask(double, "layout", options={"retry": policy}, **QUESTION)
    assert double.waits == [0.5, 1.0, 1.5, 1.5]


def test_one_attempt_means_no_retry(ask):
    """A caller with a queue of their own may switch retries off."""
    double = Double(httpx.Response(503))
    with pytest.raises(sc.UnavailableError):
        ask(double, "layout", options={"retry": sc.Retry(attempts=1)}, **QUESTION)


@pytest.mark.parametrize("options", [{"attempts": 0}, {"first_wait": -1.0}, {"first_wait": 11.0}])
def test_a_policy_that_makes_no_sense_is_refused(options):
    """The mistake is told where it is made."""
    with pytest.raises(ValueError, match="must"):
        sc.Retry(**options)
