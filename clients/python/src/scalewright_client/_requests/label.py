"""Labels to be printed."""

from typing import Literal, Required, TypeAlias, TypedDict

from scalewright_client._requests.parts import Part
from scalewright_client._requests.quantities import Length, Unit

__all__ = ["LabelMedia", "LabelQuestion", "LabelSize", "LabelSizeLike", "LabelSizeName"]

LabelMedia: TypeAlias = Literal["image/svg+xml", "application/pdf", "image/png"]
"""Media types of a printed label."""

LabelSizeName: TypeAlias = Literal[
    "40x20mm",
    "50x25mm",
    "57x32mm",
    "62x29mm",
    "70x36mm",
    "100x50mm",
    "2x1in",
    "2.25x1.25in",
    "4x2in",
]
"""Common sizes of labels, width first."""


class LabelSize(TypedDict):
    """A label of a size of its own."""

    width: Length
    """Its width. [unit, or its own]"""
    height: Length
    """Its height. [unit, or its own]"""


LabelSizeLike: TypeAlias = LabelSizeName | LabelSize
"""Size of a label: a common one by its name, or its measures."""


class LabelQuestion(TypedDict, total=False):
    """The keywords of ``label``, for ``label_drawing``."""

    unit: Unit
    part: Required[Part]
    size: LabelSizeLike
    dpi: int
    title: str
    date: str
    url: str
