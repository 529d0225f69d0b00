"""What is said of a label in words: the sentence to print instead of it, and the cautions."""

import math
from collections.abc import Sequence

from scalewright.lutherie.estimate import Estimate, Note
from scalewright.lutherie.identification import Identification
from scalewright.lutherie.identification.words import length_in_words, rule_in_words
from scalewright.lutherie.label import Label
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.spacing import EIGHTEENTH
from scalewright.lutherie.weighing import WeighedMeaning

__all__ = ["notes_of", "statement_of"]

_WORTH_A_WORD = 0.03
"""Meanings less likely than this are not named. [-]"""


def statement_of(
    verdict: str,
    leader: WeighedMeaning,
    true_scale: Estimate | None,
    measured: Identification | None,
    weighed: Sequence[WeighedMeaning],
) -> str:
    """The sentence to print instead of a label.

    Parameters
    ----------
    verdict : {"established", "undecided", "none"}
        What was concluded.
    leader : WeighedMeaning
        The most probable meaning.
    true_scale : Estimate or None
        By label and readings. [mm]
    measured : Identification or None
        What the readings alone say.
    weighed : sequence of WeighedMeaning
        All meanings, the most probable first.

    Returns
    -------
    str
        With lengths in millimetres and inches.
    """
    if verdict == "established" and true_scale is not None and leader.rule is not None:
        half = 0.5 * (true_scale.upper - true_scale.lower)
        share = true_scale_of(leader.rule, 1.0) or 1.0
        laid = f", laid out from {length_in_words(true_scale.value / share, half)}" if leader.rule == EIGHTEENTH else ""
        words = rule_in_words(leader.rule)
        scale = length_in_words(true_scale.value, half)
        return f"{words[0].upper()}{words[1:]}{laid}: true scale {scale} ± {half:.{_digits(half)}f} mm."
    if verdict == "none":
        if measured is not None and measured.true_scale is not None:
            return f"The label does not say what this board is. {measured.statement}"
        return "The label does not say what this board is, and its true scale cannot be told from these readings."
    likely = [one for one in weighed if one.probability >= _WORTH_A_WORD]
    standing = [one for one in weighed if one in likely and one.true_scale is not None]
    shown = dict.fromkeys(length_in_words(one.true_scale, 0.05) for one in standing if one.true_scale is not None)
    listed = " or ".join(list(shown)[:3])
    who = "The label does" if measured is None else "Label and readings do"
    return f"{who} not decide the true scale; it may be {listed or 'another'}: measure before cutting or gluing."


def _digits(half: float) -> int:
    return min(3, max(0, 1 - math.floor(math.log10(max(half, 1e-4)))))


def notes_of(label: Label, measured: Identification | None) -> list[Note]:
    """Cautions that come with the meanings of a label.

    Parameters
    ----------
    label : Label
        The label.
    measured : Identification or None
        What the readings alone say.

    Returns
    -------
    list of Note
        The one about measuring last.
    """
    notes = [] if measured is None else list(measured.notes)
    if not label.unit_given:
        unit = {"in": "inches", "mm": "millimetres", "cm": "centimetres"}[label.unit]
        notes.append(Note("label-unit-inferred", f"The label names no unit; its number fits {unit} alone."))
    notes.append(
        Note(
            "measure-before-gluing",
            "A label is a name. Place a bridge or cut a slot by a true scale that was measured on this board, and try "
            "it dry before gluing; guard blades, and follow local codes and qualified practice.",
        )
    )
    return notes
