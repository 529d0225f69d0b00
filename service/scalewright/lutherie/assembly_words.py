"""What an assembly says in words: the sentence for a work order, the likely cause, and the cautions."""

import math
from collections.abc import Sequence

from scalewright.lutherie.decision import Decision
from scalewright.lutherie.estimate import Note
from scalewright.lutherie.identification.words import length_in_words
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.pairing import Pair
from scalewright.lutherie.part import Known
from scalewright.lutherie.spacing import EIGHTEENTH

__all__ = ["notes_of", "statement_of", "why"]

_INCH = 25.4
_SETBACKS = (1.0, 6.0)
"""Mismatches that may be a setback taken for scale: common practice, no source. [mm]"""
_NEAR = 0.1
_NUT_MATTERS = 0.2


def statement_of(decision: Decision, pairs: Sequence[Pair], tolerance: float) -> str:
    """One sentence for a work order.

    Parameters
    ----------
    decision : {"together", "apart", "undecided"}
        Of the whole.
    pairs : sequence of Pair
        Each part against each other.
    tolerance : float
        How far true scales may differ. [mm]

    Returns
    -------
    str
        Naming the parts, the mismatch in millimetres and inches, and what to do.
    """
    allowed = f"{length_in_words(tolerance, 0.02)}"
    decisive = [pair for pair in pairs if pair.decision == decision]
    if decision == "together":
        worst = max(decisive, key=lambda pair: abs(pair.mismatch.value) if pair.mismatch else 0.0)
        return (
            f"{_all_of(pairs)} belong together: their true scales differ by {_mismatch(worst)} at most, and {allowed} "
            "is allowed."
        )
    if decision == "apart":
        worst = max(decisive, key=lambda pair: abs(pair.mismatch.value) if pair.mismatch else 0.0)
        value = worst.mismatch.value if worst.mismatch else 0.0
        longer = "longer" if value > 0.0 else "shorter"
        cents = ""
        octave = next((one.cents.value for one in worst.cents if one.fret == 12), None)
        if octave is not None:
            cents = f" (fret 12 would sound {abs(octave):.1f} cents {'sharp' if octave > 0.0 else 'flat'})"
        absorbed = ""
        if worst.absorption is not None and worst.absorption.absorbs == "yes":
            absorbed = "; only the saddle's travel can make up for it"
        return (
            f"{worst.first} and {worst.second}{_side(worst)} do not belong together: the true scale of {worst.second} "
            f"is {_mismatch(worst)} {longer}, and {allowed} is allowed{cents}{absorbed}; do not glue."
        )
    open_ = decisive[0]
    advice = f" {open_.deciding.text}" if open_.deciding is not None else ""
    told = f"mismatch {_mismatch(open_)}" if open_.mismatch is not None else "a true scale is not known"
    return (
        f"Whether {open_.first} and {open_.second}{_side(open_)} belong together can't be decided with this "
        f"uncertainty ({told}, {allowed} allowed); do not glue yet.{advice}"
    )


def _all_of(pairs: Sequence[Pair]) -> str:
    names = list(dict.fromkeys(name for pair in pairs for name in (pair.first, pair.second)))
    return f"{', '.join(names[:-1])} and {names[-1]}"


def _side(pair: Pair) -> str:
    return "" if pair.side == "whole" else f" on the {pair.side} side"


def _mismatch(pair: Pair) -> str:
    """Size of the mismatch with its uncertainty."""
    if pair.mismatch is None:
        return "unknown"
    half = 0.5 * (pair.mismatch.upper - pair.mismatch.lower)
    spread = f" ± {half:.{_digits(half)}f} mm" if half > 0.0 else ""
    return f"{length_in_words(abs(pair.mismatch.value), max(half, 0.05))}{spread}"


def _digits(half: float) -> int:
    return min(3, max(0, 1 - math.floor(math.log10(max(half, 1e-3)))))


