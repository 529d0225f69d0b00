"""From the columns of a table to the members of a question."""

import contextlib
import json
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from json.encoder import encode_basestring_ascii
from operator import itemgetter
from typing import Final, get_args

from scalewright_client._protocol import encode
from scalewright_client._requests import Unit
from scalewright_client.command.fields import READINGS, Fields

__all__ = ["Columns", "UnusableColumnsError", "read_columns"]

_READING: Final = re.compile(r"(?:fret|from_nut)?_*(?P<fret>[0-9]{1,2})", re.ASCII)
_WITH_UNIT: Final = re.compile(r'(?P<name>.*?)\s*[\[(]\s*(?P<unit>mm|cm|m|in|inch|inches|")\s*[\])]', re.IGNORECASE)
_NUMBER: Final = re.compile(r"[+-]?(?:[0-9]{1,15}(?:\.[0-9]{0,18})?|\.[0-9]{1,18})", re.ASCII)
_NUMBERS: Final = re.compile(r"(?:{0},)*{0}".format(r"-?(?:0|[1-9][0-9]{0,14})(?:\.[0-9]{1,18})?"), re.ASCII)
"""Numbers that JSON writes alike."""
_BARE: Final = re.compile(r"[0-9 ./,+\N{FRACTION SLASH}½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒-]+")
"""A length without a unit, however it is written."""
_SAME_UNIT: Final = {"inch": "in", "inches": "in", '"': "in"}


class UnusableColumnsError(Exception):
    """Columns that do not make a question."""


@dataclass(frozen=True, slots=True)
class _Column:
    """One column that is used."""

    index: int
    name: str
    field: str
    unit: str
    fields: Fields


@dataclass(frozen=True, slots=True)
class Columns:
    """Which column is what."""

    unit: str | None
    """Unit of bare numbers and of the answers; None leaves it to each row."""
    readings: tuple[tuple[int, _Column], ...] = ()
    """Columns of one reading each, with their frets."""
    others: tuple[_Column, ...] = ()
    """All other columns that are used."""
    fixed: Mapping[str, object] = field(default_factory=dict)
    """Members that are the same in every question, unless its row says otherwise."""
    renamed: Mapping[str, str] = field(default_factory=dict)
    """Members of JSON Lines with another name there."""
    unused: tuple[str, ...] = ()
    """Names of the columns that nothing was made of."""
    fields: Fields = READINGS
    """What columns can be."""
    copied: bool = False
    """Whether readings can be copied into a question as they stand: no row has a unit of its own, and no member is
    there twice."""
    head: str = ""
    """Members that are the same in every question, as JSON without its braces."""
    frets: str = ""
    """Frets of the readings, as JSON without its brackets."""
    last: int = 0
    """Index of the last column that is used."""
    picked: Callable[[Sequence[str]], tuple[str, ...]] = tuple
    """Picks the readings from the cells of a row."""

    def question(self, cells: Sequence[str] | Mapping[str, object]) -> dict[str, object]:
        """Make the question of a row.

        Parameters
        ----------
        cells : sequence of str or mapping
            Cells of CSV by column, or members of JSON Lines.

        Returns
        -------
        dict
            The question; whether its values make sense is for the service to say.
        """
        asked: dict[str, object] = {} if self.unit is None else {"unit": self.unit}
        asked.update(self.fixed)
        if isinstance(cells, Mapping):
            return self.fields.nested(asked | {self.renamed.get(name, name): value for name, value in cells.items()})
        for column in self.others:
            text = cells[column.index] if column.index < len(cells) else ""
            if text:
                asked[column.field] = _value(column, text, str(asked.get("unit", "mm")))
        unit = str(asked.get("unit", "mm"))
        frets, distances = [], []
        for fret, column in self.readings:
            text = cells[column.index] if column.index < len(cells) else ""
            if text:
                frets.append(fret)
                distances.append(_length(text, column.unit, unit))
        if distances:
            asked["frets"], asked["from_nut"] = frets, distances
        return self.fields.nested(asked)

    def line(self, cells: Sequence[str] | Mapping[str, object]) -> bytes | None:
        """Write the question of a row whose readings are JSON numbers as they stand, in its own unit.

        Parameters
        ----------
        cells : sequence of str or mapping
            As for :meth:`question`.

        Returns
        -------
        bytes or None
            The same question as :meth:`question` makes, as JSON; None where it takes more than copying.
        """
        if not self.copied or isinstance(cells, Mapping) or len(cells) <= self.last:
            return None
        texts = self.picked(cells)
        frets = self.frets
        if "" in texts:
            frets = ",".join(str(fret) for (fret, _), text in zip(self.readings, texts, strict=True) if text)
            texts = tuple(filter(None, texts))
        joined = ",".join(texts)
        # A comma may be in a cell as well: some write their decimals behind it.
        if joined.count(",") != len(texts) - 1 or not _NUMBERS.fullmatch(joined):
            return None
        members = [self.head]
        for column in self.others:
            text = cells[column.index]
            if text:
                value = _value(column, text, self.unit or "mm")
                written = encode_basestring_ascii(value) if isinstance(value, str) else json.dumps(value)
                members.append(f'"{column.field}":{written}')
        return f'{{{",".join(filter(None, members))},"frets":[{frets}],"from_nut":[{joined}]}}'.encode()

    def place(self, cells: Sequence[str] | Mapping[str, object], pointer: str) -> str:
        """Name the column that a fault lies in.

        Parameters
        ----------
        cells : sequence of str or mapping
            As for :meth:`question`.
        pointer : str
            JSON pointer into the question, "/from_nut/3".

        Returns
        -------
        str
            Name of the column, or the pointer where it points to none.
        """
        name, *below = [*self.fields.flat(pointer), "", ""][:3]
        if isinstance(cells, Mapping):
            return next((theirs for theirs, ours in self.renamed.items() if ours == name), pointer)
        if name == "from_nut" and not below[0] and self.readings:
            return f"{self.readings[0][1].name} ... {self.readings[-1][1].name}"
        if name == "from_nut" and below[0].isdigit() and self.readings:
            filled = [column for _, column in self.readings if column.index < len(cells) and cells[column.index]]
            return filled[int(below[0])].name if int(below[0]) < len(filled) else pointer
        return next((column.name for column in self.others if column.field == name), pointer)


