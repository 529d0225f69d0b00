"""``python3 -m service [demo | serve ...]``: the service, or its demonstration, from a bare checkout."""

import sys

from service._bootstrap import ensure


def main(arguments: "list[str]") -> int:
    """Run what the first word names: ``demo``, or a word of the ``scalewright`` command (``serve`` if none)."""
    if arguments[:1] == ["demo"]:
        from service import demo

        return demo.main(arguments[1:])
    if arguments[:1] in (["-h"], ["--help"]):
        sys.stdout.write(
            "python3 -m service demo    does the whole job on an invented board\npython3 -m service WORD ...\n\n"
        )
    from scalewright.__main__ import main as command

    if not arguments or (arguments[0].startswith("-") and arguments[0] not in {"-h", "--help", "--version"}):
        arguments = ["serve", *arguments]
    return command(arguments)


if __name__ == "__main__":
    ensure("service")
    sys.exit(main(sys.argv[1:]))
