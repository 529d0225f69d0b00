"""An environment of its own for a bare checkout, made with the standard library alone.

``python3 -m service`` and ``python3 -m tests`` call :func:`ensure` before they import anything
else. It leaves the process alone where the packages are at hand; otherwise it starts the process
again inside an environment under ``.environments``, which it makes first if there is none for the
lock file as it stands. Python 3.6 can still read this file, so one that is too old is told so.
"""

import contextlib
import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import IO

ROOT = Path(__file__).resolve().parent.parent
"""The checkout."""

PACKAGES = [ROOT / "service", ROOT / "clients" / "python" / "src"]
"""Where the packages of the checkout stand."""

ENVIRONMENTS = ROOT / ".environments"
"""Where the environments stand; git ignores it."""

OLDEST_PYTHON = (3, 11)
"""The same as ``requires-python`` in pyproject.toml."""

LOCKED = ["--require-hashes", "--no-deps", "-r"]
"""How both installers are told to take what a lock file lists, and nothing else."""

IN_USE: "list[IO[str]]" = []
"""Keeps the file open whose lock tells other processes that the environment is in use."""


def ensure(word: str, extra: "str | None" = None) -> None:
    """Return in an interpreter that has what a word needs, or end the process with a plain sentence.

    Parameters
    ----------
    word : {"service", "tests"}
        The folder that was called; its ``requirements.lock`` says what it needs.
    extra : str or None
        The extra of pyproject.toml that an environment of the caller's own must hold as well.
    """
    if sys.version_info[:2] < OLDEST_PYTHON:
        wanted, found = ("{}.{}".format(*version) for version in (OLDEST_PYTHON, sys.version_info))
        leave(
            f"Scalewright needs Python {wanted} or newer, and this is Python {found}. "
            f"Start it with a newer one, for example: python{wanted} -m {word}"
        )
    home = home_of(word)
    if Path(sys.prefix).resolve() == home:
        return
    if os.environ.get("NO_BOOTSTRAP") == "1" or active_environment_suffices(extra):
        use_checkout()
        return
    ENVIRONMENTS.mkdir(exist_ok=True)
    with only_one(word):
        if not ((home / "complete").exists() and python_of(home).exists()):
            make(home, ROOT / word / "requirements.lock")
            remove_older(word, home)
        hold(home)
    start_again(home)


def leave(sentence: str) -> None:
    """End the process, unsuccessfully, with a sentence for people."""
    print(sentence, file=sys.stderr)
    raise SystemExit(1)


def home_of(word: str) -> Path:
    """Folder of the environment for this lock file, this Python and this place of the checkout."""
    key = hashlib.sha256((ROOT / word / "requirements.lock").read_bytes())
    key.update(repr((sys.implementation.cache_tag, sys.base_prefix, str(ROOT))).encode())
    return ENVIRONMENTS / f"{word}-{key.hexdigest()[:16]}"


def python_of(home: Path) -> Path:
    """Interpreter of an environment."""
    return home / "Scripts" / "python.exe" if os.name == "nt" else home / "bin" / "python"


def active_environment_suffices(extra: "str | None") -> bool:
    """Whether the caller works in an environment of their own that holds what pyproject.toml asks for."""
    if sys.prefix == sys.base_prefix and "CONDA_PREFIX" not in os.environ:
        return False
    missing = [requirement for requirement in requirements(extra) if not installed(requirement)]
    if missing:
        print("The active environment lacks " + "; ".join(missing) + ". Another one is used.", file=sys.stderr)
    return not missing


def requirements(extra: "str | None") -> "list[str]":
    """Requirements of the service and the client, and of an extra, as their pyproject.toml state them."""
    import tomllib

    service, client = (
        tomllib.loads((folder / "pyproject.toml").read_text(encoding="utf-8"))["project"]
        for folder in (ROOT, ROOT / "clients" / "python")
    )
    extras = service["optional-dependencies"][extra] if extra else []
    return [*service["dependencies"], *client["dependencies"], *extras]


def installed(requirement: str) -> bool:
    """Whether a requirement written ``name>=a,<b`` is met; one with a condition is not asked for."""
    from importlib import metadata

    if ";" in requirement:
        return True
    name, _, bounds = requirement.partition(">=")
    oldest, _, too_new = bounds.partition(",<")
    try:
        version = metadata.version(name)
    except metadata.PackageNotFoundError:
        return False
    return release(oldest) <= release(version) < release(too_new)


def release(version: str) -> "list[int]":
    """Numbers of a version, without what follows them."""
    return [int(number) for number in version.split(".") if number.isdigit()]


def use_checkout() -> None:
    """Let this process, and those it starts, import the packages of the checkout."""
    places = [str(place) for place in PACKAGES]
    sys.path[1:1] = places
    inherited = os.environ.get("PYTHONPATH")
    os.environ["PYTHONPATH"] = os.pathsep.join([*places, inherited] if inherited else places)


