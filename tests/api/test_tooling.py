"""Tooling over HTTP: boards off one tool go in, what the tool does comes out."""

import pytest

LAYOUT = {"scale": "25.4 in", "rule": "equal", "frets": 12}
PLACES = [645.16 * (1.0 - 2.0 ** (-fret / 12.0)) for fret in range(1, 13)]


def boards(count, step=0.0, at=0):
    """Boards that scatter by a few hundredths in a pattern that is no drift, and jump at one of them. [mm]"""
    rows = []
    for board in range(count):
        scatter = [0.02 * ((board * 7 + slot * 5) % 11 - 5) / 5.0 for slot in range(12)]
        shift = step if board >= at else 0.0
        rows.append([place + off + shift for place, off in zip(PLACES, scatter, strict=True)])
    return rows


def test_a_changed_blade(send):
    """A jump of all slots is found with its board and size, and every slot is to be re-set."""
    answer = send("POST", "/v1/tooling", json={"layout": LAYOUT, "boards": boards(22, 0.1, 11)}).json()
    (moved,) = answer["drifts"]
    assert (moved["fret"], moved["drift"]["kind"], moved["drift"]["step"]["at"]) == (None, "step", 11)
    assert moved["drift"]["step"]["size"]["value"] == pytest.approx(0.1, abs=0.02)
    assert [reset["fret"] for reset in answer["resets"]] == list(range(1, 13))
    assert "before-setting" in [note["slug"] for note in answer["notes"]]


def test_a_signature_goes_from_one_answer_into_the_next_question(send):
    """What a study says of a tool identifies a board of unknown origin, in inches too."""
    study = send(
        "POST",
        "/v1/tooling",
        json={
            "unit": "in",
            "id": "saw A",
            "layout": LAYOUT,
            "boards": [[place / 25.4 for place in row] for row in boards(22)],
        },
    ).json()
    other = study["signature"] | {"id": "saw B", "bias": [0.1 - bias for bias in study["signature"]["bias"]]}
    question = {
        "unit": "in",
        "layout": LAYOUT,
        "board": [place / 25.4 for place in boards(3)[2]],
        "signatures": [study["signature"], other],
    }
    answer = send("POST", "/v1/tooling/origin", json=question).json()
    assert (answer["verdict"], answer["tool"]) == ("established", "saw A")


@pytest.mark.parametrize(
    ("change", "slug", "pointer"),
    [
        ({"boards": boards(1)}, "too-few-boards", "/boards"),
        ({"boards": []}, "too-few-boards", "/boards"),
        ({"boards": [*boards(2), [1.0, 2.0]]}, "unequal-slots", "/boards/2"),
        ({"unknown": [1.0]}, "unequal-slots", "/unknown"),
        ({"tolerance": 0}, "invalid-request", "/tolerance"),
        ({"tolerance": "-0.1 mm"}, "invalid-request", "/tolerance"),
        ({"layout": None, "commanded": [70, 36], "true_scale": 650}, "impossible-reading", "/commanded"),
        ({"layout": None}, "invalid-request", ""),
    ],
)
def test_bad_studies_get_a_problem(send, change, slug, pointer):
    """A single board, unequal slots, tolerances of nothing and impossible positions are named."""
    answer = send("POST", "/v1/tooling", json={"layout": LAYOUT, "boards": boards(3)} | change)
    assert answer.status_code == 422
    assert answer.json()["type"] == f"/problems/{slug}"
    assert pointer in [error["pointer"] for error in answer.json()["errors"]]
