"""The operations that the client knows: method, path and result of each."""

import scalewright_client as sc

OPERATIONS = {
    "rules": ("get", "/v1/rules", sc.Rules),
    "layout": ("post", "/v1/layout", sc.Layout),
    "identification": ("post", "/v1/identification", sc.Identification),
    "identification_plan": ("post", "/v1/identification/plan", sc.MeasuringCard),
    "compensation": ("post", "/v1/compensation", sc.Compensation),
    "intonation": ("post", "/v1/intonation", sc.Intonation),
    "diagnosis": ("post", "/v1/diagnosis", sc.Diagnosis),
    "stretch_test": ("post", "/v1/stretch-test", sc.StretchTest),
    "nominal": ("post", "/v1/nominal", sc.Nominal),
    "assembly": ("post", "/v1/assembly", sc.Assembly),
    "conformity": ("post", "/v1/conformity", sc.Conformity),
    "spec_sheet": ("post", "/v1/spec-sheet", sc.SpecSheet),
    "label": ("post", "/v1/label", sc.PrintedLabel),
    "label_pages": ("post", "/v1/label/pages", sc.LabelPages),
    "label_read": ("post", "/v1/label/read", sc.Tag),
    "tooling": ("post", "/v1/tooling", sc.Tooling),
    "tooling_origin": ("post", "/v1/tooling/origin", sc.ToolOrigin),
    "fingerboard": ("post", "/v1/fingerboard", sc.Fingerboard),
}

BATCHES = {
    "layout_batch": ("layout", sc.LayoutQuestion),
    "identification_batch": ("identification", sc.IdentificationQuestion),
    "compensation_batch": ("compensation", sc.CompensationQuestion),
    "nominal_batch": ("nominal", sc.NominalQuestion),
    "label_batch": ("label", sc.LabelBatchQuestion),
    "assembly_batch": ("assembly", sc.AssemblyQuestion),
}
"""The batches: the single operation of each, and the shape of a question."""
