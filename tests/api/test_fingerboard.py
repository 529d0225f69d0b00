"""Fingerboards over HTTP: geometry, forms by Accept, file names, and what is refused."""

import csv
import io
import json
import subprocess
import sys
import xml.etree.ElementTree as ET

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scalewright.api.file_names import content_disposition
from scalewright.api.media import DXF, PDF, PNG, SVG

BOARD = {
    "scale": 650,
    "rule": "equal",
    "frets": 19,
    "strings": {"count": 6, "nut_spread": 43, "saddle_spread": 58},
    "margins": 4,
}
FAN = {**BOARD, "scale": {"bass": "27 in", "treble": "25.5 in"}, "square_fret": 7, "frets": 24}
WIDE = {"count": 2, "nut_spread": 400, "saddle_spread": 400}
SIGNATURES = {SVG: b"<svg ", DXF: b"  0\nSECTION", PDF: b"%PDF-", PNG: b"\x89PNG\r\n\x1a\n"}
LENGTH_DIGITS = 1e-9
"""How near a length has to be. [mm]"""


def post(send, body, accept="application/json", **options):
    """Ask for a board."""
    headers = {"Content-Type": "application/json", "Accept": accept}
    return send("POST", "/v1/fingerboard", content=json.dumps(body).encode(), headers=headers, **options)


def test_a_board_as_json(send):
    """Fret 12 of equal spacing halves the scale; every string crosses every fret; cautions come along."""
    board = post(send, BOARD).json()

    assert board["unit"] == "mm"
    assert board["true_scale"] == {"bass": 650.0, "treble": 650.0}
    assert board["frets"][11]["on_centre_line"] == pytest.approx(325.0, abs=LENGTH_DIGITS)
    assert [cross["string"] for cross in board["frets"][0]["crossings"]] == [1, 2, 3, 4, 5, 6]
    assert board["notes"][0]["slug"] == "cutting"
    assert "eye and ear protection" in board["notes"][0]["text"]


def test_every_length_is_in_the_unit_asked_for(send):
    """The same board in inches is the board in millimetres over 25.4, angles and cents aside."""

    def lengths(value, name=""):
        if isinstance(value, dict):
            for key, below in value.items():
                yield from lengths(below, key)
        elif isinstance(value, list):
            for below in value:
                yield from lengths(below, name)
        elif isinstance(value, float):
            yield name, value

    body = {**FAN, "strings": {"count": 6, "nut_spread": "43 mm", "saddle_spread": "58 mm"}, "margins": "4 mm"}
    body |= {
        "radius": "300 mm",
        "extension": "9 mm",
        "slots": {"kerf": "0.6 mm", "tang_depth": "2 mm"},
        "saw": {"step": "0.01 mm"},
    }
    metric, imperial = post(send, body).json(), post(send, {**body, "unit": "in"}).json()
    same = {"angle_degrees", "divisor", "error_cents", "worst_cents", "bass", "treble", "cents"}
    pairs = list(zip(lengths(metric), lengths(imperial), strict=True))

    assert len(pairs) > 500
    for (name, value), (_, other) in pairs:
        if name not in same:
            assert other == pytest.approx(value / 25.4, rel=1e-9, abs=1e-9), name


@pytest.mark.parametrize("media_type", [SVG, DXF, PDF, PNG])
def test_drawings_by_accept_and_by_format(send, media_type):
    """Each form has its media type, its first bytes, a file name and a length; format says the same as Accept."""
    answer = post(send, {**FAN, "sheet": {"title": "Board 7"}}, media_type)
    ending = {SVG: "svg", DXF: "dxf", PDF: "pdf", PNG: "png"}[media_type]
    by_format = post(send, {**FAN, "sheet": {"title": "Board 7"}}, "text/html", params={"format": ending})

    assert answer.status_code == 200
    assert answer.headers["content-type"] == media_type
    assert answer.content.startswith(SIGNATURES[media_type])
    assert f'filename="Board-7.{ending}"' in answer.headers["content-disposition"]
    assert answer.headers["content-disposition"].startswith("inline" if media_type in {SVG, PNG} else "attachment")
    assert by_format.content == answer.content


