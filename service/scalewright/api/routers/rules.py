"""Rules: which spacing rules there are."""

from fastapi import APIRouter

from scalewright.api.operations import get
from scalewright.wire.rules import RulesOut, RuleSummary, TemperamentOut, summaries, temperaments

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["layout"])


@get(router, "/rules", answer=RulesOut, examples="rules", summary="List the spacing rules")
async def rules() -> dict[str, list[RuleSummary] | list[TemperamentOut]]:
    """The spacing rules with their divisors, the cents of a step, the octave fret and how far it falls short.

    With them come listed temperaments from published sources.
    """
    return {"rules": summaries(), "temperaments": temperaments()}
