"""Problems: the one table from what can go wrong to slug, title and status, and its documents (RFC 9457)."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import orjson
from starlette.responses import Response
from starlette.types import Scope

from scalewright.lutherie import errors
from scalewright.lutherie.errors import LutherieError

__all__ = [
    "KINDS",
    "MEDIA_TYPE",
    "REFUSED_BY_THE_CRAFT",
    "Kind",
    "Refusal",
    "document_of",
    "is_plain",
    "pointer_to",
    "problem",
    "request_id_of",
]

MEDIA_TYPE = "application/problem+json"

_PLAIN_NAME = re.compile(r"[A-Za-z0-9_.-]{1,40}", re.ASCII)


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of problem."""

    slug: str
    """Name that stays the same; the last part of ``type``."""
    status: int
    """HTTP status."""
    title: str
    """A few words for people."""
    about: str
    """What it means and what to do."""


KINDS = {
    kind.slug: kind
    for kind in (
        Kind(
            "malformed-request",
            400,
            "Malformed request",
            "The request cannot be read as HTTP with a JSON body: send valid JSON in UTF-8, each member once.",
        ),
        Kind(
            "key-needed",
            401,
            "Key needed",
            "This service answers those who have a key: send yours in the header X-API-Key.",
        ),
        Kind("key-not-good-here", 403, "Key not good here", "Your key is good for other addresses than this one."),
        Kind("not-found", 404, "No such address", "Nothing lives at this address; the address / lists what there is."),
        Kind(
            "method-not-allowed",
            405,
            "Method not allowed",
            "This address answers other methods; the Allow header lists them.",
        ),
        Kind(
            "not-acceptable",
            406,
            "Not acceptable",
            "The answer cannot be made in any media type that the Accept header or `format` names.",
        ),
        Kind(
            "request-timeout",
            408,
            "Request took too long",
            "The body did not arrive in time; send it again, in one go.",
        ),
        Kind("body-too-large", 413, "Body too large", "The body is larger than this service takes; send less at once."),
        Kind(
            "address-too-long",
            414,
            "Address too long",
            "Path and query are longer than this service takes; use POST with a body.",
        ),
        Kind(
            "unsupported-media-type",
            415,
            "Unsupported media type",
            "The body has to be application/json in UTF-8, not compressed.",
        ),
        Kind(
            "invalid-request",
            422,
            "Invalid request",
            "The request can be read, but its values cannot be used; `errors` says where and what to change.",
        ),
        Kind(
            "quota-exceeded",
            429,
            "Quota exceeded",
            "You have asked as often as you may for now; the header Retry-After says when to come again.",
        ),
        Kind("headers-too-large", 431, "Headers too large", "The request headers are larger than this service takes."),
        Kind(
            "internal-error",
            500,
            "Internal error",
            "The service failed; it is not the request's fault. Report it with the request id.",
        ),
        Kind(
            "line-too-long",
            413,
            "Line too long",
            "A line of a batch is longer than this service takes; a line holds one question.",
        ),
        Kind(
            "too-many-lines",
            413,
            "Too many lines",
            "A batch has more lines than this service takes; send the rest in another.",
        ),
        Kind(
            "overloaded",
            503,
            "Overloaded",
            "The service has as much to do as it takes on; the header Retry-After says when to come again.",
        ),
        Kind("shutting-down", 503, "Shutting down", "This process is about to end and takes no new callers."),
        Kind("unreadable-length", 422, "Unreadable length", "A text that is no length."),
        Kind(
            "too-few-readings",
            422,
            "Too few readings",
            "There are fewer readings than the fit needs; measure more frets.",
        ),
        Kind("impossible-reading", 422, "Impossible reading", "A reading that no board can give; measure it again."),
        Kind("too-few-pitches", 422, "Too few pitches", "The list of pitches is shorter than the board."),
        Kind("wrong-pitch-count", 422, "Wrong pitch count", "A temperament has a pitch too many or too few."),
        Kind(
            "outside-scale",
            422,
            "Outside the scale",
            "A position or a length that the scale or the rule cannot hold.",
        ),
        Kind(
            "unplaceable-label",
            422,
            "Label without a unit",
            "A label's number fits neither inches nor millimetres; write its unit.",
        ),
        Kind(
            "unreadable-label-text",
            422,
            "Unreadable label text",
            "This is not the text of a label's code, or it was cut off or changed on its way; scan it again.",
        ),
        Kind("bad-tolerance", 422, "Bad tolerance", "A tolerance has to be greater than zero."),
        Kind(
            "too-few-boards",
            422,
            "Too few boards",
            "One board tells a board's errors from a tool's as little as none; measure more boards off the tool.",
        ),
        Kind(
            "unequal-slots",
            422,
            "Unequal slots",
            "All boards off one tool have the same slots; give one reading each.",
        ),
        Kind("undefined-part", 422, "Undefined part", "Nothing says what this part's scale is."),
        Kind(
            "contradictory-part",
            422,
            "Contradictory part",
            "A part is defined twice, and the two differ; find out which is right, nothing was averaged.",
        ),
        Kind("unknown-pitch", 422, "Unknown pitch", "A name that is no pitch."),
        Kind(
            "impossible-string",
            422,
            "Impossible string",
            "A string that cannot be; check its measures, its mass and their units.",
        ),
        Kind(
            "string-description",
            422,
            "String description",
            "A string is described by too little, or twice in different words.",
        ),
        Kind(
            "impossible-setup",
            422,
            "Impossible setup",
            "These strings cannot lie over this board so; check the heights, the frets and the finger.",
        ),
        Kind(
            "no-saddle-position",
            422,
            "No saddle position",
            "No saddle brings this string near its pitches; check the scale, the heights and the string.",
        ),
        Kind(
            "frets-collide",
            422,
            "Frets collide",
            "Two frets cross on the board, or their slots run into one another.",
        ),
        Kind(
            "impossible-board",
            422,
            "Impossible board",
            "Strings, edges or the surface of this board contradict one another.",
        ),
        Kind(
            "label-too-small",
            422,
            "Label too small",
            "The label is too small for its content; `smallest_mm` and `smallest_common_size` say what works.",
        ),
        Kind(
            "too-much-paper",
            422,
            "Too much paper",
            "The drawing would take a sheet that is too long, or too many pages.",
        ),
    )
}
"""Every kind of problem by its slug."""

