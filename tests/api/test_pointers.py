"""Pointers: whatever is wrong, and however deep in a question, the refusal points at it."""

import pytest

READINGS = {"instrument_uncertainty": 0.05, "frets": [1, 5, 12], "from_nut": [36.5, 163, 325]}
BOARD = {"id": "a", "kind": "board", "true_scale": 650}
BRIDGE = {"id": "b", "kind": "bridge", "true_scale": 650}
TWO_PITCHES = {"name": "listed", "cents": [100, 200]}
LAYOUT = {"scale": 650, "rule": "equal", "frets": 3}
TOOL = {"id": "s", "bias": [0, 0, 0], "within": 0.1, "between": 0.1, "boards": 5}
TWIN = {**TOOL, "id": "t"}


def assembly(first=None, second=None, **top):
    """A board and a bridge with changes."""
    return {"parts": [{**BOARD, **(first or {})}, {**BRIDGE, **(second or {})}], **top}


def measured(part=0, **changes):
    """An assembly one of whose parts is known from readings, these with changes."""
    change = {"true_scale": None, "readings": {**READINGS, **changes}}
    return assembly(None, change) if part else assembly(change)


def conformity(part=None, **top):
    """A board against its label with changes."""
    return {"part": {"id": "a", "kind": "board", "label": "25.5 in", "readings": READINGS, **(part or {})}, **top}


def replacement(old, new):
    """A board that replaces another, with changes."""
    return {"parts": [{**BOARD, "rule": "equal", **old}, {**BRIDGE, "kind": "board", "rule": "equal", **new}]}


def part(**changes):
    """A part that is asked about for itself, with changes."""
    return {"part": {**BOARD, **changes}}


def strung(strings, **changes):
    """A board with strings on, and changes."""
    heights = {"nut": 1, "saddle_above_nut": 4}
    return {"scale": 650, "rule": "equal", "heights": heights, "strings": strings, **changes}


def stretched(**changes):
    """A stretch test with changes."""
    return {"length": 600, "stretch": [0, 1, 2, 3], "frequencies": [200, 209, 219, 228], **changes}


def tooling(**changes):
    """Two boards off a tool with changes."""
    return {"layout": LAYOUT, "boards": [[36.4, 70.9, 103.4], [36.5, 70.9, 103.5]], **changes}


def origin(**changes):
    """A board and two tools with changes."""
    return {"layout": LAYOUT, "board": [36.4, 70.9, 103.4], "signatures": [TOOL, TWIN], **changes}


def diagnosis(**changes):
    """Two notes on a string with changes."""
    heard = [{"string": 1, "fret": 1, "cents": 1}, {"string": 1, "fret": 12, "cents": 5}]
    return {"scale": 650, "rule": "equal", "readings": heard, **changes}


