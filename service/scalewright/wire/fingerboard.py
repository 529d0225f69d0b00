"""Fingerboards on the wire: the plan of a board; JSON, a cut list as CSV, and drawings."""

from typing import Annotated, LiteralString, Self

from pydantic import Field, model_validator
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from scalewright.lutherie.fingerboard import Plan, Side
from scalewright.lutherie.fingerboard.plan import BoardEnd, Handedness, Measured
from scalewright.lutherie.layout import ScaleBasis
from scalewright.lutherie.phrases import counted
from scalewright.lutherie.spacing import MOST_FRETS
from scalewright.wire.fingerboard_answer import FingerboardOut
from scalewright.wire.fingerboard_parts import (
    BoardRulesIn,
    BoardStringsIn,
    OneOrBothRules,
    OneOrBothScales,
    OneOrFourMargins,
    OneOrTwoRadii,
    PartialFretIn,
    SawIn,
    SlotsIn,
    WidthsIn,
    margins_of,
    radius_of,
)
from scalewright.wire.layout import Frets
from scalewright.wire.quantities import AnswerContext, AnyLength, Distance, Question
from scalewright.wire.sheet import SheetIn

__all__ = ["FingerboardIn", "FingerboardOut"]

_FretNumber = Annotated[int, Field(ge=1, le=MOST_FRETS)]


