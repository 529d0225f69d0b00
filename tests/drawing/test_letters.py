"""Letters: lines that fit, and writing from right to left in its visual order."""

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from scalewright.drawing.bidi import in_visual_order
from scalewright.drawing.fonts import font_file, with_known_letters
from scalewright.drawing.letters import clip_text, text_width, wrap

WRITING = st.text(st.characters(exclude_categories=["Cc", "Cs", "Cf", "Cn", "Co"]), max_size=80)


@given(WRITING, st.floats(20.0, 200.0))
def test_wrapped_lines_fit_and_lose_nothing(text, width):
    """No line is wider than there is room, and all that is not white space is there again."""
    lines = wrap(text, 3.0, width)

    assert all(text_width(line, 3.0) <= width or len(line) == 1 for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


@given(WRITING, st.floats(10.0, 100.0))
def test_a_clipped_text_fits_and_says_that_it_goes_on(text, width):
    """What is too wide ends with a mark; what fits is left alone."""
    clipped = clip_text(text, 3.0, width)

    assert clipped == text or clipped.endswith("…")
    assert text_width(clipped, 3.0) <= width or len(clipped) <= 2


@pytest.mark.parametrize(
    "text",
    [
        "Before cutting: compare the bars of a printed sheet with a steel rule;",
        "THE MACHINE'S OWN INSTRUCTIONS, LOCAL CODES AND QUALIFIED PRACTICE COME FIRST",
        "24 frets, 7 strings, fan square at fret 8: 0123456789",
        "Quäker Ωμέγα Журнал «номер» (מספר)",
        "WWWWWWWWmmmmmmmm@@@@%%%%&&&&",
    ],
)
def test_the_room_that_is_reckoned_is_enough(text):
    """By the widths in the font file itself, a text takes no more than it was given."""
    with TTFont(font_file()) as font:
        widths, names, unit = font["hmtx"].metrics, font.getBestCmap(), font["head"].unitsPerEm
        width = sum(widths[names[ord(letter)]][0] for letter in text) / unit

    assert width <= text_width(text, 1.0) <= 1.5 * width


@pytest.mark.source("Unicode Standard Annex #9, Unicode Bidirectional Algorithm, rules W1-W7, N1, N2, L2 and L4")
@pytest.mark.parametrize(
    ("logical", "visual"),
    [
        ("abc", "abc"),
        ("", ""),
        ("אבג", "גבא"),
        ("abc אבג def", "abc גבא def"),
        ("אבג abc דהו", "והד abc גבא"),
        ("אבג 123 דהו", "והד 123 גבא"),
        ("אבג 1.50 ד", "ד 1.50 גבא"),
        ("(אב)", "(בא)"),
        ("אב (גד)", "(דג) בא"),
        ("12 אב", "בא 12"),
        ("a אב 12", "a 12 בא"),
        ("שָׁלוֹם", "םוֹלשָׁ"),
    ],
)
def test_right_to_left_writing_in_visual_order(logical, visual):
    """By hand from the rules: words turn round, numbers and Latin words within them do not, brackets are mirrored."""
    assert in_visual_order(logical) == visual


@given(WRITING)
def test_no_letter_is_lost_or_made(text):
    """Putting letters in order keeps them all, but for brackets that are mirrored."""
    plain = str.maketrans(")]}>»", "([{<«")

    assert sorted(in_visual_order(text).translate(plain)) == sorted(text.translate(plain))


@pytest.mark.parametrize("text", ["628.65\u00a0mm", "628.65\u202fmm", "628.65 mm", "24.750 in"])
def test_a_number_and_its_unit_stay_together(text):
    """Neither at a no-break space nor before a unit is a line broken, if it can be broken elsewhere."""
    lines = wrap(f"laid out from {text}", 3.0, text_width(f"from {text}", 3.0) - 0.1)

    assert lines[-1] == text


@pytest.mark.parametrize("text", ["琴の長さ" * 12, "กขฃคฅฆ" * 9, "नमस्ते" * 10, "\u0416\u0301" * 20])
def test_letters_that_the_font_lacks_take_the_room_of_what_is_drawn(text):
    """The sign for a missing letter has its own width in the font file, and no line of it is wider than its room."""
    with TTFont(font_file()) as font:
        widths, names, unit = font["hmtx"].metrics, font.getBestCmap(), font["head"].unitsPerEm
        for line in wrap(text, 3.0, 40.0):
            drawn = with_known_letters(line)
            assert sum(widths[names[ord(letter)]][0] for letter in drawn) / unit * 3.0 <= 40.0
