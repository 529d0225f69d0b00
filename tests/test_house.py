"""The repository keeps its word: locks, versions, bootstrap, files and tests."""

import ast
import hashlib
import itertools
import os
import re
import runpy
import shutil
import subprocess
import sys
import tomllib
import zipfile
from importlib import util
from pathlib import Path

import pytest

import scalewright
import scalewright_client
from service import _bootstrap

ROOT = Path(__file__).resolve().parent.parent

MAY_STAND_AT_THE_TOP = {
    "DEVELOPERS.md",
    "Dockerfile",
    "README.md",
    "clients",
    "openapi_examples",
    "pyproject.toml",
    "service",
    "tests",
}

PROJECTS = {
    folder: tomllib.loads((ROOT / folder / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    for folder in (".", "clients/python")
}

BOOTSTRAPPED = ["service/_bootstrap.py", "service/__main__.py", "tests/__main__.py"]
"""Files that run before there is any package."""


def ignored_at_the_top() -> set[str]:
    """Names at the top of the checkout that git ignores."""
    lines = (ROOT / ".gitignore").read_text(encoding="utf-8").splitlines()
    return {line.strip("/") for line in lines if line.startswith("/")} | {"__pycache__"}


def pins(word: str) -> dict[str, set[str]]:
    """Versions that a lock file pins, by distribution; more than one where they depend on the Python."""
    found: dict[str, set[str]] = {}
    for name, version in re.findall(r"^([\w.-]+)==([\w.]+)", lock_text(word), re.MULTILINE):
        found.setdefault(name, set()).add(version)
    return found


def lock_text(word: str) -> str:
    """Text of a lock file."""
    return (ROOT / word / "requirements.lock").read_text(encoding="utf-8")


def all_requirements() -> list[str]:
    """All requirements of the service, its extras and the client."""
    service, client = PROJECTS["."], PROJECTS["clients/python"]
    extras = service["optional-dependencies"].values()
    return sorted({*service["dependencies"], *client["dependencies"], *itertools.chain.from_iterable(extras)})


def test_the_top_level_holds_only_its_eight_things():
    """At the top of the checkout stand eight things, files of a leading dot, and what git ignores."""
    present = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}

    assert present - ignored_at_the_top() == MAY_STAND_AT_THE_TOP


def test_one_version():
    """The service, its client and the newest heading under Changes have the same version."""
    changes = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").partition("\n## Changes\n")[2]
    newest = re.search(r"^### ([\d.]+)", changes, re.MULTILINE)

    assert newest is not None
    assert newest[1] == scalewright.__version__ == scalewright_client.__version__


def test_changes_are_the_last_section():
    """Nothing follows the changes in DEVELOPERS.md."""
    sections = re.findall(r"^## (.+)$", (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8"), re.MULTILINE)

    assert sections[-1] == "Changes"


@pytest.mark.parametrize("requirement", all_requirements())
def test_a_requirement_has_both_bounds_and_is_locked_between_them(requirement):
    """Every requirement is written name>=a,<b, and the lock file pins it inside."""
    written, _, _ = requirement.partition(";")
    match = re.fullmatch(r"([a-z0-9-]+)>=([\d.]+),<([\d.]+)", written.strip())

    assert match is not None
    name, oldest, too_new = match.groups()
    for version in pins("tests")[name]:
        assert _bootstrap.release(oldest) <= _bootstrap.release(version) < _bootstrap.release(too_new)


@pytest.mark.parametrize("word", ["service", "tests"])
def test_a_lock_file_has_hashes_and_no_address(word):
    """Every pinned package has a hash, and where it is fetched from is left to the machine."""
    text = lock_text(word)
    packages = re.split(r"^(?=\S)", text, flags=re.MULTILINE)[1:]

    assert packages
    assert all(re.match(r"[\w.-]+==\S+ .*\\\n( +--hash=sha256:[0-9a-f]{64})", package) for package in packages)
    assert "://" not in text
    assert "--index" not in text


def test_the_tests_run_with_what_the_service_runs_with():
    """The lock of the tests pins everything that the lock of the service pins, at the same versions."""
    service, tests = pins("service"), pins("tests")

    assert service.items() <= tests.items()


def test_the_service_is_locked_without_the_tools():
    """What only tests and developers need is not in the lock of the service."""
    extras = PROJECTS["."]["optional-dependencies"]
    tools = {requirement.partition(">=")[0] for requirement in [*extras["test"], *extras["dev"]]}

    assert tools & pins("service").keys() == {"httpx"}


@pytest.mark.parametrize("folder", PROJECTS)
def test_the_bootstrap_knows_the_oldest_python(folder):
    """The bootstrap turns away exactly the Pythons that pyproject.toml does."""
    assert PROJECTS[folder]["requires-python"] == ">={}.{}".format(*_bootstrap.OLDEST_PYTHON)


@pytest.mark.parametrize("name", BOOTSTRAPPED)
def test_old_pythons_can_read_the_bootstrap(name):
    """What runs first parses on Python 3.6, so that one too old is told so in a sentence."""
    ast.parse((ROOT / name).read_text(encoding="utf-8"), feature_version=(3, 6))


@pytest.mark.parametrize("name", BOOTSTRAPPED)
def test_the_bootstrap_needs_the_standard_library_alone(name):
    """At their top, the files that run first import the standard library and each other."""
    tree = ast.parse((ROOT / name).read_text(encoding="utf-8"))
    roots = set()
    for node in tree.body:
        if isinstance(node, ast.Import):
            roots |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            roots.add(str(node.module).partition(".")[0])

    assert roots <= {*sys.stdlib_module_names, "service"}


def test_a_python_too_old_is_turned_away(monkeypatch, capsys):
    """Python 3.10 ends with a sentence that names what is needed, and with status 1."""
    monkeypatch.setattr(sys, "version_info", (3, 10, 13, "final", 0))

    with pytest.raises(SystemExit) as ended:
        _bootstrap.ensure("service")

    assert ended.value.code == 1
    assert "needs Python 3.11 or newer, and this is Python 3.10" in capsys.readouterr().err


def test_a_python_without_venv_is_told_what_to_install(monkeypatch, capsys, tmp_path):
    """Without the venv module and without uv the line to install it is printed, and nothing is made."""
    monkeypatch.setattr("shutil.which", lambda _: None)
    monkeypatch.setattr(util, "find_spec", lambda name: None if name == "ensurepip" else object())

    with pytest.raises(SystemExit) as ended:
        _bootstrap.make(_bootstrap.ENVIRONMENTS / tmp_path.name, tmp_path / "requirements.lock")

    assert ended.value.code == 1
    assert re.search(r"sudo apt-get install -y python3[.\d]*-venv\n", capsys.readouterr().err)
    assert not (_bootstrap.ENVIRONMENTS / tmp_path.name).exists()


@pytest.mark.parametrize(
    ("requirement", "met"),
    [
        ("pytest>=9,<10", True),
        ("pytest>=1,<9", False),
        ("pytest>=99,<100", False),
        ("no-such-distribution>=1,<2", False),
        ("no-such-distribution>=1,<2; sys_platform == 'win32'", True),
    ],
)
def test_an_environment_of_ones_own_is_asked_for_each_requirement(requirement, met):
    """A requirement is met by an installed distribution between its bounds; conditions are passed over."""
    assert _bootstrap.installed(requirement) is met


def test_the_bootstrap_stays_out_of_the_way_when_told_to(monkeypatch):
    """With NO_BOOTSTRAP=1 the interpreter is left as it is; it only finds the packages of the checkout."""
    monkeypatch.setenv("NO_BOOTSTRAP", "1")
    monkeypatch.setattr(sys, "prefix", "/elsewhere")
    monkeypatch.setattr(sys, "path", ["", "/usr/lib"])
    monkeypatch.setenv("PYTHONPATH", "/mine")

    _bootstrap.ensure("service")

    places = [str(ROOT / "service"), str(ROOT / "clients" / "python" / "src")]
    assert sys.path == ["", *places, "/usr/lib"]
    assert os.environ["PYTHONPATH"].split(os.pathsep) == [*places, "/mine"]


def write_tiny_wheel(folder: Path) -> str:
    """Write a wheel that holds one module, and return the line of a lock file that takes it."""
    files = {
        "tiny.py": "WORD = 'tiny'\n",
        "tiny-1.0.dist-info/METADATA": "Metadata-Version: 2.1\nName: tiny\nVersion: 1.0\n",
        "tiny-1.0.dist-info/WHEEL": "Wheel-Version: 1.0\nGenerator: a test\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
        "tiny-1.0.dist-info/RECORD": "".join(f"{name},,\n" for name in ("tiny.py", "tiny-1.0.dist-info/RECORD")),
    }
    wheel = folder / "tiny-1.0-py3-none-any.whl"
    with zipfile.ZipFile(wheel, "w") as archive:
        for name, text in files.items():
            archive.writestr(name, text)
    return f"tiny @ {wheel.as_uri()} --hash=sha256:{hashlib.sha256(wheel.read_bytes()).hexdigest()}\n"


def start_in(checkout: Path) -> "subprocess.Popen[str]":
    """Start the bootstrap of a small checkout with the bare Python beneath this one, and with uv if it is here."""
    python = Path(sys.base_prefix) / "bin" / "python{}.{}".format(*sys.version_info)
    return subprocess.Popen(
        [python, "-m", "service", "serve"],
        cwd=checkout,
        env={"PATH": str(Path(sys.executable).parent), "HOME": str(checkout), "PIP_NO_INDEX": "1", "UV_OFFLINE": "1"},
        text=True,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )


@pytest.fixture
def small_checkout(tmp_path):
    """Make a checkout with the real bootstrap, a lock file of one tiny package, and little else."""
    for folder in ("service", "clients/python/src"):
        (tmp_path / folder).mkdir(parents=True)
    shutil.copy(ROOT / "service" / "_bootstrap.py", tmp_path / "service")
    (tmp_path / "service" / "requirements.lock").write_text(write_tiny_wheel(tmp_path), encoding="utf-8")
    (tmp_path / "service" / "word.py").touch()
    (tmp_path / "service" / "__main__.py").write_text(
        "import sys\nfrom service._bootstrap import ensure\nensure('service')\n"
        "import tiny, word\nprint(sys.prefix, tiny.WORD, *sys.argv[1:])\n",
        encoding="utf-8",
    )
    return tmp_path


@pytest.mark.slow
def test_two_starts_at_once_make_one_environment(small_checkout):
    """Of two first starts one makes the environment and the other waits; a changed lock file replaces it.

    Slow: it makes two environments.
    """
    starts = [start_in(small_checkout), start_in(small_checkout)]
    said = [start.communicate(timeout=60) for start in starts]

    assert [start.returncode for start in starts] == [0, 0], said
    (home,) = (small_checkout / ".environments").glob("service-*")
    assert [out for out, _ in said] == [f"{home} tiny serve\n"] * 2
    assert "".join(error for _, error in said).count("Setting up") == 1

    with (small_checkout / "service" / "requirements.lock").open("a", encoding="utf-8") as lock:
        lock.write("# changed\n")
    out, _ = start_in(small_checkout).communicate(timeout=60)

    (other,) = (small_checkout / ".environments").glob("service-*")
    assert other != home
    assert out == f"{other} tiny serve\n"


@pytest.mark.slow
def test_a_package_that_is_not_what_the_lock_file_says_is_refused(small_checkout):
    """A package with another hash ends the first start with a sentence, and the next one tries again.

    Slow: it makes an environment, with uv and then, as that refuses, with pip.
    """
    lock = small_checkout / "service" / "requirements.lock"
    right = lock.read_text(encoding="utf-8")
    lock.write_text(right[:-2] + ("0" if right[-2] != "0" else "1") + "\n", encoding="utf-8")

    start = start_in(small_checkout)
    _, error = start.communicate(timeout=60)

    assert start.returncode == 1
    assert error.endswith("The packages could not be installed; what the installer said stands above.\n")
    assert not list((small_checkout / ".environments").glob("service-*/complete"))


def test_the_words_of_the_service_command(monkeypatch):
    """No word means serve; options alone are those of serve; demo has a file of its own."""
    asked: list[list[str]] = []

    def command(words):
        asked.append(words)
        return 0

    monkeypatch.setattr("scalewright.__main__.main", command)
    monkeypatch.setattr("service.demo.main", lambda words: command(["the demo", *words]))
    main = runpy.run_module("service.__main__", run_name="service.__main__")["main"]

    for words in ([], ["--port", "9000"], ["serve"], ["--help"], ["demo", "x"]):
        assert main(words) == 0

    assert asked == [["serve"], ["serve", "--port", "9000"], ["serve"], ["--help"], ["the demo", "x"]]


@pytest.mark.parametrize(
    "path", sorted((ROOT / "tests").rglob("test_*.py")), ids=lambda path: str(path.relative_to(ROOT / "tests"))
)
def test_every_test_is_a_sentence(path):
    """Every test function has a docstring that begins with a sentence."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    tests = [
        node
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.name.startswith("test_")
    ]
    silent = [node.name for node in tests if not (ast.get_docstring(node) or "").partition("\n\n")[0].endswith(".")]

    assert not silent


def test_the_nomenclature_lists_names_that_exist():
    """Every name in the nomenclature table is a field of a thing of the craft or of a model of the wire."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").partition("\n## Nomenclature\n")[2]
    listed = set(re.findall(r"^\| `(\w+)` \|", text.partition("\n## ")[0], re.MULTILINE))
    present: set[str] = set()
    for floor in ("lutherie", "wire"):
        for path in (ROOT / "service" / "scalewright" / floor).rglob("*.py"):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                    present.add(node.target.id)

    assert listed
    assert listed <= present
