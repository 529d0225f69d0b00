"""What a type checker sees: mypy reads this file in CI, and a wrong type fails there."""

from typing import assert_type

import httpx

from scalewright_client import (
    AsyncClient,
    Client,
    Compensation,
    Estimate,
    Fault,
    Heights,
    Identification,
    Layout,
    NextReading,
    ProblemError,
    Reading,
    Rule,
    Rules,
    StringRequest,
    UnreadableLengthError,
    Verdict,
)


def blocking(client: Client) -> None:
    """Each operation gives its own result, and lengths may be numbers or texts."""
    assert_type(client.rules(), Rules)
    layout = client.layout(scale="24 3/4 in", rule="eighteenth", frets=22, unit="in", fractions=64)
    assert_type(layout, Layout)
    assert_type(layout.frets[11].from_nut, float)
    assert_type(layout.frets[11].to_true_end, float | None)

    reading: Reading = {"from": 0, "to": 12, "distance": "312.0 mm", "point": "centre"}
    found = client.identification(readings=[reading], nut_offset="free", resolution=0.5)
    assert_type(found, Identification)
    assert_type(found.verdict, Verdict)
    assert_type(found.true_scale, Estimate | None)
    assert_type(found.next_reading, NextReading | None)
    assert_type(found.candidates[0].residuals, tuple[float, ...])

    heights: Heights = {"nut": 1.0, "action": {"fret": 12, "height": "3 mm"}}
    string: StringRequest = {"pitch": "E4", "diameter": 0.7, "unit_mass": 0.4, "R": 24.0}
    rule = Rule("divisor", divisor=17.835)
    done = client.compensation(scale=650, rule=rule, heights=heights, strings=[string], nut="free")
    assert_type(done, Compensation)
    assert_type(done.strings[0].saddle_setback, float)


async def asynchronous(client: AsyncClient) -> None:
    """The same, awaited."""
    assert_type(await client.rules(), Rules)
    assert_type(await client.layout(scale=650, rule={"name": "equal", "steps": 19}, frets=19), Layout)
    assert_type(await client.identification(from_nut=[35.0]), Identification)
    assert_type(
        await client.compensation(scale=650, rule="equal", heights={"nut": 1, "saddle_above_nut": 4}, strings=[]),
        Compensation,
    )


def refusals(error: ProblemError) -> None:
    """What an exception carries is typed as well."""
    assert_type(error.slug, str | None)
    assert_type(error.errors, tuple[Fault, ...])
    assert_type(error.pointers, tuple[str, ...])


def mistakes(client: Client) -> None:
    """What the contract forbids is an error before anything runs; an unused ignore is an error too."""
    client.layout(650, "equal", 12)  # type: ignore[call-arg] # operations take keywords only
    client.layout(scale=650, rule="equl", frets=12)  # type: ignore[arg-type] # a slip of the pen
    client.layout(scale=650, rule={"name": "equal", "step": 12}, frets=12)  # type: ignore[arg-type] # unknown member
    client.layout(scale=650, rule="equal", frets=12, unit="cm")  # type: ignore[arg-type] # mm or in
    client.compensation(scale=650, rule="equal", heights={"nut": 1}, strings=[{}])  # type: ignore[typeddict-item] # no pitch


def test_the_examples_above_hold_when_run():
    """The types promised above are those of what arrives."""
    layout = {
        "unit": "in",
        "rule": {"name": "equal"},
        "layout_scale": 25,
        "true_scale": None,
        "octave_fret": None,
        "frets": [],
    }
    with Client(transport=httpx.MockTransport(lambda _: httpx.Response(200, json=layout))) as client:
        answer = client.layout(scale=25, rule="equal", frets=12, unit="in")
    assert type(answer) is Layout
    assert type(answer.layout_scale) is float
    assert issubclass(UnreadableLengthError, ProblemError)
