"""Nominal scales: what a label can mean."""

from fastapi import APIRouter

from scalewright.api.batch import Batch, add_batch
from scalewright.api.operations import post
from scalewright.lutherie.nominal import Nominal
from scalewright.lutherie.nominal import nominal as meanings_of_label
from scalewright.wire.nominal import NominalIn, NominalOut, answer_nominals

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["parts"])


@post(router, "/nominal", answer=NominalOut, examples="nominal", summary="Tell what a label can mean")
async def nominal(question: NominalIn) -> Nominal:
    """List what a label can mean, each meaning with its true scale and the distance to fret 12 to look for.

    A label is a name: 24.75 in may be the true scale under equal spacing, the layout scale of a rule-of-18 board (true
    scale 24.57 in), rounded to the nearest or up in favour of compensation, a string length with the setback in it,
    or a round number of the other system. With `readings` of the board, fret 12 at least, each meaning is weighed by
    the evidence of the identification, and `statement` is what to print instead of the label.
    """
    return meanings_of_label(question.to_domain())


add_batch(
    router,
    "/nominal/batch",
    Batch(NominalIn, answer_nominals),
    operation_id="nominal_batch",
    summary="Tell what many labels can mean",
    about="Answer many questions of /v1/nominal, each as a line of JSON.",
)
