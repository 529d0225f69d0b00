"""Labels over HTTP: a label's text becomes a part that an assembly takes."""

import binascii
import json

import pytest

TEXT = "TRUESCALE/1;id=BD-17;kind=board;true=624.079mm;u=0.05mm;rule=eighteenth;layout=628.65mm;crc=0F2E"


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_a_scanned_board_goes_into_an_assembly_as_it_stands(send, unit):
    """The part of the answer is a part of a question, in the same unit, and as uncertain as the label says."""
    answer = send("POST", "/v1/label/read", json={"text": TEXT, "unit": unit}).json()
    bridge = {"id": "bridge", "kind": "bridge", "true_scale": "24.75 in"}
    question = {"unit": unit, "parts": [answer["part"], bridge]}
    assembly = send("POST", "/v1/assembly", json=question).json()

    assert assembly["decision"] == "apart"
    scale = assembly["parts"][0]["true_scale"]
    millimetre = 1.0 if unit == "mm" else 1.0 / 25.4
    assert scale["value"] == pytest.approx(624.079 * millimetre, rel=1e-12)
    assert scale["standard_uncertainty"] == pytest.approx(0.05 * millimetre, rel=1e-9)


@pytest.mark.parametrize("text", ["25 in", TEXT[:-9], TEXT.replace("624.079", "624.97")])
def test_what_is_no_label_or_was_changed_is_a_problem(send, text):
    """The problem points at the text and shows one that works."""
    answer = send("POST", "/v1/label/read", json={"text": text})
    (fault,) = answer.json()["errors"]

    assert answer.status_code == 422
    assert answer.json()["type"] == "/problems/unreadable-label-text"
    assert fault["pointer"] == "/text"
    assert send("POST", "/v1/label/read", json={"text": fault["example"]}).status_code == 200


@pytest.mark.parametrize(
    ("rule", "stated"),
    [
        ("equal:19", {"name": "equal", "steps": 19}),
        ("divisor:17.835", {"name": "divisor", "divisor": 17.835}),
        ("listed-repeat:500,1200", {"name": "listed", "cents": [500.0, 1200.0], "repeat": True}),
    ],
)
def test_a_rule_comes_back_as_a_question_takes_it(send, rule, stated):
    """No number that follows from the rule is given beside it, so that a layout takes it too."""
    body = f"TRUESCALE/1;id=x;kind=neck_blank;true=650mm;rule={rule}"
    text = f"{body};crc={binascii.crc_hqx(body.encode(), 0xFFFF):04X}"
    part = send("POST", "/v1/label/read", json={"text": text}).json()["part"]

    assert part["rule"] == stated
    assert part["tolerance"] is None
    assert send("POST", "/v1/layout", json={"scale": 650, "frets": 2, "rule": part["rule"]}).status_code == 200


BOARD = {"id": "BD-17", "kind": "board", "layout_scale": "24.75 in", "rule": "eighteenth", "tolerance": "0.1 mm"}


def test_a_printed_label_is_read_back(send):
    """The code's text that a label's answer shows is the definition that it was printed from."""
    printed = send("POST", "/v1/label", json={"part": BOARD}).json()
    part = send("POST", "/v1/label/read", json={"text": printed["code"]}).json()["part"]

    assert part["id"] == "BD-17"
    assert part["layout_scale"] == pytest.approx(24.75 * 25.4, abs=0.0005)
    assert part["true_scale"] == pytest.approx(2.0 * 24.75 * 25.4 * (1.0 - (17.0 / 18.0) ** 12), abs=0.0005)
    assert printed["lines"][0].startswith("624.08") or printed["lines"][0].startswith("624.078")


@pytest.mark.parametrize(("form", "start"), [("svg", b"<svg"), ("png", b"\x89PNG\r\n"), ("pdf", b"%PDF-1.")])
def test_a_label_comes_in_every_form(send, form, start):
    """SVG, PNG and PDF are the same each time, and are saved under the stock number."""
    first, second = (send("POST", f"/v1/label?format={form}", json={"part": BOARD}) for _ in range(2))

    assert first.content.startswith(start)
    assert first.content == second.content
    assert f'filename="label-BD-17.{form}"' in first.headers["content-disposition"]


@pytest.mark.parametrize(
    ("asked", "language", "known", "word"),
    [
        (None, "en", True, "True scale"),
        ("de-AT, en;q=0.5", "de", True, "Wahre Mensur"),
        ("en;q=0.3, fr;q=0.8", "fr", True, "Diapason réel"),
        ("*", "en", True, "True scale"),
        ("de;q=0", "en", False, "True scale"),
        ("tlh, de;q=x", "en", False, "True scale"),
    ],
)
def test_the_language_is_chosen_by_the_header(send, asked, language, known, word):
    """Accept-Language chooses; a language that is not known falls back to English, and the answer says so."""
    headers = {} if asked is None else {"Accept-Language": asked}
    answer = send("POST", "/v1/label", json={"part": BOARD}, headers=headers)

    assert answer.headers["content-language"] == answer.json()["language"] == language
    assert answer.json()["language_known"] is known
    assert any(word in line for line in answer.json()["lines"])


