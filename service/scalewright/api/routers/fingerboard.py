"""Fingerboards over HTTP: geometry, cut lists and drawings."""

from fastapi import APIRouter

from scalewright.api.operations import post
from scalewright.lutherie.fingerboard import Fingerboard, draw_up
from scalewright.wire.fingerboard import FingerboardIn, FingerboardOut

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["fingerboard"])


@post(
    router,
    "/fingerboard",
    answer=FingerboardOut,
    examples="fingerboard",
    summary="Draw up a fingerboard",
)
async def fingerboard(question: FingerboardIn) -> Fingerboard:
    """Every line of a board: outline, strings, slots with both edges of the kerf, nut, saddle, markers, and a cut list.

    A fan board has a scale for either outer string and one fret that stays square; with one scale all frets are.
    By Accept or `format` the same board comes as JSON, as a cut list in CSV, as an SVG or DXF drawing in millimetres,
    as a PDF to be printed at 100 % (one long sheet, or pages to be glued together), or as a PNG preview. What stands
    on a drawing is said in `sheet`. Guard the blade, protect eyes and ears, and catch the dust of hard woods: the
    machine's own instructions, local codes and qualified practice come first.
    """
    return draw_up(question.to_domain())
