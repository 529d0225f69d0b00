"""Asking where the frets go."""

from scalewright_client._batch import BatchCall, Questions
from scalewright_client._protocol import Call, call
from scalewright_client._requests import LayoutQuestion, Length, RuleLike, ScaleBasis, Unit
from scalewright_client._results import Layout

__all__ = ["layout", "layout_batch"]


def layout(
    *,
    scale: Length,
    rule: RuleLike,
    frets: int,
    unit: Unit = "mm",
    scale_basis: ScaleBasis | None = None,
    fractions: int | None = None,
) -> Call[Layout]:
    """Ask where the frets go.

    Parameters
    ----------
    scale : float or str
        The scale. [unit, or its own]
    rule : str, RuleRequest or Rule
        The spacing rule; one out of an earlier answer is accepted too.
    frets : int
        Number of frets, 1 to 60.
    unit : {"mm", "in"}
        Unit of plain numbers here and of every length in the answer.
    scale_basis : {"layout", "true"}, optional
        Which of the two scales ``scale`` is; "layout" unless given.
    fractions : int, optional
        Add shop fractions with this denominator.

    Returns
    -------
    Layout
        One row a fret: ``frets[11].from_nut`` is fret 12. A bridge belongs at ``to_true_end`` plus
        the setback, never at ``to_layout_end``.
    """
    body = {
        "unit": unit,
        "scale": scale,
        "scale_basis": scale_basis,
        "rule": rule,
        "frets": frets,
        "fractions": fractions,
    }
    return call("POST", "/v1/layout", Layout, body)


def layout_batch(questions: Questions[LayoutQuestion]) -> BatchCall[Layout]:
    """Ask where the frets of many boards go.

    Parameters
    ----------
    questions : iterable of LayoutQuestion
        The keywords of ``layout`` for each, and the caller's own ``id``; taken as they are sent.

    Returns
    -------
    Batch or AsyncBatch
        Iterates over a ``BatchResult`` or a ``BatchProblem`` for each question, in their order.
    """
    return BatchCall("/v1/layout/batch", Layout, questions)
