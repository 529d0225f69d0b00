"""Diagnosis over HTTP."""

from fastapi import APIRouter

from scalewright.api.operations import post
from scalewright.lutherie.diagnosis import Diagnosis, diagnose
from scalewright.wire.diagnosis import DiagnosisIn, DiagnosisOut

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["diagnosis"])


@post(
    router,
    "/diagnosis",
    answer=DiagnosisOut,
    examples="diagnosis",
    summary="From cents that were heard to the moves that mend them",
)
def diagnosis(question: DiagnosisIn) -> Diagnosis:
    """How far and which way to move saddle and nut, string by string, so that the readings come right.

    Moves come with their intervals. Where saddle and nut can't be told apart, because one fret was read or the open
    string was not, the answer says so, gives what either would have to do alone, and the reading that would tell. What
    no move explains is compared with the spacing rules and, where two strings or more were read, fret by fret. The
    answer is the move that mends, not its cause: stretch, stiffness and misplaced break points sound alike.
    """
    return diagnose(question.to_domain())
