"""The documentation page: all it loads comes from this service."""

import re

import pytest

PAGE = "/docs"


def test_the_page_names_nothing_outside(send):
    """Page and script load and link only paths of this service."""
    for path in (PAGE, "/docs/start.js"):
        text = send("GET", path).text
        assert "//" not in text.replace("<!--", "")
        assert "http" not in text


def test_all_that_the_page_loads_is_there(send):
    """Each script and style sheet is served, with its media type."""
    loads = re.findall(r'(?:src|href)="(/[^"]+)"', send("GET", PAGE).text)

    assert len(loads) == 3
    for path in loads:
        answer = send("GET", path)
        assert answer.status_code == 200, path
        assert re.match(r"text/(css|javascript)", answer.headers["content-type"]), path


def test_the_page_may_not_load_from_elsewhere(send):
    """The browser is told to load scripts and data from this service alone, and to run no script in the page."""
    policy = dict(
        part.strip().split(" ", 1) for part in send("GET", PAGE).headers["content-security-policy"].split(";")
    )

    assert policy["default-src"] == "'none'"
    assert policy["script-src"] == policy["connect-src"] == "'self'"
    assert "<script>" not in send("GET", PAGE).text


def test_the_frameworks_own_pages_are_off(send):
    """Pages that load from another host do not exist."""
    assert send("GET", "/redoc").status_code == 404


@pytest.mark.parametrize(
    "path", ["/docs-assets/", "/docs-assets/LICENSE/..", "/docs-assets/%2e%2e/fastapi/favicon.png"]
)
def test_nothing_else_of_the_package_is_served(send, path):
    """Neither a listing nor anything outside the folder."""
    assert send("GET", path).status_code == 404
