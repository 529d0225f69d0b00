"""String sets: strung boards with the frets that count, solved together however many there are."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.compensation.setbacks import BestSetbacks, Freedom, best_setbacks
from scalewright.lutherie.errors import ImpossibleSetupError, NoSaddlePositionError
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.phrases import counted
from scalewright.lutherie.setup import Setup
from scalewright.lutherie.string_path import FrettedStrings
from scalewright.lutherie.stringing import Strung, lay_strings

__all__ = ["Posed", "Preference", "join", "pose", "solve"]

_TOGETHER = 64
"""Sets that are solved at once: their arrays then stay in the processor's cache; measured."""


@dataclass(frozen=True, slots=True)
class Preference:
    """Which frets the setbacks are best for."""

    frets: Sequence[int]
    """Numbers of the frets, each once."""
    weights: Sequence[float]
    """How much the squared error of each counts. [-]"""


@dataclass(frozen=True, slots=True)
class Posed:
    """A strung board, the frets that count and what may move."""

    strung: Strung
    """The board with its strings on."""
    preference: Preference
    """The frets that count."""
    weights: Floats
    """How much the squared error of every fret counts, shape (n_frets,). [-]"""
    nut: Freedom
    """Whether the nut may be set back."""
    saddle: Freedom
    """Whether every string has a saddle setback of its own."""


def pose(setup: Setup, nut: Freedom, preference: Preference | None, saddle: Freedom) -> Posed:
    """Lay the strings over a board and say which frets count.

    Parameters
    ----------
    setup : Setup
        The board, its strings and how they lie.
    nut, saddle : {"fixed", "free", "uniform"}
        What may move.
    preference : Preference or None
        Which frets count; all alike where it is None.

    Returns
    -------
    Posed
        Ready to be solved.

    Raises
    ------
    LutherieError
        A board or strings that :func:`scalewright.lutherie.stringing.lay_strings` refuses.
    ImpossibleSetupError
        Frets that are not on the board or too few of them.
    """
    strung = lay_strings(setup)
    chosen, weights = _weights(preference, setup.frets, nut)
    return Posed(strung, chosen, weights, nut, saddle)


def join(sets: Sequence[FrettedStrings]) -> FrettedStrings:
    """Strings of several boards as one, one set after the other.

    Parameters
    ----------
    sets : sequence of FrettedStrings
        Sets that share the boundary factor and the model of stiffness, and of which all or none have a
        fall, a pressing finger and a sliding length.

    Returns
    -------
    FrettedStrings
        Boards of fewer frets are filled up with their last one, which must then not count.
    """
    first = sets[0]
    frets = max(one.remaining.shape[1] for one in sets)
    return FrettedStrings(
        scale=np.concatenate([one.scale for one in sets]),
        remaining=np.concatenate([_filled(one.remaining, frets) for one in sets]),
        target=np.concatenate([_filled(one.target, frets) for one in sets]),
        nut_height=np.concatenate([one.nut_height for one in sets]),
        saddle_rise=np.concatenate([one.saddle_rise for one in sets]),
        finger=np.concatenate([one.finger for one in sets]),
        kappa=np.concatenate([one.kappa for one in sets]),
        gyration=np.concatenate([one.gyration for one in sets]),
        boundary=first.boundary,
        stiffness=first.stiffness,
        fall=None if first.fall is None else np.concatenate([_filled(_given(one.fall), frets) for one in sets]),
        pressed=None if first.pressed is None else np.concatenate([_given(one.pressed) for one in sets]),
        beyond=None if first.beyond is None else np.concatenate([_given(one.beyond) for one in sets]),
    )


def solve(posed: Sequence[Posed]) -> list[BestSetbacks | NoSaddlePositionError]:
    """Best setbacks of many strung boards.

    Parameters
    ----------
    posed : sequence of Posed
        The boards.

    Returns
    -------
    list of BestSetbacks or NoSaddlePositionError
        Of each in order; the refusal names the first string that no saddle brings near its pitches.
    """
    alike: dict[tuple[object, ...], list[int]] = {}
    for index, one in enumerate(posed):
        strings = one.strung.fretted
        options = (strings.fall is None, strings.pressed is None, strings.beyond is None)
        alike.setdefault((strings.boundary, strings.stiffness, one.nut, one.saddle, options), []).append(index)
    solved: list[BestSetbacks | NoSaddlePositionError | None] = [None] * len(posed)
    for indices in alike.values():
        for start in range(0, len(indices), _TOGETHER):
            chunk = indices[start : start + _TOGETHER]
            for index, best in zip(chunk, _solve_alike([posed[index] for index in chunk]), strict=True):
                solved[index] = best
    return [best for best in solved if best is not None]


