"""Spacing rules on the wire."""

import itertools
import math
from typing import Annotated, Literal, Self, TypeAlias, get_args

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Discriminator, Field, Tag, model_validator
from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

from scalewright.lutherie import spacing
from scalewright.lutherie.catalogue import CATALOGUE
from scalewright.lutherie.spacing import Rule

__all__ = [
    "TAG_MARK",
    "Cents",
    "DivisorIn",
    "DivisorNumber",
    "EighteenthIn",
    "EqualIn",
    "ListedIn",
    "RuleIn",
    "RuleName",
    "RuleOut",
    "RuleSummary",
    "RulesOut",
    "Steps",
    "TemperamentOut",
    "refuse_repeat_out_of_order",
    "summaries",
    "temperaments",
]

RuleName: TypeAlias = Literal["equal", "eighteenth", "divisor", "listed"]

TAG_MARK = "rule:"
"""Starts the branch names that pydantic puts into the paths of its errors; no field is called so."""

Steps: TypeAlias = Annotated[int, Field(ge=1, le=120)]
_SAME_DIVISOR = 1e-6
"""Relative difference of divisors that comes from writing them down."""
DivisorNumber: TypeAlias = Annotated[float, Field(ge=2.0, le=1000.0)]


def _ascending(cents: list[float]) -> list[float]:
    """Refuse the first pitch that does not lie above the one before it."""
    for index, (below, above) in enumerate(itertools.pairwise(cents), 1):
        if above <= below:
            problem = PydanticCustomError("not_ascending", "Each listed pitch has to lie above the one before it.")
            error = InitErrorDetails(type=problem, loc=(index,), input=None)
            raise ValidationError.from_exception_data("cents", [error])
    return cents


Cents: TypeAlias = Annotated[
    list[Annotated[float, Field(gt=0.0, le=12000.0)]],
    Field(min_length=1, max_length=spacing.MOST_FRETS, examples=[[100.0, 200.0, 300.0]]),
    AfterValidator(_ascending),
]
"""Pitches above the open string, one for each fret, ascending. [cent]"""


def refuse_repeat_out_of_order(cents: list[float]) -> None:
    """Refuse pitches that, repeated an octave higher, would not ascend."""
    if cents[-1] >= cents[0] + spacing.CENTS_PER_OCTAVE:
        message = "Pitches that repeat have to fit in one octave: the last less than 1200 cents above the first."
        raise PydanticCustomError("not_repeatable", message)


class _RuleQuestion(BaseModel):
    model_config = ConfigDict(
        strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True
    )


def _as_answered(divisor: float | None, rule: Rule) -> None:
    """Refuse a divisor that an answer about this rule would not have stated."""
    if divisor is not None and not math.isclose(divisor, rule.divisor or 0.0, rel_tol=_SAME_DIVISOR):
        message = "The divisor of this rule is {own}; leave it out, or name the rule divisor."
        raise _at_divisor(PydanticCustomError("other_divisor", message, {"own": f"{rule.divisor:.6f}"}))


def _at_divisor(problem: PydanticCustomError) -> ValidationError:
    return ValidationError.from_exception_data("rule", [InitErrorDetails(type=problem, loc=("divisor",), input=None)])


class EqualIn(_RuleQuestion):
    """Equal spacing: every step is the same interval."""

    name: Literal["equal"]
    steps: Steps = 12
    """Steps to the octave."""
    divisor: DivisorNumber | None = None
    """As an answer states it; it has to be that of the steps."""

    @model_validator(mode="after")
    def _divisor_is_its_own(self) -> Self:
        _as_answered(self.divisor, self.to_domain())
        return self

    def to_domain(self) -> Rule:
        """Return the rule."""
        return spacing.Equal(self.steps)


class EighteenthIn(_RuleQuestion):
    """The rule of 18: each fret takes one eighteenth of the length that is left."""

    name: Literal["eighteenth"]
    divisor: DivisorNumber | None = None
    """As an answer states it: 18."""

    @model_validator(mode="after")
    def _divisor_is_its_own(self) -> Self:
        _as_answered(self.divisor, self.to_domain())
        return self

    def to_domain(self) -> Rule:
        """Return the rule."""
        return spacing.EIGHTEENTH


class DivisorIn(_RuleQuestion):
    """Any constant divisor: each fret takes one part in `divisor` of the length that is left."""

    name: Literal["divisor"]
    divisor: DivisorNumber
    """What the length that is left is divided by, 17.817 for instance."""

    def to_domain(self) -> Rule:
        """Return the rule."""
        return spacing.Divisor(self.divisor)


class ListedIn(_RuleQuestion):
    """Listed pitches: one for each fret above the open string."""

    name: Literal["listed"]
    cents: Cents
    """Cents above the open string, one for each fret, ascending."""
    repeat: bool = False
    """Whether the list starts again an octave higher where it ends."""

    def to_domain(self) -> Rule:
        """Return the rule."""
        return spacing.Listed(tuple(self.cents), self.repeat)


_AnyRule: TypeAlias = EqualIn | EighteenthIn | DivisorIn | ListedIn
_BARE_NAMES = {"equal", "eighteenth"}
_NAMES = {"equal", "eighteenth", "divisor", "listed"}


