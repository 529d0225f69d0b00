"""What schemathesis has to be told of lines of JSON: they are sent as the text that they are."""

import schemathesis
from schemathesis import SerializationContext


@schemathesis.serializer("application/jsonl", "application/x-ndjson")
def lines_of_json(_context: SerializationContext, value: object) -> bytes:
    """Bytes of a batch: a text as it is, anything else as it prints."""
    return value if isinstance(value, bytes) else str(value).encode("utf-8", "surrogatepass")
