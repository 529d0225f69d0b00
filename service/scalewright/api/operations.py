"""Operations: the route class that every calculation uses, and how a route is added.

A router is one file in ``routers/``, a route is five lines::

    router = APIRouter(prefix="/v1", tags=["layout"])

    @post(router, "/layout", answer=LayoutOut, examples="layout", summary="Where the frets go")
    async def layout(question: LayoutIn) -> Layout:
        \"\"\"Positions of the frets, every length in `unit`.\"\"\"
        return lay_out(*question.to_domain())

1. The function's name is the operation id, its docstring the description in the OpenAPI document.
2. It takes one model that derives from :class:`scalewright.wire.quantities.Question`: the body of a POST
   as it stands, the parameters of a GET as ``Annotated[LayoutQuery, Query()]``, or nothing at all.
3. It returns the object of the domain; ``answer``, a :class:`scalewright.wire.quantities.Reply`, is read off
   it by attribute and written with the unit of the question (``Question.answer_context`` is the context of
   the serialisers). A ``to_json(result, context)`` class method of the answer, where there is one, is a
   faster way to the same bytes. ``to_csv``, ``to_svg``, ``to_dxf``, ``to_pdf`` and ``to_png``, of the same
   signature, offer the other forms of :data:`scalewright.api.media.FORMATS`; ``file_title(result, context)``
   names the file that a drawing is saved as. An answer with ``speaks = True`` has sentences in the language that
   Accept-Language asks for, which the context names.
4. Refusals of the craft and of the models become problem documents by themselves. A new exception of the
   craft needs a line in ``problems.REFUSED_BY_THE_CRAFT`` (a test insists).
5. ``async def`` runs on the event loop: for work below a few milliseconds. ``def`` runs in a thread, but for
   questions that say that they are ``light``.
6. ``retirement`` announces the end of an operation, in its answers and in the document.
7. ``examples`` names the folder of ``openapi_examples`` whose cases the document shows and the tests replay:
   the words of the address, with an underscore for a slash. ``python -m tests.api.replay`` writes the answers
   of all cases anew, and ``python -m scalewright openapi > openapi_examples/openapi.json`` the document.

The body is validated from its bytes, in pydantic's JSON mode; FastAPI's own way, parsing first and
validating the objects in Python mode, is both slower and laxer. FastAPI documents the route as usual.
"""

import hashlib
import inspect
from collections.abc import Awaitable, Callable, Mapping
from functools import lru_cache
from typing import Any, TypeVar, cast
from urllib.parse import parse_qsl

from fastapi import APIRouter
from fastapi.routing import APIRoute
from pydantic import BaseModel, ValidationError
from starlette.concurrency import run_in_threadpool
from starlette.exceptions import HTTPException
from starlette.types import Receive, Scope, Send

from scalewright import __version__
from scalewright.api.documentation import answer_documentation
from scalewright.api.faults import refuse_invalid, refuse_parameter, refuse_unreadable
from scalewright.api.file_names import content_disposition
from scalewright.api.languages import choose_language
from scalewright.api.media import CONTENT_TYPES, FORMATS, HEAVY, HTML, JSON, PAINTED, choose
from scalewright.api.problems import Refusal
from scalewright.api.retirement import Retirement
from scalewright.api.settings import Settings
from scalewright.api.strict_json import check_body
from scalewright.wire.quantities import AnswerContext, Question

__all__ = ["Operation", "get", "parameters_of", "post"]

_Endpoint = TypeVar("_Endpoint", bound=Callable[..., Any])
_Writer = Callable[[Any, AnswerContext], bytes]
_MOST_PARAMETERS = 100


