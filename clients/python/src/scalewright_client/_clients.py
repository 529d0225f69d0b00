"""The two clients: the same operations over a blocking and over an asynchronous transport."""

import asyncio
import inspect
import ipaddress
import time
from collections.abc import AsyncGenerator, Awaitable, Callable, Coroutine, Generator, Iterable, Mapping
from types import TracebackType
from typing import Any, Concatenate, Final, ParamSpec, Self, TypeVar

import httpx

from scalewright_client import _operations
from scalewright_client._batch import BatchCall, Questions
from scalewright_client._errors import ScalewrightError, VersionError
from scalewright_client._lines import AnswerReader, LineReader
from scalewright_client._protocol import Call
from scalewright_client._retry import Attempts, Retry
from scalewright_client._streams import AsyncBatch, Batch
from scalewright_client._version import __version__
from scalewright_client._versions import API_VERSION, SERVICE, Service, explained, may_be_the_version

__all__ = ["AsyncClient", "Client"]

P = ParamSpec("P")
R = TypeVar("R")
Q = TypeVar("Q", bound=Mapping[str, Any])

DEFAULT_BASE_URL: Final = "http://127.0.0.1:8000"
DEFAULT_TIMEOUT: Final = 10.0
"""For connecting, sending, and waiting for each part of the answer. [s]"""

_SELF = inspect.Parameter("self", inspect.Parameter.POSITIONAL_ONLY)


def _dressed(method: Callable[..., Any], build: Callable[..., Any], owner: str) -> None:
    """Give a method the name, the help text and the signature of its operation."""
    method.__name__ = build.__name__
    method.__qualname__ = f"{owner}.{build.__name__}"
    method.__doc__ = build.__doc__
    signature = inspect.signature(build)
    method.__dict__["__signature__"] = signature.replace(
        parameters=[_SELF, *signature.parameters.values()],
        return_annotation=inspect.Signature.empty,
    )


def _blocking(build: Callable[P, Call[R]]) -> Callable[Concatenate["Client", P], R]:
    def method(self: "Client", /, *args: P.args, **kwargs: P.kwargs) -> R:
        return self._answer(build(*args, **kwargs))

    _dressed(method, build, "Client")
    return method


def _awaited(build: Callable[P, Call[R]]) -> Callable[Concatenate["AsyncClient", P], Coroutine[Any, Any, R]]:
    async def method(self: "AsyncClient", /, *args: P.args, **kwargs: P.kwargs) -> R:
        return await self._answer(build(*args, **kwargs))

    _dressed(method, build, "AsyncClient")
    return method


def _batched(build: Callable[[Questions[Q]], BatchCall[R]]) -> Callable[["Client", Iterable[Q]], Batch[R]]:
    def method(self: "Client", questions: Iterable[Q]) -> Batch[R]:
        call = build(questions)
        reader = AnswerReader(call)
        return Batch(self.outcomes(call, reader), reader)

    _dressed(method, build, "Client")
    return method


def _batched_async(
    build: Callable[[Questions[Q]], BatchCall[R]],
) -> Callable[["AsyncClient", Questions[Q]], AsyncBatch[R]]:
    def method(self: "AsyncClient", questions: Questions[Q]) -> AsyncBatch[R]:
        call = build(questions)
        reader = AnswerReader(call)
        return AsyncBatch(self.outcomes(call, reader), reader)

    _dressed(method, build, "AsyncClient")
    return method


def _headers(api_key: str | None, language: str | None) -> dict[str, str]:
    wanted = {
        "User-Agent": f"scalewright-client/{__version__} (API {API_VERSION})",
        "X-API-Key": api_key,
        "Accept-Language": language,
    }
    return {name: value for name, value in wanted.items() if value is not None}


def _batch_headers(url: httpx.URL) -> dict[str, str]:
    """Ask a service on this machine for batches as they are: to compress them takes longer than to hand them over."""
    try:
        near = ipaddress.ip_address(url.host).is_loopback
    except ValueError:
        near = url.host == "localhost"
    return {"Accept-Encoding": "identity"} if near else {}


