"""Media types: which form of an answer a client wants (RFC 9110, section 12)."""

from functools import lru_cache

from scalewright.api.problems import Refusal

__all__ = ["CONTENT_TYPES", "CSV", "DXF", "FORMATS", "HEAVY", "HTML", "JSON", "PAINTED", "PDF", "PNG", "SVG", "choose"]

JSON = "application/json"
CSV = "text/csv"
SVG = "image/svg+xml"
DXF = "image/vnd.dxf"
PDF = "application/pdf"
PNG = "image/png"
HTML = "text/html"

FORMATS = {"json": JSON, "csv": CSV, "svg": SVG, "dxf": DXF, "pdf": PDF, "png": PNG, "html": HTML}
"""What the query parameter ``format`` may say; it beats the Accept header, so that a link can ask for a form.

An answer is offered in a form where its model has the class method ``to_json``, ``to_csv``, ``to_svg`` ...
"""

CONTENT_TYPES = {media_type: media_type.encode() for media_type in FORMATS.values()} | {
    CSV: b"text/csv; charset=utf-8; header=present",
    HTML: b"text/html; charset=utf-8",
}
"""How the header Content-Type names each."""

HEAVY = frozenset({DXF, HTML, PDF})
"""Forms that take long enough to be written off the event loop."""

PAINTED = frozenset({PNG})
"""Forms that are painted point by point, by a library that keeps the interpreter to itself until it is done: they
are written in another process."""

_MOST_RANGES = 32


def choose(offers: tuple[str, ...], accept: bytes | None, wanted: str | None = None) -> str:
    """Choose the media type of an answer.

    Parameters
    ----------
    offers : tuple of str
        What can be made, the favourite first.
    accept : bytes or None
        The Accept header.
    wanted : str, optional
        The value of the query parameter ``format``.

    Returns
    -------
    str
        One of ``offers``.

    Raises
    ------
    Refusal
        406 with what can be made, where nothing fits.
    """
    if wanted is not None:
        if FORMATS.get(wanted) in offers:
            return FORMATS[wanted]
    elif accept is None:
        return offers[0]
    else:
        chosen = _best(offers, accept)
        if chosen is not None:
            return chosen
    names = [name for name, media_type in FORMATS.items() if media_type in offers]
    other = f", or with format={names[0]}" if names else ""
    message = f"This answer can be made as {', '.join(offers)}; ask for one in Accept{other}."
    raise Refusal("not-acceptable", message, facts={"available": list(offers)})


@lru_cache(maxsize=256)
def _best(offers: tuple[str, ...], accept: bytes) -> str | None:
    """Return the offer that an Accept header likes most; the earlier one where it likes two the same."""
    ranges = [
        _media_range(text) for text in accept.decode("latin-1").split(",", _MOST_RANGES)[:_MOST_RANGES] if text.strip()
    ]
    if not ranges:
        return offers[0]
    best, best_quality = None, 0.0
    for offer in offers:
        matching = [(_precision(name, offer), quality) for name, quality in ranges]
        matching = [(precision, quality) for precision, quality in matching if precision >= 0]
        quality = max(matching)[1] if matching else 0.0
        if quality > best_quality:
            best, best_quality = offer, quality
    return best


def _media_range(text: str) -> tuple[str, float]:
    """Name and quality of one range; a quality that is no number from 0 to 1 counts as 0."""
    name, *parameters = (part.strip().lower() for part in text.split(";"))
    for parameter in parameters:
        key, _, value = parameter.partition("=")
        if key.strip() == "q":
            return name, _quality(value.strip())
    return name, 1.0


def _quality(text: str) -> float:
    digits = text.replace(".", "", 1)
    if not (digits.isascii() and digits.isdigit() and len(text) <= 5):  # 0.123 at most, RFC 9110, 12.4.2
        return 0.0
    return min(float(text), 1.0)


def _precision(name: str, offer: str) -> int:
    """How precisely a range names an offer: 2 exactly, 1 by its first half, 0 as anything, -1 not at all."""
    if name == offer:
        return 2
    if name.endswith("/*") and name[:-1] == offer[: offer.index("/") + 1]:
        return 1
    return 0 if name == "*/*" else -1
