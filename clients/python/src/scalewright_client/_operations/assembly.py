"""Asking whether parts belong together."""

from collections.abc import Iterable

from scalewright_client._batch import BatchCall, Questions
from scalewright_client._protocol import Call, call
from scalewright_client._requests import AssemblyQuestion, Length, PartLike, Unit
from scalewright_client._results import Assembly

__all__ = ["assembly", "assembly_batch"]


def assembly(
    *,
    parts: Iterable[PartLike],
    unit: Unit = "mm",
    tolerance: Length | None = None,
    guard_factor: float | None = None,
    coverage: float | None = None,
) -> Call[Assembly]:
    """Ask whether parts belong together: boards, bridges, templates, replacements.

    Parameters
    ----------
    parts : iterable of Part or StatedPart
        Two or more; of two boards the one named later is the replacement.
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    tolerance : float or str, optional
        How far two true scales may differ; 0.5 mm unless given. [unit, or its own]
    guard_factor : float, optional
        Guard band in standard uncertainties; 2 unless given. [-]
    coverage : float, optional
        Probability that the intervals of the answer cover; 0.95 unless given. [-]

    Returns
    -------
    Assembly
        The decision, each pair with its mismatch at the saddle and in cents, and what to measure
        where it cannot be decided.
    """
    body = {
        "unit": unit,
        "parts": parts,
        "tolerance": tolerance,
        "guard_factor": guard_factor,
        "coverage": coverage,
    }
    return call("POST", "/v1/assembly", Assembly, body)


def assembly_batch(questions: Questions[AssemblyQuestion]) -> BatchCall[Assembly]:
    """Ask of many assemblies whether their parts belong together.

    Parameters
    ----------
    questions : iterable of AssemblyQuestion
        The keywords of ``assembly`` for each, and the caller's own ``id``; taken as they are sent.

    Returns
    -------
    Batch or AsyncBatch
        Iterates over a ``BatchResult`` or a ``BatchProblem`` for each question, in their order.
    """
    return BatchCall("/v1/assembly/batch", Assembly, questions)
