"""What comes back: frozen dataclasses, lengths in the ``unit`` of the answer and unrounded."""

from scalewright_client._results.assembly import (
    Absorption,
    Assembly,
    CentsAtFret,
    DecidingReadings,
    Pair,
    PartScale,
    ReadingOn,
    Slant,
)
from scalewright_client._results.board_lines import (
    AcrossLine,
    BoardFret,
    FretSlot,
    Place,
    Segment,
    SideCents,
    SideDistances,
    StringCrossing,
    StringLine,
)
from scalewright_client._results.bridge import BridgeAdvice, Remedy
from scalewright_client._results.compensation import CompensatedString, Compensation, FretCents, OptimisedFor
from scalewright_client._results.conformity import Conformity, GlobalRisks, Interval
from scalewright_client._results.cut_list import Blank, Cut, CutList, WhatIf
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
from scalewright_client._results.drift import Drift, Jump, Reset, ToolingDrift
from scalewright_client._results.estimate import Estimate, Note
from scalewright_client._results.fingerboard import BoardSide, Fingerboard, Marker, TrueScales
from scalewright_client._results.identification import Candidate, Identification, NextReading, SuspectReading, Verdict
from scalewright_client._results.intonation import Intonation, SoundedNote, StringIntonation
from scalewright_client._results.label_pages import LabelPages
from scalewright_client._results.labels import Label
from scalewright_client._results.layout import Fraction, Fret, Layout
from scalewright_client._results.measuring_card import MeasuringCard, MeasuringStep
from scalewright_client._results.nominal import Measured, Nominal, ReadingToTake, WeighedMeaning
from scalewright_client._results.placement import PlacedSet, Placement
from scalewright_client._results.printed_label import PrintedLabel
from scalewright_client._results.replacement import BodyJoint, FretOffset, Replacement
from scalewright_client._results.reslotting import ReslottedNote, ReslottedString, Reslotting
from scalewright_client._results.rules import Rule, RuleDescription, Rules, TemperamentDescription
from scalewright_client._results.signature import Signature, SignatureMatch, ToolOrigin
from scalewright_client._results.slot import BreakPoint, SlotFit, TravelFit
from scalewright_client._results.spec_sheet import (
    SheetConformity,
    SheetFret,
    SheetLabel,
    SheetSentences,
    SheetSetback,
    SheetTreble,
    SpecSheet,
)
from scalewright_client._results.stretch_test import OutlierReading, StretchTest
from scalewright_client._results.strings import FretRelief, OpenString, StringHeights
from scalewright_client._results.tag import FanScales, StatedPart, Tag
from scalewright_client._results.tooling import SlotStudy, Tooling, Variances

__all__ = [
    "Absorption",
    "AcrossLine",
    "Assembly",
    "Blank",
    "BoardFret",
    "BoardSide",
    "BodyJoint",
    "BreakPoint",
    "BridgeAdvice",
    "Candidate",
    "CentsAtFret",
    "CompensatedString",
    "Compensation",
    "Conformity",
    "Cut",
    "CutList",
    "DecidingReadings",
    "Diagnosis",
    "Drift",
    "Estimate",
    "FanScales",
    "Fingerboard",
    "Fraction",
    "Fret",
    "FretCents",
    "FretError",
    "FretOffset",
    "FretRelief",
    "FretSlot",
    "GlobalRisks",
    "Identification",
    "Interval",
    "Intonation",
    "Jump",
    "Label",
    "LabelPages",
    "Layout",
    "Marker",
    "Measured",
    "MeasuringCard",
    "MeasuringStep",
    "MendedReading",
    "NextReading",
    "Nominal",
    "Note",
    "OpenString",
    "OptimisedFor",
    "OutlierReading",
    "Pair",
    "PartScale",
    "Place",
    "PlacedSet",
    "Placement",
    "PrintedLabel",
    "ReadNext",
    "ReadingOn",
    "ReadingToTake",
    "Remedy",
    "Replacement",
    "Reset",
    "ReslottedNote",
    "ReslottedString",
    "Reslotting",
    "Rule",
    "RuleDescription",
    "RuleLikelihood",
    "Rules",
    "Segment",
    "SheetConformity",
    "SheetFret",
    "SheetLabel",
    "SheetSentences",
    "SheetSetback",
    "SheetTreble",
    "SideCents",
    "SideDistances",
    "Signature",
    "SignatureMatch",
    "Slant",
    "SlotFit",
    "SlotStudy",
    "SoundedNote",
    "SpacingDiagnosis",
    "SpecSheet",
    "StatedPart",
    "StretchTest",
    "StringCrossing",
    "StringDiagnosis",
    "StringHeights",
    "StringIntonation",
    "StringLine",
    "SuspectCents",
    "SuspectReading",
    "Tag",
    "TemperamentDescription",
    "ToolOrigin",
    "Tooling",
    "ToolingDrift",
    "TravelFit",
    "TrueScales",
    "Variances",
    "Verdict",
    "WeighedMeaning",
    "WhatIf",
]
