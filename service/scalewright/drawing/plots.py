"""Plots: cents by fret and string of an intonation, and residuals by fret of an identification."""

from collections.abc import Sequence

from scalewright.drawing.axes import Axes, Series, room_for, signed
from scalewright.drawing.letters import wrap
from scalewright.drawing.page import Drawing, Text
from scalewright.lutherie.fingerboard.statement import rule_in_words
from scalewright.lutherie.identification import Identification
from scalewright.lutherie.intonation import Intonation

__all__ = ["identification_plot", "intonation_plot"]

_WIDTH, _HEIGHT = 225.0, 120.0
_LEFT, _LOW, _RIGHT, _TOP = 24.0, 14.0, 74.0, 26.0
_TITLE, _BODY = 4.5, 3.0
_UNITS = {"mm": "millimetres", "in": "inches"}
_EDGE = 2.0
_LEAST = 5e-5
"""Less than any instrument shows, in millimetres, inches or cents: what is left of exact readings is no pattern."""

_SHOWN = 3
"""How many rules of an identification are drawn."""


def _begin(title: str, sentence: str) -> Drawing:
    drawing = Drawing(_WIDTH, _HEIGHT, title=title, description=sentence)
    letters = drawing.layer("text")
    letters.append(Text(_LEFT, _HEIGHT - 8.0, title, _TITLE, bold=True))
    for index, line in enumerate(wrap(sentence, _BODY, _WIDTH - _LEFT - 6.0)[:3]):
        letters.append(Text(_LEFT, _HEIGHT - 12.5 - 3.9 * index, line, _BODY))
    return drawing


def _frame(drawing: Drawing, frets: tuple[float, float], values: Sequence[float]) -> Axes:
    """Frame with room for all values, and zero."""
    low, high = min((0.0, *values)), max((0.0, *values))
    room = max(0.08 * (high - low), _LEAST)
    span = low - room, high + room
    left = max(_LEFT, room_for(span) + _EDGE)
    return Axes(drawing, left, _LOW, _WIDTH - left - _RIGHT, _HEIGHT - _LOW - _TOP, frets, span)


def intonation_plot(intonation: Intonation) -> Drawing:
    """Draw the error of every string at every fret.

    Parameters
    ----------
    intonation : Intonation
        The errors.

    Returns
    -------
    Drawing
        One line for each string, told apart by colour, dashes and sign.
    """
    worst = max(intonation.strings, key=lambda string: abs(string.worst_cents))
    sentence = (
        f"{_capital(rule_in_words(intonation.rule))}, open strings in tune, above zero is sharp. The largest error is "
        f"{signed(f'{worst.worst_cents:+.1f}')} cents, string {worst.pitch} at fret {worst.worst_fret}."
    )
    drawing = _begin("How far out of tune the frets sound", sentence)
    series = [
        Series(f"{number}: {string.pitch}", [(note.fret, note.cents) for note in string.cents])
        for number, string in enumerate(intonation.strings, 1)
    ]
    last = max(note.fret for string in intonation.strings for note in string.cents)
    cents = [note.cents for string in intonation.strings for note in string.cents]
    axes = _frame(drawing, (0.0, last + 0.5), cents)
    axes.draw_frame("fret", "error in cents")
    axes.draw_series(series)
    return drawing


def identification_plot(identification: Identification, frets: Sequence[int], unit: str) -> Drawing:
    """Draw what the likeliest rules leave of every reading.

    Parameters
    ----------
    identification : Identification
        The fits.
    frets : sequence of int
        Fret at which every reading ends, in the order of the readings.
    unit : {"mm", "in"}
        Unit of the residuals.

    Returns
    -------
    Drawing
        Signs for each reading and rule; readings that were set aside are ringed and named.
    """
    scale = 1.0 if unit == "mm" else 5.0 / 127.0
    drawing = _begin("What each rule leaves of the readings", identification.statement)
    aside = {suspect.reading: suspect for suspect in identification.suspect_readings}
    shown = identification.candidates[:_SHOWN]
    series = [
        Series(
            f"{rule_in_words(fit.rule)}, {_percent(fit.probability)}",
            [
                (fret, residual * scale)
                for index, (fret, residual) in enumerate(zip(frets, fit.residuals, strict=True))
                if index not in aside
            ],
            joined=False,
        )
        for fit in shown
    ]
    values = [value for one in series for _, value in one.values]
    axes = _frame(drawing, (0.0, max(frets) + 0.5), values)
    axes.draw_frame("fret", f"reading minus rule in {_UNITS[unit]}")
    axes.draw_series(series)
    for index, suspect in enumerate(aside.values()):
        off = signed(f"{suspect.deviation * scale:+.{2 if unit == 'mm' else 3}f}")
        axes.ring(
            suspect.fret,
            suspect.deviation * scale,
            f"set aside: fret {suspect.fret}, {off} {unit}",
            len(series) + index,
        )
    return drawing


def _percent(probability: float) -> str:
    """Probability for reading; never quite all or nothing."""
    if probability > 0.999:
        return "over 99.9 %"
    return "under 0.1 %" if probability < 0.001 else f"{100.0 * probability:.1f} %"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
