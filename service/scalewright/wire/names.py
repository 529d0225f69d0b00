"""Names on the wire: things in a list that an answer calls by their ids have ids of their own."""

from collections.abc import Collection, Sequence
from typing import Any, Protocol, TypeVar

from pydantic_core import InitErrorDetails, PydanticCustomError, ValidationError

__all__ = ["distinct"]


class _Named(Protocol):
    @property
    def id(self) -> str: ...


Things = TypeVar("Things", bound=Sequence[_Named])
"""A list of things that have an id."""


def distinct(things: Things, *, taken: Collection[str] = (), place: tuple[str | int, ...] = ()) -> Things:
    """Refuse two things of one name.

    Parameters
    ----------
    things : sequence
        Things with an ``id``.
    taken : collection of str
        Names that others have already.
    place : tuple
        Path from the model that is validated to the things.

    Returns
    -------
    sequence
        The same things.

    Raises
    ------
    ValidationError
        At the first id that was used before.
    """
    seen = set(taken)
    for index, thing in enumerate(things):
        if thing.id in seen:
            problem = PydanticCustomError("id_repeated", "Each has an id of its own here; this one was used before.")
            error = InitErrorDetails(type=problem, loc=(*place, index, "id"), input=None)
            details: list[Any] = [error]
            raise ValidationError.from_exception_data("names", details)
        seen.add(thing.id)
    return things