def test_pages_instead_of_a_long_sheet(send):
    """The paper is chosen in the question; both are PDF."""
    long = post(send, BOARD, PDF)
    pages = post(send, {**BOARD, "sheet": {"paper": "A4", "overlap": "1/2 in"}}, PDF)

    assert long.content.count(b"/Type /Page\n") + long.content.count(b"/Type /Page ") == 1
    assert pages.content.startswith(b"%PDF-")
    assert len(pages.content) > len(long.content)


def test_the_cut_list_for_a_spreadsheet(send):
    """CSV has a row for each slot with the unit in it; a name that looks like a formula is taken for none."""
    body = {**BOARD, "unit": "in", "scale": "25.5 in", "strings": {"count": 1}, "margins": "0.5 in", "widths": None}
    body |= {"partial_frets": [{"cents": 150, "name": '=1+1,"x"'}], "saw": {"step": "1/64 in"}}
    answer = post(send, body, "text/csv")
    rows = list(csv.DictReader(io.StringIO(answer.text, newline="")))
    cuts = post(send, body).json()["cut_list"]["cuts"]

    assert 'filename="fingerboard.csv"' in answer.headers["content-disposition"]
    assert rows[1]["name"] == '\'=1+1,"x"'
    assert {row["unit"] for row in rows} == {"in"}
    for row, cut in zip(rows, cuts, strict=True):
        for name in ("running", "set_to", "error", "error_cents", "length", "angle_degrees"):
            assert float(row[name]) == cut[name]
        assert row["depth"] == ""
        assert float(row["set_to"]) * 64 == pytest.approx(round(float(row["set_to"]) * 64), abs=1e-9)


