"""Keys: who may ask what, as one line of a setting that holds no secret."""

import hashlib
import hmac
import re
import secrets
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Self

__all__ = ["Key", "key_of", "new_key"]

_WRITTEN = re.compile(r"([A-Za-z0-9._-]{1,64}):([0-9a-f]{64})(?::([a-z-]+(?:\+[a-z-]+)*))?")


@dataclass(frozen=True, slots=True)
class Key:
    """A key of a caller, as the setting knows it.

    A key is 256 random bits, so a plain digest is enough to keep it: there is nothing to be guessed, and
    a slow hash would only be work that anyone may cause.
    """

    name: str
    """Whose it is; the log says it. Two keys may share a name: the old and the new one while callers change over."""
    digest: str
    """SHA-256 of the key, in hexadecimal digits."""
    words: frozenset[str] = frozenset()
    """Words of the addresses that it is good for ("layout" for /v1/layout); none means all."""

    @classmethod
    def read(cls, text: str) -> Self:
        """Read ``name:digest`` or ``name:digest:word+word``.

        Raises
        ------
        ValueError
            A text of another form.
        """
        match = _WRITTEN.fullmatch(text)
        if match is None:
            raise ValueError
        name, digest, words = match.groups()
        return cls(name, digest, frozenset(words.split("+")) if words else frozenset())

    def opens(self, path: str) -> bool:
        """Whether the key is good for an address."""
        return not self.words or path.removeprefix("/v1").split("/")[1] in self.words


def new_key(name: str) -> tuple[str, str]:
    """Make a key; returns it, and what the setting says of it."""
    secret = secrets.token_urlsafe(32)
    return secret, f"{name}:{hashlib.sha256(secret.encode()).hexdigest()}"


def key_of(presented: bytes, keys: Iterable[Key]) -> Key | None:
    """Find the key that was presented, in a time that does not tell how near it came."""
    digest = hashlib.sha256(presented).hexdigest()
    found: Key | None = None
    for key in keys:
        if hmac.compare_digest(key.digest, digest):
            found = key  # and go on: where it stands in the list is not told either
    return found