def _solve_alike(posed: Sequence[Posed]) -> list[BestSetbacks | NoSaddlePositionError]:
    """Solve boards that share all but numbers."""
    first = posed[0]
    if len(posed) == 1:
        strings = first.strung.fretted
        return [_rested(best_setbacks(strings, first.weights, saddle=first.saddle, nut=first.nut))]
    strings = join([one.strung.fretted for one in posed])
    sizes = np.array([len(one.strung.opened) for one in posed])
    weights = np.zeros((len(posed), strings.remaining.shape[1]))
    for row, one in zip(weights, posed, strict=True):
        row[: len(one.weights)] = one.weights
    best = best_setbacks(strings, np.repeat(weights, sizes, axis=0), saddle=first.saddle, nut=first.nut, sizes=sizes)
    found = []
    end = 0
    for one in posed:
        start, end = end, end + len(one.strung.opened)
        rows, frets = slice(start, end), len(one.weights)
        found.append(
            _rested(
                BestSetbacks(
                    saddle=best.saddle[rows],
                    nut=best.nut[rows],
                    uncompensated=best.uncompensated[rows, :frets],
                    compensated=best.compensated[rows, :frets],
                    rms=best.rms[rows],
                    settled=best.settled[rows],
                )
            )
        )
    return found


def _rested(best: BestSetbacks) -> BestSetbacks | NoSaddlePositionError:
    """Setbacks of a board, or the refusal where a search came to no rest."""
    if best.settled.all():
        return best
    message = (
        "no saddle position brings this string near its pitches; check the scale, the heights and the string, "
        "or let other frets count"
    )
    return NoSaddlePositionError(message, field=("strings", int(np.argmin(best.settled))))


def _given(column: Floats | None) -> Floats:
    """Return a column that is there."""
    assert column is not None  # noqa: S101  (boards are joined only with their like)
    return column


def _filled(rows: Floats, frets: int) -> Floats:
    """Rows of a number of frets, the last one repeated."""
    missing = frets - rows.shape[1]
    return rows if missing == 0 else np.concatenate([rows, np.repeat(rows[:, -1:], missing, axis=1)], axis=1)


def _weights(preference: Preference | None, frets: int, nut: Freedom) -> tuple[Preference, Floats]:
    """Frets and weights that count, and the weight of every fret of the board, shape (n_frets,). [-]"""
    given = preference or Preference(list(range(1, frets + 1)), [1.0] * frets)
    if any(not 1 <= fret <= frets for fret in given.frets):
        message = f"a fret that counts has to be on the board, 1 to {frets}"
        raise ImpossibleSetupError(message, field=("optimise_for", "frets"), most=frets)
    if len(set(given.frets)) < len(given.frets):
        message = "a fret is listed twice; list each fret once, with a larger weight if it matters more"
        raise ImpossibleSetupError(message, field=("optimise_for", "frets"))
    if len(given.weights) != len(given.frets):
        listed = counted(len(given.frets), "fret")
        message = f"{listed} and {counted(len(given.weights), 'weight')} do not match; give one for each"
        raise ImpossibleSetupError(message, field=("optimise_for", "weights"), given=len(given.weights))
    weights = np.zeros(frets)
    weights[np.array(given.frets, dtype=np.intp) - 1] = given.weights
    counting, needed = int(np.count_nonzero(weights)), 1 if nut == "fixed" else 2
    if counting < needed:
        message = (
            f"{needed} fret(s) with a weight above zero are needed to place the saddle"
            f"{'' if nut == 'fixed' else ' and the nut'}, and {counting} count(s)"
        )
        place = ("frets",) if preference is None else ("optimise_for", "frets")
        raise ImpossibleSetupError(message, field=place, given=counting, needed=needed)
    return given, weights
