"""Compensation over HTTP."""

from fastapi import APIRouter

from scalewright.api.batch import Batch, add_batch
from scalewright.api.operations import post
from scalewright.lutherie.compensation import Compensation, compensate
from scalewright.wire.compensation import CompensationIn, CompensationOut, answer_compensations

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["compensation"])


@post(
    router,
    "/compensation",
    answer=CompensationOut,
    examples="compensation",
    summary="Where saddle and nut go for these strings",
)
def compensation(question: CompensationIn) -> Compensation:
    """Best saddle setback of every string, and with `"nut": "free"` its nut setback, on a board of any spacing rule.

    Setbacks are counted from the end of the *true* scale (`saddle_setback`, positive away from the nut) and from
    the zero line of the fret pattern (`nut_setback`, positive away from fret 1); `saddle_from_nut` is what a rule
    reads from the nut's front edge to the break point. They leave the least sum of squared cents errors over the
    frets of `optimised_for`, against equal temperament or the `target`. A string is measured (`unit_mass` in g/m, `R`
    or `kappa` from a stretch test) or described by material, gauge and wraps. Lengths are in `unit`,
    tension in newtons.

    What else may be asked: one setback for all strings (`"uniform"`), the best straight `slot`, saddles of limited
    `travel`, a `bridge` that is glued already, where to glue one for several string sets (`other_sets`, `reach`), and
    how the board compares with equal steps at the same true scale (`compare_with_equal`).
    """
    return compensate(*question.to_domain())


add_batch(
    router,
    "/compensation/batch",
    Batch(CompensationIn, answer_compensations),
    operation_id="compensation_batch",
    summary="Where saddle and nut go on many boards",
    about="Answer many questions of /v1/compensation, each as a line of JSON.",
)
