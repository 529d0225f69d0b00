"""Fonts: the letters of printed sheets and pictures, on every machine the same (Open Sans, SIL OFL 1.1)."""

from collections.abc import Mapping
from functools import cache
from importlib import resources
from types import MappingProxyType

__all__ = ["UNKNOWN", "font_file", "width_of", "with_known_letters"]

UNKNOWN = "\N{REPLACEMENT CHARACTER}"
"""What stands for a letter that the font lacks, so that a reader sees that one is missing."""

_JOINERS = "\N{ZERO WIDTH NON-JOINER}\N{ZERO WIDTH JOINER}"


@cache
def font_file() -> str:
    """File of the font: Latin, Greek, Cyrillic and Hebrew letters.

    Returns
    -------
    str
        Its path, in the package that carries it.
    """
    files = resources.files("fontpkg_open_sans") / "files"
    (upright,) = (file for file in files.iterdir() if "Italic" not in file.name and file.name.endswith(".ttf"))
    return str(upright)


@cache
def _widths() -> Mapping[str, float]:
    """Letters that the font has, and their widths as shares of their size."""
    from fontTools.ttLib import TTFont  # noqa: PLC0415  (loaded when first used)

    with TTFont(font_file(), lazy=True) as font:
        advances, unit = font["hmtx"].metrics, font["head"].unitsPerEm
        widths = {chr(code): advances[name][0] / unit for code, name in font.getBestCmap().items()}
    return MappingProxyType({**widths, "\n": 0.0})


def with_known_letters(text: str) -> str:
    """Text whose letters the font all has; :data:`UNKNOWN` stands for those that it lacks, nothing for joiners."""
    if text.isascii():
        return text
    known = _widths()
    return "".join(letter if letter in known else "" if letter in _JOINERS else UNKNOWN for letter in text)


def width_of(letter: str) -> float:
    """Width of a letter as it is drawn, as a share of its size: of :data:`UNKNOWN` where the font lacks it."""
    return 0.0 if letter in _JOINERS else _widths().get(letter, _widths()[UNKNOWN])
