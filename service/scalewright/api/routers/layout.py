"""Layout: where the frets of a board go."""

from typing import Annotated

from fastapi import APIRouter, Query

from scalewright.api.batch import Batch, add_batch
from scalewright.api.operations import get, post
from scalewright.lutherie.layout import Layout, lay_out
from scalewright.wire.layout import LayoutIn, LayoutOut, LayoutQuery, answer_layouts

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["layout"])


@post(router, "/layout", answer=LayoutOut, examples="layout", summary="Lay out the frets of a board")
async def layout(question: LayoutIn) -> Layout:
    """Positions of the frets from the nut, in full double precision, every length in `unit`.

    `from_nut` is measured from the nut in one go for every fret, so that errors do not add up. A bridge belongs
    at `to_true_end` plus the setback of the saddle, never at `to_layout_end`.
    """
    return lay_out(*question.to_domain())


@get(router, "/layout", answer=LayoutOut, examples="layout", summary="Lay out the frets of a board, by address")
async def get_layout(question: Annotated[LayoutQuery, Query()]) -> Layout:
    """The same as POST, with the question in the address, so that the answer can be linked to and cached.

    A bare number is in `unit`: `scale=24.75&unit=in` and `scale=24.75in&unit=in` say the same.
    """
    return lay_out(*question.to_domain())


add_batch(
    router,
    "/layout/batch",
    Batch(LayoutIn, answer_layouts),
    operation_id="layout_batch",
    summary="Lay out the frets of many boards",
    about="Answer many questions of /v1/layout, each as a line of JSON.",
)
