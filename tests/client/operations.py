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
}

BATCHES = {
    "identification_batch": "/v1/identification/batch",
}