BAD = [
    (
        {**BOARD, "strings": {"count": 6, "nut_spread": -43, "saddle_spread": 58}},
        "/strings/nut_spread",
        "length_out_of_range",
    ),
    ({**BOARD, "margins": None, "widths": {"nut": 40, "last_fret": 60}}, "/widths", "impossible_board"),
    (
        {**BOARD, "margins": 60, "widths": {"nut": 50, "last_fret": 60}, "strings": {"count": 6}},
        "/margins",
        "impossible_board",
    ),
    (
        {**BOARD, "margins": 4, "widths": {"nut": 50, "last_fret": 10}, "strings": {"count": 6}},
        "/margins",
        "impossible_board",
    ),
    ({**BOARD, "widths": {"nut": 50, "last_fret": 60}}, "/margins", "edges_given"),
    ({**BOARD, "margins": None}, "/margins", "edges_given"),
    ({**BOARD, "strings": {"count": 6, "nut_spread": 43}}, "/strings", "spreads_given"),
    (
        {**BOARD, "strings": {"count": 6, "nut_spread": 43, "saddle_spread": 58, "gauges": [1]}},
        "/strings",
        "gauges_given",
    ),
    (
        {**BOARD, "strings": {"count": 6, "nut_spread": 5, "saddle_spread": 58, "gauges": [2] * 6}},
        "/strings/nut_spread",
        "impossible_board",
    ),
    ({**BOARD, "strings": {"count": 25, "nut_spread": 43, "saddle_spread": 58}}, "/strings/count", "less_than_equal"),
    ({**FAN, "square_fret": None}, "/square_fret", "square_fret_missing"),
    ({**FAN, "scale": {"bass": 686}}, "/scale/treble", "missing"),
    ({**FAN, "scale": {"bass": 686, "treble": 90}, "square_fret": 24, "margins": 12}, "/frets", "frets_collide"),
    ({**BOARD, "rule": {"bass": "equal"}}, "/rule/treble", "missing"),
    ({**BOARD, "rule": {"bass": "equal", "treble": "third"}}, "/rule/treble", "rule_unknown"),
    ({**BOARD, "frets": 60, "extension": 30}, "/extension", "outside_scale"),
    ({**BOARD, "frets": 60, "extension": 0, "slots": {"kerf": 3}}, "/frets", "frets_collide"),
    ({**BOARD, "extension": 400}, "/extension", "outside_scale"),
    ({**BOARD, "rule": {"name": "listed", "cents": [100, 200]}}, "/rule/cents", "too_few_pitches"),
    ({**BOARD, "slots": {"blind_inset": 60}}, "/slots/blind_inset", "impossible_board"),
    ({**BOARD, "radius": 10}, "/radius", "impossible_board"),
    ({**BOARD, "saddle_setbacks": [1, 2]}, "/saddle_setbacks", "setbacks_given"),
    ({**BOARD, "partial_frets": [{"fret": 20}]}, "/partial_frets/0/fret", "fret_given"),
    ({**BOARD, "partial_frets": [{"fret": 2}, {"fret": 2}]}, "/partial_frets/1/fret", "fret_given"),
    ({**BOARD, "partial_frets": [{"fret": 2, "cents": 3}]}, "/partial_frets/0", "partial_fret_given"),
    (
        {**BOARD, "partial_frets": [{"cents": 350, "first_string": 4, "last_string": 2}]},
        "/partial_frets/0/first_string",
        "strings_given",
    ),
    ({**BOARD, "partial_frets": [{"cents": 350, "first_string": 7}]}, "/partial_frets/0/first_string", "strings_given"),
    ({**BOARD, "partial_frets": [{"cents": 350, "last_string": 7}]}, "/partial_frets/0/last_string", "strings_given"),
    ({**BOARD, "partial_frets": [{"fret": 1}, {"cents": 399}]}, "/partial_frets/1", "frets_collide"),
    ({**BOARD, "nut_setback": -500}, "/nut_setback", "frets_collide"),
    ({**BOARD, "nut_setback": 5000}, "/nut_setback", "impossible_board"),
    ({**BOARD, "zero_fret": True, "behind_zero_fret": 5000}, "/behind_zero_fret", "impossible_board"),
    ({**BOARD, "extension": 10_000}, "/extension", "outside_scale"),
    ({**BOARD, "saddle_setbacks": [0, 0, -400, 0, 0, 0]}, "/saddle_setbacks/2", "outside_scale"),
    ({**BOARD, "scale": {"bass": 650, "treble": 300}, "square_fret": 0}, "/far_end", "outside_scale"),
    ({**BOARD, "markers": [3, 5, 3]}, "/markers/2", "marker_repeated"),
    ({**BOARD, "double_markers": [12, 12]}, "/double_markers/1", "marker_repeated"),
    ({**BOARD, "markers": [3, 5], "double_markers": [12]}, "/double_markers/0", "impossible_board"),
    ({**BOARD, "radius": {"nut": 1000, "last_fret": 20}}, "/radius", "impossible_board"),
    ({**BOARD, "sheet": {"paper": "A4", "overlap": 200}}, "/sheet/overlap", "overlap_too_wide"),
    ({**BOARD, "sheet": {"paper": "custom"}}, "/sheet/page", "page_given"),
    ({**BOARD, "sheet": {"page": {"width": 300, "height": 300}}}, "/sheet/paper", "page_given"),
    ({**BOARD, "sheet": {"title": "x" * 10_000}}, "/sheet/title", "string_too_long"),
    ({**BOARD, "sheet": {"title": "a\u0000b"}}, "/sheet/title", "string_pattern_mismatch"),
    ({**BOARD, "sheet": {"title": "a\nb"}}, "/sheet/title", "string_pattern_mismatch"),
    ({**BOARD, "sheet": {"title": "a\u202eb"}}, "/sheet/title", "string_pattern_mismatch"),
    ({**BOARD, "sheet": {"identifiers": ["a\u200bb"]}}, "/sheet/identifiers/0", "string_pattern_mismatch"),
    ({**BOARD, "sheet": {"date": "yesterday"}}, "/sheet/date", "string_pattern_mismatch"),
    ({**BOARD, "sheet": {"date": "2026-13-01"}}, "/sheet/date", "string_pattern_mismatch"),
    ({**BOARD, "sheet": {"pixels": 10**9}}, "/sheet/pixels", "less_than_equal"),
    ({**BOARD, "handedness": "both"}, "/handedness", "literal_error"),
    ({**BOARD, "stings": 6}, "/stings", "extra_forbidden"),
]


