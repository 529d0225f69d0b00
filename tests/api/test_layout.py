"""Layouts over HTTP: what is asked for is answered, and what is absurd is refused in plain words."""

import csv
import io
import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

FIELDS = st.sampled_from(["unit", "scale", "rule", "frets", "scale_basis", "fractions", "name", "cents", "divisor"])
BOARD = {"scale": "24 3/4 in", "rule": "eighteenth", "frets": 22, "unit": "in"}
QUERY = "/v1/layout?scale=24.75in&rule=eighteenth&frets=22&unit=in"

PENCIL = 0.0005
"""Half a unit in the last place of what makers quote. [in]"""


def post(send, body, **headers):
    """Post bytes or an object to the layout."""
    content = body if isinstance(body, bytes) else json.dumps(body).encode()
    return send("POST", "/v1/layout", content=content, headers={"Content-Type": "application/json", **headers})


def test_the_board_of_the_contract(send):
    """Common practice, no source: 24.75 in under the rule of 18 has fret 12 at 12.285 in and measures 24.57 in."""
    answer = post(send, BOARD).json()

    assert answer["rule"] == {"name": "eighteenth", "divisor": 18.0}
    assert (answer["unit"], answer["layout_scale"], answer["octave_fret"]) == ("in", 24.75, 12)
    assert answer["true_scale"] == pytest.approx(24.57, abs=PENCIL)
    assert len(answer["frets"]) == 22
    assert answer["frets"][0]["from_nut"] == 1.375
    assert answer["frets"][11]["from_nut"] == pytest.approx(12.285, abs=PENCIL)
    assert list(answer["frets"][0]) == ["fret", "from_nut", "from_previous", "to_layout_end", "to_true_end", "cents"]


def test_the_address_and_the_body_get_the_same_answer(send):
    """GET and POST answer alike, byte for byte."""
    assert send("GET", QUERY).content == post(send, BOARD).content


@pytest.mark.parametrize("as_asked", [{"params": {"format": "csv"}}, {"headers": {"Accept": "text/csv"}}])
def test_csv_for_a_spreadsheet(send, as_asked):
    """By Accept or by format the same rows come as comma-separated values with a header."""
    options = {"headers": {"Content-Type": "application/json", **as_asked.get("headers", {})}}
    answer = send("POST", "/v1/layout", content=json.dumps(BOARD), params=as_asked.get("params"), **options)
    rows = list(csv.DictReader(io.StringIO(answer.text, newline="")))

    assert answer.headers["content-type"] == "text/csv; charset=utf-8; header=present"
    assert [float(row["from_nut"]) for row in rows] == [fret["from_nut"] for fret in post(send, BOARD).json()["frets"]]


BAD = [
    ({**BOARD, "frets": 0}, "/frets", "greater_than_equal"),
    ({**BOARD, "frets": -1}, "/frets", "greater_than_equal"),
    ({**BOARD, "frets": 61}, "/frets", "less_than_equal"),
    ({**BOARD, "frets": 10**9}, "/frets", "less_than_equal"),
    ({**BOARD, "frets": 1e9}, "/frets", "int_type"),
    ({**BOARD, "frets": "22"}, "/frets", "int_type"),
    ({**BOARD, "frets": True}, "/frets", "int_type"),
    ({**BOARD, "scale": 0}, "/scale", "length_out_of_range"),
    ({**BOARD, "scale": -24.75}, "/scale", "length_out_of_range"),
    ({**BOARD, "scale": "NaN"}, "/scale", "length_unreadable"),
    ({**BOARD, "scale": "Infinity"}, "/scale", "length_unreadable"),
    ({**BOARD, "scale": 1e308}, "/scale", "length_out_of_range"),
    ({**BOARD, "scale": 5e-324}, "/scale", "length_out_of_range"),
    ({**BOARD, "scale": "12 3/0 in"}, "/scale", "length_unreadable"),
    ({**BOARD, "scale": "25..4 in"}, "/scale", "length_unreadable"),
    ({**BOARD, "scale": ""}, "/scale", "length_unreadable"),
    ({**BOARD, "scale": "9" * 60_000}, "/scale", "length_unreadable"),
    ({**BOARD, "scale": "25 furlongs"}, "/scale", "length_unreadable"),
    ({**BOARD, "scale": "24.75"}, "/scale", "length_unreadable"),
    ({**BOARD, "scale": None}, "/scale", "length_type"),
    ({**BOARD, "scale": [24.75]}, "/scale", "length_type"),
    ({**BOARD, "unit": "furlong"}, "/unit", "literal_error"),
    ({**BOARD, "rule": "thirds"}, "/rule", "rule_unknown"),
    ({**BOARD, "rule": {"name": "divisor", "divisor": 1}}, "/rule/divisor", "greater_than_equal"),
    ({**BOARD, "rule": {"name": "divisor", "divisor": 18, "steps": 12}}, "/rule/steps", "extra_forbidden"),
    ({**BOARD, "rule": {"name": "listed", "cents": [100, 50]}, "frets": 2}, "/rule/cents/1", "not_ascending"),
    ({**BOARD, "rule": {"name": "listed", "cents": [100] * 61}}, "/rule/cents", "too_long"),
    ({**BOARD, "scale_basis": "label"}, "/scale_basis", "literal_error"),
    ({**BOARD, "fractions": 48}, "/fractions", "literal_error"),
    ({**BOARD, "fractions": True}, "/fractions", "graduation_type"),
    ({**BOARD, "lenght": 650}, "/lenght", "extra_forbidden"),
    ({**BOARD, "__proto__": {}}, "/__proto__", "extra_forbidden"),
    ({key: BOARD[key] for key in ("scale", "rule")}, "/frets", "missing"),
    ([BOARD], "", "model_type"),
    ("24 3/4 in", "", "model_type"),
    (650, "", "model_type"),
    (None, "", "model_type"),
]


