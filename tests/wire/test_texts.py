"""Texts on the wire: writing of every kind is taken, and what cannot be seen or controls others is not."""

import sys
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from scalewright.wire.texts import ShortText

TEXT = TypeAdapter(ShortText)
JOINERS = "\u200c\u200d"


def taken(text):
    """Whether a text is accepted."""
    try:
        TEXT.validate_python(text)
    except ValidationError:
        return False
    return True


@pytest.mark.source("Unicode Character Database, general categories, as the standard library has them")
@given(
    before=st.text(alphabet="ab ", max_size=5),
    character=st.characters(categories=["Cc", "Cf", "Zl", "Zp", "Co"], exclude_characters=JOINERS),
    after=st.text(alphabet="ab ", max_size=5),
)
def test_no_text_with_an_unseen_character_is_taken(before, character, after):
    """Controls, formats, separators of lines and private characters are refused wherever they stand."""
    assert not taken(before + character + after)


@pytest.mark.source("Unicode Character Database, general categories, as the standard library has them")
@given(text=st.text(st.characters(categories=["L", "M", "N", "P", "S", "Zs"], max_codepoint=0xDFFFF), max_size=20))
def test_writing_is_taken(text):
    """Letters, marks, digits, signs and spaces of every script are taken, but for letters that show nothing."""
    assert taken(text) == (not set(text) & set("\u115f\u1160\u3164\uffa0\ufffc\ufffd"))


@pytest.mark.source("Unicode Character Database, general categories, as the standard library has them")
def test_the_table_leaves_no_format_out():
    """Each of the formats and controls that this Python knows is refused, the two joiners excepted."""
    unseen = [chr(code) for code in range(sys.maxunicode + 1) if unicodedata.category(chr(code)) in {"Cc", "Cf"}]

    assert [character for character in unseen if taken(character)] == list(JOINERS)


@pytest.mark.source("The Unicode Standard, chapter 23.2: joiners are needed to spell Persian and Indic scripts")
@pytest.mark.parametrize("text", ["می\u200cخواهم", "ක්\u200dෂ", "\U0001f469\u200d\U0001f527"])
def test_joiners_are_writing(text):
    """Scripts that cannot be spelled without joiners keep them."""
    assert taken(text)


def test_tags_cannot_be_smuggled():
    """Tag characters, which no page shows, are refused."""
    assert not taken("board\U000e0041")
