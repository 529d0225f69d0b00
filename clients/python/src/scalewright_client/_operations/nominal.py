"""Asking what a label can mean."""

from scalewright_client._batch import BatchCall, Questions
from scalewright_client._protocol import Call, call
from scalewright_client._requests import LabelLike, Length, NominalQuestion, PartReadings, Unit
from scalewright_client._results import Nominal

__all__ = ["nominal", "nominal_batch"]


def nominal(
    *,
    label: LabelLike,
    unit: Unit = "mm",
    readings: PartReadings | None = None,
    setback: Length | None = None,
    setback_uncertainty: Length | None = None,
    threshold: float | None = None,
    coverage: float | None = None,
) -> Call[Nominal]:
    """Ask what a label can mean, and which of its meanings readings leave standing.

    Parameters
    ----------
    label : str or float
        The label as it is written: "24 3/4 in", "628 mm".
    unit : {"mm", "in"}
        Unit of plain numbers among the readings and of every length in the answer.
    readings : PartReadings, optional
        What was measured on the board, fret 12 at least.
    setback : float or str, optional
        Setback that a string length includes; 2.5 mm unless given. [unit, or its own]
    setback_uncertainty : float or str, optional
        Its standard uncertainty (k = 1); 1 mm unless given. [unit, or its own]
    threshold : float, optional
        Probability that makes a rule established; 0.95 unless given. [-]
    coverage : float, optional
        Probability that the interval of the answer covers; 0.95 unless given. [-]

    Returns
    -------
    Nominal
        Each meaning with its true scale and its probability, and the sentence to print instead.
    """
    body = {
        "unit": unit,
        "label": label,
        "readings": readings,
        "setback": setback,
        "setback_uncertainty": setback_uncertainty,
        "threshold": threshold,
        "coverage": coverage,
    }
    return call("POST", "/v1/nominal", Nominal, body)


def nominal_batch(questions: Questions[NominalQuestion]) -> BatchCall[Nominal]:
    """Ask what many labels can mean.

    Parameters
    ----------
    questions : iterable of NominalQuestion
        The keywords of ``nominal`` for each, and the caller's own ``id``; taken as they are sent.

    Returns
    -------
    Batch or AsyncBatch
        Iterates over a ``BatchResult`` or a ``BatchProblem`` for each question, in their order.
    """
    return BatchCall("/v1/nominal/batch", Nominal, questions)
