"""Problems on the wire: the members of a problem document (RFC 9457)."""

from pydantic import BaseModel, ConfigDict

__all__ = ["Fault", "Problem"]


class Fault(BaseModel):
    """One thing to change in a request."""

    model_config = ConfigDict(frozen=True, use_attribute_docstrings=True)

    pointer: str
    """Where in the request, as a JSON pointer (RFC 6901); for a query the name of the parameter after a slash."""
    code: str
    """What is wrong, for programs; it stays the same."""
    detail: str
    """What is wrong and what to change, for people."""
    example: object = None
    """A value that is accepted at this place, where one can be given."""


class Problem(BaseModel):
    """Why a request was refused (RFC 9457)."""

    model_config = ConfigDict(frozen=True, use_attribute_docstrings=True, extra="allow")

    type: str
    """What kind of problem, as a relative URI that stays the same; it names a page of this service."""
    title: str
    """The kind of problem in a few words."""
    status: int
    """The HTTP status."""
    detail: str
    """What is wrong with this request and what to change."""
    instance: str
    """This occurrence, `urn:request:` and the request id that the logs carry too."""
    errors: list[Fault] = []
    """What to change in the request, place by place, where places can be named."""
