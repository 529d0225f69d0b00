"""Versions: what this client was built for, what the service is, and whether the two can talk."""

import json
import re
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

import httpx

from scalewright_client._errors import (
    InvalidRequestError,
    MethodNotAllowedError,
    MissingOperationError,
    NotFoundError,
    ProblemError,
    ScalewrightError,
    UnexpectedAnswerError,
    VersionError,
)
from scalewright_client._problems import request_id_of
from scalewright_client._protocol import Call
from scalewright_client._version import __version__

__all__ = ["API_VERSION", "SERVICE", "Service", "explained", "may_be_the_version", "read_service", "refuse_other_api"]

API_VERSION: Final = "v1"
"""Version of the API that this client speaks; it stands in every address that it asks."""

ROOT: Final = "/"
"""Where a service says which version it is, without a key."""

Relation: TypeAlias = Literal["same", "older", "newer", "unknown"]

_NUMBERS = re.compile(r"(\d{1,6})\.(\d{1,6})\.(\d{1,6})", re.ASCII)
_API = re.compile(r"/(v\d{1,4})/", re.ASCII)
_UNKNOWN_FIELD = "extra_forbidden"
"""What a service calls a field that it does not know."""


@dataclass(frozen=True, slots=True)
class Service:
    """What a service says of itself."""

    version: str
    """Its version."""
    api: tuple[str, ...]
    """The versions of the API that it speaks, "v1" for one."""

    @property
    def relation(self) -> Relation:
        """Whether it is older or newer than the one that this client was built for, which bears the client's number."""
        own, other = _numbers(__version__), _numbers(self.version)
        if own is None or other is None:
            return "unknown"
        return "same" if own == other else "older" if other < own else "newer"


def _numbers(version: str) -> tuple[int, ...] | None:
    found = _NUMBERS.match(version)
    return None if found is None else tuple(map(int, found.groups()))


def read_service(response: httpx.Response) -> Service | None:
    """Read what a service says of itself at its root.

    Parameters
    ----------
    response : httpx.Response
        The answer, its body read.

    Returns
    -------
    Service or None
        None where this is no answer of the service: a gateway that hides the root, or another program.
    """
    try:
        members = json.loads(response.content) if response.is_success else None
    except (ValueError, RecursionError):
        return None
    if not isinstance(members, dict) or members.get("service") != "scalewright":
        return None
    version, api = members.get("version"), members.get("api")
    if not isinstance(api, list):
        # The first services told it by their links alone.
        links = members.get("links")
        api = _API.findall(" ".join(map(str, links.values()))) if isinstance(links, dict) else []
    spoken = tuple(dict.fromkeys(str(one) for one in api))
    return Service(version if isinstance(version, str) else "unknown", spoken)


@dataclass(frozen=True, slots=True)
class ServiceCall(Call[Service]):
    """A call for what the service says of itself."""

    def read(self, response: httpx.Response) -> Service:
        """Read it, and refuse a service that this client cannot talk to.

        Parameters
        ----------
        response : httpx.Response
            The answer, its body read.

        Returns
        -------
        Service
            Its version, and the versions of the API that it speaks.

        Raises
        ------
        VersionError
            It does not speak this client's version of the API.
        UnexpectedAnswerError
            What answers is no Scalewright service, or hides its root.
        """
        service = read_service(response)
        if service is None:
            message = "what answers does not say that it is a Scalewright service; check the base address"
            raise UnexpectedAnswerError(message, status=response.status_code, request_id=request_id_of(response))
        refuse_other_api(service)
        return service


SERVICE: Final = ServiceCall("GET", ROOT, Service)


def refuse_other_api(service: Service) -> None:
    """Refuse a service that does not speak this client's version of the API.

    Raises
    ------
    VersionError
        It does not.
    """
    if API_VERSION in service.api:
        return
    spoken = " and ".join(service.api) or "none that this client knows of"
    newer = any(_generation(one) > _generation(API_VERSION) for one in service.api)
    advice = "update scalewright-client" if newer else "update the service, or check the base address"
    message = (
        f"the service (version {service.version}) speaks API {spoken}, and this client (version {__version__}) speaks "
        f"{API_VERSION}; {advice}"
    )
    raise VersionError(message, service_version=service.version, client_version=__version__)


def _generation(api: str) -> int:
    digits = api.removeprefix("v")
    return int(digits) if digits.isascii() and digits.isdigit() and len(digits) < 5 else 0


def may_be_the_version(error: ScalewrightError) -> bool:
    """Whether another version of the service could be behind an error, so that it is worth asking which it is."""
    if isinstance(error, InvalidRequestError):
        return any(fault.code == _UNKNOWN_FIELD for fault in error.errors)
    return isinstance(error, (NotFoundError, MethodNotAllowedError, UnexpectedAnswerError))


def explained(error: ScalewrightError, path: str, service: Service) -> ScalewrightError:
    """Say of an error what the versions have to do with it.

    Parameters
    ----------
    error : ScalewrightError
        One of which :func:`may_be_the_version` holds.
    path : str
        What was asked.
    service : Service
        What the service says of itself.

    Returns
    -------
    ScalewrightError
        The same one, or one that says more.
    """
    both = f"the service is version {service.version}, this client was built for version {__version__}"
    if isinstance(error, (NotFoundError, MethodNotAllowedError)):
        advice = {"older": "update the service", "newer": "update scalewright-client"}.get(
            service.relation, "ask whoever runs the service"
        )
        return _missing(error, f"this service has no {path}: {both}; {advice}")
    if service.relation in {"older", "newer"}:
        why = "may not know a field that this client knows" if isinstance(error, InvalidRequestError) else "may differ"
        error.hint = f"{both}; it {why}"
    return error


def _missing(error: ProblemError, detail: str) -> MissingOperationError:
    return MissingOperationError(
        status=error.status,
        title=error.title,
        detail=detail,
        slug=error.slug,
        request_id=error.request_id,
        extensions=error.extensions,
    )
