"""Lengths as people write them: numbers, decimal commas, shop fractions and units, read exactly."""

import re
from typing import Final, NamedTuple

from scalewright.lutherie.errors import UnreadableLengthError

__all__ = [
    "LONGEST_TEXT",
    "MOST_PLAUSIBLE",
    "UNITS",
    "WrittenNumber",
    "read_length",
    "read_number",
    "read_written",
    "shop_fraction",
]

LONGEST_TEXT: Final = 32
"""The most characters that a length may have."""

MOST_PLAUSIBLE: Final = 10_000.0
"""The longest length that the service believes. [mm]"""

_INCH: Final = (127, 5)
UNITS: Final[dict[str, tuple[int, int]]] = {
    "mm": (1, 1),
    "cm": (10, 1),
    "m": (1000, 1),
    **dict.fromkeys(("in", "in.", "inch", "inches", '"', "\N{DOUBLE PRIME}", "\N{PRIME}\N{PRIME}", "''"), _INCH),
    "\N{RIGHT DOUBLE QUOTATION MARK}": _INCH,
}
"""Millimetres per unit, as numerator and denominator; an inch is 25.4 mm exactly."""

_VULGAR: Final = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅕": (1, 5), "⅖": (2, 5), "⅗": (3, 5),
    "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6), "⅐": (1, 7), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8),
    "⅑": (1, 9), "⅒": (1, 10),
}  # fmt: skip
_VULGAR_CLASS: Final = "".join(_VULGAR)
# The plain one stands last, where a class of characters takes it as it is.
_DASHES: Final = "\N{NON-BREAKING HYPHEN}\N{MINUS SIGN}-"

# Each alternative is bounded and starts where no other can, so that the match takes linear time.
_NUMBER: Final = re.compile(
    rf"""
    [ ]?
    (?P<sign>[+{_DASHES}]?)
    (?:
        (?P<numerator>[0-9]{{1,4}}) [/\N{{FRACTION SLASH}}] (?P<denominator>[0-9]{{1,4}})
      | (?P<vulgar>[{_VULGAR_CLASS}])
      | (?P<whole>[0-9]{{1,15}})
        (?:
            (?:[ ]|[ ]?[{_DASHES}][ ]?) (?P<over>[0-9]{{1,4}}) [/\N{{FRACTION SLASH}}] (?P<under>[0-9]{{1,4}})
          | [ {_DASHES}]? (?P<part>[{_VULGAR_CLASS}])
          | (?P<point>[.,]) (?P<decimals>[0-9]{{0,18}})
        )?
      | [.,] (?P<only_decimals>[0-9]{{1,18}})
    )
    """,
    re.ASCII | re.VERBOSE,
)
_DECIMAL: Final = re.compile(r"[+-]?[0-9]{1,15}(?:\.[0-9]{0,18})?|[+-]?\.[0-9]{1,18}", re.ASCII)
_EXAMPLES: Final = '"628.65 mm" or "24 9/16 in"'


def read_length(text: str, bare_unit: str | None = None) -> float:
    """Read a length as a person writes it.

    Parameters
    ----------
    text : str
        Such as ``24 9/16 in``, ``24-9/16"``, ``24⅝ in``, ``0.010 inch``, ``628.65 mm``, ``62,9 cm``.
    bare_unit : str, optional
        The unit of a number that names none; without it such a number is refused.

    Returns
    -------
    float
        The length, correctly rounded. [mm]

    Raises
    ------
    UnreadableLengthError
        A text that is no length; carries ``position``, the character counted from 1 where reading stopped.

    Notes
    -----
    The work is bounded by :data:`LONGEST_TEXT` and linear. No general number reader sees the text: those
    of the standard library accept ``1e100000000`` and then work on it for hours.
    """
    if len(text) > LONGEST_TEXT:
        raise _refusal(f"a length has at most {LONGEST_TEXT} characters; write it as {_EXAMPLES}", LONGEST_TEXT + 1)
    match = _NUMBER.match(text)
    if match is None:
        raise _no_number(text)
    numerator, denominator = _exact(match)
    rest = text[match.end() :]
    name = rest.strip(" ").lower()
    if not name and bare_unit is not None:
        name = bare_unit
    unit = UNITS.get(name)
    if unit is None:
        raise _no_unit(text, match.end(), name)
    over, under = unit
    if denominator == 0:
        raise _refusal(f'a fraction cannot be over 0; write it as "{_fraction_example(name)}"', match.end())
    if match["point"] == "," and _may_be_thousands(match, over / under):
        message = (
            "a comma followed by three digits can mean thousands or decimals; "
            'use a decimal point or no comma, as in "1.234 mm" or "1234 mm"'
        )
        raise _refusal(message, match.start("point") + 1)
    return (numerator * over) / (denominator * under)


class WrittenNumber(NamedTuple):
    """A number as it is written, with the unit behind it."""

    value: float
    """The number."""
    grain: float
    """The smallest step that numbers written like this one have: 0.1 for 25.4, 0.25 for 24 3/4."""
    millimetres: float | None
    """Millimetres in the unit; None where none is named."""


