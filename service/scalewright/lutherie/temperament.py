"""Pitches and temperaments: what a note name sounds, and what pitch every fret should give."""

import math
import re
from typing import TypeAlias

import numpy as np

from scalewright.lutherie import spacing
from scalewright.lutherie.errors import PitchCountError, UnknownPitchError
from scalewright.lutherie.estimate import Floats
from scalewright.lutherie.phrases import counted, given
from scalewright.lutherie.spacing import CENTS_PER_OCTAVE, Equal, Listed, Rule

__all__ = [
    "CONCERT_A_HZ",
    "HIGHEST_HZ",
    "LOWEST_HZ",
    "Target",
    "cents_between",
    "equal_tempered_targets",
    "frequency_of",
    "targets",
]

CONCERT_A_HZ = 440.0
"""Standard tuning frequency, the A in the treble stave (ISO 16:1975). [Hz]"""

LOWEST_HZ = 8.0
"""Below the lowest pipe of an organ; nothing lower is a pitch of a string. [Hz]"""

HIGHEST_HZ = 20_000.0
"""The upper end of hearing. [Hz]"""

_SEMITONE_CENTS = 100.0
_SEMITONES = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
_ACCIDENTALS = {"": 0, "#": 1, "♯": 1, "##": 2, "x": 2, "b": -1, "♭": -1, "bb": -2, "♭♭": -2}
_A4_SEMITONES = 12 * 4 + 9
_NAME = re.compile(r"([A-Ga-g])(##?|♯|x|bb?|♭♭?|)(-1|10|[0-9])", re.ASCII)
_HERTZ = re.compile(r"([0-9]{1,6}(?:\.[0-9]{1,20})?) ?Hz", re.ASCII)
_LONGEST_NAME = 32


def frequency_of(pitch: str) -> float:
    """Frequency of a pitch given by name or in hertz.

    Parameters
    ----------
    pitch : str
        A letter, an accidental if there is one, and the octave number that changes at C: ``"E4"``,
        ``"F#3"``, ``"Bb2"``; or a number with its unit, ``"329.6 Hz"``.

    Returns
    -------
    float
        Frequency in equal temperament from A4 = 440 Hz (ISO 16). [Hz]

    Raises
    ------
    UnknownPitchError
        A text that is no pitch, or one outside :data:`LOWEST_HZ` to :data:`HIGHEST_HZ`.

    Notes
    -----
    The octave number belongs to the letter: Cb4 sounds like B3 and B#3 like C4.
    """
    frequency = math.nan
    text = pitch.strip(" ") if len(pitch) <= _LONGEST_NAME else ""
    if name := _NAME.fullmatch(text):
        letter, accidental, octave = name.groups()
        semitones = 12 * int(octave) + _SEMITONES[letter.upper()] + _ACCIDENTALS[accidental]
        frequency = CONCERT_A_HZ * 2.0 ** ((semitones - _A4_SEMITONES) / 12.0)
    elif hertz := _HERTZ.fullmatch(text):
        frequency = float(hertz.group(1))
    if not LOWEST_HZ <= frequency <= HIGHEST_HZ:
        message = (
            "this is no pitch; write a letter from A to G, # or b if needed, and the octave number, "
            'as in "E4", "F#3" or "Bb2" (the German H is B here), or a frequency such as "329.6 Hz"'
        )
        raise UnknownPitchError(message, field=("pitch",), example="E4")
    return frequency


Target: TypeAlias = Equal | Listed
"""Temperament that a board should sound in: equal steps, or a pitch for every fret."""


def cents_between(lower: float, upper: float) -> float:
    """Interval from one frequency to another. [cent]"""
    return CENTS_PER_OCTAVE * math.log2(upper / lower)


def equal_tempered_targets(rule: Rule, frets: int) -> Floats:
    """Equal-tempered pitch that every fret of a board should give.

    Parameters
    ----------
    rule : Rule
        The spacing rule of the board.
    frets : int
        Number of frets.

    Returns
    -------
    ndarray, shape (n_frets,)
        Intervals above the open string. [cent]

    Raises
    ------
    TooFewPitchesError
        Listed pitches that end before the last fret and do not repeat.

    Notes
    -----
    Where the board stands and how it should sound are two things. Equal spacing in N steps should
    sound in N steps; a constant divisor in as many steps as its octave fret says, twelve for the
    rule of 18. Listed pitches may skip degrees, so each is meant for the nearest of twelve.
    """
    octave = None if isinstance(rule, Listed) else spacing.octave_fret(rule)
    if octave is None:
        intended = np.array(spacing.cents(rule, frets))
        return _SEMITONE_CENTS * np.rint(intended / _SEMITONE_CENTS)
    return CENTS_PER_OCTAVE * np.arange(1, frets + 1) / octave


def targets(rule: Rule, frets: int, target: Target | None) -> Floats:
    """Pitch that every fret of a board should give.

    Parameters
    ----------
    rule : Rule
        The spacing rule of the board.
    frets : int
        Number of frets.
    target : Equal, Listed or None
        Temperament that it should sound in; None for the equal one nearest to the rule.

    Returns
    -------
    ndarray, shape (n_frets,)
        Intervals above the open string. [cent]

    Raises
    ------
    TooFewPitchesError
        A rule of listed pitches that end before the last fret and do not repeat.
    PitchCountError
        A target of listed pitches that do not repeat, and are more or fewer than the frets.
    """
    if target is None:
        return equal_tempered_targets(rule, frets)
    if isinstance(target, Listed) and not target.repeat and len(target.cents) != frets:
        message = (
            f"a board of {counted(frets, 'fret')} should sound as many pitches, and {given(len(target.cents))}; "
            'give one for each fret, or those of one octave with "repeat": true'
        )
        raise PitchCountError(message, field=("target", "cents"), given=len(target.cents), needed=frets)
    return np.array(spacing.cents(target, frets))
