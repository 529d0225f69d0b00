"""Fret layouts on the wire: JSON and CSV."""

import itertools
import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Annotated, Any, NamedTuple, Self, TypeAlias

import orjson
from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, model_validator
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import LutherieError, UnreadableLengthError
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.layout import Layout, ScaleBasis, lay_out
from scalewright.lutherie.spacing import Rule
from scalewright.wire.length_text import read_number
from scalewright.wire.many import answer_many
from scalewright.wire.quantities import (
    AnswerContext,
    Denominator,
    LengthOut,
    Question,
    Reply,
    Scale,
    ShopFraction,
    as_sentence,
    from_millimetres,
    to_shop_fraction,
)
from scalewright.wire.rules import Cents, DivisorNumber, RuleIn, RuleName, RuleOut, Steps, refuse_repeat_out_of_order

__all__ = ["FretOut", "Frets", "LayoutIn", "LayoutOut", "LayoutQuery", "answer_layouts"]

Frets: TypeAlias = Annotated[int, Field(ge=1, le=spacing.MOST_FRETS, examples=[22])]
"""Number of frets of a board."""


class LayoutArguments(NamedTuple):
    """Arguments of :func:`scalewright.lutherie.layout.lay_out`."""

    rule: Rule
    scale: float
    frets: int
    basis: ScaleBasis


class LayoutIn(Question):
    """Where do the frets of this board go?"""

    scale: Scale
    """The scale, a number in `unit` or a text with its own unit; `scale_basis` says which scale it is."""
    rule: RuleIn
    """The spacing rule."""
    frets: Frets
    """Number of frets, 1 to 60."""
    scale_basis: ScaleBasis = "layout"
    """Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret."""
    fractions: Denominator | None = None
    """Add the nearest mark of an inch rule with this finest graduation: 1, 2, 4 ... 128."""

    @property
    def answer_context(self) -> AnswerContext:
        """How the answer is to be written."""
        return {"unit": self.unit, "fractions": self.fractions}

    def to_domain(self) -> LayoutArguments:
        """Return what :func:`~scalewright.lutherie.layout.lay_out` takes."""
        return LayoutArguments(self.rule.to_domain(), self.scale, self.frets, self.scale_basis)


# ---- The same as the parameters of a query --------------------------------------------------------------

_WHOLE = re.compile(r"[0-9]{1,9}", re.ASCII)


def _whole(value: object) -> object:
    """Read digits as a whole number; leave the rest to be refused."""
    return int(value) if isinstance(value, str) and _WHOLE.fullmatch(value) else value


def _number(value: object) -> object:
    """Read a plain decimal number."""
    if not isinstance(value, str):
        return value
    try:
        return read_number(value)
    except UnreadableLengthError as error:
        raise PydanticCustomError("number_unreadable", "{reason}", {"reason": as_sentence(error)}) from None


def _numbers(value: object) -> object:
    """Read plain decimal numbers between commas."""
    if not isinstance(value, str):
        return value
    return [_number(text) for text in value.split(",")]


def _truth(value: object) -> object:
    return {"true": True, "false": False}.get(value, value) if isinstance(value, str) else value


def _at(parameter: str, problem: PydanticCustomError) -> ValidationError:
    """Problem at a parameter, though all of them together show it."""
    return ValidationError.from_exception_data("query", [InitErrorDetails(type=problem, loc=(parameter,), input=None)])


class LayoutQuery(Question):
    """Where do the frets of this board go?"""

    repeatable = frozenset({"cents"})

    scale: Scale
    """The scale, a number in `unit` or with its own unit (24.75in); `scale_basis` says which scale it is."""
    rule: RuleName
    """The spacing rule; `steps`, `divisor`, `cents` and `repeat` belong to one rule each."""
    frets: Annotated[Frets, BeforeValidator(_whole)]
    """Number of frets, 1 to 60."""
    steps: Annotated[Steps, BeforeValidator(_whole)] | None = None
    """Steps to the octave, for rule=equal; 12 if left out."""
    divisor: Annotated[DivisorNumber, BeforeValidator(_number)] | None = None
    """What the length that is left is divided by, for rule=divisor."""
    cents: Annotated[Cents, BeforeValidator(_numbers)] | None = None
    """Cents above the open string for each fret, for rule=listed; separated by commas or given repeatedly."""
    repeat: Annotated[bool, BeforeValidator(_truth)] = False
    """Whether the listed pitches start again an octave higher, for rule=listed."""
    scale_basis: ScaleBasis = "layout"
    """Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret."""
    fractions: Annotated[Denominator, BeforeValidator(_whole)] | None = None
    """Add the nearest mark of an inch rule with this finest graduation: 1, 2, 4 ... 128."""

    @model_validator(mode="after")
    def _parameters_belong_to_the_rule(self) -> Self:
        owners = {"steps": "equal", "divisor": "divisor", "cents": "listed", "repeat": "listed"}
        for parameter, owner in owners.items():
            # A documentation page sends the default of `repeat` with every rule.
            if getattr(self, parameter) not in (None, False) and self.rule != owner:
                message = "This parameter belongs to rule={owner}; leave it out or name that rule."
                raise _at(parameter, PydanticCustomError("other_rule", message, {"owner": owner}))
        needed = {"divisor": self.divisor, "listed": self.cents}
        if self.rule in needed and needed[self.rule] is None:
            parameter = "divisor" if self.rule == "divisor" else "cents"
            message = "This parameter is needed for rule={owner} and was not given."
            raise _at(parameter, PydanticCustomError("missing_for_rule", message, {"owner": self.rule}))
        if self.cents is not None and self.repeat:
            refuse_repeat_out_of_order(self.cents)
        return self

    @property
    def answer_context(self) -> AnswerContext:
        """How the answer is to be written."""
        return {"unit": self.unit, "fractions": self.fractions}

    def to_domain(self) -> LayoutArguments:
        """Return what :func:`~scalewright.lutherie.layout.lay_out` takes."""
        rule: Rule
        if self.rule == "equal":
            rule = spacing.Equal() if self.steps is None else spacing.Equal(self.steps)
        elif self.divisor is not None:
            rule = spacing.Divisor(self.divisor)
        elif self.cents is not None:
            rule = spacing.Listed(tuple(self.cents), self.repeat)
        else:
            rule = spacing.EIGHTEENTH
        return LayoutArguments(rule, self.scale, self.frets, self.scale_basis)