def _from_name(value: object) -> object:
    """Take the bare name of a rule that needs nothing else."""
    if isinstance(value, str) and value in _BARE_NAMES:
        return {"name": value}
    return value


def _branch(value: object) -> str | None:
    """Tell which kind of rule is meant."""
    name = value.get("name") if isinstance(value, dict) else getattr(value, "name", None)
    return f"{TAG_MARK}{name}" if isinstance(name, str) and name in _NAMES else None


def _no_repeat_out_of_order(rule: _AnyRule) -> _AnyRule:
    if isinstance(rule, ListedIn) and rule.repeat:
        refuse_repeat_out_of_order(rule.cents)
    return rule


RuleIn: TypeAlias = Annotated[
    Annotated[EqualIn, Tag("rule:equal")]
    | Annotated[EighteenthIn, Tag("rule:eighteenth")]
    | Annotated[DivisorIn, Tag("rule:divisor")]
    | Annotated[ListedIn, Tag("rule:listed")],
    Discriminator(
        _branch,
        custom_error_type="rule_unknown",
        custom_error_message=(
            'A rule is "equal", "eighteenth", or an object whose "name" is '
            '"equal", "eighteenth", "divisor" or "listed".'
        ),
    ),
    BeforeValidator(
        _from_name,
        json_schema_input_type=Literal["equal", "eighteenth"] | EqualIn | EighteenthIn | DivisorIn | ListedIn,
    ),
    AfterValidator(_no_repeat_out_of_order),
]
"""A spacing rule in a question."""


def _absent(value: object) -> bool:
    return value is None


class RuleOut(BaseModel):
    """A spacing rule; what the kind of rule does not have is left out."""

    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

    name: RuleName
    """Which rule: equal, eighteenth, divisor or listed."""
    divisor: float | None = Field(None, exclude_if=_absent)
    """What the length that is left is divided by at each fret; listed pitches have none. [-]"""
    steps: int | None = Field(None, exclude_if=_absent)
    """Steps to the octave, for equal spacing."""
    cents: list[float] | None = Field(None, exclude_if=_absent)
    """Cents above the open string, one for each fret, for listed pitches. [cent]"""
    repeat: bool | None = Field(None, exclude_if=_absent)
    """Whether the listed pitches repeat by octaves."""


class RuleSummary(BaseModel):
    """A spacing rule with its numbers."""

    model_config = ConfigDict(frozen=True, use_attribute_docstrings=True)

    name: RuleName
    """Which rule."""
    description: str
    """What it does, in a sentence."""
    parameters: list[str]
    """What the rule takes beside its name."""
    divisor: float | None
    """What the length that is left is divided by at each fret, with the default parameters; null without one. [-]"""
    step_cents: float | None
    """Interval of one step, with the default parameters; null without one. [cent]"""
    octave_fret: int | None
    """Fret that stands for the octave, with the default parameters; null without one."""
    octave_shortfall_cents: float | None
    """How far that fret stops short of an octave when the bridge stands at the end of the layout scale. [cent]"""


class TemperamentOut(BaseModel):
    """A listed temperament from published sources."""

    model_config = ConfigDict(from_attributes=True, frozen=True, use_attribute_docstrings=True)

    name: str
    """What a candidate of an identification calls it."""
    source: str
    """Where it was published."""
    cents: list[float]
    """Cents above the open string, one for each fret; as they stand, the listed pitches of a layout. [cent]"""


class RulesOut(BaseModel):
    """The spacing rules."""

    model_config = ConfigDict(frozen=True, use_attribute_docstrings=True)

    rules: list[RuleSummary]
    """The rules, the commonest first."""
    temperaments: list[TemperamentOut]
    """Listed temperaments, for candidates of an identification or for listed pitches."""


_KINDS: tuple[tuple[type[BaseModel], Rule | None], ...] = (
    (EqualIn, spacing.EQUAL),
    (EighteenthIn, spacing.EIGHTEENTH),
    (DivisorIn, None),
    (ListedIn, None),
)


def _own_members(rule: Rule | None) -> set[str]:
    """What is no parameter: the name, and the divisor of a rule that has it without being told."""
    return {"name"} if rule is None else {"name", "divisor"}


def temperaments() -> list[TemperamentOut]:
    """Return the catalogue of listed temperaments."""
    return [TemperamentOut.model_validate(temperament) for temperament in CATALOGUE.values()]


def summaries() -> list[RuleSummary]:
    """Return the rules with the numbers that each has before its parameters are chosen."""
    return [
        RuleSummary(
            name=name,
            description=(kind.__doc__ or "").strip(),
            parameters=[field for field in kind.model_fields if field not in _own_members(rule)],
            divisor=None if rule is None else rule.divisor,
            step_cents=None if rule is None else spacing.step_cents(rule),
            octave_fret=None if rule is None else spacing.octave_fret(rule),
            octave_shortfall_cents=None if rule is None else spacing.octave_shortfall(rule),
        )
        for kind, rule in _KINDS
        for name in get_args(kind.model_fields["name"].annotation)
    ]
