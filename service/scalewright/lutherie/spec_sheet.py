"""Spec sheets: all that a buyer of a part has to know of its scale, put together."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from scalewright.lutherie.compensation import Order, compensate_all
from scalewright.lutherie.conformity import Conformity, ConformityQuestion, conform
from scalewright.lutherie.errors import LutherieError, UndefinedPartError
from scalewright.lutherie.estimate import Estimate, normal_estimate
from scalewright.lutherie.fingerboard import Fingerboard, Plan, draw_up
from scalewright.lutherie.fingerboard.plan import BoardMargins, BoardWidths, Side, StringPlan
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.label import Label
from scalewright.lutherie.layout import lay_out
from scalewright.lutherie.part import Kind, Part, Source
from scalewright.lutherie.setup import Heights, Setup
from scalewright.lutherie.spacing import Rule
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.tag import TagUnit, tag_of

__all__ = [
    "LabelNames",
    "SheetFret",
    "SheetLabel",
    "SheetPlan",
    "SheetSetback",
    "SpecSheet",
    "Stringing",
    "draw_up_sheet",
]

LabelNames: TypeAlias = Literal["true_scale", "layout_scale", "neither"]
"""Which length the number on a label is, if either."""

_FRETS = 22
_SIXTY_FOURTHS = 64
_INCH = 25.4
_AT_ITS_WORD = 0.3
"""How far a length may be from a label that names it: about an 80th of an inch; common practice, no source. [mm]"""


@dataclass(frozen=True, slots=True)
class Stringing:
    """A string set, and how it lies over the board."""

    name: str
    """What it is called."""
    strings: Sequence[StringSpec]
    """The strings."""
    heights: Heights
    """How high they lie above the plane of the fret tops."""


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """What goes into a spec sheet."""

    part: Part
    """The part."""
    unit: TagUnit
    """Unit that lengths are written in."""
    tolerance: float
    """How far true scales of parts that are put together may differ. [mm]"""
    beliefs: Beliefs
    """What identification reckons with."""
    stringing: Stringing | None = None
    """The strings that setbacks are recommended for."""
    outline: tuple[int, BoardMargins, BoardWidths] | None = None
    """Number of strings, margins and widths of the board that is drawn."""
    title: str = ""
    """What the part is called."""
    identifiers: tuple[str, ...] = ()
    """Other numbers that it goes by."""
    revision: str = ""
    """Revision of the sheet."""
    date: str | None = None
    """The day that the sheet bears, as given."""


@dataclass(frozen=True, slots=True)
class SheetFret:
    """Where one fret goes."""

    fret: int
    """Its number."""
    from_nut: float
    """Distance from the nut. [mm]"""
    to_true_end: float | None
    """Distance to the end of the true scale. [mm]"""

    @property
    def millimetres(self) -> float:
        """Distance from the nut. [mm]"""
        return self.from_nut

    @property
    def inches(self) -> float:
        """Distance from the nut. [in]"""
        return self.from_nut / _INCH

    @property
    def fraction(self) -> str:
        """Nearest sixty-fourth of an inch, as a rule shows it."""
        whole, part = divmod(Fraction(round(self.inches * _SIXTY_FOURTHS), _SIXTY_FOURTHS), 1)
        return " ".join([*([str(whole)] if whole or not part else []), *([str(part)] if part else [])])


@dataclass(frozen=True, slots=True)
class SheetLabel:
    """What the label of a part says, and what that is."""

    length: float
    """Its number, taken at its word. [mm]"""
    written_in: Literal["in", "mm", "cm"]
    """Unit that it is written in."""
    names: LabelNames
    """Which length it is, within its last digit, a label's usual care and twice the uncertainty."""
    excess: float
    """Label minus true scale. [mm]"""


@dataclass(frozen=True, slots=True)
class SheetSetback:
    """Where one string breaks over saddle and nut."""

    string: int
    """Number of the string, 1 first."""
    pitch: str
    """Open pitch, as given."""
    saddle_setback: float
    """From the end of the true scale to the break point on the saddle, positive away from the nut. [mm]"""
    saddle_from_nut: float
    """From the nut's front edge to the break point. [mm]"""


