"""The ``scalewright`` command: ``serve`` runs the service, ``openapi`` prints its document, ``key`` makes a key."""

import argparse
import contextlib
import errno
import json
import os
import re
import socket
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from scalewright import __version__
from scalewright.api.keys import new_key
from scalewright.api.settings import PREFIX, Settings, SettingsError

__all__ = ["main"]

_EXAMPLE = '{"scale": "24 3/4 in", "rule": "eighteenth", "frets": 22, "unit": "in"}'
_BACKLOG = 1024
_MEMORY = Path("/dev/shm")  # noqa: S108  (a folder of its own is made in it)  # nosec B108


def main(arguments: list[str] | None = None) -> int:
    """Run the command.

    Parameters
    ----------
    arguments : list of str, optional
        Instead of those of the process.

    Returns
    -------
    int
        Exit status: 0 when all went well, 1 when the service could not start, 2 for a setting that is none.
    """
    parser = argparse.ArgumentParser(prog="scalewright", description="What scale a fretted board really has.")
    parser.add_argument("--version", action="version", version=f"scalewright {__version__}")
    words = parser.add_subparsers(dest="word", required=True, metavar="serve | openapi | key")
    serve = words.add_parser("serve", help="run the service", description="Run the service.")
    serve.add_argument("--host", help=f"address to listen on (else {PREFIX}HOST, else 127.0.0.1)")
    serve.add_argument("--port", type=_port, help=f"port, 0 for a free one (else {PREFIX}PORT, else 8000)")
    serve.add_argument("--workers", type=_workers, help=f"number of processes (else {PREFIX}WORKERS, else 1)")
    words.add_parser("openapi", help="print the OpenAPI document", description="Print the OpenAPI document.")
    key = words.add_parser("key", help="make a key for a caller", description="Make a key for a caller.")
    key.add_argument("name", type=_name, help="whose it is: letters, digits, dots, dashes")
    chosen = parser.parse_args(arguments)
    if chosen.word == "key":
        return _make_key(chosen.name)
    if chosen.word == "openapi":
        return _print_document()
    flags = {name: getattr(chosen, name) for name in ("host", "port", "workers")}
    try:
        settings = Settings.from_environment()
    except SettingsError as error:
        print(f"scalewright: {error}", file=sys.stderr)
        return 2
    return _serve(replace(settings, **{name: value for name, value in flags.items() if value is not None}))


def _port(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) <= 5 and int(text) <= 65535):  # five digits hold them all
        message = "a port is a whole number from 0 to 65535"
        raise argparse.ArgumentTypeError(message)
    return int(text)


def _workers(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) <= 3 and int(text) > 0):  # more would be a slip
        message = "the number of processes is a whole number from 1 to 999"
        raise argparse.ArgumentTypeError(message)
    return int(text)


def _name(text: str) -> str:
    if not re.fullmatch(r"[A-Za-z0-9._-]{1,64}", text):
        message = "a name has letters, digits, dots and dashes, 64 at most"
        raise argparse.ArgumentTypeError(message)
    return text


def _make_key(name: str) -> int:
    """Print a new key, which is kept nowhere, and what to set."""
    secret, setting = new_key(name)
    print(f"The key, for the caller alone, who sends it as X-API-Key:\n  {secret}")
    print(f"The setting, which takes several with commas between:\n  {PREFIX}API_KEYS={setting}")
    return 0


def _print_document() -> int:
    """Print the OpenAPI document as it is committed."""
    from scalewright.api.app import create_app  # noqa: PLC0415  (what only this word needs)

    json.dump(create_app(Settings()).openapi(), sys.stdout, indent=1, ensure_ascii=False)
    print()
    return 0


