"""Identification: which rule a board was cut by, what its scales are, and how sure that is."""

from scalewright.lutherie.identification.answer import CandidateFit, Identification, SuspectReading, Verdict
from scalewright.lutherie.identification.candidates import DEFAULT_CANDIDATES, Beliefs, Candidate, FreeDivisor
from scalewright.lutherie.identification.identify import identify, identify_all
from scalewright.lutherie.identification.next_reading import NextReading

__all__ = [
    "DEFAULT_CANDIDATES",
    "Beliefs",
    "Candidate",
    "CandidateFit",
    "FreeDivisor",
    "Identification",
    "NextReading",
    "SuspectReading",
    "Verdict",
    "identify",
    "identify_all",
]