def read_columns(
    header: Sequence[str] | None,
    *,
    mapping: Mapping[str, str],
    fixed: Mapping[str, str],
    unit: Unit | None,
    fields: Fields = READINGS,
) -> Columns:
    """Find out which column is what.

    Parameters
    ----------
    header : sequence of str, optional
        Names of the columns of CSV; None for JSON Lines.
    mapping : mapping
        Names of columns by the field that they are, where the names do not say it.
    fixed : mapping
        Values of fields that are the same for all rows, as texts.
    unit : {"mm", "in"}, optional
        Unit of bare numbers in columns that name none, and of the answers.
    fields : Fields
        What columns can be.

    Returns
    -------
    Columns
        Which column is what.

    Raises
    ------
    UnusableColumnsError
        A field or a column that does not exist, a field that is there twice, no readings, or
        readings whose unit nobody says.
    """
    known = {name: _fixed_value(name, text, fields) for name, text in fixed.items()}
    if header is None:
        for name in mapping:
            _check_field(name, fields)
        renamed = {theirs: ours for ours, theirs in mapping.items()}
        return Columns(unit, fixed=known, renamed=renamed, fields=fields)
    wanted = _wanted(header, mapping, fields)
    readings: list[tuple[int, _Column]] = []
    others: dict[str, _Column] = {}
    unused: list[str] = []
    for index, name in enumerate(header):
        bare, column_unit = _parted(name)
        ours = wanted.get(index) or _normal(bare)
        reading = _READING.fullmatch(ours)
        column = _Column(index, name, ours, column_unit, fields)
        if reading is not None and reading["fret"] != "0":
            readings.append((int(reading["fret"]), column))
        elif ours in fields.names and (index in wanted or ours not in mapping):
            if ours in others:
                message = f'two columns are {ours}: "{others[ours].name}" and "{name}"'
                raise UnusableColumnsError(message)
            others[ours] = column
        else:
            unused.append(name)
    if not readings and not fields.enough & {*others, *known}:
        message = f'no column {fields.needed}, or say which is: --column "fret 12=NAME OF THE COLUMN"'
        raise UnusableColumnsError(message)
    measured = [column for _, column in readings] + [others[name] for name in fields.measured if name in others]
    units = {column.unit for column in measured}
    if "" in units and unit is None and "unit" not in {*others, *known}:
        nameless = next(column.name for column in measured if not column.unit)
        message = f'the column "{nameless}" does not say its unit; write "{nameless} [mm]", or give --unit'
        raise UnusableColumnsError(message)
    common: str | None = unit
    if unit is None and len(units) == 1 and units <= set(get_args(Unit)):
        (common,) = units
    # A row's own unit has to be known before its lengths are read.
    ordered = sorted(others.values(), key=lambda column: column.field != "unit")
    used = [*(column for _, column in readings), *ordered]
    own = {column.unit for _, column in readings} <= {"", common}
    twice = {"unit", "frets", "from_nut"} & {*others, *known} or {*others} & {*known}
    same: dict[str, object] = ({} if common is None else {"unit": common}) | known
    return Columns(
        common,
        tuple(readings),
        tuple(ordered),
        known,
        unused=tuple(filter(None, unused)),
        fields=fields,
        copied=bool(readings) and own and not twice and not fields.inside and not fields.absent,
        head=encode(same)[1:-1].decode(),
        frets=",".join(str(fret) for fret, _ in readings),
        last=max((column.index for column in used), default=0),
        picked=_picking([column.index for _, column in readings]),
    )


