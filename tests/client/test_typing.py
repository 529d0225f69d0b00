"""What a type checker sees: mypy reads this file in CI, and a wrong type fails there."""

from collections.abc import AsyncIterator
from typing import assert_type

import httpx

from scalewright_client import (
    AsyncBatch,
    AsyncClient,
    Batch,
    BatchProblem,
    BatchResult,
    BatchSummary,
    CandidateRequest,
    Client,
    Compensation,
    Conformity,
    Diagnosis,
    Estimate,
    Fault,
    Fingerboard,
    Heights,
    Identification,
    IdentificationQuestion,
    Intonation,
    Layout,
    MeasuringCard,
    NextReading,
    Part,
    PlacedString,
    ProblemError,
    Reading,
    Rule,
    Rules,
    SlotFit,
    StretchTest,
    StringRequest,
    Tooling,
    ToolOrigin,
    UnreadableLengthError,
    Verdict,
    WeighedMeaning,
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

    candidate: CandidateRequest = {"temperament": "dowland_1610", "prior": 0.2}
    assert_type(client.identification(from_nut=[35.0], resolution=0.5, candidates=[candidate]), Identification)
    card = client.identification_plan(instrument_uncertainty=0.05, shortest_scale="24 in")
    assert_type(card, MeasuringCard)
    assert_type(card.uncertainty_needed, float | None)

    heights: Heights = {"nut": 1.0, "action": {"fret": 12, "height": "3 mm"}}
    string: StringRequest = {"pitch": "E4", "diameter": 0.7, "unit_mass": 0.4, "R": 24.0}
    rule = Rule("divisor", divisor=17.835)
    done = client.compensation(scale=650, rule=rule, heights=heights, strings=[string], nut="free")
    assert_type(done, Compensation)
    assert_type(done.strings[0].saddle_setback, float)
    assert_type(done.slot, SlotFit | None)
    placed: PlacedString = {"pitch": "E4", "diameter": 0.7, "unit_mass": 0.4, "R": 24.0, "saddle_setback": "2 mm"}
    assert_type(client.intonation(scale=650, rule=rule, heights=heights, strings=[placed]), Intonation)
    heard = client.diagnosis(scale=650, rule="equal", readings=[{"string": 1, "fret": 12, "cents": 4.0}])
    assert_type(heard, Diagnosis)
    assert_type(heard.strings[0].saddle_move, Estimate | None)
    stretched = client.stretch_test(length=650, stretch=[0, 1, 2], frequencies=[326.0, 332.0, 338.0])
    assert_type(stretched, StretchTest)


def parts(client: Client, part: Part) -> None:
    """Labels, parts and tools; drawings are bytes."""
    assert_type(client.nominal(label="24 3/4 in").meaning, WeighedMeaning | None)
    stated = client.label_read(text="...").part
    assert_type(client.assembly(parts=[part, stated]).pairs[0].saddle_mismatch, Estimate | None)
    assert_type(client.conformity(part=part, tolerance="0.5 mm"), Conformity)
    study = client.tooling(boards=[[36.5, 70.9]], layout={"scale": 650, "rule": "equal", "frets": 2})
    assert_type(study, Tooling)
    assert_type(client.tooling_origin(board=[36.5], commanded=[36.4], signatures=[study.signature]), ToolOrigin)
    board = client.fingerboard(scale=650, rule="equal", frets=12, strings={"count": 1}, margins=20)
    assert_type(board, Fingerboard)
    assert_type(board.frets[0].slot.near_edge.bass.x, float)
    drawn = client.fingerboard_drawing(
        media="application/pdf", scale=650, rule="equal", frets=12, strings={"count": 1}, margins=20
    )
    assert_type(drawn, bytes)


def batches(client: Client, question: IdentificationQuestion) -> None:
    """A batch gives a result or a problem for each question, and its summary at the end."""
    batch = client.identification_batch([question, {"id": 17, "from_nut": [35.0], "resolution": "0.5 mm"}])
    assert_type(batch, Batch[Identification])
    for outcome in batch:
        if isinstance(outcome, BatchProblem):
            assert_type(outcome.error, ProblemError)
        else:
            assert_type(outcome, BatchResult[Identification])
            assert_type(outcome.result.verdict, Verdict)
    assert_type(batch.summary, BatchSummary | None)


async def asynchronous_batches(client: AsyncClient, questions: AsyncIterator[IdentificationQuestion]) -> None:
    """The same from questions that are still to come."""
    batch = client.identification_batch(questions)
    assert_type(batch, AsyncBatch[Identification])
    assert_type([outcome async for outcome in batch], list[BatchResult[Identification] | BatchProblem])


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
    client.compensation(scale=650, rule="equal", heights={}, strings=[])  # type: ignore[typeddict-item] # no nut
    client.fingerboard_drawing(media="image/gif", scale=1, rule="equal", frets=1, strings={"count": 1})  # type: ignore[arg-type] # SVG, DXF, PDF, PNG, CSV
    client.identification_batch([{"frets": [12], "from_nt": [3.0]}])  # type: ignore[typeddict-unknown-key] # a slip


def test_the_examples_above_hold_when_run():
    """The types promised above are those of what arrives."""
    layout = {
        "unit": "in",
        "rule": {"name": "equal"},
        "layout_scale": 25,
        "true_scale": None,
        "octave_fret": None,
        "frets": [],
        "notes": [],
    }
    with Client(transport=httpx.MockTransport(lambda _: httpx.Response(200, json=layout))) as client:
        answer = client.layout(scale=25, rule="equal", frets=12, unit="in")
    assert type(answer) is Layout
    assert type(answer.layout_scale) is float
    assert issubclass(UnreadableLengthError, ProblemError)
