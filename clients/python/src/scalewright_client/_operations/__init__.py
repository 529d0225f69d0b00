"""The operations, each once: what a method of either client takes, sends and gives back."""

from scalewright_client._operations.compensation import compensation
from scalewright_client._operations.diagnosis import diagnosis
from scalewright_client._operations.identification import identification, identification_batch, identification_plan
from scalewright_client._operations.intonation import intonation
from scalewright_client._operations.layout import layout
from scalewright_client._operations.rules import rules
from scalewright_client._operations.stretch_test import stretch_test

__all__ = [
    "compensation",
    "diagnosis",
    "identification",
    "identification_batch",
    "identification_plan",
    "intonation",
    "layout",
    "rules",
    "stretch_test",
]