def test_markup_in_a_title_is_text(send):
    """A title with tags stands on the label as it is written."""
    answer = send("POST", "/v1/label?format=svg", json={"part": BOARD, "title": "<script>alert(1)</script>"})

    assert b"<script" not in answer.content
    assert b"&lt;script&gt;" in answer.content


@pytest.mark.parametrize(
    ("change", "slug", "pointer"),
    [
        ({"size": {"width": 20, "height": 10}}, "label-too-small", "/size"),
        ({"size": "13x13mm"}, "invalid-request", "/size"),
        ({"size": {"width": 300, "height": 300}, "dpi": 600}, "invalid-request", "/dpi"),
        ({"url": "javascript:alert(1)"}, "invalid-request", "/url"),
        ({"part": BOARD | {"id": "x" * 61}}, "invalid-request", "/part/id"),
        ({"part": {"id": "x", "kind": "board"}}, "undefined-part", "/part"),
    ],
)
def test_what_makes_no_label_is_a_problem(send, change, slug, pointer):
    """A problem points at what is wrong; of a size it says which one works."""
    answer = send("POST", "/v1/label", json={"part": BOARD} | change)

    assert answer.status_code == 422
    assert answer.json()["type"] == f"/problems/{slug}"
    assert answer.json()["errors"][0]["pointer"] == pointer
    assert slug != "label-too-small" or answer.json()["smallest_common_size"] == "50x25mm"


def test_many_labels_are_told_line_by_line(send):
    """A batch gives for each label what it says alone, and a bad one spoils no other."""
    good, small = {"part": BOARD, "id": 7}, {"part": BOARD, "id": "s", "size": {"width": 20, "height": 10}}
    lines = "\n".join(map(json.dumps, (good, small, {"part": {}}, good)))
    answer = send("POST", "/v1/label/batch", content=lines, headers={"Content-Type": "application/jsonl"})
    rows = [json.loads(line) for line in answer.text.splitlines()]
    alone = send("POST", "/v1/label", json={"part": BOARD}).json()

    assert [row["kind"] for row in rows] == ["result", "problem", "problem", "result", "end"]
    assert rows[0] == {"kind": "result", "index": 0, "id": 7, **alone}
    assert (rows[1]["id"], rows[1]["type"]) == ("s", "/problems/label-too-small")


FAN = {"id": "FAN-5", "kind": "board", "true_scale": {"bass": "27 in", "treble": "25.5 in"}, "rule": "eighteenth"}


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_a_fan_board_has_a_label_that_goes_back_into_an_assembly(send, unit):
    """Both true scales stand on the label, and its code gives the part that it was printed from."""
    printed = send("POST", "/v1/label", json={"unit": unit, "part": FAN | {"square_fret": 7}}).json()
    part = send("POST", "/v1/label/read", json={"unit": unit, "text": printed["code"]}).json()["part"]
    bridge = FAN | {"id": "bridge", "kind": "bridge", "rule": None}
    assembly = send("POST", "/v1/assembly", json={"unit": unit, "parts": [part, bridge]}).json()
    inch = 25.4 if unit == "mm" else 1.0

    assert part["true_scale"] == pytest.approx({"bass": 27.0 * inch, "treble": 25.5 * inch}, rel=1e-9)
    assert (part["square_fret"], part["rule"], part["layout_scale"]) == (7, {"name": "eighteenth"}, None)
    assert printed["lines"][0] == ("685.80 / 647.70 mm" if unit == "mm" else "27.000 / 25.500 in")
    assert assembly["decision"] == "together"


def test_a_square_fret_is_that_of_a_fan_board(send):
    """A board of one scale has no fret that is square more than others."""
    answer = send("POST", "/v1/label", json={"part": BOARD | {"square_fret": 7}})

    assert (answer.status_code, answer.json()["errors"][0]["code"]) == (422, "square_fret_without_fan")


@pytest.mark.parametrize("date", ["2026-02-31", "2026-02-29", "2100-02-29"])
def test_a_day_that_is_in_no_calendar_is_refused(send, date):
    """ISO 8601 writes days of the calendar: 2026 and 2100 are no leap years."""
    answer = send("POST", "/v1/label", json={"part": BOARD, "date": date})

    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == "/date"


def test_a_text_that_contradicts_itself_is_a_problem(send):
    """Right check digits do not make a true scale of 628.65 mm out of the rule of 18 from 628.65 mm."""
    body = "TRUESCALE/1;id=x;kind=board;true=628.65mm;rule=eighteenth;layout=628.65mm"
    text = f"{body};crc={binascii.crc_hqx(body.encode(), 0xFFFF):04X}"
    answer = send("POST", "/v1/label/read", json={"text": text})

    assert answer.json()["type"] == "/problems/contradictory-part"
    assert f"{2.0 * 628.65 * (1.0 - (17.0 / 18.0) ** 12):.3f} mm" in answer.json()["detail"]
