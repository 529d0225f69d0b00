"""Languages: which one an answer's sentences are written in (RFC 9110, section 12.5.4; RFC 4647, section 3.4)."""

from functools import lru_cache

from scalewright.drawing.language import FALLBACK, LANGUAGES

__all__ = ["choose_language"]

_MOST_RANGES = 32
_LONGEST = 1000


@lru_cache(maxsize=256)
def choose_language(header: bytes | None) -> tuple[str, bool]:
    """Choose a language.

    Parameters
    ----------
    header : bytes or None
        The Accept-Language header.

    Returns
    -------
    language : str
        One of :data:`scalewright.drawing.language.LANGUAGES`; the fallback where none is asked for or known.
    known : bool
        False where languages are asked for and none of them is known.
    """
    if header is None or not header.strip():
        return FALLBACK, True
    ranges = [_language_range(text) for text in header[:_LONGEST].decode("latin-1").split(",")[:_MOST_RANGES]]
    for name, quality in sorted(ranges, key=lambda pair: -pair[1]):  # of equals the one named first
        if quality == 0.0:
            continue
        if name == "*":
            return FALLBACK, True
        # A lookup: "de-AT" is met by "de".
        primary = name.partition("-")[0]
        if primary in LANGUAGES:
            return primary, True
    return FALLBACK, False


def _language_range(text: str) -> tuple[str, float]:
    """Name and quality of one range; a quality that is no number from 0 to 1 counts as 0."""
    name, _, parameter = text.partition(";")
    key, _, value = parameter.strip().lower().partition("=")
    if not parameter:
        return name.strip().lower(), 1.0
    digits = value.strip().replace(".", "", 1)
    wanted = key.strip() == "q" and digits.isascii() and digits.isdigit() and len(value) <= 6
    return name.strip().lower(), min(float(value), 1.0) if wanted else 0.0