@pytest.mark.parametrize(("body", "pointer", "code"), BAD)
def test_a_board_that_cannot_be_is_a_problem_with_its_place(send, body, pointer, code):
    """Each refusal is a 422 that points at what to change and says it in a sentence."""
    answer = post(send, {name: value for name, value in body.items() if value is not None})
    problem = answer.json()

    assert answer.status_code == 422, problem
    assert answer.headers["content-type"] == "application/problem+json"
    assert [(fault["pointer"], fault["code"]) for fault in problem["errors"]] == [(pointer, code)]
    assert problem["errors"][0]["detail"].endswith(".")


@pytest.mark.parametrize(
    ("body", "mended"),
    [
        ({"nut_setback": -500}, {"nut_setback": -0.5}),
        ({"extension": 10_000}, {"extension": 100}),
        ({"saddle_setbacks": [0, 0, -400, 0, 0, 0]}, {"saddle_setbacks": [0] * 6}),
        ({"scale": {"bass": 650, "treble": 300}, "square_fret": 0, "strings": WIDE}, {"far_end": "parallel"}),
        ({"partial_frets": [{"cents": 399}]}, {"partial_frets": [{"cents": 390}]}),
        ({"markers": [3, 5], "double_markers": [12]}, {"markers": [3, 5, 12]}),
        ({"radius": {"nut": 1000, "last_fret": 20}}, {"radius": {"nut": 200, "last_fret": 190}}),
    ],
)
def test_what_a_refusal_advises_mends_the_board(send, body, mended):
    """A change of the field that is named, in the way that is named, is enough."""
    refused = post(send, {**BOARD, **body})

    assert refused.status_code == 422
    assert refused.json()["errors"][0]["pointer"].split("/")[1] in {*mended, *body}
    assert post(send, {**BOARD, **body, **mended}).status_code == 200


def test_markers_beyond_the_last_fret_are_left_out_with_a_note(send):
    """A list that serves for all boards may name more frets than this one has; the answer says so."""
    board = post(send, {**BOARD, "markers": [3, 12, 24], "double_markers": [12, 24]}).json()

    assert [marker["fret"] for marker in board["markers"]] == [3, 12, 12]
    assert [note["slug"] for note in board["notes"]] == ["cutting", "markers_left_out"]
    assert "fret 24" in board["notes"][1]["text"]
    assert [note["slug"] for note in post(send, BOARD).json()["notes"]] == ["cutting"]


@pytest.mark.parametrize(
    "body",
    [
        {**BOARD, "scale": 6000},
        {
            **BOARD,
            "scale": 9000,
            "sheet": {"paper": "A4"},
            "strings": {"count": 2, "nut_spread": 900, "saddle_spread": 900},
        },
    ],
)
def test_more_paper_than_there_is_refused(send, body):
    """A PDF that no reader would show, or a hundred pages to glue, is refused; the SVG is still to be had."""
    refused = post(send, body, PDF)

    assert refused.status_code == 422
    assert refused.json()["type"] == "/problems/too-much-paper"
    assert post(send, body, SVG).status_code == 200


TITLES = [
    "<script>alert(1)</script>",
    "../../etc/passwd",
    'a"; filename="evil.exe',
    "CON",
    "לוח אצבעות (ניסיון 2)",
    "Ωμέγα 漢字 é ☃",
    "%%d \\P {x} ^J",
    "=cmd|' /C calc'!A0",
    "()<>\\\\",
    "x" * 120,
    "   ",
    "...",
]


@pytest.mark.parametrize("title", TITLES)
def test_any_title_gives_a_clean_file_and_a_safe_name(send, title):
    """Drawings open, and the name of the file has neither path nor quote nor a second ending."""
    body = {**BOARD, "frets": 5, "sheet": {"title": title, "identifiers": [title[:60]]}}
    for media_type, first in SIGNATURES.items():
        answer = post(send, body, media_type)
        disposition = answer.headers["content-disposition"]
        plain = disposition.partition('filename="')[2].partition('"')[0]

        assert answer.content.startswith(first)
        assert disposition.isascii()
        assert plain.count(".") == 1
        assert set(plain) <= set("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-.")
        assert not plain.lower().startswith(("con.", "-", "."))
        if media_type == SVG:
            ET.fromstring(answer.content)  # noqa: S314  (our own output)


