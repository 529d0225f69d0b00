"""The operations, each once: what a method of either client takes, sends and gives back."""

from scalewright_client._operations.assembly import assembly, assembly_batch
from scalewright_client._operations.compensation import compensation, compensation_batch
from scalewright_client._operations.conformity import conformity
from scalewright_client._operations.diagnosis import diagnosis
from scalewright_client._operations.fingerboard import fingerboard, fingerboard_drawing
from scalewright_client._operations.identification import identification, identification_batch, identification_plan
from scalewright_client._operations.intonation import intonation
from scalewright_client._operations.label import label, label_batch, label_batch_drawing, label_drawing, label_read
from scalewright_client._operations.label_pages import label_pages, label_pages_drawing
from scalewright_client._operations.layout import layout, layout_batch
from scalewright_client._operations.nominal import nominal, nominal_batch
from scalewright_client._operations.rules import rules
from scalewright_client._operations.spec_sheet import spec_sheet, spec_sheet_drawing
from scalewright_client._operations.stretch_test import stretch_test
from scalewright_client._operations.tooling import tooling, tooling_origin

__all__ = [
    "assembly",
    "assembly_batch",
    "compensation",
    "compensation_batch",
    "conformity",
    "diagnosis",
    "fingerboard",
    "fingerboard_drawing",
    "identification",
    "identification_batch",
    "identification_plan",
    "intonation",
    "label",
    "label_batch",
    "label_batch_drawing",
    "label_drawing",
    "label_pages",
    "label_pages_drawing",
    "label_read",
    "layout",
    "layout_batch",
    "nominal",
    "nominal_batch",
    "rules",
    "spec_sheet",
    "spec_sheet_drawing",
    "stretch_test",
    "tooling",
    "tooling_origin",
]
