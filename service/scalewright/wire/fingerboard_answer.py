"""Fingerboards in answers: every line of a board as JSON, its cut list as CSV, its drawings as files."""

from pydantic import BaseModel, ConfigDict

from scalewright.drawing.board_sheet import board_on_pages, board_sheet
from scalewright.drawing.dxf import write_dxf
from scalewright.drawing.page import Drawing
from scalewright.drawing.pdf import write_pdf, write_pdf_pages
from scalewright.drawing.png import write_png
from scalewright.drawing.sheet import PLAIN
from scalewright.drawing.svg import write_svg
from scalewright.lutherie.cut_list import BladeSide, CutOrigin, Method
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.fingerboard import Fingerboard
from scalewright.lutherie.fingerboard.plan import Handedness, Measured
from scalewright.wire.quantities import AnswerContext, LengthOut, Reply, from_millimetres
from scalewright.wire.rules import RuleOut

__all__ = ["FingerboardOut"]

_READ_OFF = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)


class PointOut(BaseModel):
    """A place on the board."""

    model_config = _READ_OFF

    x: LengthOut
    """Along the centre line, from the zero line of the pattern towards the bridge. [unit]"""
    y: LengthOut
    """Across, positive to the left as one looks from the nut to the bridge. [unit]"""


class AcrossLineOut(BaseModel):
    """A line across the board, by its ends."""

    model_config = _READ_OFF

    bass: PointOut
    """End on the side of the lowest string."""
    treble: PointOut
    """End on the side of string 1."""


class SegmentOut(BaseModel):
    """A line along the board, by its ends."""

    model_config = _READ_OFF

    start: PointOut
    """End on the side of the nut."""
    end: PointOut
    """End on the side of the bridge."""


class BoardSideOut(BaseModel):
    """Rule and scales of one outer string."""

    model_config = _READ_OFF

    rule: RuleOut
    """Its spacing rule."""
    layout_scale: LengthOut
    """The length that the rule was applied to. [unit]"""
    true_scale: LengthOut | None
    """Twice the distance from the zero line to the octave fret; null without one. [unit]"""
    octave_fret: int | None
    """Number of the fret that stands for the octave."""


class TrueScalesOut(BaseModel):
    """True scales of the outer strings."""

    model_config = _READ_OFF

    bass: LengthOut | None
    """Of the lowest string; null where its rule has no octave fret. [unit]"""
    treble: LengthOut | None
    """Of string 1; null where its rule has no octave fret. [unit]"""


class StringLineOut(BaseModel):
    """The line that one string follows."""

    model_config = _READ_OFF

    string: int
    """Number of the string; 1 is the highest."""
    at_zero: PointOut
    """Where it crosses the zero line of the pattern."""
    at_nut: PointOut
    """Where it crosses the front edge of the nut."""
    at_scale_end: PointOut
    """Where its scale ends: the true one, or the layout scale where there is no octave fret."""
    at_saddle: PointOut
    """Where it breaks over the saddle."""
    scale: LengthOut
    """Its own scale, from the zero line to the end, measured as `measured` says. [unit]"""
    saddle_setback: LengthOut
    """From the end of its scale to the break point, positive away from the nut. [unit]"""


class FretCentsOut(BaseModel):
    """Pitch of a fret on either side."""

    model_config = _READ_OFF

    bass: float
    """By the rule of the lowest string. [cent]"""
    treble: float
    """By the rule of string 1. [cent]"""


class FretDistancesOut(BaseModel):
    """Distance of a fret from the zero line on either side, measured as `measured` says."""

    model_config = _READ_OFF

    bass: LengthOut
    """Along the lowest string. [unit]"""
    treble: LengthOut
    """Along string 1. [unit]"""


class StringCrossingOut(BaseModel):
    """Where a fret crosses one string."""

    model_config = _READ_OFF

    string: int
    """Number of the string; 1 is the highest."""
    at: PointOut
    """The place on the board."""
    from_zero: LengthOut
    """From the zero line, along the string as `measured` says. [unit]"""
    off_own_rule: LengthOut | None
    """How far that is from where the rule puts the fret on this string's own scale; null for unequal rules. [unit]"""
    cents: float
    """1200 log2 of its scale over what is left of it, for an ideal string. [cent]"""


