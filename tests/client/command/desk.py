"""A double of the batch route, and a place to run the command at: files, a terminal and an exit status."""

import io
import json
from pathlib import Path

import httpx

from scalewright_client.command.__main__ import main

HEADER = "id,fret 5 [mm],fret 12 [mm],instrument_uncertainty [mm],shelf"


def board(number, **changes):
    """A row of CSV about an invented board."""
    cells = {
        "id": f"B-{number}",
        "fret5": f"{150 + number}.5",
        "fret12": f"{312 + number}.25",
        "u": "0.05",
        "shelf": "3",
    }
    return ",".join({**cells, **changes}.values())


def answer_to(index, line):
    """What the double says to a line: it refuses texts among the readings, and echoes the last one as true scale."""
    asked = json.loads(line)
    identifier = asked.get("id")
    readings = asked.get("from_nut") or ["nothing"]
    wrong = [place for place, value in enumerate(readings) if isinstance(value, str) and not value[:1].isdigit()]
    if wrong:
        detail = "No number stands there."
        errors = [{"pointer": f"/from_nut/{place}", "code": "unreadable", "detail": detail} for place in wrong]
        head = {"kind": "problem", "index": index, "id": identifier, "type": "/problems/unreadable-length"}
        return {
            **head,
            "title": "Unreadable",
            "status": 422,
            "detail": detail,
            "instance": "urn:request:9",
            "errors": errors,
        }
    scale = {"value": readings[-1], "standard_uncertainty": 0.1, "lower": 1.0, "upper": 2.0}
    return {
        "kind": "result",
        "index": index,
        "id": identifier,
        "unit": asked.get("unit"),
        "verdict": "undecided",
        "rule": {"name": "equal", "divisor": 17.8, "steps": 12},
        "true_scale": scale,
        "probability": 0.5,
        "suspect_readings": [{"fret": 5}, {"fret": 7}],
        "next_reading": {"fret": 12},
        "statement": "Scale of +1.",
    }


class Desk:
    """A folder, and a service that answers by :func:`answer_to`."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.asked: list[list[dict[str, object]]] = []
        self.said = ""
        self.troubles: list[httpx.Response | type[httpx.RequestError]] = []

    def handle(self, request):
        """Answer a batch."""
        lines = request.read().splitlines()
        if self.troubles:
            trouble = self.troubles.pop(0)
            if isinstance(trouble, httpx.Response):
                return trouble
            message = "scripted"
            raise trouble(message, request=request)
        self.asked.append([json.loads(line) for line in lines])
        answers = [answer_to(index, line) for index, line in enumerate(lines)]
        good = sum(one["kind"] == "result" for one in answers)
        end = {"kind": "end", "results": good, "problems": len(answers) - good, "complete": True}
        answers.append({**end, "verdicts": {"undecided": good} if good else {}})
        text = "".join(json.dumps(one, separators=(",", ":")) + "\n" for one in answers)
        return httpx.Response(200, text=text, headers={"Content-Type": "application/jsonl"})

    def write(self, name, *rows, encoding="utf-8"):
        """Write a file of rows."""
        (self.folder / name).write_bytes("".join(f"{row}\n" for row in rows).encode(encoding))

    def read(self, name):
        """Read a file's text."""
        return (self.folder / name).read_text(encoding="utf-8")

    def run(self, *arguments, source="boards.csv", output="out.jsonl", environment=None):
        """Run the command; returns its exit status."""
        terminal = io.StringIO()
        try:
            return main(
                ["identify", str(self.folder / source), "-o", str(self.folder / output), *arguments],
                transport=httpx.MockTransport(self.handle),
                terminal=terminal,
                environment=environment or {},
            )
        finally:
            self.said = terminal.getvalue()

    @property
    def questions(self):
        """All questions that were asked, in the order in which they arrived."""
        return [question for batch in self.asked for question in batch]

    @property
    def files(self):
        """Names of the files in the folder."""
        return {path.name for path in self.folder.iterdir()}
