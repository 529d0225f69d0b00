"""Quota: how often one caller may ask, as a bucket of tokens that refills steadily."""

import math
import time
from collections.abc import Callable
from dataclasses import dataclass

__all__ = ["Grant", "Quota"]

_MOST_CALLERS = 10_000
"""So many buckets are kept; a bucket that is full again says nothing and is the first to go."""


@dataclass(frozen=True, slots=True)
class Grant:
    """What a caller may do now."""

    granted: bool
    """Whether this request may go on."""
    remaining: int
    """Whole requests that may follow at once."""
    full_in: int
    """Time until the whole quota is there again. [s]"""
    next_in: int
    """Time until the next request is granted, 0 where it is now. [s]"""


class Quota:
    """A bucket of tokens for each caller of this process."""

    window = 60
    """Time over which a whole quota refills. [s]"""

    def __init__(self, per_minute: int, clock: Callable[[], float] = time.monotonic) -> None:
        self.per_minute = per_minute
        self._clock = clock
        self._buckets: dict[str, tuple[float, float]] = {}

    def take(self, caller: str) -> Grant:
        """Take a token from a caller's bucket, if there is one."""
        now = self._clock()
        rate = self.per_minute / self.window
        tokens, seen = self._buckets.get(caller, (float(self.per_minute), now))
        tokens = min(float(self.per_minute), tokens + (now - seen) * rate)
        granted = tokens >= 1.0
        if granted:
            tokens -= 1.0
        if caller not in self._buckets and len(self._buckets) >= _MOST_CALLERS:
            self._forget(now, rate)
        self._buckets[caller] = tokens, now
        full_in = math.ceil((self.per_minute - tokens) / rate)
        return Grant(granted, int(tokens), full_in, 0 if tokens >= 1.0 else math.ceil((1.0 - tokens) / rate))

    def _forget(self, now: float, rate: float) -> None:
        """Drop the buckets that are full again, and the oldest one where none is."""
        full = [
            caller
            for caller, (tokens, seen) in self._buckets.items()
            if tokens + (now - seen) * rate >= self.per_minute
        ]
        for caller in full or [next(iter(self._buckets))]:
            del self._buckets[caller]