class FretSlotOut(BaseModel):
    """The slot of a fret."""

    model_config = _READ_OFF

    bass: PointOut
    """Middle of its end on the bass side."""
    treble: PointOut
    """Middle of its end on the treble side."""
    near_edge: AcrossLineOut
    """Edge of the kerf on the side of the nut."""
    far_edge: AcrossLineOut
    """Edge of the kerf on the side of the bridge."""
    length: LengthOut
    """Length of its middle line. [unit]"""
    depth: LengthOut | None
    """Depth below the surface, the same all along; null where no tang was given. [unit]"""
    flat_depth: LengthOut | None
    """Depth in the middle of the board of a slot whose bottom is flat; null without a tang. [unit]"""
    drop: LengthOut
    """How much lower the rounded surface lies at the slot's ends than in its middle. [unit]"""


class BoardFretOut(BaseModel):
    """One fret of a board."""

    model_config = _READ_OFF

    name: str
    """Its number, or what an extra fret is called."""
    fret: int | None
    """Its number by the rule; null for an extra fret."""
    cents: FretCentsOut
    """What the rule of either side intends."""
    from_zero: FretDistancesOut
    """Distance from the zero line along the outer strings."""
    on_centre_line: LengthOut
    """Where it crosses the centre line, from the zero line there. [unit]"""
    angle_degrees: float
    """How far it leans from square, positive where its bass end is nearer to the bridge. [degree]"""
    line: AcrossLineOut
    """Its crossings with the outer strings, prolonged to them where it is cut short."""
    slot: FretSlotOut
    """Its slot."""
    radius: LengthOut | None
    """Radius that the fretwire is bent to, along its own line; null for a flat board. [unit]"""
    first_string: int
    """The string nearest to string 1 that it crosses."""
    last_string: int
    """The string farthest from string 1 that it crosses."""
    crossings: list[StringCrossingOut]
    """Where it crosses its strings, string 1 first."""


class MarkerOut(BaseModel):
    """A position marker."""

    model_config = _READ_OFF

    fret: int
    """Fret that it stands before, on the side of the nut."""
    at: PointOut
    """Its centre."""


class CutOut(BaseModel):
    """One slot of a cut list; all distances from the origin, along the centre line."""

    model_config = _READ_OFF

    name: str
    """What the fret is called."""
    running: LengthOut
    """To the middle of the slot, exactly. [unit]"""
    near_edge: LengthOut
    """To the face of the blade nearer to the origin. [unit]"""
    far_edge: LengthOut
    """To the face farther from the origin. [unit]"""
    set_to: LengthOut
    """What to set, for the part of the blade that is set, rounded to the step. [unit]"""
    error: LengthOut
    """By how much rounding moves the slot, positive towards the bridge. [unit]"""
    error_cents: float | None
    """How much sharper the fret sounds for it; null where it would stand beyond the end of the scale. [cent]"""
    length: LengthOut
    """Length of the slot. [unit]"""
    angle_degrees: float
    """How far the slot leans, positive where its bass end is nearer to the bridge. [degree]"""
    depth: LengthOut | None
    """Depth below the surface; null where no tang was given. [unit]"""


class WhatIfOut(BaseModel):
    """What a way of setting the saw costs, for every slot rounded to a step."""

    model_config = _READ_OFF

    method: Method
    """All "running" from one origin, or each "fret_to_fret" from the slot before it."""
    step: LengthOut
    """What distances are rounded to. [unit]"""
    worst_fret: str
    """Slot that is off most, in cents."""
    worst_error: LengthOut
    """By how much, positive towards the bridge. [unit]"""
    worst_cents: float | None
    """How much sharper that fret sounds for it; null where it would stand beyond the end of the scale. [cent]"""
    expected_at_last: LengthOut
    """Standard deviation to be expected at the last slot, with an even chance for every rounding. [unit]"""


class BlankOut(BaseModel):
    """The smallest piece of wood that holds the board, before any allowance for trimming."""

    model_config = _READ_OFF

    length: LengthOut
    """Along the centre line. [unit]"""
    width: LengthOut
    """Across. [unit]"""


class CutListOut(BaseModel):
    """Settings of a saw for every slot of a board."""

    model_config = _READ_OFF

    origin: CutOrigin
    """Where all distances start."""
    blade: BladeSide
    """Which part of the blade is set."""
    step: LengthOut | None
    """What `set_to` is rounded to; null for no rounding. [unit]"""
    kerf: LengthOut
    """Width of the blade's cut. [unit]"""
    cuts: list[CutOut]
    """The slots, in the order in which they stand on the board."""
    smallest_blank: BlankOut
    """The smallest piece of wood that holds the board."""
    what_if: list[WhatIfOut]
    """What rounding costs: to the step, and to a 64th of an inch; from one origin, and from fret to fret."""


