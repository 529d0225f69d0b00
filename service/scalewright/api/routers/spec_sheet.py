"""Spec sheets over HTTP: what a buyer of a part has to know of its scale."""

from fastapi import APIRouter

from scalewright.api.operations import post
from scalewright.lutherie.spec_sheet import SpecSheet, draw_up_sheet
from scalewright.wire.spec_sheet import SpecSheetIn, SpecSheetOut

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["parts"])


@post(router, "/spec-sheet", answer=SpecSheetOut, examples="spec-sheet", summary="Draw up a part's spec sheet")
def spec_sheet(question: SpecSheetIn) -> SpecSheet:
    """Put on one page what a buyer has to know: true scale and how it is known, rule, layout scale, what a label means.

    With it come the frets in millimetres, inches and shop fractions, recommended setbacks for a string set, the
    decision on conformity where the part claims something and was measured, what the part must not be combined with,
    and cautions. By Accept or `format` it comes as JSON, HTML or PDF. HTML is a page that prints on one sheet, or a
    fragment to be put into your own page, without scripts and with nothing to be fetched; its looks follow from the
    custom properties `--scalewright-ink`, `-paper`, `-line`, `-accent`, `-quiet`, `-font` and `-size`, which your page
    may set. The sentences are in English, German or French by Accept-Language.
    """
    return draw_up_sheet(question.to_domain())