@given(st.text(max_size=130))
def test_a_file_name_is_safe_for_any_text(title):
    """By the grammar of RFC 6266 and RFC 8187: a quoted plain name, and a percent-encoded one in UTF-8 if any."""
    header = content_disposition(title, SVG).decode("ascii")
    first, _, second = header.partition("; filename*=")
    name = first.removeprefix('inline; filename="').removesuffix('"')

    assert name.endswith(".svg")
    assert name[:-4].replace("-", "").isalnum()
    assert len(name) <= 80
    if second:
        assert second.startswith("UTF-8''")
        assert set(second[7:]) <= set("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-._~%")
        assert "%2F" not in second
        assert "%5C" not in second
        assert "%22" not in second


def test_a_reserved_name_is_not_used():
    """A name that one wide-spread system keeps for its devices gets a word before it."""
    assert content_disposition("NUL", PDF) == b'attachment; filename="board-NUL.pdf"'
    assert content_disposition("", PDF) == b'attachment; filename="drawing.pdf"'
    assert (
        content_disposition("Plan é", PDF) == b"attachment; filename=\"Plan-e.pdf\"; filename*=UTF-8''Plan-%C3%A9.pdf"
    )


@pytest.mark.parametrize("word", ["identification", "intonation"])
def test_pictures_of_other_answers(send, word):
    """Intonation and identification come as a plot where SVG is asked for, and as before where it is not."""
    body = {
        "identification": {"instrument_uncertainty": 0.05, "frets": [1, 5, 12], "from_nut": [36.5, 163.1, 325.0]},
        "intonation": {
            "scale": 650,
            "rule": "equal",
            "frets": 12,
            "heights": {"nut": 1.0, "saddle_above_nut": 4.0},
            "strings": [{"pitch": "E4", "diameter": 0.712, "unit_mass": 0.374, "R": 23.6}],
        },
    }[word]
    headers = {"Content-Type": "application/json", "Accept": "image/svg+xml"}
    answer = send("POST", f"/v1/{word}", content=json.dumps(body).encode(), headers=headers)

    assert answer.headers["content-type"] == "image/svg+xml"
    assert answer.headers["content-disposition"] == f'inline; filename="{word}.svg"'
    ET.fromstring(answer.content)  # noqa: S314  (our own output)
    assert send("POST", f"/v1/{word}", json=body).headers["content-type"] == "application/json"


@pytest.mark.slow
def test_starting_the_service_loads_no_drawing_library():
    """The libraries that write DXF, PDF and PNG, and what they bring, are loaded when they are first needed.

    Slow: it starts Python.
    """
    heavy = ["ezdxf", "reportlab", "resvg_py", "PIL", "fontTools", "fontpkg_open_sans"]
    script = (
        "import sys, scalewright.api.app as a; a.create_app(a.Settings()); "
        f"print([name for name in {heavy!r} if name in sys.modules])"
    )
    shown = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)

    assert shown.stdout == "[]\n"


ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text(max_size=8),
    lambda below: (
        st.lists(below, max_size=3)
        | st.dictionaries(st.sampled_from([*BOARD, "bass", "count", "nut", "title"]), below, max_size=3)
    ),
    max_leaves=8,
)
PLACES = [
    "scale",
    "rule",
    "strings",
    "margins",
    "widths",
    "slots",
    "radius",
    "saw",
    "sheet",
    "partial_frets",
    "markers",
    "square_fret",
]


@settings(max_examples=60)
@given(
    st.dictionaries(st.sampled_from(PLACES), ANYTHING, max_size=3), st.sampled_from([*SIGNATURES, "application/json"])
)
def test_no_question_makes_the_service_fail(send, changes, accept):
    """Whatever stands in a question is answered or refused."""
    assert post(send, {**BOARD, **changes}, accept).status_code in {200, 422}