def why(pair: Pair, one: Known, other: Known) -> list[str]:
    """What a mismatch looks like.

    Parameters
    ----------
    pair : Pair
        Two parts that differ.
    one, other : Known
        What is known of them.

    Returns
    -------
    list of str
        Nothing where they agree or where nothing is known.
    """
    if pair.mismatch is None or pair.decision == "together" or abs(pair.mismatch.value) <= pair.tolerance:
        return []
    named = {known.part.id: known for known in (one, other)}
    short, long = sorted(named.values(), key=lambda known: known.true_scale)
    spread = max(2.0 * math.hypot(short.deviation, long.deviation), _NEAR)
    found = []
    share = true_scale_of(EIGHTEENTH, 1.0) or 1.0
    if abs(long.true_scale * share - short.true_scale) <= spread:
        found.append(
            f"{long.part.id} was made to {length_in_words(long.true_scale, 0.05)} as its true scale, and {short.part.id} "
            "was laid out from the same number by the rule of 18, which gives a shorter true scale."
        )
    name = _common_label(short, long, spread)
    if name is not None:
        found.append(
            f"Both can bear the label {name}: {long.part.id} is that long, and {short.part.id} is rounded up to it in "
            "favour of compensation."
        )
    low, high = _SETBACKS
    if not long.part.fretted and low <= long.true_scale - short.true_scale <= high and not found:
        found.append(
            f"{long.part.id} is longer by what a saddle's setback usually is; it may have been made to the string "
            "length instead of the true scale."
        )
    return found


def _common_label(short: Known, long: Known, spread: float) -> str | None:
    """Label with one decimal in inches that both can bear, the shorter one by rounding up."""
    tenths = round(long.true_scale / (0.1 * _INCH))
    label = tenths * 0.1 * _INCH
    if abs(long.true_scale - label) > spread or not label - 0.1 * _INCH < short.true_scale < label:
        return None
    return f"{tenths / 10:.1f} in"


def notes_of(decision: Decision, pairs: Sequence[Pair], known: Sequence[Known]) -> list[Note]:
    """Cautions that come with an answer.

    Parameters
    ----------
    decision : {"together", "apart", "undecided"}
        Of the whole.
    pairs : sequence of Pair
        Each part against each other.
    known : sequence of Known
        What is known of the parts.

    Returns
    -------
    list of Note
        The general one last.
    """
    notes = []
    for one in known:
        found = one.identification
        notes += [] if found is None else found.notes
        if one.source == "definition":
            text = f"The scale of {one.part.id} was taken as stated; a measured one is surer."
            notes.append(Note("taken-as-stated", text))
        if one.source == "readings" and one.part.label is not None and one.hypotheses:
            notes += _label_note(one)
        if one.hypotheses and one.hypotheses[0].nut_offset and one.part.datum == "nut":
            offset, spread = one.hypotheses[0].nut_offset, one.hypotheses[0].nut_deviation
            if abs(offset) > max(2.0 * spread, _NUT_MATTERS):
                text = (
                    f"The nut of {one.part.id} lies {offset:+.2f} mm from its pattern; place the other part from a "
                    "fret instead of the nut."
                )
                notes.append(Note("nut-off-its-pattern", text))
    if any(pair.absorption is not None and pair.absorption.absorbs == "yes" and pair.decision != "together" for pair in pairs):
        text = "The saddle's travel can take the mismatch up, and what it takes is lost for compensation."
        notes.append(Note("travel-used-up", text))
    last = {
        "together": "Try the parts dry, with strings at pitch, before any glue.",
        "apart": "Do not glue or cut: make one of the parts anew, or place it by measure and not by its template.",
        "undecided": "Do not glue or cut before the reading that decides.",
    }[decision]
    text = f"{last} Guard blades, catch the dust, and follow local codes and qualified practice."
    notes.append(Note("before-gluing", text))
    return list(dict.fromkeys(notes))


def _label_note(known: Known) -> list[Note]:
    """Say so where a label is not the true scale that was measured."""
    label = known.part.label
    if label is None or abs(label.length - known.true_scale) <= max(2.0 * known.deviation, _NEAR):
        return []
    text = (
        f"The label of {known.part.id} says {length_in_words(label.length, 0.05)}, and its true scale is "
        f"{length_in_words(known.true_scale, known.deviation)}; ask POST /v1/nominal what the label can mean."
    )
    return [Note("label-is-not-true-scale", text)]
