"""Complaints: what a player or a bench heard, string by string and fret by fret."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

import numpy as np

from scalewright.lutherie.errors import ImpossibleReadingError, ImpossibleSetupError, OutsideScaleError
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.layout import Layout, ScaleBasis, lay_out
from scalewright.lutherie.phrases import counted
from scalewright.lutherie.spacing import Rule
from scalewright.lutherie.temperament import Target, targets

__all__ = ["Board", "CentsReading", "Complaint", "Reference", "board_of"]

Reference: TypeAlias = Literal["open_string", "tuner"]
"""What cents were read against: the same string's open note, or the tuner's own pitches, fret 0 among them."""

_FARTHEST = 150.0
"""A note further off than three quarters of a tone is at another fret, or on another string; our choice. [cent]"""


@dataclass(frozen=True, slots=True)
class CentsReading:
    """One note on the tuner."""

    string: int
    """Number of the string, from 1."""
    fret: int
    """Number of the fret; 0 is the open string."""
    cents: float
    """How sharp it sounded against its target. [cent]"""
    uncertainty: float | None = None
    """Standard uncertainty of this reading; None for the tuner's. [cent]"""


@dataclass(frozen=True, slots=True)
class Complaint:
    """What was heard on which board."""

    rule: Rule
    """Spacing rule of the board, as far as it is known."""
    scale: float
    """Its scale. [mm]"""
    readings: Sequence[CentsReading]
    """The notes."""
    frets: int = 24
    """Number of frets of the board."""
    scale_basis: ScaleBasis = "layout"
    """Whether ``scale`` is the layout scale or the true scale."""
    relative_to: Reference = "open_string"
    """What the cents were read against."""
    tuner_uncertainty: float = 1.0
    """Standard uncertainty of one reading. [cent]"""
    resolution: float = 0.0
    """Step of the tuner's display, whose square over twelve adds to the variance. [cent]"""
    model_uncertainty: float = 0.15
    """What stretch and stiffness leave when saddle and nut are best, by PHYSICS about 0.15 over twelve frets. [cent]"""
    nut_may_move: bool = True
    """Whether the nut is a suspect too."""
    target: Target | None = None
    """Temperament that the cents were read in; None for the equal one nearest to the rule."""
    coverage: float = 0.95
    """Probability that the intervals of the answer hold. [-]"""


class Board(NamedTuple):
    """Where the frets of the board stand."""

    layout: Layout
    """The layout."""
    scale: float
    """X0, from the pattern's zero line to the end that setbacks count from. [mm]"""
    remaining: Floats
    """X_n, from every fret to that end, shape (n_frets,). [mm]"""
    target: Floats
    """Pitch that every fret should give, shape (n_frets,). [cent]"""


def board_of(complaint: Complaint) -> Board:
    """Lay out the board of a complaint and check its readings.

    Parameters
    ----------
    complaint : Complaint
        What was heard.

    Returns
    -------
    Board
        Where its frets stand.

    Raises
    ------
    TooFewPitchesError, OutsideScaleError
        Of the rule and its scale as :func:`scalewright.lutherie.layout.lay_out`; listed pitches without
        an octave among them.
    PitchCountError
        A target with a pitch too many or too few.
    ImpossibleSetupError
        A saddle in front of the last fret.
    ImpossibleReadingError
        A reading at no fret of the board, or off by more than three quarters of a tone.
    """
    layout = lay_out(complaint.rule, complaint.scale, complaint.frets, complaint.scale_basis)
    if layout.true_scale is None:
        message = (
            "listed pitches without an octave have no true scale to measure moves from; list a pitch of 1200 cents"
        )
        raise OutsideScaleError(message, field=("rule", "cents"))
    remaining = np.array([fret.to_true_end for fret in layout.frets], dtype=np.float64)
    if not remaining[-1] > 0.0:
        reach = int(np.argmax(remaining <= 0.0))
        most = counted(reach, "fret")
        message = f"the saddle would stand in front of the last fret; at this rule a board has at most {most}"
        raise ImpossibleSetupError(message, field=("frets",), most=reach)
    for index, reading in enumerate(complaint.readings):
        if reading.fret > complaint.frets:
            message = f"this board has {counted(complaint.frets, 'fret')}; give the fret at which the note was read"
            raise ImpossibleReadingError(message, field=("readings", index, "fret"), most=complaint.frets)
        if abs(reading.cents) > _FARTHEST:
            message = (
                f"a note is off by more than {_FARTHEST:g} cents: it was read at another fret or against another "
                "pitch; cents count from the pitch that this fret should give"
            )
            raise ImpossibleReadingError(message, field=("readings", index, "cents"), example=4.0)
    return Board(layout, layout.true_scale, remaining, targets(complaint.rule, complaint.frets, complaint.target))
