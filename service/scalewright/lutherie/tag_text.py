"""Tag texts: a tag as one line of ASCII that a QR code carries and a phone's scanner hands on.

A text of version 1 looks like this::

    TRUESCALE/1;id=BD-17;kind=board;true=624.079mm;u=0.05mm;rule=eighteenth;layout=628.65mm;crc=0F2E

- Fields are parted by semicolons, a name from its value by the first equals sign, and no value has either.
- ``id``, ``kind`` (board, neck_blank, bridge, saddle_template) and ``true``, the true scale, are always there.
- ``u`` is the standard uncertainty (k = 1) of the true scale; left out, it was taken at its word.
- ``rule`` is ``eighteenth``, ``equal:12``, ``divisor:17.835``, ``listed:100,200,300`` in cents, or
  ``listed-repeat:`` where the pitches start again by octaves; ``layout`` is the layout scale. Both are left out
  where they are not established.
- A length has its unit behind it: mm with up to three decimals, or in with up to five. Divisors and cents have all
  the digits that a double needs.
- ``crc`` comes last: four hexadecimal digits of CRC-16 with the polynomial 1021 and the start FFFF (ITU-T V.41's
  polynomial) over all that stands before ``;crc=``.

A later version begins with another number, and is refused rather than misread.
"""

import binascii
import math
import re
from collections.abc import Mapping
from typing import get_args

from scalewright.lutherie.errors import UnreadableTagError
from scalewright.lutherie.part import Kind
from scalewright.lutherie.spacing import EIGHTEENTH, MOST_FRETS, Divisor, Eighteenth, Equal, Listed, Rule
from scalewright.lutherie.tag import Tag, TagUnit

__all__ = ["DECIMALS", "LONGEST_TAG", "read_tag", "tag_length", "write_tag"]

LONGEST_TAG = 2000
"""Characters of a text at most; the largest QR code that mends 15 % holds 2331."""

DECIMALS: Mapping[TagUnit, int] = {"mm": 3, "in": 5}
"""Decimals of a length in each unit: its stated precision."""

_EXAMPLE = "TRUESCALE/1;id=BD-17;kind=board;true=624.079mm;u=0.05mm;rule=eighteenth;layout=628.65mm;crc=0F2E"
_HEAD = "TRUESCALE/"
_VERSION = "1"
_FIELDS = ("id", "kind", "true", "u", "rule", "layout")
_NEEDED = frozenset({"id", "kind", "true"})
_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ._#()+-]{0,59}", re.ASCII)
_LENGTH = re.compile(r"([0-9]{1,5}(?:\.[0-9]{1,5})?)(mm|in)", re.ASCII)
_NUMBER = re.compile(r"[0-9]{1,5}(?:\.[0-9]{1,22})?(?:e-[0-9]{1,3})?", re.ASCII)
_SCANNER = re.compile(r"\][A-Za-z][0-9]")
"""What a scanner may put before a text to say which kind of code it read (ISO/IEC 15424)."""

_LEAST, _MOST = 0.999, 10_000.001
"""Scales that are taken for such: 1 mm to 10 000 mm, rounded. [mm]"""


def tag_length(length: float, unit: TagUnit) -> str:
    """A length [mm] as the text states it, without idle zeros: such as 628.65mm."""
    decimals = DECIMALS[unit]
    number = f"{length if unit == 'mm' else length * 5.0 / 127.0:.{decimals}f}"
    return number.rstrip("0").rstrip(".") + unit


def write_tag(tag: Tag) -> str:
    """Text of a tag.

    Parameters
    ----------
    tag : Tag
        What a label states.

    Returns
    -------
    str
        One line of ASCII; see the head of this module.
    """
    fields = {"id": tag.id, "kind": tag.kind, "true": tag_length(tag.true_scale, tag.written_in)}
    if tag.uncertainty is not None:
        spread = tag_length(tag.uncertainty, tag.written_in)
        if spread[0] != "0" or spread[1] == ".":  # one that rounds to nothing is not stated
            fields["u"] = spread
    if tag.rule is not None:
        fields["rule"] = _rule_text(tag.rule)
    if tag.layout_scale is not None:
        fields["layout"] = tag_length(tag.layout_scale, tag.written_in)
    body = ";".join([_HEAD + _VERSION, *(f"{name}={value}" for name, value in fields.items())])
    return f"{body};crc={_check(body)}"


