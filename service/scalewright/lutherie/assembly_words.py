"""What an assembly says in words: the sentence for a work order, the likely cause, and the cautions."""

import math
from collections.abc import Sequence

from scalewright.lutherie.decision import Decision
from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.identification.words import length_in_words
from scalewright.lutherie.known import Known
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.pairing import Held, Pair
from scalewright.lutherie.part import FanScale
from scalewright.lutherie.phrases import listed
from scalewright.lutherie.replacement import BodyJoint, HeldBoards, Replacement
from scalewright.lutherie.slant import Slant
from scalewright.lutherie.spacing import EIGHTEENTH

__all__ = ["notes_of", "statement_of", "why"]

_INCH = 25.4
_SETBACKS = (1.0, 6.0)
"""Mismatches that may be a setback taken for scale: common practice, no source. [mm]"""
_TOLD = {"apart": "do not belong together", "undecided": "can't be told to belong together"}
_NEAR = 0.1
_NUT_MATTERS = 0.2


def statement_of(
    decision: Decision,
    pairs: Sequence[Pair],
    replacements: Sequence[Replacement],
    slants: Sequence[Slant],
    tolerance: float,
) -> str:
    """One sentence for a work order.

    Parameters
    ----------
    decision : {"together", "apart", "undecided"}
        Of the whole.
    pairs : sequence of Pair
        Each part against each other.
    replacements : sequence of Replacement
        Each new board against an old one.
    slants : sequence of Slant
        Each fan part's saddle line against each other's.
    tolerance : float
        How far true scales may differ. [mm]

    Returns
    -------
    str
        Naming the parts, the mismatch in millimetres and inches, and what to do.
    """
    allowed = length_in_words(tolerance, 0.4 * tolerance)
    decisive = [pair for pair in pairs if pair.decision == decision]
    if not decisive:
        off = [(one, joint) for one in replacements if (joint := one.body_joint) and joint.decision == decision]
        if off:
            return _joint_sentence(*off[0], allowed)
        return _slant_sentence(next(slant for slant in slants if slant.decision == decision), allowed)
    worst = max(decisive, key=_size)
    parts = f"{worst.first} and {worst.second}{'' if worst.side == 'whole' else f' on the {worst.side} side'}"
    if decision == "apart" and worst.mismatch is not None:
        return (
            f"{parts} do not belong together: {_apart(worst, worst.mismatch)}, and {allowed} is allowed; do not glue."
        )
    told = "a true scale is not known" if worst.mismatch is None else f"mismatch {_in_words(worst.mismatch)}"
    if worst.deciding is not None:
        return (
            f"Whether {parts} belong together can't be decided with this uncertainty ({told}, {allowed} allowed); do "
            f"not glue yet. {worst.deciding.text}"
        )
    return f"{_all_of(pairs)} belong together by their true scales ({told}, {allowed} allowed)."


def _size(pair: Pair) -> float:
    """Size of a mismatch; one that is not known is the largest. [mm]"""
    return math.inf if pair.mismatch is None else abs(pair.mismatch.value)


def _apart(pair: Pair, mismatch: Estimate) -> str:
    """How two parts differ, what it does, and whether the saddle can make up for it."""
    longer = "longer" if mismatch.value > 0.0 else "shorter"
    text = f"the true scale of {pair.second} is {_in_words(mismatch)} {longer}"
    octave = next((one.cents.value for one in pair.cents if one.fret == 12), None)
    if octave is not None:
        text += f" (fret 12 would sound {abs(octave):.1f} cents {'sharp' if octave > 0.0 else 'flat'})"
    if pair.absorption is not None and pair.absorption.absorbs == "yes":
        text += ", for which only the saddle's travel can make up"
    return text


def _joint_sentence(found: Replacement, joint: BodyJoint, allowed: str) -> str:
    """Sentence about a body joint that is worse than every pair."""
    off = length_in_words(abs(joint.joint_to_bridge.value), max(joint.joint_to_bridge.standard_uncertainty, 0.05))
    farther = "farther from" if joint.joint_to_bridge.value > 0.0 else "nearer to"
    return (
        f"{found.old} and {found.new} {_TOLD[joint.decision]}: with fret {joint.fret} in line at the body, the "
        f"new saddle line lies {off} {farther} the joint than the old one, and {allowed} is allowed; do not glue."
    )


def _slant_sentence(slant: Slant, allowed: str) -> str:
    """Sentence about saddle lines whose slants differ more than the scales of every pair."""
    squares = (slant.first_square_fret, slant.second_square_fret)
    first, second = ("the nut" if fret == 0 else f"fret {fret}" for fret in squares)
    off = length_in_words(abs(slant.offset.value), max(slant.offset.standard_uncertainty, 0.05))
    return (
        f"{slant.first} and {slant.second} {_TOLD[slant.decision]}: {first} of the one is square, and {second} of the "
        f"other, so that with the middles of their saddle lines in line both ends lie {off} apart, and {allowed} is "
        "allowed; do not glue."
    )


def _all_of(pairs: Sequence[Pair]) -> str:
    names = list(dict.fromkeys(name for pair in pairs for name in (pair.first, pair.second)))
    return f"{', '.join(names[:-1])} and {names[-1]}"