REFUSED_BY_THE_CRAFT: Mapping[type[LutherieError], str] = {
    errors.UnreadableLengthError: "unreadable-length",
    errors.TooFewReadingsError: "too-few-readings",
    errors.ImpossibleReadingError: "impossible-reading",
    errors.UnplaceableLabelError: "unplaceable-label",
    errors.UnreadableTagError: "unreadable-label-text",
    errors.ToleranceError: "bad-tolerance",
    errors.TooFewBoardsError: "too-few-boards",
    errors.UnequalSlotsError: "unequal-slots",
    errors.UndefinedPartError: "undefined-part",
    errors.ContradictoryPartError: "contradictory-part",
    errors.TooFewPitchesError: "too-few-pitches",
    errors.PitchCountError: "wrong-pitch-count",
    errors.OutsideScaleError: "outside-scale",
    errors.UnknownPitchError: "unknown-pitch",
    errors.ImpossibleStringError: "impossible-string",
    errors.StringDescriptionError: "string-description",
    errors.ImpossibleSetupError: "impossible-setup",
    errors.NoSaddlePositionError: "no-saddle-position",
    errors.FretsCollideError: "frets-collide",
    errors.ImpossibleBoardError: "impossible-board",
    errors.LabelSizeError: "label-too-small",
    errors.PaperError: "too-much-paper",
}
"""Slug of every refusal of the craft."""

_BY_STATUS = {
    400: "malformed-request",
    401: "key-needed",
    403: "key-not-good-here",
    404: "not-found",
    405: "method-not-allowed",
    406: "not-acceptable",
    408: "request-timeout",
    413: "body-too-large",
    414: "address-too-long",
    415: "unsupported-media-type",
    422: "invalid-request",
    429: "quota-exceeded",
    431: "headers-too-large",
    503: "overloaded",
}


class Refusal(Exception):  # noqa: N818  (it is no error of ours)
    """A request that is refused with a problem document."""

    def __init__(
        self,
        slug: str,
        detail: str,
        *,
        faults: Sequence[Mapping[str, object]] = (),
        headers: Mapping[str, str] | None = None,
        facts: Mapping[str, object] | None = None,
    ) -> None:
        super().__init__(detail)
        self.slug = slug
        self.detail = detail
        self.faults = faults
        self.headers = headers or {}
        self.facts = facts or {}

    @classmethod
    def of_status(cls, status: int, headers: Mapping[str, str] | None = None) -> "Refusal":
        """Return the refusal that a bare HTTP status stands for."""
        kind = KINDS[_BY_STATUS.get(status, "malformed-request" if status < 500 else "internal-error")]
        return cls(kind.slug, kind.about, headers=headers)

    @classmethod
    def of_craft(cls, error: LutherieError) -> "Refusal":
        """Return the refusal that a refusal of the craft becomes; its facts are members of the document."""
        slug = REFUSED_BY_THE_CRAFT[type(error)]
        detail = f"{str(error)[:1].upper()}{str(error)[1:]}."
        fault: dict[str, object] = {
            "pointer": pointer_to(error.field),
            "code": slug.replace("-", "_"),
            "detail": detail,
        }
        # An example belongs to the place at fault; the other facts to the document.
        facts = dict(error.facts)
        if "example" in facts:
            fault["example"] = facts.pop("example")
        return cls(slug, detail, faults=[fault], facts=facts)


def is_plain(name: object) -> bool:
    """Whether a name may be sent back: an index, or a short name such as our own; any other came from the sender."""
    return isinstance(name, int) or (isinstance(name, str) and _PLAIN_NAME.fullmatch(name) is not None)


def pointer_to(path: Sequence[str | int]) -> str:
    """JSON pointer (RFC 6901) to a path of names and indices."""
    return "".join("/" + str(part).replace("~", "~0").replace("/", "~1") for part in path)


def request_id_of(scope: Scope) -> str:
    """Id that the outermost layer gave the request."""
    state: Mapping[str, Any] = scope.get("state") or {}
    return str(state.get("request_id", "unknown"))


def document_of(refusal: Refusal, request_id: str) -> dict[str, object]:
    """Members of the problem document for a refusal."""
    kind = KINDS[refusal.slug]
    document: dict[str, object] = {
        "type": f"/problems/{kind.slug}",
        "title": kind.title,
        "status": kind.status,
        "detail": refusal.detail,
        "instance": f"urn:request:{request_id}",
        "errors": list(refusal.faults),
    }
    document.update((name, value) for name, value in refusal.facts.items() if name not in document)
    return document


def problem(scope: Scope, refusal: Refusal) -> Response:
    """Problem document for a refused request, as its answer; the log and the metrics are told the slug."""
    scope.setdefault("state", {})["problem"] = refusal.slug
    document = document_of(refusal, request_id_of(scope))
    headers = {"Cache-Control": "no-store", **refusal.headers}
    return Response(orjson.dumps(document), KINDS[refusal.slug].status, headers, MEDIA_TYPE)
