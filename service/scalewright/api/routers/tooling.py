"""Tooling: what a tool does to many boards, and which tool a board came from."""

from fastapi import APIRouter

from scalewright.api.operations import post
from scalewright.lutherie.signature import ToolOrigin
from scalewright.lutherie.tooling import Tooling, came_from, study
from scalewright.wire.signature import ToolOriginIn, ToolOriginOut
from scalewright.wire.tooling import ToolingIn, ToolingOut

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["parts"])


@post(router, "/tooling", answer=ToolingOut, examples="tooling", summary="Judge a tool by many boards off it")
def tooling(question: ToolingIn) -> Tooling:
    """Study boards off one tool: a gang of saws, a template, a CNC.

    Bias of each slot against its commanded place from the tool's own zero, and again with scale and origin taken out;
    repeatability within and between boards; expanded uncertainty of the product; Cp and Cpk against the `tolerance`;
    drift over the sequence (a trend, or a step as after a changed blade: when and how large); slots to re-set, by how
    much, and the cents each costs. The `signature` tells this tool from others later.
    """
    return study(**question.to_domain())


@post(
    router,
    "/tooling/origin",
    answer=ToolOriginOut,
    examples="tooling_origin",
    summary="Tell which tool a board came from",
)
async def tooling_origin(question: ToolOriginIn) -> ToolOrigin:
    """Hold a board of unknown origin against the signatures of several tools, or find that none of them made it."""
    return came_from(*question.to_domain())
