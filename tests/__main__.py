"""``python3 -m tests``: the tests, the studies, the benchmarks or one of the tools, from a bare checkout."""

import os
import subprocess
import sys
from pathlib import Path

from service._bootstrap import ensure

TESTS = Path(__file__).resolve().parent

USAGE = """\
python3 -m tests [pytest's arguments]      the tests
python3 -m tests --studies [...]           the long simulations
python3 -m tests --benchmarks [NAME ...]   the benchmarks in tests/benchmarks, or one with its arguments
python3 -m tests --tool NAME [...]         a tool of the developers: ruff, mypy, lint-imports, uv ...
"""


def main(arguments: "list[str]") -> int:
    """Run what the first word names, from the top of the checkout; any other words are pytest's."""
    os.chdir(TESTS.parent)
    word, rest = (arguments[0], arguments[1:]) if arguments else ("", [])
    if word in {"-h", "--help"}:
        print(USAGE, end="")
        return 0
    if word == "--benchmarks":
        return benchmarks(rest)
    if word == "--tool":
        return tool(rest)
    # Two threads of linear algebra in each of two workers only get in each other's way.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    chosen = ["-m", "study", *rest] if word == "--studies" else arguments
    # Starting workers takes longer than a few chosen tests do.
    few = any(not argument.startswith("-") for argument in arguments)
    workers = [] if few else ["-n", "auto", "--maxprocesses", "4"]
    return subprocess.call([sys.executable, "-m", "pytest", *workers, *chosen])


def benchmarks(words: "list[str]") -> int:
    """Run all benchmarks, or one with its arguments, each in a process of its own."""
    names = words[:1] or sorted(script.stem for script in (TESTS / "benchmarks").glob("[!_]*.py"))
    failures = 0
    for name in names:
        print(f"== {name}", flush=True)
        failures += subprocess.call([sys.executable, "-m", f"tests.benchmarks.{name}", *words[1:]]) != 0
    return int(failures > 0)


def tool(words: "list[str]") -> int:
    """Run a tool that stands beside this interpreter."""
    name = words[0] if words else ""
    path = Path(sys.executable).parent / name
    if not name or not any(place.is_file() for place in (path, path.with_suffix(".exe"))):
        print(f"There is no tool {name!r} in this environment; the extra `dev` brings the tools.", file=sys.stderr)
        return 2
    return subprocess.call([str(path), *words[1:]])


if __name__ == "__main__":
    ensure("tests", extra="test")
    sys.exit(main(sys.argv[1:]))
