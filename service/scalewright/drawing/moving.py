"""Moving: items of one drawing put into another."""

import itertools

from scalewright.drawing.page import (
    Circle,
    Circles,
    Figure,
    Item,
    Line,
    Lines,
    Many,
    Path,
    Places,
    Shapes,
    Single,
    Stamps,
    Strokes,
    Text,
    Texts,
)

__all__ = ["moved"]


def moved(item: Item, dx: float, dy: float, factor: float = 1.0) -> Item:
    """An item made larger by a factor, and then moved. [mm]"""
    if isinstance(item, Lines | Shapes | Stamps | Texts | Circles):
        return _moved_many(item, dx, dy, factor)
    return _moved_single(item, dx, dy, factor)


def _moved_single(item: Single, dx: float, dy: float, factor: float) -> Single:
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


def _moved_many(many: Many, dx: float, dy: float, factor: float) -> Many:
    def all_moved(places: Places) -> Places:
        return [way + factor * place for way, place in zip(itertools.cycle((dx, dy)), places, strict=False)]

    match many:
        case Lines(ends, names):
            return Lines(all_moved(ends), names)
        case Shapes(corners, names):
            return Shapes(all_moved(corners), names)
        case Stamps(figure, places, name):
            lines = tuple(tuple((factor * x, factor * y) for x, y in line) for line in figure.lines)
            return Stamps(figure if factor == 1.0 else Figure(lines, figure.closed), all_moved(places), name)
        case Circles(middles, radii, names):
            return Circles(all_moved(middles), [factor * radius for radius in radii], names)
        case Texts():
            return many._replace(places=all_moved(many.places), size=factor * many.size)
