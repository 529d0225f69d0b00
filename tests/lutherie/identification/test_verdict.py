"""Which rule a board was cut by: verdicts, scales and what they rest on."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from scalewright.lutherie.errors import ImpossibleReadingError, TooFewReadingsError
from scalewright.lutherie.identification import Beliefs, Candidate, identify, identify_all
from scalewright.lutherie.identification.candidates import FreeDivisor
from scalewright.lutherie.measure import Instrument, NutOffset, Reading, survey
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Listed
from tests.lutherie.identification.boards import CASES, board, case, draw, positions

HALF_MILLIMETRE_RULE = 0.144
"""Standard uncertainty of half-millimetre steps, 0.5 / sqrt 12 (JCGM 100, F.2.2.1). [mm]"""
ROUNDING = 1e-9
CALIPER_FRETS = [1, 2, 3, 5, 7, 9, 12, 15, 17, 19, 22]


@pytest.mark.source("spacing.json: a measured lute, 2008; R. Dowland 1610; S. Ganassi 1543")
@pytest.mark.parametrize(
    ("name", "uncertainty"), [("lute-550", HALF_MILLIMETRE_RULE), ("dowland-1610", 0.5), ("ganassi-1543", 0.5)]
)
def test_frets_set_by_ear_or_by_other_ratios_follow_none_of_the_rules(name, uncertainty):
    """Movable frets and historical divisions are explained by no rule: nothing is claimed but the octave."""
    found = identify(case(name, uncertainty))
    assert found.verdict == "none"
    assert (found.rule, found.layout_scale, found.nut_offset, found.family) == (None, None, None, [])
    assert all((candidate.p_value or 0.0) < 0.001 for candidate in found.candidates)


@pytest.mark.parametrize("fret", [7, 12])
@pytest.mark.parametrize("apart", [0.3, 10.0])
def test_readings_of_one_fret_that_contradict_each_other_establish_nothing(fret, apart):
    """One fret says nothing of the divisor, which can neither explain two readings of it nor hide that they differ."""
    found = identify(board([fret, fret], [325.0, 325.0 - apart], 0.05, scatter=None))
    assert (found.verdict, found.true_scale) == ("none", None)
    assert "readings-contradict" in [note.slug for note in found.notes]
    assert {candidate.degrees_of_freedom for candidate in found.candidates} == {1}
    assert all(candidate.p_value < 0.001 for candidate in found.candidates if candidate.p_value is not None)


@pytest.mark.parametrize("threshold", [0.5, 0.6, 0.95])
def test_a_low_threshold_rules_nothing_out(threshold):
    """Two readings that any of three rules explains leave it open, though none is as likely as the threshold."""
    found = identify(board([1, 2], [36.4, 70.9], 0.05), Beliefs(threshold=threshold))
    assert max(candidate.probability for candidate in found.candidates) < 0.5
    assert (found.verdict, found.notes) == ("undecided", [])


def test_repeats_of_the_octave_reading_that_differ_widen_its_interval():
    """Octave readings of 325 and 315 mm mean 650 and 630 mm: the interval holds both."""
    found = identify(board([5, 7, 9, 12, 12], [160.0, 220.0, 260.0, 325.0, 315.0], 0.05, scatter=None))
    assert found.verdict == "none"
    assert found.true_scale is not None
    assert found.true_scale.lower < 630.0
    assert found.true_scale.upper > 650.0


@pytest.mark.parametrize("divisor", [15.0, 15.5, 20.0, 21.0])
def test_a_divisor_that_nobody_believes_in_is_shown_at_the_bound_of_what_is_believed(divisor):
    """The candidate keeps within 16.5 to 19.5 and fails there; the divisor that would fit is stated apart from it."""
    exact = positions(Divisor(divisor), 650.0, CALIPER_FRETS)
    found = identify(board(CALIPER_FRETS, exact, 0.05))
    candidate = next(one for one in found.candidates if isinstance(one.rule, Divisor))
    assert found.verdict == "none"
    assert 16.5 <= (candidate.rule.divisor or math.nan) <= 19.5
    assert found.divisor.value == pytest.approx(divisor, rel=ROUNDING)
    # What is predicted by the rule and the scales shown, the nut's offset included, leaves the residuals shown.
    predicted = positions(candidate.rule, candidate.layout_scale.value, CALIPER_FRETS) + candidate.nut_offset.value
    assert candidate.residuals == pytest.approx(exact - predicted, abs=2e-3)
    assert (candidate.p_value or 0.0) < 1e-6
    assert "divisor-out-of-bounds" in [note.slug for note in found.notes]


def test_a_search_is_said_to_end_only_where_it_did():
    """A divisor within the bounds, or none among the candidates, calls for no word on them."""
    exact = positions(Divisor(20.0), 650.0, CALIPER_FRETS)
    wide = Beliefs(candidates=(Candidate(EQUAL, 1.0), Candidate(FreeDivisor(16.0, 22.0), 1.0)))
    fixed = Beliefs(candidates=(Candidate(EQUAL, 1.0), Candidate(EIGHTEENTH, 1.0)))
    for beliefs in (wide, fixed):
        found = identify(board(CALIPER_FRETS, exact, 0.05), beliefs)
        assert "divisor-out-of-bounds" not in [note.slug for note in found.notes]


@pytest.mark.source("spacing.json: computed positions rounded to 0.5 mm; S. Stevin, c. 1585")
@pytest.mark.parametrize(
    ("name", "uncertainty", "length", "rule", "scale"),
    [
        ("rounded-eighteenth-650", HALF_MILLIMETRE_RULE, None, EIGHTEENTH, 650.0),
        ("rounded-equal-650", HALF_MILLIMETRE_RULE, None, EQUAL, 650.0),
        ("stevin-1585", 0.1, 1000.0, EQUAL, 1000.0),
    ],
)
def test_rounded_boards_are_told_by_their_own_rule(name, uncertainty, length, rule, scale):
    """Half-millimetre rounding leaves the rule established and the scale in its interval, a monochord of 1585 too."""
    found = identify(case(name, uncertainty, length=length))
    assert (found.verdict, found.rule) == ("established", rule)
    assert found.layout_scale.lower < scale < found.layout_scale.upper


@pytest.mark.source("S. Ganassi, Lettione seconda (1543): the octave at half the string")
def test_without_a_rule_the_true_scale_is_twice_the_octave_reading():
    """300 mm at fret 12 are 600 mm, with twice the uncertainty, and a note says what may hide in them."""
    found = identify(case("ganassi-1543", 0.5))
    assert found.true_scale.value == pytest.approx(600.0, rel=ROUNDING)
    assert found.true_scale.standard_uncertainty == pytest.approx(1.0, rel=ROUNDING)
    assert "octave-reading-alone" in [note.slug for note in found.notes]


def test_without_a_rule_and_without_an_octave_reading_there_is_no_true_scale():
    """The lute ends at fret 8: null, with the reason and what to measure."""
    found = identify(case("lute-550", HALF_MILLIMETRE_RULE))
    assert found.true_scale is None
    (note,) = [note for note in found.notes if note.slug == "no-octave-reading"]
    assert "fret 12" in note.text


@pytest.mark.source("common practice, no source: five frets read with a half-millimetre rule cannot tell")
def test_a_few_frets_read_with_a_rule_cannot_tell():
    """Five positions to half a millimetre leave it open, with a true scale between the rules' and advice."""
    frets = [1, 2, 3, 4, 5]
    found = identify(board(frets, np.round(2.0 * positions(EIGHTEENTH, 650.0, frets)) / 2.0, HALF_MILLIMETRE_RULE))
    assert found.verdict == "undecided"
    assert (found.rule, found.layout_scale) == (None, None)
    assert found.true_scale.lower < 645.27 < found.true_scale.upper
    assert found.next_reading.fret > 12
    assert found.probability < found.next_reading.expected_probability <= 1.0


