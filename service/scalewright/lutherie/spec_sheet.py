"""Spec sheets: all that a buyer of a part has to know of its scale, put together."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from scalewright.lutherie.compensation import Order, compensate_all
from scalewright.lutherie.conformity import Conformity, ConformityQuestion, conform
from scalewright.lutherie.errors import LutherieError, UndefinedPartError, refused_within
from scalewright.lutherie.estimate import Estimate, normal_estimate
from scalewright.lutherie.fingerboard import Fingerboard, Plan, draw_up
from scalewright.lutherie.fingerboard.plan import BoardMargins, BoardWidths, Measured, Side, StringPlan
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.label import Label
from scalewright.lutherie.layout import lay_out
from scalewright.lutherie.part import Kind, Part, Source
from scalewright.lutherie.setup import Heights, Setup
from scalewright.lutherie.spacing import Listed, Rule
from scalewright.lutherie.string_spec import StringSpec
from scalewright.lutherie.tag import LabelNames, Tag, TagUnit, named_by, tag_of

__all__ = [
    "SheetFret",
    "SheetLabel",
    "SheetPlan",
    "SheetSetback",
    "SheetTreble",
    "SpecSheet",
    "Stringing",
    "draw_up_sheet",
]

_FRETS = 22
_SIXTY_FOURTHS = 64
_INCH = 25.4


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

    text: str
    """Its letters, as they were given; empty where only its number is known."""
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
class SheetTreble:
    """The side of the highest string of a fan board; all else on its sheet is of the lowest's."""

    true_scale: Estimate
    """The true scale along it. [mm]"""
    layout_scale: float | None
    """The length that the rule was applied to there. [mm]"""
    frets: list[SheetFret]
    """Its frets; none where the rule is not known."""


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
    treble: SheetTreble | None = None
    """The other side of a fan board; None for a board of one scale."""
    square_fret: int | None = None
    """The fret of a fan board that is square to its centre line, where that is stated; 0 for the nut."""


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
    if part.made_to == "string_length" and part.true_scale is None and source != "label":
        message = "a sheet shows an old label as it is written, whatever it ends at; leave made_to and setback out"
        raise UndefinedPartError(message, field=("part", "made_to"))
    count = part.frets or _usual_frets(tag.rule)
    frets = _frets(part, tag.rule, tag.layout_scale, count)
    if not frets and (plan.stringing is not None or plan.outline is not None):
        message = "strings and an outline need a board whose spacing rule and layout scale are known; state them"
        raise UndefinedPartError(message, field=("part", "rule"), example="eighteenth")
    spread = tag.uncertainty or 0.0
    treble = None
    if tag.treble_scale is not None:
        _refuse_for_fans(plan)
        scale = normal_estimate(tag.treble_scale, spread, plan.beliefs.coverage)
        treble = SheetTreble(scale, tag.treble_layout, _frets(part, tag.rule, tag.treble_layout, count))
    return SpecSheet(
        plan=plan,
        id=tag.id,
        kind=tag.kind,
        source=source,
        rule=tag.rule,
        layout_scale=tag.layout_scale,
        true_scale=normal_estimate(tag.true_scale, spread, plan.beliefs.coverage),
        tolerance=plan.tolerance,
        label=None if part.label is None else _label(part.label, tag),
        frets=frets,
        setbacks=_setbacks(plan.stringing, tag.rule, tag.layout_scale, count),
        conformity=_conformity(plan),
        coverage=plan.beliefs.coverage,
        board=_board(plan.outline, tag, count),
        treble=treble,
        square_fret=tag.square_fret,
    )


def _usual_frets(rule: Rule | None) -> int:
    """How many frets a board is taken to have where that is not said: pitches that do not repeat are all there are."""
    if isinstance(rule, Listed) and not rule.repeat:
        return min(_FRETS, len(rule.cents))
    return _FRETS


def _frets(part: Part, rule: Rule | None, layout_scale: float | None, count: int) -> list[SheetFret]:
    """Frets along one line; none where there are none or the rule is not known."""
    if not part.fretted or rule is None or layout_scale is None:
        return []
    with refused_within(("part",)):
        rows = lay_out(rule, layout_scale, count).frets
    return [SheetFret(row.fret, row.from_nut, row.to_true_end) for row in rows]


def _refuse_for_fans(plan: SheetPlan) -> None:
    """Refuse what a sheet cannot say of a fan board."""
    if plan.stringing is not None:
        message = (
            "on a fan board every string has a scale of its own, so one set of setbacks cannot be recommended here; "
            "leave the strings out, and ask for the compensation of each string by its own scale"
        )
        raise UndefinedPartError(message, field=("stringing",))
    if plan.outline is not None and plan.part.square_fret is None:
        message = "a fan board is drawn about the fret that is square to its centre line; name it, 0 for the nut"
        raise UndefinedPartError(message, field=("part", "square_fret"), example=7)


def _label(label: Label, tag: Tag) -> SheetLabel:
    """Which length a label names."""
    names, excess = named_by(label, tag)
    return SheetLabel(label.text, label.length, label.unit, names, excess)


def _setbacks(
    stringing: Stringing | None, rule: Rule | None, layout_scale: float | None, frets: int
) -> list[SheetSetback]:
    """Setbacks for the strings, the nut as it stands."""
    if stringing is None or rule is None or layout_scale is None:
        return []
    setup = Setup(rule=rule, scale=layout_scale, frets=frets, heights=stringing.heights, strings=stringing.strings)
    (answer,) = compensate_all([Order(setup)])
    if isinstance(answer, LutherieError):
        answer.field = _place(answer.field, ("stringing",), {"strings", "heights"})
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


def _board(outline: tuple[int, BoardMargins, BoardWidths] | None, tag: Tag, frets: int) -> Fingerboard | None:
    """The board to be drawn."""
    if outline is None or tag.rule is None or tag.layout_scale is None:
        return None
    strings, margins, widths = outline
    bass = Side(tag.rule, tag.layout_scale)
    treble = bass if tag.treble_layout is None else Side(tag.rule, tag.treble_layout)
    square = tag.square_fret or 0
    # The scales of a fan board are those along its outer strings, as a part states them.
    along: Measured = "centre_line" if tag.treble_layout is None else "string"
    plan = Plan(
        bass=bass,
        treble=treble,
        measured=along,
        square_fret=square,
        frets=frets,
        strings=StringPlan(strings),
        margins=margins,
        widths=widths,
    )
    try:
        return draw_up(plan)
    except LutherieError as refusal:
        refusal.field = _place(refusal.field, ("outline",), {"strings", "margins", "widths"})
        raise


def _place(field: tuple[str | int, ...], within: tuple[str | int, ...], members: set[str]) -> tuple[str | int, ...]:
    """Where in the question of a sheet something is that is asked about alone elsewhere."""
    name = field[0] if field else ""
    if name in members:
        return (*within, *field)
    if name in {"frets", "rule"}:
        return ("part", *field)
    return ("part", "layout_scale") if name == "scale" else within
