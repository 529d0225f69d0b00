"""Files of boards in, answers out."""

import csv
import io
import json

import httpx
import pytest

from scalewright_client.command.writing import CsvWriter
from tests.client.command.desk import HEADER, board


def rows_of(text):
    """Rows of a CSV file by column."""
    return list(csv.DictReader(io.StringIO(text)))


def test_every_row_has_its_answer_in_its_place(desk):
    """Ids, order and line numbers are kept, whatever the chunks."""
    desk.write("boards.csv", HEADER, *[board(n) for n in range(10)])
    assert desk.run("--at-once", "3") == 0
    answers = [json.loads(line) for line in desk.read("out.jsonl").splitlines()]
    assert [(one["index"], one["line"], one["id"]) for one in answers] == [(n, n + 2, f"B-{n}") for n in range(10)]
    assert [one["true_scale"]["value"] for one in answers] == [312.25 + n for n in range(10)]
    assert sorted(len(batch) for batch in desk.asked) == [1, 3, 3, 3]
    assert desk.files == {"boards.csv", "out.jsonl"}
    assert "columns not used: shelf" in desk.said
    assert "10 rows, 10 undecided" in desk.said


def test_a_row_becomes_a_question(desk):
    """Readings are numbers in the unit of their columns, and what is empty was not measured."""
    desk.write("boards.csv", HEADER, "B-1,150.5,312.25,0.05,3", "B-2,,312,0.05,")
    assert desk.run() == 0
    assert desk.questions == [
        {"unit": "mm", "id": "B-1", "frets": [5, 12], "from_nut": [150.5, 312.25], "instrument_uncertainty": 0.05},
        {"unit": "mm", "id": "B-2", "frets": [12], "from_nut": [312.0], "instrument_uncertainty": 0.05},
    ]


def test_bad_rows_are_named_and_spoil_no_other(desk):
    """The second file has their lines, columns and reasons, the exit status says that there are some."""
    broken = 'B-2,"150.5,312,0.05,3'
    desk.write("boards.csv", HEADER, board(0), board(1, fret12="=abc"), broken, board(3), board(4, shelf="3,4"))
    assert desk.run() == 1
    answers = [json.loads(line) for line in desk.read("out.jsonl").splitlines()]
    assert [one["kind"] for one in answers] == ["result", "problem", "problem", "result", "problem"]
    assert [one["line"] for one in answers] == [2, 3, 4, 5, 6]
    assert "instance" not in answers[1]
    assert rows_of(desk.read("out.jsonl.bad-rows.csv")) == [
        {
            "line": "3",
            "id": "B-1",
            "column": "fret 12 [mm]",
            "problem": "unreadable-length",
            "detail": "No number stands there.",
            "row": board(1, fret12="=abc"),
        },
        {
            "line": "4",
            "id": "",
            "column": "",
            "problem": "unreadable-row",
            "detail": "A quotation mark is not closed; put inch marks as in, or double them inside quotes.",
            "row": broken,
        },
        {
            "line": "6",
            "id": "",
            "column": "",
            "problem": "unreadable-row",
            "detail": "6 cells, and the header names 5.",
            "row": board(4, shelf="3,4"),
        },
    ]
    assert "3 bad" in desk.said


def test_csv_comes_out_for_a_stock_list(desk):
    """A row of numbers and words for each board, a bad one too."""
    desk.write("boards.csv", HEADER, board(0), board(1, fret12="abc"))
    assert desk.run(output="out.csv") == 1
    first, second = rows_of(desk.read("out.csv"))
    assert first == {
        "line": "2",
        "id": "B-0",
        "verdict": "undecided",
        "rule": "equal 12",
        "unit": "mm",
        "true_scale": "312.25",
        "true_scale_lower": "1.0",
        "true_scale_upper": "2.0",
        "layout_scale": "",
        "nut_offset": "",
        "probability": "0.5",
        "measure_again": "5;7",
        "measure_next": "12",
        "statement": "Scale of +1.",
        "problem": "",
    }
    assert (second["id"], second["verdict"], second["problem"]) == ("B-1", "", "fret 12 [mm]: No number stands there.")