@pytest.mark.source("PHYSICS of the nut prior: twice 0.3 mm, with the caliper's own share added in squares")
def test_a_lone_octave_reading_is_as_weak_as_the_nut_is_free():
    """The true scale from one perfect caliper reading is uncertain by twice the nut's prior, under any rule."""
    found = identify(board([12], [312.0], 0.02))
    assert found.verdict == "undecided"
    assert found.true_scale.value == pytest.approx(624.0, rel=1e-6)
    assert found.true_scale.standard_uncertainty == pytest.approx(2.0 * math.hypot(0.3, 0.02), rel=1e-6)
    known = identify(board([12], [312.0], 0.02, nut_offset=NutOffset(0.0, 0.0)))
    assert known.true_scale.standard_uncertainty == pytest.approx(0.04, rel=1e-6)


@pytest.mark.source(
    "common practice, no source: 24.75 in under the rule of 18 gives 12.285 in at fret 12 and 24.57 in doubled"
)
def test_a_board_laid_out_by_the_old_rule():
    """Both scales of a 24.75 in board laid out by the rule of 18 come out, and the statement names them."""
    found = identify(board(CALIPER_FRETS, positions(EIGHTEENTH, 24.75 * 25.4, CALIPER_FRETS), 0.05))
    assert (found.verdict, found.rule) == ("established", EIGHTEENTH)
    assert found.layout_scale.value / 25.4 == pytest.approx(24.75, rel=ROUNDING)
    assert found.true_scale.value / 25.4 == pytest.approx(24.57, abs=0.0005)
    assert "rule of 18" in found.statement.lower()
    assert "624.08 mm" in found.statement
    assert "24.57" in found.statement


