"""Labels and spec sheets for whole files of parts, by a real service."""

import csv
import io
import json
import re

import pdfplumber
import pytest

from scalewright_client import Client
from scalewright_client.command.__main__ import main
from scalewright_client.command.fields import LABEL, SHEET
from scalewright_client.command.journal import Journal
from scalewright_client.command.spec_sheets import file_name
from tests.client.live_service import live_service

HEADER = "SKU,kind,true_scale [mm],layout_scale [in],rule,label,title"
ROWS = [
    "BD-17,board,,24.75,eighteenth,,an invented board",
    "BR-3,bridge,650,,,,",
    "BD-18,board,,twelve,equal,,",
    'BD-19,,,25 1/2,equal 12,25.5",',
    "BD-17,board,,25.5,equal,,another of the same name",
]
"""Invented parts: the third has no number for a scale, and the last has the first one's id."""


@pytest.fixture(scope="module")
def address():
    """Address of a service."""
    with live_service() as url:
        yield url


class Bench:
    """A folder with a file of parts, and the command."""

    def __init__(self, folder, address):
        self.folder = folder
        self.address = address
        self.said = ""
        self.write("parts.csv", HEADER, *ROWS)

    def write(self, name, *rows):
        """Write a file of rows."""
        (self.folder / name).write_text("".join(f"{row}\n" for row in rows), encoding="utf-8")

    def run(self, word, output, *arguments, source="parts.csv", columns=("--column", "id=SKU")):
        """Run the command; returns its exit status."""
        terminal = io.StringIO()
        files = [word, str(self.folder / source), "-o", str(self.folder / output)]
        try:
            return main(
                [*files, *columns, *arguments], terminal=terminal, environment={"SCALEWRIGHT_URL": self.address}
            )
        finally:
            self.said = terminal.getvalue()

    def rows(self, name):
        """Rows of a CSV file."""
        return list(csv.DictReader(io.StringIO((self.folder / name).read_text(encoding="utf-8"))))

    @property
    def files(self):
        """All files below the folder."""
        return {str(path.relative_to(self.folder)): path.read_bytes() for path in self.folder.rglob("*.*")}


@pytest.fixture
def bench(tmp_path, address):
    """A bench to work at."""
    return Bench(tmp_path, address)


def texts_of(pdf):
    """Text of each page of a PDF, as another program reads it."""
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        return [page.extract_text() for page in document.pages]


def test_what_stands_on_labels_comes_out_as_lines(bench):
    """A row for each part in its place, and the bad one in the file of bad rows with its column."""
    assert bench.run("labels", "labels.csv") == 1
    found = bench.rows("labels.csv")
    assert [(row["line"], row["id"]) for row in found] == [
        ("2", "BD-17"),
        ("3", "BR-3"),
        ("4", "BD-18"),
        ("5", "BD-19"),
        ("6", "BD-17"),
    ]
    # 24.75 in by the rule of 18: twelve frets and as much again, 2 * 628.65 * (1 - (17/18)^12) = 624.079 mm.
    assert f"true={2.0 * 628.65 * (1.0 - (17.0 / 18.0) ** 12):.3f}mm" in found[0]["code"]
    assert "true=650mm" in found[1]["code"]
    assert "an invented board" in found[0]["letters"]
    assert [(row["line"], row["id"], row["column"]) for row in bench.rows("labels.csv.bad-rows.csv")] == [
        ("4", "BD-18", "layout_scale [in]")
    ]
    assert "5 rows, 1 bad" in bench.said


def test_the_code_of_a_line_is_read_back(bench):
    """What the lines of JSON carry is a label that the service reads as the part that it was."""
    assert bench.run("labels", "labels.jsonl") == 1
    lines = [json.loads(line) for line in bench.files["labels.jsonl"].splitlines()]
    assert [line["kind"] for line in lines] == ["result", "result", "problem", "result", "result"]
    with Client(bench.address) as client:
        part = client.label_read(text=lines[1]["code"]).part
    assert (part.id, part.kind) == ("BR-3", "bridge")
    assert part.true_scale == pytest.approx(650.0, abs=0.001)


def test_labels_come_out_as_pages(bench):
    """The document is there as a whole, the bad row does not spoil it, and nothing else is left."""
    assert bench.run("labels", "labels.pdf", "--set", "start=24", "--set", "size=70x36mm") == 1
    files = bench.files
    assert set(files) == {"parts.csv", "labels.pdf", "labels.pdf.bad-rows.csv"}
    assert files["labels.pdf"].startswith(b"%PDF")
    # Of 70 mm by 36 mm three by eight go on A4 (210 mm by 297 mm): the first label is the last of its sheet.
    first, second = texts_of(files["labels.pdf"])
    assert "BD-17" in first
    assert "BR-3" not in first
    assert all(name in second for name in ("BR-3", "BD-19", "BD-17"))
    assert "BD-18" not in second
    assert bench.run("labels", "labels.pdf") == 2
    assert "is there already" in bench.said


