"""Media types, caching and methods: how an answer is asked for and kept."""

import pytest

from scalewright.api.media import CSV, JSON, choose
from scalewright.api.problems import Refusal

QUERY = "/v1/layout?scale=650&rule=equal&frets=12"
BOTH = (JSON, CSV)


@pytest.mark.parametrize(
    ("accept", "chosen"),
    [
        (None, JSON),
        (b"*/*", JSON),
        (b"", JSON),
        (b"application/json", JSON),
        (b"text/csv", CSV),
        (b"TEXT/CSV", CSV),
        (b"text/*", CSV),
        (b"text/csv;header=present", CSV),
        (b"application/json;q=0.5, text/csv", CSV),
        (b"application/json;q=0.5, text/csv;q=0.4", JSON),
        (b"application/json;q=0, */*", CSV),
        (b"*/*;q=0.1, text/csv;q=0.2", CSV),
        (b"text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8", JSON),
        (b"text/csv;q=nan, application/json", JSON),
        (b"text/csv;q=2, application/json", JSON),
        (b"text/csv ; Q = 0.001", CSV),
        (b",,text/csv,,", CSV),
        (b"\xff\xfe, text/csv", CSV),
    ],
)
def test_the_accept_header_is_weighed(accept, chosen):
    """Qualities and precision decide (RFC 9110, section 12.5.1); of two that are liked the same JSON comes."""
    assert choose(BOTH, accept) == chosen


@pytest.mark.parametrize(
    "accept", [b"application/pdf", b"text/csv;q=0", b"*/*;q=0", b"application/json;q=0, text/csv;q=0.0", b"csv"]
)
def test_what_cannot_be_made_is_not_acceptable(accept):
    """A refusal lists what can be made."""
    with pytest.raises(Refusal) as refused:
        choose(BOTH, accept)

    assert refused.value.slug == "not-acceptable"
    assert refused.value.facts == {"available": [JSON, CSV]}


def test_format_beats_accept():
    """A link can ask for a form that its browser does not name."""
    assert choose(BOTH, b"text/html", "csv") == CSV
    assert choose(BOTH, b"text/csv", "json") == JSON
    with pytest.raises(Refusal):
        choose((JSON,), b"*/*", "csv")


def test_a_layout_by_address_may_be_kept(send):
    """GET has a weak entity tag, may be cached for a day, and differs by Accept."""
    answer = send("GET", QUERY)

    assert answer.headers["etag"].startswith('W/"')
    assert answer.headers["cache-control"] == "public, max-age=86400"
    assert answer.headers["vary"] == "Accept, Accept-Encoding"
    assert send("GET", QUERY).headers["etag"] == answer.headers["etag"]
    assert send("GET", QUERY + "&format=csv").headers["etag"] != answer.headers["etag"]
    assert send("GET", QUERY.replace("650", "651")).headers["etag"] != answer.headers["etag"]


@pytest.mark.parametrize("form", ["{tag}", "{opaque}", '"other", {tag}', 'W/"other",{opaque}', "*"])
def test_what_is_known_is_not_sent_again(send, form):
    """If-None-Match, weakly compared, is answered with 304, the headers of the answer and no body."""
    known = send("GET", QUERY)
    tag = known.headers["etag"]
    answer = send("GET", QUERY, headers={"If-None-Match": form.format(tag=tag, opaque=tag.removeprefix("W/"))})

    assert (answer.status_code, answer.content) == (304, b"")
    for name in ("etag", "cache-control", "vary"):
        assert answer.headers[name] == known.headers[name]


def test_another_tag_gets_the_answer(send):
    """A tag of something else is no reason to send nothing."""
    assert send("GET", QUERY, headers={"If-None-Match": 'W/"other"'}).status_code == 200


def test_a_post_is_not_kept(send):
    """The answer of a POST has no tag and is not to be cached."""
    answer = send("POST", "/v1/layout", json={"scale": 650, "rule": "equal", "frets": 12})

    assert "etag" not in answer.headers
    assert answer.headers["cache-control"] == "no-store"


@pytest.mark.parametrize("path", [QUERY, "/v1/rules", "/livez", "/readyz", "/", "/docs", "/openapi.json"])
def test_head_is_get_without_the_body(send, path):
    """HEAD has the status and the headers of GET, its length too, and no body."""
    got, head = send("GET", path), send("HEAD", path)
    varying = {"x-request-id"}

    assert (head.status_code, head.content) == (got.status_code, b"")
    assert {k: v for k, v in head.headers.items() if k not in varying} == {
        k: v for k, v in got.headers.items() if k not in varying
    }


@pytest.mark.parametrize("request_id", ["7f3a", "order-17.b_2", "x" * 64])
def test_a_plain_request_id_comes_back(send, request_id):
    """An id that a client gives its request names it everywhere."""
    assert send("GET", "/livez", headers={"X-Request-ID": request_id}).headers["x-request-id"] == request_id


@pytest.mark.parametrize("request_id", ["a b", "x" * 65, "", '"}', "é"])
def test_an_odd_request_id_is_replaced(send, request_id):
    """What could upset a log or a header is not taken over."""
    answered = send("GET", "/livez", headers={"X-Request-ID": request_id.encode()}).headers["x-request-id"]

    assert answered != request_id
    assert len(answered) == 16


def test_every_answer_carries_the_security_headers(send):
    """No sniffing, no framing, nothing loaded: an answer is data."""
    headers = send("GET", QUERY).headers

    assert headers["x-content-type-options"] == "nosniff"
    assert headers["x-frame-options"] == "DENY"
    assert headers["content-security-policy"].startswith("default-src 'none'")


def test_the_root_says_where_to_begin(send):
    """Programs get links, people are sent to the documentation."""
    links = send("GET", "/", headers={"Accept": "application/json"})
    people = send("GET", "/", headers={"Accept": "text/html,*/*;q=0.8"})

    assert all(send("GET", path).status_code in {200, 405, 422} for path in links.json()["links"].values())
    assert 'rel="service-desc"' in links.headers["link"]
    assert (people.status_code, people.headers["location"]) == (307, "/docs")
