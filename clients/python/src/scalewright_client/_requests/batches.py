"""Questions of batches: the keywords of the single question, and the caller's own id."""

from collections.abc import Iterable
from typing import Literal, Required, TypedDict

from scalewright_client._requests.compensation import GluedBridge, OptimiseFor, StraightSlot, StringSet, Travel
from scalewright_client._requests.identification import BatchId
from scalewright_client._requests.label import LabelSize, LabelSizeName
from scalewright_client._requests.parts import LabelLike, PartLike, PartReadings
from scalewright_client._requests.quantities import Length, ScaleBasis, Unit
from scalewright_client._requests.rules import RuleLike, TargetLike
from scalewright_client._requests.stringing import Heights, Relief, StiffnessModel
from scalewright_client._requests.strings import StringRequest, Tuning

__all__ = ["AssemblyQuestion", "CompensationQuestion", "LabelBatchQuestion", "LayoutQuestion", "NominalQuestion"]


class LayoutQuestion(TypedDict, total=False):
    """One question of a batch: the keywords of ``layout``, and the caller's own ``id``."""

    id: BatchId
    unit: Unit
    scale: Required[Length]
    rule: Required[RuleLike]
    frets: Required[int]
    scale_basis: ScaleBasis
    fractions: int


class CompensationQuestion(TypedDict, total=False):
    """One question of a batch: the keywords of ``compensation``, and the caller's own ``id``."""

    id: BatchId
    unit: Unit
    scale: Required[Length]
    rule: Required[RuleLike]
    heights: Required[Heights]
    strings: Required[Iterable[StringRequest]]
    scale_basis: ScaleBasis
    frets: int
    tuning: Tuning
    finger_behind_fret: Length
    fret_height: Length
    relief: Relief
    sliding_length: Length
    target: TargetLike
    boundary_factor: float
    stiffness: StiffnessModel
    nut: Literal["fixed", "free", "uniform"]
    saddle: Literal["free", "uniform"]
    optimise_for: OptimiseFor
    slot: StraightSlot
    travel: Travel
    bridge: GluedBridge
    other_sets: Iterable[StringSet]
    reach: Length
    compare_with_equal: bool


class LabelBatchQuestion(TypedDict, total=False):
    """One question of a batch: the keywords of ``label``, and the caller's own ``id``."""

    id: BatchId
    unit: Unit
    part: Required[PartLike]
    size: LabelSizeName | LabelSize
    dpi: int
    title: str
    date: str
    url: str


class NominalQuestion(TypedDict, total=False):
    """One question of a batch: the keywords of ``nominal``, and the caller's own ``id``."""

    id: BatchId
    unit: Unit
    label: Required[LabelLike]
    readings: PartReadings
    setback: Length
    setback_uncertainty: Length
    threshold: float
    coverage: float


class AssemblyQuestion(TypedDict, total=False):
    """One question of a batch: the keywords of ``assembly``, and the caller's own ``id``."""

    id: BatchId
    unit: Unit
    parts: Required[Iterable[PartLike]]
    tolerance: Length
    guard_factor: float
    coverage: float
