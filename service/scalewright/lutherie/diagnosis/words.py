"""Words: what a diagnosis says in sentences, and what it says it can't tell."""

from collections.abc import Sequence

from scalewright.lutherie.diagnosis.answer import SpacingDiagnosis, StringDiagnosis, StringVerdict
from scalewright.lutherie.diagnosis.complaint import Complaint
from scalewright.lutherie.diagnosis.moves import FittedString, MoveFit
from scalewright.lutherie.diagnosis.trust import Disagreement
from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.phrases import counted, numbered, plain

__all__ = ["cannot_tell", "contradiction", "notes", "of_string", "statement", "suspicion"]

_INCH = 25.4
"""An inch, by definition. [mm]"""

_SADDLE_AT_MOST, _NUT_AT_MOST = 10.0, 5.0
"""Saddle and nut are hardly ever misplaced by more; our choice. [mm]"""

_COARSE = 0.5
"""Standard uncertainty of a move beyond which the tuner is called too coarse for it; our choice. [mm]"""


def of_string(
    string: FittedString,
    verdict: StringVerdict,
    saddle: Estimate | None,
    nut: Estimate | None,
    alone: tuple[MoveFit | None, MoveFit | None],
) -> str:
    """One sentence on what to do with a string."""
    name = f"String {string.number}"
    out = sorted(set(string.frets[string.weights == 0.0].tolist()))
    if out:
        name += f" ({numbered('fret', out)}, off by {'itself' if len(out) == 1 else 'themselves'}, left out)"
    if verdict == "in_tune":
        return f"{name}: as near to tune as these readings can tell; leave it."
    if verdict == "undecided":
        by_saddle, by_nut = alone
        if by_saddle is None:
            if saddle is None:
                return f"{name}: these readings can't tell what is wrong; read the open string and another fret."
            return f"{name}: {_saddle(saddle)}; the nut can't be told from the tuning without the open string."
        ways = [f"the saddle {_way(float(by_saddle.values[1]))} by {_length(float(by_saddle.values[1]))}"]
        if by_nut is not None:
            ways.append(f"the nut {_nut_way(float(by_nut.values[2]))} by {_length(float(by_nut.values[2]))}")
        doubt = _too_far(by_saddle.values[1], 0.0 if by_nut is None else by_nut.values[2])
        return (
            f"{name}: {' or '.join(ways)} would mend this one fret, and one fret can't tell which; read another{doubt}."
        )
    parts = [_saddle(saddle)] if saddle is not None else []
    if nut is not None:
        parts.append(_nut(nut))
    elif not string.open_known:
        parts.append("the nut can't be told from the tuning without the open string")
    return f"{name}: {', and '.join(parts)}{_too_far(_least(saddle), _least(nut))}."


def contradiction(string: FittedString, disagreement: Disagreement) -> str:
    """One sentence on a string whose readings no move brings together."""
    name, fret = f"String {string.number}", disagreement.fret
    note = f"fret {fret}" if fret else "the open string"
    if disagreement.between is not None:
        low, high = disagreement.between
        return (
            f"{name}: its readings contradict one another ({note} reads both {low:+.1f} and {high:+.1f} cents), so "
            f"they tell of no move; read {note} again before anything is moved."
        )
    return (
        f"{name}: its readings contradict one another (they scatter by {disagreement.scatter:.1f} cents about the best "
        f"of all moves, which is more than this tuner explains), so they tell of no move; read them again, {note} "
        "first, before anything is moved."
    )


def _least(move: Estimate | None) -> float:
    """How far a move goes at the least. [mm]"""
    if move is None or move.lower < 0.0 < move.upper:
        return 0.0
    return min(abs(move.lower), abs(move.upper))


def _too_far(saddle: float, nut: float) -> str:
    """A caution where a move is larger than a misplaced break point accounts for."""
    if abs(saddle) <= _SADDLE_AT_MOST and abs(nut) <= _NUT_AT_MOST:
        return ""
    return (
        "; a move this large is more often a wrong scale, tuning or fret than a misplaced break point, so measure the "
        "board before anything is moved"
    )


def _length(move: float) -> str:
    return f"{abs(move):.2f} mm ({abs(move) / _INCH:.3f} in)"


def _half(estimate: Estimate) -> float:
    return 0.5 * (estimate.upper - estimate.lower)


def _way(move: float) -> str:
    return "back, away from the nut," if move > 0.0 else "forward, towards the nut,"


