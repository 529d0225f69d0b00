"""When to ask again, and after how long."""

import random
from collections.abc import Callable
from dataclasses import dataclass

import httpx

from scalewright_client._errors import ConnectionFaultError, TimedOutError, TransportError
from scalewright_client._problems import problem_of, retry_after_of

__all__ = ["Attempts", "Retry"]

_TRANSIENT = frozenset({429, 502, 503, 504})
"""Statuses that say "not now" rather than "not so"."""

_SAFE_FAULTS = (
    httpx.ConnectError,
    httpx.ConnectTimeout,
    httpx.ReadError,
    httpx.WriteError,
    httpx.CloseError,
    httpx.RemoteProtocolError,
)
"""Faults of the line. A service that is slow to answer is not asked again: that would make it slower."""


@dataclass(frozen=True, slots=True)
class Retry:
    """How often to ask again. Every operation is a pure calculation, so each may be repeated.

    Asked again is after a fault of the connection and after 429, 502, 503 and 504; never after
    another refusal and never after a time-out of the answer.
    """

    attempts: int = 3
    """How often to ask in all; 1 asks once."""
    first_wait: float = 0.2
    """Wait before the second attempt, doubled before each further one. [s]"""
    longest_wait: float = 10.0
    """No wait is longer; where the service's Retry-After is, the client gives up at once. [s]"""
    jitter: Callable[[], float] = random.random
    """Draws 0 to 1; between half of each wait and all of it is kept, so that clients do not march in step."""

    def __post_init__(self) -> None:
        """Refuse a policy that could never ask, or wait less than no time."""
        if self.attempts < 1:
            message = f"attempts must be 1 or more, not {self.attempts}"
            raise ValueError(message)
        if not 0.0 <= self.first_wait <= self.longest_wait:
            message = "waits must not be negative, nor first_wait longer than longest_wait"
            raise ValueError(message)


class Attempts:
    """The attempts of one call: told what happened, it says how long to wait or raises."""

    def __init__(self, policy: Retry) -> None:
        self._policy = policy
        self._made = 0

    def after_answer(self, response: httpx.Response, *, repeatable: bool = True) -> float | None:
        """Judge an answer.

        Parameters
        ----------
        response : httpx.Response
            The answer, its body read if it is a refusal.
        repeatable : bool
            Whether the question is still there to be put again.

        Returns
        -------
        float or None
            How long to wait before asking again, or None: this is the answer. [s]

        Raises
        ------
        ProblemError
            The service refused, and asking again would not help.
        """
        if not response.is_error:
            return None
        wait = self._next_wait() if repeatable and response.status_code in _TRANSIENT else None
        asked = retry_after_of(response)
        if wait is None or (asked is not None and asked > self._policy.longest_wait):
            raise problem_of(response)
        return wait if asked is None else max(wait, asked)

    def after_fault(self, fault: httpx.RequestError, *, repeatable: bool = True) -> float:
        """Judge a fault of the transport.

        Parameters
        ----------
        fault : httpx.RequestError
            What the transport raised.
        repeatable : bool
            Whether the question is still there to be put again.

        Returns
        -------
        float
            How long to wait before asking again. [s]

        Raises
        ------
        TransportError
            Asking again is not safe or has not helped.
        """
        wait = self._next_wait() if repeatable and isinstance(fault, _SAFE_FAULTS) else None
        if wait is None:
            raise _wrapped(fault) from fault
        return wait

    def _next_wait(self) -> float | None:
        self._made += 1
        if self._made >= self._policy.attempts:
            return None
        # The power is bounded because a float's exponent is.
        full = min(self._policy.first_wait * 2.0 ** min(self._made - 1, 64), self._policy.longest_wait)
        return full * (0.5 + 0.5 * self._policy.jitter())


def _wrapped(fault: httpx.RequestError) -> TransportError:
    where = f"{fault.request.url.scheme}://{fault.request.url.netloc.decode('ascii')}"
    why = str(fault) or type(fault).__name__
    if isinstance(fault, httpx.TimeoutException):
        return TimedOutError(f"{where} did not answer in time ({why})")
    return ConnectionFaultError(f"no answer from {where} ({why})")