# ---- The answer -----------------------------------------------------------------------------------------


def _absent(value: object) -> bool:
    return value is None


class FretOut(BaseModel):
    """Where one fret stands."""

    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

    fret: int
    """Number of the fret, counted from the nut."""
    from_nut: LengthOut
    """Distance from the nut. [unit]"""
    from_previous: LengthOut
    """Distance from the fret before it, or from the nut for fret 1. [unit]"""
    to_layout_end: LengthOut
    """Distance to the end of the layout scale. [unit]"""
    to_true_end: LengthOut | None
    """Distance to the end of the true scale, where a bridge is measured from; null without one. [unit]"""
    cents: float
    """1200 log2(S / (S - from_nut)), with S the layout scale. [cent]"""
    from_nut_fraction: ShopFraction | None = Field(None, exclude_if=_absent)
    """The mark of an inch rule nearest to `from_nut`, where `fractions` were asked for."""


class LayoutOut(Reply):
    """A fret layout."""

    rule: RuleOut
    """The spacing rule."""
    layout_scale: LengthOut
    """The length that the rule was applied to. [unit]"""
    true_scale: LengthOut | None
    """Twice the distance from the nut to the octave fret; null where there is no octave fret. [unit]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave, on the board or beyond it."""
    frets: list[FretOut]
    """The frets, from the nut on."""
    notes: list[Note]
    """Cautions that come with a valid answer."""

    @classmethod
    def to_json(cls, layout: Layout, context: AnswerContext) -> bytes:
        """Write a layout as this model would, straight from its columns."""
        unit, denominator = context["unit"], context.get("fractions")
        rows = _rows(layout, context)
        if denominator is not None:
            for row, from_nut in zip(rows, layout.from_nut, strict=True):
                row["from_nut_fraction"] = to_shop_fraction(from_nut, unit, denominator)
        true_scale = layout.true_scale
        return orjson.dumps(
            {
                "unit": unit,
                "rule": _rule_as_json(layout.rule),
                "layout_scale": from_millimetres(layout.layout_scale, unit),
                "true_scale": None if true_scale is None else from_millimetres(true_scale, unit),
                "octave_fret": layout.octave_fret,
                "frets": rows,
                "notes": layout.notes,
            }
        )

    @classmethod
    def to_csv(cls, layout: Layout, context: AnswerContext) -> bytes:
        """Write the frets as comma-separated values (RFC 4180) with a header, the unit in every row."""
        unit, denominator = context["unit"], context.get("fractions")
        rows = _rows(layout, context)
        names = [*rows[0], "unit"] + ([] if denominator is None else ["from_nut_fraction"])
        lines = [names]
        for row, from_nut in zip(rows, layout.from_nut, strict=True):
            cells = ["" if cell is None else repr(cell) for cell in row.values()]
            cells.append(unit)
            if denominator is not None:
                cells.append(to_shop_fraction(from_nut, unit, denominator).text)
            lines.append(cells)
        return "".join(f"{','.join(cells)}\r\n" for cells in lines).encode()


def _rows(layout: Layout, context: AnswerContext) -> list[dict[str, object]]:
    """Rows of a layout in the unit of the answer."""
    lengths = [layout.from_nut, layout.from_previous, layout.to_layout_end]
    if layout.to_true_end is not None:
        lengths.append(layout.to_true_end)
    if context["unit"] != "mm":
        # As from_millimetres has it, without a call for each number.
        lengths = [[length * 5.0 / 127.0 for length in column] for column in lengths]
    true_ends: Iterable[float | None] = lengths[3] if layout.to_true_end is not None else itertools.repeat(None)
    columns = zip(itertools.count(1), *lengths[:3], true_ends, layout.cents, strict=False)
    return [
        {
            "fret": fret,
            "from_nut": from_nut,
            "from_previous": from_previous,
            "to_layout_end": to_layout_end,
            "to_true_end": to_true_end,
            "cents": cents,
        }
        for fret, from_nut, from_previous, to_layout_end, to_true_end, cents in columns
    ]


@lru_cache(maxsize=256)
def _rule_as_json(rule: Rule) -> orjson.Fragment:
    """Write a rule; few are in use at a time."""
    return orjson.Fragment(RuleOut.model_validate(rule).model_dump_json())


# ---- Many at once ---------------------------------------------------------------------------------------


def answer_layouts(questions: Sequence[dict[str, Any]]) -> list[bytes | LutherieError | ValidationError]:
    """Answer many questions.

    Parameters
    ----------
    questions : sequence of dict
        As :class:`LayoutIn` takes them, parsed from JSON.

    Returns
    -------
    list of bytes, LutherieError or ValidationError
        For each question its answer as a JSON object, or what was wrong with it.
    """
    return answer_many(questions, LayoutIn, LayoutOut, _lay_out_all)


def _lay_out_all(asked: Sequence[LayoutArguments]) -> list[Layout | LutherieError]:
    layouts: list[Layout | LutherieError] = []
    for arguments in asked:
        try:
            layouts.append(lay_out(*arguments))
        except LutherieError as refusal:
            layouts.append(refusal)
    return layouts