@dataclass(frozen=True, slots=True)
class SpecSheet:
    """All that a buyer has to know of a part's scale."""

    plan: SheetPlan
    """What was asked."""
    id: str
    """The caller's name for the part."""
    kind: Kind
    """What it is."""
    source: Source
    """What the true scale is known from."""
    rule: Rule | None
    """Its spacing rule, where that is established or stated."""
    layout_scale: float | None
    """The length that the rule was applied to. [mm]"""
    true_scale: Estimate
    """Its true scale. [mm]"""
    tolerance: float
    """How far true scales of parts that are put together may differ. [mm]"""
    label: SheetLabel | None
    """What its label says."""
    frets: list[SheetFret]
    """Its frets; none where the rule is not known."""
    setbacks: list[SheetSetback]
    """Recommended setbacks, string by string."""
    conformity: Conformity | None
    """Whether it is what it claims; None unless it claims something and was measured."""
    coverage: float
    """Probability that a stated interval holds."""
    board: Fingerboard | None
    """The board as it is drawn."""


def draw_up_sheet(plan: SheetPlan) -> SpecSheet:
    """Put a spec sheet together.

    Parameters
    ----------
    plan : SheetPlan
        What goes into it.

    Returns
    -------
    SpecSheet
        What is not established is left out of it.

    Raises
    ------
    LutherieError
        What the part, the strings or the board are refused for where they are asked about alone.
    UndefinedPartError
        Strings or an outline with a part whose rule is not known, or without frets.
    """
    part = plan.part
    tag, source = tag_of(part, plan.unit, plan.beliefs)
    frets: list[SheetFret] = []
    count = part.frets or _FRETS
    if part.fretted and tag.rule is not None and tag.layout_scale is not None:
        layout = lay_out(tag.rule, tag.layout_scale, count)
        frets = [SheetFret(row.fret, row.from_nut, row.to_true_end) for row in layout.frets]
    if not frets and (plan.stringing is not None or plan.outline is not None):
        message = "strings and an outline need a board whose spacing rule and layout scale are known; state them"
        raise UndefinedPartError(message, field=("part", "rule"), example="eighteenth")
    spread = tag.uncertainty or 0.0
    return SpecSheet(
        plan=plan,
        id=tag.id,
        kind=tag.kind,
        source=source,
        rule=tag.rule,
        layout_scale=tag.layout_scale,
        true_scale=normal_estimate(tag.true_scale, spread, plan.beliefs.coverage),
        tolerance=plan.tolerance,
        label=None if part.label is None else _label(part.label, tag.true_scale, tag.layout_scale, spread),
        frets=frets,
        setbacks=_setbacks(plan.stringing, tag.rule, tag.layout_scale, count),
        conformity=_conformity(plan),
        coverage=plan.beliefs.coverage,
        board=_board(plan.outline, tag.rule, tag.layout_scale, count),
    )


def _label(label: Label, true_scale: float, layout_scale: float | None, spread: float) -> SheetLabel:
    """Which length a label names."""
    near = max(min(0.5 * label.grain, _AT_ITS_WORD), 2.0 * spread)
    names: LabelNames = "neither"
    if abs(label.length - true_scale) <= near:
        names = "true_scale"
    elif layout_scale is not None and abs(label.length - layout_scale) <= near:
        names = "layout_scale"
    return SheetLabel(label.length, label.unit, names, label.length - true_scale)


def _setbacks(
    stringing: Stringing | None, rule: Rule | None, layout_scale: float | None, frets: int
) -> list[SheetSetback]:
    """Setbacks for the strings, the nut as it stands."""
    if stringing is None or rule is None or layout_scale is None:
        return []
    setup = Setup(rule=rule, scale=layout_scale, frets=frets, heights=stringing.heights, strings=stringing.strings)
    (answer,) = compensate_all([Order(setup)])
    if isinstance(answer, LutherieError):
        answer.field = ("strings",)
        raise answer
    return [
        SheetSetback(number, one.pitch, one.saddle_setback, one.saddle_from_nut)
        for number, one in enumerate(answer.strings, 1)
    ]


def _conformity(plan: SheetPlan) -> Conformity | None:
    """Whether a part that claims something and was measured is what it claims."""
    part = plan.part
    claims = part.true_scale is not None or part.layout_scale is not None
    if part.survey is None or not claims:
        return None
    return conform(ConformityQuestion(part, plan.tolerance, beliefs=plan.beliefs))


def _board(
    outline: tuple[int, BoardMargins, BoardWidths] | None, rule: Rule | None, layout_scale: float | None, frets: int
) -> Fingerboard | None:
    """The board to be drawn."""
    if outline is None or rule is None or layout_scale is None:
        return None
    strings, margins, widths = outline
    side = Side(rule, layout_scale)
    return draw_up(
        Plan(bass=side, treble=side, frets=frets, strings=StringPlan(strings), margins=margins, widths=widths)
    )
