"""The table of risks in DEVELOPERS.md names tests that exist, for each of the ten."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
TABLE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").partition("\n## Security\n")[2].partition("\n## ")[0]
ROWS = re.findall(r"^\| (API\d+) .*\|(.*)\|$", TABLE, re.MULTILINE)


@pytest.mark.source("OWASP API Security Top 10, edition of 2023: ten risks, API1 to API10")
def test_the_table_has_all_ten_risks():
    """None is left out."""
    assert [risk for risk, _ in ROWS] == [f"API{number}" for number in range(1, 11)]


@pytest.mark.parametrize(("risk", "shown"), ROWS, ids=[risk for risk, _ in ROWS])
def test_each_risk_is_answered_by_tests_that_exist(risk, shown):
    """Every test that a row names is a function of the file that it names."""
    named = re.findall(r"`(tests/[\w/]+\.py)::(\w+)`", shown)

    assert named, risk
    for file, test in named:
        tree = ast.parse((ROOT / file).read_text(encoding="utf-8"))
        assert test in {node.name for node in tree.body if isinstance(node, ast.FunctionDef)}, f"{file}::{test}"
