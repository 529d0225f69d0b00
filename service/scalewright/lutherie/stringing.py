"""Stringing: strings laid over a board, from what a person knows to what the string model takes."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np

from scalewright.lutherie.errors import ImpossibleSetupError, StringError
from scalewright.lutherie.estimate import Floats, Note
from scalewright.lutherie.layout import Layout, lay_out
from scalewright.lutherie.phrases import counted, plain
from scalewright.lutherie.setup import Heights, Relief, Setup
from scalewright.lutherie.spacing import Listed
from scalewright.lutherie.string_path import FrettedStrings
from scalewright.lutherie.string_spec import OpenString, StringSpec
from scalewright.lutherie.strings import open_string
from scalewright.lutherie.temperament import targets

__all__ = ["SetbackOrigin", "Strung", "lay_strings"]

SetbackOrigin: TypeAlias = Literal["true_scale", "layout_scale"]
"""Whose end saddle setbacks are counted from."""


@dataclass(frozen=True, slots=True)
class Strung:
    """A board with its strings on."""

    setup: Setup
    """What was asked."""
    layout: Layout
    """Where the frets stand."""
    setback_from: SetbackOrigin
    """Whose end saddle setbacks are counted from."""
    scale: float
    """X0, from the pattern's zero line to that end. [mm]"""
    remaining: Floats
    """X_n, from every fret to that end, shape (n_frets,). [mm]"""
    heights: Heights
    """How high the strings lie, the height at the saddle filled in."""
    target_cents: Floats
    """Pitch above the open string that every fret should give, shape (n_frets,). [cent]"""
    opened: list[OpenString]
    """The strings at their open pitches."""
    fretted: FrettedStrings
    """All this for the string model."""
    notes: list[Note]
    """What the numbers of all strings rest on."""


def lay_strings(setup: Setup) -> Strung:
    """Lay strings over a board and tune them.

    Parameters
    ----------
    setup : Setup
        The board, its strings and how they lie.

    Returns
    -------
    Strung
        The board with its strings on.

    Raises
    ------
    LutherieError
        Of the rule and its scale as :func:`scalewright.lutherie.layout.lay_out`, of a string as
        :func:`scalewright.lutherie.strings.open_string`.
    ImpossibleSetupError
        A saddle in front of the last fret, strings below the frets, or a finger on the nut or on a fret
        that is to be pressed down behind.
    PitchCountError
        A target with a pitch too many or too few.

    Notes
    -----
    X0 is the true scale, where the octave fret divides the length in half; only a rule without an
    octave fret has X0 at the end of the layout scale.
    """
    layout = lay_out(setup.rule, setup.scale, setup.frets, setup.scale_basis)
    X0, X = _scale_and_remaining(layout)
    fall = _fall(setup.relief, X0, X)
    heights, rise = _straight(setup.heights, X0, X, fall)
    _refuse_finger(setup, X0, X)
    opened = _open_strings(setup.strings, X0)
    n = len(opened)
    wanted = targets(setup.rule, setup.frets, setup.target)
    fretted = FrettedStrings(
        scale=np.full(n, X0),
        remaining=np.tile(X, (n, 1)),
        target=np.tile(wanted, (n, 1)),
        nut_height=np.full(n, heights.nut),
        saddle_rise=np.full(n, rise),
        finger=np.full(n, setup.finger_behind_fret),
        kappa=np.array([string.kappa for string in opened]),
        gyration=np.array([string.gyration for string in opened]),
        boundary=setup.boundary_factor,
        stiffness=setup.stiffness,
        fall=None if fall is None else np.tile(fall, (n, 1)),
        pressed=None if setup.fret_height is None else np.full(n, setup.fret_height),
        beyond=np.full(n, setup.sliding_length) if setup.sliding_length else None,
    )
    return Strung(
        setup=setup,
        layout=layout,
        setback_from="layout_scale" if layout.true_scale is None else "true_scale",
        scale=X0,
        remaining=X,
        heights=heights,
        target_cents=wanted,
        opened=opened,
        fretted=fretted,
        notes=_notes(setup, layout, X0, X),
    )


def _scale_and_remaining(layout: Layout) -> tuple[float, Floats]:
    """X0, and X_n of every fret. [mm]"""
    if layout.true_scale is None:
        scale, remaining = layout.layout_scale, np.array([fret.to_layout_end for fret in layout.frets])
    else:
        scale, remaining = layout.true_scale, np.array([fret.to_true_end for fret in layout.frets], dtype=np.float64)
    if not remaining[-1] > 0.0:
        reach = int(np.argmax(remaining <= 0.0))
        most = counted(reach, "fret")
        message = f"the saddle would stand in front of the last fret; at this rule a board has at most {most}"
        raise ImpossibleSetupError(message, field=("frets",), most=reach)
    return scale, remaining


def _fall(relief: Relief | None, X0: float, X: Floats) -> Floats | None:
    """How far every fret top lies below the line, shape (n_frets,); None where all lie on it. [mm]"""
    if relief is None or relief.depth == 0.0:
        return None
    if relief.shape == "tilt":
        return 2.0 * relief.depth * (1.0 - X / X0)  # Anderson and Beausoleil 2024: b + m (X0 - X_n)
    if len(X) < 3:
        message = "relief is the gap between fret 1 and the last fret, and this board has no fret between"
        raise ImpossibleSetupError(message, field=("relief",), frets=len(X))
    along = (X[0] - X) / (X[0] - X[-1])
    return 4.0 * relief.depth * along * (1.0 - along)


