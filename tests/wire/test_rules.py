"""Spacing rules on the wire: what a question may say, and what an answer says."""

import json

import pytest
from pydantic import ValidationError

from scalewright.lutherie import spacing
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Divisor, Equal, Listed
from scalewright.wire.quantities import Question
from scalewright.wire.rules import RuleIn, RuleOut, summaries


class Asked(Question):
    """A question with a rule."""

    rule: RuleIn
    """Rule."""


def read(rule):
    """Read a rule from its JSON."""
    return Asked.read(json.dumps({"rule": rule}).encode()).rule.to_domain()


@pytest.mark.parametrize(
    ("rule", "meant"),
    [
        ("equal", EQUAL),
        ("eighteenth", EIGHTEENTH),
        ({"name": "equal"}, EQUAL),
        ({"name": "equal", "steps": 19}, Equal(19)),
        ({"name": "eighteenth"}, EIGHTEENTH),
        ({"name": "equal", "steps": 12, "divisor": EQUAL.divisor}, EQUAL),
        ({"name": "eighteenth", "divisor": 18.0}, EIGHTEENTH),
        ({"name": "divisor", "divisor": 17.835}, Divisor(17.835)),
        ({"name": "divisor", "divisor": 18}, Divisor(18.0)),
        ({"name": "listed", "cents": [204, 702.5]}, Listed((204.0, 702.5))),
        ({"name": "listed", "cents": [204, 1200], "repeat": True}, Listed((204.0, 1200.0), repeat=True)),
    ],
)
def test_every_form_of_a_rule(rule, meant):
    """A rule is an object by its name, or its bare name where it needs nothing else."""
    assert read(rule) == meant


@pytest.mark.parametrize(
    ("rule", "where", "code"),
    [
        ("divisor", (), "rule_unknown"),
        ("listed", (), "rule_unknown"),
        ("Equal", (), "rule_unknown"),
        ("", (), "rule_unknown"),
        (18, (), "rule_unknown"),
        (None, (), "rule_unknown"),
        ([], (), "rule_unknown"),
        ({}, (), "rule_unknown"),
        ({"name": ["equal"]}, (), "rule_unknown"),
        ({"name": "equal", "steps": 0}, ("rule:equal", "steps"), "greater_than_equal"),
        ({"name": "equal", "steps": 121}, ("rule:equal", "steps"), "less_than_equal"),
        ({"name": "equal", "steps": 12.5}, ("rule:equal", "steps"), "int_type"),
        ({"name": "equal", "steps": True}, ("rule:equal", "steps"), "int_type"),
        ({"name": "eighteenth", "divisor": 17.9}, ("rule:eighteenth", "divisor"), "other_divisor"),
        ({"name": "equal", "divisor": 18.0}, ("rule:equal", "divisor"), "other_divisor"),
        ({"name": "equal", "steps": 19, "divisor": EQUAL.divisor}, ("rule:equal", "divisor"), "other_divisor"),
        ({"name": "eighteenth", "steps": 12}, ("rule:eighteenth", "steps"), "extra_forbidden"),
        ({"name": "divisor"}, ("rule:divisor", "divisor"), "missing"),
        ({"name": "divisor", "divisor": 1.999}, ("rule:divisor", "divisor"), "greater_than_equal"),
        ({"name": "divisor", "divisor": 1000.5}, ("rule:divisor", "divisor"), "less_than_equal"),
        ({"name": "divisor", "divisor": "17.817"}, ("rule:divisor", "divisor"), "float_type"),
        ({"name": "listed", "cents": []}, ("rule:listed", "cents"), "too_short"),
        ({"name": "listed", "cents": list(range(1, 62))}, ("rule:listed", "cents"), "too_long"),
        ({"name": "listed", "cents": [0, 100]}, ("rule:listed", "cents", 0), "greater_than"),
        ({"name": "listed", "cents": [100, 12000.5]}, ("rule:listed", "cents", 1), "less_than_equal"),
        ({"name": "listed", "cents": [100, 200, 200]}, ("rule:listed", "cents", 2), "not_ascending"),
        ({"name": "listed", "cents": [100, 1300], "repeat": True}, (), "not_repeatable"),
        ({"name": "listed", "cents": [100], "repeat": "yes"}, ("rule:listed", "repeat"), "bool_type"),
    ],
)
def test_what_is_no_rule(rule, where, code):
    """What is wrong with a rule is said at the place where it is wrong."""
    with pytest.raises(ValidationError) as refused:
        read(rule)

    (error,) = refused.value.errors(include_url=False)
    assert (error["loc"], error["type"]) == (("rule", *where), code)


@pytest.mark.parametrize(
    ("rule", "written"),
    [
        (EIGHTEENTH, {"name": "eighteenth", "divisor": 18.0}),
        (Equal(19), {"name": "equal", "divisor": Equal(19).divisor, "steps": 19}),
        (Divisor(17.835), {"name": "divisor", "divisor": 17.835}),
        (Listed((204.0, 1200.0)), {"name": "listed", "cents": [204.0, 1200.0], "repeat": False}),
    ],
)
def test_an_answer_says_what_its_rule_has_and_no_more(rule, written):
    """Members that a kind of rule does not have are left out."""
    assert RuleOut.model_validate(rule).model_dump(mode="json") == written


def test_the_list_of_rules_names_each_once():
    """All four kinds of rule are described, with their numbers where they have some without parameters."""
    rules = {summary.name: summary for summary in summaries()}

    assert set(rules) == {kind.name for kind in (Equal, spacing.Eighteenth, Divisor, Listed)}
    assert rules["equal"].parameters == ["steps"]
    assert rules["equal"].octave_shortfall_cents == 0.0
    assert rules["eighteenth"].octave_fret == 12
    assert rules["divisor"].divisor is None
