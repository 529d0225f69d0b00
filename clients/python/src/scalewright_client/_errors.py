"""Everything that can go wrong, as one tree of exceptions.

::

    ScalewrightError                       whatever this client raises on purpose
    ├── TransportError                     no answer came
    │   ├── ConnectionFaultError           the service could not be reached, or hung up
    │   ├── TimedOutError                  the service did not answer in time
    │   └── TruncatedError                 an answer of many lines broke off
    ├── UnexpectedAnswerError              an answer came that is not what the contract says
    ├── VersionError                       the service speaks another version of the API
    └── ProblemError                       the service said no, and why
        ├── RequestProblemError            4xx: change the request
        │   ├── MalformedRequestError      400, the body cannot be read
        │   ├── NotAuthorisedError         401, 403
        │   ├── NotFoundError              404; below it
        │   │   └── MissingOperationError  404, 405 of an operation that this version of the service lacks
        │   ├── MethodNotAllowedError      405
        │   ├── NotAcceptableError         406
        │   ├── SlowRequestError           408
        │   ├── TooLargeError              413, 414, 431
        │   ├── UnsupportedMediaTypeError  415
        │   ├── InvalidRequestError        422, readable but refused; below it
        │   │   └── one class for each refusal of the craft
        │   └── RateLimitedError           429
        └── ServerProblemError             5xx: the request may be right
            └── UnavailableError           502, 503, 504
"""

from collections.abc import Mapping
from dataclasses import dataclass

__all__ = [
    "ConnectionFaultError",
    "ContradictoryPartError",
    "Fault",
    "FretsCollideError",
    "ImpossibleBoardError",
    "ImpossibleReadingError",
    "ImpossibleSetupError",
    "ImpossibleStringError",
    "InvalidRequestError",
    "LabelSizeError",
    "MalformedRequestError",
    "MethodNotAllowedError",
    "MissingOperationError",
    "NoSaddlePositionError",
    "NotAcceptableError",
    "NotAuthorisedError",
    "NotFoundError",
    "OutsideScaleError",
    "PitchCountError",
    "ProblemError",
    "RateLimitedError",
    "RequestProblemError",
    "ScalewrightError",
    "ServerProblemError",
    "SlowRequestError",
    "StringDescriptionError",
    "TimedOutError",
    "ToleranceError",
    "TooFewBoardsError",
    "TooFewPitchesError",
    "TooFewReadingsError",
    "TooLargeError",
    "TooMuchPaperError",
    "TransportError",
    "TruncatedError",
    "UnavailableError",
    "UndefinedPartError",
    "UnequalSlotsError",
    "UnexpectedAnswerError",
    "UnknownPitchError",
    "UnplaceableLabelError",
    "UnreadableLengthError",
    "UnreadableTagError",
    "UnsupportedMediaTypeError",
    "VersionError",
]


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong with a request."""

    pointer: str
    """JSON pointer to it in the request, "/scale"; empty for the whole request."""
    code: str
    """A short name that stays the same, for programs."""
    detail: str
    """One sentence, for people."""
    example: object = None
    """Something that would work there, where the service knows one."""


class ScalewrightError(Exception):
    """The base of all that this client raises on purpose."""

    hint: str | None = None
    """What the versions of client and service may have to do with it; None where they have nothing."""

    def __str__(self) -> str:
        """Tell what happened, and the hint where there is one."""
        told = super().__str__()
        return told if self.hint is None else f"{told} ({self.hint})"


class TransportError(ScalewrightError):
    """No answer came; the exception of the transport is its ``__cause__``."""


class ConnectionFaultError(TransportError):
    """The service could not be reached, or hung up."""


class TimedOutError(TransportError):
    """The service did not answer in time."""


class TruncatedError(TransportError):
    """An answer of many lines broke off, or the service did not look at all of the questions."""

    def __init__(self, message: str, *, received: int, request_id: str | None = None) -> None:
        super().__init__(message)
        self.received = received
        """Questions whose answers came; they are good."""
        self.request_id = request_id
        """What to quote to whoever runs the service; None where the answer names none."""


class UnexpectedAnswerError(ScalewrightError):
    """An answer came that is not what the contract says."""

    def __init__(self, message: str, *, status: int, request_id: str | None = None) -> None:
        super().__init__(message)
        self.status = status
        """HTTP status of the answer."""
        self.request_id = request_id
        """What to quote to whoever runs the service; None where the answer names none."""


class VersionError(ScalewrightError):
    """The service speaks another version of the API than this client; one of the two has to be updated."""

    def __init__(self, message: str, *, service_version: str, client_version: str) -> None:
        super().__init__(message)
        self.service_version = service_version
        """Version of the service, as it says itself."""
        self.client_version = client_version
        """Version of this client."""


class ProblemError(ScalewrightError):
    """The service said no, and why (RFC 9457)."""

    def __init__(
        self,
        *,
        status: int,
        title: str,
        detail: str | None = None,
        slug: str | None = None,
        errors: tuple[Fault, ...] = (),
        request_id: str | None = None,
        retry_after: float | None = None,
        extensions: Mapping[str, object] | None = None,
    ) -> None:
        super().__init__(detail or title)
        self.status = status
        """HTTP status."""
        self.title = title
        """What kind of problem it is, in a few words."""
        self.detail = detail
        """What happened this time, in a sentence."""
        self.slug = slug
        """Last part of the problem's type, for programs; None where the answer is no problem document."""
        self.errors = errors
        """What is wrong with the request, one by one."""
        self.request_id = request_id
        """What to quote to whoever runs the service."""
        self.retry_after = retry_after
        """How long the service asks to wait. [s]"""
        self.extensions = dict(extensions or {})
        """Further members of the problem document: the numbers that explain a refusal."""

    @property
    def pointers(self) -> tuple[str, ...]:
        """JSON pointers to what is wrong in the request."""
        return tuple(fault.pointer for fault in self.errors)

    def __str__(self) -> str:
        """Tell the problem and each fault in plain words, and the request id to quote."""
        lines = [self.detail or self.title]
        lines += [
            f"  {fault.pointer or '(request)'}: {fault.detail}" for fault in self.errors if fault.detail not in lines[0]
        ]
        if self.hint is not None:
            lines.append(f"  ({self.hint})")
        if self.request_id is not None:
            lines.append(f"  (status {self.status}, request {self.request_id})")
        return "\n".join(lines)


