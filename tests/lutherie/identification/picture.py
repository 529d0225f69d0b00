"""Draws what can be told apart, for the README: ``python -m tests.lutherie.identification.picture``.

The numbers are the service's own: the best sets of frets of a measuring card, boards of 630 mm with 19 frets by a
tool that scatters 0.05 mm.
"""

from pathlib import Path
from xml.etree import ElementTree as ET

from scalewright.lutherie.identification.measuring_card import measuring_card
from scalewright.lutherie.measure import Instrument

FILE = Path(__file__).resolve().parents[3] / "openapi_examples" / "identification" / "what-can-be-told.svg"
INSTRUMENTS = (
    ("calipers, 0.02 mm", 0.02),
    ("calipers, 0.05 mm", 0.05),
    ("steel rule, 0.1 mm", 0.1),
    ("half-millimetre rule", 0.144),
    ("tape, 0.5 mm", 0.5),
)
COUNTS = (2, 3, 4, 6, 8, 12, 19)
LEFT, TOP, WIDE, HIGH = 150, 58, 54, 30


def chances(uncertainty: float) -> dict[int, float]:
    """Probability that the rule is established, by number of frets read."""
    card = measuring_card(Instrument(uncertainty), 630.0, 19, tooling_scatter=0.05, probability=0.99999)
    return {step.readings: step.probability for step in card.steps}


def draw() -> str:
    """The picture as SVG."""
    width, height = LEFT + WIDE * len(COUNTS) + 10, TOP + HIGH * len(INSTRUMENTS) + 34
    svg = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "width": str(width),
            "height": str(height),
            "viewBox": f"0 0 {width} {height}",
            "font-family": "sans-serif",
            "font-size": "12",
            "role": "img",
        },
    )
    ET.SubElement(svg, "title").text = "How surely equal spacing and the rule of 18 are told apart"
    ET.SubElement(svg, "rect", width=str(width), height=str(height), fill="#ffffff")

    def write(x: float, y: float, text: str, **style: str) -> None:
        ET.SubElement(svg, "text", {"x": f"{x:g}", "y": f"{y:g}", "fill": "#1c2430"} | style).text = text

    write(10, 20, "Boards out of 100 whose own rule is established", **{"font-weight": "bold"})
    write(LEFT + WIDE * len(COUNTS) / 2, 40, "frets read, the best ones", **{"text-anchor": "middle"})
    for column, count in enumerate(COUNTS):
        write(LEFT + WIDE * (column + 0.5), 54, str(count), **{"text-anchor": "middle"})
    for row, (name, uncertainty) in enumerate(INSTRUMENTS):
        y = TOP + HIGH * row
        write(LEFT - 8, y + 20, name, **{"text-anchor": "end"})
        found = chances(uncertainty)
        for column, count in enumerate(COUNTS):
            chance = found[count]
            # Dark where it can be told, white where it cannot; the number says the same without the shade.
            shade = round(255 - 175 * chance)
            cell = {"x": str(LEFT + WIDE * column), "y": str(y), "width": str(WIDE), "height": str(HIGH)}
            ET.SubElement(svg, "rect", cell | {"fill": f"rgb({shade},{shade + 4},{shade + 10})", "stroke": "#1c2430"})
            ink = "#ffffff" if chance > 0.7 else "#1c2430"
            middle = LEFT + WIDE * (column + 0.5)
            write(middle, y + 20, f"{100 * chance:.0f}", **{"text-anchor": "middle", "fill": ink})
    write(
        10, height - 12, "630 mm, 19 frets, tool scatter 0.05 mm; standard uncertainties (k = 1)", **{"font-size": "11"}
    )
    ET.indent(svg)
    return ET.tostring(svg, encoding="unicode") + "\n"


if __name__ == "__main__":
    FILE.write_text(draw(), encoding="utf-8")
