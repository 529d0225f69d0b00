"""Problems: the pages that the types of problem documents name."""

from typing import Annotated

from fastapi import APIRouter, Path
from pydantic import BaseModel, ConfigDict
from starlette.responses import JSONResponse, Response

from scalewright.api.documentation import problem_documentation
from scalewright.api.problems import KINDS, Refusal

__all__ = ["router"]

router = APIRouter(tags=["operation"])


class ProblemKind(BaseModel):
    """A kind of problem."""

    model_config = ConfigDict(frozen=True, use_attribute_docstrings=True)

    type: str
    """What problem documents carry as their `type`."""
    title: str
    """The kind in a few words."""
    status: int
    """The HTTP status that goes with it."""
    about: str
    """What it means and what to do."""


@router.get(
    "/problems/{slug}",
    operation_id="problem_kind",
    summary="What a kind of problem means",
    response_model=ProblemKind,
    responses={404: problem_documentation(404)},
)
async def problem_kind(
    slug: Annotated[str, Path(description="The last part of a problem's `type`.", examples=["invalid-request"])],
) -> Response:
    """What a problem's `type` stands for: each is the address of such a page."""
    if slug not in KINDS:
        raise Refusal("not-found", f"There is no such kind of problem; there are {', '.join(KINDS)}.")
    kind = KINDS[slug]
    content = {"type": f"/problems/{slug}", "title": kind.title, "status": kind.status, "about": kind.about}
    return JSONResponse(content, headers={"Cache-Control": "public, max-age=86400"})