def test_a_large_stock_gets_more_documents_and_none_is_written_over(bench, monkeypatch):
    """Each document takes so many; the further ones are numbered."""
    monkeypatch.setattr("scalewright_client.command.labels._IN_ONE_FILE", 3)
    bench.write("labels-2.pdf", "precious")
    assert bench.run("labels", "labels.pdf") == 2
    assert bench.files["labels-2.pdf"] == b"precious\n"
    assert bench.run("labels", "labels.pdf", "--restart") == 1
    assert {name for name in bench.files if name.endswith("pdf")} == {"labels.pdf", "labels-2.pdf"}
    assert bench.files["labels-2.pdf"].startswith(b"%PDF")
    bench.write("parts.csv", HEADER, *ROWS[:3])
    assert bench.run("labels", "labels.pdf", "--restart") == 1
    assert {name for name in bench.files if name.endswith("pdf")} == {"labels.pdf"}


def test_sheets_of_an_earlier_run_do_not_stay(bench):
    """With --restart the sheets that the earlier table names go, and whatever else is in the folder stays."""
    bench.run("spec-sheets", "sheets", "--output-format", "html")
    (bench.folder / "sheets" / "notes-1.html").write_text("mine", encoding="utf-8")
    bench.write("parts.csv", f"{HEADER},identifiers", f"{ROWS[0]},order 1042; shelf 3", "BR-4,bridge,650,,,,")
    bench.run("spec-sheets", "sheets", "--output-format", "html", "--restart")

    left = {name.partition("/")[2] for name in bench.files if name.startswith("sheets/") and name.endswith("html")}
    assert left == {"BD-17-2.html", "BR-4-3.html", "notes-1.html"}
    assert b"order 1042, shelf 3" in bench.files["sheets/BD-17-2.html"]


def test_a_label_of_another_size_is_a_bad_row_of_pages(bench):
    """Pages have labels of one size."""
    good = {"part": {"id": "A-1", "kind": "bridge", "true_scale": "650 mm"}}
    bench.write("parts.jsonl", json.dumps(good), json.dumps({**good, "size": "100x50mm"}))
    assert bench.run("labels", "labels.pdf", source="parts.jsonl", columns=()) == 1
    (bad,) = bench.rows("labels.pdf.bad-rows.csv")
    assert bad["line"] == "2"
    assert "the same for all labels" in bad["detail"]


def test_labels_that_do_not_go_on_the_paper_are_told(bench):
    """The refusal says why, and no document is begun."""
    assert bench.run("labels", "labels.pdf", "--set", "left=200 mm") == 2
    assert "can't be set" in bench.said
    assert "labels.pdf" not in bench.files
    assert bench.run("labels", "labels.pdf", "--restart") == 1


@pytest.mark.parametrize(("kind", "head"), [("html", b"<!doctype html>"), ("pdf", b"%pdf")])
def test_every_part_gets_its_spec_sheet(bench, kind, head):
    """A file for each good row, none for two, and a table that says which is whose."""
    assert bench.run("spec-sheets", "sheets", "--output-format", kind) == 1
    table = bench.rows("sheets/sheets.csv")
    assert [row["file"] for row in table] == [
        f"BD-17-2.{kind}",
        f"BR-3-3.{kind}",
        "",
        f"BD-19-5.{kind}",
        f"BD-17-6.{kind}",
    ]
    sheets = [bench.files[f"sheets/{row['file']}"] for row in table if row["file"]]
    assert all(sheet[:15].lower().startswith(head) for sheet in sheets)
    assert len(set(sheets)) == len(sheets)
    (bad,) = bench.rows("sheets/sheets.csv.bad-rows.csv")
    assert (bad["line"], bad["id"], bad["column"], bad["problem"]) == (
        "4",
        "BD-18",
        "layout_scale [in]",
        "invalid-request",
    )
    assert len(bench.files) == 1 + 4 + 2


def test_a_folder_with_files_in_it_is_left_alone(bench):
    """They may be somebody else's, until the caller says otherwise."""
    (bench.folder / "sheets").mkdir()
    bench.write("sheets/BR-3-3.html", "precious")
    assert bench.run("spec-sheets", "sheets") == 2
    assert bench.files["sheets/BR-3-3.html"] == b"precious\n"
    assert bench.run("spec-sheets", "sheets", "--restart") == 1
    assert bench.files["sheets/BR-3-3.html"] != b"precious\n"