WRONG = [
    ("assembly", assembly({"rule": TWO_PITCHES, "frets": 14}), "/parts/0/rule/cents"),
    ("assembly", assembly(None, {"kind": "board", "rule": TWO_PITCHES, "frets": 14}), "/parts/1/rule/cents"),
    ("assembly", assembly({"rule": TWO_PITCHES, "body_joint_fret": 14}), "/parts/0/rule/cents"),
    ("assembly", assembly({"rule": TWO_PITCHES}, {"datum": "fret", "datum_fret": 14}), "/parts/1/datum_fret"),
    ("assembly", assembly({"layout_scale": 650, "true_scale": None}), "/parts/0/rule"),
    ("assembly", assembly({"layout_scale": 650, "true_scale": None, "rule": TWO_PITCHES}), "/parts/0/rule"),
    ("assembly", assembly({"layout_scale": 640, "rule": "equal"}), "/parts/0/true_scale"),
    ("assembly", assembly({"true_scale": None}), "/parts/0"),
    ("assembly", assembly(None, {"made_to": "string_length"}), "/parts/1/setback"),
    ("assembly", assembly({"true_scale": {"bass": 650}}), "/parts/0/true_scale/treble"),
    ("assembly", assembly({"true_scale": {"bass": 650, "treble": 0}}), "/parts/0/true_scale/treble"),
    ("assembly", assembly({"true_scale": {"bass": 650, "treble": 640}, "readings": READINGS}), "/parts/0/true_scale"),
    ("assembly", assembly({"true_scale": "x"}), "/parts/0/true_scale"),
    ("assembly", assembly({"rule": {"name": "divisor", "divisor": 1}}), "/parts/0/rule/divisor"),
    ("assembly", assembly({"rule": {"name": "nix"}}), "/parts/0/rule"),
    ("assembly", assembly({"rule": {"name": "listed", "cents": [200, 100]}}), "/parts/0/rule/cents/1"),
    ("assembly", assembly({"rule": {"name": "listed", "cents": []}}), "/parts/0/rule/cents"),
    ("assembly", assembly({"rule": {"name": "listed", "cents": [100, "x"]}}), "/parts/0/rule/cents/1"),
    ("assembly", assembly({"rule": "nope"}), "/parts/0/rule"),
    ("assembly", assembly({"label": "x"}), "/parts/0/label"),
    ("assembly", assembly({"label": "99999"}), "/parts/0/label"),
    ("assembly", assembly({"datum": "fret"}), "/parts/0"),
    ("assembly", assembly({"frets": 61}), "/parts/0/frets"),
    ("assembly", assembly({"frets": 1.5}), "/parts/0/frets"),
    ("assembly", assembly({"tolerance": 0}), "/parts/0/tolerance"),
    ("assembly", assembly({"saddle_travel": {"towards_nut": -1}}), "/parts/0/saddle_travel/towards_nut"),
    ("assembly", assembly({"saddle_travel": {"towards": 1}}), "/parts/0/saddle_travel/towards"),
    ("assembly", assembly({"kind": "guitar"}), "/parts/0/kind"),
    ("assembly", assembly({"id": ""}), "/parts/0/id"),
    ("assembly", assembly({"id": "ü"}), "/parts/0/id"),
    ("assembly", assembly({"colour": 1}), "/parts/0/colour"),
    ("assembly", assembly(tolerance=0), "/tolerance"),
    ("assembly", assembly(tolerance=-1), "/tolerance"),
    ("assembly", assembly(guard_factor=-1), "/guard_factor"),
    ("assembly", assembly(coverage=1), "/coverage"),
    ("assembly", {"parts": [BOARD]}, "/parts"),
    ("assembly", {"parts": [BOARD] * 11}, "/parts"),
    ("assembly", {"parts": [BOARD, 5]}, "/parts/1"),
    ("assembly", {"parts": [BOARD, None]}, "/parts/1"),
    ("assembly", {}, "/parts"),
    ("assembly", measured(from_nut=[36.5, 163]), "/parts/0/readings/frets"),
    ("assembly", measured(from_nut=[36.5, 163, "x"]), "/parts/0/readings/from_nut/2"),
    ("assembly", measured(from_nut=[36.5, 163, -1]), "/parts/0/readings/from_nut/2"),
    ("assembly", measured(1, frets=[1, 5, 99]), "/parts/1/readings/frets/2"),
    ("assembly", measured(1, frets=None, from_nut=None), "/parts/1/readings/from_nut"),
    (
        "assembly",
        measured(1, from_nut=None, frets=None, readings=[{"from": 0, "to": 12}]),
        "/parts/1/readings/readings/0/distance",
    ),
    (
        "assembly",
        measured(1, from_nut=None, frets=None, readings=[{"from": 12, "to": 12, "distance": 3}]),
        "/parts/1/readings/readings/0",
    ),
    ("assembly", measured(1, instrument_uncertainty=-1), "/parts/1/readings/instrument_uncertainty"),
    ("assembly", measured(1, instrument_uncertainty=None), "/parts/1/readings/instrument_uncertainty"),
    ("assembly", measured(1, instrument_uncertainty=0), "/parts/1/readings/instrument_uncertainty"),
    ("assembly", measured(1, nut_offset="x"), "/parts/1/readings/nut_offset"),
    ("assembly", measured(1, frets=[], from_nut=[]), "/parts/1/readings/from_nut"),
    ("assembly", measured(1, resolution=-1), "/parts/1/readings/resolution"),
    ("assembly", measured(1, slot_width=0), "/parts/1/readings/slot_width"),
    ("assembly", measured(1, scale_error=1), "/parts/1/readings/scale_error"),
    ("assembly", assembly({"readings": READINGS, "true_scale": 600}), "/parts/0/true_scale"),
    ("conformity", conformity({"readings": None}), "/part/readings"),
    ("conformity", conformity({"label": None}), "/part/label"),
    ("conformity", conformity({"label": "zz"}), "/part/label"),
    ("conformity", conformity({"rule": TWO_PITCHES, "frets": 14}), "/part/rule/cents"),
    ("conformity", conformity({"label": None, "layout_scale": 650}), "/part/rule"),
    ("conformity", conformity({"true_scale": {"bass": 650, "treble": 640}}), "/part/true_scale"),
    ("conformity", conformity({"readings": {**READINGS, "from_nut": [1, 2]}}), "/part/readings/frets"),
    ("conformity", conformity(tolerance=0), "/tolerance"),
    ("conformity", conformity(decision_rule="x"), "/decision_rule"),
    ("conformity", conformity(process={"mean_deviation": 0}), "/process/standard_deviation"),
    ("conformity", conformity(process={"standard_deviation": 0}), "/process/standard_deviation"),
    ("conformity", conformity(process=5), "/process"),
    ("conformity", conformity(label_means="x"), "/label_means"),
    ("conformity", {}, "/part"),
    ("assembly", assembly({"setback": 3}), "/parts/0/setback"),
    ("assembly", assembly(None, {"made_to": "string_length", "setback": 650}), "/parts/1/setback"),
    ("assembly", assembly({"true_scale": None, "readings": READINGS, "tolerance": 1}), "/parts/0/tolerance"),
    ("assembly", assembly({"true_scale": None, "label": "25.5 in", "tolerance": 1}), "/parts/0/tolerance"),
    ("assembly", assembly({"true_scale": None, "readings": READINGS, "made_to": "string_length"}), "/parts/0/made_to"),
    ("assembly", assembly({"true_scale": None, "readings": READINGS, "setback": 3}), "/parts/0/setback"),
    ("assembly", assembly(None, {"frets": 20}), "/parts/1/frets"),
    ("assembly", assembly(None, {"body_joint_fret": 14}), "/parts/1/body_joint_fret"),
    ("assembly", assembly({"frets": 12, "body_joint_fret": 14}), "/parts/0/body_joint_fret"),
    ("assembly", assembly({"frets": 12, "datum": "fret", "datum_fret": 14}), "/parts/0/datum_fret"),
    ("assembly", assembly({"true_scale": None, "readings": READINGS, "frets": 5}), "/parts/0/readings"),
    ("assembly", replacement({"body_joint_fret": 14}, {"body_joint_fret": 12}), "/parts/1/body_joint_fret"),
    ("conformity", conformity({"true_scale": 650}, label_means="true_scale"), "/label_means"),
    ("conformity", conformity({"made_to": "string_length"}), "/part/setback"),
    ("conformity", conformity({"made_to": "string_length", "setback": 700}), "/part/setback"),
    ("conformity", conformity({"setback": 3}), "/part/setback"),
    ("label", {**part(), "coverage": 0.9}, "/coverage"),
    ("label/pages", {"labels": [part()], "coverage": 0.9}, "/coverage"),
    ("spec-sheet", part(setback=2), "/part/setback"),
    (
        "spec-sheet",
        part(
            true_scale=None, layout_scale=650, rule="equal", label="25.6 in", made_to="string_length", setback="0.5 mm"
        ),
        "/part/made_to",
    ),
    ("label", part(true_scale=None, readings=READINGS, label="650 mm", made_to="string_length"), "/part/setback"),
    (
        "compensation",
        strung([{"pitch": "E4", "diameter": 0.3, "core_material": "steel"}] * 6, tuning="six_string_standard"),
        "/tuning",
    ),
    ("stretch-test", stretched(scatter_from="uncertainties"), "/scatter_from"),
    ("stretch-test", stretched(diameter=0.7), "/diameter"),
    ("stretch-test", stretched(tension=68, unit_mass=0.37), "/unit_mass"),
    ("tooling", tooling(layout={"scale": 650, "rule": TWO_PITCHES, "frets": 3}), "/layout/rule/cents"),
    ("tooling", tooling(layout={"scale": 650, "rule": TWO_PITCHES, "frets": 0}), "/layout/frets"),
    ("tooling", tooling(layout={"scale": 0, "rule": "equal", "frets": 3}), "/layout/scale"),
    ("tooling", tooling(layout={"scale": 650, "rule": "x", "frets": 3}), "/layout/rule"),
    ("tooling", tooling(layout=5), "/layout"),
    ("tooling", tooling(boards=[[1, 2, 3]]), "/boards"),
    ("tooling", tooling(boards=[[1, 2, 3], [1, 2]]), "/boards/1"),
    ("tooling", tooling(boards=[[1, 2, 3], [1, 2, "x"]]), "/boards/1/2"),
    ("tooling", tooling(boards=[[1, 2, 3], 5]), "/boards/1"),
    ("tooling", tooling(boards=[[1, 2, 3], [1, 3, 2]]), "/boards/1/2"),
    ("tooling", tooling(boards=[[1, 2, 3], [0, 0, 0.1]]), "/boards/1/1"),
    ("tooling", tooling(unknown=[3, 2, 4]), "/unknown/1"),
    ("tooling/origin", origin(board=[2, 1, 3]), "/board/1"),
    ("tooling", tooling(boards=[]), "/boards"),
    ("tooling", tooling(tolerance=0), "/tolerance"),
    ("tooling", tooling(significance=0), "/significance"),
    ("tooling", tooling(id="ü"), "/id"),
    ("tooling", tooling(unknown=[1, 2]), "/unknown"),
    ("tooling", tooling(unknown=[1, 2, 3], signatures=[{**TOOL, "bias": [0]}]), "/signatures/0/bias"),
    ("tooling", tooling(unknown=[1, 2, 3], signatures=[{**TOOL, "within": -1}]), "/signatures/0/within"),
    ("tooling", tooling(unknown=[1, 2, 3], signatures=[TOOL, TOOL]), "/signatures/1/id"),
    ("tooling", tooling(signatures=[TOOL]), "/signatures"),
    ("tooling", tooling(layout=None), ""),
    ("tooling", tooling(layout=None, commanded=[3, 2, 1], true_scale=650), "/commanded"),
    ("tooling", tooling(layout=None, commanded=[1, 2, 700], true_scale=650), "/commanded/2"),
    ("tooling", tooling(layout=None, commanded=[1, 2, 3], true_scale=650, frets=[1, 2]), "/frets"),
    ("tooling", tooling(layout=None, commanded=[1, 2, 3], true_scale=650, frets=[3, 2, 1]), "/frets"),
    ("tooling", tooling(layout=None, commanded=[1, 2, 3], true_scale=650, frets=[1, 2, 99]), "/frets/2"),
    ("tooling/origin", origin(board=[1, 2]), "/board"),
    ("tooling/origin", origin(board=[]), "/board"),
    ("tooling/origin", origin(signatures=[TOOL, TOOL]), "/signatures/1/id"),
    ("tooling/origin", origin(signatures=[]), "/signatures"),
    ("tooling/origin", origin(signatures=[{**TOOL, "boards": 1}]), "/signatures/0/boards"),
    ("tooling/origin", origin(signatures=[TOOL, {**TWIN, "bias": [0]}]), "/signatures/1/bias"),
    ("tooling/origin", origin(layout={"scale": 650, "rule": TWO_PITCHES, "frets": 3}), "/layout/rule/cents"),
    ("tooling/origin", origin(layout=None, commanded=[3, 2, 1], true_scale=650), "/commanded"),
    ("tooling/origin", origin(layout=None, commanded=[1, 2, 700], true_scale=650), "/commanded/2"),
    ("tooling/origin", origin(layout=None, commanded=[1, 2, 3], true_scale=650, frets=[1, 2]), "/frets"),
    ("diagnosis", diagnosis(rule=TWO_PITCHES), "/rule/cents"),
    ("diagnosis", diagnosis(rule=TWO_PITCHES, frets=2), "/rule/cents"),
    ("diagnosis", diagnosis(readings=[{"string": 1, "fret": 1, "cents": "x"}]), "/readings/0/cents"),
    ("diagnosis", diagnosis(readings=[{"string": 1, "fret": 25, "cents": 1}]), "/readings/0/fret"),
    ("diagnosis", diagnosis(readings=[{"string": 1, "fret": 1, "cents": 500}]), "/readings/0/cents"),
    ("diagnosis", diagnosis(readings=[{"string": 1, "fret": 0, "cents": 5}]), "/readings"),
    ("diagnosis", diagnosis(target={"name": "equal", "steps": 0}), "/target/steps"),
    ("diagnosis", diagnosis(target=[1, 2]), "/target"),
    ("diagnosis", diagnosis(target={"cents": [1, 2]}), "/target"),
    ("diagnosis", diagnosis(target={"name": "listed", "cents": [100, 200]}), "/target/cents"),
    ("diagnosis", diagnosis(target="x"), "/target"),
    ("diagnosis", diagnosis(scale=0), "/scale"),
    ("diagnosis", diagnosis(scale="x mm"), "/scale"),
    ("diagnosis", diagnosis(rule={"name": "divisor", "divisor": 2.5}), "/frets"),
    ("diagnosis", diagnosis(coverage=2), "/coverage"),
]


@pytest.mark.parametrize(("word", "question", "pointer"), WRONG)
def test_a_refusal_points_at_what_is_wrong(send, word, question, pointer):
    """At every depth of a question the first pointer of a refusal is that of the member to change."""
    answer = send("POST", f"/v1/{word}", json=question)

    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == pointer


@pytest.mark.parametrize(
    "part",
    [{"rule": TWO_PITCHES}, {"rule": {**TWO_PITCHES, "repeat": True}, "frets": 14}, {"rule": TWO_PITCHES, "frets": 2}],
)
def test_a_board_of_two_listed_pitches_has_two_frets(send, part):
    """Listed pitches that are not said to be too few are all the frets there are, and are no fault."""
    answer = send("POST", "/v1/assembly", json=assembly(part))

    assert answer.status_code == 200
    assert {one["fret"] for one in answer.json()["pairs"][0]["cents"]} == (
        {5, 12, 14} if "repeat" in str(part) else {2}
    )
