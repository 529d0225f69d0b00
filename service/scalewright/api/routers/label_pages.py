"""Pages of labels over HTTP: labels of many parts on sheets of label paper."""

from fastapi import APIRouter

from scalewright.api.operations import post
from scalewright.drawing.label_pages import FilledPages, fill_pages
from scalewright.wire.label_pages import LabelPagesIn, LabelPagesOut

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["parts"])


@post(
    router,
    "/label/pages",
    answer=LabelPagesOut,
    examples="label_pages",
    summary="Print labels on sheets of label paper",
)
def label_pages(question: LabelPagesIn) -> FilledPages:
    """Set up to 500 labels of one size side by side on A4 or letter paper, from any place of the first page on.

    As many columns and rows are used as the paper holds, with the gaps and edges of your label paper; without them the
    labels are centred. By Accept or `format` they come as PDF, to be printed at 100 %, or as JSON that says how the
    labels lie and what their codes carry. Letters are in English, German or French by Accept-Language.
    """
    return fill_pages(question.to_domain())