@pytest.mark.parametrize(("word", "output"), [("labels", "labels.pdf"), ("spec-sheets", "sheets")])
@pytest.mark.parametrize("keeps", [1, 2, 4])
def test_a_run_that_was_stopped_goes_on_to_the_same_files(tmp_path, address, monkeypatch, word, output, keeps):
    """Stopped before the first row, amid the rows or after the last one, it leaves what a whole run leaves."""
    (tmp_path / "whole").mkdir()
    whole = Bench(tmp_path / "whole", address)
    assert whole.run(word, output, "--at-once", "2") == 1
    expected = whole.files
    (tmp_path / "stopped").mkdir()
    stopped = Bench(tmp_path / "stopped", address)
    kept, count = Journal.keep, 0

    def stopping(journal, standing):
        nonlocal count
        kept(journal, standing)
        count += 1
        if count == keeps:
            raise KeyboardInterrupt

    monkeypatch.setattr(Journal, "keep", stopping)
    assert stopped.run(word, output, "--at-once", "2") == 130
    monkeypatch.setattr(Journal, "keep", kept)
    assert stopped.run(word, output, "--at-once", "2") == 1
    assert stopped.files == expected


def test_readings_make_a_part_too(bench):
    """Columns of readings and what is common to all of them go into the part's readings."""
    # Exact places of 650 mm in twelve equal steps: 650 * (1 - 2^(-n/12)).
    places = [f"{650.0 * (1.0 - 2.0 ** (-fret / 12.0)):.2f}" for fret in (1, 5, 7, 12, 19)]
    header = "id," + ",".join(f"fret {n} [mm]" for n in (1, 5, 7, 12, 19))
    bench.write("read.csv", header, "B-1," + ",".join(places), "B-2,,,x,,")
    arguments = ["--set", "instrument_uncertainty=0.05 mm"]
    assert bench.run("labels", "labels.jsonl", *arguments, source="read.csv", columns=()) == 1
    first = json.loads(bench.files["labels.jsonl"].splitlines()[0])
    (true,) = re.findall(r"true=([0-9.]+)mm", first["code"])
    assert float(true) == pytest.approx(650.0, abs=0.3)
    (bad,) = bench.rows("labels.jsonl.bad-rows.csv")
    assert (bad["line"], bad["column"]) == ("3", "fret 7 [mm]")


@pytest.mark.parametrize("word", ["labels", "spec-sheets"])
def test_a_table_that_tells_no_scale_is_refused(bench, word):
    """The message says what to name a column."""
    bench.write("none.csv", "id,shelf", "B-1,3")
    assert bench.run(word, "out.csv", source="none.csv", columns=()) == 2
    assert "no column tells a scale" in bench.said
    assert set(bench.files) == {"parts.csv", "none.csv"}


@pytest.mark.parametrize("start", ["=", "+", "@"])
def test_no_text_becomes_a_formula_in_a_spreadsheet(bench, start):
    """A text that starts like a formula gets an apostrophe, in both words' files of bad rows."""
    bench.write("odd.csv", "id,true_scale [mm]", f"{start}SUM(1),650")
    for word, output in (("labels", "labels.csv"), ("spec-sheets", "sheets")):
        assert bench.run(word, output, source="odd.csv", columns=()) == 1
    names = ["labels.csv", "labels.csv.bad-rows.csv", "sheets/sheets.csv", "sheets/sheets.csv.bad-rows.csv"]
    assert [bench.rows(name)[0]["id"] for name in names] == [f"'{start}SUM(1)"] * 4


@pytest.mark.parametrize("identifier", ["../../x", "a/b\\c", ".hidden", "-rf", "", None, "CON", "x" * 300, "Ä:*?"])
def test_names_of_files_are_harmless(identifier):
    """No id leads out of the folder, hides a file or is too long, and the line keeps rows apart."""
    name = file_name(identifier, 7, "html")
    assert re.fullmatch(r"[A-Za-z0-9_][A-Za-z0-9._-]{0,80}-7\.html", name)
    assert name != file_name(identifier, 8, "html")


def test_a_row_cannot_choose_the_kind_of_its_sheet(bench):
    """It is the command that says it."""
    part = {"id": "A-1", "kind": "bridge", "true_scale": "650 mm"}
    bench.write("parts.jsonl", json.dumps({"part": part, "media": "application/pdf"}), json.dumps({"part": part}))
    assert bench.run("spec-sheets", "sheets", source="parts.jsonl", columns=()) == 1
    assert [row["file"] for row in bench.rows("sheets/sheets.csv")] == ["", "A-1-2.html"]


def test_fields_go_where_the_question_has_them():
    """What a row says itself stands before what is the same for all, and what is no object stays as it is."""
    flat = {"id": "A", "instrument_uncertainty": 0.1, "fret_count": 22, "title": "t"}
    assert LABEL.nested(flat) == {
        "part": {"id": "A", "kind": "board", "frets": 22, "readings": {"instrument_uncertainty": 0.1}},
        "title": "t",
    }
    assert SHEET.nested({"kind": "bridge", "part": {"id": "B", "kind": "neck_blank"}}) == {
        "part": {"id": "B", "kind": "neck_blank"}
    }
    assert LABEL.nested({"id": "A", "part": 3}) == {"part": 3}
