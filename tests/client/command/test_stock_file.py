"""The invented stock of 500 boards, through the command and a live service."""

import csv
import io
import runpy
from pathlib import Path

import pytest

from scalewright_client.command.__main__ import main
from tests.client.live_service import live_service

FOLDER = Path(__file__).parents[3] / "clients" / "python" / "examples"
BAD = {
    "FB-057": "fret 7 [in]",
    "FB-123": "fret 1 [in] ... fret 19 [in]",
    "FB-250": "fret 12 [in]",
    "FB-377": "u [in]",
    "": "",
}
"""Bad rows by id, and the columns at fault; of a row that cannot be read not even the id is sure."""


def rows_of(path):
    """Rows of a CSV file by column."""
    return list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8"))))


def test_the_stock_is_as_its_script_makes_it():
    """Who changes the script makes the file anew."""
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerows(runpy.run_path(str(FOLDER / "make_boards.py"))["boards"]())
    assert (FOLDER / "boards.csv").read_text(encoding="utf-8") == out.getvalue()


@pytest.mark.slow
def test_the_stock_is_identified_as_it_was_made(tmp_path):
    """Slow, for 500 boards: what was invented is found again, and the bad rows are those that were made bad."""
    scales = tmp_path / "scales.csv"
    columns = ["--column", "id=sku", "--column", "instrument_uncertainty=u"]
    with live_service() as address:
        arguments = ["identify", str(FOLDER / "boards.csv"), "-o", str(scales), *columns, "--url", address, "-q"]
        assert main(arguments, terminal=io.StringIO(), environment={}) == 1
    made = rows_of(FOLDER / "boards.csv")
    found = rows_of(scales)
    bad = rows_of(scales.with_name("scales.csv.bad-rows.csv"))
    assert {row["id"]: row["column"] for row in bad} == BAD
    assert [row["line"] for row in found] == [str(number + 2) for number in range(500)]
    wrong = covered = established = 0
    for board, answer in zip(made, found, strict=True):
        if answer["verdict"] == "established":
            established += 1
            wrong += answer["rule"].split()[0] not in board["made_by"]
            ratio = {"eighteenth": 17.0 / 18.0, "equal": 0.5 ** (1.0 / 12.0)}[board["made_by"]]
            true = 2.0 * float(board["made_to"]) * (1.0 - ratio**12)
            covered += float(answer["true_scale_lower"]) <= true <= float(answer["true_scale_upper"])
    # The threshold is 0.95 and the intervals hold 95 %: of some 450 boards, with three standard deviations of chance.
    assert established > 400
    assert wrong <= 0.05 * established
    assert covered >= (0.95 - 3.0 * (0.05 * 0.95 / established) ** 0.5) * established
