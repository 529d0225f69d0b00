"""Words: what a diagnosis says in sentences, and what it says it can't tell."""

from collections.abc import Sequence

from scalewright.lutherie.diagnosis.answer import SpacingDiagnosis, StringDiagnosis, StringVerdict
from scalewright.lutherie.diagnosis.complaint import Complaint
from scalewright.lutherie.diagnosis.moves import FittedString, MoveFit
from scalewright.lutherie.estimate import Estimate, Note

__all__ = ["cannot_tell", "notes", "of_string", "statement", "suspicion"]

_INCH = 25.4
"""An inch, by definition. [mm]"""

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
        return f"{name}: {' or '.join(ways)} would mend this one fret, and one fret can't tell which; read another."
    parts = [_saddle(saddle)] if saddle is not None else []
    if nut is not None:
        parts.append(_nut(nut))
    elif not string.open_known:
        parts.append("the nut can't be told from the tuning without the open string")
    return f"{name}: {', and '.join(parts)}."


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


def statement(strings: Sequence[StringDiagnosis]) -> str:
    """One sentence on the whole board."""
    counted = [sum(string.verdict == verdict for string in strings) for verdict in ("move", "in_tune", "undecided")]
    told = ("call for a move", "are as near to tune as the readings can tell", "can't be decided by them")
    parts = [f"{count} {words}" for count, words in zip(counted, told, strict=True) if count]
    return f"Of {len(strings)} string{'s' if len(strings) > 1 else ''} read, {', '.join(parts)}."


def suspicion(string: FittedString, index: int, deviation: float) -> str:
    """What a reading may be that the others contradict."""
    side = "sharp" if deviation > 0.0 else "flat"
    return (
        f"String {string.number} at fret {int(string.frets[index])} reads {abs(deviation):.1f} cents too {side} for "
        "the others: read it again; if it stays, look at that fret, its crown and how hard it is pressed."
    )


def cannot_tell(complaint: Complaint, strings: Sequence[FittedString], spacing: SpacingDiagnosis) -> list[Note]:
    """What these readings can't tell apart."""
    told = []
    single = [string.number for string in strings if string.open_known and not string.told]
    if single:
        text = f"Saddle and nut can't be told apart on string {_listed(single)}: only one fret was read there."
        told.append(Note("saddle-or-nut", text))
    loose = [string.number for string in strings if not string.open_known]
    if loose and complaint.nut_may_move:
        text = f"Nut and tuning can't be told apart on string {_listed(loose)}: the open string was not read."
        told.append(Note("nut-or-tuning", text))
    coarse = [string.number for string in strings if string.told and max(map(string.fit.sigma, (1, 2))) > _COARSE]
    if coarse:
        text = (
            f"With this tuner the moves of string {_listed(coarse)} are known to half a millimetre at best: read more "
            "frets, more often, or with a finer tuner."
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


def _listed(numbers: Sequence[int]) -> str:
    return ", ".join(map(str, numbers))


def notes(complaint: Complaint) -> list[Note]:
    """What the numbers rest on, and cautions."""
    return [
        Note(
            "reading-uncertainty",
            f"Each reading has a standard uncertainty of {complaint.tuner_uncertainty:g} cents unless it says "
            f"otherwise, and {complaint.model_uncertainty:g} cents for what no move of an ideal string explains.",
        ),
        Note("height-first", "Set relief, action and nut height, and fit fresh strings, before anything is moved."),
        Note(
            "care-at-the-bench",
            "Slacken the strings before working on saddle or nut and protect your eyes; bone dust is harmful. "
            "A glued bridge is moved by qualified repairers only.",
        ),
    ]
