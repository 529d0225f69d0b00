"""Tag texts: what a label's code carries comes back, to the precision that it states."""

import binascii
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.lutherie.errors import ContradictoryPartError, UnreadableTagError
from scalewright.lutherie.identification import Beliefs
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.part import FanScale, Part
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal, Listed
from scalewright.lutherie.tag import Tag, tag_of
from scalewright.lutherie.tag_text import read_tag, tag_length, write_tag

EXAMPLE = Tag("BD-17", "board", 624.079, 0.05, EIGHTEENTH, 628.65, "mm")
LETTERS = "ABCXYZabcxyz019 ._#()+-"

ids = st.builds(str.__add__, st.sampled_from("AZaz09"), st.text(LETTERS, max_size=59))
listed = st.lists(st.floats(1e-3, 12_000.0), min_size=1, max_size=60, unique=True).map(sorted).map(tuple)
within_an_octave = st.lists(st.floats(1e-3, 1200.0), min_size=1, max_size=30, unique=True).map(sorted).map(tuple)
rules = st.one_of(
    st.none(),
    st.just(EIGHTEENTH),
    st.integers(1, 120).map(Equal),
    st.floats(2.0, 1000.0).map(Divisor),
    st.builds(Listed, listed),
    st.builds(Listed, within_an_octave, st.just(True)),
)


@st.composite
def tags(draw):
    """Tags whose lengths lie on the marks that a text has: whole 0.001 mm, or whole 0.00001 in."""
    unit = draw(st.sampled_from(["mm", "in"]))
    step, most = (1000, 10_000_000) if unit == "mm" else (100_000, 39_370_078)

    def on_a_mark(marks):
        value = float(Decimal(marks) / step)
        return value if unit == "mm" else value * 127.0 / 5.0

    def length(low):
        return on_a_mark(draw(st.integers(low, most)))

    rule, layout, true_scale = draw(rules), None, length(step)
    if rule is not None and draw(st.booleans()):
        # A layout scale comes with the true scale that follows from it, if one does.
        layout = length(step)
        follows = true_scale_of(rule, layout)
        marks = step if follows is None else round(follows * (1.0 if unit == "mm" else 5.0 / 127.0) * step)
        true_scale = true_scale if follows is None else on_a_mark(marks)
        layout = layout if step <= marks <= most else None
        true_scale = true_scale if step <= marks <= most else length(step)
    return Tag(
        id=draw(ids),
        kind=draw(st.sampled_from(["board", "neck_blank", "bridge", "saddle_template"])),
        true_scale=true_scale,
        uncertainty=draw(st.none() | st.just(True)) and length(1),
        rule=rule,
        layout_scale=layout,
        written_in=unit,
    )


@given(tags())
def test_what_is_written_is_read_bit_for_bit(tag):
    """Every part whose lengths have the decimals of a text comes back the same, to the last bit."""
    assert read_tag(write_tag(tag)) == tag


@given(st.floats(1.0, 10_000.0), st.sampled_from(["mm", "in"]))
def test_any_length_comes_back_within_half_a_step(length, unit):
    """A length between two marks comes back within half a step: 0.0005 mm, or 0.000005 in."""
    half_a_step = 0.0005 if unit == "mm" else 0.000005 * 25.4
    tag = Tag("a", "bridge", length, None, None, None, unit)

    assert abs(read_tag(write_tag(tag)).true_scale - length) <= half_a_step * (1.0 + 1e-9)


@given(tags())
def test_a_text_is_one_line_of_ascii_that_survives_a_scanner(tag):
    """White space around a text and a scanner's own mark before it change nothing."""
    text = write_tag(tag)

    assert text.isascii()
    assert text.isprintable()
    assert read_tag(f"  {text}\r\n") == read_tag(f"]Q1{text}") == tag


@given(tags(), st.data())
def test_a_text_that_was_changed_is_refused(tag, data):
    """One letter changed or the end cut off is noticed by the check digits."""
    text = write_tag(tag)
    at = data.draw(st.integers(0, len(text) - 1))
    other = data.draw(st.sampled_from([letter for letter in "0aZ;=#" if letter.upper() != text[at].upper()]))

    for wrong in (text[:at] + other + text[at + 1 :], text[:at]):
        with pytest.raises(UnreadableTagError):
            read_tag(wrong)


@pytest.mark.source(
    "The check value of CRC-16 with polynomial 1021 and start FFFF over '123456789' is 29B1; from memory"
)
def test_the_check_digits_are_those_of_a_known_code():
    """The check is the CRC-16 that other programs can compute as well."""
    assert binascii.crc_hqx(b"123456789", 0xFFFF) == 0x29B1
    body, _, check = write_tag(EXAMPLE).rpartition(";crc=")
    assert int(check, 16) == _crc_bit_by_bit(body.encode())


def _crc_bit_by_bit(message):
    register = 0xFFFF
    for byte in message:
        register ^= byte << 8
        for _ in range(8):
            register = (register << 1) ^ (0x1021 if register & 0x8000 else 0)
            register &= 0xFFFF
    return register


def signed(body):
    """A text with right check digits."""
    return f"{body};crc={_crc_bit_by_bit(body.encode()):04x}"


