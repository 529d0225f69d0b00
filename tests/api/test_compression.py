"""Compression: gzip for who accepts it, with tags and Vary that keep caches honest."""

import asyncio
import gzip
import zlib

import pytest

from scalewright.api.compression import Compression, accepts_gzip

QUERY = "/v1/layout?scale=650mm&rule=equal&frets=24"


@pytest.mark.source("RFC 9110, section 12.5.3: Accept-Encoding, its examples and the meaning of q=0 and *")
@pytest.mark.parametrize(
    ("header", "accepted"),
    [
        (b"compress, gzip", True), (b"", False), (b"*", True), (b"compress;q=0.5, gzip;q=1.0", True),
        (b"gzip;q=1.0, identity; q=0.5, *;q=0", True), (b"identity", False), (b"gzip;q=0", False),
        (b"gzip; q=0.000", False), (b"*;q=0", False), (b"GZIP", True), (b"br", False), (b"gzip;q=0, *", False),
    ],
)  # fmt: skip
def test_accept_encoding_is_read_as_the_standard_says(header, accepted):
    """A coding is accepted by its name or by the star, and never with a quality of zero."""
    assert accepts_gzip([(b"accept-encoding", header)]) is accepted


def test_an_answer_above_the_size_is_compressed(send):
    """The bytes unpack to the same answer, which names its coding and what it depends on, under the same weak tag."""
    plain = send("GET", QUERY, headers={"Accept-Encoding": "identity"})
    packed = send("GET", QUERY, headers={"Accept-Encoding": "gzip"})

    assert packed.headers["content-encoding"] == "gzip"
    assert int(packed.headers["content-length"]) < len(plain.content) / 2
    assert packed.content == plain.content
    assert "content-encoding" not in plain.headers
    assert packed.headers["vary"] == plain.headers["vary"] == "Accept, Accept-Encoding"
    assert packed.headers["etag"] == plain.headers["etag"]
    known = send("GET", QUERY, headers={"Accept-Encoding": "gzip", "If-None-Match": packed.headers["etag"]})
    assert (known.status_code, known.content, known.headers["vary"]) == (304, b"", "Accept, Accept-Encoding")


def test_head_tells_the_length_of_the_compressed_answer(send):
    """HEAD has the headers that GET would have."""
    head, get = (send(method, QUERY, headers={"Accept-Encoding": "gzip"}) for method in ("HEAD", "GET"))

    assert head.content == b""
    assert head.headers["content-length"] == get.headers["content-length"]


def test_a_small_answer_is_left_as_it_is(send):
    """Compressing a few bytes makes them more."""
    answer = send("GET", "/livez", headers={"Accept-Encoding": "gzip"})

    assert "content-encoding" not in answer.headers
    assert answer.headers["vary"] == "Accept-Encoding"


def test_a_strong_tag_becomes_a_weak_one(send):
    """A file's tag names its bytes, and the compressed bytes are others (RFC 9110, section 8.8.3)."""
    asset = "/docs-assets/swagger-ui.css"
    plain, packed = (send("GET", asset, headers={"Accept-Encoding": coding}) for coding in ("identity", "gzip"))

    assert packed.headers["content-encoding"] == "gzip"
    assert packed.headers["etag"] == f"W/{plain.headers['etag']}"


def run(pieces, content_type=b"application/jsonl"):
    """Send an answer in pieces through the layer; gives the headers and the bodies that come out."""
    sent = []

    async def app(_scope, _receive, send):
        await send({"type": "http.response.start", "status": 200, "headers": [(b"content-type", content_type)]})
        for number, piece in enumerate(pieces, 1):
            await send({"type": "http.response.body", "body": piece, "more_body": number < len(pieces)})

    async def collect(message):
        sent.append(message)

    async def receive():
        return {"type": "http.disconnect"}

    scope = {"type": "http", "headers": [(b"accept-encoding", b"gzip")]}
    asyncio.run(Compression(app, 100)(scope, receive, collect))
    return dict(sent[0]["headers"]), [message["body"] for message in sent[1:]]


def test_a_stream_is_compressed_piece_by_piece():
    """Each piece of a stream can be read when it comes; nobody waits for the next one."""
    lines = [b'{"index": 0}\n', b'{"index": 1}\n' * 100, b'{"kind": "end"}\n']
    headers, bodies = run(lines)
    reader = zlib.decompressobj(31)

    assert headers[b"content-encoding"] == b"gzip"
    assert [reader.decompress(body) for body in bodies] == lines
    assert gzip.decompress(b"".join(bodies)) == b"".join(lines)


def test_pictures_are_not_compressed_twice():
    """A picture or a PDF is packed already."""
    headers, bodies = run([b"x" * 1000], b"image/png")

    assert (headers, bodies) == ({b"content-type": b"image/png"}, [b"x" * 1000])


def test_equal_answers_are_equal_bytes():
    """No time stamp makes them differ."""
    assert run([b"x" * 1000]) == run([b"x" * 1000])