def _in_words(mismatch: Estimate) -> str:
    """Size of a mismatch with its uncertainty."""
    half = 0.5 * (mismatch.upper - mismatch.lower)
    spread = f" ± {half:.{_digits(half)}f} mm" if half > 0.0 else ""
    return f"{length_in_words(abs(mismatch.value), max(half, 0.05))}{spread}"


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
            f"{long.part.id} was made to {length_in_words(long.true_scale, 0.05)} as its true scale, and "
            f"{short.part.id} was laid out from the same number by the rule of 18, which gives a shorter true scale."
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


def notes_of(
    decision: Decision,
    pairs: Sequence[Pair],
    known: Sequence[Known],
    held: Sequence[Held],
    boards: Sequence[HeldBoards],
) -> list[Note]:
    """Cautions that come with an answer.

    Parameters
    ----------
    decision : {"together", "apart", "undecided"}
        Of the whole.
    pairs : sequence of Pair
        Each part against each other.
    known : sequence of Known
        What is known of the parts.
    held : sequence of Held
        Each part against each other, as they were compared.
    boards : sequence of HeldBoards
        Each new board against an old one, fret by fret.

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
        if one.source != "label" and one.hypotheses:
            notes += _label_note(one, known)
        if one.hypotheses and one.hypotheses[0].nut_offset and _from_the_nut(one, held):
            offset, spread = one.hypotheses[0].nut_offset, one.hypotheses[0].nut_deviation
            if abs(offset) > max(2.0 * spread, _NUT_MATTERS):
                text = (
                    f"The nut of {one.part.id} lies {offset:+.2f} mm from its pattern; place the other part from a "
                    "fret instead of the nut."
                )
                notes.append(Note("nut-off-its-pattern", text))
    notes += _slant_note(known)
    notes += _idle_notes(known, held, boards)
    if any(
        pair.absorption is not None and pair.absorption.absorbs == "yes" and pair.decision != "together"
        for pair in pairs
    ):
        text = "The saddle's travel can take the mismatch up, and what it takes is lost for compensation."
        notes.append(Note("travel-used-up", text))
    last = {
        "together": "Try the parts dry, with strings at pitch, before gluing.",
        "apart": "Do not glue or cut: make one of the parts anew, or place it by measure and not by its template.",
        "undecided": "Do not glue or cut before the reading that decides.",
    }[decision]
    text = f"{last} Guard blades, catch the dust, and follow local codes and qualified practice."
    notes.append(Note("before-gluing", text))
    return list(dict.fromkeys(notes))


def _slant_note(known: Sequence[Known]) -> list[Note]:
    """Say so where the slant of a fan part could not be compared."""
    nameless = list(dict.fromkeys(one.part.id for one in known if one.part.square_fret is None))
    if not nameless or not any(isinstance(one.part.true_scale, FanScale) for one in known):
        return []
    text = (
        f"Nut and saddle line of a fan board slant by its square fret, which is not known of {listed(nameless)}: "
        "whether the slants agree was not looked at."
    )
    return [Note("slant-not-compared", text)]


def _from_the_nut(known: Known, held: Sequence[Held]) -> bool:
    """Whether something is placed from the nut of a part, or a part from its own."""
    name = known.part.id
    return any(name in {pair.first.part.id, pair.second.part.id} and pair.placed.part.datum == "nut" for pair in held)


def _idle_notes(known: Sequence[Known], held: Sequence[Held], boards: Sequence[HeldBoards]) -> list[Note]:
    """Say what was given of the parts that nothing here depends on."""
    placed = {pair.placed.part.id for pair in held}
    moved = {pair.moved.part.id for pair in held}
    joined = {one.part.id for pair in boards if pair.offsets is not None for one in (pair.old, pair.new)}
    parts = {one.part.id: one.part for one in known}
    idle = {
        "datum-not-used": (
            [name for name, part in parts.items() if part.datum == "fret" and name not in placed],
            "The datum of {} was not used, for the other parts are placed against it, each from its own.",
        ),
        "travel-not-used": (
            [name for name, part in parts.items() if part.travel is not None and name not in moved],
            "The saddle travel of {} was not used: that of the part with the saddle line counts.",
        ),
        "body-joint-not-used": (
            [name for name, part in parts.items() if part.body_joint_fret is not None and name not in joined],
            "The body joint of {} was not looked at, for no board of one scale and a known rule replaces another.",
        ),
    }
    return [Note(slug, text.format(listed(names))) for slug, (names, text) in idle.items() if names]


def _label_note(known: Known, lines: Sequence[Known]) -> list[Note]:
    """Say so where a label is no true scale of its part."""
    part, label = known.part, known.part.label
    if label is None:
        return []
    length = label.length - (part.setback or 0.0) if part.made_to == "string_length" else label.length
    sides = [one for one in lines if one.part is part]
    if any(abs(length - one.true_scale) <= max(2.0 * one.deviation, _NEAR) for one in sides):
        return []
    scales = listed([length_in_words(one.true_scale, one.deviation or 0.05) for one in sides])
    are = "its true scale is" if len(sides) == 1 else "its true scales are"
    text = (
        f"The label of {part.id} says {length_in_words(label.length, 0.05)}, and {are} {scales}; a label is a name, "
        "and may be a layout scale or rounded."
    )
    return [Note("label-is-not-true-scale", text)]
