"""Check bars: 100 mm and 4 in, to be held against a rule before anybody trusts a printed sheet (ISO 5457, 4.5)."""

from scalewright.drawing.page import Drawing, Path, Strokes, Text

__all__ = ["BARS_HEIGHT", "BARS_WIDTH", "draw_check_bars"]

BARS_WIDTH = 101.6
"""Length of the longer bar. [mm]"""

BARS_HEIGHT = 13.0
"""What both take with their letters. [mm]"""

_LETTERS = 2.2


def draw_check_bars(drawing: Drawing, x: float, y: float) -> None:
    """Draw both bars with their lower left corner at a place.

    Parameters
    ----------
    drawing : Drawing
        To draw on.
    x, y : float
        The place. [mm]
    """
    lines, fills, letters = drawing.layer("bars"), drawing.layer("bar-fills"), drawing.layer("text")
    for length, parts, unit, low in ((100.0, 10, "100 mm", y + 6.8), (101.6, 4, "4 in", y)):
        step = length / parts
        lines.append(Path(((x, low), (x + length, low), (x + length, low + 2.0), (x, low + 2.0)), _name(unit)))
        for part in range(0, parts, 2):
            left, right = x + part * step, x + (part + 1) * step
            fills.append(Path(((left, low), (right, low), (right, low + 1.0), (left, low + 1.0))))
        lines.append(Strokes([(x + part * step, low, x + part * step, low + 2.0) for part in range(1, parts)]))
        letters.append(Text(x, low + 2.8, f"{unit}: print at 100 %, then check this bar with a steel rule", _LETTERS))


def _name(unit: str) -> str:
    return f"bar-{unit.replace(' ', '-')}"
