"""Pages of labels over HTTP: many parts, one file."""

import pytest

BOARD = {"id": "BD-17", "kind": "board", "layout_scale": "24.75 in", "rule": "eighteenth"}
BRIDGE = {"id": "BR-3", "kind": "bridge", "true_scale": "650 mm"}
LABELS = [{"part": BOARD}, {"part": BRIDGE, "title": "a bridge"}]


def test_codes_are_those_of_the_labels_alone(send):
    """What a label of a page carries is what the same label alone does."""
    pages = send("POST", "/v1/label/pages", json={"labels": LABELS}).json()
    alone = [send("POST", "/v1/label", json=label).json()["code"] for label in LABELS]

    assert pages["codes"] == alone
    assert (pages["pages"], pages["columns"], pages["rows"]) == (1, 3, 8)


def test_pages_come_as_a_pdf(send):
    """PDF is the same each time, and follows the language that is asked for."""
    ask = {"json": {"labels": LABELS, "paper": "letter"}, "headers": {"Accept": "application/pdf"}}
    first, second = (send("POST", "/v1/label/pages", **ask) for _ in range(2))
    german = send(
        "POST", "/v1/label/pages", **ask | {"headers": {"Accept": "application/pdf", "Accept-Language": "de"}}
    )

    assert first.content.startswith(b"%PDF-1.")
    assert first.content == second.content != german.content
    assert german.headers["content-language"] == "de"


@pytest.mark.parametrize(
    ("change", "slug", "pointer"),
    [
        ({"labels": []}, "invalid-request", "/labels"),
        ({"start": 25}, "too-much-paper", "/start"),
        ({"size": {"width": "9 in", "height": "2 in"}}, "too-much-paper", "/size"),
        ({"labels": [*LABELS, {"part": {"id": "x", "kind": "board"}}]}, "undefined-part", "/labels/2/part"),
    ],
)
def test_what_makes_no_page_is_a_problem(send, change, slug, pointer):
    """A problem points at what is wrong, of one label in the list at that one."""
    answer = send("POST", "/v1/label/pages", json={"labels": LABELS} | change)

    assert answer.status_code == 422
    assert answer.json()["type"] == f"/problems/{slug}"
    assert answer.json()["errors"][0]["pointer"] == pointer


def test_a_size_too_small_for_one_label_is_a_problem_of_the_pdf(send):
    """The size is said to be too small when the labels are set."""
    question = {"labels": LABELS, "size": {"width": 20, "height": 10}}
    answer = send("POST", "/v1/label/pages?format=pdf", json=question)

    assert (answer.status_code, answer.json()["type"]) == (422, "/problems/label-too-small")