@pytest.mark.parametrize(
    "text",
    [
        "",
        "https://shop.example/board/17",
        signed("TRUESCALE/2;id=a;kind=board;true=650mm"),
        "TRUESCALE/1;id=a;kind=board;true=650mm",
        signed("TRUESCALE/1;id=a;kind=board"),
        signed("TRUESCALE/1;id=a;kind=table;true=650mm"),
        signed("TRUESCALE/1;id=a;kind=board;true=650"),
        signed("TRUESCALE/1;id=a;kind=board;true=650mm;true=650mm"),
        signed("TRUESCALE/1;id=a;kind=board;true=650mm;colour=red"),
        signed("TRUESCALE/1;id=<b>;kind=board;true=650mm"),
        signed("TRUESCALE/1;id=a;kind=board;true=0.5mm"),
        signed("TRUESCALE/1;id=a;kind=board;true=99999mm"),
        signed("TRUESCALE/1;id=a;kind=board;true=650mm;layout=0mm"),
        signed("TRUESCALE/1;id=a;kind=board;true=650mm;u="),
        *(
            signed(f"TRUESCALE/1;id=a;kind=board;true=650mm;rule={rule}")
            for rule in (
                "golden", "equal", "equal:0", "equal:121", "equal:12.0", "equal:1,2", "divisor:1", "divisor:nan",
                "eighteenth:18", "listed:", "listed:200,100", "listed:100,100", "listed:13000",
                "listed-repeat:100,1300",
                "listed:" + ",".join(map(str, range(1, 62))),
            )
        ),
        "TRUESCALE/1;id=é;kind=board;true=650mm;crc=0000",
        "TRUESCALE/1;" + 3000 * "a",
    ],
)  # fmt: skip
def test_what_is_no_such_text_is_refused_with_one_that_is(text):
    """A refusal names the field and shows a text that can be read."""
    with pytest.raises(UnreadableTagError) as refused:
        read_tag(text)

    assert refused.value.field == ("text",)
    assert read_tag(str(refused.value.facts["example"])) == EXAMPLE


def test_a_text_has_no_more_than_it_needs():
    """What is not established or rounds to nothing is left out, and so are idle zeros."""
    body, _, _ = write_tag(Tag("a 1", "bridge", 650.0, 0.0001, None, None, "mm")).rpartition(";")

    assert body == "TRUESCALE/1;id=a 1;kind=bridge;true=650mm"
    assert tag_length(25.4, "in") == "1in"


def test_a_tag_is_a_part_as_uncertain_as_it_says():
    """The half width of a rectangular distribution is the square root of 3 times its standard deviation (GUM 4.3.7)."""
    assert EXAMPLE.part.tolerance == pytest.approx(0.05 * 3.0**0.5)
    assert EXAMPLE.part.true_scale == 624.079


@given(
    st.floats(500.0, 900.0),
    st.floats(500.0, 900.0),
    st.sampled_from([None, EQUAL, EIGHTEENTH, Divisor(17.835)]),
    st.sampled_from([None, 0, 7, 60]),
    st.sampled_from(["mm", "in"]),
)
def test_a_fan_board_is_read_back_with_both_its_sides(bass, treble, rule, square, unit):
    """Version 2 holds both true scales, both layout scales and the square fret, and gives the same part again."""
    part = Part("FAN-5", "board", true_scale=FanScale(bass, treble), rule=rule, square_fret=square, tolerance=0.1)
    tag, _ = tag_of(part, unit, Beliefs())
    text = write_tag(tag)
    back = read_tag(text).part

    assert text.startswith("TRUESCALE/2;")
    assert write_tag(read_tag(text)) == text
    assert isinstance(back.true_scale, FanScale)
    assert back.true_scale.bass == pytest.approx(bass, abs=0.0005 + 1e-9)
    assert back.true_scale.treble == pytest.approx(treble, abs=0.0005 + 1e-9)
    assert (back.rule, back.square_fret, back.layout_scale) == (rule, square, None)


def with_check(body):
    """A text with its check digits."""
    return f"{body};crc={binascii.crc_hqx(body.encode(), 0xFFFF):04X}"


@pytest.mark.parametrize(
    "body",
    [
        # 628.65 mm by the rule of 18 makes 624.079 mm, and by equal spacing itself.
        "TRUESCALE/1;id=x;kind=board;true=628.65mm;rule=eighteenth;layout=628.65mm",
        "TRUESCALE/1;id=x;kind=board;true=624.079mm;u=0.05mm;rule=equal:12;layout=628.65mm",
        "TRUESCALE/1;id=x;kind=board;true=624.079mm;layout=628.65mm",
        "TRUESCALE/2;id=x;kind=board;true=700mm;treble=628.65mm;rule=eighteenth;treble-layout=628.65mm",
    ],
)
def test_a_text_that_contradicts_itself_is_refused(body):
    """Check digits that are right do not make it so; the refusal says what does not agree."""
    with pytest.raises(ContradictoryPartError) as refused:
        read_tag(with_check(body))

    assert refused.value.field == ("text",)


def test_a_rough_label_need_not_agree_closely():
    """A true scale with an uncertainty of 1 mm may be 2 mm from what rule and layout scale give."""
    assert read_tag(with_check("TRUESCALE/1;id=x;kind=board;true=626mm;u=1mm;rule=eighteenth;layout=628.65mm")).rule


@pytest.mark.parametrize("body", ["TRUESCALE/1;id=x;kind=board;true=700mm;treble=650mm",
                                  "TRUESCALE/2;id=x;kind=board;true=700mm",
                                  "TRUESCALE/2;id=x;kind=board;true=700mm;treble=650mm;square=61",
                                  "TRUESCALE/3;id=x;kind=board;true=700mm"])  # fmt: skip
def test_each_version_has_its_own_fields(body):
    """A treble side belongs to version 2 and has to be there; a later version is not guessed at."""
    with pytest.raises(UnreadableTagError):
        read_tag(with_check(body))