@pytest.mark.parametrize(("body", "pointer", "code"), BAD, ids=range(len(BAD)))
def test_absurd_values_are_refused_where_they_stand(send, body, pointer, code):
    """422 with a pointer, a code, a sentence, and an example that works where one can be given."""
    answer = post(send, body)
    problem = answer.json()
    (fault,) = problem["errors"]

    assert answer.status_code == problem["status"] == 422
    assert answer.headers["content-type"] == "application/problem+json"
    assert problem["type"] == "/problems/invalid-request"
    assert (fault["pointer"], fault["code"]) == (pointer, code)
    assert fault["detail"].endswith(".")
    assert fault["detail"][:1].isupper()
    assert fault["detail"] in problem["detail"]


NO_EXAMPLE = {"extra_forbidden", "model_type", "not_ascending"}
"""Refusals that no value in the same place could mend."""

MENDED = [(body, pointer) for body, pointer, code in BAD if code not in NO_EXAMPLE]


@pytest.mark.parametrize(("body", "pointer"), MENDED, ids=range(len(MENDED)))
def test_the_example_of_a_refusal_works(send, body, pointer):
    """Put in place of what was refused, the example is accepted."""
    (fault,) = post(send, body).json()["errors"]
    *path, last = pointer.strip("/").split("/")
    mended = json.loads(json.dumps(body))
    place = mended
    for name in path:
        place = place[name]
    place[last] = fault["example"]
    if last == "cents":
        mended["frets"] = len(fault["example"])

    assert post(send, mended).status_code == 200, fault


@pytest.mark.parametrize(
    ("body", "hint"),
    [
        ({**BOARD, "lenght": 1, "scael": 2}, 'perhaps "scale" was meant'),
        ({**BOARD, "colour": "red"}, "the fields are unit, scale, rule, frets, scale_basis, fractions"),
        ({**BOARD, "rule": {"name": "divisor", "divisor": 18, "steps": 12}}, "the fields are name, divisor"),
    ],
)
def test_an_unknown_field_gets_a_hint(send, body, hint):
    """A name that is nearly right gets the right one, another one the names that there are at its place."""
    assert hint in post(send, body).json()["errors"][-1]["detail"]


@pytest.mark.parametrize(
    "body",
    [
        b'{"scale": NaN, "rule": "equal", "frets": 12}',
        b'{"scale": Infinity, "rule": "equal", "frets": 12}',
        b'{"scale": 650, "scale": 651, "rule": "equal", "frets": 12}',
        b'{"scale": 650, "rule": {"name": "equal", "name": "equal"}, "frets": 12}',
        b'{"scale": 650, "rule": "equal", "frets": 12',
        b'{"scale": 650, "rule": "equal", "frets": 12}}',
        b"{'scale': 650}",
        b"",
        b"   ",
        b"\xef\xbb\xbf{}",
        b"\xff\xfe{\x00}\x00",
        b'{"scale": "\xff"}',
        b'{"scale": "\\ud800"}',
        b'{"scale": ' + b"9" * 5000 + b"}",
        b"[" * 60_000,
        b'{"scale":' * 6_000,
        b"[" * 300 + b"]" * 300,
    ],
    ids=range(17),
)
def test_what_is_no_plain_json_is_refused_as_unreadable(send, body):
    """400 for broken JSON, not-a-numbers, members given twice, other encodings and deep nesting; only a member given
    twice can be pointed at.
    """
    answer = post(send, body)

    assert answer.status_code == 400
    assert answer.json()["type"] == "/problems/malformed-request"
    assert [fault["code"] for fault in answer.json()["errors"]] in ([], ["member_repeated"])
    assert answer.json()["detail"].endswith(".")


def test_a_number_beyond_all_numbers_is_out_of_range(send):
    """1e309 is JSON, and no length."""
    answer = post(send, b'{"scale": 1e309, "rule": "equal", "frets": 12}')

    assert answer.status_code == 422
    assert answer.json()["errors"][0]["code"] == "length_out_of_range"


