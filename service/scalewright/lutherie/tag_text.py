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
- A text of version 2 is that of a fan board, which has a scale for each side and one rule: ``true`` and ``layout`` are
  those along the lowest string, ``treble``, always there, and ``treble-layout`` those along the highest; ``square`` is
  the fret that is square to the centre line, 0 for the nut, where that is stated. All others are of version 1.
- ``crc`` comes last: four hexadecimal digits of CRC-16 with the polynomial 1021 and the start FFFF (ITU-T V.41's
  polynomial) over all that stands before ``;crc=``.

A later version begins with another number, and is refused rather than misread.
"""

import binascii
import math
import re
from collections.abc import Mapping
from typing import get_args

from scalewright.lutherie.errors import ContradictoryPartError, UnreadableTagError
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.part import Kind
from scalewright.lutherie.spacing import EIGHTEENTH, MOST_FRETS, Divisor, Eighteenth, Equal, Listed, Rule
from scalewright.lutherie.stated import STATED_ALIKE
from scalewright.lutherie.tag import Tag, TagUnit

__all__ = ["DECIMALS", "LONGEST_TAG", "read_tag", "tag_length", "write_tag"]

LONGEST_TAG = 2000
"""Characters of a text at most; the largest QR code that mends 15 % holds 2331."""

DECIMALS: Mapping[TagUnit, int] = {"mm": 3, "in": 5}
"""Decimals of a length in each unit: its stated precision."""

_EXAMPLE = "TRUESCALE/1;id=BD-17;kind=board;true=624.079mm;u=0.05mm;rule=eighteenth;layout=628.65mm;crc=0F2E"
_HEAD = "TRUESCALE/"
_VERSION, _FAN_VERSION = "1", "2"
_FIELDS: Mapping[str, frozenset[str]] = {
    _VERSION: frozenset({"id", "kind", "true", "u", "rule", "layout"}),
    _FAN_VERSION: frozenset({"id", "kind", "true", "u", "rule", "layout", "treble", "treble-layout", "square"}),
}
"""Fields that a text of each version may have."""
_NEEDED = frozenset({"id", "kind", "true"})
_FRET = re.compile(r"[0-9]{1,2}", re.ASCII)
_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ._#()+-]{0,59}", re.ASCII)
_LENGTH = re.compile(r"([0-9]{1,5}(?:\.[0-9]{1,5})?)(mm|in)", re.ASCII)
_NUMBER = re.compile(r"[0-9]{1,5}(?:\.[0-9]{1,22})?(?:e-[0-9]{1,3})?", re.ASCII)
_SCANNER = re.compile(r"\][A-Za-z][0-9]")
"""What a scanner may put before a text to say which kind of code it read (ISO/IEC 15424)."""

_SPREADS = 3.0
"""Standard uncertainties by which a true scale may be from what rule and layout scale give. [-]"""

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
    others = {"layout": tag.layout_scale, "treble": tag.treble_scale, "treble-layout": tag.treble_layout}
    fields |= {name: tag_length(length, tag.written_in) for name, length in others.items() if length is not None}
    if tag.square_fret is not None:
        fields["square"] = str(tag.square_fret)
    version = _VERSION if tag.treble_scale is None else _FAN_VERSION
    body = ";".join([_HEAD + version, *(f"{name}={value}" for name, value in fields.items())])
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
    ContradictoryPartError
        Its true scale is not what its rule and its layout scale give.
    """
    line = text.strip()
    line = line[3:] if _SCANNER.match(line) else line
    body, mark, check = line.rpartition(";crc=")
    if not line.startswith(_HEAD) or len(line) > LONGEST_TAG:
        raise _unreadable(f"this is not the text of a label, which begins with {_HEAD}{_VERSION}")
    head, *members = (body if mark else line).split(";")
    known = _FIELDS.get(head.removeprefix(_HEAD))
    if known is None:
        raise _unreadable(f"this label's text is of another version than {_VERSION} and {_FAN_VERSION}, known here")
    if not mark or check.upper() != _check(body):
        raise _unreadable("the text does not agree with its check digits; it was cut off or changed, so scan it again")
    fields: dict[str, str] = {}
    for member in members:
        name, _, value = member.partition("=")
        if name not in known or name in fields or not value:
            raise _unreadable("the text has a field that is unknown, empty or there twice")
        fields[name] = value
    if not fields.keys() >= (_NEEDED | {"treble"} if "treble" in known else _NEEDED):
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
    uncertainty = _length(fields["u"])[0] if "u" in fields else None
    rule = _rule(fields["rule"]) if "rule" in fields else None
    layout, treble, treble_layout = (
        _length(fields[name])[0] if name in fields else None for name in ("layout", "treble", "treble-layout")
    )
    for scale in (true_scale, layout, treble, treble_layout):
        if scale is not None and not _LEAST <= scale <= _MOST:
            raise _unreadable("a scale in the text is shorter than 1 mm or longer than 10 000 mm")
    _refuse_contradiction(true_scale, uncertainty or 0.0, rule, layout)
    if treble is not None:
        _refuse_contradiction(treble, uncertainty or 0.0, rule, treble_layout)
    square = fields.get("square")
    if square is not None and (not _FRET.fullmatch(square) or int(square) > MOST_FRETS):
        raise _unreadable("the text names a square fret that no board has")
    return Tag(
        id=fields["id"],
        kind=kinds[fields["kind"]],
        true_scale=true_scale,
        uncertainty=uncertainty,
        rule=rule,
        layout_scale=layout,
        written_in=unit,
        treble_scale=treble,
        treble_layout=treble_layout,
        square_fret=None if square is None else int(square),
    )


def _refuse_contradiction(true_scale: float, uncertainty: float, rule: Rule | None, layout: float | None) -> None:
    """Refuse a text whose layout scale and rule give another true scale than the one it states."""
    if layout is None:
        return
    if rule is None:
        message = "the text has a layout scale and no rule that it was laid out by; print the label anew"
        raise ContradictoryPartError(message, field=("text",))
    follows = true_scale_of(rule, layout)
    if follows is not None and abs(follows - true_scale) > STATED_ALIKE + _SPREADS * uncertainty:
        message = (
            f"by its layout scale and rule the true scale is {follows:.3f} mm, and the text says {true_scale:.3f} mm, "
            "so one of the three is wrong; measure the part, and print its label anew"
        )
        raise ContradictoryPartError(message, field=("text",), stated_mm=true_scale, from_layout_mm=follows)


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
