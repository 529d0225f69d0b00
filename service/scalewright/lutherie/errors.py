"""What the craft refuses, each refusal with the numbers that explain it.

::

    LutherieError
    ├── MeasurementError              the words or numbers given cannot be a measurement
    │   ├── UnreadableLengthError     a text that is no length
    │   ├── TooFewReadingsError       less than a fit needs
    │   ├── ImpossibleReadingError    a reading that no board can give
    │   ├── UnplaceableLabelError     a label whose number fits no unit
    │   ├── UnreadableTagError        a text that is no printed label's
    │   ├── ToleranceError            a tolerance of zero or less
    │   ├── TooFewBoardsError         fewer boards than a study of a tool needs
    │   └── UnequalSlotsError         boards of one tool with unequal numbers of slots
    ├── PartError                     no such part exists
    │   ├── UndefinedPartError        a part that nothing defines
    │   └── ContradictoryPartError    a part that is defined twice, differently
    ├── GeometryError                 no such board exists
    │   ├── TooFewPitchesError        a list of pitches shorter than the board
    │   ├── PitchCountError           a target temperament with a pitch too many or too few
    │   ├── OutsideScaleError         a position that the scale cannot hold
    │   ├── ImpossibleSetupError      strings that cannot lie over this board so
    │   ├── NoSaddlePositionError     strings that no saddle brings near their pitches
    │   ├── FretsCollideError         frets that cross or touch on a board
    │   ├── ImpossibleBoardError      strings, edges or a surface that contradict one another
    │   ├── LabelSizeError            a label too small for its content
    │   └── PaperError                a drawing that fits no paper
    └── StringError                   no such string exists
        ├── ImpossibleStringError     a string that cannot be
        ├── StringDescriptionError    a string described by too little or by too much
        └── UnknownPitchError         a name that is no pitch
"""

from collections.abc import Iterator
from contextlib import contextmanager

__all__ = [
    "ContradictoryPartError",
    "FretsCollideError",
    "GeometryError",
    "ImpossibleBoardError",
    "ImpossibleReadingError",
    "ImpossibleSetupError",
    "ImpossibleStringError",
    "LabelSizeError",
    "LutherieError",
    "MeasurementError",
    "NoSaddlePositionError",
    "OutsideScaleError",
    "PaperError",
    "PartError",
    "PitchCountError",
    "StringDescriptionError",
    "StringError",
    "ToleranceError",
    "TooFewBoardsError",
    "TooFewPitchesError",
    "TooFewReadingsError",
    "UndefinedPartError",
    "UnequalSlotsError",
    "UnknownPitchError",
    "UnplaceableLabelError",
    "UnreadableLengthError",
    "UnreadableTagError",
    "refused_at",
    "refused_within",
]


class LutherieError(Exception):
    """The base of all refusals; never raised itself.

    Keyword arguments become attributes; ``field`` names the part of the question that is at
    fault, as a path of names and indices, where one part is.
    """

    def __init__(self, message: str, *, field: tuple[str | int, ...] = (), **facts: object) -> None:
        super().__init__(message)
        self.field = field
        self.facts = facts


@contextmanager
def refused_at(place: tuple[str | int, ...]) -> Iterator[None]:
    """Let a refusal from within name this place in the question, whatever it would have named itself.

    Parameters
    ----------
    place : tuple
        Path of names and indices.
    """
    try:
        yield
    except LutherieError as refusal:
        refusal.field = place
        raise


@contextmanager
def refused_within(place: tuple[str | int, ...]) -> Iterator[None]:
    """Let a refusal from within name its own place under this one in the question.

    Parameters
    ----------
    place : tuple
        Path of names and indices.
    """
    try:
        yield
    except LutherieError as refusal:
        refusal.field = (*place, *refusal.field)
        raise


class MeasurementError(LutherieError):
    """The words or numbers given cannot be a measurement."""


class UnreadableLengthError(MeasurementError):
    """A text that is no length."""


class TooFewReadingsError(MeasurementError):
    """Fewer readings than a fit needs; carries ``given`` and ``needed``."""


class ImpossibleReadingError(MeasurementError):
    """A reading that no board can give."""


class UnplaceableLabelError(MeasurementError):
    """A label without a unit whose number fits neither inches nor millimetres."""


class UnreadableTagError(MeasurementError):
    """A text that is not that of a printed label, or was changed on its way."""


class ToleranceError(MeasurementError):
    """A tolerance of zero or less."""


class TooFewBoardsError(MeasurementError):
    """Fewer boards than a study of a tool needs; carries ``given`` and ``needed``."""


class UnequalSlotsError(MeasurementError):
    """Boards of one tool with unequal numbers of slots; carries ``given`` and ``needed``."""


class PartError(LutherieError):
    """No such part exists."""


class UndefinedPartError(PartError):
    """A part that nothing defines."""


class ContradictoryPartError(PartError):
    """A part that is defined twice, differently; carries both numbers."""


class GeometryError(LutherieError):
    """No such board exists."""


class TooFewPitchesError(GeometryError):
    """A list of pitches shorter than the board; carries ``given`` and ``needed``."""


class PitchCountError(GeometryError):
    """A target temperament with a pitch too many or too few; carries ``given`` and ``needed``."""


class OutsideScaleError(GeometryError):
    """A position that the scale cannot hold."""


class ImpossibleSetupError(GeometryError):
    """Strings that cannot lie over this board so."""


class NoSaddlePositionError(GeometryError):
    """Strings that no saddle brings near their pitches."""


class FretsCollideError(GeometryError):
    """Frets that cross or touch on a board; carries ``between`` and ``gap_mm``."""


class ImpossibleBoardError(GeometryError):
    """Strings, edges or a surface of a board that contradict one another."""


class LabelSizeError(GeometryError):
    """A label too small for its content; carries ``smallest_mm`` and ``smallest_common_size``."""


class PaperError(GeometryError):
    """A drawing that fits no paper: a sheet too long, or too many pages."""


class StringError(LutherieError):
    """No such string exists."""


class ImpossibleStringError(StringError):
    """A string that cannot be."""


class StringDescriptionError(StringError):
    """A string described by too little or by too much."""


class UnknownPitchError(StringError):
    """A name that is no pitch."""
