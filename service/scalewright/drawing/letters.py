"""Letters: how much room a text takes, and how it is broken into lines; on the safe side for any plain font."""

import bisect
import itertools
import re
import unicodedata
from functools import lru_cache

from scalewright.drawing.fonts import width_of

__all__ = ["FONT_FAMILY", "clip_text", "text_width", "wrap"]

FONT_FAMILY = "'Open Sans','DejaVu Sans',Verdana,Arial,sans-serif"
"""Fonts of an SVG, the favourite first."""

_NARROW = frozenset("iljI.,:;|!'`()[]{} tfr-/\N{NO-BREAK SPACE}")
_WIDE = frozenset("mwMW@%&")
_OF_ANY = 0.78
"""Width of a letter beyond ASCII at the least."""
_OTHER_FONTS = 1.1
"""How much wider than in our font a letter may be in another one."""
_SPACES = r"[ \t\n\r\u1680\u2000-\u2006\u2008-\u200a\u205f\u3000]+"
_BETWEEN_WORDS = re.compile(rf"(?<!\d){_SPACES}|{_SPACES}(?!(?:mm|in)\b)")
"""White space at which a line may be broken: not the no-break spaces U+00A0, U+2007 and U+202F, and not between a
number and its unit."""


class _Shares(dict[str, float]):
    """Width of every letter as a share of its size, reckoned when it is first met."""

    def __missing__(self, letter: str) -> float:
        if len(self) > _MOST_KNOWN:
            self.clear()
        share = self[letter] = _share(letter)
        return share


def _share(letter: str) -> float:
    """Width of a letter by its kind, as a share of its size."""
    if letter in _NARROW:
        return 0.42
    if letter in _WIDE:
        return 1.0
    if letter.isdigit() and letter.isascii():
        return 0.64
    if letter.isascii():
        return 0.78 if letter.isupper() else 0.63
    # A letter that our font lacks is printed as the sign for one that is missing, and elsewhere by another font.
    return max(_OF_ANY, _OTHER_FONTS * width_of(letter))


_MOST_KNOWN = 5000
_SHARES = _Shares()


def text_width(text: str, size: float) -> float:
    """Room that a text takes at most in the widest of the fonts that are asked for. [mm]

    Parameters
    ----------
    text : str
        One line.
    size : float
        Size of the letters, from one line to the next at the least. [mm]

    Returns
    -------
    float
        Its width.

    Notes
    -----
    By kinds of letters: no font is at hand when an SVG is written, and none is known for where it is shown.
    """
    return sum(map(_SHARES.__getitem__, text)) * size


@lru_cache(maxsize=64)
def _words(text: str, size: float) -> list[tuple[str, float]]:
    """Words of a text and their widths; most texts come again, in another room. [mm]"""
    return [(word, text_width(word, size)) for word in _BETWEEN_WORDS.split(text) if word]


@lru_cache(maxsize=512)
def wrap(text: str, size: float, width: float) -> tuple[str, ...]:
    """Lines of a text, broken between words, and within a word that is longer than a line.

    Parameters
    ----------
    text : str
        Any text.
    size, width : float
        Size of the letters and room for a line. [mm]

    Returns
    -------
    tuple of str
        Lines, none wider than there is room.
    """
    lines: list[str] = []
    line, taken = "", 0.0
    space = text_width(" ", size)
    for word, word_width in _words(text, size):
        rest, needed = word, word_width
        reach = taken + space + needed
        if line and reach <= width:
            line += f" {rest}"
            taken = reach
            continue
        if line:
            lines.append(line)
        while needed > width and len(rest) > 1:
            head = clip_text(rest, size, width, "")
            lines.append(head)
            rest = rest[len(head) :]
            needed = text_width(rest, size)
        line, taken = rest, needed
    return (*lines, line) if line else tuple(lines)


def clip_text(text: str, size: float, width: float, mark: str = "…") -> str:
    """Text cut short where it is wider than there is room, with a mark that says so; at least one letter stays."""
    if text_width(text, size) <= width:
        return text
    room = width / size - text_width(mark, 1.0)
    reaches = list(itertools.accumulate(map(_SHARES.__getitem__, text)))
    kept = max(1, bisect.bisect_right(reaches, room))
    while kept > 1 and text_width(text[:kept] + mark, size) > width:  # by a hair's breadth of rounding
        kept -= 1
    # A letter is not parted from the accents that are set upon it.
    while kept > 1 and unicodedata.combining(text[kept]):
        kept -= 1
    return text[:kept] + mark
