"""Problem documents (RFC 9457) to exceptions: by slug, then by status, then by class of status."""

import email.utils
import json
import math
from collections.abc import Mapping
from http import HTTPStatus
from types import MappingProxyType
from typing import Final, cast

import httpx

from scalewright_client import _errors as errors
from scalewright_client._errors import Fault, ProblemError

__all__ = ["BY_SLUG", "BY_STATUS", "problem_from", "problem_of", "request_id_of", "retry_after_of"]

BY_SLUG: Final[Mapping[str, type[ProblemError]]] = MappingProxyType(
    {
        "bad-tolerance": errors.ToleranceError,
        "contradictory-part": errors.ContradictoryPartError,
        "frets-collide": errors.FretsCollideError,
        "impossible-board": errors.ImpossibleBoardError,
        "impossible-reading": errors.ImpossibleReadingError,
        "impossible-setup": errors.ImpossibleSetupError,
        "impossible-string": errors.ImpossibleStringError,
        "label-too-small": errors.LabelSizeError,
        "no-saddle-position": errors.NoSaddlePositionError,
        "outside-scale": errors.OutsideScaleError,
        "string-description": errors.StringDescriptionError,
        "too-few-boards": errors.TooFewBoardsError,
        "too-few-pitches": errors.TooFewPitchesError,
        "too-few-readings": errors.TooFewReadingsError,
        "undefined-part": errors.UndefinedPartError,
        "unequal-slots": errors.UnequalSlotsError,
        "too-much-paper": errors.TooMuchPaperError,
        "unknown-pitch": errors.UnknownPitchError,
        "unplaceable-label": errors.UnplaceableLabelError,
        "unreadable-length": errors.UnreadableLengthError,
        "unreadable-label-text": errors.UnreadableTagError,
        "wrong-pitch-count": errors.PitchCountError,
    }
)
"""Slugs that have a class of their own; those of HTTP itself are told by their status."""

BY_STATUS: Final[Mapping[int, type[ProblemError]]] = MappingProxyType(
    {
        400: errors.MalformedRequestError,
        401: errors.NotAuthorisedError,
        403: errors.NotAuthorisedError,
        404: errors.NotFoundError,
        405: errors.MethodNotAllowedError,
        406: errors.NotAcceptableError,
        408: errors.SlowRequestError,
        413: errors.TooLargeError,
        414: errors.TooLargeError,
        415: errors.UnsupportedMediaTypeError,
        422: errors.InvalidRequestError,
        429: errors.RateLimitedError,
        431: errors.TooLargeError,
        502: errors.UnavailableError,
        503: errors.UnavailableError,
        504: errors.UnavailableError,
    }
)
"""Classes for the rest, by status."""

_MEMBERS = frozenset({"type", "title", "status", "detail", "instance", "errors"})
_REQUEST_URN = "urn:request:"


def problem_of(response: httpx.Response) -> ProblemError:
    """Read a refusal into the exception that fits it best.

    Never fails: a body that is no problem document (a gateway's page, say) still gives the class of
    its status.

    Parameters
    ----------
    response : httpx.Response
        An answer with status 400 or above, its body read.

    Returns
    -------
    ProblemError
        The exception to raise.
    """
    return problem_from(
        _document(response),
        response.status_code,
        title=_reason(response),
        request_id=request_id_of(response),
        retry_after=retry_after_of(response),
    )


def problem_from(
    members: Mapping[str, object],
    status: int,
    *,
    title: str | None = None,
    request_id: str | None = None,
    retry_after: float | None = None,
) -> ProblemError:
    """Read the members of a problem document into the exception that fits it best; never fails.

    Parameters
    ----------
    members : mapping
        Parsed JSON; whatever is missing is done without.
    status : int
        HTTP status.
    title : str, optional
        Taken where the document has none.
    request_id : str, optional
        Taken before the document's own.
    retry_after : float, optional
        How long the service asks to wait. [s]

    Returns
    -------
    ProblemError
        The exception to raise.
    """
    slug = _slug(members.get("type"))
    kind = BY_SLUG.get(slug or "") or BY_STATUS.get(status) or _class_of(status)
    return kind(
        status=status,
        title=_text(members.get("title")) or title or f"HTTP status {status}",
        detail=_text(members.get("detail")),
        slug=slug,
        errors=_faults(members.get("errors")),
        request_id=request_id or _request_of(members.get("instance")),
        retry_after=retry_after,
        extensions={name: value for name, value in members.items() if name not in _MEMBERS},
    )


def request_id_of(response: httpx.Response) -> str | None:
    """Read the request id that the service put on its answer, if it did."""
    return _text(response.headers.get("X-Request-ID"))


def retry_after_of(response: httpx.Response) -> float | None:
    """Read how long the service asks to wait, from seconds or from a date (RFC 9110, section 10.2.3).

    A date is read against the answer's own ``Date``, so that a wrong clock here does no harm.

    Returns
    -------
    float or None
        The wait, not negative; None where the answer does not ask for one or is not readable. [s]
    """
    text = response.headers.get("Retry-After", "").strip()
    if text.isascii() and text.isdigit():
        # More digits than this is no wait, and int() of thousands of them would be slow.
        return float(text) if len(text) <= 9 else math.inf  # thirty years
    try:
        until = email.utils.parsedate_to_datetime(text)
        now = email.utils.parsedate_to_datetime(response.headers["Date"])
        return max(0.0, (until - now).total_seconds())
    except (KeyError, ValueError, TypeError):
        return None


def _document(response: httpx.Response) -> dict[str, object]:
    if not response.headers.get("Content-Type", "").startswith(("application/problem+json", "application/json")):
        return {}
    try:
        members = json.loads(response.content)
    except ValueError:
        return {}
    return cast("dict[str, object]", members) if isinstance(members, dict) else {}


def _class_of(status: int) -> type[ProblemError]:
    return errors.ServerProblemError if status >= HTTPStatus.INTERNAL_SERVER_ERROR else errors.RequestProblemError


def _reason(response: httpx.Response) -> str:
    return response.reason_phrase or f"HTTP status {response.status_code}"


def _slug(type_uri: object) -> str | None:
    last = (_text(type_uri) or "").rstrip("/").rpartition("/")[2]
    return None if last in ("", "about:blank") else last


def _request_of(instance: object) -> str | None:
    text = _text(instance) or ""
    return text.removeprefix(_REQUEST_URN) if text.startswith(_REQUEST_URN) else None


def _text(value: object) -> str | None:
    return value if isinstance(value, str) else None


def _faults(given: object) -> tuple[Fault, ...]:
    rows = [row for row in given if isinstance(row, dict)] if isinstance(given, list) else []
    return tuple(
        Fault(
            pointer=_text(row.get("pointer")) or "",
            code=_text(row.get("code")) or "",
            detail=_text(row.get("detail")) or "",
            example=row.get("example"),
        )
        for row in rows
    )
