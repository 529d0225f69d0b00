"""DXF: a drawing in layers for machines and drawing programs, in millimetres, its zero point on the zero line."""

import io
from collections.abc import Iterable
from typing import TYPE_CHECKING

from scalewright.drawing.page import Circle, Drawing, Item, Line, Path, Strokes, Text, singly
from scalewright.drawing.styles import STYLES, Style

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document
    from ezdxf.layouts.layout import Modelspace

__all__ = ["write_dxf"]

_WIDTHS = (5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100)
"""Line widths that DXF knows, in hundredths of a millimetre."""

_PLACES_OF_LETTERS = {"start": "LEFT", "middle": "CENTER", "end": "RIGHT"}


def write_dxf(drawing: Drawing) -> bytes:
    """Write a drawing.

    Parameters
    ----------
    drawing : Drawing
        What is drawn.

    Returns
    -------
    bytes
        DXF R2010 in UTF-8, the same for the same drawing.
    """
    from ezdxf import units  # noqa: PLC0415  (loaded when first used)
    from ezdxf._options import options  # noqa: PLC0415  (the same)
    from ezdxf.filemanagement import new  # noqa: PLC0415  (the same)

    # No clock and no random id in the file; the option is named after the writer's own tests, which need that too.
    options.write_fixed_meta_data_for_testing = True
    document = new("R2010")
    document.units = units.MM
    document.header["$MEASUREMENT"] = 1
    space = document.modelspace()
    ox, oy = drawing.origin
    for name, items in drawing.layers.items():
        if items:
            style = STYLES[name]
            _add_layer(document, name, style)
            _add(space, name, items, style)
    document.header["$EXTMIN"] = (-ox, -oy, 0.0)
    document.header["$EXTMAX"] = (drawing.width - ox, drawing.height - oy, 0.0)
    document.set_modelspace_vport(
        height=drawing.height * 1.1, center=(0.5 * drawing.width - ox, 0.5 * drawing.height - oy)
    )
    # Else the writer adds them in the order of a set, which is another in every process.
    for kind in sorted(document.entitydb.dxf_types_in_use()):
        document.classes.add_class(kind)
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue().encode("utf-8", "dxfreplace")


def _add_layer(document: "Document", name: str, style: Style) -> None:
    linetype = "Continuous"
    if style.dashes:
        linetype = f"DASHES-{name}".upper()
        pattern = [length if index % 2 == 0 else -length for index, length in enumerate(style.dashes)]
        document.linetypes.add(linetype, pattern=[sum(style.dashes), *pattern])
    width = min(_WIDTHS, key=lambda known: abs(known - 100.0 * style.width))
    document.layers.add(name.upper(), color=style.dxf_colour, linetype=linetype, lineweight=width)


def _add(space: "Modelspace", name: str, items: Iterable[Item], style: Style) -> None:
    """Add the items of a layer."""
    on_layer = {"layer": name.upper()}
    for item in singly(items):
        match item:
            case Line(x1, y1, x2, y2):
                space.add_line((x1, y1), (x2, y2), on_layer)
            case Strokes(lines):
                for x1, y1, x2, y2 in lines:
                    space.add_line((x1, y1), (x2, y2), on_layer)
            case Path(points, closed=closed):
                corners = list(points)
                if style.filled and len(corners) == 4:
                    # A solid's last two corners are the other way round.
                    space.add_solid([corners[0], corners[1], corners[3], corners[2]], on_layer)
                else:
                    space.add_lwpolyline(corners, close=closed, dxfattribs=on_layer)
            case Circle(x, y, radius):
                space.add_circle((x, y), radius, on_layer)
            case Text(x, y, text, size, anchor, turn):
                if text:
                    _add_text(space, (x, y), _plain(text), 0.72 * size, anchor, turn, on_layer)


def _add_text(
    space: "Modelspace",
    place: tuple[float, float],
    text: str,
    height: float,
    anchor: str,
    turn: float,
    on_layer: dict[str, str],
) -> None:
    from ezdxf.enums import TextEntityAlignment  # noqa: PLC0415  (loaded when first used)

    entity = space.add_text(text, height=height, rotation=turn, dxfattribs=on_layer)
    entity.set_placement(place, align=TextEntityAlignment[_PLACES_OF_LETTERS[anchor]])


def _plain(text: str) -> str:
    """Text whose characters a reader takes for nothing but themselves."""
    # "%%" and "^" begin codes, and "\U+" one as well; a backslash has no spelling of its own.
    return text.replace("\\", "\N{SET MINUS}").replace("^", "^ ").replace("%%", "% %")