@given(
    scale=st.floats(250.0, 1200.0),
    rule=st.sampled_from([EQUAL, EIGHTEENTH]),
    offset=st.floats(-0.5, 0.5),
    count=st.integers(16, 24),
)
@settings(max_examples=30)
def test_exact_readings_establish_their_rule(scale, rule, offset, count):
    """Whatever the scale and the nut, a caliper over sixteen frets or more finds the rule, the scale and the nut."""
    frets = list(range(1, count + 1))
    found = identify(board(frets, positions(rule, scale, frets) + offset, 0.02))
    assert (found.verdict, found.rule) == ("established", rule)
    # The nut's prior pulls a shifted nut towards zero by a little; the scale follows.
    assert found.layout_scale.lower < scale < found.layout_scale.upper
    assert found.nut_offset.lower < offset < found.nut_offset.upper
    assert found.suspect_readings == []


@given(order=st.permutations(range(len(CALIPER_FRETS))))
@settings(max_examples=15)
def test_the_order_of_the_readings_does_not_matter(order):
    """Shuffled readings give the same answer, with the residuals in the order of the readings."""
    readings = positions(EIGHTEENTH, 640.0, CALIPER_FRETS) + 0.05 * np.sin(np.arange(11))
    plain = identify(board(CALIPER_FRETS, readings, 0.05))
    shuffled = identify(board([CALIPER_FRETS[k] for k in order], readings[list(order)], 0.05))
    assert shuffled.probability == pytest.approx(plain.probability, rel=1e-6)
    assert shuffled.true_scale.value == pytest.approx(plain.true_scale.value, rel=ROUNDING)
    expected = [plain.candidates[0].residuals[k] for k in order]
    assert shuffled.candidates[0].residuals == pytest.approx(expected, abs=1e-8)