def read_tag(text: str) -> Tag:
    """Read a text back.

    Parameters
    ----------
    text : str
        As a scanner hands it on: white space around it, and a scanner's own mark before it, are overlooked.

    Returns
    -------
    Tag
        What it states, to the precision that it states.

    Raises
    ------
    UnreadableTagError
        It is no such text, was changed on its way, or is of another version.
    """
    line = text.strip()
    line = line[3:] if _SCANNER.match(line) else line
    body, mark, check = line.rpartition(";crc=")
    if not line.startswith(_HEAD) or len(line) > LONGEST_TAG:
        raise _unreadable(f"this is not the text of a label, which begins with {_HEAD}{_VERSION}")
    version, *members = (body if mark else line).split(";")
    if version != _HEAD + _VERSION:
        raise _unreadable(f"this label's text is of another version than {_VERSION}, the one that is known here")
    if not mark or check.upper() != _check(body):
        raise _unreadable("the text does not agree with its check digits; it was cut off or changed, so scan it again")
    fields: dict[str, str] = {}
    for member in members:
        name, _, value = member.partition("=")
        if name not in _FIELDS or name in fields or not value:
            raise _unreadable("the text has a field that is unknown, empty or there twice")
        fields[name] = value
    if not fields.keys() >= _NEEDED:
        raise _unreadable("the text lacks the id, the kind or the true scale of the part")
    return _tag(fields)


def _tag(fields: Mapping[str, str]) -> Tag:
    """Tag that the fields of a text make."""
    if not _ID.fullmatch(fields["id"]):
        raise _unreadable("the id in the text has letters that no id has")
    kinds: dict[str, Kind] = {kind: kind for kind in get_args(Kind)}
    if fields["kind"] not in kinds:
        raise _unreadable("the text names a kind of part that is not known")
    true_scale, unit = _length(fields["true"])
    layout = _length(fields["layout"])[0] if "layout" in fields else None
    for scale in (true_scale, layout):
        if scale is not None and not _LEAST <= scale <= _MOST:
            raise _unreadable("a scale in the text is shorter than 1 mm or longer than 10 000 mm")
    return Tag(
        id=fields["id"],
        kind=kinds[fields["kind"]],
        true_scale=true_scale,
        uncertainty=_length(fields["u"])[0] if "u" in fields else None,
        rule=_rule(fields["rule"]) if "rule" in fields else None,
        layout_scale=layout,
        written_in=unit,
    )


def _length(text: str) -> tuple[float, TagUnit]:
    """Length [mm] and the unit that it is written in."""
    match = _LENGTH.fullmatch(text)
    if match is None:
        raise _unreadable("a length in the text is not a number with mm or in behind it")
    value = float(match[1])
    return (value, "mm") if match[2] == "mm" else (value * 127.0 / 5.0, "in")


def _rule_text(rule: Rule) -> str:
    match rule:
        case Eighteenth():
            return "eighteenth"
        case Equal(steps):
            return f"equal:{steps}"
        case Divisor(divisor):
            return f"divisor:{_plain(divisor)}"
        case Listed(cents, repeat):
            return f"listed{'-repeat' if repeat else ''}:{','.join(map(_plain, cents))}"


def _plain(number: float) -> str:
    """A number with all the digits that a double needs, and no idle zero."""
    return repr(number).removesuffix(".0")


def _rule(text: str) -> Rule:
    name, _, rest = text.partition(":")
    if text == "eighteenth":
        return EIGHTEENTH
    numbers = rest.split(",")
    if all(_NUMBER.fullmatch(number) for number in numbers):
        values = [float(number) for number in numbers]
        if name == "equal" and len(values) == 1 and rest.isdecimal() and 1 <= int(rest) <= 120:
            return Equal(int(rest))
        if name == "divisor" and len(values) == 1 and 2.0 <= values[0] <= 1000.0:
            return Divisor(values[0])
        ascending = all(low < high for low, high in zip([0.0, *values], [*values, math.inf], strict=True))
        if name in {"listed", "listed-repeat"} and ascending and len(values) <= MOST_FRETS and values[-1] <= 12_000.0:
            repeat = name == "listed-repeat"
            if not repeat or values[-1] < values[0] + 1200.0:
                return Listed(tuple(values), repeat)
    raise _unreadable("the text names a spacing rule that is not known")


def _check(body: str) -> str:
    """Check digits of a text; letters that are not ASCII agree with none."""
    return f"{binascii.crc_hqx(body.encode('ascii', 'replace'), 0xFFFF):04X}" if body.isascii() else ""


def _unreadable(message: str) -> UnreadableTagError:
    return UnreadableTagError(message, field=("text",), example=_EXAMPLE)
