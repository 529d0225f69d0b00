"""Fonts: the letters of printed sheets and pictures, on every machine the same (Open Sans, SIL OFL 1.1)."""

from functools import cache
from importlib import resources

__all__ = ["UNKNOWN", "font_file", "with_known_letters"]

UNKNOWN = "\N{REPLACEMENT CHARACTER}"
"""What stands for a letter that the font lacks, so that a reader sees that one is missing."""


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
def _known_letters() -> frozenset[str]:
    """Letters that the font has."""
    from fontTools.ttLib import TTFont  # noqa: PLC0415  (loaded when first used)

    with TTFont(font_file(), lazy=True) as font:
        return frozenset(map(chr, font.getBestCmap())) | {"\n"}


def with_known_letters(text: str) -> str:
    """Text whose letters the font all has; :data:`UNKNOWN` stands for those that it lacks."""
    if text.isascii():
        return text
    known = _known_letters()
    return "".join(letter if letter in known else UNKNOWN for letter in text)
