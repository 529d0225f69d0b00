"""Candidates of an identification on the wire: which rules a board may have been cut by."""

from typing import Annotated, Literal, Self, TypeAlias

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, model_validator
from pydantic_core import PydanticCustomError

from scalewright.lutherie.catalogue import CATALOGUE
from scalewright.lutherie.identification import Candidate, FreeDivisor
from scalewright.wire.rules import RuleIn

__all__ = ["AnyDivisorIn", "CandidateIn", "Candidates", "TemperamentName"]

TemperamentName: TypeAlias = Literal["pythagorean", "quarter_comma_meantone", "ganassi_1543", "dowland_1610"]
"""A temperament of the catalogue (a test holds the two together)."""


class AnyDivisorIn(BaseModel):
    """Any constant divisor, equally likely between two bounds."""

    model_config = ConfigDict(
        strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True
    )

    lower: Annotated[float, Field(ge=14.5, le=23.5)] = 16.5
    """The smallest."""
    upper: Annotated[float, Field(ge=14.5, le=23.5)] = 19.5
    """The largest."""


class CandidateIn(BaseModel):
    """A rule that a board may have been cut by: a rule, or any divisor, or a temperament from the catalogue."""

    model_config = ConfigDict(
        strict=True, allow_inf_nan=False, extra="forbid", frozen=True, use_attribute_docstrings=True
    )

    rule: RuleIn | None = None
    """A spacing rule: "equal", {"name": "divisor", "divisor": 17.817}, {"name": "equal", "steps": 19} ..."""
    any_divisor: AnyDivisorIn | None = None
    """Instead: any constant divisor."""
    temperament: TemperamentName | None = None
    """Instead: a temperament from published sources; GET /v1/rules lists them."""
    prior: Annotated[float, Field(gt=0.0, le=1000.0)] = 1.0
    """How likely it is before anything is measured, relative to the others."""

    @model_validator(mode="after")
    def _one_of_three(self) -> Self:
        given = [name for name in ("rule", "any_divisor", "temperament") if getattr(self, name) is not None]
        if len(given) != 1:
            message = "A candidate is one of rule, any_divisor and temperament."
            raise PydanticCustomError("candidate_given", message)
        if self.any_divisor is not None and self.any_divisor.lower >= self.any_divisor.upper:
            message = "The lower bound of a divisor has to lie below the upper one."
            raise PydanticCustomError("bounds_given", message)
        return self

    def to_domain(self) -> Candidate:
        """Return the candidate."""
        if self.any_divisor is not None:
            return Candidate(FreeDivisor(self.any_divisor.lower, self.any_divisor.upper), self.prior)
        if self.rule is not None:
            return Candidate(self.rule.to_domain(), self.prior)
        return Candidate(CATALOGUE[self.temperament or "pythagorean"].rule, self.prior)


def _distinct(candidates: list[CandidateIn]) -> list[CandidateIn]:
    """Refuse two free divisors, or one rule twice."""
    rules = [candidate.to_domain().rule for candidate in candidates]
    if sum(isinstance(rule, FreeDivisor) for rule in rules) > 1:
        message = "Any divisor can be a candidate once; widen its bounds instead."
        raise PydanticCustomError("any_divisor_repeated", message)
    if len(set(rules)) < len(rules):
        message = "A rule can be a candidate once; add up the priors instead."
        raise PydanticCustomError("candidate_repeated", message)
    if all(isinstance(rule, FreeDivisor) for rule in rules):
        message = "At least one candidate has to be a rule or a temperament."
        raise PydanticCustomError("no_rule_given", message)
    return candidates


Candidates: TypeAlias = Annotated[list[CandidateIn], Field(min_length=1, max_length=16), AfterValidator(_distinct)]
"""Rules to compare, each once."""
