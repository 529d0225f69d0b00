"""Access: who may ask, and how often."""

from starlette.types import ASGIApp, Message, Receive, Scope, Send

from scalewright.api.keys import Key, key_of
from scalewright.api.problems import Refusal, problem
from scalewright.api.quota import Grant, Quota
from scalewright.api.settings import Settings
from scalewright.lutherie.phrases import counted

__all__ = ["Access", "is_open"]

_OPEN = frozenset({"/", "/livez", "/readyz", "/openapi.json", "/docs", "/docs/start.js"})
_OPEN_FOLDERS = ("/docs-assets/", "/problems/")
_CHALLENGE = {"WWW-Authenticate": 'Bearer realm="scalewright"'}


def is_open(path: str) -> bool:
    """Whether an address needs no key: health, and the documentation."""
    return path in _OPEN or path.startswith(_OPEN_FOLDERS)


class Access:
    """Asks for a key where there are keys, and counts where there is a quota.

    The quota is that of this process: with several of them a caller gets as many quotas. A global one
    belongs to the gateway in front.
    """

    def __init__(self, app: ASGIApp, settings: Settings) -> None:
        self.app = app
        self.keys = settings.api_keys
        self.quota = Quota(settings.requests_per_minute) if settings.requests_per_minute else None

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Refuse the request or pass it on."""
        if scope["type"] != "http" or is_open(scope["path"]):
            await self.app(scope, receive, send)
            return
        try:
            key = self._key(scope) if self.keys else None
            if key is not None:
                scope["state"]["key"] = key.name
            if self.quota is not None:
                grant = self.quota.take(_caller(scope) if key is None else key.name)
                send = _telling(send, self.quota, grant)
                if not grant.granted:
                    raise _over_quota(self.quota, grant)
        except Refusal as refusal:
            await problem(scope, refusal)(scope, receive, send)
            return
        await self.app(scope, receive, send)

    def _key(self, scope: Scope) -> Key:
        presented = _presented(scope)
        if presented is None:
            about = "Send your key in the header X-API-Key, or as Authorization: Bearer."
            raise Refusal("key-needed", about, headers=_CHALLENGE)
        key = key_of(presented, self.keys)
        if key is None:
            raise Refusal(
                "key-needed", "This key is not known here; check it, or ask for a new one.", headers=_CHALLENGE
            )
        if not key.opens(scope["path"]):
            raise Refusal("key-not-good-here", f"This key is good for {', '.join(sorted(key.words))} only.")
        return key


def _presented(scope: Scope) -> bytes | None:
    """Key that came with a request."""
    for name, value in scope["headers"]:
        if name == b"x-api-key":
            return bytes(value)
        if name == b"authorization" and value[:7].lower() == b"bearer ":
            return bytes(value[7:].strip())
    return None


def _caller(scope: Scope) -> str:
    """Who is counted where there are no keys: the address of the peer, which behind a proxy is the proxy's."""
    client = scope.get("client")
    return client[0] if client else "unknown"


def _telling(send: Send, quota: Quota, grant: Grant) -> Send:
    """Let the answer say what is left (IETF draft "RateLimit header fields for HTTP")."""
    left = [
        (b"ratelimit-policy", b'"caller";q=%d;w=%d' % (quota.per_minute, quota.window)),
        (b"ratelimit", b'"caller";r=%d;t=%d' % (grant.remaining, grant.full_in)),
    ]

    async def send_with_quota(message: Message) -> None:
        if message["type"] == "http.response.start":
            message = {**message, "headers": [*message["headers"], *left]}
        await send(message)

    return send_with_quota


def _over_quota(quota: Quota, grant: Grant) -> Refusal:
    about = (
        f"There may be {counted(quota.per_minute, 'request')} in a minute; the next one may come in {grant.next_in} s."
    )
    headers = {"Retry-After": str(grant.next_in)}
    return Refusal("quota-exceeded", about, headers=headers, facts={"violated-policies": ["caller"]})
