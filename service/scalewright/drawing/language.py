"""Languages: the words of labels and sheets, one catalogue file each, and how a language writes its numbers."""

import math
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib import resources
from types import MappingProxyType

from scalewright.lutherie.spacing import Divisor, Eighteenth, Equal, Listed, Rule

__all__ = ["FALLBACK", "LANGUAGES", "Language", "decimals_for", "language_named"]

LANGUAGES = ("en", "de", "fr")
"""Tags of the languages (RFC 5646), the one to fall back on first."""

FALLBACK = LANGUAGES[0]
"""What is written where no language that is asked for is known."""

_INCH = 25.4


@dataclass(frozen=True, slots=True)
class Language:
    """A language's words and numbers."""

    tag: str
    """Its tag (RFC 5646)."""
    words: Mapping[str, str]
    """Its catalogue."""

    def say(self, word: str, **values: object) -> str:
        """Say a word of the catalogue, with its places filled in."""
        return self.words[word].format(**values)

    def number(self, value: float, decimals: int) -> str:
        """A number with so many decimals."""
        return f"{value:.{decimals}f}".replace(".", self.words["decimal"])

    def length(self, length: float, unit: str, decimals: int) -> str:
        """A length [mm] in a unit, with so many decimals of a millimetre, and one more in inches."""
        if unit == "mm":
            return f"{self.number(length, decimals)} mm"
        return f"{self.number(length / _INCH, decimals + 1)} in"

    def lengths(self, lengths: Sequence[float], unit: str, decimals: int) -> str:
        """Lengths [mm] in a unit, as :meth:`length` writes one, the unit once."""
        first = [self.length(length, unit, decimals).removesuffix(unit).rstrip() for length in lengths[:-1]]
        return " / ".join([*first, self.length(lengths[-1], unit, decimals)])

    def rule(self, rule: Rule) -> str:
        """A spacing rule as a person would call it."""
        match rule:
            case Equal(12):
                return self.say("equal")
            case Equal(steps):
                return self.say("equal_steps", steps=steps)
            case Eighteenth():
                return self.say("eighteenth")
            case Divisor(divisor):
                return self.say("divisor", divisor=self.number(divisor, 3))
            case Listed():
                return self.say("listed")


def decimals_for(uncertainty: float | None) -> int:
    """Decimals of a millimetre that an uncertainty [mm] leaves: two of its own digits; 2 without one."""
    return 2 if uncertainty is None else min(3, max(0, 1 - math.floor(math.log10(max(uncertainty, 1e-4)))))


@cache
def language_named(tag: str) -> Language:
    """The language of a tag.

    Parameters
    ----------
    tag : str
        One of :data:`LANGUAGES`.

    Returns
    -------
    Language
        Read from its catalogue once.
    """
    catalogue = resources.files("scalewright.drawing") / "languages" / f"{tag}.toml"
    return Language(tag, MappingProxyType(tomllib.loads(catalogue.read_text(encoding="utf-8"))))
