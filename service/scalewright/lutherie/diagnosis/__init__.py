"""Diagnosis: from cents by string and fret to the moves of saddle and nut that mend them.

``complaint`` is what was heard, ``moves`` fits one string, ``trust`` asks whether its readings contradict one another,
``frets`` looks at what all strings share, ``readings`` at what to read again or next, and ``diagnose`` puts the
``answer`` together, in ``words`` too.
"""

from scalewright.lutherie.diagnosis.answer import (
    Diagnosis,
    FretError,
    MendedReading,
    ReadNext,
    RuleLikelihood,
    SpacingDiagnosis,
    StringDiagnosis,
    SuspectCents,
)
from scalewright.lutherie.diagnosis.complaint import CentsReading, Complaint
from scalewright.lutherie.diagnosis.diagnose import diagnose

__all__ = [
    "CentsReading",
    "Complaint",
    "Diagnosis",
    "FretError",
    "MendedReading",
    "ReadNext",
    "RuleLikelihood",
    "SpacingDiagnosis",
    "StringDiagnosis",
    "SuspectCents",
    "diagnose",
]