class Operation(APIRoute):
    """A calculation behind an address."""

    retirement: Retirement | None = None
    """What it says of its own end, where that is near."""

    def __init__(self, path: str, endpoint: Callable[..., Any], **options: Any) -> None:
        super().__init__(path, endpoint, **options)
        self.awaits = inspect.iscoroutinefunction(endpoint)
        self.question = _question_of(self)
        self.method = next(iter(self.methods or ()))
        self.from_query = self.method == "GET"
        self.repeatable = frozenset[str]() if self.question is None else self.question.repeatable
        self.writers = _writers_of(self.response_model)
        self.offers = tuple(self.writers)
        self.speaks: bool = getattr(self.response_model, "speaks", False)
        self.file_title: Callable[[Any, AnswerContext], str] | None = getattr(self.response_model, "file_title", None)

    async def handle(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request."""
        if scope["method"] != self.method:
            raise HTTPException(405)
        headers: dict[bytes, bytes] = dict(scope["headers"])
        parameters = parameters_of(scope["query_string"], self.repeatable) if scope["query_string"] else {}
        media_type = choose(self.offers, headers.get(b"accept"), parameters.pop("format", None))
        settings: Settings = scope["app"].state.settings
        if self.from_query:
            question = self._from_query(parameters)
        else:
            _refuse_parameters(parameters, "use the body")
            _check_content_type(headers)
            question = self._from_body(await _body(receive), settings)
        result = await self._run(question)
        context: AnswerContext = {"unit": "mm"} if question is None else question.answer_context
        spoken: list[tuple[bytes, bytes]] = []
        if self.speaks:
            language, known = choose_language(headers.get(b"accept-language"))
            context = {**context, "language": language, "language_known": known}
            spoken = [(b"content-language", language.encode()), (b"vary", b"Accept-Language")]
        if media_type in PAINTED:
            content = await scope["app"].state.workshop.run(self.writers[media_type], result, context)
        elif media_type in HEAVY:
            content = await run_in_threadpool(self.writers[media_type], result, context)
        else:
            content = self.writers[media_type](result, context)
        if self.from_query:
            status, content, caching = _kept(media_type, content, headers.get(b"if-none-match"), settings)
        else:
            status, caching = 200, _NOT_KEPT
        about = [(b"content-type", CONTENT_TYPES[media_type]), (b"content-length", b"%d" % len(content))]
        if media_type == HTML:
            about.append(_NOTHING_FETCHED)
        if self.file_title is not None and media_type != JSON:
            about.append((b"content-disposition", content_disposition(self.file_title(result, context), media_type)))
        answer_headers = spoken + (caching if status == 304 else about + caching)
        if self.retirement is not None:
            answer_headers = answer_headers + self.retirement.headers()
        await send({"type": "http.response.start", "status": status, "headers": answer_headers})
        await send({"type": "http.response.body", "body": content})

    async def _run(self, question: Question | None) -> object:
        arguments = () if question is None else (question,)
        if self.awaits:
            return await cast(Awaitable[object], self.endpoint(*arguments))
        if question is not None and question.light:
            return self.endpoint(*arguments)
        return await run_in_threadpool(self.endpoint, *arguments)

    def _from_body(self, raw: bytes, settings: Settings) -> Question | None:
        """Validate a body; what pydantic refuses may turn out to be no JSON at all."""
        assert self.question is not None  # noqa: S101  (a POST without a question is a mistake of ours)
        try:
            question = self.question.read(raw)
        except ValidationError as error:
            unreadable = refuse_unreadable(error)
            if unreadable is not None:
                raise unreadable from None
            check_body(raw, settings.max_list_items)
            raise refuse_invalid(error, self.question) from None
        check_body(raw, settings.max_list_items)
        return question

    def _from_query(self, parameters: dict[str, str]) -> Question | None:
        if self.question is None:
            _refuse_parameters(parameters, "leave it out")
            return None
        try:
            return self.question.read_query(parameters)
        except ValidationError as error:
            raise refuse_invalid(error, self.question) from None


def post(
    router: APIRouter,
    path: str,
    *,
    answer: type[BaseModel],
    summary: str,
    examples: str,
    retirement: Retirement | None = None,
) -> Callable[[_Endpoint], _Endpoint]:
    """Add an operation whose question is the body; see the head of this module."""
    return _add(router, "POST", path, answer, summary, examples, retirement)


def get(
    router: APIRouter,
    path: str,
    *,
    answer: type[BaseModel],
    summary: str,
    examples: str,
    retirement: Retirement | None = None,
) -> Callable[[_Endpoint], _Endpoint]:
    """Add an operation whose question is the query, and whose answer may be cached; see the head of this module."""
    return _add(router, "GET", path, answer, summary, examples, retirement)


def _add(
    router: APIRouter,
    method: str,
    path: str,
    answer: type[BaseModel],
    summary: str,
    examples: str,
    retirement: Retirement | None,
) -> Callable[[_Endpoint], _Endpoint]:
    def decorate(endpoint: _Endpoint) -> _Endpoint:
        router.add_api_route(
            path,
            endpoint,
            methods=[method],
            route_class_override=Operation,
            operation_id=endpoint.__name__,
            response_model=answer,
            summary=summary,
            response_description=(inspect.getdoc(answer) or summary).partition("\n")[0],
            deprecated=None if retirement is None else True,
            **answer_documentation(method, tuple(_writers_of(answer)), examples),
        )
        cast("Operation", router.routes[-1]).retirement = retirement
        return endpoint

    return decorate


def _question_of(route: APIRoute) -> type[Question] | None:
    """Model of the question, from the signature that FastAPI has read."""
    fields = [route.body_field] if route.body_field else route.dependant.query_params
    models = [field.field_info.annotation for field in fields]
    if not models:
        return None
    (model,) = models
    if not (isinstance(model, type) and issubclass(model, Question)):
        message = f"{route.endpoint.__name__} has to take one Question"
        raise TypeError(message)
    return model


def _writers_of(answer: type[BaseModel]) -> Mapping[str, _Writer]:
    """How an answer is written, by media type, the favourite first."""

    def to_json(result: object, context: AnswerContext) -> bytes:
        reply = answer.__pydantic_validator__.validate_python(result, from_attributes=True)
        return answer.__pydantic_serializer__.to_json(reply, context=dict(context))

    writers: dict[str, _Writer] = {JSON: getattr(answer, "to_json", to_json)}
    others = {media_type: getattr(answer, f"to_{name}", None) for name, media_type in FORMATS.items() if name != "json"}
    return writers | {media_type: writer for media_type, writer in others.items() if writer is not None}


def parameters_of(query: bytes, repeatable: frozenset[str]) -> dict[str, str]:
    """Parameters of a query; those that may be given repeatedly are joined by commas."""
    try:
        pairs = _pairs_of(query)
    except ValueError:
        message = f"The query cannot be read; send at most {_MOST_PARAMETERS} parameters, percent-encoded."
        raise Refusal("malformed-request", message) from None
    parameters: dict[str, str] = {}
    for name, value in pairs:
        if name not in parameters:
            parameters[name] = value
        elif name in repeatable:
            parameters[name] += f",{value}"
        else:
            raise refuse_parameter(name, "repeated", "This parameter was given twice; give it once.")
    return parameters


@lru_cache(maxsize=256)
def _pairs_of(query: bytes) -> list[tuple[str, str]]:
    """Names and values in a query; few say more than the form of the answer, or what was asked before."""
    return parse_qsl(query.decode("ascii"), keep_blank_values=True, max_num_fields=_MOST_PARAMETERS)


def _refuse_parameters(parameters: Mapping[str, str], instead: str) -> None:
    """Refuse parameters where there are none but format."""
    for name in parameters:
        raise refuse_parameter(name, "extra_forbidden", f"This address takes no parameter but format; {instead}.")


def _check_content_type(headers: Mapping[bytes, bytes]) -> None:
    """Refuse a body that is not declared as plain JSON in UTF-8."""
    content_type = headers.get(b"content-type", b"")
    if content_type != b"application/json":
        name, _, rest = content_type.lower().partition(b";")
        charset = rest.strip().replace(b'"', b"")
        if name.strip() != b"application/json" or charset not in {b"", b"charset=utf-8"}:
            message = "The body has to be JSON in UTF-8; send the header Content-Type: application/json."
            raise Refusal("unsupported-media-type", message)
    if headers.get(b"content-encoding", b"identity") != b"identity":
        raise Refusal("unsupported-media-type", "The body has to be sent as it is; leave Content-Encoding out.")


async def _body(receive: Receive) -> bytes:
    """Body of a request, whose size the outer layers bound."""
    message = await receive()
    chunk: bytes = message.get("body", b"")
    if not message.get("more_body", False):
        return chunk
    chunks = [chunk]
    while message.get("more_body", False):
        message = await receive()
        chunks.append(message.get("body", b""))
    return b"".join(chunks)


_NOTHING_FETCHED = (
    b"content-security-policy",
    (
        b"default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; "
        b"frame-ancestors 'none'; sandbox"
    ),
)
"""A page of ours has its own styles, no scripts, and nothing to be fetched."""

_NOT_KEPT = [(b"vary", b"Accept"), (b"cache-control", b"no-store")]


def _kept(
    media_type: str, content: bytes, known: bytes | None, settings: Settings
) -> tuple[int, bytes, list[tuple[bytes, bytes]]]:
    """Status, body and headers of an answer that caches may keep (RFC 9110, section 13)."""
    # The version is hashed in, so that a mended calculation is never answered from a cache.
    digest = hashlib.sha256(b"\0".join((__version__.encode(), media_type.encode(), content))).hexdigest()
    tag = f'W/"{digest[:32]}"'.encode()
    kept_for = b"public, max-age=%d" % settings.cache_seconds
    headers = [(b"vary", b"Accept"), (b"cache-control", kept_for), (b"etag", tag)]
    return (304, b"", headers) if _matches(known, tag) else (200, content, headers)


def _matches(header: bytes | None, tag: bytes) -> bool:
    """Whether If-None-Match names a tag, by weak comparison."""
    if header is None:
        return False
    opaque = tag.removeprefix(b"W/")
    return any(text.strip().removeprefix(b"W/") in {opaque, b"*"} for text in header.split(b","))
