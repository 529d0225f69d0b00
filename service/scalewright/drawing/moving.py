"""Moving: items of one drawing put into another."""

from scalewright.drawing.page import Circle, Item, Line, Path, Strokes, Text

__all__ = ["moved"]


def moved(item: Item, dx: float, dy: float, factor: float = 1.0) -> Item:
    """An item made larger by a factor, and then moved. [mm]"""
    match item:
        case Line(x1, y1, x2, y2, name):
            return Line(dx + factor * x1, dy + factor * y1, dx + factor * x2, dy + factor * y2, name)
        case Strokes(lines, name):
            moved = [(dx + factor * a, dy + factor * b, dx + factor * c, dy + factor * d) for a, b, c, d in lines]
            return Strokes(moved, name)
        case Path(points, name, closed):
            return Path([(dx + factor * x, dy + factor * y) for x, y in points], name, closed)
        case Circle(x, y, radius, name):
            return Circle(dx + factor * x, dy + factor * y, factor * radius, name)
        case Text():
            return item._replace(x=dx + factor * item.x, y=dy + factor * item.y, size=factor * item.size)