def test_many_boards_get_the_answers_that_they_get_alone():
    """Batches of alike and of different boards, blunders among them, change no digit that matters."""
    rng = np.random.default_rng(17)
    surveys = []
    for count in (3, 7, 7, 11, 19):
        frets = sorted(rng.choice(np.arange(1, 23), count, replace=False).tolist())
        readings, *_ = draw(rng, 4, frets, 0.05)
        readings[0, 1] += 1.6
        surveys += [
            board(frets, row, 0.05, scatter=scatter)
            for row, scatter in zip(readings, [0.0, 0.02, None, 0.0], strict=True)
        ]
    alike, *_ = draw(rng, 12, CALIPER_FRETS, 0.05)
    surveys += [board(CALIPER_FRETS, row, 0.05) for row in alike]
    for together, survey_ in zip(identify_all(surveys), surveys, strict=True):
        alone = identify(survey_)
        assert together.verdict == alone.verdict
        assert together.rule == alone.rule or isinstance(alone.rule, Divisor)
        assert together.probability == pytest.approx(alone.probability, abs=1e-7)
        assert [s.reading for s in together.suspect_readings] == [s.reading for s in alone.suspect_readings]
        if alone.true_scale is not None:
            assert together.true_scale.value == pytest.approx(alone.true_scale.value, rel=1e-9)
            assert together.true_scale.lower == pytest.approx(alone.true_scale.lower, rel=1e-8)


def test_spans_between_frets_are_as_good_as_readings_from_the_nut():
    """A caliper that cannot reach fret 12 measures in spans, and the rule and the scale come out."""
    at = dict(zip([0, *range(1, 23)], [0.0, *positions(EIGHTEENTH, 650.0, list(range(1, 23)))], strict=True))
    pairs = [(0, 3), (0, 5), (3, 8), (5, 10), (5, 12), (7, 15), (10, 19), (12, 22), (12, 20), (15, 22)]
    readings = [Reading(a, b, at[b] - at[a]) for a, b in pairs]
    found = identify(survey(readings, Instrument(0.02), tooling_scatter=0.0))
    assert (found.verdict, found.rule) == ("established", EIGHTEENTH)
    assert found.layout_scale.value == pytest.approx(650.0, rel=1e-6)


def test_a_zero_fret_leaves_the_nut_out():
    """Measured from a zero fret there is no nut offset, and the tool has set fret 0 too."""
    readings = [
        Reading(0, fret, x) for fret, x in zip(CALIPER_FRETS, positions(EQUAL, 640.0, CALIPER_FRETS), strict=True)
    ]
    found = identify(survey(readings, Instrument(0.05), tooling_scatter=0.05, origin="zero_fret"))
    assert found.nut_offset is None
    assert all(candidate.nut_offset is None for candidate in found.candidates)
    assert found.true_scale.value == pytest.approx(640.0, rel=ROUNDING)


def test_a_known_nut_offset_is_taken_out():
    """A nut moved forward by 1 mm, if that is known, changes neither rule nor scale."""
    readings = positions(EQUAL, 640.0, CALIPER_FRETS) - 1.0
    found = identify(board(CALIPER_FRETS, readings, 0.05, nut_offset=NutOffset(-1.0, 0.0)))
    assert found.true_scale.value == pytest.approx(640.0, rel=ROUNDING)
    assert found.nut_offset.value == pytest.approx(-1.0, abs=1e-9)


@pytest.mark.parametrize("point", ["near_edge", "far_edge"])
def test_readings_to_an_edge_of_slots_of_known_width(point):
    """Half a slot's width is put back on readings taken at its edge; between two edges there is nothing to put back."""
    side = -1.0 if point == "near_edge" else 1.0
    at = positions(EQUAL, 650.0, CALIPER_FRETS)
    readings = [Reading(0, fret, x + side * 0.3, point=point) for fret, x in zip(CALIPER_FRETS, at, strict=True)]
    readings.append(Reading(5, 12, at[6] - at[3], point=point))
    found = identify(survey(readings, Instrument(0.05), tooling_scatter=0.0, slot_width=0.6))
    assert found.candidates[0].residuals == pytest.approx([0.0] * 12, abs=1e-6)
    assert found.nut_offset.value == pytest.approx(0.0, abs=1e-6)


