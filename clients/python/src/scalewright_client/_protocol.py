"""The conversation with the service, without any I/O: calls out, answers in."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from typing import Generic, TypeVar

import httpx

from scalewright_client._decode import Mismatch, decode
from scalewright_client._errors import UnexpectedAnswerError
from scalewright_client._problems import request_id_of
from scalewright_client._results import FanScales, Rule, Signature, StatedPart

__all__ = ["Call", "DocumentCall", "call", "document_call", "encode"]

Result = TypeVar("Result")

_JSON = "application/json"


@dataclass(frozen=True, slots=True)
class Call(Generic[Result]):
    """One call, ready to be sent by any transport."""

    method: str
    """HTTP method."""
    path: str
    """Path below the base address."""
    result: type[Result]
    """What the answer is."""
    content: bytes | None = None
    """The body, JSON in UTF-8."""

    @property
    def headers(self) -> dict[str, str]:
        """Headers of this call."""
        accept = {"Accept": _JSON}
        return accept if self.content is None else {**accept, "Content-Type": _JSON}

    def read(self, response: httpx.Response) -> Result:
        """Read a successful answer.

        Parameters
        ----------
        response : httpx.Response
            The answer, its body read.

        Returns
        -------
        Result
            The typed answer.

        Raises
        ------
        UnexpectedAnswerError
            The answer is no JSON, or lacks what the contract promises.
        """
        request_id = request_id_of(response)
        status = response.status_code
        if not response.is_success:
            message = f"{self.path} answered with status {status}; check the base address"
            raise UnexpectedAnswerError(message, status=status, request_id=request_id)
        try:
            return decode(self.result, json.loads(response.content))
        except Mismatch as mismatch:
            message = f"{self.path}: expected {mismatch.expected} at {mismatch.pointer or 'the top'} of the answer"
            raise UnexpectedAnswerError(message, status=status, request_id=request_id) from None
        except (ValueError, RecursionError):
            message = f"{self.path}: the answer is not JSON; check that the base address is that of the service"
            raise UnexpectedAnswerError(message, status=status, request_id=request_id) from None


@dataclass(frozen=True, slots=True)
class DocumentCall(Call[bytes]):
    """A call for a file of some media type."""

    media: str = ""
    """The media type."""
    sent: str = _JSON
    """Media type of the body."""

    @property
    def headers(self) -> dict[str, str]:
        """Headers of this call; a refusal comes as JSON."""
        return {"Accept": self.media, "Content-Type": self.sent}

    def read(self, response: httpx.Response) -> bytes:
        """Take the file as it is.

        Parameters
        ----------
        response : httpx.Response
            The answer, its body read.

        Returns
        -------
        bytes
            The file.

        Raises
        ------
        UnexpectedAnswerError
            The answer is of another media type.
        """
        got = response.headers.get("Content-Type", "").partition(";")[0].strip().lower()
        if not response.is_success or got != self.media:
            message = f"{self.path}: expected {self.media}, and not {got or 'nothing'}; check the base address"
            raise UnexpectedAnswerError(message, status=response.status_code, request_id=request_id_of(response))
        return response.content


def document_call(path: str, media: str, body: Mapping[str, object]) -> DocumentCall:
    """Prepare a call for a file; see :func:`call`."""
    return DocumentCall("POST", path, bytes, encode({"unit": "mm", **body}), media)


def call(method: str, path: str, result: type[Result], body: Mapping[str, object] | None = None) -> Call[Result]:
    """Prepare a call; members of the body that are None are left to the service's defaults.

    Raises
    ------
    ValueError
        A number that is not finite.
    TypeError
        Something that has no place in JSON.
    """
    if body is None:
        return Call(method, path, result)
    return Call(method, path, result, encode(body))


def encode(body: Mapping[str, object]) -> bytes:
    """Write a question as JSON, without the members that are None.

    Raises
    ------
    ValueError
        A number that is not finite.
    TypeError
        Something that has no place in JSON.
    """
    given = {name: value for name, value in body.items() if value is not None}
    try:
        return _WRITER.encode(given).encode()
    except ValueError:
        message = "a number of the request is not finite; leave out what was not measured"
        raise ValueError(message) from None


def _plain(value: object) -> object:
    """JSON form of what json itself does not know: our own answers, arrays and scalars of numpy's kind, iterables."""
    if isinstance(value, Rule):
        return _rule_request(value)
    if isinstance(value, (FanScales, Signature, StatedPart)):
        members = {field.name: getattr(value, field.name) for field in fields(value)}
        return {name: member for name, member in members.items() if member is not None}
    to_list = getattr(value, "tolist", None)
    if callable(to_list):
        return to_list()
    if isinstance(value, Iterable):
        return list(value)
    message = f"{type(value).__name__} can't be sent; give a number or a text"
    raise TypeError(message)


def _rule_request(rule: Rule) -> dict[str, object]:
    """Turn an answered rule into one to ask with: only a divisor rule is defined by its divisor."""
    members: dict[str, object] = {
        "name": rule.name,
        "divisor": rule.divisor if rule.name == "divisor" else None,
        "steps": rule.steps,
        "cents": rule.cents,
        "repeat": rule.repeat,
    }
    return {name: value for name, value in members.items() if value is not None}


_WRITER = json.JSONEncoder(allow_nan=False, separators=(",", ":"), default=_plain)
