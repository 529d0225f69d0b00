"""The statement of a board: one sentence that a person can put on a drawing or a work order."""

from scalewright.lutherie.fingerboard.plan import Plan
from scalewright.lutherie.phrases import counted
from scalewright.lutherie.spacing import Divisor, Eighteenth, Equal, Listed, Rule

__all__ = ["rule_in_words", "scale_in_words", "statement_of"]


def rule_in_words(rule: Rule) -> str:
    """Name of a rule as people say it."""
    match rule:
        case Equal(12):
            return "equal spacing"
        case Equal(steps):
            return f"equal spacing in {steps} steps"
        case Eighteenth():
            return "rule of 18"
        case Divisor(divisor):
            return f"divisor {divisor:.6g}"
        case Listed():
            return "listed pitches"


def scale_in_words(scale: float | None) -> str:
    """Scale in both units, for reading."""
    return "none (no octave fret)" if scale is None else f"{scale:.2f} mm ({scale / 25.4:.3f} in)"


def statement_of(
    plan: Plan, bass: Rule, treble: Rule, layout: tuple[float, float], true: tuple[float | None, float | None]
) -> str:
    """Statement of a board.

    Parameters
    ----------
    plan : Plan
        What it was drawn up from.
    bass, treble : Rule
        Rules of the outer strings.
    layout, true : pair of float
        Layout and true scales of the lowest string and of string 1. [mm]

    Returns
    -------
    str
        One sentence.
    """
    hand = "" if plan.handedness == "right" else ", left-handed"
    head = f"{counted(plan.frets, 'fret')}, {counted(plan.strings.count, 'string')}{hand}"
    if bass == treble and layout[0] == layout[1]:
        return (
            f"{head}: {rule_in_words(bass)}, layout scale {scale_in_words(layout[0])}, "
            f"true scale {scale_in_words(true[0])}."
        )
    sides = "; ".join(
        f"{name} {rule_in_words(rule)}, layout scale {scale_in_words(length)}, true scale {scale_in_words(end)}"
        for name, rule, length, end in zip(("bass", "treble"), (bass, treble), layout, true, strict=True)
    )
    square = "the nut" if plan.square_fret == 0 else f"fret {plan.square_fret}"
    return f"{head}, fan square at {square}: {sides}."
