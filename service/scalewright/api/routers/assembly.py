"""Assembly: whether parts belong together."""

from fastapi import APIRouter

from scalewright.api.batch import Batch, add_batch
from scalewright.api.operations import post
from scalewright.lutherie.assembly import Assembly, assemble
from scalewright.wire.assembly import AssemblyIn, AssemblyOut, answer_assemblies

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["parts"])


@post(router, "/assembly", answer=AssemblyOut, examples="assembly", summary="Tell whether parts belong together")
def assembly(question: AssemblyIn) -> Assembly:
    """Hold boards, blanks, bridges and saddle templates against each other before anything is glued.

    For each pair: the mismatch in true scale and at the saddle line, what it does in cents at frets 5, 12 and the
    last, whether the saddle's travel takes it up, and the decision: "together" where the mismatch lies at least a
    guard band inside the `tolerance` (0.5 mm in true scale if left out), "apart" where it lies at least a guard band
    outside, "undecided" between, and then which readings would decide. The guard band is `guard_factor` standard
    uncertainties (2 if left out), after JCGM 106 and ISO 14253-1; several explanations of the readings are weighed by
    their probability. For a board that replaces another: where each fret falls, and whether joint and bridge agree.
    Fan parts are compared along both outer strings, and where they name their `square_fret`, by the slant of their
    saddle lines too.
    """
    return assemble(question.to_domain())


add_batch(
    router,
    "/assembly/batch",
    Batch(AssemblyIn, answer_assemblies),
    operation_id="assembly_batch",
    summary="Tell of many assemblies whether their parts belong together",
    about="Answer many questions of /v1/assembly, each as a line of JSON.",
)
