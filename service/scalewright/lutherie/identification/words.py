"""What an identification says in words; lengths in millimetres and inches."""

import math
from collections.abc import Sequence
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.spacing import Divisor, Eighteenth, Equal, Listed, Rule

__all__ = [
    "Interval",
    "deviation_in_words",
    "digits_of",
    "fill_statement",
    "length_in_words",
    "rule_in_words",
    "statement_form",
    "statement_of",
]

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


Interval: TypeAlias = Sequence[float]
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
    layout_scale, true_scale : sequence of float or None
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
    nothing = (0.0, 0.0, 0.0, 0.0)
    form = statement_form(verdict, named, coverage, told=true_scale is not None)
    layout, true_scale = layout_scale or nothing, true_scale or nothing
    half, layout_half = 0.5 * (true_scale[3] - true_scale[2]), 0.5 * (layout[3] - layout[2])
    return fill_statement(form, layout[0], _digits(layout_half), true_scale[0], half, _digits(half), probability)


def statement_form(verdict: str, named: Sequence[Rule], coverage: float, *, told: bool) -> str:
    """The sentence of :func:`statement_of` with its numbers left open, for :func:`fill_statement`.

    Parameters
    ----------
    verdict, named, coverage
        As there.
    told : bool
        Whether the true scale is known.

    Returns
    -------
    str
        A format string.
    """
    true = "the true scale cannot be told"
    if told:
        true = f"true scale {{t:.{{d}}f}} mm ({{ti:.{{e}}f}} in) ± {{h:.{{d}}f}} mm ({100.0 * coverage:g} %)"
    if verdict == "established":
        spaced = rule_in_words(named[0])
        if len(named) > 1:
            spaced += f" (not to be told here from {' or '.join([rule_in_words(other) for other in named[1:]])})"
        laid = "laid out from {s:.{k}f} mm ({si:.{l}f} in)"
        return f"{spaced[0].upper()}{spaced[1:]}, {laid}: {true}."
    if verdict == "undecided":
        names = " and ".join([rule_in_words(candidate) for candidate in named])
        first = f"Not decided between {names}" if len(named) > 1 else f"Not established: {names}"
        return f"{first} (the first with probability {{p:.2f}}): {true}."
    unmoved = ", if the nut has not been moved" if told else ""
    return f"None of the rules compared explains these readings: {true}{unmoved}."


def fill_statement(
    form: str, layout: float, layout_digits: int, true: float, half: float, digits: int, probability: float
) -> str:
    """Fill the numbers into a form of :func:`statement_form`.

    Parameters
    ----------
    form : str
        The form.
    layout, true, half : float
        Layout scale, true scale and half of its interval. [mm]
    layout_digits, digits : int
        Decimals in millimetres that the two are given with.
    probability : float
        Probability of the leading rule. [-]

    Returns
    -------
    str
        The sentence.
    """
    return form.format(
        s=layout, k=layout_digits, si=layout / _INCH, l=layout_digits + 1,
        t=true, d=digits, ti=true / _INCH, e=digits + 1, h=half, p=probability,
    )  # fmt: skip


def digits_of(uncertainties: Floats) -> NDArray[np.int64]:
    """Decimals in millimetres that uncertainties [mm] leave: two of their own digits. Any shape."""
    return np.clip(1 - np.floor(np.log10(np.maximum(uncertainties, 1e-4))), 0, 3).astype(np.int64)


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
