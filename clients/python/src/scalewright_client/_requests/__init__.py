"""What goes into a request: lengths, rules, readings, strings."""

from scalewright_client._requests.compensation import GluedBridge, OptimiseFor, StraightSlot, StringSet, Travel
from scalewright_client._requests.diagnosis import CentsReading
from scalewright_client._requests.identification import (
    AnyDivisor,
    BatchId,
    CandidateRequest,
    IdentificationQuestion,
    Origin,
    Point,
    Reading,
    Temperament,
)
from scalewright_client._requests.intonation import PlacedString
from scalewright_client._requests.quantities import Length, ScaleBasis, Unit
from scalewright_client._requests.rules import RuleLike, RuleRequest, TargetLike
from scalewright_client._requests.stringing import ActionAtFret, Heights, Relief, StiffnessModel
from scalewright_client._requests.strings import (
    CoreMaterial,
    CoreShape,
    StringRequest,
    Tuning,
    Wrap,
    WrapForm,
    WrapMaterial,
)

__all__ = [
    "ActionAtFret",
    "AnyDivisor",
    "BatchId",
    "CandidateRequest",
    "CentsReading",
    "CoreMaterial",
    "CoreShape",
    "GluedBridge",
    "Heights",
    "IdentificationQuestion",
    "Length",
    "OptimiseFor",
    "Origin",
    "PlacedString",
    "Point",
    "Reading",
    "Relief",
    "RuleLike",
    "RuleRequest",
    "ScaleBasis",
    "StiffnessModel",
    "StraightSlot",
    "StringRequest",
    "StringSet",
    "TargetLike",
    "Temperament",
    "Travel",
    "Tuning",
    "Unit",
    "Wrap",
    "WrapForm",
    "WrapMaterial",
]