def _serve(settings: Settings) -> int:
    """Listen, say where, and serve until a signal ends it."""
    try:
        listener = _listener(settings.host, settings.port)
    except OSError as error:
        print(f"scalewright: {_reason(error, settings)}", file=sys.stderr)
        return 1
    _greet(settings.host, listener.getsockname()[1], docs=settings.docs)
    # Our matrices are small: threads for each of them, in every process, wait for one another more than they work.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    import uvicorn  # noqa: PLC0415  (the greeting is out before a tenth of a second is spent here)

    from scalewright.api.connections import GuardedConnection  # noqa: PLC0415  (the same)
    from scalewright.api.draining import DrainingServer, Workers  # noqa: PLC0415  (the same)

    config = uvicorn.Config(
        "scalewright.api.app:create_app",
        factory=True,
        host=settings.host,
        port=settings.port,
        workers=settings.workers,
        http=GuardedConnection,
        ws="none",
        access_log=False,
        server_header=False,
        # Addresses that a client claims to come from are of no use here.
        proxy_headers=False,
        log_config=_logging(),
        timeout_keep_alive=settings.keep_alive_seconds,
        timeout_graceful_shutdown=settings.drain_seconds,
        # Idle connections count too, so this is but a backstop; the bound on requests is in api/overload.py.
        limit_concurrency=settings.max_connections,
        backlog=_BACKLOG,
    )
    server = DrainingServer(config, settings.lame_duck_seconds)
    try:
        if settings.workers == 1:
            server.run([listener])
            return 0 if server.started else 1
        with _shared_metrics():
            Workers(config, [listener], settings.lame_duck_seconds).run()
    except KeyboardInterrupt:
        pass  # the usual end of a service at a terminal
    finally:
        listener.close()
    return 0


@contextlib.contextmanager
def _shared_metrics() -> Iterator[None]:
    """Give several processes a folder in which their numbers add up, unless the operator has named one."""
    from scalewright.api.metrics import SHARED  # noqa: PLC0415  (few need it)

    if SHARED in os.environ:
        yield
        return
    # In memory, where the system has such a place: nothing is written to a disk, which may be read-only.
    place = _MEMORY if _MEMORY.is_dir() else None
    with tempfile.TemporaryDirectory(prefix="scalewright-metrics-", dir=place) as folder:
        os.environ[SHARED] = folder
        yield


def _listener(host: str, port: int) -> socket.socket:
    """Return a socket that listens; a client that comes before the service is ready waits in its queue."""
    family, kind, protocol, _, address = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)[0]
    # The protocol is named, as asyncio turns Nagle's algorithm off only where it is.
    listener = socket.socket(family, kind, protocol)
    try:
        listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        listener.bind(address)
        listener.listen(_BACKLOG)
    except OSError:
        listener.close()
        raise
    listener.set_inheritable(True)
    return listener


def _reason(error: OSError, settings: Settings) -> str:
    """Say in a sentence why the service cannot listen."""
    if error.errno == errno.EADDRINUSE:
        another = settings.port + 1 if settings.port < 65535 else 8000
        return (
            f"port {settings.port} of {settings.host} is taken by another program; "
            f"choose another, as in: scalewright serve --port {another}"
        )
    if error.errno == errno.EACCES:
        return f"port {settings.port} is for administrators only; choose one above 1023, as in --port 8000"
    return f"{settings.host} is no address of this machine; try --host 127.0.0.1, or --host 0.0.0.0 for all of them"


def _greet(host: str, port: int, *, docs: bool) -> None:
    """Say where the documentation is, and a line that works when pasted."""
    near = {"0.0.0.0": "127.0.0.1", "::": "::1"}.get(host, host)  # noqa: S104  (to be called, not listened on)  # nosec B104
    address = f"http://[{near}]:{port}" if ":" in near else f"http://{near}:{port}"
    documented = f", its documentation is at {address}/docs" if docs else ""
    print(f"Scalewright {__version__} serves on {address}{documented}")
    print("Try it:")
    print(f"  curl -s '{address}/v1/layout' -H 'Content-Type: application/json' -d '{_EXAMPLE}'")
    print("It ends with Ctrl+C.", flush=True)


def _logging() -> dict[str, object]:
    """Logs as lines on the error stream: those of the requests as they are, those of the server with a level."""
    return {
        "version": 1,
        "disable_existing_loggers": False,
        "formatters": {"line": {"format": "%(message)s"}, "server": {"format": "%(levelname)s: %(message)s"}},
        "handlers": {
            "line": {"class": "logging.StreamHandler", "formatter": "line"},
            "server": {"class": "logging.StreamHandler", "formatter": "server"},
        },
        "loggers": {
            "scalewright": {"handlers": ["line"], "level": "INFO", "propagate": False},
            "uvicorn": {"handlers": ["server"], "level": "WARNING", "propagate": False},
        },
    }


if __name__ == "__main__":
    sys.exit(main())