@contextlib.contextmanager
def only_one(word: str) -> "Iterator[None]":
    """Keep other processes from making the same environment meanwhile."""
    with (ENVIRONMENTS / f"{word}.lock").open("a") as file:
        if not locked(file, shared=False, wait=False):
            print("Another process is making the environment; waiting for it.", file=sys.stderr)
            locked(file, shared=False, wait=True)
        yield


def locked(file: "IO[str]", *, shared: bool, wait: bool) -> bool:
    """Lock an open file until it is closed; False if another holds it and there is no waiting."""
    if sys.platform == "win32":
        import msvcrt

        while True:
            try:
                msvcrt.locking(file.fileno(), msvcrt.LK_LOCK if wait else msvcrt.LK_NBLCK, 1)
            except OSError:
                # Windows itself gives up waiting after ten seconds.
                if not wait:
                    return False
            else:
                return True
    import fcntl

    how = fcntl.LOCK_SH if shared else fcntl.LOCK_EX
    try:
        fcntl.flock(file, how if wait else how | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    return True


def make(home: Path, lock: Path) -> None:
    """Make an environment that holds what a lock file lists, and the packages of the checkout."""
    if not (shutil.which("uv") or brings_venv()):
        usual = Path("/usr/bin/python3").resolve() == Path(sys.executable).resolve()
        package = "python3-venv" if usual else "python{}.{}-venv".format(*sys.version_info)
        leave(
            "This Python comes without its venv module, which sets up an environment for the packages. "
            f"On Debian and Ubuntu install it once with: sudo apt-get install -y {package}"
        )
    shutil.rmtree(home, ignore_errors=True)
    print(f"Setting up {home.relative_to(ROOT)} (once; it takes up to a minute).", file=sys.stderr, flush=True)
    if not (with_uv(home, lock) or with_pip(home, lock)):
        leave("The packages could not be installed; what the installer said stands above.")
    ask = "import sysconfig; print(sysconfig.get_path('purelib'))"
    answer = subprocess.run([str(python_of(home)), "-c", ask], check=True, stdout=subprocess.PIPE)
    site = Path(answer.stdout.decode().strip())
    (site / "scalewright-checkout.pth").write_text("".join(f"{place}\n" for place in PACKAGES), encoding="utf-8")
    (home / "complete").touch()


def brings_venv() -> bool:
    """Whether this Python can make environments; some distributions pack that part separately."""
    return all(importlib.util.find_spec(name) for name in ("venv", "ensurepip"))


def with_uv(home: Path, lock: Path) -> bool:
    """Make the environment with uv, which is faster, where it is found."""
    uv = shutil.which("uv")
    if uv is None:
        return False
    # Like pip, trust the authorities that this machine trusts.
    os.environ.setdefault("UV_SYSTEM_CERTS", "true")
    made = succeeds([uv, "venv", "--quiet", "--python", sys.executable, str(home)]) and succeeds(
        [uv, "pip", "install", "--quiet", "--python", str(python_of(home)), *LOCKED, str(lock)]
    )
    if not made:
        print("uv could not do it, so pip is tried.", file=sys.stderr)
        shutil.rmtree(home, ignore_errors=True)
    return made


def with_pip(home: Path, lock: Path) -> bool:
    """Make the environment with what Python brings along."""
    return succeeds([sys.executable, "-m", "venv", str(home)]) and succeeds(
        [str(python_of(home)), "-m", "pip", "install", "-qq", "--disable-pip-version-check", *LOCKED, str(lock)]
    )


def succeeds(command: "list[str]") -> bool:
    """Run a command whose words for people go to standard error."""
    return subprocess.call(command, stdout=sys.stderr) == 0


def remove_older(word: str, home: Path) -> None:
    """Remove the environments of earlier lock files, except those that a process still runs in."""
    for other in ENVIRONMENTS.glob(f"{word}-*"):
        mark = other / "complete"
        if other == home or os.name == "nt":
            continue
        if mark.exists():
            with mark.open("a") as file:
                if not locked(file, shared=False, wait=False):
                    continue
        shutil.rmtree(other, ignore_errors=True)


def hold(home: Path) -> None:
    """Say, for as long as this process lives, that the environment is in use."""
    if os.name != "nt":
        file = (home / "complete").open()
        locked(file, shared=True, wait=True)
        os.set_inheritable(file.fileno(), True)  # noqa: FBT003  # the standard library's signature
        IN_USE.append(file)


def start_again(home: Path) -> None:
    """Start this very command again inside an environment."""
    command = [str(python_of(home)), *sys.orig_argv[1:]]
    if os.name == "nt":
        # Windows would return to the prompt while the new process still runs.
        raise SystemExit(subprocess.call(command))
    os.execv(command[0], command)
