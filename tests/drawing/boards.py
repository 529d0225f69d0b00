"""Boards that the tests of drawings share; invented, as all of them are."""

import random
from dataclasses import replace
from typing import Any

from scalewright.drawing.page import Drawing, Text, singly
from scalewright.lutherie.fingerboard import (
    BoardMargins,
    Fingerboard,
    PartialFret,
    Plan,
    Side,
    SlotPlan,
    StringPlan,
    SurfaceRadius,
    draw_up,
)
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Equal, Rule

PLAN = Plan(
    bass=Side(EQUAL, 650.0),
    treble=Side(EQUAL, 650.0),
    frets=24,
    strings=StringPlan(6, 43.0, 58.0),
    margins=BoardMargins(4.0, 4.0, 4.0, 4.0),
    radius=SurfaceRadius(400.0, 400.0),
    slots=SlotPlan(tang_depth=1.8),
)
PLAIN_BOARD = draw_up(PLAN)
FAN_BOARD = draw_up(
    replace(
        PLAN,
        bass=Side(EQUAL, 686.0),
        treble=Side(EQUAL, 648.0),
        square_fret=8,
        strings=StringPlan(7, 42.0, 63.0),
        partial_frets=(PartialFret(1, 3, cents=650.0, name="6 1/2"),),
        saddle_setbacks=(1.0, 1.2, 1.5, 2.0, 2.2, 2.6, 3.0),
    )
)
ZERO_FRET_BOARD = draw_up(
    replace(PLAN, bass=Side(EIGHTEENTH, 628.65), treble=Side(EIGHTEENTH, 628.65), zero_fret=True, handedness="left")
)


RULES: list[Rule] = [EQUAL, EIGHTEENTH, Equal(19), Equal(31)]


def random_boards(number: int) -> list[Fingerboard]:
    """Draw boards of many sizes, seeded."""
    seeded = random.Random(7)
    boards = []
    for _ in range(number):
        rule = seeded.choice(RULES)
        scale = seeded.uniform(200.0, 1100.0)
        count = seeded.randint(1, 12)
        other = scale if count == 1 else scale * seeded.choice([1.0, 0.94])
        spread = seeded.uniform(20.0, 60.0)
        plan = replace(
            PLAN,
            bass=Side(rule, scale),
            treble=Side(rule, other),
            frets=seeded.randint(1, 36),
            strings=StringPlan(count, spread, 1.3 * spread),
            margins=BoardMargins(*[seeded.uniform(3.0, 9.0)] * 4),
            square_fret=seeded.randint(0, 9),
            handedness=seeded.choice(["right", "left"]),
            radius=None,
            slots=SlotPlan(kerf=0.4),
            zero_fret=seeded.random() < 0.3,
        )
        boards.append(draw_up(plan))
    return boards


def named(drawing: Drawing) -> dict[str, Any]:
    """Items of a drawing that have a name."""
    items = [item for layer in drawing.layers.values() for item in singly(layer) if not isinstance(item, Text)]
    return {item.name: item for item in items if item.name}
