"""Which frets to read on boards of a kind."""

from dataclasses import dataclass

from scalewright_client._results.estimate import Note

__all__ = ["MeasuringCard", "MeasuringStep"]


@dataclass(frozen=True, slots=True)
class MeasuringStep:
    """The best set of a given number of frets."""

    readings: int
    """How many frets."""
    frets: tuple[int, ...]
    """Which, ascending."""
    probability: float
    """Probability that the board's own rule will be established by them. [-]"""


@dataclass(frozen=True, slots=True)
class MeasuringCard:
    """Which frets to read on boards of a kind."""

    unit: str
    """Unit of all lengths, "mm" or "in"."""
    decides: bool
    """Whether the probability asked for is reached."""
    frets: tuple[int, ...]
    """The frets to read from the nut: the smallest set that decides, or the best where none does."""
    probability: float
    """Probability that the board's own rule will be established by them, at the shortest scale. [-]"""
    scale: float
    """The scale for which that holds. [unit]"""
    steps: tuple[MeasuringStep, ...]
    """The best sets of two, three and more frets, up to the one that decides."""
    uncertainty_needed: float | None
    """Standard uncertainty of an instrument that would decide with these frets; None where these do, or none would."""
    statement: str
    """What to do, in a sentence."""
    notes: tuple[Note, ...]
    """Cautions."""
