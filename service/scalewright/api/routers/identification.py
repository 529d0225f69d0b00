"""Identification: which rule a board was cut by, and what its scale is."""

from fastapi import APIRouter

from scalewright.api.batch import Batch, add_batch
from scalewright.api.operations import post
from scalewright.lutherie.identification import Identification, identify
from scalewright.lutherie.identification.measuring_card import MeasuringCard, measuring_card
from scalewright.wire.identification import IdentificationIn, IdentificationOut
from scalewright.wire.identification_batch import identify_questions, verdict_of
from scalewright.wire.measuring_card import MeasuringCardIn, MeasuringCardOut

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["identification"])


@post(
    router,
    "/identification",
    answer=IdentificationOut,
    examples="identification",
    summary="Tell rule and true scale from readings",
)
def identification(question: IdentificationIn) -> Identification:
    """Compare the spacing rules that a board may have been cut by with a few distances measured on it.

    The verdict is "established" where one rule is at least as probable as `threshold` and explains the readings,
    "undecided" where the readings cannot tell the rules apart, and "none" where no rule explains them. The true
    scale is given under every verdict as well as the readings allow, with its uncertainty. A reading that contradicts
    all the others is named and set aside. Before anything is measured, equal spacing and the rule of 18 count 0.45
    each, and any other divisor from 16.5 to 19.5 together 0.10.
    """
    return identify(*question.to_domain())


@post(
    router,
    "/identification/plan",
    answer=MeasuringCardOut,
    examples="identification_plan",
    summary="Choose the frets to measure",
)
def identification_plan(question: MeasuringCardIn) -> MeasuringCard:
    """Find the smallest set of frets that tells equal spacing and the rule of 18 apart with a given probability.

    A shop's measuring card: for an instrument and the shortest scale to be expected, which frets to read from the
    nut. The rules are compared as in an identification with its default candidates and priors.
    """
    return measuring_card(**question.to_domain())


add_batch(
    router,
    "/identification/batch",
    Batch(IdentificationIn, identify_questions, verdict_of, "verdicts"),
    operation_id="identification_batch",
    summary="Tell rules and true scales of many boards",
    about="""Answer many questions of /v1/identification, each as a line of JSON.

    Boards that were measured alike, so that their lines differ in the distances alone, are the quickest: tens of
    thousands a second. The end line counts the verdicts.
    """,
)
