"""What an identification says in words; lengths in millimetres and inches."""

import math
from collections.abc import Mapping, Sequence
from itertools import chain
from typing import NamedTuple, TypeAlias

import numpy as np
from numpy.typing import NDArray

from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.spacing import Divisor, Eighteenth, Equal, Listed, Rule

__all__ = [
    "Interval",
    "StatementForm",
    "deviation_in_words",
    "digits_of",
    "fill_statements",
    "length_in_words",
    "rule_in_words",
    "statement_form",
    "statement_numbers",
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


_DIVIDED = "a constant divisor of %s"


def rule_in_words(rule: Rule) -> str:
    """A spacing rule as a person would call it."""
    match rule:
        case Equal(steps):
            return "equal spacing" if steps == 12 else f"equal spacing in {steps} steps"
        case Eighteenth():
            return "the rule of 18"
        case Divisor(divisor):
            return _DIVIDED % f"{divisor:.3f}"
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
    form = statement_form(verdict, named, coverage, told=true_scale is not None)
    numbers: dict[str, float] = {"probability": probability}
    for name, estimate in (("layout", layout_scale), ("true", true_scale)):
        if estimate is not None:
            numbers["half"] = half = 0.5 * (estimate[3] - estimate[2])
            digits = _digits(half)
            shown = (digits, estimate[0], digits + 1, estimate[0] / _INCH)
            numbers |= zip(_lengths_of(name), shown, strict=True)
    return form.text % tuple(numbers[name] for name in form.numbers)


class StatementForm(NamedTuple):
    """The sentence of :func:`statement_of` with its numbers left open."""

    text: str
    """A format string for the ``%`` operator."""
    numbers: tuple[str, ...]
    """Which of :func:`statement_numbers` go into it, in order."""


def statement_form(
    verdict: str, named: Sequence[Rule], coverage: float, *, told: bool, free: int | None = None
) -> StatementForm:
    """The sentence of :func:`statement_of` with its numbers left open, for :func:`fill_statements`.

    Parameters
    ----------
    verdict, named, coverage
        As there.
    told : bool
        Whether the true scale is known.
    free : int, optional
        Which of the rules named has its divisor left open too.

    Returns
    -------
    StatementForm
        The form.
    """
    rules = [_DIVIDED % "%.3f" if index == free else rule_in_words(rule) for index, rule in enumerate(named)]
    divisor = () if free is None else ("divisor",)
    true = "the true scale cannot be told"
    lengths: tuple[str, ...] = ()
    if told:
        true = f"true scale {_LENGTH} ± %.*f mm ({100.0 * coverage:g} %%)"
        lengths = (*_lengths_of("true"), "true digits", "half")
    if verdict == "established":
        spaced = rules[0]
        if len(rules) > 1:
            spaced += f" (not to be told here from {' or '.join(rules[1:])})"
        text = f"{spaced[0].upper()}{spaced[1:]}, laid out from {_LENGTH}: {true}."
        return StatementForm(text, (*divisor, *_lengths_of("layout"), *lengths))
    if verdict == "undecided":
        first = f"Not decided between {' and '.join(rules)}" if len(rules) > 1 else f"Not established: {rules[0]}"
        text = f"{first} (the first with probability %.2f): {true}."
        return StatementForm(text, (*divisor, "probability", *lengths))
    unmoved = ", if the nut has not been moved" if told else ""
    return StatementForm(f"None of the rules compared explains these readings: {true}{unmoved}.", lengths)


_LENGTH = "%.*f mm (%.*f in)"


def _lengths_of(name: str) -> tuple[str, ...]:
    """What :data:`_LENGTH` takes."""
    return f"{name} digits", f"{name} mm", f"{name} in digits", f"{name} in"


def statement_numbers(layout: Floats, true: Floats, probability: Floats, divisor: Floats) -> dict[str, list[float]]:
    """The numbers that statements on M boards may take.

    Parameters
    ----------
    layout, true : ndarray, shape (4, M)
        Estimates of layout scale and true scale: value, deviation, lower and upper. [mm]
    probability, divisor : ndarray, shape (M,)
        Of the leading rule; the free divisor. [-]

    Returns
    -------
    dict of str to list
        By name.
    """
    half = 0.5 * (true[3] - true[2])
    numbers = {"probability": probability.tolist(), "divisor": divisor.tolist(), "half": half.tolist()}
    for name, estimate in (("layout", layout), ("true", true)):
        digits = digits_of(0.5 * (estimate[3] - estimate[2]))
        shown = (digits, estimate[0], digits + 1, estimate[0] / _INCH)
        numbers |= zip(_lengths_of(name), [column.tolist() for column in shown], strict=True)
    return numbers


def fill_statements(form: StatementForm, numbers: Mapping[str, Sequence[float]]) -> list[str]:
    """Fill the numbers of many boards into a form of :func:`statement_form`.

    Parameters
    ----------
    form : StatementForm
        The form.
    numbers : mapping of str to sequence
        By name, as :func:`statement_numbers` gives them.

    Returns
    -------
    list of str
        A sentence for each board.
    """
    count = len(numbers["probability"])
    flat = chain.from_iterable(zip(*[numbers[name] for name in form.numbers], strict=True))
    return (f"{form.text}\n" * count % tuple(flat)).split("\n")[:-1]


def digits_of(uncertainties: Floats) -> NDArray[np.int64]:
    """Decimals in millimetres that uncertainties [mm] leave: two of their own digits. Any shape."""
    # Where nothing is known nothing is said, and any number will do.
    known = np.fmax(uncertainties, 1e-4)
    return np.clip(1 - np.floor(np.log10(known)), 0, 3).astype(np.int64)


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
