"""What an identification says in words; lengths in millimetres and inches."""

import math
from collections.abc import Sequence
from typing import TypeAlias

from scalewright.lutherie.spacing import Divisor, Eighteenth, Equal, Listed, Rule

__all__ = ["Interval", "deviation_in_words", "length_in_words", "rule_in_words", "statement_of"]

_INCH = 25.4
"""One inch, exactly. [mm]"""

_MISREADINGS = (
    (1.0, "1 mm"),
    (2.0, "2 mm"),
    (5.0, "5 mm"),
    (10.0, "10 mm"),
    (100.0, "100 mm"),
    (_INCH / 32.0, "1/32 in"),
    (_INCH / 16.0, "1/16 in"),
    (_INCH / 8.0, "1/8 in"),
    (_INCH / 4.0, "1/4 in"),
    (_INCH / 10.0, "0.1 in"),
    (_INCH, "1 in"),
)
"""How far a misreading by one mark or one digit goes: common practice, no source. [mm]"""

_MATCH = 3.0
"""Standard deviations within which a deviation counts as such a step."""


def rule_in_words(rule: Rule) -> str:
    """A spacing rule as a person would call it."""
    match rule:
        case Equal(steps):
            return "equal spacing" if steps == 12 else f"equal spacing in {steps} steps"
        case Eighteenth():
            return "the rule of 18"
        case Divisor(divisor):
            return f"a constant divisor of {divisor:.3f}"
        case Listed():
            return "listed pitches"


def _digits(uncertainty: float) -> int:
    """Decimals in millimetres that an uncertainty leaves: two of its own digits."""
    return min(3, max(0, 1 - math.floor(math.log10(max(uncertainty, 1e-4)))))


def length_in_words(length: float, uncertainty: float) -> str:
    """A length with the digits that its uncertainty leaves. Both in millimetres.

    Parameters
    ----------
    length, uncertainty : float
        The length and its standard uncertainty. [mm]

    Returns
    -------
    str
        Such as ``624.08 mm (24.570 in)``.
    """
    digits = _digits(uncertainty)
    return f"{length:.{digits}f} mm ({length / _INCH:.{digits + 1}f} in)"


Interval: TypeAlias = tuple[float, float, float, float]
"""An estimate as value, standard deviation, lower and upper. [mm]"""


def statement_of(
    verdict: str,
    named: Sequence[Rule],
    layout_scale: Interval | None,
    true_scale: Interval | None,
    probability: float,
    coverage: float,
) -> str:
    """One sentence for a label or a work order.

    Parameters
    ----------
    verdict : {"established", "undecided", "none"}
        What was concluded.
    named : sequence of Rule
        The leading rule, then those of its family if it is established, or else the strongest rival.
    layout_scale, true_scale : tuple of float or None
        What is known of them: value, deviation, lower and upper. [mm]
    probability : float
        Probability of the leading rule. [-]
    coverage : float
        Probability that a stated interval holds.

    Returns
    -------
    str
        With lengths in millimetres and inches.
    """
    if true_scale is None:
        true = "the true scale cannot be told"
    else:
        value, _, lower, upper = true_scale
        half = 0.5 * (upper - lower)
        true = f"true scale {length_in_words(value, half)} ± {half:.{_digits(half)}f} mm ({100.0 * coverage:g} %)"
    if verdict == "established" and layout_scale is not None:
        spaced = rule_in_words(named[0])
        if len(named) > 1:
            spaced += f" (not to be told here from {' or '.join([rule_in_words(other) for other in named[1:]])})"
        laid = length_in_words(layout_scale[0], 0.5 * (layout_scale[3] - layout_scale[2]))
        return f"{spaced[0].upper()}{spaced[1:]}, laid out from {laid}: {true}."
    if verdict == "undecided":
        names = " and ".join([rule_in_words(candidate) for candidate in named])
        first = f"Not decided between {names}" if len(named) > 1 else f"Not established: {names}"
        return f"{first} (the first with probability {probability:.2f}): {true}."
    return f"None of the rules compared explains these readings: {true}."


def deviation_in_words(start: int, end: int, deviation: float, uncertainty: float) -> str:
    """What a reading that does not fit looks like.

    Parameters
    ----------
    start, end : int
        Frets that it was taken between.
    deviation : float
        Reading minus prediction. [mm]
    uncertainty : float
        Standard uncertainty of the reading. [mm]

    Returns
    -------
    str
        Such as ``fret 7 reads 1.6 mm long, as a misreading by 1/16 in would``.
    """
    where = f"fret {end}" if start == 0 else f"fret {start} to {end}"
    size = abs(deviation)
    text = f"{where} reads {size:.{1 if size >= 1.0 else 2}f} mm {'long' if deviation > 0.0 else 'short'}"
    step, name = min(_MISREADINGS, key=lambda pair: abs(pair[0] - size))
    if abs(step - size) <= _MATCH * uncertainty:
        return f"{text}, as a misreading by {name} would"
    return text
