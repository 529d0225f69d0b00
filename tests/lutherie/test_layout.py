"""Fret layouts, against arithmetic of fifty digits and against published and common values."""

import json
import math
import random
from fractions import Fraction
from pathlib import Path

import mpmath
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.lutherie.errors import OutsideScaleError, TooFewPitchesError
from scalewright.lutherie.layout import ScaleBasis, lay_out, layout_scale_of, true_scale_of
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, MOST_FRETS, Divisor, Equal, Listed, Rule

REFERENCE = json.loads((Path(__file__).parent.parent / "reference" / "spacing.json").read_text(encoding="utf-8"))

UNITS_IN_THE_LAST_PLACE = 2
RELATIVE = 1e-12
"""A column is right within whichever of the two is larger."""

PRINTED = 6e-10
"""Relative; the tables of the reference are printed to ten figures."""

PENCIL = 0.0005
"""Half a unit in the last place of what makers quote. [in]"""

mp = mpmath.MPContext()
mp.dps = 50


def exact_remainders(rule: Rule, frets: int) -> list[mpmath.mpf]:
    """Shares of the layout scale behind frets 1, 2, ..., from the definition of the rule, to fifty digits."""
    if isinstance(rule, Listed):
        cents = [mp.mpf(rule.cents[n % len(rule.cents)]) + 1200 * (n // len(rule.cents)) for n in range(frets)]
        return [mp.power(2, -c / 1200) for c in cents]
    step = mp.power(2, mp.mpf(-1) / rule.steps) if isinstance(rule, Equal) else 1 - 1 / mp.mpf(rule.divisor)
    shares = [step]
    while len(shares) < frets:
        shares.append(shares[-1] * step)
    return shares


def exact_octave_remainder(rule: Rule) -> mpmath.mpf | None:
    """Share of the layout scale behind the octave fret, found from the words of the definition."""
    if isinstance(rule, Equal):
        return mp.mpf("0.5")
    if isinstance(rule, Listed):
        listed = list(rule.cents)
        if rule.repeat:
            listed += [c + 1200 for c in rule.cents]
        near = [c for c in listed if abs(mp.mpf(c) - 1200) <= mp.mpf("0.01")]
        return mp.power(2, -mp.mpf(near[0]) / 1200) if near else None
    step = 1 - 1 / mp.mpf(rule.divisor)
    return mp.power(step, max(1, int(mp.nint(mp.log(2) / -mp.log(step)))))


def assert_right(column: list[float], expected: list[mpmath.mpf]) -> None:
    """Every number of a column within 2 units in the last place or 1e-12, whichever is larger."""
    assert len(column) == len(expected)
    for fret, (number, exact) in enumerate(zip(column, expected, strict=True), 1):
        allowed = max(UNITS_IN_THE_LAST_PLACE * math.ulp(float(exact)), RELATIVE * float(abs(exact)))
        assert abs(float(number - exact)) <= allowed, f"fret {fret}: {number!r}, exactly {mp.nstr(exact, 20)}"


def random_rule(draw: random.Random, frets: int) -> Rule:
    """Return any rule that a request may name."""
    kind = draw.choice(("equal", "eighteenth", "divisor", "shop", "listed", "repeated"))
    if kind == "equal":
        return Equal(draw.randint(1, 120))
    if kind == "eighteenth":
        return EIGHTEENTH
    if kind == "divisor":
        return Divisor(math.exp(draw.uniform(math.log(2.0), math.log(1000.0))))
    if kind == "shop":
        return Divisor(round(draw.uniform(16.5, 19.5), 3))
    if kind == "listed":
        cents = sorted({draw.uniform(1.0, 12000.0) for _ in range(frets)})
        cents[draw.randrange(len(cents))] = 1200.0 + draw.uniform(-0.01, 0.01)
        return Listed(tuple(sorted(cents))) if len(cents) == frets else EQUAL
    size = draw.randint(2, 24)
    octave = 1200.0 + draw.choice((0.0, 0.005, -0.009, -30.0))
    return Listed((*sorted(draw.uniform(20.0, 1100.0) for _ in range(size)), octave), repeat=True)


@pytest.mark.parametrize("block", range(20))
def test_every_column_is_right_to_the_last_digits(block):
    """Fifty layouts of random scale, rule, frets and basis agree with arithmetic of fifty digits; 1,000 in all."""
    draw = random.Random(block)
    for _ in range(50):
        frets = draw.randint(1, MOST_FRETS)
        rule = random_rule(draw, frets)
        scale = draw.uniform(1.0, 10_000.0)
        octave = exact_octave_remainder(rule)
        basis: ScaleBasis = "layout" if octave is None or draw.random() < 0.5 else "true"
        layout = lay_out(rule, scale, frets, basis)
        left = exact_remainders(rule, frets)
        S = mp.mpf(scale) if basis == "layout" or octave is None else mp.mpf(scale) / (2 * (1 - octave))

        assert_right([layout.layout_scale], [S])
        assert_right(layout.from_nut, [S * (1 - share) for share in left])
        assert_right(layout.from_previous, [S * (a - b) for a, b in zip([mp.mpf(1), *left], left, strict=False)])
        assert_right(layout.to_layout_end, [S * share for share in left])
        assert_right(layout.cents, [-1200 * mp.log(share, 2) for share in left])
        if octave is None:
            assert layout.true_scale is None
            assert layout.to_true_end is None
        else:
            assert layout.true_scale is not None
            assert layout.to_true_end is not None
            true_scale = 2 * S * (1 - octave)
            assert_right([layout.true_scale], [true_scale])
            assert_right(layout.to_true_end, [true_scale - S * (1 - share) for share in left])


@pytest.mark.parametrize("fret", [1, 2, 12, 19, 24, 60])
def test_the_rule_of_18_is_exact(fret):
    """Positions under the rule of 18 are the nearest doubles to whole-number arithmetic, within 2 units."""
    exact = Fraction(6502, 10) * (1 - Fraction(17, 18) ** fret)
    position = lay_out(EIGHTEENTH, 650.2, fret).from_nut[-1]

    assert abs(Fraction(position) - exact) <= UNITS_IN_THE_LAST_PLACE * Fraction(math.ulp(position))


def test_a_fret_near_the_true_end_keeps_its_digits():
    """Where a wide divisor sets a fret a hair from the true end, the hair is still right."""
    # With d = 1 / (1 - r), fret 4 meets the true end where 1 - 2 r + r^4 = 0: r = 0.5436890126920764.
    rule = Divisor(1.0 / (1.0 - 0.5436890126920764))
    step = 1 - 1 / mp.mpf(rule.divisor)
    layout = lay_out(rule, 1000.0, 4)

    assert layout.octave_fret == 1
    assert layout.to_true_end is not None
    assert abs(layout.to_true_end[3]) < 1e-9
    assert_right(layout.to_true_end, [1000 * (1 - 2 * step + step**n) for n in (1, 2, 3, 4)])


@pytest.mark.source("reference/spacing.json, table_650_mm, computed independently of this project")
def test_the_table_for_650_mm():
    """Both rules on 650 mm agree with the reference table, fret by fret."""
    rows = REFERENCE["table_650_mm"]["rows"]
    equal, eighteenth = lay_out(EQUAL, 650.0, len(rows)), lay_out(EIGHTEENTH, 650.0, len(rows))

    for row, by_equal, by_eighteenth in zip(rows, equal.frets, eighteenth.frets, strict=True):
        assert by_equal.fret == by_eighteenth.fret == row["n"]
        assert by_equal.from_nut == pytest.approx(row["ET"], rel=PRINTED)
        assert by_eighteenth.from_nut == pytest.approx(row["R18"], rel=PRINTED)
        assert by_eighteenth.cents == pytest.approx(row["cents_R18_nominal"], rel=PRINTED)


@pytest.mark.source("M. Mersenne, Harmonie universelle (1636), monochord of 100000 parts; from memory")
def test_mersennes_monochord():
    """Equal temperament on 100000 parts leaves Mersenne's lengths, to the part that he rounded to."""
    lengths = REFERENCE["mersenne_equal_1636"]["lengths"]
    layout = lay_out(EQUAL, 100_000.0, 12)

    for ours, his in zip([100_000.0, *layout.to_layout_end], lengths, strict=True):
        assert abs(ours - his) <= 1.0


@pytest.mark.parametrize(
    ("scale", "true_scale", "quoted_to"), [(24.75, 24.57, PENCIL), (25.5, 25.32, 0.01), (25.0, 24.82, 0.01)]
)
def test_what_makers_quote_for_the_rule_of_18(scale, true_scale, quoted_to):
    """Common practice, no source: 24.75 in measures 24.57 in, 25.5 in about 25.32 in, 25.0 in about 24.82 in."""
    layout = lay_out(EIGHTEENTH, scale * 25.4, 12)

    assert layout.true_scale is not None
    assert layout.true_scale / 25.4 == pytest.approx(true_scale, abs=quoted_to)


def test_what_makers_measure_at_fret_12():
    """Common practice, no source: 24.75 in under the rule of 18 has fret 12 at 12.285 in, not at 12.375 in."""
    assert lay_out(EIGHTEENTH, 24.75 * 25.4, 12).from_nut[-1] / 25.4 == pytest.approx(12.285, abs=PENCIL)
    assert lay_out(EQUAL, 24.75 * 25.4, 12).from_nut[-1] / 25.4 == pytest.approx(12.375, abs=PENCIL)


RULES = st.one_of(
    st.builds(Equal, st.integers(1, 120)),
    st.just(EIGHTEENTH),
    st.builds(Divisor, st.floats(2.0, 1000.0)),
    st.builds(
        lambda steps, repeat: Listed(tuple(math.fsum(steps[: n + 1]) for n in range(len(steps))), repeat),
        st.lists(st.floats(1.0, 200.0), min_size=60, max_size=60),
        st.just(False),
    ),
)
SCALES = st.floats(1.0, 10_000.0)
FRETS = st.integers(1, MOST_FRETS)


@given(RULES, SCALES, FRETS)
def test_the_columns_agree_with_each_other(rule, scale, frets):
    """Frets ascend, steps add up to positions, and what lies before and behind a fret is the scale."""
    layout = lay_out(rule, scale, frets)

    assert all(below <= above for below, above in zip([0.0, *layout.from_nut], layout.from_nut, strict=False))
    assert math.fsum(layout.from_previous) == pytest.approx(layout.from_nut[-1], rel=RELATIVE)
    for row in layout.frets:
        assert row.from_nut + row.to_layout_end == pytest.approx(layout.layout_scale, rel=RELATIVE)
        if row.to_true_end is not None:
            assert row.from_nut + row.to_true_end == pytest.approx(layout.true_scale, rel=RELATIVE)


@given(RULES, SCALES)
def test_the_true_scale_is_twice_the_octave_fret(rule, scale):
    """Where there is an octave fret on the board, twice its distance from the nut is the true scale."""
    layout = lay_out(rule, scale, MOST_FRETS)

    if layout.octave_fret is None:
        assert layout.true_scale is None
    elif layout.octave_fret <= MOST_FRETS:
        assert 2.0 * layout.from_nut[layout.octave_fret - 1] == pytest.approx(layout.true_scale, rel=RELATIVE)


@given(st.one_of(st.just(EIGHTEENTH), st.builds(Divisor, st.floats(2.0, 1000.0))), SCALES)
def test_true_and_layout_scale_lead_to_each_other(rule, scale):
    """The layout scale of a true scale has that true scale."""
    layout_scale = layout_scale_of(rule, scale, "true")

    assert true_scale_of(rule, layout_scale) == pytest.approx(scale, rel=RELATIVE)
    assert lay_out(rule, scale, 1, "true").true_scale == scale


def test_listed_pitches_without_an_octave_have_no_true_scale():
    """Seven steps to a fifth and no more: there is no octave fret, so there is no true scale and none is made up."""
    fifth = Listed(tuple(100.0 * n for n in range(1, 8)))
    layout = lay_out(fifth, 650.0, 7)

    assert (layout.true_scale, layout.octave_fret, layout.to_true_end) == (None, None, None)
    assert layout.frets[6].to_true_end is None
    with pytest.raises(OutsideScaleError) as refused:
        lay_out(fifth, 650.0, 7, "true")
    assert refused.value.field == ("scale_basis",)


def test_too_few_listed_pitches_are_refused_with_the_numbers():
    """A list that ends before the last fret is refused, unless it repeats."""
    with pytest.raises(TooFewPitchesError) as refused:
        lay_out(Listed((100.0, 200.0)), 650.0, 3)

    assert refused.value.facts == {"given": 2, "needed": 3}
    assert lay_out(Listed((600.0, 1200.0), repeat=True), 650.0, 4).from_nut[3] == pytest.approx(487.5, rel=RELATIVE)


def test_an_answer_is_not_shared():
    """Two layouts by the same rule are two: what is done to the one does not show in the other."""
    first = lay_out(EQUAL, 650.0, 12)
    first.cents.clear()

    assert len(lay_out(EQUAL, 650.0, 12).cents) == 12
