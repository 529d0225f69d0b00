"""The life of a process, as far as its answers tell it."""

from dataclasses import dataclass

__all__ = ["Lifecycle"]


@dataclass(slots=True)
class Lifecycle:
    """Where a process stands in its life."""

    draining: bool = False
    """Whether it is about to go: /readyz then says so, and each answer closes its connection."""
