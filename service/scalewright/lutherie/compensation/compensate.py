"""Compensating: one board or many, and what else is asked about their bridges."""

from collections.abc import Sequence
from dataclasses import fields, replace

import numpy as np

from scalewright.lutherie.compensation.answer import Compensation, by_string
from scalewright.lutherie.compensation.bridge import advise
from scalewright.lutherie.compensation.order import BridgeWork, Order
from scalewright.lutherie.compensation.placement import Placement, place_bridge
from scalewright.lutherie.compensation.reslotting import ReslottedString, Reslotting, compare_notes
from scalewright.lutherie.compensation.saddle_line import Wishes, pooled_rms
from scalewright.lutherie.compensation.setbacks import BestSetbacks, Freedom
from scalewright.lutherie.compensation.slot import fit_slot, fit_travel
from scalewright.lutherie.compensation.string_sets import Posed, Preference, join, pose, solve
from scalewright.lutherie.errors import ImpossibleSetupError, LutherieError
from scalewright.lutherie.setup import Setup
from scalewright.lutherie.spacing import Equal

__all__ = ["compensate", "compensate_all"]


def compensate(
    setup: Setup,
    nut: Freedom = "fixed",
    preference: Preference | None = None,
    saddle: Freedom = "free",
    work: BridgeWork | None = None,
) -> Compensation:
    """Best saddle and nut positions for the strings of a board.

    Parameters
    ----------
    setup : Setup
        The board, its strings and how they lie.
    nut : {"fixed", "free", "uniform"}
        Whether the nut may be set back too, for every string by itself or alike for all.
    preference : Preference, optional
        Which frets to do best for; all alike where it is None.
    saddle : {"free", "uniform"}
        Whether every string has a setback of its own, or all have one.
    work : BridgeWork, optional
        What else is asked about the bridge.

    Returns
    -------
    Compensation
        The setbacks with the least weighted sum of squared cents errors, of every string or, where
        something is uniform, of the set.

    Raises
    ------
    LutherieError
        A board or strings that :func:`scalewright.lutherie.stringing.lay_strings` refuses.
    ImpossibleSetupError
        Frets that are not on the board or too few of them, or a bridge that cannot be.
    NoSaddlePositionError
        A string that no saddle brings near its pitches.
    """
    (answer,) = compensate_all([Order(setup, nut, preference, saddle, work or BridgeWork())])
    if isinstance(answer, LutherieError):
        raise answer
    return answer


def compensate_all(orders: Sequence[Order]) -> list[Compensation | LutherieError]:
    """Best saddle and nut positions for many boards at once.

    Parameters
    ----------
    orders : sequence of Order
        The questions.

    Returns
    -------
    list of Compensation or LutherieError
        What :func:`compensate` returns or raises for each, in the same order.
    """
    posed: list[Posed | LutherieError] = []
    for order in orders:
        try:
            posed.append(pose(order.setup, order.nut, order.preference, order.saddle))
        except LutherieError as error:
            posed.append(error)
    solved = iter(solve([one for one in posed if isinstance(one, Posed)]))
    answers: list[Compensation | LutherieError] = []
    for order, one in zip(orders, posed, strict=True):
        if isinstance(one, LutherieError):
            answers.append(one)
            continue
        best = next(solved)
        try:
            answers.append(best if isinstance(best, LutherieError) else _answer(order, one, best))
        except LutherieError as error:
            answers.append(error)
    return answers


def _answer(order: Order, posed: Posed, best: BestSetbacks) -> Compensation:
    """Answer to one question."""
    strung, setup, work = posed.strung, order.setup, order.work
    layout, pitches = strung.layout, [string.pitch for string in strung.opened]
    wishes = _wishes(order, posed, best if order.saddle == "free" else _string_by_string(posed))
    return Compensation(
        rule=layout.rule,
        layout_scale=layout.layout_scale,
        true_scale=layout.true_scale,
        octave_fret=layout.octave_fret,
        setback_from=strung.setback_from,
        nut=order.nut,
        saddle=order.saddle,
        heights=strung.heights,
        optimised_for=posed.preference,
        target_cents=strung.target_cents.tolist(),
        boundary_factor=setup.boundary_factor,
        stiffness=setup.stiffness,
        rms_cents=pooled_rms(best.rms.tolist()),
        strings=by_string(strung, best, max(posed.preference.frets)),
        slot=None if work.slot is None else fit_slot(wishes, pitches, strung.scale, work.slot),
        travel=None if work.travel is None else fit_travel(wishes, pitches, work.travel),
        bridge=None if work.bridge is None else advise(wishes, pitches, strung.scale, work.bridge),
        placement=_place(order, posed, best) if work.other_sets or work.reach is not None else None,
        reslotted=_reslot(order, posed, best) if work.reslotted else None,
        notes=strung.notes,
    )


def _place(order: Order, posed: Posed, best: BestSetbacks) -> Placement:
    """Place a bridge for the set asked for and the other ones."""
    sets = [("strings", posed, best)]
    for index, other in enumerate(order.work.other_sets):
        setup = replace(order.setup, strings=other.strings, heights=other.heights or order.setup.heights)
        try:
            one = pose(setup, order.nut, order.preference, order.saddle)
            (found,) = solve([one])
            if isinstance(found, LutherieError):
                raise found
        except LutherieError as error:
            error.field = ("other_sets", index, *error.field)
            raise
        sets.append((other.name, one, found))
    wishes = [
        (name, [string.pitch for string in one.strung.opened], _wishes(order, one, found)) for name, one, found in sets
    ]
    together = Wishes(
        strings=join([one.strung.fretted for _, one, _ in sets]),
        weights=posed.weights,
        best=BestSetbacks(
            *(np.concatenate([getattr(found, column.name) for _, _, found in sets]) for column in fields(BestSetbacks))
        ),
        nut_free=order.nut == "free",
    )
    return place_bridge(wishes, together, posed.strung.scale, order.work.reach or 0.0)


def _string_by_string(posed: Posed) -> BestSetbacks:
    """What every string wants of a bridge whose saddle was asked to be uniform."""
    (best,) = solve([replace(posed, saddle="free")])
    if isinstance(best, LutherieError):
        raise best
    return best


def _wishes(order: Order, posed: Posed, best: BestSetbacks) -> Wishes:
    """What the strings of a set want."""
    return Wishes(posed.strung.fretted, posed.weights, best, nut_free=order.nut == "free")


def _reslot(order: Order, posed: Posed, best: BestSetbacks) -> Reslotting:
    """Compare with the same board in equal steps at the same true scale."""
    layout = posed.strung.layout
    if layout.true_scale is None or layout.octave_fret is None:
        message = "a rule without an octave fret has no true scale at which to compare it with equal steps"
        raise ImpossibleSetupError(message, field=("compare_with_equal",))
    steps = layout.octave_fret
    equal = replace(order.setup, rule=Equal(steps), scale=layout.true_scale, scale_basis="true")
    other = compensate(equal, order.nut, order.preference, order.saddle)
    return Reslotting(
        steps=steps,
        true_scale=layout.true_scale,
        rms_cents_here=pooled_rms(best.rms.tolist()),
        rms_cents_equal=other.rms_cents,
        strings=[
            ReslottedString(
                pitch=string.pitch,
                saddle_setback=string.saddle_setback,
                nut_setback=string.nut_setback,
                rms_cents=string.rms_cents,
                cents=compare_notes(here, [note.compensated for note in string.cents]),
            )
            for here, string in zip(best.compensated.tolist(), other.strings, strict=True)
        ],
    )
