"""Intonation over HTTP."""

from fastapi import APIRouter

from scalewright.api.operations import post
from scalewright.lutherie.intonation import Intonation, intonate
from scalewright.wire.intonation import IntonationIn, IntonationOut

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["intonation"])


@post(
    router,
    "/intonation",
    answer=IntonationOut,
    examples="intonation",
    summary="How far out of tune every note is, and why",
)
async def intonation(question: IntonationIn) -> Intonation:
    """Cents error of every string at every fret, open strings in tune, split into four causes that add up to it.

    Any spacing rule, saddle and nut setbacks string by string, action, relief, finger position and target temperament.
    `spacing` is where the fret stands, `stretch` what pressing the string down does to its tension, `stiffness` its
    resistance to bending, and `geometry` the lengths: the setbacks and the slope of the string. Lengths are in `unit`.
    """
    return intonate(*question.to_domain())