def _straight(heights: Heights, X0: float, X: Floats, fall: Floats | None) -> tuple[Heights, float]:
    """Heights with the saddle's filled in, and by how much it is above the nut. [mm]"""
    rise, action = heights.saddle_above_nut, heights.action
    below = np.zeros_like(X) if fall is None else fall
    if (rise is None) == (action is None):
        message = "give either saddle_above_nut or action (the height at a fret), which say the same thing"
        raise ImpossibleSetupError(message, field=("heights",), example={"nut": "1 mm", "saddle_above_nut": "4 mm"})
    place: tuple[str, ...] = ("heights", "saddle_above_nut")
    if action is not None:
        place = ("heights", "action", "height")
        if not 1 <= action.fret <= len(X):
            message = f"the action has to be measured at a fret of the board, 1 to {len(X)}"
            raise ImpossibleSetupError(message, field=("heights", "action", "fret"), most=len(X))
        at = action.fret - 1
        rise = float((action.height - below[at] - heights.nut) * X0 / (X0 - X[at]))
    rise = float(rise or 0.0)
    clear = heights.nut + rise * (1.0 - X / X0) + below
    if not clear.min() > 0.0:
        message = (
            "the strings would lie on the frets or below them; heights are measured from the plane of the fret "
            "tops to the underside of the string, not pressed"
        )
        raise ImpossibleSetupError(message, field=place, example="4 mm" if action is None else "3 mm")
    return Heights(heights.nut, rise, action), rise


def _refuse_finger(setup: Setup, X0: float, X: Floats) -> None:
    """Refuse a finger on the nut, and one that would press a string down at the fret itself."""
    if not setup.finger_behind_fret < X0 - X[0]:
        message = "the finger would press behind the nut; finger_behind_fret is less than the distance to fret 1"
        raise ImpossibleSetupError(message, field=("finger_behind_fret",), first_fret_mm=X0 - float(X[0]))
    if setup.fret_height is not None and not setup.finger_behind_fret > 0.0:
        message = (
            "with fret_height the finger presses the string down behind the fret; say how far behind it, "
            "or leave fret_height out"
        )
        raise ImpossibleSetupError(message, field=("finger_behind_fret",), example="5 mm")


def _open_strings(specs: Sequence[StringSpec], length: float) -> list[OpenString]:
    """Tune the strings; a refusal names the one at fault."""
    opened = []
    for index, spec in enumerate(specs):
        try:
            opened.append(open_string(spec, length))
        except StringError as error:
            error.field = ("strings", index, *error.field)
            raise
    return opened


def _notes_on_lay(setup: Setup) -> list[Note]:
    """List the assumptions on the fret tops, the finger and what stretches."""
    notes = [Note("straight-fret-tops", "The fret tops lie in one plane: no relief.")]
    if setup.relief is not None and setup.relief.shape == "parabola":
        text = f"The fret tops follow a parabola, {plain(setup.relief.depth)} mm below a straightedge in its middle."
        notes = [Note("relief-parabola", text)]
    elif setup.relief is not None:
        depth = plain(setup.relief.depth)
        text = f"The fret tops fall away from the nut in a straight line, by {depth} mm at half the scale."
        notes = [Note("relief-tilt", text)]
    if setup.fret_height is not None:
        text = (
            "The finger presses the string down to the board, which bends it over the fret, and over the fret before "
            "where that stands in its way."
        )
        notes.append(Note("pressed-to-the-board", text))
    if setup.sliding_length:
        text = f"{plain(setup.sliding_length)} mm of string beyond nut and saddle slide over them without friction."
        notes.append(Note("string-slides", text))
    else:
        text = "The string does not slide over the nut or the saddle: only the part between stretches."
        notes.append(Note("string-held", text))
    return notes


def _notes(setup: Setup, layout: Layout, X0: float, X: Floats) -> list[Note]:
    """List the assumptions that all strings share."""
    notes = [
        Note("ideal-tension", "Tension is that of an ideal string, T = mu (2 L f)², over the scale length."),
        *_notes_on_lay(setup),
        Note(
            "boundary",
            f"Stiffness with a boundary factor of {plain(setup.boundary_factor)}: 0 is pinned at saddle and fret, 1 "
            "clamped at the fret, 2 at both; measured 1.1 with a standard uncertainty of 0.2 "
            "(Anderson and Beausoleil 2024).",
        ),
    ]
    if setup.stiffness == "position":
        text = (
            "Stiffness of a fretted note follows the fret's position, B0 X0/X_n, as in the published tables; "
            '"length_and_tension" moves setbacks by some hundredths of a millimetre.'
        )
        notes.append(Note("stiffness-by-position", text))
    if layout.true_scale is None:
        text = "The listed pitches have no octave fret, so setbacks are counted from the end of the layout scale."
        notes.append(Note("no-octave-fret", text))
    if isinstance(setup.rule, Listed) and setup.target is None:
        text = "Every listed pitch is compared with the nearest of twelve equal steps to the octave."
        notes.append(Note("nearest-equal-step", text))
    gaps = -np.diff(X, prepend=X0)
    if (crowded := np.flatnonzero(gaps <= setup.finger_behind_fret)).size:
        text = f"From fret {crowded[0] + 1} on the finger would press behind the fret before."
        notes.append(Note("finger-behind-previous-fret", text))
    return notes