def _checked(base_url: str) -> httpx.URL:
    try:
        url = httpx.URL(base_url)
    except httpx.InvalidURL:
        url = httpx.URL("")
    if url.scheme not in {"http", "https"} or not url.host:
        message = f'base_url must be like "{DEFAULT_BASE_URL}", with its scheme and host'
        raise ValueError(message)
    return url


class Client:
    """Talks to a Scalewright service and waits for each answer.

    May be shared between threads. Close it, or use it as a context manager.

    Parameters
    ----------
    base_url : str
        Address of the service; a path in it is kept.
    api_key : str, optional
        Sent as ``X-API-Key``.
    language : str, optional
        Sent as ``Accept-Language``: what labels and sheets are written in, "de" or "fr, en;q=0.5".
    timeout : float
        For connecting, sending, and waiting for each part of the answer. [s]
    retry : Retry
        When to ask again.
    transport : httpx.BaseTransport, optional
        Takes the place of the network, for tests.
    sleep : callable
        Waits for a number of seconds between attempts.

    Raises
    ------
    ValueError
        ``base_url`` is no address.
    """

    rules = _blocking(_operations.rules)
    layout = _blocking(_operations.layout)
    identification = _blocking(_operations.identification)
    identification_plan = _blocking(_operations.identification_plan)
    compensation = _blocking(_operations.compensation)
    intonation = _blocking(_operations.intonation)
    diagnosis = _blocking(_operations.diagnosis)
    stretch_test = _blocking(_operations.stretch_test)
    nominal = _blocking(_operations.nominal)
    assembly = _blocking(_operations.assembly)
    conformity = _blocking(_operations.conformity)
    spec_sheet = _blocking(_operations.spec_sheet)
    spec_sheet_drawing = _blocking(_operations.spec_sheet_drawing)
    label = _blocking(_operations.label)
    label_batch_drawing = _blocking(_operations.label_batch_drawing)
    label_drawing = _blocking(_operations.label_drawing)
    label_pages = _blocking(_operations.label_pages)
    label_pages_drawing = _blocking(_operations.label_pages_drawing)
    label_read = _blocking(_operations.label_read)
    tooling = _blocking(_operations.tooling)
    tooling_origin = _blocking(_operations.tooling_origin)
    fingerboard = _blocking(_operations.fingerboard)
    fingerboard_drawing = _blocking(_operations.fingerboard_drawing)
    layout_batch = _batched(_operations.layout_batch)
    identification_batch = _batched(_operations.identification_batch)
    compensation_batch = _batched(_operations.compensation_batch)
    nominal_batch = _batched(_operations.nominal_batch)
    assembly_batch = _batched(_operations.assembly_batch)
    label_batch = _batched(_operations.label_batch)

    def __init__(
        self,
        base_url: str = DEFAULT_BASE_URL,
        *,
        api_key: str | None = None,
        language: str | None = None,
        timeout: float = DEFAULT_TIMEOUT,
        retry: Retry = Retry(),  # noqa: B008 - frozen
        transport: httpx.BaseTransport | None = None,
        sleep: Callable[[float], None] = time.sleep,
    ) -> None:
        url = _checked(base_url)
        self._retry = retry
        self._sleep = sleep
        self._batch_headers = _batch_headers(url)
        self._http = httpx.Client(
            base_url=url, headers=_headers(api_key, language), timeout=timeout, transport=transport
        )

    def service(self) -> Service:
        """Ask the service for its version, and refuse one that this client cannot talk to.

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
        TransportError
            No answer came.
        """
        return self._asked(SERVICE)

    def _explained(self, error: ScalewrightError, path: str) -> ScalewrightError:
        """Say of an error what the versions have to do with it; the service is asked only where they may."""
        if not may_be_the_version(error):
            return error
        try:
            service = self._asked(SERVICE)
        except VersionError as other:
            return other
        except Exception:  # noqa: BLE001 - whatever goes wrong with this question, it must not hide the error
            return error
        return explained(error, path, service)

    def _answer(self, call: Call[R]) -> R:
        try:
            return self._asked(call)
        except ScalewrightError as error:
            raise self._explained(error, call.path) from error.__cause__

    def _asked(self, call: Call[R]) -> R:
        attempts = Attempts(self._retry)
        while True:
            try:
                response = self._http.request(call.method, call.path, content=call.content, headers=call.headers)
            except httpx.RequestError as fault:
                wait = attempts.after_fault(fault)
            else:
                again = attempts.after_answer(response)
                if again is None:
                    return call.read(response)
                wait = again
            self._sleep(wait)

    def outcomes(self, call: BatchCall[Any], reader: LineReader[R]) -> Generator[R, None, None]:
        """Send a batch and give what a reader makes of the lines of its answer."""
        attempts = Attempts(self._retry)
        while True:
            try:
                headers = {**call.headers, **self._batch_headers}
                with self._http.stream("POST", call.path, content=call.pieces(), headers=headers) as response:
                    if response.is_error:
                        response.read()
                    again = attempts.after_answer(response, repeatable=call.repeatable)
                    if again is None:
                        reader.begin(response)
                        for piece in response.iter_bytes():
                            yield from reader.feed(piece)
                        reader.finish()
                        return
                    wait = again
            except ScalewrightError as error:
                raise self._explained(error, call.path) from error.__cause__
            except httpx.RequestError as fault:
                if reader.summary is not None:
                    reader.finish()
                    return
                if reader.read:
                    raise reader.truncated("the connection broke") from fault
                wait = attempts.after_fault(fault, repeatable=call.repeatable)
            self._sleep(wait)

    def close(self) -> None:
        """Close the connections."""
        self._http.close()

    def __enter__(self) -> Self:
        """Give the client itself."""
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, traceback: TracebackType | None
    ) -> None:
        """Close the connections."""
        self.close()


