"""Conformity: whether a part is what it claims to be."""

from fastapi import APIRouter

from scalewright.api.operations import post
from scalewright.lutherie.conformity import Conformity, conform
from scalewright.wire.conformity import ConformityIn, ConformityOut

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["parts"])


@post(
    router,
    "/conformity",
    answer=ConformityOut,
    examples="conformity",
    summary="Tell whether a part is what its label says",
)
def conformity(question: ConformityIn) -> Conformity:
    """Decide whether a part's true scale is the one it claims, within a tolerance.

    `decision` follows the decision rule named (JCGM 106): simple acceptance, guarded acceptance or guarded rejection.
    `conformance` says what the readings prove, whatever the rule (ISO 14253-1). The consumer's risk is the
    probability that what is accepted does not conform, the producer's that what is rejected does; with a `process`
    there are global risks too, over all that is made and measured.
    """
    return conform(question.to_domain())