def test_an_unknown_slot_width_is_uncertainty_and_a_note():
    """Edges of unknown slots widen the nut's interval, not the scale's error, and a note says so."""
    readings = [
        Reading(0, fret, x - 0.9, point="near_edge")
        for fret, x in zip(CALIPER_FRETS, positions(EQUAL, 650.0, CALIPER_FRETS), strict=True)
    ]
    found = identify(survey(readings, Instrument(0.05), tooling_scatter=0.0))
    assert found.true_scale.lower < 650.0 < found.true_scale.upper
    assert "slot-width-unknown" in [note.slug for note in found.notes]


@pytest.mark.source("JCGM 100:2008, F.2.2.1: a resolution d contributes d²/12; F.1.2.3: common relative error")
def test_resolution_and_scale_error_enter_as_the_guide_says():
    """Resolution acts on every reading, an error of the instrument's scale on the whole board at once."""
    at = positions(EQUAL, 650.0, CALIPER_FRETS)
    readings = [Reading(0, fret, x) for fret, x in zip(CALIPER_FRETS, at, strict=True)]
    plain = identify(survey(readings, Instrument(0.05), tooling_scatter=0.0))
    coarse = identify(survey(readings, Instrument(0.03, resolution=0.04 * math.sqrt(12.0)), tooling_scatter=0.0))
    assert coarse.true_scale.standard_uncertainty == pytest.approx(plain.true_scale.standard_uncertainty, rel=1e-9)
    stretched = identify(survey(readings, Instrument(0.05, scale_error=0.001), tooling_scatter=0.0))
    expected = math.hypot(plain.true_scale.standard_uncertainty, 0.65)
    assert stretched.true_scale.standard_uncertainty == pytest.approx(expected, rel=1e-9)


@pytest.mark.source("scipy.stats.chi2, a general-purpose library")
def test_chi_square_degrees_of_freedom_and_p_values():
    """N - 1 degrees for a fixed rule, N - 2 for a free divisor, with chi-square from the residuals and the nut."""
    rng = np.random.default_rng(23)
    readings = positions(EQUAL, 650.0, CALIPER_FRETS) + rng.normal(0.0, 0.05, 11)
    found = identify(board(CALIPER_FRETS, readings, 0.05))
    for candidate in found.candidates:
        assert candidate.degrees_of_freedom == (9 if candidate.rule.name == "divisor" else 10)
        assert candidate.p_value == pytest.approx(
            stats.chi2.sf(candidate.chi_square, candidate.degrees_of_freedom), rel=1e-9
        )
        squares = sum((r / 0.05) ** 2 for r in candidate.residuals) + (candidate.nut_offset.value / 0.3) ** 2
        assert candidate.chi_square == pytest.approx(squares, rel=1e-6)


def test_unknown_scatter_is_said_and_never_rescues_a_rule():
    """Left out, the scatter is integrated with a note; residuals beyond its upper bound stay unexplained."""
    found = identify(board(CALIPER_FRETS, positions(EQUAL, 650.0, CALIPER_FRETS), 0.05, scatter=None))
    assert "tooling-scatter-unknown" in [note.slug for note in found.notes]
    published = CASES["ganassi-1543"]
    hand_set = identify(board(published["fret"], published["from_nut"], 0.05, scatter=None))
    assert hand_set.verdict == "none"


def test_listed_pitches_without_an_octave_have_no_true_scale():
    """A candidate that stops short of the octave can be established; its true scale is null, with a note."""
    rule = Listed((150.0, 300.0, 500.0, 650.0, 850.0, 1000.0))
    frets = [1, 2, 3, 4, 5, 6]
    beliefs = Beliefs(
        candidates=(Candidate(rule, 0.5), Candidate(Listed((100.0, 200.0, 400.0, 500.0, 700.0, 900.0)), 0.5))
    )
    found = identify(board(frets, positions(rule, 650.0, frets), 0.05), beliefs)
    assert (found.verdict, found.rule, found.true_scale) == ("established", rule, None)
    assert "no-octave-fret" in [note.slug for note in found.notes]


