"""Draws what the rule of 18 does to pitch, for the README: ``python -m tests.lutherie.compensation.picture``.

The numbers are the service's own: a nylon first string (Anderson and Beausoleil 2024) on a board that was laid out
from 650 mm by the rule of 18, with 19 frets, the nut where it is.
"""

from pathlib import Path
from xml.etree import ElementTree as ET

from scalewright.lutherie.compensation import BridgeWork, compensate
from scalewright.lutherie.intonation import Setbacks, intonate
from scalewright.lutherie.spacing import EIGHTEENTH
from tests.lutherie.compensation.boards import NYLON, setup

FILE = Path(__file__).resolve().parents[3] / "openapi_examples" / "intonation" / "what-the-rule-of-18-does.svg"
FRETS = 19
LEFT, TOP, RIGHT, BOTTOM = 52, 40, 640, 300
LOWEST, HIGHEST = -3.0, 5.0
INK, PALE, DARK, MIDDLE = "#1c2430", "#c9cfd6", "#12395b", "#a4551e"


def curves() -> dict[str, list[float]]:
    """Cents at every fret: three boards or saddles, by the words that stand beside each curve."""
    board = setup(rule=EIGHTEENTH, frets=FRETS, strings=NYLON[:1])
    answer = compensate(board, work=BridgeWork(reslotted=True))
    assert answer.reslotted is not None
    (string,), (equal,) = answer.strings, answer.reslotted.strings
    unchanged = intonate(board, [Setbacks(equal.saddle_setback)])
    return {
        "rule of 18, saddle as for equal steps": [note.cents for note in unchanged.strings[0].cents],
        "rule of 18, its best saddle": [note.compensated for note in string.cents],
        "equal steps, its best saddle": [note.equal for note in equal.cents],
    }


def draw() -> str:
    """The picture as SVG."""
    svg = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "width": "660",
            "height": "370",
            "viewBox": "0 0 660 370",
            "font-family": "sans-serif",
            "font-size": "12",
            "role": "img",
        },
    )
    ET.SubElement(svg, "title").text = "What the rule of 18 does to pitch, fret by fret"
    ET.SubElement(svg, "rect", width="660", height="370", fill="#ffffff")

    def across(fret: float) -> float:
        return LEFT + (RIGHT - LEFT) * (fret - 0.5) / FRETS

    def up(cents: float) -> float:
        return BOTTOM - (BOTTOM - TOP) * (cents - LOWEST) / (HIGHEST - LOWEST)

    def write(x: float, y: float, text: str, **style: str) -> None:
        ET.SubElement(svg, "text", {"x": f"{x:.1f}", "y": f"{y:.1f}", "fill": INK} | style).text = text

    def line(x1: float, y1: float, x2: float, y2: float, **style: str) -> None:
        ends = {"x1": f"{x1:.1f}", "y1": f"{y1:.1f}", "x2": f"{x2:.1f}", "y2": f"{y2:.1f}"}
        ET.SubElement(svg, "line", ends | style)

    write(10, 20, "Cents by which every fretted note is sharp, the open string in tune", **{"font-weight": "bold"})
    for cents in range(int(LOWEST), int(HIGHEST) + 1):
        line(LEFT, up(cents), RIGHT, up(cents), stroke=INK if cents == 0 else PALE)
        write(LEFT - 8, up(cents) + 4, f"{cents:+d}" if cents else "0", **{"text-anchor": "end"})
    for fret in range(1, FRETS + 1):
        write(across(fret), BOTTOM + 18, str(fret), **{"text-anchor": "middle"})
    write((LEFT + RIGHT) / 2, BOTTOM + 38, "fret", **{"text-anchor": "middle"})

    legend = {"x": str(LEFT + 144), "y": str(TOP + 4), "width": "290", "height": "64", "fill": "#ffffff"}
    ET.SubElement(svg, "rect", legend)
    styles = ((MIDDLE, "6 4", "square"), (DARK, "", "dot"), (INK, "2 3", "ring"))
    for row, ((name, heard), (colour, dash, mark)) in enumerate(zip(curves().items(), styles, strict=True)):
        points = [(across(fret), up(value)) for fret, value in enumerate(heard, 1)]
        path = {"points": " ".join(f"{x:.1f},{y:.1f}" for x, y in points), "fill": "none", "stroke": colour}
        ET.SubElement(svg, "polyline", path | {"stroke-width": "1.8"} | ({"stroke-dasharray": dash} if dash else {}))
        y = TOP + 16 + 20 * row
        line(
            LEFT + 150,
            y,
            LEFT + 190,
            y,
            **{"stroke": colour, "stroke-width": "1.8", "stroke-dasharray": dash or "none"},
        )
        for x, height in [*points, (LEFT + 170.0, float(y))]:
            _mark(svg, x, height, colour, mark)
        write(LEFT + 198, y + 4, name)
    write(10, 360, "650 mm laid out by the rule of 18, nylon E4, nut fixed, frets 1 to 19 alike", **{"font-size": "11"})
    ET.indent(svg)
    return ET.tostring(svg, encoding="unicode") + "\n"


def _mark(svg: ET.Element, x: float, y: float, colour: str, mark: str) -> None:
    """Set a mark that tells the curves apart without their colours."""
    if mark == "square":
        place = {"x": f"{x - 3.5:.1f}", "y": f"{y - 3.5:.1f}", "width": "7", "height": "7"}
        ET.SubElement(svg, "rect", place | {"fill": "#ffffff", "stroke": colour, "stroke-width": "1.5"})
        return
    fill = colour if mark == "dot" else "#ffffff"
    place = {"cx": f"{x:.1f}", "cy": f"{y:.1f}", "r": "3.5"}
    ET.SubElement(svg, "circle", place | {"fill": fill, "stroke": colour, "stroke-width": "1.5"})


if __name__ == "__main__":
    FILE.write_text(draw(), encoding="utf-8")
