"""What a spec sheet says in sentences, in the language that it is written in."""

from dataclasses import dataclass

from scalewright.drawing.language import Language, decimals_for
from scalewright.lutherie.spec_sheet import SpecSheet

__all__ = ["SheetSentences", "sentences_of"]


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
    true = both.length(sheet.true_scale.value)
    if spread:
        half = 0.5 * (sheet.true_scale.upper - sheet.true_scale.lower)
        width = language.length(half, sheet.plan.unit, digits)
        true = language.say("with_half", length=true, half=width, coverage=f"{100.0 * sheet.coverage:g}")
    rule = layout = language.say("not_established")
    statement = language.say("scale_alone", true=true)
    if sheet.rule is not None:
        rule = language.rule(sheet.rule)
        rule = f"{rule[0].upper()}{rule[1:]}"
        if sheet.layout_scale is not None:
            layout = both.length(sheet.layout_scale)
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


@dataclass(frozen=True, slots=True)
class _Both:
    """Lengths in both units."""

    language: Language
    unit: str
    digits: int

    def length(self, length: float) -> str:
        """A length, the sheet's own unit first."""
        other = "in" if self.unit == "mm" else "mm"
        first = self.language.length(length, self.unit, self.digits)
        return f"{first} ({self.language.length(length, other, self.digits)})"


def _label(sheet: SpecSheet, both: _Both) -> str | None:
    """What the label says and what it means."""
    if sheet.label is None:
        return None
    unit = "in" if sheet.label.written_in == "in" else "mm"
    written = both.language.length(sheet.label.length, unit, 2)
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
    value = sheet.true_scale.value
    low, high = both.length(value - sheet.tolerance), both.length(value + sheet.tolerance)
    found = [both.language.say("not_with_scale", low=low, high=high)]
    layout = sheet.layout_scale
    if layout is not None and abs(layout - value) > sheet.tolerance:
        found.append(
            both.language.say("not_with_layout", layout=both.length(layout), excess=both.length(layout - value))
        )
    if sheet.frets:
        found.append(both.language.say("not_with_rule"))
    return found
