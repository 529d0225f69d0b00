"""Stretch tests over HTTP."""

from fastapi import APIRouter

from scalewright.api.operations import post
from scalewright.lutherie.stretch_test import StretchTest, evaluate_stretch_test
from scalewright.wire.stretch_test import StretchTestIn, StretchTestOut

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["stretch-test"])


@post(
    router,
    "/stretch-test",
    answer=StretchTestOut,
    examples="stretch-test",
    summary="From a stretch test to R and kappa",
)
async def stretch_test(question: StretchTestIn) -> StretchTest:
    """Fit a line to the frequencies of a string that is made longer step by step.

    The answer gives R = (L/f) df/dL and kappa = 2 R + 1, which compensation takes, with their uncertainties, the
    effective modulus where diameter and tension are known, and the readings that the others contradict. Three readings
    or more are needed; their uncertainties weigh them where given. A string that is stretched can break: protect your
    eyes and keep your face out of its line.
    """
    return evaluate_stretch_test(question.to_domain())