class AsyncClient:
    """Talks to a Scalewright service from asynchronous code; every operation is awaited.

    Close it with ``await client.aclose()``, or use it in ``async with``.

    Parameters
    ----------
    base_url : str
        Address of the service; a path in it is kept.
    api_key : str, optional
        Sent as ``X-API-Key``.
    language : str, optional
        Sent as ``Accept-Language``: what labels and sheets are written in, "de" or "fr, en;q=0.5".
    timeout : float
        For connecting, sending, and waiting for each part of the answer. [s]
    retry : Retry
        When to ask again.
    transport : httpx.AsyncBaseTransport, optional
        Takes the place of the network, for tests.
    sleep : callable
        Waits for a number of seconds between attempts, awaited.

    Raises
    ------
    ValueError
        ``base_url`` is no address.
    """

    rules = _awaited(_operations.rules)
    layout = _awaited(_operations.layout)
    identification = _awaited(_operations.identification)
    identification_plan = _awaited(_operations.identification_plan)
    compensation = _awaited(_operations.compensation)
    intonation = _awaited(_operations.intonation)
    diagnosis = _awaited(_operations.diagnosis)
    stretch_test = _awaited(_operations.stretch_test)
    nominal = _awaited(_operations.nominal)
    assembly = _awaited(_operations.assembly)
    conformity = _awaited(_operations.conformity)
    spec_sheet = _awaited(_operations.spec_sheet)
    spec_sheet_drawing = _awaited(_operations.spec_sheet_drawing)
    label = _awaited(_operations.label)
    label_batch_drawing = _awaited(_operations.label_batch_drawing)
    label_drawing = _awaited(_operations.label_drawing)
    label_pages = _awaited(_operations.label_pages)
    label_pages_drawing = _awaited(_operations.label_pages_drawing)
    label_read = _awaited(_operations.label_read)
    tooling = _awaited(_operations.tooling)
    tooling_origin = _awaited(_operations.tooling_origin)
    fingerboard = _awaited(_operations.fingerboard)
    fingerboard_drawing = _awaited(_operations.fingerboard_drawing)
    layout_batch = _batched_async(_operations.layout_batch)
    identification_batch = _batched_async(_operations.identification_batch)
    compensation_batch = _batched_async(_operations.compensation_batch)
    nominal_batch = _batched_async(_operations.nominal_batch)
    assembly_batch = _batched_async(_operations.assembly_batch)
    label_batch = _batched_async(_operations.label_batch)

    def __init__(
        self,
        base_url: str = DEFAULT_BASE_URL,
        *,
        api_key: str | None = None,
        language: str | None = None,
        timeout: float = DEFAULT_TIMEOUT,
        retry: Retry = Retry(),  # noqa: B008 - frozen
        transport: httpx.AsyncBaseTransport | None = None,
        sleep: Callable[[float], Awaitable[None]] = asyncio.sleep,
    ) -> None:
        url = _checked(base_url)
        self._retry = retry
        self._sleep = sleep
        self._batch_headers = _batch_headers(url)
        self._http = httpx.AsyncClient(
            base_url=url, headers=_headers(api_key, language), timeout=timeout, transport=transport
        )

    async def service(self) -> Service:
        """Ask the service for its version, and refuse one that this client cannot talk to.

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
        TransportError
            No answer came.
        """
        return await self._asked(SERVICE)

    async def _explained(self, error: ScalewrightError, path: str) -> ScalewrightError:
        """Say of an error what the versions have to do with it; the service is asked only where they may."""
        if not may_be_the_version(error):
            return error
        try:
            service = await self._asked(SERVICE)
        except VersionError as other:
            return other
        except Exception:  # noqa: BLE001 - whatever goes wrong with this question, it must not hide the error
            return error
        return explained(error, path, service)

    async def _answer(self, call: Call[R]) -> R:
        try:
            return await self._asked(call)
        except ScalewrightError as error:
            raise await self._explained(error, call.path) from error.__cause__

    async def _asked(self, call: Call[R]) -> R:
        attempts = Attempts(self._retry)
        while True:
            try:
                response = await self._http.request(call.method, call.path, content=call.content, headers=call.headers)
            except httpx.RequestError as fault:
                wait = attempts.after_fault(fault)
            else:
                again = attempts.after_answer(response)
                if again is None:
                    return call.read(response)
                wait = again
            await self._sleep(wait)

    async def outcomes(self, call: BatchCall[Any], reader: LineReader[R]) -> AsyncGenerator[R, None]:
        """Send a batch and give what a reader makes of the lines of its answer."""
        attempts = Attempts(self._retry)
        while True:
            try:
                headers = {**call.headers, **self._batch_headers}
                async with self._http.stream(
                    "POST", call.path, content=call.pieces_async(), headers=headers
                ) as response:
                    if response.is_error:
                        await response.aread()
                    again = attempts.after_answer(response, repeatable=call.repeatable)
                    if again is None:
                        reader.begin(response)
                        async for piece in response.aiter_bytes():
                            for outcome in reader.feed(piece):
                                yield outcome
                        reader.finish()
                        return
                    wait = again
            except ScalewrightError as error:
                raise await self._explained(error, call.path) from error.__cause__
            except httpx.RequestError as fault:
                if reader.summary is not None:
                    reader.finish()
                    return
                if reader.read:
                    raise reader.truncated("the connection broke") from fault
                wait = attempts.after_fault(fault, repeatable=call.repeatable)
            await self._sleep(wait)

    async def aclose(self) -> None:
        """Close the connections."""
        await self._http.aclose()

    async def __aenter__(self) -> Self:
        """Give the client itself."""
        return self

    async def __aexit__(
        self, kind: type[BaseException] | None, error: BaseException | None, traceback: TracebackType | None
    ) -> None:
        """Close the connections."""
        await self.aclose()