@pytest.mark.parametrize(
    "members",
    [
        '"candidates":[{"p":1}],"suspect_readings":[{"fret":5}],"statement":"x"',
        '"suspect_readings":[{"fret":5}],"candidates":[{"p":1}],"statement":"x"',
        '"suspect_readings":[{"fret":5}],"statement":"x"',
        '"candidates":[],"suspect_readings":[{"fret":5}],"statement":"x"',
    ],
)
def test_whatever_the_order_of_an_answer_its_numbers_are_found(members):
    """What has no column may be left unread, and nothing else; a text that looks like a member is none."""
    text = ',"candidates":[],"suspect_readings":[]'
    rest = f'"id":{json.dumps(text)},{members}}}'.encode()
    (row,) = rows_of((CsvWriter().head() + CsvWriter().result(0, 2, rest)).decode())
    assert (row["id"], row["measure_again"], row["statement"]) == (text, "5", "x")


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "＝", " ="])
def test_no_text_becomes_a_formula_in_a_spreadsheet(desk, start):
    """A text that starts like a formula gets an apostrophe, in both files; a number stays a number."""
    text = f"{start}SUM(1)"
    desk.write(
        "boards.jsonl", json.dumps({"id": text, "from_nut": [312.5]}), json.dumps({"id": text, "from_nut": ["x"]})
    )
    assert desk.run(source="boards.jsonl", output="out.csv") == 1
    assert [row["id"] for row in rows_of(desk.read("out.csv"))] == [f"'{text}"] * 2
    assert [row["id"] for row in rows_of(desk.read("out.csv.bad-rows.csv"))] == [f"'{text}"]


def test_lines_of_json_are_questions_as_they_are(desk):
    """Only the names that the caller says are changed, and what is common to all is added."""
    own = {"sku": 17, "from_nut": ["12 9/32 in"], "unit": "in"}
    desk.write("boards.jsonl", json.dumps(own), "", "{broken", json.dumps([1]), '{"id": 3, "from_nut": [NaN]}')
    status = desk.run("--column", "id=sku", "--set", "instrument_uncertainty=0.1 mm", source="boards.jsonl")
    assert status == 1
    assert desk.questions == [
        {"id": 17, "from_nut": ["12 9/32 in"], "unit": "in", "instrument_uncertainty": "0.1 mm"},
    ]
    answers = [json.loads(line) for line in desk.read("out.jsonl").splitlines()]
    assert [(one["line"], one["kind"]) for one in answers] == [
        (1, "result"),
        (3, "problem"),
        (4, "problem"),
        (5, "problem"),
    ]


def test_a_broken_answer_is_asked_for_again(desk, monkeypatch):
    """A chunk whose answer breaks off is put once more, and nothing is lost or doubled."""
    monkeypatch.setattr("time.sleep", lambda _: None)
    desk.write("boards.csv", HEADER, board(0))
    cut = httpx.Response(
        200, text='{"kind":"result","index":0,"id":"B-0"}\n', headers={"Content-Type": "application/jsonl"}
    )
    desk.troubles = [cut]
    assert desk.run() == 0
    assert len(desk.read("out.jsonl").splitlines()) == 1


def test_a_service_that_does_not_answer_is_told_and_nothing_is_lost(desk):
    """The exit status says so, and the same command goes on there later."""
    desk.write("boards.csv", HEADER, board(0))
    desk.troubles = [httpx.Response(401)]
    assert desk.run() == 3
    assert "the same command goes on there" in desk.said
    assert "out.jsonl" not in desk.files
    assert desk.run() == 0
    assert len(desk.read("out.jsonl").splitlines()) == 1


def test_address_and_key_come_from_the_environment(desk):
    """A key does not stand on the command line, where others can read it."""
    heads = []
    plain = desk.handle

    def listening(request):
        heads.append((str(request.url), request.headers.get("X-API-Key")))
        return plain(request)

    desk.handle = listening
    desk.write("boards.csv", HEADER, board(0))
    environment = {"SCALEWRIGHT_URL": "http://shop.test/tools", "SCALEWRIGHT_API_KEY": "k-1"}
    assert desk.run(environment=environment) == 0
    assert heads == [("http://shop.test/tools/v1/identification/batch", "k-1")]


