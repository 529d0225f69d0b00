"""The clients against the service itself: in process, and once over a real connection."""

import asyncio
from fractions import Fraction

import httpx
import pytest

import scalewright_client as sc
from scalewright.api.app import create_app
from tests.client.live_service import live_service

STRING: sc.StringRequest = {"pitch": "E4", "diameter": 0.71, "unit_mass": 0.41, "R": 24.0}
ULP = 2.0**-52


@pytest.fixture
def in_process():
    """Asks the application without a network: ``in_process(lambda client: client.rules())``."""

    def run(ask):
        async def conversation():
            transport = httpx.ASGITransport(create_app())
            async with sc.AsyncClient("http://scalewright.test", transport=transport) as client:
                return await ask(client)

        return asyncio.run(conversation())

    return run


@pytest.fixture(scope="module")
def address():
    """Address of a service on loopback."""
    with live_service() as where:
        yield where


def eighteenth(fret):
    """Share of the layout scale between nut and fret, exactly: 1 - (17/18)^n."""
    return 1 - Fraction(17, 18) ** fret


def assert_is_the_board(layout):
    """24.75 in under the rule of 18, worked in exact fractions."""
    assert layout.true_scale == pytest.approx(float(2 * Fraction("24.75") * eighteenth(12)), rel=4 * ULP)
    for row in layout.frets:
        assert row.from_nut == pytest.approx(float(Fraction("24.75") * eighteenth(row.fret)), rel=4 * ULP)


def test_a_layout_comes_over_a_real_connection(address):
    """The blocking client talks to a live service on loopback."""
    with sc.Client(address, transport=httpx.HTTPTransport()) as client:
        layout = client.layout(scale="24 3/4 in", rule="eighteenth", frets=22, unit="in")
        assert_is_the_board(layout)
        assert len(layout.frets) == 22


def test_a_layout_comes_in_process(in_process):
    """The asynchronous client takes the application itself as its transport."""
    assert_is_the_board(in_process(lambda client: client.layout(scale=24.75, rule="eighteenth", frets=22, unit="in")))


def test_the_rules_are_listed(in_process):
    """The rule of 18 falls 12.544893 cents short of an octave (V. Galilei's rule, worked from 12 log2(18/17))."""
    rules = {rule.name: rule for rule in in_process(lambda client: client.rules()).rules}
    assert set(rules) == {"equal", "eighteenth", "divisor", "listed"}
    assert rules["eighteenth"].divisor == 18.0
    assert rules["eighteenth"].octave_shortfall_cents == pytest.approx(12.544893, abs=1e-6)


@pytest.mark.parametrize(
    ("rule", "frets"),
    [
        ("equal", 12),
        ("eighteenth", 12),
        ({"name": "equal", "steps": 19}, 19),
        ({"name": "divisor", "divisor": 17.835}, 12),
        ({"name": "listed", "cents": [90.0, 204.0, 1200.0]}, 3),
        ({"name": "listed", "cents": [204.0, 702.0, 1200.0], "repeat": True}, 6),
    ],
)
def test_an_answered_rule_leads_to_the_same_layout(in_process, rule, frets):
    """What the service answers as a rule, it takes as a rule, for every kind there is."""
    first = in_process(lambda client: client.layout(scale=650.0, rule=rule, frets=frets))
    assert in_process(lambda client: client.layout(scale=650.0, rule=first.rule, frets=frets)) == first


def test_shop_fractions_come_when_asked_for(in_process):
    """1 3/8 in is fret 1 of 24.75 in under the rule of 18, exactly (24.75/18 = 1.375)."""
    layout = in_process(
        lambda client: client.layout(scale="24.75 in", rule="eighteenth", frets=1, unit="in", fractions=64)
    )
    assert layout.frets[0].from_nut_fraction == sc.Fraction("1 3/8 in", 0.0)


def test_readings_lead_to_a_rule_and_a_scale(in_process):
    """Exact positions of a rule-of-18 board give that rule, and its true scale inside the interval."""
    frets = [1, 2, 3, 5, 7, 9, 12, 15, 17, 19, 22]
    from_nut = [float(Fraction("628.65") * eighteenth(fret)) for fret in frets]
    found = in_process(
        lambda client: client.identification(
            frets=frets, from_nut=from_nut, instrument_uncertainty=0.05, tooling_scatter=0.05
        )
    )
    assert found.verdict == "established"
    assert found.rule == sc.Rule("eighteenth", divisor=18.0)
    assert found.true_scale.lower < float(2 * Fraction("628.65") * eighteenth(12)) < found.true_scale.upper


def boards(count):
    """Questions about boards of the rule of 18, each of its own scale, one in five too short to be told."""
    frets = [3, 5, 7, 9, 12, 15, 17, 19, 22]
    for number in range(count):
        scale = Fraction(600 + number)
        question: sc.IdentificationQuestion = {
            "id": f"board-{number}",
            "frets": frets,
            "from_nut": [float(scale * eighteenth(fret)) for fret in frets],
            "instrument_uncertainty": 0.05,
            "tooling_scatter": 0.05,
        }
        yield question if number % 5 else {"id": number, "from_nut": [-1.0], "instrument_uncertainty": 0.05}