def read_written(text: str) -> WrittenNumber:
    """Read how a number is written, for labels: they are names, and their digits say how they were rounded.

    Parameters
    ----------
    text : str
        As for :func:`read_length`; the unit may be left out.

    Returns
    -------
    WrittenNumber
        Number, step and unit.

    Raises
    ------
    UnreadableLengthError
        A text that is no length.
    """
    read_length(text, "mm")
    match = _NUMBER.match(text)
    assert match is not None  # noqa: S101  (read_length has refused it)
    numerator, denominator = _exact(match)
    name = text[match.end() :].strip(" ").lower()
    unit = UNITS[name] if name else None
    return WrittenNumber(numerator / denominator, 1.0 / denominator, None if unit is None else unit[0] / unit[1])


def read_number(text: str) -> float:
    """Read a plain decimal number, bounded as :func:`read_length` is.

    Raises
    ------
    UnreadableLengthError
        A text that is no plain decimal number.
    """
    if len(text) > LONGEST_TEXT or _DECIMAL.fullmatch(text) is None:
        raise _refusal('this is not a plain number; write it with digits and a decimal point, as in "17.817"', 1)
    return float(text)


def shop_fraction(inches: float, denominator: int) -> tuple[str, float]:
    """Nearest mark of an inch rule.

    Parameters
    ----------
    inches : float
        The exact length. [in]
    denominator : int
        The finest graduation, a power of two.

    Returns
    -------
    text : str
        Such as ``1 3/8 in``, in lowest terms.
    value : float
        The length that the text names, exactly. [in]
    """
    parts = round(inches * denominator)
    whole, rest = divmod(abs(parts), denominator)
    while rest and rest % 2 == 0:
        rest, denominator = rest // 2, denominator // 2
    words = [str(whole)] if whole or not rest else []
    if rest:
        words.append(f"{rest}/{denominator}")
    sign = "-" if parts < 0 else ""
    return f"{sign}{' '.join(words)} in", (whole + rest / denominator) * (-1.0 if parts < 0 else 1.0)


def _exact(match: re.Match[str]) -> tuple[int, int]:
    """Numerator and denominator of the number that was matched."""
    part = match["vulgar"] or match["part"]
    if part:
        over, under = _VULGAR[part]
    elif match["denominator"]:
        over, under = int(match["numerator"]), int(match["denominator"])
    elif match["under"]:
        over, under = int(match["over"]), int(match["under"])
    else:
        decimals = match["decimals"] or match["only_decimals"] or ""
        over, under = int(decimals or "0"), 10 ** len(decimals)
    numerator = int(match["whole"] or "0") * under + over
    negative = match["sign"] not in {"", "+"}
    return (-numerator if negative else numerator), under


def _may_be_thousands(match: re.Match[str], mm_per_unit: float) -> bool:
    """Whether a decimal comma may be meant as a separator of thousands: 1,234 but not 0,250 or 62,9."""
    whole, decimals = match["whole"], match["decimals"]
    if len(decimals) != 3 or whole.startswith("0"):  # thousands come in groups of three
        return False
    return int(whole + decimals) * mm_per_unit <= MOST_PLAUSIBLE


def _fraction_example(name: str) -> str:
    """Return a mixed number in the unit that was meant."""
    return f"12 3/4 {name if name.isalpha() else 'in'}"


def _no_number(text: str) -> UnreadableLengthError:
    """Tell what stands where a number should."""
    position = len(text) - len(text.lstrip(" ")) + 1
    if not text.strip(" "):
        return _refusal(f"the text is empty; write a number and its unit, as in {_EXAMPLES}", 1)
    return _refusal(f"no number stands at character {position}; start with one, as in {_EXAMPLES}", position)


def _no_unit(text: str, end: int, name: str) -> UnreadableLengthError:
    """Tell what stands where a unit should."""
    position = min(end + len(text[end:]) - len(text[end:].lstrip(" ")) + 1, len(text) + 1)
    known = "mm, cm, m, in"
    if not name:
        return _refusal(f"the unit is missing; add mm, cm, m or in, as in {_EXAMPLES}", position)
    if name[0] in ".,":
        return _refusal(f'character {position} is a second decimal sign; write one, as in "25.4 in"', position)
    if name[0] in "/\N{FRACTION SLASH}" or name[0].isdecimal() or name[0] in _DASHES:
        message = f'the number cannot be read past character {position}; write it as "24.5625 in" or "24 9/16 in"'
        return _refusal(message, position)
    if name in {"'", "\N{PRIME}", "ft", "foot", "feet"}:
        return _refusal(f"feet are not used here; write inches or millimetres, as in {_EXAMPLES}", position)
    return _refusal(f"at character {position} a unit was expected: one of {known}, as in {_EXAMPLES}", position)


def _refusal(message: str, position: int) -> UnreadableLengthError:
    return UnreadableLengthError(message, position=position)