@pytest.mark.parametrize(
    ("header", "arguments", "words"),
    [
        ("id,shelf", [], "no column is a reading"),
        ("id,fret 12", [], 'write "fret 12 [mm]", or give --unit'),
        ("id,fret 12 [mm]", ["--column", "id=SKU"], 'no column is called "SKU"; there are "id", "fret 12 [mm]"'),
        ("id,fret 12 [mm],ID", [], "two columns are id"),
        ("id,fret 12 [mm]", ["--set", "colour=red"], 'there is no field "colour"'),
        ("id,fret 12 [mm]", ["--set", "threshold"], 'takes FIELD=..., and not "threshold"'),
        ("id,fret 12 [mm]", ["--encoding", "utf-16"], "save the file as UTF-8"),
        ("id,fret 12 [mm]", ["--encoding", "klingon"], "save the file as UTF-8"),
        ("id,fret 12 [mm]", ["--delimiter", "::"], "one character"),
        ("id,fret 12 [mm]", ["--column", "id=id", "--column", "id=x"], "names id twice"),
        ("id,fret 12 [mm]", ["--url", "shop"], "base_url must be like"),
        ("", [], "the file is empty"),
    ],
)
def test_a_file_that_cannot_be_used_is_told_before_anything_is_asked(desk, header, arguments, words):
    """The message says what to write instead, and no file is begun."""
    desk.write("boards.csv", header)
    assert desk.run(*arguments) == 2
    assert words in desk.said
    assert desk.files == {"boards.csv"}


def test_files_are_never_overwritten_unasked(desk):
    """What is there stays, until the caller says otherwise."""
    desk.write("boards.csv", HEADER, board(0))
    desk.write("out.jsonl", "precious")
    assert desk.run() == 2
    assert desk.read("out.jsonl") == "precious\n"
    assert desk.run("--restart") == 0
    assert json.loads(desk.read("out.jsonl"))["id"] == "B-0"


@pytest.mark.parametrize("arguments", [["--bad-rows", "{}/boards.csv"], ["--bad-rows", "{}/out.jsonl"]])
def test_no_file_is_read_and_written_at_once(desk, arguments):
    """Three names, three files."""
    desk.write("boards.csv", HEADER, board(0))
    assert desk.run(*[one.format(desk.folder) for one in arguments]) == 2
    assert "three different ones" in desk.said


@pytest.mark.parametrize(("source", "output"), [("boards.xlsx", "out.csv"), ("boards.csv", "out.pdf")])
def test_a_kind_of_file_that_is_not_known_is_told(desk, source, output):
    """The option that says the kind is in the message."""
    desk.write(source, HEADER, board(0))
    assert desk.run(source=source, output=output) == 2
    assert "csv or jsonl? Say it with --" in desk.said


def test_the_kind_of_a_file_can_be_said(desk):
    """Names do not matter then."""
    desk.write("boards.dat", HEADER.replace(",", "\t"), board(0).replace(",", "\t"))
    options = ["--format", "csv", "--output-format", "csv", "--delimiter", "tab"]
    assert desk.run(*options, source="boards.dat", output="out.dat") == 0
    assert rows_of(desk.read("out.dat"))[0]["id"] == "B-0"


@pytest.mark.parametrize("count", ["0", "-1", "many"])
def test_a_chunk_has_rows(desk, count, capsys):
    """What makes no sense is refused with the usage."""
    with pytest.raises(SystemExit):
        desk.run("--at-once", count)
    assert "--at-once" in capsys.readouterr().err


def test_a_file_of_bad_rows_alone_asks_nothing(desk):
    """There is nothing to send, and every row is told."""
    desk.write("boards.csv", HEADER, board(0, shelf="3,4"), board(1, shelf="3,4"))
    assert desk.run() == 1
    assert desk.asked == []
    assert len(desk.read("out.jsonl").splitlines()) == 2


def test_a_batch_that_is_too_long_for_the_service_is_told(desk):
    """Its limit is not hit again and again."""
    desk.write("boards.csv", HEADER, board(0), board(1))
    end = '{"kind":"end","results":0,"problems":0,"complete":false,"verdicts":{}}\n'
    desk.troubles = [httpx.Response(200, text=end, headers={"Content-Type": "application/jsonl"})]
    assert desk.run() == 3
    assert "more questions than the service takes at once" in desk.said


def test_a_missing_file_is_told(desk):
    """Its name is in the message."""
    assert desk.run() == 2
    assert "boards.csv" in desk.said