@pytest.mark.parametrize(
    "headers",
    [
        {"Content-Type": "text/plain"},
        {"Content-Type": "application/x-www-form-urlencoded"},
        {"Content-Type": "application/json; charset=latin-1"},
        {"Content-Type": ""},
        {"Content-Encoding": "gzip"},
    ],
)
def test_other_media_types_are_refused(send, headers):
    """415 for anything but plain JSON in UTF-8."""
    answer = post(send, BOARD, **headers)

    assert answer.status_code == 415
    assert answer.json()["type"] == "/problems/unsupported-media-type"
    assert "application/json" in answer.json()["detail"] or "Content-Encoding" in answer.json()["detail"]


@pytest.mark.parametrize("content_type", ["application/json; charset=utf-8", 'Application/JSON;charset="UTF-8"'])
def test_json_that_names_its_encoding_is_accepted(send, content_type):
    """The charset may be named, in any case and in quotes."""
    assert post(send, BOARD, **{"Content-Type": content_type}).status_code == 200


def test_two_refusals_come_together(send):
    """All that is wrong is said at once, in the order of the fields."""
    problem = post(send, {"scale": 0, "rule": "thirds", "frets": 0, "colour": "red"}).json()

    assert [fault["pointer"] for fault in problem["errors"]] == ["/scale", "/rule", "/frets", "/colour"]
    assert "3 more" in problem["detail"]


def test_a_refusal_of_the_craft_carries_its_numbers(send):
    """A list of pitches shorter than the board says how many there are and how many are needed."""
    problem = post(send, {"scale": 650, "rule": {"name": "listed", "cents": [100, 200]}, "frets": 12}).json()

    assert problem["type"] == "/problems/too-few-pitches"
    assert (problem["given"], problem["needed"]) == (2, 12)
    assert problem["errors"][0]["pointer"] == "/rule/cents"


def test_a_true_scale_needs_an_octave(send):
    """Pitches without an octave have no true scale to start from: 422, pointing at the basis."""
    rule = {"name": "listed", "cents": [100, 200]}
    problem = post(send, {"scale": 650, "rule": rule, "frets": 2, "scale_basis": "true"}).json()

    assert problem["type"] == "/problems/outside-scale"
    assert problem["errors"][0]["pointer"] == "/scale_basis"


@pytest.mark.parametrize(
    ("query", "pointer"),
    [
        ("scale=24.75in&rule=equal&frets=22&lenght=1", "/lenght"),
        ("scale=24.75in&rule=equal&frets=61", "/frets"),
        ("scale=25&scale=26&rule=equal&frets=12", "/scale"),
        ("scale=24.75in&rule=equal&frets=12&frets=13", "/frets"),
        ("scale=24.75in&rule=divisor&frets=12", "/divisor"),
        ("scale=24.75in&rule=eighteenth&steps=12&frets=12", "/steps"),
        ("rule=equal&frets=12", "/scale"),
    ],
)
def test_an_address_is_read_as_strictly(send, query, pointer):
    """Misspelt, repeated and missing parameters are refused by name."""
    answer = send("GET", f"/v1/layout?{query}")

    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == pointer


def test_listed_cents_in_an_address_may_be_repeated(send):
    """A list is given with commas or parameter by parameter."""
    with_commas = send("GET", "/v1/layout?scale=650&rule=listed&cents=204,702&frets=2")
    repeated = send("GET", "/v1/layout?scale=650&rule=listed&cents=204&cents=702&frets=2")

    assert with_commas.status_code == 200
    assert repeated.content == with_commas.content


def test_a_post_takes_no_parameters(send):
    """A question in the body and in the address at once is refused."""
    answer = send("POST", "/v1/layout?frets=12", json=BOARD)

    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == "/frets"


VALUES = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text("aé☃ 1/", max_size=8)
    | st.sampled_from(["equal", "eighteenth", "listed", "divisor", "mm", "in", "24 3/4 in", "cents", "name"]),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(FIELDS | st.text("a~/", max_size=3), inner, max_size=5),
    max_leaves=8,
)


@settings(max_examples=50)
@given(st.dictionaries(FIELDS, VALUES, max_size=6))
def test_no_body_breaks_the_service(send, body):
    """Whatever the values of the fields, the answer is a layout or a problem that says what to change."""
    answer = post(send, json.dumps(body).encode())

    assert answer.status_code in {200, 400, 422}
    if answer.status_code != 200:
        assert answer.json()["detail"]


@settings(max_examples=50)
@given(st.binary(max_size=64) | st.text(alphabet='{}[]",:0123456789.eE+- ntfNaI', max_size=40).map(str.encode))
def test_no_bytes_break_the_service(send, body):
    """Whatever the bytes, the answer is a problem that says what to change."""
    assert post(send, body).status_code in {400, 422}