def test_refusals():
    """No readings, no length and no uncertainty are refused by name."""
    with pytest.raises(TooFewReadingsError) as none_given:
        survey([], Instrument(0.05))
    assert none_given.value.facts == {"given": 0, "needed": 1}
    with pytest.raises(ImpossibleReadingError, match="no length"):
        survey([Reading(5, 3, 40.0)], Instrument(0.05))
    with pytest.raises(ImpossibleReadingError, match="greater than zero"):
        survey([Reading(0, 3, 0.0)], Instrument(0.05))
    with pytest.raises(ImpossibleReadingError, match="uncertainty"):
        survey([Reading(0, 3, 100.0)], Instrument(0.0))


@pytest.mark.slow
@pytest.mark.parametrize("deviation", [0.05, 0.2])
def test_intervals_hold_the_truth_and_probabilities_are_honest(deviation):
    """Of 1,500 boards drawn from the priors, 95 % of the intervals hold, and stated probabilities are success rates."""
    rng = np.random.default_rng(101)
    readings, rule, _, true_scale = draw(rng, 1500, CALIPER_FRETS, deviation)
    found = identify_all([board(CALIPER_FRETS, row, deviation) for row in readings])
    held = np.mean(
        [f.true_scale.lower <= t <= f.true_scale.upper for f, t in zip(found, true_scale, strict=True) if f.true_scale]
    )
    names = np.array(["equal", "eighteenth", "divisor"])
    right = np.mean([f.candidates[0].rule.name == names[k] for f, k in zip(found, rule, strict=True)])
    stated = np.mean([f.probability for f in found])
    # Three standard errors of a share of 1,500.
    assert held == pytest.approx(0.95, abs=3.0 * math.sqrt(0.95 * 0.05 / 1500))
    assert right == pytest.approx(stated, abs=3.0 * math.sqrt(0.25 / 1500))
    wrong = [f.rule.name != names[k] for f, k in zip(found, rule, strict=True) if f.verdict == "established"]
    assert np.mean(wrong) < 0.05


def test_a_family_shares_its_layout_scale():
    """Where 17.817 and 17.835 cannot be told from equal spacing, the layout scale is that of the whole family."""
    candidates = tuple(Candidate(rule, 1.0) for rule in (EQUAL, EIGHTEENTH, Divisor(17.835)))
    found = identify(board(CALIPER_FRETS, positions(EQUAL, 650.0, CALIPER_FRETS), 0.1), Beliefs(candidates=candidates))
    assert (found.verdict, len(found.family)) == ("established", 2)
    ends = [candidate.layout_scale.value for candidate in found.candidates if candidate.rule in found.family]
    assert min(ends) < found.layout_scale.value < max(ends)
    assert found.layout_scale.lower < min(ends) < max(ends) < found.layout_scale.upper


@pytest.mark.parametrize("coverage", [0.95, 0.999, 0.9999])
def test_more_coverage_never_narrows_an_interval(coverage):
    """Whatever the threshold, an interval is at least as wide as the rule alone would make it, and a note says so."""
    frets = [1, 2, 3, 5, 7, 9, 12]
    beliefs = Beliefs(threshold=0.6, coverage=coverage)
    readings = positions(EQUAL, 650.0, frets) + 0.05 * np.cos(np.arange(7.0))
    found = identify(board(frets, readings, 0.1), beliefs)
    assert found.verdict == "established"
    half = found.layout_scale.upper - found.layout_scale.value
    assert half >= 0.999 * stats.norm.ppf(0.5 + 0.5 * coverage) * found.layout_scale.standard_uncertainty
    assert "interval-assumes-the-rule" in [note.slug for note in found.notes]


def test_a_divisor_near_the_change_of_the_octave_fret_says_so():
    """At 18.54 the octave fret changes from 12 to 13, and the true scale with it; a note warns of that."""
    frets = list(range(1, 20))
    found = identify(board(frets, positions(Divisor(18.545), 650.0, frets), 0.05))
    assert found.rule.name == "divisor"
    assert "octave-fret-unsure" in [note.slug for note in found.notes]