class RequestProblemError(ProblemError):
    """4xx: the request has to change."""


class MalformedRequestError(RequestProblemError):
    """400: the body cannot be read."""


class NotAuthorisedError(RequestProblemError):
    """401 or 403: the key is missing or wrong."""


class NotFoundError(RequestProblemError):
    """404: there is no such path."""


class MissingOperationError(NotFoundError):
    """404 or 405: this version of the service lacks the operation; the message names both versions."""


class MethodNotAllowedError(RequestProblemError):
    """405: the path exists, and not for this method."""


class NotAcceptableError(RequestProblemError):
    """406: the service cannot make the media type asked for."""


class SlowRequestError(RequestProblemError):
    """408: the request did not arrive in time."""


class TooLargeError(RequestProblemError):
    """413, 414 or 431: body, address or headers are over the service's limit."""


class UnsupportedMediaTypeError(RequestProblemError):
    """415: the service does not read this media type."""


class RateLimitedError(RequestProblemError):
    """429: too many requests; ``retry_after`` says how long to wait."""


class InvalidRequestError(RequestProblemError):
    """422: readable, and refused; ``errors`` says what to change."""


class UnreadableLengthError(InvalidRequestError):
    """A text that is no length."""


class TooFewReadingsError(InvalidRequestError):
    """Fewer readings than a fit needs."""


class ImpossibleReadingError(InvalidRequestError):
    """A reading that no board can give."""


class TooFewPitchesError(InvalidRequestError):
    """A list of pitches shorter than the board."""


class LabelSizeError(InvalidRequestError):
    """A label too small for its content; the document names sizes that work."""


class PitchCountError(InvalidRequestError):
    """A temperament with a pitch too many or too few."""


class OutsideScaleError(InvalidRequestError):
    """A position or a length that the scale or the rule cannot hold."""


class UnknownPitchError(InvalidRequestError):
    """A name that is no pitch."""


class StringDescriptionError(InvalidRequestError):
    """A string described by too little, or twice in different words."""


class ImpossibleStringError(InvalidRequestError):
    """A string that cannot be; look at its measures, its mass and their units."""


class ImpossibleSetupError(InvalidRequestError):
    """Strings that cannot lie over their board so."""


class NoSaddlePositionError(InvalidRequestError):
    """No saddle brings a string near its pitches."""


class UnplaceableLabelError(InvalidRequestError):
    """A label whose number fits neither inches nor millimetres."""


class UnreadableTagError(InvalidRequestError):
    """A text that is not that of a label's code, or was changed on its way."""


class UndefinedPartError(InvalidRequestError):
    """A part whose scale nothing says."""


class ContradictoryPartError(InvalidRequestError):
    """A part that is defined twice, and differently."""


class ToleranceError(InvalidRequestError):
    """A tolerance that is not greater than zero."""


class TooFewBoardsError(InvalidRequestError):
    """Fewer boards than it takes to tell a tool's errors from a board's."""


class UnequalSlotsError(InvalidRequestError):
    """Boards off one tool that do not have the same slots."""


class FretsCollideError(InvalidRequestError):
    """Frets of a board that cross or touch."""


class ImpossibleBoardError(InvalidRequestError):
    """A board that no wood can be cut to."""


class TooMuchPaperError(InvalidRequestError):
    """A drawing that would take more pages than the service makes."""


class ServerProblemError(ProblemError):
    """5xx: the service failed; the request may be right."""


class UnavailableError(ServerProblemError):
    """502, 503 or 504: the service is overloaded, restarting or not there."""