def _nut_way(move: float) -> str:
    return "back, away from fret 1," if move > 0.0 else "forward, towards fret 1,"


def _saddle(move: Estimate) -> str:
    sure = "" if move.lower > 0.0 or move.upper < 0.0 else " (it may as well stay)"
    return f"move the saddle {_way(move.value)} by {_length(move.value)} ± {_half(move):.2f} mm{sure}"


def _nut(move: Estimate) -> str:
    sure = "" if move.lower > 0.0 or move.upper < 0.0 else " (it may as well stay)"
    return f"the nut's front edge {_nut_way(move.value)} by {_length(move.value)} ± {_half(move):.2f} mm{sure}"


def statement(strings: Sequence[StringDiagnosis], contradicted: Sequence[int]) -> str:
    """One sentence on the whole board."""
    counts = {
        verdict: sum(string.verdict == verdict for string in strings) for verdict in ("move", "in_tune", "undecided")
    }
    told = {
        "move": ("calls for a move", "call for a move"),
        "in_tune": ("is as near to tune as the readings can tell", "are as near to tune as the readings can tell"),
        "undecided": ("can't be decided by them", "can't be decided by them"),
    }
    parts = [f"{count} {told[verdict][count > 1]}" for verdict, count in counts.items() if count]
    text = f"Of {counted(len(strings), 'string')} read, {', '.join(parts)}"
    if contradicted:
        text += (
            f"; the readings of {numbered('string', contradicted)} contradict one another: measure again before "
            "anything is moved there"
        )
    return f"{text}."


def suspicion(string: FittedString, index: int, deviation: float) -> str:
    """What a reading may be that the others contradict."""
    side = "sharp" if deviation > 0.0 else "flat"
    return (
        f"String {string.number} at fret {int(string.frets[index])} reads {abs(deviation):.1f} cents too {side} for "
        "the others: read it again; if it stays, look at that fret, its crown and how hard it is pressed."
    )


def cannot_tell(
    complaint: Complaint, strings: Sequence[FittedString], spacing: SpacingDiagnosis, contradicted: Sequence[int]
) -> list[Note]:
    """What these readings can't tell apart."""
    told = []
    if contradicted:
        text = (
            f"What to move can't be told on {numbered('string', contradicted)}: the readings contradict one another. "
            "Read them again; if they stay, look at the tuner, the frets and how hard the strings are pressed."
        )
        told.append(Note("contradictory-readings", text))
    strings = [string for string in strings if string.number not in contradicted]
    single = [string.number for string in strings if string.open_known and not string.told]
    if single:
        text = f"Saddle and nut can't be told apart on {numbered('string', single)}: only one fret was read there."
        told.append(Note("saddle-or-nut", text))
    loose = [string.number for string in strings if not string.open_known]
    if loose and complaint.nut_may_move:
        text = f"Nut and tuning can't be told apart on {numbered('string', loose)}: the open string was not read."
        told.append(Note("nut-or-tuning", text))
    coarse = [string.number for string in strings if string.told and max(map(string.fit.sigma, (1, 2))) > _COARSE]
    if coarse:
        text = (
            f"With this tuner the moves of {numbered('string', coarse)} are known to half a millimetre at best: read "
            "more frets, more often, or with a finer tuner."
        )
        told.append(Note("tuner-too-coarse", text))
    if spacing.verdict == "undecided":
        told.append(Note("spacing-rule", spacing.statement))
    text = (
        "Stretch, stiffness and misplaced break points can't be told apart from cents: the answer is the move that "
        "mends, not its cause."
    )
    told.append(Note("cause", text))
    return told


def notes(complaint: Complaint) -> list[Note]:
    """What the numbers rest on, and cautions."""
    return [
        Note(
            "reading-uncertainty",
            f"Each reading has a standard uncertainty of {_cents(complaint.tuner_uncertainty)} unless it says "
            f"otherwise, and {_cents(complaint.model_uncertainty)} for what no move of an ideal string explains.",
        ),
        Note("height-first", "Set relief, action and nut height, and fit fresh strings, before anything is moved."),
        Note(
            "care-at-the-bench",
            "Slacken the strings before working on saddle or nut and protect your eyes; bone dust is harmful. "
            "A glued bridge is moved by qualified repairers only.",
        ),
    ]


def _cents(number: float) -> str:
    return f"{plain(number)} cent{'' if number == 1.0 else 's'}"
