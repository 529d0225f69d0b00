"""The fields that columns can be: those of a question about readings, and those of one about a part."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Final

__all__ = ["LABEL", "READINGS", "SHEET", "Fields"]


@dataclass(frozen=True, slots=True)
class Fields:
    """What the columns of a table can be."""

    words: tuple[str, ...]
    """Members that are a text."""
    lists: tuple[str, ...]
    """Members that are several values, parted by semicolons."""
    lengths: tuple[str, ...]
    """Members that are a length; a column of them may name its unit."""
    numbers: tuple[str, ...]
    """Members that are a number."""
    as_json: tuple[str, ...]
    """Members that are written as JSON."""
    measured: tuple[str, ...]
    """Members that are readings or a scale, whose unit has to be known."""
    counts: tuple[str, ...] = ()
    """Members that are a whole number."""
    labels: tuple[str, ...] = ()
    """Members that are a length as it is written on a label, which may do without a unit."""
    texts: tuple[str, ...] = ()
    """Members that are several texts, parted by semicolons."""
    rules: tuple[str, ...] = ()
    """Members that are a spacing rule in words: "eighteenth", "equal 12", "divisor 17.835"."""
    needed: str = 'is a reading; name them "fret 1 [mm]", "fret 12 [in]" ...'
    """What to say of a table that has none of them."""
    enough: frozenset[str] = frozenset()
    """Members of which one has to be there unless there are readings."""
    inside: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Names of the objects that a member is in and of itself there, where it is not in the question as it is."""
    absent: Mapping[str, object] = field(default_factory=dict)
    """Members where nobody says otherwise."""

    @property
    def names(self) -> tuple[str, ...]:
        """All of them."""
        return (
            *self.words,
            *self.lists,
            *self.lengths,
            *self.numbers,
            *self.as_json,
            *self.counts,
            *self.labels,
            *self.texts,
            *self.rules,
        )

    def nested(self, members: Mapping[str, object]) -> dict[str, object]:
        """Put members into the objects that they belong in, unless those have them already.

        Parameters
        ----------
        members : mapping
            Members by their names, side by side.

        Returns
        -------
        dict
            The question.
        """
        if not self.inside:
            return {**self.absent, **members}
        question = {name: value for name, value in members.items() if name not in self.inside}
        for name, value in (*members.items(), *self.absent.items()):
            *outer, member = self.inside.get(name, (name,))
            place: dict[str, object] | None = question
            for step in outer:
                inner = None if place is None else place.get(step, {})
                # What is no object there is for the service to refuse.
                inside = dict(inner) if isinstance(inner, Mapping) else None
                if place is not None and inside is not None:
                    place[step] = inside
                place = inside
            if place is not None:
                place.setdefault(member, value)
        return question

    def flat(self, pointer: str) -> list[str]:
        """Name what a JSON pointer into a question points to: the member, and what is below it."""
        outer = {name for path in self.inside.values() for name in path[:-1]}
        steps = pointer.split("/")[1:]
        while len(steps) > 1 and steps[0] in outer:
            del steps[0]
        return steps


_MEASURED_LENGTHS: Final = (
    "instrument_uncertainty",
    "resolution",
    "tooling_scatter",
    "nut_offset",
    "nut_offset_deviation",
    "slot_width",
)
_MEASURED_LISTS: Final = ("from_nut", "fret_to_fret", "frets")

READINGS: Final = Fields(
    words=("id", "origin", "unit"),
    lists=_MEASURED_LISTS,
    lengths=_MEASURED_LENGTHS,
    numbers=("scale_error", "threshold", "coverage", "significance", "misreading_probability"),
    as_json=("readings", "candidates"),
    measured=("from_nut", "fret_to_fret"),
    enough=frozenset({"from_nut", "fret_to_fret", "readings"}),
)
"""Those of an identification."""

_OF_A_PART: Final = ("id", "kind", "true_scale", "layout_scale", "rule", "label", "tolerance")
_OF_READINGS: Final = ("origin", *_MEASURED_LISTS, *_MEASURED_LENGTHS[:4], "slot_width", "scale_error")

_PART: Final = Fields(
    words=("id", "kind", "origin", "unit", "title", "date"),
    lists=_MEASURED_LISTS,
    lengths=("true_scale", "layout_scale", "tolerance", *_MEASURED_LENGTHS[:4], "slot_width"),
    numbers=("scale_error", "coverage"),
    as_json=(),
    measured=("true_scale", "layout_scale", "from_nut", "fret_to_fret"),
    counts=("fret_count",),
    labels=("label",),
    rules=("rule",),
    needed='tells a scale; name them "true_scale [mm]", "layout_scale [in]" (and "rule"), "label" or "fret 5 [in]"',
    enough=frozenset({"true_scale", "layout_scale", "label", "from_nut", "fret_to_fret"}),
    inside={
        **{name: ("part", name) for name in _OF_A_PART},
        **{name: ("part", "readings", name) for name in _OF_READINGS},
        "fret_count": ("part", "frets"),
    },
    absent={"kind": "board"},
)
"""Those of a part, and of what is asked about it; a part is a board unless somebody says otherwise."""

LABEL: Final = replace(
    _PART,
    words=(*_PART.words, "size", "url", "paper"),
    numbers=("scale_error",),
    lengths=(*_PART.lengths, "column_gap", "row_gap", "left", "top"),
    counts=(*_PART.counts, "dpi", "start"),
)
"""Those of a label, and of the paper that it goes on."""

SHEET: Final = replace(
    _PART,
    words=(*_PART.words, "revision", "paper", "html"),
    as_json=("stringing", "outline"),
    texts=("identifiers",),
)
"""Those of a spec sheet."""