class FingerboardIn(Question):
    """Every line of this fingerboard?"""

    scale: Annotated[OneOrBothScales, Field(examples=["25.5 in"])]
    """The scale, or `bass` and `treble` scales of a fan board; `scale_basis` says which scale it is."""
    rule: OneOrBothRules
    """The spacing rule, or a `bass` and a `treble` rule."""
    frets: Frets
    """Number of frets, 1 to 60."""
    strings: Annotated[BoardStringsIn, Field(examples=[{"count": 6, "nut_spread": "36 mm", "saddle_spread": "52 mm"}])]
    """The strings. Of their spreads, `margins` and `widths` two are given, and the third follows."""
    margins: OneOrFourMargins | None = None
    """From the centre of an outer string to the edge beside it: one length, or four. [unit]"""
    widths: WidthsIn | None = None
    """Widths of the board at the zero line and at the last fret. [unit]"""
    scale_basis: ScaleBasis = "layout"
    """Which length `scale` is: "layout", what the rule is applied to, or "true", twice nut to octave fret."""
    scale_along: Measured = "centre_line"
    """What the scale is measured along: the "centre_line" of the board, or the outer "string" itself."""
    square_fret: Annotated[int, Field(ge=0, le=MOST_FRETS, examples=[7])] | None = None
    """The fret of a fan board that stays square to the centre line, 0 for the nut; needed where the scales differ."""
    handedness: Handedness = "right"
    """Which hand plucks; a "left" board is the mirror image."""
    extension: Distance = 10.0
    """How far the board goes on past the last fret; 10 mm if left out. [unit]"""
    far_end: BoardEnd = "square"
    """How the far end is cut: "square" to the centre line or "parallel" to the last fret."""
    zero_fret: bool = False
    """Whether a fret stands on the zero line, with the nut behind it as a guide."""
    behind_zero_fret: Distance = 5.0
    """How far the board goes on behind a zero fret, where there is one; 5 mm if left out. [unit]"""
    nut_setback: Annotated[AnyLength, Field(examples=["-0.4 mm"])] = 0.0
    """From the zero line to the nut's front edge, positive away from fret 1. [unit]"""
    saddle_setbacks: Annotated[list[AnyLength], Field(examples=[["1.5 mm", "2 mm"]])] | None = None
    """From the end of each string's scale to its break point on the saddle, string 1 first. [unit]"""
    slots: SlotsIn = SlotsIn()
    """The slots that the frets go into."""
    radius: OneOrTwoRadii | None = None
    """Radius of the surface, or `nut` and `last_fret` radii of a cone; flat if left out. [unit]"""
    partial_frets: Annotated[list[PartialFretIn], Field(max_length=40, default_factory=list[PartialFretIn])]
    """Frets that cross some strings only, and extra frets between those of the rule."""
    markers: Annotated[list[_FretNumber], Field(max_length=MOST_FRETS, examples=[[3, 5, 7, 9, 12]])] | None = None
    """Frets with a position marker before them; left out, the usual ones where twelve frets make an octave.

    What lies beyond the last fret is left out, with a note.
    """
    double_markers: Annotated[list[_FretNumber], Field(max_length=MOST_FRETS, examples=[[12, 24]])] | None = None
    """Those of them that bear two, each of them among the markers; 12 and 24 if left out."""
    saw: SawIn = SawIn()
    """How the slots are cut; the cut list is written for it."""
    sheet: SheetIn = SheetIn()
    """What stands on a drawing, and what paper it goes on; no part of the JSON answer."""

    @property
    def is_fan(self) -> bool:
        """Whether the two sides differ."""
        return not isinstance(self.scale, float) or isinstance(self.rule, BoardRulesIn)

    @property
    def answer_context(self) -> AnswerContext:
        """How the answer is to be written."""
        return {"unit": self.unit, "sheet": self.sheet.to_domain()}

    @model_validator(mode="after")
    def _two_of_three(self) -> Self:
        spreads = self.strings.nut_spread is not None or self.strings.count == 1
        given = [spreads, self.margins is not None, self.widths is not None]
        if sum(given) != 2:
            message = "Of the strings' spreads, margins and widths two are needed, and the third follows from them."
            raise _fault(("margins",), "edges_given", message)
        if self.is_fan and self.square_fret is None:
            message = "A fan board has one fret that stays square to its centre line; name it, 0 for the nut."
            raise _fault(("square_fret",), "square_fret_missing", message)
        return self

    @model_validator(mode="after")
    def _strings_are_there(self) -> Self:
        count = self.strings.count
        if self.saddle_setbacks is not None and len(self.saddle_setbacks) != count:
            message = f"Give one setback for each of the {count} strings, string 1 first."
            raise _fault(("saddle_setbacks",), "setbacks_given", message)
        seen = set()
        for index, partial in enumerate(self.partial_frets):
            place, last = ("partial_frets", index), partial.last_string or count
            if partial.first_string > count or last > count:
                field = "first_string" if partial.first_string > count else "last_string"
                message = f"This board has {counted(count, 'string')}; name one of them."
                raise _fault((*place, field), "strings_given", message)
            if partial.first_string > last:
                message = f"Strings are counted from the highest: first_string is at most last_string, here {last}."
                raise _fault((*place, "first_string"), "strings_given", message)
            if partial.fret is not None and (partial.fret > self.frets or partial.fret in seen):
                message = "A fret of the rule can be cut short once, and has to be on the board."
                raise _fault((*place, "fret"), "fret_given", message)
            seen.add(partial.fret)
        return self

    @model_validator(mode="after")
    def _markers_are_named_once(self) -> Self:
        for field in ("markers", "double_markers"):
            numbers = getattr(self, field) or []
            for index, number in enumerate(numbers):
                if number in numbers[:index]:
                    message = "This fret is named already; name each once, and in double_markers those that bear two."
                    raise _fault((field, index), "marker_repeated", message)
        return self

    def to_domain(self) -> Plan:
        """Return the plan."""
        scales = (self.scale,) * 2 if isinstance(self.scale, float) else (self.scale.bass, self.scale.treble)
        rules = self.rule.to_domain() if isinstance(self.rule, BoardRulesIn) else (self.rule.to_domain(),) * 2
        return Plan(
            bass=Side(rules[0], scales[0]),
            treble=Side(rules[1], scales[1]),
            frets=self.frets,
            strings=self.strings.to_domain(),
            margins=margins_of(self.margins),
            widths=None if self.widths is None else self.widths.to_domain(),
            basis=self.scale_basis,
            measured=self.scale_along,
            square_fret=self.square_fret or 0,
            handedness=self.handedness,
            extension=self.extension,
            end=self.far_end,
            zero_fret=self.zero_fret,
            behind_zero_fret=self.behind_zero_fret,
            nut_setback=self.nut_setback,
            saddle_setbacks=tuple(self.saddle_setbacks or ()),
            slots=self.slots.to_domain(),
            radius=radius_of(self.radius),
            partial_frets=tuple(partial.to_domain(self.strings.count) for partial in self.partial_frets),
            markers=None if self.markers is None else tuple(self.markers),
            double_markers=None if self.double_markers is None else tuple(self.double_markers),
            saw=self.saw.to_domain(),
        )


def _fault(where: tuple[str | int, ...], code: LiteralString, message: str) -> ValidationError:
    """Fault at a place, though several places together show it."""
    problem = PydanticCustomError(code, "{reason}", {"reason": message})
    return ValidationError.from_exception_data("fingerboard", [InitErrorDetails(type=problem, loc=where, input=None)])