def test_a_batch_comes_over_a_real_connection(address):
    """Every board has its answer in its place, a refused one spoils no other, and the end line counts them."""
    with sc.Client(address, transport=httpx.HTTPTransport()) as client:
        batch = client.identification_batch(boards(40))
        for number, outcome in enumerate(batch):
            if number % 5 == 0:
                assert isinstance(outcome, sc.BatchProblem)
                assert (outcome.id, outcome.error.pointers) == (number, ("/from_nut/0",))
            else:
                assert isinstance(outcome, sc.BatchResult)
                assert outcome.id == f"board-{number}"
                assert outcome.result.rule == sc.Rule("eighteenth", divisor=18.0)
                true = float(2 * Fraction(600 + number) * eighteenth(12))
                assert outcome.result.true_scale.lower < true < outcome.result.true_scale.upper
        assert batch.summary == sc.BatchSummary(32, 8, complete=True, verdicts={"established": 32})


def test_a_batch_gives_what_the_single_questions_give(in_process):
    """A board is answered alike alone and among others."""

    async def both(client):
        many = [outcome async for outcome in client.identification_batch(list(boards(5)))]
        questions = [{name: value for name, value in board.items() if name != "id"} for board in boards(5)][1:]
        alone = [await client.identification(**question) for question in questions]
        return many, alone

    many, alone = in_process(both)
    for one, other in zip(many[1:], alone, strict=True):
        assert one.result.verdict == other.verdict
        assert one.result.true_scale.value == pytest.approx(other.true_scale.value, rel=1e-9)


def test_a_measuring_card_names_its_frets(in_process):
    """A caliper of 0.05 mm decides between the two rules on a 600 mm board, and the card says with which frets."""
    card = in_process(lambda client: client.identification_plan(instrument_uncertainty=0.05, shortest_scale=600))
    assert card.decides
    assert card.probability >= 0.95
    assert card.frets == card.steps[-1].frets


@pytest.mark.parametrize(
    ("media", "start"),
    [
        ("image/svg+xml", b"<"),
        ("image/vnd.dxf", b"  0\nSECTION"),
        ("application/pdf", b"%PDF-"),
        ("image/png", b"\x89PNG"),
        ("text/csv", b"name,running"),
    ],
)
def test_a_drawing_comes_as_a_file(in_process, media, start):
    """The bytes are of the kind that was asked for (first bytes of the formats by their standards)."""
    drawn = in_process(
        lambda client: client.fingerboard_drawing(
            media=media,
            scale=650,
            rule="equal",
            frets=12,
            strings={"count": 6, "nut_spread": 36, "saddle_spread": 52},
            margins=3,
        )
    )
    assert drawn.replace(b"\r\n", b"\n").startswith(start)


def test_a_refused_drawing_is_a_refusal(in_process):
    """A problem document is read though a picture was asked for."""
    with pytest.raises(sc.InvalidRequestError) as caught:
        in_process(
            lambda client: client.fingerboard_drawing(
                scale=650, rule="equal", frets=99, strings={"count": 6}, margins=3
            )
        )
    assert "/frets" in caught.value.pointers


def test_what_is_not_known_is_none(in_process):
    """Two readings cannot tell the rules apart, and the client does not pretend."""
    found = in_process(lambda client: client.identification(frets=[5, 12], from_nut=[163.0, 325.0], resolution=1.0))
    assert found.verdict == "undecided"
    assert found.rule is None
    assert found.layout_scale is None


def test_a_saddle_position_comes_with_its_cents(in_process):
    """The setback is counted from the end of the true scale: nut to saddle is their sum."""
    answer = in_process(
        lambda client: client.compensation(
            scale=650.0, rule="equal", frets=12, heights={"nut": 1.0, "saddle_above_nut": 4.0}, strings=[STRING]
        )
    )
    (string,) = answer.strings
    assert string.saddle_from_nut == pytest.approx(650.0 + string.saddle_setback + string.nut_setback, abs=1e-9)
    assert [row.fret for row in string.cents] == list(range(1, 13))


@pytest.mark.parametrize(
    ("ask", "kind", "pointer"),
    [
        (lambda c: c.layout(scale="25..4 in", rule="equal", frets=12), sc.InvalidRequestError, "/scale"),
        (lambda c: c.layout(scale=650.0, rule="equal", frets=61), sc.InvalidRequestError, "/frets"),
        (
            lambda c: c.layout(scale=650.0, rule={"name": "listed", "cents": [100.0]}, frets=12),
            sc.TooFewPitchesError,
            "/rule/cents",
        ),
        (lambda c: c.identification(from_nut=[-3.0, 4.0, 5.0]), sc.InvalidRequestError, "/from_nut/0"),
        (
            lambda c: c.compensation(
                scale=650.0, rule="equal", heights={"nut": 1.0, "saddle_above_nut": 4.0}, strings=[{"pitch": "H9"}]
            ),
            sc.InvalidRequestError,
            "/strings/0/pitch",
        ),
    ],
)
def test_a_refusal_names_the_place(in_process, ask, kind, pointer):
    """Whoever catches the exception knows what to change and what to quote."""
    with pytest.raises(kind) as caught:
        in_process(ask)
    assert pointer in caught.value.pointers
    assert caught.value.slug
    assert caught.value.request_id


def test_a_service_that_is_not_there_is_told_plainly(address):
    """A wrong port becomes a fault of the connection, after the attempts that were allowed."""
    host = address.rpartition(":")[0]
    with (
        sc.Client(f"{host}:1", transport=httpx.HTTPTransport(), retry=sc.Retry(attempts=1)) as client,
        pytest.raises(sc.ConnectionFaultError, match=r"no answer from http://127\.0\.0\.1:1 "),
    ):
        client.rules()