def _picking(indices: Sequence[int]) -> Callable[[Sequence[str]], tuple[str, ...]]:
    """Return what picks cells by their columns."""
    if len(indices) > 1:
        return itemgetter(*indices)
    return lambda cells: tuple(cells[index] for index in indices)


def _wanted(header: Sequence[str], mapping: Mapping[str, str], fields: Fields) -> dict[int, str]:
    """Fields by the index of the column that the caller says they are in."""
    wanted: dict[int, str] = {}
    for ours, theirs in mapping.items():
        _check_field(ours, fields)
        matches = [i for i, name in enumerate(header) if theirs.strip().casefold() in _names(name)]
        if len(matches) != 1:
            there = ", ".join(f'"{name}"' for name in header)
            number = "no column is" if not matches else "more than one column is"
            message = f'{number} called "{theirs}"; there are {there}'
            raise UnusableColumnsError(message)
        wanted[matches[0]] = _normal(ours)
    return wanted


def _names(name: str) -> set[str]:
    return {name.strip().casefold(), _parted(name)[0].strip().casefold()}


def _check_field(name: str, fields: Fields) -> None:
    if _normal(name) not in fields.names and not _READING.fullmatch(_normal(name)):
        message = f'there is no field "{name}"; there are "fret 1", "fret 2" ... and {", ".join(fields.names)}'
        raise UnusableColumnsError(message)


def _normal(name: str) -> str:
    return re.sub(r"[\s-]+", "_", name.strip().casefold())


def _parted(name: str) -> tuple[str, str]:
    """Name of a column, and its unit where it has one."""
    match = _WITH_UNIT.fullmatch(name.strip())
    if match is None:
        return name, ""
    unit = match["unit"].lower()
    return match["name"], _SAME_UNIT.get(unit, unit)


def _fixed_value(name: str, text: str, fields: Fields) -> object:
    _check_field(name, fields)
    return _value(_Column(0, name, _normal(name), "", fields), text, "")


def _value(column: _Column, text: str, unit: str) -> object:
    """What a cell says; what it should not say is left as it is, for the service to judge."""
    name, fields = column.field, column.fields
    value: object = text
    if name in fields.lengths:
        value = text if text in {"free", "none"} else _length(text, column.unit, unit)
    elif name in fields.labels:
        value = _length(text, column.unit, unit) if column.unit else _number(text)
    elif name in fields.numbers:
        value = _number(text)
    elif name in fields.counts:
        value = int(text) if text.isdecimal() else text
    elif name in fields.rules:
        value = _rule(text)
    elif name == "frets":
        value = [int(part) if part.isdecimal() else part for part in re.split(r"[;\s]+", text) if part]
    elif name in fields.texts:
        value = [part.strip() for part in text.split(";") if part.strip()]
    elif name in fields.lists:
        value = [_length(part.strip(), column.unit, unit) for part in text.split(";") if part.strip()]
    elif name in fields.as_json:
        with contextlib.suppress(ValueError, RecursionError):
            value = json.loads(text)
    return value


def _rule(text: str) -> object:
    """A spacing rule in words, as the file of answers has it too."""
    name, _, own = text.partition(" ")
    if name == "equal" and own.strip().isdecimal():
        return {"name": name, "steps": int(own)}
    return {"name": name, "divisor": _number(own.strip())} if name == "divisor" else text


def _number(text: str) -> float | str:
    return float(text) if _NUMBER.fullmatch(text) else text


def _length(text: str, unit: str, asked: str) -> float | str:
    """A length: a number where it is one in the unit of the question, else a text with its unit."""
    if not unit or unit == asked:
        if _NUMBER.fullmatch(text):
            return float(text)
        unit = unit or asked
    return f"{text} {unit}" if unit and _BARE.fullmatch(text) else text
