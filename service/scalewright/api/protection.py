"""Protection: what the OpenAPI document says of keys, quotas and overload."""

from typing import Any

from scalewright.api.access import is_open
from scalewright.api.documentation import problem_documentation
from scalewright.api.settings import Settings

__all__ = ["document_protection"]

_SCHEMES = {
    "key": {
        "type": "apiKey",
        "in": "header",
        "name": "X-API-Key",
        "description": "A key of the caller, where the service asks for one.",
    },
    "bearer": {"type": "http", "scheme": "bearer", "description": "The same key, as Authorization: Bearer."},
}
_REFUSALS = (401, 403, 429, 503)


def document_protection(document: dict[str, Any], settings: Settings) -> None:
    """Say of each operation whether it takes a key, and how it may be refused before it is looked at.

    Whether a key is needed is the operator's choice, so the document of a service without keys says that one
    may be sent, and the document of a service with keys that one must be.
    """
    document["components"]["securitySchemes"] = _SCHEMES
    either: list[dict[str, list[str]]] = [{name: []} for name in _SCHEMES]
    for path, item in document["paths"].items():
        for operation in item.values():
            if is_open(path):
                operation["security"] = []
                continue
            operation["security"] = either if settings.api_keys else [{}, *either]
            responses = operation["responses"] | {str(status): problem_documentation(status) for status in _REFUSALS}
            operation["responses"] = dict(sorted(responses.items()))
