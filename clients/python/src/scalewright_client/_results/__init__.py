"""What comes back: frozen dataclasses, lengths in the ``unit`` of the answer and unrounded."""

from scalewright_client._results.bridge import BridgeAdvice, Remedy
from scalewright_client._results.compensation import CompensatedString, Compensation, FretCents, OptimisedFor
from scalewright_client._results.diagnosis import (
    Diagnosis,
    FretError,
    MendedReading,
    ReadNext,
    RuleLikelihood,
    SpacingDiagnosis,
    StringDiagnosis,
    SuspectCents,
)
from scalewright_client._results.estimate import Estimate, Note
from scalewright_client._results.identification import Candidate, Identification, NextReading, SuspectReading, Verdict
from scalewright_client._results.intonation import Intonation, SoundedNote, StringIntonation
from scalewright_client._results.layout import Fraction, Fret, Layout
from scalewright_client._results.measuring_card import MeasuringCard, MeasuringStep
from scalewright_client._results.placement import PlacedSet, Placement
from scalewright_client._results.reslotting import ReslottedNote, ReslottedString, Reslotting
from scalewright_client._results.rules import Rule, RuleDescription, Rules
from scalewright_client._results.slot import BreakPoint, SlotFit, TravelFit
from scalewright_client._results.stretch_test import OutlierReading, StretchTest
from scalewright_client._results.strings import FretRelief, OpenString, StringHeights

__all__ = [
    "BreakPoint",
    "BridgeAdvice",
    "Candidate",
    "CompensatedString",
    "Compensation",
    "Diagnosis",
    "Estimate",
    "Fraction",
    "Fret",
    "FretCents",
    "FretError",
    "FretRelief",
    "Identification",
    "Intonation",
    "Layout",
    "MeasuringCard",
    "MeasuringStep",
    "MendedReading",
    "NextReading",
    "Note",
    "OpenString",
    "OptimisedFor",
    "OutlierReading",
    "PlacedSet",
    "Placement",
    "ReadNext",
    "Remedy",
    "ReslottedNote",
    "ReslottedString",
    "Reslotting",
    "Rule",
    "RuleDescription",
    "RuleLikelihood",
    "Rules",
    "SlotFit",
    "SoundedNote",
    "SpacingDiagnosis",
    "StretchTest",
    "StringDiagnosis",
    "StringHeights",
    "StringIntonation",
    "SuspectCents",
    "SuspectReading",
    "TravelFit",
    "Verdict",
]
