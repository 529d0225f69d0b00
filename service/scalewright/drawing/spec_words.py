"""What a spec sheet says in sentences, in the language that it is written in."""

from collections.abc import Sequence
from dataclasses import dataclass

from scalewright.drawing.language import Language, decimals_for
from scalewright.lutherie.spec_sheet import SpecSheet

__all__ = ["SheetSentences", "large_scale", "sentences_of"]

_SAME = 1e-9
"""Lengths nearer than this are one. [mm]"""


@dataclass(frozen=True, slots=True)
class SheetSentences:
    """Sentences of a spec sheet."""

    statement: str
    """Rule, layout scale and true scale in one sentence."""
    true_scale: str
    """The true scale with its uncertainty, in both units."""
    layout_scale: str
    """The layout scale, in both units, or that it is not established."""
    rule: str
    """The spacing rule, or that it is not established."""
    obtained: str
    """How the true scale is known."""
    label: str | None
    """What the label says and what it means."""
    conformity: str | None
    """Whether the part is what it claims to be."""
    not_with: list[str]
    """What it must not be combined with."""
    cautions: list[str]
    """What to mind."""


def sentences_of(sheet: SpecSheet, language: Language) -> SheetSentences:
    """Write the sentences of a sheet.

    Parameters
    ----------
    sheet : SpecSheet
        What is known of the part.
    language : Language
        What they are written in.

    Returns
    -------
    SheetSentences
        Lengths in both units, the sheet's own first.
    """
    spread = sheet.true_scale.standard_uncertainty
    digits = decimals_for(spread or None)
    both = _Both(language, sheet.plan.unit, digits)
    true = both.lengths(_sides(sheet))
    if spread:
        half = 0.5 * (sheet.true_scale.upper - sheet.true_scale.lower)
        width = language.length(half, sheet.plan.unit, digits)
        true = language.say("with_half", length=true, half=width, coverage=f"{100.0 * sheet.coverage:g}")
    if sheet.treble is not None:
        true = f"{true}, {language.say('bass_treble')}"
    rule = layout = language.say("not_established")
    statement = language.say("scale_alone", true=true)
    if sheet.rule is not None:
        rule = language.rule(sheet.rule)
        rule = f"{rule[0].upper()}{rule[1:]}"
        if sheet.square_fret is not None:
            square = language.say("square_fret", fret=sheet.square_fret) if sheet.square_fret else None
            rule = f"{rule}, {square or language.say('square_nut')}"
        if sheet.layout_scale is not None:
            layout = both.lengths(_layouts(sheet))
            statement = language.say("stated", rule=rule, layout=layout, true=true)
    obtained = {"readings": "measured", "definition": "taken_at_word", "label": "from_label"}[sheet.source]
    return SheetSentences(
        statement=statement,
        true_scale=true,
        layout_scale=layout,
        rule=rule,
        obtained=language.say(obtained),
        label=_label(sheet, both),
        conformity=_conformity(sheet, both),
        not_with=_not_with(sheet, both),
        cautions=[language.say(f"caution_{name}") for name in ("dry", "saw", "strings")],
    )


def _sides(sheet: SpecSheet) -> list[float]:
    """True scale, or those of both sides of a fan board. [mm]"""
    return [sheet.true_scale.value, *([] if sheet.treble is None else [sheet.treble.true_scale.value])]


def _layouts(sheet: SpecSheet) -> list[float]:
    """Layout scale, or those of both sides; empty where they are not known. [mm]"""
    found = [sheet.layout_scale, *([] if sheet.treble is None else [sheet.treble.layout_scale])]
    return [one for one in found if one is not None]


def large_scale(sheet: SpecSheet, language: Language) -> str:
    """The true scale as it stands in large letters, or those of both sides of a fan board."""
    spread = sheet.true_scale.standard_uncertainty
    return language.lengths(_sides(sheet), sheet.plan.unit, decimals_for(spread or None))


@dataclass(frozen=True, slots=True)
class _Both:
    """Lengths in both units."""

    language: Language
    unit: str
    digits: int

    def length(self, length: float) -> str:
        """A length, the sheet's own unit first."""
        return self.lengths([length])

    def lengths(self, lengths: Sequence[float]) -> str:
        """Lengths, the sheet's own unit first."""
        other = "in" if self.unit == "mm" else "mm"
        first = self.language.lengths(lengths, self.unit, self.digits)
        return f"{first} ({self.language.lengths(lengths, other, self.digits)})"


def _label(sheet: SpecSheet, both: _Both) -> str | None:
    """What the label says and what it means."""
    if sheet.label is None:
        return None
    unit = "in" if sheet.label.written_in == "in" else "mm"
    written = sheet.label.text or both.language.length(sheet.label.length, unit, 2)
    if sheet.treble is not None:
        low = abs(sheet.label.length - sheet.label.excess - sheet.true_scale.value) < _SAME
        written = f"{written} ({both.language.say('bass' if low else 'treble')})"
    return both.language.say(f"label_{sheet.label.names}", label=written, excess=both.length(abs(sheet.label.excess)))


def _conformity(sheet: SpecSheet, both: _Both) -> str | None:
    """Whether the part is what it claims to be."""
    found = sheet.conformity
    if found is None:
        return None
    word = {"conforming": "conforms", "undecided": "conforms_undecided", "nonconforming": "conforms_not"}
    decision = both.language.say("accepted" if found.decision == "accept" else "rejected")
    sentence = both.language.say(
        word[found.conformance],
        deviation=both.language.length(abs(found.deviation.value), sheet.plan.unit, both.digits),
        tolerance=both.language.length(found.tolerance, sheet.plan.unit, 2),
    )
    return f"{decision} {sentence}"


def _not_with(sheet: SpecSheet, both: _Both) -> list[str]:
    """What the part must not be combined with."""
    sides, layouts = _sides(sheet), _layouts(sheet)
    low, high = (both.lengths([side + sign * sheet.tolerance for side in sides]) for sign in (-1.0, 1.0))
    found = [both.language.say("not_with_scale", low=low, high=high)]
    excesses = [layout - side for layout, side in zip(layouts, sides, strict=False)]
    if any(abs(excess) > sheet.tolerance for excess in excesses):
        found.append(both.language.say("not_with_layout", layout=both.lengths(layouts), excess=both.lengths(excesses)))
    if sheet.frets:
        found.append(both.language.say("not_with_rule"))
    return found
