"""The specification tried out: questions made from the document get what the document says, and never a 500."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.api.running import HOST, service

TESTS = Path(__file__).resolve().parents[1]
CASES = "5"
"""Questions an operation, beside the examples and the edges of its schema; before a release, run some thousand."""


@pytest.mark.study
def test_every_operation_does_what_the_document_says(tmp_path):
    """By schemathesis, all its checks: statuses, media types, schemas, edges of ranges, unknown methods, no key.

    It sends the service some thousand requests.
    """
    with service(SCALEWRIGHT_LOG_REQUESTS="off") as (_, port):
        tried = subprocess.run(
            [
                Path(sys.executable).with_name("schemathesis"),
                *("--config-file", TESTS / "schemathesis.toml", "run", f"http://{HOST}:{port}/openapi.json"),
                *("--max-examples", CASES, "--seed", "1", "--checks", "all", "--no-color"),
            ],
            cwd=tmp_path,
            env={
                "PYTHONPATH": str(TESTS.parent),
                "SCHEMATHESIS_HOOKS": "tests.api.specification_hooks",
                "HOME": str(tmp_path),
            },
            capture_output=True,
            text=True,
            check=False,
        )

    assert tried.returncode == 0, tried.stdout[-8_000:]
    assert " passed" in tried.stdout