class FingerboardOut(Reply):
    """A board with all its lines. Its x axis is the centre line, its zero where the zero line crosses it."""

    statement: str
    """One sentence for a drawing or a work order."""
    handedness: Handedness
    """Which hand plucks."""
    measured: Measured
    """What the scales are measured along."""
    square_fret: int
    """The fret that is square to the centre line; with equal scales and rules all are."""
    zero_fret: bool
    """Whether a fret stands on the zero line."""
    true_scale: TrueScalesOut
    """True scales of the outer strings."""
    bass: BoardSideOut
    """Rule and scales of the lowest string."""
    treble: BoardSideOut
    """Rule and scales of string 1."""
    strings: list[StringLineOut]
    """The strings, string 1 first."""
    frets: list[BoardFretOut]
    """The frets, from the nut on."""
    zero_line: AcrossLineOut
    """Where the rule puts the nut, from edge to edge."""
    nut: AcrossLineOut
    """Front edge of the nut, from edge to edge."""
    scale_end: AcrossLineOut
    """Where the scales of the outer strings end."""
    saddle: AcrossLineOut
    """Where the outer strings break over the saddle."""
    outline: list[PointOut]
    """Corners of the board: nut end bass and treble, far end treble and bass."""
    centre_line: SegmentOut
    """From one end of the board to the other."""
    markers: list[MarkerOut]
    """Position markers."""
    cut_list: CutListOut
    """Settings of a saw for every slot."""
    notes: list[Note]
    """What to mind."""

    @classmethod
    def to_svg(cls, board: Fingerboard, context: AnswerContext) -> bytes:
        """Draw the board in millimetres as SVG."""
        return write_svg(_drawn(board, context))

    @classmethod
    def to_dxf(cls, board: Fingerboard, context: AnswerContext) -> bytes:
        """Draw the board in millimetres as DXF, its zero point on the zero line."""
        return write_dxf(_drawn(board, context))

    @classmethod
    def to_pdf(cls, board: Fingerboard, context: AnswerContext) -> bytes:
        """Draw the board at full size as PDF, on one long sheet or on pages."""
        sheet = context.get("sheet", PLAIN)
        if sheet.page is None:
            return write_pdf(_drawn(board, context))
        return write_pdf_pages(*board_on_pages(board, sheet, context["unit"]), sheet)

    @classmethod
    def to_png(cls, board: Fingerboard, context: AnswerContext) -> bytes:
        """Draw a preview of the board as PNG."""
        return write_png(_drawn(board, context), context.get("sheet", PLAIN).pixels)

    @classmethod
    def file_title(cls, _: Fingerboard, context: AnswerContext) -> str:
        """Name of a file with this board."""
        return context.get("sheet", PLAIN).title or "fingerboard"

    @classmethod
    def to_csv(cls, board: Fingerboard, context: AnswerContext) -> bytes:
        """Write the cut list as comma-separated values (RFC 4180) with a header, the unit in every row."""
        unit = context["unit"]
        lines = [[*CutOut.model_fields, "unit"]]
        for cut in board.cut_list.cuts:
            cells = []
            for name, field in CutOut.model_fields.items():
                value = getattr(cut, name)
                if isinstance(value, str):
                    cells.append(_text_cell(value))
                elif value is None:
                    cells.append("")
                else:
                    # Annotations are kept by the field; a length among them is written in the unit.
                    is_length = bool(field.metadata) or "Length" in str(field.annotation)
                    cells.append(repr(from_millimetres(value, unit) if is_length else value))
            lines.append([*cells, unit])
        return "".join(f"{','.join(cells)}\r\n" for cells in lines).encode()


def _drawn(board: Fingerboard, context: AnswerContext) -> Drawing:
    return board_sheet(board, context.get("sheet", PLAIN), context["unit"])


def _text_cell(text: str) -> str:
    """Cell of a text: quoted, and not to be taken for a formula by a spreadsheet."""
    if text[:1] in "=+-@":
        text = f"'{text}"
    return '"' + text.replace('"', '""') + '"' if any(mark in text for mark in ',"\r\n') else text
