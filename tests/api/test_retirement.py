"""Retirement: an operation that goes away says so ahead of it."""

from datetime import UTC, datetime
from email.utils import parsedate_to_datetime

import pytest
from fastapi import APIRouter, FastAPI

from scalewright.api.app import create_app
from scalewright.api.operations import post
from scalewright.api.retirement import Retirement
from scalewright.api.settings import Settings
from scalewright.api.shortcut import Shortcut
from scalewright.lutherie.layout import lay_out
from scalewright.wire.layout import LayoutIn, LayoutOut

ENDS = Retirement(
    deprecated=datetime(2023, 6, 30, 23, 59, 59, tzinfo=UTC),
    sunset=datetime(2026, 11, 11, 23, 59, 59, tzinfo=UTC),
    successor="/v2/layout",
)


@pytest.fixture(scope="module")
def retiring():
    """Return an application with an operation that goes away."""
    app: FastAPI = create_app(Settings(log_requests=False))
    router = APIRouter(prefix="/v0", tags=["layout"])

    @post(router, "/layout", answer=LayoutOut, examples="layout", summary="The old layout", retirement=ENDS)
    async def old_layout(question: LayoutIn):
        """What was before."""
        return lay_out(*question.to_domain())

    app.router.routes.extend(router.routes)
    app.add_middleware(Shortcut, routes=router.routes)
    return app


@pytest.mark.source(
    "RFC 9745, section 2.1, Deprecation as a structured date: its example is @1688169599, 2023-06-30 23:59:59 UTC; "
    "RFC 8594, section 3, Sunset as an HTTP date; RFC 5829, section 3.5, successor-version"
)
def test_the_answers_of_a_retiring_operation_say_when_and_what_instead(send, retiring):
    """Deprecation, Sunset and Link have the forms of their standards."""
    headers = send("POST", "/v0/layout", app=retiring, json={"scale": 650, "rule": "equal", "frets": 1}).headers

    assert headers["deprecation"] == "@1688169599"
    assert headers["sunset"] == "Wed, 11 Nov 2026 23:59:59 GMT"
    assert parsedate_to_datetime(headers["sunset"]) == ENDS.sunset
    assert headers["link"] == '</v2/layout>; rel="successor-version"'


def test_the_document_marks_a_retiring_operation(retiring):
    """Clients that are made from the document warn their users."""
    paths = retiring.openapi()["paths"]

    assert paths["/v0/layout"]["post"]["deprecated"] is True
    assert "deprecated" not in paths["/v1/layout"]["post"]


def test_an_operation_that_stays_says_nothing(send):
    """No answer of today's version is deprecated."""
    assert not {"deprecation", "sunset"} & set(send("GET", "/v1/rules").headers)


def test_nothing_ends_before_it_is_announced():
    """The Sunset must not be earlier than the Deprecation (RFC 9745, section 4)."""
    with pytest.raises(ValueError, match="cannot end before"):
        Retirement(deprecated=ENDS.sunset, sunset=ENDS.deprecated, successor="/")
