"""Phrases: counts, lists and numbers as a sentence has them: "1 fret", "frets 3 and 7", never "2e+04"."""

from collections.abc import Sequence
from decimal import Decimal

__all__ = ["counted", "given", "listed", "numbered", "plain", "times"]


_COUNTS = ("three", "four", "five", "six", "seven", "eight", "nine")
_TIMES = ("once", "twice", *(f"{count} times" for count in _COUNTS))


def counted(number: int, word: str, plural: str | None = None) -> str:
    """A number of things.

    Parameters
    ----------
    number : int
        How many.
    word : str
        What one of them is called.
    plural : str, optional
        What several are called, where that is not the word with an s.

    Returns
    -------
    str
        Such as ``1 fret`` or ``3 frets``.
    """
    return f"{number} {word}" if number == 1 else f"{number} {plural or f'{word}s'}"


def given(number: int) -> str:
    """How many there were in a question: ``1 was given``, ``3 were given``, ``none was given``."""
    return f"{number or 'none'} {'was' if number < 2 else 'were'} given"


def listed(names: Sequence[object]) -> str:
    """Names in one breath: ``3``, ``3 and 7``, ``3, 7 and 12``."""
    *before, last = map(str, names)
    return f"{', '.join(before)} and {last}" if before else last


def numbered(word: str, numbers: Sequence[int]) -> str:
    """Things by their numbers: ``fret 3``, ``frets 3 and 7``."""
    return f"{word}{'' if len(numbers) == 1 else 's'} {listed(numbers)}"


def plain(number: float, digits: int = 6) -> str:
    """A number to so many significant digits, without an exponent and without zeros that say nothing.

    Parameters
    ----------
    number : float
        Any finite one.
    digits : int
        How many digits count.

    Returns
    -------
    str
        Such as ``20240``, ``17.835`` or ``0.00002``.
    """
    return f"{Decimal(f'{number:.{digits}g}'):f}"


def times(number: int) -> str:
    """How often: ``once``, ``twice``, ``three times``, and in digits from ten on."""
    return _TIMES[number - 1] if number <= len(_TIMES) else f"{number} times"
