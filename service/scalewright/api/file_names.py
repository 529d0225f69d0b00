"""File names: what a drawing is saved as, safe for every system and every header (RFC 6266, RFC 8187)."""

import re
import unicodedata
from functools import lru_cache
from urllib.parse import quote

from scalewright.api.media import FORMATS, HTML, PNG, SVG

__all__ = ["content_disposition"]

_LONGEST = 60
_NOT_PLAIN = re.compile(r"[^A-Za-z0-9]+", re.ASCII)
_NO_NAME = re.compile(r"[^\w-]+")
_SHOWN = frozenset({HTML, SVG, PNG})
"""Forms that a browser shows; the others are saved."""
_ENDINGS = {media_type: name for name, media_type in FORMATS.items()}
_RESERVED = frozenset({"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10))})
"""Names that one wide-spread system keeps for its devices."""


@lru_cache(maxsize=256)
def content_disposition(title: str, media_type: str) -> bytes:
    """Value of the header Content-Disposition for a file.

    Parameters
    ----------
    title : str
        What a person calls it, any text.
    media_type : str
        One of :data:`scalewright.api.media.FORMATS`.

    Returns
    -------
    bytes
        With a plain name, and the name in UTF-8 where it says more; neither has a separator of paths, a quote,
        a dot but before its ending, or white space.
    """
    ending = _ENDINGS[media_type]
    composed = unicodedata.normalize("NFC", title)
    bare = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode()
    plain = _stem(_NOT_PLAIN.sub("-", bare))
    full = _stem(_NO_NAME.sub("-", composed))
    how = "inline" if media_type in _SHOWN else "attachment"
    header = f'{how}; filename="{plain}.{ending}"'
    if full != plain:
        header += f"; filename*=UTF-8''{quote(f'{full}.{ending}', safe='')}"
    return header.encode("ascii")


def _stem(text: str) -> str:
    """Name before its ending: short, and none that means something to a system."""
    stem = text[:_LONGEST].strip("-_")
    return f"board-{stem}" if stem.lower() in _RESERVED else stem or "drawing"
